package catalog

import (
	"fmt"

	"tentwright/catalog/diag"
	"tentwright/catalog/money"
	"tentwright/catalog/source"
)

// checkPower checks the file, which the shop has.
func (k *checker) checkPower() {
	p := k.c.Power
	fuels := newKnown("fuel")
	addAll(k, fuels, "power.yaml", p.Fuels, func(f *Fuel) (string, source.Where) { return f.Item, f.Where })
	for i := range p.Fuels {
		k.items.want(k.list, p.Fuels[i].Item, p.Fuels[i].Where.Of("item"))
	}
	heaters, generators := newKnown("heater"), newKnown("generator")
	for i := range p.Heaters {
		h := &p.Heaters[i]
		k.powerItem(heaters, h.Item, h.Where)
		k.checkHeater(h, fuels)
	}
	for i := range p.Generators {
		g := &p.Generators[i]
		k.powerItem(generators, g.Item, g.Where)
		fuels.want(k.list, g.Fuel, g.Where.Of("fuel"))
		k.notBelow(g.Full, g.Idle, g.Where.Of("full"), "a generator burns %s an hour at full load and %s without; at least as much was expected")
	}
	if p.Drop != nil {
		k.notBelow(p.Drop.Whole, p.Drop.Branch, p.Drop.Where.Of("whole"), "the whole way may lose %s percent and a part of it %s; at least as much was expected")
	}
	if p.Light != nil {
		k.checkLight(p.Light)
	}
	k.checkCables(p)
	k.checkLoads(p)
}

// checkLight wants each use once, and known where the shop has a file of uses.
func (k *checker) checkLight(l *Light) {
	levels, uses := newKnown("use of light"), newKnown("use of floor")
	if k.c.Occupancy != nil {
		for i := range k.c.Occupancy.Uses {
			uses.ids[k.c.Occupancy.Uses[i].ID] = k.c.Occupancy.Uses[i].Where.Of("id")
		}
		uses.part = k.form.In("occupancy.yaml")
	}
	for i := range l.Uses {
		u := &l.Uses[i]
		levels.add(k.list, u.Use, u.Where.Of("use"))
		if k.c.Occupancy != nil {
			uses.want(k.list, u.Use, u.Where.Of("use"))
		}
	}
}

// powerItem wants an item of the price list, once in each list of the file.
func (k *checker) powerItem(kind *known, id string, at source.Where) {
	kind.add(k.list, id, at.Of("item"))
	k.items.want(k.list, id, at.Of("item"))
}

// checkCables wants a conductor for each cable, and a box for each feeder.
func (k *checker) checkCables(p *Power) {
	gauges, boxes, cables, plugs := newKnown("conductor"), newKnown("box"), newKnown("cable"), newKnown("plug")
	addAll(k, gauges, "power.yaml", p.Conductors, func(x *Conductor) (string, source.Where) { return x.Gauge, x.Where })
	plugs.part = k.form.In("power.yaml")
	for i := range p.Boxes {
		k.powerItem(boxes, p.Boxes[i].Item, p.Boxes[i].Where)
		plugs.ids[p.Boxes[i].Plug] = p.Boxes[i].Where.Of("plug")
	}
	for i := range p.Feeders {
		plugs.want(k.list, p.Feeders[i].Plug, p.Feeders[i].Where.Of("plug"))
	}
	for _, list := range [][]Cable{p.Feeders, p.Cords} {
		for i := range list {
			k.powerItem(cables, list[i].Item, list[i].Where)
			gauges.want(k.list, list[i].Gauge, list[i].Where.Of("gauge"))
		}
	}
}

// checkHeater wants a fuel of known energy, and no more heat out than goes in.
func (k *checker) checkHeater(h *Heater, fuels *known) {
	fuels.want(k.list, h.Fuel, h.Where.Of("fuel"))
	k.notBelow(h.Input, h.Output, h.Where.Of("input"), "a heater burns %s and gives %s; at least as much as it gives was expected")
	if f := k.c.Power.FuelOf(h.Fuel); f != nil && (f.Energy.IsZero() || f.Holds.IsZero()) && k.form.Sound(f.Where, "energy", "holds") {
		k.list.Add(diag.Problem{Pos: h.Where.Of("fuel"), Code: NoEnergy, Related: []diag.Pos{f.Where.Pos()},
			Message: fmt.Sprintf("heater %q burns %q, which says nothing of its energy; holds and energy of that fuel were expected", h.Item, h.Fuel)})
	}
}

// notBelow reports two figures of which the first must not be the smaller; zero
// is one that was not read.
func (k *checker) notBelow(most, least money.Number, pos diag.Pos, format string) {
	if most.LessThan(least) && !most.IsZero() {
		k.list.Addf(pos, PowerBelow, format, most, least)
	}
}

// checkLoads wants each load once. What a rule takes along is counted after the
// current is planned and so can be no load.
func (k *checker) checkLoads(p *Power) {
	loads, byRule := newKnown("load"), map[string]diag.Pos{}
	for i := range k.c.Rules {
		byRule[k.c.Rules[i].Part] = k.c.Rules[i].Where.Of("part")
	}
	for i := range p.Loads {
		l := &p.Loads[i]
		loads.add(k.list, l.Part, l.Where.Of("part"))
		k.parts.want(k.list, l.Part, l.Where.Of("part"))
		if pos, ok := byRule[l.Part]; ok && l.Part != "" {
			k.list.Add(diag.Problem{Pos: l.Where.Of("part"), Code: RuleLoad, Related: []diag.Pos{pos},
				Message: fmt.Sprintf("part %q takes current but a rule takes it along by itself; a part that items bring was expected", l.Part)})
		}
	}
}
