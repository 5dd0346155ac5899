package quote

import (
	"testing"

	"tentwright/catalog"
	"tentwright/quote/crew"
	"tentwright/quote/labour"
)

func TestLateBy(t *testing.T) {
	for _, x := range []struct {
		done, asked crew.Moment
		want        string
	}{
		{crew.Moment{Day: 1, At: 600}, crew.Moment{Day: 1, At: 600}, "0"},
		{crew.Moment{Day: 1, At: 645}, crew.Moment{Day: 1, At: 600}, "0.75"},
		{crew.Moment{Day: 1, At: 1000}, crew.Moment{Day: 2, At: 600}, "0"},
		{crew.Moment{Day: 3, At: 500}, crew.Moment{Day: 2, At: 500}, "24"},
		{crew.Moment{Day: 2, At: 480}, crew.Moment{Day: 1, At: 1020}, "15"},
		{crew.Moment{}, crew.Moment{Day: 1, At: 600}, "0"},
		{crew.Moment{Day: 2, At: 480}, crew.Moment{}, "0"},
	} {
		if got := lateBy(x.done, x.asked); got.String() != x.want {
			t.Errorf("%v for %v: %s hours late; want %s", x.done, x.asked, got, x.want)
		}
	}
}

// A late plan stops work on the site, and only asks for a look in the yard; the
// chance of being in time and the cautions have checks of their own.
func TestScheduleChecks(t *testing.T) {
	window := func(id string, site bool, done int) crew.Window {
		return crew.Window{Labour: &labour.Window{Spec: &catalog.Window{ID: id, Name: id}}, Setting: &catalog.CrewDay{Site: site}, Days: []crew.Day{{Number: 1}},
			Finish: crew.Moment{Day: done, At: 700}, Ready: crew.Moment{Day: 1, At: 700}, Spread: crew.Spread{Runs: 500, InTime: 0.899}}
	}
	q := &Quote{Crew: &crew.Result{Windows: []crew.Window{window("install", true, 2), window("yard", false, 2), window("strike", true, 1), {Labour: &labour.Window{Spec: &catalog.Window{ID: "none"}}}},
		Cautions: []crew.Caution{{Severe: true}, {}, {}}}}
	q.checkSchedule()
	got := map[string]string{}
	for i := range q.Checks {
		got[q.Checks[i].Key] = q.Checks[i].State() + " " + q.Checks[i].Value.String()
	}
	want := map[string]string{"ready:install": "stop 24", "ready:yard": "look 24", "ready:strike": "pass 0", "sure:install": "look 89.9", "sure:yard": "look 89.9", "sure:strike": "look 89.9",
		"crew stops": "stop 1", "crew cautions": "look 2"}
	for key, state := range want {
		if got[key] != state {
			t.Errorf("%s: %q; want %q", key, got[key], state)
		}
	}
	if len(got) != len(want) {
		t.Errorf("%d checks; want %d: %v", len(got), len(want), got)
	}
	q = &Quote{}
	if q.checkSchedule(); len(q.Checks) != 0 {
		t.Errorf("without a plan there are %d checks; want none", len(q.Checks))
	}
}
