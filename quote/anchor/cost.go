package anchor

import (
	"cmp"
	"math"
	"slices"

	"tentwright/catalog"
	"tentwright/quote/tent"
)

// cost is what a choice is measured by, the first that differs decides: legs of
// which nothing is known, how far the worst of the legs that are not held is from
// being so, how many they are, pieces not owned, hands, pieces. Where nothing
// holds, the strongest is kept and not what is light to carry.
type cost struct {
	unknown, short int
	worst          float64 // need over capacity, of the legs that are not held; whole percent
	lacking        int
	hands          float64 // money, in whole hundredths
	pieces         int
}

func (c cost) less(o cost) bool {
	return cmp.Or(cmp.Compare(c.unknown, o.unknown), cmp.Compare(c.worst, o.worst), cmp.Compare(c.short, o.short),
		cmp.Compare(c.lacking, o.lacking), cmp.Compare(c.hands, o.hands), cmp.Compare(c.pieces, o.pieces)) < 0
}

func (c cost) plus(o cost) cost {
	return cost{c.unknown + o.unknown, c.short + o.short, max(c.worst, o.worst), c.lacking + o.lacking, c.hands + o.hands, c.pieces + o.pieces}
}

// note counts how one leg is held.
func (c *cost) note(h *Holding, known bool) {
	switch {
	case !known:
		c.unknown++
		return
	case h.Need > h.Capacity && h.Capacity > 0:
		c.worst = max(c.worst, math.Round(100*h.Need/h.Capacity))
		c.short++
	case h.Need > h.Capacity:
		c.worst = math.Inf(1)
		c.short++
	}
	c.pieces += h.Count
}

// hands is what the work on so many anchors of a kind costs the yard, in
// hundredths of its money, with the weight that is carried for them: the
// hand-minutes of the shop's labour rules by what drives them, at what an hour
// of their skill costs. Minutes that are spent once for all are left out, as they
// hardly tell one kind from another, and so is what site and ground slow down.
// The yard owns the anchors: nothing else about them costs it money.
func (b *builder) hands(t *tent.Tent, kind string, pieces int, weight float64) float64 {
	k := handling{t.Family.ID, kind}
	x, known := b.handled[k]
	if !known {
		drivers := map[string][]string{"stake": {"stakes"}, "filled": {"ballast", "filled-ballast"}, "solid": {"ballast", "solid-ballast"}}[kind]
		x = handled{each: b.perOne(t, drivers), weight: b.perOne(t, []string{"weight-out", "weight-back"})}
		b.handled[k] = x
	}
	return math.Round(100 * (float64(pieces)*x.each + weight*x.weight))
}

// handling is what the price of handling an anchor depends on.
type handling struct{ family, kind string }

// handled is the money for one piece, and for one unit of weight as the shop's
// rules count it.
type handled struct{ each, weight float64 }

// perOne adds up the money for one of some drivers on a tent.
func (b *builder) perOne(t *tent.Tent, drivers []string) float64 {
	total := 0.0
	for i := range b.c.Labour {
		r := &b.c.Labour[i]
		if !slices.Contains(drivers, r.Driver) || !fits(r.Families, t) {
			continue
		}
		at := slices.IndexFunc(b.c.Rates.Skills, func(s catalog.Skill) bool { return s.ID == r.Skill })
		if at >= 0 {
			total += r.Minutes.InexactFloat64() / 60 * b.c.Rates.Skills[at].Cost.InexactFloat64()
		}
	}
	return total
}

// kindOf tells how an anchor is handled.
func kindOf(p *catalog.Part, ballast bool) string {
	switch {
	case !ballast:
		return "stake"
	case p != nil && p.Full != nil:
		return "filled"
	}
	return "solid"
}
