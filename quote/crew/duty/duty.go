// Package duty holds drivers' days against the rule of driving hours.
//
//	Day       one duty day of a driver: on, off, and when they drive
//	Check     the days against the rule
//	Finding   one thing that is not allowed, with its figures
//
// It counts on the safe side. All of a day from on to off is on duty, meals too.
// A long rest does not begin the week anew (the 34 hours of 49 CFR 395.3(c)), and
// what drivers did for others or on days that are not told is not known. A break
// from driving may be any other work (49 CFR 395.3(a)(3)(ii) as amended in 2020;
// guides of before want it off duty). State law and a driver's licence may ask for
// more; the carrier answers for it.
package duty

import (
	"cmp"
	"fmt"
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/unit"
)

// Day is one duty day of a driver. A time earlier than the one before it is on the
// next day: on at 22:00 and off at 06:00 is a night of eight hours.
type Day struct {
	Date   unit.Date // on which they come on duty
	On     unit.Clock
	Off    unit.Clock // zero: with the end of the last drive
	Drives []Stretch
}

// Stretch is a drive without a pause.
type Stretch struct{ From, To unit.Clock }

// Rules that days can break.
const (
	Drive  = "drive"  // too many hours of driving in a day
	Window = "window" // driving too long after coming on duty
	Off    = "off"    // driving after too short a rest
	Break  = "break"  // too long a drive without a break
	Week   = "week"   // driving after too many hours on duty in some days
)

// Finding is something that the rule does not allow, in exact minutes.
type Finding struct {
	Rule  string
	Date  unit.Date  // of the duty day
	Found unit.Span  // what the day has
	Limit unit.Span  // what the rule allows, or asks for
	At    unit.Clock // from when on it is not allowed
	After bool       // At is after midnight
}

// String is the finding for people: what was found; what was expected.
func (f Finding) String() string {
	at := f.At.String()
	if f.After {
		at += " of the next day"
	}
	switch f.Rule {
	case Off:
		return fmt.Sprintf("drives at %s after %s off duty; %s or more were expected", at, f.Found, f.Limit)
	case Window:
		return fmt.Sprintf("drives until %s after coming on duty; no driving after %s, at %s, was expected", f.Found, f.Limit, at)
	case Break:
		return fmt.Sprintf("drives %s without a break; one after %s, at %s, was expected", f.Found, f.Limit, at)
	case Week:
		return fmt.Sprintf("drives with %s on duty in the days up to then; no driving after %s, at %s, was expected", f.Found, f.Limit, at)
	}
	return fmt.Sprintf("drives %s in a day; at most %s, until %s, was expected", f.Found, f.Limit, at)
}

// Holds tells whether the rule holds for a driver of a vehicle, or of a
// combination, of so much gross rating.
func Holds(rule *catalog.Duty, rating unit.Mass) bool { return rule != nil && rating >= rule.Over }

// Check holds the days of one driver against a rule: all that they are on duty,
// also those without driving, one for each day of work. The findings are in the
// order of the days.
func Check(rule *catalog.Duty, days []Day) []Finding {
	if rule == nil {
		return nil
	}
	c := checker{rule: rule}
	for i := range days {
		c.days = append(c.days, placed(&days[i]))
	}
	slices.SortStableFunc(c.days, func(a, b day) int { return cmp.Compare(a.on, b.on) })
	for n := range c.days {
		if len(c.days[n].drives) > 0 {
			c.rest(n)
			c.day(n)
			c.breaks(n)
			c.week(n)
		}
	}
	return c.found
}

// perDay is the minutes of a day.
const perDay = 24 * 60

// day is a duty day on one axis of minutes, so that midnight is no edge.
type day struct {
	date    unit.Date
	on, off int
	drives  []span // in order, none overlapping
}

// span is from a minute to a minute.
type span struct{ from, to int }

// placed puts a day on the axis.
func placed(d *Day) day {
	at := d.Date.Serial() * perDay
	p := day{date: d.Date, on: at + int(d.On)}
	p.off = p.on
	if d.Off > 0 {
		p.off = later(at+int(d.Off), p.on)
	}
	for _, s := range d.Drives {
		from := later(at+int(s.From), p.on)
		if to := later(at+int(s.To), from); to > from {
			p.drives = append(p.drives, span{from, to})
		}
	}
	slices.SortFunc(p.drives, func(a, b span) int { return cmp.Compare(a.from, b.from) })
	p.drives = merged(p.drives)
	if n := len(p.drives); n > 0 {
		p.off = max(p.off, p.drives[n-1].to)
	}
	return p
}

// later is a time of the clock on the first day that is not before another.
func later(at, than int) int {
	if at < than {
		at += perDay
	}
	return at
}

// merged joins drives without a pause between.
func merged(all []span) []span {
	var list []span
	for _, s := range all {
		if n := len(list); n > 0 && s.from <= list[n-1].to {
			list[n-1].to = max(list[n-1].to, s.to)
			continue
		}
		list = append(list, s)
	}
	return list
}
