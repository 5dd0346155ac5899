package load

import (
	"cmp"
	"fmt"
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/unit"
)

// needed is when the crew first needs a part on the site. Strike runs the
// other way, so that both ways are loaded from the end of this list to its
// beginning (common practice, no source).
var needed = []string{"mark", "gear", "anchor", "frame", "top", "walls", "floor", "power", "furnish", "safety"}

// again is the vehicles of the way out with what comes back, each share where
// it was; nil if that is too heavy for one of them.
func (y *yard) again(out *stow) *stow {
	s := &stow{beds: slices.Clone(out.beds), joints: slices.Clone(out.joints)}
	lots := out.lots
	s.clear(nil)
	// Volume can't be more than on the way out, so only weight is looked at.
	for _, l := range lots {
		g := &y.cargo[l.line]
		if g.part.Consumable {
			l.quantity = 0
		}
		if g.mass(l.quantity) > s.free(&s.beds[l.bed]) {
			return nil
		}
		s.put(g, l.line, l.bed, l.quantity)
	}
	return s
}

// manifest writes a stow down as trips and shares. The keys of its trips
// begin with prefix.
func (y *yard) manifest(prefix string, s *stow) Manifest {
	s.arrange()
	var m Manifest
	m.Trips = y.trips(prefix, s)
	m.Shares = y.shares(s)
	for i := range m.Shares {
		h := &m.Shares[i]
		m.Mass += h.Mass
		if h.Trip < 0 {
			continue
		}
		t := &m.Trips[h.Trip]
		t.Mass += h.Mass
		t.Volume += h.Volume
		if h.Quantity > 0 {
			t.Longest = max(t.Longest, h.Part.Pack.Size.Longest())
		}
	}
	y.sequence(m.Shares, len(m.Trips))
	return m
}

// arrange sorts the vehicles by turn, then as the fleet lists them, and
// numbers the turns of each anew: one may have had nothing to carry.
func (s *stow) arrange() {
	order := make([]int, len(s.beds))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		x, y := &s.beds[a], &s.beds[b]
		return cmp.Or(cmp.Compare(x.turn, y.turn), cmp.Compare(x.kind.index, y.kind.index), cmp.Compare(x.number, y.number))
	})
	to := make([]int, len(s.beds))
	beds := make([]bed, len(s.beds))
	turns := map[[2]int]int{}
	for n, i := range order {
		to[i] = n
		beds[n] = s.beds[i]
		vehicle := [2]int{beds[n].kind.index, beds[n].number}
		turns[vehicle]++
		beds[n].turn = turns[vehicle]
	}
	for i := range beds {
		if beds[i].other >= 0 {
			beds[i].other = to[beds[i].other]
		}
	}
	for i := range s.lots {
		s.lots[i].bed = to[s.lots[i].bed]
	}
	s.beds = beds
}

// trips names the beds and what each may take. Licence flags stand on the
// vehicle that drives, since its driver must hold the licence.
func (y *yard) trips(prefix string, s *stow) []Trip {
	trips := make([]Trip, len(s.beds))
	key := func(at int) string { return fmt.Sprintf("%s%d", prefix, at+1) }
	for i := range s.beds {
		b := &s.beds[i]
		t := Trip{Key: key(i), Vehicle: b.kind.v, Number: b.number, Turn: b.turn, Payload: s.payload(i), Room: b.kind.room}
		if b.kind.trailer {
			t.Tow = key(b.other)
		} else {
			t.Riders = b.kind.v.Seats
			t.Flags = flags(y.c, b.kind.v, s.trailer(b))
		}
		trips[i] = t
	}
	return trips
}

// trailer is what a vehicle pulls; nil for nothing.
func (s *stow) trailer(b *bed) *catalog.Vehicle {
	if b.other < 0 {
		return nil
	}
	return s.beds[b.other].kind.v
}

