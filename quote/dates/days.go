package dates

import (
	"cmp"
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/unit"
)

// Off is a day on which offices do not work, or only the yard is shut.
type Off struct {
	Day  unit.Date
	Name string
}

// Days tells which days of a calendar are days of work. It is for one user at a
// time, since it keeps the holidays that it has found.
type Days struct {
	c     *catalog.Calendar
	years map[int][]Off
}

// NewDays looks at a calendar.
func NewDays(c *catalog.Calendar) *Days { return &Days{c, map[int][]Off{}} }

// Works tells whether a day counts: every one of the calendar, one on which
// offices work, or such a one on which the yard is open too.
func (d *Days) Works(day unit.Date, count string) bool {
	if everyDay(count) {
		return true
	}
	return d.c.Works(day.Weekday()) && d.holiday(day) == "" && (count != catalog.CountYard || d.closed(day) == "")
}

// Off is why offices or the yard do not work on a day that is no common day of
// rest; empty for a day of work.
func (d *Days) Off(day unit.Date) string { return cmp.Or(d.holiday(day), d.closed(day)) }

// ofYear is the holidays that one year's rules give, and the days on which they
// are kept, of which some lie in the year before or after it.
func (d *Days) ofYear(year int) []Off {
	if all, ok := d.years[year]; ok {
		return all
	}
	var all []Off
	for i := range d.c.Holidays {
		h := &d.c.Holidays[i]
		on := onDay(h, year)
		if on.IsZero() {
			continue
		}
		all = append(all, Off{on, h.Name})
		if kept := observed(h, on); kept != on {
			all = append(all, Off{kept, h.Name + ", observed"})
		}
	}
	d.years[year] = all
	return all
}

// holiday is the name of the holiday on a day, or none.
func (d *Days) holiday(day unit.Date) string {
	for year := day.Year - 1; year <= day.Year+1; year++ {
		for _, off := range d.ofYear(year) {
			if off.Day == day {
				return off.Name
			}
		}
	}
	return ""
}

// closed is why only the yard is shut on a day, or nothing.
func (d *Days) closed(day unit.Date) string {
	for i := range d.c.Closed {
		if c := &d.c.Closed[i]; !day.Before(c.From) && !c.Last().Before(day) {
			return c.Why
		}
	}
	return ""
}

// Holidays lists the holidays of some years, the days on which they are kept
// beside those on which they fall. No day stands twice.
func (d *Days) Holidays(from, to int) []Off {
	var off []Off
	for year := from - 1; year <= to+1; year++ {
		for _, o := range d.ofYear(year) {
			if o.Day.Year >= from && o.Day.Year <= to {
				off = append(off, Off{o.Day, d.holiday(o.Day)})
			}
		}
	}
	return sorted(off)
}

// Closed lists the days of some years on which only the yard is shut.
func (d *Days) Closed(from, to int) []Off {
	var off []Off
	for i := range d.c.Closed {
		c := &d.c.Closed[i]
		for day := c.From; !c.Last().Before(day); day = day.AddDays(1) {
			if day.Year >= from && day.Year <= to && d.holiday(day) == "" {
				off = append(off, Off{day, d.closed(day)})
			}
		}
	}
	return sorted(off)
}

// sorted is days in their order, each once.
func sorted(off []Off) []Off {
	slices.SortStableFunc(off, func(a, b Off) int { return b.Day.DaysUntil(a.Day) })
	return slices.CompactFunc(off, func(a, b Off) bool { return a.Day == b.Day })
}

// mostSteps bounds a walk over a calendar that has no day of work.
const mostSteps = 4000

// Add is the day so many counted days after another, or before it; the day
// itself is not counted. Of no days at all it is the day, whatever it is.
func (d *Days) Add(day unit.Date, days int, count string) unit.Date {
	if everyDay(count) {
		return day.AddDays(days)
	}
	step := 1
	if days < 0 {
		step, days = -1, -days
	}
	for n := 0; days > 0 && n < mostSteps; n++ {
		if day = day.AddDays(step); d.Works(day, count) {
			days--
		}
	}
	return day
}

// Roll moves a day that is none of work to the one before or after it; on is
// whose work, that of offices or that of the yard.
func (d *Days) Roll(day unit.Date, roll, on string) unit.Date {
	switch {
	case roll == "" || d.Works(day, on):
		return day
	case roll == catalog.RollBefore:
		return d.Add(day, -1, on)
	}
	return d.Add(day, 1, on)
}

// everyDay tells whether every day of the calendar counts.
func everyDay(count string) bool { return count == "" || count == catalog.CountCalendar }
