package job

import (
	"fmt"
	"slices"
	"strings"

	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/catalog/source"
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
	NoZone       = "no-zone"       // a distance that no delivery zone reaches
	Coins        = "coins"         // a payment finer than the smallest coin
	NotOptional  = "not-optional"  // something chosen that is no optional extra
)

// Check tells every way in which the job does not fit the catalog.
func (j *Job) Check(c *catalog.Catalog) diag.List {
	return j.check(c, source.NewForm(nil)).Sorted()
}

// check is Check for a job that may have faults of form: what follows from
// them, or cannot be told beside them, is not reported.
func (j *Job) check(c *catalog.Catalog, form *source.Form) diag.List {
	k := &checker{j: j, c: c, form: form}
	if len(j.Tents)+len(j.Items) == 0 && form.Sound(j.Where, "tents", "items") {
		k.list.Addf(j.Where.Pos(), NothingToDo, "the job has neither tents nor items; at least one was expected")
	}
	k.dates()
	k.tents()
	k.joins()
	k.items()
	k.site()
	k.delivery()
	k.terms()
	k.hours()
	k.wind()
	k.uses()
	k.power()
	k.plot()
	return k.list
}

type checker struct {
	j    *Job
	c    *catalog.Catalog
	form *source.Form
	list diag.List
}

// want reports an id that the shop does not have; an empty one was not read.
func (k *checker) want(kind, id string, pos diag.Pos, known []string) bool {
	if id == "" || slices.Contains(known, id) {
		return id != ""
	}
	k.unknown(kind, id, "the shop's files define", pos, diag.DidYouMean(id, known))
	return false
}

func (k *checker) unknown(kind, id, home string, pos diag.Pos, advice string) {
	k.list.Add(diag.Problem{Pos: pos, Code: UnknownID,
		Message: fmt.Sprintf("%s %q is not known; an id that %s was expected", kind, id, home), Advice: advice})
}

// repeated reports an id that stands twice in a list of the job.
func (k *checker) repeated(seen map[string]bool, id string, pos diag.Pos, format string, args ...any) {
	// Spreadsheets, and so the workbook's look-ups, hold A and a for one.
	id = strings.ToLower(id)
	if seen[id] {
		k.list.Addf(pos, RepeatedID, format, args...)
	}
	seen[id] = id != "" // an empty one was not read
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
	last := steps[0]
	for _, step := range steps[1:] {
		if step.date.IsZero() {
			continue // it was not read
		}
		if step.date.Before(last.date) {
			k.list.Addf(d.Where.Of(step.field), DateOrder, "%s %s is before %s %s; the same day or later was expected", step.field, step.date, last.field, last.date)
		}
		last = step
	}
}

