package xlsx

import (
	"math"
	"slices"
	"strings"

	"tentwright/workbook/sheet"
)

// Measures for fitting rows, all in points but the first.
const (
	columnUnit  = 6.0  // points of one unit of column width: a digit of the default font
	cellPadding = 4.0  // left and right of the text together
	lineFactor  = 1.2  // line height over font size
	rowPadding  = 3.0  // above and below the text together
	usualHeight = 15.0 // of a row that states none
	usualWidth  = 9.0  // characters of a column that states none
)

// advance is the width of the characters ' ' to '~' in thousandths of the
// size, for Arial and the fonts made to its measure.
var advance = [95]int{
	278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278,
	556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
	1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778,
	667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
	333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556,
	556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
}

// boldFactor is how much wider bold text runs, rounded up.
const boldFactor = 1.1

// textWidth is the width of one line in points.
func textWidth(s string, size float64, bold bool) float64 {
	sum := 0
	for _, r := range s {
		switch {
		case r >= ' ' && r <= '~':
			sum += advance[r-' ']
		case r < 0x1100:
			sum += 611 // accented letters and most signs
		default:
			sum += 1000 // full-width signs, boxes to tick
		}
	}
	w := float64(sum) * size / 1000
	if bold {
		w *= boldFactor
	}
	return w
}

// wrappedLines counts the lines of text broken at blanks to fit a width in
// points; a word too long for a line is broken where the line ends.
func wrappedLines(text string, size float64, bold bool, width float64) int {
	width = max(width, size)
	count := 0
	for line := range strings.SplitSeq(text, "\n") {
		count++
		used := 0.0
		blank := textWidth(" ", size, bold)
		for word := range strings.FieldsSeq(line) {
			w := textWidth(word, size, bold)
			if used > 0 && used+blank+w > width {
				count++
				used = 0
			}
			if used > 0 {
				used += blank
			}
			used += w
			if used > width {
				more := math.Ceil(used/width) - 1
				count += int(more)
				used -= more * width
			}
		}
	}
	return count
}

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
	return width * columnUnit
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
		k, lines := lookOf[c.Style.Role], 1
		if text, ok := c.Value.(string); ok && (k.wrap || c.Style.Wrap) {
			room -= cellPadding + columnUnit*1.5*float64(c.Style.Indent)
			lines = wrappedLines(sheet.Clean(text), k.size, k.bold || c.Style.Bold, room)
		}
		need = max(need, float64(lines)*k.size*lineFactor+rowPadding)
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
