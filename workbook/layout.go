// Package workbook lays a quote out as the workbook that the office keeps, and
// cuts the customer's file from it. It decides which figure stands where,
// which cells people may change, and by which formula each figure follows from
// them; the file format is package xlsx.
//
//	Quote            for the customer
//	Price Build-up   every priced line, cost beside price
//	Rates            what the manager edits
//	Anchorage        what each leg must hold, and what holds it
//	Occupancy        people, exits, signs, extinguishers, permit
//	Heat and Power   heaters, lights, circuits, generator, cables
//	Dates            by when each thing must be done
//	Site Plan        the plot, drawn to scale
//	Schedule         who does what and when, a page for each day
//	Crew Sheet       one page that the crew lead takes along
//	Crew Hours       tasks, windows of work, overtime
//	Truck Manifest   vehicles, load order, out and back
//	Pick List        what is pulled, by the walking order of the yard
//	Return Check-in  what came back
//	Checks           comparisons that must hold
//	Price List       every item and tent size by id
//	Job Counts       what was counted on the tents
//	Part Counts      which count asked for which part
//	Job              names, places, days and notes of the job
//	Changes          what this revision changed; none on a first quote
//	Record           what the workbook was made from; not shown
//
// Formulas reach another sheet only by defined names and by a line's key, so
// that sorted, inserted or moved rows stay right. A count taken from a tent's
// graph and a choice that a search made are values; Checks compares them with
// the inputs as they now stand.
package workbook

import (
	"tentwright/catalog/unit"
	"tentwright/quote"
	"tentwright/workbook/sheet"
)

// Names of the sheets.
const (
	SheetQuote     = "Quote"
	SheetBuild     = "Price Build-up"
	SheetRates     = "Rates"
	SheetAnchor    = "Anchorage"
	SheetOccupancy = "Occupancy"
	SheetPower     = "Heat and Power"
	SheetDates     = "Dates"
	SheetPlan      = "Site Plan"
	SheetSchedule  = "Schedule"
	SheetCrewSheet = "Crew Sheet"
	SheetCrew      = "Crew Hours"
	SheetManifest  = "Truck Manifest"
	SheetPick      = "Pick List"
	SheetReturn    = "Return Check-in"
	SheetChecks    = "Checks"
	SheetPrices    = "Price List"
	SheetCounts    = "Job Counts"
	SheetParts     = "Part Counts"
	SheetJob       = "Job"
	SheetChanges   = "Changes"
	SheetRecord    = "Record"
)

// DemoNotice stands wherever demonstration prices could be taken for real.
const DemoNotice = "demonstration prices, not for customers"

// Layout lays the whole workbook of a first quote out.
func Layout(q *quote.Quote) *sheet.Book { return LayoutWith(q, Options{}) }

// Options are what a workbook has beyond its quote.
type Options struct {
	Changes  []Change // since the revision before
	NoRecord bool     // leave out what a requote needs
	NoPlan   bool     // leave out the picture of the site plan
	Kept     Kept     // typed by yard and office into the revision before
}

// LayoutWith lays the whole workbook out. Sheets are laid out in the order in
// which their figures follow from each other and then put in reading order.
func LayoutWith(q *quote.Quote, o Options) *sheet.Book {
	record := func() []string { return nil }
	if !o.NoRecord {
		record = packing(q)
	}
	l := newLayout(q)
	if !o.NoPlan {
		l.drawn = drawing(q.Plan)
	}
	l.kept = o.Kept
	l.carry()
	l.jobSheet()
	l.rates()
	l.priceList()
	l.counts()
	l.anchorage()
	l.occupancy()
	l.heatPower()
	l.dateSheet()
	l.planSheet()
	l.build()
	l.partCounts()
	l.pickList()
	l.manifest()
	l.crewHours()
	l.schedule()
	l.crewSheet()
	l.returns()
	l.quoteSheet()
	l.checks()
	if len(o.Changes) > 0 {
		l.changes(o.Changes)
	}
	l.printing()
	if texts := record(); texts != nil {
		l.recordSheet(texts)
	}
	l.order(SheetQuote, SheetChanges, SheetJob, SheetDates, SheetBuild, SheetRates, SheetPlan, SheetAnchor, SheetOccupancy, SheetPower, SheetSchedule, SheetCrewSheet, SheetCrew, SheetManifest, SheetPick, SheetReturn, SheetChecks, SheetPrices, SheetCounts, SheetParts, SheetRecord)
	return l.book
}

