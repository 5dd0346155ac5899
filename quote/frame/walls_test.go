package frame

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"tentwright/catalog/unit"
)

// TestWallCover (common practice, no source): panels of 10, 15 and 20 ft with
// 6 in to overlap.
func TestWallCover(t *testing.T) {
	stock := []unit.Length{feet(20, 6), feet(15, 6), feet(10, 6)}
	tests := []struct {
		side   unit.Length
		widths []unit.Length
		want   []int // nil: it cannot be closed
	}{
		{feet(20, 0), stock, []int{1, 0, 0}},
		{feet(30, 0), stock, []int{1, 0, 1}}, // two of 15 ft are as good; the widest goes first
		{feet(40, 0), stock, []int{2, 0, 0}},
		{feet(40, 6), stock, []int{2, 0, 0}}, // to the inch
		{feet(45, 0), stock, []int{1, 1, 1}},
		{feet(10, 6), stock, []int{0, 0, 1}},
		{feet(10, 7), stock, []int{0, 1, 0}},
		{feet(7, 0), stock, []int{0, 0, 1}},
		{0, stock, []int{0, 0, 0}},
		{0, nil, []int{}},
		{feet(20, 0), nil, nil},
		{feet(1, 0), []unit.Length{feet(0, 6)}, nil}, // nothing is left beside the overlap
		{feet(0, 5), []unit.Length{feet(0, 6)}, []int{1}},
	}
	for _, test := range tests {
		got, ok := WallCover(test.side, test.widths, feet(0, 6))
		if !slices.Equal(got, test.want) || ok != (test.want != nil) {
			t.Errorf("side of %s: got %v, want %v", test.side.In(unit.Imperial), got, test.want)
		}
	}
}

// TestWallCoverBest tries every set of panels, and finds none better.
func TestWallCoverBest(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		side := unit.Length(rapid.IntRange(1, 400).Draw(r, "side")) * unit.Inch
		overlap := unit.Length(rapid.IntRange(0, 8).Draw(r, "overlap")) * unit.Inch
		var widths []unit.Length
		for _, w := range rapid.SliceOfN(rapid.IntRange(40, 250), 1, 4).Draw(r, "widths") {
			widths = append(widths, unit.Length(w)*unit.Inch)
		}
		counts, ok := WallCover(side, widths, overlap)
		if !ok {
			r.Fatalf("not closed")
		}
		panels, covered := 0, overlap
		for i, n := range counts {
			panels += n
			covered += unit.Length(n) * (widths[i] - overlap)
		}
		bestPanels, bestCovered := bruteCover(side, widths, overlap)
		if panels != bestPanels || covered != bestCovered {
			r.Fatalf("%v is %d panels over %d; %d over %d would do", counts, panels, covered, bestPanels, bestCovered)
		}
	})
}

// bruteCover counts up until some set of that many panels closes the side.
func bruteCover(side unit.Length, widths []unit.Length, overlap unit.Length) (panels int, covered unit.Length) {
	for n := 1; ; n++ {
		best := unit.Length(-1)
		var try func(left, from int, sum unit.Length)
		try = func(left, from int, sum unit.Length) {
			if left == 0 {
				if sum >= side && (best < 0 || sum < best) {
					best = sum
				}
				return
			}
			for i := from; i < len(widths); i++ {
				try(left-1, i, sum+widths[i]-overlap)
			}
		}
		try(n, 0, overlap)
		if best >= 0 {
			return n, best
		}
	}
}
