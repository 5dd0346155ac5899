package workbook

import (
	"slices"
	"strings"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/quote/crew"
	"tentwright/workbook/sheet"
)

// wide is a column of a table that runs over several columns of the sheet.
type wide struct {
	column
	over int
}

// planTable is a table of such columns, which together take all that print.
type planTable struct {
	*table
	p    *scheduleSheet
	wide []wide
	rest float64 // of the page, for its next rows
}

// planTable writes the headings; columns that hold keys stand behind what prints.
func (p *scheduleSheet) planTable(name string, cols []wide, keys ...column) *planTable {
	var all []column
	for _, c := range cols {
		all = append(all, c.column)
		for range c.over - 1 {
			all = append(all, column{style: c.style})
		}
	}
	t := &planTable{p.startTable(p.s, name, append(all, keys...)), p, cols, p.room() - tableHead}
	t.merge()
	return t
}

// row writes a line: a cell for each wide column, then the keys.
func (t *planTable) row(cells ...sheet.Cell) {
	all := make([]sheet.Cell, 0, len(t.cols))
	for i, c := range t.wide {
		if cells[i].Style == (sheet.Style{}) {
			cells[i].Style = c.style
		}
		all = append(all, cells[i])
		all = append(all, make([]sheet.Cell, c.over-1)...)
	}
	t.add(append(all, cells[len(t.wide):]...)...)
	t.merge()
}

// merge joins the columns of the last row.
func (t *planTable) merge() {
	col := t.left
	for _, c := range t.wide {
		if c.over > 1 {
			spread(t.s, col, col+c.over-1)
		}
		col += c.over
	}
}

// turn goes on to another page, with the headings again, once a page is full. Keys
// have no heading there, so that none is taken for a key.
func (t *planTable) turn(title string) {
	if t.rest -= rowLeast; t.rest >= 0 {
		return
	}
	head := slices.Clone(t.s.Rows[t.first-2].Cells[:planPrinted])
	t.p.page(title + ", continued")
	t.s.Rows = append(t.s.Rows, sheet.Row{Cells: head})
	t.merge()
	t.rest = t.p.room() - tableHead - rowLeast
}

// end closes the table; its spare row is joined like the others.
func (t *planTable) end() {
	t.table.end()
	t.merge()
}

// centred is the style of a short figure.
func centred(f sheet.Format) sheet.Style {
	return sheet.Style{Role: sheet.Body, Format: f, Align: sheet.Centre}
}

const sizesTitle = "How many people: what each number takes and costs"

// sizes shows what other numbers of people would take and cost.
func (p *scheduleSheet) sizes() {
	p.page(sizesTitle)
	t := p.planTable("crewsize", []wide{
		{column{"window", "Window", 0, wrap()}, 1},
		{column{"mark", "Mark", 0, sheet.Style{Role: sheet.Body, Wrap: true, Bold: true}}, 1},
		{column{"people", "People", 0, centred(sheet.Whole)}, 1},
		{column{"days", "Days", 0, centred(sheet.Whole)}, 1},
		{column{"nights", "Nights away", 0, centred(sheet.Whole)}, 1},
		{column{"finish", "Done on day", 0, centred(sheet.Whole)}, 1},
		{column{"at", "at", 0, centred(sheet.Clock)}, 1},
		{column{"meets", "In time", 0, centred(sheet.Text)}, 4},
		{column{"paid", "Paid hours", 0, body(sheet.Hours)}, 4},
		{column{"over", "Overtime", 0, body(sheet.Hours)}, 4},
		{column{"wages", "Wages", 0, body(sheet.Money)}, 5},
		{column{"beds", "Beds and meals", 0, body(sheet.Money)}, 5},
		{column{"cost", "Cost", 0, sheet.Style{Role: sheet.Body, Format: sheet.Money, Bold: true}}, 6},
	})
	p.each(func(w *crew.Window) {
		for i := range w.Sizes {
			p.size(t, w, &w.Sizes[i])
		}
	})
	t.end()
}

