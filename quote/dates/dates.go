// Package dates finds the days by which each thing of a job must be done: from
// the job's own days, by the rules and holidays of the shop's calendar.
//
//	Date  something to be done: its first and last day
//	End   one of these days, with the terms that it follows from
//	Days  which days are days of work
//	ICal  the dates as a file for calendar programs
package dates

import (
	"cmp"
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
	"tentwright/quote/parts"
	"tentwright/quote/tent"
)

// Result is what the stage finds.
type Result struct {
	Dates    []Date    // by their days; those without one last
	Known    unit.Date // last day that the job knows of: signed, or else quoted
	Clashes  []Off     // days of the job on which offices or the yard do not work
	Years    [2]int    // for which Holidays and Closed are complete
	Holidays []Off
	Closed   []Off // of the yard alone
}

// Date is something that must be done.
type Date struct {
	Rule   *catalog.DateRule
	First  *End // not before; nil: at any time
	Last   *End // at the latest, or on; nil: at any time
	Exact  bool // on Last, neither before nor after it
	Needed bool // the job has what the rule is for
	State  string
}

// End is a day and what it follows from.
type End struct {
	Spec    catalog.DayFrom
	From    string    // the day of the job that is counted from; Spec.Unsigned where that holds
	Start   unit.Date // that day; none: not known yet
	Day     unit.Date // the result; none: not known yet
	Skipped []Off     // days between the two that offices or the yard do not work, common days of rest apart
	Term    string    // of company.yaml that sets Spec; none: the calendar's own
}

// States of a date. The empty one is that nothing is wrong.
const (
	Late      = "late"            // its last day is before what the job knows of
	NoDay     = "no day left"     // its first day is after its last
	WithOrder = "with the order"  // the balance, whose day was before the quote
	Unsigned  = "not signed yet"  // it has no day until the job is signed
	NotNeeded = "not needed here" // the job has none of what it is for
)

// Build works the dates out; nil where the shop has no calendar file.
func Build(c *catalog.Catalog, j *job.Job, p *parts.Result) *Result {
	if c.Calendar == nil {
		return nil
	}
	b := &builder{c: c, j: j, p: p, days: NewDays(c.Calendar), r: &Result{Known: j.Dates.Quoted}}
	if b.r.Known.Before(j.Dates.Signed) {
		b.r.Known = j.Dates.Signed
	}
	for i := range c.Calendar.Dates {
		b.date(&c.Calendar.Dates[i])
	}
	slices.SortStableFunc(b.r.Dates, compare)
	for _, day := range []unit.Date{j.Dates.Deliver, j.Dates.Strike, j.Dates.Collect} {
		if why := b.days.Off(day); why != "" {
			b.r.Clashes = append(b.r.Clashes, Off{day, why})
		}
	}
	b.around()
	return b.r
}

type builder struct {
	c    *catalog.Catalog
	j    *job.Job
	p    *parts.Result
	days *Days
	r    *Result
}

// date works one rule out.
func (b *builder) date(r *catalog.DateRule) {
	d := Date{Rule: r, Needed: b.needed(r)}
	switch {
	case r.Term != "":
		d.Last = b.end(Term(b.c, r.Term))
		d.Last.Term, d.Exact = r.Term, r.Term == catalog.TermDeposit
	case r.Day != nil:
		d.Last, d.Exact = b.end(*r.Day), true
	default:
		if r.Earliest != nil {
			d.First = b.end(*r.Earliest)
		}
		if r.Latest != nil {
			d.Last = b.end(*r.Latest)
		}
	}
	d.State = b.state(&d)
	b.r.Dates = append(b.r.Dates, d)
}

// Term is how the quote terms of company.yaml set a day.
func Term(c *catalog.Catalog, term string) catalog.DayFrom {
	t := &c.Company.Quote
	switch term {
	case catalog.TermValid:
		return t.Valid()
	case catalog.TermBalance:
		return t.Balance()
	}
	return catalog.DayFrom{From: catalog.FromSigned}
}

