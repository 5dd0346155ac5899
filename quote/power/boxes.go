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
	lengths int // of each run
	amps    money.Number
	ohms    money.Number
	drop    money.Number
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
			least := b.fewest(s, &b.p.Boxes[i], &b.p.Feeders[k])
			for n := least; n <= mostRuns*least; n++ {
				x := b.line(s, &b.p.Boxes[i], &b.p.Feeders[k], n)
				if best == nil || x.better(best) {
					best = &x
				}
				if x.near {
					break // more of them only cost more
				}
			}
		}
	}
	if best == nil {
		b.missing("a box and a feeder with the same plug (boxes and feeders of power.yaml)")
		return
	}
	s.Box, s.Boxes, s.Feeder, s.Lengths, s.Amps, s.Ohms, s.Run = best.box, best.boxes, best.feeder, best.lengths, best.amps, best.ohms, best.drop
	b.bringOwned(s.Box.Item, money.Int(s.Boxes).Sub(b.ordered(s.Box.Item)), fmt.Sprintf("for %d circuits", len(s.Circuits)))
	b.bringOwned(s.Feeder.Item, money.Int(s.Boxes*s.Lengths).Sub(b.ordered(s.Feeder.Item)), fmt.Sprintf("for %s %s to the farthest tent", s.Distance, b.sys.LengthUnit()))
}

// fewest is how many boxes of a kind have the circuits, and carry the heaviest
// leg with their feeders.
func (b *builder) fewest(s *Supply, box *catalog.Box, feeder *catalog.Cable) int {
	carried := box.Amps
	if feeder.Amps.LessThan(carried) {
		carried = feeder.Amps
	}
	carried = carried.Mul(money.Percent(b.p.Circuit.Continuous))
	return max(1, money.RoundUp(money.Int(len(s.Circuits)).Div(money.Int(box.Circuits))),
		money.RoundUp(s.Heaviest.Div(b.p.Circuit.Volts).Div(carried)))
}

// line works out so many boxes of a kind with one kind of feeder.
func (b *builder) line(s *Supply, box *catalog.Box, feeder *catalog.Cable, boxes int) line {
	x := line{box: box, feeder: feeder, boxes: boxes, ohms: b.p.Conductor(feeder.Gauge).Ohms}
	x.lengths = money.RoundUp(s.Distance.Div(feeder.Length))
	x.amps = money.DivRound(s.Heaviest, b.p.Circuit.Volts.Mul(money.Int(boxes)), 2)
	x.drop = DropPercent(s.Legs, feeder.Length.Mul(money.Int(x.lengths)), x.amps, x.ohms, s.Line)
	short := func(item string, need int) int { return money.RoundUp(money.Int(need).Sub(b.ordered(item))) }
	moreBoxes, moreFeeders := short(box.Item, boxes), short(feeder.Item, boxes*x.lengths)
	d := b.p.Drop
	x.near = d == nil || x.drop.LessThanOrEqual(d.Whole.Sub(d.Branch))
	x.owned = b.owns(box.Item, moreBoxes) && b.owns(feeder.Item, moreFeeders)
	x.price = b.price(box.Item).Mul(money.Int(moreBoxes)).Add(b.price(feeder.Item).Mul(money.Int(moreFeeders)))
	return x
}

// owns tells whether the yard has so many more of an item than are ordered.
func (b *builder) owns(item string, many int) bool {
	most := b.most(item)
	return most < 0 || many <= most
}

// better tells whether a line is to be preferred: one that fits, of those the
// cheaper; else one that the yard owns; then the one that loses less.
func (x *line) better(o *line) bool {
	fits, other := x.near && x.owned, o.near && o.owned
	switch {
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
