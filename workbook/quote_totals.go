package workbook

import (
	"strings"

	"tentwright/catalog/money"
	"tentwright/quote/price"
	"tentwright/workbook/sheet"
)

// totals writes what it comes to, down to the balance, all on one page. How to
// pay and the notes stand beside it where they are short enough.
func (p *quotePage) totals() {
	p.gap()
	first := p.next()
	heads := fill(sheet.Cell{}, sheet.Style{Role: sheet.Section}, quoteCols)
	heads[quoteCount-1].Value = "Totals"
	p.put(18, heads...)
	if p.customer {
		p.customerTotals()
	} else {
		p.officeTotals()
	}
	p.beside(first, block{"Payment", p.l.q.Catalog.Payment, ""}, block{"Notes", p.l.q.Job.Notes, "job_notes"})
	p.put(4)
	p.notice()
	if legend := p.marks.legend(); legend != "" {
		p.wide(legend, sheet.Style{Role: sheet.Faint, Wrap: true})
	}
	p.group(first)
}

// block is a text with its title, and the name of the cell that holds it, if
// the office changes it in the workbook.
type block struct{ title, words, name string }

// beside writes blocks at the left of the totals, from the row of the band on,
// one under the other. What needs more room than there is goes below.
func (p *quotePage) beside(row int, list ...block) {
	style := sheet.Style{Role: sheet.Plain, Wrap: true}
	for _, b := range list {
		paragraphs, need := unwrapped(b.words), 0.0
		for _, words := range paragraphs {
			need += textHigh(words, style, p.room(row, 1)+p.room(row, quoteName))
		}
		// One row more than it takes keeps the text off the next band.
		box := sheet.Range{R1: row + 1, C1: 1, R2: row + int(need/usualRow) + 1, C2: quoteName}
		switch {
		case len(paragraphs) == 0:
		case box.R2 > len(p.s.Rows):
			p.below = append(p.below, b)
		default:
			p.s.Rows[row-1].Cells[0] = in(text(b.title), sheet.Style{Role: sheet.Section})
			p.s.Rows[row-1].Cells[1].Style = sheet.Style{Role: sheet.Section}
			words := text(strings.Join(paragraphs, "\n"))
			if b.name != "" && !p.customer && words.Value == sheet.Clean(b.words) {
				words.Formula = b.name + `&""`
			}
			p.s.Rows[row].Cells[0] = in(words, style)
			p.s.Merges = append(p.s.Merges, box)
			row = box.R2 + 1
		}
	}
}

// sum writes one row of the totals and gives the cell of its amount.
func (p *quotePage) sum(role sheet.Role, label, mark, amount sheet.Cell) string {
	if role == sheet.Grand {
		return p.grand(label, amount)
	}
	style := sheet.Style{Role: role}
	cells := make([]sheet.Cell, quoteCols)
	for i := quoteCount - 1; i < quoteCols; i++ {
		cells[i].Style = style
	}
	style.Align, style.Wrap = sheet.Right, true
	cells[quoteCount-1] = in(label, style)
	cells[quoteMark-1] = in(mark, sheet.Style{Role: sheet.Label, Align: sheet.Centre})
	if role != sheet.Label {
		cells[quoteMark-1] = in(sheet.Cell{}, style)
	}
	style.Format, style.Wrap = sheet.Money, false
	cells[quoteAmount-1] = in(amount, style)
	p.put(0, cells...)
	p.merge(quoteCount, quoteChoice)
	return sheet.Ref(len(p.s.Rows), quoteAmount)
}

// grand is the row of a total in large figures, which take two columns.
func (p *quotePage) grand(label, amount sheet.Cell) string {
	style := sheet.Style{Role: sheet.Grand, Align: sheet.Right}
	cells := make([]sheet.Cell, quoteCols)
	for i := quoteCount - 1; i < quoteCols; i++ {
		cells[i].Style = style
	}
	cells[quoteCount-1] = in(label, style)
	style.Format = sheet.Money
	cells[quoteMark-1] = in(amount, style)
	p.put(22, cells...)
	p.merge(quoteCount, quoteChoice)
	p.merge(quoteMark, quoteAmount)
	return sheet.Ref(len(p.s.Rows), quoteMark)
}

