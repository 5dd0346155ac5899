package intake

import (
	"strings"

	"tentwright/catalog"
	"tentwright/workbook/sheet"
)

// box is one thing to write down: its label, and what may be ticked in it.
type box struct {
	label string
	ticks []string
	cell  bool // the sheet Intake has a cell of this name
}

// visit is the page to take along. Bold labels are those of the sheet Intake,
// so that the page can be typed in afterwards.
func (f *form) visit() *sheet.Sheet {
	v := &page{s: &sheet.Sheet{Name: SheetVisit, Tab: sheet.TabOffice, Protected: true, HideGrid: true, Page: f.page(false)}}
	v.s.Page.FitTall = 1
	v.s.Page.HeaderRight = "Site visit"
	for range 4 {
		v.s.Columns = append(v.s.Columns, sheet.Column{Width: visitColumn})
	}
	v.line(0, "Site visit", sheet.Style{Role: sheet.Title})
	v.line(0, "To fill in by pen. What is in bold has a cell of the same name on the sheet Intake.", sheet.Style{Role: sheet.Subtitle})
	v.line(44, visitCaution, sheet.Style{Role: sheet.Notice})
	length, distance := f.c.Company.Units.LengthUnit(), f.c.Company.Units.DistanceUnit()
	v.boxes("Who and where", 20, []box{{label: "Visited on, by"}, {label: "Quote number", cell: true}, {label: "Customer", cell: true}, {label: "Event", cell: true},
		{label: "Site", cell: true}, {label: "Contact on site", cell: true}, {label: "Access", cell: true}, {label: "Distance one way, " + distance, cell: true}})
	v.factors(f.c)
	v.boxes("Measured, "+length, 20, []box{{label: "Plot width, " + length, cell: true}, {label: "Plot depth, " + length, cell: true}, {label: "North", cell: true}, {label: "Free height, lowest branch or line"},
		{label: "Fall over the length"}, {label: "Gate, width and height"}, {label: "Carry, truck to tent"}, {label: "Nearest open fire or grill"},
		{label: "Neighbours' buildings, how far"}, {label: "Parked cars, how far"}})
	v.obstacles()
	v.boxes("Ground at each side of the tents, where it is not as above", 20, []box{{label: "Front"}, {label: "Back"}, {label: "Left"}, {label: "Right"}})
	v.boxes("Above and below the ground", 24, []box{{label: "Overhead lines: where, how high", ticks: noYes()}, {label: "Trees, eaves, poles", ticks: noYes()}, {label: "Septic tank and field", ticks: noYes()},
		{label: "Sprinkler lines", ticks: noYes()}, {label: "Gas, water, power, data", ticks: noYes()}, {label: "Marking asked for, ticket no."}})
	v.boxes("Supplies, ways in and out", 20, []box{{label: "Power: amps, outlets"}, {label: "Cable to the farthest tent, " + length, cell: true}, {label: "Water: tap, how far"}, {label: "Parking", cell: true},
		{label: "Exits: to where, what blocks them"}, {label: "Light after dark", ticks: noYes()}, {label: "Guests", cell: true}, {label: "Use of the floor", cell: true}})
	v.sketch()
	v.line(30, visitEnd, sheet.Style{Role: sheet.Faint, Wrap: true})
	return v.s
}

// Words that stand on every page. They leave the decision to those who may
// make it.
const (
	visitCaution = "Before anything is driven into the ground, buried utilities must be marked: public lines by the marking service of the region, " +
		"private ones (septic, sprinkler, power, gas to outbuildings) by the owner. Keep clear of overhead lines. Local rules and the utilities decide."
	visitEnd = "Wind, anchors, exits, occupancy, heat and power are matters of the local code and of licensed practice; this page only notes what was seen."
)

func noYes() []string { return []string{"none", "yes, where:"} }

// visitColumn is the width of each column, with which the page fills its paper;
// visitSize is the size of its text in points.
const (
	visitColumn = 32
	visitSize   = 10
)

// page is a sheet of four equal columns, filled from the top.
type page struct{ s *sheet.Sheet }

