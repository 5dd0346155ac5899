package workbook

import (
	"strconv"

	plot "tentwright/quote/layout"
	"tentwright/workbook/draw"
	"tentwright/workbook/sheet"
)

// Size of the picture on screen, in pixels of which 96 make an inch: printed in
// full size it has the drawing's scale. Its rows together are as high, in points
// of which 72 make one.
const (
	planWide = 960
	planHigh = 624
	planRows = 4
	planRow  = 117.5
)

// drawing draws the plan while the sheets are laid out; the result is asked for
// when its own sheet is.
func drawing(p *plot.Plan) (picture func() []byte) {
	if p == nil {
		return nil
	}
	done := make(chan []byte, 1)
	go func() {
		// Drawing into memory cannot fail; a sheet can do with its tables.
		data, _ := draw.PNG(p)
		done <- data
	}()
	return func() []byte { return <-done }
}

// planSheet shows the plot, drawn to scale, and where each tent stands in words.
func (l *layout) planSheet() {
	p := l.q.Plan
	if p == nil {
		return
	}
	s := l.sheet(SheetPlan, "The ground from above, to scale: what stands where, what is staked, and what is in the way.", sheet.TabYard, true)
	if l.drawn != nil {
		s.Picture = &sheet.Picture{Row: len(s.Rows) + 1, Col: 1, Data: l.drawn(), Ext: ".png", Alt: p.Words(), MaxWidth: planWide, MaxHeight: planHigh}
	}
	for range planRows {
		s.Rows = append(s.Rows, sheet.Row{Height: planRow})
	}
	s.Breaks = append(s.Breaks, len(s.Rows)+1)
	l.planFaults(s, p)
	l.planTents(s, p)
	l.estimate(s, "Measure on site before anything is unloaded: a plot is rarely as it was told. Have buried utilities marked before a stake is driven; a mark is where the line may be, not where it is.",
		"Doors are drawn evenly spread between the legs, guys one to a side. What fire law asks for between tents, and to buildings and vehicles, may be more than is drawn.",
		"Places are the job's, or where there was room. They stay as they are when sizes or sides are edited here: quote again.")
}

// planFaults lists what cannot stand so, with the numbers of the drawing.
func (l *layout) planFaults(s *sheet.Sheet, p *plot.Plan) {
	band(s, "What cannot stand so", 8)
	if len(p.Faults) == 0 {
		words := "Nothing overlaps, stands over an obstacle or reaches beyond the edge."
		if !p.Given {
			words = "The job gives no plot: nothing is known of edges and obstacles."
		}
		s.Rows = append(s.Rows, sheet.Row{Cells: []sheet.Cell{in(text(""), sheet.Style{}), in(text(words), sheet.Style{Role: sheet.Label})}})
		return
	}
	for i := range p.Faults {
		f := &p.Faults[i]
		s.Rows = append(s.Rows, sheet.Row{Cells: []sheet.Cell{
			in(value(i+1), sheet.Style{Role: sheet.Warn, Align: sheet.Centre}), in(text(f.Words()), sheet.Style{Role: sheet.Warn}),
			{Style: sheet.Style{Role: sheet.Warn}}, in(text("by "+p.AtLeast(f.Missing)), sheet.Style{Role: sheet.Warn})}})
		s.Merges = append(s.Merges, sheet.Range{R1: len(s.Rows), C1: 2, R2: len(s.Rows), C2: 3})
	}
}

// planTents lists where each tent stands.
func (l *layout) planTents(s *sheet.Sheet, p *plot.Plan) {
	band(s, "Where the tents stand", 8)
	right := sheet.Style{Role: sheet.Body, Align: sheet.Right}
	t := l.startTable(s, "plan", []column{
		{"number", "No.", 6, sheet.Style{Role: sheet.Body, Align: sheet.Centre}},
		{"tent", "Tent", 26, wrap()},
		{"size", "Size", 14, sheet.Style{Role: sheet.Body}},
		{"x", "Corner from the left", 13, right},
		{"y", "Corner from the front", 13, right},
		{"turn", "Turned", 8, right},
		{"by", "Placed", 17, sheet.Style{Role: sheet.Body}},
		{"nearest", "Nearest tent", 23, wrap()},
	})
	for i := range p.Tents {
		tent := &p.Tents[i]
		turned, by, nearest := "", "where there is room", "none"
		if tent.Turn != 0 {
			turned = strconv.Itoa(tent.Turn) + " deg"
		}
		if tent.ByHand {
			by = "by the job"
		}
		if tent.Nearest != "" {
			nearest = p.Text(tent.NearestBy) + " to " + tent.Nearest
		}
		t.add(value(tent.Number), text(tent.Label()), text(p.SizeOf(tent)), text(p.Text(tent.At.X)), text(p.Text(tent.At.Y)), text(turned), text(by), text(nearest))
	}
	t.end()
	t.widths()
	s.Rows = append(s.Rows, sheet.Row{Cells: []sheet.Cell{in(text("The corner is the front left one of the tent's plan. A turn is against the clock, seen from above, about that corner. Distances are from roof to roof."),
		sheet.Style{Role: sheet.Faint})}})
}

// planFormulas gives the formulas of both sides of a check that this sheet can
// make again; false for any other check.
func (l *layout) planFormulas(kind, rest string) (is, limit string, ok bool) { return "", "", false }
