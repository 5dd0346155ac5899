package workbook

import (
	"slices"
	"strings"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote"
	"tentwright/quote/anchor"
	"tentwright/quote/tent"
	"tentwright/workbook/sheet"
)

// Words for the state of a leg.
const (
	legHolds   = "holds"
	legOver    = "over"
	legUnknown = "not known"
)

// legTable has one row for each leg. It stands last, since it is by far the
// longest.
func (l *layout) legTable(s *sheet.Sheet) {
	s.Breaks = append(s.Breaks, len(s.Rows)+2) // the band begins a page
	band(s, "Legs", anchorPrinted)
	force := l.sys.ForceUnit()
	legKey := sheet.Style{Role: sheet.Key, Wrap: true}
	t := l.startTable(s, "leg", []column{
		{"label", "Tent", 0, wrap()},
		{"name", "Leg", 0, wrap()},
		{"surface", "Surface", 0, calc(sheet.Text)},
		{"lift_area", "Lift area, " + l.sys.AreaUnit(), 0, body(sheet.Num1)},
		{"side_area", "Side area, " + l.sys.AreaUnit(), 0, body(sheet.Num1)},
		{"dead", "Own weight counted, " + force, 0, body(l.forceFormat())},
		{"up", "Lift, " + force, 0, calc(l.forceFormat())},
		{"side", "Sideways, " + force, 0, calc(l.forceFormat())},
		{"rise", "Guy rise, " + l.sys.LengthUnit(), 0, body(sheet.Num1)},
		{"run", "Guy run, " + l.sys.LengthUnit(), 0, body(sheet.Num1)},
		{"pull", "Pull, " + force, 0, calc(l.forceFormat())},
		{"way", "Held by", 0, after()},
		{"anchor", "Anchor", 0, wrap()},
		{"count", "Count", 0, sheet.Style{Role: sheet.Body, Format: sheet.Whole, Bold: true}},
		{"least", "Least by custom", 0, body(sheet.Whole)},
		{"each", "Each, " + force, 0, calc(l.forceFormat())},
		{"group", "In a group, times", 0, body(sheet.Num2)},
		{"mu", "Friction", 0, calc(sheet.Num2)},
		{"need", "Needed, " + force, 0, calc(l.forceFormat())},
		{"capacity", "Capacity, " + force, 0, calc(l.forceFormat())},
		{"use", "Used", 0, sheet.Style{Role: sheet.Calc, Format: sheet.Percent, Bold: true}},
		{"state", "State", 0, stateStyle()},
		{"sides", "Sides", 0, wrap()}, {"kind", "Kind", 0, legKey}, {"key", "Key", 0, legKey}, {"tent", "Tent id", 0, legKey},
	})
	s.TitleRows = [2]int{t.first - 1, t.first - 1}
	for i := range l.q.Anchor.Tents {
		w := &l.q.Anchor.Tents[i]
		for _, k := range l.walked(w) {
			l.legRow(t, w, &w.Legs[k])
		}
	}
	t.end()
	l.legMarks(t)
}

// legMarks shows what no longer holds.
func (l *layout) legMarks(t *table) {
	state := t.at("state", t.first)
	for _, id := range []string{"use", "state"} {
		t.s.Highlights = append(t.s.Highlights,
			sheet.Highlight{Range: t.column(id), Formula: "OR(" + state + "=" + quoted(legOver) + "," + state + "=" + quoted(legUnknown) + ")", Role: sheet.Warn})
	}
	each := t.at("each", t.first)
	t.s.Highlights = append(t.s.Highlights,
		sheet.Highlight{Range: t.column("each"), Formula: "AND(LEN(" + t.at("key", t.first) + ")>0," + each + "<=0)", Role: sheet.Warn})
}

// legRow writes what package anchor computed for a leg as formulas. The area is
// that by which a pressure becomes this leg's force.
func (l *layout) legRow(t *table, w *anchor.Tent, g *anchor.Leg) {
	h, n := &g.Holding, t.line()
	n.set("label", text(l.labelOf(w.ID)))
	n.set("tent", text(w.ID))
	n.set("name", text(g.Name))
	surface, grounds := l.legGrounds(n, w, g)
	n.set("surface", surface)
	if w.Planned { // else nothing was computed, and no nought stands for it
		l.legForces(n, g)
	}
	n.set("way", text(h.Way))
	if h.Part != nil {
		n.set("anchor", text(h.Part.Name))
	}
	n.set("count", value(h.Count))
	n.set("least", value(h.Least))
	l.legHolding(n, h, grounds)
	n.set("sides", text(strings.Join(g.Sides, ", ")))
	n.set("key", text(w.ID+":"+g.Name))
	n.add()
}

// legForces writes what wind does at a leg.
func (l *layout) legForces(n *line, g *anchor.Leg) {
	pressure := find("roof_pressure", "roof_tent", n.at("tent"))
	n.set("lift_area", value(unit.Area(g.UpArea).In(l.sys)))
	n.set("side_area", value(unit.Area(g.SideArea).In(l.sys)))
	if g.Guys == 0 { // where a guy holds it is not counted on
		n.set("dead", value(l.force(g.Dead)))
	}
	n.set("up", formula(n.at("lift_area")+"*"+pressure, l.force(g.Up)))
	n.set("side", formula(n.at("side_area")+"*"+pressure, l.force(g.Side)))
	n.set("pull", formula(pullFormula(n, g), l.force(g.Pull)))
	if g.Run > 0 {
		n.set("rise", value(lengthIn(unit.FromMetres(g.Rise), l.sys)))
		n.set("run", value(lengthIn(unit.FromMetres(g.Run), l.sys)))
	}
}

