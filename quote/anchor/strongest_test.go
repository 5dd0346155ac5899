package anchor_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/anchor"
	"tentwright/quote/tent"

	"pgregory.net/rapid"
)

// Where nothing is enough the strongest stays: what holds a group is never
// nearer to giving way than what was planned for less wind would be.
func TestStrongerWindIsNeverHeldByLess(t *testing.T) {
	c := demo(t)
	c.Anchors.Limit = 200 * unit.MilePerHour
	for i := range c.Anchors.Stakes {
		c.Part(c.Anchors.Stakes[i].Part).Owned = 100000
	}
	for i := range c.Anchors.Ballast {
		c.Part(c.Anchors.Ballast[i].Part).Owned = 100000
	}
	compared := 0
	for _, part := range []string{"stake-cap", "ballast-strap", "ballast-cover"} {
		c.Part(part).Owned = 100000
	}
	rapid.Check(t, func(t *rapid.T) {
		j := drawn(t, c)
		tents, _ := tent.Build(c, j)
		at := tent.Offsets(tents)
		var before []*anchor.Result
		for mph := 20; mph <= 80; mph += 12 {
			j.Wind.Gust = unit.Speed(mph) * unit.MilePerHour
			r, _ := anchor.Build(c, j, tents)
			is := worstOf(c, r, r, at)
			for _, b := range before {
				for group, was := range worstOf(c, b, r, at) {
					if is[group] > 1 {
						compared++
					}
					if is[group] > 1 && is[group] > was+0.011 {
						t.Fatalf("group %d is used by %.2f at %d mph, by %.2f as planned for less\n%s\n%s", group, is[group], mph, was, toldOf(b), toldOf(r))
					}
				}
			}
			before = append(before, r)
		}
	})
	if compared < 1000 {
		t.Errorf("%d pairs of plans were compared where nothing is enough; at least 1000 were expected", compared)
	}
}

// Between its corners a side is held in one way, whatever the wind.
func TestSidesAreNotMixed(t *testing.T) {
	c := demo(t)
	c.Anchors.Limit = 200 * unit.MilePerHour
	rapid.Check(t, func(t *rapid.T) {
		j := drawn(t, c)
		j.Wind.Gust = unit.Speed(rapid.IntRange(20, 80).Draw(t, "wind")) * unit.MilePerHour
		tents, _ := tent.Build(c, j)
		r, _ := anchor.Build(c, j, tents)
		for i := range r.Tents {
			ways := map[string]string{}
			for _, l := range r.Tents[i].Legs {
				if len(l.Sides) != 1 {
					continue
				}
				if way := ways[l.Sides[0]]; way != "" && way != l.Holding.Way {
					t.Fatalf("leg %s of %s is held by %s, another of its side by %s", l.Name, r.Tents[i].ID, l.Holding.Way, way)
				}
				ways[l.Sides[0]] = l.Holding.Way
			}
		}
	})
}

// worstOf is the greatest share of its capacity that a leg of each group takes,
// as it is held in one plan, in the wind of another.
func worstOf(c *catalog.Catalog, plan, wind *anchor.Result, at []tent.Offset) map[int]float64 {
	worst := map[int]float64{}
	stake, ballast := c.Anchors.Safety.Stake.InexactFloat64(), c.Anchors.Safety.Ballast.InexactFloat64()
	for i := range plan.Tents {
		p := wind.Tents[i].Pressure
		for _, l := range plan.Tents[i].Legs {
			h, need := &l.Holding, 0.0
			up, side := l.UpArea*p, l.SideArea*p
			switch h.Way {
			case anchor.Guyed:
				slope := math.Atan2(l.Rise, l.Run)
				need = stake * max(up/math.Sin(slope), side/math.Cos(slope))
			case anchor.Upright:
				need = max(0, stake*up-l.Dead) + stake*side
			case anchor.Weight:
				need = max(0, ballast*(up+side/h.Mu)-l.Dead)
			default:
				continue
			}
			worst[at[i].Group] = max(worst[at[i].Group], need/h.Capacity)
		}
	}
	return worst
}

// toldOf is what holds the tents, in a few words.
func toldOf(r *anchor.Result) string {
	var all []string
	for i := range r.Tents {
		for _, l := range r.Tents[i].Legs {
			id := ""
			if l.Holding.Part != nil {
				id = l.Holding.Part.ID
			}
			all = append(all, fmt.Sprintf("%s %s %d %s %.2f", r.Tents[i].ID, l.Name, l.Holding.Count, id, l.Holding.Use()))
		}
	}
	return strings.Join(all, "; ")
}

// Stronger wind never asks for less of a leg whose share of the wind is the same.
// It is another once some legs go over to ballast and others carry for them.
func TestStrongerWindNeverAsksForLess(t *testing.T) {
	c := demo(t)
	compared := 0
	rapid.Check(t, func(t *rapid.T) {
		j := drawn(t, c)
		tents, _ := tent.Build(c, j)
		weak := rapid.IntRange(5, 59).Draw(t, "gust")
		plan := func(mph int) *anchor.Result {
			j.Wind.Gust = unit.Speed(mph) * unit.MilePerHour
			r, _ := anchor.Build(c, j, tents)
			return r
		}
		a, b := plan(weak), plan(weak+1)
		for i := range a.Tents {
			for n := range a.Tents[i].Legs {
				x, y := &a.Tents[i].Legs[n], &b.Tents[i].Legs[n]
				if x.UpArea != y.UpArea || x.SideArea != y.SideArea || x.Holding.Way != y.Holding.Way {
					continue
				}
				compared++
				same := x.Holding.Stake == y.Holding.Stake && x.Holding.Ballast == y.Holding.Ballast
				if y.Up < x.Up || y.Side < x.Side || y.Pull < x.Pull || same && (y.Holding.Need < x.Holding.Need || y.Holding.Count < x.Holding.Count) {
					t.Fatalf("leg %s of %s: %d mph asks for %.3f up, %.3f sideways, %+v; one more for %.3f, %.3f, %+v", x.Name, a.Tents[i].ID, weak,
						x.Up, x.Side, x.Holding, y.Up, y.Side, y.Holding)
				}
			}
		}
	})
	if compared < 1000 {
		t.Errorf("%d legs were compared; at least 1000 were expected", compared)
	}
}
