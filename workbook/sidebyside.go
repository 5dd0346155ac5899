package workbook

import (
	"cmp"
	"slices"
	"strings"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/quote"
	"tentwright/workbook/sheet"
)

// Names of the sheets of a comparison.
const (
	SheetCompare = "Compare"
	SheetLoads   = "Load Changes"
)

// SideBySide is two revisions of a quote held against each other.
type SideBySide struct {
	Old, New string // the two in words
	Totals   []Pair
	Vehicles [2]string // of the way out, in words
	Lines    []LinePair
	Windows  []Pair // person-hours
	Basis    string // what is taken to be on the trucks, in words
	Loads    []LoadChange
	Moves    []LoadMove
}

// LoadMove is a part that stays on the load but rides elsewhere.
type LoadMove struct {
	Part     *catalog.Part
	Pieces   int    // that stay
	From, To string // vehicles, in words
}

// Two is a figure before and after.
type Two struct{ Old, New money.Number }

// Difference is what was added; below zero what was taken off.
func (t Two) Difference() money.Number { return t.New.Sub(t.Old) }

// Pair is a figure of the whole job before and after.
type Pair struct {
	Key, Name string
	Format    sheet.Format
	Two
}

// What became of an order line.
const (
	LineSame    = "same"
	LineChanged = "changed"
	LineAdded   = "added"
	LineDropped = "dropped"
)

// LinePair is a line of the price before and after. Price is that of one after
// all discounts; a charge on the whole has neither quantity nor price.
type LinePair struct {
	Key, Section, Name, Unit string
	Extra                    bool
	State                    string
	Quantity, Price, Amount  Two
}

// LoadChange is a part of which more or less goes out than is on the trucks.
type LoadChange struct {
	Part     *catalog.Part
	On, Want int    // pieces
	Vehicle  string // that is to take it, or that has it
}

// Pieces is how many to add, or to take off.
func (c *LoadChange) Pieces() int { return max(c.Want-c.On, c.On-c.Want) }

// Packs is the pieces as a picker says them.
func (c *LoadChange) Packs() string { return packText(c.Part, c.Pieces()) }

// PickLine is one row of a pick list.
type PickLine struct {
	Key      string
	Part     *catalog.Part
	Quantity int
	Vehicle  string
}

// PickLines lists the rows of a quote's pick list, in the walking order of the
// yard.
func PickLines(q *quote.Quote) []PickLine {
	rows := portions(&q.Load.Out, true)
	byBin(rows)
	list := make([]PickLine, len(rows))
	for i := range rows {
		p := &rows[i]
		list[i] = PickLine{Key: p.key, Part: p.part, Quantity: p.quantity}
		if p.trip != nil {
			list[i].Vehicle = shortVehicle(p.trip)
		}
	}
	return list
}

// VehiclesOut names the vehicles of the way out.
func VehiclesOut(q *quote.Quote) string {
	var names []string
	for i := range q.Load.Out.Trips {
		names = append(names, shortVehicle(&q.Load.Out.Trips[i]))
	}
	return strings.Join(names, ", ")
}

// WalkLoads puts changes in the walking order of the yard.
func WalkLoads(list []LoadChange) {
	slices.SortStableFunc(list, func(a, b LoadChange) int {
		return cmp.Or(natural(a.Part.Bin, b.Part.Bin), strings.Compare(a.Part.Name, b.Part.Name))
	})
}

// WalkMoves puts moves in the order of the vehicles that they are taken from,
// since one of them is emptied at a time.
func WalkMoves(list []LoadMove) {
	slices.SortStableFunc(list, func(a, b LoadMove) int {
		return cmp.Or(strings.Compare(a.From, b.From), natural(a.Part.Bin, b.Part.Bin), strings.Compare(a.Part.Name, b.Part.Name))
	})
}

// LayoutSideBySide lays a comparison out; q is the newer revision, whose yard,
// money and units are shown.
func LayoutSideBySide(q *quote.Quote, c *SideBySide) *sheet.Book {
	l := newLayout(q)
	l.book.Title += ", two revisions"
	l.compareSheet(c)
	l.loadSheet(c)
	return l.book
}

