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

// spans are the merged widths of a sheet: at the first cell of a merge, the
// points of all its columns; at the cells it covers, 0.
type spans map[[2]int]float64

// newSpans measures the merges of a sheet. One over several rows has no width:
// no row needs to be higher for it.
func newSpans(s *sheet.Sheet) spans {
	out := spans{}
	for _, m := range s.Merges {
		sum := 0.0
		for c := m.C1; c <= m.C2; c++ {
			sum += columnPoints(s, c)
			for r := m.R1; r <= m.R2; r++ {
				out[[2]int{r, c}] = 0
			}
		}
		if m.R1 == m.R2 {
			out[[2]int{m.R1, m.C1}] = sum
		}
	}
	return out
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
	need := 0.0
	for i, c := range r.Cells {
		if c.Value == nil {
			continue
		}
		k := lookOf[c.Style.Role]
		width, lines := columnPoints(s, i+1), 1
		if w, ok := merged[[2]int{n, i + 1}]; ok {
			width = w
		}
		if width == 0 {
			continue
		}
		if text, ok := c.Value.(string); ok && (k.wrap || c.Style.Wrap) {
			width -= cellPadding + columnUnit*1.5*float64(c.Style.Indent)
			lines = wrappedLines(sheet.Clean(text), k.size, k.bold || c.Style.Bold, width)
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
// book's own rows stay as they are.
func dressed(s *sheet.Sheet) []sheet.Row {
	rows := slices.Clone(s.Rows)
	for _, m := range s.Merges {
		if m.R1 > len(rows) || m.C1 > len(rows[m.R1-1].Cells) {
			continue
		}
		style := rows[m.R1-1].Cells[m.C1-1].Style
		for len(rows) < m.R2 {
			rows = append(rows, sheet.Row{})
		}
		for r := m.R1 - 1; r < m.R2; r++ {
			cells := make([]sheet.Cell, max(len(rows[r].Cells), m.C2))
			copy(cells, rows[r].Cells)
			for c := m.C1 - 1; c < m.C2; c++ {
				if cells[c].Blank() {
					cells[c].Style = style
				}
			}
			rows[r].Cells = cells
		}
	}
	return rows
}
