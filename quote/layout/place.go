package layout

import (
	"math"

	"tentwright/catalog/unit"
	"tentwright/quote/job"
	"tentwright/quote/tent"
)

// block is tents that keep their places to each other: one tent, a group that
// shares gutters, or tents of one line that the job places as a row.
type block struct {
	tents []Tent // the origin is the front left corner of the one that is placed
	place *job.Place
}

// place puts all tents on the plot, in the order of the job: those with a place
// first, then the others where these leave room.
func (p *Plan) place(tents []tent.Tent) {
	blocks := blocksOf(tents)
	room := &room{high: p.High}
	for i := range p.Obstacles {
		low, high := p.Obstacles[i].Area.Box()
		room.obstacles = append(room.obstacles, box{low, high})
	}
	if !p.Given {
		room.high = strip(blocks)
	}
	for i := range blocks {
		if b := &blocks[i]; b.place != nil {
			b.move(quarters(b.place.Turn), Point{b.place.X.Metres(), b.place.Y.Metres()})
			room.take(b)
		}
	}
	for i := range blocks {
		if b := &blocks[i]; b.place == nil {
			room.find(b)
			room.take(b)
		}
	}
	for i := range blocks {
		for _, t := range blocks[i].tents {
			t.Group, t.ByHand, t.Number = i, blocks[i].place != nil, len(p.Tents)+1
			p.Tents = append(p.Tents, t)
		}
	}
}

// quarters is a turn of the job in quarters of a circle.
func quarters(turn string) int {
	return map[string]int{"90": 1, "180": 2, "270": 3}[turn]
}

// blocksOf gathers the tents of each group, and the copies of each line.
func blocksOf(tents []tent.Tent) []block {
	offsets := tent.Offsets(tents)
	var blocks []block
	index := map[int]int{} // of the group's block
	for i := range tents {
		t := &tents[i]
		one, at, many := standing(t), offsets[i], t.Job.Many()
		k, known := index[at.Group]
		switch {
		case many > 1:
			blocks = append(blocks, copies(one, t.Job.Place, many)...)
			continue
		case !known:
			k = len(blocks)
			index[at.Group] = k
			blocks = append(blocks, block{})
		}
		b := &blocks[k]
		b.tents = append(b.tents, one.moved(0, Point{at.X, at.Y}))
		if b.place == nil && t.Job.Place != nil {
			b.place = t.Job.Place
			// The others stand as seen from the one that is placed.
			b.move(0, Point{}.Minus(b.tents[len(b.tents)-1].At))
		} else if b.place != nil {
			last := &b.tents[len(b.tents)-1]
			*last = last.moved(0, b.origin(offsets, tents))
		}
	}
	return blocks
}

// origin is how far the group's frame was moved when a tent of it was placed.
func (b *block) origin(offsets []tent.Offset, tents []tent.Tent) Point {
	for i := range tents {
		if tents[i].Job.Place == b.place {
			return Point{-offsets[i].X, -offsets[i].Y}
		}
	}
	return Point{}
}

// copies is several tents of one line: a row along their front where the job
// places them, else each by itself.
func copies(one Tent, place *job.Place, many int) []block {
	low, high := one.Footprint.Box()
	pitch := high.X - low.X + Between.Metres()
	var row block
	var all []block
	for n := range many {
		one.Copy = n + 1
		row.tents = append(row.tents, one.moved(0, Point{float64(n) * pitch, 0}))
		all = append(all, block{tents: []Tent{one.moved(0, Point{})}})
	}
	if place == nil {
		return all
	}
	row.place = place
	return []block{row}
}

// move turns a block about its origin and moves it.
func (b *block) move(quarters int, by Point) {
	for i := range b.tents {
		b.tents[i] = b.tents[i].moved(quarters, by)
	}
}

// box is the upright rectangle around the footprints of a block.
type box struct{ low, high Point }

func (b *block) box() box {
	var all Polygon
	for i := range b.tents {
		all = append(all, b.tents[i].Footprint...)
	}
	low, high := all.Box()
	return box{low, high}
}

// strip is the ground for tents without a plot: as wide as makes it about one
// and a half times as wide as deep, and without an end to the back.
func strip(blocks []block) Point {
	area, widest := 0.0, 0.0
	for i := range blocks {
		b := blocks[i].box()
		wide, deep := b.high.X-b.low.X, b.high.Y-b.low.Y
		widest = max(widest, wide)
		area += (wide + Between.Metres()) * (deep + Between.Metres())
	}
	return Point{max(widest, math.Sqrt(1.5*area)), math.Inf(1)}
}

// room is what of the plot is taken already.
type room struct {
	high      Point // back right corner of the plot; the front left one is the origin
	taken     []box // by tents
	obstacles []box
	tried     map[[4]int64]Point // where a block of a size was put last: before that there is no room for another
}

// take marks the ground of a block as taken.
func (r *room) take(b *block) { r.taken = append(r.taken, b.box()) }

// find moves a block to where there is room: as it is or turned by a quarter,
// with the usual distance to edges and obstacles or, failing that, with none.
// Where there is no room at all it is put beyond the right edge.
func (r *room) find(b *block) {
	for _, edge := range []float64{Between.Metres(), 0} {
		for turn := range 2 {
			at := b.turnedBox(turn)
			if math.IsInf(r.high.Y, 1) {
				edge = 0
			}
			if to, ok := r.free(at.high.Minus(at.low), edge); ok {
				b.move(turn, Point{})
				b.move(0, to.Minus(at.low))
				return
			}
		}
	}
	at := b.box()
	b.move(0, r.beyond(at.high.Minus(at.low)).Minus(at.low))
}

// beyond is the first place beside the plot for something of a size: along the
// right edge from the front, and then farther out.
func (r *room) beyond(size Point) Point {
	for x := r.high.X; ; {
		next := math.Inf(1)
		for y := 0.0; y == 0 || y+size.Y <= r.high.Y; {
			right, back, ok := r.blocked(box{Point{x, y}, Point{x, y}.Plus(size)}, 0)
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
func (r *room) free(size Point, edge float64) (Point, bool) {
	var key [4]int64
	for i, f := range []float64{size.X, size.Y, edge} {
		key[i] = int64(unit.FromMetres(f))
	}
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
			right, back, ok := r.blocked(at, edge)
			if ok {
				if r.tried == nil {
					r.tried = map[[4]int64]Point{}
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
// first thing in the way ends, and how far to the back the nearest one does.
func (r *room) blocked(at box, edge float64) (right, back float64, ok bool) {
	right, back, ok = 0, math.Inf(1), true
	look := func(all []box, gap float64) {
		for _, o := range all {
			if at.low.X < o.high.X+gap-Close && at.high.X > o.low.X-gap+Close &&
				at.low.Y < o.high.Y+gap-Close && at.high.Y > o.low.Y-gap+Close {
				right, back, ok = max(right, o.high.X+gap), min(back, o.high.Y+gap), false
			}
		}
	}
	look(r.taken, Between.Metres())
	look(r.obstacles, edge)
	return right, back, ok
}
