package sheet

import (
	"math"
	"strings"
)

// Measures of printed text, in points.
const (
	ColumnPoints = 6.0 // of one unit of column width: a digit of the default font
	cellPadding  = 4.0 // left and right of a cell's text together
	rowPadding   = 3.0 // above and below it together
	lineFactor   = 1.2 // line height over size
	indentStep   = 1.5 // units of column width that one step of indent takes
	boldFactor   = 1.1 // how much wider bold text runs, rounded up
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

// TextWidth is how wide one line of text runs in points, at a size in points.
func TextWidth(text string, size float64, bold bool) float64 {
	sum := 0
	for _, r := range text {
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

// TextLines counts the lines of text that is broken at blanks to fit a width in
// points; a word too long for a line is broken where the line ends.
func TextLines(text string, size float64, bold bool, width float64) int {
	width = max(width, size)
	blank := TextWidth(" ", size, bold)
	count := 0
	for line := range strings.SplitSeq(text, "\n") {
		count++
		used := 0.0
		for word := range strings.FieldsSeq(line) {
			w := TextWidth(word, size, bold)
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

// TextHeight is the height in points of a row that holds a text in a cell of
// a width in points, its steps of indent counted; the text is broken into lines
// if wrap is set.
func TextHeight(text string, size float64, bold, wrap bool, indent int, width float64) float64 {
	lines := 1
	if wrap {
		lines = TextLines(Clean(text), size, bold, width-cellPadding-ColumnPoints*indentStep*float64(indent))
	}
	return float64(lines)*size*lineFactor + rowPadding
}