// line writes a text over the whole width; height 0 is the usual one.
func (v *page) line(height float64, text string, style sheet.Style) {
	cells := make([]sheet.Cell, 4)
	for i := range cells {
		cells[i].Style = style
	}
	cells[0].Value = text
	v.add(height, cells)
	v.merge(1, 4)
}

func (v *page) add(height float64, cells []sheet.Cell) {
	v.s.Rows = append(v.s.Rows, sheet.Row{Cells: cells, Height: height})
}

// merge joins columns of the last row.
func (v *page) merge(from, to int) {
	n := len(v.s.Rows)
	v.s.Merges = append(v.s.Merges, sheet.Range{R1: n, C1: from, R2: n, C2: to})
}

// boxes writes a band and its boxes, two in a row.
func (v *page) boxes(title string, height float64, list []box) {
	v.line(0, title, sheet.Style{Role: sheet.Section})
	for i := 0; i < len(list); i += 2 {
		var cells []sheet.Cell
		for _, b := range list[i:min(i+2, len(list))] {
			cells = append(cells, b.cells()...)
		}
		v.add(height, cells)
	}
}

// cells is a label and the box at its right.
func (b *box) cells() []sheet.Cell {
	style := sheet.Style{Role: sheet.Body, Wrap: true, Bold: b.cell}
	return []sheet.Cell{{Value: b.label, Style: style}, {Value: ticks(b.ticks), Style: sheet.Style{Role: sheet.Body, Wrap: true}}}
}

// ticks is a box for each word; nil for none.
func ticks(words []string) any {
	if len(words) == 0 {
		return nil
	}
	// The box stays on the line of the word behind it.
	const box = "☐\u00a0"
	return box + strings.Join(words, apart+box)
}

// apart is what stands between a word and the next box.
const apart = "   "

// textHeight is the height in points of a text over so many columns. All blanks
// before a box count: programs do not draw them together.
func textHeight(text any, bold bool, columns int) float64 {
	words, _ := text.(string)
	words = strings.ReplaceAll(words, apart, " --") // each as wide as a blank, or wider
	return sheet.TextHeight(strings.ReplaceAll(words, "\u00a0", "-"), visitSize, bold, true, 0, float64(columns*visitColumn)*sheet.ColumnPoints)
}

// factors writes the degrees of every site factor to tick one.
func (v *page) factors(c *catalog.Catalog) {
	v.line(0, "Site", sheet.Style{Role: sheet.Section})
	for i := range c.Site {
		style := sheet.Style{Role: sheet.Body, Wrap: true}
		words := ticks(degrees(&c.Site[i]).texts())
		v.add(max(textHeight(c.Site[i].Name, true, 1), textHeight(words, false, 3)), []sheet.Cell{
			{Value: c.Site[i].Name, Style: sheet.Style{Role: sheet.Body, Wrap: true, Bold: true}}, {Value: words, Style: style}, {Style: style}, {Style: style}})
		v.merge(2, 4)
	}
}

// obstacles leaves rows for what stands on the plot, under the heads of the
// sheet Intake.
func (v *page) obstacles() {
	style := sheet.Style{Role: sheet.Body, Bold: true}
	v.add(0, []sheet.Cell{{Value: "Obstacle", Style: style}, {Value: "x from the left, y from the front", Style: style}, {Value: "Width and depth, or radius", Style: style}, {Value: "What it is, height", Style: style}})
	for range 4 {
		v.add(18, blanks())
	}
}

// blanks is a row of four boxes.
func blanks() []sheet.Cell {
	cells := make([]sheet.Cell, 4)
	for i := range cells {
		cells[i].Style = sheet.Style{Role: sheet.Body}
	}
	return cells
}

// sketch leaves room to draw.
func (v *page) sketch() {
	v.line(0, "Sketch: tents with their sides, gate, trucks, lines in the ground and above, north", sheet.Style{Role: sheet.Section})
	first := len(v.s.Rows) + 1
	for range 7 {
		v.add(24, blanks())
	}
	v.s.Merges = append(v.s.Merges, sheet.Range{R1: first, C1: 1, R2: len(v.s.Rows), C2: 4})
}
