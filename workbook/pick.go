package workbook

import (
	"strings"

	"tentwright/catalog/unit"
	"tentwright/quote"
	"tentwright/quote/load"
	"tentwright/quote/parts"
	"tentwright/workbook/sheet"
)

// stateNone is the state of a line of an extra that nobody ordered.
const stateNone = "not ordered"

// pickColumns are the columns of the pick list: up to the state they print,
// the others carry the terms.
func (l *layout) pickColumns() []column {
	key := sheet.Style{Role: sheet.Key}
	return []column{
		{"bin", "Bin", 8, body(sheet.Text)},
		{"item", "Item", 28.5, wrap()},
		{"group", "Load group", 9, body(sheet.Text)},
		{"pack", "Pack", 15.5, sheet.Style{Role: sheet.Calc, Wrap: true}},
		{"quantity", "Pick", 6.5, sheet.Style{Role: sheet.Calc, Format: sheet.Whole, Bold: true, Align: sheet.Centre}},
		{"vehicle", "Vehicle", 15, wrap()},
		{"pulled", "Pulled", 7, tick()},
		{"ticked", "Loaded", 7.5, tick()},
		{"loaded", "Count loaded", 7.5, sheet.Style{Role: sheet.Input, Format: sheet.Whole, Align: sheet.Centre}},
		{"returned", "Back", 6, tick()},
		{"tag", "Tag", 8.5, sheet.Style{Role: sheet.InputText}},
		{"note", "Note, or what was taken instead", 13, sheet.Style{Role: sheet.InputText}},
		{"state", "State", 11.5, sheet.Style{Role: sheet.Calc, Wrap: true, Bold: true}},
		{"key", "Key", 20, key},
		{"part", "Part", 16, key},
		{"trip", "Trip", 6, key},
		{"owned", "Owned", 9, body(sheet.Whole)},
		{"beyond", "Beyond what is owned", 9, calc(sheet.Whole)},
		{"counted", "Counted", 9, calc(sheet.Whole)},
		{"percent", "Spare, percent", 9, body(sheet.General)},
		{"least", "Spare, at least", 9, body(sheet.Whole)},
		{"spare", "Spare", 8, calc(sheet.Whole)},
		{"share", "Share of this trip", 9, body(sheet.Whole)},
		{"rank", "Row of the part", 8, body(sheet.Whole)},
		{"out", "Went out", 8, calc(sheet.Whole)},
		{"each", "One, " + l.sys.MassUnit(), 9, body(sheet.Num2)},
		{"tare", "Empty pack, " + l.sys.MassUnit(), 9, body(sheet.Num2)},
		{"packs", "Packs", 8, calc(sheet.Whole)},
		{"weight", "Weight, " + l.sys.MassUnit(), 10, calc(sheet.Num2)},
		{"size", "One pack, " + l.sys.VolumeUnit(), 10, body(sheet.Num2)},
		{"volume", "Room, " + l.sys.VolumeUnit(), 10, calc(sheet.Num2)},
		{"out_packs", "Packs that went out", 9, calc(sheet.Whole)},
		{"out_weight", "Weight that went out, " + l.sys.MassUnit(), 11, calc(sheet.Num2)},
		{"out_volume", "Room of what went out, " + l.sys.VolumeUnit(), 11, calc(sheet.Num2)},
	}
}

// pickList lays out what is pulled, in the walking order of the yard, and how
// much of it was loaded.
func (l *layout) pickList() {
	s := l.sheet(SheetPick, "What to pull, in the walking order of the yard.", sheet.TabYard, true)
	rows := l.carried.picks
	l.pickHead(s, rows)
	t := l.startTable(s, "pick", l.pickColumns())
	zone := ""
	for i := range rows {
		l.pickRow(t, &rows[i], zoneOf(rows[i].part.Bin) != zone)
		zone = zoneOf(rows[i].part.Bin)
	}
	t.end()
	t.widths()
	t.keepHeads(2)
	t.ends("state")
	l.pickRules(t)
}

