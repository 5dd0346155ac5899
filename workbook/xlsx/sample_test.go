package xlsx_test

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"testing"

	"github.com/shopspring/decimal"

	"tentwright/workbook/sheet"
)

// day is a date as its day number in a spreadsheet.
type day int

func (d day) Serial() int { return int(d) }

func st(r sheet.Role, f sheet.Format) sheet.Style { return sheet.Style{Role: r, Format: f} }

func cell(v any, r sheet.Role, f sheet.Format) sheet.Cell {
	return sheet.Cell{Value: v, Style: st(r, f)}
}

func row(cells ...sheet.Cell) sheet.Row { return sheet.Row{Cells: cells} }

// sample is a small book that uses every feature once: a price sheet, a pick
// list with a filter and a hidden list.
func sample(t testing.TB) *sheet.Book {
	return &sheet.Book{
		Title: "Quote Q-7", Subject: "Garden party", Company: "Fernhollow Tent Yard",
		Created: "2026-05-01T00:00:00Z", Currency: sheet.Currency{Symbol: "$", Minor: 2},
		Sheets: []*sheet.Sheet{prices(t), picks(), units(), lists()},
		Names: []sheet.Name{
			{Name: "tax_rate", Refers: sheet.Range{R1: 4, C1: 5, R2: 4, C2: 5}.Abs("Price Build-up"), Comment: "tax on hire"},
			{Name: "hire_total", Refers: sheet.Range{R1: 10, C1: 5, R2: 10, C2: 5}.Abs("Price Build-up")},
			{Name: "list_units", Refers: sheet.Range{R1: 1, C1: 1, R2: 3, C2: 1}.Abs("Lists")},
		},
	}
}

// line is one priced row: number of pieces, price of one, hire.
func line(r int, code, text string, count int, each string) sheet.Row {
	price := decimal.RequireFromString(each)
	hire := price.Mul(decimal.NewFromInt(int64(count))).Round(2)
	return row(
		cell(code, sheet.Key, sheet.Text),
		sheet.Cell{Value: text, Style: sheet.Style{Role: sheet.Body, Wrap: true}},
		cell(count, sheet.Input, sheet.Whole),
		cell(price, sheet.Calc, sheet.Money),
		sheet.Cell{Value: hire, Formula: "ROUND(" + sheet.Ref(r, 3) + "*" + sheet.Ref(r, 4) + ",2)", Style: st(sheet.Calc, sheet.Money)},
	)
}

