package workbook

import (
	"strings"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/quote/labour"
	"tentwright/workbook/sheet"
)

// crewHours lays out the tasks, the windows of work with their crews, and the
// hours by skill and phase.
func (l *layout) crewHours() {
	s := l.sheet(SheetCrew, "Person-hours by task. Change crews and days here, minutes and pay on Rates; note what each task took.", sheet.TabCrew, true)
	l.windowTable(s)
	l.siteHours(s)
	l.skillTable(s)
	l.phaseTable(s)
	l.lifting(s)
	l.taskTable(s)
	s.FreezeRows = 2
	// Rule and key are for formulas.
	s.PrintArea = &sheet.Range{R1: 1, C1: 1, R2: len(s.Rows), C2: crewPrinted}
}

// crewPrinted is how many columns of the sheet print; those of the tasks behind
// them hold ids.
const crewPrinted = 14

// windowTable has one row for each stretch of work by one crew. It is the only
// place where crews and days are changed: hours each, overtime and the checks of
// long days follow from it.
func (l *layout) windowTable(s *sheet.Sheet) {
	band(s, "Windows of work, per person", crewPrinted)
	t := l.startTable(s, "window", []column{
		{"name", "Window", 0, body(sheet.Text)},
		{"id", "Id", 0, sheet.Style{Role: sheet.Key}},
		{"hours", "Hours of all", 0, calc(sheet.Hours)},
		{"actual", "Actual, of tasks known", 0, calc(sheet.Hours)},
		{"smallest", "Smallest crew", 0, calc(sheet.Whole)},
		{"crew", "People", 0, input(sheet.Whole)},
		{"days", "Days", 0, input(sheet.Whole)},
		{"worked", "Worked that week already", 0, input(sheet.Hours)},
		{"person", "Hours each", 0, calc(sheet.Hours)},
		{"day", "Each day", 0, calc(sheet.Hours)},
		{"plain", "Within the day", 0, calc(sheet.Hours)},
		{"before", "Week before", 0, calc(sheet.Hours)},
		{"over", "Overtime each", 0, calc(sheet.Hours)},
		{"share", "Overtime share", 0, calc(sheet.Percent)},
	})
	for i := range l.q.Labour.Windows {
		l.windowRow(t, i)
	}
	t.end()
	l.allowColumn(t, "crew", wholes(1, 200), "people who share the hours of this window")
	l.allowColumn(t, "days", wholes(1, 60), "days over which the hours are shared")
	l.allowColumn(t, "worked", sheet.Validation{Kind: sheet.Decimal, Min: "0", Max: "168"}, "hours that each has worked that week before this job")
	first := t.first
	s.Highlights = append(s.Highlights, sheet.Highlight{Range: t.column("crew"),
		Formula: "AND(LEN(" + t.at("id", first) + ")>0," + t.at("crew", first) + "<" + t.at("smallest", first) + ")", Role: sheet.Warn})
}

// windowRow writes the terms of labour.Window as formulas; earlier windows of
// the same week are named, since they are the ones that come first.
func (l *layout) windowRow(t *table, i int) {
	w := &l.q.Labour.Windows[i]
	row := t.next()
	at := func(id string) string { return t.at(id, row) }
	dayOver := "MIN(" + at("person") + ",MAX(0," + at("day") + "-overtime_daily)*" + at("days") + ")"
	t.add(text(w.Spec.Name), text(w.Spec.ID),
		formula("ROUND(SUMIFS(task_hours,task_window,"+at("id")+"),2)", w.Hours),
		formula("IF(COUNTIFS(task_window,"+at("id")+`,task_actual,">=0")=0,"",ROUND(SUMIFS(task_actual,task_window,`+at("id")+"),2))", l.worked(w.Spec.ID)),
		formula("SUMPRODUCT(MAX((task_window="+at("id")+")*task_smallest))", w.Smallest),
		value(w.Crew), value(w.Days), value(w.Worked),
		formula("ROUND("+at("hours")+"/"+at("crew")+",4)", w.Person),
		formula("ROUND("+at("person")+"/"+at("days")+",4)", w.Day),
		formula(at("person")+"-"+dayOver, w.Plain),
		formula(l.beforeFormula(i, at("worked")), w.Before),
		formula(at("person")+"-"+at("plain")+"+"+weekFormula(at("plain"), at("days"), at("before")), w.DayOver.Add(w.WeekOver)),
		formula("IF("+at("person")+">0,ROUND("+at("over")+"/"+at("person")+",6),0)", w.Share))
	for _, id := range []string{"crew", "days", "worked", "day", "plain", "smallest", "share"} {
		l.name("window_"+ident(w.Spec.ID)+"_"+id, t.s, sheet.Range{R1: row, C1: t.col(id), R2: row, C2: t.col(id)}, "")
	}
}

