package workbook_test

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"tentwright/catalog/diag"
	"tentwright/quote/jobtest"
	"tentwright/workbook"
	"tentwright/workbook/revise"
	"tentwright/workbook/sheet"
)

// Every cell that people may type into and that formulas follow is an edit of
// the quote, or is laid out with the next revision. Otherwise its formulas would
// carry values that do not follow from it.
func TestEveryFollowedCellIsReadOrLaidOut(t *testing.T) {
	c := demoCatalog(t)
	quotes := demoQuotes(t, c)
	quotes["random"] = mustQuote(t, c, jobtest.Random(c, firstSeed(t)))
	tried := map[string]bool{}
	for _, name := range slices.Sorted(maps.Keys(quotes)) {
		book := workbook.Layout(quotes[name])
		names := book.Found().Names
		for _, p := range workbook.OpenPrecedents(book) {
			// One cell stands for all in its column with names of the same kind.
			about := kindOfCell(names, p)
			if tried[about] {
				continue
			}
			tried[about] = true
			if !readOrLaidOut(t, book.Found(), p) {
				t.Errorf("%s: what is typed into %s (%s) changes formulas, but it neither changes the quote nor is it laid out", name, sheet.Ref(p.R1, p.C1), about)
			}
		}
	}
	t.Logf("%d kinds of cells", len(tried))
}

// kindOfCell is the first word of the first name that a cell lies in, and its
// column.
func kindOfCell(names map[string]sheet.Place, p sheet.Place) string {
	for _, name := range slices.Sorted(maps.Keys(names)) {
		if block := names[name]; block.Sheet == p.Sheet && block.Overlaps(p.Range) {
			word, _, _ := strings.Cut(name, "_")
			return fmt.Sprintf("%s, column %s of %s", word, sheet.ColName(p.C1), p.Sheet)
		}
	}
	return "no name, " + p.Sheet
}

// readOrLaidOut types something else into a cell and reads the workbook. A
// refusal tells that the cell is read; a warning that nothing follows from it,
// that the next revision has its own value there.
func readOrLaidOut(t *testing.T, f *sheet.Found, p sheet.Place) bool {
	t.Helper()
	cell := &f.Sheet(p.Sheet).Rows[p.R1-1][p.C1-1]
	*cell = otherCell(*cell)
	b, list := revise.Open("book.xlsx", f)
	ref := sheet.Ref(p.R1, p.C1)
	if slices.ContainsFunc(list, func(x diag.Problem) bool {
		return x.Pos.Sheet == p.Sheet && x.Pos.Cell == ref && (!x.Warning || x.Code == revise.Unused)
	}) {
		return true
	}
	if b == nil {
		t.Fatal(p, list)
	}
	if slices.ContainsFunc(b.Edits, func(e revise.Edit) bool { return e.Pos.Sheet == p.Sheet }) {
		return true
	}
	k := b.Kept()
	return len(k.Loaded)+len(k.Tag)+len(k.Counted)+len(k.Damaged)+len(k.Wet)+len(k.Each)+len(k.Riders)+len(k.Actual)+len(k.Done)+len(k.Names) > 0
}

// otherCell is a cell with something else of its kind.
func otherCell(c sheet.FoundCell) sheet.FoundCell {
	switch {
	case c.Kind == sheet.FoundText && c.Text == "Yes":
		return sheet.FoundCell{Kind: sheet.FoundText, Text: "No"}
	case c.Kind == sheet.FoundText:
		return sheet.FoundCell{Kind: sheet.FoundText, Text: "Yes"}
	}
	return sheet.FoundCell{Kind: sheet.FoundNumber, Number: c.Number + 1, Text: "1", Day: c.Day}
}