// size is one number of people.
func (p *scheduleSheet) size(t *planTable, w *crew.Window, z *crew.Size) {
	var marks []string
	if z.Asked {
		marks = append(marks, "asked")
	}
	if z.Cheapest {
		marks = append(marks, "cheapest")
	}
	t.turn(sizesTitle)
	meets, style := in(text("yes"), centred(sheet.Text)), sheet.Style{}
	if z.Cheapest {
		style = sheet.Style{Role: sheet.Good, Bold: true, Wrap: true}
	}
	if !z.Meets {
		meets = in(text("NO"), sheet.Style{Role: sheet.Warn, Align: sheet.Centre})
	}
	t.row(text(w.Labour.Spec.Name), in(text(strings.Join(marks, ", ")), style), value(z.People), value(z.Days), value(z.Nights), value(z.Finish.Day), clock(z.Finish.At),
		meets, value(hoursOf(z.Paid)), value(hoursOf(z.Overtime)), value(z.Wages), value(z.Beds), value(z.Cost))
}

// personKey is the key of one of a window's crew.
func personKey(w *crew.Window, who *crew.Person) string {
	return w.Labour.Spec.ID + "." + itoa(who.Number)
}

// people lists the crew of each window. Who each one is, the office types here;
// every day below shows it.
func (p *scheduleSheet) people() {
	title := "The crew: type each name once, the days below show it"
	p.page(title)
	t := p.planTable("people", []wide{
		{column{"window", "Window", 0, wrap()}, 1},
		{column{"name", "Name", 0, sheet.Style{Role: sheet.InputText}}, 3},
		{column{"number", "Person", 0, centred(sheet.Whole)}, 1},
		{column{"crew", "Crew", 0, centred(sheet.Whole)}, 1},
		{column{"paid", "Paid hours", 0, calc(sheet.Hours)}, 1},
		{column{"skills", "Must be able to", 0, after()}, 12},
		{column{"vehicle", "Vehicle", 0, after()}, 16},
	}, column{"key", "Key", 0, sheet.Style{Role: sheet.Key}})
	p.each(func(w *crew.Window) {
		for i := range w.People {
			who := &w.People[i]
			key := personKey(w, who)
			t.turn(title)
			t.row(text(w.Labour.Spec.Name), value(keptCell(p.kept.Names, key, any(""))), value(who.Number), value(who.Crew),
				formula("ROUND(SUMIFS(call_paid,call_person,"+t.at("key", t.next())+"),2)", paidHours(*who)),
				text(p.skillWords(who)), p.vehicle(w, who), text(key))
		}
	})
	t.end()
	p.allowColumn(t.table, "name", words(80), "who this is: with the skills and the licence that the row asks for")
}

// skillWords is what one must be able to do. A shop may price who leads and who
// drives as skills of their own.
func (p *scheduleSheet) skillWords(who *crew.Person) string {
	var list []string
	if who.Lead && !slices.Contains(who.Skills, catalog.LeadSkill) {
		list = append(list, catalog.LeadSkill)
	}
	if who.Driver && !slices.Contains(who.Skills, catalog.DriverSkill) {
		list = append(list, catalog.DriverSkill)
	}
	for _, id := range who.Skills {
		list = append(list, p.skillName(id))
	}
	return strings.Join(list, ", ")
}

// skillName is a skill of the rates in words.
func (p *scheduleSheet) skillName(id string) string {
	for i := range p.q.Catalog.Rates.Skills {
		if skill := &p.q.Catalog.Rates.Skills[i]; skill.ID == id {
			return strings.ToLower(skill.Name)
		}
	}
	return id
}

// vehicle is what one drives or rides in.
func (p *scheduleSheet) vehicle(w *crew.Window, who *crew.Person) sheet.Cell {
	switch {
	case who.Vehicle != "":
		return text("drives " + p.tripWords(who.Vehicle))
	case who.Rides != "":
		return text("rides in " + p.tripWords(who.Rides))
	case w.Setting != nil && w.Setting.Site && len(p.q.Load.Out.Trips) > 0:
		return in(text("NO SEAT: plan another way to the site"), sheet.Style{Role: sheet.Warn, Indent: 1})
	}
	return text("")
}

// tripWords is a trip by its key and vehicle.
func (p *scheduleSheet) tripWords(key string) string {
	if trip := p.trips[key]; trip != nil {
		return key + " " + vehicleName(trip)
	}
	return key
}

