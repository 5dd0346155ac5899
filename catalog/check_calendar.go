package catalog

import (
	"fmt"
	"slices"

	"tentwright/catalog/unit"
)

// checkCalendar checks the file, which the shop has.
func (k *checker) checkCalendar() {
	c := k.c.Calendar
	for i, day := range c.Week {
		if slices.Contains(c.Week[:i], day) {
			k.list.Addf(c.Where.Of("week"), RepeatedID, "%q stands twice in the week; each day of work once was expected", day)
		}
	}
	for i := range c.Holidays {
		k.checkHoliday(&c.Holidays[i])
	}
	for i := range c.Closed {
		k.checkClosed(&c.Closed[i])
	}
	ids := newKnown("date")
	for i := range c.Dates {
		r := &c.Dates[i]
		ids.add(k.list, r.ID, r.Where.Of("id"))
		k.checkDateRule(r)
	}
}

// holidayForms is what a holiday may be given by.
const holidayForms = "month and day, month with nth and weekday, easter, or date"

// checkHoliday wants a holiday to be given in one way and to be a day of some
// year.
func (k *checker) checkHoliday(h *Holiday) {
	if !k.form.Sound(h.Where, "month", "day", "nth", "weekday", "easter", "date") {
		return
	}
	fixed := h.Month != "" && h.Day != 0 && h.Nth == "" && h.Weekday == ""
	nth := h.Month != "" && h.Day == 0 && h.Nth != "" && h.Weekday != ""
	others := h.Month == "" && h.Day == 0 && h.Nth == "" && h.Weekday == ""
	switch easter, date := h.Easter != nil, !h.Date.IsZero(); {
	case (fixed || nth) && !easter && !date || others && easter != date:
	default:
		k.list.Addf(h.Where.Pos(), BadHoliday, "holiday %q is given in no way or in more than one; %s was expected", h.Name, holidayForms)
		return
	}
	// 2028 has a 29 February.
	if _, err := unit.ParseDate(fmt.Sprintf("2028-%02d-%02d", MonthNumber(h.Month), h.Day)); fixed && err != nil {
		k.list.Addf(h.Where.Of("day"), BadHoliday, "holiday %q is on %d %s, which no year has; a day of that month was expected", h.Name, h.Day, h.Month)
	}
}

// longestClosed is the most days that one entry closes the yard for: a longer
// one is a slip in the year.
const longestClosed = 366

func (k *checker) checkClosed(c *ClosedDay) {
	if !k.form.Sound(c.Where, "from", "to") {
		return
	}
	switch days := c.From.DaysUntil(c.Last()); {
	case days < 0:
		k.list.Addf(c.Where.Of("to"), BadHoliday, "closed to %s is before its from %s; the same day or later was expected", c.To, c.From)
	case days >= longestClosed:
		k.list.Addf(c.Where.Of("to"), BadHoliday, "closed from %s to %s is %d days; at most %d were expected", c.From, c.To, days+1, longestClosed)
	}
}

// checkDateRule wants a date to have one kind of day, and a window that does
// not run backwards where both ends are counted alike.
func (k *checker) checkDateRule(r *DateRule) {
	k.items.want(k.list, r.Item, r.Where.Of("item"))
	if !k.form.Sound(r.Where, "earliest", "latest", "day", "term") {
		return
	}
	kinds := 0
	for _, given := range []bool{r.Earliest != nil || r.Latest != nil, r.Day != nil, r.Term != ""} {
		if given {
			kinds++
		}
	}
	if kinds != 1 {
		k.list.Addf(r.Where.Pos(), BadDateRule, "date %q is given in no way or in more than one; earliest and latest (or one of them), day, or term was expected", r.ID)
		return
	}
	for _, d := range []*DayFrom{r.Earliest, r.Latest, r.Day} {
		if d != nil && d.Unsigned != "" && d.From != FromSigned && d.From != "" {
			k.list.Addf(d.Where.Of("unsigned"), BadDateRule, "date %q is counted from %s, so unsigned changes nothing; from: signed was expected beside it", r.ID, d.From)
		}
		if d != nil && d.On != "" && d.Roll == "" && k.form.Sound(d.Where, "roll") {
			k.list.Addf(d.Where.Of("on"), BadDateRule, "date %q is not moved, so on changes nothing; roll: before or after was expected beside it", r.ID)
		}
	}
	if a, b := r.Earliest, r.Latest; a != nil && b != nil && a.From == b.From && a.Count == b.Count && a.Days > b.Days {
		k.list.Addf(a.Where.Of("days"), BadDateRule, "date %q is not before day %d but by day %d; an earliest that is not after the latest was expected", r.ID, a.Days, b.Days)
	}
}
