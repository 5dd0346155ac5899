package intake

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
	"tentwright/workbook/sheet"
)

func demo(t testing.TB) *catalog.Catalog {
	t.Helper()
	c, list := catalog.Load("demo", catalog.Demo())
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	return c
}

// made is the day of the forms in tests.
var made = unit.Date{Year: 2026, Month: 5, Day: 1}

// filler types a job into a form, as a person would.
type filler struct {
	c     *catalog.Catalog
	book  *sheet.Book
	place map[string]sheet.Place
	items map[string]int // row of each item's own line
	extra int            // lines used below them
}

func fill(c *catalog.Catalog, j *job.Job) *sheet.Book {
	b := Form(c, made)
	p := &filler{c: c, book: b, place: b.Found().Names, items: map[string]int{}}
	for _, sec := range sections(c.Company.Units) {
		for i := range sec.fields {
			p.field(&sec.fields[i], j)
		}
	}
	for _, s := range j.Site {
		p.set(p.row("site", "id", s.Factor), "site_degree", degrees(c.SiteFactor(s.Factor)).text(s.Option))
	}
	for _, id := range j.Delivery.Loadings {
		p.set(p.row("loading", "id", id), "loading_due", "Yes")
	}
	for _, w := range j.Labour.Windows {
		row := p.row("window", "id", w.Window)
		p.count(row, "window_crew", w.Crew)
		p.count(row, "window_days", w.Days)
		p.amount(row, "window_worked", w.Worked)
		p.hours(&w)
	}
	for i := range j.Tents {
		p.tent(i, &j.Tents[i])
	}
	p.site(j)
	for i := range j.Items {
		p.line(&j.Items[i])
	}
	for i, pay := range j.Payments {
		row := p.place["intake_payment_date"].R1 + i
		p.set(row, "payment_date", pay.Date)
		p.set(row, "payment_amount", pay.Amount)
		p.words(row, "payment_note", pay.Note)
	}
	return b
}

// at is a cell of the form by row and column.
func at(b *sheet.Book, p sheet.Place) *sheet.Cell {
	for _, s := range b.Sheets {
		if s.Name == p.Sheet {
			r := &s.Rows[p.R1-1]
			for len(r.Cells) < p.C1 {
				r.Cells = append(r.Cells, sheet.Cell{})
			}
			return &r.Cells[p.C1-1]
		}
	}
	panic("no sheet " + p.Sheet)
}

// set types a value into a named column.
func (p *filler) set(row int, column string, v any) {
	place, ok := p.place["intake_"+column]
	if !ok {
		panic("no column " + column)
	}
	place.R1 = row
	at(p.book, place).Value = v
}

func (p *filler) count(row int, column string, n int) {
	if n != 0 {
		p.set(row, column, n)
	}
}

func (p *filler) amount(row int, column string, n money.Number) {
	if !n.IsZero() {
		p.set(row, column, n)
	}
}

func (p *filler) words(row int, column, s string) {
	if s != "" {
		p.set(row, column, s)
	}
}

// row finds the row of a table by its key.
func (p *filler) row(table, column, key string) int {
	place := p.place["intake_"+table+"_"+column]
	for row := place.R1; row <= place.R2; row++ {
		cells := p.book.Sheets[0].Rows[row-1].Cells
		if len(cells) >= place.C1 && fmt.Sprint(cells[place.C1-1].Value) == key {
			return row
		}
	}
	panic("no row " + key + " in " + table)
}

// side finds the row of a side of a tent by its number.
func (p *filler) side(no int, side string) int {
	tent, id := p.place["intake_side_tent"], p.place["intake_side_side"]
	for row := tent.R1; row <= tent.R2; row++ {
		cells := p.book.Sheets[0].Rows[row-1].Cells
		if len(cells) >= id.C1 && cells[tent.C1-1].Value == no && cells[id.C1-1].Value == side {
			return row
		}
	}
	panic(fmt.Sprintf("no side %s of tent %d", side, no))
}

// unsaid tells whether a field is of a group that the job does not have.
func unsaid(d *field, j *job.Job) bool {
	group := d.path[:max(0, strings.LastIndex(d.path, "."))]
	return map[string]bool{"heat": j.Heat == nil, "power": j.Power == nil, "plot": j.Plot == nil, "labour.weather": j.Labour.Weather == nil}[group]
}

func (p *filler) field(d *field, j *job.Job) {
	var v any
	if unsaid(d, j) {
		return
	}
	switch from := d.to(j).(type) {
	case *string:
		if v = *from; d.list != "" && len(d.of(p.c)) > 0 {
			v = d.of(p.c).text(*from)
		}
	case *[]string:
		if d.line > len(*from) {
			return
		}
		v = (*from)[d.line-1]
	case *int:
		v = *from
	case *money.Number:
		v = *from
	case *unit.Date:
		if !from.IsZero() {
			v = *from
		}
	case *unit.Length:
		v = distance(*from)
	case *unit.Speed:
		if *from != 0 {
			v = from.Text(unit.Imperial)
		}
	case **unit.Temperature:
		v = (*from).Text(unit.Imperial)
	case *bool:
		v = "No"
		if *from {
			v = "Yes"
		}
	}
	if v == nil || v == "" || v == 0 {
		return
	}
	at(p.book, p.place[d.name]).Value = v
}

// distance is a length as people write it, exactly.
func distance(l unit.Length) string {
	text, err := l.MarshalText()
	if err != nil {
		panic(err)
	}
	return string(text)
}