// beforeFormula is the hours of each person before a window: the most that was
// worked elsewhere that week, and those of earlier windows of that week.
func (l *layout) beforeFormula(i int, worked string) string {
	f := ""
	for k := range l.q.Labour.Windows[:i] {
		if other := &l.q.Labour.Windows[k]; other.Spec.Week == l.q.Labour.Windows[i].Spec.Week {
			name := "window_" + ident(other.Spec.ID)
			worked += "," + name + "_worked"
			f += "+" + withinFormula(name+"_plain", name+"_days", "7")
		}
	}
	return "MAX(" + worked + ")" + f
}

// withinFormula is the plain hours of so many of a window's days.
func withinFormula(plain, days, many string) string {
	return "ROUND(" + plain + "*MIN(" + many + "," + days + ")/" + days + ",4)"
}

// weekFormula is what of the plain hours is beyond the weekly limit: in the week
// that a window begins in, in each full week after it, and in the days left.
func weekFormula(plain, days, before string) string {
	first, full := withinFormula(plain, days, "7"), "MAX(1,INT("+days+"/7))"
	rest := withinFormula(plain, days, "MAX(0,"+days+"-"+full+"*7)")
	return "MAX(0," + before + "+" + first + "-MAX(overtime_weekly," + before + "))" +
		"+MAX(0," + first + "-overtime_weekly)*(" + full + "-1)+MAX(0," + rest + "-overtime_weekly)"
}

// skillTable has the hours and the cost of each skill in each window. Overtime
// is the window's share of them, since no schedule says who stays late.
func (l *layout) skillTable(s *sheet.Sheet) {
	band(s, "Hours by window and skill", crewPrinted)
	t := l.startTable(s, "skill", []column{
		{"name", "Skill", 0, body(sheet.Text)},
		{"window", "Window", 0, sheet.Style{Role: sheet.Key}},
		{"skill", "Id", 0, sheet.Style{Role: sheet.Key}},
		{"hours", "Hours", 0, calc(sheet.Hours)},
		{"over", "Of these overtime", 0, calc(sheet.Hours)},
		{"plain", "Plain", 0, calc(sheet.Hours)},
		{"cost", "Cost", 0, calc(sheet.Money)},
		{"bill", "Charged", 0, calc(sheet.Money)},
	})
	for i := range l.q.Labour.Skills {
		k := &l.q.Labour.Skills[i]
		row := t.next()
		at := func(id string) string { return t.at(id, row) }
		bill := "rate_" + ident(k.Skill.ID) + "_bill"
		cost := l.rounded("(" + at("plain") + "+" + at("over") + "*overtime_cost)*rate_" + ident(k.Skill.ID) + "_cost")
		t.add(text(k.Skill.Name), text(k.Window), text(k.Skill.ID),
			formula("ROUND(SUMIFS(task_hours,task_window,"+at("window")+",task_skill,"+at("skill")+"),2)", k.Hours),
			formula("ROUND("+at("hours")+"*"+find("window_share", "window_id", at("window"))+",2)", k.Over),
			formula("ROUND("+at("hours")+"-"+at("over")+",2)", k.Plain),
			formula(cost, k.Cost), formula(l.rounded(at("plain")+"*"+bill+"+"+at("over")+"*"+l.rounded(bill+"*overtime_bill")), k.Bill))
	}
	t.end()
	s.Rows = append(s.Rows, sheet.Row{Cells: []sheet.Cell{in(text("All hours"), sheet.Style{Role: sheet.Label, Bold: true}), {}, {},
		in(formula("ROUND(SUM(task_hours),2)", l.q.Labour.Hours), sheet.Style{Role: sheet.Grand, Format: sheet.Hours})}})
	l.cellName("total_hours", s, 4)
}

// phaseTable adds the hours up by phase, in the order of a job; phases without
// work stay, so that what is missing can be seen.
func (l *layout) phaseTable(s *sheet.Sheet) {
	band(s, "Hours by phase", crewPrinted)
	t := l.startTable(s, "phase", []column{
		{"name", "Phase", 0, body(sheet.Text)},
		{"hours", "Hours", 0, calc(sheet.Hours)},
	})
	for _, phase := range catalog.Phases() {
		sum := money.Zero
		for i := range l.q.Labour.Tasks {
			if task := &l.q.Labour.Tasks[i]; task.Rule.Phase == phase {
				sum = sum.Add(task.Hours)
			}
		}
		row := t.next()
		t.add(text(phase), formula("ROUND(SUMIFS(task_hours,task_phase,"+t.at("name", row)+"),2)", sum))
	}
	t.end()
}

