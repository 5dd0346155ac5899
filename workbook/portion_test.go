package workbook

import (
	"testing"

	"pgregory.net/rapid"

	"tentwright/catalog"
	"tentwright/quote/load"
)

func twoTrips(shares ...load.Share) *load.Manifest {
	return &load.Manifest{Trips: []load.Trip{{Key: "V1", Vehicle: &catalog.Vehicle{Name: "Van, tall", Count: 2}, Number: 2, Turn: 1},
		{Key: "V2", Vehicle: &catalog.Vehicle{Name: "Van, tall", Count: 2}, Number: 2, Turn: 2}}, Shares: shares}
}

func TestPortions(t *testing.T) {
	pole := &catalog.Part{ID: "pole", Name: "Pole"}
	top := &catalog.Part{ID: "top", Name: "Top", Tracked: true}
	none := &catalog.Part{ID: "none", Name: "Extra", Tracked: true}
	m := twoTrips(load.Share{Part: pole, Trip: 0, Quantity: 12}, load.Share{Part: pole, Trip: 1, Quantity: 5, Rest: true},
		load.Share{Part: top, Trip: 1, Quantity: 2}, load.Share{Part: none, Trip: -1})
	want := []struct {
		key, name string
		quantity  int
		share     any
	}{
		{"pole@V1", "Pole", 12, 12}, {"pole@V2", "Pole", 5, nil},
		{"top@V2#1", "Top, piece 1", 1, 1}, {"top@V2#2", "Top, piece 2", 1, nil},
		{"none@#1", "Extra", 0, nil},
	}
	got := portions(m, true)
	if len(got) != len(want) {
		t.Fatalf("%d rows, want %d", len(got), len(want))
	}
	for i, w := range want {
		p := &got[i]
		if p.key != w.key || p.name(true) != w.name || p.quantity != w.quantity || p.shareCell().Value != w.share {
			t.Errorf("row %d is %s %q, %d pieces, share %v; want %+v", i, p.key, p.name(true), p.quantity, p.shareCell().Value, w)
		}
	}
	if got := len(portions(m, false)); got != len(m.Shares) {
		t.Errorf("%d rows without pieces, want one for each share, %d", got, len(m.Shares))
	}
}

// The rows of a part carry all of it, have keys of their own, and only the
// last has no fixed share.
func TestPortionsKeepQuantities(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		part := &catalog.Part{ID: "top", Tracked: rapid.Bool().Draw(t, "tracked")}
		a, b := rapid.IntRange(1, 9).Draw(t, "first"), rapid.IntRange(1, 9).Draw(t, "second")
		sum, keys := 0, map[string]bool{}
		rows := portions(twoTrips(load.Share{Part: part, Trip: 0, Quantity: a}, load.Share{Part: part, Trip: 1, Quantity: b, Rest: true}), true)
		for i := range rows {
			sum += rows[i].quantity
			keys[rows[i].key] = true
			if (rows[i].shareCell().Value == nil) != (i == len(rows)-1) {
				t.Fatalf("row %d of %d: share %v", i+1, len(rows), rows[i].shareCell().Value)
			}
		}
		if sum != a+b || len(keys) != len(rows) {
			t.Fatalf("%d pieces under %d keys in %d rows, want %d pieces", sum, len(keys), len(rows), a+b)
		}
	})
}

func TestTakes(t *testing.T) {
	table := &table{name: "pick", left: 1, cols: []column{{id: "part"}, {id: "share"}, {id: "rank"}}}
	for _, c := range []struct {
		rank, of int
		want     string
	}{
		{1, 1, "total"},
		{1, 2, `MAX(0,MIN($B9,total-SUMIFS(pick_share,pick_part,$A9,pick_rank,"<"&$C9)))`},
		{2, 2, "MAX(0,total-SUMIFS(pick_share,pick_part,$A9))"},
	} {
		p := portion{rank: c.rank, of: c.of}
		if got := p.takes(table, 9, "total"); got != c.want {
			t.Errorf("row %d of %d takes %s, want %s", c.rank, c.of, got, c.want)
		}
	}
}

func TestVehicleNames(t *testing.T) {
	m := twoTrips()
	for i, want := range []string{"Van, tall, no. 2", "Van, tall, no. 2, run 2"} {
		if got := vehicleName(&m.Trips[i]); got != want {
			t.Errorf("vehicle of %s is %q, want %q", m.Trips[i].Key, got, want)
		}
	}
	if got := shortVehicle(&m.Trips[1]); got != "V2 Van" {
		t.Errorf("short name is %q, want V2 Van", got)
	}
}

// A combination's rating that leaves less than the plate caps a driven
// vehicle, never its trailer. The figures are made up.
func TestCapped(t *testing.T) {
	truck := &catalog.Vehicle{Rating: 10000, Empty: 5000, Fuel: 200}
	for _, c := range []struct {
		trip load.Trip
		want bool
	}{
		{load.Trip{Vehicle: truck, Riders: 2, Payload: 4400}, false},
		{load.Trip{Vehicle: truck, Riders: 2, Payload: 4399}, true},
		{load.Trip{Vehicle: truck, Tow: "V1", Payload: 100}, false},
	} {
		if got := capped(&c.trip, 200); got != c.want {
			t.Errorf("payload %d is capped: %t, want %t", c.trip.Payload, got, c.want)
		}
	}
}
