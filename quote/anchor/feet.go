package anchor

import (
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/frame"
	"tentwright/quote/tent"
)

// Kinds of families as the catalog has them.
const (
	hipFrame  = "hip-frame"
	poleTent  = "pole"
	clearSpan = "clear-span"
)

// gravity turns the weight on a scale into a force: standard gravity, m/s2 (CGPM
// 1901).
const gravity = 9.80665

// force is the weight of a mass in newtons.
func force(m unit.Mass) float64 { return m.Kilograms() * gravity }

// foot is a leg while it is computed.
type foot struct {
	at       frame.Point   // in plan, of the whole group
	sides    []string      // of the tent
	outs     []frame.Point // ways in which a guy may run
	surfaces []*catalog.SiteOption
	way      string
	rise     float64 // where it is held sideways
	run      float64 // of its guy, from the leg out to the stake
	spared   bool    // holds sideways only where nothing else does
	corner   bool
}

// outward is the direction away from the tent at each side.
var outward = map[string]frame.Point{"front": {Y: -1}, "right": {X: 1}, "back": {Y: 1}, "left": {X: -1}}

// feetOf stands the legs of a tent where they are, each held in the way that its
// sides allow. What is in weighted is held by ballast whatever its ground.
func feetOf(t *tent.Tent, at tent.Offset, weighted map[int]bool) []foot {
	legs := t.Graph.Legs()
	feet := make([]foot, len(legs))
	for i, leg := range legs {
		p := t.Graph.Nodes[leg.Node].At
		f := foot{at: frame.Point{X: p.X + at.X, Y: p.Y + at.Y}, sides: leg.Sides, corner: leg.Corner}
		f.hold(t, weighted[i])
		feet[i] = f
	}
	return feet
}

// hold decides how a foot is held. A guy may run out from any side that is free;
// a base plate stands on the line of every side it is at.
func (f *foot) hold(t *tent.Tent, weighted bool) {
	var free []*catalog.SiteOption
	all := true
	for _, side := range f.sides {
		shared := slices.Contains(t.Shared, side)
		f.spared = f.spared || shared
		ground, may := t.GroundAt(side), t.MayStakeAt(side)
		f.surfaces = append(f.surfaces, ground)
		all = all && may
		if may && !shared {
			f.outs = append(f.outs, outward[side])
			free = append(free, ground)
		}
	}
	guyed := t.Family.Kind != clearSpan && t.Graph.Out > 0
	switch {
	case !weighted && guyed && len(f.outs) > 0:
		f.way, f.surfaces, f.rise, f.run = Guyed, free, t.Graph.Eave.Metres(), t.Graph.Out.Metres()
		f.spared = false
	case !weighted && !guyed && all && len(f.sides) > 0:
		f.way = Upright
	default:
		f.way = Weight
	}
}

// legsOf lists the legs for people, by number and side.
func legsOf(t *tent.Tent) []Leg {
	var legs []Leg
	for _, l := range t.Graph.Legs() {
		legs = append(legs, Leg{At: t.Graph.Nodes[l.Node].At, Sides: l.Sides, Surface: t.Ground})
		if len(l.Sides) > 0 {
			legs[len(legs)-1].Surface = t.GroundAt(l.Sides[0])
		}
	}
	for i, name := range t.LegNames() {
		legs[i].Name = name
	}
	return legs
}

// weightOf is what the tent itself weighs without its walls, in newtons: poles,
// fittings and top.
func weightOf(c *catalog.Catalog, t *tent.Tent) float64 {
	total := 0.0
	for _, m := range t.Graph.Members {
		total += weightOfPart(c, c.Part(m.Part))
	}
	for _, n := range t.Graph.Nodes {
		total += weightOfPart(c, c.Part(n.Part))
	}
	for _, s := range t.Graph.Sections {
		p := c.Part(s.Part)
		if p != nil && p.Cloth != nil && p.Cloth.Width == 0 {
			total += float64(s.Count) * weightOfCloth(c.Fabric(p.Cloth.Fabric), float64(s.Area), t.Family.Seam.InexactFloat64())
			continue
		}
		total += float64(s.Count) * weightOfPart(c, p)
	}
	return total
}

// weightOfPart is what one part weighs, in newtons. It is not rounded as scales
// are read, so that a shop which counts in kilograms plans the same anchors as
// one which counts in pounds.
func weightOfPart(c *catalog.Catalog, p *catalog.Part) float64 {
	switch {
	case p == nil:
		return 0
	case p.Weight != nil:
		return force(*p.Weight)
	case p.Pole != nil:
		if profile := c.Profile(p.Pole.Profile); profile != nil {
			return profile.SectionArea() * p.Pole.Length.Metres() * profile.Density.InexactFloat64() * gravity
		}
	case p.Cloth != nil:
		if f := c.Fabric(p.Cloth.Fabric); f != nil {
			return weightOfCloth(f, p.Cloth.Width.Metres()*p.Cloth.Height.Metres(), f.SeamFactor())
		}
	}
	return 0
}

// weightOfCloth is the weight of so many square metres with seams and hems, in
// newtons.
func weightOfCloth(f *catalog.Fabric, area, seam float64) float64 {
	if f == nil {
		return 0
	}
	return f.Grams.InexactFloat64() / 1000 * area * seam * gravity
}
