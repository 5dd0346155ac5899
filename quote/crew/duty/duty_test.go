package duty

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tentwright/catalog"
	"tentwright/catalog/unit"
)

// federal is 49 CFR 395.3 for drivers of property, as the demonstration has it.
func federal(t testing.TB) *catalog.Duty {
	t.Helper()
	c, list := catalog.Load("demo", catalog.Demo())
	if c == nil {
		t.Fatal(list)
	}
	return c.Crew.Duty
}

// The demonstration's rule is the published one.
func TestFederalRule(t *testing.T) {
	r := federal(t)
	if r.Drive != 11*unit.Hour || r.Window != 14*unit.Hour || r.Off != 10*unit.Hour || r.After != 8*unit.Hour || r.Break != 30 || r.Week != 60*unit.Hour || r.Days != 7 {
		t.Errorf("the rule is %+v", r)
	}
	// 49 CFR 390.5: 10,001 pounds or more, of the rating.
	for pounds, want := range map[int]bool{10000: false, 10001: true, 26000: true} {
		if got := Holds(r, unit.Mass(pounds)*unit.Pound); got != want {
			t.Errorf("%d lb: %t; %t was expected", pounds, got, want)
		}
	}
	if Holds(nil, unit.Tonne) || Check(nil, []Day{{On: 60, Off: 1200}}) != nil {
		t.Error("no rule holds")
	}
}

// first is the day of the tests.
var first = unit.Date{Year: 2026, Month: 6, Day: 1}

