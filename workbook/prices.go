package workbook

import (
	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/price"
	"tentwright/workbook/sheet"
)

// priceList lays out every item and tent size by id: what a line of the price
// build-up, also one that somebody adds, looks up.
func (l *layout) priceList() {
	s := l.sheet(SheetPrices, "Base prices and costs by id; change them here for this job.", sheet.TabOffice, true)
	s.Rows = append(s.Rows, sheet.Row{})
	t := l.startTable(s, "item", []column{
		{"id", "Id", 26, sheet.Style{Role: sheet.Key}},
		{"name", "Item", 38, wrap()},
		{"section", "Section", 24, body(sheet.Text)},
		{"unit", "Unit", 8, body(sheet.Text)},
		{"price", "Base price", 13, input(sheet.Money)},
		{"cost", "Cost of one hire", 13, input(sheet.Money)},
		{"weight", "Weight of one, " + l.sys.MassUnit(), 12, body(sheet.Num2)},
		{"period", "Priced by", 10, body(sheet.Text)},
		{"factor", "Times, for this job", 10, calc(sheet.Factor)},
		{"kind", "Kind", 10, body(sheet.Text)},
		{"tax", "Tax class", 12, body(sheet.Text)},
		{"break", "Quantity break", 12, body(sheet.Text)},
	})
	for i := range l.q.Catalog.Families {
		l.priceFamily(t, &l.q.Catalog.Families[i])
	}
	for i := range l.q.Catalog.Items {
		it := &l.q.Catalog.Items[i]
		l.priceRow(t, it.ID, it.Name, it.Section, it.Unit, l.q.Catalog.ItemPrice(it), l.q.Catalog.ItemCost(it),
			l.itemMass(it), it.Period, it.Kind, it.Tax, it.Breaks)
	}
	t.end()
	t.widths()
	s.FreezeRows, s.FreezeCols = t.first-1, 1
	s.TitleRows = [2]int{t.first - 1, t.first - 1}
	rows := t.rows()
	rows.R1--
	s.Filter = &rows
}

func (l *layout) priceFamily(t *table, f *catalog.Family) {
	currency := l.q.Catalog.Currency()
	for i := range f.Sizes {
		size := &f.Sizes[i]
		l.priceRow(t, sizeID(f, size), f.Name+" "+size.ID, "Tents", "each", currency.Round(price.SizePrice(l.q.Catalog, f, size)),
			currency.Round(price.SizeCost(l.q.Catalog, f, size)), 0, f.Period, price.Hire, f.Tax, "")
	}
}

// sizeID is the id of a tent size in the price list.
func sizeID(f *catalog.Family, s *catalog.Size) string { return f.ID + ":" + s.ID }

func (l *layout) priceRow(t *table, id, name, section, unit string, price, cost money.Number, mass unit.Mass, period, kind, tax, breaks string) {
	factor := money.One
	for _, p := range l.q.Price.Periods {
		if p.Period.ID == period {
			factor = p.Factor
		}
	}
	t.add(text(id), text(name), text(section), text(unit), value(price), value(cost), value(mass.In(l.sys)), text(period),
		formula("period_"+ident(period), factor), text(kind), text(tax), text(breaks))
}

// itemMass is what one of an item weighs, kits opened down to their parts.
func (l *layout) itemMass(it *catalog.Item) unit.Mass {
	var sum float64
	for _, content := range it.Contents {
		var each unit.Mass
		if content.Item != "" {
			each = l.itemMass(l.q.Catalog.Item(content.Item))
		} else {
			each, _ = l.q.Catalog.Mass(content.Part)
		}
		sum += content.Count.InexactFloat64() * float64(each)
	}
	return unit.Mass(sum).RoundTo(l.sys)
}