func prices(t testing.TB) *sheet.Sheet {
	none := sheet.Cell{}
	return &sheet.Sheet{
		Name: "Price Build-up", Tab: sheet.TabOffice, Protected: true, HideGrid: true,
		Columns: []sheet.Column{{Width: 9}, {Width: 34}, {Width: 10}, {Width: 14}, {Width: 16}},
		Rows: []sheet.Row{
			{Height: 42, Cells: []sheet.Cell{none, cell("Price build-up", sheet.Title, sheet.General)}},
			row(none, cell("Garden party & dinner, Larkmere <north meadow>", sheet.Subtitle, sheet.General)),
			{Height: 24, Cells: []sheet.Cell{cell("Demonstration data: prices are invented", sheet.Notice, sheet.General), cell(nil, sheet.Notice, sheet.General), cell(nil, sheet.Notice, sheet.General), cell(nil, sheet.Notice, sheet.General), cell(nil, sheet.Notice, sheet.General)}},
			row(none, cell("Tax rate", sheet.Label, sheet.General), cell("on all lines", sheet.Faint, sheet.General), none, cell(0.075, sheet.Input, sheet.Percent)),
			{Height: 30, Cells: []sheet.Cell{cell("Code", sheet.Heading, sheet.General), cell("What", sheet.Heading, sheet.General), cell("Pieces", sheet.Heading, sheet.General), cell("Price of one", sheet.Heading, sheet.General), cell("Hire", sheet.Heading, sheet.General)}},
			row(cell("Tents", sheet.Section, sheet.General), cell(nil, sheet.Section, sheet.General), cell(nil, sheet.Section, sheet.General), cell(nil, sheet.Section, sheet.General), cell(nil, sheet.Section, sheet.General)),
			line(7, "FR-2040", "Frame tent 20 x 40 ft, white, with four window walls and a double door on the short side", 2, "612.35"),
			line(8, "007", "=1+1", 3, "0.105"),
			row(none, cell("Tax", sheet.Total, sheet.General), cell(nil, sheet.Total, sheet.General), cell(nil, sheet.Total, sheet.General),
				sheet.Cell{Value: 91.88, Formula: "ROUND(SUM(E7:E8)*tax_rate,2)", Style: st(sheet.Total, sheet.Money)}),
			{Height: 24, Cells: []sheet.Cell{none, cell("Total", sheet.Grand, sheet.General), cell(nil, sheet.Grand, sheet.General), cell(nil, sheet.Grand, sheet.General),
				{Value: 1316.9, Formula: "SUM(E7:E9)", Style: st(sheet.Grand, sheet.Money)}}},
			row(none, cell("Check", sheet.Label, sheet.General), none, none,
				sheet.Cell{Value: "", Formula: `IF(hire_total<0,"below zero","")`, Style: st(sheet.Calc, sheet.General)}),
			row(none, cell("Paid", sheet.Label, sheet.General), none, none,
				sheet.Cell{Value: false, Formula: "hire_total<=0", Style: st(sheet.Calc, sheet.General)}),
			row(none, cell("Says", sheet.Label, sheet.General), none, none,
				sheet.Cell{Value: `a "quoted" & <b>`, Formula: `"a ""quoted"" & <b>"`, Style: st(sheet.Calc, sheet.General)}),
			row(none, cell("Remarks", sheet.Label, sheet.General), cell("first line\r\nsecond line", sheet.InputText, sheet.Text)),
			row(none, cell("Due", sheet.Label, sheet.General), none, none, cell(day(46143), sheet.Input, sheet.DateLong)),
			row(none, cell("Go to the pick list", sheet.Label, sheet.General)),
		},
		Merges:     []sheet.Range{{R1: 3, C1: 1, R2: 3, C2: 5}, {R1: 14, C1: 3, R2: 14, C2: 5}},
		FreezeRows: 5, FreezeCols: 2,
		Validations: []sheet.Validation{
			{Range: sheet.Range{R1: 4, C1: 5, R2: 4, C2: 5}, Kind: sheet.Decimal, Min: "0", Max: "1", Title: "Tax rate", Prompt: "0% to 100%"},
			{Range: sheet.Range{R1: 7, C1: 3, R2: 8, C2: 3}, Kind: sheet.WholeNumber, Min: "0", Title: "Pieces", Prompt: "A whole number from 0", Error: "Type a whole number from 0 up", AllowBlank: true},
			{Range: sheet.Range{R1: 15, C1: 5, R2: 15, C2: 5}, Kind: sheet.Date, Min: "46023", Title: "Day", Prompt: "A day from 1 January 2026"},
			{Range: sheet.Range{R1: 14, C1: 3, R2: 14, C2: 5}, Kind: sheet.TextLen, Max: "200", Title: "Remarks", Prompt: "At most 200 characters"},
		},
		Highlights: []sheet.Highlight{{Range: sheet.Range{R1: 7, C1: 3, R2: 8, C2: 3}, Formula: "C7>2", Role: sheet.Warn}},
		Notes:      []sheet.Note{{Row: 4, Col: 5, Text: "Rate of the place of delivery.\nAsk the office before changing it."}, {Row: 7, Col: 3, Text: "Pieces"}},
		Links:      []sheet.Link{{Row: 16, Col: 2, Target: "'Pick list'!A1", Tip: "the yard's sheet"}, {Row: 10, Col: 2, Target: "hire_total"}},
		Picture:    &sheet.Picture{Row: 1, Col: 4, Data: square(t), Ext: ".png", Alt: "Fernhollow Tent Yard", MaxWidth: 120, MaxHeight: 40},
		Page:       sheet.Page{FitWide: true, HeaderLeft: "Fernhollow & Sons 2026", HeaderRight: "Quote Q-7", FooterLeft: "Office copy"},
		PrintArea:  &sheet.Range{R1: 1, C1: 1, R2: 16, C2: 5},
		TitleRows:  [2]int{5, 5},
		Breaks:     []int{11},
	}
}

