package anchor

import (
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/tent"
)

// held is one tent with its legs held in one way.
type held struct {
	legs            []Leg
	cases           []Case
	stakes, ballast cost
}

// choose sets the forces of each leg and chooses one kind of stake and one kind
// of ballast for the whole tent, which is how crews work.
func (x *member) choose(b *builder, feet []foot, areas []area) held {
	h := held{legs: slices.Clone(x.r.Legs)}
	for i := range h.legs {
		l, f := &h.legs[i], &feet[i]
		l.UpArea, l.SideArea, l.Dead = areas[i].up, areas[i].side, x.dead[i]
		l.Up, l.Side = x.r.Pressure*l.UpArea, x.r.Pressure*l.SideArea
		l.Guys, l.Rise, l.Run = f.guys(), f.rise, 0
		if l.Guys > 0 {
			l.Run = x.t.Graph.Out.Metres()
		}
		l.Pull = pullOf(l)
	}
	staked := func(i int) bool { return feet[i].way != Weight }
	weighted := func(i int) bool { return feet[i].way == Weight }
	h.stakes = pick(b.a.Stakes, h.count(staked), func(s *catalog.Stake) bool { return fits(s.Families, x.t) }, func(s *catalog.Stake, set bool) cost {
		return x.each(b, &h, set, kindOf(b.c.Part(s.Part), false), s.Part, s.With,
			func(i int) (Holding, bool) { return b.staked(x.t, &h.legs[i], &feet[i], s) }, staked)
	})
	h.ballast = pick(b.a.Ballast, h.count(weighted), func(p *catalog.BallastPiece) bool { return fits(p.Families, x.t) }, func(p *catalog.BallastPiece, set bool) cost {
		return x.each(b, &h, set, kindOf(b.c.Part(p.Part), true), p.Part, p.With,
			func(i int) (Holding, bool) { return b.weighted(x.t, &h.legs[i], &feet[i], p) }, weighted)
	})
	return h
}

// fits tells whether an anchor is for the family of a tent.
func fits(families []string, t *tent.Tent) bool {
	return len(families) == 0 || slices.Contains(families, t.Family.ID)
}

// count tells how many legs are asked for.
func (h *held) count(asked func(i int) bool) int {
	n := 0
	for i := range h.legs {
		if asked(i) {
			n++
		}
	}
	return n
}

// pick tries each kind and keeps the one of the least cost, the first of equals.
// Where none fits, nothing is known of the legs that ask for one.
func pick[T any](kinds []T, legs int, fits func(*T) bool, try func(kind *T, keep bool) cost) cost {
	var best *T
	var least cost
	for i := range kinds {
		if !fits(&kinds[i]) {
			continue
		}
		if c := try(&kinds[i], false); best == nil || c.less(least) {
			best, least = &kinds[i], c
		}
	}
	if best == nil {
		return cost{unknown: legs}
	}
	return try(best, true)
}

// each holds the legs that it is asked for with one kind, and tells what it
// costs; it keeps the holdings only where it is told to.
func (x *member) each(b *builder, h *held, keep bool, kind, part string, with []catalog.Along, hold func(i int) (Holding, bool), asked func(i int) bool) cost {
	var c cost
	for i := range h.legs {
		if !asked(i) {
			continue
		}
		got, known := hold(i)
		c.note(&got, known)
		if keep {
			h.legs[i].Holding = got
		}
	}
	many, weight := x.t.Job.Many(), unit.Mass(0)
	take := func(part string, count int) {
		m, _ := b.c.Mass(part)
		weight += m * unit.Mass(count)
		c.lacking += max(0, count*many-b.left[part])
	}
	take(part, c.pieces)
	for _, a := range with {
		take(a.Part, money.RoundUp(a.Count.Mul(money.Int(c.pieces))))
	}
	c.hands = b.hands(x.t, kind, c.pieces, weight.In(b.c.Company.Units))
	return c
}

// keep makes a choice the tent's own, and takes its pieces from what is left.
func (h *held) keep(b *builder, x *member) {
	x.r.Planned, x.r.Legs, x.r.Cases = true, h.legs, h.cases
	for i := range h.legs {
		l := &h.legs[i]
		if l.Holding.Way == Custom {
			b.unknown(x.t, l)
		}
	}
	for _, taken := range b.take(x.t, h.legs).Parts {
		b.left[taken.Part] -= taken.Count * x.t.Job.Many()
	}
}