// printing gives every sheet that has not set it itself what to print, and its
// title again on each page, so that no page lies about without a name.
func (l *layout) printing() {
	for _, s := range l.book.Sheets {
		if s.PrintArea == nil {
			wide := 1
			for _, r := range s.Rows {
				wide = max(wide, len(r.Cells))
			}
			s.PrintArea = &sheet.Range{R1: 1, C1: 1, R2: len(s.Rows), C2: wide}
		}
		if s.TitleRows[0] == 0 && s.Name != SheetQuote {
			s.TitleRows = [2]int{1, 1}
		}
	}
}

// layout is a workbook while it is laid out.
type layout struct {
	q    *quote.Quote
	book *sheet.Book
	sys  unit.System
	keys map[string]int // key of an order line to its number on the quote

	buildTax int // column of the tax classes on the price build-up

	drawn   func() ([]byte, error) // the picture of the site plan; nil: none
	kept    Kept
	carried *carried // by what is kept; only where the whole workbook is laid out
}

// newLayout begins a workbook. Its date is the quote's own, so that the same
// quote gives the same bytes on any day.
func newLayout(q *quote.Quote) *layout {
	c := q.Catalog
	l := &layout{q: q, sys: c.Company.Units, keys: map[string]int{}, book: &sheet.Book{
		Title:    "Quote " + q.Job.Number,
		Subject:  q.Job.Event.Name,
		Company:  c.Company.Name,
		Created:  q.Job.Dates.Quoted.String() + "T00:00:00Z",
		Currency: sheet.Currency{Symbol: c.Currency().Symbol, Minor: c.Currency().Minor},
	}}
	l.numberLines()
	return l
}

// sheet begins a sheet with its title row and what it is for.
func (l *layout) sheet(name, what string, tab sheet.Tab, landscape bool) *sheet.Sheet {
	s := &sheet.Sheet{Name: name, Tab: tab, Protected: true, HideGrid: true, Page: l.page(landscape)}
	s.Rows = append(s.Rows,
		sheet.Row{Cells: []sheet.Cell{in(text(name), sheet.Style{Role: sheet.Title})}},
		sheet.Row{Cells: []sheet.Cell{in(text(l.reference()+". "+what), sheet.Style{Role: sheet.Subtitle})}})
	l.book.Sheets = append(l.book.Sheets, s)
	return s
}

// mostInBand is the most characters of one text in a header or footer, of 255
// for all of them with their codes.
const mostInBand = 90

// page is how every sheet of the office prints.
func (l *layout) page(landscape bool) sheet.Page {
	return sheet.Page{Paper: l.q.Catalog.Company.Paper, Landscape: landscape, FitWide: true, Margins: sheet.Narrow,
		HeaderLeft: sheet.Short(l.q.Catalog.Company.Name, mostInBand), HeaderRight: sheet.Short(l.reference(), mostInBand), FooterLeft: sheet.Short(l.q.Job.Event.Name, mostInBand)}
}

// reference names the quote and its revision.
func (l *layout) reference() string {
	text := "Quote " + l.q.Job.Number
	if l.q.Job.Revision > 0 {
		text += " revision " + itoa(l.q.Job.Revision)
	}
	return text
}

// name defines a name for a cell or range.
func (l *layout) name(name string, s *sheet.Sheet, r sheet.Range, comment string) {
	l.book.Names = append(l.book.Names, sheet.Name{Name: name, Refers: r.Abs(s.Name), Comment: comment})
}

// cellName names the cell in the last row of a sheet.
func (l *layout) cellName(name string, s *sheet.Sheet, col int) {
	row := len(s.Rows)
	l.name(name, s, sheet.Range{R1: row, C1: col, R2: row, C2: col}, "")
}

// band opens a group of rows with a title across the columns.
func band(s *sheet.Sheet, title string, cols int) {
	cells := make([]sheet.Cell, cols)
	for i := range cells {
		cells[i].Style = sheet.Style{Role: sheet.Section}
	}
	cells[0].Value = title
	s.Rows = append(s.Rows, sheet.Row{}, sheet.Row{Cells: cells})
}

// order puts the sheets in reading order.
func (l *layout) order(names ...string) {
	var sorted []*sheet.Sheet
	for _, name := range names {
		for _, s := range l.book.Sheets {
			if s.Name == name {
				sorted = append(sorted, s)
			}
		}
	}
	l.book.Sheets = sorted
}
