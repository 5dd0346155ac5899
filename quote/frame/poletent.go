package frame

import (
	"tentwright/catalog"
	"tentwright/catalog/unit"
)

// polePlan is a pole tent: two ends, and a centre pole at each seam between
// them and the middles. Lengths are in metres.
type polePlan struct {
	middles              int
	frontGaps, rightGaps int // spaces between side poles along the length and the width
	quarters             bool
	length, width, end   float64
	bay, rise, leg, out  float64
}

// polePlanOf counts middles and the spaces between side poles, the fewest that
// keep to the family's limit on each side.
func polePlanOf(f *catalog.Family, s *catalog.Size, leg unit.Length) polePlan {
	return polePlan{
		middles:   int((s.Length - 2*s.End) / s.Bay),
		frontGaps: spaces(s.Length, f.Poles.SideSpacing), rightGaps: spaces(s.Width, f.Poles.SideSpacing),
		quarters: s.Width >= f.Poles.QuarterFrom,
		length:   s.Length.Metres(), width: s.Width.Metres(), end: s.End.Metres(),
		bay: s.Bay.Metres(), rise: s.Rise.Metres(), leg: leg.Metres(), out: out(f, leg).Metres(),
	}
}

// poleTent draws a tent of fabric in tension over poles: centre poles on the
// ridge line, quarter poles half way down on wide tents, side poles round the
// edge with a guy to a stake each, two at a corner.
func poleTent(p polePlan) draft {
	var d draft
	d.centrePoles(p)
	if p.quarters {
		d.quarterPoles(p)
	}
	d.sidePoles(p)
	d.planes = hipPlanes(p.length, p.width, p.end, p.leg, p.rise)
	return d
}

// ridgeAt is how far along the length a centre pole stands.
func (p polePlan) ridgeAt(i int) float64 { return p.end + float64(i)*p.bay }

// stand adds an upright pole between its foot on the ground and its head, and
// tells the head's index.
func (d *draft) stand(role, head, foot string, at Point, on ...string) int {
	top := d.node(head, at, on...)
	d.join(role, d.node(foot, ground(at), on...), top)
	return top
}

// centrePoles stand where sections of the top meet, under the peaks.
func (d *draft) centrePoles(p polePlan) {
	for i := range p.middles + 1 {
		d.stand("centre-pole", "peak", "pole-foot", Point{p.ridgeAt(i), p.width / 2, p.leg + p.rise})
	}
}

// quarterPoles stand half way between peak and eave: at both sides of each
// centre pole, and in each end on the ridge line.
func (d *draft) quarterPoles(p polePlan) {
	half := p.leg + p.rise/2
	quarter := func(x, y float64) {
		d.stand("quarter-pole", "quarter-peak", "pole-foot", Point{x, y, half})
	}
	quarter(p.end/2, p.width/2)
	for i := range p.middles + 1 {
		quarter(p.ridgeAt(i), p.width/4)
		quarter(p.ridgeAt(i), p.width*3/4)
	}
	quarter(p.length-p.end/2, p.width/2)
}

// sidePoles goes round the edge, each side from its first corner up to, and
// not including, the next.
func (d *draft) sidePoles(p polePlan) {
	type edge struct {
		from, to    Point // corners
		gaps        int
		side, after string  // this side, and the one met at the first corner
		nx, ny      float64 // outward normals: of this side ...
		cx, cy      float64 // ... and of the one at the first corner
	}
	a, b := Point{0, 0, p.leg}, Point{p.length, 0, p.leg}
	c, e := Point{p.length, p.width, p.leg}, Point{0, p.width, p.leg}
	for _, g := range []edge{
		{a, b, p.frontGaps, "front", "left", 0, -1, -1, 0},
		{b, c, p.rightGaps, "right", "front", 1, 0, 0, -1},
		{c, e, p.frontGaps, "back", "right", 0, 1, 1, 0},
		{e, a, p.rightGaps, "left", "back", -1, 0, 0, 1},
	} {
		for i := range g.gaps {
			t := float64(i) / float64(g.gaps)
			at := Point{g.from.X + t*(g.to.X-g.from.X), g.from.Y + t*(g.to.Y-g.from.Y), p.leg}
			if i > 0 {
				d.guy(d.stand("side-pole", "eave", "base", at, g.side), p.out, g.nx, g.ny)
				continue
			}
			on := sides(g.side == "front" || g.after == "front", g.side == "right" || g.after == "right",
				g.side == "back" || g.after == "back", g.side == "left" || g.after == "left")
			// A corner is pulled along both sides that meet there.
			corner := d.stand("side-pole", "eave-corner", "base", at, on...)
			d.guy(corner, p.out, g.nx, g.ny)
			d.guy(corner, p.out, g.cx, g.cy)
		}
	}
}

// guy ropes a side pole's head to a stake straight out from its side.
func (d *draft) guy(head int, out, nx, ny float64) {
	at := d.nodes[head].At
	stake := d.node("stake", Point{at.X + out*nx, at.Y + out*ny, 0}, d.nodes[head].Sides...)
	d.join("guy", head, stake)
}
