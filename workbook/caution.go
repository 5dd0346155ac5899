package workbook

import "tentwright/workbook/sheet"

// caution closes the sheet with what no figure here replaces.
func (l *layout) caution(s *sheet.Sheet) {
	anchors := "The number of anchors here is customary, not designed."
	if l.q.Anchor != nil {
		anchors = "The anchors here are planned by a published method from the shop's own tests; nobody has designed them for this site."
	}
	lines := []string{
		"Weights, hours and counts are computed from the shop's own data and can be wrong where the data are. Weigh loaded vehicles; the plate and the law govern.",
		"Anchorage, wind, occupancy, exits, heat and power are matters of local code and licensed practice. " + anchors,
		"Have buried utilities marked before a stake is driven. Take no tent up, and leave nobody under it, in wind beyond its limit.",
	}
	s.Rows = append(s.Rows, sheet.Row{})
	for _, line := range lines {
		s.Rows = append(s.Rows, sheet.Row{Cells: []sheet.Cell{in(text(""), sheet.Style{}), in(text(line), sheet.Style{Role: sheet.Faint, Wrap: true})}, Height: 26})
		s.Merges = append(s.Merges, sheet.Range{R1: len(s.Rows), C1: 2, R2: len(s.Rows), C2: 7})
	}
}

// EstimateWords stand on every sheet of what can hurt people.
const EstimateWords = "This is a planning estimate, not a design. Local codes and the authority having jurisdiction govern; " +
	"where these numbers are exceeded, or do not fit the site, a licensed professional decides."

// estimate closes a sheet with those words and what else must be said there.
func (l *layout) estimate(s *sheet.Sheet, more ...string) {
	s.Rows = append(s.Rows, sheet.Row{}, sheet.Row{Cells: []sheet.Cell{in(text(EstimateWords), sheet.Style{Role: sheet.Faint})}})
	for _, line := range more {
		s.Rows = append(s.Rows, sheet.Row{Cells: []sheet.Cell{in(text(line), sheet.Style{Role: sheet.Faint})}})
	}
}
