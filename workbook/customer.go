package workbook

import (
	"slices"
	"strings"

	"tentwright/catalog/money"
	"tentwright/quote"
	"tentwright/quote/price"
	"tentwright/workbook/sheet"
)

// Customer lays out the customer's file: the Quote sheet alone. The customer
// may choose the extras and sign; totals and taxes follow by formulas on the
// same sheet. Nothing of the office's other sheets is in it.
func Customer(q *quote.Quote) *sheet.Book {
	l := newLayout(q)
	// The file says of itself only whose quote it is.
	l.book.Subject = ""
	l.quotePage(true)
	return l.book
}

// customerTotals computes the totals from what stands on the sheet.
func (p *quotePage) customerTotals() {
	// Each part is written after those that it is a share of.
	parts := p.goodsAndWork()
	waiver := p.waiverPart()
	parts = append(parts, waiver...)
	minimum := p.minimumPart(parts)
	parts = append(parts, minimum...)
	r := p.l.q.Price
	due := []string{p.sum(sheet.Total, text("Subtotal"), sheet.Cell{}, formula(p.l.rounded(plus(parts)), r.Subtotal))}
	for i := range r.Taxes {
		due = append(due, p.taxRow(&r.Taxes[i], waiver, minimum))
	}
	total := p.sum(sheet.Grand, text("Total"), sheet.Cell{}, formula(p.l.rounded(plus(due)), r.Total))
	deposit := p.sum(sheet.Label, text(p.depositLabel()), sheet.Cell{},
		formula(p.l.rounded(total+"*"+p.l.q.Catalog.Company.Quote.Deposit.String()+"/100"), r.Deposit))
	p.sum(sheet.Label, text(p.balanceLabel()), sheet.Cell{}, formula(p.l.rounded(total+"-"+deposit), r.Balance))
	if !r.Received.IsZero() {
		received := p.sum(sheet.Label, text(receivedWords), sheet.Cell{}, value(r.Received))
		p.sum(sheet.Label, text(openWords), sheet.Cell{}, formula(p.l.rounded(total+"-"+received), r.Due))
	}
}

// goodsAndWork writes what is ordered, the extras, labour and delivery, and
// gives their cells. Where only totals are shown, all but the extras is one
// sum, so that no formula tells how it is made up.
func (p *quotePage) goodsAndWork() []string {
	l, rates := p.l, &p.l.q.Catalog.Rates
	labour, delivery, listed := l.q.Price.Sum(price.Labour), l.q.Price.Sum(price.Delivery), l.listed()
	if p.show == "total" {
		sum := money.Sum(listed, labour, delivery, l.q.Price.Sum(price.Loading))
		return append([]string{sum.String()}, p.extrasPart()...)
	}
	put := func(words, mark string, cell sheet.Cell) string {
		return p.sum(sheet.Label, text(words), text(mark), cell)
	}
	list := append([]string{put(listedWords, "", p.listedCell(listed))}, p.extrasPart()...)
	list = append(list,
		put(p.labourLabel(), p.marks.of(rates.LabourTax, price.Labour), value(labour)),
		put(deliveryWords, p.marks.of(rates.DeliveryTax, price.Delivery), value(delivery)))
	for i := range l.q.Price.Lines {
		if line := &l.q.Price.Lines[i]; line.Kind == price.Loading && !line.Amount.IsZero() {
			list = append(list, put(surchargeLabel(line), p.marks.of(line.Tax, line.Kind), value(line.Amount)))
		}
	}
	return list
}

// extrasPart adds the chosen extras up; none if none are offered.
func (p *quotePage) extrasPart() []string {
	lines := p.l.extraLines()
	if len(lines) == 0 {
		return nil
	}
	f := p.l.rounded("SUMIFS(" + p.extraColumn(quoteAmount) + "," + p.extraColumn(quoteChoice) + `,"Yes")`)
	return []string{p.sum(sheet.Label, text(extrasWords), sheet.Cell{}, formula(f, amountOf(lines)))}
}

