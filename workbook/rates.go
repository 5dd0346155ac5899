package workbook

import (
	"strconv"
	"strings"

	"tentwright/quote/parts"
	"tentwright/quote/price"
	"tentwright/workbook/sheet"
)

// itoa is a whole number as formulas write it.
func itoa(n int) string { return strconv.Itoa(n) }

// rateCols is the printed width of the sheet in columns: one more where minutes
// spread.
func (l *layout) rateCols() int {
	if l.q.Catalog.Crew != nil {
		return 8
	}
	return 7
}

// rates lays out what the manager edits: everything here is an input with a
// name, or follows from the inputs beside it.
func (l *layout) rates() {
	s := l.sheet(SheetRates, "Change the cells with a frame and a light ground; every other sheet follows.", sheet.TabOffice, false)
	widths := []float64{30, 34, 12, 12, 12, 12, 14}
	if l.q.Catalog.Crew != nil {
		widths = []float64{30, 32, 11, 11, 11, 11, 13, 9, 20, 10, 10}
	}
	for _, w := range widths {
		s.Columns = append(s.Columns, sheet.Column{Width: w})
	}
	l.jobTerms(s)
	l.skillRates(s)
	l.periodRates(s)
	l.areaRates(s)
	l.breakRates(s)
	l.siteRates(s)
	l.taxRates(s)
	l.deliveryRates(s)
	l.minuteRates(s)
	s.TitleRows = [2]int{1, 1}
	keepBands(s, l.rateCols())
	s.PrintArea = &sheet.Range{R1: 1, C1: 1, R2: len(s.Rows), C2: l.rateCols()}
	s.FreezeRows = 2
}

// setting is one named input with its explanation.
type setting struct {
	name, label, explain string
	value                any
	format               sheet.Format
	allow                sheet.Validation // Kind and limits
}

// settings writes named inputs, one a row.
func (l *layout) settings(s *sheet.Sheet, list []setting) {
	for _, x := range list {
		s.Rows = append(s.Rows, sheet.Row{Cells: []sheet.Cell{
			in(text(x.label), sheet.Style{Role: sheet.Label}),
			in(text(x.explain), sheet.Style{Role: sheet.Faint, Wrap: true}),
			in(value(x.value), input(x.format)),
		}})
		l.cellName(x.name, s, 3)
		l.allow(s, len(s.Rows), 3, x.allow, x.explain)
	}
}

// mostExplained is the most characters of an explanation, so that it fits a
// prompt of 255 with the words before it; it may hold a name given by people.
const mostExplained = 200

// allow limits what may be typed into a cell and explains it.
func (l *layout) allow(s *sheet.Sheet, row, col int, v sheet.Validation, explain string) {
	l.allowRange(s, sheet.Range{R1: row, C1: col, R2: row, C2: col}, v, explain)
}

// allowDown limits a column from a row to the sheet's last.
func (l *layout) allowDown(s *sheet.Sheet, first, col int, v sheet.Validation, explain string) {
	l.allowRange(s, sheet.Range{R1: first, C1: col, R2: len(s.Rows), C2: col}, v, explain)
}

// allowRange limits a block. The words are shown before and after typing, so
// they say what is wanted and not what was wrong.
func (l *layout) allowRange(s *sheet.Sheet, r sheet.Range, v sheet.Validation, explain string) {
	explain = sheet.Short(explain, mostExplained)
	v.Range = r
	v.Title, v.Prompt, v.Error = "What goes here", explain, "This value does not fit: "+explain
	s.Validations = append(s.Validations, v)
}

// The limits of inputs are those of the shop's files where these have any, so
// that what is tried out here can be written there.

// percents are of a whole, from 0 to 100.
func percents() sheet.Validation {
	return sheet.Validation{Kind: sheet.Decimal, Min: "0", Max: "100"}
}

// amounts are of money, or factors of it: none below zero, since no hire is paid
// for by the yard. The upper limit only catches slips of the keyboard.
func amounts() sheet.Validation {
	return sheet.Validation{Kind: sheet.Decimal, Min: "0", Max: "10000000"}
}

// wholes are pieces, people or days, both ends included.
func wholes(least, most int) sheet.Validation {
	return sheet.Validation{Kind: sheet.WholeNumber, Min: itoa(least), Max: itoa(most)}
}

// yesNo is how people type a truth.
func yesNo() sheet.Validation { return sheet.Validation{Kind: sheet.List, Source: "Yes,No"} }

