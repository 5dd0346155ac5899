package quote

import (
	"strings"

	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/layout"
)

// checkPlan looks for what is in the way on the plot. Each check counts by how
// much one must move at least; a kind of fault that the plan does not have is
// one that counts none.
func (q *Quote) checkPlan() {
	if q.Plan == nil {
		return
	}
	found := map[string]bool{}
	for i := range q.Plan.Faults {
		found[q.Plan.Faults[i].Kind] = true
	}
	if !found[layout.Overlap] {
		q.none("overlap", "Roofs that overlap on the plot", 0, true, "")
	}
	if !found[layout.Stakes] {
		q.none("footprint", "Tents whose stakes are in each other's way", 0, true, "")
	}
	if q.Plan.Given && !found[layout.Blocked] {
		q.none("obstacle", "Tents over an obstacle on the plot", 0, true, "")
	}
	if q.Plan.Given && !found[layout.Beyond] {
		q.none("edge", "Tents beyond the edge of the plot", 0, true, "")
	}
	q.planFaults()
}

// planFaults makes a check of each fault of the site plan.
func (q *Quote) planFaults() {
	in := ", " + q.Catalog.Company.Units.LengthUnit()
	seen := map[string]bool{}
	for i := range q.Plan.Faults {
		f := &q.Plan.Faults[i]
		c := Check{Title: upper(f.Words()) + in, Value: q.missing(f), Severe: true}
		pair, by := f.A+":"+f.B, " by at least "+q.Plan.AtLeast(f.Missing)
		switch f.Kind {
		case layout.Overlap:
			c.Key, c.Advice = "overlap:"+pair, "move one of them"+by+", or join them by a gutter"
		case layout.Stakes:
			c.Key, c.Advice = "footprint:"+pair, "move one of them"+by+", so that each guy and stake has its place"
		case layout.Blocked:
			c.Key, c.Advice = "obstacle:"+pair, "move the tent"+by+"; look at the place with the customer"
		default:
			c.Key, c.Advice = "edge:"+pair, "move the tent"+by+"; nothing may stand on another's ground unasked"
		}
		if f.NoRoom {
			c.Advice = "give it a place by hand, take smaller tents, or ask for more ground: so much wider would do"
		}
		// Names of obstacles may hold colons, and capitals do not part keys.
		for seen[strings.ToLower(c.Key)] {
			c.Key += "'"
		}
		seen[strings.ToLower(c.Key)] = true
		q.add(c)
	}
}

// missing is by how much one must move, in the shop's unit to the nearest
// hundredth; what is within reading is no fault, so that none shows as zero.
func (q *Quote) missing(f *layout.Fault) money.Number {
	l := unit.FromMetres(f.Missing)
	if q.Catalog.Company.Units == unit.Metric {
		return money.Round(money.Float(l.Metres()), 2)
	}
	return money.Round(money.Float(l.Feet()), 2)
}

// upper begins words with a capital letter.
func upper(s string) string {
	for i, r := range s {
		return strings.ToUpper(string(r)) + s[i+len(string(r)):]
	}
	return s
}
