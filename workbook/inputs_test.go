package workbook_test

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"tentwright/quote"
	"tentwright/quote/jobtest"
	"tentwright/workbook"
	"tentwright/workbook/sheet"
)

// Every cell that may be typed into says what it wants, refuses what does not
// fit, and is found by a name of its own or by a named column.
func TestInputsAreGuardedAndNamed(t *testing.T) {
	c := demoCatalog(t)
	quotes := demoQuotes(t, c)
	for seed := firstSeed(t); seed < firstSeed(t)+8; seed++ {
		quotes[fmt.Sprintf("seed-%d", seed)] = mustQuote(t, c, jobtest.Random(c, seed))
	}
	for name, q := range quotes {
		book := workbook.Layout(q)
		named := namedRanges(book)
		for _, s := range book.Sheets {
			inputs := openCells(s)
			for _, at := range inputs {
				if !guarded(s, at) {
					t.Errorf("%s: %s!%s has no validation with words on what goes in it", name, s.Name, at)
				}
				if !within(named[s.Name], at) {
					t.Errorf("%s: %s!%s is in no defined name", name, s.Name, at)
				}
			}
		}
		guardedCustomer(t, name, q)
	}
}

// guardedCustomer looks at the inputs of the customer's file, which has no names.
func guardedCustomer(t *testing.T, name string, q *quote.Quote) {
	t.Helper()
	book := workbook.Customer(q)
	for _, at := range openCells(book.Sheets[0]) {
		if !guarded(book.Sheets[0], at) {
			t.Errorf("%s: the customer's %s has no validation with words on what goes in it", name, at)
		}
	}
	if len(book.Names) > 0 {
		t.Errorf("%s: the customer's file has the names %v; want none", name, book.Names)
	}
}

// openCells are the cells of a sheet that may be typed into; of merged ones only
// the first can be reached.
func openCells(s *sheet.Sheet) []sheet.Range {
	covered := map[[2]int]bool{}
	for _, m := range s.Merges {
		for r := m.R1; r <= m.R2; r++ {
			for c := m.C1; c <= m.C2; c++ {
				covered[[2]int{r, c}] = r > m.R1 || c > m.C1
			}
		}
	}
	var open []sheet.Range
	for r, row := range s.Rows {
		for c, cell := range row.Cells {
			if !cell.Style.Role.Locked() && !covered[[2]int{r + 1, c + 1}] {
				open = append(open, sheet.Range{R1: r + 1, C1: c + 1, R2: r + 1, C2: c + 1})
			}
		}
	}
	return open
}

// guarded tells whether exactly one rule holds for a cell, with its words.
func guarded(s *sheet.Sheet, at sheet.Range) bool {
	rules := 0
	for _, v := range s.Validations {
		if v.Range.Overlaps(at) {
			rules++
			if v.Prompt == "" || v.Title == "" {
				return false
			}
		}
	}
	return rules == 1
}

var nameTarget = regexp.MustCompile(`^'([^']+)'!\$([A-Z]+)\$(\d+)(?::\$([A-Z]+)\$(\d+))?$`)

// namedRanges are the ranges that the names of a book stand for, by sheet.
func namedRanges(b *sheet.Book) map[string][]sheet.Range {
	column := map[string]int{}
	for c := 1; c <= 702; c++ {
		column[sheet.ColName(c)] = c
	}
	ranges := map[string][]sheet.Range{}
	for _, n := range b.Names {
		m := nameTarget.FindStringSubmatch(n.Refers)
		if m == nil {
			continue
		}
		r := sheet.Range{C1: column[m[2]], C2: column[m[2]]}
		r.R1, _ = strconv.Atoi(m[3])
		r.R2 = r.R1
		if strings.Contains(n.Refers, ":") {
			r.C2 = column[m[4]]
			r.R2, _ = strconv.Atoi(m[5])
		}
		ranges[m[1]] = append(ranges[m[1]], r)
	}
	return ranges
}

func within(ranges []sheet.Range, at sheet.Range) bool {
	for _, r := range ranges {
		if r.Overlaps(at) {
			return true
		}
	}
	return false
}

// Every sheet that people see says what to print.
func TestEverySheetPrints(t *testing.T) {
	c := demoCatalog(t)
	for name, q := range demoQuotes(t, c) {
		for _, s := range workbook.Layout(q).Sheets {
			if s.VeryHidden {
				continue
			}
			if s.PrintArea == nil || s.PrintArea.R2 != len(s.Rows) {
				t.Errorf("%s, %s: prints %v of %d rows", name, s.Name, s.PrintArea, len(s.Rows))
			}
			if s.Name != workbook.SheetQuote && s.TitleRows[0] == 0 {
				t.Errorf("%s, %s: no rows are repeated on each page", name, s.Name)
			}
		}
	}
}
