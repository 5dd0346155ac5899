package layout_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tentwright/catalog/unit"
	"tentwright/quote/jobtest"
	"tentwright/quote/layout"
	"tentwright/quote/tent"
)

// Distances worked by hand in feet: a hip tent is staked 4 ft out; 20 ft are
// wanted (catalog/demo, IFC 2018 section 3103.8).
func TestDistances(t *testing.T) {
	c := demoCatalog(t)
	plot := func(obstacles string) string {
		return "plot: {width: 200 ft, depth: 150 ft, obstacles: [" + obstacles + "]}"
	}
	hip := func(id, at string) string {
		return "  - {id: " + id + ", family: hip, size: 20x20, place: {" + at + "}}\n"
	}
	for name, x := range map[string]struct {
		tents, obstacles string
		want             []string
	}{
		"nearest edge": {hip("a", "x: 30 ft, y: 60 ft"), "", []string{"edge a left 26.00 of 20"}},
		"two edges":    {hip("a", "x: 10 ft, y: 120 ft"), "", []string{"edge a back 6.00 of 20", "edge a left 6.00 of 20"}},
		"beyond":       {hip("a", "x: 1 ft, y: 60 ft"), "", []string{"edge a left 0.00 of 20"}},
		"side by side": {hip("a", "x: 50 ft, y: 60 ft") + hip("b", "x: 93 ft, y: 60 ft"), "",
			[]string{"edge a left 46.00 of 20", "edge b front 56.00 of 20", "tent a b 15.00 of 20"}},
		// From corner to corner the roofs are 11 ft across and 12 ft back. The stakes of
		// a corner stand straight out from both its sides, so that what is staked ends
		// there in a slant, 4 / sqrt(2) ft from the corner of the roof.
		"corner to corner": {hip("a", "x: 50 ft, y: 50 ft") + hip("b", "x: 81 ft, y: 82 ft"), "",
			[]string{"edge a left 46.00 of 20", "edge a front 46.00 of 20", "edge b back 44.00 of 20", fmt.Sprintf("tent a b %.2f of 20", (11+12)/math.Sqrt2-2*4/math.Sqrt2)}},
		"joined": {hip("a", "x: 60 ft, y: 60 ft") + "  - {id: b, family: hip, size: 20x20, joins: a, join_side: right}\n", "",
			[]string{"edge a front 56.00 of 20", "edge b left 36.00 of 20"}},
		"a hut, a tree": {hip("a", "x: 60 ft, y: 60 ft"), "{name: Hut, kind: building, x: 94 ft, y: 60 ft, width: 9 ft, depth: 9 ft}, {name: Elm, kind: tree, x: 60 ft, y: 100 ft, radius: 3 ft}, {name: Any, x: 60 ft, y: 40 ft, radius: 3 ft}",
			[]string{"edge a front 56.00 of 20", "edge a left 56.00 of 20", "building a Hut 10.00 of 20"}},
		"a round lorry": {hip("a", "x: 60 ft, y: 60 ft"), "{name: Lorry, kind: vehicle, x: 70 ft, y: 100 ft, radius: 6 ft}",
			[]string{"edge a front 56.00 of 20", "edge a left 56.00 of 20", "vehicle a Lorry 10.00 of 20"}},
		"over a hut": {hip("a", "x: 60 ft, y: 60 ft"), "{name: Hut, kind: building, x: 65 ft, y: 65 ft, width: 4 ft, depth: 4 ft}",
			[]string{"edge a front 56.00 of 20", "edge a left 56.00 of 20", "building a Hut 0.00 of 20"}},
	} {
		p := planOf(t, c, jobOf(t, c, x.tents, plot(x.obstacles)))
		var got []string
		for i := range p.Distances {
			d := &p.Distances[i]
			got = append(got, fmt.Sprintf("%s %s %s %.2f of %v", d.Kind, d.A, d.B, d.Is/foot, math.Round(d.Wanted/foot)))
			if math.Abs(d.Line.Length()-d.Is) > 1e-6 {
				t.Errorf("%s: line of %v m for %v m", name, d.Line.Length(), d.Is)
			}
		}
		slices.Sort(got)
		slices.Sort(x.want)
		if !slices.Equal(got, x.want) {
			t.Errorf("%s: got %q, want %q", name, got, x.want)
		}
	}
}

