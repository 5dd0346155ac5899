package layout_test

import (
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
	"tentwright/quote/jobtest"
	"tentwright/quote/layout"
	"tentwright/quote/tent"
)

const foot = 0.3048

func demoCatalog(t testing.TB) *catalog.Catalog {
	t.Helper()
	c, list := catalog.Load("demo", catalog.Demo())
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	return c
}

type fataler interface {
	Helper()
	Fatal(...any)
}

// planOf places the tents of a job.
func planOf(t fataler, c *catalog.Catalog, j *job.Job) *layout.Plan {
	t.Helper()
	tents, list := tent.Build(c, j)
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	return layout.Build(c, j, tents)
}

// jobOf is a job with these tents and this plot.
func jobOf(t testing.TB, c *catalog.Catalog, tents, plot string) *job.Job {
	t.Helper()
	text := `number: T-1
customer: {name: Test Customer}
event: {name: Test Event, guests: 40}
dates: {quoted: 2027-01-10, deliver: 2027-06-11, event_from: 2027-06-12, event_to: 2027-06-12, strike: 2027-06-13, collect: 2027-06-13}
delivery: {distance: 8 mi}
site: [{factor: surface, option: soft}]
tents:
` + tents + "\n" + plot
	j, list := job.ReadFor(c, "job.yaml", []byte(text))
	if j == nil {
		t.Fatal(list.Err())
	}
	return j
}

// Faults with distances worked by hand in feet: a hip tent is staked 4 ft out, a
// pole tent 7 ft, a clear-span structure through its plates (catalog/demo).
func TestFaults(t *testing.T) {
	c := demoCatalog(t)
	plot := "plot: {width: 200 ft, depth: 150 ft, obstacles: [{name: Oak, x: 120 ft, y: 100 ft, radius: 6 ft}, {name: Shed, x: 150 ft, y: 20 ft, width: 10 ft, depth: 20 ft}]}"
	hip := func(id, at string) string { return "  - {id: " + id + ", family: hip, size: 20x40, " + at + "}\n" }
	for name, x := range map[string]struct {
		tents string
		want  []string
	}{
		"apart":                   {hip("a", "place: {x: 10 ft, y: 10 ft}") + hip("b", "place: {x: 58 ft, y: 10 ft}"), nil},
		"stakes touch, then meet": {hip("a", "place: {x: 10 ft, y: 10 ft}") + hip("b", "place: {x: 57 ft, y: 10 ft}"), []string{"footprint a b 1.00"}},
		"roofs by 5":              {hip("a", "place: {x: 10 ft, y: 10 ft}") + hip("b", "place: {x: 45 ft, y: 10 ft}"), []string{"overlap a b 5.00", "footprint a b 13.00"}},
		// Turned by 90 about 60, 10 it covers 40 to 60 across and 10 to 50 back.
		"turned":            {hip("a", "place: {x: 5 ft, y: 10 ft}") + hip("b", "place: {x: 60 ft, y: 10 ft, turn: 90}"), []string{"overlap a b 5.00", "footprint a b 13.00"}},
		"turned by 270":     {hip("a", "place: {x: 60 ft, y: 60 ft, turn: 270}"), nil}, // 60 to 80 across, 20 to 60 back
		"turned by 180":     {hip("a", "place: {x: 50 ft, y: 30 ft, turn: 180}"), nil},
		"edges":             {hip("a", "place: {x: 1 ft, y: 129 ft}"), []string{"edge a back 3.00", "edge a left 3.00"}},
		"shed":              {hip("a", "place: {x: 108 ft, y: 20 ft}"), []string{"obstacle a Shed 2.00"}},
		"oak":               {hip("a", "place: {x: 72 ft, y: 90 ft}"), []string{"obstacle a Oak 2.00"}},
		"through its plate": {"  - {id: a, family: span, size: 40x45, place: {x: 105 ft, y: 20 ft}}", nil},
		"joined":            {hip("a", "place: {x: 10 ft, y: 10 ft}") + hip("b", "joins: a, join_side: front"), nil},
		"joined, the second placed at the edge": {hip("a", "leg: 8 ft") + hip("b", "joins: a, join_side: front, place: {x: 10 ft, y: 20 ft}"),
			[]string{"edge a front 4.00"}}, // a stands 20 ft before b, at 0
		"a water main along one side": {hip("a", "place: {x: 10 ft, y: 10 ft}, sides: [{side: right, no_stakes: yes}]") + hip("b", "place: {x: 54 ft, y: 10 ft}"), nil},
		"asphalt":                     {hip("a", "place: {x: 0 ft, y: 0 ft}, ground: asphalt-whole"), nil},
	} {
		p := planOf(t, c, jobOf(t, c, x.tents, plot))
		var got []string
		for _, f := range p.Faults {
			got = append(got, fmt.Sprintf("%s %s %s %.2f", f.Kind, f.A, f.B, f.Missing/foot))
			if len(f.Area) < 3 || f.Words() == "" {
				t.Errorf("%s: fault %+v has no area or no words", name, f)
			}
		}
		if !slices.Equal(got, x.want) {
			t.Errorf("%s: got %q, want %q", name, got, x.want)
		}
	}
}

