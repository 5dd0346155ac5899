package listing

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"tentwright/catalog/diag"
	"tentwright/workbook/sheet"
)

// Table is the cells of a list with their places.
type Table struct {
	file  string
	sheet string // "" for a list as text
	rows  []tableRow
	data  []byte // of a list as text, in UTF-8
}

// tableRow is one row; its cells beyond the last are empty.
type tableRow struct {
	number int // of the row in the sheet, or of its first line in the text
	cells  []cell
}

// cell is one cell and where it stands.
type cell struct {
	sheet.FoundCell
	pos diag.Pos
}

// Sheet takes the sheet of that name, or the first if name is "", as a list.
// The table is nil when there is none.
func Sheet(file string, found *sheet.Found, name string) (*Table, diag.List) {
	var list diag.List
	var names []string
	for _, s := range found.Sheets {
		names = append(names, s.Name)
		if name != "" && s.Name != name {
			continue
		}
		t := &Table{file: file, sheet: s.Name}
		for i, cells := range s.Rows {
			row := tableRow{number: i + 1}
			for j, c := range cells {
				row.cells = append(row.cells, cell{c, t.place(i+1, j)})
			}
			t.rows = append(t.rows, row)
		}
		return t, nil
	}
	list.Add(diag.Problem{Pos: diag.Pos{File: file}, Code: NoSheet, Advice: diag.DidYouMean(name, names),
		Message: fmt.Sprintf("the workbook has no sheet %q; the sheet of the list was expected", name)})
	return nil, list
}

// Source is the text of a list in CSV, in UTF-8, for showing its lines; nil for
// a workbook.
func (t *Table) Source(file string) []byte {
	if file != t.file {
		return nil
	}
	return t.data
}

// place is the cell of a sheet in a row from 1 and a column from 0.
func (t *Table) place(row, col int) diag.Pos {
	return diag.Pos{File: t.file, Sheet: t.sheet, Cell: sheet.Ref(row, col+1)}
}

// at is the cell in a row and column, both from 0. A cell that a line of text
// lacks is placed at the line.
func (t *Table) at(row, col int) cell {
	r := &t.rows[row]
	switch {
	case col < len(r.cells):
		return r.cells[col]
	case t.sheet != "":
		return cell{pos: t.place(r.number, col)}
	}
	return cell{pos: diag.Pos{File: t.file, Line: r.number}}
}

// blank tells a cell that shows nothing. A formula without a result is not
// blank: something was meant to be there.
func (c *cell) blank() bool {
	return c.Formula == "" && c.Kind == sheet.FoundEmpty || c.Kind == sheet.FoundText && tidy(c.Text) == ""
}

// tidy is a text with single blanks and none around it. Blanks are also those
// that keep words together, which spreadsheets are full of.
func tidy(text string) string { return strings.Join(strings.Fields(text), " ") }

// folded is a heading without what people write one way and the other.
func folded(heading string) string { return strings.ToLower(tidy(heading)) }

// sortedKeys is the keys of a map in order.
func sortedKeys[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }
