package schedule

import "math/bits"

// Where many tasks stand in line for few hands, nearly all of the axis is
// full, and looking through it from the front for each task would take time
// that grows with the square of their number. Nothing is freed in a pass, so
// a stretch that was too busy once stays so: for each resource, each number
// of it and each length, rounded down to two binary digits, the line remembers
// how far it has been found too busy. These marks only move on, so all of
// them together cost time in proportion to the tasks.

// manyTasks is from how many tasks on the marks pay.
const manyTasks = 400

// skip is one of these: so much of one resource for so long.
type skip struct {
	use     uint64
	minutes int
	whole   bool
	joint   bool // of all resources together, listed after those of each
}

// fillSkips lists what the modes need: of each resource of the first word,
// and of all of these together where many modes want the same.
func (g *net) fillSkips() {
	var table skips
	n := len(g.minutes)
	table.known = make(map[skip]int32, n/8)
	together := make([]int32, n)
	for m := range n {
		together[m] = table.number(g.skipOf(m, ^uint64(0)))
	}
	if len(table.list) > n/4 || len(g.fields) < 2 {
		together, table.list = nil, nil
		clear(table.known)
	}
	g.skipAt = make([]int32, 1, n+1)
	g.skipsOf = make([]int32, 0, n*(len(g.fields)+1))
	for m := range n {
		for _, f := range g.fields {
			mask := uint64(1)<<bits.Len(uint(g.p.Capacity[f.resource])) - 1
			if s := g.skipOf(m, mask<<f.shift); f.word == 0 && s.use > 0 && s.minutes > 0 {
				g.skipsOf = append(g.skipsOf, table.number(s))
			}
		}
		if together != nil {
			g.skipsOf = append(g.skipsOf, together[m])
		}
		g.skipAt = append(g.skipAt, int32(len(g.skipsOf)))
	}
	g.skips = table.list
}

// skips numbers each kind of skip once.
type skips struct {
	known map[skip]int32
	list  []skip
}

func (t *skips) number(s skip) int32 {
	k, ok := t.known[s]
	if !ok {
		k = int32(len(t.list))
		t.known[s] = k
		t.list = append(t.list, s)
	}
	return k
}

// skipOf returns what a mode needs of the resources of a mask.
func (g *net) skipOf(m int, mask uint64) skip {
	minutes := g.minutes[m]
	if minutes > 0 {
		low := max(0, bits.Len(uint(minutes))-2)
		minutes = minutes >> low << low
	}
	return skip{g.use[m] & mask, minutes, g.whole[m], ^mask == 0}
}

// skip returns an event before which a mode cannot start, the given one or a
// later one.
func (l *line) skip(from, mode int32) int32 {
	g, low := l.g, int32(0)
	for _, k := range g.skipsOf[g.skipAt[mode]:g.skipAt[mode+1]] {
		if at := l.passed[k]; l.events[at].at > l.events[low].at {
			low = at
		}
		at := l.passed[k]
		if g.skips[k].joint {
			at = low
		}
		at = l.clearSkip(at, &g.skips[k])
		l.passed[k] = at
		if l.events[at].at > l.events[low].at {
			low = at
		}
	}
	if l.events[low].at > l.events[from].at {
		return low
	}
	return from
}

// clearSkip moves a mark on to where there is room.
func (l *line) clearSkip(from int32, s *skip) int32 {
	for {
		from = l.clearWord(from, s.minutes, s.use)
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
