package workbook

import (
	"strings"

	"tentwright/catalog/money"
	"tentwright/quote/price"
	"tentwright/workbook/sheet"
)

// paymentRows is how many payments the office can enter.
const paymentRows = 6

// blankTo fills a row up to a column, so that figures stand under their heads.
func blankTo(col int) []sheet.Cell { return make([]sheet.Cell, col-1) }

// Columns of the blocks under the build-up: words under the descriptions,
// percentages under the quantities, figures under what is charged.
const (
	wordsCol  = 3
	shareCol  = 5
	baseCol   = 8
	figureCol = 14
)

// charges are the lines that are a share of other lines. They stand outside
// the build-up, so that no sum contains itself.
func (l *layout) charges(s *sheet.Sheet) {
	band(s, "Charges on the whole", buildPrinted)
	first := len(s.Rows) + 1
	var before []string // cells that the minimum order counts
	for i := range l.q.Price.Lines {
		p := &l.q.Price.Lines[i]
		switch p.Kind {
		case price.Loading:
			before = append(before, l.chargeRow(s, p, "loading_"+ident(p.Key), l.loadedFormula(p)))
		case price.Waiver:
			before = append(before, l.chargeRow(s, p, "rate_waiver", sumKinds(l.orderTables(), price.Hire)))
		case price.Minimum:
			l.minimumRow(s, p, before)
		}
	}
	s.Rows = append(s.Rows, sheet.Row{Height: 4})
	l.rangeName("charge_key", s, wordsCol-1, first)
	l.rangeName("charge_amount", s, figureCol, first)
	l.rangeName("charge_tax", s, l.buildTax, first)
}

// loadedFormula is what a loading is a percentage of: delivery, and the labour
// of the windows of work that it is for.
func (l *layout) loadedFormula(p *price.Line) string {
	var windows []string
	for i := range l.q.Catalog.Rates.Loadings {
		loading := &l.q.Catalog.Rates.Loadings[i]
		if "A:"+loading.ID != p.Key {
			continue
		}
		for _, window := range loading.Windows {
			windows = append(windows, "SUMIFS(skill_bill,skill_window,"+quoted(window)+")")
		}
	}
	base := sumKinds([]string{workLines}, price.Delivery)
	if len(windows) == 0 {
		return base
	}
	return base + `+IF(job_labour_charged="Yes",` + strings.Join(windows, "+") + ",0)"
}

// sumKinds adds up the lines of some kinds.
func sumKinds(tables []string, kinds ...string) string {
	terms := make([]string, len(kinds))
	for i, kind := range kinds {
		terms[i] = sumOver(tables, "SUMIFS(@_amount,@_kind,"+quoted(kind)+")")
	}
	return strings.Join(terms, "+")
}

// chargeRow writes base, percentage and amount; it gives the amount's cell.
func (l *layout) chargeRow(s *sheet.Sheet, p *price.Line, rate, base string) string {
	row := len(s.Rows) + 1
	cells := blankTo(figureCol + 1)
	cells[wordsCol-2] = in(text(p.Key), sheet.Style{Role: sheet.Key})
	cells[wordsCol-1] = in(text(p.Name), wrap())
	cells[shareCol-1] = in(formula(rate, p.Quantity), calc(sheet.PercentPoint))
	cells[baseCol-1] = in(formula(l.rounded(base), p.Base), calc(sheet.Money))
	amount := l.rounded(sheet.Ref(row, baseCol) + "*" + sheet.Ref(row, shareCol) + "/100")
	cells[figureCol-1] = in(formula(amount, p.Amount), calc(sheet.Money))
	l.chargeEnd(s, cells, p)
	return sheet.AbsRef(row, figureCol)
}

// chargeEnd puts the tax class under the tax classes of the lines.
func (l *layout) chargeEnd(s *sheet.Sheet, cells []sheet.Cell, p *price.Line) {
	for len(cells) < l.buildTax {
		cells = append(cells, sheet.Cell{})
	}
	cells[l.buildTax-1] = in(text(p.Tax), body(sheet.Text))
	s.Rows = append(s.Rows, sheet.Row{Cells: cells})
}

