package schedule

import "slices"

// Shares of 1024, and so of chance.
const (
	bias      = 700 // that a task follows the first parent
	stretches = 256 // that a child takes a stretch of the order instead
	moves     = 896 // that one more task of a child moves, seven on average
	remodes   = 20  // that a task gets another mode
	choosing  = 384 // that all tasks choose their modes while a draft is squeezed
	turns     = 64  // that a child is more or less thrifty than its first parent
)

// shuffle orders the tasks by lateness with noise: up to as much as the whole
// is long for few tasks, less for many, so that a task passes about as many
// others.
func (s *search) shuffle(d *draft) {
	t := s.g.times
	noise := t.Finish*60/max(60, s.g.n) + 1
	for i := range s.keys {
		late := t.LateStart[s.g.number[i]] + s.rng.below(noise)
		s.keys[i] = uint64(late)<<20 | uint64(i)
		d.mode[i] = s.g.modeAt[i]
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
	for _, a := range s.g.ahead.of(i) {
		if !s.seen[a] {
			s.emit(d, a)
		}
	}
	s.seen[i] = true
	d.order[s.at] = i
	s.at++
}

// cross makes a child of two.
func (s *search) cross(a, b *draft) {
	s.child.thrift = a.thrift
	if s.g.multi && s.rng.chance(turns) {
		s.child.thrift = uint(s.rng.below(thriftiest + 1))
	}
	s.begin()
	if s.rng.chance(stretches) {
		s.crossStretch(a, b)
	} else {
		s.crossTasks(a, b)
	}
}

// crossTasks takes the time and the mode of each task from the first parent
// or, less often, from the second (after Goncalves, Resende and Mendes 2011,
// J. Heuristics 17, 467-486).
func (s *search) crossTasks(a, b *draft) {
	c := &s.child
	for i := range s.ours {
		s.ours[i] = s.rng.chance(bias)
		if s.ours[i] {
			c.mode[i] = a.mode[i]
		} else {
			c.mode[i] = b.mode[i]
		}
	}
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

// crossStretch takes the beginning of the first parent's order, then a
// stretch of the second's, then the rest of the first (Hartmann 1998, Naval
// Research Logistics 45, 733-750).
func (s *search) crossStretch(a, b *draft) {
	n := s.g.n
	p, q := s.rng.below(n+1), s.rng.below(n+1)
	if p > q {
		p, q = q, p
	}
	for _, part := range []struct {
		from  *draft
		until int
	}{{a, p}, {b, q}, {a, n}} {
		for _, i := range part.from.order {
			if s.at >= part.until {
				break
			}
			if !s.seen[i] {
				s.child.mode[i] = part.from.mode[i]
				s.emit(&s.child, i)
			}
		}
	}
}

// mutate moves tasks of the child to other places in the order and changes
// modes.
func (s *search) mutate() {
	c := &s.child
	for s.rng.chance(moves) {
		s.move(c.order, s.rng.below(len(c.order)))
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

// move takes the task at a place of an order to any other between those it
// waits for and those that wait for it.
func (s *search) move(order []int32, from int) {
	i := order[from]
	before, after := s.g.ahead.of(i), s.g.back.of(i)
	low, high := from, from
	for low > 0 && !slices.Contains(before, order[low-1]) {
		low--
	}
	for high < len(order)-1 && !slices.Contains(after, order[high+1]) {
		high++
	}
	to := low + s.rng.below(high-low+1)
	if to < from {
		copy(order[to+1:from+1], order[to:from])
	} else {
		copy(order[from:to], order[from+1:to+1])
	}
	order[to] = i
}
