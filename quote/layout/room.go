package layout

import (
	"math"

	"tentwright/catalog/unit"
)

// room is what of the plot is taken already.
type room struct {
	high      Point // back right corner of the plot; the front left one is the origin
	taken     []box // by tents
	obstacles []obstacleBox
	tried     map[[3]int64]Point // where a block of a size was put last: before that there is no room for another
}

// obstacleBox is the ground of an obstacle of a kind.
type obstacleBox struct {
	box
	kind string
}

// spacing is the distances in metres that something is put at, by what they are
// measured to; other kinds of obstacles have that of "".
type spacing map[string]float64

// of is the distance to a kind of obstacle.
func (s spacing) of(kind string) float64 {
	if far, known := s[kind]; known {
		return far
	}
	return s[""]
}

// spacings is the distances to try, from what is wanted down to none to edges
// and obstacles.
func spacings(want map[string]float64) []spacing {
	usual, wide, none := Between.Metres(), spacing{}, spacing{}
	for _, kind := range append([]string{""}, Measured...) {
		wide[kind] = max(want[kind], usual)
	}
	none[ToTent] = usual
	return []spacing{wide, {"": usual, ToEdge: usual, ToTent: usual}, none}
}

// pack puts blocks where there is room: all with the distances wanted; failing
// that, each with the longest that there is room for; and if that leaves no room
// for one of them, with the usual distances.
func (r *room) pack(blocks []*block, want map[string]float64) {
	all := spacings(want)
	tries := [][]spacing{all[:1], all, all[1:]}
	if len(want) == 0 {
		tries = tries[2:]
	}
	for i, levels := range tries {
		now := room{high: r.high, taken: append([]box(nil), r.taken...), obstacles: r.obstacles}
		places, ok := now.fill(blocks, levels)
		if !ok && i < len(tries)-1 {
			continue
		}
		for k, b := range blocks {
			b.move(places[k].turn, Point{})
			b.move(0, places[k].by)
		}
		return
	}
}

// spot is how a block is moved to its place: turned by quarters, then along.
type spot struct {
	turn int
	by   Point
}

// fill finds a place for each block, and tells whether there is one on the plot.
func (r *room) fill(blocks []*block, levels []spacing) (places []spot, all bool) {
	all = true
	for _, b := range blocks {
		to, size, ok := r.find(b, levels)
		all = all && ok
		at := b.turnedBox(to.turn).low.Plus(to.by)
		r.take(box{at, at.Plus(size)})
		places = append(places, to)
	}
	return places, all
}

// take marks ground as taken.
func (r *room) take(b box) { r.taken = append(r.taken, b) }

// find is where there is room for a block: as it is or turned by a quarter, at
// the first distances of some for which there is. Where there is no room at all
// it is put beyond the right edge.
func (r *room) find(b *block, levels []spacing) (to spot, size Point, ok bool) {
	for level, far := range levels {
		for turn := range 2 {
			at := b.turnedBox(turn)
			size = at.high.Minus(at.low)
			if place, ok := r.free(size, level, far); ok {
				return spot{turn, place.Minus(at.low)}, size, true
			}
		}
	}
	at := b.box()
	size = at.high.Minus(at.low)
	return spot{0, r.beyond(size, levels[len(levels)-1]).Minus(at.low)}, size, false
}

// beyond is the first place beside the plot for something of a size: along the
// right edge from the front, and then farther out.
func (r *room) beyond(size Point, far spacing) Point {
	for x := r.high.X; ; {
		next := math.Inf(1)
		for y := 0.0; y == 0 || y+size.Y <= r.high.Y; {
			right, back, ok := r.blocked(box{Point{x, y}, Point{x, y}.Plus(size)}, far)
			if ok {
				return Point{x, y}
			}
			y, next = back, min(next, right)
		}
		x = next
	}
}

// turnedBox is the ground of a block after a turn about its origin.
func (b *block) turnedBox(turn int) box {
	now := b.box()
	g := Rectangle(now.low, now.high)
	for i := range g {
		g[i] = g[i].turned(turn)
	}
	low, high := g.Box()
	return box{low, high}
}

// free is the first place for something of a size, row by row from the front
// and along each row from the left. A row begins at the edge or behind what is
// taken, so that nothing is missed by steps.
func (r *room) free(size Point, level int, far spacing) (Point, bool) {
	edge := far[ToEdge]
	if math.IsInf(r.high.Y, 1) {
		edge = 0 // without a plot nothing is known of edges
	}
	key := [3]int64{int64(unit.FromMetres(size.X)), int64(unit.FromMetres(size.Y)), int64(level)}
	from, again := r.tried[key]
	if !again {
		from = Point{edge, edge}
	}
	for y := from.Y; y+size.Y <= r.high.Y-edge+Close; {
		x, next := edge, math.Inf(1)
		if again && y == from.Y {
			x = from.X
		}
		for x+size.X <= r.high.X-edge+Close {
			at := box{Point{x, y}, Point{x, y}.Plus(size)}
			right, back, ok := r.blocked(at, far)
			if ok {
				if r.tried == nil {
					r.tried = map[[3]int64]Point{}
				}
				r.tried[key] = at.low
				return at.low, true
			}
			x, next = right, min(next, back)
		}
		if math.IsInf(next, 1) {
			// Nothing in this row: one farther back has no more room across.
			return Point{}, false
		}
		y = next
	}
	return Point{}, false
}

// blocked tells whether a place is free; if not, how far to the right the
// farthest thing in the way ends, and how far to the back the nearest one does.
func (r *room) blocked(at box, far spacing) (right, back float64, ok bool) {
	right, back, ok = 0, math.Inf(1), true
	look := func(o box, gap float64) {
		if at.low.X < o.high.X+gap-Close && at.high.X > o.low.X-gap+Close &&
			at.low.Y < o.high.Y+gap-Close && at.high.Y > o.low.Y-gap+Close {
			right, back, ok = max(right, o.high.X+gap), min(back, o.high.Y+gap), false
		}
	}
	apart := far[ToTent]
	for i := range r.taken {
		look(r.taken[i], apart)
	}
	for i := range r.obstacles {
		look(r.obstacles[i].box, far.of(r.obstacles[i].kind))
	}
	return right, back, ok
}
