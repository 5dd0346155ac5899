package workbook

import (
	"fmt"
	"math"
	"slices"

	"tentwright/catalog"
	"tentwright/quote/anchor"
	"tentwright/workbook/sheet"
)

// used is the stakes with their ways, and the ballast, that hold some leg, in
// the order of the shop's file.
func (l *layout) used() (stakes []stakeWay, ballast []*catalog.BallastPiece) {
	seen := map[any]bool{}
	for i := range l.q.Anchor.Tents {
		for k := range l.q.Anchor.Tents[i].Legs {
			h := &l.q.Anchor.Tents[i].Legs[k].Holding
			switch h.Way {
			case anchor.Guyed, anchor.Upright:
				seen[stakeWay{h.Stake, h.Way}] = true
			case anchor.Weight:
				seen[h.Ballast] = true
			}
		}
	}
	shop := l.q.Catalog.Anchors
	for i := range shop.Stakes {
		for _, way := range []string{anchor.Guyed, anchor.Upright} {
			if x := (stakeWay{&shop.Stakes[i], way}); seen[x] {
				stakes = append(stakes, x)
			}
		}
	}
	for i := range shop.Ballast {
		if seen[&shop.Ballast[i]] {
			ballast = append(ballast, &shop.Ballast[i])
		}
	}
	return stakes, ballast
}

// stakeWay is a stake as it is loaded.
type stakeWay struct {
	stake *catalog.Stake
	way   string
}

// loaded is how the shop's pull tests call the way.
func (x stakeWay) loaded() string {
	if x.way == anchor.Upright {
		return "upright"
	}
	return "guy"
}

// key is that of what the stake holds on a surface.
func (x stakeWay) key(surface string) string {
	return x.stake.ID + ":" + surface + ":" + x.loaded()
}

// surfaces are the options of the site's surface.
func (l *layout) surfaces() []catalog.SiteOption {
	if f := l.q.Catalog.SiteFactor(catalog.Surface); f != nil {
		return f.Options
	}
	return nil
}

// stakeHolds has what one stake holds in each ground of which the shop knows
// it. A pull test is an input; a table's figure is not.
func (l *layout) stakeHolds(s *sheet.Sheet) {
	stakes, _ := l.used()
	if len(stakes) == 0 {
		return
	}
	band(s, "What one stake holds", anchorPrinted)
	t := l.startTable(s, "hold", wideTable([]column{
		{"stake", "Stake", 0, sheet.Style{Role: sheet.Key, Wrap: true}},
		{"surface", "Surface", 0, body(sheet.Text)},
		{"way", "Loaded", 0, body(sheet.Text)},
		{"pull", "Pull, " + l.sys.MassUnit(), 0, body(sheet.Weight)},
		{"factor", "Times", 0, body(sheet.Num2)},
		{"force", "Each, " + l.sys.ForceUnit(), 0, calc(l.forceFormat())},
	}))
	l.spreadHold(s)
	for _, x := range stakes {
		for _, o := range l.surfaces() {
			l.stakeRow(t, x, &o)
		}
	}
	t.end()
	l.spreadHold(s)
	l.allowColumn(t, "pull", amounts(), "the least pull of the shop's own series of tests, in "+l.sys.MassUnit()+"; without the safety factor")
}

// stakeRow is one stake in one ground, where anything is known of it. Of several
// tests the least holds, so that no other can raise it above the next.
func (l *layout) stakeRow(t *table, x stakeWay, ground *catalog.SiteOption) {
	each, basis, ok := anchor.Strength(l.q.Catalog, x.stake, ground, x.way)
	if !ok || each <= 0 {
		return
	}
	row := t.next()
	pull, term, factor := sheet.Cell{}, t.at("pull", row), 0.0
	if tests := anchor.Tests(l.q.Catalog, x.stake.ID, ground.ID, x.loaded()); len(tests) > 0 {
		pull = in(value(tests[0].Pull.In(l.sys)), input(sheet.Weight))
		if len(tests) > 1 {
			term = fmt.Sprintf("MIN(%s,%v)", term, tests[1].Pull.In(l.sys))
		}
		// From a weight to its force, without the noise of a quotient.
		factor = math.Round(l.force(each)/pull.Value.(float64)*1e9) / 1e9
	} else {
		pull = in(value(l.q.Catalog.Anchors.Holdfast.Pull.In(l.sys)), body(sheet.Weight))
		factor = l.force(each) / pull.Value.(float64)
	}
	l.addHold(t, text(x.stake.ID), text(ground.ID), text(x.loaded()), pull, value(factor),
		formula(term+"*"+t.at("factor", row), l.force(each)), text(l.drivenAs(x)), text(basis), text(x.key(ground.ID)))
}

