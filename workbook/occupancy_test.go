package workbook_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote"
	"tentwright/quote/job"
	"tentwright/workbook"
	"tentwright/workbook/internal/calc"
	"tentwright/workbook/sheet"
)

// occupancyJob has a hall with a dance floor, bars and a kitchen at its end, a
// tent that is open, and two small ones.
const occupancyJob = `tents:
  - id: hall
    family: hip
    size: 40x80
    uses: [{use: kitchen, area: 400 sq ft}]
    sides: [{side: front, wall: window, doors: [double, double]}, {side: right, wall: solid, doors: [single]}, {side: back, wall: solid}, {side: left, wall: solid, doors: [double]}]
  - {id: open, family: pole, size: 40x60}
  - {id: stall, family: hip, size: 10x10, count: 2}
items: [{item: dance-kit-16, quantity: 1}, {item: bar-kit, quantity: 1}, {item: stage-deck, quantity: 6}, {item: safety-kit, quantity: 3}]
`

// occupancyEdit is something typed into the sheet, and the same in job and shop.
type occupancyEdit struct {
	what  string
	typed []typed
	edit  func(*catalog.Catalog, *job.Job)
}

var occupancyEdits = []occupancyEdit{
	{"nothing", nil, func(*catalog.Catalog, *job.Job) {}},
	{"guests", []typed{{"job_guests", "", 5001}}, func(_ *catalog.Catalog, j *job.Job) { j.Event.Guests = 5001 }},
	{"chairs in rows", []typed{{"job_use", "", "rows"}}, func(_ *catalog.Catalog, j *job.Job) { j.Event.Use = "rows" }},
	{"less floor for each", []typed{{"use_area", "use_id=tables", 4.5}, {"use_area", "use_id=dance", 5}}, func(c *catalog.Catalog, _ *job.Job) {
		c.Occupancy.Use("tables").Area, c.Occupancy.Use("dance").Area = area("4.5 sq ft"), area("5 sq ft")
	}},
	{"membrane structures", []typed{{"exit_class", "", "membrane"}, {"job_use", "", "exhibit"}}, func(c *catalog.Catalog, j *job.Job) {
		c.Occupancy.Class, j.Event.Use = "membrane", "exhibit"
	}},
	{"wider exits", []typed{{"exit_each", "", 0.75}}, func(c *catalog.Catalog, _ *job.Job) { c.Occupancy.Exits.Each = 3 * unit.Inch / 4 }},
	{"open sides count once", []typed{{"exit_every", "", nil}}, func(c *catalog.Catalog, _ *job.Job) { c.Occupancy.Exits.OpenEvery = 0 }},
	{"open sides count less", []typed{{"exit_every", "", 35}, {"job_use", "", "standing"}}, func(c *catalog.Catalog, j *job.Job) {
		c.Occupancy.Exits.OpenEvery, j.Event.Use = 35*unit.Foot, "standing"
	}},
	{"extra hazard", []typed{{"fire_hazard", "", "extra"}, {"fire_rating", "", 6}}, func(c *catalog.Catalog, _ *job.Job) { c.Occupancy.Fire.Hazard, c.Occupancy.Fire.Rating = "extra", 6 }},
	{"more halls, no stage", []typed{{"qty_t.hall", "", 3}, {"qty_l.3", "", 0}}, func(_ *catalog.Catalog, j *job.Job) {
		j.Tents[0].Count, j.Items[2].Quantity = 3, money.Zero
	}},
	{"more dance floor than floor", []typed{{"qty_l.1", "", 12}}, func(_ *catalog.Catalog, j *job.Job) { j.Items[0].Quantity = money.Int(12) }},
}

func area(text string) unit.Area {
	a, err := unit.ParseArea(text)
	if err != nil {
		panic(err)
	}
	return a
}

