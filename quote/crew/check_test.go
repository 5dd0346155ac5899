package crew_test

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/quote"
	"tentwright/quote/crew"
	"tentwright/quote/jobtest"
	"tentwright/quote/load"

	"pgregory.net/rapid"
)

// checker holds a plan against the job, the shop's rules and the clock. It
// reads results only and shares no code with what makes them.
type checker struct {
	q *quote.Quote
	r *crew.Result
	w *crew.Window
	t fataler
}

type fataler interface {
	Helper()
	Fatalf(string, ...any)
}

func (k *checker) fail(format string, args ...any) {
	k.t.Helper()
	k.t.Fatalf("%s, %s: %s", k.q.Job.Number, k.w.Labour.Spec.ID, fmt.Sprintf(format, args...))
}

// check checks all windows of a quote.
func check(t fataler, q *quote.Quote) {
	t.Helper()
	for i := range q.Crew.Windows {
		k := &checker{q: q, r: q.Crew, w: &q.Crew.Windows[i], t: t}
		k.complete()
		k.tasks()
		k.order()
		k.persons()
		k.gear()
		k.days()
		k.shifts()
		k.chain()
		k.sizes()
	}
}

// said tells whether the plan says something about the window.
func (k *checker) said(key string) bool {
	return slices.ContainsFunc(k.r.Cautions, func(c crew.Caution) bool { return c.Key == k.w.Labour.Spec.ID+"."+key })
}

var road = []string{"truck-miles", "back-truck-miles", "ride-miles", "back-ride-miles", "trips", "back-trips"}

// complete wants every labour task of the window in the plan, with all its
// hours and at most a minute of each hand more.
func (k *checker) complete() {
	want, got, slack := map[string]int{}, map[string]int{}, map[string]int{}
	for i := range k.q.Labour.Tasks {
		l := &k.q.Labour.Tasks[i]
		if l.Window == k.w.Labour.Spec.ID && l.Hours.IsPositive() && !(k.w.Setting.Site && slices.Contains(road, l.Rule.Driver)) {
			want[l.Key] = int(l.Hours.Shift(2).IntPart())
		}
	}
	for i := range k.w.Tasks {
		if t := &k.w.Tasks[i]; t.Labour != nil {
			got[t.Labour.Key] += t.Hands * t.Minutes
			slack[t.Labour.Key] += t.Hands
		}
	}
	for key, h := range want {
		if least := h * 60; got[key]*100 < least-50*slack[key] || got[key]*100 > least+150*slack[key] {
			k.fail("%s has %d person-minutes; %d hundredths of an hour were expected", key, got[key], h)
		}
		delete(got, key)
	}
	if len(got) > 0 {
		k.fail("tasks that the labour does not have: %v", got)
	}
}

func (k *checker) tasks() {
	w := k.w
	if !slices.IsSortedFunc(w.Tasks, func(a, b crew.Task) int {
		return cmp.Or(cmp.Compare(a.Start.Day, b.Start.Day), cmp.Compare(a.Start.At, b.Start.At), cmp.Compare(a.Key, b.Key))
	}) {
		k.fail("tasks are not by start and key")
	}
	keys := map[string]bool{}
	for i := range w.Tasks {
		t := &w.Tasks[i]
		if keys[t.Key] || t.Name == "" {
			k.fail("key %q stands twice, or has no name", t.Key)
		}
		keys[t.Key] = true
		k.spells(t)
		if len(t.People) != t.Hands || t.Hands < 1 {
			k.fail("%s has %d people for %d hands", t.Key, len(t.People), t.Hands)
		}
		if t.Labour != nil {
			k.hands(t)
		}
	}
}

