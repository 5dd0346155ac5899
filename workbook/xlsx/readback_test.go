package xlsx_test

import (
	"bytes"
	"math"
	"strings"
	"sync"
	"testing"
	"unicode/utf8"

	"github.com/shopspring/decimal"
	"github.com/xuri/excelize/v2"
	"pgregory.net/rapid"

	"tentwright/workbook/sheet"
	"tentwright/workbook/xlsx"
)

// stacked is a book of one sheet with the cells below each other in column A.
func stacked(cells ...sheet.Cell) *sheet.Book {
	s := &sheet.Sheet{Name: "Cells"}
	for _, c := range cells {
		s.Rows = append(s.Rows, row(c))
	}
	return &sheet.Book{Created: "2026-05-01T00:00:00Z", Sheets: []*sheet.Sheet{s}}
}

// reopened reads a written book with the library, as a program would.
func reopened(t interface {
	Helper()
	Fatal(...any)
}, b *sheet.Book) *excelize.File {
	t.Helper()
	var out bytes.Buffer
	if err := xlsx.Write(&out, b); err != nil {
		t.Fatal(err)
	}
	f, err := excelize.OpenReader(&out, excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// withoutCodes is a computed text as read by the library, which leaves the codes for
// characters in it; no text has the code of the underscore itself.
func withoutCodes(value string) string { return strings.ReplaceAll(value, "_x005F", "") }

// TestCellsReadBack writes cells of each type and reads value, formula and type.
// Expected types are those of ISO/IEC 29500, part 1, 18.18.11: a computed text
// is "str", a number has none.
func TestCellsReadBack(t *testing.T) {
	const number, truth, typed, result = excelize.CellTypeUnset, excelize.CellTypeBool, excelize.CellTypeInlineString, excelize.CellTypeFormula
	cases := []struct {
		value   any
		formula string
		want    string
		kind    excelize.CellType
	}{
		{`a<b & "c"`, "", `a<b & "c"`, typed},
		{"]]> it's", "", "]]> it's", typed},
		{"  outer blanks go ", "", "outer blanks go", typed},
		{"two  inner blanks", "", "two  inner blanks", typed},
		{"first\nsecond\r\nthird\u2028fourth", "", "first\nsecond\nthird\nfourth", typed},
		{"_x000D_", "", "_x000D_", typed},
		{"_x000d_x000A_ and _x12_", "", "_x000d_x000A_ and _x12_", typed},
		{"_x005F_", "", "_ x005F_", typed}, // no program keeps it, see sheet.Clean
		{"bell\a and \x00 null", "", "bell and  null", typed},
		{"bad \xff byte", "", "bad \uFFFD byte", typed},
		{"\u202Eturned", "", "turned", typed},
		{"=1+1", "", "=1+1", typed},
		{"007", "", "007", typed},
		{"☐ 20 × 40 ft é 😀", "", "☐ 20 × 40 ft é 😀", typed},
		{"", "", "", typed},
		{7, "", "7", number},
		{-1234567890123, "", "-1234567890123", number},
		{math.Nextafter(0.3, 1), "", "0.30000000000000004", number},
		{1e21, "", "1000000000000000000000", number},
		{1e-7, "", "0.0000001", number},
		{decimal.RequireFromString("1224.70"), "", "1224.7", number},
		{day(46143), "", "46143", number},
		{true, "", "1", truth},
		{false, "", "0", truth},
		{"", `IF(1<2,"","x")`, "", result},
		{`a<b & "c"`, `"a<b & ""c"""`, `a<b & "c"`, result},
		{"_x000D_", `"_x000"&"D_"`, "_x000D_", result},
		{2.5, "ROUND(5/2,1)", "2.5", number},
		{3, "1+2", "3", number},
		{decimal.New(105, -3), "0.21/2", "0.105", number},
		{day(46144), "46143+1", "46144", number},
		{true, "1<2", "1", truth},
		{"x\uFFFDy\nz", "\"x\a y\nz\"", "x\uFFFDy\nz", result},
	}
	var cells []sheet.Cell
	for _, c := range cases {
		cells = append(cells, sheet.Cell{Value: c.value, Formula: c.formula})
	}
	f := reopened(t, stacked(cells...))
	for i, c := range cases {
		ref := sheet.Ref(i+1, 1)
		value, err1 := f.GetCellValue("Cells", ref)
		formula, err2 := f.GetCellFormula("Cells", ref)
		kind, err3 := f.GetCellType("Cells", ref)
		if err1 != nil || err2 != nil || err3 != nil {
			t.Fatal(err1, err2, err3)
		}
		if kind == result {
			value = withoutCodes(value)
		}
		if value != c.want || kind != c.kind || formula != strings.ReplaceAll(c.formula, "\a", "\uFFFD") {
			t.Errorf("%v %q: got %q, type %d, formula %q; want %q, type %d", c.value, c.formula, value, kind, formula, c.want, c.kind)
		}
	}
}

// A formula keeps its value although that is an empty text, and a cell with
// nothing but a style is an empty element.
func TestEmptyCells(t *testing.T) {
	p := parts(t, write(t, stacked(
		sheet.Cell{Value: "", Formula: `""`},
		sheet.Cell{Style: st(sheet.Input, sheet.Money)},
		sheet.Cell{},
	)))
	got := p["xl/worksheets/sheet1.xml"]
	for _, want := range []string{
		`<row r="1"><c r="A1" s="1" t="str"><f>""</f><v></v></c></row>`,
		`<row r="2"><c r="A2" s="2"/></row>`,
		`<row r="3"></row></sheetData>`,
		`<dimension ref="A1:A3">`,
	} {
		if !strings.Contains(got, want) {
			t.Errorf("the sheet has no %s", want)
		}
	}
}

// Whatever people type, the file can be opened and gives the cleaned text, in a
// typed cell, in a computed one and in the comment of a name.
func TestAnyTextReadsBack(t *testing.T) {
	piece := rapid.OneOf(rapid.String(), rapid.SampledFrom([]string{"_x000D_", "_x", "_", "x0041_", "<", "&amp;", "\"", "]]>", "\n", " ", "\xff", "\uFFFE"}))
	rapid.Check(t, func(t *rapid.T) {
		texts := rapid.SliceOfN(rapid.SliceOfN(piece, 1, 5), 1, 12).Draw(t, "texts")
		var cells []sheet.Cell
		for _, pieces := range texts {
			text := strings.Join(pieces, "")
			cells = append(cells, sheet.Cell{Value: text}, sheet.Cell{Value: text, Formula: "1&" + `"` + strings.ReplaceAll(text, `"`, `""`) + `"`})
		}
		b := stacked(cells...)
		b.Names = []sheet.Name{{Name: "first_text", Refers: "'Cells'!$A$1", Comment: strings.Join(texts[0], "")}}
		f := reopened(t, b)
		for i, c := range cells {
			got, err := f.GetCellValue("Cells", sheet.Ref(i+1, 1))
			if c.Formula != "" {
				got = withoutCodes(got)
			}
			if want := sheet.Clean(c.Value.(string)); err != nil || got != want {
				t.Fatalf("row %d: got %q, %v; want %q", i+1, got, err, want)
			}
			if formula, _ := f.GetCellFormula("Cells", sheet.Ref(i+1, 1)); !utf8.ValidString(formula) || (formula == "") != (c.Formula == "") {
				t.Fatalf("row %d: got formula %q of %q", i+1, formula, c.Formula)
			}
		}
		if got := f.GetDefinedName()[0]; got.Name != "first_text" || got.Comment != sheet.Clean(b.Names[0].Comment) || got.RefersTo != "'Cells'!$A$1" {
			t.Fatalf("got name %+v, want comment %q", got, b.Names[0].Comment)
		}
	})
}

// Columns, merges and names are not the library's work: it must find them all
// the same.
func TestStructureReadsBack(t *testing.T) {
	b := sample(t)
	b.Sheets[1].Columns[2].Hidden = true
	f := reopened(t, b)
	if w, err := f.GetColWidth("Price Build-up", "B"); err != nil || w != 34 {
		t.Errorf("column B is %g wide, %v; want 34", w, err)
	}
	if shown, err := f.GetColVisible("Pick list", "C"); err != nil || shown {
		t.Errorf("column C shows: %t, %v; want it hidden", shown, err)
	}
	if h, err := f.GetRowHeight("Price Build-up", 1); err != nil || h != 42 {
		t.Errorf("row 1 is %g high, %v; want 42", h, err)
	}
	merges, err := f.GetMergeCells("Price Build-up")
	if err != nil || len(merges) != 2 || merges[0].GetStartAxis() != "A3" || merges[1].GetEndAxis() != "E14" {
		t.Errorf("got merges %v, %v", merges, err)
	}
	names := map[string]string{}
	for _, n := range f.GetDefinedName() {
		names[n.Scope+" "+n.Name] = n.RefersTo
	}
	for name, want := range map[string]string{
		"Workbook tax_rate":                 "'Price Build-up'!$E$4",
		"Workbook list_units":               "'Lists'!$A$1:$A$3",
		"Price Build-up _xlnm.Print_Area":   "'Price Build-up'!$A$1:$E$16",
		"Pick list _xlnm.Print_Titles":      "'Pick list'!$1:$1",
		"Pick list _xlnm._FilterDatabase":   "'Pick list'!$A$1:$E$61",
		"Price Build-up _xlnm.Print_Titles": "'Price Build-up'!$5:$5",
	} {
		if names[name] != want {
			t.Errorf("%s: got %q, want %q", name, names[name], want)
		}
	}
}

// Writers at the same time, of other books too, do not disturb each other
// although they hand on what they compress with.
func TestWritersAtOnce(t *testing.T) {
	books := []*sheet.Book{sample(t), large(), stacked(sheet.Cell{Value: "one"})}
	var want [][]byte
	for _, b := range books {
		want = append(want, write(t, b))
	}
	var all sync.WaitGroup
	for i := range 24 {
		all.Go(func() {
			var out bytes.Buffer
			if err := xlsx.Write(&out, books[i%3]); err != nil || !bytes.Equal(out.Bytes(), want[i%3]) {
				t.Errorf("book %d: other bytes than alone, error %v", i%3, err)
			}
		})
	}
	all.Wait()
}
