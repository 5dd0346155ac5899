package workbook_test

import (
	"fmt"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/quote"
	"tentwright/quote/job"
	"tentwright/workbook"
	"tentwright/workbook/internal/calc"
	"tentwright/workbook/sheet"
)

// typed is what a person types into one cell of a named range: into its first
// row, or into the row in which another named range has a key.
type typed struct {
	name  string
	where string // "pick_part=chair"; none: the first row
	value any
}

// typing is a workbook with what is typed into it.
type typing struct {
	name  string // what is tried, for messages
	book  *sheet.Book
	typed []typed
}

// edits finds the cells, which must be open for typing unless they are keys
// that a test damages.
func (x *typing) edits(t *testing.T) []calc.Edit {
	t.Helper()
	e := &editing{t: t, book: x.book, said: []string{x.name}}
	for _, in := range x.typed {
		row := 0
		if keys, key, found := strings.Cut(in.where, "="); found {
			row = e.row(keys, key)
		}
		cells, s, first := cellsOf(t, x.book, in.name)
		if row < 0 || row >= len(cells) {
			t.Fatalf("%s: %s has no row %q", x.name, in.name, in.where)
		}
		if role := cells[row].Style.Role; role.Locked() && role != sheet.Key {
			t.Errorf("%s: %s, row %d: %s is not open for typing; an input was expected", x.name, s.Name, first+row, in.name)
		}
		e.setAt(in.name, row, in.value)
	}
	return e.edits
}

// recalculated types into each of some workbooks and recalculates them in one
// start of the office program.
func recalculated(t *testing.T, list []typing) []figures {
	t.Helper()
	dir, out := t.TempDir(), t.TempDir()
	var files []string
	for i := range list {
		written := writeBook(t, dir, "made-"+strconv.Itoa(i), list[i].book)
		file := filepath.Join(dir, strconv.Itoa(i)+".xlsx")
		if err := calc.EditCells(written, file, list[i].edits(t)); err != nil {
			t.Fatalf("%s: %v", list[i].name, err)
		}
		files = append(files, file)
	}
	if err := calc.Recalculate(t.Context(), files, out); err != nil {
		t.Fatal(err)
	}
	all := make([]figures, len(files))
	for i, file := range files {
		all[i] = readFigures(t, filepath.Join(out, filepath.Base(file)))
	}
	return all
}

// found is a cell with its place, for messages.
type found struct {
	place string // Checks!F12
	calc.Cell
}

// beside is the cell of a named range in the row in which another one has a
// key.
func (f figures) beside(t *testing.T, values, keys, key string) found {
	t.Helper()
	place, at, err := placeOf(f.book, keys)
	_, to, err2 := placeOf(f.book, values)
	if err != nil || err2 != nil {
		t.Fatal(err, err2)
	}
	for row := at.R1; row <= at.R2; row++ {
		if f.cells[place][sheet.Ref(row, at.C1)].Text == key {
			ref := sheet.Ref(row, to.C1)
			return found{place + "!" + ref, f.cells[place][ref]}
		}
	}
	t.Fatalf("%s has no %q", keys, key)
	return found{}
}

// named is the cell of a name.
func (f figures) named(t *testing.T, name string) found {
	t.Helper()
	place, at, err := placeOf(f.book, name)
	if err != nil {
		t.Fatal(err)
	}
	ref := sheet.Ref(at.R1, at.C1)
	return found{place + "!" + ref, f.cells[place][ref]}
}

// text fails if a cell does not hold a text; an empty text may be no cell.
func (c found) text(t *testing.T, context, want string) {
	t.Helper()
	if c.Text != want {
		t.Errorf("%s: %s: wanted %q, got %q", context, c.place, want, c.Text)
	}
}

// number fails if a cell does not hold a number, to a millionth.
func (c found) number(t *testing.T, context string, want float64) {
	t.Helper()
	if d := c.Number - want; c.Kind != calc.Number || d > 1e-6 || d < -1e-6 {
		t.Errorf("%s: %s: wanted %v, got %q", context, c.place, want, c.Text)
	}
}

// jobOf reads a job that has the usual head unless its body has one.
func jobOf(t *testing.T, body string) *job.Job {
	t.Helper()
	if !strings.HasPrefix(body, "number:") {
		body = usualHead + body
	}
	j, list := job.Read("job.yaml", []byte(body))
	if err := list.Err(); err != nil {
		t.Fatalf("%v\n%s", err, body)
	}
	return j
}

// laidOut is the quote and the workbook of a job.
func laidOut(t *testing.T, c *catalog.Catalog, body string) (*quote.Quote, *sheet.Book) {
	t.Helper()
	q := mustQuote(t, c, jobOf(t, body))
	return q, workbook.Layout(q)
}

// cellsOf is a named range of one column as it was laid out, with its place.
func cellsOf(t *testing.T, b *sheet.Book, name string) (cells []sheet.Cell, s *sheet.Sheet, first int) {
	t.Helper()
	place, at, err := placeOf(b, name)
	if err != nil {
		t.Fatal(err)
	}
	for _, s = range b.Sheets {
		if s.Name == place {
			break
		}
	}
	for row := at.R1; row <= at.R2; row++ {
		var c sheet.Cell
		if all := s.Rows[row-1].Cells; at.C1 <= len(all) {
			c = all[at.C1-1]
		}
		cells = append(cells, c)
	}
	return cells, s, at.R1
}

// step numbers what is done to one workbook after another.
func step(what string, n int) string { return fmt.Sprintf("%s, step %d", what, n) }
