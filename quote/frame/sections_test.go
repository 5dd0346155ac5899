package frame

import (
	"math"
	"testing"

	"tentwright/catalog"
)

// checkSections wants the sections to make up the roof, gables apart.
func checkSections(t fataler, tent *Tent) {
	sum := 0.0
	for _, s := range tent.Sections {
		if s.Kind != "gable" {
			sum += float64(s.Count) * float64(s.Area)
		}
		if s.Count < 1 || s.Area <= 0 || s.Part == "" {
			t.Fatalf("section %+v is empty", s)
		}
	}
	if roof := float64(tent.RoofArea()); math.Abs(sum-roof) > 1e-9*roof {
		t.Fatalf("sections sum to %v m2, roof is %v m2", sum, roof)
	}
}

// TestTops cuts each kind of top, and names what is wrong with the others.
func TestTops(t *testing.T) {
	whole := catalog.TopSpec{OnePiece: "a"}
	ends := catalog.TopSpec{End: "a", Middle: "b"}
	bays := catalog.TopSpec{Bay: "a", Gable: "b"}
	tests := []struct {
		name   string
		family *catalog.Family
		size   catalog.Size
		top    catalog.TopSpec
		pieces int // 0: a problem
	}{
		{"hip whole", hipFamily(0), hipSize(20, 40, 10, 5), whole, 1},
		{"hip ends", hipFamily(0), hipSize(20, 40, 10, 5), ends, 4},
		{"hip without middle", hipFamily(0), hipSize(20, 20, 10, 5), catalog.TopSpec{End: "a"}, 2},
		{"hip square", hipFamily(0), hipSize(20, 20, 10, 5), ends, 2},
		{"hip single", hipFamily(0), hipSize(10, 10, 10, 2), ends, 2},
		{"pole whole", poleFamily(), poleSize(40, 80, 20, 20, 9), whole, 1},
		{"pole ends", poleFamily(), poleSize(40, 80, 20, 20, 9), ends, 4},
		{"pole long ends", poleFamily(), poleSize(40, 90, 30, 30, 9), ends, 3},
		{"span", spanFamily(), spanSize(40, 60, 15, 8), bays, 6},

		{"none", hipFamily(0), hipSize(20, 40, 10, 5), catalog.TopSpec{}, 0},
		{"two kinds", hipFamily(0), hipSize(20, 40, 10, 5), catalog.TopSpec{OnePiece: "a", End: "b"}, 0},
		{"middle needed", hipFamily(0), hipSize(20, 40, 10, 5), catalog.TopSpec{End: "a"}, 0},
		{"end needed", hipFamily(0), hipSize(20, 40, 10, 5), catalog.TopSpec{Middle: "a"}, 0},
		{"hip of bays", hipFamily(0), hipSize(20, 40, 10, 5), bays, 0},
		{"span whole", spanFamily(), spanSize(40, 60, 15, 8), whole, 0},
		{"span of ends", spanFamily(), spanSize(40, 60, 15, 8), ends, 0},
		{"span without gable", spanFamily(), spanSize(40, 60, 15, 8), catalog.TopSpec{Bay: "a"}, 0},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			s := test.size
			s.Top = test.top
			tent, list := Build(yard(test.family, []catalog.Size{s}, feet(8, 0)), test.family, &s, feet(8, 0))
			if test.pieces == 0 {
				if tent == nil || len(only(list, catalog.BadTop)) != 1 || len(list) != 1 || tent.Sections != nil {
					t.Fatalf("wanted one problem of the top, got %v", list)
				}
				return
			}
			if list.Err() != nil {
				t.Fatal(list.Err())
			}
			if got := tent.Count("top-sections"); got != test.pieces {
				t.Errorf("%d sections, want %d", got, test.pieces)
			}
			checkSections(t, tent)
		})
	}
}

// TestSharedSections: one stock section has one area, in whatever length of
// tent it hangs.
func TestSharedSections(t *testing.T) {
	areas := map[string]float64{}
	for _, length := range []float64{30, 40, 50, 60, 100} {
		s := hipSize(20, length, 10, 5)
		s.Top = catalog.TopSpec{End: "end", Middle: "middle"}
		for _, section := range mustBuild(t, hipFamily(0), s, feet(8, 0)).Sections {
			old, ok := areas[section.Kind]
			if ok && old != float64(section.Area) {
				t.Errorf("%s is %v m2 in one tent and %v in another", section.Kind, old, section.Area)
			}
			areas[section.Kind] = float64(section.Area)
		}
	}
}
