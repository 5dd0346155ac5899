package unit

import (
	"fmt"
	"strconv"
	"strings"
)

// Clock is a time of day in whole minutes from midnight, 24:00 at most. The
// zero Clock is no time: nothing is said.
type Clock int

// endOfDay is the last minute that a clock shows.
const endOfDay = 24 * 60

var clockForm = form{"a time of day", `"07:30", from 00:01 to 24:00`}

// ParseClock reads "7:30" or "07:30".
func ParseClock(s string) (Clock, error) {
	hours, minutes, ok := strings.Cut(strings.TrimSpace(s), ":")
	h, err := strconv.ParseUint(hours, 10, 8)
	m, err2 := strconv.ParseUint(minutes, 10, 8)
	if !ok || err != nil || err2 != nil || len(hours) > 2 || len(minutes) != 2 {
		return 0, clockForm.bad(s, "is not hours and minutes")
	}
	at := Clock(h*60 + m)
	if m > 59 || at > endOfDay || at == 0 {
		return 0, clockForm.bad(s, "is not a time of the day")
	}
	return at, nil
}

// ParseText sets c from a text as [ParseClock] reads it.
func (c *Clock) ParseText(s string) (err error) {
	*c, err = ParseClock(s)
	return err
}

// MarshalText is the text that [ParseClock] reads back exactly; a time that it
// would refuse has none.
func (c Clock) MarshalText() ([]byte, error) {
	if text := c.String(); reads(ParseClock, text, c) {
		return []byte(text), nil
	}
	return nil, fmt.Errorf("%d minutes is not a time of day that can be written", int(c))
}

// String is the time by ISO 8601: "07:30". The day's end is 24:00.
func (c Clock) String() string { return fmt.Sprintf("%02d:%02d", int(c)/60, int(c)%60) }

// Span is a stretch of time in whole minutes.
type Span int

// Hour is the minutes of one.
const Hour Span = 60

var spanForm = form{"a stretch of time", `"30 min", "8 h" or "2 h 30 min"`}

// spanUnits is what a person may write behind a number.
var spanUnits = map[string]scale{"min": {1, 1}, "h": {60, 1}}

// ParseSpan reads "30 min", "8 h", "7.5 h" or "2 h 30 min". A bare or negative
// number is an error.
func ParseSpan(s string) (Span, error) {
	all, err := spanForm.read(s)
	if err != nil {
		return 0, err
	}
	if len(all) > 2 || len(all) == 2 && (all[0].unit != "h" || all[1].unit != "min" || all[0].decimal) {
		return 0, spanForm.bad(s, "is not hours and then minutes")
	}
	var sum int64
	for _, q := range all {
		one, known := spanUnits[q.unit]
		if !known {
			return 0, spanForm.bad(s, fmt.Sprintf("has the unknown unit %q", clipped(q.unit)))
		}
		part, ok := q.times(one.base, one.per)
		if !ok || part > longestSpan-sum {
			return 0, spanForm.bad(s, tooLarge)
		}
		sum += part
	}
	return Span(sum), nil
}

// longestSpan is a year of minutes, so that sums never come near a limit.
const longestSpan = 366 * 24 * 60

// ParseText sets d from a text as [ParseSpan] reads it.
func (d *Span) ParseText(s string) (err error) {
	*d, err = ParseSpan(s)
	return err
}

// MarshalText is the text that [ParseSpan] reads back exactly; a negative
// stretch has none.
func (d Span) MarshalText() ([]byte, error) {
	if d < 0 {
		return nil, fmt.Errorf("a negative stretch of %d minutes cannot be written", int(d))
	}
	return []byte(d.String()), nil
}

// String is the stretch for people: "45 min", "8 h", "2 h 30 min".
func (d Span) String() string {
	h, m := d/Hour, d%Hour
	switch {
	case h == 0:
		return fmt.Sprintf("%d min", m)
	case m == 0:
		return fmt.Sprintf("%d h", h)
	}
	return fmt.Sprintf("%d h %d min", h, m)
}
