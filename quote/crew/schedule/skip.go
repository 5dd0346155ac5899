package schedule

import "math/bits"

// Where many tasks stand in line for few hands, nearly all of the axis is
// full, and looking through it from the front for each task would take time
// that grows with the square of their number. Nothing is freed in a pass, so
// a stretch that was too busy once stays so: for each resource, each number
// of it and each length, rounded down to two binary digits, the line remembers
// how far it has been found too busy. These marks only move on, so all of
// them together cost time in proportion to the tasks; and they, like the
// search from them on, jump over events at which not even the least fits.

// manyTasks is from how many tasks on the marks pay.
const manyTasks = 400

// skip is one of these: so much of one resource for so long.
type skip struct {
	use     uint64
	minutes int
	whole   bool
}

// fillSkips lists what the modes need of each resource of the first word.
// Resources of further words are looked through event by event.
func (g *net) fillSkips() {
	known := map[uint64]int32{}
	g.least = ^uint64(0)
	g.skipAt = make([]int32, 1, len(g.minutes)+1)
	g.skipsOf = make([]int32, 0, len(g.minutes)*len(g.fields))
	for m, minutes := range g.minutes {
		for nth, f := range g.fields {
			mask := (uint64(1)<<bits.Len(uint(g.p.Capacity[f.resource])) - 1) << f.shift
			use := g.use[m] & mask
			if f.word > 0 || minutes == 0 {
				continue
			}
			g.least = g.least&^mask | min(g.least&mask, use)
			if use > 0 {
				g.skipsOf = append(g.skipsOf, g.addSkip(known, nth, use, m))
			}
		}
		g.skipAt = append(g.skipAt, int32(len(g.skipsOf)))
	}
	g.least &= ^g.guard[0]
}

// addSkip returns the number of a skip, each kind of which is listed once.
func (g *net) addSkip(known map[uint64]int32, nth int, use uint64, m int) int32 {
	low := max(0, bits.Len(uint(g.minutes[m]))-2)
	s := skip{use, g.minutes[m] >> low << low, g.whole[m]}
	// Uses and lengths have up to 32 bits; a word has at most 32 fields.
	key := use>>g.fields[nth].shift<<16 | uint64(nth)<<10 | uint64(low)<<4 | uint64(s.minutes>>low)<<1
	if s.whole {
		key++
	}
	k, ok := known[key]
	if !ok {
		k = int32(len(g.skips))
		known[key] = k
		g.skips = append(g.skips, s)
	}
	return k
}

// skip returns an event before which a mode cannot start, the given one or a
// later one.
func (l *line) skip(from, mode int32) int32 {
	g := l.g
	for _, k := range g.skipsOf[g.skipAt[mode]:g.skipAt[mode+1]] {
		at := l.clearSkip(l.passed[k], &g.skips[k])
		l.passed[k] = at
		if l.events[at].at > l.events[from].at {
			from = at
		}
	}
	return from
}

// clearSkip moves a mark on to where there is room.
func (l *line) clearSkip(from int32, s *skip) int32 {
	for {
		from = l.clearLong(from, s.minutes, s.use)
		if !s.whole {
			return from
		}
		at := l.events[from].at
		edge := l.ax.edgeIn(at, at+s.minutes)
		if edge == 0 {
			return from
		}
		from = edge
	}
}

// clearLong is clearWord that jumps over what is full.
func (l *line) clearLong(from int32, minutes int, use uint64) int32 {
	ev, guard := l.events, l.g.guard[0]
	end := ev[from].at + minutes
	for at := from; ; {
		e := &ev[at]
		if e.at >= end {
			return from
		}
		if ((e.free|guard)-use)&guard == guard {
			at = e.next
			continue
		}
		at = l.beyond(at)
		from = at
		end = ev[at].at + minutes
	}
}

// beyond returns the next event, or where an event is full, the next that is
// not. What is full stays full, and nothing is put between full events.
func (l *line) beyond(at int32) int32 {
	next := l.full[at]
	if next == 0 {
		return l.events[at].next
	}
	for l.full[next] != 0 {
		l.full[at] = l.full[next] // so that the next search is shorter
		at, next = next, l.full[next]
	}
	return next
}

// fill notes which events are full after a mode was taken.
func (l *line) fill(start, end int32) {
	ev, guard, least := l.events, l.g.guard[0], l.g.least
	for len(l.full) < len(ev) {
		l.full = append(l.full, 0)
	}
	for at := start; at != end; at = ev[at].next {
		if ((ev[at].free|guard)-least)&guard != guard {
			l.full[at] = ev[at].next
		}
	}
}
