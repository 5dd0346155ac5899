package revise

import (
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
)

// power is heat, light and current: what the job asks for, and what the shop
// says of its cloth, lamps and reserves.
func (l *inputList) power() {
	p := l.q.Power
	if p == nil {
		return
	}
	if p.Heat != nil {
		l.heatOfJob()
	}
	if p.Supply != nil {
		l.supplyOfJob()
	}
	spec := l.c.Power
	if spec.Cover != nil {
		l.ofShop(named("heat_u_roof"), number, spec.Cover.Where, "roof")
		l.ofShop(named("heat_u_wall"), number, spec.Cover.Where, "wall")
	}
	if spec.Air != nil {
		l.ofShop(named("heat_changes"), number, spec.Air.Where, "changes")
	}
	l.ofShop(named("fuel_reserve"), percent, spec.Where, "fuel_reserve")
	l.ofShop(named("generator_reserve"), percent, spec.Where, "generator_reserve")
	for i := range spec.Loads {
		x := &spec.Loads[i]
		for _, column := range []string{"watts", "factor", "lumens"} {
			l.ofShop(address{table: "load", key: x.Part, column: column}, number, x.Where, column)
		}
	}
	if light := spec.Light; light != nil {
		l.ofShop(named("light_reach"), number, light.Where, "reach")
		_, wanted := light.Wanted(l.q.Job.Event.Use)
		l.ofShop(named("light_wanted"), number, wanted, "level")
	}
}

// heatOfJob is how warm, how cold and how long.
func (l *inputList) heatOfJob() {
	degrees := func(v value) *unit.Temperature {
		t := unit.TemperatureIn(v.number.InexactFloat64(), l.c.Company.Units)
		return &t
	}
	l.ofJob(named("heat_inside"), number, "heat.inside", func(j *job.Job, v value) { j.Heat.Inside = degrees(v) })
	l.ofJob(named("heat_outside"), number, "heat.outside", func(j *job.Job, v value) { j.Heat.Outside = degrees(v) })
	l.ofJob(named("heat_hours"), number, "heat.hours", func(j *job.Job, v value) { j.Heat.Hours = v.number })
}

// supplyOfJob is how far the current comes and how long the generator runs.
func (l *inputList) supplyOfJob() {
	one := unit.Foot
	if l.c.Company.Units == unit.Metric {
		one = unit.Metre
	}
	l.ofJob(named("power_distance"), number, "power.distance", func(j *job.Job, v value) {
		j.Power.Distance = unit.Length(money.Round(v.number.Mul(money.Float(float64(one))), 0).IntPart())
	})
	l.ofJob(named("power_hours"), number, "power.hours", func(j *job.Job, v value) { j.Power.Hours = v.number })
}