// basis is what the plan was made for, beside what it is now.
func (p *scheduleSheet) basis() {
	p.page("What the plan was made for")
	t := p.planTable("basis", []wide{
		{column{"what", "What", 0, wrap()}, 1},
		{column{"planned", "Planned for", 0, sheet.Style{Role: sheet.Body, Align: sheet.Left}}, 2},
		{column{"now", "Now", 0, sheet.Style{Role: sheet.Calc, Align: sheet.Left}}, 3},
		{column{"state", "State", 0, sheet.Style{Role: sheet.Calc, Bold: true}}, 1},
		{column{"where", "Stands on", 0, body(sheet.Text)}, planSlots},
	})
	p.each(func(w *crew.Window) {
		id, name := w.Labour.Spec.ID, w.Labour.Spec.Name
		cell := func(what string) string { return "window_" + ident(id) + "_" + what }
		p.based(t, name+": people", value(w.Labour.Crew), cell("crew"), sheet.Whole, SheetCrew)
		p.based(t, name+": days", value(w.Labour.Days), cell("days"), sheet.Whole, SheetCrew)
		p.based(t, name+": hours of its tasks", value(w.Labour.Hours), find("window_hours", "window_id", quoted(id)), sheet.Hours, SheetCrew)
		p.based(t, name+": smallest crew of its tasks", value(w.Labour.Smallest), cell("smallest"), sheet.Whole, SheetCrew)
		p.based(t, name+": worked that week already", value(w.Labour.Worked), cell("worked"), sheet.Hours, SheetCrew)
	})
	d := &p.q.Job.Dates
	p.based(t, "Delivery", value(d.Deliver), "job_date_deliver", sheet.DateLong, SheetJob)
	p.based(t, "Strike", value(d.Strike), "job_date_strike", sheet.DateLong, SheetJob)
	p.based(t, "Collection", value(d.Collect), "job_date_collect", sheet.DateLong, SheetJob)
	over := &p.q.Catalog.Rates.Overtime
	p.based(t, "Cost of an hour, all skills added up", value(p.pay()), p.payFormula(), sheet.Num2, SheetRates)
	p.based(t, "Hours of a day without overtime", value(over.Daily), "overtime_daily", sheet.Hours, SheetRates)
	p.based(t, "Hours of a week without overtime", value(over.Weekly), "overtime_weekly", sheet.Hours, SheetRates)
	p.based(t, "Overtime costs, times", value(over.CostFactor), "overtime_cost", sheet.Factor, SheetRates)
	mean, dev := spreadSums(p.q.Catalog)
	p.based(t, "Mean minutes, all rules added up", value(mean), "ROUND(SUM(rule_mean),4)", sheet.Num2, SheetRates)
	p.based(t, "Deviation of minutes, all rules added up", value(dev), "ROUND(SUM(rule_dev),4)", sheet.Num2, SheetRates)
	t.end()
	p.s.Highlights = append(p.s.Highlights, sheet.Highlight{Range: t.column("state"), Formula: t.at("state", t.first) + `="requote"`, Role: sheet.Warn})
}

// based is one thing that the plan rests on.
func (p *scheduleSheet) based(t *planTable, what string, planned sheet.Cell, now string, format sheet.Format, where string) {
	style := sheet.Style{Role: sheet.Body, Format: format, Align: sheet.Left}
	live := style
	live.Role = sheet.Calc
	row := t.next()
	t.row(text(what), in(planned, style), in(formula(now, planned.Value), live),
		formula("IF("+t.at("now", row)+"="+t.at("planned", row)+`,"","requote")`, ""), text(where))
}

// pay adds the hourly costs of all skills up, so that a change of any shows.
func (p *scheduleSheet) pay() money.Number {
	sum := money.Zero
	for i := range p.q.Catalog.Rates.Skills {
		sum = sum.Add(p.q.Catalog.Rates.Skills[i].Cost)
	}
	return sum
}

func (p *scheduleSheet) payFormula() string {
	var names []string
	for i := range p.q.Catalog.Rates.Skills {
		names = append(names, "rate_"+ident(p.q.Catalog.Rates.Skills[i].ID)+"_cost")
	}
	return "ROUND(" + strings.Join(names, "+") + ",4)"
}

// scheduleFormulas gives the formula of the check that holds the plan against
// what it was made for.
func (l *layout) scheduleFormulas(kind, _ string) (is, limit string, ok bool) {
	if kind == "requote schedule" && l.scheduled() {
		return `COUNTIF(basis_state,"requote")+COUNTIF(hours_state,"requote")+COUNTIF(work_state,"requote")`, "", true
	}
	return "", "", false
}
