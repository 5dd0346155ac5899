package quote

import (
	"tentwright/catalog/money"
	"tentwright/quote/egress"
)

// checkEgress holds the guests against floors and exits, and what hangs and
// stands for them against what is wanted.
func (q *Quote) checkEgress() {
	e := q.Egress
	if e == nil {
		return
	}
	guests := money.Int(q.Job.Event.Guests)
	q.add(Check{Key: "floor", Title: "Guests against the people that the floors hold", Value: guests, Limit: money.Int(e.Guests), Severe: true,
		Advice: "more or larger tents, fewer guests, or another use of the floor; the authority decides"})
	q.add(Check{Key: "ways out", Title: "Guests against the people that the exits let out", Value: guests, Limit: money.Int(e.Out), Severe: true,
		Advice: "open a side or add doors that are wide enough; see Occupancy"})
	for i := range e.Tents {
		q.checkExits(&e.Tents[i])
	}
	q.checkSafety(e)
}

// checkExits holds the exits of one tent against those that its people need,
// and what stands in it against its floor.
func (q *Quote) checkExits(t *egress.Tent) {
	id, name := t.Tent.Job.ID, t.Tent.Label()
	unit := egress.Measures{Units: q.Catalog.Company.Units}.WidthUnit()
	q.add(Check{Key: "exits:" + id, Title: name + ": exits wide enough, against those for its people", Value: money.Int(t.Have), Limit: money.Int(t.Need), AtLeast: true, Severe: true,
		Advice: "open a side or add wider doors; the number follows from floor and use, not from the guests"})
	q.add(Check{Key: "exit width:" + id, Title: name + ": width of these exits together, " + unit, Value: t.HasWidth, Limit: t.Width, AtLeast: true, Severe: true,
		Advice: "open a side or add wider doors"})
	q.add(Check{Key: "exit sides:" + id, Title: name + ": sides that have such an exit", Value: money.Int(t.Sides), Limit: money.Int(q.Egress.Code.Exits.Sides(t.Need)), AtLeast: true,
		Advice: "place the exits well apart, not all on one side"})
	if taken := t.Taken(); taken.IsPositive() || len(t.Floors) > 1 {
		q.add(Check{Key: "floor taken:" + id, Title: name + ": floor taken against floor, " + q.Catalog.Company.Units.AreaUnit(), Value: taken, Limit: t.Area,
			Advice: "say in which tents floors, stages and bars stand (uses of a tent), or order fewer"})
	}
}

// checkSafety holds signs, lights, extinguishers and papers against what is
// ordered.
func (q *Quote) checkSafety(e *egress.Result) {
	has := func(c Check, has, wanted int) {
		c.Value, c.Limit, c.AtLeast = money.Int(has), money.Int(wanted), true
		q.add(c)
	}
	if e.Code.Signs != nil {
		has(Check{Key: "exit signs", Title: "Exit signs against exits that serve many", Advice: "order signs, or make sure that the site has them"}, e.HasSigns, e.Signs)
		has(Check{Key: "emergency lights", Title: "Emergency lights against tents whose exits are signed", Advice: "order lights; how many follows from the light at the floor, which someone measures"}, e.HasLights, e.Lights)
	}
	if e.Code.Fire != nil {
		has(Check{Key: "extinguishers", Title: "Extinguishers large enough, against floor and travel", Advice: "order extinguishers of the rating that the hazard asks for"}, e.HasFire, e.Fire)
	}
	if p := e.Code.Permit; p != nil && p.Item != "" {
		missing := e.Permits
		if q.Parts.IsOrdered(p.Item) {
			missing = 0
		}
		q.none("permit papers", "Tents that need a permit, none being ordered", missing, false, "order the papers, or make sure that the customer has the permit")
	}
}
