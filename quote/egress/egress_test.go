package egress

import (
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/quote/job"
	"tentwright/quote/parts"
	"tentwright/quote/tent"
)

const head = `number: T-1
customer: {name: Test Customer}
event: {name: Test Event, guests: 160}
dates: {quoted: 2027-01-10, deliver: 2027-06-11, event_from: 2027-06-12, event_to: 2027-06-12, strike: 2027-06-13, collect: 2027-06-13}
delivery: {distance: 8 mi}
`

// built is the stage for a job of the demonstration shop.
func built(t testing.TB, c *catalog.Catalog, body string) *Result {
	t.Helper()
	text := head + body
	if strings.HasPrefix(body, "event:") {
		text = strings.Replace(head, "event: {name: Test Event, guests: 160}\n", "", 1) + body
	}
	j, list := job.ReadFor(c, "job.yaml", []byte(text))
	if j == nil {
		t.Fatal(list.Err())
	}
	return staged(t, c, j)
}

func staged(t testing.TB, c *catalog.Catalog, j *job.Job) *Result {
	t.Helper()
	tents, list := tent.Build(c, j)
	if list.Err() != nil {
		t.Fatal(list.Err())
	}
	p, list := parts.Build(c, j, tents, nil)
	if list.Err() != nil {
		t.Fatal(list.Err())
	}
	return Build(c, j, p)
}

const (
	closed = "sides: [{side: front, wall: solid, doors: [double, double]}, {side: right, wall: solid, doors: [single]}, {side: back, wall: solid}, {side: left, wall: solid}]"
	large  = "tents: [{id: a, family: hip, size: 40x80, " + closed
)

// A tent of 3,200 sq ft: the people follow from its uses, the exits from the
// people. All of it is worked out from the tables of the demonstration shop.
func TestBuild(t *testing.T) {
	type want struct {
		load, guests, need, have, sides, allow int
		width                                  string
	}
	for _, tc := range []struct {
		name, body string
		want       want
	}{
		{"tables", large + "}]", want{214, 214, 3, 2, 1, 199, "144"}},
		{"chairs in rows", "event: {name: E, guests: 160, use: rows}\n" + large + "}]", want{458, 458, 3, 2, 1, 199, "144"}},
		{"a dance floor of 256 sq ft and a stage of 192, bars of 96", large + "}]\nitems: [{item: dance-kit-16, quantity: 1}, {item: stage-kit, quantity: 1}, {item: bar-kit, quantity: 1}]",
			// 37 dance, 13 on the stage, 178 at tables on 2,656 sq ft.
			want{228, 215, 3, 2, 1, 199, "144"}},
		{"a kitchen of 800 sq ft at the end", large + ", uses: [{use: kitchen, area: 800 sq ft}]}]", want{164, 160, 2, 2, 1, 199, "144"}},
		{"the job says where the dance floor is", large + ", uses: [{use: dance, area: 256 sq ft}]}]\nitems: [{item: dance-kit-16, quantity: 1}]", want{234, 234, 3, 2, 1, 199, "144"}},
		{"an extra that is not chosen", large + "}]\nitems: [{item: stage-kit, quantity: 1, optional: yes}]", want{214, 214, 3, 2, 1, 199, "144"}},
		// Nine legs on a long side and five on a short one, 2.5 in thick, leave 78.13 and 38.96 ft, two exits and one.
		{"open on every side", "tents: [{id: a, family: hip, size: 40x80}]", want{214, 214, 3, 6, 4, 2999, "2810.16"}},
	} {
		t.Run(tc.name, func(t *testing.T) {
			r := built(t, demoShop(t), tc.body)
			x := &r.Tents[0]
			got := want{x.Load, x.Guests, x.Need, x.Have, x.Sides, x.Allow, x.HasWidth.String()}
			if got != tc.want {
				t.Errorf("got %+v; %+v was expected", got, tc.want)
			}
			if r.Load != x.Load*x.Many || r.Out != min(x.Guests, x.Allow)*x.Many {
				t.Errorf("the job has %d people and lets %d guests out; those of its one tent were expected", r.Load, r.Out)
			}
		})
	}
}

// In a membrane structure a door of 36 in is an exit for up to 199 people.
func TestColumnOfTheTable(t *testing.T) {
	for class, want := range map[string][2]int{"tent": {2, 72}, "membrane": {3, 36}} {
		c := demoShop(t)
		c.Occupancy.Class = class
		x := built(t, c, strings.Replace(large, "40x80", "40x60", 1)+"}]").Tents[0]
		if x.Load != 160 || x.Have != want[0] || x.Least.IntPart() != int64(want[1]) {
			t.Errorf("%s: %d people, %d exits of %s in; 160, %d of %d were expected", class, x.Load, x.Have, x.Least, want[0], want[1])
		}
	}
}

// A side at a gutter leads into the next tent and is no exit; both tents count
// together for the permit.
func TestJoinedTents(t *testing.T) {
	r := built(t, demoShop(t), "tents: [{id: a, family: hip, size: 20x20}, {id: b, family: hip, size: 20x20, joins: a, join_side: front, sides: [{side: back, wall: solid}]}]")
	for i, want := range []int{3, 2} {
		x := &r.Tents[i]
		if x.Have != want || x.Joined.String() != "800" {
			t.Errorf("tent %s: %d exits and %s sq ft with its neighbour; %d and 800 were expected", x.Tent.Job.ID, x.Have, x.Joined, want)
		}
	}
}

// What cannot be known counts for nothing: a door that tells no clear width, and
// an extinguisher that is rated too small.
func TestUnknownCountsForNothing(t *testing.T) {
	c := demoShop(t)
	for i := range c.Families {
		for n := range c.Families[i].Doors {
			c.Families[i].Doors[n].Clear = 0
		}
	}
	c.Occupancy.Fire.Hazard = "extra"
	r := built(t, c, large+"}]\nitems: [{item: extinguisher, quantity: 9}]")
	if x := &r.Tents[0]; x.Have != 0 || x.Allow != 0 || r.Out != 0 {
		t.Errorf("%d exits let %d people out; none were expected", x.Have, x.Allow)
	}
	if r.HasFire != 0 {
		t.Errorf("%d extinguishers count; none of 2-A were expected where 4-A is the least", r.HasFire)
	}
}

// Signs and light follow from the people at each exit, not from those in the
// tent.
func TestSigns(t *testing.T) {
	for body, want := range map[string][2]int{large + "}]": {3, 1}, "tents: [{id: a, family: hip, size: 40x80}]": {0, 0}, "tents: [{id: a, family: hip, size: 20x20, " + closed + "}]": {0, 0}} {
		if r := built(t, demoShop(t), body); r.Signs != want[0] || r.Lights != want[1] {
			t.Errorf("%s: %d signs and %d lights; %v were expected", body, r.Signs, r.Lights, want)
		}
	}
}

func TestNothingToHold(t *testing.T) {
	c := demoShop(t)
	if r := built(t, c, "items: [{item: chair-folding, quantity: 9}]"); r != nil {
		t.Error("a job without a tent has an occupancy")
	}
	c.Occupancy = nil
	if r := built(t, c, large+"}]"); r != nil {
		t.Error("a shop without the file has an occupancy")
	}
	if got := money.Int(People(money.Int(100), money.Zero)); !got.IsZero() {
		t.Errorf("%s people on no area each; none were expected", got)
	}
}
