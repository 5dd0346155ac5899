// Package power finds the heat, light and current that the job needs, and the
// heaters, cables and generator that give them.
//
// All figures are in the shop's units, as catalog.Power has them, and rounded
// where a cell of the workbook rounds them. Current is counted in volt-amperes:
// watts by the power factor.
package power

import (
	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
	"tentwright/quote/parts"
	"tentwright/quote/tent"
)

// Result is what the stage finds.
type Result struct {
	Heat    *Heat  // nil: the job asks for none
	Loads   []Load // of the shop's list, those that the job takes along first counted
	VA      money.Number
	Watts   money.Number
	Light   *Light  // nil: the shop says nothing of light, or there is no tent
	Supply  *Supply // nil: the job says nothing of its current
	Fuels   []Fuel
	Gear    []Gear
	Missing []string        // values that the shop or the job must give before something can be worked out
	Asked   int             // how many of these keep from being worked out what the job asks for: heat or current
	Planned []parts.Planned // to be brought beyond what the job orders
}

// Gear is an item of the shop's lists: how much of it is needed and taken.
type Gear struct {
	Item    *catalog.Item
	Kind    string       // heater, generator, box, feeder, cord
	Needed  money.Number // beside a heater or a generator, the one in the plan
	Ordered money.Number // by hand, within kits too
	Planned money.Number
}

// Taken is what goes along.
func (g *Gear) Taken() money.Number { return g.Ordered.Add(g.Planned) }

// Build plans heat and power; nil where the shop has no power file.
func Build(c *catalog.Catalog, j *job.Job, tents []tent.Tent) *Result {
	if c.Power == nil {
		return nil
	}
	b := &builder{c: c, j: j, p: c.Power, sys: c.Company.Units, tents: tents, r: &Result{}, plan: map[string]money.Number{}, why: map[string]string{}}
	b.heat()
	b.loads()
	b.light()
	b.supply()
	b.gear()
	b.fuels()
	b.planned()
	return b.r
}

// builder works the result out.
type builder struct {
	c     *catalog.Catalog
	j     *job.Job
	p     *catalog.Power
	sys   unit.System
	tents []tent.Tent
	r     *Result

	plan map[string]money.Number // by the id of an item: to be brought beyond the order
	why  map[string]string
}

// counts tells whether an entry counts in this shop.
func (b *builder) counts(demo bool) bool { return !demo || b.c.Demo }

// missing says what must be given first.
func (b *builder) missing(what string) { b.r.Missing = append(b.r.Missing, what) }

// asked says the same of what the job asks for: nobody may take it for planned.
func (b *builder) asked(what string) {
	b.missing(what)
	b.r.Asked++
}

// ordered is how many of an item the job orders by hand, within kits too; an
// extra that is not chosen does not count.
func (b *builder) ordered(item string) money.Number {
	sum := money.Zero
	for i := range b.j.Items {
		line := &b.j.Items[i]
		if it := b.c.Item(line.Item); it != nil && (!line.Optional || line.Chosen) {
			sum = sum.Add(line.Quantity.Mul(b.c.Holds(it, item)))
		}
	}
	return sum
}

// bring plans more of an item, beyond what is ordered.
func (b *builder) bring(item string, many money.Number, why string) {
	if !many.IsPositive() {
		return
	}
	b.plan[item] = b.plan[item].Add(many)
	b.why[item] = why
}

// most is how many more of an item the yard owns than the job orders; below
// zero where it owns any number, or hires it in.
func (b *builder) most(item string) int {
	limit := -1
	for _, content := range b.c.Item(item).Contents {
		p := b.c.Part(content.Part)
		if p == nil || p.Owned == 0 || !content.Count.IsPositive() {
			continue
		}
		if n := int(money.Int(p.Owned).Div(content.Count).IntPart()); limit < 0 || n < limit {
			limit = n
		}
	}
	if limit < 0 {
		return limit
	}
	return max(0, limit-money.RoundUp(b.ordered(item)))
}

// price is the customer's base price of one of an item, by which sets are
// chosen.
func (b *builder) price(item string) money.Number { return b.c.ItemPrice(b.c.Item(item)) }

// planned lists what is brought beyond the order, in the order of the price list.
func (b *builder) planned() {
	for i := range b.c.Items {
		it := &b.c.Items[i]
		if n := b.plan[it.ID]; n.IsPositive() {
			b.r.Planned = append(b.r.Planned, parts.Planned{Item: it, Quantity: n, Why: "planned " + b.why[it.ID]})
		}
	}
}

// roundUp is the least whole number that covers n, as cells round up.
func roundUp(n money.Number) money.Number { return money.Int(money.RoundUp(n)) }