// A shop whose code is not told measures, and wants nothing.
func TestDistancesWithoutCode(t *testing.T) {
	c := demoCatalog(t)
	c.Occupancy = nil
	p := planOf(t, c, jobOf(t, c, "  - {id: a, family: hip, size: 20x20}\n  - {id: b, family: hip, size: 20x20}\n", "plot: {width: 100 ft, depth: 100 ft}"))
	for i := range p.Distances {
		if d := &p.Distances[i]; d.Wanted != 0 || d.Short() || d.Is < layout.Between.Metres()-layout.Close {
			t.Errorf("got %+v; want at least the usual distance, and nothing wanted", d)
		}
	}
	if len(p.Distances) == 0 {
		t.Error("nothing is measured")
	}
}

// Tents that the program places keep the distances that the code wants where
// there is room for all, and shorter ones where there is not; a hut counts as
// any building.
func TestPlacingKeepsClear(t *testing.T) {
	c := demoCatalog(t)
	tents := "  - {id: a, family: hip, size: 20x20}\n  - {id: b, family: hip, size: 20x20}\n"
	for plot, want := range map[string]bool{
		"{width: 140 ft, depth: 70 ft}": true,  // 20 + 28 + 20 + 28 + 20 = 116
		"{width: 110 ft, depth: 60 ft}": false, // 10 + 28 + 10 + 28 + 10 = 86
		"{width: 140 ft, depth: 70 ft, obstacles: [{name: Hut, kind: building, x: 60 ft, y: 0 ft, width: 9 ft, depth: 9 ft}]}":  false,
		"{width: 200 ft, depth: 70 ft, obstacles: [{name: Hut, kind: building, x: 68 ft, y: 0 ft, width: 9 ft, depth: 70 ft}]}": true,
	} {
		p := planOf(t, c, jobOf(t, c, tents, "plot: "+plot))
		clear := len(p.Faults) == 0
		for i := range p.Distances {
			clear = clear && !p.Distances[i].Short()
		}
		if clear != want || len(p.Faults) > 0 {
			t.Errorf("%s: clear %v, want %v; faults %+v, distances %+v", plot, clear, want, p.Faults, p.Distances)
		}
	}
}

// sampled is the distance of two areas by another way: between many points of
// their edges.
func sampled(a, b layout.Polygon) float64 {
	points := func(g layout.Polygon) (out []layout.Point) {
		for i := range g {
			for k := range 40 {
				out = append(out, layout.Segment{From: g[i], To: g[(i+1)%len(g)]}.Along(float64(k)/40))
			}
		}
		return out
	}
	least := math.Inf(1)
	for _, p := range points(a) {
		for _, q := range points(b) {
			least = min(least, p.Minus(q).Length())
		}
	}
	return least
}

// Distances between tents are those between points of their edges, of any job,
// and each fault has an area that can be drawn.
func TestDistancesAndAreasOfAnyJob(t *testing.T) {
	c := demoCatalog(t)
	rapid.Check(t, func(t *rapid.T) {
		j := jobtest.Draw(t, c)
		tents, list := tent.Build(c, j)
		if list.Err() != nil || len(tents) == 0 {
			return
		}
		p := layout.Build(c, j, tents)
		for i := range p.Faults {
			if len(p.Faults[i].Area) < 3 {
				t.Fatalf("fault %+v has no area", p.Faults[i])
			}
		}
		byID := map[string][]layout.Polygon{}
		for i := range p.Tents {
			byID[p.Tents[i].ID] = append(byID[p.Tents[i].ID], p.Tents[i].Footprint)
		}
		for _, d := range p.Distances {
			a, b := byID[d.A], byID[d.B]
			if d.Kind != layout.ToTent || len(a)*len(b) > 1 || d.Is == 0 {
				continue
			}
			if want := sampled(a[0], b[0]); d.Is > want+1e-6 || d.Is < want-3 {
				t.Fatalf("%s to %s: %v m, points of the edges are %v m apart", d.From, d.To, d.Is, want)
			}
		}
	})
}

