package layout

import (
	"math"
	"slices"

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
func (p *Plan) place(tents []tent.Tent, want map[string]float64) {
	blocks := p.blocksOf(tents, want)
	room := &room{high: p.High}
	for i := range p.Obstacles {
		low, high := p.Obstacles[i].Area.Box()
		room.obstacles = append(room.obstacles, obstacleBox{box{low, high}, p.Obstacles[i].Kind})
	}
	if !p.Given {
		room.high = strip(blocks, max(want[ToTent], Between.Metres()))
	}
	var free []*block
	for i := range blocks {
		if b := &blocks[i]; b.place != nil {
			b.move(quarters(b.place.Turn), Point{b.place.X.Metres(), b.place.Y.Metres()})
			room.take(b.box())
		} else {
			free = append(free, b)
		}
	}
	room.pack(free, want)
	group := 0
	for i := range blocks {
		group++
		for _, t := range blocks[i].tents {
			if t.Copy > 1 {
				group++ // one of a row, not joined with the others
			}
			low, high := t.Footprint.Box()
			t.Group, t.ByHand, t.Number, t.staked = group, blocks[i].place != nil, len(p.Tents)+1, box{low, high}
			p.Tents = append(p.Tents, t)
		}
	}
}

// quarters is a turn of the job in quarters of a circle.
func quarters(turn string) int {
	return map[string]int{"90": 1, "180": 2, "270": 3}[turn]
}

// blocksOf gathers the tents of each group, and the copies of each line.
func (p *Plan) blocksOf(tents []tent.Tent, want map[string]float64) []block {
	offsets := tent.Offsets(tents)
	var blocks []block
	index := map[int]int{} // of the group's block
	for i := range tents {
		t := &tents[i]
		one, at, many := standing(t), offsets[i], t.Job.Many()
		k, known := index[at.Group]
		switch {
		case many > 1:
			blocks = append(blocks, p.copies(one, t.Job.Place, many, want[ToTent])...)
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
func (p *Plan) copies(one Tent, place *job.Place, many int, want float64) []block {
	if place != nil {
		// As far apart as is wanted, unless that is what takes the row off the plot.
		row := rowOf(one, place, many, max(want, Between.Metres()))
		moved := block{tents: slices.Clone(row.tents)}
		moved.move(quarters(place.Turn), Point{place.X.Metres(), place.Y.Metres()})
		if b := moved.box(); p.Given && !p.holds(Rectangle(b.low, b.high)) {
			row = rowOf(one, place, many, Between.Metres())
		}
		return []block{row}
	}
	var all []block
	for n := range many {
		one.Copy = n + 1
		all = append(all, block{tents: []Tent{one.moved(0, Point{})}})
	}
	return all
}

// rowOf is several tents alike in a row, with a distance between what is staked.
func rowOf(one Tent, place *job.Place, many int, apart float64) block {
	low, high := one.Footprint.Box()
	row := block{place: place}
	for n := range many {
		one.Copy = n + 1
		row.tents = append(row.tents, one.moved(0, Point{float64(n) * (high.X - low.X + apart), 0}))
	}
	return row
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
func strip(blocks []block, apart float64) Point {
	area, widest := 0.0, 0.0
	for i := range blocks {
		b := blocks[i].box()
		wide, deep := b.high.X-b.low.X, b.high.Y-b.low.Y
		widest = max(widest, wide)
		area += (wide + apart) * (deep + apart)
	}
	return Point{max(widest, math.Sqrt(1.5*area)), math.Inf(1)}
}