// Columns of the comparison: figures of the whole job stand under those of the
// lines, in the last three.
const (
	compareOld  = 9
	compareCols = 11
)

// compareSheet has totals, hours and lines.
func (l *layout) compareSheet(c *SideBySide) {
	s := l.sheet(SheetCompare, "Old is "+c.Old+", new is "+c.New+".", sheet.TabOffice, true)
	for _, w := range []float64{10, 15, 32, 7, 9, 9, 11, 11, 13, 13, 13} {
		s.Columns = append(s.Columns, sheet.Column{Width: w})
	}
	l.pairs(s, "total", "Totals", c.Totals)
	for i, words := range []string{"Vehicles, old", "Vehicles, new"} {
		l.fields(s, span(1, 3, in(text(words), sheet.Style{Role: sheet.Label})), span(4, compareCols, in(text(c.Vehicles[i]), sheet.Style{Role: sheet.Body, Wrap: true})))
	}
	l.pairs(s, "window", "Hours by window of work", c.Windows)
	l.linePairs(s, c.Lines)
	s.FreezeRows = 2
}

// differs is the formula of a difference between the two cells left of it.
func differs(row, old int) string {
	return "ROUND(" + sheet.Ref(row, old+1) + "-" + sheet.Ref(row, old) + ",4)"
}

// pairs writes figures of the whole job under a band.
func (l *layout) pairs(s *sheet.Sheet, name, title string, list []Pair) {
	band(s, title, compareCols)
	head := fill(sheet.Cell{}, sheet.Style{Role: sheet.Heading}, compareCols)
	for i, words := range []string{"Old", "New", "Difference"} {
		head[compareOld-1+i] = in(text(words), sheet.Style{Role: sheet.Heading, Align: sheet.Right})
	}
	s.Rows = append(s.Rows, sheet.Row{Cells: head})
	l.across(s)
	first := len(s.Rows) + 1
	for _, p := range list {
		row := len(s.Rows) + 1
		cells := fill(text(p.Name), sheet.Style{Role: sheet.Body}, compareCols)
		cells[compareOld-1] = in(value(p.Old), body(p.Format))
		cells[compareOld] = in(value(p.New), body(p.Format))
		cells[compareOld+1] = in(formula(differs(row, compareOld), p.Difference()), sheet.Style{Role: sheet.Calc, Format: p.Format, Bold: true})
		s.Rows = append(s.Rows, sheet.Row{Cells: cells})
		l.across(s)
		l.cellName("diff_"+name+"_"+ident(p.Key), s, compareCols)
	}
	l.marked(s, sheet.Range{R1: first, C1: compareCols, R2: len(s.Rows), C2: compareCols}, "$"+sheet.Ref(first, compareCols)+"<>0")
}

// across joins the cells before the figures in the last row.
func (l *layout) across(s *sheet.Sheet) {
	n := len(s.Rows)
	s.Merges = append(s.Merges, sheet.Range{R1: n, C1: 1, R2: n, C2: compareOld - 1})
}

// right sets the head of a column of figures above them.
func right(s sheet.Style) sheet.Style {
	s.Align = sheet.Right
	return s
}

// marked shows the cells of a block in which something differs.
func (l *layout) marked(s *sheet.Sheet, r sheet.Range, f string) {
	if r.R2 >= r.R1 {
		s.Highlights = append(s.Highlights, sheet.Highlight{Range: r, Formula: f, Role: sheet.Warn})
	}
}

