package workbook

import (
	"strings"
	"time"

	"tentwright/catalog"
	"tentwright/quote/dates"
	"tentwright/workbook/sheet"
)

// datePrinted is how many columns of the sheet print; those behind them are for
// formulas.
const datePrinted = 10

// dateSheet lays out by when each thing must be done. The days follow by formula
// from those of the job and from the numbers of days, which people may change.
func (l *layout) dateSheet() {
	if l.q.Dates == nil {
		return
	}
	s := l.sheet(SheetDates, "By when each thing must be done, from the days on the sheet Job and the shop's calendar.", sheet.TabOffice, true)
	l.knownDay(s)
	l.dateTable(s)
	l.offTable(s)
	l.estimate(s, dateCautions...)
	s.PrintArea = &sheet.Range{R1: 1, C1: 1, R2: len(s.Rows), C2: datePrinted}
}

// dateCautions stand below the dates.
var dateCautions = []string{
	"How many days before digging utilities must be marked, how long marks last, which holidays count and whether a driven stake is an excavation differ by state: ask the marking centre.",
	"Owners mark only their own lines. Private lines - sprinklers, septic, gas to a grill, wires to a barn - are not marked; the owner of the ground must show them.",
	"A day on this sheet proves nothing: a permit is held when it is in hand, and a line is marked when the mark has been seen.",
}

// knownDay is the day from which dates are looked at, and how days are counted.
func (l *layout) knownDay(s *sheet.Sheet) {
	faint := sheet.Style{Role: sheet.Faint}
	s.Rows = append(s.Rows, sheet.Row{}, sheet.Row{Cells: []sheet.Cell{
		in(text("Looked at from"), sheet.Style{Role: sheet.Label}), {},
		in(formula("MAX(job_date_quoted,job_date_signed)", l.q.Dates.Known), sheet.Style{Role: sheet.Calc, Format: sheet.DateLong, Align: sheet.Left}),
		in(text("The day of the quote, or of signing once there is one. What should have been done before it is late."), faint)}})
	l.cellName("date_known", s, 3)
	words := "Business days are those on which offices work: " + l.weekWords() + ", the holidays below left out. Yard days leave out the days on which the yard is shut too. The day that is counted from never counts."
	if !l.plainWeek() {
		words += " Spreadsheet programs count by Monday to Friday alone, so these days stand here as the quote found them: quote again when a day changes."
	}
	s.Rows = append(s.Rows, sheet.Row{Cells: []sheet.Cell{in(text(words), faint)}}, sheet.Row{})
}

// plainWeek tells whether offices work from Monday to Friday, as WORKDAY has it.
func (l *layout) plainWeek() bool {
	c := l.q.Catalog.Calendar
	for day := time.Sunday; day <= time.Saturday; day++ {
		if c.Works(day) != (day != time.Sunday && day != time.Saturday) {
			return false
		}
	}
	return true
}

// weekWords names the days on which offices work.
func (l *layout) weekWords() string {
	if l.plainWeek() {
		return "Monday to Friday"
	}
	names := make([]string, len(l.q.Catalog.Calendar.Week))
	for i, day := range l.q.Catalog.Calendar.Week {
		names[i] = strings.ToUpper(day[:1]) + day[1:]
	}
	return strings.Join(names, ", ")
}

// dateTable has one row for each date.
func (l *layout) dateTable(s *sheet.Sheet) {
	day := sheet.Style{Role: sheet.Calc, Format: sheet.DateLong, Align: sheet.Left}
	by := day
	by.Bold = true
	t := l.startTable(s, "date", []column{
		{"what", "What", 30, wrap()},
		{"who", "Who", 11, wrap()},
		{"first", "Not before", 17, day},
		{"last", "At the latest, or on", 17, by},
		{"state", "State", 15, sheet.Style{Role: sheet.Calc, Format: sheet.Text, Bold: true}},
		{"done", "Done", 7, tick()},
		{"days_first", "Days, not before", 9, input(sheet.Whole)},
		{"days_last", "Days, at the latest", 9, input(sheet.Whole)},
		{"rule", "Counted", 40, sheet.Style{Role: sheet.Calc, Format: sheet.Text, Wrap: true, Indent: 1}},
		{"note", "Note and source", 50, wrap()},
		{"needed", "Needed", 9, calc(sheet.Text)},
		{"missed", "If missed", 9, body(sheet.Text)},
		{"key", "Key", 14, sheet.Style{Role: sheet.Key}},
	})
	for i := range l.q.Dates.Dates {
		l.dateRow(t, &l.q.Dates.Dates[i])
	}
	t.end()
	t.widths()
	l.allowColumn(t, "days_first", wholes(-400, 400), "days from the one that is counted from, below zero before it; changes the shop's calendar for this quote")
	l.allowColumn(t, "days_last", wholes(-400, 400), "days from the one that is counted from, below zero before it; changes the shop's calendar for this quote")
	l.allowColumn(t, "done", ticks(), "tick once it is done")
	dateLights(t)
	s.FreezeRows, s.TitleRows = t.first-1, [2]int{t.first - 1, t.first - 1}
}