// end counts a day. While the job is not signed, one from that day is counted
// from the other that the rule names, or is not known.
func (b *builder) end(spec catalog.DayFrom) *End {
	e := &End{Spec: spec, From: spec.From}
	if spec.From == catalog.FromSigned && b.j.Dates.Signed.IsZero() && spec.Unsigned != "" {
		e.From = spec.Unsigned
	}
	if e.Start = DayOf(&b.j.Dates, e.From); e.Start.IsZero() {
		return e
	}
	e.Day = b.days.Roll(b.days.Add(e.Start, spec.Days, spec.Count), spec.Roll, spec.RollsTo())
	if spec.Counted() != catalog.CountCalendar {
		from, to := e.Start, e.Day
		if to.Before(from) {
			from, to = to, from
		}
		for day := from.AddDays(1); day.Before(to); day = day.AddDays(1) {
			if why := b.days.Off(day); why != "" && b.c.Calendar.Works(day.Weekday()) && !b.days.Works(day, spec.Count) {
				e.Skipped = append(e.Skipped, Off{day, why})
			}
		}
	}
	return e
}

// DayOf is a day of a job by its name in calendar.yaml.
func DayOf(d *job.Dates, from string) unit.Date {
	return map[string]unit.Date{catalog.FromQuoted: d.Quoted, catalog.FromSigned: d.Signed, catalog.FromDeliver: d.Deliver,
		catalog.FromEvent: d.From, catalog.FromEnd: d.To, catalog.FromStrike: d.Strike, catalog.FromCollect: d.Collect}[from]
}

// needed tells whether the job has what a rule is for.
func (b *builder) needed(r *catalog.DateRule) bool {
	switch {
	case r.Needs == catalog.NeedsTents && len(b.p.Tents) == 0:
		return false
	case r.Needs == catalog.NeedsStakes && !slices.ContainsFunc(b.p.Tents, func(t tent.Tent) bool { return t.Staked > 0 }):
		return false
	}
	return r.Item == "" || b.p.IsOrdered(r.Item)
}

// state says what is wrong with a date, if anything.
func (b *builder) state(d *Date) string {
	first, last := d.First.day(), d.Last.day()
	switch {
	case !d.Needed:
		return NotNeeded
	case first.IsZero() && last.IsZero():
		return Unsigned
	case last.IsZero():
		return ""
	case d.Rule.Term == catalog.TermBalance && last.Before(b.j.Dates.Quoted):
		return WithOrder
	case last.Before(b.r.Known):
		return Late
	case !first.IsZero() && last.Before(first):
		return NoDay
	}
	return ""
}

// Missed tells whether a date can no longer be kept.
func (d *Date) Missed() bool { return d.State == Late || d.State == NoDay }

// Begin is the first day of a date that is known, and Until the last.
func (d *Date) Begin() unit.Date {
	if day := d.First.day(); !day.IsZero() {
		return day
	}
	return d.Last.day()
}

// Until is the last day of a date that is known.
func (d *Date) Until() unit.Date {
	if day := d.Last.day(); !day.IsZero() {
		return day
	}
	return d.First.day()
}

// day is the day of an end that there may be none of.
func (e *End) day() unit.Date {
	if e == nil {
		return unit.Date{}
	}
	return e.Day
}

// compare orders dates by the day that people wait for: the last, or else the
// first. What has none comes last.
func compare(x, y Date) int {
	rank := func(d *Date) int {
		switch {
		case !d.Needed:
			return 2
		case d.Until().IsZero():
			return 1
		}
		return 0
	}
	if c := cmp.Compare(rank(&x), rank(&y)); c != 0 {
		return c
	}
	return cmp.Or(y.Until().DaysUntil(x.Until()), y.Begin().DaysUntil(x.Begin()))
}

// margin is how many days around the job its holidays are listed for, so that
// counts that leave it stay right.
const margin = 31

// around lists the days off of the years around the job and all its dates.
func (b *builder) around() {
	d := &b.j.Dates
	first, last := d.Quoted, d.Collect
	take := func(day unit.Date) {
		if !day.IsZero() && day.Before(first) {
			first = day
		}
		if last.Before(day) {
			last = day
		}
	}
	for _, day := range []unit.Date{d.Signed, d.Deliver, d.Strike} {
		take(day)
	}
	for i := range b.r.Dates {
		take(b.r.Dates[i].Begin())
		take(b.r.Dates[i].Until())
	}
	b.r.Years = [2]int{first.AddDays(-margin).Year, last.AddDays(margin).Year}
	b.r.Holidays = b.days.Holidays(b.r.Years[0], b.r.Years[1])
	b.r.Closed = b.days.Closed(b.r.Years[0], b.r.Years[1])
}
