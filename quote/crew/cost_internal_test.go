package crew

import (
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/money"
)

// What a person earns by the hours of their days.
func TestOvertime(t *testing.T) {
	law := catalog.Overtime{Daily: money.Int(24), Weekly: money.Int(40), CostFactor: money.Float(1.5)}
	yard := catalog.Overtime{Daily: money.Int(10), Weekly: money.Int(40), CostFactor: money.Float(1.5)}
	for _, tt := range []struct {
		name   string
		rule   catalog.Overtime
		hours  []float64
		before float64
		rate   int
		pay    string
		source string
	}{
		{"46 hours of a week", law, []float64{10, 10, 10, 10, 6}, 0, 12, "588", "29 CFR 778.110(a), 2011: 40 h at $12 and 6 h at $18"},
		{"the older example", law, []float64{10, 10, 10, 10, 6}, 0, 6, "294", "the same section before 2011: $6"},
		{"a week of 40 hours", law, []float64{8, 8, 8, 8, 8}, 0, 12, "480", "by hand"},
		{"worked elsewhere that week", law, []float64{8}, 36, 10, "100", "by hand: 4 h at 10 and 4 h at 15"},
		{"a long day", yard, []float64{12}, 0, 10, "130", "by hand: 10 h at 10 and 2 h at 15"},
		{"long days count once", yard, []float64{12, 12, 12, 12}, 0, 10, "520", "by hand: 40 h at 10 and 8 h at 15"},
		{"a week later it begins anew", law, []float64{8, 8, 8, 8, 8, 0, 0, 8}, 0, 10, "480", "by hand: 48 h at 10"},
		{"half an hour", law, []float64{8.5}, 40, 10, "127.5", "by hand: 8.5 h at 15"},
	} {
		days := make([]int, len(tt.hours))
		for i, h := range tt.hours {
			days[i] = int(h * 60)
		}
		plain, over := overtime(&tt.rule, days, money.Float(tt.before))
		pay := money.DivRound(money.Int(plain).Add(money.Int(over).Mul(tt.rule.CostFactor)).Mul(money.Int(tt.rate)), money.Sixty, 2)
		if pay.String() != tt.pay {
			t.Errorf("%s: %d plain and %d overtime minutes are paid %s; %s was expected (%s)", tt.name, plain, over, pay, tt.pay, tt.source)
		}
	}
}

// A day in stretches: what is before and after a time, and how long is left.
func TestFrame(t *testing.T) {
	tea := catalog.Break{After: 120, Lasts: 15}
	late := catalog.Break{After: 590, Lasts: 15} // would end with the day: it is left out
	var f frame
	f.cut([]catalog.Break{tea, late}, 1, 7*60, 17*60)
	if len(f.spans) != 2 || f.total != 585 || len(f.pauses) != 1 {
		t.Fatalf("%+v", f)
	}
	if got := f.before(9*60+30, 30); len(got) != 2 || got[0].From != 8*60+45 || got[1].From != 9*60+15 {
		t.Errorf("half an hour before 9:30 is %v", got)
	}
	if got := f.after(8*60+50, 30); len(got) != 2 || got[1].To != 9*60+35 {
		t.Errorf("half an hour from 8:50 is %v", got)
	}
	if got := f.left(9 * 60); got != 465 {
		t.Errorf("%d minutes are left at 9:00; 465 were expected", got)
	}
	ax := &axis{more: func(n int) []span {
		var f frame
		f.cut([]catalog.Break{tea}, n, 7*60, 17*60)
		return f.spans
	}}
	if got := ax.spells(580, 10); len(got) != 2 || got[0].Day != 1 || got[1].Day != 2 || got[1].To != 7*60+5 {
		t.Errorf("ten minutes over the night are %v", got)
	}
	for _, m := range []int{1, 119, 120, 121, 585, 586, 1170, 1171} {
		if at := ax.moment(m); ax.before(at) != m {
			t.Errorf("minute %d ends at %v, before which there are %d", m, at, ax.before(at))
		}
	}
	if got := ax.minute(2, 9*60+5); got != 585+120 {
		t.Errorf("a break of the second day ends at minute %d; %d was expected", got, 585+120)
	}
}
