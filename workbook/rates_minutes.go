package workbook

import (
	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/workbook/sheet"
)

// minuteRates writes the minutes of every labour rule of the shop, and how far
// they spread where the shop plans its crews; without a plan nothing would follow
// from that.
func (l *layout) minuteRates(s *sheet.Sheet) {
	band(s, "Task minutes", l.rateCols())
	crew := l.q.Catalog.Crew
	if crew == nil {
		l.plainMinutes(s)
		return
	}
	l.settings(s, []setting{
		{"spread_optimistic", "Optimistic", "percent, where a rule has none of its own", float(crew.Spread.Optimistic), sheet.PercentPoint, sheet.Validation{Kind: sheet.Decimal, Min: "1", Max: "100"}},
		{"spread_pessimistic", "Pessimistic", "percent, where a rule has none of its own", float(crew.Spread.Pessimistic), sheet.PercentPoint, sheet.Validation{Kind: sheet.Decimal, Min: "100", Max: "1000"}},
	})
	heads(s, "Task", "Counted by", "Minutes each", "Optimistic", "Pessimistic", "Fixed minutes", "Smallest crew", "Skill", "Rule", "Mean", "Deviation")
	first := len(s.Rows) + 1
	for i := range l.q.Catalog.Labour {
		l.spreadRow(s, &l.q.Catalog.Labour[i], &crew.Spread)
	}
	l.allowDown(s, first, 3, amounts(), "hand-minutes for each of what is counted")
	l.allowDown(s, first, 6, amounts(), "hand-minutes once, when there is anything to do; they spread as those for each")
	l.allowDown(s, first, 7, wholes(1, 200), "people that the task needs at least")
	if first > len(s.Rows) {
		return
	}
	for i, name := range []string{"likely", "optimistic", "pessimistic"} {
		l.rangeName("rule_"+name, s, 3+i, first)
	}
	l.rangeName("rule_mean", s, 10, first)
	l.rangeName("rule_dev", s, 11, first)
	l.unrising(s, first, 4, ">")
	l.unrising(s, first, 5, "<")
}

// plainMinutes is the table without a spread.
func (l *layout) plainMinutes(s *sheet.Sheet) {
	heads(s, "Task", "Counted by", "Minutes each", "Fixed minutes", "Smallest crew", "Skill", "Rule")
	first := len(s.Rows) + 1
	for i := range l.q.Catalog.Labour {
		r := &l.q.Catalog.Labour[i]
		s.Rows = append(s.Rows, sheet.Row{Cells: append(l.minuteCells(r), in(value(r.Fixed), input(sheet.General)), in(value(r.Crew), input(sheet.Whole)),
			in(text(r.Skill), body(sheet.Text)), in(text(r.ID), sheet.Style{Role: sheet.Key}))})
		l.minuteNames(s, r, 4)
	}
	l.allowDown(s, first, 3, amounts(), "hand-minutes for each of what is counted")
	l.allowDown(s, first, 4, amounts(), "hand-minutes once, when there is anything to do")
	l.allowDown(s, first, 5, wholes(1, 200), "people that the task needs at least")
}

// minuteCells are the first cells of a rule's row.
func (l *layout) minuteCells(r *catalog.LabourRule) []sheet.Cell {
	driver, _ := catalog.FindDriver(r.Driver)
	return []sheet.Cell{in(text(r.Name), wrap()), in(text(driver.Name), wrap()), in(value(r.Minutes), input(sheet.General))}
}

// minuteNames names the inputs that every rule has, in the last row.
func (l *layout) minuteNames(s *sheet.Sheet, r *catalog.LabourRule, fixed int) {
	l.cellName("minutes_"+ident(r.ID), s, 3)
	l.cellName("fixed_"+ident(r.ID), s, fixed)
	l.cellName("smallest_"+ident(r.ID), s, fixed+1)
}

// spreadRow is a rule with its minutes when all goes well and when much goes
// wrong; an empty one follows from the shop's percentages. Mean and deviation of
// the three-point estimate (Malcolm, Roseboom, Clark and Fazar 1959, Operations
// Research 7, 646-669) stand behind.
func (l *layout) spreadRow(s *sheet.Sheet, r *catalog.LabourRule, spread *catalog.Spread) {
	row := len(s.Rows) + 1
	likely := sheet.Ref(row, 3)
	reach := func(col int, own *money.Number, name string, percent money.Number) (cell sheet.Cell, formula string, n money.Number) {
		at := sheet.Ref(row, col)
		cell, n = in(value(nil), input(sheet.General)), r.Minutes.Mul(percent).Shift(-2)
		if own != nil {
			cell.Value, n = *own, *own
		}
		return cell, "IF(ISNUMBER(" + at + ")," + at + "," + likely + "*" + name + "/100)", n
	}
	low, lowest, a := reach(4, r.Optimistic, "spread_optimistic", spread.Optimistic)
	high, highest, b := reach(5, r.Pessimistic, "spread_pessimistic", spread.Pessimistic)
	six := money.Int(6)
	mean, dev := a.Add(r.Minutes.Mul(money.Int(4))).Add(b).Div(six), b.Sub(a).Div(six)
	s.Rows = append(s.Rows, sheet.Row{Cells: append(l.minuteCells(r), low, high,
		in(value(r.Fixed), input(sheet.General)), in(value(r.Crew), input(sheet.Whole)), in(text(r.Skill), body(sheet.Text)), in(text(r.ID), sheet.Style{Role: sheet.Key}),
		in(formula("ROUND(("+lowest+"+4*"+likely+"+"+highest+")/6,4)", money.Round(mean, 4)), calc(sheet.General)),
		in(formula("ROUND(("+highest+"-"+lowest+")/6,4)", money.Round(dev, 4)), calc(sheet.General)))})
	id := ident(r.ID)
	l.minuteNames(s, r, 6)
	l.cellName("optimistic_"+id, s, 4)
	l.cellName("pessimistic_"+id, s, 5)
	l.allow(s, row, 4, sheet.Validation{Kind: sheet.Decimal, Min: "0", Max: "minutes_" + id, AllowBlank: true}, "minutes each when all goes well, no more than usual; empty: by the percentage above")
	l.allow(s, row, 5, sheet.Validation{Kind: sheet.Decimal, Min: "minutes_" + id, Max: "10000000", AllowBlank: true}, "minutes each when much goes wrong, no less than usual; empty: by the percentage above")
}

// unrising shows minutes that lie on the wrong side of the usual ones, which may
// have been typed later.
func (l *layout) unrising(s *sheet.Sheet, first, col int, than string) {
	at, likely := "$"+sheet.Ref(first, col), "$"+sheet.Ref(first, 3)
	s.Highlights = append(s.Highlights, sheet.Highlight{Range: sheet.Range{R1: first, C1: col, R2: len(s.Rows), C2: col},
		Formula: "AND(ISNUMBER(" + at + "),OR(" + at + than + likely + "," + likely + "=0))", Role: sheet.Warn})
}
