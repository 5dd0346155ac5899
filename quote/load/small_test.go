package load

import (
	"math"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/parts"

	"pgregory.net/rapid"
)

// least tries every set of vehicles, every way to couple them and every place
// of every pack, and returns the least cost of one turn; +Inf when none does.
type least struct {
	c        *catalog.Catalog
	vehicles []*catalog.Vehicle // each one of the fleet
	packs    []smallPack
	miles    float64
}

type smallPack struct {
	mass    unit.Mass
	size    unit.Volume
	longest unit.Length
}

// newLeast takes the fleet apart into vehicles and the lines into packs.
func newLeast(c *catalog.Catalog, lines []parts.Line, distance int) *least {
	l := &least{c: c, miles: 2 * float64(distance) * c.Rates.MileCost.InexactFloat64()}
	for i := range c.Fleet.Vehicles {
		for range c.Fleet.Vehicles[i].Count {
			l.vehicles = append(l.vehicles, &c.Fleet.Vehicles[i])
		}
	}
	for i := range lines {
		p := lines[i].Part
		for left := lines[i].Total(); left > 0; left -= p.Pack.Holds {
			mass := unit.Mass(min(left, p.Pack.Holds)) * lines[i].Each
			if p.Pack.Tare != nil {
				mass += *p.Pack.Tare
			}
			l.packs = append(l.packs, smallPack{mass, p.Pack.Size.Volume(), p.Pack.Size.Longest()})
		}
	}
	return l
}

func (l *least) own(v *catalog.Vehicle) unit.Mass {
	return v.Empty + v.Fuel + unit.Mass(v.Seats)*l.c.Fleet.Rider
}

// planned is what the way out of a plan costs, and its most turns.
func (l *least) planned(plan *Plan) (cost float64, turns int) {
	for i := range plan.Out.Trips {
		trip := &plan.Out.Trips[i]
		cost += trip.Vehicle.TripCost.InexactFloat64()
		if trip.Tow == "" {
			cost += l.miles
		}
		turns = max(turns, trip.Turn)
	}
	return cost, turns
}

func (l *least) cost() float64 {
	best := math.Inf(1)
	for set := range 1 << len(l.vehicles) {
		var some []*catalog.Vehicle
		cost := 0.0
		for i, v := range l.vehicles {
			if set>>i&1 == 0 {
				continue
			}
			some = append(some, v)
			cost += v.TripCost.InexactFloat64()
			if v.Kind != "trailer" {
				cost += l.miles
			}
		}
		if cost < best && l.couple(some, make([]int, len(some)), 0) {
			best = cost
		}
	}
	return best
}

// couple tries every vehicle for trailer i; behind[j] is the trailer of j plus 1.
func (l *least) couple(some []*catalog.Vehicle, behind []int, i int) bool {
	if i == len(some) {
		free := make([]unit.Mass, len(some))
		room := make([]unit.Volume, len(some))
		for j, v := range some {
			free[j] = v.Rating - l.own(v)
			room[j] = unit.Volume(math.Floor(float64(v.Deck.Volume())*v.Fill.InexactFloat64()/100 + 1e-6))
			if free[j] <= 0 {
				return false
			}
		}
		return l.assign(some, behind, free, room, 0)
	}
	if some[i].Kind != "trailer" {
		return l.couple(some, behind, i+1)
	}
	for j, v := range some {
		for _, id := range some[i].TowedBy {
			if id == v.ID && behind[j] == 0 {
				behind[j] = i + 1
				if l.couple(some, behind, i+1) {
					return true
				}
				behind[j] = 0
			}
		}
	}
	return false
}

func (l *least) assign(some []*catalog.Vehicle, behind []int, free []unit.Mass, room []unit.Volume, n int) bool {
	if n == len(l.packs) {
		for j, v := range some {
			if behind[j] == 0 || v.Combined == nil {
				continue
			}
			other := behind[j] - 1
			gross := v.Rating - free[j] + some[other].Rating - free[other]
			if gross > *v.Combined {
				return false
			}
		}
		return true
	}
	p := l.packs[n]
	for j, v := range some {
		if p.mass > free[j] || p.size > room[j] || p.longest > v.Longest {
			continue
		}
		free[j] -= p.mass
		room[j] -= p.size
		if l.assign(some, behind, free, room, n+1) {
			return true
		}
		free[j] += p.mass
		room[j] += p.size
	}
	return false
}

// On jobs small enough to try everything, a plan is never cheaper than the
// cheapest there is, and rarely dearer: first fit and even filling are good
// placements, not the best ones. Jobs of several turns are left out.
func TestSmallJobsAgainstEverything(t *testing.T) {
	same, dearer, worst := 0, 0, 1.0
	rapid.Check(t, func(t *rapid.T) {
		c := drawFleet(t, 3, 2)
		lines := drawLines(t, 4, 4)
		distance := rapid.IntRange(0, 60).Draw(t, "distance")
		l := newLeast(c, lines, distance)
		if len(l.packs) > 8 || len(l.vehicles) > 5 {
			t.Skip("too large to try everything")
		}
		want := l.cost()
		plan, list := Pack(c, &parts.Result{Lines: lines}, money.Int(distance))
		if list.Err() != nil {
			return // other tests look at faults; dry goods may fit where wet ones do not
		}
		got, turns := l.planned(plan)
		switch {
		case turns > 1:
			if !math.IsInf(want, 1) {
				dearer++
			}
		case got < want-1e-6:
			t.Fatalf("planned for %.2f, but nothing is cheaper than %.2f", got, want)
		case got < want+1e-6:
			same++
		default:
			dearer++
			worst = max(worst, got/want)
		}
	})
	t.Logf("%d at the least cost, %d dearer, at worst %.2f times", same, dearer, worst)
	if dearer*50 > same {
		t.Errorf("%d plans of %d are dearer than they need be; at most one of 50 was expected", dearer, same+dearer)
	}
}
