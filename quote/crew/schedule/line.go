package schedule

// event is a time at which what is free may change, and what is free from
// then until the next event.
type event struct {
	at    int
	free  uint64
	next  int32
	first int32 // of the tasks hung here to be sorted; -1: none
}

// line is what is free along an axis: a chain of events. Nothing is ever
// freed in a pass, so events only become more, and an event once known stays
// where it is: a task remembers the one at which it ends.
type line struct {
	g      *net
	ax     *axis
	events []event
	rest   []uint64 // words of free behind the first, g.words-1 an event
	full   []int32  // of each event, the next behind it if nothing fits at it; else 0. Kept with skips only
	passed []int32  // of each skip of the net, the event before which nothing fits
}

// clear empties the line for a pass along an axis, with an event at 0, at
// each mark, and at the end of time; event i+1 is the one at mark i.
func (l *line) clear(ax *axis) {
	l.ax, l.events, l.rest = ax, l.events[:0], l.rest[:0]
	l.push(0)
	for _, at := range ax.marks {
		l.push(at)
	}
	l.push(axisEnd * 8)
	last := len(l.events) - 1
	l.events[last].next = int32(last)
	clear(l.passed)
	l.full = l.full[:0]
}

func (l *line) push(at int) {
	l.events = append(l.events, event{at: at, free: l.g.full[0], next: int32(len(l.events) + 1), first: -1})
	if l.g.words > 1 {
		l.rest = append(l.rest, l.g.full[1:]...)
	}
}

// split makes an event between an event and its next.
func (l *line) split(from int32, at int) int32 {
	made := int32(len(l.events))
	e := &l.events[from]
	l.events = append(l.events, event{at: at, free: e.free, next: e.next, first: -1})
	l.events[from].next = made
	if w := l.g.words - 1; w > 0 {
		l.rest = append(l.rest, l.rest[int(from)*w:int(from+1)*w]...)
	}
	return made
}

// find returns the first event from the given one on from which a mode can
// run to its end.
func (l *line) find(from int32, mode int32) int32 {
	if l.g.skips != nil {
		from = l.skip(from, mode)
	}
	for {
		start := l.clearRun(from, mode)
		if !l.g.whole[mode] {
			return start
		}
		at := l.events[start].at
		edge := l.ax.edgeIn(at, at+l.g.minutes[mode])
		if edge == 0 {
			return start
		}
		from = edge
	}
}

// clearRun is find without regard to edges.
func (l *line) clearRun(from int32, mode int32) int32 {
	if l.g.words > 1 {
		return l.clearRunWords(from, mode)
	}
	if l.g.skips != nil {
		return l.clearLong(from, l.g.minutes[mode], l.g.use[mode])
	}
	return l.clearWord(from, l.g.minutes[mode], l.g.use[mode])
}

// clearWord returns the first event from which so many minutes have a use
// free, in the first word.
func (l *line) clearWord(from int32, minutes int, use uint64) int32 {
	ev, guard := l.events, l.g.guard[0]
	end := ev[from].at + minutes
	for at := from; ; {
		e := &ev[at]
		if e.at >= end {
			return from
		}
		at = e.next
		if ((e.free|guard)-use)&guard != guard {
			from = at
			end = ev[at].at + minutes
		}
	}
}

func (l *line) clearRunWords(from int32, mode int32) int32 {
	minutes := l.g.minutes[mode]
	end := l.events[from].at + minutes
	for at := from; l.events[at].at < end; {
		fits := l.fits(at, mode)
		at = l.events[at].next
		if !fits {
			from = at
			end = l.events[at].at + minutes
		}
	}
	return from
}

// fits tells whether a mode can run at an event, all words compared.
func (l *line) fits(at int32, mode int32) bool {
	g, w := l.g, l.g.words-1
	ok := ((l.events[at].free|g.guard[0])-g.use[mode])&g.guard[0] == g.guard[0]
	free, use := l.rest[int(at)*w:int(at+1)*w], g.rest[int(mode)*w:int(mode+1)*w]
	for i, f := range free {
		guard := g.guard[i+1]
		ok = ok && ((f|guard)-use[i])&guard == guard
	}
	return ok
}

// take runs a mode from an event on and returns the event of its end.
func (l *line) take(start int32, mode int32) int32 {
	minutes := l.g.minutes[mode]
	if minutes == 0 {
		return start
	}
	ev, use, end := l.events, l.g.use[mode], l.events[start].at+minutes
	at, last := start, start
	for ev[at].at < end {
		ev[at].free -= use
		last, at = at, ev[at].next
	}
	if ev[at].at != end {
		at = l.split(last, end)
		l.events[at].free += use
	}
	if l.g.words > 1 {
		l.takeRest(start, at, mode)
	}
	if l.g.skips != nil {
		l.fill(start, at)
	}
	return at
}

// takeRest is take for the words behind the first; the event of the end may
// have been split from the last one before this was taken.
func (l *line) takeRest(start, end, mode int32) {
	w := l.g.words - 1
	use := l.g.rest[int(mode)*w : int(mode+1)*w]
	for at := start; at != end; at = l.events[at].next {
		free := l.rest[int(at)*w : int(at+1)*w]
		for i := range free {
			free[i] -= use[i]
		}
	}
}
