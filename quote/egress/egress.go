// Package egress finds how many people each tent may hold, and whether they
// get out: people by floor and use, then exits, signs and extinguishers by
// people. The people of a tent are those for whom the code wants its exits
// designed, whoever is invited; the guests are held against them.
//
// Every figure is in the shop's units and keeps its terms, so that a workbook
// can make it again.
package egress

import (
	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
	"tentwright/quote/parts"
	"tentwright/quote/tent"
)

// Result is what the stage finds for the whole job.
type Result struct {
	Code   *catalog.Occupancy
	Use    *catalog.FloorUse // of the floor of which nothing else is said
	Given  bool              // the job names it
	Stands []Stand           // parts that take floor
	Tents  []Tent

	Load        int // people that the floors hold by the code
	Guests      int // of these on floor for guests
	Out         int // guests that the exits allow too
	Signs       int // wanted
	Lights      int
	Fire        int // extinguishers
	Permits     int // tents that need one
	Wheelchairs int

	HasSigns, HasLights, HasFire int // ordered
}

// Stand is what all pieces of a part take of the floor.
type Stand struct {
	Takes *catalog.FloorPart
	Part  *catalog.Part
	Count int
	Each  money.Number
	Area  money.Number
}

// Tent is one line of tents; its figures are those of one of them.
type Tent struct {
	Tent   *tent.Tent
	Many   int
	Group  int // of tents that share gutters
	Area   money.Number
	Floors []Floor
	Ways   []Way

	Load     int // people of one tent
	Guests   int
	Need     int          // exits that the table wants
	Least    money.Number // width of each
	Have     int          // exits at least so wide
	Width    money.Number // of all exits together, wanted
	HasWidth money.Number // of those that count
	Sides    int          // of the tent that have an exit which counts
	Allow    int          // people that the exits allow
	Out      int          // guests that the exits allow
	Served   int          // people for each exit
	Aisle    money.Number
	Signs    int
	Lights   int
	Fire     int
	Open     money.Number // percent of the edge without a wall
	Joined   money.Number // area of it and the tents that share its gutters
	Permit   bool
}

// Floor is a part of a tent's floor with one use.
type Floor struct {
	Use    *catalog.FloorUse // nil: nobody stands there
	Stands bool              // what stands on it says the use
	Rest   bool              // what is left
	Taken  money.Number      // of any but the rest
	Area   money.Number
	Per    money.Number // area for one person
	People int
}

// Way is the exits of one kind in a side.
type Way struct {
	Side  string
	Door  *catalog.DoorSpec // nil: the side is open
	Doors int
	Clear money.Number // length of an open side without what stands in it
	Long  money.Number // length of the side
	Many  int          // exits
	Each  money.Number // width of one
}

// Build holds the guests against floors and exits; nil where the shop has no
// occupancy file, or the job no tent.
func Build(c *catalog.Catalog, j *job.Job, p *parts.Result) *Result {
	if c.Occupancy == nil || len(p.Tents) == 0 {
		return nil
	}
	b := &builder{c: c, j: j, p: p, code: c.Occupancy, m: Measures{c.Company.Units}}
	b.r = &Result{Code: b.code, Use: b.code.UseOr(j.Event.Use), Given: j.Event.Use != ""}
	b.stands()
	b.tents()
	for i := range b.r.Tents {
		t := &b.r.Tents[i]
		b.floors(t, i == b.home())
		b.exits(t)
		b.equip(t)
	}
	b.permits()
	b.totals()
	return b.r
}

type builder struct {
	c    *catalog.Catalog
	j    *job.Job
	p    *parts.Result
	code *catalog.Occupancy
	m    Measures
	r    *Result
}

// stands measures what the parts of the job take of the floor.
func (b *builder) stands() {
	for i := range b.code.Takes {
		t := &b.code.Takes[i]
		line := b.p.Find(t.Part)
		if line == nil {
			continue
		}
		each := b.m.Area(t.Area)
		b.r.Stands = append(b.r.Stands, Stand{Takes: t, Part: line.Part, Count: line.Counted, Each: each, Area: each.Mul(money.Int(line.Counted))})
	}
}

// tents begins the tents with what is measured on them.
func (b *builder) tents() {
	groups := tent.Offsets(b.p.Tents)
	for i := range b.p.Tents {
		t := &b.p.Tents[i]
		b.r.Tents = append(b.r.Tents, Tent{Tent: t, Many: t.Job.Many(), Group: groups[i].Group + 1, Area: b.m.Area(t.Graph.Area()), Ways: b.ways(t)})
	}
}

// home is the tent in which things stand of which the job does not say where:
// that with the most floor that nothing is said of.
func (b *builder) home() int {
	best, most := 0, unit.Area(-1)
	for i := range b.p.Tents {
		t := &b.p.Tents[i]
		rest := t.Graph.Area()
		for _, u := range t.Job.Uses {
			rest -= u.Area
		}
		if rest > most {
			best, most = i, rest
		}
	}
	return best
}

// totals adds the tents up.
func (b *builder) totals() {
	r := b.r
	for i := range r.Tents {
		t := &r.Tents[i]
		r.Load += t.Many * t.Load
		r.Guests += t.Many * t.Guests
		r.Out += t.Many * t.Out
		r.Signs += t.Many * t.Signs
		r.Lights += t.Many * t.Lights
		r.Fire += t.Many * t.Fire
		if t.Permit {
			r.Permits += t.Many
		}
	}
	r.Wheelchairs = Wheelchairs(b.code.Wheelchairs, b.j.Event.Guests)
	if s := b.code.Signs; s != nil {
		r.HasSigns, _ = b.p.Tagged(s.SignTag)
		r.HasLights, _ = b.p.Tagged(s.LightTag)
	}
	// An extinguisher that is too small for the hazard counts for nothing.
	if f := b.code.Fire; f != nil && f.Rating >= f.InForce().Least {
		r.HasFire, _ = b.p.Tagged(f.Tag)
	}
}

// Wheelchairs is the wheelchair spaces for so many guests.
func Wheelchairs(steps []catalog.SeatStep, guests int) int {
	n := 0
	for _, s := range steps {
		if guests < s.From {
			break
		}
		n = s.Spaces
		if s.Each > 0 {
			n += (guests - s.From + s.Each) / s.Each
		}
	}
	return n
}
