package power

import (
	"math"
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/quote/parts"
)

// Supply is where the current comes from and how it is led to the tents.
type Supply struct {
	Generator bool // ours; otherwise the site's
	Legs      int  // live conductors
	Line      money.Number
	Distance  money.Number // of cable to the farthest tent
	Hours     money.Number
	Circuits  []Circuit
	LegVA     []money.Number
	Share     money.Number // of the whole load, on the heaviest leg
	Heaviest  money.Number // VA of that leg
	Largest   money.Number // VA of the fullest circuit
	Carries   money.Number // VA of a circuit
	KVA       money.Number // that a generator must give: as much on each leg as on the heaviest
	Capacity  money.Number // kVA of the generators that go along, less what is kept free
	Total     money.Number // the same with nothing kept free
	Load      money.Number // share of their total that runs

	Box      *catalog.Box // nil: none fits
	Boxes    int          // in use, each with a run of feeder
	Feeder   *catalog.Cable
	Lengths  int          // of feeder in one run
	BoxShare money.Number // of the whole load, on the heaviest leg of any box
	Amps     money.Number // of that leg, in the run to its box
	Ohms     money.Number // of the feeder's conductor, each thousand
	Run      money.Number // percent of the voltage lost in the feeder, all of the current returning by the neutral
	Alike    money.Number // the same were all legs loaded alike
	Cord     *catalog.Cable
	Branch   money.Number // percent lost in a cord on the fullest circuit
	Whole    money.Number
}

// Least is the smaller of the currents of box and feeder.
func (s *Supply) Least() money.Number {
	if s.Box.Amps.LessThan(s.Feeder.Amps) {
		return s.Box.Amps
	}
	return s.Feeder.Amps
}

// supply plans generator, boxes and cables.
func (b *builder) supply() {
	if b.j.Power == nil {
		return
	}
	ask := b.j.Power
	s := &Supply{Generator: ask.Source == "generator", Distance: parts.Length(b.c.Company.Units, ask.Distance), Hours: ask.Hours, Legs: 1, Line: money.Zero}
	b.r.Supply = s
	circuit := b.p.Circuit
	if circuit == nil || !b.counts(circuit.Demo) {
		b.asked("what a circuit carries (circuit of power.yaml)")
		return
	}
	s.Carries = Carries(circuit)
	s.Circuits = circuits(b.r.Loads, s.Carries, b.p.Exits)
	for i := range s.Circuits {
		if s.Circuits[i].VA.GreaterThan(s.Largest) {
			s.Largest = s.Circuits[i].VA
		}
	}
	b.source(s)
	if len(s.Circuits) > 0 {
		b.boxes(s)
		b.cords(s)
	}
}

// legs spreads the circuits over so many legs and works out what that asks of a
// generator.
func (b *builder) legs(s *Supply, legs int, line money.Number) {
	s.Legs, s.Line = legs, line
	s.LegVA = balance(s.Circuits, legs)
	heaviest := slices.MaxFunc(s.LegVA, func(x, y money.Number) int { return x.Cmp(y) })
	s.Share = money.DivRound(heaviest, b.r.VA, 6)
	s.Heaviest = money.Round(b.r.VA.Mul(s.Share), 1)
	s.KVA = money.Round(s.Heaviest.Mul(money.Int(legs)).Shift(-3), 2)
}

// source takes the site's supply, or the generators that are ordered where they
// carry the load, or the smallest that does beside them.
func (b *builder) source(s *Supply) {
	if !s.Generator {
		legs, line := 1, b.p.Circuit.Volts
		if site := b.p.Supply; site != nil {
			legs, line = site.Legs, site.Line
		}
		b.legs(s, legs, line)
		return
	}
	if s.Hours.IsZero() {
		b.asked("how many hours the generator runs (hours of the job's power)")
	}
	s.Capacity, s.Total = money.Zero, money.Zero
	var largest *catalog.Generator
	for i := range b.p.Generators {
		g := &b.p.Generators[i]
		if n := b.ordered(g.Item); n.IsPositive() {
			s.Total = s.Total.Add(n.Mul(g.KVA))
			if largest == nil || g.KVA.GreaterThan(largest.KVA) {
				largest = g
			}
		}
	}
	if largest != nil {
		b.legs(s, largest.Legs, largest.Line)
	}
	if largest == nil || b.kept(s.Total).LessThan(s.KVA) {
		b.generator(s)
	}
	s.Capacity = b.kept(s.Total)
	s.Load = money.DivRound(b.r.VA.Shift(-3), s.Total, 4)
	if s.Load.GreaterThan(money.One) {
		s.Load = money.One
	}
}

// kept is what of a generator's power is used.
func (b *builder) kept(kva money.Number) money.Number {
	return kva.Mul(money.One.Sub(money.Percent(b.p.Reserve)))
}

// generator plans the smallest one that carries the load, with what is ordered;
// where no single one does, the fewest that do.
func (b *builder) generator(s *Supply) {
	sorted := make([]*catalog.Generator, len(b.p.Generators))
	for i := range sorted {
		sorted[i] = &b.p.Generators[i]
	}
	slices.SortStableFunc(sorted, func(x, y *catalog.Generator) int { return x.KVA.Cmp(y.KVA) })
	take := func(g *catalog.Generator, n int) {
		s.Total = s.Total.Add(g.KVA.Mul(money.Int(n)))
		b.bring(g.Item, money.Int(n), "for a load of "+s.KVA.String()+" kVA")
	}
	for _, g := range sorted {
		b.legs(s, g.Legs, g.Line)
		if b.r.VA.IsPositive() && b.most(g.Item) != 0 && b.kept(s.Total.Add(g.KVA)).GreaterThanOrEqual(s.KVA) {
			take(g, 1)
			return
		}
	}
	if len(sorted) == 0 || !b.r.VA.IsPositive() {
		return
	}
	options := make([]option, len(sorted))
	for i, g := range sorted {
		options[i] = option{size: b.kept(g.KVA), first: money.One, second: g.KVA, most: b.most(g.Item)}
	}
	_, more, _ := cover(s.KVA.Sub(b.kept(s.Total)), options)
	for i, n := range more {
		take(sorted[i], n)
	}
}

// Drop is the voltage lost along a cable of two conductors, 2 L I R, or of three
// phases that all carry the same, sqrt(3) L I R; the resistance is that of each
// thousand of the length. The reactance of the cable is left out, as it is for
// sizes up to 1/0 in use.
func Drop(legs int, length, amps, ohms float64) float64 {
	times := 2.0
	if legs == 3 {
		times = math.Sqrt(3)
	}
	return times * length * amps * ohms / 1000
}

// DropPercent is the voltage lost in percent of that between the conductors, to
// two places. Two legs that carry the same are two conductors of the line
// voltage. Loads between a leg and the neutral seldom do, nor for long, since
// each has a switch of its own: planned is one leg alone, all of whose current
// returns by the neutral, over the volts of a circuit. It is the most that any
// spread over the legs loses.
func DropPercent(legs int, length, amps, ohms, volts money.Number) money.Number {
	lost := Drop(legs, length.InexactFloat64(), amps.InexactFloat64(), ohms.InexactFloat64())
	return money.Round(money.Float(lost*100/volts.InexactFloat64()), 2)
}
