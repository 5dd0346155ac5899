package quote

import (
	"fmt"

	"tentwright/catalog/money"
	"tentwright/quote/anchor"
)

// checkAnchors holds what each tent must hold against what holds it. What could
// not be computed is counted, so that nothing that is not known looks safe.
func (q *Quote) checkAnchors() {
	if q.Anchor != nil && len(q.Anchor.Tents) > 0 {
		q.checkWind()
		for i := range q.Anchor.Tents {
			if t := &q.Anchor.Tents[i]; t.Planned {
				q.add(Check{Key: "anchor:" + t.ID, Title: fmt.Sprintf("Tent %s: most that is asked of an anchor, percent of what holds", t.ID),
					Value: percentOf(GreatestUse(t)), Limit: money.Int(100), Severe: true,
					Advice: "see Anchorage; quote the job again so that anchors are chosen anew, or ask a licensed engineer"})
			}
		}
		q.none("anchor legs", "Legs of which nothing known says what holds them", q.unheld(), true,
			"see Anchorage; pull a stake in this ground, or test the friction, and enter it in anchors.yaml")
	}
	q.none("anchors", "Tents held by custom, not by a wind calculation", q.byCustom(), false,
		"the customary number is planned; local code and a licensed engineer decide what holds this tent here")
}

// checkWind looks at what the whole calculation rests on.
func (q *Quote) checkWind() {
	a, sys := q.Anchor, q.Catalog.Company.Units
	q.none("anchor missing", "Facts of wind and anchors that the shop has not entered", len(a.Missing), true,
		"see the red lines of Anchorage; enter them in anchors.yaml")
	q.none("anchor refused", "What the wind method does not cover", len(a.Refused), true,
		"see the red lines of Anchorage; a licensed engineer must design it")
	q.add(Check{Key: "anchor gust", Title: "Gust to plan for against the shop's limit, " + sys.SpeedUnit(),
		Value: money.Float(a.Gust.In(sys)), Limit: money.Float(q.Catalog.Anchors.Limit.In(sys)), Severe: true,
		Advice: "a licensed engineer must design what holds above it"})
}

// GreatestUse is the greatest share of its capacity that any leg of a tent
// takes, of the legs whose capacity is known.
func GreatestUse(t *anchor.Tent) float64 {
	most := 0.0
	for i := range t.Legs {
		most = max(most, t.Legs[i].Holding.Use())
	}
	return most
}

// percentOf is a share as percent, to two places.
func percentOf(share float64) money.Number { return money.Round(money.Float(100*share), 2) }

// Unheld tells whether nothing known says what holds a leg.
func Unheld(h *anchor.Holding) bool {
	return h.Capacity <= 0 && (h.Way == anchor.Custom || h.Need > 0)
}

// unheld counts those legs, of one tent of each line.
func (q *Quote) unheld() int {
	n := 0
	for i := range q.Anchor.Tents {
		for k := range q.Anchor.Tents[i].Legs {
			if Unheld(&q.Anchor.Tents[i].Legs[k].Holding) {
				n++
			}
		}
	}
	return n
}

// byCustom counts the tents for which no anchors were computed.
func (q *Quote) byCustom() int {
	planned := map[string]bool{}
	if q.Anchor != nil {
		for i := range q.Anchor.Tents {
			planned[q.Anchor.Tents[i].ID] = q.Anchor.Tents[i].Planned
		}
	}
	n := 0
	for i := range q.Parts.Tents {
		if t := &q.Parts.Tents[i]; !planned[t.Job.ID] {
			n += t.Job.Many()
		}
	}
	return n
}
