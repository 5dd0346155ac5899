package workbook

import (
	"slices"

	"tentwright/workbook/sheet"
)

// Measures of a sheet as it prints with narrow margins, in points.
const (
	letterWidth = 612
	a4Width     = 595
	narrowSides = 2 * 18   // left and right margin together
	narrowEdges = 2 * 43.2 // upper and lower margin
	// wider is how much more than its digits a column takes.
	wider = 1.03
	// wideSlack is what is used of a page: programs differ in how far they shrink
	// a sheet to the width of the paper.
	wideSlack = 0.97
)

// bandLines is how many lines stay on the page of the band above them.
const bandLines = 2

// keepBands begins the pages of a sheet so that no band is the last row of
// one. Every page up to the last band is begun here: where a program begins one
// by itself is not known closely enough to stand just before it.
func keepBands(s *sheet.Sheet, printed int) {
	page := widePage(s, printed)
	rows := quotePage{s: s}
	titles := 0.0
	for row := s.TitleRows[0]; row > 0 && row <= s.TitleRows[1]; row++ {
		titles += rows.height(row)
	}
	used, last := 0.0, lastBand(s)
	for row := 1; row <= last; row++ {
		high := rows.height(row)
		need := high
		if isBand(s, row) {
			for next := row + 1; next <= min(row+bandLines, len(s.Rows)); next++ {
				need += rows.height(next)
			}
		}
		if used+need > page {
			s.Breaks = append(s.Breaks, row)
			used = titles
		}
		used += high
	}
}

// mostSure is the share of a page up to which rows are taken to fit in every
// program.
const mostSure = 0.88

// keepTables begins a page at each band whose table would not end on the page
// that it stands on, where it ends on a page of its own. Pages that are begun
// already stay.
func keepTables(s *sheet.Sheet, printed int) {
	page, rows := widePage(s, printed), quotePage{s: s}
	titles := 0.0
	for row := s.TitleRows[0]; row > 0 && row <= s.TitleRows[1]; row++ {
		titles += rows.height(row)
	}
	used := 0.0
	for row := 1; row <= len(s.Rows); row++ {
		if begun := slices.Contains(s.Breaks, row); begun || isBand(s, row) {
			high := 0.0
			for next := row; next <= len(s.Rows) && (next == row || !isBand(s, next)); next++ {
				high += rows.height(next)
			}
			if !begun && used+high > mostSure*page {
				s.Breaks, begun = append(s.Breaks, row), true
			}
			if begun {
				used = titles
			}
		}
		if used += rows.height(row); used > page {
			used = titles
		}
	}
}

// isBand tells whether a row is a band across the sheet.
func isBand(s *sheet.Sheet, row int) bool {
	cells := s.Rows[row-1].Cells
	return len(cells) > 0 && cells[0].Style.Role == sheet.Section
}

// lastBand is the row of the last band; 0 if there is none.
func lastBand(s *sheet.Sheet) int {
	row := len(s.Rows)
	for row > 0 && !isBand(s, row) {
		row--
	}
	return row
}

// widePage is how many points of rows fit on a page across which a sheet's
// printed columns are fitted.
func widePage(s *sheet.Sheet, printed int) float64 {
	high, wide := float64(letterWidth), float64(letterHeight)
	if s.Page.Paper == "a4" {
		high, wide = a4Width, a4Height
	}
	if !s.Page.Landscape {
		high, wide = wide, high
	}
	columns := 0.0
	for _, c := range s.Columns[:printed] {
		columns += c.Width * sheet.ColumnPoints * wider
	}
	scale := min(1, (wide-narrowSides)/columns)
	return (high - narrowEdges) / scale * wideSlack
}
