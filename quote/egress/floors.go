package egress

import (
	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/quote/job"
)

// People is how many the code counts on an area, so much for each: never fewer
// than the area divided by it, so rounded up.
func People(area, per money.Number) int { return money.RoundUp(money.DivRound(area, per, 8)) }

// floors divides a tent's floor: what the job says, what stands there, and the
// rest. What stands is out of the rest and counts by its own use.
func (b *builder) floors(t *Tent, home bool) {
	taken := money.Zero
	add := func(f Floor) {
		if f.Use != nil {
			f.Per = b.m.Area(f.Use.Area)
			f.People = People(f.Area, f.Per)
			t.Load += f.People
			if !f.Use.Staff {
				t.Guests += f.People
			}
		}
		if !f.Rest {
			taken = taken.Add(f.Taken)
		}
		t.Floors = append(t.Floors, f)
	}
	for _, u := range t.Tent.Job.Uses {
		area := b.m.Area(u.Area)
		add(Floor{Use: b.code.UseOr(u.Use), Taken: area, Area: area})
	}
	if home {
		for _, use := range b.standing() {
			area := b.unplaced(use, t.Many)
			add(Floor{Use: b.code.Use(use), Stands: true, Taken: area, Area: area})
		}
	}
	rest := t.Area.Sub(taken)
	if rest.IsNegative() {
		rest = money.Zero
	}
	add(Floor{Use: b.r.Use, Rest: true, Area: rest})
}

// standing lists the uses for which something stands, as the file has them.
func (b *builder) standing() []string {
	var uses []string
	seen := map[string]bool{}
	for i := range b.r.Stands {
		if use := b.r.Stands[i].Takes.Use; !seen[use] {
			seen[use] = true
			uses = append(uses, use)
		}
	}
	return uses
}

// unplaced is what stands for a use beyond what the job says of its tents, for
// each of so many tents.
func (b *builder) unplaced(use string, many int) money.Number {
	area := money.Zero
	for i := range b.r.Stands {
		if b.r.Stands[i].Takes.Use == use {
			area = area.Add(b.r.Stands[i].Area)
		}
	}
	if area = area.Sub(Said(b.j, b.m, use)); area.IsNegative() {
		return money.Zero
	}
	return money.DivRound(area, money.Int(many), AreaPlaces)
}

// Said is the floor that the job gives to a use, in all its tents.
func Said(j *job.Job, m Measures, use string) money.Number {
	sum := money.Zero
	for i := range j.Tents {
		for _, u := range j.Tents[i].Uses {
			if u.Use == use {
				sum = sum.Add(m.Area(u.Area).Mul(money.Int(j.Tents[i].Many())))
			}
		}
	}
	return sum
}

// Taken is what stands on a tent's floor or is said of it.
func (t *Tent) Taken() money.Number {
	sum := money.Zero
	for i := range t.Floors {
		sum = sum.Add(t.Floors[i].Taken)
	}
	return sum
}

// permits tells which tents need one. Open tents count together, since nothing
// here says how far apart they stand; others with those that share a gutter.
func (b *builder) permits() {
	p := b.code.Permit
	open := money.Zero
	for i := range b.r.Tents {
		t := &b.r.Tents[i]
		t.Open, t.Joined = b.openShare(t), money.Zero
		for k := range b.r.Tents {
			if other := &b.r.Tents[k]; other.Group == t.Group {
				t.Joined = t.Joined.Add(other.Area)
			}
		}
		if p != nil && t.Open.GreaterThanOrEqual(p.OpenShare) {
			open = open.Add(t.Area.Mul(money.Int(t.Many)))
		}
	}
	for i := range b.r.Tents {
		t := &b.r.Tents[i]
		t.Permit = p != nil && NeedsPermit(p, b.m, t.Open, t.Joined, open)
	}
}

// NeedsPermit tells whether a tent needs a permit, of which so many percent of
// the edge are open: by the area of all open tents, or else by its own.
func NeedsPermit(p *catalog.PermitRule, m Measures, share, own, open money.Number) bool {
	if share.GreaterThanOrEqual(p.OpenShare) {
		return open.GreaterThan(m.Area(p.Open))
	}
	return own.GreaterThan(m.Area(p.Enclosed))
}

// openShare is the percent of a tent's edge without a wall.
func (b *builder) openShare(t *Tent) money.Number {
	edge, open := money.Zero, money.Zero
	for _, w := range t.Tent.Walls {
		side := sideLength(t.Tent, w.Side)
		edge = edge.Add(money.Int(int(side)))
		if w.Spec == nil {
			open = open.Add(money.Int(int(side)))
		}
	}
	return money.DivRound(open.Mul(money.Hundred), edge, 2)
}