// jobTerms are the inputs that hold for this job alone.
func (l *layout) jobTerms(s *sheet.Sheet) {
	c, j, r := l.q.Catalog, l.q.Job, &l.q.Catalog.Rates
	distance := "distance one way in " + l.sys.DistanceUnit()
	band(s, "This job", l.rateCols())
	l.settings(s, []setting{
		{"job_days", "Charged days", "days that are paid for; days out may be more", l.q.Price.Days, sheet.Whole, wholes(1, 400)},
		{"job_distance", "Distance", distance, float(parts.Distance(c, j.Delivery.Distance)), sheet.Num1, amounts()},
		{"job_class_discount", "Customer class discount", "percent off hire, by the class " + j.Class(c).Name, float(j.Class(c).Discount), sheet.PercentPoint, percents()},
		{"job_discount", "Discount on the whole hire", "percent, given by hand" + because(j.Discount.Reason), float(j.Discount.Percent), sheet.PercentPoint, percents()},
		{"job_exempt", "Tax exempt", "Yes if the customer has shown a certificate", yes(j.Customer.Exempt), sheet.Text, yesNo()},
		{"job_labour_charged", "Labour charged", "No if labour is within the price of the tents", yes(!price.Included(j)), sheet.Text, yesNo()},
		{"job_delivery_charged", "Delivery charged", "No if the customer collects, or it is thrown in", yes(!j.Delivery.Free), sheet.Text, yesNo()},
		{"job_show", "Prices shown to the customer", "line, section or total", j.ShowPrices(c), sheet.Text, sheet.Validation{Kind: sheet.List, Source: "line,section,total"}},
	})
	band(s, "Terms", l.rateCols())
	l.settings(s, []setting{
		{"rate_waiver", "Damage waiver", "percent of hire", float(r.Waiver), sheet.PercentPoint, percents()},
		{"rate_deposit", "Deposit", "percent of the total, due with the order", float(c.Company.Quote.Deposit), sheet.PercentPoint, percents()},
		{"rate_min_order", "Minimum order", "before tax; a smaller order is topped up", float(r.MinOrder), sheet.Money, amounts()},
		{"rate_margin_floor", "Margin floor", "percent; what earns less shows in red and is kept", float(r.MarginFloor), sheet.PercentPoint, percents()},
		{"rate_mileage", "Cost per " + l.sys.DistanceUnit(), "to the yard, for one vehicle", float(r.MileCost), sheet.Money, amounts()},
		{"rate_wet", "Wet cloth", "times its dry weight, on the way back", float(r.WetFactor), sheet.Factor, sheet.Validation{Kind: sheet.Decimal, Min: "1", Max: "3"}},
		{"rate_rider", "One person in a vehicle", l.sys.MassUnit() + " with tools and bag", l.q.Catalog.Fleet.Rider.In(l.sys), sheet.Weight, amounts()},
	})
}

// because is a reason as it goes on a label, none if none was given.
func because(reason string) string {
	if reason == "" {
		return ""
	}
	return ": " + reason
}

// heads writes a row of column headings on the rates sheet.
func heads(s *sheet.Sheet, names ...string) {
	cells := make([]sheet.Cell, len(names))
	for i, n := range names {
		cells[i] = in(text(n), sheet.Style{Role: sheet.Heading})
	}
	s.Rows = append(s.Rows, sheet.Row{Cells: cells})
}

// skillRates are what hours are charged at and paid at, and when they are
// overtime.
func (l *layout) skillRates(s *sheet.Sheet) {
	o := &l.q.Catalog.Rates.Overtime
	band(s, "Hourly rates", l.rateCols())
	heads(s, "Skill", "Id", "Charged", "Cost")
	for i := range l.q.Catalog.Rates.Skills {
		k := &l.q.Catalog.Rates.Skills[i]
		s.Rows = append(s.Rows, sheet.Row{Cells: []sheet.Cell{in(text(k.Name), body(sheet.Text)), in(text(k.ID), sheet.Style{Role: sheet.Key}),
			in(value(k.Bill), input(sheet.Money)), in(value(k.Cost), input(sheet.Money))}})
		l.cellName("rate_"+ident(k.ID)+"_bill", s, 3)
		l.cellName("rate_"+ident(k.ID)+"_cost", s, 4)
		l.allow(s, len(s.Rows), 3, amounts(), "what the customer pays for an hour")
		l.allow(s, len(s.Rows), 4, amounts(), "what an hour costs the yard, with taxes and insurance")
	}
	hours := func(max string) sheet.Validation { return sheet.Validation{Kind: sheet.Decimal, Min: "0", Max: max} }
	factor := sheet.Validation{Kind: sheet.Decimal, Min: "1", Max: "3"}
	l.settings(s, []setting{
		{"overtime_daily", "Hours a day at plain pay", "of one person", float(o.Daily), sheet.Hours, hours("24")},
		{"overtime_weekly", "Hours a week at plain pay", "of one person", float(o.Weekly), sheet.Hours, hours("168")},
		{"overtime_longest", "Longest day asked for", "hours of one person; the law may allow less", float(o.Longest), sheet.Hours, hours("24")},
		{"overtime_cost", "Overtime pay", "times the plain cost", float(o.CostFactor), sheet.Factor, factor},
		{"overtime_bill", "Overtime charge", "times the plain charge", float(o.BillFactor), sheet.Factor, factor},
	})
}

