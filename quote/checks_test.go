package quote

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/quote/job"
)

// quoted builds a job of the demonstration shop.
func quoted(t *testing.T, body string) *Quote {
	t.Helper()
	c, list := catalog.Load("demo", catalog.Demo())
	if c == nil {
		t.Fatal(list.Err())
	}
	const head = "number: T-1\ncustomer: {name: Test Customer}\n"
	j, list := job.Read("job.yaml", []byte(head+body))
	if j == nil {
		t.Fatal(list.Err())
	}
	q, list := Build(c, j)
	if q == nil {
		t.Fatal(list.Err())
	}
	return q
}

// failing lists the checks of a job that fail, the standing ones left out.
func failing(t *testing.T, body string) []string {
	t.Helper()
	var keys []string
	for _, check := range quoted(t, body).Failed() {
		if key, _, _ := strings.Cut(check.Key, ":"); !slices.Contains([]string{"anchors", "demo", "extinguishers", "licence"}, key) {
			keys = append(keys, check.Key)
		}
	}
	return keys
}

const (
	usualEvent = "event: {name: Test Event, guests: 20, tax_place: county-larkmere}\n"
	usualDates = "dates: {quoted: 2027-01-10, deliver: 2027-06-11, event_from: 2027-06-12, event_to: 2027-06-12, strike: 2027-06-13, collect: 2027-06-13}\n"
	usualWay   = "delivery: {distance: 8 mi}\n"
	usualTent  = "tents: [{id: a, family: hip, size: 20x20}]\n"
	oneDoor    = "tents: [{id: a, family: hip, size: 20x20, sides: [{side: front, wall: solid, doors: [double]}, {side: right, wall: solid}, {side: back, wall: solid}, {side: left, wall: solid}]}]\n"
)

// Each of these jobs forgets one thing that costs money or hurts someone, and
// the check of that name says so; the usual job passes.
func TestChecksFindWhatIsForgotten(t *testing.T) {
	for _, tc := range []struct{ name, body, want string }{
		{"nothing", usualEvent + usualDates + usualWay + usualTent, ""},
		{"a discount below the floor", usualEvent + usualDates + usualWay + "tents: [{id: a, family: hip, size: 20x20, discount: 90}]\n", "lines below floor"},
		{"no place for tax", "event: {name: Test Event}\n" + usualDates + usualWay + usualTent, "tax place"},
		{"delivery in the past", usualEvent + strings.Replace(usualDates, "2027-01-10", "2027-06-12", 1) + usualWay + usualTent, "past"},
		{"paid too much", usualEvent + usualDates + usualWay + usualTent + "payments: [{date: 2027-02-01, amount: 99999}]\n", "overpaid"},
		{"a crew too small", usualEvent + usualDates + usualWay + usualTent + "labour: {windows: [{window: install, crew: 1}]}\n", "crew:install"},
		{"too far for one day", usualEvent + usualDates + "delivery: {distance: 900 mi}\n" + usualTent, "day:install"},
		{"heater without fuel", usualEvent + usualDates + usualWay + usualTent + "items: [{item: heater-170, quantity: 1}]\n", "need:L:1:propane-100"},
		{"no way out", usualEvent + usualDates + usualWay +
			"tents: [{id: a, family: hip, size: 20x20, sides: [{side: front, wall: solid}, {side: right, wall: solid}, {side: back, wall: solid}, {side: left, wall: solid}]}]\n", "door:a"},
		{"pole tent on asphalt", usualEvent + usualDates + usualWay + "tents: [{id: a, family: pole, size: 40x60, ground: asphalt-whole}]\n", "holding:a"},
		{"more than the yard owns", usualEvent + usualDates + usualWay + "items: [{item: table-round-72, quantity: 900}]\n", "stock"},
		{"more tents than the yard owns", usualEvent + usualDates + usualWay + "tents: [{id: a, family: hip, size: 40x80, count: 9}]\n", "sizes:hip:40x80"},
		{"wind above the shop's limit", usualEvent + usualDates + usualWay + usualTent + "wind: {gust: 61 mph}\n", "anchor gust"},
		{"less wind than the shop plans for", usualEvent + usualDates + usualWay + usualTent + "wind: {gust: 38 mph}\n", "gust of shop"},
		{"wind actions too late for this place", usualEvent + usualDates + usualWay + usualTent + "wind: {gust: 35 mph}\n", "wind actions"},
		{"a slope that is refused", usualEvent + usualDates + usualWay + usualTent + "site: [{factor: slope, option: steep}]\n", "anchor refused"},
		{"wind refused, so that no leg is held by anything known", usualEvent + usualDates + usualWay + usualTent + "wind: {gust: 61 mph}\n", "anchor legs"},
		{"more guests than the floor holds", strings.Replace(usualEvent, "guests: 20", "guests: 28", 1) + usualDates + usualWay + usualTent, "floor"},
		{"more guests than the exits let out", strings.Replace(usualEvent, "guests: 20", "guests: 25", 1) + usualDates + usualWay + oneDoor, "ways out"},
		{"one door of two", usualEvent + usualDates + usualWay + oneDoor, "exits:a"},
		{"no permit ordered", usualEvent + usualDates + usualWay + "tents: [{id: a, family: hip, size: 30x30}]\n", "permit papers"},
		{"fewer chairs than guests", usualEvent + usualDates + usualWay + usualTent + "items: [{item: chair-folding, quantity: 10}]\n", "chairs"},
	} {
		t.Run(tc.name, func(t *testing.T) {
			got := failing(t, tc.body)
			switch {
			case tc.want == "" && len(got) > 0:
				t.Errorf("the usual job fails %q", got)
			case tc.want != "" && !slices.Contains(got, tc.want):
				t.Errorf("the checks that fail are %q, %q was expected among them", got, tc.want)
			}
		})
	}
}

// What can be typed into a workbook later has its check from the start: an extra
// that may be chosen without what it needs, and more tents than the yard owns.
func TestChecksStandBeforeTheyFail(t *testing.T) {
	heater := "items: [{item: heater-170, quantity: 1, optional: yes%s}%s]\n"
	for _, tc := range []struct {
		name, body, key string
		is, limit       int64
	}{
		{"an extra not chosen", fmt.Sprintf(heater, "", ""), "need:L:1:propane-100", 0, 0},
		{"chosen", fmt.Sprintf(heater, ", chosen: yes", ""), "need:L:1:propane-100", 1, 0},
		{"chosen with fuel", fmt.Sprintf(heater, ", chosen: yes", ", {item: propane-100, quantity: 2}"), "need:L:1:propane-100", 0, 0},
		{"chosen, its fuel another extra", fmt.Sprintf(heater, ", chosen: yes", ", {item: propane-100, quantity: 2, optional: yes}"), "need:L:1:propane-100", 1, 0},
		{"tents of a size", "", "sizes:hip:20x20", 1, 4},
	} {
		t.Run(tc.name, func(t *testing.T) {
			checks := quoted(t, usualEvent+usualDates+usualWay+usualTent+tc.body).Checks
			at := slices.IndexFunc(checks, func(c Check) bool { return c.Key == tc.key })
			if at < 0 {
				t.Fatalf("no check %q", tc.key)
			}
			if c := &checks[at]; c.Value.IntPart() != tc.is || c.Limit.IntPart() != tc.limit {
				t.Errorf("%s is %s, at most %s; %d and %d were expected", tc.key, c.Value, c.Limit, tc.is, tc.limit)
			}
		})
	}
}
