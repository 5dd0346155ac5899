package frame

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/catalog/unit"
)

// feet is a length in feet and inches.
func feet(ft, in float64) unit.Length { return unit.FromMetres((ft*12 + in) * 0.0254) }

// stock is a part that is a pole of a profile.
func stock(id, profile string, length unit.Length) catalog.Part {
	return catalog.Part{ID: id, Pole: &catalog.PoleStock{Profile: profile, Length: length}}
}

// roles makes each role of the given ones from the profile of its own name.
func roles(takeUp unit.Length, names ...string) []catalog.MemberSpec {
	var specs []catalog.MemberSpec
	for _, name := range names {
		specs = append(specs, catalog.MemberSpec{Role: name, Profile: name, TakeUp: takeUp})
	}
	return specs
}

// joints makes each role of the given ones by the fitting of its own name.
func joints(names ...string) []catalog.FittingSpec {
	var specs []catalog.FittingSpec
	for _, name := range names {
		specs = append(specs, catalog.FittingSpec{Role: name, Part: name})
	}
	return specs
}

func hipFamily(takeUp unit.Length) *catalog.Family {
	members := append(roles(takeUp, "perimeter", "ridge", "common", "hip", "purlin"), roles(0, "leg")...)
	return &catalog.Family{ID: "hip", Kind: catalog.KindHip, Tolerance: unit.Inch / 2, Members: members,
		Fittings:  joints("corner", "side-tee", "crown", "ridge-tee", "purlin-cross", "hip-cross", "base"),
		Anchorage: catalog.AnchorageSpec{Out: 4 * unit.Foot}}
}

func poleFamily() *catalog.Family {
	return &catalog.Family{ID: "pole", Kind: catalog.KindPole, Tolerance: unit.Inch / 2,
		Members:  roles(0, "centre-pole", "quarter-pole", "side-pole", "guy"),
		Fittings: joints("peak", "quarter-peak", "pole-foot", "eave", "eave-corner"),
		Guy:      &catalog.GuySpec{Slack: 4 * unit.Foot},
		Poles:    &catalog.PoleTentSpec{SideSpacing: 10 * unit.Foot, QuarterFrom: 60 * unit.Foot}}
}

func spanFamily() *catalog.Family {
	return &catalog.Family{ID: "span", Kind: catalog.KindSpan, Tolerance: unit.Inch / 2,
		Members:  roles(0, "upright", "rafter", "eave-purlin", "ridge-purlin", "purlin", "gable-upright", "brace"),
		Fittings: joints("base-plate", "arch-eave", "arch-ridge", "arch-splice", "purlin-cross", "gable-head"),
		Span:     &catalog.SpanSpec{PurlinSpacing: 8 * unit.Foot, GableSpacing: 10 * unit.Foot, BeamMax: 22 * unit.Foot, BraceEvery: 4}}
}

// yard is a shop that owns exactly the poles of the tents given, by
// exhaustion: a build without stock says what is cut.
func yard(f *catalog.Family, sizes []catalog.Size, leg unit.Length) *catalog.Catalog {
	c := &catalog.Catalog{Company: catalog.Company{Units: unit.Imperial}}
	have := map[string]bool{}
	for i := range sizes {
		t, _ := Build(c, f, &sizes[i], leg)
		if t == nil {
			continue
		}
		for _, m := range t.Members {
			id := fmt.Sprintf("%s %d", m.Role, m.Cut)
			if !have[id] {
				have[id] = true
				c.Parts = append(c.Parts, stock(id, m.Role, m.Cut))
			}
		}
	}
	return c
}

// mustBuild builds a size from its exact stock.
func mustBuild(t testing.TB, f *catalog.Family, s catalog.Size, leg unit.Length) *Tent {
	t.Helper()
	tent, list := Build(yard(f, []catalog.Size{s}, leg), f, &s, leg)
	if tent == nil || list.Err() != nil {
		t.Fatalf("%v", list.Err())
	}
	return tent
}

// only is the messages with a code.
func only(list diag.List, code string) []string {
	var found []string
	for _, p := range list {
		if p.Code == code {
			found = append(found, p.Message)
		}
	}
	return found
}

const tiny = 1e-9

// fataler is a test or a property under test.
type fataler interface{ Fatalf(string, ...any) }

// checkGraph checks what holds for a tent of any kind: members as long as
// their ends are apart, ways as counted, posts upright, ends mirrored.
func checkGraph(t fataler, tent *Tent) {
	ways := make([]int, len(tent.Nodes))
	used := make([]bool, len(tent.Nodes))
	for _, m := range tent.Members {
		a, b := tent.Nodes[m.From].At, tent.Nodes[m.To].At
		long := math.Sqrt((a.X-b.X)*(a.X-b.X) + (a.Y-b.Y)*(a.Y-b.Y) + (a.Z-b.Z)*(a.Z-b.Z))
		if math.Abs(m.Centre.Metres()-long) > 1e-6 || long < tiny {
			t.Fatalf("%s has a centre line of %v m between ends %v m apart", m.Role, m.Centre.Metres(), long)
		}
		switch m.Role {
		case "leg", "side-pole", "centre-pole", "quarter-pole", "upright", "gable-upright":
			if a.X != b.X || a.Y != b.Y || a.Z != 0 || b.Z <= 0 {
				t.Fatalf("%s runs from %v to %v; upright from the ground was expected", m.Role, a, b)
			}
		}
		used[m.From], used[m.To] = true, true
		if m.Role != "guy" && m.Role != "brace" {
			ways[m.From]++
			ways[m.To]++
		}
	}
	for i, n := range tent.Nodes {
		if n.Ways != ways[i] || !used[i] {
			t.Fatalf("%s at %v says %d ways and has %d, in use %v", n.Role, n.At, n.Ways, ways[i], used[i])
		}
	}
	checkMirrored(t, tent)
}

// checkMirrored swaps left with right and front with back, and wants the same
// tent each time. Braced bays are counted from the left, so cables may differ.
func checkMirrored(t fataler, tent *Tent) {
	list := func(turn func(Point) Point) []string {
		place := func(p Point) string {
			p = turn(p)
			// An odd step, so that no half of a usual length falls between two.
			const step = 1e4 / math.Pi
			return fmt.Sprintf("%.0f,%.0f,%.0f", p.X*step+1e5, p.Y*step+1e5, p.Z*step+1e5)
		}
		var all []string
		for _, n := range tent.Nodes {
			all = append(all, n.Role+" "+place(n.At))
		}
		for _, m := range tent.Members {
			a, b := place(tent.Nodes[m.From].At), place(tent.Nodes[m.To].At)
			if m.Role == "brace" {
				continue
			}
			all = append(all, m.Role+" "+min(a, b)+" "+max(a, b))
		}
		slices.Sort(all)
		return all
	}
	long, wide := tent.Length.Metres(), tent.Width.Metres()
	as := list(func(p Point) Point { return p })
	if !slices.Equal(as, list(func(p Point) Point { return Point{long - p.X, p.Y, p.Z} })) {
		t.Fatalf("left and right differ")
	}
	if !slices.Equal(as, list(func(p Point) Point { return Point{p.X, wide - p.Y, p.Z} })) {
		t.Fatalf("front and back differ")
	}
}
