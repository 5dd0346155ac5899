package xlsx

import (
	"fmt"
	"regexp"
	"strings"

	"github.com/xuri/excelize/v2"

	"tentwright/workbook/sheet"
)

// Measures of a note's box in pixels.
const (
	noteWidth     = 260
	noteChars     = 36 // characters to a line of that width
	noteLine      = 16
	noteGap       = 12 // between the cell and the box
	pixelsOfPoint = 4.0 / 3
)

// notes adds the remarks. The box is placed later, see placeNotes.
func (x *writer) notes(s *sheet.Sheet) error {
	for _, n := range s.Notes {
		if err := x.file.AddComment(s.Name, excelize.Comment{
			Author: author, Cell: sheet.Ref(n.Row, n.Col), Text: sheet.Clean(n.Text),
		}); err != nil {
			return fmt.Errorf("note %s: %w", sheet.Ref(n.Row, n.Col), err)
		}
	}
	return nil
}

var anchor = regexp.MustCompile(`<x:Anchor>[^<]*</x:Anchor>`)

// placeNotes puts each note's box to the right of its cell, where it hides
// neither the cell nor the words before it. The drawing of the notes lists them
// in the order they were added.
func (g *grid) placeNotes(room, drawing []byte) ([]byte, error) {
	i := 0
	return append(room, anchor.ReplaceAllFunc(drawing, func(old []byte) []byte {
		if i == len(g.sheet.Notes) {
			return old
		}
		box := noteBox(g.sheet, g.merged, g.sheet.Notes[i])
		i++
		return fmt.Appendf(nil, "<x:Anchor>%s</x:Anchor>", box)
	})...), nil
}

// noteBox is the place of a note as the drawing has it: column, pixels into
// it, row, pixels into it, of the upper left and the lower right corner.
// Columns and rows count from 0.
func noteBox(s *sheet.Sheet, merged spans, n sheet.Note) string {
	// One line for the author's name, which programs may put first, and one to
	// spare.
	lines := 2
	for line := range strings.SplitSeq(sheet.Clean(n.Text), "\n") {
		lines += 1 + len([]rune(line))/noteChars
	}
	// A hidden column takes no room, and the box would be squeezed.
	columns := func(i int) int {
		if i < len(s.Columns) && s.Columns[i].Hidden {
			return 0
		}
		return int(columnPoints(s, i+1) * pixelsOfPoint)
	}
	rows := func(i int) int {
		h := 0.0
		if i < len(s.Rows) {
			h = height(s, merged, i+1, s.Rows[i])
		}
		if h == 0 {
			h = usualHeight
		}
		return int(h * pixelsOfPoint)
	}
	right, inRight := walk(n.Col, noteGap+noteWidth, columns)
	top := max(n.Row-2, 0)
	bottom, inBottom := walk(top, noteLine*lines, rows)
	return fmt.Sprintf("%d, %d, %d, 2, %d, %d, %d, %d", n.Col, noteGap, top, right, inRight, bottom, inBottom)
}

// walk goes a number of pixels from the start of a column or row and returns
// where it ends: the index and the pixels into it.
func walk(from, pixels int, size func(int) int) (at, into int) {
	for pixels > size(from) {
		pixels -= size(from)
		from++
	}
	return from, pixels
}
