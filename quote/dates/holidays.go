package dates

import (
	"slices"
	"time"

	"tentwright/catalog"
	"tentwright/catalog/unit"
)

// onDay is the day of a holiday in a year; none where that year has none.
func onDay(h *catalog.Holiday, year int) unit.Date {
	month := catalog.MonthNumber(h.Month)
	day := unit.Date{Year: year, Month: month, Day: h.Day}
	switch {
	case year < h.Since:
		return unit.Date{}
	case !h.Date.IsZero():
		if h.Date.Year != year {
			return unit.Date{}
		}
		return h.Date
	case h.Easter != nil:
		return Easter(year).AddDays(*h.Easter)
	case h.Nth != "":
		return nth(year, month, h.Nth, catalog.WeekdayOf(h.Weekday))
	case day != day.AddDays(0):
		return unit.Date{} // a 29 February in a common year
	}
	return day
}

// observed is the day on which a holiday is kept.
func observed(h *catalog.Holiday, day unit.Date) unit.Date {
	switch {
	case h.Observed != "" && day.Weekday() == time.Sunday:
		return day.AddDays(1)
	case h.Observed == catalog.ObservedNearest && day.Weekday() == time.Saturday:
		return day.AddDays(-1)
	case h.Observed == catalog.ObservedMonday && day.Weekday() == time.Saturday:
		return day.AddDays(2)
	}
	return day
}

// nth is the first to fourth weekday of a month, or its last.
func nth(year, month int, which string, weekday time.Weekday) unit.Date {
	if which == "last" {
		day := unit.Date{Year: year, Month: month + 1, Day: 0}.AddDays(0)
		return day.AddDays(-int(day.Weekday()-weekday+7) % 7)
	}
	day := unit.Date{Year: year, Month: month, Day: 1}
	day = day.AddDays(int(weekday-day.Weekday()+7) % 7)
	return day.AddDays(7 * slices.Index([]string{"first", "second", "third", "fourth"}, which))
}

// Easter is Easter Sunday of the Gregorian calendar, by the rule without
// exceptions that goes back to Butcher's Ecclesiastical Calendar of 1876.
func Easter(year int) unit.Date {
	a, b, c := year%19, year/100, year%100
	d, e := b/4, b%4
	g := (8*b + 13) / 25
	h := (19*a + b - d - g + 15) % 30
	j, k := c/4, c%4
	m := (a + 11*h) / 319
	r := (2*e + 2*j - k - h + m + 32) % 7
	month := (h - m + r + 90) / 25
	return unit.Date{Year: year, Month: month, Day: (h - m + r + month + 19) % 32}
}
