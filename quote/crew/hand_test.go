package crew_test

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"tentwright/catalog"
	"tentwright/catalog/diag/diagtest"
	"tentwright/quote"
	"tentwright/quote/crew"
	"tentwright/quote/job"
)

const smallCrew = `crew:
  days:
    - {window: out, start: "07:00", finish: "17:00", first: deliver, site: yes}
    - {window: in, start: "07:00", finish: "17:00", first: strike, site: yes}
  breaks:
    - {name: Tea, after: 1 h, lasts: 15 min, paid: yes}
    - {name: Meal, after: 2 h, lasts: 30 min}
    - {name: Rest, after: 6 h, lasts: 15 min, paid: yes}
  people_per_lead: 8
  night: 100
  inspection: 30 min
  tries: 50
  spread: {optimistic: 80, pessimistic: 160}
`

const smallJob = `number: T-1
customer: {name: Test Customer}
event: {name: Test Event, guests: 40}
dates: {quoted: 2027-01-10, deliver: 2027-06-11, event_from: 2027-06-12, event_to: 2027-06-12, strike: 2027-06-13, collect: 2027-06-13}
tents:
  - {id: main, family: hip, size: 10x10}
items:
  - {item: chair, quantity: 60}
delivery: {distance: 8 mi}
`

// small quotes a job of the small shop with a crew file and more labour rules.
func small(t testing.TB, rules, text string) *quote.Quote {
	t.Helper()
	fs := diagtest.With(t, os.DirFS("../../testdata/shops/small"), "", nil)
	fs["crew.yaml"] = &fstest.MapFile{Data: []byte(smallCrew)}
	fs["labour.yaml"] = &fstest.MapFile{Data: append(slices.Clone(fs["labour.yaml"].Data), rules...)}
	c, list := catalog.Load("small", fs)
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	j, list := job.ReadFor(c, "job.yaml", []byte(text))
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	q, list := quote.Build(c, j)
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	return q
}

// smallWith is the job of the small shop with something in place of its
// delivery.
func smallWith(rest string) string {
	return strings.Replace(smallJob, "delivery: {distance: 8 mi}\n", rest, 1)
}

// The plan of two people, worked out by hand. The window loads 0.28 h of
// person-time, frames 0.9 h and sets chairs for 0.8 h; the site is 8 miles off
// at 2 minutes each; tea is at 8:00 for 15 minutes.
//
//	load    16.8 min by 2    9 min   07:00 to 07:09
//	drive   8 mi x 2        16       07:09 to 07:25
//	frame   54 min by 2     27       07:25 to 07:52   after the drive
//	chairs  48 min by 2     24       07:52 to 08:00, 08:15 to 08:31   after the frame
//	drive   home            16       08:31 to 08:47
//
// Each works 92 minutes and is paid 107, the tea among them; two at $24 an hour
// are $85.60. On the site the plan takes 51 minutes, and nothing shortens it.
func TestPlanByHand(t *testing.T) {
	w := small(t, "", smallJob).Crew.Windows[0]
	want := `load/job.weight-out 2 [{1 07:00 07:09}] []
drive-out/1 2 [{1 07:09 07:25}] [0]
frame/main.joints 2 [{1 07:25 07:52}] [1]
chairs/job.tag:chair 2 [{1 07:52 08:00} {1 08:15 08:31}] [2]
drive-home/1 2 [{1 08:31 08:47}] [3]
`
	got := ""
	for i := range w.Tasks {
		got += fmt.Sprintln(w.Tasks[i].Key, w.Tasks[i].Hands, w.Tasks[i].Spells, w.Tasks[i].After)
	}
	if got != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
	if d := w.Days[0]; len(w.Days) != 1 || d.Call != 7*60 || d.Arrive != 7*60+25 || d.Leave != 8*60+31 || d.End != 8*60+47 || len(d.Breaks) != 1 {
		t.Errorf("days are %+v", w.Days)
	}
	if w.Work != 2*92 || w.Paid != 2*107 || w.Idle != 30 || w.Minutes != 51 || w.Shortest != 51 || fmt.Sprint(w.Chain) != "[0 1 2 3 4]" {
		t.Errorf("work %d, paid %d, idle %d, minutes %d of at least %d, chain %v", w.Work, w.Paid, w.Idle, w.Minutes, w.Shortest, w.Chain)
	}
	if s := w.Sizes[0]; s.People != 2 || s.Wages.String() != "85.6" || !s.Cheapest || !s.Asked {
		t.Errorf("the row of two people is %+v", s)
	}
}

