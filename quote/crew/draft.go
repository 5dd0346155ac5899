package crew

import (
	"cmp"
	"slices"

	"tentwright/catalog/unit"
	"tentwright/quote/crew/schedule"
)

// draft is the plan of a window for one team.
type draft struct {
	b     *winder
	t     *team
	tasks []Task
	days  []Day
	parts []*placed // of the head, the site and the tail
	at    []int     // first task of each part
	to    []int     // place of each task once they are sorted
	first int       // day of the first drive
	tried int
	done  Moment // end of the last work on the site
}

// placed is a network in order, with its place on the clock.
type placed struct {
	n    *network
	z    *puzzle
	plan *schedule.Plan
	a    *assigner
	ax   *axis
}

// put orders a network on an axis, no later than a plan for fewer people did.
func (b *winder) put(n *network, t *team, ax *axis, tries int, fewer *placed) *placed {
	p := &placed{n: n, ax: ax, z: b.puzzle(n, t, ax)}
	if len(n.works) == 0 {
		return p
	}
	p.plan = p.z.solve(ax, tries)
	if fewer != nil && fewer.plan != nil && fewer.plan.Finish < p.plan.Finish {
		p.keep(fewer)
	}
	modes := make([]mode, len(n.works))
	for i := range modes {
		modes[i] = p.z.modes[i][p.plan.Mode[i]]
	}
	p.a = assign(n, t, p.z.pools, p.plan.Start, modes)
	return p
}

// keep takes over the plan for fewer people, if every work can be done by the
// same numbers of each pool here.
func (p *placed) keep(fewer *placed) {
	to := make([]int, len(fewer.z.pools))
	for k := range fewer.z.pools {
		f := &fewer.z.pools[k]
		to[k] = slices.IndexFunc(p.z.pools, func(o pool) bool {
			return o.crew == f.crew && slices.Equal(o.skills, f.skills) && len(o.people) >= len(f.people)
		})
		if to[k] < 0 {
			return
		}
	}
	modes := make([]int, len(p.n.works))
	for i := range modes {
		had := &fewer.z.modes[i][fewer.plan.Mode[i]]
		use := make([]int, len(p.z.pools))
		for k, n := range had.use {
			use[to[k]] += n
		}
		modes[i] = slices.IndexFunc(p.z.modes[i], func(m mode) bool { return m.crew == had.crew && slices.Equal(m.use, use) })
		if modes[i] < 0 {
			modes[i] = p.z.add(i, &p.n.works[i], mode{had.crew, had.hands, use})
		}
	}
	p.plan = &schedule.Plan{Start: slices.Clone(fewer.plan.Start), Mode: modes, Finish: fewer.plan.Finish, Tried: p.plan.Tried}
}

// finish is the working minute at which the last work is done.
func (p *placed) finish() int {
	end := 0
	if p.a != nil {
		for _, u := range p.a.until {
			end = max(end, u)
		}
	}
	return end
}

// plan makes the draft for so many people; fewer is that of fewer people, or
// nil. One who is not needed stands by, so that no larger crew takes longer.
func (b *winder) plan(people, tries int, fewer *draft) *draft {
	d := &draft{b: b, t: b.team(people)}
	head := b.put(b.head, d.t, &axis{more: func(n int) []span { f := b.yard(n); return f.spans }}, tries, fewer.part(0))
	ahead := head.finish()
	d.first, _ = b.firstDay(ahead)
	ax := b.siteAxis(ahead)
	b.release(ax)
	site := b.put(b.site, d.t, ax, tries, fewer.part(1))
	d.collect(head)
	d.collect(site)
	d.roads(ahead)
	d.home(tries, fewer.part(2))
	d.link()
	d.sortTasks()
	d.shifts()
	for _, p := range d.parts {
		if p.plan != nil {
			d.tried += p.plan.Tried
		}
	}
	return d
}

// part is the head, the site or the tail of a draft; nil of none.
func (d *draft) part(k int) *placed {
	if d == nil {
		return nil
	}
	return d.parts[k]
}

