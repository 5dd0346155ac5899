package frame

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"tentwright/catalog"
	"tentwright/catalog/unit"
)

func poleSize(width, length, bay, end, rise float64) catalog.Size {
	s := hipSize(width, length, bay, rise)
	s.End, s.Top = feet(end, 0), catalog.TopSpec{End: "end", Middle: "middle"}
	return s
}

// TestWorkedPoleTents (common practice, no source): side poles every 10 ft,
// one guy each and two at a corner, quarter poles from 60 ft.
func TestWorkedPoleTents(t *testing.T) {
	tests := []struct {
		size   catalog.Size
		counts map[string]int
	}{
		{poleSize(40, 40, 20, 20, 9), map[string]int{"centre-poles": 1, "quarter-poles": 0, "side-poles": 16, "guys": 20, "bays": 0, "corners": 4, "top-sections": 2, "poles": 17}},
		{poleSize(40, 80, 20, 20, 9), map[string]int{"centre-poles": 3, "quarter-poles": 0, "side-poles": 24, "guys": 28, "bays": 2, "top-sections": 4, "joints": 54}},
		{poleSize(60, 120, 30, 30, 13), map[string]int{"centre-poles": 3, "quarter-poles": 8, "side-poles": 36, "guys": 40, "legs": 0}},
	}
	for _, test := range tests {
		tent := mustBuild(t, poleFamily(), test.size, feet(7, 0))
		for driver, want := range test.counts {
			if got := tent.Count(driver); got != want {
				t.Errorf("%s: %d of %s, want %d", test.size.ID, got, driver, want)
			}
		}
		if tent.Count("side-poles") != len(tent.Legs()) {
			t.Errorf("%s: %d feet are anchored", test.size.ID, len(tent.Legs()))
		}
	}
}

// TestGuyLength: at 45 degrees from a 7 ft pole the rope is 7 ft times the
// square root of 2, and 4 ft more to tie.
func TestGuyLength(t *testing.T) {
	s := poleSize(40, 40, 20, 20, 9)
	for _, m := range mustBuild(t, poleFamily(), s, feet(7, 0)).Members {
		if want := feet(7*math.Sqrt2+4, 0); m.Role == "guy" && max(m.Cut-want, want-m.Cut) > unit.Micrometre {
			t.Fatalf("guy of %s, want %s", m.Cut.In(unit.Imperial), want.In(unit.Imperial))
		}
	}
}

// TestAnyPoleTent checks tents of any proportion by code of its own.
func TestAnyPoleTent(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		inches := func(name string, low, high int) unit.Length {
			return unit.Length(rapid.IntRange(low, high).Draw(r, name)) * unit.Inch
		}
		s := catalog.Size{ID: "any", Width: inches("width", 120, 1200), Bay: inches("bay", 100, 480), End: inches("end", 100, 480),
			Rise: inches("rise", 24, 240), Top: catalog.TopSpec{End: "end", Middle: "middle"}}
		s.Length = 2*s.End + unit.Length(rapid.IntRange(0, 6).Draw(r, "middles"))*s.Bay
		leg := inches("leg", 60, 120)
		f := poleFamily()
		f.Poles.SideSpacing = inches("spacing", 60, 180)
		f.Anchorage.Out = inches("out", 0, 120)
		tent, list := Build(yard(f, []catalog.Size{s}, leg), f, &s, leg)
		if list.Err() != nil {
			r.Fatalf("%v", list.Err())
		}
		checkGraph(r, tent)
		checkSections(r, tent)
		checkPole(r, tent, f)
		checkHipRoof(r, tent, s.End.Metres())
	})
}

// checkPole looks at where poles and stakes stand.
func checkPole(t fataler, tent *Tent, f *catalog.Family) {
	long, wide, out := tent.Length.Metres(), tent.Width.Metres(), tent.Out.Metres()
	if tent.Out == 0 || f.Anchorage.Out > 0 && tent.Out != f.Anchorage.Out {
		t.Fatalf("stakes are %v m out", out)
	}
	ropes := map[int]int{}
	for _, m := range tent.Members {
		if m.Role != "guy" {
			continue
		}
		ropes[m.From]++
		stake := tent.Nodes[m.To].At
		beyond := max(-stake.X, stake.X-long, -stake.Y, stake.Y-wide)
		if math.Abs(beyond-out) > tiny || stake.Z != 0 {
			t.Fatalf("stake at %v is %v m out, want %v", stake, beyond, out)
		}
		if head := tent.Nodes[m.From].At; head.X != stake.X && head.Y != stake.Y {
			t.Fatalf("guy from %v to %v is not square to its side", head, stake)
		}
	}
	var edge []Point
	for i, n := range tent.Nodes {
		switch n.Role {
		case "eave", "eave-corner":
			edge = append(edge, n.At)
			if corner := n.Role == "eave-corner"; ropes[i] != len(n.Sides) || corner != (len(n.Sides) == 2) {
				t.Fatalf("%s on sides %v has %d guys", n.Role, n.Sides, ropes[i])
			}
		case "peak":
			if math.Abs(n.At.Y-wide/2) > tiny || math.Abs(n.At.Z-tent.Peak.Metres()) > 1e-6 {
				t.Fatalf("peak at %v", n.At)
			}
		}
	}
	// Round the edge, poles follow each other on one side at most a spacing
	// apart.
	for i, a := range edge {
		b := edge[(i+1)%len(edge)]
		gap := math.Abs(a.X-b.X) + math.Abs(a.Y-b.Y)
		if gap > f.Poles.SideSpacing.Metres()+tiny || a.X != b.X && a.Y != b.Y {
			t.Fatalf("side poles at %v and %v are %v m apart", a, b, gap)
		}
	}
	checkQuarters(t, tent, f)
}

func checkQuarters(t fataler, tent *Tent, f *catalog.Family) {
	want := 0
	if tent.Width >= f.Poles.QuarterFrom {
		want = 2*tent.Count("centre-poles") + 2
	}
	if got := tent.Count("quarter-poles"); got != want {
		t.Fatalf("%d quarter poles, want %d", got, want)
	}
	for _, n := range tent.Nodes {
		if half := (tent.Eave + tent.Peak).Metres() / 2; n.Role == "quarter-peak" && math.Abs(n.At.Z-half) > 1e-6 {
			t.Fatalf("quarter pole reaches %v m, want %v", n.At.Z, half)
		}
	}
}

// checkHipRoof adds the roof up from triangles of its own between the eave's
// corners and the ends of the ridge.
func checkHipRoof(t fataler, tent *Tent, end float64) {
	long, wide, low, high := tent.Length.Metres(), tent.Width.Metres(), tent.Eave.Metres(), tent.Peak.Metres()
	a, b, c, d := Point{0, 0, low}, Point{long, 0, low}, Point{long, wide, low}, Point{0, wide, low}
	p, q := Point{end, wide / 2, high}, Point{long - end, wide / 2, high}
	sum := 0.0
	for _, tri := range [][3]Point{{a, p, d}, {b, q, c}, {a, b, p}, {b, q, p}, {c, d, q}, {d, p, q}} {
		sum += heron(tri[0], tri[1], tri[2])
	}
	if math.Abs(sum-float64(tent.RoofArea())) > 1e-6*sum {
		t.Fatalf("triangles sum to %v m2, roof is %v m2", sum, tent.RoofArea())
	}
}
