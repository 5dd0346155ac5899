package workbook

import (
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/quote"
	"tentwright/quote/job"
	"tentwright/workbook/sheet"
)

// A spreadsheet program may take every cell of a range that a formula names as
// something that it depends on, whichever of them INDEX or SUMIFS then picks.
// So no formula may reach its own cell by way of whole ranges.
func TestNoFormulaDependsOnItself(t *testing.T) {
	for name, q := range demoQuotes(t) {
		t.Run(name, func(t *testing.T) {
			for _, b := range []*sheet.Book{Layout(q), Customer(q)} {
				if cycle := newDependencies(b).cycle(); cycle != nil {
					t.Errorf("a formula depends on itself: %s", strings.Join(cycle, " <- "))
				}
			}
		})
	}
}

// The check itself must see a circle that goes through a range.
func TestCircleThroughARangeIsSeen(t *testing.T) {
	b := &sheet.Book{
		Names: []sheet.Name{{Name: "some_column", Refers: "'S'!$A$1:$A$3"}},
		Sheets: []*sheet.Sheet{{Name: "S", Rows: []sheet.Row{
			{Cells: []sheet.Cell{{Value: 1}, {Formula: "SUM(some_column)", Value: 2}}},
			{Cells: []sheet.Cell{{Formula: "B1", Value: 2}}},
		}}},
	}
	if newDependencies(b).cycle() == nil {
		t.Error("a circle by way of a named range was not seen")
	}
}

func demoQuotes(t testing.TB) map[string]*quote.Quote {
	t.Helper()
	c, list := catalog.Load("demo", catalog.Demo())
	if c == nil {
		t.Fatal(list.Err())
	}
	files, err := filepath.Glob("../testdata/jobs/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatal("no demo jobs found", err)
	}
	quotes := map[string]*quote.Quote{}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		j, list := job.Read(file, data)
		if j == nil {
			t.Fatal(list.Err())
		}
		q, list := quote.Build(c, j)
		if q == nil {
			t.Fatal(list.Err())
		}
		quotes[strings.TrimSuffix(filepath.Base(file), ".yaml")] = q
	}
	return quotes
}

// dependencies is which ranges each formula names, and which formulas stand in
// each range. A place is "Sheet!A1" or "Sheet!A1:B2".
type dependencies struct {
	book  *sheet.Book
	names map[string]string
	needs map[string][]string      // cell or range to what it depends on
	cells map[string]map[int][]int // sheet to column to rows with formulas
}

var (
	strings1  = regexp.MustCompile(`"(?:[^"]|"")*"`)
	reference = regexp.MustCompile(`(?:'([^']+)'!)?\$?([A-Z]{1,3})\$?([0-9]+)(?::\$?([A-Z]{1,3})\$?([0-9]+))?|([a-z][a-z0-9_]*)`)
)

func newDependencies(b *sheet.Book) *dependencies {
	d := &dependencies{book: b, names: map[string]string{}, needs: map[string][]string{}, cells: map[string]map[int][]int{}}
	for _, n := range b.Names {
		d.names[n.Name] = n.Refers
	}
	for _, s := range b.Sheets {
		d.cells[s.Name] = map[int][]int{}
		for r, row := range s.Rows {
			for c, cell := range row.Cells {
				if cell.Formula != "" {
					d.cells[s.Name][c+1] = append(d.cells[s.Name][c+1], r+1)
				}
			}
		}
	}
	for _, s := range b.Sheets {
		for r, row := range s.Rows {
			for c, cell := range row.Cells {
				if cell.Formula != "" {
					d.read(s.Name, place(s.Name, r+1, c+1), cell.Formula)
				}
			}
		}
	}
	return d
}

func place(sheetName string, row, col int) string { return sheetName + "!" + sheet.Ref(row, col) }

// read notes what a formula names.
func (d *dependencies) read(own, from, formula string) {
	for _, m := range reference.FindAllStringSubmatch(strings1.ReplaceAllString(formula, `""`), -1) {
		if m[6] != "" {
			if refers, ok := d.names[m[6]]; ok {
				d.read(own, from, refers)
			}
			continue
		}
		on := own
		if m[1] != "" {
			on = m[1]
		}
		d.needs[from] = append(d.needs[from], d.block(on, m[2:6]))
	}
}

// block is a cell or a range as a place; a range depends on its formulas.
func (d *dependencies) block(on string, m []string) string {
	r1, _ := strconv.Atoi(m[1])
	c1 := column1(m[0])
	if m[2] == "" {
		return place(on, r1, c1)
	}
	r2, _ := strconv.Atoi(m[3])
	c2 := column1(m[2])
	name := place(on, r1, c1) + ":" + sheet.Ref(r2, c2)
	if _, known := d.needs[name]; known {
		return name
	}
	d.needs[name] = []string{}
	for c := c1; c <= c2; c++ {
		for _, r := range d.cells[on][c] {
			if r >= r1 && r <= r2 {
				d.needs[name] = append(d.needs[name], place(on, r, c))
			}
		}
	}
	return name
}

func column1(letters string) int {
	n := 0
	for _, l := range letters {
		n = n*26 + int(l-'A') + 1
	}
	return n
}

// cycle finds places that depend on themselves, or nil.
func (d *dependencies) cycle() []string {
	const open, done = 1, 2
	state := map[string]int{}
	var path, found []string
	var walk func(at string) bool
	walk = func(at string) bool {
		state[at] = open
		path = append(path, at)
		for _, next := range d.needs[at] {
			if state[next] == open {
				found = append(append(found, path...), next)
				return true
			}
			if state[next] == 0 && walk(next) {
				return true
			}
		}
		state[at] = done
		path = path[:len(path)-1]
		return false
	}
	for at := range d.needs {
		if state[at] == 0 && walk(at) {
			for len(found) > 1 && found[0] != found[len(found)-1] {
				found = found[1:]
			}
			return found
		}
	}
	return nil
}
