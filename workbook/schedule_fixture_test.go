package workbook_test

import (
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote"
	"tentwright/quote/crew"
	"tentwright/quote/labour"
)

// planned gives a quote a crew plan that no search made: every task of a window
// after the one before it, eight hours a day with a meal between, everybody at
// every task. It shows what a plan can hold, not how one is found: tasks over
// several days, more days than asked, people without a seat, cautions of both
// kinds.
func planned(q *quote.Quote) *quote.Quote {
	r := &crew.Result{Cautions: []crew.Caution{{Key: "duty:V1", Window: "install", Text: "the driver of V1 drives 12 h on day 1; at most 11 h are legal", Source: "49 CFR 395.3", Severe: true},
		{Key: "light", Window: "strike", Text: "work goes on after dark"}}}
	for i := range q.Labour.Windows {
		r.Windows = append(r.Windows, planWindow(q, &q.Labour.Windows[i]))
	}
	with := *q
	with.Crew = r
	return &with
}

const (
	fixtureCall = unit.Clock(7*60 + 30)
	fixtureMeal = unit.Clock(11*60 + 30)
	fixtureBack = unit.Clock(16 * 60)
	fixtureDay  = 8 * 60 // working minutes
)

// momentAt is the moment after so many working minutes; one that ends something
// stands before a pause, not after it.
func momentAt(minutes int, ends bool) crew.Moment {
	day, rest := minutes/fixtureDay, minutes%fixtureDay
	if ends && rest == 0 && day > 0 {
		day, rest = day-1, fixtureDay
	}
	at := fixtureCall + unit.Clock(rest)
	if at > fixtureMeal || at == fixtureMeal && !ends {
		at += 30
	}
	return crew.Moment{Day: day + 1, At: at}
}

// spellsOf cuts a stretch of working minutes at meals and nights.
func spellsOf(from, to int) (list []crew.Spell) {
	for from < to {
		half := fixtureDay / 2
		end := min(to, from/half*half+half)
		a, b := momentAt(from, false), momentAt(end, true)
		list = append(list, crew.Spell{Day: a.Day, From: a.At, To: b.At})
		from = end
	}
	return list
}

func planWindow(q *quote.Quote, lw *labour.Window) crew.Window {
	w := crew.Window{Labour: lw, Crews: 1, Leads: 1, Asked: lw.Days, Tried: 1}
	for i := range q.Catalog.Crew.Days {
		if d := &q.Catalog.Crew.Days[i]; d.Window == lw.Spec.ID {
			w.Setting = d
		}
	}
	at := 0
	for i := range q.Labour.Tasks {
		t := &q.Labour.Tasks[i]
		if t.Window != lw.Spec.ID || !t.Hours.IsPositive() {
			continue
		}
		minutes := max(1, int(t.Hours.Mul(money.Int(60)).IntPart())/lw.Crew)
		task := crew.Task{Key: t.Key, Kind: crew.Labour, Labour: t, Name: t.Rule.Name, Tent: t.Tent, Crew: 1, Hands: lw.Crew, Minutes: minutes,
			Start: momentAt(at, false), Finish: momentAt(at+minutes, true), Spells: spellsOf(at, at+minutes), Critical: len(w.Tasks)%3 == 0}
		for n := range lw.Crew {
			task.People = append(task.People, n)
		}
		if len(w.Tasks) > 0 {
			task.After = []int{len(w.Tasks) - 1}
		}
		w.Chain = append(w.Chain, len(w.Tasks))
		w.Tasks = append(w.Tasks, task)
		at += minutes
		w.Work += minutes * lw.Crew
	}
	if at == 0 {
		return w
	}
	w.Minutes, w.Shortest, w.Finish = at, at*9/10, momentAt(at, true)
	fixtureDays(q, &w)
	return w
}

// fixtureDays gives a window its days, people, sizes and spread.
func fixtureDays(q *quote.Quote, w *crew.Window) {
	w.Ready = crew.Moment{Day: w.Asked, At: fixtureBack}
	first := q.Job.Dates.Deliver
	for n := 1; n <= w.Finish.Day; n++ {
		d := crew.Day{Number: n, Date: first.AddDays(n - 1), Call: fixtureCall, Arrive: fixtureCall, Leave: fixtureBack, End: fixtureBack}
		if len(q.Catalog.Crew.Breaks) > 1 {
			d.Breaks = []crew.Pause{{Spec: &q.Catalog.Crew.Breaks[1], From: fixtureMeal, To: fixtureMeal + 30}}
		}
		w.Days = append(w.Days, d)
	}
	for n := range w.Labour.Crew {
		who := crew.Person{Number: n + 1, Crew: 1, Lead: n == 0, Skills: []string{"hand"}}
		if trips := q.Load.Out.Trips; n < len(trips) && w.Setting != nil && w.Setting.Site {
			who.Driver, who.Vehicle = true, trips[n].Key
		} else if n%2 == 0 && len(trips) > 0 {
			who.Rides = trips[0].Key
		}
		for range w.Days {
			who.Days = append(who.Days, crew.Shift{Call: fixtureCall, End: fixtureBack, Work: fixtureDay - 50, Paid: fixtureDay})
			w.Paid += fixtureDay
		}
		w.People = append(w.People, who)
	}
	w.Idle = w.Paid - w.Work
	for n := max(1, w.Labour.Crew-2); n <= w.Labour.Crew+2; n++ {
		wages := money.Int(n * 400)
		w.Sizes = append(w.Sizes, crew.Size{People: n, Days: len(w.Days), Nights: len(w.Days) - 1, Finish: w.Finish, Meets: n >= w.Labour.Crew, Paid: w.Paid, Overtime: 95,
			Wages: wages, Beds: money.Int(120), Cost: wages.Add(money.Int(120)), Asked: n == w.Labour.Crew, Cheapest: n == w.Labour.Crew+1})
	}
	w.Spread = crew.Spread{Runs: 400, Half: w.Finish, Ninety: crew.Moment{Day: len(w.Days) + 1, At: fixtureCall + 45}, Mean: float64(w.Minutes), Dev: 30, InTime: 0.825}
}
