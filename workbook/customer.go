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

// charge is a part of the total as the customer's formulas know it: what does
// not change with the choices as a number, what does as a cell or a formula.
type charge struct {
	fixed  money.Number
	moving []string
}

// plus adds charges up.
func plus(list ...charge) charge {
	sum := charge{}
	for _, c := range list {
		sum.fixed = sum.fixed.Add(c.fixed)
		sum.moving = append(sum.moving, c.moving...)
	}
	return sum
}

// formula is the charge within a formula.
func (c charge) formula() string {
	if c.fixed.IsZero() && len(c.moving) > 0 {
		return strings.Join(c.moving, "+")
	}
	return strings.Join(append([]string{c.fixed.String()}, c.moving...), "+")
}

// customerTotals computes the totals from what stands on the sheet.
func (p *quotePage) customerTotals() {
	// Each part is written after those that it is a share of.
	goods := p.goodsAndWork()
	waiver := p.waiverPart()
	minimum := p.minimumPart(plus(goods, waiver))
	r := p.l.q.Price
	due := []string{p.sum(sheet.Total, text("Subtotal"), sheet.Cell{}, p.computed(plus(goods, waiver, minimum), r.Subtotal))}
	p.customerDiscounts()
	for i := range r.Taxes {
		due = append(due, p.taxRow(&r.Taxes[i], waiver, minimum))
	}
	total := p.sum(sheet.Grand, text("Total"), sheet.Cell{}, formula(p.l.rounded(strings.Join(due, "+")), r.Total))
	deposit := p.sum(sheet.Label, text(p.depositLabel()), sheet.Cell{},
		formula(p.l.rounded(total+"*"+p.l.q.Catalog.Company.Quote.Deposit.String()+"/100"), r.Deposit))
	p.sum(sheet.Label, text(p.balanceLabel()), sheet.Cell{}, formula(p.l.rounded(total+"-"+deposit), r.Balance))
	if !r.Received.IsZero() {
		received := p.sum(sheet.Label, text(receivedWords), sheet.Cell{}, value(r.Received))
		p.sum(sheet.Label, text(openWords), sheet.Cell{}, formula(p.l.rounded(total+"-"+received), r.Due))
	}
}

// computed is the cell of a charge: a plain value if no choice moves it.
func (p *quotePage) computed(c charge, v money.Number) sheet.Cell {
	if len(c.moving) == 0 {
		return value(v)
	}
	return formula(p.l.rounded(c.formula()), v)
}

