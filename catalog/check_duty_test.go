package catalog

import (
	"math"
	"strings"
	"testing"

	"tentwright/catalog/money"
)

// withSection is a crew file with one more section.
func withSection(section string) []byte {
	return []byte(`crew:
  days: [{window: out, start: "07:00", finish: "19:00", first: deliver, site: yes}, {window: in, start: "07:00", finish: "19:00", first: strike, site: yes}]
  people_per_lead: 8
  inspection: 30 min
  tries: 20
  spread: {optimistic: 80, pessimistic: 160}
  ` + section + "\n")
}

// Limits of driving and bands of heat that mean nothing are told; what stands at
// the limit is not.
func TestDutyAndHeatOfShops(t *testing.T) {
	for _, x := range []struct{ section, code, want string }{
		{"duty: {drive: 11 h, window: 11 h, off: 0 min, source: own}", "", ""},
		{"duty: {drive: 9 h, window: 13 h, off: 11 h, break_after: 4 h 30 min, break: 45 min, week: 168 h, days: 7, source: own}", "", ""},
		{"duty: {drive: 0 min, window: 13 h, off: 11 h, source: own}", BadDuty, "drive is no time, so that nobody could drive; more was expected"},
		{"duty: {drive: 1 h, window: 0 h, off: 11 h, source: own}", BadDuty, "window is no time, so that nobody could drive; more was expected"},
		{"duty: {drive: 11 h 1 min, window: 11 h, off: 9 h, source: own}", BadDuty, "11 h 1 min of driving do not fit a window of 11 h"},
		{"duty: {drive: 11 h, window: 14 h, off: 9 h, break: 30 min, source: own}", BadDuty, "break_after is 0 min and break 30 min; both or neither was expected"},
		{"duty: {drive: 11 h, window: 14 h, off: 9 h, days: 7, source: own}", BadDuty, "week is 0 min in 7 days; both or neither was expected"},
		{"duty: {drive: 11 h, window: 14 h, off: 9 h, week: 24 h 1 min, days: 1, source: own}", BadDuty, "24 h 1 min of duty are more than 1 days have; no more than 24 h was expected"},
		{"heat: {bands: [{from: 80 F, name: a, what: b}, {from: 80.5 F, name: c, what: d}]}", "", ""},
		{"heat: {bands: [{from: 80 F, name: a, what: b}, {from: 26 C, name: c, what: d}]}", BadSteps, "a band from 78.8 F comes after one from 80 F; rising bands were expected"},
		{"heat: {bands: [{from: 80 F, name: a, what: b}, {from: 80 F, name: c, what: d}]}", BadSteps, "a band from 80 F comes after one from 80 F; rising bands were expected"},
	} {
		c, list := Load("shop", smallWith(t, "crew.yaml", withSection(x.section)))
		switch {
		case x.want == "" && (c == nil || len(list) > 0):
			t.Errorf("%s: %v", x.section, list)
		case x.want != "" && (c != nil || len(list) != 1 || list[0].Code != x.code || !strings.HasPrefix(list[0].Message, x.want)):
			t.Errorf("%s: %v; %q was expected", x.section, list, x.want)
		}
	}
}

// A rule's own minutes hold before the shop's percentages, each by itself.
func TestShares(t *testing.T) {
	s := &Spread{Optimistic: money.Int(80), Pessimistic: money.Int(160)}
	number := func(f float64) *money.Number { n := money.Float(f); return &n }
	for _, x := range []struct {
		minutes   float64
		low, high *money.Number
		a, b      float64
	}{
		{4, nil, nil, 0.8, 1.6},
		{4, number(3), nil, 0.75, 1.6},
		{4, nil, number(9), 0.8, 2.25},
		{4, number(4), number(4), 1, 1},
		{0.5, number(0), number(20), 0, 40},
		{0, nil, nil, 0.8, 1.6}, // only fixed minutes
	} {
		a, b := s.Shares(&LabourRule{Minutes: money.Float(x.minutes), Optimistic: x.low, Pessimistic: x.high})
		if math.Abs(a-x.a) > 1e-12 || math.Abs(b-x.b) > 1e-12 {
			t.Errorf("%+v: shares %v and %v", x, a, b)
		}
	}
}
