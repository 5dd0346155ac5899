package frame

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
)

func hipSize(width, length, bay, rise float64) catalog.Size {
	return catalog.Size{ID: fmt.Sprintf("%gx%g", width, length), Width: feet(width, 0), Length: feet(length, 0),
		Bay: feet(bay, 0), Rise: feet(rise, 0), Top: catalog.TopSpec{OnePiece: "top"}}
}

// TestWorkedFrames compares whole frames with ones worked by hand (common
// practice, no source).
func TestWorkedFrames(t *testing.T) {
	tests := []struct {
		size   catalog.Size
		takeUp unit.Length
		cuts   map[string]unit.Length
		counts map[string]int // of drivers
		graph  map[string]int // of roles
	}{
		{hipSize(20, 30, 10, 5), 4 * unit.Inch,
			map[string]unit.Length{"perimeter": feet(9, 4), "ridge": feet(9, 4), "common": feet(10, 6), "hip": feet(14, 4), "leg": feet(8, 0)},
			map[string]int{"crowns": 2, "corners": 4, "legs": 10, "bays": 3, "poles": 31, "pole-ends": 62, "joints": 22, "tents": 1, "top-sections": 1, "perimeter": 0},
			map[string]int{"perimeter": 10, "ridge": 1, "common": 6, "hip": 4, "side-tee": 6, "ridge-tee": 0}},
		{hipSize(30, 45, 15, 6), 5 * unit.Inch,
			map[string]unit.Length{"perimeter": feet(14, 2), "ridge": feet(14, 2), "common": feet(15, 4), "hip": feet(21, 2.5), "leg": feet(8, 0)},
			map[string]int{"crowns": 2, "corners": 4, "legs": 10},
			map[string]int{"side-tee": 6}},
		{hipSize(10, 10, 10, 2.5), 2 * unit.Inch,
			map[string]unit.Length{"perimeter": feet(9, 8), "hip": feet(7, 2)},
			map[string]int{"crowns": 1, "corners": 4, "legs": 4, "poles": 12, "bays": 1},
			map[string]int{"side-tee": 0, "common": 0}},
		{hipSize(20, 40, 10, 5), 0,
			map[string]unit.Length{"perimeter": feet(10, 0)},
			map[string]int{"crowns": 2, "legs": 12, "guys": 0, "arches": 0},
			map[string]int{"ridge-tee": 1}},
	}
	for _, test := range tests {
		tent := mustBuild(t, hipFamily(test.takeUp), test.size, feet(8, 0))
		for _, m := range tent.Members {
			if want, ok := test.cuts[m.Role]; ok && max(m.Cut-want, want-m.Cut) > unit.Inch/4 {
				t.Errorf("%s: %s is cut to %s, want %s", test.size.ID, m.Role, m.Cut.In(unit.Imperial), want.In(unit.Imperial))
			}
		}
		for driver, want := range test.counts {
			if got := tent.Count(driver); got != want {
				t.Errorf("%s: %d of %s, want %d", test.size.ID, got, driver, want)
			}
		}
		for role, want := range test.graph {
			is := func(r string) bool { return r == role }
			if got := tent.countMembers(is) + tent.countNodes(is); got != want {
				t.Errorf("%s: %d of %s, want %d", test.size.ID, got, role, want)
			}
		}
	}
}

// TestWays checks how many poles each fitting takes (common practice, no
// source): a crown at the end of a ridge takes six, a single one eight.
func TestWays(t *testing.T) {
	tests := []struct {
		size catalog.Size
		ways map[string]int
	}{
		{hipSize(10, 10, 10, 2.5), map[string]int{"corner": 4, "crown": 4, "base": 1}},
		{hipSize(20, 20, 10, 5), map[string]int{"corner": 4, "side-tee": 4, "crown": 8}},
		{hipSize(20, 30, 10, 5), map[string]int{"corner": 4, "side-tee": 4, "crown": 6}},
		{hipSize(20, 50, 10, 5), map[string]int{"crown": 6, "ridge-tee": 4}},
		{hipSize(40, 60, 10, 10), map[string]int{"crown": 6, "ridge-tee": 4, "hip-cross": 6, "purlin-cross": 4}},
	}
	for _, test := range tests {
		seen := map[string]bool{}
		for _, n := range mustBuild(t, hipFamily(0), test.size, feet(8, 0)).Nodes {
			seen[n.Role] = true
			if want, ok := test.ways[n.Role]; ok && n.Ways != want {
				t.Errorf("%s: %s at %v takes %d, want %d", test.size.ID, n.Role, n.At, n.Ways, want)
			}
		}
		for role := range test.ways {
			if !seen[role] {
				t.Errorf("%s has no %s", test.size.ID, role)
			}
		}
	}
}

