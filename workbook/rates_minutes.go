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
	l.allowDown(s, first, 7, wholes(1, 50), "people that the task needs at least")
	if first > len(s.Rows) {
		return
	}
	l.rangeName("rule_optimistic", s, 4, first)
	l.rangeName("rule_pessimistic", s, 5, first)
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
	l.allowDown(s, first, 5, wholes(1, 50), "people that the task needs at least")
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
// wrong; an empty one follows from the shop's percentages. Mean and deviation
// stand behind.
func (l *layout) spreadRow(s *sheet.Sheet, r *catalog.LabourRule, spread *catalog.Spread) {
	row := len(s.Rows) + 1
	likely := sheet.Ref(row, 3)
	reach := func(col int, own *money.Number, name string) (sheet.Cell, string) {
		cell, at := in(value(nil), input(sheet.General)), sheet.Ref(row, col)
		if own != nil {
			cell.Value = *own
		}
		return cell, "IF(ISNUMBER(" + at + ")," + at + "," + likely + "*" + name + "/100)"
	}
	low, lowest := reach(4, r.Optimistic, "spread_optimistic")
	high, highest := reach(5, r.Pessimistic, "spread_pessimistic")
	mean, dev := threePoint(r, spread)
	s.Rows = append(s.Rows, sheet.Row{Cells: append(l.minuteCells(r), low, high,
		in(value(r.Fixed), input(sheet.General)), in(value(r.Crew), input(sheet.Whole)), in(text(r.Skill), body(sheet.Text)), in(text(r.ID), sheet.Style{Role: sheet.Key}),
		in(formula("ROUND(("+lowest+"+4*"+likely+"+"+highest+")/6,4)", mean), calc(sheet.General)),
		in(formula("ROUND(("+highest+"-"+lowest+")/6,4)", dev), calc(sheet.General)))})
	id := ident(r.ID)
	l.minuteNames(s, r, 6)
	l.cellName("optimistic_"+id, s, 4)
	l.cellName("pessimistic_"+id, s, 5)
	l.allow(s, row, 4, sheet.Validation{Kind: sheet.Decimal, Min: "0", Max: "minutes_" + id, AllowBlank: true}, "minutes each when all goes well, no more than usual; empty: by the percentage above")
	l.allow(s, row, 5, sheet.Validation{Kind: sheet.Decimal, Min: "minutes_" + id, Max: "10000000", AllowBlank: true}, "minutes each when much goes wrong, no less than usual; empty: by the percentage above")
}

// threePoint is mean and deviation of a rule's minutes by the three-point estimate
// (Malcolm, Roseboom, Clark and Fazar 1959, Operations Research 7, 646-669), to
// four places.
func threePoint(r *catalog.LabourRule, spread *catalog.Spread) (mean, dev money.Number) {
	reach := func(own *money.Number, percent money.Number) money.Number {
		if own != nil {
			return *own
		}
		return r.Minutes.Mul(percent).Shift(-2)
	}
	a, b, six := reach(r.Optimistic, spread.Optimistic), reach(r.Pessimistic, spread.Pessimistic), money.Int(6)
	return money.Round(a.Add(r.Minutes.Mul(money.Int(4))).Add(b).Div(six), 4), money.Round(b.Sub(a).Div(six), 4)
}

// spreadSums adds mean and deviation of all rules up: no figure of the trade, but
// it moves whenever a spread is changed, so that the plan knows of it.
func spreadSums(c *catalog.Catalog) (mean, dev money.Number) {
	for i := range c.Labour {
		m, d := threePoint(&c.Labour[i], &c.Crew.Spread)
		mean, dev = mean.Add(m), dev.Add(d)
	}
	return mean, dev
}

// unrising shows minutes that lie on the wrong side of the usual ones, which may
// have been typed later.
func (l *layout) unrising(s *sheet.Sheet, first, col int, than string) {
	at, likely := "$"+sheet.Ref(first, col), "$"+sheet.Ref(first, 3)
	s.Highlights = append(s.Highlights, sheet.Highlight{Range: sheet.Range{R1: first, C1: col, R2: len(s.Rows), C2: col},
		Formula: "AND(ISNUMBER(" + at + "),OR(" + at + than + likely + "," + likely + "=0))", Role: sheet.Warn})
}
