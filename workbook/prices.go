package workbook

import (
	"tentwright/catalog"
	"tentwright/quote/parts"
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
		{"markup", "Sub-hired, mark-up %", 10, input(sheet.PercentPoint)},
		{"weight", "Weight of one, " + l.sys.MassUnit(), 12, body(sheet.Num2)},
		{"period", "Priced by", 10, body(sheet.Text)},
		{"factor", "Times, for this job", 10, calc(sheet.Factor)},
		{"kind", "Kind", 10, body(sheet.Text)},
		{"tax", "Tax class", 12, body(sheet.Text)},
		{"break", "Quantity break", 12, body(sheet.Text)},
		{"describe", "Description", 40, wrap()},
		{"whole", "In pieces", 9, body(sheet.Text)},
	})
	for i := range l.q.Catalog.Families {
		l.priceFamily(t, &l.q.Catalog.Families[i])
	}
	// What follows from a tent's sides cannot be added by itself and stands last.
	for _, geometry := range []bool{false, true} {
		if geometry {
			l.name("item_addable", s, sheet.Range{R1: t.first, C1: t.col("id"), R2: len(s.Rows), C2: t.col("id")}, "")
		}
		for i := range l.q.Catalog.Items {
			if it := &l.q.Catalog.Items[i]; it.Geometry == geometry {
				l.priceItem(t, it)
			}
		}
	}
	t.end()
	t.widths()
	l.priceRules(t)
}

// priceRules says what prints of the price list and what may be typed into it.
func (l *layout) priceRules(t *table) {
	s := t.s
	// The last columns are for the screen; with them the list prints too small.
	s.PrintArea = &sheet.Range{R1: 1, C1: 1, R2: len(s.Rows), C2: t.col("describe") - 1}
	l.allowColumn(t, "price", amounts(), "base price of one, for the base period")
	l.allowColumn(t, "cost", amounts(), "what one hire of one costs the yard")
	l.allowColumn(t, "markup", sheet.Validation{Kind: sheet.Decimal, Min: "0", Max: "500"}, "percent on the supplier's cost, for what is hired in")
	s.FreezeRows, s.FreezeCols = t.first-1, 1
	s.TitleRows = [2]int{t.first - 1, t.first - 1}
	rows := t.rows()
	rows.R1--
	s.Filter = &rows
}

// priceFamily lists the sizes of a family; one without a price of its own is
// priced by its floor area.
func (l *layout) priceFamily(t *table, f *catalog.Family) {
	currency := l.q.Catalog.Currency()
	for i := range f.Sizes {
		size := &f.Sizes[i]
		n := t.line()
		cost := currency.Round(price.SizeCost(l.q.Catalog, f, size))
		amount := currency.Round(price.SizePrice(l.q.Catalog, f, size))
		n.set("price", value(amount))
		n.set("cost", value(cost))
		area := price.SizeArea(l.q.Catalog, size).String()
		if size.Price == nil {
			n.set("price", in(formula(l.rounded(area+"*area_price_"+ident(f.ID)), amount), calc(sheet.Money)))
		}
		if size.Cost == nil && f.AreaCost != nil {
			n.set("cost", in(formula(l.rounded(area+"*area_cost_"+ident(f.ID)), cost), calc(sheet.Money)))
		}
		n.set("weight", value(l.sizeMass(f, size).In(l.sys)))
		n.set("whole", text(yes(true)))
		l.priceRow(n, sizeID(f, size), f.Name+" "+size.ID, parts.SectionTents, "each", f.Period, price.Hire, f.Tax, "")
	}
}

// sizeID is the id of a tent size in the price list.
func sizeID(f *catalog.Family, s *catalog.Size) string { return f.ID + ":" + s.ID }

// priceItem lists an item. The price of a sub-hired one follows from its cost and
// mark-up, unless the shop has set a price of its own.
func (l *layout) priceItem(t *table, it *catalog.Item) {
	c := l.q.Catalog
	n := t.line()
	n.set("price", value(c.ItemPrice(it)))
	n.set("cost", value(c.ItemCost(it)))
	n.set("weight", value(l.itemMass(it).In(l.sys)))
	n.set("describe", text(it.Describe))
	n.set("whole", text(yes(it.CountsWhole())))
	if it.SubHire != nil {
		n.set("markup", value(it.SubHire.Markup))
		if it.Price.IsZero() {
			n.set("price", in(formula(l.rounded(n.at("cost")+"*(1+"+n.at("markup")+"/100)"), c.ItemPrice(it)), calc(sheet.Money)))
		}
	}
	l.priceRow(n, it.ID, it.Name, it.Section, it.Unit, it.Period, it.Kind, it.Tax, it.Breaks)
}

// priceRow fills what every line of the price list has, and adds it.
func (l *layout) priceRow(n *line, id, name, section, unit, period, kind, tax, breaks string) {
	for col, words := range map[string]string{"id": id, "name": name, "section": section, "unit": unit, "period": period, "kind": kind, "tax": tax, "break": breaks} {
		n.set(col, text(words))
	}
	n.set("factor", formula("period_"+ident(period)+"_times", l.q.Price.FactorOf(period)))
	n.add()
}
