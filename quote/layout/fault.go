package layout

import (
	"cmp"
	"fmt"
	"slices"
)

// Kinds of faults.
const (
	Overlap = "overlap"   // two roofs
	Stakes  = "footprint" // what is staked of two tents that are not joined
	Blocked = "obstacle"  // what is staked, over something on the plot
	Beyond  = "edge"      // what is staked, over the plot's edge
)

// Fault is what cannot stand as it is planned. Of several tents of one line it
// is the worst.
type Fault struct {
	Kind    string
	A, B    string  // id of a tent's line, and of the other's, the obstacle or the side of the plot
	First   string  // the tent as people call it
	Second  string  // the other tent, obstacle or edge
	NoRoom  bool    // the job does not say where A stands, and nowhere is room
	Missing float64 // metres by which one must move at least
	Area    Polygon // that is taken twice, or lies beyond
}

// Words say what is wrong.
func (f *Fault) Words() string {
	switch f.Kind {
	case Overlap:
		return fmt.Sprintf("roofs of %s and %s overlap", f.First, f.Second)
	case Stakes:
		return fmt.Sprintf("stakes of %s and %s overlap", f.First, f.Second)
	case Blocked:
		return fmt.Sprintf("%s stands over %s", f.First, f.Second)
	}
	if f.NoRoom {
		return fmt.Sprintf("no room for %s: beyond the %s edge", f.First, f.Second)
	}
	return fmt.Sprintf("%s beyond the %s edge", f.First, f.Second)
}

// faults finds all that overlaps, stands over an obstacle or reaches beyond the
// edge, in the order of the tents.
func (p *Plan) faults() {
	f := finder{worst: map[[3]string]int{}}
	for i := range p.Tents {
		a := &p.Tents[i]
		for k := i + 1; k < len(p.Tents); k++ {
			f.pair(a, &p.Tents[k])
		}
		for k := range p.Obstacles {
			f.obstacle(a, &p.Obstacles[k])
		}
		if p.Given {
			f.edges(a, p)
		}
	}
	p.Faults = f.all
	rank := map[string]int{Overlap: 0, Stakes: 1, Blocked: 2, Beyond: 3}
	slices.SortStableFunc(p.Faults, func(a, b Fault) int { return cmp.Compare(rank[a.Kind], rank[b.Kind]) })
}

// finder keeps the worst fault of each kind between two lines of tents.
type finder struct {
	all   []Fault
	worst map[[3]string]int
}

// found takes a fault in, unless it is within what is read.
func (f *finder) found(one Fault, area func() Polygon) {
	if one.Missing <= Close {
		return
	}
	key := [3]string{one.Kind, one.A, one.B}
	at, known := f.worst[key]
	if known && f.all[at].Missing >= one.Missing {
		return
	}
	one.Area = area()
	if known {
		f.all[at] = one
		return
	}
	f.worst[key] = len(f.all)
	f.all = append(f.all, one)
}

func (f *finder) pair(a, b *Tent) {
	// Most tents are far from each other; their boxes tell it at once.
	if !meet(a.Footprint, b.Footprint) {
		return
	}
	one := Fault{A: a.ID, B: b.ID, First: a.Label(), Second: b.Label()}
	one.Kind, one.Missing = Overlap, depth(a.Outline, b.Outline)
	f.found(one, func() Polygon { return common(a.Outline, b.Outline) })
	if a.Group == b.Group {
		return
	}
	one.Kind, one.Missing = Stakes, depth(a.Footprint, b.Footprint)
	f.found(one, func() Polygon { return common(a.Footprint, b.Footprint) })
}

// meet tells whether the boxes of two areas overlap.
func meet(a, b Polygon) bool {
	aLow, aHigh := a.Box()
	bLow, bHigh := b.Box()
	return aLow.X < bHigh.X && bLow.X < aHigh.X && aLow.Y < bHigh.Y && bLow.Y < aHigh.Y
}

func (f *finder) obstacle(t *Tent, o *Obstacle) {
	if !meet(t.Footprint, o.Area) {
		return
	}
	one := Fault{Kind: Blocked, A: t.ID, B: o.Name, First: t.Label(), Second: o.Name, Missing: depth(t.Footprint, o.Area)}
	if o.Radius > 0 {
		one.Missing = roundDepth(t.Footprint, o.Middle, o.Radius)
	}
	f.found(one, func() Polygon { return common(t.Footprint, o.Area) })
}

// edges looks at each edge by itself: a tent over a corner of the plot must
// move both ways. One that there is no room for stands beside the plot, which
// would have to be so much wider.
func (f *finder) edges(t *Tent, p *Plan) {
	for i, edge := range Rectangle(p.Low, p.High).sides() {
		if i != 1 && !t.ByHand {
			continue
		}
		name, away := [...]string{"front", "right", "back", "left"}[i], edge.Outward()
		one := Fault{Kind: Beyond, A: t.ID, B: name, First: t.Label(), Second: name, NoRoom: !t.ByHand,
			Missing: t.Footprint.reach(away) - edge.From.Dot(away)}
		f.found(one, func() Polygon { return t.Footprint.cut(edge.From, away.Times(-1)) })
	}
}
