package quote

import (
	"encoding/json"
	"fmt"

	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/anchor"
)

// ReportAnchorage is the wind that is planned for and what holds the tents.
// Pressures and forces are in the units that Units names.
type ReportAnchorage struct {
	Method  string          `json:"method"`
	Source  string          `json:"source"`
	Gust    json.Number     `json:"gust"`        // 0: not entered
	Own     bool            `json:"gust_of_job"` // not the shop's
	Limit   json.Number     `json:"gust_limit"`  // 0: not entered
	Terrain string          `json:"terrain"`     // none: the gust is that at the roof
	Stake   json.Number     `json:"safety_stake"`
	Ballast json.Number     `json:"safety_ballast"`
	Missing []string        `json:"missing"`
	Refused []ReportRefusal `json:"refused"`
	Tents   []ReportHeld    `json:"tents"`
	Actions []ReportAction  `json:"actions"`
}

// ReportRefusal is what the method does not cover: an engineer must design it.
type ReportRefusal struct {
	Tent string `json:"tent,omitempty"` // none: every tent
	Why  string `json:"why"`
}

// ReportHeld is the wind on one tent. A tent that is not planned keeps its
// customary anchors.
type ReportHeld struct {
	Tent     string      `json:"tent"`
	Planned  bool        `json:"planned"`
	Angle    json.Number `json:"roof_angle"`
	Height   json.Number `json:"mean_height"`
	Blocked  bool        `json:"blocked"`
	Down     json.Number `json:"coefficient_down"`
	Up       json.Number `json:"coefficient_up"`
	Pressure json.Number `json:"pressure"`
	Dead     json.Number `json:"own_weight"` // force
	Use      json.Number `json:"greatest_use_percent"`
	Legs     []ReportLeg `json:"legs"`
}

// ReportLeg is what wind does at one leg, and what holds it.
type ReportLeg struct {
	Leg      string      `json:"leg"`
	Sides    []string    `json:"sides"`
	Surface  string      `json:"surface"`
	UpArea   json.Number `json:"lift_area"`
	SideArea json.Number `json:"sideways_area"`
	Dead     json.Number `json:"own_weight"` // against the lift, where no guy holds
	Up       json.Number `json:"lift"`
	Side     json.Number `json:"sideways"`
	Rise     json.Number `json:"guy_rise"`
	Run      json.Number `json:"guy_run"`
	Pull     json.Number `json:"pull"`
	Way      string      `json:"way"`
	Part     string      `json:"part,omitempty"`
	Count    int         `json:"count"`
	Least    int         `json:"customary_count"`
	Each     json.Number `json:"each"`
	Group    json.Number `json:"group_factor"`
	Friction json.Number `json:"friction"`
	Basis    string      `json:"basis"`
	Need     json.Number `json:"need"`
	Capacity json.Number `json:"capacity"` // 0: not known
	Use      json.Number `json:"use_percent"`
}

// ReportAction is what the crew does at a gust; without one the manager has not
// decided. Mean is the mean wind that goes with it by the shop's gust factor.
type ReportAction struct {
	Action   string      `json:"action"`
	What     string      `json:"what"`
	Gust     json.Number `json:"gust,omitempty"`
	Mean     json.Number `json:"mean,omitempty"`
	Beaufort json.Number `json:"beaufort,omitempty"`
}

// anchorage is nil where the shop has no anchors file.
func (r reporter) anchorage() *ReportAnchorage {
	a := r.q.Anchor
	if a == nil {
		return nil
	}
	shop := r.q.Catalog.Anchors
	out := &ReportAnchorage{Method: a.Method, Source: a.Source, Gust: r.speed(a.Gust), Own: a.Own, Limit: r.speed(a.Limit),
		Stake: exact(shop.Safety.Stake), Ballast: exact(shop.Safety.Ballast), Missing: list(a.Missing),
		Refused: each(a.Refused, func(x *anchor.Refusal) ReportRefusal { return ReportRefusal{Tent: x.Tent, Why: x.Why} }),
		Tents:   each(a.Tents, r.held), Actions: each(a.Actions, r.action)}
	if a.Terrain != nil {
		out.Terrain = a.Terrain.ID
	}
	return out
}

func (r reporter) held(t *anchor.Tent) ReportHeld {
	return ReportHeld{Tent: t.ID, Planned: t.Planned, Angle: fine(t.Angle), Height: r.length(t.Height), Blocked: t.Blocked, Down: fine(t.Down), Up: fine(t.Up),
		Pressure: fine(r.sys.Pressure(t.Pressure)), Dead: r.force(t.Dead), Use: exact(percentOf(GreatestUse(t))), Legs: each(t.Legs, r.leg)}
}

func (r reporter) leg(g *anchor.Leg) ReportLeg {
	h := &g.Holding
	out := ReportLeg{Leg: g.Name, Sides: list(g.Sides), UpArea: r.area(unit.Area(g.UpArea)), SideArea: r.area(unit.Area(g.SideArea)),
		Dead: r.force(g.Dead), Up: r.force(g.Up), Side: r.force(g.Side), Rise: r.metres(g.Rise), Run: r.metres(g.Run), Pull: r.force(g.Pull),
		Way: h.Way, Count: h.Count, Least: h.Least, Each: r.force(h.Each), Group: fine(h.Group), Friction: fine(h.Mu), Basis: h.Basis,
		Need: r.force(h.Need), Capacity: r.force(h.Capacity), Use: exact(percentOf(h.Use()))}
	if g.Surface != nil {
		out.Surface = g.Surface.ID
	}
	if h.Part != nil {
		out.Part = h.Part.ID
	}
	return out
}

func (r reporter) action(a *anchor.Action) ReportAction {
	out := ReportAction{Action: a.Spec.ID, What: a.Spec.What}
	if a.Spec.Gust > 0 {
		out.Gust = r.speed(a.Spec.Gust)
	}
	if a.Mean > 0 {
		out.Mean, out.Beaufort = r.speed(a.Mean), json.Number(fmt.Sprint(a.Beaufort))
	}
	return out
}

// force is newtons in the shop's unit, a kilonewton to a newton.
func (r reporter) force(newtons float64) json.Number { return fine(r.sys.Force(newtons)) }

// metres is a length in metres in the shop's unit.
func (r reporter) metres(m float64) json.Number { return r.length(unit.FromMetres(m)) }

// fine is a small figure of physics to four places.
func fine(f float64) json.Number { return exact(money.Round(money.Float(f), 4)) }
