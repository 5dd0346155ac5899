package workbook

import (
	"slices"
	"strings"

	"tentwright/catalog/money"
	"tentwright/quote/parts"
	"tentwright/quote/price"
	"tentwright/workbook/sheet"
)

// buildColumns are the columns of the price build-up. Every term of a price is
// printed, so that it can be followed on paper; the rest is for formulas.
func buildColumns() []column {
	return []column{
		{"no", "No.", 5, body(sheet.Whole)},
		{"id", "Item", 19, sheet.Style{Role: sheet.Key}},
		{"name", "Description", 34, wrap()},
		{"unit", "Unit", 6, body(sheet.Text)},
		{"quantity", "Quantity", 9, input(sheet.General)},
		{"extra", "Extra", 6, body(sheet.Text)},
		{"ordered", "Ordered", 9, calc(sheet.General)},
		{"price", "Price of one", 12, calc(sheet.Money)},
		{"factor", "Days, times", 8, calc(sheet.Factor)},
		{"break", "Quantity, % off", 8, calc(sheet.PercentPoint)},
		{"class", "Class, % off", 7, calc(sheet.PercentPoint)},
		{"hand", "This line, % off", 7, input(sheet.PercentPoint)},
		{"job", "Job, % off", 7, calc(sheet.PercentPoint)},
		{"amount", "Charged", 13, sheet.Style{Role: sheet.Calc, Format: sheet.Money, Bold: true}},
		{"cost", "Cost", 12, calc(sheet.Money)},
		{"margin", "Margin", 12, calc(sheet.Money)},
		{"percent", "Margin %", 9, calc(sheet.PercentPoint)},
		{"note", "Note for the yard", 24, body(sheet.Text)},
		{"offer", "As asked", 13, calc(sheet.Money)},
		{"cost_each", "Cost of one", 12, calc(sheet.Money)},
		{"weight", "Weight of one, added lines", 11, calc(sheet.Num2)},
		{"low", "Below the floor", 9, calc(sheet.Whole)},
		{"kind", "Kind", 9, body(sheet.Text)},
		{"tax", "Tax class", 10, body(sheet.Text)},
		{"section", "Section", 22, body(sheet.Text)},
		{"key", "Key", 24, sheet.Style{Role: sheet.Key}},
	}
}

// buildPrinted is how many of these columns are printed.
const buildPrinted = 17

// Tables of the price build-up. Counts look up how many tents there are, items
// take their quantity from counts, and hours follow from items: three tables,
// so that none depends on itself, and each can be sorted.
const (
	tentLines = "tents"
	itemLines = "build"
	workLines = "work"
)

// build lays out every priced line with its terms, then the charges on the
// whole, the totals and the payments.
func (l *layout) build() {
	s := l.sheet(SheetBuild, "Each line with its terms, cost beside price. For the office only.", sheet.TabOffice, true)
	l.demoRow(s)
	tents, items := l.numbered()
	if len(tents) > 0 {
		t := l.startTable(s, tentLines, buildColumns())
		for _, line := range tents {
			l.orderRow(t, line)
		}
		t.end()
		l.finishLines(t)
		band(s, "Items and services", buildPrinted)
	}
	t := l.startTable(s, itemLines, buildColumns())
	for _, line := range items {
		l.orderRow(t, line)
	}
	l.spareRows(t)
	l.allowDown(s, t.first, t.col("note"), noteLimit(), "what the yard must know of it, such as a colour; it stands on the pick list")
	t.end()
	t.widths()
	l.finishLines(t)
	rows := t.rows()
	rows.R1--
	s.Filter = &rows
	s.FreezeCols, l.buildTax = 3, t.col("tax")
	l.workRows(t)
	l.charges(s)
	l.totals(s)
	l.payments(s)
	s.PrintArea = &sheet.Range{R1: 1, C1: 1, R2: len(s.Rows), C2: buildPrinted}
	keepBands(s, buildPrinted)
}

