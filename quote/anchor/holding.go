package anchor

import (
	"fmt"

	"tentwright/catalog"
	"tentwright/quote/frame"
	"tentwright/quote/tent"
)

// staked holds a leg with the fewest stakes of a kind that do, at least as many
// as is customary. Where nothing is known of the stake in that ground it is held
// by custom.
func (b *builder) staked(t *tent.Tent, l *Leg, f *foot, s *catalog.Stake) (Holding, bool) {
	h := Holding{Way: f.way, Stake: s, Part: b.c.Part(s.Part), Safety: b.a.Safety.Stake.InexactFloat64()}
	known := false
	for _, surface := range f.surfaces {
		each, basis, ok := b.recall(s, surface, f.way)
		if !ok {
			l.Surface = surface
			return b.customAs(t, l, f.corner, s, nil), false
		}
		if !known || each < h.Each {
			h.Each, h.Basis, l.Surface, known = each, basis, surface, true
		}
	}
	if !known {
		return b.customAs(t, l, f.corner, s, nil), false
	}
	// Both guys of a corner have equally many, and each its own group.
	step := max(1, l.Guys)
	h.Least = (customary(t, f.corner) + step - 1) / step * step
	h.Need = h.Safety * l.Pull
	if f.way == Upright {
		h.Need = max(0, h.Safety*l.Up-l.Dead) + h.Safety*l.Side
	}
	strongest := h
	for h.Count = h.Least; ; h.Count += step {
		h.Group = b.grouped(h.Count / step)
		h.Capacity = float64(h.Count) * h.Each * h.Group
		// More stakes in one group may hold less than fewer do.
		if strongest.Count == 0 || h.Capacity > strongest.Capacity {
			strongest = h
		}
		if h.Capacity >= h.Need || h.Count+step > s.Most {
			return strongest, true
		}
	}
}

// customary is the family's customary number of stakes at a leg.
func customary(t *tent.Tent, corner bool) int {
	if corner {
		return t.Family.Anchorage.Corner
	}
	return t.Family.Anchorage.PerLeg
}

// question is what the strength of a stake depends on.
type question struct {
	stake  *catalog.Stake
	ground *catalog.SiteOption
	way    string
}

// answer is what is known of it.
type answer struct {
	each  float64
	basis string
	ok    bool
}

// recall is strength, looked up once for all legs that ask the same.
func (b *builder) recall(s *catalog.Stake, ground *catalog.SiteOption, way string) (each float64, basis string, ok bool) {
	q := question{s, ground, way}
	a, known := b.recalled[q]
	if !known {
		a.each, a.basis, a.ok = b.strength(s, ground, way)
		b.recalled[q] = a
	}
	return a.each, a.basis, a.ok
}

// strength is what one stake holds in some ground: the least of the shop's own
// pull tests, else the published table of holdfasts scaled by the face of the
// stake in the ground, and never above the table's own. The table is of pickets
// pulled sideways and driven at a rake, so that it says nothing of a stake pulled
// upright, or driven steeper.
func (b *builder) strength(s *catalog.Stake, ground *catalog.SiteOption, way string) (each float64, basis string, ok bool) {
	if ground == nil {
		return 0, "", false
	}
	pulled := "guy"
	if way == Upright {
		pulled = "upright"
	}
	if all := Tests(b.c, s.ID, ground.ID, pulled); len(all) > 0 {
		return force(all[0].Pull), fmt.Sprintf("own pull test of %s", all[0].Date), true
	}
	table := b.a.Holdfast
	if table == nil || way != Guyed || s.Rake.LessThan(table.Rake) {
		return 0, "", false
	}
	for i := range table.Soils {
		if soil := &table.Soils[i]; soil.Surface == ground.ID {
			face := s.Driven.Metres() * s.Diameter.Metres() / (table.Driven.Metres() * table.Diameter.Metres())
			return force(table.Pull) * soil.Factor.InexactFloat64() * min(1, face), "table: " + table.Source, true
		}
	}
	return 0, "", false
}

// grouped is what each of so many stakes at one leg still holds of a single one.
// Beyond the table it goes on falling as between its last two rows.
func (b *builder) grouped(stakes int) float64 {
	if len(b.rows) < len(b.a.Groups) {
		for _, s := range b.a.Groups {
			b.rows = append(b.rows, point{float64(s.Stakes), s.Factor.InexactFloat64()})
		}
	}
	rows, n := b.rows, float64(stakes)
	if len(rows) == 0 {
		return 1
	}
	if n < rows[0].x { // fewer disturb each other no more than in the first row
		return rows[0].y
	}
	if f, ok := interpolate(rows, n); ok {
		return f
	}
	last := rows[len(rows)-1]
	if len(rows) == 1 {
		return last.y
	}
	before := rows[len(rows)-2]
	return max(0, last.y+(last.y-before.y)/(last.x-before.x)*(n-last.x))
}

