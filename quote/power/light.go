package power

import (
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/parts"
)

// Light is the light on the floor of all tents.
type Light struct {
	Lumens money.Number
	Area   money.Number // of all floors
	Reach  money.Number // share of the lumens that arrives
	Level  money.Number // foot-candles or lux, to a tenth
	Wanted money.Number
}

// light works the level out. A lumen on a square foot is a foot-candle, on a
// square metre a lux.
func (b *builder) light() {
	spec := b.p.Light
	if spec == nil || len(b.tents) == 0 {
		return
	}
	if !b.counts(spec.Demo) {
		b.missing("how much light is wanted, and how much of it reaches the floor (light of power.yaml)")
		return
	}
	l := &Light{Lumens: money.Zero, Area: money.Zero, Reach: spec.Reach}
	l.Wanted, _ = spec.Wanted(b.j.Event.Use)
	for i := range b.r.Loads {
		l.Lumens = l.Lumens.Add(b.r.Loads[i].Light)
	}
	for i := range b.tents {
		l.Area = l.Area.Add(parts.Area(b.c, b.tents[i].Graph.Area()).Mul(money.Int(b.tents[i].Job.Many())))
	}
	l.Level = money.DivRound(l.Lumens.Mul(l.Reach), l.Area, 1)
	b.r.Light = l
}

// LightUnit is what light on a floor is counted in.
func LightUnit(sys unit.System) string {
	if sys == unit.Metric {
		return "lux"
	}
	return "foot-candles"
}

// HeatUnit is what heat is counted in.
func HeatUnit(sys unit.System) string {
	if sys == unit.Metric {
		return "kW"
	}
	return "Btu/h"
}
