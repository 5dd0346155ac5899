package crew_test

import (
	"slices"
	"strings"
	"testing"

	"tentwright/catalog/unit"
	"tentwright/quote/crew"
)

const dinnerInstall = `{window: install, crew: 8, days: 2, from: "08:00", inspect: "15:00", ready: "17:00"}`

// On the day of the inspection alone nobody comes but those who have to do with
// it, and one of them drives.
func TestInspectionDay(t *testing.T) {
	q := reworded(t, demo(t), "dinner", dinnerInstall, `{window: install, crew: 12, days: 2, inspect: "12:30"}`)
	w := windowNamed(t, q, "install")
	visit, handed := taskOf(w, "inspection"), (*crew.Task)(nil)
	for i := range w.Tasks {
		if k := &w.Tasks[i]; k.Labour != nil && k.Labour.Rule.ID == "hand-over" {
			handed = k
		}
		if k := &w.Tasks[i]; k.Labour != nil && k.Labour.Rule.ID != "hand-over" && k.Finish.Day > 1 {
			t.Fatalf("%s is done on day %d: the test needs a larger crew", k.Key, k.Finish.Day)
		}
	}
	if visit.Start != (crew.Moment{Day: 2, At: 12*60 + 30}) {
		t.Errorf("inspected %v; day 2 at 12:30 was expected", visit.Start)
	}
	if handed == nil || handed.Start.Day < 2 || handed.Start.At < visit.Finish.At {
		t.Errorf("handed over %+v; after the inspection %v was expected", handed, visit.Finish)
	}
	if len(w.Days) != 2 {
		t.Fatalf("%d days", len(w.Days))
	}
	came, drives := 0, 0
	for p := range w.People {
		h := w.People[p].Days[1]
		if h == (crew.Shift{}) {
			continue
		}
		came++
		if w.People[p].Driver {
			drives++
		}
		if !slices.Contains(visit.People, p) && !slices.Contains(handed.People, p) && !w.People[p].Driver {
			t.Errorf("person %d comes for nothing: %+v", p+1, h)
		}
	}
	if drives == 0 || came > len(visit.People)+len(handed.People)+1 {
		t.Errorf("%d people come, %d of them drive", came, drives)
	}
	for _, b := range w.Days[1].Breaks {
		if b.From < w.Days[1].Call+unit.Clock(b.Spec.After) {
			t.Errorf("%s at %s, %s after the call at %s", b.Spec.Name, b.From, b.Spec.After, w.Days[1].Call)
		}
	}
	// Every driver closes their papers once, on the last day on which they drive.
	closed := map[int]int{}
	for i := range w.Tasks {
		if k := &w.Tasks[i]; strings.HasPrefix(k.Key, "closing") {
			for _, p := range k.People {
				closed[p] += k.Minutes
			}
		}
	}
	for p, n := range closed {
		if n != 30 {
			t.Errorf("person %d closes for %d minutes; 30 were expected", p+1, n)
		}
	}
}

func taskOf(w *crew.Window, key string) *crew.Task {
	at := slices.IndexFunc(w.Tasks, func(k crew.Task) bool { return k.Key == key })
	if at < 0 {
		return &crew.Task{}
	}
	return &w.Tasks[at]
}

// A visit at an hour at which nobody is on the site is a fault of the hour, not
// of the number of people.
func TestInspectionOutsideHours(t *testing.T) {
	for _, row := range []struct{ at, text string }{
		{"20:00", "inspection at 20:00; the site is worked until "},
		{"06:10", "inspection at 06:10; the site is worked from "},
	} {
		q := reworded(t, demo(t), "dinner", dinnerInstall, `{window: install, crew: 8, days: 2, inspect: "`+row.at+`"}`)
		c := cautionOf(q, "install.inspection")
		if c == nil || !c.Severe || !strings.HasPrefix(c.Text, row.text) {
			t.Errorf("%s: %+v; %q was expected", row.at, c, row.text)
		}
		if c := cautionOf(q, "install.days"); c != nil {
			t.Errorf("%s: %s", row.at, c.Text)
		}
		for _, s := range windowNamed(t, q, "install").Sizes {
			if s.Meets {
				t.Errorf("%s: %d people meet it", row.at, s.People)
			}
		}
	}
}

// Beyond the end of the chart no figure is given, and the last band holds.
func TestBeyondTheHeatChart(t *testing.T) {
	q := reworded(t, demo(t), "garden", "labour:\n", "labour:\n  weather: {temperature: 120 F, humidity: 60}\n")
	c := cautionOf(q, "heat.index")
	if c == nil || !c.Severe || !strings.Contains(c.Text, "beyond the chart, above 137 F") || strings.Contains(c.Text, "index is 1") {
		t.Errorf("%+v", c)
	}
	q = reworded(t, demo(t), "garden", "labour:\n", "labour:\n  weather: {temperature: 115 F, humidity: 5}\n")
	if c := cautionOf(q, "heat.index"); c == nil || !strings.Contains(c.Text, "beyond the chart") {
		t.Errorf("%+v", c)
	}
}
