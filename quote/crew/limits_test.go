package crew_test

import (
	"strings"
	"testing"

	"tentwright/catalog/money"
	"tentwright/quote"
	"tentwright/quote/crew"
)

// changed is the dinner of the demonstration after changes of shop and job.
func changed(t testing.TB, change func(*quote.Quote)) *quote.Quote {
	t.Helper()
	q := quoted(t, "dinner")
	change(q)
	q, list := quote.Build(q.Catalog, q.Job)
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	return q
}

// said is the caution with a key; none: zero.
func said(q *quote.Quote, key string) crew.Caution {
	for _, c := range q.Crew.Cautions {
		if c.Key == key {
			return c
		}
	}
	return crew.Caution{}
}

// Sixty people in twenty crews: the ways to make up a number of hands of all
// crews together grow as a power of the pools, and are not all listed.
func TestManyCrews(t *testing.T) {
	q := changed(t, func(q *quote.Quote) {
		ask := &q.Job.Labour.Windows[0]
		ask.Crew, ask.Crews = 60, 20
		for i := range q.Catalog.Labour {
			if r := &q.Catalog.Labour[i]; r.ID == "unload-weight" {
				r.Crew, r.Most = 12, 16 // more than a crew has: all help
			}
		}
	})
	check(t, q)
	w := &q.Crew.Windows[1]
	if w.Crews != 20 || len(w.People) != 60 {
		t.Errorf("%d people in %d crews", len(w.People), w.Crews)
	}
}

// A drive longer than the crew's day and a site that is open for two hours only:
// the hours of the site are set aside, and the plan says so.
func TestFarAndLate(t *testing.T) {
	q := small(t, "", smallWith(`delivery: {distance: 400 mi}
labour: {windows: [{window: out, from: "06:00", until: "08:00"}]}
`))
	check(t, q)
	if c := said(q, "out.drive"); !c.Severe || !strings.HasSuffix(c.Text, "; set aside: the hours of the site from 06:00 until 08:00") {
		t.Errorf("said %+v", q.Crew.Cautions)
	}
	far := changed(t, func(q *quote.Quote) {
		q.Job.Delivery.Distance *= 82 // about 900 miles
		ask := &q.Job.Labour.Windows[0]
		ask.From, ask.Until, ask.Ready, ask.Inspect = 20*60, 22*60, 0, 0
	})
	check(t, far)
	if c := said(far, "install.drive"); !strings.Contains(c.Text, "; set aside: the hours of the site from 20:00 until 22:00") {
		t.Errorf("said %+v", far.Crew.Cautions)
	}
}

// A slip in a rule makes a task of years. It is cut, and the plan says so.
func TestEndlessTask(t *testing.T) {
	q := small(t, "  - {id: more, name: Set chairs, phase: furnish, driver: \"tag:chair\", minutes: 40000, crew: 1, skill: hand, after: [frame]}\n", smallJob)
	c := said(q, "out.minutes")
	if !c.Severe || !strings.Contains(c.Text, "Set chairs of 40000 hours; at most 17476 hours each were expected") {
		t.Errorf("said %+v", q.Crew.Cautions)
	}
	if w := &q.Crew.Windows[0]; w.Minutes != 51+1<<19 {
		t.Errorf("planned %d minutes", w.Minutes)
	}
}

// Work in the yard that takes two days before the first drive has its breaks.
func TestBreaksBeforeTheDrive(t *testing.T) {
	q := small(t, "  - {id: pack, name: Pack, phase: load, driver: \"tag:chair\", minutes: 30, crew: 1, skill: hand}\n", smallJob)
	check(t, q)
	w := &q.Crew.Windows[0]
	if len(w.Days) < 2 || w.Days[0].Arrive != w.Days[0].Call || len(w.Days[0].Breaks) != 3 {
		t.Fatalf("days are %+v", w.Days)
	}
	// From 7:00 to 17:00 less the meal of half an hour.
	if got := w.People[0].Days[0].Paid; got != 570 {
		t.Errorf("the first day is paid for %d minutes; 570 were expected", got)
	}
}

// A job of many days has a caution for each that is too long, of which only the
// first stand.
func TestFewCautions(t *testing.T) {
	q := changed(t, func(q *quote.Quote) {
		q.Job.Items[0].Quantity = money.Int(3000)
		q.Catalog.Rates.Overtime.Longest = money.Int(2)
	})
	if days := len(q.Crew.Windows[1].Days); days < 12 {
		t.Fatalf("the install takes %d days", days)
	}
	long, last := 0, ""
	for _, c := range q.Crew.Cautions {
		if strings.HasPrefix(c.Key, "install.long.") {
			long, last = long+1, c.Text
		}
	}
	if long != 8 || !strings.Contains(last, "; and ") || !strings.HasSuffix(last, " more likewise") {
		t.Errorf("%d days are said to be long, the last with %q", long, last)
	}
}