// rafterTable is the framing-square table at rapidrafter.com: inches of common
// and of hip rafter for each foot of the common's run, by the rise in inches
// per foot. The hip for a rise of 3 is printed as 17.233; sqrt(297) is 17.2337.
var rafterTable = []struct{ rise, common, hip float64 }{
	{3, 12.369, 17.233}, {4, 12.649, 17.436}, {5, 13.000, 17.692}, {6, 13.416, 18.000}, {7, 13.892, 18.358},
	{8, 14.422, 18.762}, {9, 15.000, 19.209}, {10, 15.620, 19.698}, {11, 16.279, 20.224}, {12, 16.971, 20.785},
}

// lastDigit is how far the last digit of the table, and its row for 3, may be off.
const lastDigit = 0.0008

func TestRafterTable(t *testing.T) {
	for _, row := range rafterTable {
		// A run of 12 ft, so that a rise in inches per foot is one in feet.
		tent := mustBuild(t, hipFamily(0), hipSize(24, 36, 12, row.rise), feet(8, 0))
		for role, want := range map[string]float64{"common": row.common, "hip": row.hip} {
			if got := centre(t, tent, role).Feet(); math.Abs(got-want) > lastDigit {
				t.Errorf("rise %v: %s is %.4f per foot of run, want %.3f", row.rise, role, got, want)
			}
		}
	}
	for _, test := range []struct {
		what                string
		run, rise, in, near float64
		role                string
	}{
		{"the worked rafter of the same page: 8 in 12 with 14 ft of run", 14, 14 * 8.0 / 12, 201.9, 0.05, "common"},
		// Griffith, Carpentry: a hip at quarter pitch goes by the run of the
		// common, 12 ft 7 in, and not by its own; 18.000 x 12.583 by the table.
		{"quarter pitch with 12 ft 7 in of run", 12 + 7.0/12, (12 + 7.0/12) / 2, 226.5, 0.05, "hip"},
	} {
		tent := mustBuild(t, hipFamily(0), hipSize(2*test.run, 2*test.run, test.run, test.rise), feet(8, 0))
		if got := centre(t, tent, test.role).Feet() * 12; math.Abs(got-test.in) > test.near {
			t.Errorf("%s is %.2f in, want %v", test.what, got, test.in)
		}
	}
}

// centre is the centre line of the first member of a role.
func centre(t *testing.T, tent *Tent, role string) unit.Length {
	t.Helper()
	for _, m := range tent.Members {
		if m.Role == role {
			return m.Centre
		}
	}
	t.Fatalf("there is no %s", role)
	return 0
}

// TestHipRoof20x40 at 6 in 12, worked from the rafter table: ridge = length
// less width, and roof = plan x 13.416/12 for any roof of equal pitch.
func TestHipRoof20x40(t *testing.T) {
	tent := mustBuild(t, hipFamily(0), hipSize(20, 40, 10, 5), feet(8, 0))
	ridge := 0.0
	for _, m := range tent.Members {
		if m.Role == "ridge" {
			ridge += m.Centre.Feet()
		}
	}
	for what, pair := range map[string][2]float64{
		"common":     {centre(t, tent, "common").Feet(), 11.180},
		"hip":        {centre(t, tent, "hip").Feet(), 15},
		"ridge":      {ridge, 20},
		"roof / 100": {tent.RoofArea().SquareFeet() / 100, 8.9443},
		"plan / 100": {tent.Area().SquareFeet() / 100, 8},
		"perimeter":  {tent.Perimeter().Feet(), 120},
	} {
		if math.Abs(pair[0]-pair[1]) > 0.0005 {
			t.Errorf("%s is %.4f, want %.4f", what, pair[0], pair[1])
		}
	}
}

