package price

import (
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/money"
)

// taxes adds each tax that is due at the place of the event, rounded once on
// the sum of the lines that it falls on.
func (b *builder) taxes() {
	for i := range b.c.Rates.Taxes {
		tax := &b.c.Rates.Taxes[i]
		if !Due(tax, b.j.Event.Place) {
			continue
		}
		t := TaxLine{Tax: tax}
		for k := range b.r.Lines {
			if l := &b.r.Lines[k]; slices.Contains(tax.Classes, l.Tax) {
				t.Taxable = t.Taxable.Add(l.Amount)
			}
		}
		if !b.j.Customer.Exempt {
			t.Amount = b.round(t.Taxable.Mul(money.Percent(tax.Rate)))
		}
		b.r.Taxes = append(b.r.Taxes, t)
	}
}

// Due tells whether a tax is levied at a place.
func Due(tax *catalog.Tax, place string) bool {
	return len(tax.Places) == 0 || slices.Contains(tax.Places, place)
}

// totals adds everything up. Only the deposit and what was paid are rounded
// here: all else are sums and differences of rounded lines. A subtotal of zero has a margin of 0 percent.
func (b *builder) totals() {
	r := b.r
	r.Subtotal = r.Sum()
	for i := range r.Lines {
		r.Cost = r.Cost.Add(r.Lines[i].Cost)
	}
	for i := range r.Taxes {
		r.Tax = r.Tax.Add(r.Taxes[i].Amount)
	}
	r.Total = r.Subtotal.Add(r.Tax)
	r.Margin = r.Subtotal.Sub(r.Cost)
	if r.Subtotal.IsPositive() {
		r.Percent = money.DivRound(r.Margin.Mul(money.Hundred), r.Subtotal, 2)
	}
	r.Deposit = b.round(r.Total.Mul(money.Percent(b.c.Company.Quote.Deposit)))
	r.Balance = r.Total.Sub(r.Deposit)
	for i := range b.j.Payments {
		r.Received = r.Received.Add(b.j.Payments[i].Amount)
	}
	r.Received = b.round(r.Received)
	r.Due = r.Total.Sub(r.Received)
	r.ValidUntil = b.c.Company.Quote.ValidUntil(b.j.Dates.Quoted)
	r.BalanceBy = b.c.Company.Quote.BalanceBy(b.j.Dates.Deliver)
}
