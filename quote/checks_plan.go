package quote

import (
	"fmt"
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
	q.clearances()
}

// clearWords say what a distance is measured to.
var clearWords = map[string]string{
	layout.ToEdge: "the edge of the plot", layout.ToBuilding: "a building", layout.ToVehicle: "a vehicle or engine", layout.ToTent: "another tent",
}

// clearances holds the shortest distance of each kind against what the code of
// the shop wants. Codes have exceptions that no plan shows, so that it is only to
// be looked at.
func (q *Quote) clearances() {
	for _, kind := range layout.Measured {
		least, near := (*layout.Distance)(nil), 0
		for i := range q.Plan.Distances {
			d := &q.Plan.Distances[i]
			if d.Kind != kind || d.Wanted == 0 {
				continue
			}
			if least == nil || d.Is < least.Is {
				least = d
			}
			if d.Short() {
				near++
			}
		}
		if least != nil {
			q.add(Check{Key: "clear:" + kind, Title: "Least distance from stakes to " + clearWords[kind] + ", " + q.Catalog.Company.Units.LengthUnit(),
				Value: q.plotLength(least.Reads()), Limit: q.plotLength(least.Wanted), AtLeast: true, Advice: q.clearAdvice(least, near-1)})
		}
	}
}

// clearAdvice names the two that are too near, and who decides. A workbook's
// formula holds a text of at most 255 characters, so that long names are cut.
func (q *Quote) clearAdvice(d *layout.Distance, more int) string {
	words := fmt.Sprintf("%s is %s from %s", short(d.From), q.Plan.Text(d.Is), short(d.To))
	if more > 0 {
		words += fmt.Sprintf(", %d more on Site Plan", more)
	}
	return words + fmt.Sprintf("; the code wants %s: move one, or ask the authority, which decides; the code has exceptions (area of all tents, no cooking)", q.Plan.Text(d.Wanted))
}

// short cuts a long name.
func short(name string) string {
	const most = 36
	if runes := []rune(name); len(runes) > most {
		return strings.TrimSpace(string(runes[:most-3])) + "..."
	}
	return name
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

// missing is by how much one must move; what is within reading is no fault, so
// that none shows as zero.
func (q *Quote) missing(f *layout.Fault) money.Number { return q.plotLength(f.Missing) }

// plotLength is a length of the plan in the shop's unit, to the nearest
// hundredth.
func (q *Quote) plotLength(metres float64) money.Number {
	l := unit.FromMetres(metres)
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