// Several tents of one line stand along their front, as far apart between what
// is staked of them as the code wants, 20 + 2 x 4 + 20 = 48 ft from corner to
// corner (IFC 2018 section 3103.8), or 10 ft where that takes them off the plot.
func TestCopiesStandInARow(t *testing.T) {
	c := demoCatalog(t)
	for deep, want := range map[string][]float64{"150 ft": {20, 68, 116}, "130 ft": {20, 58, 96}} {
		p := planOf(t, c, jobOf(t, c, "  - {id: a, family: hip, size: 20x20, count: 3, place: {x: 50 ft, y: 20 ft, turn: 90}}", "plot: {width: 200 ft, depth: "+deep+"}"))
		for i, y := range want {
			at := p.Tents[i].At
			if math.Abs(at.X/foot-50) > 1e-6 || math.Abs(at.Y/foot-y) > 1e-6 || p.Tents[i].Label() != fmt.Sprintf("a %d", i+1) {
				t.Errorf("%s stands at %.2f, %.2f ft; want 50, %v", p.Tents[i].Label(), at.X/foot, at.Y/foot, y)
			}
		}
	}
}

// What no place is given for and no room is left goes beside the plot, which
// would have to be so much wider.
func TestNoRoom(t *testing.T) {
	c := demoCatalog(t)
	p := planOf(t, c, jobOf(t, c, "  - {id: a, family: span, size: 40x45}\n  - {id: b, family: span, size: 40x45}", "plot: {width: 50 ft, depth: 50 ft}"))
	if len(p.Faults) != 1 || !p.Faults[0].NoRoom || p.Faults[0].A != "b" || math.Abs(p.Faults[0].Missing/foot-52.5) > 2.5 {
		t.Errorf("got %+v; want only that there is no room for b", p.Faults)
	}
	if !strings.Contains(p.Faults[0].Words(), "no room for b") {
		t.Errorf("got %q", p.Faults[0].Words())
	}
}

// Tents that are put where there is room are never in each other's way, nor on
// an obstacle, nor over the edge: all but those that there is no room for.
func TestPackingNeverOverlaps(t *testing.T) {
	c := demoCatalog(t)
	rapid.Check(t, func(t *rapid.T) {
		j := jobtest.Draw(t, c)
		for i := range j.Tents {
			j.Tents[i].Place = nil
		}
		if len(j.Tents) == 0 || rings(j) {
			return
		}
		p := planOf(t, c, j)
		for _, f := range p.Faults {
			if !f.NoRoom {
				t.Fatalf("%s by %v m", f.Words(), f.Missing)
			}
		}
		checkApart(t, p)
	})
}

// rings tells whether two tents join the same side of a third, which no place
// can put right.
func rings(j *job.Job) bool {
	seen := map[string]bool{}
	for i := range j.Tents {
		t := &j.Tents[i]
		for _, end := range []string{t.Joins + "|" + job.Opposite(t.JoinAt), t.ID + "|" + t.JoinAt} {
			if t.Joins != "" && seen[end] {
				return true
			}
			seen[end] = true
		}
	}
	return false
}

// checkApart looks by another way than the faults': by the boxes, since every
// tent lies along the edges.
func checkApart(t fataler, p *layout.Plan) {
	t.Helper()
	for i := range p.Tents {
		a := &p.Tents[i]
		low, high := a.Footprint.Box()
		for k := range i {
			b := &p.Tents[k]
			from, to := b.Footprint.Box()
			across, back := max(from.X-high.X, low.X-to.X), max(from.Y-high.Y, low.Y-to.Y)
			if a.Group != b.Group && max(across, back) < layout.Between.Metres()-0.02 {
				t.Fatal(fmt.Sprintf("%s and %s are %.3f m apart", a.Label(), b.Label(), max(across, back)))
			}
		}
	}
}

// The stakes of a pole tent are those of its graph; every stake lies in the
// footprint, every leg on the outline.
func TestStakesAgainstTheGraph(t *testing.T) {
	c := demoCatalog(t)
	for _, f := range c.Families {
		for _, s := range f.Sizes {
			j := jobOf(t, c, fmt.Sprintf("  - {id: a, family: %s, size: %q, place: {x: 0 ft, y: 0 ft}}", f.ID, s.ID), "")
			tents, list := tent.Build(c, j)
			if err := list.Err(); err != nil {
				t.Fatal(err)
			}
			p := layout.Build(c, j, tents)
			got := p.Tents[0]
			if len(got.Legs) != len(tents[0].Graph.Legs()) || len(got.Stakes) < len(got.Legs) {
				t.Errorf("%s %s: %d legs, %d stakes drawn", f.ID, s.ID, len(got.Legs), len(got.Stakes))
			}
			if f.Kind != "pole" {
				continue
			}
			var want []layout.Point
			for _, n := range tents[0].Graph.Nodes {
				if n.Role == "stake" {
					want = append(want, layout.Point{X: n.At.X, Y: n.At.Y})
				}
			}
			if len(want) != len(got.Stakes) {
				t.Errorf("%s %s: %d stakes drawn, the graph has %d", f.ID, s.ID, len(got.Stakes), len(want))
			}
			for _, at := range want {
				if !slices.ContainsFunc(got.Stakes, func(o layout.Point) bool { return o.Minus(at).Length() < 1e-6 }) {
					t.Errorf("%s %s: no stake is drawn at %v", f.ID, s.ID, at)
				}
			}
			low, high := got.Footprint.Box()
			long, wide := tents[0].Graph.Footprint()
			if math.Abs(high.X-low.X-long.Metres()) > 1e-6 || math.Abs(high.Y-low.Y-wide.Metres()) > 1e-6 {
				t.Errorf("%s %s: footprint of %v by %v m, want %v by %v", f.ID, s.ID, high.X-low.X, high.Y-low.Y, long.Metres(), wide.Metres())
			}
		}
	}
}

