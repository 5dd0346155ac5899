package catalog

import (
	"slices"
	"strings"
	"time"
)

// MonthNumber is the number of a month by its name in lower case, from 1; 0 for
// any other word.
func MonthNumber(name string) int {
	for m := time.January; m <= time.December; m++ {
		if strings.EqualFold(m.String(), name) {
			return int(m)
		}
	}
	return 0
}

// WeekdayOf is the weekday of a name in lower case; Sunday for any other word.
func WeekdayOf(name string) time.Weekday {
	for d := time.Sunday; d <= time.Saturday; d++ {
		if strings.EqualFold(d.String(), name) {
			return d
		}
	}
	return time.Sunday
}

// Works tells whether offices work on a weekday.
func (c *Calendar) Works(day time.Weekday) bool {
	return slices.Contains(c.Week, strings.ToLower(day.String()))
}
