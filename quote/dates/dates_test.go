package dates_test

import (
	"cmp"
	"fmt"
	"strings"
	"testing"
	"time"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote"
	"tentwright/quote/dates"
	"tentwright/quote/job"
	"tentwright/quote/jobtest"
)

// usual is a job on a lawn, delivered on a Thursday.
const usual = `number: T-1
customer: {name: Test Customer}
event: {name: Test Event, guests: 20, tax_place: county-larkmere}
dates: {quoted: 2026-05-01, deliver: 2026-07-09, event_from: 2026-07-11, event_to: 2026-07-12, strike: 2026-07-13, collect: 2026-07-14}
tents: [{id: a, family: hip, size: 20x20}]
delivery: {distance: 8 mi}
`

// quoted is the usual job with some words of its text in place of others.
func quoted(t testing.TB, c *catalog.Catalog, swaps ...string) *quote.Quote {
	t.Helper()
	j, list := job.Read("job.yaml", []byte(strings.NewReplacer(swaps...).Replace(usual)))
	if j == nil {
		t.Fatal(list.Err())
	}
	q, list := quote.Build(c, j)
	if q == nil {
		t.Fatal(list.Err())
	}
	return q
}

// find is a date of a quote by the id of its rule.
func find(t testing.TB, q *quote.Quote, id string) *dates.Date {
	t.Helper()
	for i := range q.Dates.Dates {
		if q.Dates.Dates[i].Rule.ID == id {
			return &q.Dates.Dates[i]
		}
	}
	t.Fatalf("no date %q", id)
	return nil
}

// span is the first and last day of a date, - for one that there is not.
func span(d *dates.Date) string {
	show := func(e *dates.End) string {
		if e == nil || e.Day.IsZero() {
			return "-"
		}
		return e.Day.String()
	}
	return show(d.First) + " " + show(d.Last)
}

// Each date of the usual job. Marking: two full business days lie between the
// call and the first stake, by Nebraska Revised Statutes 76-2321 (read), so that
// after a call on Wednesday 1 July 2026 nothing is dug before Tuesday 7 July,
// 3 July being the observed holiday; ten business days at most, as there and in
// Alabama (read). The others follow from the demonstration shop's own habits.
func TestDatesOfAJob(t *testing.T) {
	c := demoShop(t)
	q := quoted(t, c, "quoted: 2026-05-01,", "quoted: 2026-05-01, signed: 2026-05-10,")
	for id, want := range map[string]string{
		"valid": "- 2026-05-22", "deposit": "- 2026-05-10", "balance": "- 2026-06-29",
		"permit": "- 2026-06-16", "permit-held": "- 2026-07-07", "marking": "2026-06-24 2026-07-06",
		"inspection": "2026-07-09 2026-07-10", "delivery": "2026-07-09 2026-07-11", "event": "2026-07-11 2026-07-12",
		"strike": "- 2026-07-13", "return": "2026-07-13 2026-07-14", "dry": "- 2026-07-16", "free": "2026-07-17 -",
	} {
		if got := span(find(t, q, id)); got != want {
			t.Errorf("%s: %s; %s was expected", id, got, want)
		}
	}
	tuesday := quoted(t, c, "deliver: 2026-07-09", "deliver: 2026-07-07")
	call := find(t, tuesday, "marking")
	if span(call) != "2026-06-22 2026-07-01" || len(call.Last.Skipped) != 1 || call.Last.Skipped[0].Name != "Independence Day, observed" {
		t.Errorf("marking for a first stake on 7 July: %s, skipping %v; 22 June to 1 July, skipping 3 July, was expected", span(call), call.Last.Skipped)
	}
}

