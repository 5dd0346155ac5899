// Package load decides which vehicle trips carry which parts, in which order,
// out and back: the cheapest vehicles that take the weight, the room and the
// longest piece, trailers behind vehicles that may pull them.
//
//	Plan      the way out and the way back
//	Manifest  the trips of one way and what each carries
//	Trip      one drive of one vehicle, with what it may take and what it has
//	Share     so many of one part on one trip, and its place in the loading
//
// Weights are of the catalog and of weighed samples at best: the plate on the
// vehicle, a scale and local law govern. Where a load sits, how it is strapped
// and what each axle bears are for the person who loads it. Poles ride on racks
// or along the wall, so that a top is never under them although it is loaded
// earlier.
package load

import (
	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/parts"
)

// Codes of the faults that loading can find.
const (
	TooLong   = "too-long"   // a piece is longer than every vehicle takes
	TooHeavy  = "too-heavy"  // one pack weighs more than every long enough vehicle takes
	TooBulky  = "too-bulky"  // one pack is larger than the room of every strong enough vehicle
	TooMuch   = "too-much"   // the fleet would have to drive too many turns
	NoVehicle = "no-vehicle" // the fleet has no vehicle that can carry anything
)

// Plan is the vehicles of a job, out and back.
type Plan struct {
	Out, Back Manifest
}

// Manifest is one way: its trips, what each carries, and the weight of all.
type Manifest struct {
	Trips  []Trip
	Shares []Share // in the order of the part lines; quantities of a line add up to what it takes
	Mass   unit.Mass
}

// Trip is one drive of one vehicle, the driver and riders included.
type Trip struct {
	Key     string // V1, V2 ... on the way out, B1, B2 ... on the way back
	Vehicle *catalog.Vehicle
	Number  int         // which of several alike, from 1
	Turn    int         // which trip of that vehicle, from 1
	Tow     string      // key of the trip that pulls this trailer; none: it drives itself
	Riders  int         // as many as it has seats; 0 for a trailer
	Payload unit.Mass   // what it may carry; loads within it also keep a combination's rating
	Room    unit.Volume // what its deck holds in practice
	Mass    unit.Mass   // loaded, packs included
	Volume  unit.Volume // loaded
	Longest unit.Length // longest side of a loaded pack
	Flags   []string    // what an ordinary licence may not cover, on the vehicle that drives
}

// Share is so many of one part on one trip.
type Share struct {
	Part     *catalog.Part
	Trip     int // index in Trips; -1 when nothing is carried at all
	Quantity int // 0 for what is shown but not taken
	Each     unit.Mass
	Packs    int
	Mass     unit.Mass // Quantity times Each, and Packs times the empty pack
	Volume   unit.Volume
	Order    int  // place in loading the trip: 1 goes in first and comes out last
	Rest     bool // last share of a part on several trips: takes what the others leave
}

// Packs is how many full packs a quantity makes and how many pieces are left
// for one more. A pack that holds less than one counts as holding one.
func Packs(quantity, holds int) (full, rest int) {
	holds = max(holds, 1)
	return quantity / holds, quantity % holds
}

// PackCount is the number of packs that a quantity rides in, the last one
// perhaps not full.
func PackCount(quantity, holds int) int {
	full, rest := Packs(quantity, holds)
	return full + min(rest, 1)
}

// Tare is the weight of one empty pack of a part; zero where none is given.
func Tare(p *catalog.Part) unit.Mass {
	if p.Pack.Tare == nil {
		return 0
	}
	return *p.Pack.Tare
}

// Pack plans both ways of a job whose site is distance away, one way in the
// shop's unit. The way back uses the trips of the way out when the wet load
// fits them, and is planned anew otherwise. Its faults are the codes above.
func Pack(c *catalog.Catalog, p *parts.Result, distance money.Number) (*Plan, diag.List) {
	y := &yard{c: c, kinds: kindsOf(c, distance)}
	y.goods(p.Lines)
	y.check()
	if y.list.Err() != nil {
		return nil, y.list
	}
	out := y.plan()
	if out == nil {
		return nil, y.list
	}
	plan := &Plan{Out: y.manifest("V", out)}
	y.soak()
	back := y.again(out)
	if back == nil {
		y.check() // a pack may be too heavy only when it is wet
		if y.list.Err() == nil {
			back = y.plan()
		}
	}
	if back == nil {
		return nil, y.list
	}
	plan.Back = y.manifest("B", back)
	return plan, y.list
}
