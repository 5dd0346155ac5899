package workbook

import (
	"fmt"
	"strings"

	"tentwright/quote/anchor"
	"tentwright/workbook/sheet"
)

// Columns of the sheet at which the words of the table of sides begin.
const (
	aroundSide   = 3
	aroundLegs   = 5
	aroundAnchor = 13
	aroundTotal  = 19
	aroundTick   = 20
)

// around is what a crew lead reads while walking round each tent: side by side,
// the legs by their numbers and how many anchors each gets.
func (l *layout) around(s *sheet.Sheet) {
	band(s, "Anchors to set, by side: leg number and how many there", anchorPrinted)
	cols := []column{{"tent", "Tent", 0, wrap()}, {}, {"side", "Side", 0, wrap()}, {}, {"legs", "Leg: anchors", 0, wrap()}}
	for len(cols) < aroundAnchor-1 {
		cols = append(cols, column{})
	}
	cols = append(cols, column{"anchor", "Kind", 0, wrap()})
	for len(cols) < aroundTotal-1 {
		cols = append(cols, column{})
	}
	cols = append(cols, column{"total", "Total", 0, sheet.Style{Role: sheet.Body, Format: sheet.Whole, Bold: true}},
		column{"", "Set", 0, sheet.Style{Role: sheet.Body, Align: sheet.Centre}}, column{}, column{})
	t := l.startTable(s, "around", cols)
	spreadAround(s)
	for i := range l.q.Anchor.Tents {
		for _, r := range l.aroundTent(&l.q.Anchor.Tents[i]) {
			l.aroundRow(t, &r)
		}
	}
	t.end()
	spreadAround(s)
}

// spreadAround gives the words of the last row their room.
func spreadAround(s *sheet.Sheet) {
	spread(s, 1, aroundSide-1)
	spread(s, aroundSide, aroundLegs-1)
	spread(s, aroundLegs, aroundAnchor-1)
	spread(s, aroundAnchor, aroundTotal-1)
	spread(s, aroundTick, anchorPrinted)
}

// stretch is the anchors of one kind along one side of a tent.
type stretch struct {
	tent, side, kind string
	legs             []string
	total            int
}

// aroundTent lists the stretches of a tent in the order of a walk. A corner
// belongs to the side that it begins.
func (l *layout) aroundTent(w *anchor.Tent) []stretch {
	t := l.tentOf(w.ID)
	var all []stretch
	for n, k := range l.walked(w) {
		g := &w.Legs[k]
		side, kind := "", kindOf(&g.Holding)
		if t != nil {
			side = t.WalkSide(k)
		}
		at := len(all) - 1
		for at >= 0 && (all[at].side != side || all[at].kind != kind) {
			at--
		}
		if at < 0 {
			at = len(all)
			all = append(all, stretch{tent: l.tentName(w.ID), side: side, kind: kind})
		}
		r := &all[at]
		r.legs = append(r.legs, fmt.Sprintf("%d: %d", n+1, g.Holding.Count))
		r.total += g.Holding.Count
	}
	return all
}

// walked is the legs of a tent in the order of a walk, by their place in it.
func (l *layout) walked(w *anchor.Tent) []int {
	if t := l.tentOf(w.ID); t != nil {
		return t.Walk()
	}
	all := make([]int, len(w.Legs))
	for i := range all {
		all[i] = i
	}
	return all
}

// kindOf names an anchor and how it holds.
func kindOf(h *anchor.Holding) string {
	name := "by custom"
	if h.Part != nil {
		name = h.Part.Name
		switch h.Way {
		case anchor.Upright:
			name += ", upright through the base plate"
		case anchor.Custom:
			name += ", by custom"
		}
	}
	return name
}

// aroundRow writes one stretch, as high as its words need.
func (l *layout) aroundRow(t *table, r *stretch) {
	const fits = 62 // characters of one line over the columns of the legs
	legs := strings.Join(r.legs, ", ")
	n := t.line()
	n.set("tent", text(r.tent))
	n.set("side", text(r.side))
	n.set("legs", text(legs))
	n.set("anchor", text(r.kind))
	n.set("total", value(r.total))
	n.cells[aroundTick-1] = text(emptyBox)
	n.add()
	t.s.Rows[len(t.s.Rows)-1].Height = float64(16 * (1 + len(legs)/fits))
	spreadAround(t.s)
}
