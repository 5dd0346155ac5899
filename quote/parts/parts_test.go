package parts

import (
	"os"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/quote/job"
	"tentwright/quote/tent"
)

func shop(t testing.TB) *catalog.Catalog {
	t.Helper()
	c, list := catalog.Load("small", os.DirFS("../../testdata/shops/small"))
	if c == nil {
		t.Fatal(list.Err())
	}
	return c
}

const head = `number: T-1
customer: {name: Test Customer}
event: {name: Test Event, guests: 40}
dates: {quoted: 2027-01-10, deliver: 2027-06-11, event_from: 2027-06-12, event_to: 2027-06-12, strike: 2027-06-13, collect: 2027-06-13}
delivery: {distance: 8 mi}
`

func built(t testing.TB, body string) *Result {
	t.Helper()
	c := shop(t)
	j, list := job.Read("job.yaml", []byte(head+body))
	if j == nil {
		t.Fatal(list.Err())
	}
	if list := j.Check(c); list.Err() != nil {
		t.Fatal(list.Err())
	}
	tents, list := tent.Build(c, j)
	if list.Err() != nil {
		t.Fatal(list.Err())
	}
	r, list := Build(c, j, tents, nil)
	if r == nil {
		t.Fatal(list.Err())
	}
	return r
}

func wantLines(t *testing.T, r *Result, want map[string]int) {
	t.Helper()
	for id, n := range want {
		line := r.Find(id)
		switch {
		case line == nil && n != 0:
			t.Errorf("no %s, %d were expected", id, n)
		case line != nil && line.Counted != n:
			t.Errorf("%d of %s, %d were expected", line.Counted, id, n)
		}
	}
}

// A square frame of one bay has four of everything and one crown, and two
// stakes a leg (common practice, no source). A 10 ft side takes one panel.
func TestOneBayFrame(t *testing.T) {
	r := built(t, "tents: [{id: a, family: hip, size: 10x10, sides: [{side: back, wall: solid}]}]")
	wantLines(t, r, map[string]int{"corner": 4, "crown": 1, "base": 4, "pole_9_4": 4, "pole_hip": 4, "leg_7": 4, "top_10": 1, "wall_10": 1, "stake": 8})
}

// Three tents take three times the parts of one.
func TestTentsAreCountedTogether(t *testing.T) {
	r := built(t, "tents: [{id: a, family: hip, size: 10x10, count: 3}]")
	wantLines(t, r, map[string]int{"corner": 12, "crown": 3, "pole_9_4": 12, "stake": 24, "wall_10": 0})
}

// Where nothing may be driven the legs are held by ballast, on paving as on a
// side with buried lines; a corner leg keeps the side that is free.
func TestStakesAndBallast(t *testing.T) {
	for _, tc := range []struct {
		name, tent   string
		staked, held int
	}{
		{"grass", "{id: a, family: hip, size: 10x10}", 8, 0},
		{"asphalt", "{id: a, family: hip, size: 10x10, ground: asphalt}", 0, 4},
		{"one side marked", "{id: a, family: hip, size: 10x10, sides: [{side: back, no_stakes: yes}]}", 8, 0},
		{"two sides marked", "{id: a, family: hip, size: 10x10, sides: [{side: back, no_stakes: yes}, {side: left, no_stakes: yes}]}", 6, 1},
	} {
		t.Run(tc.name, func(t *testing.T) {
			tent := built(t, "tents: ["+tc.tent+"]").Tents[0]
			if tent.Staked != tc.staked || tent.Held != tc.held {
				t.Errorf("%d stakes and %d ballast pieces, %d and %d were expected", tent.Staked, tent.Held, tc.staked, tc.held)
			}
		})
	}
}

// A kit is opened down to its parts, and spares are a percentage rounded up,
// at least the minimum: two percent of 40 chairs is one.
func TestKitsAndSpares(t *testing.T) {
	r := built(t, "items: [{item: seat8, quantity: 5}]")
	wantLines(t, r, map[string]int{"table": 5, "chair": 40})
	if got := r.Find("chair").Spare; got != 1 {
		t.Errorf("%d spare chairs, 1 was expected", got)
	}
	for counted, want := range map[int]int{0: 0, 1: 1, 50: 1, 51: 2, 500: 10} {
		if got := Spares(r.Find("chair").Part, counted); got != want {
			t.Errorf("%d chairs take %d spares, %d were expected", counted, got, want)
		}
	}
}

// An extra that is not chosen is on the list with none.
func TestExtraNotChosen(t *testing.T) {
	r := built(t, "items: [{item: chair, quantity: 10}, {item: seat8, quantity: 2, optional: yes}]")
	wantLines(t, r, map[string]int{"chair": 10, "table": 0})
	if r.Find("table") == nil {
		t.Error("the table that may be chosen is not on the list")
	}
	if !r.Orders[1].Ordered().IsZero() || !r.Orders[1].Quantity.Equal(money.Int(2)) {
		t.Errorf("the extra counts as %s of %s", r.Orders[1].Ordered(), r.Orders[1].Quantity)
	}
}
