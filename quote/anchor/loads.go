package anchor

import (
	"math"

	"tentwright/quote/frame"
	"tentwright/quote/job"
	"tentwright/quote/tent"
)

// Axes across which a roof is halved: wind along the width, wind along the
// length.
const (
	acrossWidth = iota
	acrossLength
)

// surfaces is what a pressure of 1 does on one tent: down on each half of the
// roof, for wind along either axis, and outward on each closed side.
type surfaces struct {
	halves [2][2]load // by axis; half 0 is the front, or the left
	walls  map[string]*load
	plan   []float64 // plan area that each leg carries
}

// winds is the four directions of wind, by the side that it comes from.
var winds = []struct {
	from string
	axis int
	near int // the windward half
}{{"front", acrossWidth, 0}, {"right", acrossLength, 1}, {"back", acrossWidth, 1}, {"left", acrossLength, 0}}

// surfacesOf cuts the roof and the closed sides of a tent into what each leg
// carries.
func surfacesOf(t *tent.Tent, legs []frame.Point) *surfaces {
	n := len(legs)
	all := surfaces{walls: map[string]*load{}, plan: make([]float64, n)}
	s := spreader{legs: legs}
	length, width := t.Graph.Length.Metres(), t.Graph.Width.Metres()
	for half, side := range []float64{1, -1} {
		across, along := &all.halves[acrossWidth][half], &all.halves[acrossLength][half]
		across.share, along.share = make([]frame.Point, n), make([]frame.Point, n)
		for _, plane := range t.Graph.Planes {
			toward := -1.0 // down, against a normal that points up
			if normal, _, ok := flat(plane); ok && normal.Z < 0 {
				toward = 1
			}
			s.spread(across, clip(nil, plane, 0, side, -side*width/2), toward, all.plan)
			if t.Family.Kind != clearSpan {
				s.spread(along, clip(nil, plane, side, 0, -side*length/2), toward, nil)
			}
		}
	}
	if t.Family.Kind == clearSpan { // halved at its ridge, wherever wind is from
		all.halves[acrossLength] = all.halves[acrossWidth]
	}
	for _, w := range t.Walls {
		if l := wallLoad(t, &s, &w); l != nil {
			all.walls[w.Side] = l
		}
	}
	return &all
}

// wallLoad is a pressure of 1 outward on a closed side, doors and all, from the
// ground up: on the safe side, since pegs hold some of the hem. A gable of a
// clear-span structure is cloth whether the side below it is closed or not.
func wallLoad(t *tent.Tent, s *spreader, w *tent.Wall) *load {
	l := &load{share: make([]frame.Point, len(s.legs))}
	for _, shared := range t.Shared {
		if shared == w.Side {
			return nil
		}
	}
	// Seen from outside a side runs from a to b.
	a, b := sideEnds(t, w.Side)
	eave, up := t.Graph.Eave.Metres(), func(p frame.Point, z float64) frame.Point { p.Z = z; return p }
	any := false
	if w.Spec != nil {
		any = true
		s.spread(l, []frame.Point{a, b, up(b, eave), up(a, eave)}, 1, nil)
	}
	if t.Family.Kind == clearSpan && (w.Side == "left" || w.Side == "right") {
		any = true
		top := up(scaled(0.5, plus(a, b)), t.Graph.Peak.Metres())
		s.spread(l, []frame.Point{up(a, eave), up(b, eave), top}, 1, nil)
	}
	if !any {
		return nil
	}
	return l
}

// sideEnds is the ends of a side on the ground, counted against the clock, so
// that a wall on it has its normal outward.
func sideEnds(t *tent.Tent, side string) (a, b frame.Point) {
	length, width := t.Graph.Length.Metres(), t.Graph.Width.Metres()
	corners := []frame.Point{{}, {X: length}, {X: length, Y: width}, {Y: width}}
	at := map[string]int{"front": 0, "right": 1, "back": 2, "left": 3}[side]
	return corners[at], corners[(at+1)%4]
}

// blown is the load of one case on one tent: its roof, pressed or lifted by
// halves, and its closed sides, pressed to windward and sucked to leeward.
func (m *method) blown(s *surfaces, wind int, p pair) load {
	w := &winds[wind]
	total := load{share: make([]frame.Point, len(s.plan))}
	total.add(p.windward, &s.halves[w.axis][w.near])
	total.add(p.leeward, &s.halves[w.axis][1-w.near])
	total.add(-m.windward, s.walls[w.from])
	total.add(m.leeward, s.walls[job.Opposite(w.from)])
	return total
}

// angle is the slope of the planes that wind along an axis meets, in degrees;
// where none does, as at a gable, that of the others.
func angle(t *frame.Tent, axis int) float64 {
	found := 0.0
	for _, want := range []bool{true, false} {
		for _, plane := range t.Planes {
			normal, _, ok := flat(plane)
			faces := math.Abs(normal.X) > math.Abs(normal.Y)
			if ok && (faces == (axis == acrossLength)) == want {
				found = max(found, math.Atan2(math.Hypot(normal.X, normal.Y), math.Abs(normal.Z))*180/math.Pi)
			}
		}
		if found > 0 {
			break
		}
	}
	return found
}