// A tent that only just reaches into a round obstacle has a fault with an area:
// in the direction of a corner of the circle's drawing, between two, and any
// other.
func TestTouchingACircle(t *testing.T) {
	c := demoCatalog(t)
	j := jobOf(t, c, "  - {id: a, family: hip, size: 20x20, ground: deck, place: {x: 24.235 ft, y: 24.235 ft}}", "plot: {width: 60 ft, depth: 60 ft, obstacles: [{name: Round, x: 20 ft, y: 20 ft, radius: 6 ft}]}")
	rapid.Check(t, func(t *rapid.T) {
		angle := rapid.Float64Range(0, math.Pi/2).Draw(t, "angle")
		into := rapid.Float64Range(0.0051, 0.05).Draw(t, "into")
		r := j.Plot.Obstacles[0].Radius.Metres() - into
		j.Tents[0].Place.X = j.Plot.Obstacles[0].X + unit.FromMetres(r*math.Cos(angle))
		j.Tents[0].Place.Y = j.Plot.Obstacles[0].Y + unit.FromMetres(r*math.Sin(angle))
		p := planOf(t, c, j)
		found := false
		for i := range p.Faults {
			found = found || p.Faults[i].Kind == layout.Blocked
			if len(p.Faults[i].Area) < 3 {
				t.Fatalf("%+v", p.Faults[i])
			}
		}
		if !found {
			t.Fatalf("%v m into the circle at %v: no fault", into, angle)
		}
	})
}

// Legs have the numbers of the walk, and their anchors are those planned.
func TestLegs(t *testing.T) {
	c := demoCatalog(t)
	j := jobOf(t, c, "  - {id: a, family: hip, size: 20x40, place: {x: 50 ft, y: 50 ft, turn: 90}, sides: [{side: back, no_stakes: yes}]}\n", "")
	tents, _ := tent.Build(c, j)
	for i := range tents[0].Legs {
		if tents[0].Legs[i].Stakes > 0 {
			tents[0].Legs[i].Stakes = 1 + i%3
		}
	}
	got := layout.Build(c, j, tents).Tents[0]
	names, guys, ballast := tents[0].LegNames(), 0, 0
	for i, leg := range got.Legs {
		if !strings.HasPrefix(names[i], fmt.Sprintf("%d ", leg.Number)) || leg.Stakes != tents[0].Legs[i].Stakes || leg.Ballast != tents[0].Legs[i].Ballast {
			t.Errorf("leg %q: got %+v, planned %+v", names[i], leg, tents[0].Legs[i])
		}
		sides := 1
		if strings.HasSuffix(names[i], "front right corner") || strings.HasSuffix(names[i], "front left corner") {
			sides = 2 // the back takes none
		}
		guys += min(sides, leg.Stakes)
		if leg.Ballast > 0 {
			ballast++
		}
		if math.Abs(leg.Out.Length()-1) > 1e-9 || leg.At.Plus(leg.Out).Minus(got.Outline.Middle()).Length() < leg.At.Minus(got.Outline.Middle()).Length() {
			t.Errorf("leg %q: out is %v", names[i], leg.Out)
		}
	}
	if len(got.Guys) != guys || len(got.Ballast) != ballast || ballast == 0 {
		t.Errorf("%d guys and %d legs on ballast, want %d and %d", len(got.Guys), len(got.Ballast), guys, ballast)
	}
}

// Tents without a place stand apart as the code wants also without a plot.
func TestWantedWithoutPlot(t *testing.T) {
	c := demoCatalog(t)
	p := planOf(t, c, jobOf(t, c, "  - {id: a, family: hip, size: 10x10, count: 5}", ""))
	for i := range p.Distances {
		if p.Distances[i].Kind != layout.ToTent || p.Distances[i].Short() {
			t.Errorf("got %+v", p.Distances[i])
		}
	}
}
