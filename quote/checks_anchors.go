package quote

import (
	"fmt"
	"math"

	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/anchor"
)

// checkAnchors holds what each tent must hold against what holds it. What could
// not be computed is counted, so that nothing that is not known looks safe.
func (q *Quote) checkAnchors() {
	if q.Anchor != nil && len(q.Anchor.Tents) > 0 {
		q.checkWind()
		for i := range q.Anchor.Tents {
			if t := &q.Anchor.Tents[i]; t.Planned {
				q.add(Check{Key: "anchor:" + t.ID, Title: fmt.Sprintf("Tent %s: most that is asked of an anchor, percent of what holds; %d where that is not known", t.ID, NotKnown),
					Value: percentAsked(t), Limit: money.Int(100), Severe: true, Advice: q.anchorAdvice(t)})
			}
		}
		q.none("anchor legs", "Legs of which nothing known says what holds them", q.unheld(), true,
			"see Anchorage; pull a stake in this ground, or test the friction, and enter it in anchors.yaml")
	}
	q.none("anchors", "Tents held by custom, not by a wind calculation", q.byCustom(), q.Anchor == nil,
		"the customary number is planned; local code and a licensed engineer decide what holds this tent here")
}

// checkWind looks at what the whole calculation rests on.
func (q *Quote) checkWind() {
	a, sys := q.Anchor, q.Catalog.Company.Units
	q.none("anchor missing", "Facts of wind and anchors that the shop has not entered", len(a.Missing), true,
		"see the red lines of Anchorage; enter them in anchors.yaml")
	q.none("anchor refused", "What the wind method does not cover", len(a.Refused), true,
		"see the red lines of Anchorage; a licensed engineer must design it")
	if a.Limit > 0 {
		q.add(Check{Key: "anchor gust", Title: "Gust to plan for against the shop's limit, " + sys.SpeedUnit(),
			Value: money.Float(a.Gust.In(sys)), Limit: money.Float(a.Limit.In(sys)), Severe: true,
			Advice: "a licensed engineer must design what holds above it"})
	}
	if shop, _ := q.Catalog.DesignGust(); shop > 0 {
		q.add(Check{Key: "gust of shop", Title: "Gust to plan for against the shop's own, " + sys.SpeedUnit(),
			Value: money.Float(a.Gust.In(sys)), Limit: money.Float(shop.In(sys)), AtLeast: true,
			Advice: "this place is planned for less wind than the shop plans for elsewhere; the manager says why"})
	}
	q.none("wind actions", "Wind actions that are not decided, or decided above the gust planned for", a.Undecided(), false,
		"see Anchorage; the manager decides the gusts to watch, clear and take down at, below what the anchors are planned for")
}

// NotKnown stands for the percent of what holds where nothing says what holds.
const NotKnown = 1000

// percentAsked is the most that is asked of an anchor of a tent, in percent.
func percentAsked(t *anchor.Tent) money.Number {
	most := percentOf(GreatestUse(t))
	for i := range t.Legs {
		if Unheld(&t.Legs[i].Holding) && most.LessThan(money.Int(NotKnown)) {
			return money.Int(NotKnown)
		}
	}
	return most
}

// anchorAdvice tells what to do about a tent that is not held: of the leg that is
// furthest from it, what was tried and what that holds.
func (q *Quote) anchorAdvice(t *anchor.Tent) string {
	const again = "see Anchorage; quote the job again so that anchors are chosen anew, or ask a licensed engineer"
	worst := &t.Legs[0]
	for i := range t.Legs {
		l := &t.Legs[i]
		if Unheld(&l.Holding) {
			return fmt.Sprintf("leg %s%s: nothing known says what holds it; test the anchor there, and until then ask a licensed engineer", l.Name, onGround(l))
		}
		if l.Holding.Use() > worst.Holding.Use() {
			worst = l
		}
	}
	h := &worst.Holding
	if !h.Over() {
		return again
	}
	name := ""
	if h.Part != nil {
		name = h.Part.Name
	}
	sys := q.Catalog.Company.Units
	return fmt.Sprintf("leg %s%s: %d x %s, the most that may stand there, hold %s of %s %s; ask a licensed engineer, plan for less wind, or move the tent",
		worst.Name, onGround(worst), h.Count, name, forceText(sys, h.Capacity), forceText(sys, h.Need), sys.ForceUnit())
}

// onGround names the surface under a leg.
func onGround(l *anchor.Leg) string {
	if l.Surface == nil {
		return ""
	}
	return " on " + l.Surface.ID
}

// forceText is newtons in whole pounds, or in kilonewtons to ten newtons.
func forceText(sys unit.System, newtons float64) string {
	if sys == unit.Metric {
		return fmt.Sprintf("%.2f", sys.Force(newtons))
	}
	whole := fmt.Sprintf("%.0f", sys.Force(newtons))
	for at := len(whole) - 3; at > 0; at -= 3 {
		whole = whole[:at] + "," + whole[at:]
	}
	return whole
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

// percentOf is a share as percent, rounded up to two places, so that more than
// all never reads as all; what is below the grain of reckoning is none.
func percentOf(share float64) money.Number {
	return money.Round(money.Float(math.Ceil(math.Round(share*1e8)/1e4)/100), 2)
}

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
