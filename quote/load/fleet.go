package load

import (
	"cmp"
	"math"
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
)

// noLimit is a combination whose rating the shop does not give.
const noLimit = unit.Mass(math.MaxInt64)

// kind is one entry of the fleet with what one of it can take.
type kind struct {
	v       *catalog.Vehicle
	index   int         // in the planner's kinds
	own     unit.Mass   // empty, with fuel, riders and the reserve
	payload unit.Mass   // by its own rating
	alone   unit.Mass   // by its own rating and the best vehicle that pulls it
	room    unit.Volume // deck times fill
	cost    int64       // of one trip out and back, in 1/10000 of the currency
	trailer bool
	towers  []int // kinds that can pull it, the one that leaves most first
}

// kindsOf is the vehicles that can carry something. A trailer costs no
// distance of its own: what pulls it has paid.
func kindsOf(c *catalog.Catalog, distance money.Number) []kind {
	miles := distance.Mul(c.Rates.MileCost).Mul(money.Int(2))
	var kinds []kind
	for i := range c.Fleet.Vehicles {
		v := &c.Fleet.Vehicles[i]
		k := kind{v: v, own: v.Empty + v.Fuel + v.Reserve, trailer: isTrailer(v)}
		// Riders come off the payload before any crew is known: as many as
		// there are seats, which errs to the safe side.
		cost := v.TripCost
		if !k.trailer {
			k.own += unit.Mass(v.Seats) * c.Fleet.Rider
			cost = cost.Add(miles)
		}
		k.payload = v.Rating - k.own
		k.alone = k.payload
		k.room = unit.Volume(money.Int(int(v.Deck.Volume())).Mul(money.Percent(v.Fill)).IntPart())
		k.cost = money.Round(cost.Shift(4), 0).IntPart()
		// A vehicle that reaches its rating without any load can't pull either.
		if k.payload > 0 && v.Count > 0 {
			kinds = append(kinds, k)
		}
	}
	return hitch(kinds)
}

// isTrailer tells what drives nowhere by itself and seats nobody.
func isTrailer(v *catalog.Vehicle) bool { return v.Kind == "trailer" }

// hitch finds what can pull each trailer and drops those that nothing can.
func hitch(kinds []kind) []kind {
	pulls := func(tower, trailer *kind) bool {
		return !tower.trailer && slices.Contains(trailer.v.TowedBy, tower.v.ID) && joint(tower, trailer) > 0
	}
	var usable []kind
	for i := range kinds {
		t := &kinds[i]
		if !t.trailer || slices.ContainsFunc(kinds, func(k kind) bool { return pulls(&k, t) }) {
			usable = append(usable, *t)
		}
	}
	kinds = usable
	for i := range kinds {
		kinds[i].index = i
		t := &kinds[i]
		if !t.trailer {
			continue
		}
		for j := range kinds {
			if pulls(&kinds[j], t) {
				t.towers = append(t.towers, j)
			}
		}
		slices.SortStableFunc(t.towers, func(a, b int) int {
			return cmp.Compare(joint(&kinds[b], t), joint(&kinds[a], t))
		})
		t.alone = min(t.payload, joint(&kinds[t.towers[0]], t))
	}
	return kinds
}

// joint is the load that vehicle and trailer may have together.
func joint(tower, trailer *kind) unit.Mass {
	if tower.v.Combined == nil {
		return noLimit
	}
	return *tower.v.Combined - tower.own - trailer.own
}

// couple gives each trailer a vehicle of its own among the beds, by
// augmenting paths, and tells which trailers stay behind. Beds of a later turn
// are coupled among themselves.
func (s *stow) couple() (stranded []int) {
	s.joints = s.joints[:0]
	for i := range s.beds {
		s.beds[i].other, s.beds[i].joint = -1, -1
	}
	for i := range s.beds {
		if s.beds[i].kind.trailer && !s.claim(i, make([]bool, len(s.beds))) {
			stranded = append(stranded, i)
		}
	}
	for i := range s.beds {
		b := &s.beds[i]
		if !b.kind.trailer || b.other < 0 {
			continue
		}
		tower := &s.beds[b.other]
		b.joint, tower.joint = len(s.joints), len(s.joints)
		s.joints = append(s.joints, joint(tower.kind, b.kind))
	}
	return stranded
}

// claim finds a vehicle for trailer t; one that is taken is freed when its
// trailer can go behind another.
func (s *stow) claim(t int, seen []bool) bool {
	for _, want := range s.beds[t].kind.towers {
		for i := range s.beds {
			b := &s.beds[i]
			if b.kind.index != want || seen[i] {
				continue
			}
			seen[i] = true
			if b.other < 0 || s.claim(b.other, seen) {
				b.other, s.beds[t].other = t, i
				return true
			}
		}
	}
	return false
}

// flags is what an ordinary licence does not cover of a vehicle that drives,
// with a trailer or without. The ratings count, not the load.
func flags(c *catalog.Catalog, v, trailer *catalog.Vehicle) []string {
	var found []string
	for i := range c.Fleet.Licences {
		l := &c.Fleet.Licences[i]
		switch {
		// A rule with a towed rating is about the combination only.
		case l.Towed == 0 && v.Rating > l.Over,
			l.Towed > 0 && trailer != nil && trailer.Rating > l.Towed && v.Rating+trailer.Rating > l.Over:
			found = append(found, l.Flag)
		}
	}
	return found
}
