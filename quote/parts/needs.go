package parts

import (
	"fmt"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/tent"
)

// need asks for parts: Per for each of the driver. A key that comes again adds to
// its need before it is rounded, so that the poles of a tent are one need and
// not forty.
func (b *builder) need(n Need) {
	if at, ok := b.merged[n.Key]; ok {
		b.r.Needs[at].Per = b.r.Needs[at].Per.Add(n.Per)
		return
	}
	if n.Order != "" {
		n.Of = b.order(n.Order).Ordered()
	} else {
		n.Of = b.r.Amount(n.Count)
	}
	b.merged[n.Key] = len(b.r.Needs)
	b.r.Needs = append(b.r.Needs, n)
}

// count works the quantity out from the terms, rounded up to whole parts.
func (n *Need) count() {
	n.Quantity = 0
	if n.Of.IsPositive() {
		n.Quantity = max(n.Min, money.RoundUp(n.Of.Mul(n.Per)))
	}
}

// needTents asks for what the graph of each tent is made of.
func (b *builder) needTents() {
	for i := range b.r.Tents {
		t := &b.r.Tents[i]
		add := func(part string, n int) {
			if p := b.c.Part(part); p != nil && n > 0 {
				b.need(Need{Key: tentKey(t) + ":" + part, Part: p, Source: t.Label(), Order: tentKey(t), Per: money.Int(n)})
			}
		}
		for _, m := range t.Graph.Members {
			add(m.Part, 1)
		}
		for _, n := range t.Graph.Nodes {
			add(n.Part, 1)
		}
		for _, s := range t.Graph.Sections {
			add(s.Part, s.Count)
			b.weighTop(t, s.Part, s.Area)
		}
		for _, w := range t.Walls {
			for j, n := range w.Panels {
				add(w.Stock[j].Part, n)
			}
		}
		for _, taken := range t.Holding.Parts {
			b.need(Need{Key: "A:" + t.Job.ID + ":" + taken.Part, Part: b.c.Part(taken.Part), Source: "anchors, " + t.Label(), Order: tentKey(t), Per: money.Int(taken.Count)})
		}
		if length := t.Hung(); length > 0 {
			per := money.Float(float64(length) / float64(t.Family.Gutter.Length))
			add(t.Family.Gutter.Part, money.RoundUp(per))
		}
	}
}

// weighTop gives a section of a top the weight that the tent's roof makes it.
func (b *builder) weighTop(t *tent.Tent, part string, area unit.Area) {
	p := b.c.Part(part)
	if p == nil || p.Cloth == nil || p.Cloth.Width > 0 {
		return
	}
	mass := b.c.ClothMass(b.c.Fabric(p.Cloth.Fabric), area, t.Family.Seam.InexactFloat64())
	if old, ok := b.each[part]; ok && old != mass {
		b.list.Addf(p.Where.Pos(), WeightDiffer, "part %q would weigh %s in one tent and %s in another; one section for each shape was expected",
			part, old.Text(b.c.Company.Units), mass.Text(b.c.Company.Units))
	}
	b.each[part] = mass
}

// needItems asks for the contents of what is ordered; kits are opened down to
// their parts.
func (b *builder) needItems() {
	for i := range b.r.Orders {
		o := &b.r.Orders[i]
		if o.Item != nil {
			b.c.Open(o.Item, func(p *catalog.Part, per money.Number) {
				b.need(Need{Key: o.Key + ":" + p.ID, Part: p, Source: o.Name, Order: o.Key, Per: per})
			})
		}
	}
}

// needRules asks for what the shop's rules take along.
func (b *builder) needRules() {
	for i := range b.c.Rules {
		r := &b.c.Rules[i]
		p := b.c.Part(r.Part)
		for _, c := range b.r.TentCounts(r.Driver, r.Families) {
			source := r.Why
			if c.Tent != "" {
				source = fmt.Sprintf("%s, %s", r.Why, b.r.tent(c.Tent).Label())
			}
			b.need(Need{Key: "R:" + r.ID + ":" + c.Key, Part: p, Source: source, Rule: r.ID, Count: c.Key, Per: r.Per, Min: r.Min})
		}
	}
}

// lines adds the needs up part by part, with spares and weights.
func (b *builder) lines() {
	needed := map[*catalog.Part]bool{}
	for i := range b.r.Needs {
		needed[b.r.Needs[i].Part] = true
	}
	for i := range b.c.Parts {
		p := &b.c.Parts[i]
		if needed[p] {
			b.r.taken[p.ID] = len(b.r.Lines)
			b.r.Lines = append(b.r.Lines, Line{Part: p, Each: b.mass(p)})
		}
	}
	for i := range b.r.Needs {
		n := &b.r.Needs[i]
		n.count()
		b.r.Find(n.Part.ID).Counted += n.Quantity
	}
	for i := range b.r.Lines {
		l := &b.r.Lines[i]
		l.Spare = Spares(l.Part, l.Counted)
	}
}

// mass is what one of a part weighs: of a top, what its tent makes it.
func (b *builder) mass(p *catalog.Part) unit.Mass {
	if m, ok := b.each[p.ID]; ok {
		return m
	}
	m, _ := b.c.Mass(p.ID)
	return m
}

// Spares is what is taken beyond a count: the part's percentage, rounded up,
// at least its minimum; none where nothing is counted.
func Spares(p *catalog.Part, counted int) int {
	if p.Spare == nil || counted == 0 {
		return 0
	}
	return max(p.Spare.Min, money.RoundUp(money.Percent(p.Spare.Percent).Mul(money.Int(counted))))
}
