package sheet

import (
	"strconv"

	"tentwright/catalog/money"
)

// Found is a workbook as it stands in a file that people worked in: saved by
// whatever program, with sheets renamed, added or sorted. It holds what cells
// show and how they came about, not how they look.
type Found struct {
	Sheets []*FoundSheet
	Names  map[string]Place // defined names of the whole book, in lower case; those that point nowhere are left out
	Lost   []string         // names that point nowhere any more, sorted
	Links  []string         // other files that formulas refer to
	Macros bool             // the file carries programs, which are not read
}

// Place is a block of cells on a sheet.
type Place struct {
	Sheet string
	Range
}

// FoundSheet is one tab. Row i of Rows is spreadsheet row i+1, column j of a row
// is spreadsheet column j+1; rows and cells beyond the last used are missing.
type FoundSheet struct {
	Name   string
	Hidden bool
	Rows   [][]FoundCell
	Merges []Range
	Widths map[int]float64 // of columns whose width is set, by column from 1
	Notes  []Note          // remarks on cells
}

// FoundCell is what one cell holds. Of a formula, Value is what it gave when
// the file was saved.
type FoundCell struct {
	Kind    FoundKind
	Text    string  // of a text or an error as it is shown, of a number as the file writes it
	Number  float64 // of a number, or 1 and 0 of a truth
	Formula string  // without '='; "" for a plain value
	Day     bool    // the number is shown as a date
	Percent bool    // the number is shown in percent: 0.03 as 3%
}

// FoundKind is the type of a cell's value.
type FoundKind int

// The kinds. FoundError is an error value such as "#REF!".
const (
	FoundEmpty FoundKind = iota
	FoundNumber
	FoundText
	FoundBool
	FoundError
)

// Sheet finds a sheet by its name; nil if there is none.
func (f *Found) Sheet(name string) *FoundSheet {
	for _, s := range f.Sheets {
		if s.Name == name {
			return s
		}
	}
	return nil
}

// At is the cell in a row and column counted from 1; an empty one where the
// sheet holds nothing.
func (s *FoundSheet) At(row, col int) FoundCell {
	if s == nil || row < 1 || col < 1 || row > len(s.Rows) || col > len(s.Rows[row-1]) {
		return FoundCell{}
	}
	return s.Rows[row-1][col-1]
}

// Exact is the number of a cell to the 15 digits that spreadsheets show: what
// lies beyond is the noise of their arithmetic, so that 1.1*3 is 3.3. Zero when
// the cell holds no number.
func (c FoundCell) Exact() money.Number {
	if c.Kind != FoundNumber {
		return money.Zero
	}
	n, err := strconv.ParseFloat(strconv.FormatFloat(c.Number, 'g', 15, 64), 64)
	if err != nil {
		n = c.Number
	}
	return money.Float(n)
}

// Shown is the number of a cell as people see it: in full, and with its sign
// where it is shown in percent, 0.25 as "25%".
func (c FoundCell) Shown() string {
	if c.Percent {
		return c.Exact().Shift(2).String() + "%"
	}
	return c.Exact().String()
}
