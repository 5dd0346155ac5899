// Package listing takes a price list or stock list of the shop's own, a sheet
// of a workbook or a CSV file, into the shop's catalog.
//
//	mapping.go  the mapping file: which column is which field
//	kinds.go    the fields that a list may set
//	table.go    the cells of a list, whatever file they come from
//	csv.go      lists as text
//	heading.go  where the columns are
//	number.go   numbers in the stated form
//	value.go    what a cell says for a field
//	entries.go  what the shop has today
//	take.go     each row of the list beside the shop
//	settle.go   the changed files, checked
//	add.go      rows of things that the shop does not have yet
//
// Nothing is guessed: what does not fit the mapping is refused, with its cell.
package listing

import (
	"tentwright/catalog"
	"tentwright/catalog/diag"
)

// Codes of the faults of lists; mappings also have those of package diag.
const (
	BadMapping  = "bad-mapping"      // the mapping contradicts itself
	BadCSV      = "bad-csv"          // a text that is no table, or not in the stated encoding
	NoSheet     = "no-sheet"         // the workbook has no sheet of that name
	NoHeading   = "no-heading"       // no row holds all headings of the mapping
	TwoHeadings = "repeated-heading" // a heading stands twice in its row
	NoKey       = "no-key"           // a row does not say what it is of
	TwoNames    = "name-of-two"      // a name that several entries of the shop have
	Differs     = "repeated-row"     // two rows for one entry say different things
	NotThere    = "not-there"        // the entry has no such figure to set
)

// State says what becomes of a row.
type State string

// The states of a row. Only what is taken or added changes the shop.
const (
	Taken     State = "taken"
	Added     State = "added"
	Unchanged State = "unchanged"  // the shop has all of it already
	Repeated  State = "repeated"   // an earlier row says the same
	Empty     State = "no figures" // every mapped cell is empty
	Refused   State = "refused"
)

// States lists all states in the order in which a summary tells of them.
func States() []State { return []State{Taken, Added, Unchanged, Repeated, Empty, Refused} }

// Change is one field that a row changes. Old is "none" for a field that the
// shop does not give.
type Change struct {
	Field    string
	Old, New string
	Pos      diag.Pos
	Look     bool // an amount more than five times the old one, or less than a fifth
}

// String is "price 2.5 -> 25"; with "LOOK" and why behind it where a person
// should see to the figure before the shop has it.
func (c Change) String() string {
	text := c.Field + " " + c.Old + " -> " + c.New
	if c.Look {
		text += " (LOOK: more than five times the old, or less than a fifth)"
	}
	return text
}

// Row is one row of the list. Faults is empty unless it is refused.
type Row struct {
	Pos     diag.Pos // of its key
	Key     string   // as the list has it
	ID      string   // of the shop's entry, a size as FAMILY:SIZE; "" if none was found
	Near    string   // of an added row: the known key that is nearest, for a slip would become a new entry
	State   State
	Changes []Change
	Faults  diag.List

	at     int // in the table
	edits  []edit
	values map[string]value
}

// Result is a list held against a shop: every row that is not blank, and the
// files of the shop that change when what was not refused is taken.
type Result struct {
	Rows    []Row
	Changed catalog.Shop
}

// Count is the number of rows in a state.
func (r *Result) Count(s State) int {
	n := 0
	for i := range r.Rows {
		if r.Rows[i].State == s {
			n++
		}
	}
	return n
}

// refuse marks a row and says why.
func (r *Row) refuse(p diag.Problem) {
	r.State, r.Changes, r.edits = Refused, nil, nil
	r.Faults.Add(p)
}
