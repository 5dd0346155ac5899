package crew

import (
	"tentwright/catalog"
	"tentwright/catalog/unit"
)

// span is a stretch of working time of a day, in minutes from midnight.
type span struct {
	day, from, to int
	at            int // working minute at which it begins
}

// frame is one day as it can be worked at most: its stretches between breaks,
// and how much of them at both ends goes to the road.
type frame struct {
	spans  []span // at counts from the beginning of the day
	pauses []Pause
	total  int // working minutes
	lead   int // of these, at the beginning: papers and the way out
	home   int // and at the end: the way home
}

// frame lays out day n of the window, head minutes of work in the yard before
// the first drive included.
func (b *winder) frame(n, head int) frame {
	if !b.set.Site {
		return b.yard(n)
	}
	var f frame
	first, in := b.firstDay(head)
	switch {
	case n < first:
		return frame{} // still in the yard
	case n == first:
		f.lead = in + b.trip.papers + b.trip.drive
	case !b.stay:
		f.lead = b.trip.papers + b.trip.drive
	}
	if !b.stay || n >= b.leaving() {
		f.home = b.trip.drive
	}
	b.lay(&f, n)
	if b.stay && f.total-f.lead-f.home < leastSite {
		// The way home would leave no time to work: it waits for the morning.
		f = frame{lead: f.lead}
		b.lay(&f, n)
	}
	return f
}

// lay cuts a day on the site out of the limits that hold.
func (b *winder) lay(f *frame, n int) {
	from, until := b.opens(n), int(b.set.Finish)
	siteFrom, siteUntil := b.siteHours(b.date(n))
	if !b.hour.shop {
		from, until = max(siteFrom-f.lead, b.opened(n)), siteUntil+f.home
	}
	begin := max(1, from, siteFrom-f.lead)
	since := begin
	if n == b.quiet {
		since = max(begin, int(b.ask.Inspect)-f.lead) // nobody is called before
	}
	f.cutSince(b.c.Crew.Breaks, n, begin, min(int(endOfDay), until, siteUntil+f.home), since)
}

// firstDay is the first day on the site after so many minutes of work in the
// yard, and how many of them are on that day.
func (b *winder) firstDay(head int) (day, in int) {
	if head == 0 {
		return 1, 0
	}
	y := b.yard(1).total
	day, in = (head+y-1)/max(1, y), head
	in -= (day - 1) * y
	road := b.trip.papers + b.trip.drive
	if !b.stay {
		road += b.trip.drive
	}
	if y-in-road < leastSite {
		return day + 1, 0
	}
	return day, in
}

// yard is a day in the yard.
func (b *winder) yard(n int) frame {
	var f frame
	f.cut(b.c.Crew.Breaks, n, b.opens(n), int(b.set.Finish))
	return f
}

// cut takes the breaks out of a day.
func (f *frame) cut(breaks []catalog.Break, day, from, until int) {
	f.cutSince(breaks, day, from, until, from)
}

// cutSince takes the breaks out of a day on which they are counted from a time
// of their own.
func (f *frame) cutSince(breaks []catalog.Break, day, from, until, since int) {
	at := from
	for i := range breaks {
		p := &breaks[i]
		pause := max(at, since+int(p.After))
		if pause+int(p.Lasts) >= until {
			break // the day is over before it would be
		}
		f.add(day, at, pause)
		at = pause + int(p.Lasts)
		f.pauses = append(f.pauses, Pause{Spec: p, From: unit.Clock(pause), To: unit.Clock(at)})
	}
	f.add(day, at, until)
}

func (f *frame) add(day, from, to int) {
	if from < to {
		f.spans = append(f.spans, span{day, from, to, f.total})
		f.total += to - from
	}
}

// before is the last so many working minutes before a time of the day; fewer
// where the day does not have them.
func (f *frame) before(clock, minutes int) []Spell {
	var spells []Spell
	for i := len(f.spans) - 1; i >= 0 && minutes > 0; i-- {
		s := f.spans[i]
		to := min(s.to, clock)
		if from := max(s.from, to-minutes); from < to {
			spells = append([]Spell{{s.day, unit.Clock(from), unit.Clock(to)}}, spells...)
			minutes -= to - from
		}
	}
	return spells
}