// TestCoverOfATent, derived from the rafter table: a top of 20 x 20 ft at 6 in
// 12 of 18 oz cloth weighs 55.9 lb, where a flat one is 50.0; 40 x 60 ft at the
// same pitch has 4,283 sq ft of roof and of walls 8 ft high.
func TestCoverOfATent(t *testing.T) {
	c := &catalog.Catalog{Company: catalog.Company{Units: unit.Imperial}}
	cloth := &catalog.Fabric{Grams: money.Float(18 * 28.349523125 / 0.83612736)}
	tent := mustBuild(t, hipFamily(0), hipSize(20, 20, 10, 5), feet(8, 0))
	for want, area := range map[float64]unit.Area{55.9: tent.RoofArea(), 50.0: tent.Area()} {
		if got := c.ClothMass(cloth, area, 1).Pounds(); math.Abs(got-want) > 0.05 {
			t.Errorf("%.1f sq ft weigh %.2f lb, want %.1f", area.SquareFeet(), got, want)
		}
	}
	large := mustBuild(t, hipFamily(0), hipSize(40, 60, 10, 10), feet(8, 0))
	if got := large.RoofArea().SquareFeet() + large.Perimeter().Feet()*8; math.Abs(got-4283) > 0.5 {
		t.Errorf("roof and walls are %.1f sq ft, want 4283", got)
	}
}

// TestEveryHipSize goes through all sizes up to 40 x 200 ft: a drawing
// without crossings, Euler's formula with faces found by walking, the roof as
// the sum of its faces, and a leg every bay; then at every pitch of the rafter
// table.
func TestEveryHipSize(t *testing.T) {
	sizes := everyHip()
	if len(sizes) < 40 {
		t.Fatalf("only %d sizes were tried", len(sizes))
	}
	for _, s := range sizes {
		t.Run(s.ID, func(t *testing.T) {
			checkHip(t, mustBuild(t, hipFamily(0), s, feet(8, 0)), &s)
			for _, row := range rafterTable {
				pitched := s
				pitched.Rise = feet(s.Width.Feet()/2*row.rise/12, 0)
				checkPitch(t, mustBuild(t, hipFamily(0), pitched, feet(8, 0)), &pitched, row.common, row.hip)
			}
		})
	}
}

// everyHip is each size up to 40 x 200 ft of three bays, at 6 in 12.
func everyHip() []catalog.Size {
	var all []catalog.Size
	for _, bay := range []float64{10, 15, 20} {
		all = append(all, hipSize(bay, bay, bay, bay/4))
		for across := 2.0; across*bay <= 40; across += 2 {
			for along := across; along*bay <= 200; along++ {
				all = append(all, hipSize(across*bay, along*bay, bay, across*bay/4))
			}
		}
	}
	return all
}

// checkPitch compares every rafter and the roof with the rafter table, in
// inches per foot of the common's run: the plan takes as much cloth more as a
// common is longer than its run.
func checkPitch(t *testing.T, tent *Tent, s *catalog.Size, common, hip float64) {
	t.Helper()
	run := min(s.Bay, s.Width/2).Feet() // between two joints of a rafter
	for _, m := range tent.Members {
		want := map[string]float64{"common": common, "hip": hip}[m.Role]
		if got := m.Centre.Feet() * 12 / run; want > 0 && math.Abs(got-want) > lastDigit {
			t.Fatalf("%s at a rise of %s: %s is %.4f in a foot of run, want %.3f", s.ID, s.Rise.In(unit.Imperial), m.Role, got, want)
		}
	}
	plan := tent.Area().SquareFeet()
	if got, want := tent.RoofArea().SquareFeet(), plan*common/12; math.Abs(got-want) > plan*lastDigit/12 {
		t.Fatalf("%s at a rise of %s: the roof is %.2f sq ft, want %.2f", s.ID, s.Rise.In(unit.Imperial), got, want)
	}
}