// listed adds up the order lines that are not extras.
func (l *layout) listed() money.Number {
	sum := money.Zero
	for _, section := range l.sections() {
		sum = sum.Add(amountOf(l.linesOf(section, false)))
	}
	return sum
}

// Words of the totals, in both files.
const (
	listedWords    = "Items listed above"
	addedWords     = "Added items"
	extrasWords    = "Optional extras chosen"
	labourWords    = "Labour: installation and removal"
	labourIncluded = labourWords + ", included"
	deliveryWords  = "Delivery and collection"
	exemptWords    = ", exempt"
	discountWords  = "Discounts included"
	receivedWords  = "Received, with thanks"
	openWords      = "Still due"
)

// officeTotals shows the named figures of the office's other sheets.
func (p *quotePage) officeTotals() {
	l, r := p.l, p.l.q.Price
	count := 0
	for _, section := range l.sections() {
		count += len(l.linesOf(section, false))
	}
	p.part(part{quoted(listedWords), listedWords, "", p.sumOf(l.orderTables(), "1", itoa(count)), l.listed()}, true)
	p.part(part{quoted(addedWords), addedWords, "", "total_spare", money.Zero}, false)
	if extras := l.extraLines(); len(extras) > 0 {
		p.sum(sheet.Label, text(extrasWords), sheet.Cell{}, formula("total_extras", amountOf(extras)))
	}
	p.part(part{`IF(job_labour_charged="Yes",` + quoted(labourWords) + "," + quoted(labourIncluded) + ")", p.labourLabel(),
		p.marks.of(l.q.Catalog.Rates.LabourTax, price.Labour), "total_labour", r.Sum(price.Labour)}, true)
	p.part(part{quoted(deliveryWords), deliveryWords,
		p.marks.of(l.q.Catalog.Rates.DeliveryTax, price.Delivery), "total_delivery", r.Sum(price.Delivery)}, true)
	// In the order in which each is a share of those before it.
	for i := range r.Lines {
		p.officeCharge(&r.Lines[i])
	}
	p.sum(sheet.Total, text("Subtotal"), sheet.Cell{}, formula("total_subtotal", r.Subtotal))
	p.officeDiscounts()
	for i := range r.Taxes {
		t := &r.Taxes[i]
		id := "tax_" + ident(t.Tax.ID)
		words := quoted(sheet.Short(t.Tax.Name, mostInLabel)+", ") + "&" + id + `_rate&" %"&IF(job_exempt="Yes",` + quoted(exemptWords) + `,"")`
		p.sum(sheet.Label, formula(words, p.taxLabel(t)), sheet.Cell{}, formula(id+"_amount", t.Amount))
	}
	p.sum(sheet.Grand, text("Total"), sheet.Cell{}, formula("total_due", r.Total))
	p.sum(sheet.Label, formula(`"Deposit, "&rate_deposit&" % with the order"`, p.depositLabel()), sheet.Cell{}, formula("total_deposit", r.Deposit))
	p.sum(sheet.Label, text(p.balanceLabel()), sheet.Cell{}, formula("total_balance", r.Balance))
	p.officePaid(receivedWords, "total_received", r.Received)
	p.officePaid(openWords, "total_open", r.Due)
}

// officeDiscounts shows what all discounts on the order lines come to, in small
// print, since it is no part of the sum.
func (p *quotePage) officeDiscounts() {
	off := p.l.takenOff(func(*price.Line) bool { return true })
	tables := p.l.orderTables()
	full := sumOver(tables, "SUMPRODUCT("+p.l.rounded("@_ordered*@_price*@_factor")+")")
	f := p.l.rounded(full + "-(" + sumOver(tables, "SUM(@_amount)") + ")")
	hidden, show := f+"=0", !off.IsZero()
	p.sum(sheet.Faint, unless(hidden, quoted(discountWords), discountWords, show), sheet.Cell{}, unless(hidden, f, off, show))
}

