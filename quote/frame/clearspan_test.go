package frame

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"tentwright/catalog"
	"tentwright/catalog/unit"
)

func spanSize(width, length, bay, rise float64) catalog.Size {
	s := hipSize(width, length, bay, rise)
	s.Top = catalog.TopSpec{Bay: "bay", Gable: "gable"}
	return s
}

// TestWorkedSpans counts structures by hand (common practice, no source). The
// rafter of 50 ft is 26 ft 4 in, above the longest beam of 22 ft.
func TestWorkedSpans(t *testing.T) {
	tests := []struct {
		size   catalog.Size
		counts map[string]int
	}{
		{spanSize(40, 60, 15, 20.0/3), map[string]int{"arches": 5, "bays": 4, "base-plates": 16, "gable-uprights": 6, "braces": 16,
			"splices": 0, "corners": 4, "top-sections": 6, "poles": 10 + 10 + 4*7 + 6, "joints": 5*(2+2+1+4) + 12}},
		{spanSize(50, 105, 15, 25.0/3), map[string]int{"arches": 8, "bays": 7, "splices": 16, "gable-uprights": 8, "braces": 24, "base-plates": 24}},
		{spanSize(40, 15, 15, 20.0/3), map[string]int{"arches": 2, "bays": 1, "braces": 8, "corners": 4, "purlins": 7}},
		{spanSize(20, 30, 15, 5), map[string]int{"gable-uprights": 2, "braces": 16}},
	}
	for _, test := range tests {
		tent := mustBuild(t, spanFamily(), test.size, feet(8, 0))
		for driver, want := range test.counts {
			if got := tent.Count(driver); got != want {
				t.Errorf("%s: %d of %s, want %d", test.size.ID, got, driver, want)
			}
		}
		if tent.Count("base-plates") != len(tent.Legs()) {
			t.Errorf("%s: %d feet are anchored", test.size.ID, len(tent.Legs()))
		}
	}
}

// TestSpanRafterTable: the beams of one slope are a common rafter of the
// published table, whatever they are spliced from.
func TestSpanRafterTable(t *testing.T) {
	for _, row := range rafterTable {
		for _, half := range []float64{10, 20, 25, 40} {
			tent := mustBuild(t, spanFamily(), spanSize(2*half, 30, 15, half*row.rise/12), feet(8, 0))
			sum := 0.0
			for _, m := range tent.Members {
				if m.Role == "rafter" {
					sum += m.Centre.Feet()
				}
			}
			perFoot := sum * 12 / half / float64(2*tent.Count("arches"))
			if math.Abs(perFoot-row.common) > lastDigit {
				t.Errorf("%v ft at %v in 12: a slope is %.4f in a foot of run, want %.3f", 2*half, row.rise, perFoot, row.common)
			}
		}
	}
}

// TestAnySpan checks structures of any proportion by code of its own.
func TestAnySpan(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		inches := func(name string, low, high int) unit.Length {
			return unit.Length(rapid.IntRange(low, high).Draw(r, name)) * unit.Inch
		}
		s := catalog.Size{ID: "any", Width: inches("width", 120, 1200), Bay: inches("bay", 100, 300), Rise: inches("rise", 24, 240),
			Top: catalog.TopSpec{Bay: "bay", Gable: "gable"}}
		s.Length = s.Bay * unit.Length(rapid.IntRange(1, 12).Draw(r, "bays"))
		leg := inches("leg", 80, 160)
		f := spanFamily()
		f.Span = &catalog.SpanSpec{PurlinSpacing: inches("purlins", 40, 150), GableSpacing: inches("gables", 60, 300),
			BeamMax: inches("beam", 100, 400), BraceEvery: rapid.IntRange(1, 8).Draw(r, "every")}
		tent, list := Build(yard(f, []catalog.Size{s}, leg), f, &s, leg)
		if list.Err() != nil {
			r.Fatalf("%v", list.Err())
		}
		checkGraph(r, tent)
		checkSections(r, tent)
		checkSpan(r, tent, f.Span)
		checkBraces(r, tent, &s, f.Span.BraceEvery)
	})
}

