// Package lift says which parts are too heavy for one person, and how many
// people a task needs because of what it lifts.
//
// The limit of one person is the recommended weight limit of the revised
// lifting equation (NIOSH Publication 94-110). It is guidance for one healthy
// person who lifts with both hands in the open; it is not multiplied by heads.
// What a team lifts is that limit times its people times a share below 1, which
// is the shop's own figure and no part of the equation.
package lift

import (
	"cmp"
	"slices"
	"strings"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/parts"
)

// Result is the lifts of a job and the people that they ask for.
type Result struct {
	Lifts    []Lift // of what goes along and one person should not lift: by hand with the highest index first, then by machine
	Others   []Lift // what one person may lift, and what does not go along, likewise
	Unjudged []*catalog.Part
	Raises   []Raise
	Team     []catalog.TeamShare // that count in this shop
	Missing  []string            // what the shop has not entered, in words

	rules []string
}

// Lift is how one part, or one pack of it, is lifted.
type Lift struct {
	Key    string // id of the part
	Part   *catalog.Part
	How    *catalog.Lift
	Count  int       // pieces that go along
	Each   unit.Mass // of one piece, dry
	Holds  int       // pieces that are lifted at once
	Tare   unit.Mass // of the pack that is lifted with them
	Wet    bool      // counted wet, as it may come back
	Weight unit.Mass // of what is lifted at once
	Limit  unit.Mass // of one person; 0: beyond what the equation allows at all, or lifted by a machine
	Terms  Terms
	Index  float64 // Weight over Limit; 0 where there is no limit
	People int     // who lift it together; 0: a machine does, or must since no team of the shop's table can
}

// Terms are the multipliers of the lifting equation.
type Terms struct{ Horizontal, Vertical, Distance, Asymmetry, Frequency, Coupling float64 }

// Build looks at every part that goes along and at every tent that is raised.
// It is empty where the shop's crew file says nothing of lifting.
func Build(c *catalog.Catalog, p *parts.Result) *Result {
	r := &Result{}
	if c.Crew == nil {
		return r
	}
	b := &builder{c: c, p: p, r: r}
	if c.Crew.Lifting != nil {
		b.lifts(c.Crew.Lifting)
	}
	b.raises()
	return r
}

type builder struct {
	c    *catalog.Catalog
	p    *parts.Result
	r    *Result
	rows []catalog.FrequencyRow // that count in this shop
	poor *catalog.PoorGrip      // likewise
}

// lifts judges every line of the parts list.
func (b *builder) lifts(l *catalog.Lifting) {
	b.r.rules = l.Rules
	b.take(l)
	for i := range b.p.Lines {
		b.lift(l, &b.p.Lines[i])
	}
	for _, list := range [][]Lift{b.r.Lifts, b.r.Others} {
		slices.SortFunc(list, func(x, y Lift) int {
			return cmp.Or(cmp.Compare(rank(&x), rank(&y)), -cmp.Compare(x.Index, y.Index), -cmp.Compare(x.Weight, y.Weight), cmp.Compare(x.Key, y.Key))
		})
	}
	if len(b.r.Team) == 0 && slices.ContainsFunc(b.r.Lifts, func(x Lift) bool { return !x.How.Machine }) {
		b.r.Missing = append(b.r.Missing, "what several people lift together (team); what is too heavy for one needs a machine until then")
	}
}

// rank puts what no one may lift before the other lifts, and machines behind.
func rank(x *Lift) int {
	switch {
	case x.How.Machine:
		return 2
	case x.Limit > 0:
		return 1
	}
	return 0
}

// take keeps the rows that count: those of a demonstration only in its shop.
func (b *builder) take(l *catalog.Lifting) {
	for i := range l.Frequency {
		if !l.Frequency[i].Demo || b.c.Demo {
			b.rows = append(b.rows, l.Frequency[i])
		}
	}
	for i := range l.Team {
		if !l.Team[i].Demo || b.c.Demo {
			b.r.Team = append(b.r.Team, l.Team[i])
		}
	}
	if l.Poor != nil && (!l.Poor.Demo || b.c.Demo) {
		b.poor = l.Poor
	}
	poor := slices.ContainsFunc(l.Lifts, func(x catalog.Lift) bool { return x.Coupling == "poor" })
	switch {
	case len(b.rows) == 0:
		b.r.Missing = append(b.r.Missing, "the multipliers for how often a lift is made (frequency); no lift is judged until then")
	case b.poor == nil && poor:
		b.r.Missing = append(b.r.Missing, "the multiplier of a poor grip (poor_grip); no lift with one is judged until then")
	}
}