// collect writes the works of a part down as tasks.
func (d *draft) collect(p *placed) {
	d.at = append(d.at, len(d.tasks))
	d.parts = append(d.parts, p)
	first := len(d.tasks)
	for i := range p.n.works {
		w := &p.n.works[i]
		t := Task{Key: w.key, Kind: w.kind, Labour: w.task, Name: w.name, Tent: w.tent, Crew: p.a.mode[i].crew + 1,
			Hands: p.a.mode[i].hands, Minutes: p.a.minutes(i), Spells: p.ax.spells(p.a.start[i], p.a.minutes(i)),
			People: slices.Sorted(slices.Values(p.a.who[i]))}
		for _, a := range w.after {
			t.After = append(t.After, first+a)
		}
		t.ends()
		d.tasks = append(d.tasks, t)
	}
}

// ends sets start and finish from the spells.
func (t *Task) ends() {
	if n := len(t.Spells); n > 0 {
		t.Start = Moment{t.Spells[0].Day, t.Spells[0].From}
		t.Finish = Moment{t.Spells[n-1].Day, t.Spells[n-1].To}
	}
}

// drive puts in a task of the road.
func (d *draft) drive(key, name string, spells []Spell, people []int, after []int) int {
	t := Task{Key: key, Kind: Drive, Name: name, Hands: len(people), Spells: spells, People: people, After: after}
	for _, s := range spells {
		t.Minutes += int(s.To - s.From)
	}
	t.ends()
	d.tasks = append(d.tasks, t)
	return len(d.tasks) - 1
}

// everybody is the indices of all people, or of the drivers.
func (d *draft) everybody(driversOnly bool) []int {
	var out []int
	for i := range d.t.people {
		if !driversOnly || d.t.people[i].Driver {
			out = append(out, i)
		}
	}
	return out
}

// worked is when the first work of a day begins and the last one ends.
func (d *draft) worked(day int) (from, to unit.Clock) {
	for i := range d.tasks {
		for _, s := range d.tasks[i].Spells {
			if s.Day == day {
				if from == 0 || s.From < from {
					from = s.From
				}
				to = max(to, s.To)
			}
		}
	}
	return from, to
}

// lastDay is the last day on which something is done.
func (d *draft) lastDay() int {
	day := 0
	for i := range d.tasks {
		day = max(day, d.tasks[i].Finish.Day)
	}
	return day
}

// roads puts the drives of each day before its first work and behind its last,
// except the way home of the last day.
func (d *draft) roads(head int) {
	site := d.parts[1]
	for i := d.at[1]; i < len(d.tasks); i++ {
		d.done = later(d.done, d.tasks[i].Finish)
	}
	last := d.lastDay()
	for n := 1; n <= last; n++ {
		day := Day{Number: n, Date: d.b.date(n)}
		f := d.b.frame(n, head)
		from, to := d.worked(n)
		if from > 0 {
			day.Call, day.Arrive, day.Leave, day.End = from, from, to, to
			day.Breaks = f.pauses
			if d.b.set.Site && len(site.n.works) > 0 && n >= d.first {
				d.road(&day, &f, n, n == last)
			}
		}
		d.days = append(d.days, day)
	}
}

// road puts in the drives of one day.
func (d *draft) road(day *Day, f *frame, n int, last bool) {
	b := d.b
	all, drivers := d.everybody(false), d.everybody(true)
	if n == d.first || !b.stay {
		first := d.firstOnSite(n)
		day.Arrive = first
		out := f.before(int(first), b.trip.drive)
		begin := first
		if len(out) > 0 {
			begin = out[0].From
			d.drive(keyOfDay("drive-out", n), "Drive to the site", out, all, nil)
		}
		if papers := f.before(int(begin), b.trip.papers); len(papers) > 0 && len(drivers) > 0 {
			d.drive(keyOfDay("papers", n), b.trip.opening, papers, drivers, nil)
			begin = papers[0].From
		}
		day.Call = min(day.Call, begin)
	}
	if !b.stay && !last {
		if home := f.after(int(day.Leave), b.trip.drive); len(home) > 0 {
			d.drive(keyOfDay("drive-home", n), "Drive to the yard", home, all, nil)
			day.End = home[len(home)-1].To
		}
	}
}

