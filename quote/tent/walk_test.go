package tent_test

import (
	"testing"

	"tentwright/catalog"
	"tentwright/quote/job"
	"tentwright/quote/tent"
)

// A walk goes once round the tent: each leg is numbered once, and two that follow
// each other stand on one side.
func TestWalk(t *testing.T) {
	c, list := catalog.Load("demo", catalog.Demo())
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	for _, family := range []string{"hip", "pole", "span"} {
		size := c.Family(family).Sizes[1].ID
		tents, list := tent.Build(c, &job.Job{Tents: []job.Tent{{ID: "a", Family: family, Size: size}}})
		if err := list.Err(); err != nil {
			t.Fatal(err)
		}
		legs, walk := tents[0].Graph.Legs(), tents[0].Walk()
		if len(walk) != len(legs) {
			t.Fatalf("%s: %d of %d legs", family, len(walk), len(legs))
		}
		seen := map[int]bool{}
		for n, i := range walk {
			if seen[i] {
				t.Errorf("%s: leg %d is met twice", family, i)
			}
			seen[i] = true
			if next := legs[walk[(n+1)%len(walk)]]; !share(legs[i].Sides, next.Sides) {
				t.Errorf("%s: from a leg at %v to one at %v", family, legs[i].Sides, next.Sides)
			}
		}
		if first := tents[0].LegNames()[walk[0]]; first != "1 front left corner" {
			t.Errorf("%s: the first leg is called %q", family, first)
		}
	}
}

func share(a, b []string) bool {
	for _, x := range a {
		for _, y := range b {
			if x == y {
				return true
			}
		}
	}
	return false
}
