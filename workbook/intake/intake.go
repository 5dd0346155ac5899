// Package intake is the form in which a salesperson fills in a job: a workbook
// of cells and drop-downs made from a shop's catalog, and the reader that turns
// the filled cells into a job.
//
//	Intake      the cells to fill in
//	Site Visit  one page to take along and fill in by pen
//	Lists       what the drop-downs offer; not shown
//
// Every input has a defined name or stands in a named column, and rows of
// tables carry a key in a hidden column. The reader goes by these alone, so
// that rows may be inserted and sheets renamed. It guesses nothing: what it
// cannot read for certain is a fault with its sheet and cell, and all faults of
// a form come at once.
package intake

import (
	"tentwright/workbook/sheet"
)

// Names of the sheets as a fresh form has them.
const (
	SheetIntake      = "Intake"
	SheetVisit       = "Site Visit"
	SheetLists       = "Lists"
	SheetCorrections = "Corrections"
)

// Version is the layout of the form that this package writes and reads.
const Version = 1

// formName marks a workbook as an intake form; its cell holds formMark with the
// version.
const (
	formName = "intake_form"
	formMark = "intake form "
)

// Tents is how many tents a form has rows for.
const Tents = 10

// Rows of the form beyond those of the catalog.
const (
	extraLines   = 6 // second lines of an item
	paymentLines = 4
	obstacles    = 6
	addressLines = 3
)

// Codes of the faults of a filled form, beside those of files and jobs.
const (
	LostName     = "lost-name"     // a cell or column of the form is gone
	OtherVersion = "other-version" // a form of another layout
	MergedCell   = "merged-cell"   // an input lies under a merged cell
	ErrorCell    = "error-cell"    // an input holds an error value
	HalfFilled   = "half-filled"   // a row that says too little to be used
	NoRow        = "no-row"        // a row without its number or key
	NotRead      = "not-read"      // words where the form has no input
)

// Is tells whether a workbook is an intake form, of whatever version.
func Is(f *sheet.Found) bool {
	if f == nil {
		return false
	}
	_, ok := f.Names[formName]
	return ok
}
