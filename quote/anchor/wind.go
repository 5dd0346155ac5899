package anchor

import (
	"fmt"
	"math"
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
	"tentwright/quote/tent"
)

// pair is the coefficients of the windward and of the leeward half of a roof at
// one way of blowing; down is above zero.
type pair struct{ windward, leeward float64 }

// method is one of the two published ways from a gust to the pressure on a roof.
type method struct {
	a                 *catalog.Anchors
	terrain           *catalog.Terrain
	gust              unit.Speed
	windward, leeward float64 // of closed sides
}

// lowest is the height below which the American profile is not drawn: 15 ft
// (ASCE 7-05, table 6-3, note 2).
const lowest = 15 * unit.Foot

// psf is a pound per square foot in pascals (NIST SP 811).
var psf = unit.Imperial.Newtons(1) / (unit.Foot.Metres() * unit.Foot.Metres())

// chooseMethod takes what the shop has entered, and tells what it has not. The
// method is nil where no pressure can be computed.
func (b *builder) chooseMethod() *method {
	a := b.a
	m := &method{a: a, terrain: b.r.Terrain, gust: b.r.Gust}
	found := len(b.r.Missing)
	b.gusts()
	switch {
	case a.Method == "european" && (a.European == nil || len(a.European.Roofs) == 0):
		b.miss("the European method has no force coefficients (european, roofs), so no anchor can be computed")
	case a.Method == "american" && (a.American == nil || len(a.American.Net) == 0):
		b.miss("the American method has no net coefficients (american, net), so no anchor can be computed; enter them from the standard")
	case a.Method == "american" && m.terrain == nil:
		b.miss("the American method needs a terrain with alpha and gradient (terrains), so no anchor can be computed")
	case a.Method == "american" && (!m.terrain.Alpha.IsPositive() || m.terrain.Gradient <= 0):
		b.miss("terrain %q has no alpha and gradient, which the American method needs, so no anchor can be computed", m.terrain.ID)
	}
	if len(b.r.Missing) > found {
		return nil
	}
	if named := b.j.Wind.Terrain; named != "" && (m.terrain == nil || m.terrain.ID != named) {
		b.miss("terrain %q, which the job names, is the demonstration's and does not count here: the gust is taken as it blows at the roof", named)
	}
	if t := m.terrain; a.Method == "european" && t != nil && len(t.Factors) == 0 && t.Alpha.IsPositive() {
		b.miss("terrain %q has no factors, which the European method needs: the gust is taken as it blows at the roof", t.ID)
	}
	b.walls(m)
	return m
}

// gusts says which of the two speeds that only a manager can decide are not
// entered: nothing is planned without them. A job may have its own gust.
func (b *builder) gusts() {
	switch {
	case b.r.Gust <= 0:
		b.miss("the gust to plan for and the limit are not entered, so no anchor can be computed; the manager decides both")
	case b.r.Limit <= 0:
		b.miss("the limit, above which an engineer designs what holds, is not entered, so no anchor can be computed; the manager decides it")
	}
}

// walls takes the coefficients of closed sides; what is not given is not counted.
func (b *builder) walls(m *method) {
	w := b.a.Walls
	if w == nil {
		w = &catalog.WallPressure{}
	}
	// Without any closed side nothing is left out.
	any := slices.ContainsFunc(b.tents, func(t tent.Tent) bool { return blocked(&t) || t.Family.Kind == clearSpan })
	if w.Windward != nil {
		m.windward = w.Windward.InexactFloat64()
	} else if any {
		b.miss("no coefficient of the windward wall is entered (walls), so wind on closed sides is not counted there")
	}
	if w.Leeward != nil && (!w.Demo || b.c.Demo) {
		m.leeward = w.Leeward.InexactFloat64()
	} else if any {
		b.miss("no coefficient of the leeward wall is entered (walls), so suction on closed sides is not counted there")
	}
}

// terrainOf is the terrain of the job: the one it names, else the shop's first
// that its method can use; nil where there is none.
func terrainOf(c *catalog.Catalog, j *job.Job) *catalog.Terrain {
	for i := range c.Anchors.Terrains {
		t := &c.Anchors.Terrains[i]
		usable := c.Anchors.Method != "american" || t.Alpha.IsPositive()
		if (!t.Demo || c.Demo) && (j.Wind.Terrain == t.ID || j.Wind.Terrain == "" && usable) {
			return t
		}
	}
	return nil
}

