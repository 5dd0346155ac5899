package power

import (
	"fmt"

	"tentwright/catalog"
	"tentwright/catalog/money"
)

// line is boxes of a kind with the feeders to them.
type line struct {
	box     *catalog.Box
	feeder  *catalog.Cable
	boxes   int
	on      []int        // the box of each circuit, counted from 1
	lengths int          // of each run
	fullest money.Number // VA of the heaviest leg of any box
	amps    money.Number
	ohms    money.Number
	drop    money.Number
	carries bool // boxes and feeders carry the current for hours
	near    bool // it loses no more voltage than a feeder may
	owned   bool
	price   money.Number // of what is not ordered
}

// mostRuns is how many times the fewest boxes are tried, each with a feeder of
// its own, to lose less voltage.
const mostRuns = 4

// boxes takes the boxes and feeders that carry the load at the least price
// beyond what is ordered and lose no more voltage than a feeder may; where none
// do, those that the yard owns and lose least.
func (b *builder) boxes(s *Supply) {
	var best *line
	for i := range b.p.Boxes {
		for k := range b.p.Feeders {
			if b.p.Boxes[i].Plug != b.p.Feeders[k].Plug {
				continue
			}
			for _, x := range b.lines(s, &b.p.Boxes[i], &b.p.Feeders[k]) {
				if best == nil || x.better(best) {
					best = &x
				}
			}
		}
	}
	if best == nil {
		b.asked("a box and a feeder with the same plug (boxes and feeders of power.yaml)")
		return
	}
	b.run(s, best)
	b.bringOwned(s.Box.Item, money.Int(s.Boxes).Sub(b.ordered(s.Box.Item)), fmt.Sprintf("for %d circuits", len(s.Circuits)))
	b.bringOwned(s.Feeder.Item, money.Int(s.Boxes*s.Lengths).Sub(b.ordered(s.Feeder.Item)), fmt.Sprintf("for %s %s to the farthest tent", s.Distance, b.sys.LengthUnit()))
}

// run writes down the line that was taken.
func (b *builder) run(s *Supply, x *line) {
	s.Box, s.Boxes, s.Feeder, s.Lengths, s.Ohms = x.box, x.boxes, x.feeder, x.lengths, x.ohms
	for i, box := range x.on {
		s.Circuits[i].Box = box
	}
	s.BoxShare, s.Amps, s.Run = money.DivRound(x.fullest, b.r.VA, 6), x.amps, x.drop
	s.Alike = DropPercent(s.Legs, b.way(x), x.amps, x.ohms, s.Line)
}

// way is the length of a run.
func (b *builder) way(x *line) money.Number { return x.feeder.Length.Mul(money.Int(x.lengths)) }

// lines tries the fewest boxes of a kind that have the circuits, and more of
// them while they carry too little or lose too much: never more than there are
// circuits, since a circuit hangs on one box and its current on one feeder.
func (b *builder) lines(s *Supply, box *catalog.Box, feeder *catalog.Cable) []line {
	var list []line
	least := 0 // that carry the current
	for n := money.RoundUp(money.Int(len(s.Circuits)).Div(money.Int(box.Circuits))); n <= len(s.Circuits); n++ {
		if least > 0 && n > mostRuns*least {
			break
		}
		x := b.line(s, box, feeder, n)
		if list = append(list, x); !x.carries {
			continue
		}
		if least == 0 {
			least = n
		}
		if x.near {
			break // more of them only cost more
		}
	}
	return list
}

