package crew

import (
	"fmt"

	"tentwright/catalog/unit"
	"tentwright/quote/crew/duty"
)

// lookDrivers holds the days of each driver against the rule of driving hours,
// if their vehicle, with what it pulls, is heavy enough for it.
func (b *winder) lookDrivers(d *draft) {
	rule := b.c.Crew.Duty
	for p := range d.t.people {
		person := &d.t.people[p]
		if !person.Driver || !duty.Holds(rule, b.rating(person.Vehicle)) {
			continue
		}
		for n, f := range duty.Check(rule, d.dutyOf(p)) {
			b.says = append(b.says, Caution{Key: fmt.Sprintf("%s.duty.%d.%d", b.w.Spec.ID, p+1, n+1), Window: b.w.Spec.ID, Severe: true,
				Text: fmt.Sprintf("the driver of %s on %s: %s", person.Vehicle, f.Date, f), Source: rule.Source})
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
func (d *draft) dutyOf(p int) []duty.Day {
	var days []duty.Day
	for n, h := range d.t.people[p].Days {
		if h.Call == 0 {
			continue
		}
		day := duty.Day{Date: d.days[n].Date, On: h.Call, Off: h.End}
		for i := range d.tasks {
			if t := &d.tasks[i]; d.drives(t, p) {
				for _, s := range t.Spells {
					if s.Day == n+1 {
						day.Drives = append(day.Drives, duty.Stretch{From: s.From, To: s.To})
					}
				}
			}
		}
		days = append(days, day)
	}
	return days
}

// drives tells whether a person sits at the wheel in a task.
func (d *draft) drives(t *Task, p int) bool {
	road := t.Kind == Fetch || t.Kind == Drive && (t.Key == keyOfDay("drive-out", t.Start.Day) || t.Key == keyOfDay("drive-home", t.Start.Day))
	for _, q := range t.People {
		if road && q == p {
			return true
		}
	}
	return false
}