func (k *checker) tents() {
	seen := map[string]bool{}
	families := ids(k.c.Families, func(f *catalog.Family) string { return f.ID })
	for i := range k.j.Tents {
		t := &k.j.Tents[i]
		k.repeated(seen, t.ID, t.Where.Of("id"), "tent %q stands twice in the job; each id may stand once, whatever its capitals", t.ID)
		if why := catalog.BadInSheet(t.ID); why != "" {
			k.list.Addf(t.Where.Of("id"), diag.BadValue, "tent %q %s", t.ID, why)
		}
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
		k.repeated(seen, s.Side, s.Where.Of("side"), "side %q of tent %q stands twice; each side may stand once", s.Side, t.ID)
		if s.Wall != "" && s.Wall != "open" {
			k.want("kind of wall of "+f.ID, s.Wall, s.Where.Of("wall"), append(ids(f.Walls, func(w *catalog.WallSpec) string { return w.Kind }), "open"))
		}
		for n, door := range s.Doors {
			k.want("kind of door of "+f.ID, door, s.Where.Of(fmt.Sprintf("doors[%d]", n)), ids(f.Doors, func(d *catalog.DoorSpec) string { return d.Kind }))
		}
	}
	if t.Ground != "" {
		if surface := k.c.SiteFactor(catalog.Surface); surface != nil {
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
		switch other := k.j.Tent(t.Joins); {
		case t.Joins == "":
		case other != nil:
			k.join(t, other)
		case !slices.Contains(names, "") && k.form.Sound(k.j.Where):
			k.unknown("tent", t.Joins, "a tent of this job has", t.Where.Of("joins"), diag.DidYouMean(t.Joins, names))
		}
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
	case !k.form.Sound(t.Where, "join_side"):
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
	for i := range k.j.Items {
		line := &k.j.Items[i]
		if line.Chosen && !line.Optional && k.form.Sound(line.Where, "optional", "chosen") {
			k.list.Addf(line.Where.Of("chosen"), NotOptional, "item %q is chosen but no optional extra, so it is charged in any case; optional: yes beside it, or no chosen, was expected", line.Item)
		}
		if line.Item == "" {
			continue
		}
		item := k.c.Item(line.Item)
		if item == nil {
			k.unknown("item", line.Item, "the shop's files define", line.Where.Of("item"), k.itemAdvice(line.Item))
			continue
		}
		if item.Geometry {
			k.list.Addf(line.Where.Of("item"), GeometryItem, "item %q follows from the sides of a tent; set the tent's sides or joins instead", item.ID)
		}
		if item.CountsWhole() && !line.Quantity.IsInteger() {
			k.list.Addf(line.Where.Of("quantity"), Quantity, "item %q is counted in whole units (%s), so %s does not fit; a whole number was expected", item.ID, item.Unit, line.Quantity)
		}
	}
}

// itemAdvice is the item that was most likely meant: of nearly that id, or one
// whose name or id has all of the words.
func (k *checker) itemAdvice(asked string) string {
	known := ids(k.c.Items, func(i *catalog.Item) string { return i.ID })
	if near, ok := diag.Nearest(asked, known); ok {
		return fmt.Sprintf("did you mean %q?", near)
	}
	// Of those that have the words, the shortest names have the least else.
	var named []string
	fewest := 0
	for i := range k.c.Items {
		it := &k.c.Items[i]
		words := len(strings.Fields(it.Name))
		if it.Geometry || !diag.HasWords(asked, it.ID, it.Name) || len(named) > 0 && words > fewest {
			continue
		}
		if words < fewest {
			named = nil
		}
		fewest, named = words, append(named, fmt.Sprintf("%q (%s)", it.ID, it.Name))
	}
	const most = 3
	if len(named) == 0 {
		return diag.DidYouMean(asked, known)
	}
	named = named[:min(len(named), most)]
	return "did you mean " + strings.Join(named, " or ") + "?"
}

func (k *checker) site() {
	factors := ids(k.c.Site, func(f *catalog.SiteFactor) string { return f.ID })
	seen := map[string]bool{}
	for i := range k.j.Site {
		s := &k.j.Site[i]
		if !k.want("site factor", s.Factor, s.Where.Of("factor"), factors) {
			continue
		}
		k.repeated(seen, s.Factor, s.Where.Of("factor"), "site factor %q stands twice; each may stand once", s.Factor)
		k.want("option of "+s.Factor, s.Option, s.Where.Of("option"), ids(k.c.SiteFactor(s.Factor).Options, func(o *catalog.SiteOption) string { return o.ID }))
	}
}

// delivery checks that a zone holds for the distance: the one that the job
// names, or else one that reaches it.
func (k *checker) delivery() {
	d, zones := &k.j.Delivery, k.c.Rates.Zones
	if d.Zone != "" {
		k.want("delivery zone", d.Zone, d.Where.Of("zone"), ids(zones, func(z *catalog.Zone) string { return z.ID }))
	}
	if reached := d.zone(k.c); d.Zone == "" && reached == nil && k.form.Sound(d.Where, "zone", "distance") {
		k.list.Addf(d.Where.Of("distance"), NoZone, "no delivery zone reaches %s; a zone without up_to in rates.yaml, or the name of a zone here, was expected", distanceText(d.Distance))
	}
	seen := map[string]bool{}
	for n, id := range d.Loadings {
		pos := d.Where.Of(fmt.Sprintf("loadings[%d]", n))
		k.want("loading", id, pos, ids(k.c.Rates.Loadings, func(l *catalog.Loading) string { return l.ID }))
		k.repeated(seen, id, pos, "loading %q stands twice; each may stand once", id)
	}
}

func (k *checker) terms() {
	r := &k.c.Rates
	if k.j.Customer.Class != "" {
		k.want("customer class", k.j.Customer.Class, k.j.Customer.Where.Of("class"), ids(r.Classes, func(c *catalog.CustomerClass) string { return c.ID }))
	}
	seen := map[string]bool{}
	for i := range k.j.Labour.Windows {
		w := &k.j.Labour.Windows[i]
		k.want("window of work", w.Window, w.Where.Of("window"), ids(r.Windows, func(w *catalog.Window) string { return w.ID }))
		k.repeated(seen, w.Window, w.Where.Of("window"), "window of work %q stands twice; each may stand once", w.Window)
	}
	for i := range k.j.Payments {
		p := &k.j.Payments[i]
		if cur := k.c.Currency(); !cur.Round(p.Amount).Equal(p.Amount) {
			k.list.Addf(p.Where.Of("amount"), Coins, "%s is no amount of %s; at most %d decimals were expected", p.Amount, cur.Code, cur.Minor)
		}
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
