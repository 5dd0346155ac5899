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

// fieldRow is one field; of those that figures follow from, beside what it was.
func (l *layout) fieldRow(t *table, f *JobField) {
	row := t.next()
	shown := f.Shows(l.q.Job)
	style, allow := sheet.Style{Role: sheet.InputText, Format: sheet.Text}, sheet.Validation{}
	if f.Day != nil {
		style = sheet.Style{Role: sheet.Input, Format: sheet.DateLong, Align: sheet.Left}
		allow = sheet.Validation{Kind: sheet.Date, Min: firstDay, Max: lastDay}
	} else {
		most := 4000
		if f.Text != nil {
			most = f.Text.Most
		}
		allow = words(most)
	}
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
