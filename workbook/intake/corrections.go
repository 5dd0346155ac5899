package intake

import (
	"strings"

	"tentwright/catalog/diag"
	"tentwright/workbook/sheet"
)

// Corrections is a sheet that lists what must be mended, each line with a link
// to its cell, what that is for, what was found, what was expected and what to do. It is put
// before the other sheets of the file that the problems are of.
func Corrections(list diag.List) *sheet.Sheet {
	s := &sheet.Sheet{Name: SheetCorrections, Tab: sheet.TabOffice, HideGrid: true, FreezeRows: 3, TitleRows: [2]int{3, 3},
		Page: sheet.Page{Landscape: true, FitWide: true, Margins: sheet.Narrow},
		// Together they fit on the width of a page as they are.
		Columns: []sheet.Column{{Width: 14}, {Width: 24}, {Width: 34}, {Width: 23}, {Width: 25}}}
	add := func(role sheet.Role, words ...string) {
		var cells []sheet.Cell
		for _, w := range words {
			cells = append(cells, sheet.Cell{Value: w, Style: sheet.Style{Role: role, Wrap: role == sheet.Body}})
		}
		s.Rows = append(s.Rows, sheet.Row{Cells: cells})
	}
	add(sheet.Title, "Corrections")
	add(sheet.Subtitle, "Mend these cells, save, and quote again. A click on a cell's name goes there.")
	add(sheet.Heading, "Cell", "What", "Found", "Expected", "What to do")
	for _, p := range list {
		what, message := "", p.Message
		if p.Pos.Cell != "" {
			if label, rest, ok := strings.Cut(message, ": "); ok {
				what, message = label, rest
			}
		}
		found, expected := split(message)
		if p.Warning {
			found += " (a warning only)"
		}
		add(sheet.Body, where(p.Pos), what, found, expected, p.Advice)
		if p.Pos.Sheet != "" && p.Pos.Cell != "" {
			s.Links = append(s.Links, sheet.Link{Row: len(s.Rows), Col: 1, Target: sheet.Quote(p.Pos.Sheet) + "!" + p.Pos.Cell, Tip: "go to the cell"})
		}
	}
	return s
}

// where is a position without its file, which is the workbook itself.
func where(p diag.Pos) string {
	if p.Sheet != "" {
		p.File = ""
	}
	return p.String()
}

// split parts a message into what was found and what was expected; our messages
// say the latter behind their last semicolon.
func split(message string) (found, expected string) {
	at := strings.LastIndex(message, "; ")
	if at < 0 || !strings.Contains(message[at:], "expected") {
		return message, ""
	}
	expected = message[at+2:]
	for _, end := range []string{" was expected", " were expected"} {
		expected = strings.TrimSuffix(expected, end)
	}
	return message[:at], expected
}
