// Package anchor finds what holds each tent against the wind.
//
// Pressure follows from the gust by one of two published methods, forces on the
// legs from the pressure by statics, and stakes and ballast from the forces by
// what the shop has measured. What the methods do not cover is refused by name:
// those tents keep their customary anchors.
package anchor

import (
	"fmt"
	"slices"

	"tentwright/catalog"
	"tentwright/quote/job"
	"tentwright/quote/tent"
)

// Build plans the anchors of all tents; nil where the shop has no anchors file.
// The tents come back held by what was planned.
func Build(c *catalog.Catalog, j *job.Job, tents []tent.Tent) (*Result, []tent.Tent) {
	if c.Anchors == nil {
		return nil, tents
	}
	b := &builder{c: c, j: j, a: c.Anchors, tents: slices.Clone(tents), said: map[string]bool{}, left: map[string]int{}, recalled: map[question]answer{}, rubbed: map[rub]answer{}, handled: map[handling]handled{}}
	for i := range c.Parts {
		b.left[c.Parts[i].ID] = c.Parts[i].Owned
	}
	b.begin()
	m := b.chooseMethod()
	b.refuseAll()
	b.groups(m)
	for i := range b.tents {
		b.tents[i].Holding = b.take(&b.tents[i], b.r.Tents[i].Legs)
	}
	b.actions()
	return b.r, b.tents
}

type builder struct {
	c     *catalog.Catalog
	j     *job.Job
	a     *catalog.Anchors
	tents []tent.Tent
	r     *Result
	said  map[string]bool
	left  map[string]int // of each part that the yard owns

	recalled map[question]answer
	rubbed   map[rub]answer
	handled  map[handling]handled
	rows     []point // of stakes in a group
}

// begin notes the wind, and the legs of every tent as they are held by custom.
func (b *builder) begin() {
	b.r = &Result{Method: b.a.Method, Terrain: terrainOf(b.c, b.j)}
	b.r.Gust, b.r.Limit = b.c.DesignGust()
	if b.j.Wind.Gust > 0 {
		b.r.Gust, b.r.Own = b.j.Wind.Gust, true
	}
	switch {
	case b.a.Method == "american" && b.a.American != nil:
		b.r.Source = b.a.American.Source
	case b.a.Method == "european" && b.a.European != nil:
		b.r.Source = b.a.European.Source
	}
	for i := range b.tents {
		t := &b.tents[i]
		legs := legsOf(t)
		for n, leg := range t.Graph.Legs() {
			legs[n].Holding = b.custom(t, leg)
		}
		b.r.Tents = append(b.r.Tents, Tent{ID: t.Job.ID, Legs: legs, Height: (t.Graph.Eave + t.Graph.Peak) / 2,
			Angle: angle(t.Graph, acrossWidth), Blocked: blocked(t)})
	}
}

// blocked tells whether some side is closed, so that wind is caught below the
// roof.
func blocked(t *tent.Tent) bool {
	return slices.ContainsFunc(t.Walls, func(w tent.Wall) bool { return w.Spec != nil })
}

// miss says once what the shop has not entered.
func (b *builder) miss(format string, args ...any) {
	text := fmt.Sprintf(format, args...)
	if !b.said[text] {
		b.said[text] = true
		b.r.Missing = append(b.r.Missing, text)
	}
}

// refuse says what the method does not cover; an empty tent stands for all.
func (b *builder) refuse(tent, format string, args ...any) {
	b.r.Refused = append(b.r.Refused, Refusal{Tent: tent, Why: fmt.Sprintf(format, args...)})
}

// refuseAll refuses what holds for the whole job: wind above the shop's limit,
// and what the site is marked with.
func (b *builder) refuseAll() {
	units := b.c.Company.Units
	if b.r.Limit > 0 && b.r.Gust > b.r.Limit {
		b.refuse("", "a gust of %s is above the shop's limit of %s", b.r.Gust.Text(units), b.r.Limit.Text(units))
	}
	for i := range b.c.Site {
		f := &b.c.Site[i]
		if o := b.j.Option(b.c, f.ID); o != nil && o.Engineer && f.ID != catalog.Surface {
			b.refuse("", "%s: %s", f.Name, o.Name)
		}
	}
}

// groups plans tent by tent, those that share gutters as one structure.
func (b *builder) groups(m *method) {
	at := tent.Offsets(b.tents)
	byGroup := map[int][]int{}
	most := 0
	for i := range at {
		byGroup[at[i].Group] = append(byGroup[at[i].Group], i)
		most = max(most, at[i].Group+1)
	}
	all := len(b.r.Refused) > 0
	for n := range most {
		members := byGroup[n]
		refused := b.refuseGroup(m, members) || all
		if m == nil || refused {
			continue
		}
		g := newGroup(b, m, members, at)
		if g != nil {
			g.plan()
		}
	}
}

// refuseGroup refuses what the method does not cover of tents that stand
// together.
func (b *builder) refuseGroup(m *method, members []int) bool {
	found := len(b.r.Refused)
	first := &b.tents[members[0]]
	for _, i := range members {
		t := &b.tents[i]
		id := t.Job.ID
		if kind := t.Family.Kind; kind != hipFrame && kind != poleTent && kind != clearSpan {
			b.refuse(id, "no rule is known for a roof of kind %q", kind)
			continue
		}
		if side := otherGround(first, t); side != "" && len(members) > 1 {
			b.refuse(id, "it is joined with others but stands on other ground at its %s", side)
		}
		for _, side := range t.Graph.Sides {
			if o := t.GroundAt(side.Name); o != nil && o.Engineer {
				b.refuse(id, "ground along the %s: %s", side.Name, o.Name)
			}
		}
		if t.Family.Kind == poleTent {
			b.refusePole(t)
		}
		if m != nil {
			b.refuseShape(m, t)
		}
	}
	return len(b.r.Refused) > found
}

// otherGround is the first side of a tent that stands on other ground than the
// first tent of its group does; none where all is the same.
func otherGround(first, t *tent.Tent) string {
	for _, side := range t.Graph.Sides {
		if t.GroundAt(side.Name) != first.Ground {
			return side.Name
		}
	}
	return ""
}

// refusePole refuses a pole tent that cannot be guyed all round: its side poles
// stand by nothing else.
func (b *builder) refusePole(t *tent.Tent) {
	loose := 0
	for _, f := range feetOf(t, tent.Offset{}, nil) {
		if f.way != Guyed {
			loose++
		}
	}
	if loose > 0 {
		b.refuse(t.Job.ID, "a pole tent stands by its guys, and at %d of its side poles none may be staked", loose)
	}
}

// refuseShape refuses a roof that the tables do not reach.
func (b *builder) refuseShape(m *method, t *tent.Tent) {
	for _, axis := range []int{acrossWidth, acrossLength} {
		slope := angle(t.Graph, axis)
		if _, ok := m.pairs(slope, false, false); !ok {
			b.refuse(t.Job.ID, "a roof slope of %.1f degrees is outside the table, %s", slope, m.slopes())
			return
		}
	}
	height := (t.Graph.Eave + t.Graph.Peak) / 2
	if _, ok := m.perGust(height); !ok {
		b.refuse(t.Job.ID, "a roof %s high is above the heights that terrain %q is entered for", height.In(b.c.Company.Units), m.terrain.ID)
	}
}
