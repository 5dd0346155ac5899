package revise_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"tentwright/catalog/diag"
	"tentwright/workbook"
	"tentwright/workbook/internal/calc"
	"tentwright/workbook/revise"
	"tentwright/workbook/sheet"
	"tentwright/workbook/xlsx"
)

// scene is a workbook that the office works in with a spreadsheet program, and
// what must come of it.
type scene struct {
	name, job string
	work      func(o *office)
	check     func(t *testing.T, s *saved)
}

// office does things to the cells of one workbook, by their names.
type office struct {
	calc.Macro
	t     *testing.T
	found *sheet.Found // as it was written
}

// at is a cell of a name, counted down from the first; the name may be that of
// a column and a key, such as "tents_quantity/T:lawn".
func (o *office) at(name string, index int) sheet.Place {
	o.t.Helper()
	return placeIn(o.t, o.found, name, index)
}

func placeIn(t *testing.T, f *sheet.Found, name string, index int) sheet.Place {
	t.Helper()
	column, key, keyed := strings.Cut(name, "/")
	p, ok := f.Names[column]
	if !ok {
		t.Fatalf("no name %q", column)
	}
	if keyed {
		keys := f.Names[column[:strings.Index(column, "_")]+"_"+map[bool]string{true: "id", false: "key"}[strings.HasPrefix(column, "item_") || strings.HasPrefix(column, "tent_") || strings.HasPrefix(column, "window_") || strings.HasPrefix(column, "zones_")]]
		for row := keys.R1; row <= keys.R2; row++ {
			if f.Sheet(keys.Sheet).At(row, keys.C1).Text == key {
				index = row - p.R1
			}
		}
	}
	p.R1 += index
	p.R2 = p.R1
	return p
}

// typed types into a named cell.
func (o *office) typed(name string, v any) { p := o.at(name, 0); o.Type(p.Sheet, p.R1, p.C1, v) }

// saved is a workbook as it was saved.
type saved struct {
	data  []byte
	found *sheet.Found
	book  *revise.Book
	list  diag.List
}

// write and requote, as the command does.
func (s *saved) next(t *testing.T) (*revise.Result, *saved) {
	t.Helper()
	if s.book == nil {
		t.Fatal(s.list)
	}
	r, list := s.book.Revise(nil)
	if r == nil {
		t.Fatal(list)
	}
	next := workbook.LayoutWith(r.Quote, workbook.Options{Changes: r.Changes})
	lost, added := s.book.Keep(next)
	if len(lost) > 0 {
		next = workbook.LayoutWith(r.Quote, workbook.Options{Changes: append(r.Changes, lost...)})
		s.book.Keep(next)
	}
	var out bytes.Buffer
	if err := xlsx.WriteWith(&out, next, xlsx.Foreign{Data: s.data, Sheets: added}); err != nil {
		t.Fatal(err)
	}
	return r, opened(t, out.Bytes())
}

func opened(t *testing.T, data []byte) *saved {
	t.Helper()
	found, err := xlsx.Read("book.xlsx", data)
	if err != nil {
		t.Fatal(err)
	}
	s := &saved{data: data, found: found}
	s.book, s.list = revise.Open("book.xlsx", found)
	return s
}

// reopened is a workbook after something was typed into what was found.
func reopened(t *testing.T, s *saved) *saved {
	t.Helper()
	next := &saved{data: s.data, found: s.found}
	next.book, next.list = revise.Open("book.xlsx", s.found)
	return next
}

// shows is what a cell of a name shows.
func (s *saved) shows(t *testing.T, name string) string {
	t.Helper()
	p := placeIn(t, s.found, name, 0)
	return s.cell(p.Sheet, p.R1, p.C1)
}

func (s *saved) cell(tab string, row, col int) string { return s.found.Sheet(tab).At(row, col).Text }

// holds tells whether a sheet has a text in any cell, or as a remark.
func (s *saved) holds(tab, text string) bool {
	sheet := s.found.Sheet(tab)
	if sheet == nil {
		return false
	}
	for _, row := range sheet.Rows {
		for _, c := range row {
			if c.Text == text {
				return true
			}
		}
	}
	for _, n := range sheet.Notes {
		if strings.Contains(n.Text, text) {
			return true
		}
	}
	return false
}

// says wants a problem for each of the words, with no other.
func (s *saved) says(t *testing.T, want ...string) {
	t.Helper()
	var got []string
	for _, p := range s.list {
		got = append(got, p.String())
	}
	for _, words := range want {
		at := slices.IndexFunc(got, func(text string) bool { return strings.Contains(text, words) })
		if at < 0 {
			t.Errorf("nothing says %q", words)
			continue
		}
		got = slices.Delete(got, at, at+1)
	}
	for _, text := range got {
		t.Errorf("also: %s", text)
	}
}

// playScenes has the office work in all workbooks in one start of the program.
func playScenes(t *testing.T, scenes []scene) {
	calc.Need(t)
	dir := t.TempDir()
	o := &office{t: t}
	for i, x := range scenes {
		book := workbook.Layout(demoQuote(t, x.job))
		var out bytes.Buffer
		if err := xlsx.Write(&out, book); err != nil {
			t.Fatal(err)
		}
		in := filepath.Join(dir, fmt.Sprintf("%d.xlsx", i))
		if err := os.WriteFile(in, out.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
		o.found = book.Found()
		o.Open(in)
		x.work(o)
		o.Save(filepath.Join(dir, fmt.Sprintf("%d-saved.xlsx", i)))
	}
	o.Run(t)
	for i, x := range scenes {
		t.Run(x.name, func(t *testing.T) {
			data, err := os.ReadFile(filepath.Join(dir, fmt.Sprintf("%d-saved.xlsx", i)))
			if err != nil {
				t.Fatal(err)
			}
			x.check(t, opened(t, data))
		})
	}
}
