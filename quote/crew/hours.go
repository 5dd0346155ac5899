package crew

import (
	"fmt"
	"strings"

	"tentwright/catalog"
	"tentwright/catalog/unit"
)

// hours is when the site may be worked on and by which of the limits.
type hours struct {
	shop, job, light bool // which limits hold
}

// leastSite is the working minutes on the site below which a day is not worth
// the drive: then limits give way, and the plan says which.
const leastSite = 60

// settleHours decides by which limits the days go. All hold where they leave
// time to work. Where the drive there and home leaves none, the crew stays; where
// the limits contradict each other, the hours of the site go before the shop's
// and before the light, because the gate is shut and lamps can be brought.
func (b *winder) settleHours() {
	b.stay = b.ask.Stay
	b.hour = hours{shop: true, job: true, light: true}
	if !b.set.Site {
		return
	}
	for _, try := range b.limits() {
		for _, stay := range []bool{b.ask.Stay, true} {
			b.hour, b.stay = try, stay
			if b.enough() {
				b.sayHours()
				return
			}
		}
	}
	// Even a night near the site does not help: the drive is longer than a day.
	// Nor may the limits that contradict each other hold: there would be no day.
	b.hour = hours{shop: true}
	aside := ""
	if gave := b.gave(); len(gave) > 0 {
		aside = "; set aside: " + strings.Join(gave, " and ")
	}
	b.say("drive", true, "the drive of %s one way leaves no time to work in a day from %s to %s; days of travel before and after were expected, and the drive is shown as long as a day%s",
		unit.Span(b.trip.drive), b.set.Start, b.set.Finish, aside)
	y := b.yard(1)
	b.trip.drive = max(0, min(b.trip.drive, y.total-b.trip.papers-leastSite))
}

// limits is which limits hold, from all to fewer: one that says nothing is not
// set aside.
func (b *winder) limits() []hours {
	given := b.ask.From != 0 || b.ask.Until != 0
	all := []hours{{true, true, true}}
	if given {
		all = append(all, hours{false, true, true})
	}
	if len(b.c.Crew.Daylight) > 0 && b.needsLight() {
		all = append(all, hours{true, true, false})
		if given {
			all = append(all, hours{false, true, false})
		}
	}
	if given {
		all = append(all, hours{true, false, false})
	}
	return all
}

// enough tells whether the first, a later and the last day leave time to work.
func (b *winder) enough() bool {
	for _, n := range []int{1, 2, b.w.Days} {
		if f := b.frame(n, 0); f.total-f.home-f.lead < leastSite {
			return false
		}
	}
	return true
}

// sayHours says which limits had to give way.
func (b *winder) sayHours() {
	if b.stay && !b.ask.Stay {
		b.say("stay", false, "the drive of %s there and again home leaves no time to work; the crew is planned to sleep near the site", unit.Span(b.trip.drive))
	}
	if gave := b.gave(); len(gave) > 0 {
		b.say("hours", true, "the drive, the crew's day, the hours of the site%s and the light leave no time to work together; %s was set aside",
			b.asked(), strings.Join(gave, " and "))
	}
}

// gave is the limits that are set but do not hold, in words.
func (b *winder) gave() []string {
	var gave []string
	if !b.hour.shop {
		gave = append(gave, fmt.Sprintf("the crew's day from %s to %s", b.set.Start, b.set.Finish))
	}
	if asked := b.asked(); !b.hour.job && asked != "" {
		gave = append(gave, "the hours of the site"+asked)
	}
	if !b.hour.light && len(b.c.Crew.Daylight) > 0 && b.needsLight() {
		gave = append(gave, "the light of day")
	}
	return gave
}

// asked is the hours of the site as the job gives them, in words.
func (b *winder) asked() string {
	text := ""
	if b.ask.From != 0 {
		text += " from " + b.ask.From.String()
	}
	if b.ask.Until != 0 {
		text += " until " + b.ask.Until.String()
	}
	return text
}

// siteHours is between which minutes of a day the site may be worked on: from the
// job's hours and from the light.
func (b *winder) siteHours(date unit.Date) (from, until int) {
	from, until = 1, int(endOfDay)
	if b.hour.job {
		if b.ask.From != 0 {
			from = int(b.ask.From)
		}
		if b.ask.Until != 0 {
			until = int(b.ask.Until)
		}
	}
	if d := b.c.Crew.Light(date.Month); b.hour.light && d != nil && b.needsLight() {
		from, until = max(from, int(d.From)), min(until, int(d.Until))
	}
	return from, until
}

// endOfDay is midnight after a day.
const endOfDay = 24 * unit.Clock(unit.Hour)

// needsLight tells whether the work stops at dusk: no lamps are up as long as
// the site's light is the factor's usual one.
func (b *winder) needsLight() bool {
	f := b.c.SiteFactor(catalog.LightFactor)
	return f == nil || len(f.Options) == 0 || b.j.Option(b.c, catalog.LightFactor) == &f.Options[0]
}
