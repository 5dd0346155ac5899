package catalog

import "testing"

// The embedded shop is without fault and as large as a real yard's.
func TestDemoShop(t *testing.T) {
	c, list := Load("demo", Demo())
	if list.Err() != nil {
		t.Fatal(list.Err())
	}
	if !c.Demo {
		t.Error("the embedded shop does not count as a demonstration")
	}
	for _, want := range []struct {
		what      string
		have, min int
	}{
		{"parts", len(c.Parts), 120}, {"items", len(c.Items), 60}, {"labour rules", len(c.Labour), 40},
		{"vehicles", len(c.Fleet.Vehicles), 5}, {"families", len(c.Families), 3},
	} {
		if want.have < want.min {
			t.Errorf("%d %s, at least %d were expected", want.have, want.what, want.min)
		}
	}
	kinds := map[string]bool{}
	for _, f := range c.Families {
		kinds[f.Kind] = true
	}
	for _, kind := range []string{"hip-frame", "pole", "clear-span"} {
		if !kinds[kind] {
			t.Errorf("no family of kind %q", kind)
		}
	}
}

// Every part that comes back is charged for when it does not, and every part
// but the sections of tops has a weight before any tent is built.
func TestDemoPartsAreComplete(t *testing.T) {
	c, _ := Load("demo", Demo())
	for i := range c.Parts {
		p := &c.Parts[i]
		if !p.Consumable && (p.Replacement == nil || !p.Replacement.IsPositive()) {
			t.Errorf("part %q comes back without a replacement charge", p.ID)
		}
		if m, ok := c.Mass(p.ID); (!ok || m <= 0) && p.Cloth == nil {
			t.Errorf("part %q has no weight", p.ID)
		}
	}
}

func BenchmarkLoadDemo(b *testing.B) {
	for b.Loop() {
		if c, list := Load("demo", Demo()); c == nil {
			b.Fatal(list.Err())
		}
	}
}