// spells wants the stretches of a task to add up, in order, without a gap that
// is no break, drive or night.
func (k *checker) spells(t *crew.Task) {
	sum := 0
	for n, s := range t.Spells {
		sum += int(s.To - s.From)
		if s.From >= s.To || s.Day < 1 || s.Day > len(k.w.Days) {
			k.fail("%s: stretch %v", t.Key, s)
		}
		if n == 0 {
			continue
		}
		p := t.Spells[n-1]
		if s.Day < p.Day || s.Day == p.Day && s.From < p.To {
			k.fail("%s: stretch %v after %v", t.Key, s, p)
		}
		if s.Day == p.Day && !slices.ContainsFunc(k.w.Days[s.Day-1].Breaks, func(b crew.Pause) bool { return b.From == p.To && b.To == s.From }) {
			k.fail("%s: nothing stands between %v and %v", t.Key, p, s)
		}
		if s.Day > p.Day+1 {
			k.fail("%s: days between %v and %v", t.Key, p, s)
		}
	}
	first, last := t.Spells[0], t.Spells[len(t.Spells)-1]
	if sum != t.Minutes || t.Start != (crew.Moment{Day: first.Day, At: first.From}) || t.Finish != (crew.Moment{Day: last.Day, At: last.To}) {
		k.fail("%s: %d minutes from %v to %v in %v", t.Key, t.Minutes, t.Start, t.Finish, t.Spells)
	}
	if t.Labour != nil && k.whole(t.Labour.Rule) && first.Day != last.Day && t.Minutes <= k.longest(t) {
		k.fail("%s is left half done overnight: %v", t.Key, t.Spells)
	}
}

// yard is the phases whose tasks are done in the yard by the crew of a site too.
var yard = []string{"load", "travel", "return", "wash and dry", "put away"}

// longest is the working minutes of the longest day on the site that a task could
// have waited for, or of a day in the yard for a task there.
func (k *checker) longest(t *crew.Task) int {
	most := 0
	if set := k.w.Setting; set.Site && slices.Contains(yard, t.Labour.Rule.Phase) {
		most = int(set.Finish - set.Start)
		for _, b := range k.q.Catalog.Crew.Breaks {
			if int(b.After+b.Lasts) < int(set.Finish-set.Start) {
				most -= int(b.Lasts)
			}
		}
		return most
	}
	for n := range k.w.Days {
		d := &k.w.Days[n]
		if k.w.Setting.Site && !k.onSite(n+1) || n+1 <= t.Start.Day {
			continue
		}
		m := int(d.Leave - d.Arrive)
		for _, b := range d.Breaks {
			m -= int(max(0, min(b.To, d.Leave)-max(b.From, d.Arrive)))
		}
		most = max(most, m)
	}
	return most
}

func (k *checker) whole(r *catalog.LabourRule) bool {
	return (r.Whole || slices.Contains(k.q.Catalog.Crew.Whole, r.Phase))
}

// hands wants as many people as the rule asks for and takes, one of them with
// its skill.
func (k *checker) hands(t *crew.Task) {
	r := t.Labour.Rule
	least, most := t.Labour.Least, r.Most
	if most == 0 {
		most = 2 * r.Crew
	}
	size := 0
	for i := range k.w.People {
		if k.w.People[i].Crew == t.Crew {
			size++
		}
	}
	if tent := k.q.Job.Tent(t.Tent); tent != nil {
		most *= (tent.Many() + 9) / 10
	}
	// What takes more people than a crew has is done by all together.
	if t.Hands < min(least, len(k.w.People)) || t.Hands > max(least, most) {
		k.fail("%s has %d hands of a crew of %d; %d to %d were expected", t.Key, t.Hands, size, least, most)
	}
	if t.Hands < least && !k.said("people") {
		k.fail("%s has %d hands and nothing is said", t.Key, t.Hands)
	}
	skilled := r.Skill == "hand" || slices.ContainsFunc(t.People, func(p int) bool { return slices.Contains(k.w.People[p].Skills, r.Skill) })
	if !skilled {
		k.fail("%s has no %s", t.Key, r.Skill)
	}
	for _, p := range t.People {
		if k.w.People[p].Crew != t.Crew && t.Hands <= size {
			k.fail("%s is of crew %d but has person %d of crew %d", t.Key, t.Crew, p+1, k.w.People[p].Crew)
		}
	}
}

func ends(a, b crew.Moment) bool { return a.Day < b.Day || a.Day == b.Day && a.At <= b.At }

// order wants every task behind those that it names, and behind those that the
// shop's rules name, tent by tent.
func (k *checker) order() {
	for i := range k.w.Tasks {
		t := &k.w.Tasks[i]
		for _, a := range t.After {
			if !ends(k.w.Tasks[a].Finish, t.Start) {
				k.fail("%s begins at %v, before %s ends at %v", t.Key, t.Start, k.w.Tasks[a].Key, k.w.Tasks[a].Finish)
			}
		}
		for j := range k.w.Tasks {
			if o := &k.w.Tasks[j]; t.Labour != nil && o.Labour != nil && k.waits(t, o) && !ends(o.Finish, t.Start) {
				k.fail("%s begins at %v, but its rule is after %s, which ends at %v", t.Key, t.Start, o.Key, o.Finish)
			}
		}
	}
}

