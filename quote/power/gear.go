package power

import (
	"tentwright/catalog/money"
)

// The kinds of gear.
const (
	KindHeater    = "heater"
	KindGenerator = "generator"
	KindBox       = "box"
	KindFeeder    = "feeder"
	KindCord      = "cord"
)

// gear lists what the shop has of each kind that the job asks for.
func (b *builder) gear() {
	if b.r.Heat != nil {
		for i := range b.p.Heaters {
			b.piece(KindHeater, b.p.Heaters[i].Item, money.Zero)
		}
	}
	s := b.r.Supply
	if s == nil || s.Carries.IsZero() {
		return
	}
	for i := range b.p.Generators {
		if s.Generator {
			b.piece(KindGenerator, b.p.Generators[i].Item, money.Zero)
		}
	}
	for i := range b.p.Boxes {
		need := money.Zero
		if s.Box == &b.p.Boxes[i] {
			need = money.Int(s.Boxes)
		}
		b.piece(KindBox, b.p.Boxes[i].Item, need)
	}
	for i := range b.p.Feeders {
		need := money.Zero
		if s.Feeder == &b.p.Feeders[i] {
			need = money.Int(s.Boxes * s.Lengths)
		}
		b.piece(KindFeeder, b.p.Feeders[i].Item, need)
	}
	for i := range b.p.Cords {
		need := money.Zero
		if s.Cord == &b.p.Cords[i] {
			need = money.Int(len(s.Circuits))
		}
		b.piece(KindCord, b.p.Cords[i].Item, need)
	}
}

// piece lists one item.
func (b *builder) piece(kind, item string, needed money.Number) {
	b.r.Gear = append(b.r.Gear, Gear{Item: b.c.Item(item), Kind: kind, Needed: needed, Ordered: b.ordered(item), Planned: b.plan[item]})
}
