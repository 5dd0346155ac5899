package job

import (
	"fmt"

	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/catalog/unit"
)

// Codes of the faults of a job against its catalog.
const (
	UnknownID    = "unknown-id"
	RepeatedID   = "repeated-id"
	DateOrder    = "date-order"    // dates that run backwards
	Quantity     = "quantity"      // a fraction of something counted in pieces
	LegHeight    = "leg-height"    // a leg that the family does not have
	NothingToDo  = "nothing-to-do" // neither tents nor items
	GeometryItem = "geometry-item" // ordered by hand, though it follows from a tent
	BadJoin      = "bad-join"      // tents that cannot stand side by side
)

// Check tells every way in which the job does not fit the catalog.
func (j *Job) Check(c *catalog.Catalog) diag.List {
	k := &checker{j: j, c: c}
	if len(j.Tents)+len(j.Items) == 0 {
		k.list.Addf(j.Where.Pos(), NothingToDo, "the job has neither tents nor items; at least one was expected")
	}
	k.dates()
	k.tents()
	k.joins()
	k.items()
	k.site()
	k.terms()
	return k.list.Sorted()
}

type checker struct {
	j    *Job
	c    *catalog.Catalog
	list diag.List
}

// want reports an id that is not among the known ones.
func (k *checker) want(kind, id string, pos diag.Pos, known []string) bool {
	for _, have := range known {
		if have == id {
			return true
		}
	}
	k.list.Add(diag.Problem{Pos: pos, Code: UnknownID,
		Message: fmt.Sprintf("%s %q is not defined; the id of a defined one was expected", kind, id),
		Advice:  diag.DidYouMean(id, known)})
	return false
}

// ids lists one kind's ids in catalog order.
func ids[T any](all []T, id func(*T) string) []string {
	out := make([]string, len(all))
	for i := range all {
		out[i] = id(&all[i])
	}
	return out
}

func (k *checker) dates() {
	d := &k.j.Dates
	steps := []struct {
		field string
		date  unit.Date
	}{{"deliver", d.Deliver}, {"event_from", d.From}, {"event_to", d.To}, {"strike", d.Strike}, {"collect", d.Collect}}
	for i := 1; i < len(steps); i++ {
		if steps[i].date.Before(steps[i-1].date) {
			k.list.Addf(d.Where.Of(steps[i].field), DateOrder, "%s %s is before %s %s; the same day or later was expected",
				steps[i].field, steps[i].date, steps[i-1].field, steps[i-1].date)
		}
	}
}

func (k *checker) tents() {
	seen := map[string]bool{}
	families := ids(k.c.Families, func(f *catalog.Family) string { return f.ID })
	for i := range k.j.Tents {
		t := &k.j.Tents[i]
		if seen[t.ID] {
			k.list.Addf(t.Where.Of("id"), RepeatedID, "tent %q stands twice in the job; each id may stand once", t.ID)
		}
		seen[t.ID] = true
		if !k.want("tent family", t.Family, t.Where.Of("family"), families) {
			continue
		}
		k.tent(t, k.c.Family(t.Family))
	}
}

func (k *checker) tent(t *Tent, f *catalog.Family) {
	k.want("size of "+f.ID, t.Size, t.Where.Of("size"), ids(f.Sizes, func(s *catalog.Size) string { return s.ID }))
	if t.Leg != 0 && !hasLeg(f, t.Leg) {
		k.list.Addf(t.Where.Of("leg"), LegHeight, "%s has no legs of %s; one of %s was expected", f.Name, t.Leg.In(k.c.Company.Units), legList(f, k.c.Company.Units))
	}
	seen := map[string]bool{}
	for i := range t.Sides {
		s := &t.Sides[i]
		if seen[s.Side] {
			k.list.Addf(s.Where.Of("side"), RepeatedID, "side %q of tent %q stands twice; each side may stand once", s.Side, t.ID)
		}
		seen[s.Side] = true
		if s.Wall != "" && s.Wall != "open" {
			k.want("kind of wall of "+f.ID, s.Wall, s.Where.Of("wall"), append(ids(f.Walls, func(w *catalog.WallSpec) string { return w.Kind }), "open"))
		}
		for n, door := range s.Doors {
			k.want("kind of door of "+f.ID, door, s.Where.Of(fmt.Sprintf("doors[%d]", n)), ids(f.Doors, func(d *catalog.DoorSpec) string { return d.Kind }))
		}
	}
	if t.Ground != "" {
		if surface := k.c.SiteFactor("surface"); surface != nil {
			k.want("surface", t.Ground, t.Where.Of("ground"), ids(surface.Options, func(o *catalog.SiteOption) string { return o.ID }))
		}
	}
}

func hasLeg(f *catalog.Family, leg unit.Length) bool {
	for _, have := range f.Legs {
		if have == leg {
			return true
		}
	}
	return false
}

func legList(f *catalog.Family, sys unit.System) string {
	text := ""
	for i, leg := range f.Legs {
		if i > 0 {
			text += ", "
		}
		text += leg.In(sys)
	}
	return text
}

