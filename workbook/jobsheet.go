package workbook

import (
	"tentwright/workbook/sheet"
)

// jobCols is the width of the sheet in columns.
const jobCols = 5

// jobSheet lays out whose event it is, where and when, as inputs. The quote
// shows what stands here; what figures were computed from is held against what
// it was, for those want a new quote.
func (l *layout) jobSheet() {
	s := l.sheet(SheetJob, "Names, places, days and notes. The quote shows what stands here.", sheet.TabOffice, false)
	t := l.startTable(s, "field", []column{
		{"label", "What", 22, sheet.Style{Role: sheet.Label}},
		{"now", "Now", 44, sheet.Style{}},
		{"counted", "Computed for", 20, sheet.Style{Role: sheet.Faint, Wrap: true}},
		{"state", "State", 10, sheet.Style{Role: sheet.Calc, Format: sheet.Text}},
		{"explain", "", 30, sheet.Style{Role: sheet.Faint, Wrap: true}},
	})
	for _, f := range JobFields() {
		l.fieldRow(t, &f)
	}
	t.end()
	t.widths()
	s.FreezeRows = t.first - 1
	s.Highlights = append(s.Highlights, sheet.Highlight{Range: t.column("state"), Formula: t.at("state", t.first) + `="requote"`, Role: sheet.Warn})
}

// mostLines is the most characters of a field of several lines.
const mostLines = 4000

// looks is how a field's cell looks, and what may be typed into it.
func (f *JobField) looks() (sheet.Style, sheet.Validation) {
	switch {
	case f.Day != nil:
		days := sheet.AnyDay()
		days.AllowBlank = f.None
		return sheet.Style{Role: sheet.Input, Format: sheet.DateLong, Align: sheet.Left}, days
	case f.Whole != nil:
		return sheet.Style{Role: sheet.Input, Format: sheet.Whole, Align: sheet.Left}, wholes(0, 100000)
	case f.Text != nil:
		return sheet.Style{Role: sheet.InputText, Format: sheet.Text}, words(f.Text.Most)
	}
	return sheet.Style{Role: sheet.InputText, Format: sheet.Text}, words(mostLines)
}

// fieldRow is one field; of those that figures follow from, beside what it was.
func (l *layout) fieldRow(t *table, f *JobField) {
	row := t.next()
	shown := f.Shows(l.q.Job)
	style, allow := f.looks()
	counted, state := sheet.Cell{}, sheet.Cell{}
	if f.Counted {
		counted = in(value(shown), sheet.Style{Role: sheet.Faint, Format: style.Format, Align: sheet.Left})
		state = formula("IF("+t.at("now", row)+"="+t.at("counted", row)+`,"","requote")`, "")
	}
	explain := f.Explain
	if explain == "" {
		explain = f.Label
	}
	t.add(text(f.Label), in(value(shown), style), counted, state, text(f.Explain))
	l.cellName(f.Name, t.s, t.col("now"))
	l.allow(t.s, row, t.col("now"), allow, explain)
}
