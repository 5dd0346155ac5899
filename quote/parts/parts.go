// Package parts turns the job's tents and items into order lines, counts and
// the parts that go along: from the graph of each tent, from the contents of
// items and kits, and from the shop's rules.
//
//	Order  a line that the customer orders, tents included
//	Count  something counted on a tent or on the job; rules are driven by it
//	Need   parts asked for by one source, with its count and rate
//	Line   one part in total, with its spares and its weight
//
// Every figure keeps the terms that it was made from.
package parts

import (
	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
	"tentwright/quote/tent"
)

// Result is what the stage finds.
type Result struct {
	Tents  []tent.Tent
	Orders []Order
	Counts []Count
	Needs  []Need
	Lines  []Line // in catalog order

	counted map[string]int // key of a count to its place in Counts
	taken   map[string]int // id of a part to its place in Lines
	placed  map[string]int // id of a tent to its place in Tents
}

// Order is a line of what the customer orders or is offered.
type Order struct {
	Key      string // T:dinner, W:dinner:solid, L:1 ...
	Section  string
	Name     string
	Item     *catalog.Item // nil for a tent
	Tent     *tent.Tent    // of a tent, its walls, doors and gutter
	Quantity money.Number  // as asked for
	Optional bool
	Chosen   bool
	Derived  string       // key of the count that gives the quantity; none: entered by hand
	Discount money.Number // percent, by hand
	Note     string
	Pos      diag.Pos
}

// Ordered is the quantity that counts: none of an extra that is not chosen.
func (o *Order) Ordered() money.Number {
	if o.Optional && !o.Chosen {
		return money.Zero
	}
	return o.Quantity
}

// Count is an amount that rules are driven by: so much for one, times how many.
type Count struct {
	Key    string // dinner.legs, job.guests ...
	Driver string
	Tent   string // id; none for the job
	Name   string
	Per    money.Number // for one tent, from its graph; or for the job
	Order  string       // key of the order that says how many; none: once
	Many   money.Number
	Amount money.Number // Per times Many
}

// Need is parts asked for by one source.
type Need struct {
	Key      string
	Part     *catalog.Part
	Source   string       // what asks for it, in words
	Rule     string       // id of the part rule, if one asks
	Count    string       // key of the count that drives it, or
	Order    string       // key of the order that drives it
	Of       money.Number // amount of the driver
	Per      money.Number // parts per one of it
	Min      int
	Quantity int // the larger of Min and Per times Of rounded up; 0 where Of is 0
}

// Line is one part in total.
type Line struct {
	Part    *catalog.Part
	Each    unit.Mass
	Counted int // sum of the needs
	Spare   int
}

// Total is what is picked.
func (l *Line) Total() int { return l.Counted + l.Spare }

// Mass is the weight of all that is picked, without packs.
func (l *Line) Mass() unit.Mass { return unit.Mass(l.Total()) * l.Each }

// WeightDiffer is the code of one stock section that would weigh different in
// two tents.
const WeightDiffer = "weight-differs"

// Planned is an item that a stage before this one decided to bring, beyond
// what the job orders.
type Planned struct {
	Item     *catalog.Item
	Quantity money.Number
	Why      string // noted on its line
}

// Build counts everything that the job takes along with its tents. The job must
// have passed its check against the catalog.
func Build(c *catalog.Catalog, j *job.Job, tents []tent.Tent, planned []Planned) (*Result, diag.List) {
	b := &builder{c: c, j: j, r: &Result{counted: map[string]int{}, taken: map[string]int{}, placed: map[string]int{}},
		each: map[string]unit.Mass{}, merged: map[string]int{}, ordered: map[string]int{}}
	b.r.Tents = tents
	for i := range tents {
		b.r.placed[tents[i].Job.ID] = i
	}
	b.orders()
	b.plan(planned)
	b.counts()
	b.needTents()
	b.needItems()
	b.needRules()
	b.lines()
	if b.list.Err() != nil {
		return nil, b.list
	}
	return b.r, b.list
}

type builder struct {
	c    *catalog.Catalog
	j    *job.Job
	r    *Result
	list diag.List

	each    map[string]unit.Mass // of tops, from the tents
	merged  map[string]int       // need key to its place in r.Needs
	ordered map[string]int       // order key to its place in r.Orders
}

// Find gives the line of a part; nil if the job takes none.
func (r *Result) Find(part string) *Line {
	if at, ok := r.taken[part]; ok {
		return &r.Lines[at]
	}
	return nil
}

// Amount is the amount of a count; zero where nothing is counted.
func (r *Result) Amount(key string) money.Number {
	if at, ok := r.counted[key]; ok {
		return r.Counts[at].Amount
	}
	return money.Zero
}
