package layout

import (
	"math"
	"slices"

	"tentwright/quote/tent"
)

// outward is the direction away from each side of a plan that is not turned.
var outward = map[string]Point{"front": {0, -1}, "right": {1, 0}, "back": {0, 1}, "left": {-1, 0}}

// standing draws one tent with its front left corner at the origin.
func standing(t *tent.Tent) Tent {
	g := t.Graph
	out := Tent{ID: t.Job.ID, Name: t.Label(), Size: t.Size.ID, Family: t.Family.Name, Length: g.Length.Metres(), Width: g.Width.Metres()}
	out.Outline = Rectangle(Point{}, Point{out.Length, out.Width})
	for i, line := range out.Outline.sides() {
		out.Sides = append(out.Sides, sideOf(t, g.Sides[i].Name, line))
	}
	for _, m := range g.Members {
		if m.Role == "ridge" || m.Role == "hip" || m.Role == "ridge-purlin" {
			a, b := g.Nodes[m.From].At, g.Nodes[m.To].At
			out.Ridges = append(out.Ridges, Segment{Point{a.X, a.Y}, Point{b.X, b.Y}})
		}
	}
	for _, n := range g.Nodes {
		if n.Role == "pole-foot" {
			out.Poles = append(out.Poles, Point{n.At.X, n.At.Y})
		}
	}
	out.peaks(t)
	out.hold(t)
	out.Footprint = hull(append(slices.Clone(out.Outline), out.Stakes...))
	return out
}

// peaks draws the ridge of a tent that hangs between centre poles: from peak to
// peak, and from the outer ones to the corners.
func (out *Tent) peaks(t *tent.Tent) {
	var peaks []Point
	for _, n := range t.Graph.Nodes {
		if n.Role == "peak" {
			peaks = append(peaks, Point{n.At.X, n.At.Y})
		}
	}
	if len(peaks) == 0 {
		return
	}
	first, last := peaks[0], peaks[len(peaks)-1]
	if first != last {
		out.Ridges = append(out.Ridges, Segment{first, last})
	}
	c := out.Outline
	out.Ridges = append(out.Ridges, Segment{c[0], first}, Segment{c[1], last}, Segment{c[2], last}, Segment{c[3], first})
}

// sideOf is how one side of the plan is closed and held.
func sideOf(t *tent.Tent, name string, line Segment) Side {
	s := Side{Name: name, Line: line, Gutter: slices.Contains(t.Shared, name)}
	free := t.Ground == nil || !t.Ground.NoStakes
	s.NoStakes = free && !s.Gutter && !t.MayStake([]string{name})
	for i := range t.Walls {
		if w := &t.Walls[i]; w.Side == name {
			if w.Spec != nil {
				s.Wall = w.Spec.Kind
			}
			s.Exits = exits(t, w, line)
		}
	}
	return s
}

// exits stands the doors of a side in it: evenly spread, and then each moved to
// where no leg stands in it, if the space between two legs is wide enough.
func exits(t *tent.Tent, w *tent.Wall, line Segment) []Segment {
	long, doors := line.Length(), 0.0
	for _, d := range w.Doors {
		doors += d.Width.Metres()
	}
	legs := legsAlong(t, w.Side, line)
	gap := max(0, long-doors) / float64(len(w.Doors)+1)
	var out []Segment
	at, last := gap, 0.0
	for _, d := range w.Doors {
		wide := d.Width.Metres()
		from := between(legs, at, wide, last)
		out = append(out, Segment{line.Along(from / long), line.Along(min(1, (from+wide)/long))})
		at += wide + gap
		last = from + wide
	}
	return out
}

// legsAlong is how far along a side each of its legs stands, in order.
func legsAlong(t *tent.Tent, side string, line Segment) []float64 {
	var out []float64
	for _, leg := range t.Graph.Legs() {
		if slices.Contains(leg.Sides, side) {
			at := t.Graph.Nodes[leg.Node].At
			out = append(out, Point{at.X, at.Y}.Minus(line.From).Length())
		}
	}
	slices.Sort(out)
	return out
}

