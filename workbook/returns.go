package workbook

import "tentwright/workbook/sheet"

// returnColumns are the columns of the check-in; those behind the state are for
// formulas and do not print.
func (l *layout) returnColumns() []column {
	key := sheet.Style{Role: sheet.Key}
	return []column{
		{"bin", "Bin", 9, body(sheet.Text)},
		{"item", "Item", 30, wrap()},
		{"out", "Went out", 8, sheet.Style{Role: sheet.Calc, Format: sheet.Whole, Bold: true, Align: sheet.Centre}},
		{"counted", "Came back", 8, sheet.Style{Role: sheet.Input, Format: sheet.Whole, Align: sheet.Centre}},
		{"damaged", "Of these damaged", 9, sheet.Style{Role: sheet.Input, Format: sheet.Whole, Align: sheet.Centre}},
		{"wet", "Wet", 6, sheet.Style{Role: sheet.Input, Format: sheet.Text, Align: sheet.Centre}},
		{"missing", "Missing", 8, sheet.Style{Role: sheet.Calc, Format: sheet.Whole, Align: sheet.Centre}},
		{"tag", "Tag", 10, calc(sheet.Text)},
		{"note", "Note: torn, bent, dirty, where", 18, sheet.Style{Role: sheet.InputText}},
		{"each", "Charge for one", 11, input(sheet.Money)},
		{"charge", "Charge", 11, sheet.Style{Role: sheet.Calc, Format: sheet.Money, Bold: true}},
		{"state", "State", 14, sheet.Style{Role: sheet.Calc, Wrap: true, Bold: true}},
		{"part", "Part", 18, key},
		{"key", "Key", 22, key},
	}
}

// returns lays out the count of what comes back: a line for each part, and one
// for each tagged piece. What is used up is left out.
func (l *layout) returns() {
	s := l.sheet(SheetReturn, "What came back, in the walking order of the yard; what is used up is not listed.", sheet.TabYard, true)
	lines := l.backLines()
	l.returnHead(s, sumBacks(lines))
	t := l.startTable(s, "return", l.returnColumns())
	for i := range lines {
		l.returnRow(t, &lines[i])
	}
	t.end()
	t.widths()
	t.keepHeads(2)
	t.ends("state")
	l.returnRules(t)
}

// returnHead is the block above the list: the job, sums, signatures. The customer
// signs too, since a charge may follow.
func (l *layout) returnHead(s *sheet.Sheet, sums backSums) {
	count := sheet.Style{Role: sheet.Total, Format: sheet.Whole}
	l.fields(s, span(1, 1, label("Event")), span(2, 3, text(l.q.Job.Event.Name)), span(4, 5, label("Collect")), span(6, 8, in(value(l.q.Job.Dates.Collect), dated())),
		span(9, 9, label("Lines out")), span(10, 10, in(formula(`COUNTIF(return_out,">0")`, sums.out), count)),
		span(11, 11, in(text("counted"), sheet.Style{Role: sheet.Label, Indent: 1})), span(12, 12, in(formula("COUNT(return_counted)", sums.counted), count)))
	l.fields(s, span(1, 1, label("Place")), span(2, 3, in(text(l.address()), sheet.Style{Wrap: true})), span(4, 5, label("All charges")),
		span(6, 8, in(formula("SUM(return_charge)", sums.charge), sheet.Style{Role: sheet.Total, Format: sheet.Money, Align: sheet.Left})),
		span(9, 9, label("Pieces missing")), span(10, 10, in(formula("SUM(return_missing)", sums.missing), count)),
		span(11, 11, in(text("damaged"), sheet.Style{Role: sheet.Label, Indent: 1})), span(12, 12, in(formula("SUM(return_damaged)", sums.damaged), count)))
	l.cellName("total_replacement", s, 6)
	l.fields(s, span(1, 1, label("Counted by")), blank(2, 2, "return_counted_by", "name of who counted"), span(3, 4, label("For customer")), blank(5, 8, "return_for_customer", "name of who was present for the customer"),
		span(9, 9, label("Day, time")), blank(10, 12, "return_finished", "when the count was finished"))
	l.fields(s, span(1, 12, in(text("Count by pack, small parts by weight. Charges are a proposal by the price of a new one; the office decides, with the damage waiver in mind. "+
		"Wet goods are not free again until dry."), sheet.Style{Role: sheet.Faint})))
}