// TestGridTriples: corners, edges and faces of a grid of bays, worked out by
// hand; a hip adds an edge and a face to each cell of the grid that it crosses.
func TestGridTriples(t *testing.T) {
	for _, test := range []struct {
		size    catalog.Size
		v, e, f int // of the grid; V - E + F = 2 with the face outside
		hips    int
	}{
		{hipSize(20, 30, 10, 5), 12, 17, 7, 4},
		{hipSize(20, 40, 10, 5), 15, 22, 9, 4},
		{hipSize(40, 60, 10, 10), 35, 58, 25, 8},
		{hipSize(40, 200, 10, 10), 105, 184, 81, 8},
	} {
		d := roofDrawing(mustBuild(t, hipFamily(0), test.size, feet(8, 0)))
		if v, e, f := d.corners(), len(d.edges), len(d.faces()); v != test.v || e != test.e+test.hips || f != test.f+test.hips {
			t.Errorf("%s: %d corners, %d edges and %d faces; %d, %d and %d were expected", test.size.ID, v, e, f, test.v, test.e+test.hips, test.f+test.hips)
		}
	}
}

func checkHip(t fataler, tent *Tent, s *catalog.Size) {
	checkGraph(t, tent)
	d := roofDrawing(tent)
	if a, b, found := d.crossing(); found {
		t.Fatalf("members %v and %v cross", a, b)
	}
	v, e, f := d.corners(), len(d.edges), len(d.faces())
	if v-e+f != 2 {
		t.Fatalf("V - E + F = %d - %d + %d, want 2", v, e, f)
	}
	if nx, ny := int(s.Width/s.Bay), int(s.Length/s.Bay); nx > 1 {
		hips := tent.countMembers(func(role string) bool { return role == "hip" })
		if v != (nx+1)*(ny+1) || e-hips != nx*(ny+1)+ny*(nx+1) || f-hips != nx*ny+1 {
			t.Fatalf("V, E, F = %d, %d, %d with %d hips is no grid of %d x %d bays", v, e, f, hips, nx, ny)
		}
	}
	if roof := d.covered(); math.Abs(roof-float64(tent.RoofArea())) > 1e-6*roof {
		t.Fatalf("faces cover %v m2, roof is %v m2", roof, tent.RoofArea())
	}
	if want := 2 * int(s.Width/s.Bay+s.Length/s.Bay); tent.Count("legs") != want || len(tent.Legs()) != want {
		t.Fatalf("%d legs, want %d", tent.Count("legs"), want)
	}
	if tent.Count("corners") != 4 || tent.Count("bays") != int(s.Length/s.Bay) {
		t.Fatalf("%d corners and %d bays", tent.Count("corners"), tent.Count("bays"))
	}
	var common, hip unit.Length
	for _, m := range tent.Members {
		switch m.Role {
		case "common":
			common = max(common, m.Centre)
		case "hip":
			hip = m.Centre
		}
	}
	if hip <= common {
		t.Fatalf("hip of %d is no longer than common of %d", hip, common)
	}
}

// TestAnyHipSize tries bays and rises that nobody owns.
func TestAnyHipSize(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		across := 2 * rapid.IntRange(1, 4).Draw(r, "half across")
		along := across + rapid.IntRange(0, 6).Draw(r, "more along")
		bay := unit.Length(rapid.IntRange(30, 300).Draw(r, "bay")) * unit.Inch
		rise := unit.Length(rapid.IntRange(1, 200).Draw(r, "rise")) * unit.Inch
		leg := unit.Length(rapid.IntRange(60, 150).Draw(r, "leg")) * unit.Inch
		s := catalog.Size{ID: "any", Width: unit.Length(across) * bay, Length: unit.Length(along) * bay, Bay: bay, Rise: rise,
			Top: catalog.TopSpec{End: "end", Middle: "middle"}}
		f := hipFamily(0)
		tent, list := Build(yard(f, []catalog.Size{s}, leg), f, &s, leg)
		if list.Err() != nil {
			r.Fatalf("%v", list.Err())
		}
		checkHip(r, tent, &s)
		checkSections(r, tent)
	})
}

// TestFootprint: stakes 4 ft out make the ground taken 8 ft wider and longer
// (common practice, no source).
func TestFootprint(t *testing.T) {
	tent := mustBuild(t, hipFamily(0), hipSize(20, 30, 10, 5), feet(8, 0))
	if length, width := tent.Footprint(); length != feet(38, 0) || width != feet(28, 0) {
		t.Errorf("footprint is %s x %s", length.In(unit.Imperial), width.In(unit.Imperial))
	}
}
