package workbook_test

import (
	"maps"
	"slices"
	"strconv"
	"strings"

	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
	"tentwright/workbook"
	"tentwright/workbook/internal/calc"
)

// rowEdit is something done to a row of the build-up.
type rowEdit struct {
	row int // from 1, as the workbook was written
	do  func(m *calc.Macro, tab string, row int)
	add *job.Line // what it adds to the job
}

// moreKinds are the edits that only a requote takes over.
var moreKinds = []struct {
	what string
	do   func(x *requoting) bool
}{
	{"text", typeText}, {"address", typeAddress}, {"days moved", moveDays},
	{"size", typeSize}, {"eave", typeLeg}, {"side", typeSide}, {"another side", typeSide},
	{"any degree", typeDegree}, {"charge for a lost piece", typeReplacement}, {"reach of a zone", typeReach},
	{"minutes of a good day", typeOptimistic}, {"minutes of a bad day", typePessimistic}, {"spread", typeSpread},
	{"note of a line", typeNote}, {"other item", typeItem}, {"deleted line", deleteLine}, {"copied line", copyLine}, {"inserted line", insertLine},
}

func newLine(id string, many money.Number) job.Line { return job.Line{Item: id, Quantity: many} }

// typeText changes a text of the job that no figure follows from.
func typeText(x *requoting) bool {
	fields := slices.DeleteFunc(workbook.JobFields(), func(f workbook.JobField) bool { return f.Text == nil || f.Counted })
	f := some(x.editing, fields)
	words := *some(x.editing, []string{"Larkmere Choir", "=1+1", "see the 2nd gate", "Zelt für Gäste", `the "old" barn`})
	*f.Text.Of(x.now.Job) = words
	return x.set(f.Name, words)
}

func typeAddress(x *requoting) bool {
	x.now.Job.Event.Address = []string{"Gate 3", "Mill Lane", "Larkmere"}
	return x.set("job_event_address", "Gate 3, Mill Lane,\nLarkmere")
}

// moveDays moves the whole event by some days.
func moveDays(x *requoting) bool {
	if strings.Contains(strings.Join(x.said, ";"), "days out") {
		return false // tells the day of collection already
	}
	d := &x.now.Job.Dates
	by := 1 + x.r.IntN(20)
	for name, day := range map[string]*unit.Date{"deliver": &d.Deliver, "from": &d.From, "to": &d.To, "strike": &d.Strike, "collect": &d.Collect} {
		if !day.IsZero() {
			*day = day.AddDays(by)
			x.set("job_date_"+name, day.Serial())
		}
	}
	return true
}

// tent chooses a tent of the job; nil if it has none.
func (x *requoting) tent() (*job.Tent, int) {
	if len(x.q.Parts.Tents) == 0 {
		return nil, 0
	}
	t := some(x.editing, x.q.Parts.Tents)
	return x.now.Job.Tent(t.Job.ID), x.row("tent_id", t.Job.ID)
}

func typeSize(x *requoting) bool {
	t, row := x.tent()
	if t == nil {
		return false
	}
	t.Size = some(x.editing, x.now.Catalog.Family(t.Family).Sizes).ID
	return x.setAt("tent_size", row, t.Size)
}

func typeLeg(x *requoting) bool {
	t, row := x.tent()
	if t == nil {
		return false
	}
	t.Leg = *some(x.editing, x.now.Catalog.Family(t.Family).Legs)
	return x.setAt("tent_leg", row, t.Leg.In(x.q.Catalog.Company.Units))
}

// typeSide opens a side or closes it with a wall, in which its doors stay.
func typeSide(x *requoting) bool {
	t, row := x.tent()
	if t == nil {
		return false
	}
	name := *some(x.editing, []string{"front", "right", "back", "left"})
	wall := some(x.editing, x.now.Catalog.Family(t.Family).Walls).Kind
	typed := wall
	if x.r.IntN(2) == 0 {
		wall, typed = "", "open"
	}
	at := slices.IndexFunc(t.Sides, func(s job.TentSide) bool { return s.Side == name })
	if at < 0 {
		at = len(t.Sides)
		t.Sides = append(t.Sides, job.TentSide{Side: name})
	}
	if t.Sides[at].Wall = wall; wall == "" {
		t.Sides[at].Doors = nil
	}
	return x.setAt("tent_"+name, row, typed)
}

// typeDegree chooses any degree of a site factor, also one that changes anchors.
func typeDegree(x *requoting) bool {
	f := some(x.editing, x.now.Catalog.Site)
	o := some(x.editing, f.Options)
	x.now.Job.Site = slices.DeleteFunc(slices.Clone(x.now.Job.Site), func(s job.SiteChoice) bool { return s.Factor == f.ID })
	x.now.Job.Site = append(x.now.Job.Site, job.SiteChoice{Factor: f.ID, Option: o.ID})
	return x.set("site_"+named(f.ID)+"_degree", o.ID)
}

func typeReplacement(x *requoting) bool {
	keys := workbook.ReturnKeys(x.q)
	if len(keys) == 0 {
		return false
	}
	key := *some(x.editing, slices.Sorted(maps.Keys(keys)))
	p := x.now.Catalog.Part(keys[key])
	return p.Replacement != nil && x.cell("return_each", x.row("return_key", key), p.Replacement, 1, 900, 2)
}

