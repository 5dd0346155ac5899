package intake

import (
	"strconv"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/workbook/sheet"
)

// Columns of the sheet Intake. All sections stand in the same grid, so that no
// column is wider than the page for the sake of one.
const (
	colNo    = 1 + iota // number of a row
	colLabel            // words beside a cell, name of an item or tent
	colValue            // most inputs
	colD
	colE
	colF
	colG
	colH
	colI
	colJ
	colK
	colKey   // ids, not shown
	gridCols = colK
)

// widths of those columns.
var widths = []float64{4, 34, 24, 11, 10, 11, 10, 24, 11, 10, 8, 10}

// form is a workbook being laid out.
type form struct {
	c     *catalog.Catalog
	book  *sheet.Book
	s     *sheet.Sheet // Intake
	lists *sheet.Sheet
	named map[string]bool // drop-downs that stand on Lists already
}

// Form lays out a blank form for a shop. The date is that of the file itself;
// the same shop and date give the same form.
func Form(c *catalog.Catalog, made unit.Date) *sheet.Book {
	b := &sheet.Book{Title: "Intake", Subject: "Job to be quoted", Company: c.Company.Name, Created: made.String() + "T00:00:00Z",
		Currency: sheet.Currency{Symbol: c.Currency().Symbol, Minor: c.Currency().Minor}}
	f := &form{c: c, book: b, named: map[string]bool{}}
	f.lists = &sheet.Sheet{Name: SheetLists, Protected: true, Hidden: true, Page: f.page(true)}
	f.s = &sheet.Sheet{Name: SheetIntake, Tab: sheet.TabOffice, Protected: true, HideGrid: true, Page: f.page(true)}
	for i, w := range widths {
		f.s.Columns = append(f.s.Columns, sheet.Column{Width: w, Hidden: i+1 >= colKey})
	}
	f.head()
	for _, sec := range sections(c.Company.Units) {
		if sec.path == "wind" {
			f.newPage() // all of the place on one
		}
		f.section(&sec)
		switch sec.path {
		case "dates":
			f.site()
		case "delivery":
			f.loadings()
			f.windows()
			f.hours()
		case "plot":
			f.obstacles()
		}
	}
	f.tents()
	f.places()
	f.sides()
	f.items()
	f.payments()
	f.s.PrintArea = &sheet.Range{R1: 1, C1: 1, R2: len(f.s.Rows), C2: gridCols}
	visit := f.visit()
	b.Sheets = []*sheet.Sheet{f.s, visit, f.lists}
	return b
}

// page is how every sheet prints.
func (f *form) page(landscape bool) sheet.Page {
	return sheet.Page{Paper: f.c.Company.Paper, Landscape: landscape, FitWide: true, Margins: sheet.Narrow,
		HeaderLeft: sheet.Short(f.c.Company.Name, 90), HeaderRight: "Intake of a job"}
}

// head is the title, what to do, and the mark by which the form is known.
func (f *form) head() {
	f.row(cell(1, "Intake of a job", sheet.Style{Role: sheet.Title}))
	f.row(cell(1, "Fill in the cream cells and save. The program reads them and makes the quote; what it cannot read it names by cell.", sheet.Style{Role: sheet.Subtitle}),
		cell(colKey, formMark+strconv.Itoa(Version), key()))
	f.nameCell(formName, colKey)
	f.s.FreezeRows = 1
	f.s.TitleRows = [2]int{1, 1}
}

// placed is a cell with its column.
type placed struct {
	col int
	sheet.Cell
}

// cell puts a value into a column.
func cell(col int, value any, style sheet.Style) placed {
	return placed{col, sheet.Cell{Value: value, Style: style}}
}

// input is an empty cell that people fill in.
func input(col int, format sheet.Format) placed {
	style := sheet.Style{Role: sheet.Input, Format: format}
	if format == sheet.Text {
		style.Role = sheet.InputText
	} else if format == sheet.DateISO {
		style.Align = sheet.Left
	}
	return cell(col, nil, style)
}

// pick is an empty cell with a drop-down.
func pick(col int) placed { return input(col, sheet.Text) }

// row writes the next row of the sheet Intake and gives its number.
func (f *form) row(cells ...placed) int {
	var r sheet.Row
	for _, p := range cells {
		for len(r.Cells) < p.col {
			r.Cells = append(r.Cells, sheet.Cell{})
		}
		r.Cells[p.col-1] = p.Cell
	}
	f.s.Rows = append(f.s.Rows, r)
	return len(f.s.Rows)
}

// newPage begins a printed page with the band that comes next.
func (f *form) newPage() { f.s.Breaks = append(f.s.Breaks, len(f.s.Rows)+2) }

// band opens a section with a title across the grid.
func (f *form) band(title, help string) {
	f.row()
	cells := make([]placed, gridCols)
	for i := range cells {
		cells[i] = cell(i+1, nil, sheet.Style{Role: sheet.Section})
	}
	cells[0].Value = title
	f.row(cells...)
	if help != "" {
		f.row(cell(colLabel, help, faint()))
	}
}

