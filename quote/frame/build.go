package frame

import (
	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/catalog/unit"
)

// Codes of the problems that building a frame finds. A bad top has the
// catalog's own code.
const (
	BadSize     = "bad-size"      // a size that cannot be framed as its kind is
	BadFamily   = "bad-family"    // a family without what its kind needs
	NoProfile   = "no-profile"    // a role of pole that the family says nothing about
	NoStockPole = "no-stock-pole" // no pole, rope or cable of the length that is needed
	NoFitting   = "no-fitting"    // a joint that the family has no fitting for
)

// Build lays a size of a family out as a graph that stands at the given eave
// height, and finds the stock part of each member and fitting. The tent is nil
// when it cannot be framed; with other problems it has parts left empty.
func Build(c *catalog.Catalog, f *catalog.Family, s *catalog.Size, leg unit.Length) (*Tent, diag.List) {
	var list diag.List
	units := c.Company.Units
	if why := unmade(f); why != "" {
		list.Addf(f.Where.Pos(), BadFamily, "family %q %s", f.ID, why)
		return nil, list
	}
	if why := unfit(f, s, leg, units); why != "" {
		list.Addf(s.Where.Pos(), BadSize, "size %q of family %q %s", s.ID, f.ID, why)
		return nil, list
	}
	// Geometry first, stock after: a frame with a missing pole can still be
	// counted, so that all its faults are told in one run.
	d := draw(f, s, leg)
	t := &Tent{
		Kind: f.Kind, Width: s.Width, Length: s.Length, Eave: leg, Peak: leg + s.Rise, Out: out(f, leg),
		Nodes: d.nodes, Members: d.members,
		Sides:  []Side{{"front", s.Length}, {"right", s.Width}, {"back", s.Length}, {"left", s.Width}},
		Planes: d.planes, roof: d.roof(),
	}
	sections, why := cutTop(f, s)
	if why != "" {
		list.Addf(s.Top.Where.Pos(), catalog.BadTop, "size %q of family %q %s", s.ID, f.ID, why)
	}
	t.Sections = sections
	k := stocker{c: c, f: f, s: s, list: &list, said: map[string]bool{}, cuts: map[cut]string{}}
	k.members(t.Members)
	k.fittings(t.Nodes)
	return t, list
}

// draw runs the generator of the family's kind on a size that fits it.
func draw(f *catalog.Family, s *catalog.Size, leg unit.Length) draft {
	switch f.Kind {
	case catalog.KindPole:
		return poleTent(polePlanOf(f, s, leg))
	case catalog.KindSpan:
		return clearSpan(spanPlanOf(f, s, leg))
	}
	return hipFrame(hipPlanOf(s, leg))
}

// out is how far the outer stakes stand beyond the plan. A guy of a pole tent
// customarily runs at 45 degrees, so it falls back on the side pole's height.
func out(f *catalog.Family, leg unit.Length) unit.Length {
	if f.Kind == catalog.KindPole && f.Anchorage.Out == 0 {
		return leg
	}
	return f.Anchorage.Out
}

// draft is a frame under the generator's hands: geometry and roles, no stock.
type draft struct {
	nodes   []Node
	members []Member
	planes  [][]Point // of the roof, each flat
}

// node adds a node and tells its index.
func (d *draft) node(role string, at Point, sides ...string) int {
	d.nodes = append(d.nodes, Node{Role: role, At: at, Sides: sides})
	return len(d.nodes) - 1
}

// join adds a member between two nodes. Its centre line is rounded to the
// micrometre here and nowhere before.
func (d *draft) join(role string, from, to int) {
	centre := unit.FromMetres(distance(d.nodes[from].At, d.nodes[to].At))
	d.members = append(d.members, Member{Role: role, From: from, To: to, Centre: centre})
	if !rope(role) {
		d.nodes[from].Ways++
		d.nodes[to].Ways++
	}
}

// roof is the area of all planes.
func (d *draft) roof() unit.Area {
	sum := 0.0
	for _, plane := range d.planes {
		sum += flatArea(plane)
	}
	return unit.Area(sum)
}

// rope tells the roles that are ropes and cables, which adjust, from poles.
func rope(role string) bool { return role == "guy" || role == "brace" }

// sides lists the sides of the plan that a place stands on: none inside, two
// at a corner.
func sides(front, right, back, left bool) []string {
	var on []string
	for _, s := range []struct {
		on   bool
		name string
	}{{front, "front"}, {right, "right"}, {back, "back"}, {left, "left"}} {
		if s.on {
			on = append(on, s.name)
		}
	}
	return on
}

// ground is the point on the ground below p.
func ground(p Point) Point { return Point{p.X, p.Y, 0} }
