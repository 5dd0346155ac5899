package catalog

import (
	"tentwright/catalog/money"
	"tentwright/catalog/source"
	"tentwright/catalog/unit"
)

// Rates are the prices and factors that are not of one thing but of the trade
// as this yard conducts it.
type Rates struct {
	Where       source.Where
	Skills      []Skill         `yaml:"skills,required"`
	Overtime    Overtime        `yaml:"overtime,required"`
	Windows     []Window        `yaml:"windows,required"`
	Periods     []Period        `yaml:"periods,required"`
	Breaks      []BreakClass    `yaml:"breaks"`
	TaxClasses  []TaxClass      `yaml:"tax_classes,required"`
	Taxes       []Tax           `yaml:"taxes"`
	Zones       []Zone          `yaml:"zones,required"`
	Loadings    []Loading       `yaml:"loadings"`
	Classes     []CustomerClass `yaml:"classes,required"`
	Waiver      money.Number    `yaml:"waiver,required" min:"0" max:"100"`       // percent of hire
	MarginFloor money.Number    `yaml:"margin_floor,required" min:"0" max:"100"` // percent
	MinOrder    money.Number    `yaml:"min_order" min:"0"`
	MileCost    money.Number    `yaml:"mile_cost,required" min:"0"` // to the yard, per mile or km of one vehicle
	LabourTax   string          `yaml:"labour_tax,required"`        // tax classes of what is not an item
	DeliveryTax string          `yaml:"delivery_tax,required"`
	WaiverTax   string          `yaml:"waiver_tax,required"`
	WetFactor   money.Number    `yaml:"wet_factor,required" min:"1" max:"3"` // weight of wet cloth over dry
}

// Skill is what a person is paid for and charged as, per hour.
type Skill struct {
	Where source.Where
	ID    string       `yaml:"id,required" long:"60"`
	Name  string       `yaml:"name,required" long:"120"`
	Bill  money.Number `yaml:"bill,required" min:"0"`
	Cost  money.Number `yaml:"cost,required" min:"0"`
}

// Overtime says when hours cost more.
type Overtime struct {
	Where      source.Where
	Daily      money.Number `yaml:"daily,required" min:"0" max:"24"`   // hours of a person's day at plain pay
	Weekly     money.Number `yaml:"weekly,required" min:"0" max:"168"` // hours of a person's week at plain pay
	Longest    money.Number `yaml:"longest,required" min:"1" max:"24"` // hours of a person's day that the yard asks for at most
	CostFactor money.Number `yaml:"cost_factor,required" min:"1" max:"3"`
	BillFactor money.Number `yaml:"bill_factor,required" min:"1" max:"3"`
}

// Window is a stretch of work done by one crew: which phases, how many people
// and days unless the job says otherwise.
type Window struct {
	Where  source.Where
	ID     string   `yaml:"id,required" long:"60"` // e.g. yard-out, install, strike, yard-in
	Name   string   `yaml:"name,required" long:"120"`
	Phases []string `yaml:"phases,required"`
	Crew   int      `yaml:"crew,required" min:"1" max:"200"`
	Days   int      `yaml:"days,required" min:"1" max:"60"`
	Week   int      `yaml:"week,required" min:"1" max:"20"` // windows of one week share the weekly limit
}

// Period is how price grows with charged days.
type Period struct {
	Where source.Where
	ID    string       `yaml:"id,required" long:"60"`
	Name  string       `yaml:"name,required" long:"120"`
	Steps []PeriodStep `yaml:"steps,required"`
}

// PeriodStep: from this day the price is Factor times the base, and every
// later day until the next step adds Each.
type PeriodStep struct {
	Where  source.Where
	From   int          `yaml:"from,required" min:"1" max:"400"`
	Factor money.Number `yaml:"factor,required" min:"0"`
	Each   money.Number `yaml:"each" min:"0"`
}

// BreakClass is a quantity discount by steps.
type BreakClass struct {
	Where source.Where
	ID    string      `yaml:"id,required" long:"60"`
	Name  string      `yaml:"name,required" long:"120"`
	Steps []BreakStep `yaml:"steps,required"`
}

// BreakStep: from this quantity the price is Off percent lower.
type BreakStep struct {
	Where source.Where
	From  int          `yaml:"from,required" min:"1"`
	Off   money.Number `yaml:"off,required" min:"0" max:"100"`
}

// TaxClass is what a line is for tax: hire of goods, labour, food ...
type TaxClass struct {
	Where source.Where
	ID    string `yaml:"id,required" long:"60"`
	Name  string `yaml:"name,required" long:"120"`
}

// Tax is one levy: its rate, the tax classes and the places where it is due.
type Tax struct {
	Where   source.Where
	ID      string       `yaml:"id,required" long:"60"`
	Name    string       `yaml:"name,required" long:"120"`
	Rate    money.Number `yaml:"rate,required" min:"0" max:"100"` // percent
	Classes []string     `yaml:"classes,required"`
	Places  []string     `yaml:"places"` // none: everywhere
}

// Zone is a delivery zone: a flat charge per truck trip, then by distance.
type Zone struct {
	Where   source.Where
	ID      string       `yaml:"id,required" long:"60"`
	Name    string       `yaml:"name,required" long:"120"`
	UpTo    unit.Length  `yaml:"up_to"` // distance one way; 0: no limit
	Flat    money.Number `yaml:"flat,required" min:"0"`
	PerMile money.Number `yaml:"per_mile,required" min:"0"` // per mile or km one way, per truck trip
	Minimum money.Number `yaml:"minimum" min:"0"`           // of the whole delivery line
}

// Loading is a surcharge for hours that cost more: evenings, Sundays, holidays.
type Loading struct {
	Where   source.Where
	ID      string       `yaml:"id,required" long:"60"`
	Name    string       `yaml:"name,required" long:"120"`
	Percent money.Number `yaml:"percent,required" min:"0" max:"300"` // of the labour of its windows, and of delivery
	Windows []string     `yaml:"windows,required"`
}

// CustomerClass is a standing discount on hire.
type CustomerClass struct {
	Where    source.Where
	ID       string       `yaml:"id,required" long:"60"`
	Name     string       `yaml:"name,required" long:"120"`
	Discount money.Number `yaml:"discount,required" min:"0" max:"100"` // percent
}

// Distance is a road distance in the shop's unit, miles or kilometres, to one
// place: charges, hours and zones all go by it, as people read it.
func (c *Catalog) Distance(l unit.Length) money.Number {
	far := l.Miles()
	if c.Company.Units == unit.Metric {
		far = l.Kilometres()
	}
	return money.Round(money.Float(far), 1)
}
