package crew_test

import (
	"slices"
	"strings"
	"time"

	"tentwright/catalog/unit"
	"tentwright/quote/crew"
	"tentwright/quote/load"
)

// days wants all work inside the days, outside the breaks, and on the site
// inside its hours and the light.
func (k *checker) days() {
	for n := range k.w.Days {
		d := &k.w.Days[n]
		if d.Number != n+1 || n > 0 && k.w.Days[n-1].Date.AddDays(1) != d.Date {
			k.fail("day %d is number %d on %s", n+1, d.Number, d.Date)
		}
		if d.Call > d.Arrive || d.Arrive > d.Leave || d.Leave > d.End || d.End > 24*60 {
			k.fail("day %d runs %s, %s, %s, %s", n+1, d.Call, d.Arrive, d.Leave, d.End)
		}
		from, until := k.siteHours(d.Date)
		if k.w.Setting.Site && !k.said("hours") && !k.said("drive") && d.Leave > d.Arrive && (d.Arrive < from || d.Leave > until) && k.onSite(n+1) {
			k.fail("on day %d the crew is on the site from %s to %s; %s to %s is allowed", n+1, d.Arrive, d.Leave, from, until)
		}
		if !k.said("hours") && d.End > 0 && !k.said("drive") && (d.Call < k.w.Setting.Start || d.End > k.w.Setting.Finish) {
			k.fail("day %d runs from %s to %s; %s to %s is the crew's day", n+1, d.Call, d.End, k.w.Setting.Start, k.w.Setting.Finish)
		}
	}
	for i := range k.w.Tasks {
		for _, s := range k.w.Tasks[i].Spells {
			d := &k.w.Days[s.Day-1]
			if s.From < d.Call || s.To > d.End {
				k.fail("%s is at %v outside its day from %s to %s", k.w.Tasks[i].Key, s, d.Call, d.End)
			}
			for _, b := range d.Breaks {
				if s.From < b.To && b.From < s.To {
					k.fail("%s runs through a break: %v", k.w.Tasks[i].Key, s)
				}
			}
		}
	}
}

// onSite tells whether a labour task of the site is done on a day.
func (k *checker) onSite(day int) bool {
	return slices.ContainsFunc(k.w.Tasks, func(t crew.Task) bool {
		return t.Labour != nil && !slices.Contains(yard, t.Labour.Rule.Phase) && slices.ContainsFunc(t.Spells, func(s crew.Spell) bool { return s.Day == day })
	})
}

func (k *checker) siteHours(date unit.Date) (from, until unit.Clock) {
	until = 24 * 60
	for _, ask := range k.q.Job.Labour.Windows {
		if ask.Window == k.w.Labour.Spec.ID {
			from = ask.From
			if ask.Until > 0 {
				until = ask.Until
			}
		}
	}
	lamps := false
	for _, s := range k.q.Job.Site {
		lamps = lamps || s.Factor == "light" && s.Option != "day"
	}
	for _, l := range k.q.Catalog.Crew.Daylight {
		if !lamps && strings.EqualFold(l.Month, time.Month(date.Month).String()) {
			from, until = max(from, l.From), min(until, l.Until)
		}
	}
	return from, until
}

