package workbook_test

import (
	"math"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote"
	"tentwright/quote/anchor"
	"tentwright/workbook"
	"tentwright/workbook/internal/calc"
)

// blow is what is typed into the sheet of anchors, and what holds then.
type blow struct {
	name    string
	typed   []typed
	gust    float64 // in the shop's unit
	ground  string  // of the whole job; none: as it was
	stake   float64 // safety factors; 0: the shop's
	ballast float64
}

var blows = []blow{
	{"as made", nil, 0, "", 0, 0},
	{"more wind", []typed{{"wind_gust", "", 53}}, 53, "", 0, 0},
	{"hardly any wind", []typed{{"wind_gust", "", 3}}, 3, "", 0, 0},
	{"an emptied gust", []typed{{"wind_gust", "", nil}}, 0, "", 0, 0},
	{"sand", []typed{{"site_surface_degree", "", "sand"}}, 0, "sand", 0, 0},
	{"a deck", []typed{{"site_surface_degree", "", "deck"}}, 0, "deck", 0, 0},
	{"safer", []typed{{"wind_safety_stake", "", 3.5}, {"wind_safety_ballast", "", 2.25}, {"wind_gust", "", 31}}, 31, "", 3.5, 2.25},
}

// legJob has legs that are held in every way: guyed and upright, by stakes and
// ballast, on grounds of their own and along sides without stakes.
const legJob = `tents:
  - {id: a, family: hip, size: 20x40, sides: [{side: front, wall: solid}, {side: back, no_stakes: yes}]}
  - {id: b, family: hip, size: 10x10, ground: soft}
  - {id: p, family: pole, size: 40x60, count: 2}
  - {id: s, family: span, size: 40x60, sides: [{side: left, wall: solid}]}
  - {id: m, family: hip, size: 20x20, sides: [{side: right, ground: soft}, {side: left, ground: deck, wall: solid}]}
`

// Whatever gust, ground or safety factor is typed, every leg shows the forces,
// the need and the capacity that follow by the formulas of statics, which are
// written out here once more in newtons, with the anchors as they were counted.
func TestLegsFollowWindAndGround(t *testing.T) {
	calc.Need(t)
	t.Parallel()
	var list []typing
	var made []*quote.Quote
	for _, sys := range []unit.System{unit.Imperial, unit.Metric} {
		c := demoCatalog(t)
		c.Company.Units = sys
		q := mustQuote(t, c, jobOf(t, legJob))
		for _, x := range blows {
			list, made = append(list, typing{string(sys) + ", " + x.name, workbook.Layout(q), x.typed}), append(made, q)
		}
	}
	compared, states := 0, map[string]bool{}
	for i, f := range recalculated(t, list) {
		compared += checkLegs(t, list[i].name, f, made[i], &blows[i%len(blows)], states)
	}
	t.Logf("%d figures of legs in %d workbooks; states %v", compared, len(list), states)
	if compared < 3000 || len(states) != 3 {
		t.Errorf("%d figures and the states %v were seen; more were expected", compared, states)
	}
}

// checkLegs holds every figure of every leg against the one that is reckoned
// here; it gives how many.
func checkLegs(t *testing.T, context string, f figures, q *quote.Quote, x *blow, states map[string]bool) int {
	t.Helper()
	n, sys := 0, q.Catalog.Company.Units
	for i := range q.Anchor.Tents {
		w := &q.Anchor.Tents[i]
		most, unknown := 0.0, false
		for k := range w.Legs {
			g := &w.Legs[k]
			want := reckon(q, w, g, x)
			key := w.ID + ":" + g.Name
			for column, newtons := range map[string]float64{"up": want.up, "side": want.side, "pull": want.pull, "need": want.need, "capacity": want.capacity} {
				got := f.beside(t, "leg_"+column, "leg_key", key)
				if w := newtonsIn(sys, newtons); math.Abs(got.Number-w) > 1e-9*math.Max(1, w) {
					t.Errorf("%s, %s: %s: wanted %v, got %v", context, key, got.place, w, got.Number)
				}
				n++
			}
			if want.capacity > 0 {
				most = math.Max(most, want.need/want.capacity)
			}
			f.beside(t, "leg_state", "leg_key", key).text(t, context+", "+key, want.state())
			states[want.state()] = true
			unknown = unknown || want.state() == "not known"
		}
		f.beside(t, "roof_use", "roof_tent", w.ID).number(t, context, most)
		f.beside(t, "check_value", "check_key", "anchor:"+w.ID).number(t, context, percentAsked(most, unknown))
	}
	return n
}

// percentAsked is the most that is asked of an anchor as the check has it:
// rounded up to two places, and 1,000 where some leg is held by nothing known.
func percentAsked(most float64, unknown bool) float64 {
	percent := math.Ceil(math.Round(most*1e8)/1e4) / 100
	if unknown {
		return math.Max(1000, percent)
	}
	return percent
}

// force is what one leg must hold, and what holds it, in newtons.
type force struct{ up, side, pull, need, capacity float64 }

func (x force) state() string {
	switch {
	case x.capacity <= 0 && x.need > 0:
		return "not known"
	case x.need > x.capacity:
		return "over"
	}
	return "holds"
}