// drivenAs tells the crew which stake it is and how it stands in the ground.
func (l *layout) drivenAs(x stakeWay) string {
	rake := "driven upright"
	if x.stake.Rake.IsPositive() && x.way == anchor.Guyed {
		rake = fmt.Sprintf("driven %s degrees from upright, top away from the tent", x.stake.Rake)
	}
	return fmt.Sprintf("%s, %s in the ground, %s", l.partName(x.stake.Part), x.stake.Driven.In(l.sys), rake)
}

// Where the words of what is held by, and from where it is known, begin in the
// tables of stakes and ballast; their keys stand behind what prints.
const (
	holdName  = 7
	holdBasis = 13
)

// wideTable is a table's columns with those words and its key behind them.
func wideTable(cols []column) []column {
	cols = append(cols, column{"name", "Name", 0, after()})
	cols = append(cols, fillers(holdBasis-1-len(cols))...)
	cols = append(cols, column{"basis", "From", 0, wrap()})
	cols = append(cols, fillers(anchorPrinted-len(cols))...)
	return append(cols, column{"key", "Key", 0, sheet.Style{Role: sheet.Key, Wrap: true}})
}

// addHold writes a row of such a table: its figures, then name, basis and key.
func (l *layout) addHold(t *table, cells ...sheet.Cell) {
	n, figures := t.line(), len(cells)-3
	for i, c := range cells[:figures] {
		n.cells[i] = c
	}
	n.set("name", cells[figures])
	n.set("basis", cells[figures+1])
	n.set("key", cells[figures+2])
	n.add()
	l.spreadHold(t.s)
}

// spreadHold gives the words of the last row their room.
func (l *layout) spreadHold(s *sheet.Sheet) {
	spread(s, holdName, holdBasis-1)
	spread(s, holdBasis, anchorPrinted)
}

// partName is the name of a part; its id where the shop has none of it.
func (l *layout) partName(id string) string {
	if p := l.q.Catalog.Part(id); p != nil {
		return p.Name
	}
	return id
}

// frictions has the friction of each kind of ballast on each surface of which
// the shop knows it.
func (l *layout) frictions(s *sheet.Sheet) {
	_, ballast := l.used()
	if len(ballast) == 0 {
		return
	}
	band(s, "What ballast holds", anchorPrinted)
	t := l.startTable(s, "friction", wideTable([]column{
		{"ballast", "Ballast", 0, sheet.Style{Role: sheet.Key, Wrap: true}},
		{"surface", "Surface", 0, body(sheet.Text)},
		{"mu", "Friction", 0, input(sheet.Num2)},
		{"weight", "Each, " + l.sys.ForceUnit(), 0, body(l.forceFormat())},
		{"", "", 0, body(sheet.Text)}, {"", "", 0, body(sheet.Text)},
	}))
	l.spreadHold(s)
	for _, b := range ballast {
		for _, o := range l.surfaces() {
			if all := anchor.Frictions(l.q.Catalog, b.ID, o.ID); len(all) > 0 {
				l.addHold(t, text(b.ID), text(o.ID), value(float(all[0].Mu)), value(l.force(l.weighs(b))), sheet.Cell{}, sheet.Cell{},
					text(l.partName(b.Part)), text(all[0].Source), text(b.ID+":"+o.ID))
			}
		}
	}
	t.end()
	l.spreadHold(s)
	l.allowColumn(t, "mu", sheet.Validation{Kind: sheet.Decimal, Min: "0.01", Max: "2"}, "friction of this ballast on this surface; wet and dirty ground has less")
}

// weighs is what a full piece of ballast weighs, in newtons, as it was counted.
func (l *layout) weighs(b *catalog.BallastPiece) float64 {
	for i := range l.q.Anchor.Tents {
		legs := l.q.Anchor.Tents[i].Legs
		if at := slices.IndexFunc(legs, func(g anchor.Leg) bool { return g.Holding.Way == anchor.Weight && g.Holding.Ballast == b }); at >= 0 {
			return legs[at].Holding.Each
		}
	}
	return 0
}
