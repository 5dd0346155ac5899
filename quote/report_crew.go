package quote

import (
	"encoding/json"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/quote/crew"
	"tentwright/quote/lift"
)

// schedule is the crew plan; none where the shop has no crew file.
func (r reporter) schedule() *ReportSchedule {
	if r.q.Crew == nil {
		return nil
	}
	out := &ReportSchedule{Windows: []ReportCrewPlan{}, Cautions: each(r.q.Crew.Cautions, func(c *crew.Caution) ReportCrewCaution {
		return ReportCrewCaution{c.Key, c.Window, c.Text, c.Source, c.Severe}
	})}
	for i := range r.q.Crew.Windows {
		if w := &r.q.Crew.Windows[i]; len(w.Days) > 0 {
			out.Windows = append(out.Windows, crewReporter{r, w}.plan())
		}
	}
	return out
}

// crewReporter writes one window down.
type crewReporter struct {
	reporter
	w *crew.Window
}

func (r crewReporter) plan() ReportCrewPlan {
	w := r.w
	out := ReportCrewPlan{Window: w.Labour.Spec.ID, Crews: w.Crews, Leads: w.Leads, Asked: w.Asked, Finish: r.moment(w.Finish), Ready: r.moment(w.Ready),
		Minutes: w.Minutes, Shortest: w.Shortest, Work: w.Work, Paid: w.Paid, Idle: w.Idle, Tried: w.Tried, Chain: r.keys(w.Chain),
		Days: each(w.Days, r.day), Tasks: each(w.Tasks, r.stint), People: each(w.People, r.person), Sizes: each(w.Sizes, r.size)}
	if w.Inspect.Day > 0 {
		at := r.moment(w.Inspect)
		out.Inspect = &at
	}
	if s := &w.Spread; s.Runs > 0 {
		out.Spread = &ReportSpread{Runs: s.Runs, Half: r.moment(s.Half), Ninety: r.moment(s.Ninety), Mean: measured(s.Mean), Dev: measured(s.Dev),
			InTime: exact(money.Round(money.Float(100*s.InTime), 1))}
	}
	return out
}

func (r crewReporter) moment(m crew.Moment) ReportMoment {
	out := ReportMoment{Day: m.Day, At: clock(m.At)}
	if m.Day > 0 {
		out.Date = r.w.Date(m).String()
	}
	return out
}

// keys are those of tasks.
func (r crewReporter) keys(tasks []int) []string {
	return each(tasks, func(i *int) string { return r.w.Tasks[*i].Key })
}

func (r crewReporter) day(d *crew.Day) ReportShift {
	return ReportShift{Day: d.Number, Date: d.Date.String(), Call: clock(d.Call), Arrive: clock(d.Arrive), Leave: clock(d.Leave), End: clock(d.End),
		Breaks: each(d.Breaks, func(b *crew.Pause) ReportBreak {
			return ReportBreak{b.Spec.Name, clock(b.From), clock(b.To), b.Spec.Paid}
		})}
}

func (r crewReporter) stint(t *crew.Task) ReportStint {
	return ReportStint{Key: t.Key, Kind: t.Kind, Name: t.Name, Tent: t.Tent, Crew: t.Crew, Hands: t.Hands, Minutes: t.Minutes,
		Start: r.moment(t.Start), Finish: r.moment(t.Finish), Critical: t.Critical, After: r.keys(t.After),
		Spells: each(t.Spells, func(s *crew.Spell) ReportSpell { return ReportSpell{s.Day, clock(s.From), clock(s.To)} }),
		People: each(t.People, func(i *int) int { return r.w.People[*i].Number })}
}

func (r crewReporter) person(who *crew.Person) ReportPerson {
	return ReportPerson{Number: who.Number, Crew: who.Crew, Lead: who.Lead, Driver: who.Driver, Drives: who.Vehicle, Rides: who.Rides, Skills: list(who.Skills),
		Days: each(who.Days, func(s *crew.Shift) ReportOwnShift { return ReportOwnShift{clock(s.Call), clock(s.End), s.Work, s.Paid} })}
}

func (r crewReporter) size(z *crew.Size) ReportSize {
	return ReportSize{People: z.People, Days: z.Days, Nights: z.Nights, Finish: r.moment(z.Finish), Meets: z.Meets, Paid: z.Paid, Overtime: z.Overtime,
		Wages: exact(z.Wages), Beds: exact(z.Beds), Cost: exact(z.Cost), Asked: z.Asked, Cheapest: z.Cheapest}
}

// lifts is what the lifting asks for.
func (r reporter) lifts() ReportLifts {
	out := ReportLifts{Parts: []ReportLift{}, Unjudged: []string{}, Raises: []ReportRaise{}, Missing: []string{}}
	if l := r.q.Lift; l != nil {
		out.Parts, out.Raises, out.Missing = each(l.Lifts, r.lift), each(l.Raises, r.raise), list(l.Missing)
		out.Unjudged = each(l.Unjudged, func(p **catalog.Part) string { return (*p).ID })
	}
	return out
}

func (r reporter) lift(l *lift.Lift) ReportLift {
	factor := func(f float64) json.Number { return exact(money.Round(money.Float(f), 3)) }
	t := &l.Terms
	return ReportLift{Part: l.Key, How: l.How.ID, Count: l.Count, Holds: l.Holds, Machine: l.How.Machine, Weight: r.mass(l.Weight), Limit: r.mass(l.Limit), Horizontal: factor(t.Horizontal), Vertical: factor(t.Vertical),
		Distance: factor(t.Distance), Asymmetry: factor(t.Asymmetry), Frequency: factor(t.Frequency), Coupling: factor(t.Coupling),
		Index: measured(l.Index), People: l.People}
}

func (r reporter) raise(x *lift.Raise) ReportRaise {
	return ReportRaise{Key: x.Key, Tent: x.Tent, How: x.Spec.ID, Side: x.Side, Legs: x.Legs, Jacks: x.Jacks, Jacked: x.Jacked, People: x.People}
}
