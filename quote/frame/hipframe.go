package frame

import (
	"tentwright/catalog"
	"tentwright/catalog/unit"
)

// hipPlan is a hip frame in bays: across and along are both 1, or across is
// even and along no less. Lengths are in metres.
type hipPlan struct {
	across, along  int
	bay, rise, leg float64
}

// hipPlanOf counts the bays of a size that is known to be made of whole ones.
func hipPlanOf(s *catalog.Size, leg unit.Length) hipPlan {
	return hipPlan{across: int(s.Width / s.Bay), along: int(s.Length / s.Bay),
		bay: s.Bay.Metres(), rise: s.Rise.Metres(), leg: leg.Metres()}
}

// hipFrame draws a frame of poles: a leg under each eave fitting, rafters up
// to one crown or to a ridge.
func hipFrame(p hipPlan) draft {
	var d draft
	if p.across == 1 {
		d.hipSingle(p)
	} else {
		d.hipRings(p)
	}
	// Feet are appended while the loop runs over the nodes as they were.
	for i, eave := range d.nodes {
		if eave.Role == "corner" || eave.Role == "side-tee" {
			d.join("leg", d.node("base", ground(eave.At), eave.Sides...), i)
		}
	}
	width, length := float64(p.across)*p.bay, float64(p.along)*p.bay
	d.planes = hipPlanes(length, width, width/2, p.leg, p.rise)
	return d
}

// hipSingle is one bay: four corners and a crown over the middle.
func (d *draft) hipSingle(p hipPlan) {
	b := p.bay
	for _, at := range []struct {
		x, y float64
		on   []string
	}{{0, 0, sides(true, false, false, true)}, {b, 0, sides(true, true, false, false)},
		{b, b, sides(false, true, true, false)}, {0, b, sides(false, false, true, true)}} {
		d.node("corner", Point{at.x, at.y, p.leg}, at.on...)
	}
	crown := d.node("crown", Point{b / 2, b / 2, p.leg + p.rise})
	for i := range 4 {
		d.join("perimeter", i, (i+1)%4)
	}
	for i := range 4 {
		d.join("hip", i, crown)
	}
}

// ring is how many bays a node of the grid lies within the eaves: 0 on the
// perimeter, across/2 on the ridge.
func (p hipPlan) ring(i, j int) int { return min(i, p.along-i, j, p.across-j) }

// turns tells whether the ring through the node turns a corner there.
func (p hipPlan) turns(i, j int) bool { return min(i, p.along-i) == min(j, p.across-j) }

// hipRings is the frame of several bays. Its nodes stand on the grid of the
// bays, at a height that follows from their ring; every line of the grid is a
// member, level on a ring and rising between two, and hips run diagonally
// through the corners of the rings.
func (d *draft) hipRings(p hipPlan) {
	at := func(i, j int) int { return i*(p.across+1) + j }
	for i := range p.along + 1 {
		for j := range p.across + 1 {
			z := p.leg + p.rise*float64(p.ring(i, j))/float64(p.across/2)
			on := sides(j == 0, i == p.along, j == p.across, i == 0)
			d.node(p.role(i, j), Point{float64(i) * p.bay, float64(j) * p.bay, z}, on...)
		}
	}
	for i := range p.along + 1 {
		for j := range p.across + 1 {
			if i < p.along {
				d.join(p.line(p.ring(i, j), p.ring(i+1, j)), at(i, j), at(i+1, j))
			}
			if j < p.across {
				d.join(p.line(p.ring(i, j), p.ring(i, j+1)), at(i, j), at(i, j+1))
			}
		}
	}
	for k := range p.across / 2 {
		right, back := p.along-k, p.across-k
		d.join("hip", at(k, k), at(k+1, k+1))
		d.join("hip", at(right, k), at(right-1, k+1))
		d.join("hip", at(right, back), at(right-1, back-1))
		d.join("hip", at(k, back), at(k+1, back-1))
	}
}

// role is the fitting at a node of the grid. On the innermost ring the ends of
// the ridge turn, and are crowns; a ring that is one point is a single crown.
func (p hipPlan) role(i, j int) string {
	turns := p.turns(i, j)
	switch k := p.ring(i, j); {
	case k == 0 && turns:
		return "corner"
	case k == 0:
		return "side-tee"
	case k < p.across/2 && turns:
		return "hip-cross"
	case k < p.across/2:
		return "purlin-cross"
	case turns:
		return "crown"
	}
	return "ridge-tee"
}

// line is the role of the member between neighbours on two rings, given from
// 0 at the eaves: level on one ring, a rafter between two.
func (p hipPlan) line(from, to int) string {
	switch {
	case from != to:
		return "common"
	case from == 0:
		return "perimeter"
	case from == p.across/2:
		return "ridge"
	}
	return "purlin"
}

// hipPlanes is the roof over a plan with eaves all round: a trapezoid at each
// side and a triangle over each end, in the order of the sides.
func hipPlanes(length, width, end, eave, rise float64) [][]Point {
	a, b := Point{0, 0, eave}, Point{length, 0, eave}
	c, e := Point{length, width, eave}, Point{0, width, eave}
	left, right := Point{end, width / 2, eave + rise}, Point{length - end, width / 2, eave + rise}
	return [][]Point{{a, b, right, left}, {b, c, right}, {c, e, left, right}, {e, a, left}}
}
