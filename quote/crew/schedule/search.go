package schedule

import "slices"

// The search is genetic, with a steady crowd of schedules: two of them make a
// child, each task from one or the other by its start; the child is squeezed
// and takes the place of the worst. When nothing improves any more, a new
// crowd begins. Orders by start times with a biased choice for each task are
// those of Goncalves, Resende and Mendes 2011 (J. Heuristics 17, 467-486).

// search is what it needs.
type search struct {
	*runner
	o         Options
	bound     int
	rng       random
	best      draft
	child     draft
	crowd     []draft
	ours      []bool // tasks that the child takes from its first parent
	seen      []bool // tasks that stand in the child already
	pools     [][]draft
	lastWorst int
	at        int // places of the child's order that are taken
}

var (
	crowdSize = V("CROWD", 60)
	patience  = V("SINCE", 20) // children, for each of the crowd, without a better one before a new crowd begins
	bias      = V("BIAS", 700) // of 1024, for the first parent
	swaps     = V("M1", 20)    // of 1024, for each task, to swap with the next
	remodes   = V("M2", 20)    // of 1024, for each task, to change its mode
)

func newSearch(g *net, o Options, bound int) *search {
	s := &search{
		runner: newRunner(g), o: o, bound: bound, rng: random(o.Seed),
		best: newDraft(g.n), child: newDraft(g.n), ours: make([]bool, g.n), seen: make([]bool, g.n),
	}
	s.most = o.Schedules
	s.crowd = make([]draft, 0, crowdSize)
	return s
}

// done tells whether the search is over.
func (s *search) done() bool {
	return s.best.finish <= s.bound || s.over || s.tried >= s.most || s.o.Stop != nil && s.o.Stop()
}

// run searches until it is done, with one crowd after the other.
func (s *search) run() {
	s.byLateness(&s.best)
	s.pass(&s.g.ahead, &s.best, true)
	for !s.done() {
		s.gather()
		s.breed()
		for level := 0; way > 0 && !s.done(); level++ {
			// hand the best on
			if level == len(s.pools) {
				s.pools = append(s.pools, nil)
			}
			share := crowdSize / way
			slices.SortStableFunc(s.crowd, func(a, b draft) int { return a.finish - b.finish })
			for i := range share {
				d := newDraft(s.g.n)
				d.copy(&s.crowd[i])
				s.pools[level] = append(s.pools[level], d)
			}
			if len(s.pools[level]) < share*way {
				break
			}
			for i := range s.pools[level] {
				s.crowd[i].copy(&s.pools[level][i])
			}
			s.pools[level] = s.pools[level][:0]
			s.breed()
		}
	}
}

// gather makes a new crowd, the first of it by lateness, the others more and
// more by chance.
func (s *search) gather() {
	s.crowd = s.crowd[:0]
	for i := range crowdSize {
		if s.done() {
			return
		}
		if i == cap(s.crowd) || len(s.crowd) == cap(s.crowd) {
			break
		}
		s.crowd = s.crowd[:i+1]
		d := &s.crowd[i]
		if d.order == nil {
			*d = newDraft(s.g.n)
		}
		s.shuffle(d, i)
		s.improve(d, i%2 == 0)
	}
}

// improve makes a draft a good schedule and keeps the best of all. Where
// tasks have a choice, the first pass chooses if free says so.
func (s *search) improve(d *draft, free bool) {
	s.pass(&s.g.ahead, d, free && s.g.multi)
	s.keep(d)
	if s.done() {
		return
	}
	if slackPc > 0 && !free && len(s.crowd) == crowdSize && d.finish*100 > s.crowd[s.lastWorst].finish*slackPc {
		d.print = 1
		return
	}
	s.squeeze(d, s.g.multi && s.rng.chance(512))
	d.print = 0
	for i, at := range d.start {
		d.print = d.print*0x9e3779b97f4a7c15 + uint64(at)<<8 + uint64(d.mode[i]-s.g.modeAt[i])
	}
	s.keep(d)
}

func (s *search) keep(d *draft) {
	if d.finish < s.best.finish {
		s.best.copy(d)
	}
}

// breed makes children until they no longer help.
func (s *search) breed() {
	for idle := 0; idle < patience*crowdSize && !s.done(); idle++ {
		a, b := s.pick(), s.pick()
		if a == b {
			continue
		}
		s.cross(&s.crowd[a], &s.crowd[b])
		s.mutate()
		s.improve(&s.child, false)
		w := 0
		switch repl {
		case 0:
			w = s.worst()
			s.lastWorst = w
		case 1: // worse parent
			w = a
			if s.crowd[b].finish >= s.crowd[a].finish {
				w = b
			}
		case 2: // tournament of 3
			w = s.rng.below(crowdSize)
			for range 2 {
				if x := s.rng.below(crowdSize); s.crowd[x].finish > s.crowd[w].finish {
					w = x
				}
			}
		case 3:
			w = b
		case 4:
			w = a
		}
		if s.child.finish > s.crowd[w].finish || s.known(&s.child) {
			continue
		}
		if s.child.finish < s.crowd[w].finish {
			idle = 0
		}
		s.crowd[w].copy(&s.child)
	}
}

// pick returns the better of two by chance.
func (s *search) pick() int {
	a, b := s.rng.below(len(s.crowd)), s.rng.below(len(s.crowd))
	if s.crowd[b].finish < s.crowd[a].finish {
		return b
	}
	return a
}

// worst returns one of those that finish last.
func (s *search) worst() int {
	from := s.rng.below(len(s.crowd))
	w := from
	for i := from + 1; i < len(s.crowd); i++ {
		if s.crowd[i].finish > s.crowd[w].finish {
			w = i
		}
	}
	for i := range from {
		if s.crowd[i].finish > s.crowd[w].finish {
			w = i
		}
	}
	return w
}

// known tells whether the crowd has this schedule already.
func (s *search) known(d *draft) bool {
	for i := range s.crowd {
		if s.crowd[i].print == d.print && s.crowd[i].finish == d.finish {
			return true
		}
	}
	return false
}