// minimumRow tops up what the lines and the charges before it come to. It adds
// the tables up itself, since the subtotal has the top-up within it.
func (l *layout) minimumRow(s *sheet.Sheet, p *price.Line, before []string) {
	cells := blankTo(figureCol + 1)
	cells[wordsCol-2] = in(text(p.Key), sheet.Style{Role: sheet.Key})
	cells[wordsCol-1] = in(text(p.Name), wrap())
	sum := strings.Join(append([]string{"(" + sumOver(append(l.orderTables(), workLines), "SUM(@_amount)") + ")"}, before...), "-")
	cells[figureCol-1] = in(formula(l.rounded("MAX(0,rate_min_order-"+sum+")"), p.Amount), calc(sheet.Money))
	l.chargeEnd(s, cells, p)
}

// figure writes a named figure with its words.
func (l *layout) figure(s *sheet.Sheet, name, words, f string, v any, style sheet.Style) {
	cells := blankTo(figureCol + 1)
	cells[wordsCol-1] = in(text(words), sheet.Style{Role: sheet.Label, Bold: style.Role == sheet.Grand})
	cells[figureCol-1] = in(formula(f, v), style)
	s.Rows = append(s.Rows, sheet.Row{Cells: cells})
	l.cellName(name, s, figureCol)
}

// totals adds everything up, tax by tax.
func (l *layout) totals(s *sheet.Sheet) {
	r := l.q.Price
	extras := amountOf(l.extraLines())
	plain := sheet.Style{Role: sheet.Total, Format: sheet.Money}
	grand := sheet.Style{Role: sheet.Grand, Format: sheet.Money}
	band(s, "Totals", buildPrinted)
	l.figure(s, "total_hire", "Hire after discounts", l.rounded(sumKinds(l.orderTables(), price.Hire)), r.Hire, plain)
	l.figure(s, "total_extras", "Of all lines: optional extras chosen", l.rounded(sumOver(l.orderTables(), `SUMIFS(@_amount,@_extra,"extra")`)), extras, plain)
	l.figure(s, "total_spare", "Of all lines: added lines", l.rounded(`SUMIFS(build_amount,build_key,"S:*")`), money.Zero, plain)
	l.figure(s, "total_labour", "Labour", l.rounded(sumKinds([]string{workLines}, price.Labour)), r.Sum(price.Labour), plain)
	l.figure(s, "total_delivery", "Delivery", l.rounded(sumKinds([]string{workLines}, price.Delivery)), r.Sum(price.Delivery), plain)
	charges := r.Sum(price.Loading, price.Waiver, price.Minimum)
	l.figure(s, "total_charges", "Charges on the whole", l.rounded("SUM(charge_amount)"), charges, plain)
	l.figure(s, "total_subtotal", "Subtotal", l.rounded(sumOver(append(l.orderTables(), workLines, "charge"), "SUM(@_amount)")), r.Subtotal, plain)
	l.taxFigures(s)
	l.figure(s, "total_due", "Total with tax", l.rounded("total_subtotal+total_tax"), r.Total, grand)
	l.figure(s, "total_cost", "Cost", l.rounded(sumOver(append(l.orderTables(), workLines), "SUM(@_cost)")), r.Cost, plain)
	margin := len(s.Rows) + 1
	l.figure(s, "total_margin", "Margin before tax", l.rounded("total_subtotal-total_cost"), r.Margin, plain)
	l.figure(s, "total_percent", "Margin, percent of the subtotal", "IF(total_subtotal>0,ROUND(total_margin*100/total_subtotal,2),0)", r.Percent,
		sheet.Style{Role: sheet.Total, Format: sheet.PercentPoint})
	l.figure(s, "total_deposit", "Deposit", l.rounded("total_due*rate_deposit/100"), r.Deposit, plain)
	l.figure(s, "total_balance", "Balance", l.rounded("total_due-total_deposit"), r.Balance, plain)
	l.weights(s)
	s.Highlights = append(s.Highlights, sheet.Highlight{Range: sheet.Range{R1: margin, C1: figureCol, R2: margin + 1, C2: figureCol}, Formula: "total_percent<rate_margin_floor", Role: sheet.Warn})
}

