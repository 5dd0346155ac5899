package xlsx_test

import (
	"archive/zip"
	"bytes"
	"errors"
	"flag"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"tentwright/workbook/internal/calc"
	"tentwright/workbook/sheet"
	"tentwright/workbook/xlsx"
)

// keep leaves the books in a folder, to look at them in a spreadsheet program.
var keep = flag.String("keep", "", "folder to leave the written books in")

func write(t testing.TB, b *sheet.Book) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := xlsx.Write(&out, b); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// save writes the sample where other programs can read it.
func save(t testing.TB) string {
	t.Helper()
	dir := *keep
	if dir == "" {
		dir = t.TempDir()
	}
	path := filepath.Join(dir, "sample.xlsx")
	if err := os.WriteFile(path, write(t, sample(t)), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// parts are the texts of the file's parts by name.
func parts(t testing.TB, data []byte) map[string]string {
	t.Helper()
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]string{}
	for i, f := range z.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		out[f.Name] = string(text)
		if i == 0 && f.Name != "[Content_Types].xml" {
			t.Errorf("first part is %s; expected the content types", f.Name)
		}
		if f.Modified.Year() != 1980 {
			t.Errorf("%s is dated %s; expected 1980", f.Name, f.Modified)
		}
	}
	return out
}

func TestSameBookGivesSameBytes(t *testing.T) {
	first := write(t, sample(t))
	for range 8 {
		if !bytes.Equal(first, write(t, sample(t))) {
			t.Fatal("two writes of one book differ")
		}
	}
}

func TestValuesReadBack(t *testing.T) {
	sheets, err := calc.ReadCells(save(t))
	if err != nil {
		t.Fatal(err)
	}
	got := sheets["Price Build-up"]
	number := func(n float64, text, formula string) calc.Cell {
		return calc.Cell{Kind: calc.Number, Number: n, Text: text, Formula: formula, HasValue: true}
	}
	text := func(s, formula string) calc.Cell {
		return calc.Cell{Kind: calc.Text, Text: s, Formula: formula, HasValue: true}
	}
	for ref, want := range map[string]calc.Cell{
		"B2":  text("Garden party & dinner, Larkmere <north meadow>", ""),
		"E4":  number(0.075, "0.075", ""),
		"A8":  text("007", ""),
		"B8":  text("=1+1", ""), // stays text
		"C7":  number(2, "2", ""),
		"D8":  number(0.105, "0.105", ""),
		"E7":  number(1224.7, "1224.7", "ROUND(C7*D7,2)"),
		"E11": text("", `IF(hire_total<0,"below zero","")`),
		"E12": {Kind: calc.Bool, Text: "0", Formula: "hire_total<=0", HasValue: true},
		"E13": text(`a "quoted" & <b>`, `"a ""quoted"" & <b>"`),
		"C14": text("first line\nsecond line", ""),
		"E15": number(46143, "46143", ""), // 1 May 2026
	} {
		if got[ref] != want {
			t.Errorf("%s: got %+v, want %+v", ref, got[ref], want)
		}
	}
}

func TestRecalculationAgrees(t *testing.T) {
	calc.Need(t)
	path, out := save(t), t.TempDir()
	if err := calc.Recalculate(t.Context(), []string{path}, out); err != nil {
		t.Fatal(err)
	}
	diffs, count, err := calc.Compare(path, filepath.Join(out, filepath.Base(path)))
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range diffs {
		t.Error(d)
	}
	if count != 7 {
		t.Errorf("%d formulas, want 7", count)
	}
}

