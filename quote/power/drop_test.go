package power

import (
	"testing"

	"tentwright/catalog/money"
	"tentwright/quote/job"

	"pgregory.net/rapid"
)

// strung plans a job with lamps alone, so far from the source.
func strung(t testing.TB, lamps, way string) *Supply {
	t.Helper()
	return built(t, demo(t), hall+"items: [{item: "+lamps+"}]\npower: {source: site, distance: "+way+"}\n").Supply
}

// A single circuit loses the whole 2 L I R over its 120 V, however many legs the
// source has: 2 x 600 ft x 15.54 A x 0.491 ohm/1,000 ft is 9.16 V, 7.63 percent
// (worked out by hand). It hangs on one box: more runs beside it carry nothing.
func TestOneCircuitLosesAllOnItsLeg(t *testing.T) {
	c := demo(t)
	b := &builder{c: c, j: &job.Job{}, p: c.Power, r: &Result{VA: money.Float(1864.8)}}
	for _, legs := range []struct {
		n    int
		line int
	}{{1, 120}, {2, 240}, {3, 208}} {
		s := &Supply{Distance: money.Int(600), Circuits: []Circuit{{VA: money.Float(1864.8)}}, Largest: money.Float(1864.8)}
		b.legs(s, legs.n, money.Int(legs.line))
		x := b.lines(s, &c.Power.Boxes[0], &c.Power.Feeders[0])
		if len(x) != 1 || x[0].boxes != 1 || x[0].amps.String() != "15.54" || x[0].drop.String() != "7.63" || x[0].near {
			t.Errorf("of %d legs: %+v; one run of 15.54 A that loses 7.63 percent was expected", legs.n, x)
		}
	}
}

// Two circuits of 575 and 133 VA lie on two legs; on one box the heavier leg
// carries 4.79 A, on two boxes no less.
func TestUnlikeLegsLoseByTheHeavier(t *testing.T) {
	c := demo(t)
	b := &builder{c: c, j: &job.Job{}, p: c.Power, r: &Result{VA: money.Int(708)}}
	s := &Supply{Distance: money.Int(600), Circuits: []Circuit{{VA: money.Int(575)}, {VA: money.Int(133)}}}
	b.legs(s, 2, money.Int(240))
	for boxes := 1; boxes <= 2; boxes++ {
		x := b.line(s, &c.Power.Boxes[0], &c.Power.Feeders[0], boxes)
		if x.amps.String() != "4.79" || x.drop.String() != "2.35" { // 2 x 600 x 4.79 x 0.491 / 1,000 / 120
			t.Errorf("%d boxes: %s A, %s percent; 4.79 and 2.35 were expected", boxes, x.amps, x.drop)
		}
	}
}

// The most that any spread over two or three legs loses in the leg itself and in
// the neutral is what is planned: held against currents as vectors of one
// circuit after another.
func TestNoSpreadLosesMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		legs := rapid.IntRange(1, 3).Draw(t, "legs")
		amps := make([]float64, legs)
		most := 0.0
		for i := range amps {
			amps[i] = rapid.Float64Range(0, 50).Draw(t, "amps")
			most = max(most, amps[i])
		}
		whole := Drop(1, 300, most, 0.491)
		for i := range amps {
			if got := lostOnLeg(amps, i) * 300 * 0.491 / 1000; got > whole+1e-9 {
				t.Fatalf("leg %d of %v loses %g V; no more than %g was planned", i+1, amps, got, whole)
			}
		}
	})
}

// lostOnLeg is the current of a leg and that part of the neutral's which is in
// phase with it: two legs are half a turn apart, three a third.
func lostOnLeg(amps []float64, leg int) float64 {
	cosine := map[int]float64{1: 1, 2: -1, 3: -0.5}[len(amps)]
	sum := amps[leg]
	for i, a := range amps {
		if i == leg {
			sum += a
		} else {
			sum += a * cosine
		}
	}
	return sum
}

// Circuits hang on boxes that have the sockets, each on one; no leg of a box
// carries more than is said.
func TestCircuitsHangOnBoxes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := circuits(drawLoads(t), money.Int(1920), 2)
		if len(list) == 0 {
			return
		}
		balance(list, rapid.IntRange(1, 3).Draw(t, "legs"))
		sockets := rapid.IntRange(1, 8).Draw(t, "sockets")
		boxes := rapid.IntRange((len(list)+sockets-1)/sockets, len(list)).Draw(t, "boxes")
		on, fullest := hang(list, boxes, sockets)
		used, sums, most := map[int]int{}, map[[2]int]money.Number{}, money.Zero
		for i, box := range on {
			at := [2]int{box, list[i].Leg}
			sums[at] = sums[at].Add(list[i].VA)
			if used[box]++; box < 1 || box > boxes || used[box] > sockets {
				t.Fatalf("box %d of %d has %d circuits, and %d sockets", box, boxes, used[box], sockets)
			}
			if sums[at].GreaterThan(most) {
				most = sums[at]
			}
		}
		if !most.Equal(fullest) {
			t.Fatalf("the heaviest leg of a box has %s VA; %s is said", most, fullest)
		}
	})
}

// A job of few lamps far away: no more runs than circuits, and the loss is said
// whole.
func TestNoMoreRunsThanCircuits(t *testing.T) {
	s := strung(t, "perimeter-light, quantity: 40", "600 ft")
	if len(s.Circuits) != 1 || s.Boxes != 1 || s.Circuits[0].Box != 1 {
		t.Fatalf("%d circuits on %d boxes, the first on %d; one on one was expected", len(s.Circuits), s.Boxes, s.Circuits[0].Box)
	}
	want := DropPercent(1, money.Int(600), s.Amps, s.Ohms, money.Int(120))
	if !s.Run.Equal(want) || !s.Alike.LessThan(s.Run) {
		t.Errorf("the feeder loses %s percent, %s with legs loaded alike; %s was expected", s.Run, s.Alike, want)
	}
}
