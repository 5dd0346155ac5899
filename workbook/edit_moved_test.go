package workbook_test

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"tentwright/quote/jobtest"
	"tentwright/workbook"
	"tentwright/workbook/internal/calc"
	"tentwright/workbook/sheet"
)

// Rows that people insert and lists that they sort leave every figure as it
// was: formulas reach each other by names and keys.
func TestMovedRowsKeepTheFigures(t *testing.T) {
	calc.Need(t)
	c := demoCatalog(t)
	books := map[string]*sheet.Book{}
	for name, q := range demoQuotes(t, c) {
		books[name] = workbook.Layout(q)
	}
	first := firstSeed(t)
	for seed := first; seed < first+6; seed++ {
		books[fmt.Sprintf("seed-%d", seed)] = workbook.Layout(mustQuote(t, c, jobtest.Random(c, seed)))
	}
	dir, out := t.TempDir(), t.TempDir()
	var m calc.Macro
	for name, b := range books {
		m.Open(writeBook(t, dir, name, b))
		moveRows(t, &m, b, true)
		m.Save(filepath.Join(out, name+".xlsx"))
	}
	m.Run(t)
	for name := range books {
		was, now := readFigures(t, filepath.Join(dir, name+".xlsx")), readFigures(t, filepath.Join(out, name+".xlsx"))
		reportFigures(t, name, bookFigures(was), bookFigures(now))
		if a, b := was.texts("pick_part"), now.texts("pick_part"); len(a) != len(b) || len(a) > 9 && slices.Equal(a, b) {
			t.Errorf("%s: the pick list has %d lines and was not sorted; %d in another order were expected", name, len(b), len(a))
		}
	}
}

// moveRows inserts rows above and within the lines of the build-up, and sorts
// lists by columns other than those they come by; without lines, the order lines
// stay where they are.
func moveRows(t *testing.T, m *calc.Macro, b *sheet.Book, lines bool) {
	t.Helper()
	for _, x := range []struct{ keys, by string }{{"pick_key", "pick_item"}, {"need_key", "need_part"}, {"return_key", "return_item"},
		{"task_key", "task_name"}, {"item_id", "item_name"}, {"build_key", "build_name"}, {"tents_key", "tents_name"}} {
		if strings.HasPrefix(x.keys, "tents") && !defines(b, x.keys) || !lines && (x.keys == "tents_key" || x.keys == "build_key") {
			continue // a job without tents
		}
		place, rows, err := placeOf(b, x.keys)
		_, by, err2 := placeOf(b, x.by)
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		// The last row is the spare one, which ends the names.
		m.Sort(place, sheet.Range{R1: rows.R1, C1: 1, R2: rows.R2 - 1, C2: widthOf(b, place)}, by.C1)
	}
	for _, x := range []struct {
		name string
		many int
	}{{"build_key", 2}, {"rate_waiver", 1}, {"window_id", 2}, {"pick_key", 1}} {
		if !lines && x.name == "build_key" {
			continue
		}
		place, rows, err := placeOf(b, x.name)
		if err != nil {
			t.Fatal(err)
		}
		// First within the lines, then above their headings.
		if rows.R2 > rows.R1+1 {
			m.Insert(place, rows.R1+1, 1)
		}
		m.Insert(place, rows.R1-1, x.many)
	}
}

func defines(b *sheet.Book, name string) bool {
	return slices.ContainsFunc(b.Names, func(n sheet.Name) bool { return n.Name == name })
}

// widthOf is the number of columns of a sheet.
func widthOf(b *sheet.Book, name string) int {
	widest := 0
	for _, s := range b.Sheets {
		if s.Name != name {
			continue
		}
		for i := range s.Rows {
			widest = max(widest, len(s.Rows[i].Cells))
		}
	}
	return widest
}

// texts lists what stands in a named range, without empty cells.
func (f figures) texts(name string) []string {
	place, at, err := placeOf(f.book, name)
	if err != nil {
		return nil
	}
	var list []string
	for row := at.R1; row <= at.R2; row++ {
		if c := f.cells[place][sheet.Ref(row, at.C1)]; c.Text != "" {
			list = append(list, c.Text)
		}
	}
	return list
}