// listedCell adds the sections up.
func (p *quotePage) listedCell(v money.Number) sheet.Cell {
	if len(p.sums) == 0 {
		return value(v)
	}
	return formula(p.l.rounded(strings.Join(p.sums, "+")), v)
}

// plus is the sum of cells and formulas.
func plus(list []string) string { return strings.Join(list, "+") }

// extraColumn is one column of the extras.
func (p *quotePage) extraColumn(col int) string {
	return sheet.AbsRef(p.extras.R1, col) + ":" + sheet.AbsRef(p.extras.R2, col)
}

// base is what a percentage falls on: the lines that are charged whatever the
// customer chooses, as a number, and the chosen extras by their marks.
func (p *quotePage) base(falls func(*price.Line) bool) string {
	fixed, codes := money.Zero, []string{}
	for i := range p.l.q.Price.Lines {
		line := &p.l.q.Price.Lines[i]
		if !falls(line) || line.Kind == price.Waiver || line.Kind == price.Minimum {
			continue
		}
		if line.Order == nil || !line.Order.Optional {
			fixed = fixed.Add(line.Amount)
		} else if code := p.marks.of(line.Tax, line.Kind); !slices.Contains(codes, code) {
			codes = append(codes, code)
		}
	}
	f := fixed.String()
	for _, code := range codes {
		f += "+SUMIFS(" + p.extraColumn(quoteAmount) + "," + p.extraColumn(quoteChoice) + `,"Yes",` + p.extraColumn(quoteMark) + "," + quoted(code) + ")"
	}
	return f
}

// waiverPart is the damage waiver on hire, none if the shop charges none.
func (p *quotePage) waiverPart() []string {
	line := p.l.q.Price.Find("X:waiver")
	if line == nil || line.Quantity.IsZero() {
		return nil
	}
	f := p.l.rounded("(" + p.base(func(x *price.Line) bool { return x.Kind == price.Hire }) + ")*" + line.Quantity.String() + "/100")
	return []string{p.follow(p.waiverLabel(line), line, f)}
}

// minimumPart tops the order up; none if no choice can bring it that low.
func (p *quotePage) minimumPart(before []string) []string {
	line := p.l.q.Price.Find("M:minimum")
	least := p.l.q.Catalog.Rates.MinOrder
	// What is left if every extra is refused, the waiver not counted.
	lowest := p.l.q.Price.Subtotal.Sub(amountOf(p.l.extraLines())).Sub(p.l.q.Price.Sum(price.Waiver))
	if line == nil || line.Amount.IsZero() && lowest.GreaterThanOrEqual(least) {
		return nil
	}
	f := p.l.rounded("MAX(0," + least.String() + "-(" + plus(before) + "))")
	return []string{p.follow(line.Name, line, f)}
}

// follow writes a charge that follows from others, or only gives its formula
// where the customer sees only totals.
func (p *quotePage) follow(words string, line *price.Line, f string) string {
	if p.show == "total" {
		return f
	}
	return p.sum(sheet.Label, text(words), text(p.marks.of(line.Tax, line.Kind)), formula(f, line.Amount))
}

// taxRow writes one tax on what it falls on, the charges that move included.
func (p *quotePage) taxRow(t *price.TaxLine, waiver, minimum []string) string {
	amount := formula("", t.Amount)
	if !p.l.q.Job.Customer.Exempt {
		rates := &p.l.q.Catalog.Rates
		on := p.base(func(x *price.Line) bool { return slices.Contains(t.Tax.Classes, x.Tax) })
		// Waiver and top-up move with the choices, so their cells are counted.
		if slices.Contains(t.Tax.Classes, rates.WaiverTax) && len(waiver) > 0 {
			on += "+" + plus(waiver)
		}
		if slices.Contains(t.Tax.Classes, rates.DeliveryTax) && len(minimum) > 0 {
			on += "+" + plus(minimum)
		}
		amount.Formula = p.l.rounded("(" + on + ")*" + t.Tax.Rate.String() + "/100")
	}
	return p.sum(sheet.Label, text(p.taxLabel(t)), sheet.Cell{}, amount)
}
