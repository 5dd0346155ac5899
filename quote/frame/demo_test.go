package frame

import (
	"testing"

	"tentwright/catalog"
)

// TestDemoShop builds every size of the demonstration shop at every eave
// height; each must find all its stock.
func TestDemoShop(t *testing.T) {
	c, problems := catalog.Load("demo", catalog.Demo())
	if c == nil {
		t.Fatalf("the demonstration shop does not load: %v", problems.Err())
	}
	for i := range c.Families {
		f := &c.Families[i]
		for j := range f.Sizes {
			for _, leg := range f.Legs {
				tent, list := Build(c, f, &f.Sizes[j], leg)
				if tent == nil || list.Err() != nil {
					t.Errorf("%s %s at %d: %v", f.ID, f.Sizes[j].ID, leg, list.Err())
				}
			}
		}
	}
}

// BenchmarkBuild builds the largest frame tent of the demonstration shop.
func BenchmarkBuild(b *testing.B) {
	c, problems := catalog.Load("demo", catalog.Demo())
	if c == nil {
		b.Fatalf("the demonstration shop does not load: %v", problems.Err())
	}
	f := c.Family("hip")
	s := f.Size("40x100")
	if s == nil {
		b.Fatal("the demonstration shop has no 40x100")
	}
	b.ReportAllocs()
	for b.Loop() {
		if t, list := Build(c, f, s, f.Legs[0]); t == nil || list.Err() != nil {
			b.Fatal(list.Err())
		}
	}
}
