package frame

import (
	"math"
	"slices"
)

// drawing is the roof of a hip frame seen from above: a planar drawing whose
// faces are found by walking round them.
type drawing struct {
	at    []Point
	next  map[[2]int][2]int // the edge that follows an edge round its face
	edges [][2]int
}

// roofDrawing takes the members that lie in the roof; feet drop out.
func roofDrawing(tent *Tent) drawing {
	d := drawing{next: map[[2]int][2]int{}}
	round := map[int][]int{} // neighbours of each node
	for _, n := range tent.Nodes {
		d.at = append(d.at, n.At)
	}
	for _, m := range tent.Members {
		if m.Role != "leg" {
			d.edges = append(d.edges, [2]int{m.From, m.To})
			round[m.From] = append(round[m.From], m.To)
			round[m.To] = append(round[m.To], m.From)
		}
	}
	for v, near := range round {
		slices.SortFunc(near, func(a, b int) int {
			if d.angle(v, a) < d.angle(v, b) {
				return -1
			}
			return 1
		})
		for i, u := range near {
			// Arriving from u, the walk leaves by the neighbour before it.
			d.next[[2]int{u, v}] = [2]int{v, near[(i+len(near)-1)%len(near)]}
		}
	}
	return d
}

func (d *drawing) angle(from, to int) float64 {
	return math.Atan2(d.at[to].Y-d.at[from].Y, d.at[to].X-d.at[from].X)
}

// faces walks round every face; the one outside is among them.
func (d *drawing) faces() [][]int {
	var all [][]int
	seen := map[[2]int]bool{}
	for _, edge := range d.edges {
		for _, start := range [][2]int{edge, {edge[1], edge[0]}} {
			var face []int
			for at := start; !seen[at]; at = d.next[at] {
				seen[at] = true
				face = append(face, at[0])
			}
			if len(face) > 0 {
				all = append(all, face)
			}
		}
	}
	return all
}

// corners is how many nodes have an edge.
func (d *drawing) corners() int {
	on := map[int]bool{}
	for _, e := range d.edges {
		on[e[0]], on[e[1]] = true, true
	}
	return len(on)
}

// turn is twice the signed area of a triangle seen from above.
func turn(a, b, c Point) float64 { return (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X) }

// crossing finds two edges that meet elsewhere than at a node.
func (d *drawing) crossing() (a, b [2]int, found bool) {
	for i, e := range d.edges {
		for _, f := range d.edges[:i] {
			if d.meet(e, f) {
				return e, f, true
			}
		}
	}
	return a, b, false
}

func (d *drawing) meet(e, f [2]int) bool {
	p, q, r, s := d.at[e[0]], d.at[e[1]], d.at[f[0]], d.at[f[1]]
	for _, end := range f {
		if end == e[0] || end == e[1] {
			// Edges with a common end overlap only if they leave it alike.
			from, other := end, e[0]+e[1]-end
			return math.Abs(d.angle(from, other)-d.angle(from, f[0]+f[1]-end)) < tiny
		}
	}
	if max(p.X, q.X) < min(r.X, s.X)-tiny || max(r.X, s.X) < min(p.X, q.X)-tiny ||
		max(p.Y, q.Y) < min(r.Y, s.Y)-tiny || max(r.Y, s.Y) < min(p.Y, q.Y)-tiny {
		return false
	}
	return turn(p, q, r)*turn(p, q, s) <= tiny && turn(r, s, p)*turn(r, s, q) <= tiny
}

// covered is the area in space of the faces but the one outside, which is
// walked round the other way.
func (d *drawing) covered() float64 {
	sum := 0.0
	for _, face := range d.faces() {
		plan, area := 0.0, 0.0
		for i := 1; i+1 < len(face); i++ {
			a, b, c := d.at[face[0]], d.at[face[i]], d.at[face[i+1]]
			plan += turn(a, b, c)
			area += heron(a, b, c)
		}
		if plan > 0 {
			sum += area
		}
	}
	return sum
}

// heron is the area of a triangle from its three sides.
func heron(a, b, c Point) float64 {
	x, y, z := apart(a, b), apart(b, c), apart(c, a)
	h := (x + y + z) / 2
	return math.Sqrt(max(0, h*(h-x)*(h-y)*(h-z)))
}

func apart(a, b Point) float64 {
	return math.Sqrt((a.X-b.X)*(a.X-b.X) + (a.Y-b.Y)*(a.Y-b.Y) + (a.Z-b.Z)*(a.Z-b.Z))
}