// What a job asks of its windows, and what the plan then says.
func TestWhatIsSaid(t *testing.T) {
	for _, tt := range []struct{ name, window, distance, want string }{
		{"in time", "{window: out}", "8 mi", ""},
		{"gate opens late", `{window: out, from: "09:00"}`, "8 mi", ""},
		{"late", `{window: out, ready: "08:00"}`, "8 mi", "out.late"},
		{"no time", `{window: out, from: "18:00", until: "23:00"}`, "8 mi", "out.hours"},
		{"inspection missed", `{window: out, inspect: "07:30"}`, "8 mi", "out.inspection"},
		{"far away", "{window: out}", "130 mi", "out.stay out.days"},
		{"farther than a day", "{window: out}", "400 mi", "out.drive out.days out.late"},
		{"one for two", "{window: out, crew: 1}", "8 mi", "out.people"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			q := small(t, "", smallWith("delivery: {distance: "+tt.distance+"}\nlabour: {windows: ["+tt.window+"]}\n"))
			said := ""
			for i := range q.Crew.Cautions {
				said += q.Crew.Cautions[i].Key + " "
			}
			if said != tt.want && said != tt.want+" " {
				t.Errorf("said %q; %q was expected: %+v", said, tt.want, q.Crew.Cautions)
			}
			check(t, q)
		})
	}
}

// A van that must drive twice: its driver fetches the second load while the
// others work, and what it brings is unloaded behind it.
func TestSecondTurn(t *testing.T) {
	unload := "  - {id: unload, name: Unload, phase: unload, driver: weight-out, minutes: 0.02, crew: 1, skill: hand, after: [drive]}\n"
	q := small(t, unload, smallWith("  - {item: chair, quantity: 100}\ndelivery: {distance: 8 mi}\nlabour: {windows: [{window: out, crew: 3}]}\n"))
	if len(q.Load.Out.Trips) != 2 {
		t.Fatalf("%d trips", len(q.Load.Out.Trips))
	}
	w := &q.Crew.Windows[0]
	task := func(key string) *crew.Task {
		at := slices.IndexFunc(w.Tasks, func(t crew.Task) bool { return t.Key == key })
		if at < 0 {
			t.Fatalf("no task %s", key)
		}
		return &w.Tasks[at]
	}
	first, fetch, second := task("unload/job.weight-out/turn 1"), task("fetch/V2"), task("unload/job.weight-out/turn 2")
	if fetch.Kind != crew.Fetch || fetch.Minutes != 32 || fetch.Hands != 1 || !w.People[fetch.People[0]].Driver {
		t.Errorf("the second load is fetched by %+v", fetch)
	}
	if fetch.Start.At < first.Finish.At || second.Start.At < fetch.Finish.At {
		t.Errorf("unloaded %v, fetched %v, unloaded %v", first.Spells, fetch.Spells, second.Spells)
	}
	check(t, q)
}

// One of a part for two tents: only one of them has it at a time. Without any,
// the plan says so and goes on.
func TestGear(t *testing.T) {
	for _, tt := range []struct {
		part  string
		apart bool
		said  string
	}{{"table", true, ""}, {"wall_10", false, "out.gear.wall_10"}} {
		rule := "  - {id: lift, name: Lift, phase: raise, driver: legs, minutes: 10, crew: 1, most: 1, gear: [" + tt.part + "], skill: hand, after: [frame]}\n"
		rest := "  - {item: seat8, quantity: 1}\ndelivery: {distance: 8 mi}\nlabour: {windows: [{window: out, crew: 2}]}\n"
		q := small(t, rule, strings.Replace(smallWith(rest), "tents:\n", "tents:\n  - {id: other, family: hip, size: 10x10}\n", 1))
		var lifts []crew.Task
		for _, task := range q.Crew.Windows[0].Tasks {
			if strings.HasPrefix(task.Key, "lift/") {
				lifts = append(lifts, task)
			}
		}
		if len(lifts) != 2 || (lifts[1].Start.At >= lifts[0].Finish.At) != tt.apart {
			t.Errorf("with %s, lifted %v", tt.part, lifts)
		}
		said := ""
		for i := range q.Crew.Cautions {
			said += q.Crew.Cautions[i].Key
		}
		if said != tt.said {
			t.Errorf("with %s, said %q; %q was expected", tt.part, said, tt.said)
		}
		check(t, q)
	}
}
