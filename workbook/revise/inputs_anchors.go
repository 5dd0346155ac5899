package revise

import (
	"tentwright/catalog/source"
	"tentwright/catalog/unit"
	"tentwright/quote/anchor"
	"tentwright/quote/job"
)

// anchors are the wind, what the anchors hold, and the wind actions.
func (l *inputList) anchors() {
	a := l.c.Anchors
	if a == nil {
		return
	}
	l.ofJob(named("wind_gust"), number, "wind.gust", func(j *job.Job, v value) {
		j.Wind.Gust = unit.SpeedIn(v.number.InexactFloat64(), l.c.Company.Units)
	})
	l.all[len(l.all)-1].none = true
	speed, mass := l.c.Company.Units.SpeedUnit(), l.c.Company.Units.MassUnit()
	l.measured(named("wind_limit"), a.Where, "limit", speed)
	l.ofShop(named("wind_safety_stake"), number, a.Safety.Where, "stake")
	l.ofShop(named("wind_safety_ballast"), number, a.Safety.Where, "ballast")
	l.ofShop(named("wind_gust_factor"), number, a.Where, "gust_factor")
	l.all[len(l.all)-1].none = true
	for i := range a.Actions {
		x := &a.Actions[i]
		l.measured(address{table: "action", key: x.ID, column: "gust"}, x.Where, "gust", speed)
		l.all[len(l.all)-1].none = true
	}
	for i := range a.Tests {
		x := &a.Tests[i]
		if all := anchor.Tests(l.c, x.Stake, x.Surface, x.Way); len(all) > 0 && all[0] == x {
			l.measured(address{table: "hold", key: x.Stake + ":" + x.Surface + ":" + x.Way, column: "pull"}, x.Where, "pull", mass)
		}
	}
	for i := range a.Friction {
		x := &a.Friction[i]
		if all := anchor.Frictions(l.c, x.Ballast, x.Surface); len(all) > 0 && all[0] == x {
			l.ofShop(address{table: "friction", key: x.Ballast + ":" + x.Surface, column: "mu"}, number, x.Where, "mu")
		}
	}
}

// measured adds a number in a file of the shop that is written with its unit.
func (l *inputList) measured(at address, where source.Where, field, unit string) {
	l.ofShop(at, number, where, field)
	l.all[len(l.all)-1].text = func(v value) string { return v.text + " " + unit }
}
