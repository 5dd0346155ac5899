package frame

import (
	"slices"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/unit"
)

// TestNoStockPole: each missing pole is named once, with the length wanted
// and the nearest owned.
func TestNoStockPole(t *testing.T) {
	s := hipSize(20, 30, 10, 5)
	c := &catalog.Catalog{Company: catalog.Company{Units: unit.Imperial}, Parts: []catalog.Part{
		stock("eave", "perimeter", feet(9, 4)),
		stock("short", "hip", feet(14, 0)), stock("nearest", "hip", feet(14, 5)), stock("long", "hip", feet(15, 0)),
		stock("rafter", "common", feet(10, 6)), stock("leg", "leg", feet(8, 0)),
		{ID: "chair"},
	}}
	tent, list := Build(c, hipFamily(4*unit.Inch), &s, feet(8, 0))
	want := []string{
		`family "hip", size "20x30": a ridge of 9 ft 4 in is needed; a part of profile "ridge" was expected, none is owned`,
		`family "hip", size "20x30": a hip of 14 ft 4 in is needed; the nearest of profile "hip" is "nearest" at 14 ft 5 in`,
	}
	if got := only(list, NoStockPole); !slices.Equal(got, want) || len(list) != len(want) {
		t.Fatalf("got %q", list)
	}
	for _, m := range tent.Members {
		if missing := m.Role == "ridge" || m.Role == "hip"; missing != (m.Part == "") {
			t.Errorf("%s is made from %q", m.Role, m.Part)
		}
	}
}

// TestFineTolerance: where the half inch is too coarse to tell two lengths
// apart, both are told in metres.
func TestFineTolerance(t *testing.T) {
	s, f := hipSize(20, 30, 10, 5), hipFamily(4*unit.Inch)
	f.Tolerance = unit.Inch / 8
	c := yard(f, []catalog.Size{s}, feet(8, 0))
	for i := range c.Parts {
		if c.Parts[i].Pole.Profile == "hip" {
			c.Parts[i].ID, c.Parts[i].Pole.Length = "hip", feet(14, 4)+unit.Inch/6
		}
	}
	_, list := Build(c, f, &s, feet(8, 0))
	want := []string{`family "hip", size "20x30": a hip of 4.369 m is needed; the nearest of profile "hip" is "hip" at 4.373 m`}
	if got := only(list, NoStockPole); !slices.Equal(got, want) {
		t.Fatalf("got %q", got)
	}
}

// TestTolerance: the ends of the tolerance count as within it, and the nearest
// pole is taken.
func TestTolerance(t *testing.T) {
	tests := []struct {
		name string
		legs []unit.Length // owned
		want int           // index taken, -1 for none
	}{
		{"exact", []unit.Length{feet(8, 0)}, 0},
		{"half an inch short", []unit.Length{feet(7, 11.5)}, 0},
		{"half an inch long", []unit.Length{feet(8, 0.5)}, 0},
		{"beyond", []unit.Length{feet(8, 0.5) + 1, feet(7, 11.5) - 1}, -1},
		{"nearest", []unit.Length{feet(8, 0.5), feet(7, 11.75), feet(7, 11.5)}, 1},
		{"first of equals", []unit.Length{feet(8, 0.25), feet(7, 11.75)}, 0},
		{"none", nil, -1},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			s, f := hipSize(10, 10, 10, 2.5), hipFamily(0)
			c := &catalog.Catalog{}
			for i, l := range test.legs {
				c.Parts = append(c.Parts, stock(string(rune('a'+i)), "leg", l))
			}
			want := ""
			if test.want >= 0 {
				want = string(rune('a' + test.want))
			}
			tent, _ := Build(c, f, &s, feet(8, 0))
			for _, m := range tent.Members {
				if m.Role == "leg" && m.Part != want {
					t.Fatalf("leg is made from %q, want %q", m.Part, want)
				}
			}
		})
	}
}

