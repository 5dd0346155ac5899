package workbook

import (
	"fmt"
	"strings"
	"time"

	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/price"
	"tentwright/workbook/sheet"
)

// Columns of the Quote sheet. Together they are as wide as the paper between
// its margins, so that nothing is printed smaller than it is set.
const (
	quoteNo     = 1
	quoteName   = 2
	quoteCount  = 3
	quoteUnit   = 4
	quoteChoice = 5 // Yes or No, of an extra
	quoteMark   = 6 // what is charged on the line, by letters
	quoteAmount = 7
	quoteCols   = 7
	quoteRight  = quoteUnit // where the right half of the head begins
)

// quoteWidths fit between the margins of A4 paper.
var quoteWidths = [quoteCols]float64{4, 33.5, 10, 8, 8, 4.5, 13}

// quotePage is the Quote sheet while it is laid out, for the office or for the
// customer. The customer's holds no name and no figure of another sheet.
type quotePage struct {
	l        *layout
	s        *sheet.Sheet
	customer bool
	show     string // line, section or total
	marks    *marks
	sums     []string      // cells with the sections' sums
	extras   sheet.Range   // rows of the optional extras; none if there are none
	headRow  int           // row with the heads of the columns
	lastLine int           // row of the last ordinary line
	below    []block       // texts too long to stand beside the totals
	groups   []sheet.Range // rows that are printed on one page
}

// quoteSheet lays out what the customer sees, with figures that follow from
// the office's other sheets.
func (l *layout) quoteSheet() { l.quotePage(false) }

// quotePage lays the Quote sheet out for one of its two readers.
func (l *layout) quotePage(customer bool) {
	c := l.q.Catalog
	p := &quotePage{l: l, customer: customer, show: l.q.Job.ShowPrices(c),
		s: &sheet.Sheet{Name: SheetQuote, Tab: sheet.TabOffice, Protected: true, HideGrid: true, Page: sheet.Page{
			Paper: c.Company.Paper, FitWide: true, FooterLeft: sheet.Short(c.Company.Name, mostInBand) + ", " + sheet.Short(l.reference(), mostInBand)}}}
	for _, w := range quoteWidths {
		p.s.Columns = append(p.s.Columns, sheet.Column{Width: w})
	}
	if c.Company.Paper != "a4" {
		p.s.Columns[quoteName-1].Width += 2 // letter paper is wider
	}
	l.book.Sheets = append(l.book.Sheets, p.s)
	p.marks = newMarks(l.q)
	p.letterhead()
	p.parties()
	p.lines()
	p.optional()
	p.totals()
	p.foot()
	p.paginate()
}

// numberLines gives every order line the number that it has on the quote:
// section by section what is ordered, then the extras.
func (l *layout) numberLines() {
	n := 0
	for _, extra := range []bool{false, true} {
		for _, section := range l.sections() {
			for _, line := range l.linesOf(section, extra) {
				n++
				l.keys[line.Key] = n
			}
		}
	}
}

// sections lists the sections of the order lines as they first appear.
func (l *layout) sections() []string {
	var names []string
	seen := map[string]bool{}
	for i := range l.q.Price.Lines {
		line := &l.q.Price.Lines[i]
		if line.Order != nil && !seen[line.Section] {
			seen[line.Section] = true
			names = append(names, line.Section)
		}
	}
	return names
}

// linesOf lists the order lines of a section: its extras, or the others.
func (l *layout) linesOf(section string, extra bool) []*price.Line {
	var lines []*price.Line
	for i := range l.q.Price.Lines {
		line := &l.q.Price.Lines[i]
		if line.Order != nil && line.Section == section && line.Order.Optional == extra {
			lines = append(lines, line)
		}
	}
	return lines
}

// put writes a row and gives its number.
func (p *quotePage) put(height float64, cells ...sheet.Cell) int {
	p.s.Rows = append(p.s.Rows, sheet.Row{Cells: cells, Height: height})
	return len(p.s.Rows)
}

