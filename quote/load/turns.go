package load

import "slices"

const (
	maxTurns = 100 // turns of the whole fleet; beyond, the job is not this yard's
	patience = 24  // lines tried in a full fleet after the last one that fitted
)

// plan loads everything: full turns of the whole fleet while it is too small,
// then the cheapest vehicles for the remainder. Nil when it can't, with the
// reason in the list.
func (y *yard) plan() *stow {
	ground := make([]int, len(y.cargo))
	for i := range y.cargo {
		ground[i] = y.cargo[i].quantity
	}
	done := &stow{}
	todo := y.rank()
	for turn := 1; len(todo) > 0; turn++ {
		if turn > maxTurns {
			y.list.Addf(y.c.Fleet.Where.Pos(), TooMuch, "the whole fleet would drive more than %d turns; a smaller job or a larger fleet was expected", maxTurns)
			return nil
		}
		if s := y.search(todo, ground, turn); s != nil {
			done.append(s)
			break
		}
		// Cost is not weighed here: all that the yard has must drive anyway.
		s := y.fill(y.fleet(turn), todo, ground)
		if len(s.lots) == 0 {
			s = y.fill(y.single(&y.cargo[todo[0]], turn), todo, ground)
		}
		copy(ground, s.rest)
		done.append(s)
		// Lines further back that are done cost little to pass over.
		for len(todo) > 0 && ground[todo[0]] == 0 {
			todo = todo[1:]
		}
	}
	done.drop()
	return done
}

// append takes over the vehicles and lots of a later turn.
func (s *stow) append(o *stow) {
	first, joints := len(s.beds), len(s.joints)
	for _, b := range o.beds {
		if b.other >= 0 {
			b.other += first
		}
		if b.joint >= 0 {
			b.joint += joints
		}
		s.beds = append(s.beds, b)
	}
	s.joints = append(s.joints, o.joints...)
	for _, l := range o.lots {
		s.lots = append(s.lots, lot{l.line, l.bed + first, l.quantity})
	}
}

// drop leaves out the vehicles that neither carry nor pull anything.
func (s *stow) drop() {
	used := make([]bool, len(s.beds))
	for _, l := range s.lots {
		b := &s.beds[l.bed]
		used[l.bed] = true
		if b.kind.trailer {
			used[b.other] = true
		}
	}
	to := make([]int, len(s.beds))
	kept := s.beds[:0:0]
	for i := range s.beds {
		to[i] = -1
		if used[i] {
			to[i] = len(kept)
			kept = append(kept, s.beds[i])
		}
	}
	// A vehicle whose trailer stays in the yard is on its own again.
	for i := range kept {
		b := &kept[i]
		if b.other >= 0 {
			b.other = to[b.other]
		}
		if b.other < 0 {
			b.joint = -1
		}
	}
	for i := range s.lots {
		s.lots[i].bed = to[s.lots[i].bed]
	}
	s.beds = kept
}

// fill loads vehicles once with as much as they take. Lines are in order of size,
// so after some that do not fit the rest is left for later: looking at each of
// them each turn would make large jobs slow.
func (y *yard) fill(s *stow, todo, ground []int) *stow {
	s.clear(ground)
	missed := 0
	for _, line := range todo {
		if missed > patience {
			break
		}
		if s.rest[line] == 0 {
			continue
		}
		if s.place(&y.cargo[line], line, true) {
			missed = 0
		} else {
			missed++
		}
	}
	return s
}

// fleet is every vehicle of the yard, less the trailers that nothing is left
// to pull.
func (y *yard) fleet(turn int) *stow {
	s := &stow{}
	for i := range y.kinds {
		s.add(&y.kinds[i], y.kinds[i].v.Count, turn)
	}
	stranded := s.couple()
	for i := len(stranded) - 1; i >= 0; i-- {
		at := stranded[i]
		s.beds = append(s.beds[:at], s.beds[at+1:]...)
	}
	if len(stranded) > 0 {
		s.couple()
	}
	return s
}

// single is a vehicle that takes a pack of g, alone or behind the vehicle that
// leaves it most. The whole fleet may have put another trailer behind that.
// The check has found that there is one.
func (y *yard) single(g *cargo, turn int) *stow {
	s := &stow{}
	one := g.mass(min(g.quantity, g.holds))
	at := slices.IndexFunc(y.kinds, func(k kind) bool {
		return g.rides(k.v) && k.alone >= one && k.room >= g.size
	})
	if k := &y.kinds[at]; k.trailer {
		s.add(&y.kinds[k.towers[0]], 1, turn)
	}
	s.add(&y.kinds[at], 1, turn)
	s.couple()
	return s
}