// dateLights shows in red what is late or has no day left, and faintly what the
// job has no need of.
func dateLights(t *table) {
	is := func(state string) string { return t.at("state", t.first) + "=" + quoted(state) }
	light := func(r sheet.Range, formula string, role sheet.Role) {
		t.s.Highlights = append(t.s.Highlights, sheet.Highlight{Range: r, Formula: formula, Role: role})
	}
	missed := "OR(" + is(dates.Late) + "," + is(dates.NoDay) + ")"
	light(t.column("state"), missed, sheet.Warn)
	light(t.column("last"), missed, sheet.Warn)
	light(t.column("first"), is(dates.NoDay), sheet.Warn)
	light(t.rows(), is(dates.NotNeeded), sheet.Faint)
}

// dateRow is one date.
func (l *layout) dateRow(t *table, d *dates.Date) {
	r, n, box := d.Rule, t.line(), emptyBox
	if l.kept.Done[r.ID] {
		box = TickedBox
	}
	n.set("what", text(r.Name))
	n.set("who", text(r.Who))
	n.set("first", l.dayCell(n, d, d.First, "days_first"))
	n.set("last", l.dayCell(n, d, d.Last, "days_last"))
	n.set("state", formula(stateOfDate(n, d), l.stateNow(d)))
	n.set("done", text(box))
	n.set("days_first", l.daysCell(d.First))
	n.set("days_last", l.daysCell(d.Last))
	n.set("rule", formula(ruleFormula(n, d), d.Words()))
	n.set("note", text(joined(" ", r.Note, dates.Behind("Source: ", r.Source))))
	n.set("needed", l.neededCell(d))
	n.set("missed", text(missedWord(r)))
	n.set("key", text(r.ID))
	n.add()
}

// missedWord tells what it means that a date can no longer be kept.
func missedWord(r *catalog.DateRule) string {
	if r.Stop && r.Term == "" {
		return "stop"
	}
	return "look"
}

// daysCell is the number of days of an end: for typing, unless the terms of the
// company set it or no program can count by it.
func (l *layout) daysCell(e *dates.End) sheet.Cell {
	switch {
	case e == nil:
		return in(text(""), body(sheet.Whole))
	case e.Term != "" || !l.countable(e):
		return in(value(e.Spec.Days), body(sheet.Whole))
	}
	return value(e.Spec.Days)
}

// offTable lists the holidays, and below them the days on which only the yard is
// shut. Counts of business days leave the former out, those of yard days both.
func (l *layout) offTable(s *sheet.Sheet) {
	d := l.q.Dates
	years := itoa(d.Years[0])
	if d.Years[1] > d.Years[0] {
		years += " to " + itoa(d.Years[1])
	}
	band(s, "Holidays and days on which the yard is shut, "+years+"; quote again for other years", datePrinted)
	t := l.startTable(s, "off", []column{
		{"name", "Day off", 0, wrap()},
		{"kind", "For", 0, body(sheet.Text)},
		{"day", "Day", 0, sheet.Style{Role: sheet.Body, Format: sheet.DateLong, Align: sheet.Left}},
	})
	for _, off := range d.Holidays {
		t.add(text(off.Name), text("offices"), value(off.Day))
	}
	last := len(s.Rows)
	for _, off := range d.Closed {
		t.add(text(off.Name), text("the yard"), value(off.Day))
	}
	t.end()
	// A name must stand for some cell; the empty last one is no day.
	first, col := t.first, t.col("day")
	if len(d.Holidays) == 0 {
		first, last = len(s.Rows), len(s.Rows)
	}
	l.name("days_off", s, sheet.Range{R1: first, C1: col, R2: last, C2: col}, "")
	l.name("days_closed", s, sheet.Range{R1: t.first, C1: col, R2: len(s.Rows), C2: col}, "")
}