// gap leaves white between two blocks.
func (p *quotePage) gap() { p.put(8) }

// merge joins cells of the last row.
func (p *quotePage) merge(c1, c2 int) {
	row := len(p.s.Rows)
	p.s.Merges = append(p.s.Merges, sheet.Range{R1: row, C1: c1, R2: row, C2: c2})
}

// wide writes one text over all columns.
func (p *quotePage) wide(s string, style sheet.Style) {
	p.put(0, fill(text(s), style, quoteCols)...)
	p.merge(1, quoteCols)
}

// fill is a cell followed by empty ones of its style.
func fill(first sheet.Cell, style sheet.Style, cols int) []sheet.Cell {
	cells := make([]sheet.Cell, cols)
	for i := range cells {
		cells[i].Style = style
	}
	cells[0].Value, cells[0].Formula = first.Value, first.Formula
	return cells
}

// paragraphs writes a text over all columns, a row for each paragraph. A line
// that begins with a blank goes on with the one before it.
func (p *quotePage) paragraphs(s string, style sheet.Style) {
	for _, words := range unwrapped(s) {
		p.wide(words, style)
	}
}

// unwrapped splits a text into its paragraphs.
func unwrapped(s string) []string {
	var list []string
	for line := range strings.Lines(s) {
		words := strings.TrimSpace(line)
		switch {
		case words == "":
		case len(list) > 0 && strings.TrimLeft(line, " \t") != line:
			list[len(list)-1] += " " + words
		default:
			list = append(list, words)
		}
	}
	return list
}

// group keeps the rows from first to the last one on one printed page.
func (p *quotePage) group(first int) {
	p.groups = append(p.groups, sheet.Range{R1: first, C1: 1, R2: len(p.s.Rows), C2: quoteCols})
}

// next is the row that is written next.
func (p *quotePage) next() int { return len(p.s.Rows) + 1 }

// letterhead writes who offers, and what this paper is.
func (p *quotePage) letterhead() {
	c := p.l.q.Catalog
	left := func(s string, style sheet.Style) {
		if s != "" {
			style.Wrap = true
			p.put(0, fill(text(s), style, quoteRight-1)...)
			p.merge(1, quoteRight-1)
		}
	}
	left(c.Company.Name, sheet.Style{Role: sheet.Title})
	left(c.Company.Motto, sheet.Style{Role: sheet.Subtitle})
	left(strings.Join(c.Company.Address, ", "), sheet.Style{Role: sheet.Plain})
	left(joined(" · ", c.Company.Phone, c.Company.Email, c.Company.Web), sheet.Style{Role: sheet.Plain})
	if kind := c.LogoType(); kind != "" {
		p.s.Picture = &sheet.Picture{Row: 1, Col: quoteRight, Data: c.Logo, Ext: kind,
			Alt: "Logo of " + c.Company.Name, MaxWidth: 260, MaxHeight: 76}
		// The logo is about as high as four lines.
		for len(p.s.Rows) < 4 {
			p.put(15)
		}
	}
	p.gap()
	p.notice()
	p.put(28, in(text(strings.Replace(p.l.reference(), " revision ", ", revision ", 1)), sheet.Style{Role: sheet.Title}))
}

// notice warns of demonstration prices.
func (p *quotePage) notice() {
	if p.l.q.Catalog.Demo {
		p.wide(DemoNotice, sheet.Style{Role: sheet.Notice, Align: sheet.Centre})
	}
}

// joined puts texts together, the empty ones left out.
func joined(between string, list ...string) string {
	var some []string
	for _, s := range list {
		if s != "" {
			some = append(some, s)
		}
	}
	return strings.Join(some, between)
}

// shown is a text of the quote, and the formula that gives it from the sheet
// Job; the customer's file has no such sheet and takes the text.
type shown struct{ words, formula string }

// fromJob is the text of a field of the sheet Job.
func fromJob(words, name string) shown { return shown{words, name + `&""`} }