// linePairs lists every line of the price; the differences add up to that of
// the price before tax.
func (l *layout) linePairs(s *sheet.Sheet, list []LinePair) {
	s.Rows = append(s.Rows, sheet.Row{})
	title := fill(text("Lines. Price is of one, after discounts and for the days charged; an extra counts once it is chosen"), sheet.Style{Role: sheet.Section}, compareCols)
	s.Rows = append(s.Rows, sheet.Row{Cells: title})
	t := l.startTable(s, "line", []column{
		{"state", "Line is", 0, sheet.Style{Role: sheet.Body, Bold: true}},
		{"section", "Section", 0, wrap()},
		{"name", "Line", 0, wrap()},
		{"unit", "Unit", 0, body(sheet.Text)},
		{"quantity_old", "Old quantity", 0, right(body(sheet.General))},
		{"quantity_new", "New quantity", 0, right(body(sheet.General))},
		{"price_old", "Old price", 0, right(body(sheet.Money))},
		{"price_new", "New price", 0, right(body(sheet.Money))},
		{"old", "Old amount", 0, right(body(sheet.Money))},
		{"new", "New amount", 0, right(body(sheet.Money))},
		{"difference", "Difference", 0, right(sheet.Style{Role: sheet.Calc, Format: sheet.Money, Bold: true})},
	})
	sum := Two{}
	for i := range list {
		l.linePair(t, &list[i])
		sum.Old, sum.New = sum.Old.Add(list[i].Amount.Old), sum.New.Add(list[i].Amount.New)
	}
	t.end()
	t.s.TitleRows = [2]int{t.first - 1, t.first - 1}
	cells := fill(text("All lines, the price before tax"), sheet.Style{Role: sheet.Total}, compareCols)
	for i, v := range []money.Number{sum.Old, sum.New, sum.Difference()} {
		cells[compareOld-1+i] = in(formula(l.rounded("SUM(line_"+[]string{"old", "new", "difference"}[i]+")"), v), sheet.Style{Role: sheet.Total, Format: sheet.Money})
	}
	s.Rows = append(s.Rows, sheet.Row{Cells: cells})
	state := t.at("state", t.first)
	l.marked(s, t.column("state"), "AND(LEN("+state+")>0,"+state+"<>"+quoted(LineSame)+")")
	l.marked(s, t.column("difference"), t.at("difference", t.first)+"<>0")
}

// linePair writes a line; what it has not on one side stays empty there.
func (l *layout) linePair(t *table, p *LinePair) {
	n := t.line()
	name := p.Name
	if p.Extra {
		name += ", optional extra"
	}
	n.set("state", text(p.State))
	n.set("section", text(p.Section))
	n.set("name", text(name))
	n.set("unit", text(p.Unit))
	if p.Unit != "" {
		if p.State != LineAdded {
			n.set("quantity_old", value(p.Quantity.Old))
			n.set("price_old", value(p.Price.Old))
		}
		if p.State != LineDropped {
			n.set("quantity_new", value(p.Quantity.New))
			n.set("price_new", value(p.Price.New))
		}
	}
	n.set("old", value(p.Amount.Old))
	n.set("new", value(p.Amount.New))
	n.set("difference", formula(l.rounded(n.at("new")+"-"+n.at("old")), p.Amount.Difference()))
	n.add()
}

// loadSheet tells the yard what to add to a load that is pulled already, and
// what to take off.
func (l *layout) loadSheet(c *SideBySide) {
	s := l.sheet(SheetLoads, "What to do to a load that was pulled for "+c.Old+".", sheet.TabYard, true)
	l.fields(s, span(1, 9, in(text("Taken to be on the trucks: "+c.Basis), sheet.Style{Role: sheet.Notice, Wrap: true})))
	l.loadTable(s, "add", "ADD to the load, by the walking order of the yard", c.Loads, func(x *LoadChange) bool { return x.Want > x.On })
	l.loadTable(s, "off", "TAKE OFF the load and put back", c.Loads, func(x *LoadChange) bool { return x.Want < x.On })
	l.moveTable(s, c.Moves)
	s.FreezeRows, s.TitleRows = 2, [2]int{1, 1}
	s.PrintArea = &sheet.Range{R1: 1, C1: 1, R2: len(s.Rows), C2: loadPrinted}
}

// loadPrinted is how many columns of the load's changes are printed.
const loadPrinted = 9

// fewRows is how many rows may stand above a table of the load's changes on its
// page, so that its heads and first lines surely fit below them.
const fewRows = 14