// numbered is the lines of the order as the quote numbers them, tents apart.
func (l *layout) numbered() (tents, items []*price.Line) {
	for i := range l.q.Price.Lines {
		switch line := &l.q.Price.Lines[i]; {
		case line.Order == nil:
		case line.Order.Item == nil:
			tents = append(tents, line)
		default:
			items = append(items, line)
		}
	}
	for _, lines := range [][]*price.Line{tents, items} {
		slices.SortStableFunc(lines, func(a, b *price.Line) int { return l.keys[a.Key] - l.keys[b.Key] })
	}
	return tents, items
}

// tableOf is the table in which an order line stands.
func tableOf(o *parts.Order) string {
	if o.Item == nil {
		return tentLines
	}
	return itemLines
}

// orderTables are the tables of the order's lines; a job without tents has
// only one.
func (l *layout) orderTables() []string {
	if len(l.q.Parts.Tents) == 0 {
		return []string{itemLines}
	}
	return []string{tentLines, itemLines}
}

// sumOver adds up a formula for each of some tables; "@" stands for the
// table's name.
func sumOver(tables []string, f string) string {
	terms := make([]string, len(tables))
	for i, table := range tables {
		terms[i] = strings.ReplaceAll(f, "@", table)
	}
	return strings.Join(terms, "+")
}

// demoRow is the notice under the title of a sheet, empty for a real shop.
func (l *layout) demoRow(s *sheet.Sheet) {
	row := sheet.Row{Cells: []sheet.Cell{{}}}
	if l.q.Catalog.Demo {
		row.Cells[0] = in(text(DemoNotice), sheet.Style{Role: sheet.Warn})
	}
	s.Rows = append(s.Rows, row)
}

// finishLines says what may be typed into a table of order lines, and shows in
// red what earns too little.
func (l *layout) finishLines(t *table) {
	l.allowColumn(t, "hand", percents(), "percent off this line, given by hand")
	low := t.at("low", t.first) + "=1"
	t.s.Highlights = append(t.s.Highlights,
		sheet.Highlight{Range: t.column("percent"), Formula: low, Role: sheet.Warn},
		sheet.Highlight{Range: t.column("margin"), Formula: low, Role: sheet.Warn})
	if t.s.FreezeRows == 0 {
		t.s.FreezeRows, t.s.TitleRows = t.first-1, [2]int{t.first - 1, t.first - 1}
	}
}

// orderRow is a line that the customer orders.
func (l *layout) orderRow(t *table, p *price.Line) {
	n := t.line()
	o := p.Order
	id := sizeOrItem(p)
	n.words(p, id)
	n.set("no", value(l.keys[p.Key]))
	n.set("quantity", value(p.Quantity))
	if o.Derived != "" {
		n.set("quantity", in(formula(find("count_amount", "count_key", quoted(o.Derived)), p.Quantity), calc(sheet.General)))
	}
	if o.Derived == "" {
		l.allow(t.s, n.row, t.col("quantity"), quantities(o.Item == nil || o.Item.CountsWhole()), "how many are asked for")
	}
	ordered := n.at("quantity")
	if o.Optional {
		n.set("extra", text("extra"))
		ordered = `IF(` + find("extra_choice", "extra_no", n.at("no")) + `="Yes",` + ordered + `,0)`
	}
	n.set("ordered", formula(ordered, p.Ordered))
	n.set("price", formula(find("item_price", "item_id", n.at("id")), p.Base))
	n.set("factor", formula(find("item_factor", "item_id", n.at("id")), p.Factor))
	n.set("cost_each", formula(find("item_cost", "item_id", n.at("id")), p.CostEach))
	n.discounts(p)
	l.results(n, p.Offer, p.Amount, p.Cost, p.BelowFloor(l.q.Catalog.Rates.MarginFloor))
	n.add()
	if o.Derived == "" {
		l.name("qty_"+ident(p.Key), t.s, sheet.Range{R1: n.row, C1: t.col("quantity"), R2: n.row, C2: t.col("quantity")}, "")
	}
}

// noteLimit is how long a note on a line may be; it may be left out.
func noteLimit() sheet.Validation {
	limit := words(250)
	limit.AllowBlank = true
	return limit
}

// quantities limits what may be asked for; what comes in pieces has no fraction.
func quantities(whole bool) sheet.Validation {
	if whole {
		return wholes(0, 1000000)
	}
	return sheet.Validation{Kind: sheet.Decimal, Min: "0", Max: "1000000"}
}

