package revise

import (
	"slices"
	"strings"

	"tentwright/catalog/diag"
	"tentwright/catalog/money"
	"tentwright/workbook/sheet"
)

// place is one cell.
func place(tab string, row, col int) sheet.Place {
	return sheet.Place{Sheet: tab, Range: sheet.Range{R1: row, C1: col, R2: row, C2: col}}
}

// keyed is a table of the workbook whose rows are known by the words in one or
// more of its columns, so that they are found however people sort them.
type keyed struct {
	table string
	keys  []string // names of columns without the table's
	label string   // column with the words for a row
}

// keyedTables lists the tables in which people type.
func keyedTables() []keyed {
	return []keyed{
		{"tents", []string{"key"}, "name"}, {"build", []string{"key"}, "name"}, {"work", []string{"key"}, "name"},
		{"extra", []string{"no"}, ""}, {"item", []string{"id"}, "name"}, {"zones", []string{"id"}, "name"},
		{"window", []string{"id"}, "name"}, {"task", []string{"key"}, "name"}, {"tent", []string{"id"}, "id"}, {"need", []string{"key"}, "name"},
		{"count", []string{"key"}, "what"}, {"degree", []string{"key"}, ""},
		{"pick", []string{"key"}, "item"}, {"return", []string{"key"}, "item"},
		{"out", []string{"part", "trip"}, "item"}, {"home", []string{"part", "trip"}, "item"},
		{"trip", []string{"key"}, "name"}, {"back", []string{"key"}, "name"}, {"date", []string{"key"}, "what"}, {"load", []string{"part"}, "name"},
		{"action", []string{"id"}, ""}, {"hold", []string{"key"}, "key"}, {"friction", []string{"key"}, "key"},
		{"use", []string{"id"}, "name"}, {"people", []string{"key"}, "skills"},
		{"hours", []string{"id"}, "name"}, {"arrival", []string{"id"}, "what"}, {"handover", []string{"id"}, "what"},
	}
}

// address is where a cell stands, however rows moved: a cell with a name of its
// own, one of a named block by its number, or the cell of a column in the row
// of a key.
type address struct {
	name  string
	index int // of the block, from 0

	table, column, key string
}

// view finds cells by their addresses.
type view struct {
	f    *sheet.Found
	rows map[string]map[string][]int // of a table: the rows of each key
	over map[string]sheet.Place      // of a table: the block of its keys
}

// newView reads the keys of all tables.
func newView(f *sheet.Found) *view {
	v := &view{f: f, rows: map[string]map[string][]int{}, over: map[string]sheet.Place{}}
	for _, t := range keyedTables() {
		first, ok := f.Names[t.table+"_"+t.keys[0]]
		if !ok {
			continue
		}
		v.over[t.table] = first
		rows := map[string][]int{}
		for row := first.R1; row <= first.R2; row++ {
			if key := v.keyOf(t, row); key != "" {
				rows[key] = append(rows[key], row)
			}
		}
		v.rows[t.table] = rows
	}
	return v
}

// keyOf is the key of a table's row, its parts with a bar between.
func (v *view) keyOf(t keyed, row int) string {
	words := make([]string, len(t.keys))
	for i, column := range t.keys {
		place, ok := v.f.Names[t.table+"_"+column]
		if !ok {
			return ""
		}
		words[i] = strings.TrimSpace(shown(v.f.Sheet(place.Sheet).At(row, place.C1)))
	}
	if words[0] == "" {
		return ""
	}
	return strings.Join(words, "|")
}

// Why a cell is not found.
type missing int

const (
	here    missing = iota
	noName          // its name, or that of its column, points nowhere any more
	noRow           // no row has its key
	twoRows         // several rows have its key
)

// find is where an address stands; the place is that of the first row when
// several have the key.
func (v *view) find(a address) (sheet.Place, missing) {
	if a.name != "" {
		p, ok := v.f.Names[a.name]
		if rows := v.filled(p); ok && a.index < len(rows) {
			p.R1, p.R2 = rows[a.index], rows[a.index]
			return p, here
		}
		return p, noName
	}
	p, ok := v.f.Names[a.table+"_"+a.column]
	if !ok {
		return p, noName
	}
	rows := v.rows[a.table][a.key]
	if len(rows) == 0 {
		return p, noRow
	}
	p.R1, p.R2 = rows[0], rows[0]
	if len(rows) > 1 {
		return p, twoRows
	}
	return p, here
}

// filled lists the rows of a block that hold anything; of a single row, that
// one. Rows that people insert to make room are thus passed over.
func (v *view) filled(p sheet.Place) []int {
	if p.R1 == p.R2 {
		return []int{p.R1}
	}
	var rows []int
	for row := p.R1; row <= p.R2; row++ {
		if s := v.f.Sheet(p.Sheet); s != nil && row <= len(s.Rows) && !blank(s.Rows[row-1]) {
			rows = append(rows, row)
		}
	}
	return rows
}

// blank tells whether a row shows nothing.
func blank(row []sheet.FoundCell) bool {
	return !slices.ContainsFunc(row, func(c sheet.FoundCell) bool { return shown(c) != "" })
}

// last is the last row of a sheet that holds anything, remarks included.
func (v *view) last(tab string) int {
	s := v.f.Sheet(tab)
	if s == nil {
		return 0
	}
	last := len(s.Rows)
	for _, n := range s.Notes {
		last = max(last, n.Row)
	}
	return last
}

// cell is what stands at a place.
func (v *view) cell(p sheet.Place) sheet.FoundCell { return v.f.Sheet(p.Sheet).At(p.R1, p.C1) }

// at is a place as problems show it.
func at(file string, p sheet.Place) diag.Pos {
	return diag.Pos{File: file, Sheet: p.Sheet, Cell: sheet.Ref(p.R1, p.C1)}
}

// shown is a cell as people read it, numbers without needless places and days
// as dates.
func shown(c sheet.FoundCell) string {
	switch c.Kind {
	case sheet.FoundNumber:
		if c.Day && inDays(c.Number) {
			return serialDay(int(c.Number)).String()
		}
		return plainNumber(c)
	case sheet.FoundBool:
		if c.Number != 0 {
			return "Yes"
		}
		return "No"
	}
	return strings.TrimSpace(strings.ReplaceAll(c.Text, "\r\n", "\n"))
}

// plainNumber is the number of a cell, whatever it is shown as.
func plainNumber(c sheet.FoundCell) string {
	return money.Round(money.Float(c.Number), 10).String()
}

// same tells whether two cells show the same, by whichever program they were
// written: fifteen places of a number are all that each keeps.
func same(a, b sheet.FoundCell) bool {
	if a.Kind == sheet.FoundNumber && b.Kind == sheet.FoundNumber {
		most := max(1, abs(a.Number), abs(b.Number))
		return abs(a.Number-b.Number) <= most*1e-9
	}
	return shown(a) == shown(b)
}

func abs(f float64) float64 { return max(f, -f) }
