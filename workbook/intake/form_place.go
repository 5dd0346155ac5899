package intake

import (
	"fmt"

	"tentwright/workbook/sheet"
)

// obstacles writes rows for what stands on the plot.
func (f *form) obstacles() {
	one := f.c.Company.Units.LengthUnit()
	f.row(cell(colLabel, "What stands on the plot. x to the right and y to the back, from its front left corner; to the front left corner of a rectangle, or to the middle of a circle.", faint()))
	f.heads(colNo, "No.", "Obstacle", "x, "+one, "y, "+one, "Width, "+one, "Depth, "+one, "Radius, "+one, "Kind")
	first := len(f.s.Rows) + 1
	for n := 1; n <= obstacles; n++ {
		f.row(cell(colNo, n, counted()), input(colLabel, sheet.Text), length(colValue), length(colD), length(colE), length(colF), length(colG), pick(colH))
		f.allow(colLabel, words(60), "What it is, e.g. Oak or Pond; each name once.")
		f.allow(colValue, words(40), "From the left edge of the plot, in "+one+"; 0 at the edge.")
		f.allow(colD, words(40), "From the front edge of the plot, in "+one+"; 0 at the edge.")
		f.allow(colE, words(40), "Of a rectangle, to the right, in "+one+"; empty for a circle.")
		f.allow(colF, words(40), "Of a rectangle, to the back, in "+one+"; empty for a circle.")
		f.allow(colG, words(40), "Of a circle, such as the crown of a tree, in "+one+"; empty for a rectangle.")
		f.allowFrom(colH, "kinds", kinds(), "Buildings and vehicles are measured against the distances that the code asks for; empty: something else.")
	}
	f.nameColumns("obstacle", first, map[string]int{"no": colNo, "name": colLabel, "x": colValue, "y": colD, "width": colE, "depth": colF, "radius": colG, "kind": colH})
}

// length is an empty cell for a length: a number, or words with a unit.
func length(col int) placed {
	p := input(col, sheet.General)
	p.Style.Align = sheet.Left
	return p
}

// places writes a row for each tent: where it stands, what its floor is for,
// whether it is heated.
func (f *form) places() {
	one, area := f.c.Company.Units.LengthUnit(), f.c.Company.Units.AreaUnit()
	f.band("Where the tents stand, and what their floors are for", "x and y: from the front left corner of the plot to that of the tent. Empty: where there is room. Turned: degrees about that corner, against the clock. Of tents that join place one; several alike stand in a row.")
	f.row(cell(colLabel, "Use: parts of the floor that are not used as the event says. Heated: Yes at those to be warm; empty everywhere: every tent with a wall.", faint()))
	f.heads(colNo, "No.", "Tent", "Use of a part", "Area, "+area, "x, "+one, "y, "+one, "Turned", "Use of another part", "Area, "+area, "Heated")
	first := len(f.s.Rows) + 1
	for n := 1; n <= Tents; n++ {
		f.placeRow(n)
	}
	f.wanting(first, colValue, colD)
	f.wanting(first, colH, colI)
	f.wanting(first, colE, colF)
	f.wanting(first, colF, colE)
	f.nameColumns("place", first, map[string]int{"no": colNo, "use": colValue, "area": colD, "x": colE, "y": colF, "turn": colG, "other": colH, "others": colI, "heated": colJ})
}

// wanting shows in red, from a row to the last, an empty cell that a filled one
// of its row asks for.
func (f *form) wanting(first, filled, empty int) {
	f.s.Highlights = append(f.s.Highlights, sheet.Highlight{Range: sheet.Range{R1: first, C1: empty, R2: len(f.s.Rows), C2: empty},
		Formula: fmt.Sprintf("AND(LEN($%s)>0,LEN($%s)=0)", sheet.Ref(first, filled), sheet.Ref(first, empty)), Role: sheet.Warn})
}

// placeRow is the inputs of one tent.
func (f *form) placeRow(n int) {
	one, area := f.c.Company.Units.LengthUnit(), f.c.Company.Units.AreaUnit()
	f.row(cell(colNo, n, counted()), placed{colLabel, sheet.Cell{Value: "", Formula: tentTitle(n, ""), Style: wrapped()}},
		pick(colValue), length(colD), length(colE), length(colF), pick(colG), pick(colH), length(colI), pick(colJ))
	f.allowFrom(colValue, "uses", uses(f.c), "What a part of this tent's floor is for; empty: all is as the event's.")
	f.allow(colD, words(40), "How large that part is, in "+area+".")
	f.allow(colE, words(40), "From the left edge of the plot to the tent's front left corner, in "+one+"; 0 at the edge.")
	f.allow(colF, words(40), "From the front edge of the plot to the tent's front left corner, in "+one+"; 0 at the edge.")
	f.allow(colG, sheet.Validation{Kind: sheet.List, Source: "0,90,180,270"}, "Degrees about the front left corner, against the clock: at 90 the front looks to the right and the tent lies left of that corner. Empty: not turned.")
	f.allowFrom(colH, "uses", uses(f.c), "What another part of the floor is for; empty: none.")
	f.allow(colI, words(40), "How large the other part is, in "+area+".")
	f.allow(colJ, yesOrNo(), "Yes: heated. No: not. Empty: not, if another says Yes; else heated if it has a wall.")
}