func picks() *sheet.Sheet {
	s := &sheet.Sheet{
		Name: "Pick list", Tab: sheet.TabYard, Protected: true,
		Columns: []sheet.Column{{Width: 6}, {Width: 12}, {Width: 30}, {Width: 10}, {Width: 12}},
		Rows: []sheet.Row{row(
			cell("Done", sheet.Heading, sheet.General), cell("Bin", sheet.Heading, sheet.General), cell("Part", sheet.Heading, sheet.General),
			cell("Pieces", sheet.Heading, sheet.General), cell("Weight lb", sheet.Heading, sheet.General))},
		FreezeRows: 1,
		Filter:     &sheet.Range{R1: 1, C1: 1, R2: 61, C2: 5},
		TitleRows:  [2]int{1, 1},
		Page:       sheet.Page{Paper: "a4", Landscape: true, FitWide: true, Margins: sheet.Narrow},
		Validations: []sheet.Validation{
			{Range: sheet.Range{R1: 2, C1: 1, R2: 61, C2: 1}, Kind: sheet.List, Source: "☐,☑", Title: "Done", Prompt: "Tick when on the truck"},
			{Range: sheet.Range{R1: 2, C1: 2, R2: 61, C2: 2}, Kind: sheet.List, Source: "list_units", Title: "Bin", Prompt: "One of the list"},
		},
		Highlights: []sheet.Highlight{
			{Range: sheet.Range{R1: 2, C1: 1, R2: 61, C2: 5}, Formula: `$A2="☑"`, Role: sheet.Good},
			{Range: sheet.Range{R1: 2, C1: 4, R2: 61, C2: 4}, Formula: "AND($D2<1,LEN($C2)>0)", Role: sheet.Warn},
		},
	}
	for r := 2; r <= 61; r++ {
		s.Rows = append(s.Rows, row(cell("☐", sheet.Tick, sheet.General), cell("piece", sheet.Input, sheet.Text),
			cell("Rafter", sheet.Body, sheet.General), cell(r%7, sheet.Calc, sheet.Whole), cell(float64(r)*1.5, sheet.Body, sheet.Weight)))
	}
	return s
}

// units shows each format and role once.
func units() *sheet.Sheet {
	s := &sheet.Sheet{Name: "Looks", Tab: sheet.TabCrew, Columns: []sheet.Column{{Width: 6}, {Width: 18}, {Width: 26}}}
	for f := sheet.General; f <= sheet.Factor; f++ {
		s.Rows = append(s.Rows, row(cell(int(f), sheet.Key, sheet.Whole), cell(46143.3125, sheet.Body, f)))
	}
	for r := sheet.Plain; r <= sheet.Key; r++ {
		if int(r) == len(s.Rows) {
			s.Rows = append(s.Rows, row(sheet.Cell{}, sheet.Cell{}))
		}
		s.Rows[r].Cells = append(s.Rows[r].Cells, cell("role "+string(rune('a'+r)), r, sheet.General))
	}
	return s
}

func lists() *sheet.Sheet {
	return &sheet.Sheet{Name: "Lists", VeryHidden: true, Rows: []sheet.Row{
		row(cell("piece", sheet.Body, sheet.Text)), row(cell("bag", sheet.Body, sheet.Text)), row(cell("", sheet.Body, sheet.Text))}}
}

// square is a small picture in two colours.
func square(t testing.TB) []byte {
	img := image.NewRGBA(image.Rect(0, 0, 240, 120))
	for x := range 240 {
		for y := range 120 {
			if (x/30+y/30)%2 == 0 {
				img.Set(x, y, color.RGBA{0x1e, 0x4d, 0x3b, 0xff})
			}
		}
	}
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}
