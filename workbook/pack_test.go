package workbook

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tentwright/catalog"
	"tentwright/quote/load"
)

func partIn(kind, unit string, holds int) *catalog.Part {
	return &catalog.Part{ID: "p", Unit: unit, Pack: catalog.Pack{Kind: kind, Holds: holds}}
}

// Quantities read as a picker says them. Common practice, no source.
func TestPackText(t *testing.T) {
	for _, c := range []struct {
		kind, unit string
		holds, n   int
		want       string
	}{
		{"bag", "piece", 50, 0, ""},
		{"bag", "piece", 50, 112, "2 bags of 50 + 12"},
		{"bag", "piece", 50, 50, "1 bag of 50"},
		{"bag", "piece", 50, 51, "1 bag of 50 + 1"},
		{"bag", "piece", 50, 12, "12 in a bag"},
		{"crate", "piece", 1, 1, "1 crate"},
		{"crate", "piece", 1, 3, "3 crates"},
		{"loose", "piece", 1, 1, "1 loose"},
		{"loose", "piece", 4, 12, "12 loose"},
		{"loose", "pair", 1, 1, "1 pair"},
		{"loose", "pair", 1, 3, "3 pairs"},
	} {
		if got := packText(partIn(c.kind, c.unit, c.holds), c.n); got != c.want {
			t.Errorf("packText(%s of %d, %d) = %q, want %q", c.kind, c.holds, c.n, got, c.want)
		}
	}
}

func TestPackFormula(t *testing.T) {
	for _, c := range []struct {
		kind, unit string
		holds      int
		want       string
	}{
		{"loose", "piece", 1, `IF($E9=0,"",$E9&" loose")`},
		{"roll", "piece", 1, `IF($E9=0,"",$E9&IF($E9=1," roll"," rolls"))`},
		{"bag", "piece", 50, `IF($E9=0,"",IF(INT($E9/50)=0,$E9&" in a bag",INT($E9/50)&IF(INT($E9/50)=1," bag of 50"," bags of 50")&IF(MOD($E9,50)=0,""," + "&MOD($E9,50))))`},
	} {
		if got := packFormula(partIn(c.kind, c.unit, c.holds), "$E9"); got != c.want {
			t.Errorf("packFormula(%s of %d) =\n%s\nwant\n%s", c.kind, c.holds, got, c.want)
		}
	}
}

// Packs hold all pieces and none of them is empty.
func TestPackCount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		holds, n := rapid.IntRange(1, 200).Draw(t, "holds"), rapid.IntRange(0, 5000).Draw(t, "pieces")
		packs := load.PackCount(n, partIn("bag", "piece", holds).Pack.Holds)
		if packs*holds < n || (packs-1)*holds >= n && packs > 0 {
			t.Fatalf("%d packs of %d for %d pieces", packs, holds, n)
		}
	})
}

func TestNatural(t *testing.T) {
	sorted := []string{"", "A-1-2", "A-2-1", "A-02-2", "A-10-1", "A-10-1b", "B-1-1", "V2", "V10"}
	for i, a := range sorted {
		for j, b := range sorted {
			if got := natural(a, b); (got < 0) != (i < j) || (got > 0) != (i > j) {
				t.Errorf("natural(%q, %q) = %d, want the order of the list", a, b, got)
			}
		}
	}
}

// Any two texts have one order, whichever comes first.
func TestNaturalIsAnOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[AB0-2-]{0,6}`)
		a, b, c := text.Draw(t, "a"), text.Draw(t, "b"), text.Draw(t, "c")
		if x, y := natural(a, b), natural(b, a); (x < 0) != (y > 0) {
			t.Fatalf("natural(%q, %q) = %d but turned round %d", a, b, x, y)
		}
		if natural(a, b) < 0 && natural(b, c) < 0 && natural(a, c) >= 0 {
			t.Fatalf("%q before %q before %q, yet not the first before the last", a, b, c)
		}
	})
}

func TestZoneOf(t *testing.T) {
	if got := zoneOf("C-03-1"); got != "C" {
		t.Errorf("zone of C-03-1 is %q, want C", got)
	}
	if !strings.HasPrefix(zoneOf("yard"), "yard") {
		t.Error("a bin without parts is its own zone")
	}
}
