package workbook

import (
	"strings"

	"tentwright/catalog/money"
	"tentwright/quote/price"
	"tentwright/workbook/sheet"
)

// spareLines is how many lines the office can add by hand.
const spareLines = 12

// buildColumns are the columns of the price build-up, terms left, results right.
func buildColumns() []column {
	return []column{
		{"key", "Key", 12, sheet.Style{Role: sheet.Key}},
		{"no", "No.", 5, body(sheet.Whole)},
		{"section", "Section", 20, body(sheet.Text)},
		{"id", "Item", 20, sheet.Style{Role: sheet.Key}},
		{"name", "Description", 36, wrap()},
		{"unit", "Unit", 7, body(sheet.Text)},
		{"quantity", "Quantity", 10, input(sheet.General)},
		{"extra", "Extra", 7, body(sheet.Text)},
		{"ordered", "Ordered", 10, calc(sheet.General)},
		{"price", "Price of one", 12, calc(sheet.Money)},
		{"factor", "Days, times", 8, calc(sheet.Factor)},
		{"break", "Quantity, % off", 9, calc(sheet.PercentPoint)},
		{"class", "Class, % off", 8, calc(sheet.PercentPoint)},
		{"job", "Job, % off", 8, calc(sheet.PercentPoint)},
		{"hand", "This line, % off", 9, input(sheet.PercentPoint)},
		{"offer", "As asked", 13, calc(sheet.Money)},
		{"amount", "Charged", 13, sheet.Style{Role: sheet.Calc, Format: sheet.Money, Bold: true}},
		{"cost_each", "Cost of one", 12, calc(sheet.Money)},
		{"cost", "Cost", 13, calc(sheet.Money)},
		{"margin", "Margin", 13, calc(sheet.Money)},
		{"percent", "Margin %", 9, calc(sheet.PercentPoint)},
		{"kind", "Kind", 9, body(sheet.Text)},
		{"tax", "Tax class", 10, body(sheet.Text)},
		{"weight", "Weight of one, added lines", 11, calc(sheet.Num2)},
		{"low", "Below the floor", 9, calc(sheet.Whole)},
	}
}

// build lays out every priced line with its terms, then the charges on the
// whole, the totals and the payments.
func (l *layout) build() {
	s := l.sheet(SheetBuild, "Each line with its terms, cost beside price. For the office only.", sheet.TabOffice, true)
	l.demoRow(s)
	t := l.startTable(s, "build", buildColumns())
	for i := range l.q.Price.Lines {
		if line := &l.q.Price.Lines[i]; line.Order != nil {
			l.orderRow(t, line)
		}
	}
	l.spareRows(t)
	for i := range l.q.Price.Lines {
		switch line := &l.q.Price.Lines[i]; line.Kind {
		case price.Labour:
			l.labourRow(t, line)
		case price.Delivery:
			l.deliveryRow(t, line)
		}
	}
	t.end()
	t.widths()
	l.finishBuild(t)
	l.charges(s)
	l.totals(s)
	l.payments(s)
}

// demoRow is the notice under the title of a sheet, empty for a real shop.
func (l *layout) demoRow(s *sheet.Sheet) {
	row := sheet.Row{Cells: []sheet.Cell{{}}}
	if l.q.Catalog.Demo {
		row.Cells[0] = in(text(DemoNotice), sheet.Style{Role: sheet.Warn})
	}
	s.Rows = append(s.Rows, row)
}

func (l *layout) finishBuild(t *table) {
	s := t.s
	s.FreezeRows, s.FreezeCols = t.first-1, 5
	s.TitleRows = [2]int{t.first - 1, t.first - 1}
	rows := t.rows()
	rows.R1--
	s.Filter = &rows
	quantity := sheet.Validation{Kind: sheet.Decimal, Min: "0", Max: "1000000"}
	l.allowColumn(t, "quantity", quantity, "how many; a counted line follows from a tent and is locked")
	l.allowColumn(t, "hand", percents(), "percent off this line, given by hand")
	low := t.at("low", t.first) + "=1"
	s.Highlights = append(s.Highlights,
		sheet.Highlight{Range: t.column("percent"), Formula: low, Role: sheet.Warn},
		sheet.Highlight{Range: t.column("margin"), Formula: low, Role: sheet.Warn})
}

func kindIs(t *table, row int, kind string) string { return t.at("kind", row) + "=" + quoted(kind) }