// What is typed into the sheet gives, recalculated, what the program computes
// from the same in job and shop.
func TestEditedOccupancy(t *testing.T) {
	calc.Need(t)
	t.Parallel()
	_, book := laidOut(t, demoCatalog(t), occupancyJob)
	var list []typing
	for _, x := range occupancyEdits {
		list = append(list, typing{x.what, book, x.typed})
	}
	compared := 0
	for i, f := range recalculated(t, list) {
		c, j := demoCatalog(t), jobOf(t, occupancyJob)
		occupancyEdits[i].edit(c, j)
		compared += sameOccupancy(t, occupancyEdits[i].what, f, mustQuote(t, c, j))
	}
	t.Logf("%d figures of %d workbooks", compared, len(list))
}

// sameOccupancy compares the sheet with a quote; it gives the number of figures.
func sameOccupancy(t *testing.T, what string, f figures, q *quote.Quote) int {
	t.Helper()
	e, n := q.Egress, 0
	for name, want := range map[string]int{"floor_guests": e.Guests, "exit_guests": e.Out, "floor_people": e.Load, "seat_spaces": e.Wheelchairs,
		"sign_needed": e.Signs, "is_sign_needed": e.HasSigns, "light_needed": e.Lights, "fire_needed": e.Fire, "is_fire_needed": e.HasFire, "is_permit_paper": e.Permits} {
		f.named(t, name).number(t, what, float64(want))
		n++
	}
	for i := range e.Tents {
		x := &e.Tents[i]
		id := x.Tent.Job.ID
		for column, want := range map[string]money.Number{"hall_people": money.Int(x.Load), "hall_guests": money.Int(x.Guests), "hall_need": money.Int(x.Need),
			"hall_least": x.Least, "hall_have": money.Int(x.Have), "hall_width": x.Width, "hall_has": x.HasWidth, "hall_sides": money.Int(x.Sides),
			"hall_allow": money.Int(x.Allow), "hall_out": money.Int(x.Out)} {
			f.beside(t, column, "hall_tent", id).number(t, what+", "+column, want.InexactFloat64())
			n++
		}
		for column, want := range map[string]money.Number{"egress_served": money.Int(x.Served), "egress_aisle": x.Aisle, "egress_signs": money.Int(x.Signs),
			"egress_lights": money.Int(x.Lights), "egress_fire": money.Int(x.Fire)} {
			f.beside(t, column, "egress_tent", id).number(t, what+", "+column, want.InexactFloat64())
			n++
		}
	}
	for i := range q.Checks {
		check := &q.Checks[i]
		if kind, _, _ := strings.Cut(check.Key, ":"); !slices.Contains([]string{"floor", "ways out", "exits", "exit width", "exit sides", "floor taken", "exit signs", "emergency lights", "extinguishers"}, kind) {
			continue
		}
		f.beside(t, "check_value", "check_key", check.Key).number(t, what+", "+check.Key, check.Value.InexactFloat64())
		f.beside(t, "check_limit", "check_key", check.Key).number(t, what+", "+check.Key, check.Limit.InexactFloat64())
		n += 2
	}
	return n
}

// A shop without the file, and a job without a tent, have no such sheet; one
// that has it closes with the words of caution.
func TestOccupancySheet(t *testing.T) {
	has := func(b *sheet.Book) *sheet.Sheet {
		for _, s := range b.Sheets {
			if s.Name == workbook.SheetOccupancy {
				return s
			}
		}
		return nil
	}
	_, small := laidOut(t, smallShop(t), redJob)
	_, bare := laidOut(t, demoCatalog(t), "items: [{item: chair-folding, quantity: 4}]")
	if has(small) != nil || has(bare) != nil {
		t.Errorf("%s stands where nothing is known for it", workbook.SheetOccupancy)
	}
	_, book := laidOut(t, demoCatalog(t), occupancyJob)
	s := has(book)
	if s == nil {
		t.Fatal("no sheet")
	}
	said := ""
	for _, row := range s.Rows {
		for _, c := range row.Cells {
			said += fmt.Sprint(c.Value, "\n")
		}
	}
	for _, want := range []string{workbook.EstimateWords, "IFC 2018 table 3103.12.2", "2010 ADA Standards", "exactly 3,000", "foot-candle", "The walk to the nearest exit is not checked"} {
		if !strings.Contains(said, want) {
			t.Errorf("the sheet does not say %q", want)
		}
	}
}
