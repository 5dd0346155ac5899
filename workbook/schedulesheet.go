package workbook

import (
	"cmp"
	"slices"

	"tentwright/catalog/money"
	"tentwright/quote/crew"
	"tentwright/quote/load"
	"tentwright/workbook/sheet"
)

// The columns of the sheet: those of words and figures, then one for each slot
// of time. The tables above the charts share them.
const (
	planFacts   = 7
	planPrinted = planFacts + planSlots
	slotWidth   = 2.7 // two digits
)

var planWidths = [planFacts]float64{34, 12, 6, 6.5, 7, 7, 11}

// scheduleSheet is the sheet while it is laid out.
type scheduleSheet struct {
	*layout
	s     *sheet.Sheet
	r     *crew.Result
	trips map[string]*load.Trip // of both ways
	calls *planTable            // the first list of call times
}

// scheduled tells whether there is a plan to show.
func (l *layout) scheduled() bool {
	return l.q.Crew != nil && slices.ContainsFunc(l.q.Crew.Windows, func(w crew.Window) bool { return len(w.Days) > 0 })
}

// schedule lays out who does what and when. The plan is the result of a search,
// so that its times are values; what it was made for stands beside what it is now.
func (l *layout) schedule() {
	if !l.scheduled() {
		return
	}
	s := l.sheet(SheetSchedule, "Who does what, when and in which order; then a page for each day. Type the names of the crew here; people and days are changed on Crew Hours.", sheet.TabCrew, true)
	p := &scheduleSheet{layout: l, s: s, r: l.q.Crew, trips: map[string]*load.Trip{}}
	for _, m := range []*load.Manifest{&l.q.Load.Out, &l.q.Load.Back} {
		for i := range m.Trips {
			p.trips[m.Trips[i].Key] = &m.Trips[i]
		}
	}
	for _, width := range planWidths {
		s.Columns = append(s.Columns, sheet.Column{Width: width})
	}
	for range planSlots {
		s.Columns = append(s.Columns, sheet.Column{Width: slotWidth})
	}
	p.head()
	p.each(p.summary)
	p.sizes()
	p.people()
	p.each(func(w *crew.Window) {
		for i := range w.Days {
			p.day(w, &w.Days[i])
		}
	})
	p.callNames()
	p.basis()
	s.FreezeRows = 2
	s.PrintArea = &sheet.Range{R1: 1, C1: 1, R2: len(s.Rows), C2: planPrinted}
}

// each does something for every window with work.
func (p *scheduleSheet) each(do func(*crew.Window)) {
	for i := range p.r.Windows {
		if w := &p.r.Windows[i]; len(w.Days) > 0 {
			do(w)
		}
	}
}

// planNotice stands above everything else on the sheet.
const planNotice = "These times are a plan, not a promise. Weather and the crew lead decide: work that is not safe waits, whatever the clock says. " +
	"Rest, driving and working hours are limited by law."

// head says what the plan is, and what a person must look at.
func (p *scheduleSheet) head() {
	p.line(planNotice, sheet.Style{Role: sheet.Notice, Wrap: true})
	list := slices.Clone(p.r.Cautions)
	slices.SortStableFunc(list, func(a, b crew.Caution) int { return boolRank(a.Severe) - boolRank(b.Severe) })
	for i := range list {
		c := &list[i]
		words, style := "LOOK: ", sheet.Style{Wrap: true}
		if c.Severe {
			words, style = "STOP: ", sheet.Style{Role: sheet.Warn, Wrap: true}
		}
		if name := p.windowName(c.Window); name != "" {
			words += name + ": "
		}
		words += c.Text
		if c.Source != "" {
			words += " (" + c.Source + ")"
		}
		p.line(words, style)
	}
}

// boolRank puts what is true first.
func boolRank(b bool) int {
	if b {
		return 0
	}
	return 1
}

// line writes words over all printed columns.
func (p *scheduleSheet) line(words string, style sheet.Style) {
	p.fields(p.s, span(1, planPrinted, in(text(words), style)))
}

// windowName is how people call a window; none of one that there is not.
func (p *scheduleSheet) windowName(id string) string {
	for i := range p.r.Windows {
		if spec := p.r.Windows[i].Labour.Spec; spec.ID == id {
			return spec.Name
		}
	}
	return ""
}

// thirds are the columns of three facts side by side: words, a day or a figure,
// and the time of the day.
var thirds = [3][3][2]int{{{1, 1}, {2, 3}, {4, 4}}, {{5, 7}, {8, 13}, {14, 15}}, {{17, 24}, {25, 30}, {31, 32}}}

// fact is one of three facts in a row: a figure or words, or a day and a time.
func fact(third int, words string, cells ...sheet.Cell) []field {
	at := thirds[third]
	list := []field{span(at[0][0], at[0][1], label(words))}
	if len(cells) == 1 {
		return append(list, span(at[1][0], at[2][1], cells[0]))
	}
	for i, c := range cells {
		list = append(list, span(at[i+1][0], at[i+1][1], c))
	}
	return list
}

