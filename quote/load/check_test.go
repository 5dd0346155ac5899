package load

import (
	"slices"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/parts"
)

// failer is what a check reports to: a test, a benchmark or a drawn case.
type failer interface {
	Helper()
	Fatalf(format string, args ...any)
}

var _ failer = (*testing.T)(nil)

// checkPlan computes a plan again from nothing but the catalog and the lines,
// and fails where the two differ or where a vehicle has too much.
func checkPlan(t failer, c *catalog.Catalog, lines []parts.Line, plan *Plan) {
	t.Helper()
	type want struct {
		quantity int
		each     unit.Mass
	}
	out, back := map[*catalog.Part]want{}, map[*catalog.Part]want{}
	for _, l := range lines {
		n := l.Counted + l.Spare
		out[l.Part] = want{n, l.Each}
		switch {
		case l.Part.Consumable:
			back[l.Part] = want{0, l.Each}
		case l.Part.Wets:
			wet := unit.MassOf(l.Each.Kilograms() * c.Rates.WetFactor.InexactFloat64()).RoundTo(c.Company.Units)
			back[l.Part] = want{n, wet}
		default:
			back[l.Part] = want{n, l.Each}
		}
	}
	for _, way := range []struct {
		m    *Manifest
		want map[*catalog.Part]want
		key  byte
	}{{&plan.Out, out, 'V'}, {&plan.Back, back, 'B'}} {
		got := map[*catalog.Part]int{}
		for _, s := range way.m.Shares {
			w, ok := way.want[s.Part]
			if !ok {
				t.Fatalf("part %q is not of the job", s.Part.ID)
			}
			if s.Each != w.each {
				t.Fatalf("one of %q weighs %d, want %d", s.Part.ID, s.Each, w.each)
			}
			got[s.Part] += s.Quantity
		}
		if len(got) != len(way.want) {
			t.Fatalf("%d parts have a share, want %d", len(got), len(way.want))
		}
		for p, w := range way.want {
			if got[p] != w.quantity {
				t.Fatalf("%d of %q are loaded, want %d", got[p], p.ID, w.quantity)
			}
		}
		checkShares(t, way.m)
		checkTrips(t, c, way.m, way.key)
		checkTows(t, way.m)
		checkOrder(t, way.m)
	}
}

// checkShares wants whole packs in all but the last share of a split part.
func checkShares(t failer, m *Manifest) {
	t.Helper()
	of := map[*catalog.Part][]Share{}
	for _, s := range m.Shares {
		of[s.Part] = append(of[s.Part], s)
		tare := unit.Mass(0)
		if s.Part.Pack.Tare != nil {
			tare = *s.Part.Pack.Tare
		}
		full, rest := s.Quantity/s.Part.Pack.Holds, s.Quantity%s.Part.Pack.Holds
		if rest > 0 {
			full++
		}
		if s.Packs != full || s.Mass != unit.Mass(s.Quantity)*s.Each+unit.Mass(full)*tare ||
			s.Volume != unit.Volume(full)*s.Part.Pack.Size.Volume() {
			t.Fatalf("share of %q has wrong packs, mass or volume: %+v", s.Part.ID, s)
		}
	}
	for p, shares := range of {
		trips := map[int]bool{}
		for i, s := range shares {
			last := i == len(shares)-1
			if s.Rest != (last && len(shares) > 1) {
				t.Fatalf("share %d of %d of %q has rest %v", i+1, len(shares), p.ID, s.Rest)
			}
			if !last && s.Quantity%p.Pack.Holds != 0 {
				t.Fatalf("a share of %q breaks a pack of %d: %d", p.ID, p.Pack.Holds, s.Quantity)
			}
			if trips[s.Trip] {
				t.Fatalf("%q has two shares on one trip", p.ID)
			}
			trips[s.Trip] = true
		}
	}
}

