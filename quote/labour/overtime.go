package labour

import (
	"tentwright/catalog"
	"tentwright/catalog/money"
)

// windows shares the hours of each window over its crew and days, and finds
// overtime: first by the day, then by the week over what is left.
func (e *estimator) windows() {
	for i := range e.c.Rates.Windows {
		w := e.crewOf(&e.c.Rates.Windows[i])
		var hours []money.Number
		for k := range e.r.Tasks {
			if t := &e.r.Tasks[k]; t.Window == w.Spec.ID {
				hours = append(hours, t.Hours)
				if t.Hours.IsPositive() {
					w.Smallest = max(w.Smallest, t.Least)
				}
			}
		}
		w.Hours = money.Sum(hours...)
		w.Before = e.before(&w)
		w.share(&e.c.Rates.Overtime)
		e.r.Windows = append(e.r.Windows, w)
	}
}

// before is the hours of each person in the window's week that come before it:
// the most that anyone says to have worked elsewhere, and those of earlier
// windows of that week.
func (e *estimator) before(w *Window) money.Number {
	worked, own := w.Worked, money.Zero
	for k := range e.r.Windows {
		if other := &e.r.Windows[k]; other.Spec.Week == w.Spec.Week {
			worked, own = larger(worked, other.Worked), own.Add(other.within(daysOfWeek))
		}
	}
	return worked.Add(own)
}

// daysOfWeek is after how many days of work the weekly hours begin anew.
const daysOfWeek = 7

// within is the plain hours of so many of the window's days, at most all.
func (w *Window) within(days int) money.Number {
	return money.DivRound(w.Plain.Mul(money.Int(min(days, w.Days))), money.Int(w.Days), 4)
}

// weekOver is what of the plain hours is beyond the weekly limit: in the week
// that the window begins in, in each full week after it, and in the days left.
func (w *Window) weekOver(o *catalog.Overtime) money.Number {
	first := positive(w.Before.Add(w.within(daysOfWeek)).Sub(larger(o.Weekly, w.Before)))
	full := max(1, w.Days/daysOfWeek)
	week := positive(w.within(daysOfWeek).Sub(o.Weekly)).Mul(money.Int(full - 1))
	rest := positive(w.within(max(0, w.Days-full*daysOfWeek)).Sub(o.Weekly))
	return money.Sum(first, week, rest)
}

// crewOf takes crew, days and hours worked from the job, else from the rates.
func (e *estimator) crewOf(spec *catalog.Window) Window {
	w := Window{Spec: spec, Crew: spec.Crew, Days: spec.Days}
	for i := range e.j.Labour.Windows {
		ask := &e.j.Labour.Windows[i]
		if ask.Window != spec.ID {
			continue
		}
		if ask.Crew > 0 {
			w.Crew = ask.Crew
		}
		if ask.Days > 0 {
			w.Days = ask.Days
		}
		w.Worked = ask.Worked
	}
	return w
}

// share splits the hours of each person into plain time and overtime.
func (w *Window) share(o *catalog.Overtime) {
	w.Person = money.DivRound(w.Hours, money.Int(w.Crew), 4)
	w.Day = money.DivRound(w.Person, money.Int(w.Days), 4)
	w.DayOver = positive(w.Day.Sub(o.Daily)).Mul(money.Int(w.Days))
	w.DayOver = smaller(w.DayOver, w.Person)
	w.Plain = w.Person.Sub(w.DayOver)
	w.WeekOver = w.weekOver(o)
	w.Share = money.Zero
	if w.Person.IsPositive() {
		w.Share = money.DivRound(w.DayOver.Add(w.WeekOver), w.Person, 6)
	}
}

// positive is n, or zero in place of less.
func positive(n money.Number) money.Number { return larger(n, money.Zero) }

// larger is the larger of two numbers.
func larger(a, b money.Number) money.Number {
	if a.LessThan(b) {
		return b
	}
	return a
}

// smaller is the smaller of two numbers.
func smaller(a, b money.Number) money.Number {
	if b.LessThan(a) {
		return b
	}
	return a
}

// skills adds hours up by window and skill; each skill has the window's share
// of overtime.
func (e *estimator) skills() {
	for i := range e.r.Windows {
		w := &e.r.Windows[i]
		for k := range e.c.Rates.Skills {
			skill := &e.c.Rates.Skills[k]
			if hours, any := e.worked(w.Spec.ID, skill.ID); any {
				e.r.Skills = append(e.r.Skills, e.skillHours(w, skill, hours))
			}
		}
	}
}

// skillHours prices a skill's hours in a window. Overtime is rounded before it
// is paid or charged, so that the printed hours times the rates are the money.
func (e *estimator) skillHours(w *Window, skill *catalog.Skill, hours money.Number) SkillHours {
	s := SkillHours{Key: w.Spec.ID + "/" + skill.ID, Window: w.Spec.ID, Skill: skill, Hours: hours}
	s.Over = money.Round(hours.Mul(w.Share), 2)
	s.Plain = hours.Sub(s.Over)
	s.Cost = e.c.Currency().Round(s.Plain.Add(s.Over.Mul(e.c.Rates.Overtime.CostFactor)).Mul(skill.Cost))
	over := e.c.Currency().Round(skill.Bill.Mul(e.c.Rates.Overtime.BillFactor))
	s.Bill = e.c.Currency().Round(s.Plain.Mul(skill.Bill).Add(s.Over.Mul(over)))
	return s
}

// worked adds up a skill's hours in a window, and tells whether any task of it
// stands there.
func (e *estimator) worked(window, skill string) (money.Number, bool) {
	sum, any := money.Zero, false
	for i := range e.r.Tasks {
		if t := &e.r.Tasks[i]; t.Window == window && t.Rule.Skill == skill {
			sum = sum.Add(t.Hours)
			any = true
		}
	}
	return sum, any
}