// pickHead is the block above the list: the job, its dates, sums, signatures.
func (l *layout) pickHead(s *sheet.Sheet, rows []portion) {
	var mass unit.Mass
	lines := 0
	for i := range rows {
		p := &rows[i]
		mass += p.heap(p.quantity).mass
		if p.quantity > 0 {
			lines++
		}
	}
	sum := sheet.Style{Role: sheet.Total, Format: sheet.Num2}
	count := sheet.Style{Role: sheet.Total, Format: sheet.Whole}
	dates := l.q.Job.Dates
	l.fields(s, span(1, 1, label("Event")), span(2, 4, text(l.q.Job.Event.Name)),
		span(5, 6, label("Deliver")), span(7, 10, in(value(dates.Deliver), dated())),
		span(11, 12, label("Lines to pick")), span(13, 13, in(formula(`COUNTIF(pick_quantity,">0")`, lines), count)))
	n := l.fields(s, span(1, 1, label("Place")), span(2, 4, in(text(l.address()), sheet.Style{Wrap: true})),
		span(5, 6, label("Pick on")), span(7, 10, in(value(dates.Deliver.AddDays(-1)), sheet.Style{Role: sheet.Input, Format: sheet.DateLong, Align: sheet.Left})),
		span(11, 12, label("Weight of all, "+l.sys.MassUnit())), span(13, 13, in(formula("ROUND(SUM(pick_weight),2)", hundredths(mass, l.sys)), sum)))
	l.cellName("total_weight", s, 13)
	l.name("pick_on", s, sheet.Range{R1: n, C1: 7, R2: n, C2: 7}, "")
	l.allow(s, n, 7, sheet.Validation{Kind: sheet.Date, Min: "1", Max: itoa(dates.Deliver.Serial())}, "the day on which the goods are pulled, not after delivery")
	l.fields(s, span(1, 1, label("Pulled by")), blank(2, 3, "pick_pulled_by", "name of who pulled the goods"),
		span(4, 5, label("Checked by")), blank(6, 8, "pick_checked_by", "name of who checked what was loaded"),
		span(9, 10, label("Day, time")), blank(11, 13, "pick_finished", "when loading was finished"))
	l.remarks(s)
	l.fields(s, span(1, 13, in(text("For one vehicle: press the arrow beside Vehicle, keep one, print; its lines alone are printed. "+
		"Count loaded only where it differs from Pick. A note says what was taken instead."), sheet.Style{Role: sheet.Faint})))
}

// remarks are the notes on what is ordered, such as the colour of linen: a part
// may be on several lines, so that they stand above the list.
func (l *layout) remarks(s *sheet.Sheet) {
	for i := range l.q.Parts.Orders {
		o := &l.q.Parts.Orders[i]
		if o.Note == "" || o.Item == nil {
			continue
		}
		note := find(itemLines+"_note", itemLines+"_key", quoted(o.Key))
		words := "IF(LEN(" + note + `)=0,"",` + find(itemLines+"_name", itemLines+"_key", quoted(o.Key)) + `&": "&` + note + ")"
		l.fields(s, span(1, 1, label("Remark")), span(2, 13, in(formula(words, sheet.Clean(o.Name+": "+o.Note)), sheet.Style{Wrap: true})))
	}
}

// dated is the style of a day at the head of a sheet.
func dated() sheet.Style { return sheet.Style{Format: sheet.DateLong, Align: sheet.Left} }

// address is the place of the event on one line.
func (l *layout) address() string { return strings.Join(l.q.Job.Event.Address, ", ") }

// hundredths is a weight as the sum of a column shows it, to two places.
func hundredths(m unit.Mass, sys unit.System) float64 { return m.RoundTo(sys).In(sys) }

// pickRow is one part on one trip, or one tagged piece.
func (l *layout) pickRow(t *table, p *portion, newZone bool) {
	row := t.next()
	at := func(id string) string { return t.at(id, row) }
	q := at("quantity")
	line := l.q.Parts.Find(p.part.ID)
	vehicle := ""
	if p.trip != nil {
		vehicle = shortVehicle(p.trip)
	}
	cells := []sheet.Cell{
		in(text(p.part.Bin), sheet.Style{Role: sheet.Body, Bold: newZone}), text(p.name(true)), text(useWords[p.part.Use]),
		formula(packFormula(p.part, q), packText(p.part, p.quantity)),
		formula(p.takes(t, row, "("+at("counted")+"+"+at("spare")+")"), p.quantity),
		text(vehicle), text(emptyBox), text(emptyBox), value(keptCell(l.kept.Loaded, p.key, nil)), text(emptyBox), value(l.sentTag(p.key)), text(""),
		formula(pickState(q, at("loaded"), p.part.Tracked), l.pickWords(p)),
	}
	t.add(append(cells, l.pickTerms(t, row, p, line)...)...)
}

// pickState is the formula that compares what was loaded with the pick; an empty
// cell means that all of it was. The row of a tagged piece has one tag: where
// more are ordered than the list has rows for, it says how many it takes.
func pickState(pick, loaded string, tracked bool) string {
	all := `""`
	if tracked {
		all = "IF(" + pick + `>1,"needs "&` + pick + `&" tags","")`
	}
	return "IF(LEN(" + loaded + ")=0,IF(" + pick + "=0," + quoted(stateNone) + "," + all + ")," +
		"IF(" + loaded + "<" + pick + `,"short "&(` + pick + "-" + loaded + ")," +
		"IF(" + loaded + ">" + pick + `,"over "&(` + loaded + "-" + pick + ")," + all + ")))"
}

// pickWords is pickState of the numbers.
func (l *layout) pickWords(p *portion) string {
	_, typed := l.kept.Loaded[p.key]
	out := p.rides.pieces
	switch {
	case !typed && p.quantity == 0:
		return stateNone
	case out < p.quantity:
		return "short " + itoa(p.quantity-out)
	case out > p.quantity:
		return "over " + itoa(out-p.quantity)
	case p.part.Tracked && p.quantity > 1:
		return "needs " + itoa(p.quantity) + " tags"
	}
	return ""
}

