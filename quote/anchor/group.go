package anchor

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"tentwright/quote/frame"
	"tentwright/quote/tent"
)

// group is tents that hold each other, or one that stands alone.
type group struct {
	b       *builder
	m       *method
	members []*member
	blocked bool
}

// member is one tent of a group.
type member struct {
	t    *tent.Tent
	r    *Tent
	at   tent.Offset
	s    *surfaces
	dead []float64

	pairs [2][]pair // by axis
}

// newGroup measures the surfaces, coefficients and weight of each tent.
func newGroup(b *builder, m *method, members []int, at []tent.Offset) *group {
	g := &group{b: b, m: m}
	for _, i := range members {
		g.blocked = g.blocked || blocked(&b.tents[i])
	}
	for _, i := range members {
		x := &member{t: &b.tents[i], r: &b.r.Tents[i], at: at[i]}
		legs := make([]frame.Point, len(x.r.Legs))
		for n := range legs {
			legs[n] = x.r.Legs[n].At
		}
		x.s = surfacesOf(x.t, legs)
		x.r.Blocked = g.blocked
		x.weigh(b)
		x.r.PerGust, _ = m.perGust(x.r.Height)
		v := m.gust.MetresPerSecond()
		x.r.Pressure = x.r.PerGust * v * v
		for axis := range x.pairs {
			along := x.t.Family.Kind == clearSpan && axis == acrossLength
			x.pairs[axis], _ = m.pairs(angle(x.t.Graph, axis), g.blocked, along)
			for _, p := range x.pairs[axis] {
				x.r.Down = max(x.r.Down, p.windward, p.leeward)
				x.r.Up = max(x.r.Up, -p.windward, -p.leeward)
			}
		}
		g.members = append(g.members, x)
	}
	return g
}

// weigh spreads the weight that is counted on by the plan that each leg carries.
func (x *member) weigh(b *builder) {
	x.r.Dead = b.a.Safety.Dead.InexactFloat64() * weightOf(b.c, x.t)
	total := 0.0
	for _, a := range x.s.plan {
		total += a
	}
	x.dead = make([]float64, len(x.s.plan))
	for i, a := range x.s.plan {
		x.dead[i] = x.r.Dead * a / total
	}
}

// plan tries stakes wherever they may be driven. Where that does not hold, it
// also tries to leave what pushes sideways to guys and plates, as far as they
// can carry it, and ballast along the sides that the most stakes do not hold.
// Every one of these is in balance; the one of the least cost is kept, which is
// the strongest where nothing holds, but none that takes more of what the yard
// does not own.
func (g *group) plan() {
	base := make([]map[int]bool, len(g.members))
	best, why := g.try(base, false)
	if why != "" {
		// Corners guyed along one side alone may leave a direction that nothing
		// pulls: ballast then holds those at a side where no stake may be driven.
		base = g.halfGuyed()
		best, why = g.try(base, false)
	}
	if why != "" {
		for _, x := range g.members {
			g.b.refuse(x.r.ID, "%s", why)
		}
		return
	}
	first := best
	also := func(weighted []map[int]bool, spare bool) *attempt {
		a, why := g.try(weighted, spare)
		if why == "" && a.cost().less(best.cost()) && a.cost().lacking <= best.cost().lacking {
			best = a
		}
		return a
	}
	if best.cost().short > 0 && best.weighs() {
		also(base, true)
	}
	weighted, any := first.overpulled(g, base)
	for any && best.cost().short > 0 {
		next := also(weighted, false)
		if best.cost().short > 0 {
			also(weighted, true)
		}
		if next == nil {
			break
		}
		weighted, any = next.overpulled(g, weighted)
	}
	for i, x := range g.members {
		best.of[i].keep(g.b, x)
	}
}

// attempt is one way of holding a group, tent by tent.
type attempt struct{ of []held }

// halfGuyed lists the legs of which one side is free and another is marked.
func (g *group) halfGuyed() []map[int]bool {
	legs := make([]map[int]bool, len(g.members))
	for i, x := range g.members {
		legs[i] = map[int]bool{}
		for n := range x.r.Legs {
			if x.t.Family.Kind == poleTent {
				break // its side poles stand by nothing but guys
			}
			for _, side := range x.r.Legs[n].Sides {
				if !x.t.MayStakeAt(side) {
					legs[i][n] = true
				}
			}
		}
	}
	return legs
}

// overpulled lists the legs that are furthest from being held by the most stakes,
// beside those that ballast holds already; a pole tent has no other way. Between
// its corners a side is held in one way, as a crew works along it.
func (a *attempt) overpulled(g *group, already []map[int]bool) (legs []map[int]bool, any bool) {
	legs = make([]map[int]bool, len(a.of))
	over := func(i int, l *Leg) float64 {
		h := &l.Holding
		if g.members[i].t.Family.Kind == poleTent || h.Stake == nil || h.Way == Custom || h.Need <= h.Capacity {
			return 0
		}
		return h.Need / max(h.Capacity, 1)
	}
	worst := 0.0
	for i := range a.of {
		for n := range a.of[i].legs {
			worst = max(worst, over(i, &a.of[i].legs[n]))
		}
	}
	for i := range a.of {
		legs[i] = map[int]bool{}
		maps.Copy(legs[i], already[i])
		for n := range a.of[i].legs {
			l := &a.of[i].legs[n]
			if x := over(i, l); x == 0 || x < worst*(1-1e-6) { // alike sides go together
				continue
			}
			legs[i][n], any = true, true
			if len(l.Sides) != 1 {
				continue
			}
			for k := range a.of[i].legs {
				if slices.Equal(a.of[i].legs[k].Sides, l.Sides) {
					legs[i][k] = true
				}
			}
		}
	}
	return legs, any
}