// shifts adds every person's minutes up again.
func (k *checker) shifts() {
	work, paid := 0, 0
	for p := range k.w.People {
		person := &k.w.People[p]
		if person.Number != p+1 || len(person.Days) != len(k.w.Days) || len(person.Skills) == 0 {
			k.fail("person %d: %+v", p+1, person)
		}
		for n, h := range person.Days {
			own := 0
			for i := range k.w.Tasks {
				if t := &k.w.Tasks[i]; slices.Contains(t.People, p) {
					for _, s := range t.Spells {
						if s.Day == n+1 {
							own += int(s.To - s.From)
							if s.From < h.Call || s.To > h.End {
								k.fail("person %d works at %v outside the shift %v", p+1, s, h)
							}
						}
					}
				}
			}
			pay := int(h.End - h.Call)
			for _, b := range k.w.Days[n].Breaks {
				if !b.Spec.Paid && h.Call <= b.From && b.To <= h.End {
					pay -= int(b.To - b.From)
				}
			}
			if h.End > 0 {
				pay = max(pay, int(k.w.Setting.Least)) // each call is paid for so long
			}
			if own != h.Work || pay != h.Paid || h.Work > h.Paid {
				k.fail("person %d on day %d: works %d, is paid %d; the shift says %+v", p+1, n+1, own, pay, h)
			}
			work, paid = work+own, paid+pay
		}
	}
	if work != k.w.Work || paid != k.w.Paid || k.w.Idle != paid-work {
		k.fail("%d worked, %d paid; the plan says %d, %d and %d idle", work, paid, k.w.Work, k.w.Paid, k.w.Idle)
	}
}

// chain wants the critical chain to run forward without overlap.
func (k *checker) chain() {
	if len(k.w.Tasks) > 0 && len(k.w.Chain) == 0 {
		k.fail("no critical chain")
	}
	for n, i := range k.w.Chain {
		if !k.w.Tasks[i].Critical {
			k.fail("%s is on the chain but not critical", k.w.Tasks[i].Key)
		}
		if n > 0 && !ends(k.w.Tasks[k.w.Chain[n-1]].Finish, k.w.Tasks[i].Start) {
			k.fail("%s follows %s on the chain but begins before it ends", k.w.Tasks[i].Key, k.w.Tasks[k.w.Chain[n-1]].Key)
		}
	}
	if k.w.Minutes < k.w.Shortest {
		k.fail("%d minutes beat the bound of %d", k.w.Minutes, k.w.Shortest)
	}
}

// roles is how many people it takes for nobody to have two of the skills that
// the tasks ask for.
func (k *checker) roles() int {
	n, skills := 0, map[string]bool{}
	for i := range k.w.Tasks {
		if l := k.w.Tasks[i].Labour; l != nil && l.Rule.Skill != "hand" && l.Rule.Skill != "lead" {
			skills[l.Rule.Skill] = true
		}
	}
	for _, trips := range [][]load.Trip{k.q.Load.Out.Trips, k.q.Load.Back.Trips} {
		n = max(n, len(trips))
	}
	return n + len(skills) + k.w.Leads + 1
}

// sizes wants the rows to rise, none later than one of fewer people, and the
// cheapest to be that.
func (k *checker) sizes() {
	asked, cheapest := 0, -1
	for i := range k.w.Sizes {
		s := &k.w.Sizes[i]
		if s.Asked {
			asked++
			if s.Paid != k.w.Paid || s.Finish != k.w.Finish || s.Days != len(k.w.Days) {
				k.fail("the row asked for, %+v, is not the plan", s)
			}
		}
		if !s.Wages.Add(s.Beds).Equal(s.Cost) || s.Overtime > s.Paid {
			k.fail("row %+v does not add up", s)
		}
		// With several crews one more person may send a driver or a lead to another,
		// and where few people fill two roles each, one more divides them.
		steady := k.w.Crews == 1 && i > 0 && k.w.Sizes[i-1].People >= k.roles()
		if i > 0 && (k.w.Sizes[i-1].People >= s.People || steady && !ends(s.Finish, k.w.Sizes[i-1].Finish)) {
			k.fail("row %+v after %+v", s, k.w.Sizes[i-1])
		}
		if s.Meets && (cheapest < 0 || s.Cost.LessThan(k.w.Sizes[cheapest].Cost)) {
			cheapest = i
		}
	}
	for i := range k.w.Sizes {
		if k.w.Sizes[i].Cheapest != (i == cheapest) {
			k.fail("row %d: cheapest is row %d", i, cheapest)
		}
	}
	if len(k.w.Tasks) > 0 && asked != 1 {
		k.fail("%d rows are of the crew asked for", asked)
	}
}
