package schedule

import "slices"

// shuffle orders the tasks by lateness with noise, more for a later one of
// the crowd, and gives each a mode by chance.
func (s *search) shuffle(d *draft, nth int) {
	g := s.g
	spread := spreadOf(g.times.Finish, nth)
	for i := range s.keys {
		late := g.times.LateStart[g.number[i]] + s.rng.below(spread)
		s.keys[i] = uint64(late)<<20 | uint64(i)
		d.mode[i] = s.anyMode(i)
	}
	slices.Sort(s.keys)
	s.begin()
	for _, k := range s.keys {
		s.emit(d, int32(k&(1<<20-1)))
	}
}

func (s *search) anyMode(i int) int32 {
	first, n := s.g.modeAt[i], s.g.modeAt[i+1]-s.g.modeAt[i]
	if n == 1 {
		return first
	}
	return first + int32(s.rng.below(int(n)))
}

// begin empties the order that emit fills.
func (s *search) begin() {
	s.at = 0
	clear(s.seen)
}

// emit puts a task next in the order, behind those it waits for.
func (s *search) emit(d *draft, i int32) {
	if s.seen[i] {
		return
	}
	ax := &s.g.ahead
	for _, a := range ax.prev[ax.prevAt[i]:ax.prevAt[i+1]] {
		if !s.seen[a] {
			s.emit(d, a)
		}
	}
	s.seen[i] = true
	d.order[s.at] = i
	s.at++
}

// cross makes a child of two: each task has its place in time and its mode
// from the first parent or, less often, from the second.
func (s *search) cross(a, b *draft) {
	c := &s.child
	if s.rng.chance(mix) {
		s.cross2(a, b)
		return
	}
	for i := range s.ours {
		s.ours[i] = s.rng.chance(bias)
		if s.ours[i] {
			c.mode[i] = a.mode[i]
		} else {
			c.mode[i] = b.mode[i]
		}
	}
	s.begin()
	x, y, n := 0, 0, s.g.n
	for s.at < n {
		for x < n && !s.ours[a.order[x]] {
			x++
		}
		for y < n && s.ours[b.order[y]] {
			y++
		}
		if y == n || x < n && a.start[a.order[x]] <= b.start[b.order[y]] {
			s.emit(c, a.order[x])
			x++
		} else {
			s.emit(c, b.order[y])
			y++
		}
	}
}

// mutate swaps neighbours in the child's order and changes modes.
func (s *search) mutate() {
	c, ax := &s.child, &s.g.ahead
	for x := 1; x < len(c.order); x++ {
		if s.rng.chance(swaps) {
			i, j := c.order[x-1], c.order[x]
			if !slices.Contains(ax.prev[ax.prevAt[j]:ax.prevAt[j+1]], i) {
				c.order[x-1], c.order[x] = j, i
			}
		}
	}
	if !s.g.multi {
		return
	}
	for i := range c.mode {
		if s.rng.chance(remodes) {
			c.mode[i] = s.anyMode(i)
		}
	}
}

func (s *search) cross2(a, b *draft) {
	n := s.g.n
	p, q := s.rng.below(n+1), s.rng.below(n+1)
	if p > q {
		p, q = q, p
	}
	s.begin()
	c := &s.child
	add := func(from *draft, until int) {
		for _, i := range from.order {
			if s.at >= until {
				return
			}
			if !s.seen[i] {
				c.mode[i] = from.mode[i]
				s.emit(c, i)
			}
		}
	}
	add(a, p)
	add(b, q)
	add(a, n)
}
