package dates_test

import (
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/dates"
)

func day(t testing.TB, text string) unit.Date {
	t.Helper()
	d, err := unit.ParseDate(text)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// demoShop is the demonstration shop.
func demoShop(t testing.TB) *catalog.Catalog {
	t.Helper()
	c, list := catalog.Load("demo", catalog.Demo())
	if c == nil {
		t.Fatal(list.Err())
	}
	return c
}

// federal is a calendar of the holidays of 5 USC 6103 alone.
func federal(t testing.TB) *catalog.Calendar {
	t.Helper()
	c := *demoShop(t).Calendar
	c.Closed = nil
	return &c
}

// The days off from work of federal offices. Rules: 5 USC 6103(a) and (b), read;
// the days of 2026 to 2028 follow from them. 2009: the list of that year's
// federal holidays, read. Juneteenth is one from 2021 on.
func TestFederalHolidays(t *testing.T) {
	for year, want := range map[int][]string{
		2009: {"2009-01-01", "2009-01-19", "2009-02-16", "2009-05-25", "2009-07-03", "2009-09-07", "2009-10-12", "2009-11-11", "2009-11-26", "2009-12-25"},
		2026: {"2026-01-01", "2026-01-19", "2026-02-16", "2026-05-25", "2026-06-19", "2026-07-03", "2026-09-07", "2026-10-12", "2026-11-11", "2026-11-26", "2026-12-25"},
		2027: {"2027-01-01", "2027-01-18", "2027-02-15", "2027-05-31", "2027-06-18", "2027-07-05", "2027-09-06", "2027-10-11", "2027-11-11", "2027-11-25", "2027-12-24", "2027-12-31"},
		2028: {"2028-01-17", "2028-02-21", "2028-05-29", "2028-06-19", "2028-07-04", "2028-09-04", "2028-10-09", "2028-11-10", "2028-11-23", "2028-12-25"},
	} {
		var got []string
		for _, off := range dates.NewDays(federal(t)).Holidays(year, year) {
			if w := off.Day.Weekday(); w != time.Saturday && w != time.Sunday {
				got = append(got, off.Day.String())
			}
		}
		if !slices.Equal(got, want) {
			t.Errorf("%d: days off work %v; %v were expected", year, got, want)
		}
	}
}

// Holidays on a weekend stand on their own day too, and say where they are kept.
func TestObservedHolidaysAreNamed(t *testing.T) {
	days := dates.NewDays(federal(t))
	for on, want := range map[string]string{
		"2026-07-04": "Independence Day", "2026-07-03": "Independence Day, observed",
		"2027-12-31": "New Year's Day, observed", "2028-01-01": "New Year's Day",
		"2021-06-18": "Juneteenth National Independence Day, observed", "2020-06-19": "", "2026-07-06": "",
	} {
		if got := days.Off(day(t, on)); got != want {
			t.Errorf("%s: %q; %q was expected", on, got, want)
		}
	}
}

// Business days of a month and a year: counted from the rules of 5 USC 6103.
func TestBusinessDaysOfMonths(t *testing.T) {
	days := dates.NewDays(federal(t))
	for _, x := range []struct {
		from, to string
		want     int
	}{
		{"2026-05-01", "2026-05-31", 20}, {"2026-09-01", "2026-09-30", 21}, {"2026-12-01", "2026-12-31", 22},
		{"2026-01-01", "2026-12-31", 250}, {"2027-01-01", "2027-12-31", 249},
	} {
		n, end := 0, day(t, x.to)
		for d := day(t, x.from); !end.Before(d); d = d.AddDays(1) {
			if days.Works(d, catalog.CountBusiness) {
				n++
			}
		}
		if n != x.want {
			t.Errorf("%s to %s: %d business days; %d were expected", x.from, x.to, n, x.want)
		}
	}
}

// Counting of days. Source of each row: derived from 5 USC 6103, unless said.
func TestAdd(t *testing.T) {
	c := federal(t)
	c.Closed = []catalog.ClosedDay{{From: day(t, "2026-12-28"), To: day(t, "2026-12-31"), Why: "Stock taking"}}
	days := dates.NewDays(c)
	for _, x := range []struct {
		from  string
		n     int
		count string
		want  string
	}{
		{"2026-11-25", 2, "business", "2026-11-30"}, // Wednesday before Thanksgiving; WORKDAY of LibreOffice Calc gives the same
		{"2026-07-01", 3, "business", "2026-07-07"}, // over Friday 3 July
		{"2026-07-07", -3, "business", "2026-07-01"},
		{"2026-07-11", -3, "business", "2026-07-08"}, // from a Saturday
		{"2026-07-04", 0, "business", "2026-07-04"},  // no days at all move nothing
		{"2026-07-04", 1, "business", "2026-07-06"},
		{"2026-02-27", 2, "", "2026-03-01"},
		{"2026-12-24", 1, "business", "2026-12-28"},
		{"2026-12-24", 1, "yard", "2027-01-04"}, // Christmas, weekend, stock taking, New Year, weekend
		{"2027-12-30", 1, "business", "2028-01-03"},
	} {
		if got := days.Add(day(t, x.from), x.n, x.count).String(); got != x.want {
			t.Errorf("%s and %d %s days: %s; %s was expected", x.from, x.n, x.count, got, x.want)
		}
	}
}

func TestRoll(t *testing.T) {
	days := dates.NewDays(federal(t))
	for _, x := range []struct{ from, roll, want string }{
		{"2026-07-04", "before", "2026-07-02"}, {"2026-07-04", "after", "2026-07-06"}, {"2026-07-04", "", "2026-07-04"},
		{"2026-07-06", "before", "2026-07-06"}, {"2026-07-06", "after", "2026-07-06"},
	} {
		if got := days.Roll(day(t, x.from), x.roll, catalog.CountBusiness).String(); got != x.want {
			t.Errorf("%s moved %q: %s; %s was expected", x.from, x.roll, got, x.want)
		}
	}
}

// anyDay is a day of the years that people plan.
func anyDay(t *rapid.T, name string) unit.Date {
	return unit.Date{Year: 2000, Month: 1, Day: 1}.AddDays(rapid.IntRange(0, 36000).Draw(t, name))
}

// Counted by another way: so many days forward from a day of work and back again
// is that day, and between the two lie as many days of work as were counted.
func TestForwardThenBack(t *testing.T) {
	days := dates.NewDays(demoShop(t).Calendar)
	rapid.Check(t, func(t *rapid.T) {
		count := rapid.SampledFrom([]string{"calendar", "business", "yard"}).Draw(t, "count")
		from, n := days.Roll(anyDay(t, "from"), "after", catalog.CountYard), rapid.IntRange(0, 300).Draw(t, "n")
		to := days.Add(from, n, count)
		if back := days.Add(to, -n, count); back != from {
			t.Fatalf("%s and %d %s days is %s, but back it is %s", from, n, count, to, back)
		}
		between := 0
		for d := from.AddDays(1); !to.Before(d); d = d.AddDays(1) {
			if days.Works(d, count) {
				between++
			}
		}
		if between != n || !days.Works(to, count) {
			t.Fatalf("%s to %s has %d %s days; %d were expected, the last of them one", from, to, between, count, n)
		}
	})
}

// Easter Sundays as printed in almanacs (from memory), the earliest and the
// latest possible among them.
func TestEaster(t *testing.T) {
	for year, want := range map[int]string{
		1818: "1818-03-22", 1943: "1943-04-25", 2000: "2000-04-23", 2008: "2008-03-23", 2019: "2019-04-21", 2024: "2024-03-31",
		2025: "2025-04-20", 2026: "2026-04-05", 2027: "2027-03-28", 2038: "2038-04-25",
	} {
		if got := dates.Easter(year).String(); got != want {
			t.Errorf("Easter of %d: %s; %s was expected", year, got, want)
		}
	}
	// By the tables of the Gregorian reform: golden number, epact, Sunday after
	// the full moon on or after 21 March.
	for year := 1900; year < 2200; year++ {
		golden, century := year%19+1, year/100+1
		epact := (11*golden + 20 + (8*century+5)/25 - 5 - (3*century/4 - 12)) % 30
		if epact == 25 && golden > 11 || epact == 24 {
			epact++
		}
		moon := 44 - epact
		if moon < 21 {
			moon += 30
		}
		full := unit.Date{Year: year, Month: 3, Day: 1}.AddDays(moon - 1)
		sunday := full.AddDays(7 - int(full.Weekday()))
		if got := dates.Easter(year); got != sunday {
			t.Errorf("Easter of %d: %s; %s by the tables", year, got, sunday)
		}
	}
}

// Ways to give a holiday that the demonstration shop does not use.
func TestOtherHolidays(t *testing.T) {
	minus2, plus1 := -2, 1
	days := dates.NewDays(&catalog.Calendar{Week: []string{"monday", "tuesday", "wednesday", "thursday", "friday"}, Holidays: []catalog.Holiday{
		{Name: "Good Friday", Easter: &minus2}, {Name: "Easter Monday", Easter: &plus1},
		{Name: "New Year", Month: "january", Day: 1, Observed: "monday"},
		{Name: "Leap day", Month: "february", Day: 29},
		{Name: "Centenary", Date: unit.Date{Year: 2026, Month: 8, Day: 14}},
		{Name: "Summer", Month: "august", Nth: "last", Weekday: "monday"},
	}})
	for on, want := range map[string]string{"2026-04-03": "Good Friday", "2026-04-06": "Easter Monday", "2027-03-26": "Good Friday",
		"2022-01-03": "New Year, observed", "2028-02-29": "Leap day", "2027-03-01": "", "2026-08-14": "Centenary", "2027-08-14": "",
		"2026-08-31": "Summer", "2027-08-30": "Summer", "2027-08-31": ""} {
		if got := days.Off(day(t, on)); got != want {
			t.Errorf("%s: %q; %q was expected", on, got, want)
		}
	}
}