// when is a moment of a window as two cells, the day and the time.
func when(w *crew.Window, m crew.Moment, style sheet.Style) []sheet.Cell {
	if m.Day == 0 {
		return []sheet.Cell{in(text("none"), style)}
	}
	day, at := style, style
	day.Format, day.Align = sheet.DateLong, sheet.Left
	at.Format, at.Align = sheet.Clock, sheet.Left
	return []sheet.Cell{in(value(w.Date(m)), day), in(clock(m.At), at)}
}

// late tells whether a moment comes after another.
func late(a, b crew.Moment) bool {
	return b.Day > 0 && cmp.Or(cmp.Compare(a.Day, b.Day), cmp.Compare(a.At, b.At)) > 0
}

// hoursOf are minutes as hours to two places.
func hoursOf(minutes int) money.Number { return money.Round(shiftHours(minutes), 2) }

// shiftHours are the minutes of one person's day as hours, so fine that their sums
// are right to two places.
func shiftHours(minutes int) money.Number {
	return money.Round(money.Int(minutes).Div(money.Int(60)), 6)
}

// summary is a window in a few lines: by when it is done, how sure that is, and
// how much of the paid time is spent on tasks.
func (p *scheduleSheet) summary(w *crew.Window) {
	band(p.s, w.Labour.Spec.Name, planPrinted)
	left := sheet.Style{Align: sheet.Left, Format: sheet.Hours}
	row := func(list ...[]field) { p.fields(p.s, slices.Concat(list...)...) }
	row(fact(0, "People", in(text(crewWords(w)), sheet.Style{Bold: true})),
		fact(1, "Days", in(text(daysWords(w)), daysStyle(w))),
		fact(2, "Called", when(w, crew.Moment{Day: 1, At: w.Days[0].Call}, sheet.Style{})...))
	plan, style := "Ready by the plan", sheet.Style{Bold: true}
	if late(w.Finish, w.Ready) {
		plan, style = "LATE: ready by the plan", sheet.Style{Role: sheet.Warn}
	}
	row(fact(0, plan, when(w, w.Finish, style)...), fact(1, "Asked by", when(w, w.Ready, sheet.Style{})...),
		fact(2, "Inspected", when(w, w.Inspect, sheet.Style{})...))
	if w.Spread.Runs > 0 {
		share, style := "In time, of "+itoa(w.Spread.Runs)+" runs", sheet.Style{Format: sheet.PercentWhole, Align: sheet.Left, Bold: true}
		if w.Spread.InTime < crew.Sure {
			share, style.Role = "In time, below 90 %", sheet.Warn
		}
		row(fact(0, "Half sure by", when(w, w.Spread.Half, sheet.Style{})...), fact(1, "Nine of ten sure by", when(w, w.Spread.Ninety, sheet.Style{Bold: true})...),
			fact(2, share, in(value(w.Spread.InTime), style)))
	}
	row(fact(0, "Paid hours, of all", in(formula("ROUND(SUMIFS(call_paid,call_window,"+quoted(w.Labour.Spec.ID)+"),2)", paidHours(w.People...)), left)),
		fact(1, "Of these at tasks", in(value(hoursOf(w.Work)), left)), fact(2, "Idle", in(value(hoursOf(w.Idle)), left)))
	row(fact(0, "Working hours, first to last", in(value(hoursOf(w.Minutes)), left)), fact(1, "No plan takes less than", in(value(hoursOf(w.Shortest)), left)),
		fact(2, "Plans compared", in(value(w.Tried), sheet.Style{Align: sheet.Left, Format: sheet.Whole})))
}

// paidHours is what some people are paid for in a window, as the sum of the cells
// of their days.
func paidHours(people ...crew.Person) money.Number {
	sum := money.Zero
	for i := range people {
		for _, shift := range people[i].Days {
			sum = sum.Add(shiftHours(shift.Paid))
		}
	}
	return money.Round(sum, 2)
}

// crewWords is the people of a window.
func crewWords(w *crew.Window) string {
	words := itoa(len(w.People))
	if w.Crews > 1 {
		words += " in " + itoa(w.Crews) + " crews"
	}
	switch {
	case w.Leads == 1:
		words += ", 1 lead"
	case w.Leads > 1:
		words += ", " + itoa(w.Leads) + " leads"
	}
	return words
}

// daysWords is the days of a window against those asked for.
func daysWords(w *crew.Window) string {
	switch days := len(w.Days); {
	case days > w.Asked:
		return "MORE: " + itoa(days) + ", asked " + itoa(w.Asked)
	case days < w.Asked:
		return itoa(days) + " of " + itoa(w.Asked) + " asked"
	default:
		return itoa(days) + ", as asked"
	}
}

func daysStyle(w *crew.Window) sheet.Style {
	if len(w.Days) > w.Asked {
		return sheet.Style{Role: sheet.Warn}
	}
	return sheet.Style{}
}