func clock(t testing.TB, s string) unit.Clock {
	t.Helper()
	c, err := unit.ParseClock(s)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// duties reads days such as "06:00-20:00: 07:00-14:00, 14:30-18:30", a + before
// for each day of pause.
func duties(t testing.TB, texts ...string) (days []Day) {
	t.Helper()
	date := first
	for _, text := range texts {
		for ; strings.HasPrefix(text, "+"); text = text[1:] {
			date = date.AddDays(1)
		}
		shift, drives, _ := strings.Cut(text, ": ")
		on, off, _ := strings.Cut(shift, "-")
		d := Day{Date: date, On: clock(t, on), Off: clock(t, off)}
		for _, s := range strings.Split(drives, ", ") {
			if from, to, ok := strings.Cut(s, "-"); ok {
				d.Drives = append(d.Drives, Stretch{clock(t, from), clock(t, to)})
			}
		}
		days, date = append(days, d), date.AddDays(1)
	}
	return days
}

func words(found []Finding) (list []string) {
	for _, f := range found {
		list = append(list, fmt.Sprintf("%d %s %s of %s at %s", first.DaysUntil(f.Date), f.Rule, f.Found, f.Limit, f.At))
	}
	return list
}

// The first case is the worked example of the Interstate Truck Driver's Guide to
// Hours of Service (FMCSA): on duty at 06:00, driving 07:00 to 14:00, 30 minutes,
// driving to 18:30, which makes 11 hours; the window ends at 20:00. The others are
// the minutes beside its limits, and those of 49 CFR 395.3.
func TestDaysAgainstTheFederalRule(t *testing.T) {
	rule := federal(t)
	const usual = "06:00-18:30: 07:00-14:00, 14:30-18:30"
	for _, x := range []struct {
		name string
		days []string
		want []string
	}{
		{"guide's example", []string{"06:00-20:00: 07:00-14:00, 14:30-18:30"}, nil},
		{"a minute of driving more", []string{"06:00-20:00: 07:00-14:00, 14:30-18:31"}, []string{"0 drive 11 h 1 min of 11 h at 18:30"}},
		{"two drives over", []string{"05:00-18:00: 05:00-10:00, 10:30-16:30, 17:00-17:20"}, []string{"0 drive 11 h 20 min of 11 h at 17:00"}},
		{"to the end of the window", []string{"06:00-23:00: 07:00-14:00, 19:00-20:00"}, nil},
		{"a minute beyond it", []string{"06:00-23:00: 07:00-14:00, 19:00-20:01"}, []string{"0 window 14 h 1 min of 14 h at 20:00"}},
		{"work beyond it without driving", []string{"06:00-23:00: 07:00-14:00"}, nil},
		{"eight hours without a break", []string{"06:00-20:00: 06:00-14:00"}, nil},
		{"a minute more", []string{"06:00-20:00: 06:00-14:01"}, []string{"0 break 8 h 1 min of 8 h at 14:00"}},
		{"a short pause is none", []string{"06:00-20:00: 06:00-12:00, 12:29-15:00"}, []string{"0 break 8 h 31 min of 8 h at 14:29"}},
		{"half an hour is one", []string{"06:00-20:00: 06:00-12:00, 12:30-17:30"}, nil},
		{"two stretches too long", []string{"04:00-23:00: 04:00-12:30, 13:00-21:30"}, []string{"0 drive 17 h of 11 h at 15:30", "0 window 17 h 30 min of 14 h at 18:00", "0 break 8 h 30 min of 8 h at 12:00", "0 break 8 h 30 min of 8 h at 21:00"}},
		{"ten hours off", []string{"07:00-20:00: 08:00-09:00", "06:00-16:00: 07:00-08:00"}, nil},
		{"a minute less", []string{"07:00-20:01: 08:00-09:00", "06:00-16:00: 07:00-08:00"}, []string{"1 off 9 h 59 min of 10 h at 07:00"}},
		{"off too short, but no driving after it", []string{"07:00-23:00: 08:00-09:00", "06:00-16:00"}, nil},
		{"off too short after a day without driving", []string{"07:00-23:00", "06:00-16:00: 07:00-08:00"}, []string{"1 off 7 h of 10 h at 07:00"}},
		{"a night", []string{"20:00-09:00: 21:00-02:00, 03:00-08:59"}, nil},
		{"a night over", []string{"18:00-09:00: 19:00-02:00, 04:00-08:01"}, []string{"0 drive 11 h 1 min of 11 h at 08:00", "0 window 14 h 1 min of 14 h at 08:00"}},
		{"off between nights", []string{"20:00-08:00: 21:00-23:00", "17:59-04:00: 18:30-19:00"}, []string{"1 off 9 h 59 min of 10 h at 18:30"}},
		{"sixty hours in six days", []string{"06:00-16:00: 07:00-08:00", "06:00-16:00: 07:00-08:00", "06:00-16:00: 07:00-08:00", "06:00-16:00: 07:00-08:00", "06:00-16:00: 07:00-08:00", "06:00-16:00: 15:00-16:00"}, nil},
		{"a minute more of driving", []string{"06:00-16:01: 07:00-08:00", "06:00-16:00: 07:00-08:00", "06:00-16:00: 07:00-08:00", "06:00-16:00: 07:00-08:00", "06:00-16:00: 07:00-08:00", "06:00-16:00: 15:00-16:00"}, []string{"5 week 60 h 1 min of 60 h at 15:59"}},
		{"work beyond it, no driving", []string{"06:00-16:01: 07:00-08:00", "06:00-16:00: 07:00-08:00", "06:00-16:00: 07:00-08:00", "06:00-16:00: 07:00-08:00", "06:00-16:00: 07:00-08:00", "06:00-16:00: 15:00-15:30"}, nil},
		{"all of it beyond", []string{"05:00-18:00: 07:00-08:00", "05:00-18:00: 07:00-08:00", "05:00-18:00: 07:00-08:00", "05:00-18:00: 07:00-08:00", "05:00-18:00: 07:00-08:00", "06:00-18:00: 07:00-08:00"}, []string{"5 week 67 h of 60 h at 07:00"}},
		{"the eighth day counts anew", []string{"06:00-16:01: 07:00-08:00", "06:00-16:00: 07:00-08:00", "06:00-16:00: 07:00-08:00", "06:00-16:00: 07:00-08:00", "06:00-16:00: 07:00-08:00", "++06:00-16:00: 15:00-16:00"}, nil},
		{"no drive at all", []string{"01:00-24:00"}, nil},
		{"a drive of no length", []string{usual, "06:00-20:00: 07:00-07:00"}, nil},
		{"off is not told", []string{"06:00-06:00: 07:00-17:00, 16:00-19:00"}, []string{"0 drive 12 h of 11 h at 18:00", "0 break 12 h of 8 h at 15:00"}},
	} {
		if got := words(Check(rule, duties(t, x.days...))); !slices.Equal(got, x.want) {
			t.Errorf("%s: found %q; %q was expected", x.name, got, x.want)
		}
	}
}

// A rule without a break or a week asks for none, and days may come in any order.
func TestShorterRule(t *testing.T) {
	rule := &catalog.Duty{Drive: 4 * unit.Hour, Window: 10 * unit.Hour, Off: 12 * unit.Hour}
	days := duties(t, "06:00-19:00: 06:00-07:00", "06:30-20:00: 06:30-10:30", "+08:00-12:00: 08:00-12:00")
	slices.Reverse(days)
	if got, want := words(Check(rule, days)), []string{"1 off 11 h 30 min of 12 h at 06:30"}; !slices.Equal(got, want) {
		t.Errorf("found %q; %q was expected", got, want)
	}
}

// The words name what was found and what was expected.
func TestWords(t *testing.T) {
	got := Check(federal(t), duties(t, "04:00-23:00: 04:00-12:30, 13:00-21:30", "05:00-18:00: 23:00-01:00"))
	week := federal(t)
	week.Week, week.Window = unit.Hour, 40*unit.Hour
	got = append(got, Check(week, duties(t, "20:00-04:00: 02:00-03:00"))...)
	for i, want := range []string{
		"drives 17 h in a day; at most 11 h, until 15:30, was expected",
		"drives until 17 h 30 min after coming on duty; no driving after 14 h, at 18:00, was expected",
		"drives 8 h 30 min without a break; one after 8 h, at 12:00, was expected",
		"drives 8 h 30 min without a break; one after 8 h, at 21:00, was expected",
		"drives at 23:00 after 6 h off duty; 10 h or more were expected",
		"drives until 20 h after coming on duty; no driving after 14 h, at 19:00, was expected",
		"drives with 7 h on duty in the days up to then; no driving after 1 h, at 02:00 of the next day, was expected",
	} {
		if got[i].String() != want {
			t.Errorf("%q; %q was expected", got[i], want)
		}
	}
}

// By another way of counting, minute by minute: each minute of driving is held
// against the rule by itself, and a rule is broken where some minute breaks it.
func TestMinuteByMinute(t *testing.T) {
	rule := federal(t)
	rapid.Check(t, func(t *rapid.T) {
		var days []Day
		date := first
		for range rapid.IntRange(1, 9).Draw(t, "days") {
			on := rapid.IntRange(1, 1380).Draw(t, "on")
			d := Day{Date: date, On: unit.Clock(on)}
			at := on
			for range rapid.IntRange(0, 4).Draw(t, "drives") {
				from := at + rapid.IntRange(1, 120).Draw(t, "pause")
				at = from + rapid.IntRange(1, 300).Draw(t, "drive")
				if at-on < perDay-60 {
					d.Drives = append(d.Drives, Stretch{clockAt(from), clockAt(at)})
				}
			}
			off := min(max(at, on+1)+rapid.IntRange(0, 200).Draw(t, "after"), on+perDay-1)
			d.Off = clockAt(off)
			days = append(days, d)
			date = date.AddDays(1 + off/perDay)
		}
		want := map[string]bool{}
		minutes(rule, days, func(rule string, date unit.Date) { want[rule+date.String()] = true })
		got := map[string]bool{}
		for _, f := range Check(rule, days) {
			got[f.Rule+f.Date.String()] = true
		}
		for k := range want {
			if !got[k] {
				t.Fatalf("%s is not found in %v", k, days)
			}
		}
		for k := range got {
			if !want[k] {
				t.Fatalf("%s is found in %v", k, days)
			}
		}
	})
}

// clockAt is a minute as the clock shows it; midnight is the day's end.
func clockAt(minute int) unit.Clock {
	if minute%perDay == 0 {
		return perDay
	}
	return unit.Clock(minute % perDay)
}

// minutes walks through every minute from the first day on and tells which rules
// each minute of driving breaks.
func minutes(rule *catalog.Duty, days []Day, broken func(rule string, date unit.Date)) {
	var duty, driving [14 * perDay]*Day
	for i := range days {
		d := &days[i]
		start := first.DaysUntil(d.Date)*perDay + int(d.On)
		end := start
		for unit.Clock(end%perDay) != d.Off%perDay || end == start {
			duty[end] = d
			end++
		}
		for _, s := range d.Drives {
			for at, on := start, false; at <= end; at++ {
				if at%perDay == int(s.From)%perDay {
					on = true
				}
				if at%perDay == int(s.To)%perDay {
					on = false
				}
				if on {
					driving[at] = d
				}
			}
		}
	}
	off, drive, window, run, pause := perDay, 0, 0, 0, perDay
	var was *Day
	for at := range duty {
		d := duty[at]
		if d == nil {
			off, pause = off+1, pause+1
			if pause >= int(rule.Break) {
				run = 0
			}
			continue
		}
		if d != was {
			drive, window = 0, 0
			if off < int(rule.Off) && len(d.Drives) > 0 {
				broken(Off, d.Date)
			}
		}
		was, off, window = d, 0, window+1
		if driving[at] == nil {
			if pause++; pause >= int(rule.Break) {
				run = 0
			}
			continue
		}
		pause, drive, run = 0, drive+1, run+1
		week := 0
		for m := max(0, (at/perDay-rule.Days+1)*perDay); m <= at; m++ {
			if duty[m] != nil {
				week++
			}
		}
		for name, over := range map[string]bool{Drive: drive > int(rule.Drive), Window: window > int(rule.Window), Break: run > int(rule.After), Week: week > int(rule.Week)} {
			if over {
				broken(name, d.Date)
			}
		}
	}
}
