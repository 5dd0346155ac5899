package egress

import (
	"math"
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/tent"
)

// MostPeople ends the last row of the exits table: more than any job may have.
const MostPeople = 1000000

// ways lists the exits of a tent: doors in its walls, and open sides. A side at
// a gutter leads into another tent and is none.
func (b *builder) ways(t *tent.Tent) []Way {
	var ways []Way
	for _, w := range t.Walls {
		long := sideLength(t, w.Side)
		switch {
		case slices.Contains(t.Shared, w.Side):
		case w.Spec == nil:
			ways = append(ways, b.open(t, w.Side, long))
		default:
			ways = append(ways, b.doors(w, long)...)
		}
	}
	return ways
}

// doors are those of one wall, one entry for each kind. A door without a clear
// width is no exit: how wide it opens is not guessed.
func (b *builder) doors(w tent.Wall, long unit.Length) []Way {
	var ways []Way
	for _, door := range w.Doors {
		at := slices.IndexFunc(ways, func(x Way) bool { return x.Door == door })
		if at < 0 {
			at = len(ways)
			ways = append(ways, Way{Side: w.Side, Door: door, Long: b.m.Length(long), Each: b.m.Width(door.Clear)})
		}
		ways[at].Doors++
		if door.Clear > 0 {
			ways[at].Many++
		}
	}
	return ways
}

// open is a side without a wall: one exit for each so much of its length, and
// one at least, as wide together as what stands in it leaves.
func (b *builder) open(t *tent.Tent, side string, long unit.Length) Way {
	clear := long
	for _, leg := range t.Graph.Legs() {
		if slices.Contains(leg.Sides, side) {
			clear -= b.thickness(t.Family)
		}
	}
	w := Way{Side: side, Long: b.m.Length(long), Clear: b.m.Length(max(0, clear)), Many: 1}
	if every := b.code.Exits.OpenEvery; every > 0 {
		w.Many = OpenExits(w.Long, b.m.Length(every))
	}
	w.Each = money.DivRound(w.Clear.Mul(money.Int(b.m.InLength())), money.Int(w.Many), 2)
	return w
}

// OpenExits is as how many exits an open side counts.
func OpenExits(long, every money.Number) int {
	return max(1, int(money.DivRound(long, every, 6).IntPart()))
}

// thickness is that of a family's thickest leg, side pole or upright.
func (b *builder) thickness(f *catalog.Family) unit.Length {
	var most unit.Length
	for _, m := range f.Members {
		if p := b.c.Profile(m.Profile); p != nil && slices.Contains([]string{"leg", "side-pole", "upright", "gable-upright"}, m.Role) {
			most = max(most, p.Outside)
		}
	}
	return most
}

// sideLength is the length of a side of a tent's plan.
func sideLength(t *tent.Tent, name string) unit.Length {
	for _, s := range t.Graph.Sides {
		if s.Name == name {
			return s.Length
		}
	}
	return 0
}

// Row is the row of the exits table for so many people; nil for nobody.
func Row(x *catalog.ExitTable, people int) *catalog.ExitRow {
	var row *catalog.ExitRow
	for i := range x.Rows {
		if people >= x.Rows[i].From {
			row = &x.Rows[i]
		}
	}
	return row
}

// UpTo is the most people of a row of the table.
func UpTo(x *catalog.ExitTable, n int) int {
	if n+1 < len(x.Rows) {
		return x.Rows[n+1].From - 1
	}
	return MostPeople
}

// exits holds the exits of a tent against what its people need.
func (b *builder) exits(t *Tent) {
	x := &b.code.Exits
	if row := Row(x, t.Load); row != nil {
		t.Need, t.Least = row.Exits, b.m.Width(row.Least(b.code.Class))
	}
	var sides []string
	t.HasWidth = money.Zero
	for i := range t.Ways {
		w := &t.Ways[i]
		if w.Many == 0 || w.Each.LessThan(t.Least) {
			continue
		}
		t.Have += w.Many
		t.HasWidth = t.HasWidth.Add(w.Each.Mul(money.Int(w.Many)))
		if !slices.Contains(sides, w.Side) {
			sides = append(sides, w.Side)
		}
	}
	t.Sides = len(sides)
	each := b.m.Each(x.Each)
	t.Width = money.Round(each.Mul(money.Int(t.Load)), 2)
	t.Allow = b.allow(t, each)
	t.Out = min(t.Guests, t.Allow)
}

// allow is how many people the exits of a tent let out: by their number, each
// wide enough for the row that it fulfils, and by the width of those that count.
func (b *builder) allow(t *Tent, each money.Number) int {
	x, most := &b.code.Exits, 0
	for n := range x.Rows {
		row, have := &x.Rows[n], 0
		for i := range t.Ways {
			if w := &t.Ways[i]; !w.Each.LessThan(b.m.Width(row.Least(b.code.Class))) {
				have += w.Many
			}
		}
		if have >= row.Exits {
			most = max(most, UpTo(x, n))
		}
	}
	if each.IsPositive() {
		most = min(most, int(money.DivRound(t.HasWidth, each, 6).IntPart()))
	}
	return most
}

// equip counts what hangs and stands by the people and the floor of a tent.
func (b *builder) equip(t *Tent) {
	t.Served = money.RoundUp(money.DivRound(money.Int(t.Load), money.Int(max(1, t.Have)), 8))
	if a := b.code.Aisle; a != nil {
		t.Aisle = AisleWidth(a, b.m, t.Served)
	}
	if s := b.code.Signs; s != nil && t.Served >= s.From {
		t.Signs, t.Lights = max(t.Need, t.Have), s.Lights
	}
	if f := b.code.Fire; f != nil {
		t.Fire = Extinguishers(f, b.m, t.Area, t.Tent.Graph.Length, t.Tent.Graph.Width)
	}
}

// AisleWidth is how wide an aisle must be that serves so many people.
func AisleWidth(a *catalog.AisleRule, m Measures, people int) money.Number {
	wide := money.DivRound(m.Width(a.Add).Mul(money.Int(people)), money.Int(a.For), 2)
	if least := m.Width(a.Least); wide.LessThan(least) {
		return least
	}
	return wide
}

// Extinguishers is how many a floor needs: by its area, and by travel. At least
// one.
func Extinguishers(f *catalog.FireRule, m Measures, area money.Number, long, wide unit.Length) int {
	return max(1, money.RoundUp(money.DivRound(area, Cover(f, m), 8)), Squares(f, m, long, wide))
}

// Squares is how many squares cover a floor whose corners lie within the travel
// distance of their middles: the thought by which the standard's largest area,
// 11,250 sq ft, follows from its 75 ft.
func Squares(f *catalog.FireRule, m Measures, long, wide unit.Length) int {
	side := m.Length(f.Travel).InexactFloat64() * math.Sqrt2
	across := func(l unit.Length) int { return money.RoundUp(money.Float(m.Length(l).InexactFloat64() / side)) }
	return across(long) * across(wide)
}

// Cover is the floor that one extinguisher of the yard protects.
func Cover(f *catalog.FireRule, m Measures) money.Number {
	cover := m.Area(f.InForce().Area).Mul(money.Int(f.Rating))
	if most := m.Area(f.Most); most.LessThan(cover) {
		return most
	}
	return cover
}
