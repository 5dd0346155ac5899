package workbook

import (
	"cmp"
	"fmt"
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/crew"
	"tentwright/workbook/sheet"
)

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
		t.row(formula("IF(LEN("+name+")=0,\"\","+name+")", keptCell(p.kept.Names, key, any(""))), text(roleWords(c.who, p.q.Catalog.Hand().ID)), value(c.who.Crew), value(c.who.Number),
			clock(c.shift.Call), clock(c.shift.End), value(shiftHours(c.shift.Paid)), p.vehicle(w, c.who), text(key), text(w.Labour.Spec.ID), value(d.Number))
	}
}

// callPages is the list of who comes when on pages of its own.
func (p *scheduleSheet) callPages(w *crew.Window, d *crew.Day, shifts []called) {
	room, at := p.room()-callHead, 0
	for _, count := range chunks(slices.Repeat([]float64{rowLeast}, len(shifts)), room, room) {
		p.page("Call times: " + dayTitle(w, d))
		p.callTimes(w, d, shifts[at:at+count])
		at += count
	}
}

// callWords says in few lines who comes when: those with the same times together.
func callWords(list []called) (lines []string) {
	who := map[[2]unit.Clock][]int{}
	var times [][2]unit.Clock
	for _, c := range list {
		at := [2]unit.Clock{c.shift.Call, c.shift.End}
		if who[at] == nil {
			times = append(times, at)
		}
		who[at] = append(who[at], c.who.Number)
	}
	slices.SortFunc(times, func(a, b [2]unit.Clock) int { return cmp.Or(cmp.Compare(a[0], b[0]), cmp.Compare(a[1], b[1])) })
	for _, at := range times {
		slices.Sort(who[at])
		lines = append(lines, fmt.Sprintf("Call %s, end %s, %d people: %s", at[0], at[1], len(who[at]), numbers(who[at])))
	}
	return lines
}

// callLines is who comes when on the page of a day with more people than it has
// room for; their names stand on the list that follows.
func (p *scheduleSheet) callLines(list []called) {
	p.s.Rows = append(p.s.Rows, sheet.Row{})
	p.line("Call times by the numbers of the people; the names follow.", sheet.Style{Role: sheet.Faint})
	for _, words := range callWords(list) {
		p.line(words, sheet.Style{Wrap: true, Bold: true})
	}
}

// callHeight is how high the call times below a chart are, in points.
func (p *scheduleSheet) callHeight(list []called, brief bool) float64 {
	if !brief {
		return callGap + rowLeast*float64(len(list))
	}
	wide := 0.0
	for _, c := range p.s.Columns[:planPrinted] {
		wide += c.Width * sheet.ColumnPoints
	}
	sum := callGap
	for _, words := range callWords(list) {
		sum += max(rowLeast, sheet.TextHeight(words, 10, true, true, 0, wide))
	}
	return sum
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

// roleWords is what one comes as; hand is the skill of those who have no other.
func roleWords(who *crew.Person, hand string) string {
	switch {
	case who.Lead && who.Driver:
		return "lead, driver"
	case who.Lead:
		return "lead"
	}
	// What not everybody may do counts more than who drives, which the vehicle tells.
	for _, id := range who.Skills {
		if id != catalog.DriverSkill && id != hand {
			return id
		}
	}
	if who.Driver {
		return "driver"
	}
	return "hand"
}