// firstOnSite is when the first work on the site of a day begins.
func (d *draft) firstOnSite(n int) unit.Clock {
	first := unit.Clock(0)
	for i := d.at[1]; i < len(d.tasks); i++ {
		for _, s := range d.tasks[i].Spells {
			if s.Day == n && d.tasks[i].Kind != Drive && (first == 0 || s.From < first) {
				first = s.From
			}
		}
	}
	return first
}

// home puts in the last way home and what is done in the yard after it. Each
// goes to the next morning where it does not fit the day.
func (d *draft) home(tries int, fewer *placed) {
	b := d.b
	tail := &placed{n: b.tail}
	if !b.set.Site {
		d.collect(tail)
		return
	}
	day, clock := max(1, d.lastDay()), unit.Clock(0)
	f := b.yard(day)
	if len(b.site.works) > 0 {
		clock = d.days[day-1].Leave
		f = b.rest(day)
		if f.left(int(clock)) < b.trip.drive {
			day, clock = day+1, 0
			f = b.yard(day)
		}
		if home := f.after(int(clock), b.trip.drive); len(home) > 0 {
			d.drive(keyOfDay("drive-home", day), "Drive to the yard", home, d.everybody(false), nil)
			clock = home[len(home)-1].To
		}
	}
	ax := &axis{days: day - 1, more: func(n int) []span {
		if n != day {
			y := b.yard(n)
			return y.spans
		}
		return cutBefore(f.spans, int(clock))
	}}
	tail = b.put(b.tail, d.t, ax, tries, fewer)
	if over := tail.finish(); over > 0 && over > f.left(int(clock)) && f.left(int(clock)) < f.total {
		// It does not fit what is left of the day.
		ax = &axis{days: day, more: func(n int) []span { y := b.yard(n); return y.spans }}
		tail = b.put(b.tail, d.t, ax, tries, fewer)
	}
	d.collect(tail)
	d.addDays()
}

// rest is a day on the site with its breaks as they fall, until the end of the
// crew's day or, where the site keeps it longer, as long as it takes to come
// home.
func (b *winder) rest(n int) frame {
	f := b.frame(n, 0)
	if k := len(f.spans) - 1; k >= 0 {
		more := max(0, int(b.set.Finish)-f.spans[k].to)
		f.spans[k].to += more
		f.total += more
	}
	return f
}

// cutBefore drops what lies before a time of the day.
func cutBefore(spans []span, clock int) []span {
	var out []span
	for _, s := range spans {
		if s.from = max(s.from, clock); s.from < s.to {
			out = append(out, s)
		}
	}
	return out
}

// addDays stretches the days to what was put in last, and adds those that are
// new.
func (d *draft) addDays() {
	for n := 1; n <= d.lastDay(); n++ {
		from, to := d.worked(n)
		if n > len(d.days) {
			y := d.b.yard(n)
			d.days = append(d.days, Day{Number: n, Date: d.b.date(n), Call: from, Arrive: from, Leave: from, Breaks: y.pauses})
		}
		d.days[n-1].End = max(d.days[n-1].End, to)
	}
}

// sortTasks puts the tasks in order of start and key, and their references
// with them.
func (d *draft) sortTasks() {
	order, to := make([]int, len(d.tasks)), make([]int, len(d.tasks))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(x, y int) int {
		a, b := &d.tasks[x], &d.tasks[y]
		return cmp.Or(cmp.Compare(a.Start.Day, b.Start.Day), cmp.Compare(a.Start.At, b.Start.At), cmp.Compare(a.Key, b.Key))
	})
	sorted := make([]Task, len(d.tasks))
	for n, i := range order {
		sorted[n], to[i] = d.tasks[i], n
	}
	for i := range sorted {
		for k, a := range sorted[i].After {
			sorted[i].After[k] = to[a]
		}
		slices.Sort(sorted[i].After)
	}
	d.tasks, d.to = sorted, to
}
