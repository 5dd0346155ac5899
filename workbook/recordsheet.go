package workbook

import (
	"bytes"

	"tentwright/quote"
	"tentwright/quote/job"
	"tentwright/workbook/record"
	"tentwright/workbook/sheet"
)

// RecordName is the name of the cells with what the workbook was made from.
const RecordName = "record_text"

// packing packs the job and its shop while the sheets are laid out; the result
// is asked for at the end.
func packing(q *quote.Quote) (texts func() []string) {
	done := make(chan []string, 1)
	go func() {
		// Packing into memory cannot fail; a workbook without a record can still
		// be worked with, so none is left out for it.
		pieces, _ := record.Pack(recordOf(q))
		done <- pieces
	}()
	return func() []string { return <-done }
}

// recordOf is the job as its file has it, and the shop's files. A job that is
// no longer what its file says is written anew.
func recordOf(q *quote.Quote) *record.Record {
	now := job.Write(q.Job)
	r := &record.Record{Job: now, Shop: q.Catalog.Source}
	if j, _ := job.Read("", q.Job.Source); j != nil && bytes.Equal(job.Write(j), now) {
		r.Job = q.Job.Source
	}
	return r
}

// recordSheet keeps what the workbook was made from, out of the way.
func (l *layout) recordSheet(texts []string) {
	s := &sheet.Sheet{Name: SheetRecord, Protected: true, VeryHidden: true, Page: l.page(false), Rows: []sheet.Row{
		{Cells: []sheet.Cell{in(text("What this workbook was made from. Please leave it as it is: a new quote is computed from it."), sheet.Style{Role: sheet.Faint})}}}}
	for _, piece := range texts {
		s.Rows = append(s.Rows, sheet.Row{Cells: []sheet.Cell{text(piece)}, Height: 15})
	}
	l.book.Sheets = append(l.book.Sheets, s)
	l.name(RecordName, s, sheet.Range{R1: 2, C1: 1, R2: len(s.Rows), C2: 1}, "")
}
