package quote

// checkDates looks for days that have passed or clash. A date that holds the
// job up has a check of its own; the balance has one among those of money.
func (q *Quote) checkDates() {
	if q.Dates == nil {
		return
	}
	missed := 0
	for i := range q.Dates.Dates {
		d := &q.Dates.Dates[i]
		if d.Rule.Stop && d.Rule.Term == "" {
			q.none("late:"+d.Rule.ID, d.Rule.Name+": its last day has passed, or none is left", boolCount(d.Missed()), true,
				"move the job, or leave out what needs it; nothing is dug or driven before it is done")
		} else if d.Missed() {
			missed++
		}
	}
	q.none("dates", "Other dates whose last day has passed, or that have no day left", missed, false, "see the red rows on Dates; agree on other days with who waits for them")
	q.none("days off", "Delivery, strike or collection on a holiday or when the yard is shut", len(q.Dates.Clashes), false, clashAdvice)
}

// clashAdvice is what to do about work on a day off.
const clashAdvice = "ask crew, gate and authority whether they work that day, and charge for it; or choose another day"
