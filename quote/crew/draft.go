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
	leave int       // day on which a crew that stays leaves
	visit int       // first day of the inspection alone; 0: none
	quiet int       // day of which breaks are counted from the inspection; 0: none
	back  Moment    // from which the work in the yard behind the last drive is planned
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
	if ax.lost() {
		b.say("time", true, "%d days follow each other without time to work; such days are shown as worked from midnight to midnight, and other hours were expected", mostIdle)
	}
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
	// A way that this team's own list lacks is added to it: the list is a choice of
	// ways, and the plan for fewer people may have had another.
	for i := range modes {
		had := &fewer.z.modes[i][fewer.plan.Mode[i]]
		use := make([]int, len(p.z.pools))
		for k, n := range had.use {
			use[to[k]] += n
		}
		modes[i] = slices.IndexFunc(p.z.modes[i], func(m mode) bool { return m.crew == had.crew && slices.Equal(m.use, use) })
		if modes[i] < 0 && p.z.mixed(use) && p.n.works[i].least <= p.z.size(had.crew) {
			return // its own crew is large enough now
		}
		if modes[i] < 0 {
			modes[i] = p.z.add(i, &p.n.works[i], mode{had.crew, had.hands, use, p.z.needs(use)})
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

// upon makes the draft for so many people with the days as they are; fewer is
// that of fewer people, or nil. One who is not needed stands by, so that no larger
// crew takes longer.
func (b *winder) upon(people, tries int, fewer *draft) *draft {
	d := &draft{b: b, t: b.team(people), leave: b.leave, quiet: b.quiet}
	head := b.put(b.head, d.t, &axis{more: func(n int) []span { f := b.yard(n); return f.spans }}, tries, fewer.part(0))
	ahead := head.finish()
	d.first, _ = b.firstDay(ahead)
	ax := b.siteAxis(ahead)
	b.release(ax)
	var last *placed
	if fewer != nil && fewer.leave == d.leave && fewer.quiet == d.quiet && fewer.parts[0].finish() == ahead {
		last = fewer.parts[1]
	} else if fewer != nil {
		last = fewer.parts[1].carried(ax) // it was made for other days
	}
	site := b.put(b.site, d.t, ax, tries, last)
	if site.plan != nil && !b.stay {
		// Nothing of the site may fit the rest of the day: then the drive waits too.
		d.first = max(d.first, ax.spells(slices.Min(site.plan.Start), 1)[0].Day)
	}
	// The yard's work is done right before the first drive, when that may be late.
	head.ax = &axis{more: func(n int) []span {
		f := b.yard(n)
		if n == d.first && b.set.Site {
			f = b.frame(n, ahead)
		}
		return f.spans
	}}
	d.collect(head)
	d.collect(site)
	d.findVisit()
	d.roads(ahead)
	d.home(tries, fewer)
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
