// Package job is what a salesperson asks for: the customer, the event, the
// tents and extras, the site, the dates and the discounts. A job names things
// by the ids of a catalog; Check tells whether that catalog has them.
package job

import (
	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/catalog/money"
	"tentwright/catalog/source"
	"tentwright/catalog/unit"
)

// Job is one event to be quoted.
type Job struct {
	Where    source.Where
	Number   string       `yaml:"number,required" long:"40"`
	Revision int          `yaml:"revision" min:"0" max:"999"`
	Customer Customer     `yaml:"customer,required"`
	Event    Event        `yaml:"event,required"`
	Dates    Dates        `yaml:"dates,required"`
	Tents    []Tent       `yaml:"tents"`
	Items    []Line       `yaml:"items"`
	Site     []SiteChoice `yaml:"site"`
	Delivery Delivery     `yaml:"delivery,required"`
	Labour   Labour       `yaml:"labour"`
	Wind     Wind         `yaml:"wind"`
	Heat     *Heat        `yaml:"heat"`
	Power    *Power       `yaml:"power"`
	Plot     *Plot        `yaml:"plot"`
	Discount Discount     `yaml:"discount"`
	Show     string       `yaml:"show_prices" enum:"line|section|total"`
	Payments []Payment    `yaml:"payments"`
	Notes    string       `yaml:"notes" long:"4000"`        // printed on the quote
	Internal string       `yaml:"office_notes" long:"4000"` // never leaves the office

	// Source is the file that the job was read from, as it was; none of a job that
	// was made otherwise.
	Source []byte
}

// Customer is who pays.
type Customer struct {
	Where   source.Where
	Name    string   `yaml:"name,required" long:"120"`
	Contact string   `yaml:"contact"`
	Address []string `yaml:"address"`
	Phone   string   `yaml:"phone"`
	Email   string   `yaml:"email"`
	Class   string   `yaml:"class"`      // of the rates; the first class if none
	Exempt  bool     `yaml:"tax_exempt"` // holds a certificate
}

// Event is what the tents are for.
type Event struct {
	Where   source.Where
	Name    string   `yaml:"name,required" long:"120"`
	Guests  int      `yaml:"guests" min:"0" max:"100000"`
	Address []string `yaml:"address"`
	Use     string   `yaml:"use"`       // of the floor, as the shop's occupancy table names it; its first if none
	Place   string   `yaml:"tax_place"` // where tax is due
	Contact string   `yaml:"site_contact"`
	Access  string   `yaml:"access" long:"250"`  // the way in: gate, width, hours, keys
	Parking string   `yaml:"parking" long:"250"` // where vehicles stand once they are unloaded
}

// Dates are the windows of a job; charged days may differ from days out.
type Dates struct {
	Where   source.Where
	Quoted  unit.Date `yaml:"quoted,required"`
	Signed  unit.Date `yaml:"signed"` // not yet if not given
	Deliver unit.Date `yaml:"deliver,required"`
	From    unit.Date `yaml:"event_from,required"`
	To      unit.Date `yaml:"event_to,required"`
	Strike  unit.Date `yaml:"strike,required"`
	Collect unit.Date `yaml:"collect,required"`
	Charged int       `yaml:"charged_days" min:"1" max:"400"` // not given: the days of the event
}

// Tent is one or more tents of a size, put up alike.
type Tent struct {
	Where    source.Where
	ID       string       `yaml:"id,required" long:"60"` // within the job
	Family   string       `yaml:"family,required"`
	Size     string       `yaml:"size,required"`
	Count    int          `yaml:"count" min:"1" max:"500"` // not given: one
	Leg      unit.Length  `yaml:"leg"`                     // 0: the family's usual
	Sides    []TentSide   `yaml:"sides"`                   // those not listed are open
	Ground   string       `yaml:"ground"`                  // an option of the site's surface, if not the job's
	Joins    string       `yaml:"joins"`                   // tent at whose side it stands, sharing a gutter
	JoinAt   string       `yaml:"join_side" enum:"front|right|back|left"`
	Discount money.Number `yaml:"discount" min:"0" max:"100"`
	Name     string       `yaml:"name" long:"120"` // as the customer calls it
	Uses     []FloorUse   `yaml:"uses"`            // of parts of the floor; the rest is as the event's
	Place    *Place       `yaml:"place"`           // on the plot; none: where there is room
}

// FloorUse is what a part of a tent's floor is for.
type FloorUse struct {
	Where source.Where
	Use   string    `yaml:"use,required"`
	Area  unit.Area `yaml:"area,required"`
}

// Place is where a tent stands: the front left corner of its plan on the plot,
// and by how many degrees the plan is turned about it, against the clock.
type Place struct {
	Where source.Where
	X     unit.Length `yaml:"x"`
	Y     unit.Length `yaml:"y"`
	Turn  string      `yaml:"turn" enum:"0|90|180|270"` // none: not turned
}

// TentSide is how one side of a tent is closed and held.
type TentSide struct {
	Where    source.Where
	Side     string   `yaml:"side,required" enum:"front|right|back|left"`
	Wall     string   `yaml:"wall"`      // kind of wall; none is open
	Doors    []string `yaml:"doors"`     // kinds of door in it
	NoStakes bool     `yaml:"no_stakes"` // a utility or paving forbids stakes along it
	Ground   string   `yaml:"ground"`    // an option of the site's surface, if not the tent's
}

// Line is an item ordered or offered.
type Line struct {
	Where    source.Where
	Item     string       `yaml:"item,required"`
	Quantity money.Number `yaml:"quantity,required" min:"0" max:"1000000"`
	Optional bool         `yaml:"optional"`                   // an extra that the customer may choose
	Chosen   bool         `yaml:"chosen"`                     // an optional one that is chosen
	Discount money.Number `yaml:"discount" min:"0" max:"100"` // percent, given by hand
	Note     string       `yaml:"note"`
}

