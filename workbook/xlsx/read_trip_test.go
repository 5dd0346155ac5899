package xlsx_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tentwright/workbook/internal/calc"
	"tentwright/workbook/sheet"
	"tentwright/workbook/xlsx"
)

// checkTrip compares what was read with the book that was written.
func checkTrip(t *testing.T, b *sheet.Book, found *sheet.Found) {
	t.Helper()
	if len(found.Sheets) != len(b.Sheets) {
		t.Fatalf("%d sheets, want %d", len(found.Sheets), len(b.Sheets))
	}
	for i, s := range b.Sheets {
		got := found.Sheets[i]
		if got.Name != s.Name || got.Hidden != (s.Hidden || s.VeryHidden) {
			t.Errorf("sheet %q hidden %v, want %q hidden %v", got.Name, got.Hidden, s.Name, s.Hidden || s.VeryHidden)
		}
		for r, row := range s.Rows {
			for c := range row.Cells {
				checkCell(t, s.Name+"!"+sheet.Ref(r+1, c+1), row.Cells[c], got.At(r+1, c+1))
			}
		}
		if diff := cmp.Diff(s.Merges, got.Merges); diff != "" {
			t.Errorf("%s: merges: %s", s.Name, diff)
		}
		var notes []sheet.Note
		for _, n := range got.Notes {
			notes = append(notes, sheet.Note{Row: n.Row, Col: n.Col, Text: strings.TrimSpace(n.Text)})
		}
		if diff := cmp.Diff(s.Notes, notes); diff != "" {
			t.Errorf("%s: notes: %s", s.Name, diff)
		}
	}
	for _, n := range b.Names {
		p, ok := found.Names[strings.ToLower(n.Name)]
		if !ok || p.Range.Abs(p.Sheet) != n.Refers {
			t.Errorf("name %s: got %v, want %s", n.Name, p, n.Refers)
		}
	}
	if len(found.Lost) > 0 || len(found.Links) > 0 || found.Macros {
		t.Errorf("lost %v, links %v, macros %v; want none", found.Lost, found.Links, found.Macros)
	}
}

// checkCell compares a value with what was read of it.
func checkCell(t *testing.T, ref string, c sheet.Cell, got sheet.FoundCell) {
	t.Helper()
	blanks := strings.NewReplacer(" ", "")
	if blanks.Replace(got.Formula) != blanks.Replace(c.Formula) {
		t.Errorf("%s: formula %q, want %q", ref, got.Formula, c.Formula)
	}
	number := func(n float64) sheet.FoundCell {
		return sheet.FoundCell{Kind: sheet.FoundNumber, Number: n, Text: got.Text, Day: got.Day, Percent: got.Percent}
	}
	var want sheet.FoundCell
	if percent := c.Style.Format == sheet.Percent || c.Style.Format == sheet.PercentWhole; got.Kind == sheet.FoundNumber && got.Percent != percent {
		t.Errorf("%s: shown in percent: %v, wanted %v", ref, got.Percent, percent)
	}
	switch v := c.Value.(type) {
	case nil:
	case string:
		want = txt(sheet.Clean(v))
	case bool:
		want = sheet.FoundCell{Kind: sheet.FoundBool}
		if v {
			want.Number = 1
		}
	case sheet.Amount:
		want = number(v.InexactFloat64())
	case sheet.Serial:
		want = number(float64(v.Serial()))
		want.Day = true
	default:
		var n float64
		if _, err := fmt.Sscan(fmt.Sprint(v), &n); err != nil {
			t.Fatalf("%s: %v", ref, err)
		}
		want = number(n)
	}
	if got.Formula = ""; got == (sheet.FoundCell{}) && want == txt("") {
		return // an empty text is not kept by every program
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("%s: %s", ref, diff)
	}
}

func TestReadOwnFile(t *testing.T) {
	for _, b := range []*sheet.Book{sample(t), large()} {
		found := mustRead(t, write(t, b))
		checkTrip(t, b, found)
		for i, s := range b.Sheets {
			for c, col := range s.Columns {
				if got := found.Sheets[i].Widths[c+1]; col.Width > 0 && got != col.Width {
					t.Errorf("%s: column %d is %g wide, want %g", s.Name, c+1, got, col.Width)
				}
			}
		}
	}
}

// An office program that opens the file and saves it changes how it is
// written, not what it says.
func TestReadOfficeFile(t *testing.T) {
	calc.Need(t)
	out := t.TempDir()
	if err := calc.Recalculate(t.Context(), []string{save(t)}, out); err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile(filepath.Join(out, "sample.xlsx"))
	if err != nil {
		t.Fatal(err)
	}
	found, err := xlsx.Read("sample.xlsx", data)
	if err != nil {
		t.Fatal(err)
	}
	checkTrip(t, sample(t), found)
}
