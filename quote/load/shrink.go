package load

import (
	"cmp"
	"slices"
	"sort"
)

// prunings bounds how often a set found by shrink is tried with one vehicle
// less.
const prunings = 16

// team is a vehicle with the trailer behind it, as beds of a fleet.
type team struct {
	beds  []int
	worth float64 // cost for what it takes of the load
	cost  int64
}

// shrink serves fleets with too many sets to look at each: the vehicles that
// take most for their cost, as few as carry the load, then without those that
// turn out not to be needed. Nil when even the whole fleet is too small.
func (y *yard) shrink(todo, ground []int, turn int) *stow {
	fleet := y.fleet(turn)
	teams := y.teams(fleet, todo, ground)
	load := func(some []team) *stow {
		s := fleet.only(some)
		budget := 0
		if y.try(s, todo, ground, &budget) {
			return s
		}
		return nil
	}
	best := load(teams)
	if best == nil {
		return nil
	}
	few := sort.Search(len(teams)-1, func(n int) bool {
		s := load(teams[:n+1])
		if s != nil {
			best = s
		}
		return s != nil
	})
	teams = teams[:few+1]
	dear := slices.Clone(teams)
	slices.SortStableFunc(dear, func(a, b team) int { return cmp.Compare(b.cost, a.cost) })
	for _, t := range dear[:min(len(dear), prunings)] {
		less := slices.DeleteFunc(slices.Clone(teams), func(o team) bool { return o.beds[0] == t.beds[0] })
		if s := load(less); s != nil {
			best, teams = s, less
		}
	}
	return best
}

// teams lists the fleet's vehicles with their trailers, best worth first.
func (y *yard) teams(fleet *stow, todo, ground []int) []team {
	mass, volume := y.needs(todo, ground)
	var teams []team
	for i := range fleet.beds {
		b := &fleet.beds[i]
		if b.kind.trailer {
			continue
		}
		t := team{beds: []int{i}}
		if b.other >= 0 {
			t.beds = append(t.beds, b.other)
		}
		takes := 0.0
		for _, at := range t.beds {
			k := fleet.beds[at].kind
			t.cost += k.cost
			takes += min(1, float64(k.payload)/float64(max(mass, 1))) + min(1, float64(k.room)/float64(max(volume, 1)))
		}
		t.worth = float64(t.cost) / max(takes, 1e-9)
		teams = append(teams, t)
	}
	slices.SortStableFunc(teams, func(a, b team) int { return cmp.Compare(a.worth, b.worth) })
	return teams
}

// only is a new stow of some teams, coupled as they are in the fleet.
func (s *stow) only(teams []team) *stow {
	o := &stow{}
	for _, t := range teams {
		for _, at := range t.beds {
			b := s.beds[at]
			b.other, b.joint = -1, -1
			o.beds = append(o.beds, b)
		}
		if len(t.beds) == 2 {
			tower, trailer := len(o.beds)-2, len(o.beds)-1
			o.tie(tower, trailer)
		}
	}
	return o
}

// tie lets one bed pull another and their weights count together.
func (s *stow) tie(tower, trailer int) {
	t, b := &s.beds[tower], &s.beds[trailer]
	t.other, b.other = trailer, tower
	t.joint, b.joint = len(s.joints), len(s.joints)
	s.joints = append(s.joints, joint(t.kind, b.kind))
}
