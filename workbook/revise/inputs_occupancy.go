package revise

import (
	"tentwright/quote/egress"
	"tentwright/quote/job"
)

// occupancy is what the floors are for, and the figures of the code that the
// sheet Occupancy takes.
func (l *inputList) occupancy() {
	if l.q.Egress == nil {
		return
	}
	o, sys := l.c.Occupancy, l.c.Company.Units
	l.ofJob(named("job_use"), word, "event.use", func(j *job.Job, v value) { j.Event.Use = v.text })
	l.measure(" "+sys.AreaUnit(), func() {
		for i := range o.Uses {
			l.ofShop(address{table: "use", key: o.Uses[i].ID, column: "area"}, number, o.Uses[i].Where, "area")
		}
	})
	l.ofShop(named("exit_class"), word, o.Where, "class")
	l.measure(" "+egress.Measures{Units: sys}.WidthUnit(), func() {
		l.ofShop(named("exit_each"), number, o.Exits.Where, "each")
	})
	l.measure(" "+sys.LengthUnit(), func() {
		l.ofShop(named("exit_every"), number, o.Exits.Where, "open_every")
	})
	l.all[len(l.all)-1].none = true
	if o.Fire != nil {
		l.ofShop(named("fire_hazard"), word, o.Fire.Where, "hazard")
		l.ofShop(named("fire_rating"), whole, o.Fire.Where, "rating")
	}
}

// measure writes the values that add takes in with a unit behind them.
func (l *inputList) measure(unit string, add func()) {
	first := len(l.all)
	add()
	for i := first; i < len(l.all); i++ {
		l.all[i].text = func(v value) string { return v.text + unit }
	}
}
