// Package price turns order lines, hours and trips into money: what the
// customer pays, what it costs the yard, and what is left.
//
// Each line is rounded once, half away from zero, to the currency's minor
// unit; every total is a sum of rounded lines.
package price

import (
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
	"tentwright/quote/labour"
	"tentwright/quote/load"
	"tentwright/quote/parts"
)

// Kinds of line.
const (
	Hire     = "hire" // waiver and standing discounts are on these only
	Sale     = "sale"
	Service  = "service"
	Labour   = "labour"
	Delivery = "delivery"
	Loading  = "loading"
	Waiver   = "waiver"
	Minimum  = "minimum"
)

// Sections that do not come from items.
const (
	SectionLabour   = "Labour"
	SectionDelivery = "Delivery"
	SectionOther    = "Other charges"
)

// Result is the money of a job.
type Result struct {
	Currency money.Currency
	Days     int // charged
	Periods  []PeriodFactor
	Lines    []Line
	Taxes    []TaxLine

	Hire     money.Number // net of discounts
	Subtotal money.Number // before tax
	Tax      money.Number
	Total    money.Number
	Cost     money.Number
	Margin   money.Number // Subtotal less Cost
	Percent  money.Number // Margin of Subtotal, in percent, to two places
	Deposit  money.Number
	Balance  money.Number // Total less Deposit
	Received money.Number
	Due      money.Number // Total less Received

	ValidUntil unit.Date
	BalanceBy  unit.Date
}

// PeriodFactor is a period's multiple of the base price for the charged days.
type PeriodFactor struct {
	Period *catalog.Period
	Factor money.Number
}

// Line is one line of the price.
type Line struct {
	Key      string
	Section  string
	Kind     string
	Name     string
	Order    *parts.Order // nil for labour, delivery and what follows from other lines
	Quantity money.Number // as asked for
	Ordered  money.Number // as charged: none of an extra that is not chosen
	Unit     string
	Base     money.Number // one, for the base period
	Period   string       // id; none for lines that do not grow with days
	Factor   money.Number
	Break    money.Number // percent off by quantity
	Class    money.Number // percent off by customer class
	Hand     money.Number // percent off this line
	Job      money.Number // percent off the whole hire
	Offer    money.Number // amount for Quantity
	Amount   money.Number // amount for Ordered
	CostEach money.Number
	Cost     money.Number
	Tax      string // class
}

// TaxLine is one tax that is due.
type TaxLine struct {
	Tax     *catalog.Tax
	Taxable money.Number
	Amount  money.Number
}

// Build prices a job.
func Build(c *catalog.Catalog, j *job.Job, p *parts.Result, plan *load.Plan, hours *labour.Result) *Result {
	b := &builder{c: c, j: j, p: p, plan: plan, hours: hours, r: &Result{Currency: c.Currency(), Days: j.ChargedDays()}}
	b.periods()
	b.orders()
	b.labour()
	b.delivery()
	b.loadings()
	b.waiver()
	b.minimum()
	b.taxes()
	b.totals()
	return b.r
}

type builder struct {
	c     *catalog.Catalog
	j     *job.Job
	p     *parts.Result
	plan  *load.Plan
	hours *labour.Result
	r     *Result
}

// round is the one rounding of a line.
func (b *builder) round(n money.Number) money.Number { return b.r.Currency.Round(n) }

// off is what is left of a price after a percentage off.
func off(percent money.Number) money.Number { return money.One.Sub(money.Percent(percent)) }

// periods works each period's factor out for the charged days.
func (b *builder) periods() {
	for i := range b.c.Rates.Periods {
		p := &b.c.Rates.Periods[i]
		b.r.Periods = append(b.r.Periods, PeriodFactor{Period: p, Factor: Factor(p, b.r.Days)})
	}
}

// Factor is a period's multiple of the base price for a number of days: the
// factor of the last step reached, and Each for every day beyond its first.
func Factor(p *catalog.Period, days int) money.Number {
	factor := money.Zero
	for _, step := range p.Steps {
		if days >= step.From {
			factor = step.Factor.Add(step.Each.Mul(money.Int(days - step.From)))
		}
	}
	return factor
}

// BreakOff is the percentage off that a quantity earns.
func BreakOff(class *catalog.BreakClass, quantity money.Number) money.Number {
	percent := money.Zero
	if class == nil {
		return percent
	}
	for _, step := range class.Steps {
		if quantity.GreaterThanOrEqual(money.Int(step.From)) {
			percent = step.Off
		}
	}
	return percent
}

// Find gives a line by key; nil if there is none.
func (r *Result) Find(key string) *Line {
	for i := range r.Lines {
		if r.Lines[i].Key == key {
			return &r.Lines[i]
		}
	}
	return nil
}

// Sum adds up the amounts of the lines of some kinds, or of all lines where no
// kind is named.
func (r *Result) Sum(kinds ...string) money.Number {
	total := money.Zero
	for i := range r.Lines {
		if len(kinds) == 0 || slices.Contains(kinds, r.Lines[i].Kind) {
			total = total.Add(r.Lines[i].Amount)
		}
	}
	return total
}

// FactorOf is a period's multiple for this job; one for a line without a
// period.
func (r *Result) FactorOf(period string) money.Number {
	for i := range r.Periods {
		if r.Periods[i].Period.ID == period {
			return r.Periods[i].Factor
		}
	}
	return money.One
}

// BelowFloor tells whether a line that is charged earns less than the floor,
// in percent of its amount.
func (l *Line) BelowFloor(floor money.Number) bool {
	if !l.Amount.IsPositive() || l.Kind != Hire && l.Kind != Sale && l.Kind != Service {
		return false
	}
	return l.Amount.Sub(l.Cost).Mul(money.Hundred).LessThan(floor.Mul(l.Amount))
}