// Doors stand in their side, as wide as they are, apart from each other, and
// with no leg in them where the bay has room.
func TestExits(t *testing.T) {
	c := demoCatalog(t)
	p := planOf(t, c, jobOf(t, c, "  - {id: a, family: hip, size: 40x80, sides: [{side: front, wall: solid, doors: [double, double, single]}, {side: left, wall: solid, doors: [zip]}]}", ""))
	a := &p.Tents[0]
	var widths []float64
	for _, s := range a.Sides {
		last := s.Line.From
		for _, e := range s.Exits {
			widths = append(widths, math.Round(e.Length()/foot*100)/100)
			if e.From.Minus(s.Line.From).Length() < last.Minus(s.Line.From).Length()-1e-6 || e.To.Minus(s.Line.From).Length() > s.Line.Length()+1e-6 {
				t.Errorf("exit %v of side %s lies in another or beyond the side", e, s.Name)
			}
			last = e.To
			for i := range a.Legs {
				if leg := a.Legs[i].At; leg.Minus(e.From).Length()+leg.Minus(e.To).Length() < e.Length()+1e-6 && min(leg.Minus(e.From).Length(), leg.Minus(e.To).Length()) > 0.01 {
					t.Errorf("leg %v stands in the exit %v", a.Legs[i], e)
				}
			}
		}
	}
	if want := []float64{7, 7, 4, 10}; !slices.Equal(widths, want) {
		t.Errorf("exits of %v ft, want %v", widths, want)
	}
}

// Distances of the demo dinner, worked from its places: kitchen 24 to 44 ft,
// dinner tent 72 to 152 ft of 180 across, and 30 to 70 of 120 back.
func TestGaps(t *testing.T) {
	c := demoCatalog(t)
	data, err := os.ReadFile("../../testdata/jobs/dinner.yaml")
	if err != nil {
		t.Fatal(err)
	}
	j, list := job.ReadFor(c, "dinner.yaml", data)
	if j == nil {
		t.Fatal(list.Err())
	}
	p := planOf(t, c, j)
	var got []string
	for _, g := range p.Gaps {
		got = append(got, fmt.Sprintf("%s %v", p.Text(g.Line.Length()), g.Edge))
	}
	slices.Sort(got)
	if want := []string{"24 ft true", "28 ft false", "28 ft true", "30 ft true", "40 ft true"}; !slices.Equal(got, want) {
		t.Errorf("distances %q, want %q", got, want)
	}
	if a := p.Tents[0]; math.Abs(a.NearestBy/foot-28) > 1e-6 || a.Nearest != "Kitchen tent" {
		t.Errorf("nearest is %s, %v ft", a.Nearest, a.NearestBy/foot)
	}
	if len(p.Faults) > 0 {
		t.Errorf("faults %+v", p.Faults)
	}
}

// A metric shop reads centimetres.
func TestText(t *testing.T) {
	metric, imperial := &layout.Plan{Units: unit.Metric}, &layout.Plan{Units: unit.Imperial}
	for _, x := range []struct {
		p    *layout.Plan
		m    float64
		want string
	}{{metric, 3.14159, "3.14 m"}, {imperial, 3.048, "10 ft"}, {imperial, 3.1, "10 ft 2 in"}, {metric, -1.5, "-1.5 m"}} {
		if got := x.p.Text(x.m); got != x.want {
			t.Errorf("%v m is %q, want %q", x.m, got, x.want)
		}
	}
	for m, want := range map[float64]string{5 * 12 * 0.0254: "5 ft", 5*12*0.0254 + 0.001: "5 ft 1 in"} {
		if got := imperial.AtLeast(m); got != want {
			t.Errorf("at least %v m is %q, want %q", m, got, want)
		}
	}
}

func BenchmarkBuild(b *testing.B) {
	c := demoCatalog(b)
	j := jobOf(b, c, "  - {id: a, family: hip, size: 10x10, count: 200}\n  - {id: b, family: pole, size: 40x60, count: 5}", "plot: {width: 900 ft, depth: 900 ft}")
	tents, _ := tent.Build(c, j)
	for b.Loop() {
		layout.Build(c, j, tents)
	}
	b.ReportMetric(float64(b.Elapsed().Microseconds())/1000/float64(b.N), "ms/205-tents")
}