// lift judges how one part is lifted.
func (b *builder) lift(l *catalog.Lifting, line *parts.Line) {
	how := wayOf(l, line.Part)
	if how == nil {
		b.unjudged(line)
		return
	}
	x := Lift{Key: line.Part.ID, Part: line.Part, How: how, Count: line.Total(), Each: line.Each, Holds: 1, Wet: line.Part.Wets}
	if how.Whole {
		x.Holds = line.Part.Pack.Holds
		if line.Part.Pack.Tare != nil {
			x.Tare = *line.Part.Pack.Tare
		}
	}
	x.Weight = x.WeightAt(b.c.Rates.WetFactor, b.c.Company.Units)
	if !how.Machine {
		terms, known := b.terms(how)
		if !known {
			b.unjudged(line)
			return
		}
		x.Terms = terms
		x.Limit = unit.Mass(float64(Constant(b.c.Company.Units)) * terms.product())
		if x.Limit > 0 {
			x.Index = float64(x.Weight) / float64(x.Limit)
			x.People = b.r.people(x.Index)
		}
	}
	if x.Count > 0 && x.Heavy(b.c.Company.Units) {
		b.r.Lifts = append(b.r.Lifts, x)
	} else {
		b.r.Others = append(b.r.Others, x)
	}
}

// unjudged notes a part that goes along and of whose lift nothing is known.
func (b *builder) unjudged(line *parts.Line) {
	if line.Total() > 0 {
		b.r.Unjudged = append(b.r.Unjudged, line.Part)
	}
}

// WeightAt is what is lifted at once where wet cloth weighs so many times what
// it does dry, each piece rounded as the load rounds it.
func (x *Lift) WeightAt(wet money.Number, sys unit.System) unit.Mass {
	each := x.Each
	if x.Wet {
		each = unit.Mass(money.Round(money.Int(int(each)).Mul(wet), 0).IntPart()).RoundTo(sys)
	}
	return unit.Mass(x.Holds)*each + x.Tare
}

// Heavy tells whether one person should not lift it: by hand above their limit,
// or by a machine what would be too much even for an ideal lift.
func (x *Lift) Heavy(sys unit.System) bool {
	if x.How.Machine {
		return x.Weight > Constant(sys)
	}
	return x.Limit <= 0 || x.Index > 1+slack
}

// slack takes up what floats lose.
const slack = 0.000001

// wayOf is how a part is lifted: as its own entry says, else as its kind of pack
// is; nil where neither is known.
func wayOf(l *catalog.Lifting, p *catalog.Part) *catalog.Lift {
	var byPack *catalog.Lift
	for i := range l.Lifts {
		way := &l.Lifts[i]
		if slices.Contains(way.Parts, p.ID) {
			return way
		}
		if byPack == nil && slices.Contains(way.Packs, p.Pack.Kind) {
			byPack = way
		}
	}
	return byPack
}

// people is the smallest team for an index: one person up to 1, then the first
// row of the team table of which the sum, times its share, reaches it.
func (r *Result) people(index float64) int {
	if index <= 1+slack {
		return 1
	}
	for i := range r.Team {
		if float64(r.Team[i].People)*r.Team[i].Share.InexactFloat64() >= index-slack {
			return r.Team[i].People
		}
	}
	return 0
}

// Carries tells whether a labour rule's smallest crew follows from what it
// lifts, and by which tag its parts are told; none: every part.
func (r *Result) Carries(rule *catalog.LabourRule) (tag string, carries bool) {
	if r == nil || !slices.Contains(r.rules, rule.ID) {
		return "", false
	}
	tag, tagged := strings.CutPrefix(rule.Driver, catalog.TagDriver)
	if !tagged {
		tag = ""
	}
	return tag, true
}

// Smallest is the fewest people for a task because of what it lifts; 0 where
// lifting asks for nothing. tent is the task's, or none. What needs a machine
// asks for nobody here.
func (r *Result) Smallest(rule *catalog.LabourRule, tent string) int {
	most := 0
	if tag, carries := r.Carries(rule); carries {
		for i := range r.Lifts {
			if x := &r.Lifts[i]; tag == "" || slices.Contains(x.Part.Tags, tag) {
				most = max(most, x.People)
			}
		}
	}
	if raise := r.RaiseOf(rule, tent); raise != nil {
		most = max(most, raise.People)
	}
	return most
}
