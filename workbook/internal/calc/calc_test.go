package calc_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"tentwright/workbook/internal/calc"
	"tentwright/workbook/sheet"
	"tentwright/workbook/xlsx"
)

// bill is a book of one sheet: pieces, price, sum, words and a truth. The sum
// is stored as given, right or wrong.
func bill(sum float64) *sheet.Book {
	input, computed := sheet.Style{Role: sheet.Input}, sheet.Style{Role: sheet.Calc}
	return &sheet.Book{
		Created: "2026-05-01T00:00:00Z",
		Sheets: []*sheet.Sheet{{Name: "Bill", Rows: []sheet.Row{
			{Cells: []sheet.Cell{{Value: 3, Style: input}, {Value: 12.5, Style: input}, {Value: sum, Formula: "ROUND(pieces*B1,2)", Style: computed}}},
			{Cells: []sheet.Cell{{Value: "posts", Style: input}, {Value: "3 posts", Formula: `pieces&" "&A2`}, {Value: "", Formula: `IF(pieces>0,"","none")`}}},
			{Cells: []sheet.Cell{{Value: true, Formula: "pieces>2"}, {Value: true}, {Value: "_x0041_ & <b>"}}},
		}}},
		Names: []sheet.Name{{Name: "pieces", Refers: "'Bill'!$A$1"}},
	}
}