// typeReach changes how far a zone goes.
func typeReach(x *requoting) bool {
	at := x.r.IntN(len(x.now.Catalog.Rates.Zones))
	z := &x.now.Catalog.Rates.Zones[at]
	if z.UpTo == 0 {
		return false
	}
	tenths := z.UpTo*10/unit.Mile + 1
	z.UpTo = tenths * unit.Mile / 10
	return x.setAt("zones_upto", x.row("zones_id", z.ID), float64(tenths)/10)
}

// typeOptimistic types what a rule takes when all goes well, or leaves it to the
// shop's percentage.
func typeOptimistic(x *requoting) bool {
	rule := x.rule()
	n := money.Round(rule.Minutes.Mul(x.decimal(0, 1, 2)), 3)
	if rule.Minutes.IsZero() || n.GreaterThan(rule.Minutes) {
		return false
	}
	rule.Optimistic = &n
	return x.set("optimistic_"+named(rule.ID), n.InexactFloat64())
}

func typePessimistic(x *requoting) bool {
	rule := x.rule()
	n := money.Round(rule.Minutes.Mul(x.decimal(1, 4, 2)), 3)
	if rule.Minutes.IsZero() || n.LessThan(rule.Minutes) {
		return false
	}
	rule.Pessimistic = &n
	return x.set("pessimistic_"+named(rule.ID), n.InexactFloat64())
}

// typeSpread changes how far all other minutes spread.
func typeSpread(x *requoting) bool {
	s := &x.now.Catalog.Crew.Spread
	return x.number("spread_optimistic", &s.Optimistic, 30, 100, 1) && x.number("spread_pessimistic", &s.Pessimistic, 100, 400, 1)
}

// item chooses an item that can be ordered by itself.
func (x *requoting) item() string {
	for {
		if it := some(x.editing, x.now.Catalog.Items); !it.Geometry {
			return it.ID
		}
	}
}

// orderLine chooses a line of the job that no other edit of rows has touched.
func (x *requoting) orderLine() (at, row int, ok bool) {
	if len(x.q.Job.Items) == 0 {
		return 0, 0, false
	}
	at = x.r.IntN(len(x.q.Job.Items))
	_, block, err := placeOf(x.book, "build_key")
	row = block.R1 + x.row("build_key", "L:"+strconv.Itoa(at+1))
	ok = err == nil && !x.touched[row]
	x.touched[row] = true
	return at, row, ok
}

// typeItem types another item over that of a line, with a whole quantity.
func typeItem(x *requoting) bool {
	at, _, ok := x.orderLine()
	if !ok {
		return false
	}
	l := &x.now.Job.Items[at]
	l.Item = x.item()
	key := "L:" + strconv.Itoa(at+1)
	return x.setAt("build_id", x.row("build_key", key), l.Item) && x.number("qty_"+named(key), &l.Quantity, 1, 90, 0)
}

// typeNote types what the yard must know of a line.
func typeNote(x *requoting) bool {
	at, _, ok := x.orderLine()
	if !ok {
		return false
	}
	words := *some(x.editing, []string{"ivory", "=SUM(1)", "two for the band", "Größe 3"})
	x.now.Job.Items[at].Note = words
	return x.setAt("build_note", x.row("build_key", "L:"+strconv.Itoa(at+1)), words)
}

func deleteLine(x *requoting) bool {
	at, row, ok := x.orderLine()
	if ok {
		x.dropped[at] = true
		x.rows = append(x.rows, rowEdit{row: row, do: func(m *calc.Macro, tab string, row int) { m.Delete(tab, row, 1) }})
	}
	return ok
}

// copyLine copies a line with all that was typed into it.
func copyLine(x *requoting) bool {
	at, row, ok := x.orderLine()
	if ok {
		l := x.now.Job.Items[at]
		x.rows = append(x.rows, rowEdit{row: row, add: &job.Line{Item: l.Item, Quantity: l.Quantity, Discount: l.Discount, Note: l.Note}, do: func(m *calc.Macro, tab string, row int) {
			m.Insert(tab, row+1, 1)
			m.Copy(tab, row, row+1)
		}})
	}
	return ok
}

func insertLine(x *requoting) bool {
	_, row, ok := x.orderLine()
	if !ok {
		return false
	}
	l := newLine(x.item(), money.Int(1+x.r.IntN(60)))
	_, ids, _ := placeOf(x.book, "build_id")
	_, many, err := placeOf(x.book, "build_quantity")
	x.rows = append(x.rows, rowEdit{row: row, add: &l, do: func(m *calc.Macro, tab string, row int) {
		m.Insert(tab, row+1, 1)
		m.Type(tab, row+1, ids.C1, l.Item)
		m.Type(tab, row+1, many.C1, l.Quantity.InexactFloat64())
	}})
	return err == nil
}

// editRows makes the edits of rows from the last row up, so that those above
// stay where they are, and adds their lines to the job from the first row down.
func (x *requoting) editRows(m *calc.Macro) {
	tab, _, err := placeOf(x.book, "build_key")
	if err != nil {
		x.t.Fatal(err)
	}
	slices.SortFunc(x.rows, func(a, b rowEdit) int { return a.row - b.row })
	for i := range x.rows {
		if l := x.rows[i].add; l != nil {
			x.now.Job.Items = append(x.now.Job.Items, *l)
		}
		last := &x.rows[len(x.rows)-1-i]
		last.do(m, tab, last.row)
	}
}
