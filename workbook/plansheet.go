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
	planCols = 8
)

// drawing draws the plan while the sheets are laid out; the result is asked for
// when its own sheet is.
func drawing(p *plot.Plan) (picture func() ([]byte, error)) {
	if p == nil {
		return nil
	}
	type result struct {
		data []byte
		err  error
	}
	done := make(chan result, 1)
	go func() {
		data, err := draw.PNG(p)
		done <- result{data, err}
	}()
	return func() ([]byte, error) {
		r := <-done
		return r.data, r.err
	}
}

// planSheet shows the plot, drawn to scale, and where each tent stands in words.
func (l *layout) planSheet() {
	p := l.q.Plan
	if p == nil {
		return
	}
	s := l.sheet(SheetPlan, "The ground from above, to scale: what stands where, what is staked, and what is in the way.", sheet.TabYard, true)
	l.planPicture(s, p)
	l.planFaults(s, p)
	l.planTents(s, p)
	l.planDistances(s, p)
	from := len(s.Rows) + 1
	l.estimate(s, "Measure on site before anything is unloaded: a plot is rarely as it was told. Have buried utilities marked before a stake is driven; a mark is where the line may be, not where it is.",
		"Doors are drawn evenly spread between the legs, guys one to a side. Only obstacles that the job calls buildings or vehicles are measured; the code's exceptions are on the sheet Occupancy, and the authority decides.",
		"Places are the job's, or where there was room. They stay as they are when sizes or sides are edited here: quote again.")
	planWords(s, from)
}

// planWords breaks what is written across the sheet from a row on, so that it
// prints as wide as the tables.
func planWords(s *sheet.Sheet, from int) {
	const line = 135 // characters of the width of all columns
	for i := from - 1; i < len(s.Rows); i++ {
		row := &s.Rows[i]
		if len(row.Cells) != 1 {
			continue
		}
		words, _ := row.Cells[0].Value.(string)
		row.Cells[0].Style.Wrap = true
		row.Height = float64(13 * (1 + len(words)/line))
		s.Merges = append(s.Merges, sheet.Range{R1: i + 1, C1: 1, R2: i + 1, C2: planCols})
	}
}

// planPicture puts the drawing on a page of its own; one that cannot be drawn is
// left out with words, and the tables stay.
func (l *layout) planPicture(s *sheet.Sheet, p *plot.Plan) {
	if l.drawn != nil {
		data, err := l.drawn()
		if err != nil {
			s.Rows = append(s.Rows, sheet.Row{Cells: []sheet.Cell{in(text("The plan could not be drawn ("+err.Error()+"); the tables below say where everything stands."), sheet.Style{Role: sheet.Warn})}})
			return
		}
		s.Picture = &sheet.Picture{Row: len(s.Rows) + 1, Col: 1, Data: data, Ext: ".png", Alt: p.Words(), MaxWidth: planWide, MaxHeight: planHigh}
	}
	for range planRows {
		s.Rows = append(s.Rows, sheet.Row{Height: planRow})
	}
	s.Breaks = append(s.Breaks, len(s.Rows)+1)
}

// planFaults lists what cannot stand so, with the numbers of the drawing.
func (l *layout) planFaults(s *sheet.Sheet, p *plot.Plan) {
	band(s, "What cannot stand so", planCols)
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
	band(s, "Where the tents stand", planCols)
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
	s.Rows = append(s.Rows, sheet.Row{Cells: []sheet.Cell{in(text("The corner is the front left one of the tent's plan. A turn is against the clock, seen from above, about that corner. The nearest tent is measured from roof to roof."),
		sheet.Style{Role: sheet.Faint})}})
	planWords(s, len(s.Rows))
}

// distanceWords say what a distance is measured to.
var distanceWords = map[string]string{plot.ToEdge: "edge", plot.ToBuilding: "building", plot.ToVehicle: "vehicle", plot.ToTent: "tent"}

// planDistances lists what the tents should be clear of, and how far they are.
func (l *layout) planDistances(s *sheet.Sheet, p *plot.Plan) {
	if len(p.Distances) == 0 {
		return
	}
	band(s, "Clear distances, measured from stakes and guys", planCols)
	right, plain := sheet.Style{Role: sheet.Body, Align: sheet.Right}, sheet.Style{Role: sheet.Body}
	t := l.startTable(s, "distance", []column{
		{"number", "No.", 6, sheet.Style{Role: sheet.Body, Align: sheet.Centre}},
		{"from", "From", 26, wrap()},
		{"kind", "To what", 14, plain},
		{"is", "Is", 13, right},
		{"wanted", "Wanted", 13, right},
		{"enough", "Enough", 8, sheet.Style{Role: sheet.Body, Align: sheet.Centre}},
		{"to", "To", 17, wrap()},
		{"remark", "Remark", 23, wrap()},
	})
	for i := range p.Distances {
		d := &p.Distances[i]
		wanted, enough, remark := "", "", "the code does not say"
		if d.Wanted > 0 {
			wanted, enough, remark = p.Text(d.Wanted), "yes", ""
		}
		short := d.Short()
		if short {
			enough, remark = "no", "by "+p.AtLeast(d.Wanted-d.Is)+"; ask the authority"
		}
		row := t.add(value(i+1), text(d.From), text(distanceWords[d.Kind]), text(p.Text(d.Is)), text(wanted), text(enough), text(d.To), text(remark))
		for k := range s.Rows[row-1].Cells {
			if c := &s.Rows[row-1].Cells[k]; short && k > 2 {
				c.Style.Role = sheet.Warn
			}
		}
	}
	t.end()
	s.Rows = append(s.Rows, sheet.Row{Cells: []sheet.Cell{in(text("Listed are the nearest edge, building, vehicle and tent of each tent, and all that are nearer than wanted. Tents joined by a gutter count as one."), sheet.Style{Role: sheet.Faint})}})
	planWords(s, len(s.Rows))
}
