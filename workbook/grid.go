package workbook

import (
	"strconv"
	"strings"

	"tentwright/catalog/money"
	"tentwright/workbook/sheet"
)

// column is one column of a table: the name that formulas know it by, its
// heading, its width and how its cells look.
type column struct {
	id      string // part of the defined name, as in build_amount; none: no name
	heading string
	width   float64
	style   sheet.Style
}

// table is a block of rows under one row of headings. Its named columns end
// one row below the last line, so that rows added at the end are still found.
type table struct {
	l     *layout
	s     *sheet.Sheet
	name  string // first part of the defined names
	cols  []column
	left  int // column of the sheet where the table begins, from 1
	first int // row of the first line
}

// startTable writes the headings on the next row of the sheet.
func (l *layout) startTable(s *sheet.Sheet, name string, cols []column) *table {
	t := &table{l: l, s: s, name: name, cols: cols, left: 1}
	cells := make([]sheet.Cell, len(cols))
	for i, c := range cols {
		cells[i] = sheet.Cell{Value: c.heading, Style: sheet.Style{Role: sheet.Heading, Align: c.style.Align}}
	}
	s.Rows = append(s.Rows, sheet.Row{Cells: cells})
	t.first = len(s.Rows) + 1
	return t
}

// after begins a table with the same columns further down, without headings.
func (t *table) after(name string) *table {
	return &table{l: t.l, s: t.s, name: name, cols: t.cols, left: t.left, first: t.next()}
}

// add writes a line; a cell without a style of its own takes its column's.
func (t *table) add(cells ...sheet.Cell) int {
	for i := range cells {
		if cells[i].Style == (sheet.Style{}) && i < len(t.cols) {
			cells[i].Style = t.cols[i].style
		}
	}
	t.s.Rows = append(t.s.Rows, sheet.Row{Cells: cells})
	return len(t.s.Rows)
}

// line is one line of a wide table, filled by the names of its columns.
type line struct {
	t     *table
	row   int
	cells []sheet.Cell
}

// line begins the next line with empty cells.
func (t *table) line() *line {
	return &line{t: t, row: t.next(), cells: make([]sheet.Cell, len(t.cols))}
}

// at is the cell of a column in this line, for formulas.
func (n *line) at(id string) string { return n.t.at(id, n.row) }

// set fills the cell of a column.
func (n *line) set(id string, c sheet.Cell) { n.cells[n.t.col(id)-n.t.left] = c }

// add writes the line to its table.
func (n *line) add() { n.t.add(n.cells...) }

// next is the row that the next line will take.
func (t *table) next() int { return len(t.s.Rows) + 1 }

// at is the cell of a named column in a row, for formulas of the same row.
func (t *table) at(id string, row int) string {
	return "$" + sheet.ColName(t.col(id)) + sheet.Ref(row, 1)[1:]
}

// col is the sheet column of a named column of the table; 0 if it has none.
func (t *table) col(id string) int {
	for i, c := range t.cols {
		if c.id == id {
			return t.left + i
		}
	}
	return 0
}

// end closes the table with one spare bordered row and names its columns.
func (t *table) end() {
	blank := make([]sheet.Cell, len(t.cols))
	for i := range blank {
		blank[i].Style = sheet.Style{Role: sheet.Body}
	}
	t.s.Rows = append(t.s.Rows, sheet.Row{Cells: blank, Height: 4})
	for i, c := range t.cols {
		if c.id != "" {
			col := t.left + i
			t.l.name(t.name+"_"+c.id, t.s, sheet.Range{R1: t.first, C1: col, R2: len(t.s.Rows), C2: col}, "")
		}
	}
}

// rows is the block of the lines, all columns.
func (t *table) rows() sheet.Range {
	return sheet.Range{R1: t.first, C1: t.left, R2: len(t.s.Rows), C2: t.left + len(t.cols) - 1}
}

// column is the block of the lines in one column.
func (t *table) column(id string) sheet.Range {
	return sheet.Range{R1: t.first, C1: t.col(id), R2: len(t.s.Rows), C2: t.col(id)}
}

// widths sets the sheet's columns from the table's.
func (t *table) widths() {
	for len(t.s.Columns) < t.left-1+len(t.cols) {
		t.s.Columns = append(t.s.Columns, sheet.Column{})
	}
	for i, c := range t.cols {
		t.s.Columns[t.left-1+i].Width = c.width
	}
}

// text is a cell of words.
func text(s string) sheet.Cell { return sheet.Cell{Value: s} }

// value is a cell of a figure that nothing in the workbook computes; nil leaves
// it empty.
func value(v any) sheet.Cell { return sheet.Cell{Value: v} }

// formula is a computed cell, with the value that the program computed for it.
func formula(f string, v any) sheet.Cell { return sheet.Cell{Formula: f, Value: v} }

// in gives a cell a style.
func in(c sheet.Cell, style sheet.Style) sheet.Cell {
	c.Style = style
	return c
}

// body is the style of what is only read.
func body(f sheet.Format) sheet.Style { return sheet.Style{Role: sheet.Body, Format: f} }

// calc is the style of a figure that follows from others.
func calc(f sheet.Format) sheet.Style { return sheet.Style{Role: sheet.Calc, Format: f} }

// input is the style of a figure that people may change.
func input(f sheet.Format) sheet.Style { return sheet.Style{Role: sheet.Input, Format: f} }

// wrap is the style of words that may take several lines.
func wrap() sheet.Style { return sheet.Style{Role: sheet.Body, Wrap: true} }

// ident turns an id of the shop or the job into part of a defined name: lower
// case, a hyphen becomes "_", the points and colons of keys become ".", and any
// other sign its number, so that zelt-ä and zelt-ö have names of their own. A
// kind stands before it and, where one id has several names, always a word
// behind it, so that no id reads as another's name.
func ident(id string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(id) {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
			b.WriteRune(r)
		case r == '-':
			b.WriteByte('_')
		case r == '.', r == ':':
			b.WriteByte('.')
		default:
			b.WriteString("_" + strconv.FormatInt(int64(r), 16) + "_")
		}
	}
	return b.String()
}

// quoted is a text as a formula writes it; the format takes at most 255
// characters of it.
func quoted(s string) string { return `"` + strings.ReplaceAll(s, `"`, `""`) + `"` }

// find is the formula that looks a key up in one named column and gives
// another column's value.
func find(wanted, keys, key string) string {
	return "INDEX(" + wanted + ",MATCH(" + key + "," + keys + ",0))"
}

// yes is how a truth stands in a cell.
func yes(b bool) string {
	if b {
		return "Yes"
	}
	return "No"
}

// float is a number as a cached cell value.
func float(n money.Number) float64 { return n.InexactFloat64() }