// takenOff is what the order lines that count would come to without any
// discount, less what is charged.
func (l *layout) takenOff(counts func(*price.Line) bool) money.Number {
	sum := money.Zero
	for i := range l.q.Price.Lines {
		if line := &l.q.Price.Lines[i]; line.Order != nil && counts(line) {
			sum = sum.Add(l.fullPrice(line, line.Ordered)).Sub(line.Amount)
		}
	}
	return sum
}

// fullPrice is what so many of a line cost before any discount.
func (l *layout) fullPrice(line *price.Line, quantity money.Number) money.Number {
	return l.q.Price.Currency.Round(quantity.Mul(line.Base).Mul(line.Factor))
}

// officeCharge shows a charge on the whole by its name.
func (p *quotePage) officeCharge(line *price.Line) {
	shows := surchargeLabel(line)
	words := quoted(shows)
	switch line.Kind {
	case price.Waiver:
		words, shows = quoted(line.Name+", ")+`&rate_waiver&" % of hire"`, p.waiverLabel(line)
	case price.Loading, price.Minimum:
	default:
		return
	}
	f := find("charge_amount", "charge_key", quoted(line.Key))
	p.part(part{words, shows, p.marks.of(line.Tax, line.Kind), f, line.Amount}, false)
}

// officePaid shows a figure that matters only once something is paid.
func (p *quotePage) officePaid(words, name string, v money.Number) {
	paid := !p.l.q.Price.Received.IsZero()
	p.sum(sheet.Label, unless("total_received=0", quoted(words), words, paid), sheet.Cell{}, unless("total_received=0", name, v, paid))
}

// part is a row that the subtotal is made of.
type part struct {
	words string // formula of its label
	shows string // what that gives on this job
	mark  string
	f     string // formula of its amount
	v     money.Number
}

// part writes a part of the subtotal, but not where the customer sees only
// totals; and of those that may be missing, not where it is zero.
func (p *quotePage) part(x part, always bool) {
	hidden, show := `job_show="total"`, p.show != "total"
	if !always {
		hidden, show = "OR("+hidden+","+x.f+"=0)", show && !x.v.IsZero()
	}
	mark := sheet.Cell{}
	if x.mark != "" {
		mark = unless(hidden, quoted(x.mark), x.mark, show)
	}
	p.sum(sheet.Label, unless(hidden, x.words, x.shows, show), mark, unless(hidden, x.f, x.v, show))
}

// unless is a formula that gives the empty text where a condition holds.
func unless(hidden, f string, v any, show bool) sheet.Cell {
	if !show {
		v = ""
	}
	return formula("IF("+hidden+`,"",`+f+")", v)
}

// labourLabel is what labour is called on this job.
func (p *quotePage) labourLabel() string {
	if price.Included(p.l.q.Job) {
		return labourIncluded
	}
	return labourWords
}

// mostInLabel is the most characters of a name that the shop gives a tax or a
// surcharge: two lines of a label, well within what a formula may hold.
const mostInLabel = 100

// taxLabel is a tax with its rate.
func (p *quotePage) taxLabel(t *price.TaxLine) string {
	label := sheet.Short(t.Tax.Name, mostInLabel) + ", " + t.Tax.Rate.String() + " %"
	if p.l.q.Job.Customer.Exempt {
		label += exemptWords
	}
	return label
}

// surchargeLabel names a charge on the whole.
func surchargeLabel(line *price.Line) string {
	if line.Kind == price.Loading {
		return "Surcharge: " + sheet.Short(line.Name, mostInLabel)
	}
	return line.Name
}

// waiverLabel is the damage waiver with its percentage.
func (p *quotePage) waiverLabel(line *price.Line) string {
	return line.Name + ", " + line.Quantity.String() + " % of hire"
}

// depositLabel is the deposit with its percentage.
func (p *quotePage) depositLabel() string {
	return "Deposit, " + p.l.q.Catalog.Company.Quote.Deposit.String() + " % with the order"
}

// balanceLabel says by when the balance is due: with the order, if that day
// has passed already.
func (p *quotePage) balanceLabel() string {
	by := p.l.q.Price.BalanceBy
	if by.Before(p.l.q.Job.Dates.Quoted) {
		return "Balance, due with the order"
	}
	return "Balance, due by " + dateText(by)
}
