package catalog

import (
	"slices"
	"strings"
	"testing"
	"time"

	"tentwright/catalog/diag"
)

// calendarFaults are the faults of the small shop with a calendar.
func calendarFaults(t *testing.T, dates string) diag.List {
	t.Helper()
	_, list := Load("shop", smallWith(t, "calendar.yaml", []byte("calendar:\n  week: [monday, friday]\n  dates:\n"+dates)))
	return list
}

func TestCalendarNamesWhatTheShopHas(t *testing.T) {
	for dates, want := range map[string]string{
		"    - {id: a, name: A, item: chiar, day: {from: deliver, days: 0}}\n":                                                      `item "chiar" is not known`,
		"    - {id: a, name: A, day: {from: deliver, days: 0}}\n    - {id: A, name: B, term: valid}\n":                              `date "A" is defined twice`,
		"    - {id: a*, name: A, term: valid}\n":                                                                                    `date "a*" has a '*'`,
		"    - {id: a, name: A, day: {from: install, days: 0}}\n":                                                                   `"install" is not one of`,
		"    - {id: a, name: A, day: {from: deliver, days: 401}}\n":                                                                 `401`,
		"    - {id: a, name: A, day: {from: deliver, days: 1, on: yard}}\n":                                                         `so on changes nothing`,
		"    - {id: a, name: A, day: {from: deliver}}\n":                                                                            `"days" is missing`,
		"    - {id: a, name: A, earliest: {from: deliver, days: 3}, latest: {from: deliver, days: 2, count: business}}\n":           "",
		"    - {id: a, name: A, earliest: {from: deliver, days: -3}, latest: {from: signed, days: 2, unsigned: quoted}, stop: yes}": "",
	} {
		list := calendarFaults(t, dates)
		found := slices.ContainsFunc(list, func(p diag.Problem) bool { return strings.Contains(p.Message, want) })
		if want == "" && len(list) > 0 || want != "" && (!found || len(list) != 1) {
			t.Errorf("%s: %v; %q was expected", dates, list.Err(), want)
		}
	}
}

// A day of the week that stands twice would be taken for another one.
func TestCalendarWantsEachDayOnce(t *testing.T) {
	_, list := Load("shop", smallWith(t, "calendar.yaml", []byte("calendar:\n  week: [monday, tuesday, tuesday, friday, wednesday]\n  dates:\n    - {id: a, name: A, term: valid}\n")))
	if len(list) != 1 || list[0].Code != RepeatedID || !strings.Contains(list[0].Message, `"tuesday" stands twice in the week`) {
		t.Errorf("%v; a day that stands twice was expected", list)
	}
}

// A week without a day of work would be counted for ever.
func TestCalendarWantsDaysOfWork(t *testing.T) {
	_, list := Load("shop", smallWith(t, "calendar.yaml", []byte("calendar:\n  week: []\n  dates:\n    - {id: a, name: A, term: valid}\n")))
	if list.Err() == nil {
		t.Error("a week without a day of work was taken")
	}
}

func TestCalendarWords(t *testing.T) {
	c := &Calendar{Week: []string{"monday", "friday"}}
	if MonthNumber("july") != 7 || MonthNumber("never") != 0 || WeekdayOf("friday") != time.Friday || !c.Works(time.Monday) || c.Works(time.Sunday) {
		t.Error("names of months and weekdays are not understood")
	}
}
