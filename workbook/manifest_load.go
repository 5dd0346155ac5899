package workbook

import (
	"cmp"
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/load"
	"tentwright/workbook/sheet"
)

// noteCol is where the note of a load line begins; it runs to the last column
// that prints.
const noteCol = 10

// loadColumns are the columns of a load order up to its note, on the widths of
// the vehicle tables above, then the terms given.
func (l *layout) loadColumns(terms ...column) []column {
	mass := l.sys.MassUnit()
	cols := []column{
		{"order", "Order", 6, sheet.Style{Role: sheet.Body, Format: sheet.Whole, Bold: true, Align: sheet.Centre}},
		{"item", "Item", 28, wrap()},
		{"pack", "Pack", 14, sheet.Style{Role: sheet.Calc, Wrap: true}},
		{"quantity", "Quantity", 9, sheet.Style{Role: sheet.Calc, Format: sheet.Whole, Bold: true, Align: sheet.Centre}},
		{"weight", "Weight, " + mass, 9, calc(sheet.Weight)},
		{"running", "Running, " + mass, 9, calc(sheet.Weight)},
		{"group", "For", 10, sheet.Style{Role: sheet.Body, Indent: 1}},
		{"tick", "Loaded", 10, tick()},
		{"trip", "Vehicle", 9, sheet.Style{Role: sheet.Body, Bold: true, Align: sheet.Centre}},
		{"note", "Note", 7, sheet.Style{Role: sheet.InputText}},
	}
	for _, width := range []float64{8, 8, 7, 12, 7} {
		cols = append(cols, column{"", "", width, sheet.Style{Role: sheet.InputText}})
	}
	return append(cols, terms...)
}

// outPages are the pages of the way out, one for each trip.
func (l *layout) outPages(s *sheet.Sheet, w way) {
	key := sheet.Style{Role: sheet.Key}
	l.pages(s, w, l.carried.out, l.loadColumns(column{"part", "Part", 22, key}), func(t *table, p *portion, sum unit.Mass) {
		row := t.next()
		of := "," + "pick_part," + t.at("part", row) + ",pick_trip," + t.at("trip", row) + ")"
		cells := l.loadCells(t, p, sum, "SUMIFS(pick_out"+of, "SUMIFS(pick_out_weight"+of)
		t.add(append(cells, text(p.part.ID))...)
	})
}

// homePages are the pages of the way back: what is used up is left out, and
// what may get wet weighs more. The last table is given back.
func (l *layout) homePages(s *sheet.Sheet, w way) *table {
	key := sheet.Style{Role: sheet.Key}
	mass, room := l.sys.MassUnit(), l.sys.VolumeUnit()
	cols := l.loadColumns(column{"part", "Part", 22, key},
		column{"out", "Went out in all", 9, calc(sheet.Whole)}, column{"share", "Share of this trip", 9, body(sheet.Whole)},
		column{"rank", "Row of the part", 8, body(sheet.Whole)}, column{"dry", "One, dry, " + mass, 9, body(sheet.Num2)},
		column{"each", "One, " + mass, 9, calc(sheet.Num2)}, column{"tare", "Empty pack, " + mass, 9, body(sheet.Num2)},
		column{"packs", "Packs", 8, calc(sheet.Whole)}, column{"size", "One pack, " + room, 9, body(sheet.Num2)},
		column{"volume", "Room, " + room, 9, calc(sheet.Num2)},
		column{"total", "Picked in all", 9, calc(sheet.Whole)}, column{"picked", "Picked, this trip", 9, calc(sheet.Whole)},
		column{"picked_packs", "Packs picked", 9, calc(sheet.Whole)}, column{"picked_weight", "Weight picked, " + mass, 10, calc(sheet.Num2)})
	t := l.pages(s, w, l.carried.home, cols, l.homeRow)
	t.widths()
	return t
}

