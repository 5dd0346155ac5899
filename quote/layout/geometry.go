package layout

import (
	"cmp"
	"math"
	"slices"
)

// Point is a place on the plot in metres: x to the right, y to the back.
type Point struct{ X, Y float64 }

// Segment is a straight line between two points.
type Segment struct{ From, To Point }

// Polygon is the corners of a convex area, against the clock.
type Polygon []Point

// Close is how far things may reach into each other and still only touch, in
// metres: what is read in half inches is not to be found wanting by rounding.
const Close = 0.005

// Plus is the point moved by another.
func (p Point) Plus(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Minus is the way from q to the point.
func (p Point) Minus(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Times is the point as a way, so many times as long.
func (p Point) Times(f float64) Point { return Point{p.X * f, p.Y * f} }

// Dot is the product of two ways; 0 at a right angle.
func (p Point) Dot(q Point) float64 { return p.X*q.X + p.Y*q.Y }

// cross is positive where q turns against the clock from p.
func (p Point) cross(q Point) float64 { return p.X*q.Y - p.Y*q.X }

// Length is how long the point is as a way.
func (p Point) Length() float64 { return math.Hypot(p.X, p.Y) }

// Length is the distance between the ends.
func (s Segment) Length() float64 { return s.To.Minus(s.From).Length() }

// Along is the point at a share of the way, 0 at the start and 1 at the end.
func (s Segment) Along(t float64) Point { return s.From.Plus(s.To.Minus(s.From).Times(t)) }

// Outward is the direction away from an area that the segment bounds, of
// length 1: corners run against the clock, so it is to the right.
func (s Segment) Outward() Point {
	d := s.To.Minus(s.From)
	return Point{d.Y, -d.X}.Times(1 / d.Length())
}

// Rectangle is the upright rectangle between two opposite corners.
func Rectangle(low, high Point) Polygon {
	return Polygon{low, {high.X, low.Y}, high, {low.X, high.Y}}
}

// hull is the smallest convex area with all points in it (monotone chain).
func hull(points []Point) Polygon {
	sorted := slices.Clone(points)
	slices.SortFunc(sorted, func(a, b Point) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
	sorted = slices.Compact(sorted)
	half := func() []Point {
		var chain []Point
		for _, p := range sorted {
			for len(chain) > 1 && chain[len(chain)-1].Minus(chain[len(chain)-2]).cross(p.Minus(chain[len(chain)-1])) <= 0 {
				chain = chain[:len(chain)-1]
			}
			chain = append(chain, p)
		}
		return chain[:len(chain)-1]
	}
	below := half()
	slices.Reverse(sorted)
	return append(Polygon(below), half()...)
}

// sides is the edges of an area.
func (g Polygon) sides() []Segment {
	out := make([]Segment, len(g))
	for i := range g {
		out[i] = Segment{g[i], g[(i+1)%len(g)]}
	}
	return out
}

// Box is the two corners of the upright rectangle around an area.
func (g Polygon) Box() (low, high Point) {
	low, high = g[0], g[0]
	for _, p := range g[1:] {
		low, high = Point{min(low.X, p.X), min(low.Y, p.Y)}, Point{max(high.X, p.X), max(high.Y, p.Y)}
	}
	return low, high
}

// Middle is the mean of the corners.
func (g Polygon) Middle() Point {
	var sum Point
	for _, p := range g {
		sum = sum.Plus(p)
	}
	return sum.Times(1 / float64(len(g)))
}

// reach is the farthest that an area goes in a direction.
func (g Polygon) reach(way Point) float64 {
	far := math.Inf(-1)
	for _, p := range g {
		far = max(far, p.Dot(way))
	}
	return far
}

// depth is the shortest way by which one of two areas must be moved until they
// only touch; 0 or less where they are apart. Of convex areas that way is at a
// right angle to a side of one of them (separating axis).
func depth(a, b Polygon) float64 {
	least := math.Inf(1)
	for _, side := range append(a.sides(), b.sides()...) {
		n := side.Outward()
		back := n.Times(-1)
		least = min(least, a.reach(n)+b.reach(back), a.reach(back)+b.reach(n))
	}
	return least
}

// roundDepth is depth for an area and a circle.
func roundDepth(g Polygon, middle Point, radius float64) float64 {
	inside := math.Inf(1)
	for _, side := range g.sides() {
		inside = min(inside, side.From.Minus(middle).Dot(side.Outward()))
	}
	if inside >= 0 {
		return radius + inside
	}
	return radius - nearest(g, middle)
}

// nearest is how far a point outside an area is from it.
func nearest(g Polygon, p Point) float64 {
	least := math.Inf(1)
	for _, s := range g.sides() {
		least = min(least, s.from(p))
	}
	return least
}

// from is the distance of a point from a segment.
func (s Segment) from(p Point) float64 { return p.Minus(s.foot(p)).Length() }

// foot is the point of a segment that is nearest to another.
func (s Segment) foot(p Point) Point {
	d := s.To.Minus(s.From)
	t := 0.0
	if l := d.Dot(d); l > 0 {
		t = min(1, max(0, p.Minus(s.From).Dot(d)/l))
	}
	return s.Along(t)
}

// common is the area that two have in common; none where they do not overlap
// (each side of the second cuts off what lies beyond it).
func common(a, b Polygon) Polygon {
	out := a
	for _, s := range b.sides() {
		out = out.cut(s.From, s.Outward())
	}
	return out
}

// cut leaves what lies on the inner side of a line, given by a point on it and
// the direction away from what is left.
func (g Polygon) cut(at, away Point) Polygon {
	var out Polygon
	for _, s := range g.sides() {
		from, to := s.From.Minus(at).Dot(away), s.To.Minus(at).Dot(away)
		if from <= 0 {
			out = append(out, s.From)
		}
		if from < 0 && to > 0 || from > 0 && to < 0 {
			out = append(out, s.Along(from/(from-to)))
		}
	}
	return out
}

// Circle is a regular area of many corners drawn round a circle: what meets the
// circle meets it too, and it touches the circle at its four outermost points.
func Circle(middle Point, radius float64) Polygon {
	const corners = 36 // a multiple of 4
	out := make(Polygon, corners)
	far := radius / math.Cos(math.Pi/corners)
	for i := range out {
		sin, cos := math.Sincos(2 * math.Pi * (float64(i) + 0.5) / corners)
		out[i] = middle.Plus(Point{cos, sin}.Times(far))
	}
	return out
}

// turned is the point turned about the origin by quarters of a circle, against
// the clock, without rounding.
func (p Point) turned(quarters int) Point {
	for range quarters {
		p = Point{-p.Y, p.X}
	}
	return p
}
