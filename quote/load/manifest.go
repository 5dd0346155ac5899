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
	y.sequence(m.Shares)
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
	lots := s.lots
	slices.SortFunc(lots, func(a, b lot) int {
		part := func(l lot) int { return min(1, l.quantity%y.cargo[l.line].holds) }
		return cmp.Or(cmp.Compare(a.line, b.line), cmp.Compare(part(a), part(b)), cmp.Compare(a.bed, b.bed))
	})
	slack := s.slack()
	shares := make([]Share, 0, max(len(lots), len(y.cargo)))
	for line, at := 0, 0; line < len(y.cargo); line++ {
		first := at
		for at < len(lots) && lots[at].line == line {
			shares = append(shares, y.share(lots[at]))
			at++
		}
		switch at - first {
		case 0:
			shares = append(shares, y.share(lot{line: line, bed: slack}))
		case 1:
		default:
			shares[len(shares)-1].Rest = true
		}
	}
	return shares
}

func (y *yard) share(l lot) Share {
	g := &y.cargo[l.line]
	return Share{Part: g.part, Trip: l.bed, Quantity: l.quantity, Each: g.each, Packs: packs(l.quantity, g.holds),
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
func (y *yard) sequence(shares []Share) {
	type place struct {
		share, trip, need int
		each              unit.Mass
	}
	places := make([]place, len(shares))
	for i := range shares {
		h := &shares[i]
		places[i] = place{i, h.Trip, slices.Index(needed, h.Part.Use), h.Each}
	}
	slices.SortFunc(places, func(a, b place) int {
		return cmp.Or(cmp.Compare(a.trip, b.trip), cmp.Compare(b.need, a.need), cmp.Compare(b.each, a.each), cmp.Compare(a.share, b.share))
	})
	for i, n := 0, 0; i < len(places); i++ {
		if i == 0 || places[i].trip != places[i-1].trip {
			n = 0
		}
		n++
		shares[places[i].share].Order = n
	}
}