// orderRow is a line that the customer orders.
func (l *layout) orderRow(t *table, p *price.Line) {
	row := t.next()
	o := p.Order
	id := ""
	if o.Item != nil {
		id = o.Item.ID
	} else {
		id = sizeID(o.Tent.Family, o.Tent.Size)
	}
	quantity, extra := value(p.Quantity), ""
	if o.Derived != "" {
		quantity = in(formula(find("count_amount", "count_key", quoted(o.Derived)), p.Quantity), calc(sheet.General))
	}
	ordered := t.at("quantity", row)
	if o.Optional {
		extra = "extra"
		ordered = `IF(` + find("extra_choice", "extra_no", t.at("no", row)) + `="Yes",` + ordered + `,0)`
	}
	cells := l.lineCells(t, row, p)
	cells = append([]sheet.Cell{text(p.Key), value(l.keys[p.Key]), text(p.Section), text(id), text(p.Name), text(p.Unit), quantity, text(extra),
		formula(ordered, p.Ordered), formula(find("item_price", "item_id", t.at("id", row)), p.Base),
		formula(find("item_factor", "item_id", t.at("id", row)), p.Factor)}, cells...)
	t.add(cells...)
	if o.Derived == "" {
		l.name("qty_"+ident(p.Key), t.s, sheet.Range{R1: row, C1: t.col("quantity"), R2: row, C2: t.col("quantity")}, "")
	}
}

// lineCells are the cells from the quantity break to the tax class.
func (l *layout) lineCells(t *table, row int, p *price.Line) []sheet.Cell {
	breaks := value(0)
	if item := p.Order.Item; item != nil && item.Breaks != "" {
		breaks = formula(breakFormula(item.Breaks, t.at("quantity", row)), p.Break)
	}
	class, jobOff := value(0), value(0)
	if p.Kind == price.Hire {
		class, jobOff = formula("job_class_discount", p.Class), formula("job_discount", p.Job)
	}
	cells := []sheet.Cell{breaks, class, jobOff, value(p.Hand),
		formula(l.offerFormula(t, row), p.Offer),
		formula("IF("+t.at("ordered", row)+">0,"+t.at("offer", row)+",0)", p.Amount),
		formula(find("item_cost", "item_id", t.at("id", row)), p.CostEach),
		formula(l.rounded(t.at("ordered", row)+"*"+t.at("cost_each", row)), p.Cost)}
	cells = append(append(cells, marginCells(t, row, p.Amount, p.Cost)...), text(p.Kind), text(p.Tax), text(""))
	return append(cells, lowCell(t, row, p.BelowFloor(l.q.Catalog.Rates.MarginFloor)))
}

// lowCell is price.Line.BelowFloor in a cell: 1 where a line earns too little.
func lowCell(t *table, row int, low bool) sheet.Cell {
	goods := "OR(" + kindIs(t, row, price.Hire) + "," + kindIs(t, row, price.Sale) + "," + kindIs(t, row, price.Service) + ")"
	amount, cost := t.at("amount", row), t.at("cost", row)
	v := 0
	if low {
		v = 1
	}
	return formula("IF(AND("+amount+">0,"+goods+",("+amount+"-"+cost+")*100<rate_margin_floor*"+amount+"),1,0)", v)
}

// breakFormula is price.BreakOff in a cell.
func breakFormula(class, quantity string) string {
	id := "break_" + ident(class)
	return "IFERROR(INDEX(" + id + "_off,MATCH(" + quantity + "," + id + "_from,1)),0)"
}

// offerFormula is the amount of a line from its terms, rounded once.
func (l *layout) offerFormula(t *table, row int) string {
	terms := []string{t.at("quantity", row), t.at("price", row), t.at("factor", row)}
	for _, off := range []string{"break", "class", "hand", "job"} {
		terms = append(terms, "(1-"+t.at(off, row)+"/100)")
	}
	return l.rounded(strings.Join(terms, "*"))
}

// rounded is the one rounding of money, as the Go side does it.
func (l *layout) rounded(f string) string {
	return "ROUND(" + f + "," + itoa(l.q.Price.Currency.Minor) + ")"
}

// marginCells are margin and margin percent.
func marginCells(t *table, row int, amount, cost money.Number) []sheet.Cell {
	percent := money.Zero
	if amount.IsPositive() {
		percent = money.DivRound(amount.Sub(cost).Mul(money.Hundred), amount, 2)
	}
	return []sheet.Cell{
		formula(t.at("amount", row)+"-"+t.at("cost", row), amount.Sub(cost)),
		formula("IF("+t.at("amount", row)+">0,ROUND("+t.at("margin", row)+"*100/"+t.at("amount", row)+",2),0)", percent)}
}

