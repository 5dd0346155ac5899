package labour

import (
	"testing"

	"pgregory.net/rapid"

	"tentwright/catalog"
	"tentwright/catalog/money"
)

func number(t testing.TB, s string) money.Number {
	t.Helper()
	n, err := money.Parse(s)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// One person who works 46 hours of a 40-hour week at $12 is paid $588, and
// $294 at $6: 29 CFR 778.110(a), editions of 2011 and before.
func TestOvertimePay(t *testing.T) {
	for _, tc := range []struct{ pay, hours, want string }{{"12", "46", "588"}, {"6", "46", "294"}} {
		o := catalog.Overtime{Daily: number(t, "24"), Weekly: number(t, "40"), CostFactor: number(t, "1.5")}
		w := Window{Spec: &catalog.Window{ID: "install"}, Crew: 1, Days: 5, Hours: number(t, tc.hours)}
		w.share(&o)
		e := estimator{c: &catalog.Catalog{Company: catalog.Company{Currency: "USD"}, Rates: catalog.Rates{Overtime: o}}}
		s := e.skillHours(&w, &catalog.Skill{ID: "hand", Cost: number(t, tc.pay)}, w.Hours)
		if !s.Cost.Equal(number(t, tc.want)) {
			t.Errorf("%s hours at %s cost %s, %s was expected", tc.hours, tc.pay, s.Cost, tc.want)
		}
	}
}

// Someone who works at two rates in one week is paid overtime at the weighted
// average of both: 29 CFR 778.115. 30 h at $22 and 18 h at $26 are $1,128, the
// regular rate is $23.50, and 8 h of overtime add half of it: $1,222.00.
func TestOvertimeAtTwoRates(t *testing.T) {
	o := catalog.Overtime{Daily: number(t, "24"), Weekly: number(t, "40"), CostFactor: number(t, "1.5")}
	e := estimator{c: &catalog.Catalog{Company: catalog.Company{Currency: "USD"}, Rates: catalog.Rates{Overtime: o}}}
	w := Window{Spec: &catalog.Window{ID: "install"}, Crew: 1, Days: 5, Hours: number(t, "48")}
	w.share(&o)
	total, over := money.Zero, money.Zero
	for _, work := range []struct{ hours, pay string }{{"30", "22"}, {"18", "26"}} {
		s := e.skillHours(&w, &catalog.Skill{Cost: number(t, work.pay)}, number(t, work.hours))
		total, over = total.Add(s.Cost), over.Add(s.Over)
	}
	if !total.Equal(number(t, "1222")) || !over.Equal(number(t, "8")) {
		t.Errorf("the week costs %s with %s h of overtime, 1222.00 and 8 were expected", total, over)
	}
}

// Overtime by the day and by the week, worked out by hand from the rule that an
// hour counts once.
func TestWindowShare(t *testing.T) {
	for _, tc := range []struct {
		name                        string
		hours, crew, days           int
		before                      string
		wantDay, wantOver, wantWeek string
	}{
		{"within the limits", 40, 5, 1, "0", "8", "0", "0"},
		{"two hours beyond the day", 60, 5, 1, "0", "12", "2", "0"},
		{"three long days", 180, 5, 3, "0", "12", "6", "0"},
		{"week already full", 40, 5, 1, "40", "8", "0", "8"},
		{"week fills up", 40, 5, 1, "36", "8", "0", "4"},
		{"beyond day and week", 60, 5, 1, "34", "12", "2", "4"},
	} {
		t.Run(tc.name, func(t *testing.T) {
			w := Window{Crew: tc.crew, Days: tc.days, Hours: money.Int(tc.hours), Before: number(t, tc.before)}
			w.share(&catalog.Overtime{Daily: money.Int(10), Weekly: money.Int(40)})
			for what, pair := range map[string][2]money.Number{
				"hours a day":     {w.Day, number(t, tc.wantDay)},
				"daily overtime":  {w.DayOver, number(t, tc.wantOver)},
				"weekly overtime": {w.WeekOver, number(t, tc.wantWeek)},
			} {
				if !pair[0].Equal(pair[1]) {
					t.Errorf("%s is %s, %s was expected", what, pair[0], pair[1])
				}
			}
		})
	}
}

// No hour is overtime twice, and no window has more overtime than hours.
func TestOvertimeIsPartOfTheHours(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := Window{Crew: rapid.IntRange(1, 30).Draw(t, "crew"), Days: rapid.IntRange(1, 9).Draw(t, "days"),
			Hours: money.Int(rapid.IntRange(0, 3000).Draw(t, "hours")), Before: money.Int(rapid.IntRange(0, 80).Draw(t, "before"))}
		w.share(&catalog.Overtime{Daily: money.Int(rapid.IntRange(0, 24).Draw(t, "daily")), Weekly: money.Int(rapid.IntRange(0, 168).Draw(t, "weekly"))})
		over := w.DayOver.Add(w.WeekOver)
		if over.IsNegative() || over.GreaterThan(w.Person) {
			t.Fatalf("%s hours of overtime out of %s", over, w.Person)
		}
		if w.Share.IsNegative() || w.Share.GreaterThan(money.One) {
			t.Fatalf("overtime share %s is not between 0 and 1", w.Share)
		}
	})
}

// Hours are rounded half away from zero to two places, and nothing to count
// means nothing to do, not even the fixed minutes.
func TestTaskHours(t *testing.T) {
	for _, tc := range []struct{ amount, minutes, fixed, factor, want string }{
		{"10", "6", "0", "1", "1"},
		{"10", "6", "30", "1", "1.5"},
		{"10", "6", "30", "1.2", "1.8"},
		{"0", "6", "30", "1.2", "0"},
		{"1", "12.3", "0", "1", "0.21"}, // 0.205 exactly
		{"7", "1", "0", "1", "0.12"},    // 0.11666...
	} {
		got := TaskHours(number(t, tc.amount), number(t, tc.minutes), number(t, tc.fixed), number(t, tc.factor))
		if !got.Equal(number(t, tc.want)) {
			t.Errorf("%s x %s min + %s, times %s: %s h, %s was expected", tc.amount, tc.minutes, tc.fixed, tc.factor, got, tc.want)
		}
	}
}
