package workbook

import (
	"fmt"
	"strings"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
	"tentwright/workbook/sheet"
)

// siteHours has what the crew plan must keep to, for each window of work: into
// how many crews its people are split, and its times. The plan is a search, so
// that a row that was changed asks for a new quote.
func (l *layout) siteHours(s *sheet.Sheet) {
	if l.q.Catalog.Crew == nil {
		return
	}
	band(s, "Crews and hours that the schedule must keep to", crewPrinted)
	at := sheet.Style{Role: sheet.Input, Format: sheet.Clock, Align: sheet.Centre}
	t := l.startTable(s, "hours", []column{
		{"name", "Window", 0, body(sheet.Text)},
		{"id", "Id", 0, sheet.Style{Role: sheet.Key}},
		{"crews", "Crews", 0, input(sheet.Whole)},
		{"from", "On site from", 0, at},
		{"until", "Off it by", 0, at},
		{"ready", "Ready by", 0, at},
		{"inspect", "Inspection at, on the last day", 0, at},
		{"stay", "Sleeps there", 0, sheet.Style{Role: sheet.InputText, Format: sheet.Text}},
		{"state", "State", 0, calc(sheet.Text)},
	})
	for i := range l.q.Labour.Windows {
		l.siteHoursRow(t, l.q.Labour.Windows[i].Spec)
	}
	t.end()
	l.allowColumn(t, "crews", wholes(1, 20), "crews into which the people are split, each with tents of its own; 1: all work as one")
	l.allowColumn(t, "from", sheet.AnyTime(), "time before which the site may not be entered, such as 7:30; empty: none is given")
	l.allowColumn(t, "until", sheet.AnyTime(), "time by which the site must be left, such as 20:00; empty: none is given")
	l.allowColumn(t, "ready", sheet.AnyTime(), "time by which all must be ready on the last day, such as 16:00; empty: any time of that day")
	l.allowColumn(t, "inspect", sheet.AnyTime(), "time at which the authority comes on the last day, such as 15:00; empty: nobody does")
	l.allowColumn(t, "stay", yesNo(), "Yes if the crew sleeps near the site between its days")
	s.Highlights = append(s.Highlights, sheet.Highlight{Range: t.column("state"), Formula: t.at("state", t.first) + `="requote"`, Role: sheet.Warn})
	l.weatherTerms(s, t.col("state"))
}

// siteHoursRow is one window. What holds on a site alone is not for typing where the
// crew works in the yard.
func (l *layout) siteHoursRow(t *table, w *catalog.Window) {
	ask, n := l.asked(w.ID), t.line()
	day := l.q.Catalog.Crew.Day(w.ID)
	site := day == nil || day.Site
	same := []string{n.at("crews") + "=" + itoa(max(1, ask.Crews))}
	n.set("name", text(w.Name))
	n.set("id", text(w.ID))
	n.set("crews", value(max(1, ask.Crews)))
	for _, x := range []struct {
		id   string
		at   unit.Clock
		open bool
	}{{"from", ask.From, site}, {"until", ask.Until, site}, {"ready", ask.Ready, true}, {"inspect", ask.Inspect, site}} {
		cell := value(sheet.TimeOfDay(x.at))
		if !x.open {
			cell = in(cell, body(sheet.Clock))
		}
		n.set(x.id, cell)
		same = append(same, "ROUND(N("+n.at(x.id)+")*1440,0)="+itoa(int(x.at)))
	}
	stay := text(yes(ask.Stay))
	if !site {
		stay = in(text(""), body(sheet.Text))
	} else {
		same = append(same, n.at("stay")+"="+quoted(yes(ask.Stay)))
	}
	n.set("stay", stay)
	n.set("state", formula("IF(AND("+strings.Join(same, ",")+`),"","requote")`, ""))
	n.add()
}

// asked is what the job says of a window; an empty entry where it says nothing.
func (l *layout) asked(window string) job.WindowCrew {
	for _, w := range l.q.Job.Labour.Windows {
		if w.Window == window {
			return w
		}
	}
	return job.WindowCrew{Window: window}
}

// weatherTerms are what the crew must work in, and how long a short schedule is
// looked for; the state of each stands in the column of the table above.
func (l *layout) weatherTerms(s *sheet.Sheet, state int) {
	var degrees, humidity any
	if w := l.q.Job.Labour.Weather; w != nil {
		humidity = float(w.Humidity)
		if w.Temperature != nil {
			degrees = w.Temperature.In(l.sys)
		}
	}
	tries := l.q.Job.Labour.Tries
	if tries == 0 {
		tries = l.q.Catalog.Crew.Tries
	}
	warm := sheet.Validation{Kind: sheet.Decimal, Min: "-40", Max: itoa(60), AllowBlank: true}
	if l.sys == unit.Imperial {
		warm.Max = itoa(140)
	}
	wet := percents()
	wet.AllowBlank = true
	first := len(s.Rows) + 1
	for _, x := range []setting{
		{"job_weather_temperature", "Temperature at work, " + l.sys.TemperatureUnit(), "forecast in the shade; empty with the one below: as the heat of the site says", degrees, sheet.Num1, warm},
		{"job_weather_humidity", "Humidity at work, percent", "forecast, of the same hours", humidity, sheet.Num1, wet},
		{"job_tries", "Schedules tried", fmt.Sprintf("in search of a short one; the shop tries %d. More take longer", l.q.Catalog.Crew.Tries), tries, sheet.Whole, wholes(1, 1_000_000)},
	} {
		cells := make([]sheet.Cell, state)
		cells[0], cells[2] = in(text(x.label), sheet.Style{Role: sheet.Label}), in(value(x.value), input(x.format))
		cells[3] = in(text(x.explain), sheet.Style{Role: sheet.Faint, Indent: 1})
		cells[state-1] = in(formula(plannedFormula(x.name, x.value), ""), calc(sheet.Text))
		s.Rows = append(s.Rows, sheet.Row{Cells: cells})
		l.cellName(x.name, s, 3)
		l.allow(s, len(s.Rows), 3, x.allow, x.explain)
	}
	states := sheet.Range{R1: first, C1: state, R2: len(s.Rows), C2: state}
	l.name("work_state", s, states, "")
	s.Highlights = append(s.Highlights, sheet.Highlight{Range: states, Formula: sheet.Ref(first, state) + `="requote"`, Role: sheet.Warn})
}

// plannedFormula tells whether a cell still holds what the plan was made for.
func plannedFormula(name string, planned any) string {
	if planned == nil {
		return "IF(LEN(" + name + `)=0,"","requote")`
	}
	return fmt.Sprintf(`IF(AND(LEN(%s)>0,ROUND(N(%s),2)=ROUND(%v,2)),"","requote")`, name, name, planned)
}
