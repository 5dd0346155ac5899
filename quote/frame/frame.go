// Package frame builds a tent as a graph in three dimensions: nodes are
// fittings, members are the poles, beams, ropes and cables between them.
// Counts are counted on the graph; no table of counts per size exists.
package frame

import (
	"tentwright/catalog/unit"
)

// Point is a place in metres: x along the length, y across the width, z up
// from the ground. The origin is the front left corner of the tent's plan.
type Point struct{ X, Y, Z float64 }

// Node is where members meet: a fitting, a foot, a stake.
type Node struct {
	Role  string // as in catalog.FittingSpec: corner, side-tee, crown ...
	At    Point
	Ways  int      // poles and beams that end here; ropes and cables do not count
	Sides []string // sides of the tent that it stands on: front, right, back, left
	Part  string   // stock fitting
}

// Member is a straight pole, beam, rope or cable between two nodes.
type Member struct {
	Role     string // as in catalog.MemberSpec
	From, To int    // indexes into Tent.Nodes
	Centre   unit.Length
	Cut      unit.Length // centre line less what the fittings take up
	Part     string      // stock pole
}

// Section is a piece of the top and the fabric it takes before seams.
type Section struct {
	Kind  string // one piece, end, middle, bay, gable
	Part  string
	Count int
	Area  unit.Area // of one
}

// Side is one side of the plan, seen from outside: front (y = 0), right
// (x = length), back (y = width), left (x = 0).
type Side struct {
	Name   string
	Length unit.Length
}

// Tent is a tent's graph with what is measured on it.
type Tent struct {
	Kind     string
	Width    unit.Length
	Length   unit.Length
	Eave     unit.Length // leg, side pole or upright height
	Peak     unit.Length
	Out      unit.Length // of the outer stakes, beyond the plan
	Nodes    []Node
	Members  []Member
	Sections []Section
	Sides    []Side
	Planes   [][]Point // of the roof, each flat; gables are not among them

	roof unit.Area
}
