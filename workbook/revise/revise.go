// Package revise reads a quote workbook that the office worked in, finds what
// was changed, and computes the next revision from it.
//
// The workbook carries the job and the shop that it was made from. From these
// the workbook is laid out once more as it was, and held against what came
// back: what differs in a cell that people may change is an edit of the job or
// of the shop's figures; what stands in cells for notes, ticks and counts is
// kept; everything else is computed anew and, where it was overwritten, told.
//
//	file -> sheet.Found -> Open -> Edits -> Revise -> quote and changes
//	                                  \-> Keep: notes, ticks, added sheets
package revise

import (
	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/quote"
	"tentwright/quote/job"
	"tentwright/workbook"
	"tentwright/workbook/record"
	"tentwright/workbook/sheet"
)

// Codes of problems.
const (
	NotOurs    = "not-a-quote"    // a workbook, but none of ours
	Damaged    = "record-damaged" // what it was made from cannot be read
	Unreadable = "unreadable-cell"
	NameGone   = "name-gone"
	RowGone    = "row-gone"
	RowTwice   = "row-twice"
	Overwriten = "overwritten"
	Conflict   = "two-values"
	NoItem     = "no-item"
)

// Book is a quote workbook that came back.
type Book struct {
	File   string
	Record *record.Record
	Quote  *quote.Quote // as it was quoted
	Edits  []Edit       // in the order of the sheets

	found, was *view
	laid       *sheet.Book // the workbook as it was written
}

// Is tells whether a workbook is a quote workbook, or was one.
func Is(f *sheet.Found) bool {
	_, ok := f.Names[workbook.RecordName]
	return ok || f.Sheet(workbook.SheetRecord) != nil && f.Sheet(workbook.SheetPick) != nil
}

// Open reads a quote workbook and finds what was edited in it. The list has
// every cell that cannot be read, and warnings of what is not taken over; the
// book is nil where there are faults.
func Open(file string, f *sheet.Found) (*Book, diag.List) {
	b := &Book{File: file}
	var list diag.List
	place, ok := f.Names[workbook.RecordName]
	if !ok {
		list.Add(diag.Problem{Pos: diag.Pos{File: file}, Code: NotOurs, Message: "this workbook has no record of what it was made from",
			Advice: "a workbook made by the command quote was expected"})
		return nil, list
	}
	if list = b.unpack(f, place); list.Err() != nil {
		return nil, list
	}
	b.laid = workbook.LayoutWith(b.Quote, workbook.Options{NoRecord: true})
	b.was, b.found = newView(b.laid.Found()), newView(f)
	list.Join(b.compare())
	if list.Err() != nil {
		return nil, list.Sorted()
	}
	return b, list.Sorted()
}

// unpack reads the record and computes the quote as it was.
func (b *Book) unpack(f *sheet.Found, place sheet.Place) diag.List {
	var pieces []string
	for row := place.R1; row <= place.R2; row++ {
		pieces = append(pieces, f.Sheet(place.Sheet).At(row, place.C1).Text)
	}
	var list diag.List
	var err error
	if b.Record, err = record.Unpack(pieces); err != nil {
		list.Addf(diag.Pos{File: b.File, Sheet: place.Sheet}, Damaged, "the record of what this workbook was made from cannot be read: %v", err)
		return list
	}
	c, list := catalog.Load(b.File+" (record)", b.Record.Shop)
	if c == nil {
		return list
	}
	j, list := job.ReadFor(c, b.File+" (record)", b.Record.Job)
	if j == nil {
		return list
	}
	b.Quote, list = quote.Build(c, j)
	return list.Faults()
}