// Whoever calls works that day: on the law's last day, Wednesday 30 December,
// the yard is shut, so the call is on the 24th, and never later than the law has it.
func TestMarkingIsAskedForWhenTheYardWorks(t *testing.T) {
	c := demoShop(t)
	days := dates.NewDays(c.Calendar)
	law := days.Add(unit.Date{Year: 2027, Month: 1, Day: 5}, -3, catalog.CountBusiness)
	q := quoted(t, c, "deliver: 2026-07-09, event_from: 2026-07-11, event_to: 2026-07-12, strike: 2026-07-13, collect: 2026-07-14",
		"deliver: 2027-01-05, event_from: 2027-01-06, event_to: 2027-01-06, strike: 2027-01-07, collect: 2027-01-08")
	if call := find(t, q, "marking"); law.String() != "2026-12-30" || span(call) != "2026-12-18 2026-12-24" {
		t.Errorf("the law's last day is %s, the call %s; 30 December, 18 to 24 December were expected", law, span(call))
	}
}

// Of every first stake of five years, the last call leaves two full business
// days between and a later one does not; the first one leaves nine.
func TestMarkingLeavesFullDays(t *testing.T) {
	c := demoShop(t)
	days := dates.NewDays(c.Calendar)
	r := find(t, quoted(t, c), "marking").Rule
	full := func(call, stake unit.Date) (n int) {
		for d := call.AddDays(1); d.Before(stake); d = d.AddDays(1) {
			if days.Works(d, catalog.CountBusiness) {
				n++
			}
		}
		return n
	}
	stakes := 0
	for stake := (unit.Date{Year: 2026, Month: 1, Day: 5}); stake.Year < 2031; stake = stake.AddDays(1) {
		last, first := days.Add(stake, r.Latest.Days, r.Latest.Count), days.Add(stake, r.Earliest.Days, r.Earliest.Count)
		next := days.Add(last, 1, catalog.CountBusiness)
		if full(last, stake) != 2 || full(next, stake) >= 2 || full(first, stake) != 9 {
			t.Fatalf("stake on %s: call from %s to %s leaves %d to %d full days; 9 to 2 were expected", stake, first, last, full(first, stake), full(last, stake))
		}
		stakes++
	}
	t.Logf("%d first stakes", stakes)
}

// What a job has not is not asked for, and what it is not signed for has no day.
func TestWhatIsNeeded(t *testing.T) {
	c := demoShop(t)
	for _, x := range []struct {
		swaps []string
		id    string
		state string
	}{
		{nil, "marking", ""},
		{nil, "deposit", dates.Unsigned},
		{[]string{"size: 20x20", "size: 20x20, ground: deck"}, "marking", dates.NotNeeded},
		{[]string{"size: 20x20", "size: 20x20, ground: deck"}, "permit", ""},
		{[]string{"tents: [{id: a, family: hip, size: 20x20}]", "items: [{item: chair-folding, quantity: 20}]"}, "permit", dates.NotNeeded},
		{[]string{"2026-05-01", "2026-07-07"}, "marking", dates.Late},
		{[]string{"2026-05-01", "2026-07-06"}, "marking", ""},
		{[]string{"2026-05-01", "2026-06-29"}, "balance", ""},
		{[]string{"2026-05-01", "2026-06-30"}, "balance", dates.WithOrder},
		{[]string{"2026-05-01,", "2026-05-01, signed: 2026-06-30,"}, "balance", dates.Late},
		{[]string{"2026-05-01,", "2026-05-01, signed: 2026-05-23,"}, "valid", dates.Late},
		{[]string{"deliver: 2026-07-09", "deliver: 2026-07-11"}, "inspection", dates.NoDay}, // on a Saturday
	} {
		if d := find(t, quoted(t, c, x.swaps...), x.id); d.State != x.state || d.Needed == (x.state == dates.NotNeeded) {
			t.Errorf("%v: %s is %q, needed %t; %q was expected", x.swaps, x.id, d.State, d.Needed, x.state)
		}
	}
}

