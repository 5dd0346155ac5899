package schedule

import (
	"cmp"
	"slices"
)

// The search is genetic, with a steady crowd of schedules: two of them make a
// child, each task from one or the other; the child is squeezed and takes the
// place of the worst. When that brings no more, the best of the crowd are put
// aside and a new crowd begins; the best of a few crowds make a crowd of
// their own, the best of a few such crowds another, and so on. How it goes on
// never depends on how much time is left, so that more schedules are never
// worse than fewer.
const (
	crowdSize = 40
	patience  = 20 // children, for each of the crowd, without a better one before the crowd is done
	fellows   = 4  // crowds whose best make one of the next level
)

// search is what it needs.
type search struct {
	*runner
	o     Options
	bound int
	rng   random
	best  draft
	child draft
	crowd []draft
	aside [][]draft // the best of crowds, by level
	ours  []bool    // tasks that the child takes from its first parent
	seen  []bool    // tasks that stand in the child already
	at    int       // places of the child's order that are taken
}

func newSearch(g *net, o Options, bound int) *search {
	s := &search{
		runner: newRunner(g), o: o, bound: bound, rng: random(o.Seed),
		best: newDraft(g.n), child: newDraft(g.n), ours: make([]bool, g.n), seen: make([]bool, g.n),
	}
	s.most = o.Schedules
	return s
}

// done tells whether the search is over.
func (s *search) done() bool {
	return s.best.finish <= s.bound || s.over || s.tried >= s.most || s.o.Stop != nil && s.o.Stop()
}

// run searches until it is done.
func (s *search) run() {
	s.first(&s.best)
	s.climb()
	for !s.done() {
		s.gather()
		s.breed()
		for level := 0; !s.done() && s.merge(level); level++ {
			s.breed()
		}
	}
}

// climb improves the first schedule, and those made like it that spare hands
// more or less: where there are few schedules, much of what can be had.
func (s *search) climb() {
	d, middle := &s.child, int(s.best.thrift)
	for away := 0; away <= thriftiest; away += 2 {
		for _, t := range []int{middle + away, middle - away} {
			if t < 0 || t > thriftiest || s.done() || away > 0 && !s.g.multi {
				continue
			}
			s.byLateness(d)
			d.thrift = uint(t)
			s.improve(d, true)
		}
	}
}

// gather makes a new crowd by lateness and chance, about as thrifty with hands
// as the best so far.
func (s *search) gather() {
	for i := 0; i < crowdSize && !s.done(); i++ {
		if i == len(s.crowd) {
			s.crowd = append(s.crowd, newDraft(s.g.n))
		}
		s.shuffle(&s.crowd[i])
		s.crowd[i].thrift = uint(min(max(int(s.best.thrift)+s.rng.below(5)-2, 0), thriftiest))
		s.improve(&s.crowd[i], true)
	}
}

// merge puts the best of the crowd aside and, with those of enough others of
// the level, makes them the new crowd.
func (s *search) merge(level int) bool {
	if level == len(s.aside) {
		s.aside = append(s.aside, nil)
	}
	slices.SortStableFunc(s.crowd, func(a, b draft) int { return cmp.Compare(a.finish, b.finish) })
	for i := range crowdSize / fellows {
		d := newDraft(s.g.n)
		d.copy(&s.crowd[i])
		s.aside[level] = append(s.aside[level], d)
	}
	if len(s.aside[level]) < crowdSize {
		return false
	}
	s.crowd, s.aside[level] = s.aside[level], nil
	return true
}

// improve makes a draft a good schedule and keeps the best of all. Where
// tasks have a choice, the first pass chooses if free says so.
func (s *search) improve(d *draft, free bool) {
	s.pass(&s.g.ahead, d, free && s.g.multi)
	s.keep(d)
	if s.done() {
		return
	}
	s.squeeze(d, s.g.multi && s.rng.chance(choosing))
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
		w := s.worst()
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
	w := s.rng.below(len(s.crowd))
	for i, at := 1, w; i < len(s.crowd); i++ {
		if at++; at == len(s.crowd) {
			at = 0
		}
		if s.crowd[at].finish > s.crowd[w].finish {
			w = at
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
