package workbook

import (
	"strings"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/quote"
	"tentwright/quote/dates"
	"tentwright/workbook/sheet"
)

// countable tells whether a spreadsheet program can count an end: WORKDAY knows no
// week but Monday to Friday.
func (l *layout) countable(e *dates.End) bool {
	return l.plainWeek() || e.Spec.Counted() == catalog.CountCalendar && e.Spec.Roll == ""
}

// dayCell is the day of an end by formula; empty where the job has none of what
// it is for, or is not signed. Where no program can count by it, it is a value.
func (l *layout) dayCell(n *line, d *dates.Date, e *dates.End, days string) sheet.Cell {
	switch {
	case e == nil:
		return text("")
	case !l.countable(e):
		return value(dayOr(d, e))
	}
	f := "IF(" + n.at("needed") + `="No","",` + dayFormula(e, n.at(days)) + ")"
	if e.Spec.From == catalog.FromSigned && e.Spec.Unsigned == "" {
		f = "IF(OR(" + n.at("needed") + `="No",LEN(job_date_signed)=0),"",` + dayFormula(e, n.at(days)) + ")"
	}
	return formula(f, dayOr(d, e))
}

// dayOr is a day as its cell shows it: an empty text where there is none.
func dayOr(d *dates.Date, e *dates.End) any {
	if !d.Needed || e.Day.IsZero() {
		return ""
	}
	return e.Day
}

// dayNames are the cells of the sheet Job by the names in calendar.yaml.
var dayNames = map[string]string{catalog.FromQuoted: "job_date_quoted", catalog.FromSigned: "job_date_signed", catalog.FromDeliver: "job_date_deliver",
	catalog.FromEvent: "job_date_from", catalog.FromEnd: "job_date_to", catalog.FromStrike: "job_date_strike", catalog.FromCollect: "job_date_collect"}

// dayFormula is dates.Days in a cell: so many counted days from a day of the
// job, moved to a day of work where that is asked for.
func dayFormula(e *dates.End, days string) string {
	from := dayNames[e.Spec.From]
	if e.Spec.Unsigned != "" {
		from = "IF(LEN(job_date_signed)=0," + dayNames[e.Spec.Unsigned] + ",job_date_signed)"
	}
	f := "WORKDAY(" + from + "," + days + "," + offWork(e.Spec.Counted()) + ")"
	if e.Spec.Counted() == catalog.CountCalendar {
		f = from + "+" + days
	}
	off := offWork(e.Spec.RollsTo())
	switch e.Spec.Roll {
	case catalog.RollBefore:
		return "WORKDAY(" + f + "+1,-1," + off + ")"
	case catalog.RollAfter:
		return "WORKDAY(" + f + "-1,1," + off + ")"
	}
	return f
}

// offWork is the days off of those who count by a kind of day.
func offWork(count string) string {
	if count == catalog.CountYard {
		return "days_closed"
	}
	return "days_off"
}

// TickedBox is a box that was ticked.
const TickedBox = "☑"

// stateDone is the state of a date that was ticked.
const stateDone = "done"

// stateNow is the state of a date by what was ticked.
func (l *layout) stateNow(d *dates.Date) string {
	if d.Needed && l.kept.Done[d.Rule.ID] {
		return stateDone
	}
	return d.State
}

// datesNow takes what was ticked out of a check of dates; false of any other.
func (l *layout) datesNow(c *quote.Check, kind, key string) bool {
	if l.q.Dates == nil || kind != "late" && kind != "dates" {
		return false
	}
	for i := range l.q.Dates.Dates {
		d := &l.q.Dates.Dates[i]
		own := missedWord(d.Rule) == "stop"
		if d.Missed() && l.kept.Done[d.Rule.ID] && (kind == "late" && key == d.Rule.ID || kind == "dates" && !own) {
			c.Value = c.Value.Sub(money.One)
		}
	}
	return true
}