// line works out so many boxes of a kind with one kind of feeder.
func (b *builder) line(s *Supply, box *catalog.Box, feeder *catalog.Cable, boxes int) line {
	x := line{box: box, feeder: feeder, boxes: boxes, ohms: b.p.Conductor(feeder.Gauge).Ohms}
	x.lengths = money.RoundUp(s.Distance.Div(feeder.Length))
	x.on, x.fullest = hang(s.Circuits, boxes, box.Circuits)
	share := money.DivRound(x.fullest, b.r.VA, 6) // as a cell of the workbook has it
	x.amps = money.DivRound(money.Round(b.r.VA.Mul(share), 1), b.p.Circuit.Volts, 2)
	x.drop = DropPercent(1, b.way(&x), x.amps, x.ohms, b.p.Circuit.Volts)
	short := func(item string, need int) int { return money.RoundUp(money.Int(need).Sub(b.ordered(item))) }
	moreBoxes, moreFeeders := short(box.Item, boxes), short(feeder.Item, boxes*x.lengths)
	d := b.p.Drop
	x.carries = x.amps.LessThanOrEqual(b.p.Circuit.Lasting(box.Amps)) && x.amps.LessThanOrEqual(b.p.Circuit.Lasting(feeder.Amps))
	x.near = d == nil || x.drop.LessThanOrEqual(d.Whole.Sub(d.Branch))
	x.owned = b.owns(box.Item, moreBoxes) && b.owns(feeder.Item, moreFeeders)
	x.price = b.price(box.Item).Mul(money.Int(moreBoxes)).Add(b.price(feeder.Item).Mul(money.Int(moreFeeders)))
	return x
}

// hang puts circuits on boxes with so many sockets each, the largest first onto
// the box whose same leg carries least; it gives the box of each circuit and the
// load of the heaviest leg of any box.
func hang(list []Circuit, boxes, sockets int) (on []int, fullest money.Number) {
	on, fullest = make([]int, len(list)), money.Zero
	used, carried := make([]int, boxes), map[[2]int]money.Number{}
	for _, i := range largestFirst(list) {
		at := func(box int) [2]int { return [2]int{box, list[i].Leg} }
		least := -1
		for box := range boxes {
			if used[box] < sockets && (least < 0 || carried[at(box)].LessThan(carried[at(least)])) {
				least = box
			}
		}
		on[i] = least + 1
		used[least]++
		sum := carried[at(least)].Add(list[i].VA)
		carried[at(least)] = sum
		if sum.GreaterThan(fullest) {
			fullest = sum
		}
	}
	return on, fullest
}

// owns tells whether the yard has so many more of an item than are ordered.
func (b *builder) owns(item string, many int) bool {
	most := b.most(item)
	return most < 0 || many <= most
}

// better tells whether a line is to be preferred: one that carries the current;
// of those one that fits, the cheaper first; else one that the yard owns; then
// the one that loses less.
func (x *line) better(o *line) bool {
	fits, other := x.near && x.owned, o.near && o.owned
	switch {
	case x.carries != o.carries:
		return x.carries
	case fits != other:
		return fits
	case x.owned != o.owned:
		return x.owned
	case !fits:
		return x.drop.LessThan(o.drop)
	case !x.price.Equal(o.price):
		return x.price.LessThan(o.price)
	}
	return x.drop.LessThan(o.drop)
}

// cords plans one for each circuit; those of every kind that are ordered count.
func (b *builder) cords(s *Supply) {
	s.Whole = s.Run
	if len(b.p.Cords) == 0 {
		return
	}
	s.Cord = &b.p.Cords[0]
	amps := money.DivRound(s.Largest, b.p.Circuit.Volts, 2)
	s.Branch = DropPercent(1, s.Cord.Length, amps, b.p.Conductor(s.Cord.Gauge).Ohms, b.p.Circuit.Volts)
	s.Whole = s.Run.Add(s.Branch)
	have := money.Zero
	for i := range b.p.Cords {
		have = have.Add(b.ordered(b.p.Cords[i].Item))
	}
	b.bringOwned(s.Cord.Item, money.Int(len(s.Circuits)).Sub(have), "one for each circuit")
}

// bringOwned plans more of an item, but no more than the yard owns.
func (b *builder) bringOwned(item string, many money.Number, why string) {
	if most := b.most(item); most >= 0 && many.GreaterThan(money.Int(most)) {
		many = money.Int(most)
	}
	b.bring(item, many, why)
}