// pickTerms are the cells right of what prints: the terms of the quantity and of
// the weight, and the keys by which the other sheets find the row however the
// list is sorted.
func (l *layout) pickTerms(t *table, row int, p *portion, line *parts.Line) []sheet.Cell {
	at := func(id string) string { return t.at(id, row) }
	q, part := at("quantity"), p.part
	percent, least := 0.0, 0
	if part.Spare != nil {
		percent, least = float(part.Spare.Percent), part.Spare.Min
	}
	spare := "IF(" + at("counted") + "=0,0,MAX(" + at("least") + ",MAX(0,ROUNDUP(" + at("counted") + "*" + at("percent") + "/100-0.000001,0))))"
	packs := load.PackCount(p.quantity, part.Pack.Holds)
	size := part.Pack.Size.Volume()
	pick, out := p.heap(p.quantity), p.rides
	beyond := 0
	if p.rank == 1 {
		beyond = quote.Beyond(line)
	}
	return []sheet.Cell{
		text(p.key), text(part.ID), text(p.tripKey()), value(part.Owned), formula(beyondFormula(t, row), beyond),
		formula("SUMIFS(need_quantity,need_part,"+at("part")+")", line.Counted), value(percent), value(least), formula(spare, line.Spare),
		p.shareCell(), value(p.rank), formula("IF(LEN("+at("loaded")+")=0,"+q+","+at("loaded")+")", out.pieces),
		value(p.share.Each.In(l.sys)), value(load.Tare(part).In(l.sys)), formula(packCountFormula(part, q), packs),
		formula(weightFormula(t, row, "quantity", "packs"), pick.mass.In(l.sys)),
		value(size.In(l.sys)), formula(at("packs")+"*"+at("size"), pick.room.In(l.sys)),
		formula(packCountFormula(part, at("out")), load.PackCount(out.pieces, part.Pack.Holds)), formula(weightFormula(t, row, "out", "out_packs"), out.mass.In(l.sys)),
		formula(at("out_packs")+"*"+at("size"), out.room.In(l.sys)),
	}
}

// beyondFormula is how many of a part are picked beyond what the yard owns,
// told on the part's first row; a part without a number owned is not limited.
func beyondFormula(t *table, row int) string {
	at := func(id string) string { return t.at(id, row) }
	return "IF(AND(" + at("rank") + "=1," + at("owned") + ">0),MAX(0," + at("counted") + "+" + at("spare") + "-" + at("owned") + "),0)"
}

// weightFormula is the weight of a row from its own terms: so many pieces in so
// many packs, by their columns.
func weightFormula(t *table, row int, pieces, packs string) string {
	at := func(id string) string { return t.at(id, row) }
	return at(pieces) + "*" + at("each") + "+" + at(packs) + "*" + at("tare")
}

// pickRules limits what is typed into the list and shows what needs an eye. What
// was loaded may be more or less than the pick: the state says so, and vehicles
// of both ways and the check-in count by it. Prices and hours count by the pick.
func (l *layout) pickRules(t *table) {
	for _, id := range []string{"pulled", "ticked", "returned"} {
		l.allowColumn(t, id, ticks(), "a tick when it is done")
	}
	l.allowColumn(t, "loaded", wholes(0, 1000000), "how many were loaded, in pieces; leave it empty if it is the number to pick")
	l.allowColumn(t, "tag", words(40), "the tag on this piece, where each carries one")
	l.allowColumn(t, "note", words(200), "what was taken instead, or why it is short")
	first := t.first
	t.s.Highlights = append(t.s.Highlights,
		sheet.Highlight{Range: t.column("state"), Formula: "LEFT(" + t.at("state", first) + `,5)="short"`, Role: sheet.Warn},
		sheet.Highlight{Range: t.column("loaded"), Formula: "LEFT(" + t.at("state", first) + `,5)="short"`, Role: sheet.Warn},
		sheet.Highlight{Range: t.column("state"), Formula: "LEFT(" + t.at("state", first) + `,4)="over"`, Role: sheet.Warn},
		sheet.Highlight{Range: t.column("state"), Formula: "LEFT(" + t.at("state", first) + `,5)="needs"`, Role: sheet.Warn},
		sheet.Highlight{Range: t.column("tag"), Formula: "LEFT(" + t.at("state", first) + `,5)="needs"`, Role: sheet.Warn},
		sheet.Highlight{Range: t.column("note"), Formula: "LEN(" + t.at("note", first) + ")>0", Role: sheet.Warn},
		sheet.Highlight{Range: t.column("item"), Formula: "LEN(" + t.at("note", first) + ")>0", Role: sheet.Warn},
		sheet.Highlight{Range: sheet.Range{R1: first, C1: 1, R2: len(t.s.Rows), C2: t.col("state")},
			Formula: t.at("state", first) + "=" + quoted(stateNone), Role: sheet.Faint})
}
