package lift

import (
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/tent"
)

// Raise is the people that one side of a tent takes to lift.
type Raise struct {
	Key    string // tent/id of the raising
	Tent   string
	Spec   *catalog.Raising
	Side   string
	Legs   int // of the longest side
	Jacks  int // on the job's parts list
	Jacked bool
	People int
}

// raises looks at the longest side of every tent: one side is lifted at a time.
func (b *builder) raises() {
	for i := range b.p.Tents {
		t := &b.p.Tents[i]
		for k := range b.c.Crew.Raising {
			spec := &b.c.Crew.Raising[k]
			if !slices.Contains(spec.Families, t.Family.ID) {
				continue
			}
			side, legs := longest(t)
			if legs == 0 {
				continue
			}
			x := Raise{Key: t.Job.ID + "/" + spec.ID, Tent: t.Job.ID, Spec: spec, Side: side, Legs: legs, Jacks: b.jacks(spec)}
			x.Jacked = spec.Jack != "" && x.Jacks >= legs
			x.People = hands(spec, legs, x.Jacked)
			b.r.Raises = append(b.r.Raises, x)
		}
	}
}

// hands is the people at so many legs, rounded up.
func hands(spec *catalog.Raising, legs int, jacked bool) int {
	each := spec.Hands
	if jacked {
		each = spec.WithJack
	}
	return money.RoundUp(money.Int(legs).Mul(each))
}

// jacks is how many jacks the job takes along, for all of its tents together.
func (b *builder) jacks(spec *catalog.Raising) int {
	if line := b.p.Find(spec.Jack); line != nil {
		return line.Total()
	}
	return 0
}

// longest is the longest side of the plan and the legs along it, with those at
// its corners; of sides as long as each other the one with most legs.
func longest(t *tent.Tent) (side string, legs int) {
	feet := t.Graph.Legs()
	length := unit.Length(0)
	for _, s := range t.Graph.Sides {
		n := 0
		for _, leg := range feet {
			if slices.Contains(leg.Sides, s.Name) {
				n++
			}
		}
		if s.Length > length || s.Length == length && n > legs {
			side, legs, length = s.Name, n, s.Length
		}
	}
	return side, legs
}

// RaiseOf is the raising that asks for the people of a task; nil where none
// does. Of several the one that asks for most.
func (r *Result) RaiseOf(rule *catalog.LabourRule, tent string) *Raise {
	if r == nil || tent == "" {
		return nil
	}
	var most *Raise
	for i := range r.Raises {
		x := &r.Raises[i]
		if x.Tent == tent && slices.Contains(x.Spec.Rules, rule.ID) && (most == nil || x.People > most.People) {
			most = x
		}
	}
	return most
}
