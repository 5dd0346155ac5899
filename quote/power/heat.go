package power

import (
	"fmt"
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/parts"
	"tentwright/quote/tent"
)

// Heat is what keeps the tents warm.
type Heat struct {
	Inside, Outside money.Number // degrees of the shop's scale
	Rise            money.Number
	Hours           money.Number
	Roof, Wall      money.Number // conductance
	Changes         money.Number // of the air, an hour
	Known           bool         // the shop gives conductance and changes
	Tents           []Warm
	Need            money.Number // of all
	Output          money.Number // of all heaters that the tents are given
	Taken           money.Number // of all heaters that go along
}

// Warm is a line of tents that are heated.
type Warm struct {
	Tent   *tent.Tent
	Roof   money.Number // area of one
	Wall   money.Number // area under walls and doors, gables included
	Volume money.Number
	Open   int          // sides that are neither closed nor at a gutter
	Each   money.Number // heat that one loses
	Need   money.Number // of all of the line
	Output money.Number // of the heaters of all
	Sets   []Set
}

// Set is so many of a heater for all tents of a line.
type Set struct {
	Heater *catalog.Heater
	Count  int
	Burn   money.Number // of the fuel's heat, an hour, at the need
}

// AirHeat is the heat that warms air by one degree: Btu for a cubic foot and
// degree Fahrenheit, Wh for a cubic metre and kelvin. Air is a gas of two-atomic
// molecules, whose heat at constant pressure is 7/2 R a mole and whose volume is
// RT/p; so it is (7/2)p/T, 1,205 J/(m3 K) at 101,325 Pa and 70 F.
func AirHeat(sys unit.System) money.Number {
	if sys == unit.Metric {
		return money.Float(0.335)
	}
	return money.Float(0.018)
}

// heat works out what the heated tents lose and gives each its heaters.
func (b *builder) heat() {
	if b.j.Heat == nil {
		return
	}
	ask := b.j.Heat
	h := &Heat{Hours: ask.Hours, Inside: degrees(*ask.Inside, b.sys), Outside: degrees(*ask.Outside, b.sys)}
	h.Rise = money.Zero
	if h.Inside.GreaterThan(h.Outside) {
		h.Rise = h.Inside.Sub(h.Outside)
	}
	b.r.Heat = h
	cover, air := b.p.Cover, b.p.Air
	h.Known = cover != nil && b.counts(cover.Demo) && air != nil && b.counts(air.Demo)
	if h.Known {
		h.Roof, h.Wall, h.Changes = cover.Roof, cover.Wall, air.Changes
	} else {
		b.asked("how much heat passes through roof and walls, and how often the air changes (cover and air of power.yaml)")
	}
	for i := range b.tents {
		if t := &b.tents[i]; heated(ask.Tents, t) {
			h.Tents = append(h.Tents, b.warm(t))
		}
	}
	if len(h.Tents) == 0 {
		b.asked("which tents are to be warm: none of them has a wall (sides of a tent, or tents of the job's heat)")
	}
	for i := range h.Tents {
		b.heaters(&h.Tents[i])
		h.Need, h.Output = h.Need.Add(h.Tents[i].Need), h.Output.Add(h.Tents[i].Output)
	}
	h.Taken = money.Zero
	for i := range b.p.Heaters {
		item := b.p.Heaters[i].Item
		h.Taken = h.Taken.Add(b.p.Heaters[i].Output.Mul(b.ordered(item).Add(b.plan[item])))
	}
}

// degrees is a temperature on the shop's scale, to two places.
func degrees(t unit.Temperature, sys unit.System) money.Number {
	return money.Round(money.Float(t.In(sys)), 2)
}

// heated tells whether a tent is to be warm: one that is named, or where none
// is, one that has a wall.
func heated(named []string, t *tent.Tent) bool {
	if len(named) > 0 {
		return slices.Contains(named, t.Job.ID)
	}
	return slices.ContainsFunc(t.Walls, func(w tent.Wall) bool { return w.Spec != nil })
}

