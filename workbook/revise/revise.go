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
	NotOurs     = "not-a-quote"    // a workbook, but none of ours
	Damaged     = "record-damaged" // what it was made from cannot be read
	Unreadable  = "unreadable-cell"
	NameGone    = "name-gone"
	RowGone     = "row-gone"
	RowTwice    = "row-twice"
	RowCount    = "row-count" // rows were added to a list that has a fixed number of them
	Overwritten = "overwritten"
	Unused      = "unused-cell" // nothing follows from what was typed there
	Conflict    = "two-values"
	NoItem      = "no-item"
	Joined      = "joined" // a tent is gone at whose side another stands
	Doubtful    = "doubtful-percent"

	OtherVersion = "other-version"
)

// Book is a quote workbook that came back.
type Book struct {
	File   string
	Record *record.Record
	Quote  *quote.Quote // as it was quoted
	Edits  []Edit       // in the order of the sheets, days out last

	found, was *view
	laid       *sheet.Book            // the workbook as it was written
	sheets     map[string]string      // sheets that came back, by their names now, to those that they were written with
	rows       map[string]map[int]int // of each of them: the row that each row was written as
	added      map[rowAt]string       // rows taken for added lines, to the ways to these in the job
	places     places                 // of the job's lines in the next revision
	next       *quote.Quote           // the next revision, once it is computed
	clash      map[string]bool        // names of the office's that the next workbook defines itself, in lower case
}

// Is tells whether a workbook is a quote workbook, or was one.
func Is(f *sheet.Found) bool {
	_, ok := f.Names[workbook.RecordName]
	return ok || f.Sheet(workbook.SheetRecord) != nil && f.Sheet(workbook.SheetPick) != nil
}

// Open reads a quote workbook and finds what was edited in it. The list has
// every cell that cannot be read or does not fit, and warnings of what is not
// taken over; the book is nil where there are faults.
func Open(file string, f *sheet.Found) (*Book, diag.List) {
	b := &Book{File: file}
	var list diag.List
	place, ok := recordPlace(f)
	if !ok {
		list.Add(diag.Problem{Pos: diag.Pos{File: file}, Code: NotOurs, Message: "this workbook has no record of what it was made from",
			Advice: "a workbook made by the command quote was expected"})
		return nil, list
	}
	if list = b.unpack(f, place); list.Err() != nil {
		return nil, list
	}
	b.laid = workbook.LayoutWith(b.Quote, workbook.Options{NoRecord: true, NoPlan: true})
	b.was, b.found = newView(b.laid.Found()), newView(f)
	b.match()
	list.Join(b.otherVersion(b.compare()))
	if list.Err() != nil {
		list.Join(b.misfits(list))
		return nil, list.Sorted()
	}
	return b, list.Sorted()
}

// otherVersion takes the warnings of names and cells that differ out, where
// another version of the program wrote the workbook: it may have had them
// otherwise. One warning says so.
func (b *Book) otherVersion(list diag.List) diag.List {
	p, ok := b.found.f.Names[workbook.RecordPrint]
	if !ok || shown(b.found.cell(p)) == workbook.Fingerprint(b.laid) {
		return list
	}
	var out diag.List
	for _, x := range list {
		if !x.Warning || x.Code != NameGone && x.Code != Overwritten && x.Code != RowGone {
			out.Add(x)
		}
	}
	out.Add(diag.Problem{Pos: diag.Pos{File: b.File}, Code: OtherVersion, Warning: true,
		Message: "another version of tentwright made this workbook; what was typed for it is read, but not whether its formulas are still in place"})
	return out
}

// recordPlace finds the cells of the record: by their name, or on their sheet,
// which nobody sees, where the name was deleted.
func recordPlace(f *sheet.Found) (sheet.Place, bool) {
	if p, ok := f.Names[workbook.RecordName]; ok {
		return p, true
	}
	s := f.Sheet(workbook.SheetRecord)
	if s == nil || len(s.Rows) < 2 {
		return sheet.Place{}, false
	}
	return sheet.Place{Sheet: s.Name, Range: sheet.Range{R1: 2, C1: 1, R2: len(s.Rows), C2: 1}}, true
}

// misfits are the faults of the edits that can be read, so that people are told
// of all at once.
func (b *Book) misfits(known diag.List) diag.List {
	told := map[diag.Pos]bool{}
	for _, p := range known {
		told[p.Pos] = true
	}
	var more diag.List
	_, list := b.Revise(nil)
	for _, p := range list.Faults() {
		if p.Pos.Cell != "" && !told[p.Pos] {
			more.Add(p)
		}
	}
	return more
}

// match finds which sheet is which, since people rename them: the defined names
// tell. Then it finds the rows of each.
func (b *Book) match() {
	b.sheets, b.rows, b.added = map[string]string{}, map[string]map[int]int{}, map[rowAt]string{}
	for name, was := range b.was.f.Names {
		if now, ok := b.found.f.Names[name]; ok {
			b.sheets[now.Sheet] = was.Sheet
		}
	}
	for _, s := range b.was.f.Sheets {
		if b.found.f.Sheet(s.Name) != nil && b.sheets[s.Name] == "" && b.foundName(s.Name) == s.Name {
			b.sheets[s.Name] = s.Name
		}
	}
	for now, was := range b.sheets {
		b.rows[now] = align(b.found, b.was, now, was, b.found.last(now), func(key string) string { return key })
	}
	// These two are written anew each time.
	for name, own := range map[string]string{workbook.RecordName: workbook.SheetRecord, "change_what": workbook.SheetChanges} {
		if p, ok := b.found.f.Names[name]; ok {
			b.sheets[p.Sheet] = own
		}
	}
}

// foundName is the name that a sheet now has.
func (b *Book) foundName(was string) string {
	for now, name := range b.sheets {
		if name == was {
			return now
		}
	}
	return was
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