// heads writes column headings from the column of the numbers on.
func (f *form) heads(from int, names ...string) {
	var cells []placed
	for i, n := range names {
		cells = append(cells, cell(from+i, n, sheet.Style{Role: sheet.Heading}))
	}
	f.row(cells...)
}

// headsMark is the key of a row of heads within a table.
const headsMark = "(column heads)"

// pageLines is how many lines of a table go on a printed page. It is on the
// safe side, for programs break lines of text differently.
const pageLines = 36

// pages keeps a table in pages of its own, each with the heads of its columns:
// a sheet can repeat but one set of heads by itself.
type pages struct {
	f     *form
	heads func()
	left  int // lines
}

// room begins a new page unless so many lines are left.
func (p *pages) room(lines int) {
	if p.left < lines {
		p.f.s.Breaks = append(p.f.s.Breaks, len(p.f.s.Rows)+1)
		p.heads()
		cells := &p.f.s.Rows[len(p.f.s.Rows)-1].Cells
		for len(*cells) < colKey {
			*cells = append(*cells, sheet.Cell{})
		}
		(*cells)[colKey-1] = cell(colKey, headsMark, key()).Cell
		p.left = pageLines
	}
	p.left -= lines
}

// name defines a name for a block of the sheet Intake.
func (f *form) name(name string, r sheet.Range) {
	f.book.Names = append(f.book.Names, sheet.Name{Name: name, Refers: r.Abs(f.s.Name)})
}

// nameCell names a cell of the last row.
func (f *form) nameCell(name string, col int) {
	f.name(name, sheet.Range{R1: len(f.s.Rows), C1: col, R2: len(f.s.Rows), C2: col})
}

// nameColumns names the columns of a table whose rows began at first. One row
// more belongs to them, so that rows added at the end are still found.
func (f *form) nameColumns(table string, first int, cols map[string]int) {
	last := len(f.s.Rows) + 1
	f.row()
	f.s.Rows[last-1].Height = 4
	for _, id := range sorted(cols) {
		f.name("intake_"+table+"_"+id, sheet.Range{R1: first, C1: cols[id], R2: last, C2: cols[id]})
	}
}

// merge joins cells of the last row and carries the first one's look across.
func (f *form) merge(from, to int) {
	n := len(f.s.Rows)
	r := &f.s.Rows[n-1]
	for len(r.Cells) < to {
		r.Cells = append(r.Cells, sheet.Cell{})
	}
	for col := from + 1; col <= to; col++ {
		r.Cells[col-1] = sheet.Cell{Style: r.Cells[from-1].Style}
	}
	f.s.Merges = append(f.s.Merges, sheet.Range{R1: n, C1: from, R2: n, C2: to})
}

// allow limits a cell of the last row and says what goes there.
func (f *form) allow(col int, v sheet.Validation, prompt string) {
	n := len(f.s.Rows)
	v.Range = sheet.Range{R1: n, C1: col, R2: n, C2: col}
	v.Title, v.Prompt, v.AllowBlank = "What goes here", sheet.Short(prompt, 200), true
	v.Error = "This does not fit: " + v.Prompt
	f.s.Validations = append(f.s.Validations, v)
}

// allowFrom limits a drop-down; where the shop has nothing to choose from, any
// words may be typed and are held against the shop later.
func (f *form) allowFrom(col int, list string, entries choices, prompt string) {
	if len(entries) == 0 {
		f.allow(col, words(250), prompt)
		return
	}
	f.allow(col, sheet.Validation{Kind: sheet.List, Source: f.list(list, entries.texts())}, prompt)
}

// Looks and limits that several sections share.

func faint() sheet.Style { return sheet.Style{Role: sheet.Faint} }

// beside is the look of help at the right of a cell.
func beside() sheet.Style { return sheet.Style{Role: sheet.Faint, Indent: 1} }

func label() sheet.Style { return sheet.Style{Role: sheet.Label} }

// counted is the look of the number of a row, clear of the words beside it.
func counted() sheet.Style { return sheet.Style{Role: sheet.Body, Align: sheet.Centre} }

func wrapped() sheet.Style { return sheet.Style{Role: sheet.Body, Wrap: true} }

func key() sheet.Style { return sheet.Style{Role: sheet.Key} }

func words(most int) sheet.Validation {
	return sheet.Validation{Kind: sheet.TextLen, Min: "0", Max: strconv.Itoa(most)}
}

func wholes(least, most int) sheet.Validation {
	return sheet.Validation{Kind: sheet.WholeNumber, Min: strconv.Itoa(least), Max: strconv.Itoa(most)}
}

func decimals(most int) sheet.Validation {
	return sheet.Validation{Kind: sheet.Decimal, Min: "0", Max: strconv.Itoa(most)}
}

func yesOrNo() sheet.Validation { return sheet.Validation{Kind: sheet.List, Source: "Yes,No"} }