// homeRow is one part on one trip back. Its share follows what went out; hours
// count by the pick, of which the last columns have the weight.
func (l *layout) homeRow(t *table, p *portion, sum unit.Mass) {
	row := t.next()
	at := func(id string) string { return t.at(id, row) }
	line := l.q.Parts.Find(p.part.ID)
	size, holds := p.part.Pack.Size.Volume(), p.part.Pack.Holds
	each := at("dry")
	if p.part.Wets {
		each = "ROUND(" + each + "*rate_wet,2)"
	}
	cells := l.loadCells(t, p, sum, p.takes(t, row, at("out")), weightFormula(t, row, "quantity", "packs"))
	t.add(append(cells, text(p.part.ID),
		formula("SUMIFS(pick_out,pick_part,"+at("part")+")", l.carried.parts[p.part.ID]), p.shareCell(), value(p.rank),
		value(line.Each.In(l.sys)), formula(each, p.share.Each.In(l.sys)), value(load.Tare(p.part).In(l.sys)),
		formula(packCountFormula(p.part, at("quantity")), load.PackCount(p.rides.pieces, holds)),
		value(size.In(l.sys)), formula(at("packs")+"*"+at("size"), p.rides.room.In(l.sys)),
		formula("SUMIFS(pick_quantity,pick_part,"+at("part")+")", line.Total()), formula(p.takes(t, row, at("total")), p.quantity),
		formula(packCountFormula(p.part, at("picked")), load.PackCount(p.quantity, holds)),
		formula(weightFormula(t, row, "picked", "picked_packs"), p.share.Mass.In(l.sys)))...)
}

// byLoading sorts rows of a way trip by trip, first what goes in first.
func byLoading(rows []portion) {
	slices.SortStableFunc(rows, func(a, b portion) int {
		return cmp.Or(cmp.Compare(a.share.Trip, b.share.Trip), cmp.Compare(a.share.Order, b.share.Order))
	})
}

// pages writes one page for each trip into one table, so that its named
// columns hold all of them. The table's headings stand over its first trip and
// are repeated at the top of each printed page.
func (l *layout) pages(s *sheet.Sheet, w way, rows []portion, cols []column, add func(*table, *portion, unit.Mass)) *table {
	var t *table
	open := func(trip *load.Trip) {
		s.Breaks = append(s.Breaks, len(s.Rows)+2)
		l.tripHead(s, w, trip)
		if t == nil {
			t = l.startLoads(s, w.goods, cols)
		}
	}
	var sum unit.Mass
	order := 0
	for i := range rows {
		p := &rows[i]
		if i == 0 || p.trip != rows[i-1].trip {
			sum, order = 0, 0
			open(p.trip)
		}
		sum += p.rides.mass
		order++
		p.order = order
		add(t, p, sum)
		s.Merges = append(s.Merges, sheet.Range{R1: len(s.Rows), C1: noteCol, R2: len(s.Rows), C2: manifestCols})
	}
	if t == nil {
		t = l.startLoads(s, w.goods, cols)
	}
	t.end()
	l.allowColumn(t, "tick", ticks(), "a tick when it is loaded")
	l.allowColumn(t, "note", words(200), "what the driver or the crew must know of it")
	s.Highlights = append(s.Highlights, sheet.Highlight{Range: sheet.Range{R1: t.first, C1: 1, R2: len(s.Rows), C2: manifestCols},
		Formula: "AND(ISNUMBER(" + t.at("quantity", t.first) + ")," + t.at("quantity", t.first) + "=0)", Role: sheet.Faint})
	return t
}

// startLoads writes the headings of a load order, the note's over its columns.
func (l *layout) startLoads(s *sheet.Sheet, name string, cols []column) *table {
	t := l.startTable(s, name, cols)
	head := t.first - 1
	for i := noteCol; i < manifestCols; i++ {
		s.Rows[head-1].Cells[i].Value = nil
	}
	s.Merges = append(s.Merges, sheet.Range{R1: head, C1: noteCol, R2: head, C2: manifestCols})
	if s.TitleRows == [2]int{} {
		s.TitleRows = [2]int{head, head}
	}
	return t
}

