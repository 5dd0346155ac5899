package revise

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"tentwright/catalog"
	"tentwright/quote"
	"tentwright/quote/job"
	"tentwright/quote/jobtest"
	"tentwright/workbook"
	"tentwright/workbook/sheet"
)

// quotes are those of the demonstration jobs and of some random ones.
func quotes(t testing.TB, random int) map[string]*quote.Quote {
	t.Helper()
	c, list := catalog.Load("demo", catalog.Demo())
	if c == nil {
		t.Fatal(list)
	}
	jobs := map[string]*job.Job{}
	for _, name := range []string{"garden", "dinner", "fairground"} {
		data, err := os.ReadFile(filepath.Join("..", "..", "testdata", "jobs", name+".yaml"))
		if err != nil {
			t.Fatal(err)
		}
		if jobs[name], list = job.ReadFor(c, name+".yaml", data); list.Err() != nil {
			t.Fatal(list)
		}
	}
	for seed := range uint64(random) {
		jobs[fmt.Sprintf("seed %d", seed)] = jobtest.Random(c, seed)
	}
	all := map[string]*quote.Quote{}
	for name, j := range jobs {
		q, list := quote.Build(c, j)
		if q == nil {
			t.Fatal(name, list)
		}
		all[name] = q
	}
	return all
}

// idle are the cells for typing from which nothing follows, by table and column,
// with the reason. What is typed there is told as not taken over.
var idle = map[string]string{
	"need_per":    "of what a tent's frame or an item is made of: not one job's to change",
	"need_min":    "as need_per",
	"item_markup": "of an item that is not hired in",
	"build_hand":  "of a line that follows from a tent, which has no discount of its own",
}

// Every cell that people may type into means something when the workbook comes
// back: an input, an added line or a payment, or words that are kept.
func TestEveryOpenCellIsTakenOrKept(t *testing.T) {
	for name, q := range quotes(t, 12) {
		book := workbook.Layout(q)
		b, list := Open(name, book.Found())
		if b == nil {
			t.Fatal(name, list)
		}
		uses, counts := b.uses(), map[use]int{}
		for _, s := range book.Sheets {
			for _, p := range openCells(s) {
				counts[uses[p]]++
				if uses[p] == unused && !idleAt(b.was, p) {
					t.Errorf("%s: %s is for typing, but what is typed there is neither taken nor kept; its names are %v", name, at("", p), namesOver(b.was, p))
				}
			}
		}
		if counts[taken] < 500 || counts[kept] < 100 {
			t.Errorf("%s: %d cells are taken and %d kept; more were expected", name, counts[taken], counts[kept])
		}
	}
}

// openCells are the cells of a sheet that people may type into; of merged ones
// only the first can be reached.
func openCells(s *sheet.Sheet) []sheet.Place {
	var open []sheet.Place
	for r := range s.Rows {
		for c := range s.Rows[r].Cells {
			p := place(s.Name, r+1, c+1)
			below := slices.ContainsFunc(s.Merges, func(m sheet.Range) bool {
				return m.Overlaps(p.Range) && (m.R1 < p.R1 || m.C1 < p.C1)
			})
			if !below && !s.Rows[r].Cells[c].Style.Role.Locked() {
				open = append(open, p)
			}
		}
	}
	return open
}

func idleAt(v *view, p sheet.Place) bool {
	return slices.ContainsFunc(namesOver(v, p), func(name string) bool { return idle[name] != "" })
}

// namesOver are the names of the blocks that a cell lies in.
func namesOver(v *view, p sheet.Place) (names []string) {
	for name, block := range v.f.Names {
		if block.Sheet == p.Sheet && block.Overlaps(p.Range) {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	return names
}

// What people write into the cells that are kept stands in the next workbook,
// in the same cell; nothing of it is an edit.
func TestKeptCellsAreKept(t *testing.T) {
	for name, q := range quotes(t, 4) {
		found := workbook.Layout(q).Found()
		b, _ := Open(name, found)
		n := 0
		for _, a := range b.keptCells() {
			p, _ := b.was.find(a)
			n++
			found.Sheet(p.Sheet).Rows[p.R1-1][p.C1-1] = sheet.FoundCell{Kind: sheet.FoundText, Text: fmt.Sprint("word ", n)}
		}
		b, list := Open(name, found)
		if b == nil || len(list) > 0 || len(b.Edits) > 0 {
			t.Fatal(name, list)
		}
		r, _ := b.Revise(nil)
		next := workbook.Layout(r.Quote)
		if lost, added := b.Keep(next); len(lost)+len(added) > 0 {
			t.Errorf("%s: lost %v, added %v; nothing was expected", name, lost, added)
		}
		then := newView(next.Found())
		for i, a := range b.keptCells() {
			p, _ := then.find(a)
			if got := shown(then.cell(p)); got != fmt.Sprint("word ", i+1) {
				t.Fatalf("%s: %v is %q; word %d was expected", name, a, got, i+1)
			}
		}
	}
}
