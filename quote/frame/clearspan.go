package frame

import (
	"math"

	"tentwright/catalog"
	"tentwright/catalog/unit"
)

// spanPlan is a clear-span structure: arches with bays between them. Lengths
// are in metres.
type spanPlan struct {
	bays       int
	pieces     int // beams in one rafter
	purlins    int // spaces between purlins on one slope
	gables     int // spaces between gable uprights
	braceEvery int

	width, bay, rise, leg float64
}

// spanPlanOf divides each length into the fewest equal spaces that keep to the
// family's limits.
func spanPlanOf(f *catalog.Family, s *catalog.Size, leg unit.Length) spanPlan {
	return spanPlan{
		bays:   int(s.Length / s.Bay),
		pieces: spaces(slope(s), f.Span.BeamMax), purlins: spaces(slope(s), f.Span.PurlinSpacing),
		gables: spaces(s.Width, f.Span.GableSpacing), braceEvery: f.Span.BraceEvery,
		width: s.Width.Metres(), bay: s.Bay.Metres(), rise: s.Rise.Metres(), leg: leg.Metres(),
	}
}

// slope is the length of a rafter from eave to ridge, to the micrometre.
func slope(s *catalog.Size) unit.Length {
	return unit.FromMetres(math.Hypot(s.Width.Metres()/2, s.Rise.Metres()))
}

// arch is the nodes of one arch; 0 is the front half, 1 the back.
type arch struct {
	foot, eave [2]int
	purlins    [2][]int // from eave to ridge
	ridge      int
}

// clearSpan draws arches without a pole inside, purlins between them, gable
// uprights at both ends and crossed cables in the braced bays.
func clearSpan(p spanPlan) draft {
	var d draft
	arches := make([]arch, p.bays+1)
	for i := range arches {
		arches[i] = d.arch(p, i)
	}
	for i := range p.bays {
		d.purlins(arches[i], arches[i+1])
	}
	d.gable(p, 0, "left")
	d.gable(p, float64(p.bays)*p.bay, "right")
	for i := range p.bays {
		// The last bay is braced whatever the count says.
		if i%p.braceEvery == 0 || i == p.bays-1 {
			d.braces(arches[i], arches[i+1])
		}
	}
	d.planes = p.planes()
	return d
}

// arch stands on two base plates; its rafters are cut in equal beams.
func (d *draft) arch(p spanPlan, i int) arch {
	x := float64(i) * p.bay
	a := arch{ridge: d.node("arch-ridge", Point{x, p.width / 2, p.leg + p.rise})}
	for half, y := range [2]float64{0, p.width} {
		// The first arch stands on the left side of the plan as well, the last
		// on the right.
		on := sides(half == 0, i == p.bays, half == 1, i == 0)
		a.eave[half] = d.node("arch-eave", Point{x, y, p.leg}, on...)
		a.foot[half] = d.node("base-plate", Point{x, y, 0}, on...)
		d.join("upright", a.foot[half], a.eave[half])
		last := a.eave[half]
		for k := 1; k < p.pieces; k++ {
			splice := d.node("arch-splice", d.along(a, half, k, p.pieces))
			d.join("rafter", last, splice)
			last = splice
		}
		d.join("rafter", last, a.ridge)
		// A bracket for a purlin is bolted onto the beam, which runs through.
		for k := 1; k < p.purlins; k++ {
			a.purlins[half] = append(a.purlins[half], d.node("purlin-cross", d.along(a, half, k, p.purlins)))
		}
	}
	return a
}

// along is the point k of n equal parts up a rafter.
func (d *draft) along(a arch, half, k, n int) Point {
	eave, ridge, t := d.nodes[a.eave[half]].At, d.nodes[a.ridge].At, float64(k)/float64(n)
	return Point{eave.X, eave.Y + t*(ridge.Y-eave.Y), eave.Z + t*(ridge.Z-eave.Z)}
}

// purlins ties two neighbouring arches together: one purlin on the ridge, one
// at each eave, and those between along both slopes.
func (d *draft) purlins(a, b arch) {
	d.join("ridge-purlin", a.ridge, b.ridge)
	for half := range 2 {
		d.join("eave-purlin", a.eave[half], b.eave[half])
		for k := range a.purlins[half] {
			d.join("purlin", a.purlins[half][k], b.purlins[half][k])
		}
	}
}

// gable stands uprights between the feet of an end arch, each up to the
// rafter above it.
func (d *draft) gable(p spanPlan, x float64, side string) {
	for k := 1; k < p.gables; k++ {
		// The share is of the half width, so that an upright in the middle
		// reaches the ridge exactly.
		share := float64(min(k, p.gables-k)) / (float64(p.gables) / 2)
		at := Point{x, p.width * float64(k) / float64(p.gables), p.leg + p.rise*share}
		d.stand("gable-upright", "gable-head", "base-plate", at, side)
	}
}

// braces crosses two cables on each roof slope and each wall of a bay.
func (d *draft) braces(a, b arch) {
	for half := range 2 {
		d.join("brace", a.eave[half], b.ridge)
		d.join("brace", b.eave[half], a.ridge)
		d.join("brace", a.foot[half], b.eave[half])
		d.join("brace", b.foot[half], a.eave[half])
	}
}

// planes is the two slopes. Gables are walls of cloth, not roof.
func (p spanPlan) planes() [][]Point {
	length, top := float64(p.bays)*p.bay, p.leg+p.rise
	a, b := Point{0, p.width / 2, top}, Point{length, p.width / 2, top}
	return [][]Point{
		{{0, 0, p.leg}, {length, 0, p.leg}, b, a},
		{{length, p.width, p.leg}, {0, p.width, p.leg}, a, b},
	}
}