// TestRopes: a rope may be longer than it need be, never shorter.
func TestRopes(t *testing.T) {
	s, f := poleSize(40, 40, 20, 20, 9), poleFamily()
	need := feet(0, 0)
	for _, m := range mustBuild(t, f, s, feet(7, 0)).Members {
		if m.Role == "guy" {
			need = m.Cut
		}
	}
	tests := []struct {
		name  string
		ropes []unit.Length
		want  string
	}{
		{"exact", []unit.Length{need}, "a"},
		{"shortest that reaches", []unit.Length{need + 3*unit.Foot, need + unit.Foot, need - 1}, "b"},
		{"too short", []unit.Length{need - 1}, ""},
	}
	for _, test := range tests {
		c := &catalog.Catalog{}
		for i, l := range test.ropes {
			c.Parts = append(c.Parts, stock(string(rune('a'+i)), "guy", l))
		}
		tent, _ := Build(c, f, &s, feet(7, 0))
		for _, m := range tent.Members {
			if m.Role == "guy" && m.Part != test.want {
				t.Fatalf("%s: guy is made from %q, want %q", test.name, m.Part, test.want)
			}
		}
	}
}

// TestFittings: the fitting made for the number of ways goes before the one
// for any number; a fitting that is missing is named once.
func TestFittings(t *testing.T) {
	s, f := hipSize(20, 40, 10, 5), hipFamily(0)
	f.Fittings = append(f.Fittings, catalog.FittingSpec{Role: "crown", Ways: 6, Part: "six"}, catalog.FittingSpec{Role: "crown", Ways: 8, Part: "eight"})
	parts := map[string]string{}
	for _, n := range mustBuild(t, f, s, feet(8, 0)).Nodes {
		parts[n.Role] = n.Part
	}
	if parts["crown"] != "six" || parts["ridge-tee"] != "ridge-tee" || parts["base"] != "base" {
		t.Errorf("fittings are %v", parts)
	}

	f.Fittings = []catalog.FittingSpec{{Role: "corner", Part: "corner"}, {Role: "side-tee", Ways: 3, Part: "tee"}, {Role: "base", Part: "base"}, {Role: "ridge-tee", Ways: 4, Part: "tee"}}
	_, list := Build(yard(f, []catalog.Size{s}, feet(8, 0)), f, &s, feet(8, 0))
	want := []string{
		`family "hip", size "20x40": a side-tee of 4 ways is needed; a fitting of that role, with these ways or any, was expected`,
		`family "hip", size "20x40": a crown of 6 ways is needed; a fitting of that role, with these ways or any, was expected`,
	}
	if got := only(list, NoFitting); !slices.Equal(got, want) || len(list) != len(want) {
		t.Errorf("got %q", list)
	}
}

// TestOptionalFittings: stakes follow from the anchorage and side poles stand
// on their spikes; a family may still name a part for either.
func TestOptionalFittings(t *testing.T) {
	s, f := poleSize(40, 40, 20, 20, 9), poleFamily()
	for _, named := range []bool{false, true} {
		if named {
			f.Fittings = append(f.Fittings, joints("stake", "base")...)
		}
		for _, n := range mustBuild(t, f, s, feet(7, 0)).Nodes {
			if optional := n.Role == "stake" || n.Role == "base"; optional && (n.Part != "") != named {
				t.Fatalf("%s is made from %q", n.Role, n.Part)
			}
		}
	}
}

// TestNoProfile: a role without a spec is named once.
func TestNoProfile(t *testing.T) {
	s, f := hipSize(20, 40, 10, 5), hipFamily(0)
	f.Members = f.Members[1:]
	_, list := Build(yard(f, []catalog.Size{s}, feet(8, 0)), f, &s, feet(8, 0))
	want := []string{`family "hip" says nothing of a perimeter; an entry of that role in members was expected`}
	if got := only(list, NoProfile); !slices.Equal(got, want) || len(list) != 1 {
		t.Errorf("got %q", list)
	}
}
