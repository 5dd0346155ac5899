package tent

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"tentwright/quote/frame"
)

// Walk lists the legs of the tent, by their place among the graph's legs, in the
// order in which a crew walks: from the front left corner along the front, the
// right, the back and the left; those inside come last.
func (t *Tent) Walk() []int {
	legs := t.Graph.Legs()
	order := make([]int, len(legs))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		sideA, alongA := t.stretch(legs[a])
		sideB, alongB := t.stretch(legs[b])
		return cmp.Or(cmp.Compare(sideA, sideB), cmp.Compare(alongA, alongB))
	})
	return order
}

// stretch is the side on which a leg is met, from 0 for the front, and how far
// along it; a corner begins the side that comes next.
func (t *Tent) stretch(leg frame.Leg) (side int, along float64) {
	at := t.Graph.Nodes[leg.Node].At
	on := func(name string) bool { return slices.Contains(leg.Sides, name) }
	switch {
	case on("front") && !on("right"):
		return 0, at.X
	case on("right") && !on("back"):
		return 1, at.Y
	case on("back") && !on("left"):
		return 2, -at.X
	case on("left"):
		return 3, -at.Y
	}
	return 4, at.X
}

// WalkSide is the side on which a leg is met on the walk, so that a corner
// belongs to the side that it begins; "inside" for one that is on none.
func (t *Tent) WalkSide(leg int) string {
	side, _ := t.stretch(t.Graph.Legs()[leg])
	return []string{"front", "right", "back", "left", "inside"}[side]
}

// LegNames calls each leg, in the order of the graph's legs, by its number on
// the walk and where it stands: "1 front left corner", "2 front".
func (t *Tent) LegNames() []string {
	legs := t.Graph.Legs()
	names := make([]string, len(legs))
	for n, i := range t.Walk() {
		where := strings.Join(legs[i].Sides, " ")
		switch {
		case len(legs[i].Sides) == 0:
			where = "inside"
		case legs[i].Corner:
			where += " corner"
		}
		names[i] = fmt.Sprintf("%d %s", n+1, where)
	}
	return names
}
