package crew

import (
	"slices"

	"tentwright/catalog/money"
)

const (
	mostSizes = 12 // rows of the table
	quick     = 5  // schedules made for each row
)

// sizes plans the window with the crew that is asked for and, in few tries,
// with others, and says what each would take and cost.
func (b *winder) sizes() (plan *draft, rows []Size) {
	want := asked(b.w)
	var last *draft
	better := 0 // row after which more people hardly shorten the work
	for _, people := range b.candidates(want) {
		tries := quick
		if people == want {
			tries = b.tries()
		}
		d := b.plan(people, tries, last)
		if last == nil || d.minutes()*hardly < last.minutes()*(hardly-1) {
			better = len(rows)
		}
		if people == want {
			plan = d
		}
		last = d
		rows = append(rows, b.size(d, people == want))
		if plan != nil && len(rows) > better+2 && people > want {
			break
		}
	}
	b.markCheapest(rows)
	return plan, rows
}

// hardly is the part of the work, one in so many, that more people must save
// to be worth a look at still more.
const hardly = 50

// markCheapest marks the row that costs least of those that meet the window.
func (b *winder) markCheapest(rows []Size) {
	cheapest := -1
	for i := range rows {
		if rows[i].Meets && (cheapest < 0 || rows[i].Cost.LessThan(rows[cheapest].Cost)) {
			cheapest = i
		}
	}
	if cheapest >= 0 {
		rows[cheapest].Cheapest = true
	}
}

// candidates is the numbers of people to look at: from the fewest who can do
// the tasks on, in steps that reach past the crew asked for.
func (b *winder) candidates(asked int) []int {
	least := b.smallest()
	step := max(1, (asked-least+mostSizes-4)/(mostSizes-3))
	var out []int
	for k := range mostSizes - 1 {
		out = append(out, least+k*step)
	}
	if !slices.Contains(out, asked) {
		out = append(out, asked)
	}
	slices.Sort(out)
	return out
}

// minutes is the working minutes of all parts.
func (d *draft) minutes() int {
	sum := 0
	for _, p := range d.parts {
		sum += p.finish()
	}
	return sum
}

// size is a row of the table.
func (b *winder) size(d *draft, asked bool) Size {
	p := d.wages()
	s := Size{People: len(d.t.people), Days: len(d.days), Finish: d.done, Paid: p.paid, Overtime: p.over, Wages: p.wages, Asked: asked}
	if b.stay {
		s.Nights = max(0, len(d.days)-1)
	}
	s.Beds = b.c.Currency().Round(b.c.Crew.Night.Mul(money.Int(s.Nights * s.People)))
	s.Cost = s.Wages.Add(s.Beds)
	s.Meets = b.meets(d)
	return s
}

// meets tells whether a draft is in time, within the days asked for and the
// longest day, with people enough for every task.
func (b *winder) meets(d *draft) bool {
	if d.late() || b.outside() || len(d.days) > b.given() || d.missed() || len(d.t.people) < b.smallest() {
		return false
	}
	longest := minutesOf(b.c.Rates.Overtime.Longest)
	for i := range d.t.people {
		for n := range d.t.people[i].Days {
			if d.t.people[i].Days[n].Paid > longest {
				return false
			}
		}
	}
	return true
}

// ready is by when all must be done: as the job says, else the end of the last
// day that it gives.
func (b *winder) ready() Moment {
	if b.ask.Ready != 0 {
		return Moment{b.due(), b.ask.Ready}
	}
	leave := b.leave
	b.leave = 0 // as if the crew left on the last day asked for
	ax := b.siteAxis(0)
	for _, s := range ax.more(b.given()) {
		ax.end = s.to
	}
	b.leave = leave
	return Moment{b.given(), clockOf(ax.end)}
}

// late tells whether the last work is done too late.
func (d *draft) late() bool { return d.b.ready().before(d.done) }

// missed tells whether the inspection cannot begin when the authority comes.
func (d *draft) missed() bool {
	at := d.find("inspection")
	return at >= 0 && (Moment{d.b.due(), d.b.ask.Inspect}).before(d.tasks[at].Start) && d.waited(at)
}

// waited tells whether the inspection waits for work, not for the end of a
// break.
func (d *draft) waited(at int) bool {
	p := d.parts[1]
	last := len(p.n.works) - 1
	return p.n.works[last].kind == Inspect && p.a.start[last] > p.n.works[last].release
}
