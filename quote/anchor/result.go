package anchor

import (
	"math"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/frame"
)

// Result is what the stage finds. Forces are in newtons, pressures in pascals,
// areas in square metres.
type Result struct {
	Method  string // as catalog.Anchors has it
	Source  string // of its tables
	Gust    unit.Speed
	Limit   unit.Speed       // of the shop, above which an engineer designs what holds; 0: not entered
	Own     bool             // the gust is the job's, not the shop's
	Terrain *catalog.Terrain // nil: the gust is that at the roof
	Missing []string         // what the shop has not entered, in words, without which something is not counted
	Refused []Refusal
	Tents   []Tent
	Actions []Action
}

// Refusal is what the method does not cover: a licensed engineer must design it.
type Refusal struct {
	Tent string // id; none: every tent
	Why  string
}

// Tent is the wind on one tent and what holds it.
type Tent struct {
	ID       string
	Planned  bool        // false: the customary anchors stay, since nothing could be computed
	Height   unit.Length // mean height of the roof
	PerGust  float64     // pressure at a gust of 1 m/s; it grows with the gust's square
	Pressure float64     // at the gust to plan for
	Angle    float64     // of the roof, degrees
	Blocked  bool        // some side is closed
	Down     float64     // greatest coefficients, both counted positive
	Up       float64
	Dead     float64 // own weight that is counted on
	Legs     []Leg
	Cases    []Case
}

// Leg is one foot: what wind does there, and what holds it.
type Leg struct {
	Name     string // by side and number, such as "front 3"
	At       frame.Point
	Sides    []string
	Surface  *catalog.SiteOption
	UpArea   float64 // lift at a pressure of 1, the greatest of all cases
	SideArea float64 // sideways force likewise
	Dead     float64 // own weight that is counted on here, where no guy holds
	Up       float64 // at the gust: UpArea times pressure, wind alone
	Side     float64
	Guys     int     // that share the load; a corner has two where both its sides are free
	Rise     float64 // of the guy, from stake to where it is tied; 0 without a guy
	Run      float64
	Pull     float64 // on the guy: the greater of Up over its sine and Side over its cosine; without one, Up and Side
	Holding  Holding
}

// Ways in which a leg is held.
const (
	Guyed   = "stakes, guyed"   // pulled along the guy
	Upright = "stakes, upright" // through a base plate
	Weight  = "ballast"
	Custom  = "by custom" // nothing could be computed
)

// Holding is the anchors of one leg.
type Holding struct {
	Way     string
	Stake   *catalog.Stake        // of Guyed and Upright
	Ballast *catalog.BallastPiece // of Weight
	Part    *catalog.Part
	Count   int
	Least   int     // the customary number
	Each    float64 // what one holds: a stake in this ground, or the weight of a full piece
	Group   float64 // what each of so many stakes at one guy still holds of a single one
	Mu      float64 // friction of ballast
	Safety  float64
	Basis   string // where Each, or Mu, is from
	// Need is what must be held, with Safety on the wind alone: guyed, Safety times
	// Pull, and own weight is not counted on; upright, Safety times Up less Dead, at
	// least 0, and Safety times Side; ballast, Safety times (Up + Side/Mu) less Dead,
	// at least 0.
	Need     float64
	Capacity float64 // Count times Each times Group
}

// Use is how much of the capacity is needed; 0 where nothing could be computed.
func (h *Holding) Use() float64 {
	if h.Capacity <= 0 {
		return 0
	}
	return h.Need / h.Capacity
}

// Over tells whether more is needed than holds. A part in a hundred million is
// the grain of reckoning, not of anchors.
func (h *Holding) Over() bool { return h.Capacity > 0 && math.Round(h.Use()*1e8) > 1e8 }

// Case is one way in which wind blows on the tent: the resultant of the
// pressures and the reaction of each leg, at a pressure of 1. They balance, in
// force and in moment about the origin of the tent's plan. The reaction of a
// guyed leg acts where the guy is tied, at Rise above its foot; that of any other
// at its foot.
type Case struct {
	Name   string
	Force  frame.Point // on the tent; up is above zero
	Moment frame.Point
	Legs   []frame.Point // what the ground gives each leg, in the order of Legs

	// What the tents that are joined with it take over; nothing of one that stands
	// alone. Over a group it adds up to nothing.
	Next       frame.Point
	NextMoment frame.Point
}

// Action is a wind action with the force of the mean wind on Beaufort's scale.
type Action struct {
	Spec     *catalog.WindAction
	Mean     unit.Speed // the gust by the gust factor; 0 where either is not given
	Beaufort int        // of the mean
}