// newtonsIn is newtons in pounds-force or kilonewtons (NIST SP 811).
func newtonsIn(sys unit.System, newtons float64) float64 {
	if sys == unit.Metric {
		return newtons / 1000
	}
	return newtons / 4.4482216152605
}

// reckon follows the wind from its gust to the need of a leg, and the anchors
// that were counted to what they hold in the ground that is now under it.
func reckon(q *quote.Quote, w *anchor.Tent, g *anchor.Leg, x *blow) force {
	c := q.Catalog
	gust, stake, ballast := c.Anchors.Gust.MetresPerSecond(), x.stake, x.ballast
	if x.gust > 0 {
		gust = x.gust * map[unit.System]float64{unit.Imperial: 0.44704, unit.Metric: 1}[c.Company.Units]
	}
	if x.stake == 0 {
		stake, ballast = c.Anchors.Safety.Stake.InexactFloat64(), c.Anchors.Safety.Ballast.InexactFloat64()
	}
	pressure := w.PerGust * gust * gust
	h := &g.Holding
	out := force{up: g.UpArea * pressure, side: g.SideArea * pressure}
	if g.Guys == 0 {
		out.pull = out.up + out.side
	} else {
		slope := math.Atan2(g.Rise, g.Run)
		out.pull = math.Max(out.up/math.Sin(slope), out.side/math.Cos(slope))
	}
	each, mu := h.Each, h.Mu
	if grounds := groundsNow(q, w.ID, g, x.ground); len(grounds) > 0 {
		each, mu = math.Inf(1), math.Inf(1)
		for _, ground := range grounds {
			e, m := heldBy(c, h, ground)
			each, mu = math.Min(each, e), math.Min(mu, m)
		}
	}
	out.need = stake * out.pull
	switch h.Way {
	case anchor.Upright:
		out.need = math.Max(0, stake*out.up-g.Dead) + stake*out.side
	case anchor.Weight:
		out.need = ballast * (out.up + out.side)
		if mu > 0 {
			out.need = ballast * (out.up + out.side/mu)
		}
		out.need = math.Max(0, out.need-g.Dead)
	}
	out.capacity = float64(h.Count) * each * h.Group
	return out
}

// groundsNow is the grounds on which a leg stands once another is chosen for the
// whole job.
func groundsNow(q *quote.Quote, id string, g *anchor.Leg, chosen string) []string {
	job := q.Job.Tent(id)
	if chosen == "" {
		return nil
	}
	var all []string
	for i := range q.Parts.Tents {
		t := &q.Parts.Tents[i]
		if t.Job.ID != id {
			continue
		}
		for _, side := range g.Sides {
			ground := job.Ground
			if ask := job.Side(side); ask != nil && ask.Ground != "" {
				ground = ask.Ground
			}
			if g.Holding.Way == anchor.Guyed && !t.MayStakeAt(side) {
				continue
			}
			if ground == "" {
				ground = chosen
			}
			all = append(all, ground)
		}
	}
	return all
}

// heldBy is what one anchor holds on a surface by the shop's own tests, and its
// friction; nothing where there are none.
func heldBy(c *catalog.Catalog, h *anchor.Holding, ground string) (each, mu float64) {
	if h.Way == anchor.Weight {
		for _, f := range c.Anchors.Friction {
			if f.Ballast == h.Ballast.ID && f.Surface == ground {
				return h.Each, f.Mu.InexactFloat64()
			}
		}
		return 0, 0
	}
	for _, p := range c.Anchors.Tests {
		if p.Stake == h.Stake.ID && p.Surface == ground && (p.Way == "upright") == (h.Way == anchor.Upright) {
			return p.Pull.Kilograms() * 9.80665, 0
		}
	}
	return 0, 0
}

// What could not be computed stands as a word and never as a nought, and every
// formula beside it is as true; so it is for tents that are held together.
func TestUnknownAnchorsAreSaid(t *testing.T) {
	calc.Need(t)
	t.Parallel()
	const joined = "tents: [{id: a, family: hip, size: 20x20}, {id: b, family: hip, size: 20x20, joins: a, join_side: left}]"
	var trials []trial
	for _, x := range []struct {
		name, body string
		shop       func(*testing.T) *catalog.Catalog
		state      string
	}{
		{"refused", "wind: {gust: 61 mph}\n" + walledJob, demoShop, "not known"},
		{"not entered", "site: [{factor: surface, option: concrete}]\n" + walledJob, ownAnchors, "not known"},
		{"joined", joined, demoShop, "holds"},
	} {
		q, book := laidOut(t, x.shop(t), x.body)
		trials = append(trials, trial{x.name, q, book, leastCount})
		keys, _, _ := cellsOf(t, book, "leg_key")
		states, _, _ := cellsOf(t, book, "leg_state")
		lifts, _, _ := cellsOf(t, book, "leg_up")
		for i := range keys[:len(keys)-1] {
			if states[i].Value != x.state {
				t.Errorf("%s, %v: wanted %q, got %v", x.name, keys[i].Value, x.state, states[i].Value)
			}
			if planned := q.Anchor.Tents[0].Planned; (lifts[i].Value != nil) != planned {
				t.Errorf("%s, %v: wanted a lift only where one was computed, got %v", x.name, keys[i].Value, lifts[i].Value)
			}
		}
	}
	checkTruth(t, trials)
}
