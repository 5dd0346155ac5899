package quote

import "tentwright/quote/dates"

// ReportDay is something that must be done and its days by ISO 8601, those that
// are not known or not limited left out.
type ReportDay struct {
	Key      string     `json:"key"`
	Name     string     `json:"name"`
	Who      string     `json:"who,omitempty"`
	Needed   bool       `json:"needed"` // the job has what the date is for
	Earliest *ReportEnd `json:"earliest,omitempty"`
	Latest   *ReportEnd `json:"latest,omitempty"` // of a date on one day, that day
	Exact    bool       `json:"exact"`            // on that day, neither before nor after
	Rule     string     `json:"rule"`             // in words
	State    string     `json:"state,omitempty"`  // late, no day left, not signed yet ...; none: nothing is wrong
	Stop     bool       `json:"stop"`             // the job must not go ahead once it is too late
	Note     string     `json:"note,omitempty"`
	Source   string     `json:"source,omitempty"`
}

// ReportEnd is one day of a date with the terms that it follows from.
type ReportEnd struct {
	Day     string      `json:"day,omitempty"`  // none: the day that it is counted from is not known yet
	From    string      `json:"from"`           // of the job: quoted, signed, deliver ...
	Days    int         `json:"days"`           // below zero before that day
	Count   string      `json:"count"`          // calendar, business or yard days
	Roll    string      `json:"roll,omitempty"` // to the day of work before or after
	Term    string      `json:"term,omitempty"` // of the company's quote terms that sets it
	Skipped []ReportOff `json:"skipped"`        // days off between the two
}

// ReportOff is a holiday, or a day on which the yard is shut.
type ReportOff struct {
	Day  string `json:"day"`
	Name string `json:"name"`
}

// days is every date of the job; an empty list where the shop has no calendar.
func (r reporter) days() []ReportDay {
	if r.q.Dates == nil {
		return []ReportDay{}
	}
	return each(r.q.Dates.Dates, r.day)
}

func (r reporter) day(d *dates.Date) ReportDay {
	return ReportDay{Key: d.Rule.ID, Name: d.Rule.Name, Who: d.Rule.Who, Needed: d.Needed, Earliest: r.end(d.First), Latest: r.end(d.Last),
		Exact: d.Exact, Rule: d.Words(), State: d.State, Stop: d.Rule.Stop, Note: d.Rule.Note, Source: d.Rule.Source}
}

func (r reporter) end(e *dates.End) *ReportEnd {
	if e == nil {
		return nil
	}
	out := &ReportEnd{From: e.From, Days: e.Spec.Days, Count: e.Spec.Counted(), Roll: e.Spec.Roll, Term: e.Term,
		Skipped: each(e.Skipped, func(o *dates.Off) ReportOff { return ReportOff{o.Day.String(), o.Name} })}
	if !e.Day.IsZero() {
		out.Day = e.Day.String()
	}
	return out
}
