package load

import (
	"math"

	"tentwright/catalog/unit"
)

const (
	maxPicks = 4096 // sets of vehicles that are looked at one by one
	trials   = 40   // placements of the whole load that one search may cost
)

// pick is a set of vehicles as a number: the counts of the kinds, each digit
// in the base of its kind's limit.
type pick struct {
	code  int
	cost  int64
	beds  int
	spare unit.Mass
}

// better is the order of the search: least cost, fewest trips, least spare
// payload.
func (p *pick) better(q *pick) bool {
	if p.cost != q.cost {
		return p.cost < q.cost
	}
	if p.beds != q.beds {
		return p.beds < q.beds
	}
	if p.spare != q.spare {
		return p.spare < q.spare
	}
	return p.code < q.code
}

// needs is the weight and volume of what is still on the ground.
func (y *yard) needs(todo, ground []int) (mass unit.Mass, volume unit.Volume) {
	for _, line := range todo {
		mass += y.cargo[line].mass(ground[line])
		volume += y.cargo[line].volume(ground[line])
	}
	return mass, volume
}

// search finds the cheapest vehicles that carry all that is on the ground in
// one turn; nil when none do.
func (y *yard) search(todo, ground []int, turn int) *stow {
	mass, volume := y.needs(todo, ground)
	// In floating point, since a fleet may have a hundred of a kind. Where even
	// all of it is too little there is nothing to choose from.
	var payload, room float64
	for i := range y.kinds {
		k := &y.kinds[i]
		payload += float64(k.v.Count) * float64(k.payload)
		room += float64(k.v.Count) * float64(k.room)
	}
	if payload < float64(mass) || room < float64(volume) {
		return nil
	}
	limits, many := y.limits(mass, volume)
	if many > maxPicks {
		return y.shrink(todo, ground, turn)
	}
	// A set whose sums are too small can't fit, so the first of the others that
	// fits, by cost, is the cheapest.
	y.sets(limits, mass, volume)
	budget := trials * len(todo)
	for len(y.picks) > 0 && budget > 0 {
		s := y.next(limits, turn)
		budget--
		if len(s.couple()) == 0 && s.bears(mass) && y.try(s, todo, ground, &budget) {
			return s.keep()
		}
	}
	// Many sets bear the sums but can't be packed: rather a dearer plan now.
	if budget <= 0 {
		return y.shrink(todo, ground, turn)
	}
	return nil
}

// next takes the best set off the list and brings its vehicles. Looking for it
// each time is less work than sorting: the first is mostly the last.
func (y *yard) next(limits []int, turn int) *stow {
	at, last := 0, len(y.picks)-1
	for i := range y.picks {
		if y.picks[i].better(&y.picks[at]) {
			at = i
		}
	}
	code := y.picks[at].code
	y.picks[at] = y.picks[last]
	y.picks = y.picks[:last]
	s := &y.trial
	s.beds = s.beds[:0]
	for i := range y.kinds {
		s.add(&y.kinds[i], code%limits[i], turn)
		code /= limits[i]
	}
	return s
}

// keep is a copy that the next search does not overwrite.
func (s *stow) keep() *stow {
	return &stow{
		beds:   append([]bed(nil), s.beds...),
		joints: append([]unit.Mass(nil), s.joints...),
		lots:   append([]lot(nil), s.lots...),
	}
}

// limits is one more than the most of each kind that can be of use, and the
// number of sets that this makes.
func (y *yard) limits(mass unit.Mass, volume unit.Volume) (limits []int, many int) {
	limits, many = make([]int, len(y.kinds)), 1
	for i := range y.kinds {
		k := &y.kinds[i]
		// One more than fills up, because packs do not fit without gaps.
		most := 2 + max(float64(mass)/float64(k.payload), float64(volume)/float64(max(k.room, 1)))
		limits[i] = 1 + int(math.Min(most, float64(k.v.Count)))
		many = min(many*limits[i], maxPicks+1)
	}
	return limits, many
}

// sets lists the sets of vehicles that take the weight and the volume.
func (y *yard) sets(limits []int, mass unit.Mass, volume unit.Volume) {
	y.picks = y.picks[:0]
	var walk func(i, code, place, free int, p pick, room unit.Volume)
	walk = func(i, code, place, free int, p pick, room unit.Volume) {
		if i == len(y.kinds) {
			// free is the vehicles without a trailer; p.spare the payload.
			if free >= 0 && p.spare >= mass && room >= volume {
				p.code, p.spare = code, p.spare-mass
				y.picks = append(y.picks, p)
			}
			return
		}
		k := &y.kinds[i]
		for n := range limits[i] {
			walk(i+1, code+n*place, place*limits[i], free, p, room)
			p.cost += k.cost
			p.beds++
			p.spare += k.payload
			room += k.room
			if k.trailer {
				free--
			} else {
				free++
			}
		}
	}
	walk(0, 0, 1, 0, pick{}, 0)
}

// bears tells whether the vehicles take the weight with the ratings of their
// combinations considered.
func (s *stow) bears(mass unit.Mass) bool {
	var sum unit.Mass
	for i := range s.beds {
		b := &s.beds[i]
		switch {
		case b.joint < 0:
			sum += b.kind.payload
		case b.kind.trailer: // counts for the vehicle before it too
			sum += min(b.kind.payload+s.beds[b.other].kind.payload, s.joints[b.joint])
		}
	}
	return sum >= mass
}

// try loads all that is on the ground, first fit, then evenly. What it places
// is taken off the budget.
func (y *yard) try(s *stow, todo, ground []int, budget *int) bool {
	for _, even := range []bool{false, true} {
		s.clear(ground)
		if y.loads(s, todo, even, budget) {
			return true
		}
		// In a single vehicle both ways are the same.
		if len(s.beds) == 1 {
			break
		}
	}
	return false
}

// loads places line after line, the largest first; it gives up at the first that
// finds no place, as the set of vehicles is then too small.
func (y *yard) loads(s *stow, todo []int, even bool, budget *int) bool {
	for _, line := range todo {
		*budget--
		if !s.place(&y.cargo[line], line, even) {
			return false
		}
	}
	return true
}