// TestSheetSettings looks for each setting in the file's own words.
func TestSheetSettings(t *testing.T) {
	p := parts(t, write(t, sample(t)))
	prices, picks := p["xl/worksheets/sheet1.xml"], p["xl/worksheets/sheet2.xml"]
	for _, c := range []struct{ what, part, want string }{
		{"alpha before the tab colour", prices, `<tabColor rgb="FF1E4D3B"`},
		{"tab colour beside a filter", picks, `<tabColor rgb="FF6B3F14"`},
		{"locked", prices, `<sheetProtection sheet="true"`},
		// In the file these say what is refused.
		{"looks may change", prices, `formatCells="false" formatColumns="false" formatRows="false"`},
		{"rows may be inserted", prices, `insertRows="false"`},
		{"rows may be deleted", prices, `deleteRows="false"`},
		{"columns may not be inserted", prices, `insertColumns="true"`},
		{"locked cells may be selected", prices, `selectLockedCells="false"`},
		{"sort", prices, `sort="false"`},
		{"filter on a locked sheet", picks, `autoFilter="false"`},
		{"bad input is refused", prices, `errorStyle="stop"`},
		{"and told", prices, `showErrorMessage="true" showInputMessage="true"`},
		{"inline list", picks, `<formula1>"☐,☑"</formula1>`},
		{"named list", picks, `<formula1>list_units</formula1>`},
		{"highlight", picks, `<formula>AND($D2&lt;1,LEN($C2)&gt;0)</formula>`},
		{"merge", prices, `<mergeCell ref="A3:E3"/>`},
		{"page break", prices, `<brk id="10" max="16383" man="true">`},
		{"letter paper", prices, `paperSize="1"`},
		{"a4 landscape", picks, `orientation="landscape" paperSize="9"`},
		{"one page wide", prices, `fitToHeight="0" fitToWidth="1"`},
		{"page count", picks, `Page &amp;P of &amp;N`},
		{"no grid", prices, `showGridLines="false"`},
		{"frozen", prices, `xSplit="2" ySplit="5"`},
		{"filter", picks, `<autoFilter ref="A1:E61">`},
		{"link", prices, `location="&#39;Pick list&#39;!A1"`},
		{"print area", p["xl/workbook.xml"], `name="_xlnm.Print_Area">&#39;Price Build-up&#39;!$A$1:$E$16<`},
		{"heading rows", p["xl/workbook.xml"], `name="_xlnm.Print_Titles">&#39;Pick list&#39;!$1:$1<`},
		{"filter name", p["xl/workbook.xml"], `hidden="true" localSheetId="1" name="_xlnm._FilterDatabase"`},
		{"hidden sheet", p["xl/workbook.xml"], `name="Lists" sheetId="4" r:id="rId6" state="veryHidden"`},
		{"name comment", p["xl/workbook.xml"], `comment="tax on hire" name="tax_rate"`},
		{"computed afresh", p["xl/workbook.xml"], `fullCalcOnLoad="true"`},
		{"own date", p["docProps/core.xml"], `>2026-05-01T00:00:00Z</dcterms:modified>`},
		{"alternative text", p["xl/drawings/drawing1.xml"], `descr="Fernhollow Tent Yard"`},
		{"note", p["xl/comments1.xml"], `Rate of the place of delivery.`},
		{"money", p["xl/styles.xml"], `formatCode="&#34;$&#34;#,##0.00;-&#34;$&#34;#,##0.00"`},
	} {
		if !strings.Contains(c.part, c.want) {
			t.Errorf("%s: the file has no %s", c.what, c.want)
		}
	}
	if strings.Contains(p["xl/styles.xml"], "Calibri") {
		t.Error("the styles use another font than Arial")
	}
}

// Notes stand right of their cell: the box starts in the next column.
func TestNoteBoxes(t *testing.T) {
	p := parts(t, write(t, sample(t)))
	var got []string
	for _, m := range regexp.MustCompile(`<x:Anchor>([^<]*)`).FindAllStringSubmatch(p["xl/drawings/vmlDrawing1.vml"], -1) {
		got = append(got, m[1])
	}
	if want := "5, 12, 2, 2, 8, 56, 4, 12|3, 12, 5, 2, 5, 32, 6, 26"; strings.Join(got, "|") != want {
		t.Errorf("got %s, want %s", strings.Join(got, "|"), want)
	}
}

// Only what is meant for typing is unlocked.
func TestLocks(t *testing.T) {
	b := &sheet.Book{Created: "2026-05-01T00:00:00Z", Sheets: []*sheet.Sheet{{Name: "Looks"}}}
	for r := sheet.Plain; r <= sheet.Key; r++ {
		b.Sheets[0].Rows = append(b.Sheets[0].Rows, row(cell(1, r, sheet.General)))
	}
	p := parts(t, write(t, b))
	formats := regexp.MustCompile(`(?s)<xf .*?</xf>`).FindAllString(p["xl/styles.xml"][strings.Index(p["xl/styles.xml"], "<cellXfs"):], -1)
	unlocked := 0
	for _, f := range formats {
		if strings.Contains(f, `locked="false"`) {
			unlocked++
		}
	}
	if unlocked != 3 {
		t.Errorf("%d unlocked formats, want 3: Input, InputText, Tick", unlocked)
	}
}

// A merge is dressed all round in the style of its first cell.
func TestMergedCellsShareAStyle(t *testing.T) {
	b := sample(t)
	p := parts(t, write(t, b))
	m := regexp.MustCompile(`<c r="[CDE]14" s="(\d+)"`).FindAllStringSubmatch(p["xl/worksheets/sheet1.xml"], -1)
	if len(m) != 3 || m[0][1] != m[1][1] || m[1][1] != m[2][1] {
		t.Errorf("got %v, want three cells of one style", m)
	}
	if n := len(b.Sheets[0].Rows[13].Cells); n != 3 {
		t.Errorf("the book's own row has %d cells now, want 3", n)
	}
}

func TestFaultyBookWritesNothing(t *testing.T) {
	b := sample(t)
	b.Sheets[0].Rows[0].Cells[1].Value = []int{1}
	var out bytes.Buffer
	if err := xlsx.Write(&out, b); err == nil || out.Len() > 0 {
		t.Errorf("wrote %d bytes, error %v; want nothing and an error", out.Len(), err)
	}
	b = sample(t)
	b.Sheets[0].Picture.Data = []byte("no picture")
	if err := xlsx.Write(&out, b); err == nil || out.Len() > 0 || !strings.Contains(err.Error(), "Price Build-up") {
		t.Errorf("wrote %d bytes, error %v; want nothing and the sheet's name", out.Len(), err)
	}
}

// full is a disk without room.
type full struct{}

var errFull = errors.New("disk full")

func (full) Write([]byte) (int, error) { return 0, errFull }

func TestFullDiskIsReported(t *testing.T) {
	if err := xlsx.Write(full{}, sample(t)); !errors.Is(err, errFull) {
		t.Errorf("got %v, want %v", err, errFull)
	}
}