// behind is a field with words before it, nothing where the field is empty.
func behind(before, words, name string) shown {
	if words != "" {
		words = before + words
	}
	return shown{words, "IF(LEN(" + name + ")>0," + quoted(before) + "&" + name + `,"")`}
}

// parties writes who buys and what for at the left, the days at the right.
func (p *quotePage) parties() {
	j := p.l.q.Job
	reach := shown{joined(" · ", j.Customer.Phone, j.Customer.Email),
		`job_customer_phone&IF(AND(LEN(job_customer_phone)>0,LEN(job_customer_email)>0)," · ","")&job_customer_email`}
	guests := ""
	if j.Event.Guests > 0 {
		guests = itoa(j.Event.Guests)
	}
	left := p.texts(fromJob(j.Customer.Name, "job_customer_name"), fromJob(j.Customer.Contact, "job_customer_contact"),
		fromJob(strings.Join(j.Customer.Address, ", "), "job_customer_address"), reach)
	left = append(left, p.texts(fromJob(j.Event.Name, "job_event_name"), fromJob(strings.Join(j.Event.Address, ", "), "job_event_address"),
		behind("Guests: ", guests, "job_guests"), behind("On site: ", j.Event.Contact, "job_event_contact"))...)
	head := fill(text("Customer and event"), sheet.Style{Role: sheet.Section}, quoteCols)
	head[quoteRight-1].Value = "Dates"
	p.put(18, head...)
	right := p.days()
	for i := range max(len(left), len(right)) {
		cells := make([]sheet.Cell, quoteCols)
		p.put(0, cells...)
		if i < len(left) {
			cells[0] = left[i]
			p.merge(1, quoteRight-1)
		}
		if i < len(right) {
			cells[quoteRight-1] = in(text(right[i].label), sheet.Style{Role: sheet.Label})
			day := value(right[i].day)
			if !p.customer {
				day.Formula = right[i].formula
			}
			cells[quoteMark-1] = in(day, sheet.Style{Role: sheet.Plain, Format: sheet.DateLong, Align: sheet.Left})
			p.merge(quoteRight, quoteMark-1)
			p.merge(quoteMark, quoteAmount)
		}
	}
	p.gap()
}

// texts are cells of the texts that are not empty, the first of them bold.
func (p *quotePage) texts(list ...shown) []sheet.Cell {
	var cells []sheet.Cell
	for _, x := range list {
		if x.words == "" {
			continue
		}
		cell := text(x.words)
		if !p.customer {
			cell.Formula = x.formula
		}
		cells = append(cells, in(cell, sheet.Style{Role: sheet.Plain, Wrap: true, Bold: len(cells) == 0}))
	}
	return cells
}

// pair is a label with its day, and the formula that gives it from the days on
// the sheet Job.
type pair struct {
	label   string
	day     unit.Date
	formula string
}

// days lists the days of the quote and of the event.
func (p *quotePage) days() []pair {
	d := p.l.q.Job.Dates
	list := []pair{{"Quoted", d.Quoted, "job_date_quoted"}, {"Valid until", p.l.q.Price.ValidUntil, "job_date_quoted+" + itoa(p.l.q.Catalog.Company.Quote.Valid().Days)}, {"Delivery", d.Deliver, "job_date_deliver"}}
	if d.From == d.To {
		list = append(list, pair{"Event", d.From, "job_date_from"})
	} else {
		list = append(list, pair{"Event from", d.From, "job_date_from"}, pair{"Event to", d.To, "job_date_to"})
	}
	return append(list, pair{"Taken down", d.Strike, "job_date_strike"}, pair{"Collection", d.Collect, "job_date_collect"})
}

// dateText is a day in words, as the dates in cells are shown.
func dateText(d unit.Date) string {
	return fmt.Sprintf("%s %d %s %d", d.Weekday().String()[:3], d.Day, time.Month(d.Month).String()[:3], d.Year)
}

// amountOf adds up the amounts of lines.
func amountOf(lines []*price.Line) money.Number {
	sum := money.Zero
	for _, line := range lines {
		sum = sum.Add(line.Amount)
	}
	return sum
}