// perGust is the velocity pressure in pascals at a gust of 1 m/s, for a roof of
// a mean height. It is false above the heights that the terrain is entered for.
func (m *method) perGust(height unit.Length) (float64, bool) {
	if m.a.Method == "american" {
		w := m.a.American
		mph := unit.MetrePerSecond.MilesPerHour()
		return w.Constant.InexactFloat64() * m.exposure(height) * w.Direction.InexactFloat64() * psf * mph * mph, true
	}
	// Peak velocity pressure, EN 1991-1-4, 4.5: half the density times the square
	// of the gust.
	q := 0.5 * m.a.European.Density.InexactFloat64()
	if m.terrain == nil || len(m.terrain.Factors) == 0 {
		return q, true
	}
	var steps []point
	for _, s := range m.terrain.Factors {
		steps = append(steps, point{s.Height.Metres(), s.Factor.InexactFloat64()})
	}
	factor, ok := interpolate(steps, max(height.Metres(), steps[0].x))
	return q * factor, ok
}

// exposure is Kz, by the power law with the constants of the shop's edition.
func (m *method) exposure(height unit.Length) float64 {
	z := max(height, lowest).Metres() / m.terrain.Gradient.Metres()
	return m.a.American.Profile.InexactFloat64() * math.Pow(z, 2/m.terrain.Alpha.InexactFloat64())
}

// cases names the ways of loading a roof, in the order of pairs.
func (m *method) cases() []string {
	if m.a.Method == "american" {
		return []string{"case A", "case B", "case A, halves changed", "case B, halves changed"}
	}
	return []string{"both halves down", "both halves up", "windward half up", "leeward half up", "windward half down", "leeward half down"}
}

// pairs is the coefficients of each case for a roof of a slope in degrees. It is
// false outside the slopes of the table. The European canopy rule loads both
// halves or one alone (EN 1991-1-4, 7.3). The American coefficients count the
// effect of gusts; they are for wind across the ridge, so that both ways round
// are tried where it blows along it.
func (m *method) pairs(angle float64, blocked, along bool) ([]pair, bool) {
	if m.a.Method == "american" {
		a, fits := m.net("A", angle, blocked)
		b, fit := m.net("B", angle, blocked)
		all := []pair{a, b}
		if along {
			all = append(all, pair{a.leeward, a.windward}, pair{b.leeward, b.windward})
		}
		return all, fits && fit
	}
	var downs, ups []point
	for _, r := range m.a.European.Roofs {
		up := r.Open
		if blocked {
			up = r.Blocked
		}
		downs = append(downs, point{r.Angle.InexactFloat64(), r.Down.InexactFloat64()})
		ups = append(ups, point{r.Angle.InexactFloat64(), up.InexactFloat64()})
	}
	down, fits := interpolate(downs, angle)
	up, fit := interpolate(ups, angle)
	return []pair{{down, down}, {up, up}, {up, 0}, {0, up}, {down, 0}, {0, down}}, fits && fit
}

// net is one American load case at a slope, times the gust effect.
func (m *method) net(letter string, angle float64, blocked bool) (pair, bool) {
	var windward, leeward []point
	for _, r := range m.a.American.Net {
		if r.Case != letter {
			continue
		}
		w, l := r.ClearWindward, r.ClearLeeward
		if blocked {
			w, l = r.ObstructedWindward, r.ObstructedLeeward
		}
		windward = append(windward, point{r.Angle.InexactFloat64(), w.InexactFloat64()})
		leeward = append(leeward, point{r.Angle.InexactFloat64(), l.InexactFloat64()})
	}
	w, fits := interpolate(windward, angle)
	l, fit := interpolate(leeward, angle)
	g := m.a.American.GustEffect.InexactFloat64()
	return pair{g * w, g * l}, fits && fit
}

// slopes is the range of the table in words.
func (m *method) slopes() string {
	least, most := math.Inf(-1), math.Inf(1)
	both := func(angles []float64) { // what every case has; their rows rise
		if len(angles) > 0 {
			least, most = max(least, angles[0]), min(most, angles[len(angles)-1])
		}
	}
	if m.a.Method == "american" {
		cases := map[string][]float64{}
		for i := range m.a.American.Net {
			r := &m.a.American.Net[i]
			cases[r.Case] = append(cases[r.Case], r.Angle.InexactFloat64())
		}
		both(cases["A"])
		both(cases["B"])
	} else {
		var rows []float64
		for i := range m.a.European.Roofs {
			rows = append(rows, m.a.European.Roofs[i].Angle.InexactFloat64())
		}
		both(rows)
	}
	return fmt.Sprintf("%g to %g degrees", least, most)
}

// point is one row of a table.
type point struct{ x, y float64 }

// grain is how far beyond the ends of a table still counts as its end: slopes
// come out of an arc tangent.
const grain = 1e-9

// interpolate goes straight between the rows of a table, which rise. It is false
// outside of them.
func interpolate(rows []point, x float64) (float64, bool) {
	for i, r := range rows {
		switch {
		case math.Abs(x-r.x) <= grain:
			return r.y, true
		case i > 0 && x > rows[i-1].x && x < r.x:
			p := rows[i-1]
			return p.y + (r.y-p.y)*(x-p.x)/(r.x-p.x), true
		}
	}
	return 0, false
}