// taskTable has one row for each labour rule and what it is applied to. It
// stands last, since it is by far the longest; the sheet has its widths.
func (l *layout) taskTable(s *sheet.Sheet) {
	s.Breaks = append(s.Breaks, len(s.Rows)+2) // the band begins a page
	band(s, "Tasks", crewPrinted)
	t := l.startTable(s, "task", []column{
		{"name", "Task", 30, wrap()},
		{"phase", "Phase", 13, wrap()},
		{"tent", "Tent", 12, wrap()},
		{"window", "Window", 10, wrap()},
		{"skill", "Skill", 11, wrap()},
		{"amount", "Count", 10, calc(sheet.Num2)},
		{"what", "Counted", 20, sheet.Style{Role: sheet.Body, Wrap: true, Indent: 1}},
		{"minutes", "Minutes each", 10, calc(sheet.General)},
		{"fixed", "Fixed minutes", 9, calc(sheet.General)},
		{"factor", "Site, times", 9, calc(sheet.Factor)},
		{"hours", "Hours", 9, sheet.Style{Role: sheet.Calc, Format: sheet.Hours, Bold: true}},
		{"actual", "Actual", 9, input(sheet.Hours)},
		{"smallest", "Smallest crew", 10, calc(sheet.Whole)},
		{"rule", "Rule", 13, sheet.Style{Role: sheet.Key}},
		{"key", "Key", 28, sheet.Style{Role: sheet.Key}},
	})
	for i := range l.q.Labour.Tasks {
		l.taskRow(t, &l.q.Labour.Tasks[i])
	}
	t.end()
	l.allowColumn(t, "actual", sheet.Validation{Kind: sheet.Decimal, Min: "0", Max: "10000"},
		"person-hours that the task took in fact; empty until it is known")
	t.widths()
	s.TitleRows = [2]int{t.first - 1, t.first - 1}
}

// taskRow writes labour.TaskHours as a formula. Minutes and smallest crew are
// looked up by rule, so that one cell on Rates moves every tent's task; lifting
// may ask for more people.
func (l *layout) taskRow(t *table, task *labour.Task) {
	row := t.next()
	at := func(id string) string { return t.at(id, row) }
	rule := ident(task.Rule.ID)
	driver, _ := catalog.FindDriver(task.Rule.Driver)
	smallest := 0
	if task.Hours.IsPositive() {
		smallest = task.Least
	}
	hours := "IF(" + at("amount") + ">0,ROUND((" + at("amount") + "*" + at("minutes") + "+" + at("fixed") + ")*" + at("factor") + "/60,2),0)"
	t.add(text(task.Rule.Name), text(task.Rule.Phase), text(task.Tent), text(task.Window), text(task.Rule.Skill),
		formula(l.countFormula(task.Count), task.Amount), text(driver.Name),
		formula("minutes_"+rule, task.Rule.Minutes), formula("fixed_"+rule, task.Rule.Fixed),
		formula(siteFormula(task.Sites), task.Factor), formula(hours, task.Hours), value(keptCell(l.kept.Actual, task.Key, nil)),
		formula("IF("+at("hours")+">0,"+l.smallestFormula(task.Rule, task.Tent)+",0)", smallest), text(task.Rule.ID), text(task.Key))
}

// worked is the hours that the tasks of a window took, of those that are known;
// an empty text where none are.
func (l *layout) worked(window string) any {
	sum, known := money.Zero, false
	for i := range l.q.Labour.Tasks {
		task := &l.q.Labour.Tasks[i]
		if hours, ok := l.kept.Actual[task.Key]; ok && task.Window == window {
			sum, known = sum.Add(hours), known || !hours.IsNegative()
		}
	}
	if !known {
		return ""
	}
	return money.Round(sum, 2)
}

// countFormula looks a count up, among those known before the load or after.
func (l *layout) countFormula(key string) string {
	for i := range l.q.Labour.Counts {
		if l.q.Labour.Counts[i].Key == key {
			return find("late_amount", "late_key", quoted(key))
		}
	}
	return find("count_amount", "count_key", quoted(key))
}

// siteFormula is the product of the site factors that slow a task.
func siteFormula(keys []string) string {
	if len(keys) == 0 {
		return "1"
	}
	terms := make([]string, len(keys))
	for i, key := range keys {
		terms[i] = "site_" + ident(key) + "_times"
	}
	return "ROUND(" + strings.Join(terms, "*") + ",4)"
}