// labourRow charges the hours of a skill; its cost is the wages of all of them.
func (l *layout) labourRow(t *table, p *price.Line) {
	row := t.next()
	over := strings.HasPrefix(p.Key, "O:")
	skill := strings.TrimPrefix(strings.TrimPrefix(p.Key, "O:"), "H:")
	hours, bill, cost := "skill_plain", "rate_"+ident(skill)+"_bill", "SUMIFS(skill_cost,skill_skill,"+quoted(skill)+")"
	if over {
		hours, bill, cost = "skill_over", l.rounded("rate_"+ident(skill)+"_bill*overtime_bill"), "0"
	}
	l.workRow(t, row, p, "ROUND(SUMIFS("+hours+",skill_skill,"+quoted(skill)+"),2)", `IF(job_labour_charged="Yes",`+bill+`,0)`,
		l.rounded(t.at("ordered", row)+"*"+t.at("price", row)), cost)
}

// deliveryRow charges the trips; how many there are was decided by the load.
func (l *layout) deliveryRow(t *table, p *price.Line) {
	row := t.next()
	charge := l.rounded(t.at("ordered", row) + "*" + t.at("price", row))
	charge = `IF(AND(job_delivery_charged="Yes",` + t.at("ordered", row) + ">0),MAX(" + charge + "," + l.rounded("zone_minimum") + "),0)"
	l.workRow(t, row, p, "job_trips_out", `IF(job_delivery_charged="Yes",`+l.rounded("zone_flat+zone_each*job_distance")+`,0)`,
		charge, l.rounded("job_trip_costs+(job_trips_out+job_trips_back)*job_distance*rate_mile_cost"))
}

// workRow is a line whose quantity follows from hours or trips.
func (l *layout) workRow(t *table, row int, p *price.Line, quantity, each, amount, cost string) {
	cells := []sheet.Cell{text(p.Key), text(""), text(p.Section), text(""), text(p.Name), text(p.Unit),
		in(formula(quantity, p.Quantity), calc(sheet.Num2)), text(""), formula(t.at("quantity", row), p.Ordered), formula(each, p.Base), value(1),
		value(0), value(0), value(0), in(value(0), body(sheet.PercentPoint)), formula(amount, p.Offer), formula(t.at("offer", row), p.Amount), text(""), formula(cost, p.Cost)}
	cells = append(append(cells, marginCells(t, row, p.Amount, p.Cost)...), text(p.Kind), text(p.Tax))
	t.add(cells...)
}

// spareRows are lines for the office: an id and a quantity give the rest.
func (l *layout) spareRows(t *table) {
	first := t.next()
	for n := 1; n <= spareLines; n++ {
		l.spareRow(t, n)
	}
	l.name("build_added", t.s, sheet.Range{R1: first, C1: t.col("id"), R2: t.next() - 1, C2: t.col("id")}, "")
	ids := sheet.Validation{Kind: sheet.List, Source: "item_id", Range: sheet.Range{R1: first, C1: t.col("id"), R2: t.next() - 1, C2: t.col("id")},
		Title: "Add a line", Prompt: "An id of the Price List. Parts, hours and vehicles follow when the job is quoted again.", Error: "This id is not on the Price List.", AllowBlank: true}
	t.s.Validations = append(t.s.Validations, ids)
}

func (l *layout) spareRow(t *table, n int) {
	row := t.next()
	id := t.at("id", row)
	some := func(f, none string) string { return "IF(LEN(" + id + ")=0," + none + "," + f + ")" }
	words := func(col string) sheet.Cell { return formula(some(find("item_"+col, "item_id", id), `""`), "") }
	number := func(col string) sheet.Cell { return formula(some(find("item_"+col, "item_id", id), "0"), 0) }
	hire := func(name string) sheet.Cell {
		return formula("IF("+kindIs(t, row, price.Hire)+","+name+",0)", 0)
	}
	t.add(text("S:"+itoa(n)), text(""), text("Added lines"), in(text(""), input(sheet.Text)), words("name"), words("unit"),
		in(value(nil), input(sheet.General)), text(""), formula(some(t.at("quantity", row), "0"), 0), number("price"), number("factor"),
		value(0), hire("job_class_discount"), hire("job_discount"), value(0), formula(l.offerFormula(t, row), 0),
		formula("IF("+t.at("ordered", row)+">0,"+t.at("offer", row)+",0)", 0), number("cost"), formula(l.rounded(t.at("ordered", row)+"*"+t.at("cost_each", row)), 0),
		formula(t.at("amount", row)+"-"+t.at("cost", row), 0), formula("IF("+t.at("amount", row)+">0,ROUND("+t.at("margin", row)+"*100/"+t.at("amount", row)+",2),0)", 0),
		words("kind"), words("tax"), number("weight"), lowCell(t, row, false))
}