// checkTrips adds the shares of each trip up and holds them against its plate.
func checkTrips(t failer, c *catalog.Catalog, m *Manifest, key byte) {
	t.Helper()
	type vehicle struct {
		v            *catalog.Vehicle
		number, turn int
	}
	seen := map[vehicle]bool{}
	var all unit.Mass
	for i := range m.Trips {
		trip := &m.Trips[i]
		var mass unit.Mass
		var volume unit.Volume
		var longest unit.Length
		for _, s := range m.Shares {
			if s.Trip == i {
				mass += s.Mass
				volume += s.Volume
				if s.Quantity > 0 {
					longest = max(longest, s.Part.Pack.Size.L, s.Part.Pack.Size.W, s.Part.Pack.Size.H)
				}
			}
		}
		all += mass
		v := trip.Vehicle
		own := v.Empty + v.Fuel
		if v.Kind != "trailer" {
			own += unit.Mass(v.Seats) * c.Fleet.Rider
		}
		room := float64(v.Deck.Volume()) * v.Fill.InexactFloat64() / 100
		switch {
		case trip.Key[0] != key || slices.ContainsFunc(m.Trips[:i], func(o Trip) bool { return o.Key == trip.Key }):
			t.Fatalf("key %q", trip.Key)
		case trip.Mass != mass || trip.Volume != volume || trip.Longest != longest:
			t.Fatalf("trip %s has sums %d %d %d, want %d %d %d", trip.Key, trip.Mass, trip.Volume, trip.Longest, mass, volume, longest)
		case own+mass > v.Rating || mass > trip.Payload || trip.Payload > v.Rating-own:
			t.Fatalf("trip %s: load %d, payload %d, own %d, rating %d", trip.Key, mass, trip.Payload, own, v.Rating)
		case float64(volume) > room+0.5 || float64(trip.Room) > room+0.5 || float64(trip.Room) < room-1:
			t.Fatalf("trip %s: volume %d in room %d", trip.Key, volume, trip.Room)
		case longest > v.Longest:
			t.Fatalf("trip %s: %d long on %d", trip.Key, longest, v.Longest)
		case trip.Number < 1 || trip.Number > v.Count:
			t.Fatalf("trip %s: number %d of %d", trip.Key, trip.Number, v.Count)
		case trip.Turn > 1 && !seen[vehicle{v, trip.Number, trip.Turn - 1}], seen[vehicle{v, trip.Number, trip.Turn}]:
			t.Fatalf("trip %s: turn %d comes twice or without the one before", trip.Key, trip.Turn)
		}
		seen[vehicle{v, trip.Number, trip.Turn}] = true
	}
	if m.Mass != all {
		t.Fatalf("mass of all is %d, want %d", m.Mass, all)
	}
}

// checkTows wants one vehicle that may pull it before each trailer, within
// the rating of the combination even when both are at their payloads.
func checkTows(t failer, m *Manifest) {
	t.Helper()
	pulls := map[string]bool{}
	for i := range m.Trips {
		trip := &m.Trips[i]
		if (trip.Vehicle.Kind == "trailer") != (trip.Tow != "") {
			t.Fatalf("trip %s of a %s is towed by %q", trip.Key, trip.Vehicle.Kind, trip.Tow)
		}
		if trip.Tow == "" {
			if trip.Riders != trip.Vehicle.Seats {
				t.Fatalf("trip %s has %d riders", trip.Key, trip.Riders)
			}
			continue
		}
		at := slices.IndexFunc(m.Trips, func(o Trip) bool { return o.Key == trip.Tow })
		if at < 0 || pulls[trip.Tow] || !slices.Contains(trip.Vehicle.TowedBy, m.Trips[at].Vehicle.ID) {
			t.Fatalf("trip %s can't be towed by %q", trip.Key, trip.Tow)
		}
		pulls[trip.Tow] = true
		tower := m.Trips[at].Vehicle
		if tower.Combined == nil {
			continue
		}
		own := tower.Empty + tower.Fuel + unit.Mass(tower.Seats)*testRider + trip.Vehicle.Empty + trip.Vehicle.Fuel
		if own+m.Trips[at].Payload+trip.Payload > *tower.Combined {
			t.Fatalf("trips %s and %s may together be over %d", trip.Tow, trip.Key, *tower.Combined)
		}
	}
}

// checkOrder wants places 1, 2, 3 ... on each trip, what is needed first last.
func checkOrder(t failer, m *Manifest) {
	t.Helper()
	when := map[string]int{"safety": 1, "furnish": 2, "power": 3, "floor": 4, "walls": 5, "top": 6, "frame": 7, "anchor": 8, "gear": 9, "mark": 10}
	of := map[int][]Share{}
	for _, s := range m.Shares {
		if (s.Trip < 0) != (len(m.Trips) == 0) || s.Trip >= len(m.Trips) {
			t.Fatalf("%q is on trip %d of %d", s.Part.ID, s.Trip, len(m.Trips))
		}
		of[s.Trip] = append(of[s.Trip], s)
	}
	for _, shares := range of {
		slices.SortFunc(shares, func(a, b Share) int { return a.Order - b.Order })
		for i, s := range shares {
			if s.Order != i+1 {
				t.Fatalf("place %d of %q, want %d", s.Order, s.Part.ID, i+1)
			}
			if i == 0 {
				continue
			}
			before := shares[i-1]
			if when[before.Part.Use] > when[s.Part.Use] || before.Part.Use == s.Part.Use && before.Each < s.Each {
				t.Fatalf("%q (%s) is loaded before %q (%s)", before.Part.ID, before.Part.Use, s.Part.ID, s.Part.Use)
			}
		}
	}
}