// returnRow is one part, or one tagged piece, against what went out. Nothing is
// missing or charged before somebody has counted, and no more is damaged than
// came back.
func (l *layout) returnRow(t *table, p *backLine) {
	row := t.next()
	at := func(id string) string { return t.at(id, row) }
	went, tag := "SUMIFS(pick_out,pick_part,"+at("part")+")", text("")
	if p.part.Tracked {
		went = find("pick_out", "pick_key", at("key"))
		same := find("pick_tag", "pick_key", at("key"))
		tag = formula("IF(LEN("+same+`)=0,"",`+same+")", l.sentTag(p.key))
	}
	none := "LEN(" + at("counted") + ")=0"
	lost := "MAX(0," + at("out") + "-" + at("counted") + ")"
	damaged := "IF(" + at("damaged") + ">" + at("counted") + "," + at("counted") + "," + at("damaged") + ")"
	charge := "IF(" + none + ",0," + l.rounded("("+lost+"+"+damaged+")*"+at("each")) + ")"
	t.add(text(p.part.Bin), text(p.name(true)), formula(went, p.out),
		value(keptCell(l.kept.Counted, p.key, nil)), value(keptCell(l.kept.Damaged, p.key, nil)), text(l.kept.Wet[p.key]),
		formula("IF("+none+`,"",`+lost+")", p.missingCell()), tag, text(""), value(p.each), formula(charge, p.charge),
		formula(returnState(at), p.state), text(p.part.ID), text(p.key))
}

// Words for a line of which nothing went out, and for counts that cannot be.
const (
	stateNoneOut = "none out"
	stateCount   = "count first"
	stateBeyond  = "more damaged than back"
)

// returnState says what is to be done about a line, the worst first: counts that
// cannot be, then what is missing, what is torn, and what is wet.
func returnState(at func(string) string) string {
	return "IF(LEN(" + at("counted") + ")=0,IF(LEN(" + at("damaged") + ")+LEN(" + at("wet") + ")>0," + quoted(stateCount) +
		",IF(" + at("out") + "=0," + quoted(stateNoneOut) + `,"")),` +
		"IF(" + at("damaged") + ">" + at("counted") + "," + quoted(stateBeyond) + "," +
		"IF(" + at("counted") + "<" + at("out") + `,"missing "&(` + at("out") + "-" + at("counted") + ")," +
		"IF(" + at("counted") + ">" + at("out") + `,"too many, "&(` + at("counted") + "-" + at("out") + ")," +
		"IF(" + at("damaged") + `>0,"to mending",IF(` + at("wet") + `="Yes","dry first","complete"))))))`
}

// returnRules limits what is typed and shows what needs an eye.
func (l *layout) returnRules(t *table) {
	l.allowColumn(t, "counted", wholes(0, 1000000), "how many came back, in pieces, damaged ones included; 0 if none did")
	l.allowColumn(t, "damaged", wholes(0, 1000000), "how many of those that came back are damaged; the charge for one is proposed for each, and the office decides; never more than came back")
	l.allowColumn(t, "wet", yesNo(), "Yes if it must dry before it is stored or goes out again")
	l.allowColumn(t, "note", words(200), "torn, bent, dirty; where on the piece, and what happened")
	l.allowColumn(t, "each", amounts(), "what one costs the customer if it is lost or beyond mending")
	first := t.first
	state := t.at("state", first)
	cannot := state + "=" + quoted(stateCount) + "," + state + "=" + quoted(stateBeyond) + ")"
	t.s.Highlights = append(t.s.Highlights,
		sheet.Highlight{Range: t.column("state"), Formula: "OR(LEFT(" + state + `,7)="missing",LEFT(` + state + `,3)="too",` + state + `="to mending",` + state + `="dry first",` + cannot, Role: sheet.Warn},
		sheet.Highlight{Range: t.column("damaged"), Formula: "OR(" + cannot, Role: sheet.Warn},
		sheet.Highlight{Range: t.column("state"), Formula: state + `="complete"`, Role: sheet.Good},
		sheet.Highlight{Range: sheet.Range{R1: first, C1: 1, R2: len(t.s.Rows), C2: t.col("state")}, Formula: state + "=" + quoted(stateNoneOut), Role: sheet.Faint})
}
