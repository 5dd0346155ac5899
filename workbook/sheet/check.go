package sheet

import (
	"errors"
	"fmt"
	"regexp"
	"strings"
	"time"
	"unicode/utf16"
)

// Limits of texts in the file format, in UTF-16 units.
const (
	maxSheetName = 31
	maxPrompt    = 255
	maxTitle     = 32
	maxListText  = 255
	maxFormula   = 8192
	maxQuoted    = 255 // of a text within a formula
	maxNameText  = 255
	maxColWidth  = 255
	maxRowHeight = 409 // points
)

// checker collects the faults of a book.
type checker struct {
	names  map[string]bool // in lower case
	sheets map[string]bool // in lower case
	faults []error
}

// add notes a fault; checking goes on, so that one run shows all.
func (c *checker) add(format string, args ...any) {
	c.faults = append(c.faults, fmt.Errorf(format, args...))
}

// spot is where a fault is: a sheet, a range on it, and what of it. Its text is
// made only when there is a fault.
type spot struct {
	sheet string
	at    Range
	what  string // "merge", "note" ...; empty is the cell itself
}

// String is the spot as people name it: Checks!C4 highlight.
func (s spot) String() string {
	switch {
	case s.sheet == "":
		return s.what
	case s.at == Range{}:
		return strings.TrimSpace(s.sheet + " " + s.what)
	}
	return strings.TrimSpace(s.sheet + "!" + s.at.String() + " " + s.what)
}

// one is the range of a single cell.
func one(row, col int) Range { return Range{row, col, row, col} }

// Check reports everything that would make a spreadsheet program refuse or
// repair the file, or show an error: names, lengths, overlaps, unknown names in
// formulas. All faults come in one error, each with its sheet and cell.
func (b *Book) Check() error {
	c := &checker{names: map[string]bool{}, sheets: map[string]bool{}}
	if _, err := time.Parse(time.RFC3339, b.Created); err != nil {
		c.add("created %q; expected a time such as 2026-05-01T00:00:00Z", b.Created)
	}
	if b.Currency.Minor < 0 || b.Currency.Minor > 4 {
		c.add("currency has %d decimals; expected 0 to 4", b.Currency.Minor)
	}
	c.sheetNames(b.Sheets)
	c.definedNames(b.Names)
	for _, n := range b.Names {
		c.refers(n)
	}
	for _, s := range b.Sheets {
		c.sheet(s)
	}
	return errors.Join(c.faults...)
}

// sheetNames checks the tabs as a set. Apostrophes are refused although the
// format allows them inside a name: each formula would have to double them.
func (c *checker) sheetNames(sheets []*Sheet) {
	visible := false
	for i, s := range sheets {
		if s == nil {
			c.add("sheet %d is missing", i+1)
			continue
		}
		visible = visible || !s.Hidden && !s.VeryHidden
		switch n := units(s.Name); {
		case n == 0 || n > maxSheetName:
			c.add("sheet name %q has %d characters; expected 1 to %d", s.Name, n, maxSheetName)
		case strings.ContainsAny(s.Name, `[]:*?/\'`) || Clean(s.Name) != s.Name:
			c.add(`sheet name %q; expected none of [ ] : * ? / \ ' and no outer blanks`, s.Name)
		case strings.EqualFold(s.Name, "history"):
			c.add("sheet name %q is kept by the program for itself; expected another", s.Name)
		}
		if key := strings.ToLower(s.Name); c.sheets[key] {
			c.add("sheet name %q stands twice; capitals make no difference", s.Name)
		} else {
			c.sheets[key] = true
		}
	}
	if !visible {
		c.add("no sheet to show; expected at least one that is not hidden")
	}
}

// Names of good form, and those among them that read as a cell: tax2026 is the
// cell TAX2026, r1c1 a cell by its numbers.
var (
	goodName = regexp.MustCompile(`^[a-z_][a-z0-9_.]*$`)
	cellLike = regexp.MustCompile(`^(?:[a-z]{1,3}[0-9]+|[rc]|r[0-9]*c[0-9]*)$`)
)

// definedNames checks the names of the book as a set. Lower case only, since
// programs hold tax and TAX for one name and the file for two.
func (c *checker) definedNames(names []Name) {
	for _, n := range names {
		switch {
		case !goodName.MatchString(n.Name) || len(n.Name) > maxNameText:
			c.add("name %q; expected lower-case letters, digits, _ and ., not starting with a digit", n.Name)
		case cellLike.MatchString(n.Name):
			c.add("name %q reads as a cell; expected a longer name, such as one with _", n.Name)
		case n.Name == "true" || n.Name == "false":
			c.add("name %q is a value of its own; expected another", n.Name)
		case c.names[n.Name]:
			c.add("name %q stands twice", n.Name)
		}
		c.names[n.Name] = true
	}
}

// place is a fixed cell or range with its sheet.
var place = regexp.MustCompile(`^('(?:[^']|'')+'|[A-Za-z_][A-Za-z0-9_.]*)!\$[A-Z]{1,3}\$[0-9]+(:\$[A-Z]{1,3}\$[0-9]+)?$`)

// refers checks that a name stands for a place that stays when formulas are
// copied.
func (c *checker) refers(n Name) {
	if !place.MatchString(n.Refers) {
		c.add("name %q refers to %q; expected a place such as 'Price Build-up'!$D$7", n.Name, n.Refers)
		return
	}
	c.formula(spot{what: "name " + n.Name}, n.Refers)
}

// units is the length of s as the file format counts it.
func units(s string) int {
	n := 0
	for _, r := range s {
		n += utf16.RuneLen(r)
	}
	return n
}
