package quote_test

import (
	"os"
	"testing"

	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote"
	"tentwright/quote/job"
)

const metricJob = `
number: M-1
customer: {name: Larkmere Rowing Club}
event: {name: Boat day}
dates: {quoted: 2027-05-03, deliver: 2027-06-11, event_from: 2027-06-12, event_to: 2027-06-12, strike: 2027-06-13, collect: 2027-06-13}
tents:
  - {id: a, family: hip, size: 6x12, sides: [{side: back, wall: solid}]}
items:
  - {item: floor, quantity: 24.5}
delivery: {distance: 32.5 km}
`

// metricQuote is the quote of a job of the shop that counts in metres.
func metricQuote(t *testing.T, text string) *quote.Quote {
	t.Helper()
	c := loaded(t, os.DirFS("../testdata/shops/metric"))
	j, list := job.ReadFor(c, "job.yaml", []byte(text))
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	return quoted(t, c, j)
}

// One tent of 6 x 12 m in a shop of metres, worked out by hand: a rise of 2.25 m
// over 3 m of run makes a rafter of 3.75 m, and so a roof 1.25 times the plan.
// A metre of tube weighs pi/4 x (0.06^2 - 0.054^2) x 2700 = 1.4505 kg.
func TestMetricQuote(t *testing.T) {
	q := metricQuote(t, metricJob)
	for key, want := range map[string]string{
		"a.area": "72", "a.roof-area": "90", "a.walled": "12", "a.wall solid": "12", "a.joints": "27", "a.stakes": "16", "job.distance": "32.5",
	} {
		alike(t, key, q.Parts.Amount(key), plain(t, want))
	}
	parts := map[string]struct {
		count int
		each  string
	}{
		"pole-28": {14, "4.06 kg"}, "pole-355": {8, "5.15 kg"}, "pole-460": {4, "6.67 kg"}, "leg-22": {12, "3.19 kg"},
		"corner": {4, "2.5 kg"}, "tee": {8, "2.2 kg"}, "crown": {2, "4 kg"}, "ridge-tee": {1, "3 kg"}, "base": {12, "1.5 kg"},
		"top-12": {1, "62.01 kg"}, // 90 m2 x 0.65 kg x 1.06
		"wall-3": {4, "4.77 kg"},  // 3.15 x 2.2 m
		"stake":  {16, "5.5 kg"}, "floor-1": {25, "3.2 kg"}, "line": {3, "0.4 kg"},
	}
	for i := range q.Parts.Lines {
		l := &q.Parts.Lines[i]
		want := parts[l.Part.ID]
		if l.Total() != want.count || l.Each.Text(unit.Metric) != want.each {
			t.Errorf("%d of %s at %s, %d at %s were expected", l.Total(), l.Part.ID, l.Each.Text(unit.Metric), want.count, want.each)
		}
		delete(parts, l.Part.ID)
	}
	if len(parts) > 0 {
		t.Errorf("not taken: %v", parts)
	}
	if got := q.Load.Out.Mass.Text(unit.Metric); got != "469.89 kg" || len(q.Load.Out.Trips) != 1 {
		t.Errorf("%d trips with %s, 1 with 469.89 kg was expected", len(q.Load.Out.Trips), got)
	}
}

// Hours per square metre, metre, kilogram and kilometre, and money per metre,
// square metre and kilometre, of the same job by hand.
func TestMetricHoursAndMoney(t *testing.T) {
	q := metricQuote(t, metricJob)
	for i, want := range []string{
		"0.39", // 469.89 kg x 0.05 min
		"1.63", // 65 km there and home x 1.5 min
		"0.36", // 72 m2 x 0.3 min
		"2.7",  // 27 joints x 6 min
		"0.6",  // 90 m2 x 0.4 min
		"0.4",  // 12 m x 2 min
	} {
		alike(t, q.Labour.Tasks[i].Key, q.Labour.Tasks[i].Hours, plain(t, want))
	}
	for key, want := range map[string][2]string{
		"T:a":            {"684", "86.4"},     // 72 m2 at 9.50 and 1.20
		"W:a.wall solid": {"54", "10.8"},      // 12 m at 4.50 and 0.90
		"L:1":            {"200.9", "36.75"},  // 24.5 m2 at 8.20 and 1.50
		"D:delivery":     {"116.88", "108"},   // 60 + 32.5 km x 1.75; 30 and 4 x 32.5 km x 0.60
		"H:hand":         {"273.6", "145.92"}, // 6.08 h at 45 and 24
		"X:waiver":       {"93.89", "0"},      // 10 % of 938.90
	} {
		l := q.Price.Find(key)
		if l == nil {
			t.Fatalf("there is no line %s", key)
		}
		alike(t, key, l.Amount, plain(t, want[0]))
		alike(t, key+", cost", l.Cost, plain(t, want[1]))
	}
	alike(t, "tax", q.Price.Tax, plain(t, "187.78")) // 20 % of 938.90
	alike(t, "total", q.Price.Total, plain(t, "1611.05"))
}

// A distance in miles is priced by the kilometre in such a shop, to a tenth,
// and in the zone that its kilometres fall in.
func TestMetricDistances(t *testing.T) {
	for distance, want := range map[string]string{
		"20 km": "65", "12.4 mi": "65", // 19.956 km, to a tenth 20.0: 40 + 20 x 1.25
		"20.1 km": "95.18", "12.5 mi": "95.18", // 60 + 20.1 x 1.75 = 95.175
	} {
		text := "number: 1\ncustomer: {name: A}\nevent: {name: B}\ndates: {quoted: 2027-05-03, deliver: 2027-06-11, event_from: 2027-06-12, " +
			"event_to: 2027-06-12, strike: 2027-06-13, collect: 2027-06-13}\ntents: [{id: a, family: hip, size: 6x6}]\ndelivery: {distance: " + distance + "}\n"
		q := metricQuote(t, text)
		alike(t, "delivery over "+distance, q.Price.Find("D:delivery").Amount, plain(t, want))
		alike(t, "the tent", q.Price.Find("T:a").Amount, plain(t, "300"))
	}
}

// plain is a number of a table.
func plain(t *testing.T, text string) money.Number {
	t.Helper()
	n, err := money.Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return n
}
