package workbook

import (
	"math"
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/frame"
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
// by its graph, with what the shop's rules take along and the anchors that the
// job's surface allows.
func (l *layout) sizeMass(f *catalog.Family, s *catalog.Size) unit.Mass {
	c := l.q.Catalog
	graph, _ := frame.Build(c, f, s, f.Legs[0])
	if graph == nil {
		return 0
	}
	var sum unit.Mass
	add := func(part string) {
		mass, _ := c.Mass(part)
		sum += mass
	}
	for i := range graph.Members {
		add(graph.Members[i].Part)
	}
	for i := range graph.Nodes {
		add(graph.Nodes[i].Part)
	}
	for _, section := range graph.Sections {
		if p := c.Part(section.Part); p != nil && p.Cloth != nil && p.Cloth.Width == 0 {
			sum += unit.Mass(section.Count) * c.ClothMass(c.Fabric(p.Cloth.Fabric), section.Area, f.Seam.InexactFloat64())
		} else {
			mass, _ := c.Mass(section.Part)
			sum += unit.Mass(section.Count) * mass
		}
	}
	return (sum + l.ruledMass(f, graph)).RoundTo(l.sys)
}

// ruledMass is what the rules that count on one tent add to it.
func (l *layout) ruledMass(f *catalog.Family, graph *frame.Tent) unit.Mass {
	var sum unit.Mass
	for i := range l.q.Catalog.Rules {
		r := &l.q.Catalog.Rules[i]
		if len(r.Families) > 0 && !slices.Contains(r.Families, f.ID) {
			continue
		}
		if n := l.measured(f, graph, r.Driver); n > 0 {
			mass, _ := l.q.Catalog.Mass(r.Part)
			// Less a trace, so that a product of fractions is not one too many.
			sum += unit.Mass(max(r.Min, int(math.Ceil(n*r.Per.InexactFloat64()-1e-6)))) * mass
		}
	}
	return sum
}

// measured is a driver of a tent that stands alone with open sides; zero of
// what it does not have, and of the facts of a whole job.
func (l *layout) measured(f *catalog.Family, graph *frame.Tent, driver string) float64 {
	switch driver {
	case "area":
		return graph.Area().In(l.sys)
	case "roof-area":
		return graph.RoofArea().In(l.sys)
	case "perimeter":
		if l.sys == unit.Metric {
			return graph.Perimeter().Metres()
		}
		return graph.Perimeter().Feet()
	case "stakes", "ballast":
		stakes, ballast := l.anchors(f, graph)
		return float64(map[string]int{"stakes": stakes, "ballast": ballast}[driver])
	}
	return float64(graph.Count(driver))
}

// anchors counts the customary anchors on the job's own surface.
func (l *layout) anchors(f *catalog.Family, graph *frame.Tent) (stakes, ballast int) {
	surface := l.q.Job.Option(l.q.Catalog, catalog.Surface)
	for _, leg := range graph.Legs() {
		switch {
		case surface != nil && surface.NoStakes:
			ballast += f.Anchorage.Ballast
		case leg.Corner:
			stakes += f.Anchorage.Corner
		default:
			stakes += f.Anchorage.PerLeg
		}
	}
	return stakes, ballast
}
