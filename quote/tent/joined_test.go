package tent

import (
	"testing"

	"tentwright/catalog/unit"
	"tentwright/quote/frame"
	"tentwright/quote/job"
)

func plan(id, joins, side string, long, wide unit.Length) Tent {
	return Tent{Job: &job.Tent{ID: id, Joins: joins, JoinAt: side}, Graph: &frame.Tent{Length: long, Width: wide}}
}

// Each tent stands beyond the side that it shares, and tents of one group have
// one origin, whichever of them the job names first.
func TestOffsets(t *testing.T) {
	long, wide := 20*unit.Metre, 10*unit.Metre
	for side, want := range map[string]Offset{"front": {0, 0, 10}, "back": {0, 0, -10}, "left": {0, 20, 0}, "right": {0, -20, 0}} {
		first := Offsets([]Tent{plan("a", "", "", long, wide), plan("b", "a", side, long, wide)})
		if first[0] != (Offset{}) || first[1] != want {
			t.Errorf("joined at its %s: %+v; %+v was expected", side, first[1], want)
		}
		turned := Offsets([]Tent{plan("b", "a", side, long, wide), plan("a", "", "", long, wide)})
		if turned[0] != (Offset{}) || turned[1] != (Offset{0, -want.X, -want.Y}) {
			t.Errorf("joined at its %s, named first: %+v; %+v was expected", side, turned[1], Offset{0, -want.X, -want.Y})
		}
	}
	got := Offsets([]Tent{plan("a", "", "", long, wide), plan("x", "", "", long, wide), plan("b", "a", "front", long, wide), plan("c", "b", "front", long, wide)})
	for i, want := range []Offset{{0, 0, 0}, {1, 0, 0}, {0, 0, 10}, {0, 0, 20}} {
		if got[i] != want {
			t.Errorf("tent %d: %+v; %+v was expected", i, got[i], want)
		}
	}
}
