package crew_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/quote"
	"tentwright/quote/crew"
	"tentwright/quote/job"
)

// reworded is one of the demonstration's jobs with some of its words replaced.
func reworded(t testing.TB, c *catalog.Catalog, name string, pairs ...string) *quote.Quote {
	t.Helper()
	data, err := os.ReadFile("../../testdata/jobs/" + name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	text := string(data)
	for i := 0; i < len(pairs); i += 2 {
		if !strings.Contains(text, pairs[i]) {
			t.Fatalf("%s has no %q", name, pairs[i])
		}
		text = strings.Replace(text, pairs[i], pairs[i+1], 1)
	}
	j, list := job.ReadFor(c, name+".yaml", []byte(text))
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	q, list := quote.Build(c, j)
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	check(t, q)
	return q
}

// windowNamed is a window of a plan by its id.
func windowNamed(t testing.TB, q *quote.Quote, id string) *crew.Window {
	t.Helper()
	for i := range q.Crew.Windows {
		if w := &q.Crew.Windows[i]; w.Labour.Spec.ID == id {
			return w
		}
	}
	t.Fatalf("no window %s", id)
	return nil
}

// stands is a moment of a window as one text that sorts by time.
func stands(w *crew.Window, m crew.Moment) string {
	return fmt.Sprintf("%s %s", w.Days[0].Date.AddDays(m.Day-1), m.At)
}

// lastEnd is the end of everything that a window does.
func lastEnd(w *crew.Window) string {
	end := ""
	for i := range w.Tasks {
		end = max(end, stands(w, w.Tasks[i].Finish))
	}
	return end
}

func cautionOf(q *quote.Quote, key string) *crew.Caution {
	for i := range q.Crew.Cautions {
		if c := &q.Crew.Cautions[i]; c.Key == key {
			return c
		}
	}
	return nil
}

// The demonstration counts back, dries and washes only after the unloading in
// the yard, which the strike crew does on the day on which that may begin.
func TestYardWaitsForUnloading(t *testing.T) {
	for _, name := range []string{"dinner", "garden", "fairground"} {
		q := quoted(t, name)
		check(t, q)
		strike, yard := windowNamed(t, q, "strike"), windowNamed(t, q, "yard-in")
		end, begin := lastEnd(strike), stands(yard, yard.Tasks[0].Start)
		if begin < end {
			t.Errorf("%s: %s begins %s, before the strike crew is done %s", name, yard.Labour.Spec.Name, begin, end)
		}
		if c := cautionOf(q, "yard-in.days"); c != nil {
			t.Errorf("%s: %s", name, c.Text)
		}
		if yard.Ready.Day < yard.Finish.Day {
			t.Errorf("%s: ready %v, asked by %v", name, yard.Finish, yard.Ready)
		}
	}
}

// A crew of two strikes the fairground so long that the yard begins days later.
func TestYardWaitsDays(t *testing.T) {
	q := reworded(t, demo(t), "fairground", "{window: strike, crew: 8, days: 2, worked: 12", "{window: strike, crew: 5, days: 2, worked: 12")
	strike, yard := windowNamed(t, q, "strike"), windowNamed(t, q, "yard-in")
	if end, begin := lastEnd(strike), stands(yard, yard.Tasks[0].Start); begin < end {
		t.Errorf("begins %s before %s", begin, end)
	}
	if yard.Days[0].Date.Before(q.Job.Dates.Collect.AddDays(1)) {
		t.Skipf("the strike ends %s", lastEnd(strike))
	}
	c := cautionOf(q, "yard-in.follow")
	if c == nil || c.Severe || !strings.Contains(c.Text, lastEnd(strike)) {
		t.Errorf("%+v; the end of the strike, %s, was expected", c, lastEnd(strike))
	}
}

// The window that ends the day before the delivery cannot give way: where the yard
// works two hours a day, loading is not done when the vehicles should go.
func TestLoadingAfterLeaving(t *testing.T) {
	shop := demo(t)
	shop.Crew.Day("yard-out").Finish = shop.Crew.Day("yard-out").Start + 120
	q := reworded(t, shop, "fairground", "{window: yard-out, crew: 4, days: 1}", "{window: yard-out, crew: 2, days: 1}")
	out, install := windowNamed(t, q, "yard-out"), windowNamed(t, q, "install")
	first := stands(install, taskOf(install, "drive-out/1").Start)
	if papers := taskOf(install, "papers/1"); len(papers.Spells) > 0 {
		first = stands(install, papers.Start)
	}
	want := fmt.Sprintf("%s is done %s, after %s drives off %s", out.Labour.Spec.Name, lastEnd(out), install.Labour.Spec.Name, first)
	if c := cautionOf(q, "install.follow.yard-out"); c == nil || !c.Severe || !strings.HasPrefix(c.Text, want) {
		t.Errorf("%+v; %q was expected", c, want)
	}
	if install.Days[0].Date != q.Job.Dates.Deliver {
		t.Errorf("the delivery was put off to %s", install.Days[0].Date)
	}
	if c := cautionOf(quoted(t, "fairground"), "install.follow.yard-out"); c != nil {
		t.Error(c.Text)
	}
}

// Whoever sleeps near the site and is asked to be done in fewer days is not done
// later for it.
func TestStayWithFewerDays(t *testing.T) {
	c := demo(t)
	var ends []string
	for days := 1; days <= 4; days++ {
		q := reworded(t, c, "dinner", `{window: install, crew: 8, days: 2, from: "08:00", inspect: "15:00", ready: "17:00"}`,
			fmt.Sprintf("{window: install, crew: 4, days: %d, stay: yes}", days), "distance: 11 mi", "distance: 200 mi")
		w := windowNamed(t, q, "install")
		ends = append(ends, stands(w, w.Finish))
	}
	t.Log(ends)
	for i := 1; i < len(ends); i++ {
		if ends[i-1] > ends[i] {
			t.Errorf("asked for %d days, the end is %s; for %d days it is %s", i, ends[i-1], i+1, ends[i])
		}
	}
}

// Ten tents of a line are planned one by one, sixty in lots; a lead looks at one
// tent at a time all the same, and a machine is at one.
func TestLotsOfTentsAndLeads(t *testing.T) {
	q := reworded(t, demo(t), "fairground", "    count: 2\n", "    count: 40\n")
	lots := 0
	for i := range q.Crew.Windows {
		for _, k := range q.Crew.Windows[i].Tasks {
			if k.Labour == nil || k.Labour.Rule.Most == 0 {
				continue
			}
			if r := k.Labour.Rule; (r.Skill != "hand" || len(r.Gear) > 0) && k.Hands > max(r.Most, k.Labour.Least) {
				t.Errorf("%s: %d hands; %d were expected at most", k.Key, k.Hands, r.Most)
			} else if r.Skill != "hand" || len(r.Gear) > 0 {
				lots += strings.Count(k.Name, " of 10)")
			}
		}
	}
	if lots == 0 {
		t.Error("no lot of tents was looked at")
	}
}
