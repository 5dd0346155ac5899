package anchor

import (
	"math"

	"tentwright/quote/frame"
)

// load is what a pressure of 1 does: the force on each leg by its share of the
// surface, and the resultant with its moment about the origin of the plan.
type load struct {
	share  []frame.Point
	force  frame.Point
	moment frame.Point
}

// add takes so many times another load in.
func (l *load) add(times float64, other *load) {
	if times == 0 || other == nil {
		return
	}
	for i, f := range other.share {
		l.share[i] = plus(l.share[i], scaled(times, f))
	}
	l.force = plus(l.force, scaled(times, other.force))
	l.moment = plus(l.moment, scaled(times, other.moment))
}

// spreader gives each piece of a surface to the leg that is nearest in plan.
type spreader struct {
	legs     []frame.Point
	one, two []frame.Point // kept between pieces, so that clipping allocates nothing
}

// spread loads the legs by the pressure of 1 on a flat, convex surface: toward
// its normal, or against it. It also adds the plan area under it to each leg.
func (s *spreader) spread(l *load, surface []frame.Point, toward float64, plan []float64) {
	for i := range s.legs {
		piece := s.piece(surface, i)
		normal, centre, ok := flat(piece)
		if !ok {
			continue
		}
		f := scaled(toward, normal)
		l.share[i] = plus(l.share[i], f)
		l.force = plus(l.force, f)
		l.moment = plus(l.moment, cross(centre, f))
		if plan != nil {
			plan[i] += math.Abs(normal.Z)
		}
	}
}

// piece is the part of a surface that is nearer to one leg than to any other.
func (s *spreader) piece(surface []frame.Point, leg int) []frame.Point {
	kept, next := append(s.one[:0], surface...), s.two
	a := s.legs[leg]
	for j, b := range s.legs {
		if j == leg || len(kept) == 0 {
			continue
		}
		// Nearer to a than to b: the difference of the squared distances is linear.
		x, y, c := 2*(b.X-a.X), 2*(b.Y-a.Y), a.X*a.X+a.Y*a.Y-b.X*b.X-b.Y*b.Y
		cut := false
		for _, p := range kept {
			if x*p.X+y*p.Y+c > 0 {
				cut = true
				break
			}
		}
		if cut {
			next = clip(next[:0], kept, x, y, c)
			kept, next = next, kept
		}
	}
	s.one, s.two = kept[:0], next[:0]
	return kept
}

// clip appends the part of a polygon where x*X + y*Y + c is at most zero.
func clip(into, polygon []frame.Point, x, y, c float64) []frame.Point {
	for i, p := range polygon {
		q := polygon[(i+1)%len(polygon)]
		dp, dq := x*p.X+y*p.Y+c, x*q.X+y*q.Y+c
		if dp <= 0 {
			into = append(into, p)
		}
		if (dp < 0 && dq > 0) || (dp > 0 && dq < 0) {
			t := dp / (dp - dq)
			into = append(into, plus(p, scaled(t, plus(q, scaled(-1, p)))))
		}
	}
	return into
}

// flat is the normal of a flat polygon, as long as its area is large, and the
// centre of its area; false where it has none.
func flat(p []frame.Point) (normal, centre frame.Point, ok bool) {
	if len(p) < 3 {
		return
	}
	for i := 1; i+1 < len(p); i++ {
		normal = plus(normal, scaled(0.5, cross(minus(p[i], p[0]), minus(p[i+1], p[0]))))
	}
	area := dot(normal, normal)
	if area <= 0 {
		return
	}
	for i := 1; i+1 < len(p); i++ {
		// The share of each triangle of the fan.
		part := dot(normal, scaled(0.5, cross(minus(p[i], p[0]), minus(p[i+1], p[0])))) / area
		centre = plus(centre, scaled(part/3, plus(p[0], plus(p[i], p[i+1]))))
	}
	return normal, centre, true
}

func plus(a, b frame.Point) frame.Point { return frame.Point{X: a.X + b.X, Y: a.Y + b.Y, Z: a.Z + b.Z} }
func minus(a, b frame.Point) frame.Point {
	return frame.Point{X: a.X - b.X, Y: a.Y - b.Y, Z: a.Z - b.Z}
}
func scaled(n float64, a frame.Point) frame.Point {
	return frame.Point{X: n * a.X, Y: n * a.Y, Z: n * a.Z}
}
func dot(a, b frame.Point) float64 { return a.X*b.X + a.Y*b.Y + a.Z*b.Z }
func cross(a, b frame.Point) frame.Point {
	return frame.Point{X: a.Y*b.Z - a.Z*b.Y, Y: a.Z*b.X - a.X*b.Z, Z: a.X*b.Y - a.Y*b.X}
}
