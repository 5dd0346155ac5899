package power

import (
	"fmt"

	"tentwright/catalog"
	"tentwright/catalog/money"
)

// Fuel is an item that is burnt: how much is needed and taken.
type Fuel struct {
	Spec    *catalog.Fuel
	Item    *catalog.Item
	Burn    money.Number // heat that heaters burn of it in an hour
	Hourly  money.Number // of the item, by generators in an hour
	Once    money.Number // of the item, that stand at the heaters together
	Needed  money.Number // whole ones, with the reserve, and no fewer than those
	Ordered money.Number
	Planned money.Number
}

// Taken is what goes along.
func (f *Fuel) Taken() money.Number { return f.Ordered.Add(f.Planned) }

// fuels works out what is burnt and plans what is not ordered.
func (b *builder) fuels() {
	for i := range b.p.Fuels {
		spec := &b.p.Fuels[i]
		f := Fuel{Spec: spec, Item: b.c.Item(spec.Item), Burn: b.burnt(spec), Hourly: b.hourly(spec), Once: b.once(spec), Ordered: b.ordered(spec.Item)}
		sum, hours := money.Zero, money.Zero
		if f.Burn.IsPositive() {
			hours = b.r.Heat.Hours
			sum = f.Burn.Mul(hours).Div(spec.Holds.Mul(spec.Energy))
		}
		if f.Hourly.IsPositive() {
			hours = b.r.Supply.Hours
			sum = sum.Add(f.Hourly.Mul(hours))
		}
		f.Needed = roundUp(sum.Mul(money.One.Add(money.Percent(b.p.FuelReserve))))
		why := fmt.Sprintf("for %s hours", hours)
		if f.Once.GreaterThan(f.Needed) {
			f.Needed, why = f.Once, "to feed the heaters at once"
		}
		if f.Needed.GreaterThan(f.Ordered) {
			f.Planned = f.Needed.Sub(f.Ordered)
			b.bring(spec.Item, f.Planned, why)
		}
		b.r.Fuels = append(b.r.Fuels, f)
	}
}

// burnt is the heat of a fuel that all heaters burn in an hour.
func (b *builder) burnt(spec *catalog.Fuel) money.Number {
	sum := money.Zero
	if b.r.Heat == nil {
		return sum
	}
	for i := range b.r.Heat.Tents {
		for _, set := range b.r.Heat.Tents[i].Sets {
			if set.Heater.Fuel == spec.Item {
				sum = sum.Add(set.Burn)
			}
		}
	}
	return sum
}

// hourly is what the generators burn of a fuel in an hour: what they burn
// without load, and the rest by their load.
func (b *builder) hourly(spec *catalog.Fuel) money.Number {
	sum := money.Zero
	if b.r.Supply == nil || !b.r.Supply.Generator {
		return sum
	}
	for i := range b.r.Gear {
		if g := b.generatorOf(&b.r.Gear[i]); g != nil && g.Fuel == spec.Item {
			rate := g.Idle.Add(g.Full.Sub(g.Idle).Mul(b.r.Supply.Load))
			sum = sum.Add(rate.Mul(b.r.Gear[i].Taken()))
		}
	}
	return money.Round(sum, 4)
}

// generatorOf is the generator that a piece of gear is; nil for any other.
func (b *builder) generatorOf(g *Gear) *catalog.Generator {
	for i := range b.p.Generators {
		if g.Kind == KindGenerator && b.p.Generators[i].Item == g.Item.ID {
			return &b.p.Generators[i]
		}
	}
	return nil
}

// once is how many of a fuel's item stand at the heaters that go along, at least
// one at each: their burners may all run together.
func (b *builder) once(spec *catalog.Fuel) money.Number {
	sum := money.Zero
	if b.r.Heat == nil || !b.r.Heat.Known {
		return sum
	}
	for i := range b.p.Heaters {
		if h := &b.p.Heaters[i]; h.Fuel == spec.Item {
			many := b.ordered(h.Item).Add(b.plan[h.Item])
			sum = sum.Add(many.Mul(money.Int(spec.Feeds(h, b.c.Demo))))
		}
	}
	return roundUp(sum)
}
