package workbook

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"slices"
	"strings"

	"tentwright/quote"
	"tentwright/quote/job"
	"tentwright/workbook/record"
	"tentwright/workbook/sheet"
)

// Names of the cells with what the workbook was made from, and with the
// fingerprint of its layout.
const (
	RecordName  = "record_text"
	RecordPrint = "record_layout"
)

// Fingerprint is a short sum of a workbook's defined names. Another version of
// the program may lay the same quote out otherwise; then names that are missing
// tell nothing about what people did.
func Fingerprint(b *sheet.Book) string {
	var names []string
	for _, n := range b.Names {
		if !strings.HasPrefix(n.Name, "change_") && !strings.HasPrefix(n.Name, "record_") {
			names = append(names, n.Name)
		}
	}
	slices.Sort(names)
	sum := sha256.Sum256([]byte(strings.Join(names, "\n")))
	return hex.EncodeToString(sum[:8])
}

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
		{Cells: []sheet.Cell{in(text("What this workbook was made from. Please leave it as it is: a new quote is computed from it."), sheet.Style{Role: sheet.Faint}), text(Fingerprint(l.book))}}}}
	l.cellName(RecordPrint, s, 2)
	for _, piece := range texts {
		s.Rows = append(s.Rows, sheet.Row{Cells: []sheet.Cell{text(piece)}, Height: 15})
	}
	l.book.Sheets = append(l.book.Sheets, s)
	l.name(RecordName, s, sheet.Range{R1: 2, C1: 1, R2: len(s.Rows), C2: 1}, "")
}