// waits tells whether a task's rule names another's, for the same tent or where
// one of them is of the whole job. Which of several alike tents it is stands at
// the end of the key; later turns of the vehicles are left to After.
func (k *checker) waits(t, o *crew.Task) bool {
	if !slices.Contains(t.Labour.Rule.After, o.Labour.Rule.ID) || strings.Contains(o.Key, "/turn ") || strings.Contains(t.Key, "/turn ") {
		return false
	}
	if t.Tent == "" || o.Tent == "" {
		return true
	}
	return t.Tent == o.Tent && strings.TrimPrefix(t.Key, t.Labour.Key) == strings.TrimPrefix(o.Key, o.Labour.Key)
}

// persons wants nobody in two tasks at once.
func (k *checker) persons() {
	type stretch struct {
		crew.Spell
		key string
	}
	all := make([][]stretch, len(k.w.People))
	for i := range k.w.Tasks {
		t := &k.w.Tasks[i]
		for _, p := range t.People {
			for _, s := range t.Spells {
				all[p] = append(all[p], stretch{s, t.Key})
			}
		}
	}
	for p := range all {
		slices.SortFunc(all[p], func(a, b stretch) int { return cmp.Or(cmp.Compare(a.Day, b.Day), cmp.Compare(a.From, b.From)) })
		for n := 1; n < len(all[p]); n++ {
			if a, b := all[p][n-1], all[p][n]; a.Day == b.Day && b.From < a.To {
				k.fail("person %d is in %s and %s at once", p+1, a.key, b.key)
			}
		}
	}
}

// gear wants no more of a part in use at once than there is.
func (k *checker) gear() {
	for i := range k.w.Tasks {
		t := &k.w.Tasks[i]
		if t.Labour == nil {
			continue
		}
		for _, part := range t.Labour.Rule.Gear {
			have := k.q.Catalog.Part(part).Owned
			if k.w.Setting.Site && t.Labour.Rule.Phase != "return" {
				have = 0
				if line := k.q.Parts.Find(part); line != nil {
					have = line.Total()
				}
			}
			use := 0
			for j := range k.w.Tasks {
				if o := &k.w.Tasks[j]; o.Labour != nil && slices.Contains(o.Labour.Rule.Gear, part) && slices.ContainsFunc(o.Spells, func(s crew.Spell) bool {
					return s.Day == t.Start.Day && s.From <= t.Start.At && t.Start.At < s.To
				}) {
					use++
				}
			}
			if use > have && !k.said("gear."+part) {
				k.fail("%d of %s are in use at %v, when %s begins; there are %d", use, part, t.Start, t.Key, have)
			}
		}
	}
}

func TestPlansOfDemoJobs(t *testing.T) {
	for _, name := range []string{"dinner", "garden", "fairground"} {
		check(t, quoted(t, name))
	}
}

func TestPlansOfRandomJobs(t *testing.T) {
	c := demo(t)
	rapid.Check(t, func(t *rapid.T) {
		if q := drawn(t, c); q != nil {
			check(t, q)
		}
	})
}

// drawn is the quote of a random job; nil of one that the fleet cannot carry.
func drawn(t *rapid.T, c *catalog.Catalog) *quote.Quote {
	q, list := quote.Build(c, jobtest.Draw(t, c))
	if q == nil && !slices.ContainsFunc(list, func(p diag.Problem) bool { return p.Code == load.TooMuch }) {
		t.Fatal(list)
	}
	return q
}

// A shop whose crew loads, drives, works and puts away all in one window, and
// leaves nothing half done overnight: work in the yard stands before the first
// drive and behind the last one.
func TestPlansOfOneWindow(t *testing.T) {
	c := demo(t)
	for i := range c.Rates.Windows {
		switch w := &c.Rates.Windows[i]; w.ID {
		case "yard-out", "yard-in":
			w.Phases = nil
		case "install":
			w.Phases = append([]string{"load"}, w.Phases...)
		case "strike":
			w.Phases = append(w.Phases, "wash and dry", "put away")
		}
	}
	c.Crew.Whole = catalog.Phases()
	rapid.Check(t, func(t *rapid.T) {
		if q := drawn(t, c); q != nil {
			check(t, q)
		}
	})
}