// SiteChoice is the degree of one site factor.
type SiteChoice struct {
	Where  source.Where
	Factor string `yaml:"factor,required"`
	Option string `yaml:"option,required"`
}

// Delivery is how far and under what conditions.
type Delivery struct {
	Where    source.Where
	Zone     string      `yaml:"zone"`              // none: by the distance
	Distance unit.Length `yaml:"distance,required"` // one way
	Loadings []string    `yaml:"loadings"`          // after hours, Sunday, holiday
	Free     bool        `yaml:"free"`              // collected by the customer, or thrown in
}

// Labour is what the job says of crews, beyond the rates.
type Labour struct {
	Where   source.Where
	Charge  string       `yaml:"charge" enum:"charged|included"` // none: charged
	Windows []WindowCrew `yaml:"windows"`
	Weather *Weather     `yaml:"weather"`                     // forecast for the work; none: as the site's heat says
	Tries   int          `yaml:"tries" min:"1" max:"1000000"` // schedules that are made in search of a short one; not given: the shop's
}

// Weather is what the crew must work in.
type Weather struct {
	Where       source.Where
	Temperature *unit.Temperature `yaml:"temperature,required"`                // of the air in the shade
	Humidity    money.Number      `yaml:"humidity,required" min:"0" max:"100"` // relative, in percent
}

// WindowCrew sets crew and days of one window of work.
type WindowCrew struct {
	Where  source.Where
	Window string       `yaml:"window,required"`
	Crew   int          `yaml:"crew" min:"1" max:"200"`
	Days   int          `yaml:"days" min:"1" max:"60"`
	Worked money.Number `yaml:"worked" min:"0" max:"168"` // hours that each has worked that week already

	Crews   int        `yaml:"crews" min:"1" max:"20"` // into which the people are split, each with its own tents; not given: one
	From    unit.Clock `yaml:"from"`                   // on its days the site may not be entered before; none: from when the shop's day begins
	Until   unit.Clock `yaml:"until"`                  // and must be left by
	Ready   unit.Clock `yaml:"ready"`                  // on its last day all must be ready by; none: any time of that day
	Inspect unit.Clock `yaml:"inspect"`                // on its last day the authority comes to inspect; none: nobody does
	Stay    bool       `yaml:"stay"`                   // the crew sleeps near the site between its days
}

// Wind is what the tents must stand up to at this place.
type Wind struct {
	Where   source.Where
	Gust    unit.Speed `yaml:"gust"`    // at the height of the roof; none: the shop's design gust
	Terrain string     `yaml:"terrain"` // of the shop's; its first if none
}

// Heat is how warm the tents are to be.
type Heat struct {
	Where   source.Where
	Inside  *unit.Temperature `yaml:"inside,required"`
	Outside *unit.Temperature `yaml:"outside,required"`                  // the coldest to plan for
	Hours   money.Number      `yaml:"hours,required" min:"0" max:"2000"` // of heating in all
	Tents   []string          `yaml:"tents"`                             // none: every tent that has a wall
}

// Power is where the current comes from.
type Power struct {
	Where    source.Where
	Source   string       `yaml:"source,required" enum:"generator|site"` // ours, or a supply of the site
	Distance unit.Length  `yaml:"distance,required"`                     // of cable from there to the farthest tent
	Hours    money.Number `yaml:"hours" min:"0" max:"2000"`              // that a generator runs
}

// Plot is the ground that the tents share: a rectangle with its origin at the
// front left corner, x to the right and y to the back.
type Plot struct {
	Where     source.Where
	Width     unit.Length  `yaml:"width,required"`          // along x
	Depth     unit.Length  `yaml:"depth,required"`          // along y
	North     money.Number `yaml:"north" min:"0" max:"360"` // degrees clockwise from the back
	Obstacles []Obstacle   `yaml:"obstacles"`
}

// Obstacle is something on the plot where nothing may stand: a rectangle by its
// front left corner, or a circle by its middle.
type Obstacle struct {
	Where  source.Where
	Name   string      `yaml:"name,required" long:"60"`
	Kind   string      `yaml:"kind" enum:"building|tree|vehicle|line|other"` // none: other
	X      unit.Length `yaml:"x"`
	Y      unit.Length `yaml:"y"`
	Width  unit.Length `yaml:"width"`
	Depth  unit.Length `yaml:"depth"`
	Radius unit.Length `yaml:"radius"` // of a circle; then neither width nor depth
}

// Discount is given on the whole job by hand.
type Discount struct {
	Where   source.Where
	Percent money.Number `yaml:"percent" min:"0" max:"100"` // of hire
	Reason  string       `yaml:"reason"`
}

// Payment is money received.
type Payment struct {
	Where  source.Where
	Date   unit.Date    `yaml:"date,required"`
	Amount money.Number `yaml:"amount,required" min:"0"`
	Note   string       `yaml:"note"`
}

// ReadFor decodes a job file and checks it against a catalog in one go, so that
// faults of form and unknown ids are reported together. The job is nil when
// there are faults.
func ReadFor(c *catalog.Catalog, file string, data []byte) (*Job, diag.List) {
	var j Job
	list := source.Decode(file, data, &j)
	form := source.NewForm(list)
	if !form.FieldsOnly() {
		return nil, list
	}
	if list = form.With(j.check(c, form)); list.Err() != nil {
		return nil, list
	}
	j.Source = data
	return &j, list
}

// Read decodes a job file and reports every fault of its form.
func Read(file string, data []byte) (*Job, diag.List) {
	var j Job
	list := source.Decode(file, data, &j)
	if list.Err() != nil {
		return nil, list
	}
	j.Source = data
	return &j, list
}
