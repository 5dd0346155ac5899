package quote

import (
	"tentwright/catalog/money"
	"tentwright/quote/crew"
)

// checkSchedule holds the crew plan against the times that the job asks for. Too
// few people and too few seats have checks of their own.
func (q *Quote) checkSchedule() {
	if q.Crew == nil {
		return
	}
	for i := range q.Crew.Windows {
		w := &q.Crew.Windows[i]
		if len(w.Days) == 0 {
			continue
		}
		site := w.Setting != nil && w.Setting.Site
		q.add(Check{Key: "ready:" + w.Labour.Spec.ID, Title: w.Labour.Spec.Name + ": hours by which the plan is late", Value: lateBy(w.Finish, w.Ready), Severe: site,
			Advice: "add people or days, or agree on another time; see the table of people on Schedule"})
		if w.Spread.Runs > 0 {
			q.add(Check{Key: "sure:" + w.Labour.Spec.ID, Title: w.Labour.Spec.Name + ": chance of being ready in time, percent",
				Value: money.Round(money.Float(100*w.Spread.InTime), 1), Limit: money.Float(100 * crew.Sure), AtLeast: true,
				Advice: "plan more people, or agree on a later time; the nine-of-ten time stands on Schedule"})
		}
	}
	stops := 0
	for i := range q.Crew.Cautions {
		if q.Crew.Cautions[i].Severe {
			stops++
		}
	}
	q.none("crew stops", "Limits that the crew plan breaks", stops, true, "see the red lines on Schedule: hours of driving and work, lifts and hands have limits in law or for safety")
	q.none("crew cautions", "What a person must look at in the crew plan", len(q.Crew.Cautions)-stops, false, "see the lines at the top of Schedule")
}

// checkLifts counts what no team of the shop's table may lift by hand, and no
// machine is said to. Without a table that counts nothing is known of teams.
func (q *Quote) checkLifts() {
	if q.Lift == nil || len(q.Lift.Team) == 0 {
		return
	}
	count := 0
	for i := range q.Lift.Lifts {
		if x := &q.Lift.Lifts[i]; x.People == 0 && !x.How.Machine {
			count++
		}
	}
	q.none("lifts", "Lifts too heavy for any team", count, false, "plan a machine, wheels or a lift gate for each, or lift fewer pieces at once; see the red rows under Lifting on Crew Hours")
}

// lateBy is how many hours a moment comes after another, nights included; none
// where it does not, or where nothing is asked for.
func lateBy(done, asked crew.Moment) money.Number {
	minutes := (done.Day-asked.Day)*24*60 + int(done.At-asked.At)
	if done.Day == 0 || asked.Day == 0 || minutes <= 0 {
		return money.Zero
	}
	return money.Round(money.Int(minutes).Div(money.Int(60)), 2)
}
