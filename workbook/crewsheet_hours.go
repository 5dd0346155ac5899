package workbook

import (
	"cmp"
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/crew"
	"tentwright/quote/dates"
	"tentwright/workbook/sheet"
)

// crewDay is one day of the crew as the sheet shows it.
type crewDay struct {
	order                     int // of the window among the rates
	window                    *catalog.Window
	setting                   *catalog.CrewDay
	number                    int
	date                      unit.Date
	call, arrive, leave, back unit.Clock
	last                      bool // of those that the job gives; what holds on the last day holds then
}

// days lists the days on the site: those of the plan or, without one, those that
// the job asks for.
func (c *crewSheet) days() []crewDay {
	var all []crewDay
	for i := range c.q.Labour.Windows {
		w := &c.q.Labour.Windows[i]
		setting := c.q.Catalog.Crew.Day(w.Spec.ID)
		if setting == nil || !setting.Site {
			continue
		}
		if plan := c.planOf(w.Spec.ID); plan != nil {
			for k := range plan.Days {
				d := &plan.Days[k]
				all = append(all, crewDay{i, w.Spec, setting, d.Number, d.Date, d.Call, d.Arrive, d.Leave, d.End, k == min(max(1, plan.Asked), len(plan.Days))-1})
			}
			continue
		}
		if w.Hours.IsPositive() {
			all = append(all, c.askedDays(i, w.Spec, setting, w.Days)...)
		}
	}
	return all
}

// askedDays are the days of a window without a plan: when they begin, and no
// more.
func (c *crewSheet) askedDays(order int, w *catalog.Window, setting *catalog.CrewDay, many int) []crewDay {
	first := dates.DayOf(&c.q.Job.Dates, setting.First)
	if last := dates.DayOf(&c.q.Job.Dates, setting.Last); first.IsZero() && !last.IsZero() {
		first = last.AddDays(-many)
	}
	ask := c.asked(w.ID)
	all := make([]crewDay, many)
	for k := range all {
		all[k] = crewDay{order: order, window: w, setting: setting, number: k + 1, call: setting.Start, arrive: ask.From, leave: ask.Until, last: k == many-1}
		if !first.IsZero() {
			all[k].date = first.AddDays(k)
		}
	}
	return all
}

// planOf is the plan of a window; nil without one.
func (c *crewSheet) planOf(window string) *crew.Window {
	if c.q.Crew == nil {
		return nil
	}
	for i := range c.q.Crew.Windows {
		if w := &c.q.Crew.Windows[i]; w.Labour.Spec.ID == window && len(w.Days) > 0 {
			return w
		}
	}
	return nil
}

// hours has one row for each day on the site.
func (c *crewSheet) hours() {
	all := c.days()
	if len(all) == 0 {
		return
	}
	c.band("Hours", "")
	head := func(from, to int, words string) field {
		return span(from, to, in(text(words), sheet.Style{Role: sheet.Heading, Align: sheet.Centre}))
	}
	c.line(crewRow, head(1, 3, "Work"), head(4, 5, "Day"), head(6, 6, "Call"), head(7, 7, "On site"), head(8, 9, "Leave site"), head(10, 10, "In the yard"),
		head(11, 12, "Ready by"), head(13, 14, "Inspection"))
	some := fewDays(all, c.shown.days)
	for i := range some {
		c.dayRow(&some[i])
	}
	if more := len(all) - len(some); more > 0 {
		where, days := SheetCrew, " more days: see "
		if c.scheduled() {
			where = SheetSchedule
		}
		if more == 1 {
			days = " more day: see "
		}
		c.line(crewRow, span(1, crewSheetCols, in(text("and "+itoa(more)+days+where), body(sheet.Text))))
	}
}

// fewDays are at most so many of the days: before all others the first of each
// window, then those on which something must be ready.
func fewDays(all []crewDay, most int) []crewDay {
	rank := func(d *crewDay) int {
		switch {
		case d.number == 1:
			return 0
		case d.last:
			return 1
		}
		return 2
	}
	var some []crewDay
	for level := range 3 {
		for i := range all {
			if rank(&all[i]) == level && len(some) < most {
				some = append(some, all[i])
			}
		}
	}
	slices.SortStableFunc(some, func(a, b crewDay) int { return cmp.Or(cmp.Compare(a.order, b.order), cmp.Compare(a.number, b.number)) })
	return some
}

// dayRow is one day. Its date follows the days of the job, and what must be ready
// by when follows the cells where these are typed; the other times are a plan.
func (c *crewSheet) dayRow(d *crewDay) {
	middle := sheet.Style{Role: sheet.Body, Format: sheet.Clock, Align: sheet.Centre}
	at := func(from, to int, t unit.Clock) field {
		return span(from, to, in(value(sheet.TimeOfDay(t)), middle))
	}
	typed := func(from, to int, column string, t unit.Clock) field {
		if !d.last {
			return span(from, to, in(text(""), middle))
		}
		cell, shown := find("hours_"+column, "hours_id", quoted(d.window.ID)), any("")
		if t != 0 {
			shown = sheet.TimeOfDay(t)
		}
		style := middle
		style.Bold = true
		return span(from, to, in(formula("IF(N("+cell+")>0,"+cell+`,"")`, shown), style))
	}
	ask := c.asked(d.window.ID)
	c.line(crewRow, span(1, 3, in(text(sheet.Short(d.window.Name, 26)+", day "+itoa(d.number)), body(sheet.Text))), span(4, 5, c.dayCell(d)),
		at(6, 6, d.call), at(7, 7, d.arrive), at(8, 9, d.leave), at(10, 10, d.back), typed(11, 12, "ready", ask.Ready), typed(13, 14, "inspect", ask.Inspect))
}

// dayCell is the date of a day, as so many days from that of the job on which
// its window begins, or before which it ends.
func (c *crewSheet) dayCell(d *crewDay) sheet.Cell {
	style := sheet.Style{Role: sheet.Body, Format: sheet.DateLong, Align: sheet.Centre}
	from := d.setting.First
	if from == "" {
		from = d.setting.Last
	}
	begin := dates.DayOf(&c.q.Job.Dates, from)
	switch {
	case d.date.IsZero():
		return in(text(""), style)
	case begin.IsZero():
		return in(value(d.date), style)
	}
	return in(formula(dayNames[from]+"+"+itoa(begin.DaysUntil(d.date)), d.date), style)
}
