package jobtest

import (
	"slices"
	"strconv"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
)

// Most of what one job has.
const (
	mostTents = 4
	mostItems = 30
)

// sides of a tent, as a job names them.
var sides = []string{"front", "right", "back", "left"}

// tents chooses sizes first, then who joins whom, and closes sides last: a
// side at a gutter takes no wall.
func (m *maker) tents() {
	for n := range m.choose("tents", mostTents+1) {
		f := one(m, "family", m.c.Families)
		t := job.Tent{ID: "tent-" + strconv.Itoa(n+1), Family: f.ID, Size: one(m, "size", f.Sizes).ID, Count: m.choose("count", 4),
			Discount: m.percent("tent discount", 30)}
		if m.chance("leg", 60) {
			t.Leg = *one(m, "leg height", f.Legs)
		}
		if surface := m.c.SiteFactor(catalog.Surface); surface != nil && m.chance("ground", 30) {
			t.Ground = one(m, "surface", surface.Options).ID
		}
		if m.chance("called", 40) {
			t.Name = *one(m, "called", words)
		}
		m.j.Tents = append(m.j.Tents, t)
	}
	for i := range m.j.Tents {
		if m.chance("joins", 50) {
			m.join(&m.j.Tents[i])
		}
	}
	for i := range m.j.Tents {
		m.sides(&m.j.Tents[i])
	}
}

// join puts a tent at the side of an earlier one that it can share a gutter
// with, if there is any.
func (m *maker) join(t *job.Tent) {
	f := m.c.Family(t.Family)
	if f.Gutter == nil {
		return
	}
	for i := range m.j.Tents {
		other := &m.j.Tents[i]
		if other == t {
			return
		}
		side := *one(m, "join side", sides)
		if other.Family != t.Family || slices.Contains(m.j.SharedSides(other), job.Opposite(side)) ||
			length(f.Size(t.Size), side) != length(f.Size(other.Size), job.Opposite(side)) {
			continue
		}
		t.Joins, t.JoinAt, t.Count, other.Count = other.ID, side, 1, 1
		return
	}
}

// length of a side of a size.
func length(s *catalog.Size, side string) unit.Length {
	if side == "left" || side == "right" {
		return s.Width
	}
	return s.Length
}

func (m *maker) sides(t *job.Tent) {
	f := m.c.Family(t.Family)
	shared := m.j.SharedSides(t)
	for _, name := range sides {
		if !m.chance("side", 60) {
			continue
		}
		s := job.TentSide{Side: name, NoStakes: m.chance("no stakes", 25)}
		if surface := m.c.SiteFactor(catalog.Surface); surface != nil && m.chance("side ground", 10) {
			s.Ground = one(m, "side surface", surface.Options).ID
		}
		if !slices.Contains(shared, name) {
			m.wall(&s, f, t.LegOf(f), length(f.Size(t.Size), name))
		}
		t.Sides = append(t.Sides, s)
	}
}

// wall closes a side with a kind that the shop has at this height, and doors
// that leave no gap too wide.
func (m *maker) wall(s *job.TentSide, f *catalog.Family, leg, room unit.Length) {
	kinds := []string{"", "open"}
	for i := range f.Walls {
		if slices.ContainsFunc(f.Walls[i].Panels, func(p catalog.WallPanel) bool { return p.Height == leg }) {
			kinds = append(kinds, f.Walls[i].Kind, f.Walls[i].Kind)
		}
	}
	s.Wall = *one(m, "wall", kinds)
	for range m.choose("doors", 3) {
		if len(f.Doors) == 0 {
			return
		}
		if door := one(m, "door", f.Doors); door.Width <= room {
			s.Doors = append(s.Doors, door.Kind)
			room -= door.Width
		}
	}
}

// items orders and offers accessories, kits and services; a job without tents
// has at least one.
func (m *maker) items() {
	var able []*catalog.Item
	for i := range m.c.Items {
		if !m.c.Items[i].Geometry {
			able = append(able, &m.c.Items[i])
		}
	}
	least := 0
	if len(m.j.Tents) == 0 {
		least = 1
	}
	for range m.between("items", least, mostItems) {
		item := *one(m, "item", able)
		line := job.Line{Item: item.ID, Quantity: m.quantity(item), Discount: m.percent("discount", 40)}
		if m.chance("optional", 30) {
			line.Optional, line.Chosen = true, m.chance("chosen", 50)
		}
		if m.chance("noted", 20) {
			line.Note = *one(m, "line note", words)
		}
		m.j.Items = append(m.j.Items, line)
	}
}

// quantity is mostly small, sometimes what a large event takes, and zero for
// a few; what is measured comes in quarters.
func (m *maker) quantity(item *catalog.Item) money.Number {
	most := []int{10, 10, 60, 60, 600}[m.choose("scale", 5)]
	n := m.choose("quantity", most+1)
	if item.CountsWhole() {
		return money.Int(n)
	}
	return money.Percent(money.Int(100*n + 25*m.choose("quarters", 4)))
}
