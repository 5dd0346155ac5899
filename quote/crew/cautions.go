package crew

import (
	"fmt"
	"slices"
	"strings"

	"tentwright/catalog/unit"
)

// say notes something of the window that a person must look at.
func (b *winder) say(key string, severe bool, format string, args ...any) {
	key = b.w.Spec.ID + "." + key
	if slices.ContainsFunc(b.says, func(c Caution) bool { return c.Key == key }) {
		return
	}
	b.says = append(b.says, Caution{Key: key, Window: b.w.Spec.ID, Severe: severe, Text: fmt.Sprintf(format, args...)})
}

// look says what is wrong with the plan.
func (b *winder) look(d *draft) {
	b.lookTime(d)
	b.lookPeople(d)
	b.lookDays(d)
	b.lookDrivers(d)
	b.cutSays()
}

// lookTime says what is not done in time.
func (b *winder) lookTime(d *draft) {
	ready, given := b.ready(), b.given()
	if b.outside() {
		b.sayOutside()
		if done := d.upTo(); done.Day <= given && !ready.before(done) {
			return // the hour of the inspection is what is wrong
		}
	}
	if n := len(d.days); n > given {
		b.say("days", true, "the work takes %d days; %d were expected: more people, fewer tasks or another day are needed", n, given)
	}
	if d.late() {
		b.say("late", true, "all is ready on day %d at %s; day %d at %s was expected", d.done.Day, d.done.At, ready.Day, ready.At)
	}
	if d.missed() {
		t := &d.tasks[d.find("inspection")]
		b.say("inspection", true, "the tents are ready for the inspection on day %d at %s; day %d at %s, when the authority comes, was expected",
			t.Start.Day, t.Start.At, b.due(), b.ask.Inspect)
	}
}

// few is the first of a list of tasks, and how many more there are.
func few(list []string) string {
	const most = 3
	more := ""
	if n := len(list) - most; n > 0 {
		list, more = list[:most], fmt.Sprintf(" and %d more tasks likewise", n)
	}
	return strings.Join(list, ", ") + more
}

// mostSaid is how many cautions of one kind a window has: whoever has read so
// many knows, and the rest would hide other kinds.
const mostSaid = 8

// cutSays keeps the first cautions of each kind, such as one for each day, and
// says behind the last of them how many more there are.
func (b *winder) cutSays() {
	last, more := map[string]int{}, map[string]int{}
	count := map[string]int{}
	var kept []Caution
	for _, c := range b.says {
		kind, _, _ := strings.Cut(strings.TrimPrefix(c.Key, b.w.Spec.ID+"."), ".")
		if count[kind] == mostSaid {
			more[kind]++
			continue
		}
		count[kind]++
		last[kind] = len(kept)
		kept = append(kept, c)
	}
	for kind, n := range more {
		kept[last[kind]].Text += fmt.Sprintf("; and %d more likewise", n)
	}
	b.says = kept
}

// lookPeople says which people are missing.
func (b *winder) lookPeople(d *draft) {
	if n := len(d.t.people); n < len(b.trip.vehicles) {
		b.say("drivers", true, "%d vehicles go, but the crew has %d people; a driver for each was expected", len(b.trip.vehicles), n)
	}
	var thin []string
	for _, p := range d.parts {
		for i := range p.n.works {
			if w := &p.n.works[i]; w.kind != Drive && p.a.mode[i].hands < w.least {
				if text := fmt.Sprintf("%s takes %d", w.name, w.least); !slices.Contains(thin, text) {
					thin = append(thin, text)
				}
			}
		}
	}
	if len(thin) > 0 {
		b.say("people", true, "the crew is too small for what it does: %s", few(thin))
	}
	standing := 0
	for i := range d.t.people {
		if p := &d.t.people[i]; b.set.Site && !p.Driver && p.Rides == "" {
			standing++
		}
	}
	if standing > 0 {
		b.say("seats", false, "%d of the crew have no seat in the vehicles that go; another vehicle for people was expected", standing)
	}
	for _, t := range b.trip.later {
		if at := d.find("fetch/" + t.Key); at >= 0 {
			b.say("turn."+t.Key, false, "%s drives again on day %d at %s: somebody in the yard must load or empty it about %s",
				vehicleName(t), d.tasks[at].Start.Day, d.tasks[at].Start.At, d.tasks[at].middle())
		}
	}
}

// middle is the time of a task half way through its first stretch.
func (t *Task) middle() unit.Clock { return t.Start.At + (t.Spells[0].To-t.Start.At)/2 }

// lookDays says which days are too long.
func (b *winder) lookDays(d *draft) {
	longest := minutesOf(b.c.Rates.Overtime.Longest)
	for n := range d.days {
		long, stretch := 0, 0
		for i := range d.t.people {
			h := &d.t.people[i].Days[n]
			long, stretch = max(long, h.Paid), max(stretch, h.longestStretch(&d.days[n]))
		}
		if long > longest {
			b.say(fmt.Sprintf("long.%d", n+1), true, "day %d has %s of paid work; at most %s was expected", n+1, unit.Span(long), unit.Span(longest))
		}
		if unbroken := int(b.c.Crew.Unbroken); unbroken > 0 && stretch > unbroken {
			b.say(fmt.Sprintf("break.%d", n+1), false, "day %d has %s without a break; one after %s at most was expected", n+1, unit.Span(stretch), b.c.Crew.Unbroken)
		}
	}
}

// clockOf is minutes from midnight as a time.
func clockOf(minutes int) unit.Clock { return unit.Clock(minutes) }
