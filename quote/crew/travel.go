package crew

import (
	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/quote/labour"
	"tentwright/quote/load"
	"tentwright/quote/parts"
)

// travel is how the crew of a window comes to the site and home.
type travel struct {
	m        *load.Manifest // nil in the yard
	back     bool           // it takes the goods home
	vehicles []*load.Trip   // that are driven, first turns
	later    []*load.Trip   // further turns of the same vehicles
	drive    int            // minutes one way
	papers   int            // minutes of each driver before the way out
	closing  int            // minutes of each driver after the way home
	opening  string         // name of the rule of papers
	close    string         // name of the rule of closing
}

// travel reads trips, distance and papers. The window that brings the goods
// goes by the vehicles out, the one that takes them home by those back.
func (b *winder) travel(plan *load.Plan) travel {
	t := travel{m: &plan.Out}
	if b.has(catalog.Return) && !b.has(catalog.Travel) || b.has("strike", "reload") && !b.has("unload", "raise") {
		t.m = &plan.Back
	}
	t.back = t.m == &plan.Back
	for i := range t.m.Trips {
		switch trip := &t.m.Trips[i]; {
		case trip.Tow != "":
		case trip.Turn == 1:
			t.vehicles = append(t.vehicles, trip)
		default:
			t.later = append(t.later, trip)
		}
	}
	b.minutes(&t)
	return t
}

// minutes takes the time on the road from the rules of the travel phases: that
// which counts the distance driven, and those that count trips.
func (b *winder) minutes(t *travel) {
	far := parts.Distance(b.c, b.j.Delivery.Distance)
	drives := money.Int(2 * max(1, labour.Drives(t.m))) // there, and home
	out := b.has(catalog.Travel)
	for i := range b.c.Labour {
		r := &b.c.Labour[i]
		switch r.Driver {
		case "truck-miles", "back-truck-miles":
			if own := r.Driver == "back-truck-miles" == (b.has(catalog.Return) && !out); own || t.drive == 0 {
				t.drive = whole(far.Mul(r.Minutes).Add(money.DivRound(r.Fixed, drives, 4)).Mul(b.factor(r)))
			}
		case "trips", "back-trips":
			each := whole(r.Minutes.Add(money.DivRound(r.Fixed, money.Int(max(1, labour.Drives(t.m))), 4)).Mul(b.factor(r)))
			switch {
			case !b.has(r.Phase):
			case r.Phase == catalog.Return:
				t.closing, t.close = t.closing+each, r.Name
			default:
				t.papers, t.opening = t.papers+each, r.Name
			}
		}
	}
}

// factor is by how much the site slows a rule of the whole job.
func (b *winder) factor(r *catalog.LabourRule) money.Number {
	for i := range b.l.Tasks {
		if b.l.Tasks[i].Rule == r {
			return b.l.Tasks[i].Factor
		}
	}
	return money.One
}

// whole is minutes rounded up.
func whole(n money.Number) int { return max(0, money.RoundUp(n)) }

// rides tells whether a rule is of the road: its minutes are those of the
// drives, which stand at the ends of the days and are not put in order.
func rides(r *catalog.LabourRule) bool {
	switch r.Driver {
	case "truck-miles", "back-truck-miles", "ride-miles", "back-ride-miles", "trips", "back-trips":
		return r.Phase == catalog.Travel || r.Phase == catalog.Return
	}
	return false
}
