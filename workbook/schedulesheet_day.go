package workbook

import (
	"fmt"
	"slices"
	"strings"

	"tentwright/catalog/unit"
	"tentwright/quote/crew"
	"tentwright/workbook/sheet"
)

// Heights of what stands above the rows of a day's page, in points, and of the
// rows themselves at least.
const (
	chartHead = 112.0 // title, name of the day, its times, breaks and headings of the chart
	callHead  = 60.0  // its title and headings
	callGap   = 42.0  // the same below a chart
	tableHead = 90.0  // title of the sheet and of the table, and its headings
	rowLeast  = 15.0
)

// room is the height of a printed page in the sheet's own points. The width of
// all columns sets the scale: a digit is 7 dots wide, and each column 5 more, of
// 96 to an inch.
func (p *scheduleSheet) room() float64 {
	const digit, edge, dots, inch, reserve = 7.0, 5.0, 72.0 / 96, 72.0, 0.97
	wide, high := 792.0, 612.0 // letter, on its side
	if strings.EqualFold(p.s.Page.Paper, "a4") {
		wide, high = 842, 595
	}
	sum := 0.0
	for _, c := range p.s.Columns[:planPrinted] {
		sum += (c.Width*digit + edge) * dots
	}
	scale := min(1, (wide-0.5*inch)/sum)
	return (high - 1.2*inch) / scale * reserve
}

// page begins a printed page with a title.
func (p *scheduleSheet) page(title string) {
	p.s.Breaks = append(p.s.Breaks, len(p.s.Rows)+2)
	band(p.s, title, planPrinted)
}

// day is the page of a day: its chart and the call times of its people. Where
// rows of the chart stand for several tasks, the tasks follow one by one.
func (p *scheduleSheet) day(w *crew.Window, d *crew.Day) {
	tasks, shifts := tasksOf(w, d.Number), shiftsOf(w, d)
	if len(tasks)+len(shifts) == 0 {
		return // nobody works
	}
	f := p.fit(tasks, shifts)
	title, a := dayTitle(w, d), axisOf(d.Call, d.End)
	p.page(title)
	p.dayTimes(w, d)
	p.chartHead(d, a, f.by)
	for i := range f.rows {
		p.bar(&f.rows[i], a, d)
	}
	if f.brief {
		p.callLines(shifts)
	} else {
		p.s.Rows = append(p.s.Rows, sheet.Row{})
		p.callTimes(w, d, shifts)
	}
	if f.by != byTask {
		p.detail(w, d, tasks)
	}
	if f.brief {
		p.callPages(w, d, shifts)
	}
}

// detail is the tasks of a day one by one, cut into pages; each has an axis of
// its own.
func (p *scheduleSheet) detail(w *crew.Window, d *crew.Day, tasks []dayTask) {
	rows := p.rowsOf(tasks, byTask)
	room, at := p.room()-chartHead, 0
	parts := chunks(p.rowHeights(rows), room, room)
	for i, count := range parts {
		title := dayTitle(w, d) + ", in detail"
		if len(parts) > 1 {
			title += fmt.Sprintf(", part %d of %d", i+1, len(parts))
		}
		a := axisOf(timesOf(tasks[at : at+count]))
		p.page(title)
		p.dayTimes(w, d)
		p.chartHead(d, a, byTask)
		for k := range count {
			p.bar(&rows[at+k], a, d)
		}
		at += count
	}
}

// dayTitle names a day.
func dayTitle(w *crew.Window, d *crew.Day) string {
	title := w.Labour.Spec.Name
	if len(w.Days) > 1 {
		title += fmt.Sprintf(", day %d of %d", d.Number, len(w.Days))
	}
	if d.Number > w.Asked {
		title += ", MORE THAN ASKED"
	}
	return title
}

// dayTimes is the day and when everybody is where.
func (p *scheduleSheet) dayTimes(w *crew.Window, d *crew.Day) {
	at := sheet.Style{Format: sheet.Clock, Align: sheet.Left, Bold: true}
	list := []field{
		span(1, 1, in(value(d.Date), sheet.Style{Format: sheet.DateLong, Align: sheet.Left, Bold: true})),
		span(2, 2, label("Call")), span(3, 3, in(clock(d.Call), at)),
	}
	if w.Setting != nil && w.Setting.Site {
		list = append(list, span(5, 6, label("On the site")), span(7, 7, in(clock(d.Arrive), at)),
			span(9, 14, label("Leaves the site")), span(15, 16, in(clock(d.Leave), at)))
	}
	p.fields(p.s, append(list, span(19, 24, label("Day ends")), span(25, 26, in(clock(d.End), at)))...)
}