// after is the first so many working minutes from a time of the day on.
func (f *frame) after(clock, minutes int) []Spell {
	var spells []Spell
	for _, s := range f.spans {
		from := max(s.from, clock)
		if to := min(s.to, from+minutes); from < to {
			spells = append(spells, Spell{s.day, unit.Clock(from), unit.Clock(to)})
			minutes -= to - from
		}
	}
	return spells
}

// left is the working minutes of the day from a time on.
func (f *frame) left(clock int) int {
	sum := 0
	for _, s := range f.spans {
		sum += max(0, s.to-max(s.from, clock))
	}
	return sum
}

// axis is working time laid end to end, breaks and nights cut out.
type axis struct {
	spans []span
	more  func(n int) []span // the stretches of the day behind the last
	days  int
	end   int
	idle  int // days without time to work, one after another
}

// mostIdle is how many days without time to work may follow each other. Limits
// that leave none are set aside before; the number keeps a fault from becoming a
// loop without end.
const mostIdle = 1000

// extend adds days until the axis is so long. It always becomes so long: behind
// mostIdle days without time to work those that follow count in full.
func (a *axis) extend(minutes int) {
	for a.end < minutes {
		a.days++
		spans := a.more(a.days)
		if len(spans) == 0 && a.lost() {
			spans = []span{{day: a.days, from: 1, to: int(endOfDay)}}
		} else if len(spans) == 0 {
			a.idle++
		} else if !a.lost() {
			a.idle = 0
		}
		for _, s := range spans {
			s.at = a.end
			a.spans = append(a.spans, s)
			a.end += s.to - s.from
		}
	}
}

// lost tells whether the axis goes on without time to work.
func (a *axis) lost() bool { return a.idle >= mostIdle }

// edges is the ends of days up to a minute, and the first one after it.
func (a *axis) edges(minutes int) []int {
	a.extend(minutes)
	var edges []int
	for i, s := range a.spans {
		if i+1 == len(a.spans) || a.spans[i+1].day != s.day {
			edges = append(edges, s.at+s.to-s.from)
		}
	}
	return edges
}

// spells is where on the clock so many minutes from a minute on are.
func (a *axis) spells(start, minutes int) []Spell {
	a.extend(start + minutes)
	var out []Spell
	lo, hi := 0, len(a.spans)
	for lo < hi { // the last stretch that begins no later
		if mid := (lo + hi) / 2; a.spans[mid].at <= start {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	for _, s := range a.spans[max(0, lo-1):] {
		from := max(start, s.at)
		to := min(start+minutes, s.at+s.to-s.from)
		if from < to {
			out = append(out, Spell{s.day, unit.Clock(s.from + from - s.at), unit.Clock(s.from + to - s.at)})
		}
		if s.at >= start+minutes {
			break
		}
	}
	return out
}

// minute is the first working minute at or after a time of a day.
func (a *axis) minute(day int, clock unit.Clock) int {
	for a.days < day {
		a.extend(a.end + 1)
	}
	for _, s := range a.spans {
		switch {
		case s.day < day || s.day == day && s.to <= int(clock):
		case s.day > day || s.from >= int(clock):
			return s.at
		default:
			return s.at + int(clock) - s.from
		}
	}
	return a.end
}

// siteAxis is the time on the site, or in the yard for a window there, from the
// day of the first drive on.
func (b *winder) siteAxis(head int) *axis {
	first, _ := b.firstDay(head)
	return &axis{days: first - 1, more: func(n int) []span {
		f := b.frame(n, head)
		var spans []span
		for _, s := range f.spans {
			from := s.from + max(0, f.lead-s.at)
			to := s.to - max(0, s.at+s.to-s.from-(f.total-f.home))
			if from < to {
				spans = append(spans, span{day: n, from: from, to: to})
			}
		}
		return spans
	}}
}

// moment is the time at which a minute of work ends.
func (a *axis) moment(minute int) Moment {
	if minute <= 0 {
		minute = 1
	}
	s := a.spells(minute-1, 1)
	return Moment{s[0].Day, s[0].To}
}

// before is how many working minutes lie before a moment.
func (a *axis) before(m Moment) int {
	for a.days < m.Day {
		a.extend(a.end + 1)
	}
	sum := 0
	for _, s := range a.spans {
		switch {
		case s.day < m.Day:
			sum += s.to - s.from
		case s.day == m.Day:
			sum += max(0, min(s.to, int(m.At))-s.from)
		}
	}
	return sum
}
