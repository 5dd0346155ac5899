package anchor

import (
	"cmp"
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

// cost is what a choice is measured by, the first that differs decides: legs of
// which nothing is known, legs not held, pieces not owned, newtons that the
// former lack, weight to carry from the truck and back, pieces.
type cost struct {
	unknown, short, lacking int
	gap                     float64
	weight                  unit.Mass
	pieces                  int
}

func (c cost) less(o cost) bool {
	return cmp.Or(cmp.Compare(c.unknown, o.unknown), cmp.Compare(c.short, o.short), cmp.Compare(c.lacking, o.lacking),
		cmp.Compare(c.gap, o.gap), cmp.Compare(c.weight, o.weight), cmp.Compare(c.pieces, o.pieces)) < 0
}

func (c cost) plus(o cost) cost {
	return cost{c.unknown + o.unknown, c.short + o.short, c.lacking + o.lacking, c.gap + o.gap, c.weight + o.weight, c.pieces + o.pieces}
}

// choose sets the forces of each leg and chooses one kind of stake and one kind
// of ballast for the whole tent, which is how crews work.
func (x *member) choose(b *builder, feet []foot, areas []area) held {
	h := held{legs: slices.Clone(x.r.Legs)}
	for i := range h.legs {
		l, f := &h.legs[i], &feet[i]
		l.UpArea, l.SideArea, l.Dead = areas[i].up, areas[i].side, x.dead[i]
		l.Up, l.Side = max(0, x.r.Pressure*l.UpArea-l.Dead), x.r.Pressure*l.SideArea
		l.Guys, l.Rise, l.Run = f.guys(), f.rise, 0
		if l.Guys > 0 {
			l.Run = x.t.Graph.Out.Metres()
		}
		l.Pull = pullOf(l)
	}
	h.stakes = pick(b.a.Stakes, func(s *catalog.Stake) bool { return fits(s.Families, x.t) }, func(s *catalog.Stake, set bool) cost {
		return x.each(b, &h, set, s.Part, s.With, func(i int) (Holding, bool) { return b.staked(x.t, &h.legs[i], &feet[i], s) },
			func(i int) bool { return feet[i].way != Weight })
	})
	h.ballast = pick(b.a.Ballast, func(p *catalog.BallastPiece) bool { return fits(p.Families, x.t) }, func(p *catalog.BallastPiece, set bool) cost {
		return x.each(b, &h, set, p.Part, p.With, func(i int) (Holding, bool) { return b.weighted(x.t, &h.legs[i], &feet[i], p) },
			func(i int) bool { return feet[i].way == Weight })
	})
	return h
}

// fits tells whether an anchor is for the family of a tent.
func fits(families []string, t *tent.Tent) bool {
	return len(families) == 0 || slices.Contains(families, t.Family.ID)
}

// pick tries each kind and keeps the one of the least cost, the first of equals.
func pick[T any](kinds []T, fits func(*T) bool, try func(kind *T, keep bool) cost) cost {
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
	if best != nil {
		least = try(best, true)
	}
	return least
}

// each holds the legs that it is asked for with one kind, and tells what it
// costs; it keeps the holdings only where it is told to.
func (x *member) each(b *builder, h *held, keep bool, part string, with []catalog.Along, hold func(i int) (Holding, bool), asked func(i int) bool) cost {
	var c cost
	for i := range h.legs {
		if !asked(i) {
			continue
		}
		got, known := hold(i)
		switch {
		case !known:
			c.unknown++
		case got.Need > got.Capacity:
			c.short++
			c.gap += got.Need - got.Capacity
		}
		if known {
			c.pieces += got.Count
		}
		if keep {
			h.legs[i].Holding = got
		}
	}
	many := x.t.Job.Many()
	take := func(part string, count int) {
		m, _ := b.c.Mass(part)
		c.weight += m * unit.Mass(count)
		c.lacking += max(0, count*many-b.left[part])
	}
	take(part, c.pieces)
	for _, a := range with {
		take(a.Part, money.RoundUp(a.Count.Mul(money.Int(c.pieces))))
	}
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
