package crew

import (
	"fmt"
	"slices"
	"strings"

	"tentwright/catalog/unit"
	"tentwright/quote/crew/duty"
)

// lookDrivers holds the days of each driver against the rule of driving hours,
// if their vehicle, with what it pulls, is heavy enough for it. The crews of other
// windows are other people as far as the plan knows, so that hours of theirs do
// not count here: the caution says so.
func (b *winder) lookDrivers(d *draft) {
	rule, road := b.c.Crew.Duty, d.wheel()
	for p := range d.t.people {
		person := &d.t.people[p]
		if !person.Driver || !duty.Holds(rule, b.rating(person.Vehicle)) {
			continue
		}
		for n, f := range duty.Check(rule, d.dutyOf(p, road)) {
			b.says = append(b.says, Caution{Key: fmt.Sprintf("%s.duty.%d.%d", b.w.Spec.ID, p+1, n+1), Window: b.w.Spec.ID, Severe: true,
				Text: fmt.Sprintf("the driver of %s on %s: %s; what they do in other windows is not counted", person.Vehicle, f.Date, f), Source: rule.Source})
		}
	}
}

// rating is the gross rating of a trip's vehicle, with what it pulls.
func (b *winder) rating(key string) unit.Mass {
	sum := unit.Mass(0)
	for i := range b.trip.m.Trips {
		if t := &b.trip.m.Trips[i]; t.Key == key || t.Tow == key {
			sum += t.Vehicle.Rating
		}
	}
	return sum
}

// dutyOf is the days of a driver: on duty from call to end, and when they drive.
func (d *draft) dutyOf(p int, road []int) []duty.Day {
	var days []duty.Day
	for n, h := range d.t.people[p].Days {
		if h.Call == 0 {
			continue
		}
		day := duty.Day{Date: d.days[n].Date, On: h.Call, Off: h.End}
		for _, i := range road {
			t := &d.tasks[i]
			if t.Start.Day > n+1 || t.Finish.Day < n+1 || !slices.Contains(t.People, p) {
				continue
			}
			for _, s := range t.Spells {
				if s.Day == n+1 {
					day.Drives = append(day.Drives, duty.Stretch{From: s.From, To: s.To})
				}
			}
		}
		days = append(days, day)
	}
	return days
}

// wheel is the tasks in which somebody sits at the wheel.
func (d *draft) wheel() []int {
	var out []int
	for i := range d.tasks {
		if t := &d.tasks[i]; t.Kind == Fetch || strings.HasPrefix(t.Key, driveOut) || strings.HasPrefix(t.Key, driveHome) {
			out = append(out, i)
		}
	}
	return out
}
