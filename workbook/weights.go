package workbook

import (
	"math"
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/anchor"
	"tentwright/quote/job"
	"tentwright/quote/tent"
)

// The weights of the price list are estimates for added lines, until these are
// quoted: without packs and spares, of tents with every side open.

// itemMass is what one of an item weighs, kits opened down to their parts. What
// hangs on a tent weighs what its stock does, by the length.
func (l *layout) itemMass(it *catalog.Item) unit.Mass {
	sum := l.hungMass(it.ID)
	for _, content := range it.Contents {
		var each unit.Mass
		if content.Item != "" {
			each = l.itemMass(l.q.Catalog.Item(content.Item))
		} else {
			each, _ = l.q.Catalog.Mass(content.Part)
		}
		sum += content.Count.InexactFloat64() * float64(each)
	}
	return unit.Mass(sum).RoundTo(l.sys)
}

// hungMass is what a foot or metre of a wall or gutter weighs, zero of anything
// else. The widest panel for the usual eave stands for a wall.
func (l *layout) hungMass(item string) float64 {
	c := l.q.Catalog
	per := func(part string, length unit.Length) float64 {
		mass, _ := c.Mass(part)
		if l.sys == unit.Metric {
			return float64(mass) / length.Metres()
		}
		return float64(mass) / length.Feet()
	}
	for i := range c.Families {
		f := &c.Families[i]
		if f.Gutter != nil && f.Gutter.Item == item {
			return per(f.Gutter.Part, f.Gutter.Length)
		}
		for j := range f.Walls {
			if w := &f.Walls[j]; w.Item == item {
				panel := usualPanel(w, f.Legs[0])
				return per(panel.Part, panel.Width-w.Overlap)
			}
		}
	}
	return 0
}

// usualPanel is the widest panel of a wall for an eave height, or the widest of
// all where none is made for it.
func usualPanel(w *catalog.WallSpec, eave unit.Length) catalog.WallPanel {
	return slices.MaxFunc(w.Panels, func(a, b catalog.WallPanel) int {
		if fits := a.Height == eave; fits != (b.Height == eave) {
			return map[bool]int{true: 1, false: -1}[fits]
		}
		return int(a.Width - b.Width)
	})
}

// sizeMass is what one tent of a size weighs at its usual eave: frame and top
// by its graph, with what the shop's rules take along and the customary anchors
// that the job's surface allows.
func (l *layout) sizeMass(f *catalog.Family, s *catalog.Size) unit.Mass {
	c := l.q.Catalog
	alone := &job.Job{Site: l.q.Job.Site, Tents: []job.Tent{{ID: s.ID, Family: f.ID, Size: s.ID}}}
	tents, _ := tent.Build(c, alone)
	if len(tents) == 0 {
		return 0
	}
	t := &anchor.ByCustom(c, alone, tents)[0]
	var sum unit.Mass
	add := func(part string, count int) {
		mass, _ := c.Mass(part)
		sum += unit.Mass(count) * mass
	}
	for i := range t.Graph.Members {
		add(t.Graph.Members[i].Part, 1)
	}
	for i := range t.Graph.Nodes {
		add(t.Graph.Nodes[i].Part, 1)
	}
	for _, section := range t.Graph.Sections {
		if p := c.Part(section.Part); p != nil && p.Cloth != nil && p.Cloth.Width == 0 {
			sum += unit.Mass(section.Count) * c.ClothMass(c.Fabric(p.Cloth.Fabric), section.Area, f.Seam.InexactFloat64())
		} else {
			add(section.Part, section.Count)
		}
	}
	for _, taken := range t.Holding.Parts {
		add(taken.Part, taken.Count)
	}
	return (sum + l.ruledMass(t)).RoundTo(l.sys)
}

// ruledMass is what the rules that count on one tent add to it.
func (l *layout) ruledMass(t *tent.Tent) unit.Mass {
	var sum unit.Mass
	for i := range l.q.Catalog.Rules {
		r := &l.q.Catalog.Rules[i]
		if len(r.Families) > 0 && !slices.Contains(r.Families, t.Family.ID) {
			continue
		}
		if n := l.measured(t, r.Driver); n > 0 {
			mass, _ := l.q.Catalog.Mass(r.Part)
			// Less a trace, so that a product of fractions is not one too many.
			sum += unit.Mass(max(r.Min, int(math.Ceil(n*r.Per.InexactFloat64()-1e-6)))) * mass
		}
	}
	return sum
}

// measured is a driver of a tent that stands alone with open sides; zero of
// what it does not have, and of the facts of a whole job.
func (l *layout) measured(t *tent.Tent, driver string) float64 {
	switch driver {
	case "area":
		return t.Graph.Area().In(l.sys)
	case "roof-area":
		return t.Graph.RoofArea().In(l.sys)
	case "perimeter":
		if l.sys == unit.Metric {
			return t.Graph.Perimeter().Metres()
		}
		return t.Graph.Perimeter().Feet()
	case "stakes":
		return float64(t.Staked)
	case "ballast":
		return float64(t.Held)
	case "filled-ballast":
		return float64(t.Filled)
	case "solid-ballast":
		return float64(t.Held - t.Filled)
	}
	return float64(t.Graph.Count(driver))
}
