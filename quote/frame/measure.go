package frame

import (
	"math"

	"tentwright/catalog"
	"tentwright/catalog/unit"
)

// Leg is a foot that is anchored: of a frame's leg, a side pole, an upright.
type Leg struct {
	Node   int  // the foot, an index into Tent.Nodes
	Corner bool // it stands at a corner of the plan
	Sides  []string
}

// Legs lists every foot that is anchored, in the order of the nodes: frame
// legs, side poles of pole tents, base plates of clear-span structures.
func (t *Tent) Legs() []Leg {
	var legs []Leg
	for i, n := range t.Nodes {
		if n.Role == "base" || n.Role == "base-plate" {
			legs = append(legs, Leg{Node: i, Corner: len(n.Sides) == 2, Sides: n.Sides})
		}
	}
	return legs
}

// memberDrivers and nodeDrivers are counts of one role on the graph.
var (
	memberDrivers = map[string]string{
		"legs": "leg", "centre-poles": "centre-pole", "quarter-poles": "quarter-pole", "side-poles": "side-pole",
		"guys": "guy", "gable-uprights": "gable-upright", "braces": "brace",
	}
	nodeDrivers = map[string]string{
		"crowns": "crown", "arches": "arch-ridge", "base-plates": "base-plate", "splices": "arch-splice",
	}
)

// Count is how many of a driver the tent has, as named by catalog.Drivers:
// poles without ropes and cables, joints without stakes, corners of the plan
// that are anchored. A driver that is no count of the graph gives 0.
func (t *Tent) Count(driver string) int {
	if role, ok := memberDrivers[driver]; ok {
		return t.countMembers(func(r string) bool { return r == role })
	}
	if role, ok := nodeDrivers[driver]; ok {
		return t.countNodes(func(r string) bool { return r == role })
	}
	switch driver {
	case "tents":
		return 1
	case "joints":
		return t.countNodes(func(r string) bool { return r != "stake" })
	case "poles", "pole-ends":
		poles := t.countMembers(func(r string) bool { return !rope(r) })
		if driver == "pole-ends" {
			return 2 * poles
		}
		return poles
	case "purlins":
		return t.countMembers(func(r string) bool { return r == "purlin" || r == "eave-purlin" || r == "ridge-purlin" })
	case "corners":
		return t.corners()
	case "bays":
		return t.bays()
	case "top-sections":
		n := 0
		for _, s := range t.Sections {
			n += s.Count
		}
		return n
	}
	return 0
}

// countNodes counts the joints of some roles.
func (t *Tent) countNodes(is func(role string) bool) int {
	n := 0
	for i := range t.Nodes {
		if is(t.Nodes[i].Role) {
			n++
		}
	}
	return n
}

// countMembers counts the poles, ropes and cables of some roles.
func (t *Tent) countMembers(is func(role string) bool) int {
	n := 0
	for i := range t.Members {
		if is(t.Members[i].Role) {
			n++
		}
	}
	return n
}

// corners is the anchored feet at corners of the plan.
func (t *Tent) corners() int {
	n := 0
	for _, leg := range t.Legs() {
		if leg.Corner {
			n++
		}
	}
	return n
}

// bays is the spaces along the length: between legs of a frame, between
// arches; of a pole tent its middles, which lie between centre poles.
func (t *Tent) bays() int {
	switch t.Kind {
	case catalog.KindPole:
		return t.Count("centre-poles") - 1
	case catalog.KindSpan:
		return t.Count("arches") - 1
	}
	// The front side lies at y = 0 exactly.
	front := 0
	for _, leg := range t.Legs() {
		if t.Nodes[leg.Node].At.Y == 0 {
			front++
		}
	}
	return front - 1
}

// Area is the area of the plan, in square metres.
func (t *Tent) Area() unit.Area { return unit.Area(t.Width.Metres() * t.Length.Metres()) }

// RoofArea is the area of the roof's slopes in square metres, flat from
// support to support and before seams; gables are not part of it.
func (t *Tent) RoofArea() unit.Area { return t.roof }

// Perimeter is the length of all sides of the plan.
func (t *Tent) Perimeter() unit.Length { return 2 * (t.Width + t.Length) }

// Footprint is the ground that the tent takes with its outer stakes.
func (t *Tent) Footprint() (length, width unit.Length) {
	return t.Length + 2*t.Out, t.Width + 2*t.Out
}

// distance is the straight line between two points, in metres.
func distance(a, b Point) float64 {
	return math.Hypot(math.Hypot(b.X-a.X, b.Y-a.Y), b.Z-a.Z)
}

// flatArea is the area of a flat polygon in space: half the length of the sum
// of the cross products of its triangles from the first corner.
func flatArea(p []Point) float64 {
	var x, y, z float64
	for i := 1; i+1 < len(p); i++ {
		ux, uy, uz := p[i].X-p[0].X, p[i].Y-p[0].Y, p[i].Z-p[0].Z
		vx, vy, vz := p[i+1].X-p[0].X, p[i+1].Y-p[0].Y, p[i+1].Z-p[0].Z
		x, y, z = x+uy*vz-uz*vy, y+uz*vx-ux*vz, z+ux*vy-uy*vx
	}
	return math.Hypot(math.Hypot(x, y), z) / 2
}
