package crew_test

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote"
	"tentwright/quote/crew"
	"tentwright/quote/jobtest"

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
	if t.Labour != nil && k.whole(t.Labour.Rule) && first.Day != last.Day && t.Minutes <= k.longest() {
		k.fail("%s is left half done overnight: %v", t.Key, t.Spells)
	}
}

// longest is the working minutes of the longest day on the site.
func (k *checker) longest() int {
	most := 0
	for n := range k.w.Days {
		d := &k.w.Days[n]
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

// days wants all work inside the days, outside the breaks, and on the site
// inside its hours and the light.
func (k *checker) days() {
	for n := range k.w.Days {
		d := &k.w.Days[n]
		if d.Number != n+1 || n > 0 && k.w.Days[n-1].Date.AddDays(1) != d.Date {
			k.fail("day %d is number %d on %s", n+1, d.Number, d.Date)
		}
		if d.Call > d.Arrive || d.Arrive > d.Leave || d.Leave > d.End || d.End > 24*60 {
			k.fail("day %d runs %s, %s, %s, %s", n+1, d.Call, d.Arrive, d.Leave, d.End)
		}
		from, until := k.siteHours(d.Date)
		if k.w.Setting.Site && !k.said("hours") && d.Leave > d.Arrive && (d.Arrive < from || d.Leave > until) && k.onSite(n+1) {
			k.fail("on day %d the crew is on the site from %s to %s; %s to %s is allowed", n+1, d.Arrive, d.Leave, from, until)
		}
		if !k.said("hours") && d.End > 0 && !k.said("drive") && (d.Call < min(k.w.Setting.Start, d.Call+1) || d.Call < k.w.Setting.Start || d.End > k.w.Setting.Finish) {
			k.fail("day %d runs from %s to %s; %s to %s is the crew's day", n+1, d.Call, d.End, k.w.Setting.Start, k.w.Setting.Finish)
		}
	}
	for i := range k.w.Tasks {
		for _, s := range k.w.Tasks[i].Spells {
			d := &k.w.Days[s.Day-1]
			if s.From < d.Call || s.To > d.End {
				k.fail("%s is at %v outside its day from %s to %s", k.w.Tasks[i].Key, s, d.Call, d.End)
			}
			for _, b := range d.Breaks {
				if s.From < b.To && b.From < s.To {
					k.fail("%s runs through a break: %v; day %+v; ask %+v said %v", k.w.Tasks[i].Key, s, *d, k.q.Job.Labour.Windows, k.r.Cautions)
				}
			}
		}
	}
}

// onSite tells whether a labour task of the site is done on a day.
func (k *checker) onSite(day int) bool {
	return slices.ContainsFunc(k.w.Tasks, func(t crew.Task) bool {
		return t.Labour != nil && t.Labour.Rule.Phase != "return" && slices.ContainsFunc(t.Spells, func(s crew.Spell) bool { return s.Day == day })
	})
}

func (k *checker) siteHours(date unit.Date) (from, until unit.Clock) {
	until = 24 * 60
	for _, ask := range k.q.Job.Labour.Windows {
		if ask.Window == k.w.Labour.Spec.ID {
			from = ask.From
			if ask.Until > 0 {
				until = ask.Until
			}
		}
	}
	lamps := false
	for _, s := range k.q.Job.Site {
		lamps = lamps || s.Factor == "light" && s.Option != "day"
	}
	for _, l := range k.q.Catalog.Crew.Daylight {
		if !lamps && strings.EqualFold(l.Month, time.Month(date.Month).String()) {
			from, until = max(from, l.From), min(until, l.Until)
		}
	}
	return from, until
}

// shifts adds every person's minutes up again.
func (k *checker) shifts() {
	work, paid := 0, 0
	for p := range k.w.People {
		person := &k.w.People[p]
		if person.Number != p+1 || len(person.Days) != len(k.w.Days) || len(person.Skills) == 0 {
			k.fail("person %d: %+v", p+1, person)
		}
		for n, h := range person.Days {
			own := 0
			for i := range k.w.Tasks {
				if t := &k.w.Tasks[i]; slices.Contains(t.People, p) {
					for _, s := range t.Spells {
						if s.Day == n+1 {
							own += int(s.To - s.From)
							if s.From < h.Call || s.To > h.End {
								k.fail("person %d works at %v outside the shift %v", p+1, s, h)
							}
						}
					}
				}
			}
			pay := int(h.End - h.Call)
			for _, b := range k.w.Days[n].Breaks {
				if !b.Spec.Paid && h.Call <= b.From && b.To <= h.End {
					pay -= int(b.To - b.From)
				}
			}
			if own != h.Work || pay != h.Paid || h.Work > h.Paid {
				k.fail("person %d on day %d: works %d, is paid %d; the shift says %+v", p+1, n+1, own, pay, h)
			}
			work, paid = work+own, paid+pay
		}
	}
	if work != k.w.Work || paid != k.w.Paid || k.w.Idle != paid-work {
		k.fail("%d worked, %d paid; the plan says %d, %d and %d idle", work, paid, k.w.Work, k.w.Paid, k.w.Idle)
	}
}

// chain wants the critical chain to run forward without overlap.
func (k *checker) chain() {
	if len(k.w.Tasks) > 0 && len(k.w.Chain) == 0 {
		k.fail("no critical chain")
	}
	for n, i := range k.w.Chain {
		if !k.w.Tasks[i].Critical {
			k.fail("%s is on the chain but not critical", k.w.Tasks[i].Key)
		}
		if n > 0 && !ends(k.w.Tasks[k.w.Chain[n-1]].Finish, k.w.Tasks[i].Start) {
			k.fail("%s follows %s on the chain but begins before it ends", k.w.Tasks[i].Key, k.w.Tasks[k.w.Chain[n-1]].Key)
		}
	}
	if k.w.Minutes < k.w.Shortest {
		k.fail("%d minutes beat the bound of %d", k.w.Minutes, k.w.Shortest)
	}
}

// sizes wants the rows to rise, none later than one of fewer people, and the
// cheapest to be that.
func (k *checker) sizes() {
	asked, cheapest := 0, -1
	for i := range k.w.Sizes {
		s := &k.w.Sizes[i]
		if s.Asked {
			asked++
			if s.Paid != k.w.Paid || s.Finish != k.w.Finish || s.Days != len(k.w.Days) {
				k.fail("the row asked for, %+v, is not the plan", s)
			}
		}
		if !s.Wages.Add(s.Beds).Equal(s.Cost) || s.Overtime > s.Paid {
			k.fail("row %+v does not add up", s)
		}
		// With several crews one more person may send a driver or a lead to another.
		if i > 0 && (k.w.Sizes[i-1].People >= s.People || k.w.Crews == 1 && !ends(s.Finish, k.w.Sizes[i-1].Finish)) {
			k.fail("row %+v after %+v", s, k.w.Sizes[i-1])
		}
		if s.Meets && (cheapest < 0 || s.Cost.LessThan(k.w.Sizes[cheapest].Cost)) {
			cheapest = i
		}
	}
	for i := range k.w.Sizes {
		if k.w.Sizes[i].Cheapest != (i == cheapest) {
			k.fail("row %d: cheapest is row %d", i, cheapest)
		}
	}
	if len(k.w.Tasks) > 0 && asked != 1 {
		k.fail("%d rows are of the crew asked for", asked)
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
		q, list := quote.Build(c, jobtest.Draw(t, c))
		if err := list.Err(); err != nil {
			t.Fatal(err)
		}
		check(t, q)
	})
}
