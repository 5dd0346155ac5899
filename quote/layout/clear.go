package layout

import (
	"cmp"
	"math"
	"slices"

	"tentwright/catalog"
)

// What a distance is measured to, as in catalog.Clearance.Plan and in the kinds
// of obstacles.
const (
	ToEdge     = "edge"
	ToBuilding = "building"
	ToVehicle  = "vehicle"
	ToTent     = "tent"
)

// Measured is the kinds of distances, in the order in which they are told.
var Measured = []string{ToEdge, ToBuilding, ToVehicle, ToTent}

// Distance is how far what is staked of a tent is from what should be clear of
// it. Of several tents of one line it is the shortest.
type Distance struct {
	Kind     string  // of Measured
	A, B     string  // id of the tent's line; of the other's, the obstacle or the side of the plot
	From, To string  // as people call them
	Is       float64 // metres; 0 where they touch or overlap
	Wanted   float64 // 0: the shop's code does not say
	Line     Segment // from the one to the other
}

// Short tells whether the distance is less than is wanted.
func (d *Distance) Short() bool { return d.Is < d.Wanted-Close }

// Reads is the distance as it is held against the one wanted: what is short by
// less than is read is not short.
func (d *Distance) Reads() float64 {
	if d.Short() {
		return d.Is
	}
	return max(d.Is, d.Wanted)
}

// wanted is the distances in metres that the code of the shop wants, by what
// they are measured to; the longest where it has several.
func wanted(c *catalog.Catalog) map[string]float64 {
	out := map[string]float64{}
	if c.Occupancy == nil {
		return out
	}
	for i := range c.Occupancy.Clearances {
		one := &c.Occupancy.Clearances[i]
		for _, kind := range one.Plan {
			out[kind] = max(out[kind], one.Distance.Metres())
		}
	}
	return out
}

// measurer finds the shortest distance between each two lines.
type measurer struct {
	want map[string]float64
	all  []Distance
	at   map[[3]string]int // of a kind and two ids
}

// distances measures from each tent to the edges of the plot, to buildings and
// vehicles on it and to the other tents that it does not share a gutter with.
// What is far enough and not the nearest of its kind is left out.
func (p *Plan) distances(want map[string]float64) {
	m := &measurer{want: want, at: map[[3]string]int{}}
	for i := range p.Tents {
		a := &p.Tents[i]
		if p.Given {
			m.edges(a, p)
		}
		for k := range p.Obstacles {
			m.obstacle(a, &p.Obstacles[k])
		}
		for k := i + 1; k < len(p.Tents); k++ {
			if b := &p.Tents[k]; a.Group != b.Group {
				m.tents(a, b)
			}
		}
	}
	p.Distances = m.worth()
}

// found takes a distance in if it is the shortest of its two.
func (m *measurer) found(one Distance) {
	key := [3]string{one.Kind, one.A, one.B}
	at, known := m.at[key]
	one.Wanted = m.want[one.Kind]
	if !known {
		m.at[key] = len(m.all)
		m.all = append(m.all, one)
	} else if one.Is < m.all[at].Is {
		m.all[at] = one
	}
}

func (m *measurer) edges(a *Tent, p *Plan) {
	low, high := a.Footprint.Box()
	middle := low.Plus(high).Times(0.5)
	for i, edge := range Rectangle(p.Low, p.High).sides() {
		away := edge.Outward()
		from := middle.Plus(away.Times(a.Footprint.reach(away) - middle.Dot(away)))
		is := max(0, edge.From.Dot(away)-a.Footprint.reach(away))
		name := [...]string{"front", "right", "back", "left"}[i]
		m.found(Distance{Kind: ToEdge, A: a.ID, B: name, From: a.Label(), To: name + " edge", Is: is, Line: Segment{from, from.Plus(away.Times(is))}})
	}
}

func (m *measurer) obstacle(a *Tent, o *Obstacle) {
	if o.Kind != ToBuilding && o.Kind != ToVehicle {
		return
	}
	line := closest(a.Footprint, o.Area)
	if o.Radius > 0 {
		line = closest(a.Footprint, Polygon{o.Middle})
		long := line.Length()
		line.To = line.Along(max(0, long-o.Radius) / max(long, Close))
	}
	m.found(Distance{Kind: o.Kind, A: a.ID, B: o.Name, From: a.Label(), To: o.Name, Is: line.Length(), Line: line})
}

func (m *measurer) tents(a, b *Tent) {
	if at, known := m.at[[3]string{ToTent, a.ID, b.ID}]; known && a.staked.apart(b.staked) >= m.all[at].Is {
		return // boxes are never farther apart than what is in them
	}
	line := closest(a.Footprint, b.Footprint)
	m.found(Distance{Kind: ToTent, A: a.ID, B: b.ID, From: a.Label(), To: b.Label(), Is: line.Length(), Line: line})
}

// worth is the distances that people must know: those that are too short, and
// the shortest of each kind from each tent.
func (m *measurer) worth() []Distance {
	nearest := map[[2]string]float64{}
	ends := func(d *Distance) [][2]string {
		if d.Kind == ToTent {
			return [][2]string{{d.Kind, d.A}, {d.Kind, d.B}}
		}
		return [][2]string{{d.Kind, d.A}}
	}
	for i := range m.all {
		for _, end := range ends(&m.all[i]) {
			if is, known := nearest[end]; !known || m.all[i].Is < is {
				nearest[end] = m.all[i].Is
			}
		}
	}
	out := slices.DeleteFunc(m.all, func(d Distance) bool {
		return !d.Short() && !slices.ContainsFunc(ends(&d), func(end [2]string) bool { return d.Is <= nearest[end] })
	})
	slices.SortStableFunc(out, func(a, b Distance) int {
		return cmp.Compare(slices.Index(Measured, a.Kind), slices.Index(Measured, b.Kind))
	})
	return out
}

// closest is the shortest line from one area to another; without length where
// they overlap. The second may be a single point.
func closest(a, b Polygon) Segment {
	if len(b) > 2 && depth(a, b) > 0 || len(b) == 1 && a.holds(b[0]) {
		return Segment{b[0], b[0]}
	}
	best, least := Segment{}, math.Inf(1)
	look := func(from, sides Polygon, back bool) {
		for _, s := range sides.sides() {
			for _, p := range from {
				line := Segment{p, s.foot(p)}
				if l := line.Length(); l < least-1e-9 {
					best, least = line, l
					if back {
						best = Segment{line.To, line.From}
					}
				}
			}
		}
	}
	look(a, b, false)
	look(b, a, true)
	return best
}

// holds tells whether a point lies within an area.
func (g Polygon) holds(p Point) bool {
	for _, s := range g.sides() {
		if p.Minus(s.From).Dot(s.Outward()) > 0 {
			return false
		}
	}
	return true
}
