package quote

import (
	"fmt"

	"tentwright/catalog/money"
	"tentwright/quote/power"
)

// checkPower holds heat and current against what gives them. Nothing here is
// more than a plan: a licensed electrician connects current, a gas fitter gas.
func (q *Quote) checkPower() {
	asked := boolCount(q.Job.Heat != nil || q.Job.Power != nil)
	if q.Power != nil {
		asked = q.Power.Asked
	}
	q.none("power data", "Heat or current was asked for but not worked out: values that are not given", asked, true,
		"nothing is planned for it yet, whatever else is green; see Heat and Power, and enter the values in the shop's power.yaml, or in the job, with where they come from")
	if q.Power == nil {
		return
	}
	q.none("light data", "Values for light that are not given", len(q.Power.Missing)-asked, false,
		"see Heat and Power; enter them in the shop's power.yaml with where they come from")
	if q.Power.Heat != nil && q.Power.Heat.Known {
		q.checkHeat(q.Power.Heat)
	}
	for i := range q.Power.Fuels {
		if f := &q.Power.Fuels[i]; f.Needed.IsPositive() {
			q.add(Check{Key: "burns:" + f.Spec.Item, Title: "Fuel taken along against the hours: " + f.Item.Name, Value: f.Taken(), Limit: f.Needed, AtLeast: true, Severe: true,
				Advice: "take more, or arrange a delivery; keep fuel outside, upright and apart, as the fire code asks"})
		}
	}
	if l := q.Power.Light; l != nil && l.Lumens.IsPositive() {
		q.add(Check{Key: "lit", Title: "Light on the floor, " + power.LightUnit(q.Catalog.Company.Units), Value: l.Level, Limit: l.Wanted, AtLeast: true,
			Advice: "add lamps, or agree on less light; the way out has limits of its own, on Occupancy"})
	}
	if q.Power.Supply != nil {
		q.checkSupply(q.Power.Supply)
	}
}

// checkHeat holds what each tent loses against its heaters, and all of it
// against all heaters that go along.
func (q *Quote) checkHeat(h *power.Heat) {
	unit := power.HeatUnit(q.Catalog.Company.Units)
	for i := range h.Tents {
		w := &h.Tents[i]
		q.add(Check{Key: "warm:" + w.Tent.Job.ID, Title: fmt.Sprintf("%s: heat lost against the heaters meant for it, %s", w.Tent.Label(), unit),
			Value: w.Need, Limit: w.Output, Severe: true, Advice: "quote again so that heaters are chosen anew; where the yard owns too few, hire more in or close the tent better"})
		q.none("open side:"+w.Tent.Job.ID, w.Tent.Label()+": open sides of a tent that is to be heated", w.Open, true,
			"close them: what is lost through an open side is not in the figures, and no heater makes up for it")
	}
	if len(h.Tents) == 0 {
		return // said by the values that are missing
	}
	q.add(Check{Key: "heaters", Title: "Heat lost by all tents against all heaters taken along, " + unit, Value: h.Need, Limit: h.Taken, Severe: true,
		Advice: "quote again so that heaters are chosen anew"})
}

// checkSupply holds the load against generator, boxes and cables.
func (q *Quote) checkSupply(s *power.Supply) {
	q.none("site supply", "Current from the site, whose supply is not confirmed", boolCount(!s.Generator), false,
		"have a licensed electrician look at the supply: voltage, legs, amperes and what else hangs on it")
	if s.Carries.IsZero() {
		return
	}
	if s.Generator {
		q.add(Check{Key: "generator", Title: "Load with its heaviest leg against the generators, kVA less the reserve", Value: s.KVA, Limit: s.Capacity, Severe: true,
			Advice: "quote again so that the generator is chosen anew; its plate and a licensed electrician decide"})
	}
	if len(s.Circuits) == 0 {
		return
	}
	q.add(Check{Key: "circuits", Title: "Load of the fullest circuit, VA", Value: s.Largest, Limit: s.Carries, Severe: true,
		Advice: "a load larger than a circuit wants a connection of its own, by a licensed electrician"})
	for i := range q.Power.Gear {
		if g := &q.Power.Gear[i]; g.Needed.IsPositive() {
			taken := g.Taken()
			if g.Kind == power.KindCord {
				taken = q.cords()
			}
			q.add(Check{Key: "cable:" + g.Item.ID, Title: "Taken along against the plan: " + g.Item.Name, Value: taken, Limit: g.Needed, AtLeast: true,
				Advice: "add what is missing, or quote again"})
		}
	}
	if s.Feeder == nil {
		return
	}
	q.add(Check{Key: "amps", Title: "Amperes in each feeder, for hours", Value: s.Amps, Limit: q.Catalog.Power.Circuit.Lasting(s.Least()), Severe: true,
		Advice: "quote again so that boxes and feeders are chosen anew"})
	if d := q.Catalog.Power.Drop; d != nil {
		q.add(Check{Key: "drop", Title: "Voltage lost from the source to the farthest load, percent", Value: s.Whole, Limit: d.Whole, Severe: true,
			Advice: "bring the source nearer, or take heavier cable; a licensed electrician decides"})
	}
}

// cords are those of every kind that go along.
func (q *Quote) cords() money.Number {
	sum := money.Zero
	for i := range q.Power.Gear {
		if g := &q.Power.Gear[i]; g.Kind == power.KindCord {
			sum = sum.Add(g.Taken())
		}
	}
	return sum
}
