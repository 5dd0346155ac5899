package quote

import (
	"os"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/diag/diagtest"
)

// Every size of the demonstration shop stands at every height.
func TestCheckShopOfTheDemo(t *testing.T) {
	c, list := catalog.Load("demo", catalog.Demo())
	if c == nil {
		t.Fatal(list.Err())
	}
	if list := CheckShop(c); len(list) > 0 {
		t.Error(list.Err())
	}
}

// Each fixture is a file of the small shop that its own checks let pass, though
// its tents cannot stand; the faults are named like it.
func TestCheckShopFindsWhatCannotStand(t *testing.T) {
	diagtest.Each(t, os.DirFS("../testdata/invalid/frame"), func(t *testing.T, code string, data []byte) {
		name := diagtest.Replaces(data)
		c, list := catalog.Load("shop", diagtest.With(t, os.DirFS("../testdata/shops/small"), name, data))
		if c == nil {
			t.Fatal(list.Err())
		}
		list = CheckShop(c)
		diagtest.OfCode(t, list, code)
		diagtest.Compare(t, "shop/"+name, data, list)
	})
}

func BenchmarkCheckShop(b *testing.B) {
	c, list := catalog.Load("demo", catalog.Demo())
	if c == nil {
		b.Fatal(list.Err())
	}
	for b.Loop() {
		CheckShop(c)
	}
}