// warm measures a tent and works out what it loses. A door counts as wall. The
// mean height is taken half way from eave to peak: exact under a roof with
// gables, on the safe side under a hip.
func (b *builder) warm(t *tent.Tent) Warm {
	w := Warm{Tent: t, Roof: money.Round(money.Float(t.Graph.RoofArea().In(b.sys)), 2)}
	closed := 0.0
	for i := range t.Walls {
		side := &t.Walls[i]
		switch {
		case side.Spec != nil:
			closed += t.Graph.Sides[i].Length.Metres() * t.Graph.Eave.Metres()
		case !slices.Contains(t.Shared, side.Side):
			w.Open++
		}
	}
	for _, s := range t.Graph.Sections {
		if s.Kind == "gable" {
			closed += float64(s.Count) * float64(s.Area)
		}
	}
	w.Wall = money.Round(money.Float(unit.Area(closed).In(b.sys)), 2)
	height := parts.Length(b.c.Company.Units, (t.Graph.Eave+t.Graph.Peak)/2)
	w.Volume = money.Round(money.Float(t.Graph.Area().In(b.sys)).Mul(height), 0)
	w.Each = b.r.Heat.Loss(b.sys, w.Roof, w.Wall, w.Volume)
	w.Need = w.Each.Mul(money.Int(t.Job.Many()))
	return w
}

// Loss is the heat that a tent loses in an hour: conductance times area for roof
// and walls, and the air that changes, times the rise of the temperature. It is
// rounded to whole Btu/h, or hundredths of a kW.
func (h *Heat) Loss(sys unit.System, roof, wall, volume money.Number) money.Number {
	through := h.Roof.Mul(roof).Add(h.Wall.Mul(wall))
	air := AirHeat(sys).Mul(volume).Mul(h.Changes)
	loss := through.Add(air).Mul(h.Rise)
	if sys == unit.Metric {
		return money.Round(loss.Shift(-3), 2)
	}
	return money.Round(loss, 0)
}

// heaters gives each tent of a line the cheapest set of heaters that covers what
// it loses. Heaters that the job orders and no tent before has taken cost nothing.
func (b *builder) heaters(w *Warm) {
	if !w.Each.IsPositive() || len(b.p.Heaters) == 0 {
		return
	}
	counts := make([]int, len(b.p.Heaters))
	for range w.Tent.Job.Many() {
		options := make([]option, len(b.p.Heaters))
		for i := range b.p.Heaters {
			h := &b.p.Heaters[i]
			planned := int(b.plan[h.Item].IntPart())
			options[i] = option{size: h.Output, first: b.price(h.Item), second: money.One,
				have: int(b.ordered(h.Item).IntPart()) - b.given(h) - counts[i] + planned, most: b.most(h.Item)}
			if options[i].most >= 0 {
				options[i].most = max(0, options[i].most-planned)
			}
		}
		have, more, _ := cover(w.Each, options)
		for i := range b.p.Heaters {
			counts[i] += have[i] + more[i]
			b.bring(b.p.Heaters[i].Item, money.Int(more[i]), fmt.Sprintf("for a rise of %s %s", b.r.Heat.Rise, b.sys.TemperatureUnit()))
		}
	}
	for i, n := range counts {
		if n > 0 {
			h := &b.p.Heaters[i]
			w.Sets = append(w.Sets, Set{Heater: h, Count: n})
			w.Output = w.Output.Add(h.Output.Mul(money.Int(n)))
		}
	}
	for i := range w.Sets {
		w.Sets[i].Burn = b.burn(w, &w.Sets[i])
	}
}

// given is how many of a heater the tents before have taken.
func (b *builder) given(h *catalog.Heater) int {
	n := 0
	for i := range b.r.Heat.Tents {
		for _, set := range b.r.Heat.Tents[i].Sets {
			if set.Heater == h {
				n += set.Count
			}
		}
	}
	return n
}

// burn is the heat of the fuel that a set burns in an hour. Its thermostat lets
// it burn for the share of the time in which its tent needs it.
func (b *builder) burn(w *Warm, s *Set) money.Number {
	places := 0
	if b.sys == unit.Metric {
		places = 2
	}
	used := w.Need
	if used.GreaterThan(w.Output) {
		used = w.Output
	}
	return money.DivRound(s.Heater.Input.Mul(money.Int(s.Count)).Mul(used), w.Output, places)
}
