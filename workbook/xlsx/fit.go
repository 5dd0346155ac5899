package xlsx

import (
	"math"
	"slices"

	"tentwright/workbook/sheet"
)

// Measures of rows and columns that state none.
const (
	usualHeight = 15.0 // in points
	usualWidth  = 9.0  // in characters
)

// spans are the merges of a sheet by the row in which they start.
type spans map[int][]span

// span is a merge as it counts for the height of its row: the column of its
// first cell and the points of all its columns. One over several rows has no
// width: no row needs to be higher for it. The cells that a merge covers have
// no text.
type span struct {
	col   int
	width float64
}

// newSpans measures the merges of a sheet.
func newSpans(s *sheet.Sheet) spans {
	out := spans{}
	for _, m := range s.Merges {
		sum := 0.0
		for c := m.C1; c <= m.C2 && m.R1 == m.R2; c++ {
			sum += columnPoints(s, c)
		}
		out[m.R1] = append(out[m.R1], span{m.C1, sum})
	}
	return out
}

// width is the room for the text of a cell in points, given the merges that
// start in its row.
func width(s *sheet.Sheet, merged []span, col int) float64 {
	for _, m := range merged {
		if m.col == col {
			return m.width
		}
	}
	return columnPoints(s, col)
}

// columnPoints is the width of a column, counted from 1.
func columnPoints(s *sheet.Sheet, col int) float64 {
	width := usualWidth
	if col <= len(s.Columns) && s.Columns[col-1].Width > 0 {
		width = s.Columns[col-1].Width
	}
	return width * sheet.ColumnPoints
}

// height is the height a row needs for its text, or 0 when the usual one does.
// Programs do not fit rows themselves on a protected sheet, nor for merged
// cells.
func height(s *sheet.Sheet, merged spans, n int, r sheet.Row) float64 {
	if r.Height > 0 {
		return r.Height
	}
	need, starts := 0.0, merged[n]
	for i := range r.Cells {
		c := &r.Cells[i]
		if c.Value == nil {
			continue
		}
		room := width(s, starts, i+1)
		if room == 0 {
			continue
		}
		k := lookOf[c.Style.Role]
		text, _ := c.Value.(string)
		need = max(need, sheet.TextHeight(text, k.size, k.bold || c.Style.Bold, k.wrap || c.Style.Wrap, c.Style.Indent, room))
	}
	if need <= usualHeight {
		return 0
	}
	return min(math.Ceil(need), 409)
}

// dressed are the rows of a sheet with the cells that a merge covers in the
// style of its first cell, so that borders and fill go all the way round. The
// book's own rows stay as they are: those with merges are copied, once.
func dressed(s *sheet.Sheet) []sheet.Row {
	rows := slices.Clone(s.Rows)
	copied := make([]bool, len(rows))
	for _, m := range s.Merges {
		if m.R1 > len(rows) || m.C1 > len(rows[m.R1-1].Cells) {
			continue
		}
		style := rows[m.R1-1].Cells[m.C1-1].Style
		for len(rows) < m.R2 {
			rows, copied = append(rows, sheet.Row{}), append(copied, false)
		}
		for r := m.R1 - 1; r < m.R2; r++ {
			cells := rows[r].Cells
			if !copied[r] || len(cells) < m.C2 {
				cells = make([]sheet.Cell, max(len(cells), m.C2))
				copy(cells, rows[r].Cells)
				rows[r].Cells, copied[r] = cells, true
			}
			for c := m.C1 - 1; c < m.C2; c++ {
				if cells[c].Blank() {
					cells[c].Style = style
				}
			}
		}
	}
	return rows
}