// sizeOrItem is the id by which a line stands on the price list.
func sizeOrItem(p *price.Line) string {
	if p.Order.Item != nil {
		return p.Order.Item.ID
	}
	return sizeID(p.Order.Tent.Family, p.Order.Tent.Size)
}

// words fills what a line is.
func (n *line) words(p *price.Line, id string) {
	for col, s := range map[string]string{"key": p.Key, "section": p.Section, "id": id, "name": p.Name, "unit": p.Unit, "kind": p.Kind, "tax": p.Tax} {
		n.set(col, text(s))
	}
}

// discounts fills what is taken off a line.
func (n *line) discounts(p *price.Line) {
	n.set("hand", value(p.Hand))
	if p.Order.Item != nil && p.Order.Derived == "" {
		n.set("note", in(text(p.Order.Note), sheet.Style{Role: sheet.InputText}))
	}
	if p.Order.Derived != "" {
		// A wall's discount is its tent's or the job's: a job has none of its own.
		n.set("hand", in(value(p.Hand), body(sheet.PercentPoint)))
		if p.Order.Note != "" {
			n.set("note", text(p.Order.Note)) // why it is planned
		}
	}
	n.set("break", value(0))
	n.set("class", value(0))
	n.set("job", value(0))
	if item := p.Order.Item; item != nil && item.Breaks != "" {
		n.set("break", formula(breakFormula(item.Breaks, n.at("quantity")), p.Break))
	}
	if p.Kind == price.Hire {
		n.set("class", formula("job_class_discount", p.Class))
		n.set("job", formula("job_discount", p.Job))
	}
}

// results fills what follows from the terms of an order line.
func (l *layout) results(n *line, offer, amount, cost money.Number, low bool) {
	n.set("offer", formula(l.offerFormula(n), offer))
	n.set("amount", formula("IF("+n.at("ordered")+">0,"+n.at("offer")+",0)", amount))
	n.set("cost", formula(l.rounded(n.at("ordered")+"*"+n.at("cost_each")), cost))
	n.margin(amount, cost)
	n.low(low)
}

// low is price.Line.BelowFloor in a cell: 1 where a line earns too little.
func (n *line) low(low bool) {
	var kinds []string
	for _, kind := range []string{price.Hire, price.Sale, price.Service} {
		kinds = append(kinds, n.at("kind")+"="+quoted(kind))
	}
	v := 0
	if low {
		v = 1
	}
	amount, cost := n.at("amount"), n.at("cost")
	n.set("low", formula("IF(AND("+amount+">0,OR("+strings.Join(kinds, ",")+"),("+amount+"-"+cost+")*100<rate_margin_floor*"+amount+"),1,0)", v))
}

// breakFormula is price.BreakOff in a cell.
func breakFormula(class, quantity string) string {
	id := "break_" + ident(class)
	return "IFERROR(INDEX(" + id + "_off,MATCH(" + quantity + "," + id + "_from,1)),0)"
}

// offerFormula is the amount of a line from its terms, rounded once.
func (l *layout) offerFormula(n *line) string {
	terms := []string{n.at("quantity"), n.at("price"), n.at("factor")}
	for _, off := range []string{"break", "class", "hand", "job"} {
		terms = append(terms, "(1-"+n.at(off)+"/100)")
	}
	return l.rounded(strings.Join(terms, "*"))
}

// rounded is the one rounding of money, as the Go side does it.
func (l *layout) rounded(f string) string {
	return "ROUND(" + f + "," + itoa(l.q.Price.Currency.Minor) + ")"
}

// margin fills margin and margin percent.
func (n *line) margin(amount, cost money.Number) {
	percent := money.Zero
	if amount.IsPositive() {
		percent = money.DivRound(amount.Sub(cost).Mul(money.Hundred), amount, 2)
	}
	n.set("margin", formula(n.at("amount")+"-"+n.at("cost"), amount.Sub(cost)))
	n.set("percent", formula("IF("+n.at("amount")+">0,ROUND("+n.at("margin")+"*100/"+n.at("amount")+",2),0)", percent))
}