// between is the start of a door next to where it is wanted that has no leg in
// it and lies behind the last door; where there is none, as near as may be.
func between(legs []float64, wanted, wide, last float64) float64 {
	best, off := max(wanted, last), math.Inf(1)
	for i := 1; i < len(legs); i++ {
		low, high := max(legs[i-1], last), legs[i]-wide
		if low > high+Close {
			continue
		}
		from := min(max(wanted, low), max(low, high))
		if d := math.Abs(from - wanted); d < off-Close {
			best, off = from, d
		}
	}
	return best
}

// hold marks what holds each leg, as planned: stakes at the end of a guy straight
// out from each side that it stands on and that takes stakes, as far as the
// family's custom has it, and ballast at the foot. Base plates that have no guy,
// and feet from which none may run, are staked where they stand.
func (out *Tent) hold(t *tent.Tent) {
	far, held := t.Graph.Out.Metres(), t.Legs
	if len(held) == 0 {
		held = t.Customary().Legs
	}
	number := map[int]int{}
	for n, i := range t.Walk() {
		number[i] = n + 1
	}
	for i, leg := range t.Graph.Legs() {
		at, sides := t.Graph.Nodes[leg.Node].At, leg.Sides
		one := Leg{At: Point{at.X, at.Y}, Number: number[i], Corner: leg.Corner, Stakes: held[i].Stakes, Ballast: held[i].Ballast}
		for _, side := range sides {
			one.Out = one.Out.Plus(outward[side])
		}
		if long := one.Out.Length(); long > 0 {
			one.Out = one.Out.Times(1 / long)
		}
		out.Legs = append(out.Legs, one)
		if one.Ballast > 0 {
			out.Ballast = append(out.Ballast, one.At)
		}
		free := slices.DeleteFunc(slices.Clone(sides), func(side string) bool { return !t.MayStake([]string{side}) })
		out.stake(&one, free[:min(len(free), one.Stakes)], far)
	}
}

// stake drives the stakes of a leg, as far out from it at each of some sides.
func (out *Tent) stake(leg *Leg, sides []string, far float64) {
	switch {
	case leg.Stakes == 0:
	case far == 0 || len(sides) == 0:
		out.Stakes = append(out.Stakes, leg.At)
	default:
		for _, side := range sides {
			at := leg.At.Plus(outward[side].Times(far))
			out.Stakes = append(out.Stakes, at)
			out.Guys = append(out.Guys, Segment{leg.At, at})
		}
	}
}

// moved is the tent turned by quarters of a circle about the origin and then
// moved.
func (t Tent) moved(quarters int, by Point) Tent {
	point := func(p Point) Point { return p.turned(quarters).Plus(by) }
	points := func(all []Point) []Point {
		out := make([]Point, len(all))
		for i, p := range all {
			out[i] = point(p)
		}
		return out
	}
	segments := func(all []Segment) []Segment {
		out := make([]Segment, len(all))
		for i, s := range all {
			out[i] = Segment{point(s.From), point(s.To)}
		}
		return out
	}
	t.At, t.Turn = point(t.At), (t.Turn+90*quarters)%360
	t.Outline, t.Footprint = points(t.Outline), points(t.Footprint)
	t.Ridges, t.Guys = segments(t.Ridges), segments(t.Guys)
	t.Poles, t.Stakes, t.Ballast = points(t.Poles), points(t.Stakes), points(t.Ballast)
	t.Legs = slices.Clone(t.Legs)
	for i := range t.Legs {
		t.Legs[i].At, t.Legs[i].Out = point(t.Legs[i].At), t.Legs[i].Out.turned(quarters)
	}
	t.Sides = slices.Clone(t.Sides)
	for i := range t.Sides {
		s := &t.Sides[i]
		s.Line, s.Exits = Segment{point(s.Line.From), point(s.Line.To)}, segments(s.Exits)
	}
	return t
}
