package crew

import (
	"slices"

	"tentwright/catalog/unit"
)

// behindVisit tells of each work of the site whether it is the inspection or
// waits for it, directly or through others.
func (b *winder) behindVisit() []bool {
	return b.held(func(w *work) bool { return w.kind == Inspect })
}

// held tells of each work of the site whether it is one of some, or waits for
// one of them, directly or through others.
func (b *winder) held(by func(*work) bool) []bool {
	works := b.site.works
	held := make([]bool, len(works))
	for i := range works {
		held[i] = by(&works[i])
	}
	for again := true; again; {
		again = false
		for i := range works {
			if !held[i] && slices.ContainsFunc(works[i].after, func(a int) bool { return held[a] }) {
				held[i], again = true, true
			}
		}
	}
	return held
}

// findVisit finds the day from which on nothing but the inspection, and what
// waits for it, is left on the site: then only those who do that come. There is
// none where the goods come home at the end, for then all hands are needed.
func (d *draft) findVisit() {
	b := d.b
	if b.ask.Inspect == 0 || slices.ContainsFunc(b.tail.works, func(w work) bool { return w.kind != Drive }) {
		return
	}
	last, behind := 0, b.behindVisit()
	for k := range behind {
		t := &d.tasks[d.at[1]+k]
		if !behind[k] {
			last = max(last, t.Finish.Day)
		}
	}
	if end := d.lastDay(); last >= d.first && last < end {
		d.visit = last + 1
	}
}

// party is who is on the site on a day: everybody, or on a day of the inspection
// alone those who have something to do, with the drivers who bring them.
func (d *draft) party(n int) []int {
	if d.visit == 0 || n < d.visit {
		return d.everybody(false)
	}
	var out []int
	for k := range d.parts[1].n.works {
		t := &d.tasks[d.site(k)]
		if slices.ContainsFunc(t.Spells, func(s Spell) bool { return s.Day == n }) {
			out = append(out, t.People...)
		}
	}
	slices.Sort(out)
	return d.driven(slices.Compact(out))
}

// site is the place of a work of the site among the tasks.
func (d *draft) site(k int) int {
	if d.to != nil {
		return d.to[d.at[1]+k]
	}
	return d.at[1] + k
}

// driven adds drivers to people until all have a seat, or all drivers come: first
// of the vehicles in which they have their seats.
func (d *draft) driven(out []int) []int {
	seats := 0
	for _, p := range out {
		seats += d.seats(p)
	}
	for _, own := range []bool{true, false} {
		for p := range d.t.people {
			who := &d.t.people[p]
			if seats >= len(out) && seats > 0 || !who.Driver || slices.Contains(out, p) {
				continue
			}
			if own && !slices.ContainsFunc(out, func(o int) bool { return d.t.people[o].Rides == who.Vehicle }) {
				continue
			}
			out = append(out, p)
			seats += d.seats(p)
		}
	}
	slices.Sort(out)
	return out
}

// seats is for how many the vehicle of a person has room; 0 of one who does not
// drive.
func (d *draft) seats(p int) int {
	for _, t := range d.b.trip.vehicles {
		if who := &d.t.people[p]; who.Driver && t.Key == who.Vehicle {
			return max(1, t.Riders)
		}
	}
	return 0
}

// wheelers is those of some people who drive.
func (d *draft) wheelers(people []int) []int {
	return slices.DeleteFunc(slices.Clone(people), func(p int) bool { return !d.t.people[p].Driver })
}

// closeEarly puts in the closing papers of the drivers who do not come again on
// a day of the inspection alone, where the day has the time.
func (d *draft) closeEarly(n int, home int) {
	b := d.b
	if d.visit == 0 || n+1 < d.visit || b.trip.closing == 0 {
		return
	}
	var done []int
	for _, p := range d.wheelers(d.party(n)) {
		again := false
		for m := n + 1; m <= d.lastSite(); m++ {
			again = again || slices.Contains(d.party(m), p)
		}
		if !again {
			done = append(done, p)
		}
	}
	f, from := d.rest(n), d.tasks[home].Finish.At
	if len(done) == 0 || n < d.lastSite() && f.left(int(from)) < b.trip.closing {
		return
	}
	if n == d.lastSite() && f.left(int(from)) < b.trip.closing {
		n, from, f = n+1, 0, b.yard(n+1)
	}
	d.drive(keyOfDay("closing/", n), b.trip.close, f.after(int(from), b.trip.closing), done, []int{home})
}

// lastSite is the last day with work on the site.
func (d *draft) lastSite() int {
	day := 0
	for k := range d.parts[1].n.works {
		day = max(day, d.tasks[d.site(k)].Finish.Day)
	}
	return day
}

// visitHours is between which times the site is worked on the day of the
// inspection.
func (b *winder) visitHours() (from, until unit.Clock) {
	for i, s := range b.siteAxis(0).more(b.due()) {
		if i == 0 {
			from = unit.Clock(s.from)
		}
		until = unit.Clock(s.to)
	}
	return from, until
}

// outside tells whether the inspection, with the time that it takes, is not
// within the hours in which the site is worked on its day.
func (b *winder) outside() bool {
	if b.ask.Inspect == 0 || len(b.site.works) == 0 {
		return false
	}
	from, until := b.visitHours()
	return b.ask.Inspect < from || b.ask.Inspect+unit.Clock(b.c.Crew.Inspection) > until
}

// sayOutside says that, and which hours there are.
func (b *winder) sayOutside() {
	from, until := b.visitHours()
	if b.ask.Inspect < from {
		b.say("inspection", true, "inspection at %s; the site is worked from %s", b.ask.Inspect, from)
		return
	}
	b.say("inspection", true, "inspection at %s; the site is worked until %s", b.ask.Inspect, until)
}

// upTo is when all work is done that does not wait for the inspection.
func (d *draft) upTo() Moment {
	var m Moment
	for k, behind := range d.b.behindVisit() {
		if !behind {
			m = later(m, d.tasks[d.site(k)].Finish)
		}
	}
	return m
}

// homeward is who rides home after the last day on the site: a crew that stayed
// does so together.
func (d *draft) homeward(day int) []int {
	if d.b.stay {
		return d.everybody(false)
	}
	return d.party(min(day, d.lastSite()))
}

// plan makes the draft for so many people; fewer is that of fewer people, or nil.
// A crew that stays leaves on the first day, from the last one asked for on, by
// which the work is done; no other day gives time to the way home.
func (b *winder) plan(people, tries int, fewer *draft) *draft {
	const most = 1000 // days, which keep a fault from becoming a loop without end
	for b.leave = b.w.Days; ; b.leave++ {
		b.quiet = 0
		d := b.upon(people, tries, fewer)
		if d.visit > 0 && d.visit == b.due() {
			b.quiet = d.visit
			if q := b.upon(people, tries, fewer); q.visit == d.visit {
				d = q
			} else {
				b.quiet = 0
			}
		}
		if !b.stay || b.leave > most || d.lastSite() <= b.leave {
			return d
		}
	}
}