// A rule with an item is for jobs that order it; one from the day of signing can
// count from another day until then.
func TestRulesOfAShop(t *testing.T) {
	c := demoShop(t)
	c.Calendar.Dates = []catalog.DateRule{
		{ID: "heat", Name: "Gas", Item: "heater-170", Latest: &catalog.DayFrom{From: "deliver", Days: -1}},
		{ID: "hold", Name: "Tents held", Latest: &catalog.DayFrom{From: "signed", Unsigned: "quoted", Days: 3, Count: "business", Roll: "after"}},
	}
	q := quoted(t, c)
	if d := find(t, q, "heat"); d.Needed || d.State != dates.NotNeeded {
		t.Errorf("an item that is not ordered: %+v", d)
	}
	if d := find(t, quoted(t, c, "delivery:", "items: [{item: heater-170, quantity: 1}]\ndelivery:"), "heat"); !d.Needed || span(d) != "- 2026-07-08" {
		t.Errorf("an item that is ordered: needed %t, %s", d.Needed, span(d))
	}
	d := find(t, q, "hold")
	want := "by 3 business days after signing (or the business day after, where it is none) (while not signed: counted from the quote)"
	if span(d) != "- 2026-05-06" || d.Last.From != "quoted" || d.Words() != want {
		t.Errorf("not signed: %s from %s, %q", span(d), d.Last.From, d.Words())
	}
	if d := find(t, quoted(t, c, "2026-05-01,", "2026-05-01, signed: 2026-05-08,"), "hold"); span(d) != "- 2026-05-13" || d.Last.From != "signed" {
		t.Errorf("signed: %s from %s", span(d), d.Last.From)
	}
}

// The terms of company.yaml give the days that the price has, and the dates of
// random jobs stand in order, each by its own rule.
func TestDatesOfRandomJobs(t *testing.T) {
	c := demoShop(t)
	states := map[string]int{}
	for seed := range uint64(60) {
		q, list := quote.Build(c, jobtest.Random(c, seed))
		if q == nil {
			t.Fatal(seed, list)
		}
		if got := find(t, q, "balance").Last.Day; got != q.Price.BalanceBy {
			t.Errorf("seed %d: balance %s, but %s by the price", seed, got, q.Price.BalanceBy)
		}
		if got := find(t, q, "valid").Last.Day; got != q.Price.ValidUntil {
			t.Errorf("seed %d: valid until %s, but %s by the price", seed, got, q.Price.ValidUntil)
		}
		for i := range q.Dates.Dates {
			d := &q.Dates.Dates[i]
			states[d.State]++
			if i > 0 && d.Needed && !d.Until().IsZero() && d.Until().Before(q.Dates.Dates[i-1].Until()) {
				t.Errorf("seed %d: %s on %s stands after %s", seed, d.Rule.ID, d.Until(), q.Dates.Dates[i-1].Until())
			}
		}
	}
	t.Log(states)
	if states[""] == 0 || states[dates.Late] == 0 || states[dates.NotNeeded] == 0 || states[dates.Unsigned] == 0 {
		t.Error("some state does not occur; the random jobs show too little")
	}
}

func TestClashes(t *testing.T) {
	c := demoShop(t)
	for swap, want := range map[string]int{"": 0, "collect: 2026-09-07": 1, "collect: 2026-12-28": 1} {
		q := quoted(t, c, "collect: 2026-07-14", cmp.Or(swap, "collect: 2026-07-14"))
		if len(q.Dates.Clashes) != want {
			t.Errorf("%s: %v; %d were expected", swap, q.Dates.Clashes, want)
		}
	}
}

// A shop without a calendar has no dates, and says nothing of them.
func TestNoCalendar(t *testing.T) {
	c := demoShop(t)
	c.Calendar = nil
	q := quoted(t, c)
	if got := fmt.Sprint(q.Report().Dates); q.Dates != nil || got != "[]" {
		t.Errorf("%v, %s; none were expected", q.Dates, got)
	}
	for _, check := range q.Checks {
		if strings.HasPrefix(check.Key, "late:") || check.Key == "dates" || check.Key == "days off" {
			t.Errorf("check %s is made without dates", check.Key)
		}
	}
}

// Weekdays by a published count: 4 July 1776 was a Thursday, 1 January 2000 a
// Saturday (almanacs, from memory).
func TestWeekdays(t *testing.T) {
	for on, want := range map[unit.Date]time.Weekday{{Year: 1776, Month: 7, Day: 4}: time.Thursday, {Year: 2000, Month: 1, Day: 1}: time.Saturday} {
		if on.Weekday() != want {
			t.Errorf("%s is a %s; %s was expected", on, on.Weekday(), want)
		}
	}
}