// weights tells what the added lines weigh, which no vehicle was chosen for.
func (l *layout) weights(s *sheet.Sheet) {
	weight := sheet.Style{Role: sheet.Total, Format: sheet.Num2}
	unit := ", " + l.sys.MassUnit()
	l.figure(s, "total_added_weight", "Weight of added lines"+unit, "ROUND(SUMPRODUCT(build_ordered,build_weight),2)", 0, weight)
	l.figure(s, "total_whole_weight", "Weight out with added lines"+unit, "ROUND(total_weight+total_added_weight,2)", hundredths(l.q.Load.Out.Mass, l.sys), weight)
}

// taxFigures writes what each tax falls on and what it comes to.
func (l *layout) taxFigures(s *sheet.Sheet) {
	plain := sheet.Style{Role: sheet.Total, Format: sheet.Money}
	var names []string
	for _, t := range l.q.Price.Taxes {
		id := "tax_" + ident(t.Tax.ID)
		var parts []string
		for _, class := range t.Tax.Classes {
			parts = append(parts, sumOver(append(l.orderTables(), workLines, "charge"), "SUMIFS(@_amount,@_tax,"+quoted(class)+")"))
		}
		l.figure(s, id+"_on", t.Tax.Name+" falls on", l.rounded(strings.Join(parts, "+")), t.Taxable, plain)
		l.figure(s, id+"_amount", t.Tax.Name, `IF(job_exempt="Yes",0,`+l.rounded(id+"_on*"+id+"_rate/100")+")", t.Amount, plain)
		names = append(names, id+"_amount")
	}
	if len(names) == 0 {
		names = []string{"0"}
	}
	l.figure(s, "total_tax", "Tax", l.rounded(strings.Join(names, "+")), l.q.Price.Tax, plain)
}

// paymentHeads say what stands in the cells of a payment.
func (l *layout) paymentHeads(s *sheet.Sheet) {
	cells := blankTo(figureCol + 1)
	for col, head := range map[int]string{wordsCol: "Note", baseCol: "Date", figureCol: "Amount"} {
		cells[col-1] = in(text(head), sheet.Style{Role: sheet.Heading})
	}
	s.Rows = append(s.Rows, sheet.Row{Cells: cells})
}

// payments are inputs; what is still open follows.
func (l *layout) payments(s *sheet.Sheet) {
	band(s, "Payments received", buildPrinted)
	l.paymentHeads(s)
	first := len(s.Rows) + 1
	for n := range max(paymentRows, len(l.q.Job.Payments)+2) {
		cells := blankTo(figureCol + 1)
		cells[wordsCol-1] = in(value(nil), sheet.Style{Role: sheet.InputText})
		cells[baseCol-1] = in(value(nil), input(sheet.DateISO))
		cells[figureCol-1] = in(value(nil), input(sheet.Money))
		if n < len(l.q.Job.Payments) {
			p := &l.q.Job.Payments[n]
			cells[wordsCol-1].Value, cells[baseCol-1].Value, cells[figureCol-1].Value = p.Note, p.Date, p.Amount
		}
		s.Rows = append(s.Rows, sheet.Row{Cells: cells})
	}
	for _, x := range []struct {
		name    string
		col     int
		allow   sheet.Validation
		explain string
	}{
		{"note", wordsCol, words(mostExplained), "what the payment was for, or how it came"},
		{"date", baseCol, sheet.AnyDay(), "the day on which it was received, such as 2026-07-04"},
		{"amount", figureCol, sheet.Validation{Kind: sheet.Decimal, Min: "-10000000", Max: "10000000"}, "the amount received; what was given back is below zero"},
	} {
		l.rangeName("payments_"+x.name, s, x.col, first)
		x.allow.AllowBlank = true
		l.allowDown(s, first, x.col, x.allow, x.explain)
	}
	plain := sheet.Style{Role: sheet.Total, Format: sheet.Money}
	l.figure(s, "total_received", "Received", l.rounded("SUM(payments_amount)"), l.q.Price.Received, plain)
	l.figure(s, "total_open", "Still due", l.rounded("total_due-total_received"), l.q.Price.Due, sheet.Style{Role: sheet.Grand, Format: sheet.Money})
}
