package unit

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestParseClock(t *testing.T) {
	for text, want := range map[string]Clock{"07:30": 450, "7:30": 450, " 18:00 ": 1080, "00:01": 1, "0:59": 59, "23:59": 1439, "24:00": 1440} {
		if got, err := ParseClock(text); err != nil || got != want {
			t.Errorf("%q: got %d, %v, want %d minutes", text, got, err, want)
		}
	}
}

func TestParseClockErrorsSayWhy(t *testing.T) {
	for text, want := range map[string]string{
		"": "is not hours and minutes", "7": "is not hours and minutes", "7.30": "is not hours and minutes", "7:3": "is not hours and minutes",
		"007:30": "is not hours and minutes", "7:30 pm": "is not hours and minutes", "7:30:00": "is not hours and minutes", "-7:30": "is not hours and minutes",
		"+7:30": "is not hours and minutes", "7:+3": "is not hours and minutes", ":30": "is not hours and minutes", "7:": "is not hours and minutes",
		"00:00": "is not a time of the day", "24:01": "is not a time of the day", "25:00": "is not a time of the day", "12:60": "is not a time of the day",
		"99999999999999999999:00": "is not hours and minutes",
	} {
		if got, err := ParseClock(text); err == nil || got != 0 || !strings.Contains(err.Error(), want) || !strings.Contains(err.Error(), `"07:30"`) {
			t.Errorf("%q: got %d, %v, want %q and an example", text, got, err, want)
		}
	}
}

// ISO 8601-1:2019, 5.3.1 and 4.3.2: two digits each, 24:00 for the end of a day.
func TestClockText(t *testing.T) {
	for c, want := range map[Clock]string{450: "07:30", 1: "00:01", 1440: "24:00", 1080: "18:00"} {
		if got, err := c.MarshalText(); err != nil || string(got) != want || c.String() != want {
			t.Errorf("%d minutes: got %q, %v, want %q", int(c), got, err, want)
		}
	}
	for _, c := range []Clock{0, -1, 1441} {
		if text, err := c.MarshalText(); err == nil {
			t.Errorf("%d minutes was written as %q", int(c), text)
		}
	}
}

func TestParseSpan(t *testing.T) {
	for text, want := range map[string]Span{"30 min": 30, "8 h": 480, "7.5 h": 450, "2 h 30 min": 150, "2h30min": 150, "90 min": 90, "0 min": 0,
		"1/2 h": 30, "0.01 h": 1, "366 h": 21960} {
		if got, err := ParseSpan(text); err != nil || got != want {
			t.Errorf("%q: got %d, %v, want %d minutes", text, got, err, want)
		}
	}
}

func TestParseSpanErrorsSayWhy(t *testing.T) {
	for text, want := range map[string]string{
		"": "is empty", "30": "a number without a unit", "-1 h": "is negative", "3 days": `the unknown unit "days"`, "30 min 2 h": "not hours and then minutes",
		"1 h 2 h": "not hours and then minutes", "1.5 h 10 min": "not hours and then minutes", "1 h 2 min 3 min": "not hours and then minutes",
		"8785 h": "is too large", "99999999999999999 h": "is too large",
	} {
		if got, err := ParseSpan(text); err == nil || got != 0 || !strings.Contains(err.Error(), want) || !strings.Contains(err.Error(), `"2 h 30 min"`) {
			t.Errorf("%q: got %d, %v, want %q and an example", text, got, err, want)
		}
	}
}

func TestSpanText(t *testing.T) {
	for d, want := range map[Span]string{0: "0 min", 45: "45 min", 8 * Hour: "8 h", 2*Hour + 30: "2 h 30 min"} {
		if got, err := d.MarshalText(); err != nil || string(got) != want {
			t.Errorf("%d minutes: got %q, %v, want %q", int(d), got, err, want)
		}
	}
	if text, err := Span(-1).MarshalText(); err == nil {
		t.Errorf("a negative stretch was written as %q", text)
	}
}

// Every time of the day, and any stretch of time, is written so that it reads
// back as it was.
func TestClockAndSpanReadBack(t *testing.T) {
	for c := Clock(1); c <= endOfDay; c++ {
		if back, err := ParseClock(c.String()); err != nil || back != c {
			t.Fatalf("%s reads back as %d minutes, %v", c, int(back), err)
		}
		if short := fmt.Sprintf("%d:%02d", int(c)/60, int(c)%60); short != c.String() {
			if back, err := ParseClock(short); err != nil || back != c {
				t.Fatalf("%s reads back as %d minutes, %v", short, int(back), err)
			}
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		d := Span(rapid.IntRange(0, longestSpan).Draw(t, "minutes"))
		if back, err := ParseSpan(d.String()); err != nil || back != d {
			t.Fatalf("%s reads back as %d minutes, %v", d, int(back), err)
		}
	})
}