// weighs tells whether some leg is held by ballast.
func (a *attempt) weighs() bool {
	for i := range a.of {
		if slices.ContainsFunc(a.of[i].legs, func(l Leg) bool { return l.Holding.Ballast != nil }) {
			return true
		}
	}
	return false
}

// cost adds up that of all tents.
func (a *attempt) cost() cost {
	var all cost
	for i := range a.of {
		all = all.plus(a.of[i].stakes).plus(a.of[i].ballast)
	}
	return all
}

// try computes the group with its feet held as their ground allows, some by
// ballast whatever it is, and chooses what holds them. Where ballast is spared,
// it holds sideways only what nothing else does.
func (g *group) try(weighted []map[int]bool, spare bool) (*attempt, string) {
	var feet []foot
	for i, x := range g.members {
		feet = append(feet, feetOf(x.t, x.at, weighted[i])...)
	}
	for i := range feet {
		feet[i].spared = feet[i].spared || spare && feet[i].way == Weight
	}
	areas, cases, why := g.blow(feet)
	if why != "" {
		return nil, why
	}
	a := &attempt{}
	at := 0
	for i, x := range g.members {
		n := len(x.r.Legs)
		h := x.choose(g.b, feet[at:at+n], areas[at:at+n])
		h.cases = cases[i]
		a.of = append(a.of, h)
		at += n
	}
	return a, ""
}

// area is the greatest lift and sideways force of one leg at a pressure of 1.
type area struct{ up, side float64 }

// blow lets wind blow from every side in every way of the method.
func (g *group) blow(feet []foot) (most []area, cases [][]Case, why string) {
	spared, all := newSideways(feet, false), newSideways(feet, true)
	most, cases = make([]area, len(feet)), make([][]Case, len(g.members))
	reactions, pulls := make([]frame.Point, len(feet)), make([]float64, len(feet))
	names := g.m.cases()
	for wind := range winds {
		axis := winds[wind].axis
		for n := range g.members[0].pairs[axis] {
			name := fmt.Sprintf("wind from the %s, %s", winds[wind].from, names[n])
			loads := make([]load, len(g.members))
			for i, x := range g.members {
				loads[i] = g.m.blown(x.s, wind, x.pairs[axis][n])
			}
			whole := g.together(loads)
			if why := settle(spared, all, feet, &whole, reactions, pulls); why != "" {
				return nil, nil, why + " in " + name
			}
			for i := range feet {
				most[i].up = max(most[i].up, -reactions[i].Z)
				most[i].side = max(most[i].side, pulls[i]*float64(max(1, feet[i].guys())))
			}
			g.note(cases, name, loads, feet, reactions)
		}
	}
	return most, cases, ""
}

// guys is how many guys share the load of a foot. Each has its part of the
// stakes, so that the most that one pulls counts for all.
func (f *foot) guys() int {
	if f.way == Guyed {
		return len(f.outs)
	}
	return 0
}

// together is the loads of all tents as one, about the origin of the group.
func (g *group) together(loads []load) load {
	var whole load
	for i, x := range g.members {
		l := &loads[i]
		off := frame.Point{X: x.at.X, Y: x.at.Y}
		whole.share = append(whole.share, l.share...)
		whole.force = plus(whole.force, l.force)
		whole.moment = plus(whole.moment, plus(l.moment, cross(off, l.force)))
	}
	return whole
}

// note keeps a case of each tent, about the origin of its own plan.
func (g *group) note(cases [][]Case, name string, loads []load, feet []foot, reactions []frame.Point) {
	at := 0
	for i, x := range g.members {
		n := len(x.r.Legs)
		c := Case{Name: name, Force: loads[i].force, Moment: loads[i].moment, Legs: append([]frame.Point(nil), reactions[at:at+n]...)}
		if len(g.members) > 1 {
			force, moment := c.Force, c.Moment
			for k, r := range c.Legs {
				p := x.r.Legs[k].At
				p.Z = feet[at+k].rise
				force, moment = plus(force, r), plus(moment, cross(p, r))
			}
			c.Next, c.NextMoment = scaled(-1, force), scaled(-1, moment)
		}
		cases[i] = append(cases[i], c)
		at += n
	}
}

// pullOf is what must hold a leg: along its guy, which lifts and pulls at once,
// or straight at its foot. Both at once are counted there in full: on the safe
// side of every rule for pulling askew.
func pullOf(l *Leg) float64 {
	if l.Guys == 0 {
		return l.Up + l.Side
	}
	line := math.Hypot(l.Rise, l.Run)
	return max(l.Up*line/l.Rise, l.Side*line/l.Run)
}