func (p *filler) tent(i int, t *job.Tent) {
	row := p.place["intake_tent_no"].R1 + i
	f := p.c.Family(t.Family)
	p.set(row, "tent_id", t.ID)
	p.words(row, "tent_name", t.Name)
	p.set(row, "tent_family", families(p.c).text(t.Family))
	p.set(row, "tent_size", t.Size)
	p.count(row, "tent_count", t.Count)
	if t.Leg != 0 {
		p.set(row, "tent_eave", t.Leg.In(p.c.Company.Units))
	}
	p.words(row, "tent_ground", grounds(p.c).text(t.Ground))
	p.words(row, "tent_joins", t.Joins)
	p.words(row, "tent_at", sides().text(t.JoinAt))
	p.amount(row, "tent_off", t.Discount)
	for _, s := range t.Sides {
		row := p.side(i+1, s.Side)
		p.words(row, "side_wall", walls(f).text(s.Wall))
		if s.NoStakes {
			p.set(row, "side_stakes", "Yes")
		}
		p.words(row, "side_ground", grounds(p.c).text(s.Ground))
		for n, run := range runs(s.Doors) {
			p.set(row, []string{"side_door", "side_other"}[n], run.kind)
			p.set(row, []string{"side_doors", "side_others"}[n], run.many)
		}
	}
}

// run is doors of a kind beside each other.
type run struct {
	kind string
	many int
}

func runs(doors []string) []run {
	var out []run
	for _, d := range doors {
		if len(out) == 0 || out[len(out)-1].kind != d {
			out = append(out, run{d, 0})
		}
		out[len(out)-1].many++
	}
	return out
}

func (p *filler) line(l *job.Line) {
	var row int
	if p.items[l.Item] == 0 {
		row = p.row("item", "id", l.Item)
		p.items[l.Item] = row
	} else {
		p.extra++
		row = p.place["intake_item_id"].R2 - 1 - extraLines + p.extra
		p.set(row, "item_name", items(p.c).text(l.Item))
	}
	p.set(row, "item_quantity", l.Quantity)
	switch {
	case l.Chosen:
		p.set(row, "item_optional", "Chosen")
	case l.Optional:
		p.set(row, "item_optional", "Yes")
	}
	p.words(row, "item_note", l.Note)
	p.amount(row, "item_off", l.Discount)
}

// canon is the job in the order of the form, without what a form cannot say:
// outer blanks and settings that set nothing. False when the form has no room.
func canon(c *catalog.Catalog, from *job.Job) (*job.Job, bool) {
	j, list := job.Read("job.yaml", job.Write(from))
	if list.Err() != nil {
		return nil, false
	}
	j.Notes, j.Internal = sheet.Clean(j.Notes), sheet.Clean(j.Internal)
	order := func(list choices, id string) int {
		return slices.IndexFunc(list, func(x choice) bool { return x.id == id })
	}
	seen := map[string]bool{}
	var first, again []job.Line
	for _, l := range j.Items {
		if seen[l.Item] {
			again = append(again, l)
		} else {
			first = append(first, l)
		}
		seen[l.Item] = true
	}
	slices.SortStableFunc(first, func(a, b job.Line) int { return order(items(c), a.Item) - order(items(c), b.Item) })
	j.Items = append(first, again...)
	windows := choose(c.Rates.Windows, func(w *catalog.Window) (string, string) { return w.ID, w.Name })
	j.Labour.Windows = slices.DeleteFunc(j.Labour.Windows, unsaidWindow)
	slices.SortFunc(j.Labour.Windows, func(a, b job.WindowCrew) int { return order(windows, a.Window) - order(windows, b.Window) })
	factors := choose(c.Site, func(f *catalog.SiteFactor) (string, string) { return f.ID, f.Name })
	slices.SortFunc(j.Site, func(a, b job.SiteChoice) int { return order(factors, a.Factor) - order(factors, b.Factor) })
	fits := len(j.Tents) <= Tents && len(again) <= extraLines && len(j.Payments) <= paymentLines && len(j.Customer.Address) <= addressLines
	for i := range j.Tents {
		t := &j.Tents[i]
		t.Sides = slices.DeleteFunc(t.Sides, func(s job.TentSide) bool { return s.Wall == "" && len(s.Doors) == 0 && !s.NoStakes && s.Ground == "" })
		slices.SortFunc(t.Sides, func(a, b job.TentSide) int { return order(sides(), a.Side) - order(sides(), b.Side) })
		for _, s := range t.Sides {
			fits = fits && len(runs(s.Doors)) <= 2
		}
	}
	return j, canonSite(j) && fits
}

// typed sets cells of a filled form; keys are names of cells, or a column and
// the row of the table from 1.
func typed(b *sheet.Book, values map[string]any) {
	for key, v := range values {
		p := find(b, key)
		at(b, p).Value = v
		if _, day := v.(unit.Date); day {
			at(b, p).Style.Format = sheet.DateISO // as programs do when a date is typed
		}
	}
}

// find is the place of a named cell, or of "item_note:3", row 3 of the column.
func find(b *sheet.Book, key string) sheet.Place {
	name, row, _ := strings.Cut(key, ":")
	p, ok := b.Found().Names["intake_"+name]
	if !ok {
		panic("no name " + name)
	}
	n := 1
	if row != "" {
		if _, err := fmt.Sscan(row, &n); err != nil {
			panic(err)
		}
	}
	p.R1 += n - 1
	p.R2, p.C2 = p.R1, p.C1
	return p
}
