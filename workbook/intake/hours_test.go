package intake

import (
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/quote/job"
	"tentwright/workbook/sheet"
)

// Row 2 of the hours is the one of the install, row 1 of the yard.
var hourSpoils = []spoiled{
	{"a time in words", map[string]any{"hours_from:2": "at noon"}, "hours_from:2", "bad-value", `Deliver and install, on site from: found "at noon"; a time of day in whole minutes such as 07:30 or 18:00 was expected`},
	{"afternoon in words", map[string]any{"hours_ready:2": "6 pm"}, "hours_ready:2", "bad-value", `found "6 pm"`},
	{"an hour for a time", map[string]any{"hours_until:2": 18}, "hours_until:2", "bad-value", "found the number 18"},
	{"a day for a time", map[string]any{"hours_inspect:2": made}, "hours_inspect:2", "bad-value", "found a date"},
	{"no crews", map[string]any{"hours_crews:2": 0}, "hours_crews:2", "out-of-range", "0 is too small"},
	{"more crews than people", map[string]any{"hours_crews:2": 5}, "hours_crews:2", job.BadHours, "4 people cannot be split into 5 crews"},
	{"left before it is entered", map[string]any{"hours_until:2": "11:00"}, "hours_until:2", job.BadHours, "Off it by 11:00 is not after On site from 12:00"},
	{"ready before it is entered", map[string]any{"hours_ready:2": "11:30"}, "hours_ready:2", job.BadHours, "Ready by 11:30 is not after On site from 12:00"},
	{"inspected when all are gone", map[string]any{"hours_until:2": "20:00", "hours_inspect:2": 0.875}, "hours_inspect:2", job.BadHours, "Inspection 21:00 is after Off it by 20:00"},
	{"the yard has no gate", map[string]any{"hours_from:1": "7:00"}, "hours_from:1", job.BadHours, `is in the yard, so On site from changes nothing`},
	{"sleeps perhaps", map[string]any{"hours_stay:2": "maybe"}, "hours_stay:2", "not-one-of", "Yes or No was expected"},
	{"weather without humidity", map[string]any{"work_degrees": 90}, "work_humidity", HalfFilled, "Humidity at work, %: the cell is empty"},
	{"weather without warmth", map[string]any{"work_humidity": 50}, "work_degrees", HalfFilled, "a temperature such as 20 was expected"},
	{"wetter than water", map[string]any{"work_degrees": 90, "work_humidity": 120}, "work_humidity", "out-of-range", ""},
	{"no schedule", map[string]any{"tries": 0}, "tries", "out-of-range", "0 is too small"},
}

func TestFaultsOfHours(t *testing.T) { testSpoils(t, demo(t), hourSpoils) }

// Hours are read however they were typed, and go to the window that they stand
// beside, whether it has another crew or not.
func TestHoursAreRead(t *testing.T) {
	c := demo(t)
	for _, tt := range []struct {
		what   string
		values map[string]any
		want   []string
	}{
		{"as programs keep them", map[string]any{"hours_from:2": 0.3125, "hours_ready:2": 0.75}, []string{"    - window: install\n      crew: 4\n      from: \"07:30\"\n      ready: \"18:00\"\n"}},
		{"as text", map[string]any{"hours_from:2": "7:30", "hours_until:2": " 24:00 "}, []string{"      from: \"07:30\"\n      until: \"24:00\"\n"}},
		{"with the noise of a sum", map[string]any{"hours_from:2": 0.31249999999}, []string{"      from: \"07:30\"\n"}},
		{"of a window with its usual crew", map[string]any{"hours_ready:1": "15:00", "hours_crews:1": 2},
			[]string{"  windows:\n    - window: yard-out\n      crews: 2\n      ready: \"15:00\"\n    - window: install\n"}},
		{"crews and nights", map[string]any{"hours_crews:2": 2, "hours_stay:2": "yes", "hours_stay:3": "No"}, []string{"      crews: 2\n      from: \"12:00\"\n      ready: \"18:00\"\n      stay: yes\n    - window: strike\n      crew: 4\n"}},
		{"weather", map[string]any{"work_degrees": 91, "work_humidity": 0}, []string{"  weather:\n    temperature: 91 F\n    humidity: 0\n"}},
		{"schedules", map[string]any{"tries": 500}, []string{"  tries: 500\n"}},
		{"the way in", map[string]any{"access": "by the mill", "parking": "on the green"}, []string{"  access: \"by the mill\"\n  parking: \"on the green\"\n"}},
	} {
		b, _ := filled(t, c)
		typed(b, tt.values)
		data, _, list := Read("garden.xlsx", b.Found(), c)
		for _, want := range tt.want {
			if len(list) > 0 || !strings.Contains(string(data), want) {
				t.Errorf("%s: %v\nwant %q in\n%s", tt.what, list, want, data)
			}
		}
	}
}

// A form of an earlier version, which asks nothing of this, is read as before.
func TestFormWithoutHours(t *testing.T) {
	c := demo(t)
	j, _ := canon(c, jobOf(t, c, "garden.yaml"))
	b := fill(c, j)
	f := b.Found()
	gone := 0
	for name, p := range f.Names {
		for _, late := range []string{"access", "parking", "tries", "work_", "hours_"} {
			if !strings.HasPrefix(name, "intake_"+late) {
				continue
			}
			delete(f.Names, name)
			gone++
			s := f.Sheet(p.Sheet)
			for row := p.R1; row <= p.R2; row++ {
				if p.C1 <= len(s.Rows[row-1]) {
					s.Rows[row-1][p.C1-1] = sheet.FoundCell{}
				}
			}
		}
	}
	j.Event.Access, j.Event.Parking, j.Labour.Tries, j.Labour.Weather = "", "", 0, nil
	for i := range j.Labour.Windows {
		w := &j.Labour.Windows[i]
		*w = job.WindowCrew{Window: w.Window, Crew: w.Crew, Days: w.Days, Worked: w.Worked}
	}
	data, _, list := Read("garden.xlsx", f, c)
	if want := string(job.Write(j)); gone != 12 || len(list) > 0 || string(data) != want {
		t.Errorf("%d names taken away: %v\n%s\nwant\n%s", gone, list, data, want)
	}
}

// The form asks only on the site for what holds there alone; a shop that does
// not say which windows work there is asked everywhere.
func TestHoursOfTheYard(t *testing.T) {
	c := demo(t)
	open := func(c *catalog.Catalog, key string) bool {
		return !at(Form(c, made), find(Form(c, made), key)).Style.Role.Locked()
	}
	if open(c, "hours_from:1") || open(c, "hours_stay:1") || !open(c, "hours_ready:1") || !open(c, "hours_from:2") {
		t.Error("the cells for hours do not follow from where a window works")
	}
	without := *c
	without.Crew = nil
	if !open(&without, "hours_from:1") {
		t.Error("a shop without a crew file is not asked")
	}
}
