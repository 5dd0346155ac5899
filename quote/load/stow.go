package load

import (
	"math"

	"tentwright/catalog/unit"
)

// stow is some vehicles and what has been put on them.
type stow struct {
	beds   []bed
	joints []unit.Mass // free weight of vehicles with their trailers
	lots   []lot
	rest   []int // of each cargo line, what is still to be placed
}

// bed is one vehicle on one turn with what is still free.
type bed struct {
	kind   *kind
	number int // of those alike, from 1
	turn   int
	other  int // bed of the trailer behind it, or of what pulls it; -1: none
	joint  int // index in joints; -1: none
	mass   unit.Mass
	volume unit.Volume
}

// lot is so many of one cargo line on one bed.
type lot struct{ line, bed, quantity int }

// add brings vehicles of a kind, empty.
func (s *stow) add(k *kind, count, turn int) {
	for n := range count {
		s.beds = append(s.beds, bed{kind: k, number: n + 1, turn: turn, other: -1, joint: -1, mass: k.payload, volume: k.room})
	}
}

// clear empties the vehicles and puts the quantities back on the ground.
func (s *stow) clear(ground []int) {
	for i := range s.beds {
		b := &s.beds[i]
		b.mass, b.volume = b.kind.payload, b.kind.room
		if b.kind.trailer && b.joint >= 0 {
			s.joints[b.joint] = joint(s.beds[b.other].kind, b.kind)
		}
	}
	s.lots = s.lots[:0]
	s.rest = append(s.rest[:0], ground...)
}

// free is the weight that the bed still takes, its combination considered.
func (s *stow) free(b *bed) unit.Mass {
	if b.joint >= 0 {
		return min(b.mass, s.joints[b.joint])
	}
	return b.mass
}

// put loads a quantity. A part that comes to a bed twice stays one lot.
func (s *stow) put(g *cargo, line, at, quantity int) {
	b := &s.beds[at]
	// Whole packs come first and the broken one last, so that a second helping
	// brings exactly its own packs.
	mass := g.mass(quantity)
	b.mass -= mass
	b.volume -= g.volume(quantity)
	if b.joint >= 0 && s.joints[b.joint] != noLimit {
		s.joints[b.joint] -= mass
	}
	for i := len(s.lots) - 1; i >= 0 && s.lots[i].line == line; i-- {
		if s.lots[i].bed == at {
			s.lots[i].quantity += quantity
			return
		}
	}
	s.lots = append(s.lots, lot{line, at, quantity})
}

// place loads what is left of a line: whole where it fits, otherwise full
// packs where most of them fit. It tells whether all found a place.
func (s *stow) place(g *cargo, line int, even bool) bool {
	for s.rest[line] > 0 {
		at, quantity := s.whole(g, s.rest[line], even), s.rest[line]
		if at < 0 {
			var full int
			at, full = s.most(g, s.rest[line])
			if full == 0 {
				return false
			}
			quantity = full * g.holds
		}
		s.put(g, line, at, quantity)
		s.rest[line] -= quantity
	}
	return true
}

// whole finds a bed for a whole quantity: the first that takes it, or, even,
// the one whose weight and room are then used most alike.
func (s *stow) whole(g *cargo, quantity int, even bool) int {
	mass, volume := g.mass(quantity), g.volume(quantity)
	best, least := -1, math.Inf(1)
	for i := range s.beds {
		b := &s.beds[i]
		if !g.rides(b.kind.v) || volume > b.volume || mass > s.free(b) {
			continue
		}
		if !even {
			return i
		}
		// A bed with weight left but no room, or the reverse, is of no more use.
		skew := math.Abs(float64(b.mass-mass)/float64(b.kind.payload) - float64(b.volume-volume)/float64(b.kind.room))
		if skew < least {
			best, least = i, skew
		}
	}
	return best
}

// most finds the bed that takes most full packs of a quantity, and how many.
func (s *stow) most(g *cargo, quantity int) (at, full int) {
	all, _ := Packs(quantity, g.holds)
	for i := range s.beds {
		b := &s.beds[i]
		if !g.rides(b.kind.v) {
			continue
		}
		n := all
		// What weighs or measures nothing is no limit, and no divisor.
		if g.pack > 0 {
			n = min(n, int(s.free(b)/g.pack))
		}
		if g.size > 0 {
			n = min(n, int(b.volume/g.size))
		}
		if n > full {
			at, full = i, n
		}
	}
	return at, full
}