// goodsAndWork writes what is ordered, the extras, labour and delivery, and
// gives their cells. Where only totals are shown, all but the extras is one
// sum, so that no formula tells how it is made up.
func (p *quotePage) goodsAndWork() charge {
	l, rates := p.l, &p.l.q.Catalog.Rates
	labour, delivery, listed := l.q.Price.Sum(price.Labour), l.q.Price.Sum(price.Delivery), l.listed()
	if p.show == "total" {
		return charge{money.Sum(listed, labour, delivery, l.q.Price.Sum(price.Loading)), p.extrasPart()}
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
	return charge{moving: list}
}

// extrasPart adds the chosen extras up; none if none are offered.
func (p *quotePage) extrasPart() []string {
	lines := p.printed(p.l.extraLines())
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

// customerDiscounts shows what the discounts come to, in small print; nothing
// where there are none. Those of an extra count once it is chosen.
func (p *quotePage) customerDiscounts() {
	lines := p.printed(p.l.extraLines())
	offs, any := make([]string, len(lines)), false
	for i, line := range lines {
		off := p.l.fullPrice(line, line.Quantity).Sub(line.Offer)
		offs[i], any = off.String(), any || !off.IsZero()
	}
	fixed := p.l.takenOff(func(line *price.Line) bool { return !line.Order.Optional })
	all := p.l.takenOff(func(*price.Line) bool { return true })
	switch {
	case any:
		choices := sheet.AbsRef(p.extras.R1, quoteChoice) + ":" + sheet.AbsRef(p.extras.R1+len(lines)-1, quoteChoice)
		f := p.l.rounded(fixed.String() + "+SUMPRODUCT((" + choices + `="Yes")*{` + strings.Join(offs, ";") + "})")
		p.sum(sheet.Faint, text(discountWords), sheet.Cell{}, formula(f, all))
	case !fixed.IsZero():
		p.sum(sheet.Faint, text(discountWords), sheet.Cell{}, value(fixed))
	}
}

// extraColumn is one column of the extras.
func (p *quotePage) extraColumn(col int) string {
	return sheet.AbsRef(p.extras.R1, col) + ":" + sheet.AbsRef(p.extras.R2, col)
}

// base is what a percentage falls on: the lines that are charged whatever the
// customer chooses, as a number, and the chosen extras by their marks.
func (p *quotePage) base(falls func(*price.Line) bool) charge {
	c := charge{}
	var codes []string
	for i := range p.l.q.Price.Lines {
		line := &p.l.q.Price.Lines[i]
		if !falls(line) || line.Kind == price.Waiver || line.Kind == price.Minimum {
			continue
		}
		if line.Order == nil || !line.Order.Optional {
			c.fixed = c.fixed.Add(line.Amount)
		} else if code := p.marks.of(line.Tax, line.Kind); !slices.Contains(codes, code) {
			codes = append(codes, code)
			c.moving = append(c.moving, "SUMIFS("+p.extraColumn(quoteAmount)+","+p.extraColumn(quoteChoice)+`,"Yes",`+p.extraColumn(quoteMark)+","+quoted(code)+")")
		}
	}
	return c
}

// share is a percentage of a charge. What is fixed goes into a fixed amount of
// whole coins, as far as that changes no rounding: the few coins of the base that
// are left stand in the formula, since half a coin more or less decides which way
// the choices round. So no formula tells what a percentage falls on; of a tax,
// anyone can reckon it back from the amount and the rate in any case.
func (p *quotePage) share(of charge, percent money.Number) charge {
	round := p.l.q.Price.Currency.Round
	if len(of.moving) == 0 {
		return charge{fixed: round(of.fixed.Mul(money.Percent(percent)))}
	}
	step := wholeStep(percent, p.l.q.Price.Currency.Minor)
	rest := of.fixed.Mod(step)
	moving := charge{rest, of.moving}
	return charge{of.fixed.Sub(rest).Mul(money.Percent(percent)), []string{p.l.rounded("(" + moving.formula() + ")*" + percent.String() + "/100")}}
}

// wholeStep is the smallest amount of which a percentage, and of each multiple
// of which, comes to whole coins of a currency of so many decimals.
func wholeStep(percent money.Number, minor int) money.Number {
	part := money.Percent(percent)
	step := money.One.Shift(max(0, -part.Exponent()))
	for _, factor := range []money.Number{money.Int(2), money.Int(5)} {
		for {
			less := money.DivRound(step, factor, 0)
			if !step.Mod(factor).IsZero() || !less.Mul(part).IsInteger() {
				break
			}
			step = less
		}
	}
	return step.Shift(int32(-minor))
}

// waiverPart is the damage waiver on hire, none if the shop charges none.
func (p *quotePage) waiverPart() charge {
	line := p.l.q.Price.Find("X:waiver")
	if line == nil || line.Quantity.IsZero() {
		return charge{}
	}
	hire := p.base(func(x *price.Line) bool { return x.Kind == price.Hire })
	if p.show == "total" {
		return p.share(hire, line.Quantity)
	}
	return p.follow(p.waiverLabel(line), line, p.l.rounded("("+hire.formula()+")*"+line.Quantity.String()+"/100"))
}

// minimumPart tops the order up; none if no choice can bring it that low.
func (p *quotePage) minimumPart(before charge) charge {
	line := p.l.q.Price.Find("M:minimum")
	least := p.l.q.Catalog.Rates.MinOrder
	// What is left if every extra is refused, the waiver not counted.
	lowest := p.l.q.Price.Subtotal.Sub(amountOf(p.l.extraLines())).Sub(p.l.q.Price.Sum(price.Waiver))
	if line == nil || line.Amount.IsZero() && lowest.GreaterThanOrEqual(least) {
		return charge{}
	}
	f := p.l.rounded("MAX(0," + least.String() + "-(" + before.formula() + "))")
	switch {
	case p.show != "total":
		return p.follow(line.Name, line, f)
	case len(before.moving) == 0:
		return charge{fixed: line.Amount}
	}
	return charge{moving: []string{f}}
}

// follow writes a charge that follows from others and gives its cell.
func (p *quotePage) follow(words string, line *price.Line, f string) charge {
	return charge{moving: []string{p.sum(sheet.Label, text(words), text(p.marks.of(line.Tax, line.Kind)), formula(f, line.Amount))}}
}

// taxRow writes one tax on what it falls on, the charges that move included.
func (p *quotePage) taxRow(t *price.TaxLine, waiver, minimum charge) string {
	rates := &p.l.q.Catalog.Rates
	on := p.base(func(x *price.Line) bool { return slices.Contains(t.Tax.Classes, x.Tax) })
	if slices.Contains(t.Tax.Classes, rates.WaiverTax) {
		on = plus(on, waiver)
	}
	if slices.Contains(t.Tax.Classes, rates.DeliveryTax) {
		on = plus(on, minimum)
	}
	amount := formula(p.l.rounded("("+on.formula()+")*"+t.Tax.Rate.String()+"/100"), t.Amount)
	switch {
	case p.l.q.Job.Customer.Exempt:
		amount = value(t.Amount)
	case p.show == "total":
		amount = p.computed(p.share(on, t.Tax.Rate), t.Amount)
	}
	return p.sum(sheet.Label, text(p.taxLabel(t)), sheet.Cell{}, amount)
}
