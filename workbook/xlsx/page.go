package xlsx

import (
	"fmt"
	"strings"

	"github.com/xuri/excelize/v2"

	"tentwright/workbook/sheet"
)

// papers are the file's numbers for paper sizes.
var papers = map[string]int{"": 1, "letter": 1, "a4": 9}

// margins are left and right, top and bottom, in inches.
var margins = map[sheet.Margins][2]float64{sheet.Normal: {0.7, 0.75}, sheet.Narrow: {0.25, 0.6}}

// filter sets the filter arrows. It comes before all else, because setting it
// forgets the sheet's other properties.
func (x *writer) filter(s *sheet.Sheet) error {
	if s.Filter == nil {
		return nil
	}
	return x.file.AutoFilter(s.Name, s.Filter.String(), nil)
}

// view sets the tab, the grid and the rows and columns that stay in sight.
func (x *writer) view(s *sheet.Sheet) error {
	props := excelize.SheetPropsOptions{FitToPage: &s.Page.FitWide}
	if colour := tabColours[s.Tab]; colour != "" {
		props.TabColorRGB = &colour
	}
	if err := x.file.SetSheetProps(s.Name, &props); err != nil {
		return err
	}
	grid := !s.HideGrid
	if err := x.file.SetSheetView(s.Name, 0, &excelize.ViewOptions{ShowGridLines: &grid}); err != nil {
		return err
	}
	if s.FreezeRows == 0 && s.FreezeCols == 0 {
		return nil
	}
	// The active part is the one that scrolls.
	pane := "bottomRight"
	if s.FreezeRows == 0 {
		pane = "topRight"
	} else if s.FreezeCols == 0 {
		pane = "bottomLeft"
	}
	at := sheet.Ref(s.FreezeRows+1, s.FreezeCols+1)
	return x.file.SetPanes(s.Name, &excelize.Panes{
		Freeze: true, XSplit: s.FreezeCols, YSplit: s.FreezeRows, TopLeftCell: at, ActivePane: pane,
		Selection: []excelize.Selection{{SQRef: at, ActiveCell: at, Pane: pane}},
	})
}

// page sets how the sheet prints.
func (x *writer) page(s *sheet.Sheet) error {
	p := s.Page
	paper, orientation, wide := papers[strings.ToLower(p.Paper)], "portrait", 1
	if p.Landscape {
		orientation = "landscape"
	}
	layout := excelize.PageLayoutOptions{Size: &paper, Orientation: &orientation}
	if p.Scale > 0 && !p.FitWide {
		scale := uint(p.Scale)
		layout.AdjustTo = &scale
	}
	if p.FitWide {
		layout.FitToWidth, layout.FitToHeight = &wide, &p.FitTall
	}
	if err := x.file.SetPageLayout(s.Name, &layout); err != nil {
		return err
	}
	centred := p.Scale > 0 // smaller print leaves both edges alike
	side, top, edge := margins[p.Margins][0], margins[p.Margins][1], 0.3
	if err := x.file.SetPageMargins(s.Name, &excelize.PageLayoutMarginsOptions{
		Left: &side, Right: &side, Top: &top, Bottom: &top, Header: &edge, Footer: &edge, Horizontally: &centred,
	}); err != nil {
		return err
	}
	return x.file.SetHeaderFooter(s.Name, &excelize.HeaderFooterOptions{
		OddHeader: band(p.HeaderLeft, escapeBand(p.HeaderRight)), OddFooter: band(p.FooterLeft, "Page &P of &N"),
	})
}

// band is the code of a header or footer: words at the left, a code at the
// right, both in small print. The font stands between the size and the words,
// so that words starting with a digit do not make the size larger.
func band(left, right string) string {
	const small = `&8&"Arial,Regular"`
	var b strings.Builder
	if left = escapeBand(left); left != "" {
		b.WriteString("&L" + small + left)
	}
	if right != "" {
		b.WriteString("&R" + small + right)
	}
	return b.String()
}

// escapeBand keeps the words of a header from being read as codes.
func escapeBand(s string) string { return strings.ReplaceAll(sheet.Clean(s), "&", "&&") }

// protect locks the sheet without a password. Looks, rows and order stay free.
func (x *writer) protect(s *sheet.Sheet) error {
	if !s.Protected {
		return nil
	}
	return x.file.ProtectSheet(s.Name, &excelize.SheetProtectionOptions{
		SelectLockedCells: true, SelectUnlockedCells: true,
		FormatCells: true, FormatColumns: true, FormatRows: true,
		InsertRows: true, DeleteRows: true, Sort: true, AutoFilter: true,
	})
}

// breaks starts new printed pages. A break set in column A parts rows only,
// not columns.
func (x *writer) breaks(s *sheet.Sheet) error {
	for _, row := range s.Breaks {
		if err := x.file.InsertPageBreak(s.Name, sheet.Ref(row, 1)); err != nil {
			return fmt.Errorf("page break at row %d: %w", row, err)
		}
	}
	return nil
}