// payload is what a vehicle may carry. One that pulls leaves its trailer the
// load that it has, and the trailer gets the remainder of their common rating,
// so that no two loads within their payloads are too much for the combination.
func (s *stow) payload(at int) unit.Mass {
	b := &s.beds[at]
	if b.joint < 0 || s.joints[b.joint] == noLimit {
		return b.kind.payload
	}
	if b.kind.trailer {
		tower := s.beds[b.other].kind
		return min(b.kind.payload, joint(tower, b.kind)-s.payload(b.other))
	}
	carried := b.kind.payload - b.mass
	return min(b.kind.payload, carried+s.joints[b.joint])
}

// shares lists the lots in the order of the lines; the one of a split line
// that is not in full packs comes last. A line of which nothing is taken has
// a share where most is free.
func (y *yard) shares(s *stow) []Share {
	// Counted into place instead of sorted: large jobs stay linear.
	first := make([]int, len(y.cargo)+1)
	for _, l := range s.lots {
		first[l.line+1]++
	}
	for line := range y.cargo {
		first[line+1] += first[line]
	}
	lots, at := make([]lot, len(s.lots)), slices.Clone(first)
	for _, l := range s.lots {
		lots[at[l.line]] = l
		at[l.line]++
	}
	slack := s.slack()
	shares := make([]Share, 0, max(len(lots), len(y.cargo)))
	for line := range y.cargo {
		own := lots[first[line]:first[line+1]]
		switch len(own) {
		case 0:
			shares = append(shares, y.share(lot{line: line, bed: slack}))
			continue
		case 1:
			shares = append(shares, y.share(own[0]))
			continue
		}
		slices.SortFunc(own, func(a, b lot) int {
			return cmp.Or(cmp.Compare(y.broken(a), y.broken(b)), cmp.Compare(a.bed, b.bed))
		})
		for _, l := range own {
			shares = append(shares, y.share(l))
		}
		shares[len(shares)-1].Rest = true
	}
	return shares
}

// broken is 1 for a lot with a pack that is not full.
func (y *yard) broken(l lot) int { return min(1, l.quantity%y.cargo[l.line].holds) }

// share is a lot with its weight and room, as the yard counts them.
func (y *yard) share(l lot) Share {
	g := &y.cargo[l.line]
	return Share{Part: g.part, Trip: l.bed, Quantity: l.quantity, Each: g.each, Packs: PackCount(l.quantity, g.holds),
		Mass: g.mass(l.quantity), Volume: g.volume(l.quantity)}
}

// slack is the bed with the largest share of weight and room free; -1: none.
func (s *stow) slack() int {
	best, most := -1, -1.0
	for i := range s.beds {
		b := &s.beds[i]
		free := min(float64(s.free(b))/float64(b.kind.payload), float64(b.volume)/float64(max(b.kind.room, 1)))
		if free > most {
			best, most = i, free
		}
	}
	return best
}

// sequence numbers the shares of each trip as they are loaded: what is needed
// last goes in first, of equal need the heavier piece.
func (y *yard) sequence(shares []Share, trips int) {
	// One order of all serves every trip, and is sorted within each need only.
	byNeed := make([][]int, len(needed)+1)
	for need := range byNeed {
		byNeed[need] = make([]int, 0, len(shares)/len(needed)+1)
	}
	for i := range shares {
		need := slices.Index(needed, shares[i].Part.Use) + 1
		byNeed[need] = append(byNeed[need], i)
	}
	loaded := make([]int, trips+1) // the last counts what rides on no trip
	for _, some := range slices.Backward(byNeed) {
		slices.SortFunc(some, func(a, b int) int {
			return cmp.Or(cmp.Compare(shares[b].Each, shares[a].Each), cmp.Compare(a, b))
		})
		for _, i := range some {
			on := shares[i].Trip
			if on < 0 {
				on = trips
			}
			loaded[on]++
			shares[i].Order = loaded[on]
		}
	}
}
