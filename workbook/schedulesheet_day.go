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

// day is the chart of a day and the call times of its people. A day with more
// tasks than a page holds goes on in parts, each with its headings.
func (p *scheduleSheet) day(w *crew.Window, d *crew.Day) {
	tasks, shifts := tasksOf(w, d.Number), shiftsOf(w, d)
	room := p.room()
	parts := chunks(p.taskHeights(tasks), room-chartHead, room-chartHead)
	left, at := 0.0, 0
	for i, count := range parts {
		title := dayTitle(w, d)
		if len(parts) > 1 {
			title += fmt.Sprintf(", part %d of %d", i+1, len(parts))
		}
		part, a := tasks[at:at+count], axisOf(d.Call, d.End)
		if len(parts) > 1 {
			a = axisOf(timesOf(part))
		}
		p.page(title)
		p.dayTimes(w, d)
		p.chartHead(d, a)
		left = room - chartHead
		for k, h := range p.taskHeights(part) {
			p.bar(&part[k], a, d)
			left -= h
		}
		at += count
	}
	heights := slices.Repeat([]float64{rowLeast}, len(shifts))
	at = 0
	apart := left-callHead < rowLeast*float64(len(shifts)) // below the last bar there is no room for them
	for i, count := range chunks(heights, room-callHead, room-callHead) {
		if i > 0 || apart {
			p.page("Call times: " + dayTitle(w, d))
		} else {
			p.s.Rows = append(p.s.Rows, sheet.Row{})
		}
		p.callTimes(w, d, shifts[at:at+count])
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

// taskHeights is how high the rows of tasks are.
func (p *scheduleSheet) taskHeights(tasks []dayTask) []float64 {
	heights := make([]float64, len(tasks))
	for i := range tasks {
		name := sheet.TextHeight(tasks[i].words(), 10, false, true, 0, planWidths[0]*sheet.ColumnPoints)
		tent := sheet.TextHeight(tasks[i].Tent, 10, false, true, 0, planWidths[1]*sheet.ColumnPoints)
		people := sheet.TextHeight(numbers(tasks[i].who), 10, false, true, 0, planWidths[6]*sheet.ColumnPoints)
		heights[i] = max(rowLeast, name, tent, people)
	}
	return heights
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
func (p *scheduleSheet) chartHead(d *crew.Day, a axis) {
	p.fields(p.s, span(1, planPrinted, in(text(fmt.Sprintf("One column is %d minutes; the number in a bar is the hands at work. "+
		"A * and a framed bar: on the critical chain, late there is late at the end. Grey: a break.", int(a.slot))), sheet.Style{Role: sheet.Faint})))
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

// bar is the row of a task on one day.
func (p *scheduleSheet) bar(t *dayTask, a axis, d *crew.Day) {
	role := sheet.Bar
	if t.Critical {
		role = sheet.Chain
	}
	cells := []sheet.Cell{in(text(t.words()), wrap()), in(text(t.Tent), wrap()), in(value(numberOr(t.Crew)), centred(sheet.Whole)), in(value(numberOr(t.Hands)), centred(sheet.Whole)),
		in(clock(t.spells[0][0]), centred(sheet.Clock)), in(clock(t.spells[len(t.spells)-1][1]), centred(sheet.Clock)), t.people()}
	on, rest := a.filled(t.spells), a.resting(d)
	for slot := range a.slots {
		var c sheet.Cell
		switch {
		case on[slot]:
			c = in(t.mark(), sheet.Style{Role: role, Format: sheet.Whole})
		case rest[slot]:
			c.Style = sheet.Style{Role: sheet.Rest}
		case a.within(slot):
			c.Style = sheet.Style{Role: sheet.Body}
		}
		cells = append(cells, c)
	}
	p.s.Rows = append(p.s.Rows, sheet.Row{Cells: cells})
}

// people are the numbers of who does it.
func (d *dayTask) people() sheet.Cell {
	if len(d.who) == 1 {
		return in(value(d.who[0]), sheet.Style{Role: sheet.Body, Format: sheet.Whole, Align: sheet.Left})
	}
	return in(text(numbers(d.who)), wrap())
}

// mark is what stands in a bar: the hands, as far as there is room for them.
func (d *dayTask) mark() sheet.Cell {
	switch {
	case d.Hands == 0:
		return text("x")
	case d.Hands > 99:
		return text("+")
	}
	return value(d.Hands)
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

// called is one person on one day.
type called struct {
	who   *crew.Person
	shift crew.Shift
}

// shiftsOf lists who comes on a day.
func shiftsOf(w *crew.Window, d *crew.Day) (list []called) {
	for i := range w.People {
		if who := &w.People[i]; d.Number <= len(who.Days) && who.Days[d.Number-1].End > 0 {
			list = append(list, called{who, who.Days[d.Number-1]})
		}
	}
	return list
}

// callTimes is who comes when, and with which vehicle.
func (p *scheduleSheet) callTimes(w *crew.Window, d *crew.Day, list []called) {
	key := sheet.Style{Role: sheet.Key}
	t := p.planTable("call", []wide{
		{column{"name", "Name", 0, sheet.Style{Role: sheet.Calc, Wrap: true}}, 1},
		{column{"", "As", 0, wrap()}, 1},
		{column{"", "Crew", 0, centred(sheet.Whole)}, 1},
		{column{"", "Person", 0, centred(sheet.Whole)}, 1},
		{column{"", "Call", 0, sheet.Style{Role: sheet.Body, Format: sheet.Clock, Align: sheet.Centre, Bold: true}}, 1},
		{column{"", "End", 0, centred(sheet.Clock)}, 1},
		{column{"paid", "Paid hours", 0, body(sheet.Hours)}, 1},
		{column{"", "Vehicle", 0, after()}, planSlots},
	}, column{"person", "Person", 0, key}, column{"window", "Window", 0, key}, column{"day", "Day", 0, key})
	if p.calls == nil {
		p.calls = t
	}
	for _, c := range list {
		key := personKey(w, c.who)
		name := find("people_name", "people_key", t.at("person", t.next()))
		t.row(formula("IF(LEN("+name+")=0,\"\","+name+")", keptCell(p.kept.Names, key, any(""))), text(roleWords(c.who)), value(c.who.Crew), value(c.who.Number),
			clock(c.shift.Call), clock(c.shift.End), value(shiftHours(c.shift.Paid)), p.vehicle(w, c.who), text(key), text(w.Labour.Spec.ID), value(d.Number))
	}
}

// callNames names the columns of all lists of call times; between them stand
// charts, which have nothing in the columns of the keys.
func (p *scheduleSheet) callNames() {
	if p.calls == nil {
		return
	}
	for _, id := range []string{"paid", "person", "window"} {
		col := p.calls.col(id)
		p.name("call_"+id, p.s, sheet.Range{R1: p.calls.first, C1: col, R2: len(p.s.Rows), C2: col}, "")
	}
}

// roleWords is what one comes as.
func roleWords(who *crew.Person) string {
	switch {
	case who.Lead && who.Driver:
		return "lead, driver"
	case who.Lead:
		return "lead"
	case who.Driver:
		return "driver"
	}
	return "hand"
}