// rangeName names a block of one column, ending at the sheet's last row.
func (l *layout) rangeName(name string, s *sheet.Sheet, col, first int) {
	l.name(name, s, sheet.Range{R1: first, C1: col, R2: len(s.Rows), C2: col}, "")
}

// periodRates writes the steps of each period and its factor for this job.
func (l *layout) periodRates(s *sheet.Sheet) {
	band(s, "Prices by charged days", l.rateCols())
	heads(s, "Period", "", "From day", "Times base", "Each later day")
	for _, p := range l.q.Price.Periods {
		first := len(s.Rows) + 1
		for n, step := range p.Period.Steps {
			from := in(value(step.From), input(sheet.Whole))
			if n == 0 {
				from.Style = body(sheet.Whole) // the first day is always the first step's
			}
			s.Rows = append(s.Rows, sheet.Row{Cells: []sheet.Cell{in(text(p.Period.Name), body(sheet.Text)), in(text(p.Period.ID), sheet.Style{Role: sheet.Key}),
				from, in(value(step.Factor), input(sheet.Factor)), in(value(step.Each), input(sheet.Factor))}})
		}
		id := "period_" + ident(p.Period.ID)
		// MATCH wants rising steps; what people type is not sorted for them.
		l.allowDown(s, first, 3, wholes(1, 400), "from this charged day; rising from step to step, the first is 1")
		l.allowDown(s, first, 4, amounts(), "price from that day, times the base price")
		l.allowDown(s, first, 5, amounts(), "what each later day adds, times the base price")
		l.rangeName(id+"_from", s, 3, first)
		l.rangeName(id+"_factor", s, 4, first)
		l.rangeName(id+"_each", s, 5, first)
		s.Rows = append(s.Rows, sheet.Row{Cells: []sheet.Cell{in(text(p.Period.Name+", for this job"), sheet.Style{Role: sheet.Label}), {}, {},
			in(formula(periodFormula(id), p.Factor), sheet.Style{Role: sheet.Total, Format: sheet.Factor})}})
		l.cellName(id+"_times", s, 4)
	}
}

// periodFormula is price.Factor in a cell: the last step reached, and Each for
// every day beyond it.
func periodFormula(id string) string {
	match := "MATCH(job_days," + id + "_from,1)"
	at := func(col string) string { return "INDEX(" + id + "_" + col + "," + match + ")" }
	return at("factor") + "+" + at("each") + "*(job_days-" + at("from") + ")"
}

// areaRates are the prices of the families that are priced by floor area.
func (l *layout) areaRates(s *sheet.Sheet) {
	var list []setting
	per := " for each " + l.sys.AreaUnit() + " of floor"
	for i := range l.q.Catalog.Families {
		f := &l.q.Catalog.Families[i]
		if f.AreaPrice != nil {
			list = append(list, setting{"area_price_" + ident(f.ID), f.Name, "base price" + per, float(*f.AreaPrice), sheet.Money, amounts()})
		}
		if f.AreaCost != nil {
			list = append(list, setting{"area_cost_" + ident(f.ID), f.Name + ", cost", "cost of one hire" + per, float(*f.AreaCost), sheet.Money, amounts()})
		}
	}
	if len(list) > 0 {
		band(s, "Prices by floor area", l.rateCols())
		l.settings(s, list)
	}
}

// breakRates are the quantities from which a price is lower, class by class.
func (l *layout) breakRates(s *sheet.Sheet) {
	if len(l.q.Catalog.Rates.Breaks) == 0 {
		return
	}
	band(s, "Quantity breaks", l.rateCols())
	heads(s, "Class", "", "From", "Percent off")
	for _, class := range l.q.Catalog.Rates.Breaks {
		first := len(s.Rows) + 1
		for _, step := range class.Steps {
			s.Rows = append(s.Rows, sheet.Row{Cells: []sheet.Cell{in(text(class.Name), body(sheet.Text)), in(text(class.ID), sheet.Style{Role: sheet.Key}),
				in(value(step.From), input(sheet.Whole)), in(value(step.Off), input(sheet.PercentPoint))}})
		}
		l.allowDown(s, first, 3, wholes(1, 1000000), "from this quantity; rising from step to step")
		l.allowDown(s, first, 4, percents(), "percent off from this quantity")
		l.rangeName("break_"+ident(class.ID)+"_from", s, 3, first)
		l.rangeName("break_"+ident(class.ID)+"_off", s, 4, first)
	}
}

// taxRates are the taxes of the job's place; those of other places are left
// out, since which are due was decided with the place.
func (l *layout) taxRates(s *sheet.Sheet) {
	if len(l.q.Price.Taxes) == 0 {
		return
	}
	band(s, "Taxes due at the place of the event", l.rateCols())
	for _, t := range l.q.Price.Taxes {
		l.settings(s, []setting{{"tax_" + ident(t.Tax.ID) + "_rate", t.Tax.Name, "percent of what it falls on: " + strings.Join(t.Tax.Classes, ", "), float(t.Tax.Rate), sheet.PercentPoint, percents()}})
	}
}