// weighted holds a leg with the fewest pieces of ballast that do: their weight
// carries the lift, and what it presses on the ground holds sideways by friction.
func (b *builder) weighted(t *tent.Tent, l *Leg, f *foot, p *catalog.BallastPiece) (Holding, bool) {
	part := b.c.Part(p.Part)
	h := Holding{Way: Weight, Ballast: p, Part: part, Least: t.Family.Anchorage.Ballast, Group: 1,
		Safety: b.a.Safety.Ballast.InexactFloat64(), Each: b.fullWeight(part)}
	known := false
	for _, surface := range f.surfaces {
		mu, basis, ok := b.rub(p, surface)
		if !ok {
			l.Surface = surface
			return b.customAs(t, l, f.corner, nil, p), false
		}
		if !known || mu < h.Mu {
			h.Mu, h.Basis, l.Surface, known = mu, basis, surface, true
		}
	}
	if !known {
		return b.customAs(t, l, f.corner, nil, p), false
	}
	h.Need = max(0, h.Safety*(l.Up+l.Side/h.Mu)-l.Dead)
	for h.Count = h.Least; ; h.Count++ {
		h.Capacity = float64(h.Count) * h.Each
		if h.Capacity >= h.Need || h.Count+1 > p.Most {
			return h, true
		}
	}
}

// fullWeight is the weight of a piece of ballast on site, filled where it is to
// be filled there.
func (b *builder) fullWeight(p *catalog.Part) float64 {
	if p != nil && p.Full != nil {
		return force(*p.Full)
	}
	return weightOfPart(b.c, p)
}

// rub is what friction depends on.
type rub struct {
	piece  *catalog.BallastPiece
	ground *catalog.SiteOption
}

// rub is the friction of a kind of ballast on some ground, the least that is
// entered; looked up once for all legs that ask the same.
func (b *builder) rub(p *catalog.BallastPiece, ground *catalog.SiteOption) (mu float64, basis string, ok bool) {
	q := rub{p, ground}
	a, known := b.rubbed[q]
	if !known && ground != nil {
		if all := Frictions(b.c, p.ID, ground.ID); len(all) > 0 {
			a = answer{all[0].Mu.InexactFloat64(), all[0].Source, true}
		}
		b.rubbed[q] = a
	}
	return a.each, a.basis, a.ok
}

// custom holds a leg by the family's customary number of its usual stake, the
// first of the shop's that fits, or of its usual ballast.
func (b *builder) custom(t *tent.Tent, leg frame.Leg) Holding {
	h := Holding{Way: Custom}
	if t.MayStake(leg.Sides) {
		h.Count = customary(t, leg.Corner)
		for i := range b.a.Stakes {
			if s := &b.a.Stakes[i]; fits(s.Families, t) {
				h.Stake, h.Part = s, b.c.Part(s.Part)
				break
			}
		}
	} else {
		h.Count = t.Family.Anchorage.Ballast
		for i := range b.a.Ballast {
			if p := &b.a.Ballast[i]; fits(p.Families, t) {
				h.Ballast, h.Part = p, b.c.Part(p.Part)
				break
			}
		}
	}
	h.Least = h.Count
	return h
}

// customAs is the customary holding of a leg with one kind of anchor.
func (b *builder) customAs(t *tent.Tent, l *Leg, corner bool, s *catalog.Stake, p *catalog.BallastPiece) Holding {
	h := Holding{Way: Custom, Stake: s, Ballast: p}
	if s != nil {
		h.Count, h.Part = customary(t, corner), b.c.Part(s.Part)
	} else {
		h.Count, h.Part = t.Family.Anchorage.Ballast, b.c.Part(p.Part)
	}
	h.Least = h.Count
	return h
}

// unknown says why a leg of a planned tent is held by custom.
func (b *builder) unknown(t *tent.Tent, l *Leg) {
	ground := "its ground"
	if l.Surface != nil {
		ground = fmt.Sprintf("%q", l.Surface.ID)
	}
	h := &l.Holding
	switch {
	case h.Stake != nil && t.Family.Kind != clearSpan:
		b.miss("no pull test of stake %q by a guy in %s: legs there are held by custom", h.Stake.ID, ground)
	case h.Stake != nil:
		b.miss("no pull test of stake %q upright in %s: legs there are held by custom", h.Stake.ID, ground)
	case h.Ballast != nil:
		b.miss("no friction of ballast %q on %s: legs there are held by custom", h.Ballast.ID, ground)
	default:
		b.miss("no stake or ballast of the shop is for %s: its legs are held by custom", t.Family.Name)
	}
}