// loadBand opens a table of the load's changes, on a new page where much stands
// on this one.
func loadBand(s *sheet.Sheet, title string) {
	above := len(s.Rows)
	if n := len(s.Breaks); n > 0 {
		above -= s.Breaks[n-1]
	}
	if above > fewRows {
		s.Breaks = append(s.Breaks, len(s.Rows)+2) // behind the empty row of the band
	}
	band(s, title, loadPrinted)
}

// moveTable lists what goes over to another vehicle, wholly or in part: how much
// rides where is on the new revision's Truck Manifest.
func (l *layout) moveTable(s *sheet.Sheet, list []LoadMove) {
	loadBand(s, "MOVE to another vehicle, as the Truck Manifest of the new revision shares it out")
	t := l.startTable(s, "move", []column{
		{"done", "Done", 7, tick()},
		{"bin", "Bin", 10, body(sheet.Text)},
		{"item", "Item", 36, wrap()},
		{"pieces", "Stay", 10, sheet.Style{Role: sheet.Body, Format: sheet.Whole, Bold: true, Align: sheet.Centre}},
		{"from", "Is on", 20, wrap()},
		{"", "", 9, body(sheet.Text)},
		{"", "", 9, body(sheet.Text)},
		{"to", "Rides on", 22, wrap()},
		{"note", "Note", 22, sheet.Style{Role: sheet.InputText}},
	})
	for i := range list {
		x := &list[i]
		t.add(text(emptyBox), text(x.Part.Bin), text(x.Part.Name), value(x.Pieces), text(x.From), value(nil), value(nil), text(x.To), text(""))
		row := len(s.Rows)
		s.Merges = append(s.Merges, sheet.Range{R1: row, C1: t.col("from"), R2: row, C2: t.col("from") + 2})
	}
	if len(list) == 0 {
		t.add(sheet.Cell{Style: sheet.Style{Role: sheet.Body}}, text(""), text("nothing"))
		t.end()
		return
	}
	t.end()
	l.allowColumn(t, "done", ticks(), "a tick when it is done")
	l.allowColumn(t, "note", words(200), "what was done otherwise")
}

// loadTable lists the changes of one direction.
func (l *layout) loadTable(s *sheet.Sheet, name, title string, list []LoadChange, is func(*LoadChange) bool) {
	loadBand(s, title)
	t := l.startTable(s, name, []column{
		{"done", "Done", 7, tick()},
		{"bin", "Bin", 10, body(sheet.Text)},
		{"item", "Item", 36, wrap()},
		{"pieces", either(name == "add", "Add", "Take off"), 10, sheet.Style{Role: sheet.Calc, Format: sheet.Whole, Bold: true, Align: sheet.Centre}},
		{"packs", "In packs", 20, sheet.Style{Role: sheet.Calc, Wrap: true}},
		{"on", "On the trucks", 9, sheet.Style{Role: sheet.Body, Format: sheet.Whole, Align: sheet.Centre}},
		{"want", "Wanted", 9, sheet.Style{Role: sheet.Body, Format: sheet.Whole, Align: sheet.Centre}},
		{"vehicle", "Vehicle", 22, wrap()},
		{"note", "Note", 22, sheet.Style{Role: sheet.InputText}},
		{"part", "Part", 18, sheet.Style{Role: sheet.Key}},
	})
	for i := range list {
		if x := &list[i]; is(x) {
			row := t.next()
			more, less := "want", "on"
			if name == "off" {
				more, less = less, more
			}
			t.add(text(emptyBox), text(x.Part.Bin), text(x.Part.Name), formula(t.at(more, row)+"-"+t.at(less, row), x.Pieces()),
				formula(packFormula(x.Part, t.at("pieces", row)), x.Packs()), value(x.On), value(x.Want), text(x.Vehicle), text(""), text(x.Part.ID))
		}
	}
	t.widths()
	if t.next() == t.first {
		t.add(sheet.Cell{Style: sheet.Style{Role: sheet.Body}}, text(""), text("nothing"))
		t.end()
		return
	}
	t.end()
	l.allowColumn(t, "done", ticks(), "a tick when it is done")
	l.allowColumn(t, "note", words(200), "what was done otherwise")
}
