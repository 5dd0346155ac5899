package anchor_test

import (
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/anchor"
	"tentwright/quote/job"
	"tentwright/quote/tent"
)

// large is a tent of 60 x 200 ft with three closed sides, of one of the families.
func large(b testing.TB, family string) (*catalog.Catalog, *job.Job, []tent.Tent) {
	b.Helper()
	c := demo(b)
	f := c.Family(family)
	model := f.Sizes[len(f.Sizes)-1]
	size := catalog.Size{ID: "large", Width: 60 * unit.Foot, Length: 200 * unit.Foot, Bay: 10 * unit.Foot, Rise: 15 * unit.Foot, Top: model.Top}
	switch family {
	case "pole":
		size.Bay, size.End, size.Rise = 35*unit.Foot, 30*unit.Foot, 13*unit.Foot
	case "span":
		size.Rise = 10 * unit.Foot
	}
	f.Sizes = append(f.Sizes, size)
	j := &job.Job{Tents: []job.Tent{{ID: "a", Family: family, Size: "large",
		Sides: []job.TentSide{{Side: "front", Wall: "solid"}, {Side: "left", Wall: "solid"}, {Side: "back", Wall: "solid"}}}}}
	if family == "pole" {
		j.Tents[0].Sides = nil
	}
	tents, _ := tent.Build(c, j) // stock poles of that size are not owned
	if len(tents) != 1 {
		b.Fatal("the tent cannot be framed")
	}
	return c, j, tents
}

// Anchors of one tent of 60 x 200 ft, of each family.
func BenchmarkLargeTent(b *testing.B) {
	for _, family := range []string{"hip", "pole", "span"} {
		b.Run(family, func(b *testing.B) {
			c, j, tents := large(b, family)
			for b.Loop() {
				if r, _ := anchor.Build(c, j, tents); !r.Tents[0].Planned {
					b.Fatal("not planned")
				}
			}
			b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(b.N)/1000, "ms/op")
		})
	}
}

// What the benchmark measures is planned in full: every leg in every case.
func TestLargeTent(t *testing.T) {
	for _, family := range []string{"hip", "pole", "span"} {
		c, j, tents := large(t, family)
		r, _ := anchor.Build(c, j, tents)
		x := &r.Tents[0]
		if !x.Planned || len(x.Legs) < 38 || len(x.Cases) != 24 {
			t.Errorf("%s: planned %v with %d legs and %d cases; %v %v", family, x.Planned, len(x.Legs), len(x.Cases), r.Refused, r.Missing)
		}
	}
}
