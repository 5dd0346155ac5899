package intake

import (
	"strings"

	"tentwright/catalog/diag"
	"tentwright/workbook/sheet"
)

// Corrections is a sheet that lists what must be mended, each line with a link
// to its cell, what was found, what was expected and what to do. It is put
// before the other sheets of the file that the problems are of.
func Corrections(list diag.List) *sheet.Sheet {
	s := &sheet.Sheet{Name: SheetCorrections, Tab: sheet.TabOffice, HideGrid: true, FreezeRows: 3, TitleRows: [2]int{3, 3},
		Page:    sheet.Page{Landscape: true, FitWide: true, Margins: sheet.Narrow},
		Columns: []sheet.Column{{Width: 18}, {Width: 60}, {Width: 40}, {Width: 40}}}
	add := func(role sheet.Role, words ...string) {
		var cells []sheet.Cell
		for _, w := range words {
			cells = append(cells, sheet.Cell{Value: w, Style: sheet.Style{Role: role, Wrap: role == sheet.Body}})
		}
		s.Rows = append(s.Rows, sheet.Row{Cells: cells})
	}
	add(sheet.Title, "Corrections")
	add(sheet.Subtitle, "Mend these cells, save, and quote again. A click on a cell's name goes there.")
	add(sheet.Heading, "Cell", "Found", "Expected", "What to do")
	for _, p := range list {
		found, expected := split(p.Message)
		add(sheet.Body, where(p.Pos), found, expected, p.Advice)
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