// joins checks that tents which share a gutter can: both of a family that has
// one, each once, and side by side along equal lengths.
func (k *checker) joins() {
	names := ids(k.j.Tents, func(t *Tent) string { return t.ID })
	for i := range k.j.Tents {
		t := &k.j.Tents[i]
		if t.Joins == "" {
			continue
		}
		if !k.want("tent of this job", t.Joins, t.Where.Of("joins"), names) {
			continue
		}
		k.join(t, k.j.Tent(t.Joins))
	}
}

func (k *checker) join(t, other *Tent) {
	bad := func(format string, args ...any) {
		k.list.Addf(t.Where.Of("joins"), BadJoin, format, args...)
	}
	f, g := k.c.Family(t.Family), k.c.Family(other.Family)
	if f == nil || g == nil || f.Size(t.Size) == nil || g.Size(other.Size) == nil {
		return
	}
	switch {
	case t == other:
		bad("tent %q cannot join itself; another tent was expected", t.ID)
	case t.JoinAt == "":
		bad("tent %q joins %q but does not say at which side; join_side was expected", t.ID, other.ID)
	case f.ID != g.ID || f.Gutter == nil:
		bad("tents %q and %q cannot share a gutter; two of one family that has a gutter were expected", t.ID, other.ID)
	case sideLength(f.Size(t.Size), t.JoinAt) != sideLength(g.Size(other.Size), Opposite(t.JoinAt)):
		bad("side %s of %q and side %s of %q differ in length; equal sides were expected", t.JoinAt, t.ID, Opposite(t.JoinAt), other.ID)
	case t.Many() != 1 || other.Many() != 1:
		bad("tents %q and %q are joined, so count must be 1 for each", t.ID, other.ID)
	}
}

func sideLength(s *catalog.Size, side string) unit.Length {
	if side == "left" || side == "right" {
		return s.Width
	}
	return s.Length
}

func (k *checker) items() {
	known := ids(k.c.Items, func(i *catalog.Item) string { return i.ID })
	for i := range k.j.Items {
		line := &k.j.Items[i]
		if !k.want("item", line.Item, line.Where.Of("item"), known) {
			continue
		}
		item := k.c.Item(line.Item)
		if item.Geometry {
			k.list.Addf(line.Where.Of("item"), GeometryItem, "item %q follows from the sides of a tent; set the tent's sides or joins instead", item.ID)
		}
		if item.CountsWhole() && !line.Quantity.IsInteger() {
			k.list.Addf(line.Where.Of("quantity"), Quantity, "item %q is counted in whole units (%s), so %s does not fit; a whole number was expected", item.ID, item.Unit, line.Quantity)
		}
	}
}

func (k *checker) site() {
	factors := ids(k.c.Site, func(f *catalog.SiteFactor) string { return f.ID })
	seen := map[string]bool{}
	for i := range k.j.Site {
		s := &k.j.Site[i]
		if !k.want("site factor", s.Factor, s.Where.Of("factor"), factors) {
			continue
		}
		if seen[s.Factor] {
			k.list.Addf(s.Where.Of("factor"), RepeatedID, "site factor %q stands twice; each may stand once", s.Factor)
		}
		seen[s.Factor] = true
		k.want("option of "+s.Factor, s.Option, s.Where.Of("option"), ids(k.c.SiteFactor(s.Factor).Options, func(o *catalog.SiteOption) string { return o.ID }))
	}
}

func (k *checker) terms() {
	r := &k.c.Rates
	if k.j.Customer.Class != "" {
		k.want("customer class", k.j.Customer.Class, k.j.Customer.Where.Of("class"), ids(r.Classes, func(c *catalog.CustomerClass) string { return c.ID }))
	}
	if k.j.Delivery.Zone != "" {
		k.want("delivery zone", k.j.Delivery.Zone, k.j.Delivery.Where.Of("zone"), ids(r.Zones, func(z *catalog.Zone) string { return z.ID }))
	}
	for n, id := range k.j.Delivery.Loadings {
		k.want("loading", id, k.j.Delivery.Where.Of(fmt.Sprintf("loadings[%d]", n)), ids(r.Loadings, func(l *catalog.Loading) string { return l.ID }))
	}
	for i := range k.j.Labour.Windows {
		w := &k.j.Labour.Windows[i]
		k.want("window of work", w.Window, w.Where.Of("window"), ids(r.Windows, func(w *catalog.Window) string { return w.ID }))
	}
	if places := taxPlaces(r); k.j.Event.Place != "" && len(places) > 0 {
		k.want("tax place", k.j.Event.Place, k.j.Event.Where.Of("tax_place"), places)
	}
}

// taxPlaces lists every place that some tax names.
func taxPlaces(r *catalog.Rates) []string {
	var places []string
	seen := map[string]bool{}
	for _, tax := range r.Taxes {
		for _, place := range tax.Places {
			if !seen[place] {
				seen[place] = true
				places = append(places, place)
			}
		}
	}
	return places
}