// onRoof is how far a point is off the plane of its slope, in height.
func onRoof(tent *Tent, p Point) float64 {
	half := tent.Width.Metres() / 2
	return p.Z - tent.Eave.Metres() - (tent.Peak-tent.Eave).Metres()*(1-math.Abs(p.Y-half)/half)
}

// checkSpan looks at what lies on the roof, and at every spacing.
func checkSpan(t fataler, tent *Tent, spec *catalog.SpanSpec) {
	half, rise := tent.Width.Metres()/2, (tent.Peak - tent.Eave).Metres()
	slope := math.Sqrt(half*half + rise*rise)
	if roof := 2 * slope * tent.Length.Metres(); math.Abs(roof-float64(tent.RoofArea())) > 1e-6*roof {
		t.Fatalf("two slopes are %v m2, roof is %v m2", roof, tent.RoofArea())
	}
	var gables []float64
	across := []float64{}
	for _, n := range tent.Nodes {
		switch n.Role {
		case "purlin-cross", "arch-splice", "arch-ridge", "arch-eave", "gable-head":
			if off := onRoof(tent, n.At); math.Abs(off) > 1e-6 {
				t.Fatalf("%s at %v is %v m off its rafter", n.Role, n.At, off)
			}
		}
		switch {
		case n.Role == "gable-head" && n.At.X == 0:
			gables = append(gables, n.At.Y)
		case n.At.X == 0 && (n.Role == "purlin-cross" || n.Role == "arch-ridge" || n.Role == "arch-eave"):
			across = append(across, n.At.Y*slope/half)
		}
	}
	gables = append(gables, 0, tent.Width.Metres())
	for what, line := range map[string][]float64{"gable uprights": gables, "purlins": across} {
		most := spec.GableSpacing.Metres()
		if what == "purlins" {
			most = spec.PurlinSpacing.Metres()
		}
		slices.Sort(line)
		for i := 1; i < len(line); i++ {
			if gap := line[i] - line[i-1]; gap > most+1e-6 || gap < 1e-6 {
				t.Fatalf("%s are %v m apart, at most %v was wanted", what, gap, most)
			}
		}
	}
	checkRafters(t, tent, spec, slope)
}

// checkRafters wants whole beams no longer than the longest, which together
// make two slopes an arch.
func checkRafters(t fataler, tent *Tent, spec *catalog.SpanSpec, slope float64) {
	sum := 0.0
	for _, m := range tent.Members {
		if m.Role == "rafter" {
			sum += m.Centre.Metres()
			if m.Centre > spec.BeamMax+1 {
				t.Fatalf("rafter beam of %v m, at most %v was wanted", m.Centre.Metres(), spec.BeamMax.Metres())
			}
		}
	}
	if want := 2 * slope * float64(tent.Count("arches")); math.Abs(sum-want) > 1e-3 {
		t.Fatalf("rafters are %v m in all, want %v", sum, want)
	}
}

// checkBraces wants eight cables in each braced bay, the first and the last
// among them, and no longer row of open bays than allowed.
func checkBraces(t fataler, tent *Tent, s *catalog.Size, every int) {
	cables := map[int]int{}
	for _, m := range tent.Members {
		a, b := tent.Nodes[m.From].At, tent.Nodes[m.To].At
		if m.Role == "brace" {
			cables[int(math.Round(min(a.X, b.X)/s.Bay.Metres()))]++
		}
	}
	bays := int(s.Length / s.Bay)
	last := 0
	for i := range bays {
		switch {
		case cables[i] != 0 && cables[i] != 8, cables[i] == 0 && (i == 0 || i == bays-1):
			t.Fatalf("bay %d has %d cables", i, cables[i])
		case cables[i] == 8:
			last = i
		case i-last >= every:
			t.Fatalf("bay %d is open, and so are %d before it", i, i-last-1)
		}
	}
}
