package layout

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// drawPolygon is any convex area of some size.
func drawPolygon(t *rapid.T, what string) Polygon {
	for {
		var points []Point
		for range rapid.IntRange(3, 9).Draw(t, what+" points") {
			points = append(points, drawPoint(t, what))
		}
		if g := hull(points); len(g) > 2 && size(g) > 1 {
			return g
		}
	}
}

func drawPoint(t *rapid.T, what string) Point {
	c := rapid.Float64Range(-10, 10)
	return Point{c.Draw(t, what+" x"), c.Draw(t, what+" y")}
}

// size is the area, by the shoelace formula.
func size(g Polygon) float64 {
	sum := 0.0
	for _, s := range g.sides() {
		sum += s.From.cross(s.To) / 2
	}
	return sum
}

// within tells whether a point lies in an area, by the sign of every turn.
func within(g Polygon, p Point) bool {
	for _, s := range g.sides() {
		if s.To.Minus(s.From).cross(p.Minus(s.From)) < -1e-9 {
			return false
		}
	}
	return true
}

// apartWhen tells whether an area moved by a way is clear of another, by the
// area that they have in common: none, or none to speak of.
func apartWhen(a, b Polygon, by Point) bool {
	moved := make(Polygon, len(a))
	for i, p := range a {
		moved[i] = p.Plus(by)
	}
	c := common(moved, b)
	return len(c) < 3 || size(c) < 1e-9
}

// A hull is convex, holds every point, and has only such points as corners.
func TestHull(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var points []Point
		for range rapid.IntRange(3, 12).Draw(t, "points") {
			points = append(points, drawPoint(t, "at"))
		}
		g := hull(points)
		for _, p := range points {
			if !within(g, p) {
				t.Fatalf("%v lies outside %v", p, g)
			}
		}
	})
}

// The depth is enough in some direction, and less is not enough in any of many.
func TestDepthIsTheShortestWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawPolygon(t, "a"), drawPolygon(t, "b")
		d := depth(a, b)
		const ways = 720
		enough := false
		for i := range ways {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / ways)
			way := Point{cos, sin}
			if d > 0.05 && apartWhen(a, b, way.Times(d*0.9)) {
				t.Fatalf("%v and %v are apart after %v toward %v, though the depth is %v", a, b, d*0.9, way, d)
			}
			// The right direction is missed by at most half a degree.
			enough = enough || apartWhen(a, b, way.Times(max(0, d)*1.01+0.05))
		}
		if !enough {
			t.Fatalf("%v and %v are not apart after %v in any direction", a, b, d)
		}
		if back := depth(b, a); math.Abs(back-d) > 1e-9 {
			t.Fatalf("depth is %v one way and %v the other", d, back)
		}
	})
}

// A circle is left by the depth, and by no less, as a polygon of many corners
// around it is.
func TestRoundDepth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g, at, r := drawPolygon(t, "area"), drawPoint(t, "middle"), rapid.Float64Range(0.5, 6).Draw(t, "radius")
		got := roundDepth(g, at, r)
		circle := make(Polygon, 720)
		for i := range circle {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / 720)
			circle[i] = at.Plus(Point{cos, sin}.Times(r))
		}
		if want := depth(g, circle); math.Abs(got-want) > 0.01 && (got > 0 || want > 0) {
			t.Fatalf("depth of a circle of %v at %v in %v is %v; by its corners %v", r, at, g, got, want)
		}
	})
}

// What two areas have in common is what lies in both.
func TestCommon(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawPolygon(t, "a"), drawPolygon(t, "b")
		c := common(a, b)
		if (len(c) > 2 && size(c) > 1e-6) != (depth(a, b) > 1e-6) && depth(a, b) > 1e-3 {
			t.Fatalf("%v and %v have %v in common, but overlap by %v", a, b, c, depth(a, b))
		}
		for _, p := range c {
			if !within(a, p.Plus(a.Middle().Minus(p).Times(1e-6))) || !within(b, p.Plus(b.Middle().Minus(p).Times(1e-6))) {
				t.Fatalf("%v is a corner of what %v and %v have in common", p, a, b)
			}
		}
	})
}