// stateOfDate is the state of a date in a cell. An end without a day limits
// nothing, though its empty text would be above any day.
func stateOfDate(n *line, d *dates.Date) string {
	first, last := n.at("first"), n.at("last")
	f := `""`
	if d.First != nil && d.Last != nil {
		f = "IF(LEN(" + first + `)=0,"",IF(` + first + ">" + last + "," + quoted(dates.NoDay) + `,""))`
	}
	f = "IF(" + last + "<date_known," + quoted(dates.Late) + "," + f + ")"
	if d.Rule.Term == catalog.TermBalance {
		f = "IF(" + last + "<job_date_quoted," + quoted(dates.WithOrder) + "," + f + ")"
	}
	return "IF(" + n.at("needed") + `="No",` + quoted(dates.NotNeeded) + ",IF(" + n.at("done") + "=" + quoted(TickedBox) + "," + quoted(stateDone) +
		",IF(LEN(" + first + ")+LEN(" + last + ")=0," + quoted(dates.Unsigned) + ",IF(LEN(" + last + `)=0,"",` + f + "))))"
}

// ruleFormula puts the words of a date together by the numbers of days as they
// now stand.
func ruleFormula(n *line, d *dates.Date) string {
	switch {
	case d.Exact:
		return endWords(d.Last, dates.On, n.at("days_last"))
	case d.First == nil:
		return endWords(d.Last, dates.By, n.at("days_last"))
	case d.Last == nil:
		return endWords(d.First, dates.NotBefore, n.at("days_first"))
	}
	return endWords(d.First, dates.NotBefore, n.at("days_first")) + `&"; "&` + endWords(d.Last, dates.By, n.at("days_last"))
}

// endWords is dates.End.Words in a cell.
func endWords(e *dates.End, before, days string) string {
	w := e.Phrases(before)
	many := "ABS(" + days + ")&IF(ABS(" + days + ")=1," + quoted(w.One) + "," + quoted(w.Many) + ")&IF(" + days + "<0," + quoted(w.Before) + "," + quoted(w.After) + ")"
	if before != "" {
		many = quoted(before) + "&" + many
	}
	f := "IF(" + days + "=0," + quoted(w.Same) + "," + many + ")"
	if w.Tail != "" {
		f += "&" + quoted(w.Tail)
	}
	return f
}

// mostStaked is the most tents whose stakes one formula looks at; beyond it
// whether there are any is a value.
const mostStaked = 100

// neededCell tells whether the job has what a date is for, as it now stands.
func (l *layout) neededCell(d *dates.Date) sheet.Cell {
	var all []string
	switch r := d.Rule; {
	case r.Needs != "" && len(l.q.Parts.Tents) == 0:
		return text(yes(false))
	case r.Needs == catalog.NeedsTents:
		all = append(all, "SUM(tents_ordered)>0")
	case r.Needs == catalog.NeedsStakes:
		staked := l.stakedTents()
		if len(staked) == 0 || len(staked) > mostStaked {
			return text(yes(d.Needed))
		}
		all = append(all, strings.Join(staked, "+")+">0")
	}
	if d.Rule.Item != "" {
		all = append(all, sumOver(l.orderTables(), "SUMIFS(@_ordered,@_id,"+quoted(d.Rule.Item)+")")+">0")
	}
	if len(all) == 0 {
		return text(yes(true))
	}
	return formula("IF(AND("+strings.Join(all, ",")+`),"Yes","No")`, yes(d.Needed))
}

// stakedTents are terms for how many there are of each tent that stands on
// stakes.
func (l *layout) stakedTents() (terms []string) {
	for i := range l.q.Parts.Tents {
		if t := &l.q.Parts.Tents[i]; t.Staked > 0 {
			terms = append(terms, manyOf(t.Job.ID))
		}
	}
	return terms
}

// datesFormulas gives the formulas of both sides of a check that this sheet can
// make again; false for any other check.
func (l *layout) datesFormulas(kind, rest string) (is, limit string, ok bool) {
	missed := func(more string) string {
		return "COUNTIFS(" + more + ",date_state," + quoted(dates.Late) + ")+COUNTIFS(" + more + ",date_state," + quoted(dates.NoDay) + ")"
	}
	switch kind {
	case "late":
		return missed("date_key," + quoted(rest)), "", true
	case "dates":
		return missed("date_missed," + quoted("look")), "", true
	case "days off":
		return "COUNTIF(days_closed,job_date_deliver)+COUNTIF(days_closed,job_date_strike)+COUNTIF(days_closed,job_date_collect)", "", true
	}
	return "", "", false
}
