package anchor

import (
	"math"

	"tentwright/quote/frame"
)

// balanceUp sets the vertical part of each leg's reaction: what its share of the
// roof asks for, corrected by the smallest amounts, in the sum of their squares,
// that balance the lift and the overturning about both axes. The horizontal
// parts are known by then; each acts where the leg is held, at its rise.
func balanceUp(feet []foot, l *load, reactions []frame.Point) bool {
	// About the middle and over the size, so that the equations are of one order.
	var middle frame.Point
	for i := range feet {
		middle = plus(middle, scaled(1/float64(len(feet)), feet[i].at))
	}
	size := 0.0
	for i := range feet {
		size = max(size, math.Hypot(feet[i].at.X-middle.X, feet[i].at.Y-middle.Y))
	}
	about := minus(l.moment, cross(middle, l.force))
	want := [3]float64{-l.force.Z, about.Y / size, -about.X / size}
	var m [3][3]float64
	for i := range feet {
		f, r := &feet[i], &reactions[i]
		r.Z = -l.share[i].Z
		row := [3]float64{1, (f.at.X - middle.X) / size, (f.at.Y - middle.Y) / size}
		want[1] += f.rise * r.X / size
		want[2] += f.rise * r.Y / size
		for a := range row {
			want[a] -= row[a] * r.Z
			for b := range row {
				m[a][b] += row[a] * row[b]
			}
		}
	}
	by, ok := solve3(m, want)
	if !ok {
		return false
	}
	for i := range feet {
		at := feet[i].at
		reactions[i].Z += by[0] + by[1]*(at.X-middle.X)/size + by[2]*(at.Y-middle.Y)/size
	}
	return true
}
