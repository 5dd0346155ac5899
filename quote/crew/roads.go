package crew

import "tentwright/catalog/unit"

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
		if n < d.first {
			f = d.b.yard(n)
		}
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
	all := d.party(n)
	drivers := d.wheelers(all)
	first := d.firstOnSite(n)
	switch {
	case first == 0 && n == d.first:
		d.eve(day, f, all, drivers)
	case n == d.first || !b.stay:
		day.Arrive = first
		out := f.before(int(first), b.trip.drive)
		begin := first
		if len(out) > 0 {
			begin = out[0].From
			d.drive(keyOfDay(driveOut, n), "Drive to the site", out, all, nil)
		}
		if papers := f.before(int(begin), b.trip.papers); len(papers) > 0 && len(drivers) > 0 {
			d.drive(keyOfDay(papersOut, n), b.trip.opening, papers, drivers, nil)
			begin = papers[0].From
		}
		day.Call = min(day.Call, begin)
	}
	if !b.stay && !last {
		if home := f.after(int(day.Leave), b.trip.drive); len(home) > 0 {
			d.drive(keyOfDay(driveHome, n), "Drive to the yard", home, all, nil)
			d.closeEarly(n, len(d.tasks)-1)
			day.End = d.tasks[len(d.tasks)-1].Finish.At
		}
	}
}

// eve puts the way out behind the work in the yard, where that on the site begins
// on a later day and the crew stays there.
func (d *draft) eve(day *Day, f *frame, all, drivers []int) {
	at := int(day.End)
	if papers := f.after(at, d.b.trip.papers); len(papers) > 0 && len(drivers) > 0 {
		d.drive(keyOfDay(papersOut, day.Number), d.b.trip.opening, papers, drivers, nil)
		at = int(papers[len(papers)-1].To)
	}
	if out := f.after(at, d.b.trip.drive); len(out) > 0 {
		d.drive(keyOfDay(driveOut, day.Number), "Drive to the site", out, all, nil)
		at = int(out[len(out)-1].To)
	}
	day.Arrive, day.Leave, day.End = clockOf(at), clockOf(at), clockOf(at)
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
func (d *draft) home(tries int, fewer *draft) {
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
		f = d.rest(day)
		if f.left(int(clock)) < b.trip.drive {
			day, clock = day+1, 0
			f = b.yard(day)
		}
		if home := f.after(int(clock), b.trip.drive); len(home) > 0 {
			d.drive(keyOfDay(driveHome, day), "Drive to the yard", home, d.homeward(day), nil)
			clock = home[len(home)-1].To
			d.closeEarly(d.lastSite(), len(d.tasks)-1)
		}
	}
	if d.visit > 0 {
		d.collect(&placed{n: newNetwork()}) // the drivers closed one by one
		d.addDays()
		return
	}
	ax := &axis{days: day - 1, more: func(n int) []span {
		if n != day {
			y := b.yard(n)
			return y.spans
		}
		return cutBefore(f.spans, int(clock))
	}}
	d.back = Moment{day, clock}
	tail = b.put(b.tail, d.t, ax, tries, fewer.tailFrom(d.back))
	if over := tail.finish(); over > 0 && over > f.left(int(clock)) && f.left(int(clock)) < f.total {
		// It does not fit what is left of the day.
		ax = &axis{days: day, more: func(n int) []span { y := b.yard(n); return y.spans }}
		d.back = Moment{day + 1, 0}
		tail = b.put(b.tail, d.t, ax, tries, fewer.tailFrom(d.back))
	}
	d.collect(tail)
	d.addDays()
}

// tailFrom is the tail of a draft that begins at a moment; nil of one made for
// other days, whose works would run over their ends here.
func (d *draft) tailFrom(m Moment) *placed {
	if d == nil || d.back != m {
		return nil
	}
	return d.parts[2]
}

// rest is a day on the site with its breaks as they fall, until the end of the
// crew's day or, where the site keeps it longer, as long as it takes to come
// home.
func (d *draft) rest(n int) frame {
	b := d.b
	f := b.frame(n, d.parts[0].finish())
	if n < d.first {
		f = b.yard(n)
	}
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
