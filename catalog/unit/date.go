package unit

import (
	"fmt"
	"strconv"
	"time"
)

// Date is a civil day of the Gregorian calendar, from 1900 to 9999 once read.
// It has no time of day and no zone; the zero Date is no day.
type Date struct{ Year, Month, Day int }

var dateForm = form{"a date", `"2026-07-04", year-month-day, from 1900 on`}

// ParseDate reads "2026-07-04". Other forms, days that do not exist and years
// before 1900 are errors; a spreadsheet counts no days before that.
func ParseDate(s string) (Date, error) {
	if len(s) != len("2006-01-02") || s[4] != '-' || s[7] != '-' {
		return Date{}, dateForm.bad(s, "is not year-month-day")
	}
	var parts [3]int
	for i, text := range []string{s[:4], s[5:7], s[8:]} {
		n, err := strconv.ParseUint(text, 10, 16)
		if err != nil {
			return Date{}, dateForm.bad(s, "is not year-month-day")
		}
		parts[i] = int(n)
	}
	d := Date{parts[0], parts[1], parts[2]}
	switch {
	case d != civil(d.midnight()):
		return Date{}, dateForm.bad(s, "is not a day of the calendar")
	case d.Year < 1900:
		return Date{}, dateForm.bad(s, "is before 1900")
	}
	return d, nil
}

// ParseText sets d from a text as [ParseDate] reads it.
func (d *Date) ParseText(s string) (err error) {
	*d, err = ParseDate(s)
	return err
}

// MarshalText is the text that [ParseDate] reads back exactly; a date that it
// would refuse has none.
func (d Date) MarshalText() ([]byte, error) {
	if text := d.String(); reads(ParseDate, text, d) {
		return []byte(text), nil
	}
	return nil, fmt.Errorf("%s is not a date that can be written", d.String())
}

// String is the date by ISO 8601: "2026-07-04".
func (d Date) String() string { return fmt.Sprintf("%04d-%02d-%02d", d.Year, d.Month, d.Day) }

// midnight is the date as a time, for arithmetic only.
func (d Date) midnight() time.Time {
	return time.Date(d.Year, time.Month(d.Month), d.Day, 0, 0, 0, 0, time.UTC)
}

// civil is the date of a time.
func civil(t time.Time) Date {
	year, month, day := t.Date()
	return Date{year, int(month), day}
}

// Serial is the day's number in the 1900 system of spreadsheets: 1 January
// 1900 is 1. Those sheets count a 29 February 1900 that never was, so days
// from 1 March 1900 on are one higher than a true count.
func (d Date) Serial() int {
	days := Date{1899, 12, 31}.DaysUntil(d)
	if !d.Before(Date{1900, 3, 1}) {
		days++
	}
	return days
}

// Weekday is the day of the week.
func (d Date) Weekday() time.Weekday { return d.midnight().Weekday() }

// AddDays is the date n days later, or earlier for a negative n.
func (d Date) AddDays(n int) Date { return civil(d.midnight().AddDate(0, 0, n)) }

// DaysUntil is the number of days from d to other; negative when other is
// earlier.
func (d Date) DaysUntil(other Date) int {
	// In UTC every day has the same length.
	const secondsOfDay = 24 * 60 * 60
	return int((other.midnight().Unix() - d.midnight().Unix()) / secondsOfDay)
}

// IsZero tells whether d is no day at all.
func (d Date) IsZero() bool { return d == Date{} }

// Before tells whether d is an earlier day than other.
func (d Date) Before(other Date) bool {
	if d.Year != other.Year {
		return d.Year < other.Year
	}
	if d.Month != other.Month {
		return d.Month < other.Month
	}
	return d.Day < other.Day
}
