package frame

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"tentwright/catalog"
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

// TestRafterTable: rapidrafter.com framing-square tables, inches per foot of
// run. The hip for a rise of 3 is printed as 17.233; sqrt(297) is 17.2337.
func TestRafterTable(t *testing.T) {
	tests := []struct{ rise, common, hip float64 }{
		{3, 12.369, 17.233}, {4, 12.649, 17.436}, {5, 13.000, 17.692}, {6, 13.416, 18.000}, {7, 13.892, 18.358},
		{8, 14.422, 18.762}, {9, 15.000, 19.209}, {10, 15.620, 19.698}, {11, 16.279, 20.224}, {12, 16.971, 20.785},
	}
	for _, test := range tests {
		// A run of 12 ft, so that a rise in inches per foot is one in feet.
		tent := mustBuild(t, hipFamily(0), hipSize(24, 36, 12, test.rise), feet(8, 0))
		for role, want := range map[string]float64{"common": test.common, "hip": test.hip} {
			if got := centre(t, tent, role).Feet(); math.Abs(got-want) > 0.001 {
				t.Errorf("rise %v: %s is %.4f per foot of run, want %.3f", test.rise, role, got, want)
			}
		}
	}
	// The worked rafter of the same page: 8 in 12 with a run of 14 ft.
	tent := mustBuild(t, hipFamily(0), hipSize(28, 28, 14, 14*8.0/12), feet(8, 0))
	if got := centre(t, tent, "common").Feet() * 12; math.Abs(got-201.9) > 0.05 {
		t.Errorf("8 in 12 with 14 ft of run is %.2f in, want 201.9", got)
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

// TestEveryHipSize goes through all sizes up to 40 x 200 ft: a drawing
// without crossings, Euler's formula with faces found by walking, the roof as
// the sum of its faces, and a leg every bay.
func TestEveryHipSize(t *testing.T) {
	sizes := 0
	for _, bay := range []float64{10, 15, 20} {
		for across := 2.0; across*bay <= 40; across += 2 {
			for along := across; along*bay <= 200; along++ {
				sizes++
				s := hipSize(across*bay, along*bay, bay, across*bay/4)
				t.Run(s.ID, func(t *testing.T) { checkHip(t, mustBuild(t, hipFamily(0), s, feet(8, 0)), &s) })
			}
		}
		s := hipSize(bay, bay, bay, bay/4)
		checkHip(t, mustBuild(t, hipFamily(0), s, feet(8, 0)), &s)
	}
	if sizes < 40 {
		t.Fatalf("only %d sizes were tried", sizes)
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