// tripHead opens the page of a trip with blanks for its driver, and repeats its
// load against its payload: this page alone goes into the cab.
func (l *layout) tripHead(s *sheet.Sheet, w way, trip *load.Trip) {
	if trip == nil {
		band(s, "On no vehicle", manifestCols)
		return
	}
	way := "out"
	if w.vehicles == "back" {
		way = "back"
	}
	band(s, trip.Key+" "+vehicleName(trip)+", "+way+": load in this order", manifestCols)
	if trip.Tow != "" {
		l.fields(s, span(1, 7, text("Trailer, pulled by "+trip.Tow+". Check hitch, chains, lights and brakes.")))
	} else {
		// A key is unique in both ways: those back begin with another letter.
		trip := "_" + ident(trip.Key)
		l.fields(s, span(1, 1, label("Driver")), blank(2, 2, "driver"+trip, "who drives, with the licence for it"), span(3, 3, label("Route")),
			blank(4, 9, "route"+trip, "the way to take, with low bridges and weight limits in mind"), span(10, 11, label("Departs")), blank(12, 15, "departs"+trip, "day and time of departure"))
	}
	at := func(column string) string {
		return find(w.vehicles+"_"+column, w.vehicles+"_key", quoted(trip.Key))
	}
	weight := sheet.Style{Format: sheet.Weight, Bold: true, Align: sheet.Left}
	now := l.carried.trips[trip.Key]
	n := l.fields(s, span(1, 1, label("Load")), span(2, 2, in(formula(at("load"), hundredths(now.Mass, l.sys)), weight)),
		span(3, 3, label("of payload, "+l.sys.MassUnit())), span(4, 5, in(formula(at("payload"), now.Payload.In(l.sys)), weight)),
		span(6, 6, in(formula(at("state"), l.tripState(now)), sheet.Style{Bold: true})),
		span(7, 15, in(text("Weigh it; the plate and local law govern. The driver secures the load."), sheet.Style{Role: sheet.Faint})))
	s.Highlights = append(s.Highlights, sheet.Highlight{Range: sheet.Range{R1: n, C1: 6, R2: n, C2: 6},
		Formula: sheet.AbsRef(n, 6) + "=" + quoted(tripOver), Role: sheet.Warn})
}

// loadCells are the cells of a load line that print. The running weight adds up
// by order, not by row, so that it stays right when the page is sorted.
func (l *layout) loadCells(t *table, p *portion, sum unit.Mass, quantity, weight string) []sheet.Cell {
	row := t.next()
	at := func(id string) string { return t.at(id, row) }
	name := t.name
	running := "SUMIFS(" + name + "_weight," + name + "_trip," + at("trip") + "," + name + "_order," + quoted("<=") + "&" + at("order") + ")"
	cells := []sheet.Cell{
		value(p.order), text(p.part.Name), formula(packFormula(p.part, at("quantity")), packText(p.part, p.rides.pieces)),
		formula(quantity, p.rides.pieces), formula(weight, p.rides.mass.In(l.sys)), formula(running, sum.In(l.sys)),
		text(useWords[p.part.Use]), text(emptyBox), text(p.tripKey()), text(l.loadNote(t, p.part)),
	}
	for len(cells) < manifestCols {
		cells = append(cells, sheet.Cell{})
	}
	return cells
}

// loadNote says of a part what its weight on the list does not.
func (l *layout) loadNote(t *table, p *catalog.Part) string {
	back := t.name == "home"
	switch {
	case p.Full != nil && back:
		return "empty; drain before loading"
	case p.Full != nil:
		return "rides empty; fill on site, " + p.Full.Text(l.sys) + " each when full"
	case p.Wets && back:
		return "weight as if wet; keep apart, spread to dry"
	}
	return ""
}