// timesOf is when the first of some tasks begins on a day, and the last ends.
func timesOf(tasks []dayTask) (begin, end unit.Clock) {
	begin = tasks[0].spells[0][0]
	for i := range tasks {
		end = max(end, tasks[i].spells[len(tasks[i].spells)-1][1])
	}
	return begin, end
}

// chartHead is the breaks by name over their columns, and the headings.
func (p *scheduleSheet) chartHead(d *crew.Day, a axis, by grouping) {
	p.fields(p.s, span(1, planPrinted, in(text(fmt.Sprintf("One column is %d minutes; the number in a bar is the hands at work. "+
		"A * and a framed bar: on the critical chain, late there is late at the end. Grey: a break.%s", int(a.slot), by.words())), sheet.Style{Role: sheet.Faint})))
	rest := make([]sheet.Cell, planFacts+a.slots)
	rest[0] = in(text(breakWords(d)), sheet.Style{Role: sheet.Faint})
	for _, b := range d.Breaks {
		if on := a.filled([][2]unit.Clock{{b.From, b.To}}); b.To > a.begin && b.From < a.end {
			rest[planFacts+slices.Index(on, true)].Value = b.Spec.Name
		}
	}
	for slot, on := range a.resting(d) {
		if on {
			rest[planFacts+slot].Style = sheet.Style{Role: sheet.Rest}
		}
	}
	p.s.Rows = append(p.s.Rows, sheet.Row{Cells: rest})
	head := sheet.Style{Role: sheet.Heading}
	centre := sheet.Style{Role: sheet.Heading, Align: sheet.Centre}
	cells := []sheet.Cell{in(text("Task"), head), in(text("Tent"), head), in(text("Crew"), centre), in(text("Hands"), centre),
		in(text("Start"), centre), in(text("Finish"), centre), in(text("People"), head)}
	row, step := len(p.s.Rows)+1, int(a.label/a.slot)
	for slot := range a.slots {
		c := in(sheet.Cell{}, sheet.Style{Role: sheet.Heading, Format: sheet.Clock, Align: sheet.Left})
		// A time has no room over one column.
		if last := min(slot+step, a.slots); slot%step == 0 && last > slot+1 {
			c.Value = clock(a.from + unit.Clock(slot)*a.slot).Value
			p.s.Merges = append(p.s.Merges, sheet.Range{R1: row, C1: planFacts + slot + 1, R2: row, C2: planFacts + last})
		}
		cells = append(cells, c)
	}
	p.s.Rows = append(p.s.Rows, sheet.Row{Cells: cells, Height: 18})
}

// breakWords are the breaks of a day with their times.
func breakWords(d *crew.Day) string {
	var list []string
	for _, b := range d.Breaks {
		list = append(list, fmt.Sprintf("%s %s to %s", b.Spec.Name, b.From, b.To))
	}
	if len(list) == 0 {
		return "No breaks"
	}
	return strings.Join(list, ", ")
}

// bar is a row of a chart.
func (p *scheduleSheet) bar(r *chartRow, a axis, d *crew.Day) {
	cells := []sheet.Cell{in(text(r.words), wrap()), in(text(r.tent), wrap()), r.crew(), in(value(numberOr(r.hands)), centred(sheet.Whole)),
		in(clock(r.start), centred(sheet.Clock)), in(clock(r.finish), centred(sheet.Clock)), r.people()}
	marks, rest := r.marks(a), a.resting(d)
	for slot := range a.slots {
		var c sheet.Cell
		switch m := marks[slot]; {
		case m.on:
			c = in(m.cell(), sheet.Style{Role: m.role(), Format: sheet.Whole})
		case rest[slot]:
			c.Style = sheet.Style{Role: sheet.Rest}
		case a.within(slot):
			c.Style = sheet.Style{Role: sheet.Body}
		}
		cells = append(cells, c)
	}
	p.s.Rows = append(p.s.Rows, sheet.Row{Cells: cells})
}

// numberOr is a number that is known, or an empty cell.
func numberOr(n int) any {
	if n == 0 {
		return nil
	}
	return n
}

// resting tells which columns the breaks of a day fill.
func (a axis) resting(d *crew.Day) []bool {
	rest := make([]bool, a.slots)
	for _, b := range d.Breaks {
		if b.To <= a.begin || b.From >= a.end {
			continue
		}
		for slot, on := range a.filled([][2]unit.Clock{{b.From, b.To}}) {
			rest[slot] = rest[slot] || on
		}
	}
	return rest
}
