// Package layout places the tents of a job on the plot and finds what is in the
// way.
//
// A tent that the job places stands there. Tents that share a gutter stand
// together, placed by the first of them that has a place. All others are put
// where there is room: along the front first, then row by row to the back, with
// a distance between what is staked. What overlaps or reaches too far is a fault
// with the distance that is missing; it stops no quote.
package layout

import (
	"fmt"
	"math"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
	"tentwright/quote/tent"
)

// Between is the least distance that is left between the stakes of tents that
// the job does not place: room to walk and to drive a stake (common practice, no
// source). Where the shop's code wants more, that is left if there is room.
const Between = 10 * unit.Foot

// Plan is the plot with all that stands on it. Its lengths are metres.
type Plan struct {
	Units     unit.System
	Reference string // number and revision of the quote
	Event     string
	Where     []string // address of the event, line by line
	Shop      string
	Date      unit.Date

	Low, High Point   // front left and back right corner of the plot
	Given     bool    // the job has a plot; else it is only what the tents take
	North     float64 // degrees clockwise from the back
	Tents     []Tent
	Obstacles []Obstacle
	Gaps      []Gap
	Distances []Distance
	Faults    []Fault
}

// Tent is one tent where it stands.
type Tent struct {
	Number int    // on the drawing, from 1
	ID     string // of the line in the job
	Copy   int    // of several of one line, from 1
	Name   string
	Size   string
	Family string

	Length, Width float64
	At            Point // front left corner of its plan
	Turn          int   // degrees against the clock, about that corner
	ByHand        bool  // the job says where
	Group         int   // the same for tents that share gutters, else its own

	Outline   Polygon // of the roof at the eaves
	Footprint Polygon // with all stakes
	Sides     []Side  // front, right, back, left
	Ridges    []Segment
	Poles     []Point // that stand inside
	Legs      []Leg
	Stakes    []Point
	Guys      []Segment
	Ballast   []Point // legs that are held by weight
	staked    box     // around the footprint

	Nearest   string  // of the other tents; "" if there is none
	NearestBy float64 // from roof to roof
}

// Leg is where a tent stands and is held.
type Leg struct {
	At      Point
	Out     Point // away from the tent, of length 1; 0 where it stands inside
	Number  int   // on the walk round the tent, from 1 at its front left corner
	Corner  bool
	Stakes  int // pieces
	Ballast int // pieces
}

// Side is one side of a tent's plan, corners against the clock.
type Side struct {
	Name     string
	Line     Segment
	Wall     string // kind; none is open
	Exits    []Segment
	NoStakes bool // none may be driven along it, though the ground takes them elsewhere
	Gutter   bool // it is shared
}

// Obstacle is where nothing may stand: an area, or a circle if it has a radius.
type Obstacle struct {
	Name   string
	Kind   string  // of what; "" is other
	Area   Polygon // of a circle for drawing only
	Middle Point
	Radius float64
}

// Most is how many tents one plan shows: more of them cannot be told apart on a
// sheet, and each is measured against every other.
const Most = 300

// Build places the tents; nil for a job without any, or with more than a plan
// shows.
func Build(c *catalog.Catalog, j *job.Job, tents []tent.Tent) *Plan {
	many := 0
	for i := range tents {
		many += tents[i].Job.Many()
	}
	if many == 0 || many > Most {
		return nil
	}
	p := &Plan{Units: c.Company.Units, Reference: "Quote " + j.Number, Event: j.Event.Name, Where: j.Event.Address,
		Shop: c.Company.Name, Date: j.Dates.Quoted}
	if j.Revision > 0 {
		p.Reference += fmt.Sprintf(" revision %d", j.Revision)
	}
	if plot := j.Plot; plot != nil {
		p.Given, p.North = true, plot.North.InexactFloat64()
		p.High = Point{plot.Width.Metres(), plot.Depth.Metres()}
		for i := range plot.Obstacles {
			p.Obstacles = append(p.Obstacles, obstacle(&plot.Obstacles[i]))
		}
	}
	want := wanted(c)
	p.place(tents, want)
	p.frame()
	p.near()
	p.gaps()
	p.distances(want)
	p.faults()
	return p
}

// obstacle is something on the plot as an area or a circle.
func obstacle(o *job.Obstacle) Obstacle {
	at := Point{o.X.Metres(), o.Y.Metres()}
	if o.Radius > 0 {
		r := o.Radius.Metres()
		return Obstacle{Name: o.Name, Kind: o.Kind, Area: Circle(at, r), Middle: at, Radius: r}
	}
	area := Rectangle(at, at.Plus(Point{o.Width.Metres(), o.Depth.Metres()}))
	return Obstacle{Name: o.Name, Kind: o.Kind, Area: area, Middle: area.Middle()}
}

// frame finds the edges of the ground where the job gives none: what the tents
// take, and the usual distance all round.
func (p *Plan) frame() {
	if p.Given {
		return
	}
	p.Low, p.High = p.Extent()
	edge := Point{Between.Metres(), Between.Metres()}
	p.Low, p.High = p.Low.Minus(edge), p.High.Plus(edge)
}

// Extent is the corners of the rectangle around all that stands on the plot,
// also where it reaches beyond it.
func (p *Plan) Extent() (low, high Point) {
	var all Polygon
	for i := range p.Tents {
		all = append(all, p.Tents[i].Footprint...)
	}
	for i := range p.Obstacles {
		all = append(all, p.Obstacles[i].Area...)
	}
	return all.Box()
}

// near finds the nearest other tent of each. Roofs lie along the edges of the
// plot, so that their boxes are their outlines.
func (p *Plan) near() {
	roofs := p.boxes()[0]
	for i := range p.Tents {
		best, by := -1, 0.0
		for k := range p.Tents {
			if d := roofs[i].apart(roofs[k]); k != i && (best < 0 || d < by) {
				best, by = k, d
			}
		}
		if best >= 0 {
			p.Tents[i].Nearest, p.Tents[i].NearestBy = p.Tents[best].Label(), by
		}
	}
}

// apart is the shortest distance between two boxes; 0 where they touch.
func (b box) apart(o box) float64 {
	return math.Hypot(max(0, b.low.X-o.high.X, o.low.X-b.high.X), max(0, b.low.Y-o.high.Y, o.low.Y-b.high.Y))
}

// Label is how a tent is called: its name, and its number among several alike.
func (t *Tent) Label() string {
	if t.Copy > 0 {
		return fmt.Sprintf("%s %d", t.Name, t.Copy)
	}
	return t.Name
}

// Text is a length on the plot for people: to the inch, or to the centimetre.
func (p *Plan) Text(metres float64) string {
	l, step := unit.FromMetres(metres), p.step()
	if l < 0 {
		return "-" + p.Text(-metres)
	}
	return ((l + step/2) / step * step).In(p.Units)
}

// AtLeast is Text for what may be more, not less: up to the next inch or
// centimetre, but not for what rounding adds.
func (p *Plan) AtLeast(metres float64) string {
	return p.Text(metres + p.step().Metres()/2 - 1e-5)
}

// step is how fine lengths on the plot are told.
func (p *Plan) step() unit.Length {
	if p.Units == unit.Metric {
		return unit.Centimetre
	}
	return unit.Inch
}