// save writes a book into a folder of the test.
func save(t *testing.T, name string, b *sheet.Book) string {
	t.Helper()
	var out bytes.Buffer
	if err := xlsx.Write(&out, b); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, out.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

func read(t *testing.T, path string) map[string]calc.Cell {
	t.Helper()
	cells, err := calc.ReadCells(path)
	if err != nil {
		t.Fatal(err)
	}
	return cells["Bill"]
}

func TestReadCells(t *testing.T) {
	got := read(t, save(t, "bill.xlsx", bill(37.5)))
	for ref, want := range map[string]calc.Cell{
		"A1": {Kind: calc.Number, Text: "3", Number: 3, HasValue: true},
		"C1": {Kind: calc.Number, Text: "37.5", Number: 37.5, Formula: "ROUND(pieces*B1,2)", HasValue: true},
		"B2": {Kind: calc.Text, Text: "3 posts", Formula: `pieces&" "&A2`, HasValue: true},
		"C2": {Kind: calc.Text, Formula: `IF(pieces>0,"","none")`, HasValue: true},
		"A3": {Kind: calc.Bool, Text: "1", Number: 1, Formula: "pieces>2", HasValue: true},
		"B3": {Kind: calc.Bool, Text: "1", Number: 1, HasValue: true},
		"C3": {Kind: calc.Text, Text: "_x0041_ & <b>", HasValue: true},
	} {
		if got[ref] != want {
			t.Errorf("%s: got %+v, want %+v", ref, got[ref], want)
		}
	}
}

func TestReadCellsRefusesOtherFiles(t *testing.T) {
	path := filepath.Join(t.TempDir(), "note.xlsx")
	if err := os.WriteFile(path, []byte("not a workbook"), 0o644); err != nil {
		t.Fatal(err)
	}
	if _, err := calc.ReadCells(path); err == nil {
		t.Error("a text file was read as a workbook")
	}
}

// One run of the office program finds nothing in a right book, and the one
// wrong figure in another.
func TestWrongStoredValueIsCaught(t *testing.T) {
	calc.Need(t)
	right, wrong := save(t, "right.xlsx", bill(37.5)), save(t, "wrong.xlsx", bill(37.50001))
	out := t.TempDir()
	if err := calc.Recalculate(t.Context(), []string{right, wrong}, out); err != nil {
		t.Fatal(err)
	}
	diffs, count, err := calc.Compare(right, filepath.Join(out, "right.xlsx"))
	if err != nil || len(diffs) != 0 || count != 4 {
		t.Errorf("right book: %d formulas, %v, %v; want 4 and no difference", count, diffs, err)
	}
	diffs, _, err = calc.Compare(wrong, filepath.Join(out, "wrong.xlsx"))
	if err != nil || len(diffs) != 1 || diffs[0].Ref != "C1" || diffs[0].Why != "differs" {
		t.Errorf("wrong book: %v, %v; want one difference at C1", diffs, err)
	}
}

// Without the office program the comparison itself can be checked: two files
// stand for what was written and what was computed.
func TestCompare(t *testing.T) {
	a, b := save(t, "a.xlsx", bill(37.5)), save(t, "b.xlsx", bill(37.5+1e-9))
	if diffs, count, err := calc.Compare(a, b); err != nil || len(diffs) > 0 || count != 4 {
		t.Errorf("within 1e-9: %v, %d, %v", diffs, count, err)
	}
	b = save(t, "b.xlsx", bill(37.501))
	diffs, _, err := calc.Compare(a, b)
	if err != nil || len(diffs) != 1 {
		t.Fatalf("got %v, %v; want one difference", diffs, err)
	}
	if want := "Bill!C1 =ROUND(pieces*B1,2): differs: wrote 37.5, computed 37.501"; diffs[0].String() != want {
		t.Errorf("got %s, want %s", diffs[0], want)
	}
}

func TestEditedCellIsComputedWith(t *testing.T) {
	calc.Need(t)
	src := save(t, "bill.xlsx", bill(37.5))
	dst := filepath.Join(t.TempDir(), "edited.xlsx")
	edits := []calc.Edit{{Sheet: "Bill", Ref: "A1", Value: 5}, {Sheet: "Bill", Ref: "A2", Value: "poles & <stakes>"}, {Sheet: "Bill", Ref: "B1", Value: 0.5}}
	if err := calc.EditCells(src, dst, edits); err != nil {
		t.Fatal(err)
	}
	out := t.TempDir()
	if err := calc.Recalculate(t.Context(), []string{dst}, out); err != nil {
		t.Fatal(err)
	}
	got := read(t, filepath.Join(out, "edited.xlsx"))
	if got["C1"].Number != 2.5 || got["B2"].Text != "5 poles & <stakes>" {
		t.Errorf("got %+v and %+v; want 2.5 and 5 poles", got["C1"], got["B2"])
	}
}

func TestEditKeepsAllElse(t *testing.T) {
	src := save(t, "bill.xlsx", bill(37.5))
	dst := filepath.Join(t.TempDir(), "edited.xlsx")
	if err := calc.EditCells(src, dst, []calc.Edit{{Sheet: "Bill", Ref: "A1", Value: nil}, {Sheet: "Bill", Ref: "B3", Value: false}}); err != nil {
		t.Fatal(err)
	}
	was, now := read(t, src), read(t, dst)
	delete(was, "A1")
	was["B3"] = calc.Cell{Kind: calc.Bool, Text: "0", HasValue: true}
	if len(was) != len(now) {
		t.Errorf("%d cells, want %d", len(now), len(was))
	}
	for ref, want := range was {
		if now[ref] != want {
			t.Errorf("%s: got %+v, want %+v", ref, now[ref], want)
		}
	}
}

func TestEditRefuses(t *testing.T) {
	src := save(t, "bill.xlsx", bill(37.5))
	for _, c := range []struct {
		edit calc.Edit
		want string
	}{
		{calc.Edit{Sheet: "Bills", Ref: "A1", Value: 1}, `no sheet "Bills"`},
		{calc.Edit{Sheet: "Bill", Ref: "Z9", Value: 1}, "no such cell"},
		{calc.Edit{Sheet: "Bill", Ref: "C1", Value: 1}, "holds a formula"},
		{calc.Edit{Sheet: "Bill", Ref: "A1", Value: []int{1}}, "type []int"},
	} {
		err := calc.EditCells(src, filepath.Join(t.TempDir(), "x.xlsx"), []calc.Edit{c.edit})
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%+v: got %v, want %q", c.edit, err, c.want)
		}
	}
}

func TestRecalculateRefuses(t *testing.T) {
	calc.Need(t)
	a, b := save(t, "same.xlsx", bill(37.5)), save(t, "same.xlsx", bill(37.5))
	if err := calc.Recalculate(t.Context(), []string{a, b}, t.TempDir()); err == nil {
		t.Error("two files of one name were accepted")
	}
	if err := calc.Recalculate(t.Context(), []string{"gone.xlsx"}, t.TempDir()); err == nil {
		t.Error("a missing file was accepted")
	}
}
