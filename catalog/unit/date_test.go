package unit

import (
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"
)

func TestParseDate(t *testing.T) {
	for text, want := range map[string]Date{"2026-07-04": {2026, 7, 4}, "2024-02-29": {2024, 2, 29}, "1900-01-01": {1900, 1, 1}, "9999-12-31": {9999, 12, 31}} {
		if got, err := ParseDate(text); err != nil || got != want {
			t.Errorf("%q: got %v, %v, want %v", text, got, err, want)
		}
	}
	for text, want := range map[string]string{
		"2026-02-29": "not a day of the calendar", "1900-02-29": "not a day of the calendar", "2026-13-01": "not a day of the calendar",
		"2026-00-10": "not a day of the calendar", "2026-04-31": "not a day of the calendar", "1899-12-31": "before 1900", "0000-01-01": "before 1900",
		"2026-7-4": "not year-month-day", "07/04/2026": "not year-month-day", "2026-07-04T10:00": "not year-month-day", "": "not year-month-day",
		"2026-+7-04": "not year-month-day", "20a6-07-04": "not year-month-day", "2026/07/04": "not year-month-day",
	} {
		if _, err := ParseDate(text); err == nil || !strings.Contains(err.Error(), want) || !strings.Contains(err.Error(), `"2026-07-04"`) {
			t.Errorf("%q: got %v, want %q and an example", text, err, want)
		}
	}
}

// Serial numbers of the 1900 system: ECMA-376 part 1, 18.17.4.1 (1900-01-01 is
// 1, 1900-02-28 is 59, 1900-03-01 is 61), from memory; the rest derived.
func TestDateSerial(t *testing.T) {
	for date, want := range map[Date]int{
		{1900, 1, 1}: 1, {1900, 2, 28}: 59, {1900, 3, 1}: 61, {1970, 1, 1}: 25569, {2000, 1, 1}: 36526, {2026, 7, 4}: 46207, {9999, 12, 31}: 2958465,
	} {
		if got := date.Serial(); got != want {
			t.Errorf("%s: got %d, want %d", date, got, want)
		}
	}
}

func TestDateWeekday(t *testing.T) {
	for _, tt := range []struct {
		date   Date
		want   time.Weekday
		source string
	}{
		{Date{2009, 7, 4}, time.Saturday, "5 USC 6103: observed on Friday, list of 2009"},
		{Date{2009, 11, 26}, time.Thursday, "Thanksgiving, the same list"},
		{Date{2026, 1, 19}, time.Monday, "5 USC 6103: third Monday"},
		{Date{2026, 2, 16}, time.Monday, "5 USC 6103: third Monday"},
		{Date{2026, 5, 25}, time.Monday, "5 USC 6103: last Monday"},
		{Date{2026, 9, 7}, time.Monday, "5 USC 6103: first Monday"},
		{Date{2026, 10, 12}, time.Monday, "5 USC 6103: second Monday"},
		{Date{2026, 11, 26}, time.Thursday, "5 USC 6103: fourth Thursday"},
		{Date{2006, 12, 31}, time.Sunday, "ISO 8601 2006-W52-7, liquisearch.com/iso_week_date"},
		{Date{2019, 12, 30}, time.Monday, "ISO 8601 2020-W01-1, wikisum.wiki"},
		{Date{2015, 1, 4}, time.Sunday, "last day of ISO week 1"},
	} {
		if got := tt.date.Weekday(); got != tt.want {
			t.Errorf("%s: got %s, want %s (%s)", tt.date, got, tt.want, tt.source)
		}
	}
}

func TestDateArithmetic(t *testing.T) {
	d := Date{2026, 12, 30}
	if got := d.AddDays(3); got != (Date{2027, 1, 2}) {
		t.Errorf("got %s", got)
	}
	if !(Date{}).IsZero() || d.IsZero() {
		t.Error("only the zero date is no day")
	}
	if text, err := (Date{}).MarshalText(); err == nil {
		t.Errorf("no day was written as %q", text)
	}
	if text, err := (Date{2026, 2, 30}).MarshalText(); err == nil {
		t.Errorf("an impossible day was written as %q", text)
	}
}

func TestDateProperties(t *testing.T) {
	first := Date{1900, 1, 1}
	rapid.Check(t, func(t *rapid.T) {
		d := first.AddDays(rapid.IntRange(0, 2958000).Draw(t, "days"))
		n := rapid.IntRange(-20000, 20000).Draw(t, "n")
		text, err := d.MarshalText()
		if err != nil {
			t.Fatal(err)
		}
		if back, err := ParseDate(string(text)); err != nil || back != d {
			t.Fatalf("%s reads back as %s, %v", text, back, err)
		}
		later := d.AddDays(n)
		if d.DaysUntil(later) != n || later.AddDays(-n) != d || d.Before(later) != (n > 0) {
			t.Fatalf("%s and %d days is %s", d, n, later)
		}
		if (int(d.Weekday())+n%7+7)%7 != int(later.Weekday()) {
			t.Fatalf("%s is a %s, %s a %s", d, d.Weekday(), later, later.Weekday())
		}
	})
}