// pullFormula is what pulls along the guy: the greater of the lift over its sine
// and the sideways force over its cosine, both from its rise and run. Without a
// guy both pull at the foot and are counted in full.
func pullFormula(n *line, g *anchor.Leg) string {
	if g.Run <= 0 {
		return n.at("up") + "+" + n.at("side")
	}
	long := "SQRT(" + n.at("rise") + "^2+" + n.at("run") + "^2)"
	return "MAX(" + n.at("up") + "*" + long + "/" + n.at("rise") + "," + n.at("side") + "*" + long + "/" + n.at("run") + ")"
}

// legHolding writes what is needed and what holds. Nothing is known of a kind
// of anchor on a surface that the tables above do not have: it holds nothing.
func (l *layout) legHolding(n *line, h *anchor.Holding, grounds []string) {
	if h.Way == anchor.Custom {
		n.set("state", text(legUnknown))
		return
	}
	lookup := func(column, keys, end string) string {
		var terms []string
		for _, ground := range grounds {
			terms = append(terms, "IFERROR("+find(column, keys, n.at("kind")+`&":"&`+ground+end)+",0)")
		}
		if len(terms) == 1 {
			return terms[0]
		}
		return "MIN(" + strings.Join(terms, ",") + ")"
	}
	each, need := "", ""
	if h.Way == anchor.Weight {
		n.set("kind", text(h.Ballast.ID))
		n.set("mu", formula(lookup("friction_mu", "friction_key", ""), h.Mu))
		each = lookup("friction_weight", "friction_key", "")
		need = "MAX(0,wind_safety_ballast*(" + n.at("up") + "+IF(" + n.at("mu") + ">0," + n.at("side") + "/" + n.at("mu") + "," + n.at("side") + "))-" + n.at("dead") + ")"
	} else {
		n.set("kind", text(h.Stake.ID))
		each = lookup("hold_force", "hold_key", "&"+quoted(":"+stakeWay{h.Stake, h.Way}.loaded()))
		need = "wind_safety_stake*" + n.at("pull")
		if h.Way == anchor.Upright {
			need = "MAX(0,wind_safety_stake*" + n.at("up") + "-" + n.at("dead") + ")+wind_safety_stake*" + n.at("side")
		}
	}
	n.set("each", formula(each, l.force(h.Each)))
	n.set("group", value(h.Group))
	n.set("need", formula(need, l.force(h.Need)))
	n.set("capacity", formula(n.at("count")+"*"+n.at("each")+"*"+n.at("group"), l.force(h.Capacity)))
	l.legUse(n, h)
}

// legUse writes how much of the capacity is needed, and the word for it.
func (l *layout) legUse(n *line, h *anchor.Holding) {
	var use any = ""
	if h.Capacity > 0 {
		use = h.Use()
	}
	has := "IF(" + n.at("capacity") + ">0,"
	n.set("use", formula(has+n.at("need")+"/"+n.at("capacity")+`,"")`, use))
	n.set("state", formula(has+"IF(ROUND("+n.at("need")+"/"+n.at("capacity")+",8)>1,"+quoted(legOver)+","+quoted(legHolds)+"),IF("+n.at("need")+">0,"+quoted(legUnknown)+","+quoted(legHolds)+"))", legState(h)))
}

// legState tells in a word whether what holds a leg is enough.
func legState(h *anchor.Holding) string {
	switch {
	case quote.Unheld(h):
		return legUnknown
	case h.Over():
		return legOver
	}
	return legHolds
}

// tentState is the state of a tent by that of its legs.
func tentState(w *anchor.Tent) string {
	state := legHolds
	for i := range w.Legs {
		switch legState(&w.Legs[i].Holding) {
		case legUnknown:
			return legUnknown
		case legOver:
			state = legOver
		}
	}
	return state
}

// legGrounds is the ground under a leg, as a cell and as the terms of formulas:
// the degree that is chosen on Rates, or a fixed one where the job gives the
// side ground of its own. A corner between both is held by the weaker one.
func (l *layout) legGrounds(n *line, w *anchor.Tent, g *anchor.Leg) (sheet.Cell, []string) {
	if g.Surface == nil {
		return text(""), []string{n.at("surface")}
	}
	t := l.tentOf(w.ID)
	if t == nil {
		return text(g.Surface.ID), []string{n.at("surface")}
	}
	name := l.surfaceName(t)
	fixed, chosen := false, len(g.Sides) == 0
	for _, side := range g.Sides {
		if g.Holding.Way == anchor.Guyed && (slices.Contains(t.Shared, side) || !t.MayStakeAt(side)) {
			continue // no guy runs out there
		}
		ask := t.Job.Side(side)
		own := ask != nil && ask.Ground != ""
		fixed, chosen = fixed || own, chosen || !own
	}
	switch {
	case name == "" || !chosen:
		return text(g.Surface.ID), []string{n.at("surface")}
	case fixed:
		return text(g.Surface.ID), []string{n.at("surface"), name}
	}
	return formula(name, g.Surface.ID), []string{n.at("surface")}
}

// surfaceName is the name of the input that tells a tent's ground.
func (l *layout) surfaceName(t *tent.Tent) string {
	own := ""
	if t.Job.Ground != "" {
		own = t.Job.ID
	}
	for i := range l.q.Labour.Sites {
		if site := &l.q.Labour.Sites[i]; site.Factor.ID == catalog.Surface && site.Tent == own {
			return "site_" + ident(site.Key) + "_degree"
		}
	}
	return ""
}
