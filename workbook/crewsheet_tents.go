package workbook

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"tentwright/quote/tent"
	"tentwright/workbook/sheet"
)

// tents has one row for each kind of tent: what stands where it stands, how it
// is closed and how it is held.
func (c *crewSheet) tents() {
	tents := c.q.Parts.Tents
	if len(tents) == 0 {
		return
	}
	c.band("Tents", "")
	head := func(from, to int, words string) field {
		return span(from, to, in(text(words), sheet.Style{Role: sheet.Heading}))
	}
	c.line(crewRow, head(1, 1, "No."), head(2, 3, "Tent"), head(4, 7, "Kind, size and legs"), head(8, 11, "Sides and doors"), head(12, 14, "Held, each tent"))
	first := len(c.s.Rows) + 1
	for i := range tents[:min(len(tents), c.shown.tents)] {
		c.tentRow(&tents[i])
	}
	if len(tents) > c.shown.tents {
		c.moreTents(first)
	}
}

// tentRow is one kind of tent; the counts of its frame are values.
func (c *crewSheet) tentRow(t *tent.Tent) {
	number := sheet.Style{Role: sheet.Body, Format: sheet.Whole, Bold: true, Align: sheet.Centre}
	c.line(0, span(1, 1, in(formula(manyOf(t.Job.ID), t.Job.Many()), number)), span(2, 3, in(text(sheet.Short(t.Label(), 60/c.shown.cut)), wrap())),
		span(4, 7, in(text(c.frameWords(t)), wrap())), span(8, 11, in(text(sheet.Short(sideWords(t), twoLines/min(2, c.shown.cut))), wrap())),
		span(12, 14, in(text(sheet.Short(heldWords(t), twoLines/min(2, c.shown.cut))), wrap())))
}

// moreTents counts the tents that have no row.
func (c *crewSheet) moreTents(first int) {
	tents := c.q.Parts.Tents
	more := 0
	for i := range tents[c.shown.tents:] {
		more += tents[c.shown.tents+i].Job.Many()
	}
	where := SheetCounts
	if c.q.Anchor != nil {
		where = SheetAnchor
	}
	shown := sheet.Range{R1: first, C1: 1, R2: len(c.s.Rows), C2: 1}
	cell := formula(`"and "&(SUM(tents_ordered)-SUM(`+shown.String()+`))&" more: see `+where+`"`, fmt.Sprintf("and %d more: see %s", more, where))
	c.line(crewRow, span(1, crewSheetCols, in(cell, body(sheet.Text))))
}

// frameWords are the family, the size, and the legs with their height.
func (c *crewSheet) frameWords(t *tent.Tent) string {
	words := fmt.Sprintf("%s %s, %d legs of %s", t.Family.Name, t.Size.ID, len(t.Graph.Legs()), t.Leg.In(c.sys))
	if t.Ground != nil && t.Job.Ground != "" {
		words += ", on " + strings.ToLower(t.Ground.Name[:1]) + t.Ground.Name[1:]
	}
	return sheet.Short(words, twoLines/min(2, c.shown.cut))
}

// sideWords say how the sides are closed; those that are not named are open.
func sideWords(t *tent.Tent) string {
	var list []string
	open := 0
	for i := range t.Walls {
		w := &t.Walls[i]
		var what []string
		switch {
		case slices.Contains(t.Shared, w.Side):
			what = append(what, "gutter")
		case w.Spec != nil:
			what = append(what, w.Spec.Kind)
		case len(w.Doors) == 0:
			open++
			continue
		}
		what = append(what, doorWords(w)...)
		list = append(list, w.Side+" "+strings.Join(what, ", "))
	}
	switch {
	case open == len(t.Walls):
		return "all sides open"
	case open > 0:
		list = append(list, "else open")
	}
	return strings.Join(list, "; ")
}

// doorWords count the doors of a side by their kinds.
func doorWords(w *tent.Wall) []string {
	var kinds []string
	many := map[string]int{}
	for _, d := range w.Doors {
		if many[d.Kind] == 0 {
			kinds = append(kinds, d.Kind)
		}
		many[d.Kind]++
	}
	for i, kind := range kinds {
		kinds[i] = kind + " door"
		if n := many[kind]; n > 1 {
			kinds[i] = itoa(n) + " " + kind + " doors"
		}
	}
	return kinds
}

// fewKinds is how many kinds of legs are named one by one.
const fewKinds = 2

// heldWords say how many legs have how many stakes or pieces of ballast, those of
// most legs first; of many kinds the sums, with the least and the most of a leg.
func heldWords(t *tent.Tent) string {
	legs := map[tent.Held]int{}
	for _, h := range t.Legs {
		legs[h]++
	}
	var kinds []tent.Held
	for h := range legs {
		kinds = append(kinds, h)
	}
	if len(kinds) > fewKinds {
		return strings.Join(slices.Concat(rangeWords(t.Legs, "stakes", func(h tent.Held) int { return h.Stakes }),
			rangeWords(t.Legs, "ballast", func(h tent.Held) int { return h.Ballast })), "; ")
	}
	slices.SortFunc(kinds, func(a, b tent.Held) int {
		return cmp.Or(cmp.Compare(legs[b], legs[a]), cmp.Compare(b.Stakes, a.Stakes), cmp.Compare(b.Ballast, a.Ballast))
	})
	var list []string
	for _, h := range kinds {
		at := itoa(legs[h]) + " legs"
		if legs[h] == 1 {
			at = "1 leg"
		}
		list = append(list, anchorWords(h)+" at "+at)
	}
	return strings.Join(list, "; ")
}

// rangeWords are the anchors of one kind on all legs that have any; none where no
// leg has.
func rangeWords(legs []tent.Held, what string, of func(tent.Held) int) []string {
	sum, least, most := 0, 0, 0
	for _, h := range legs {
		n := of(h)
		if n == 0 {
			continue
		}
		if sum == 0 || n < least {
			least = n
		}
		sum, most = sum+n, max(most, n)
	}
	switch {
	case sum == 0:
		return nil
	case least == most:
		return []string{fmt.Sprintf("%d %s, %d a leg", sum, what, most)}
	}
	return []string{fmt.Sprintf("%d %s, %d to %d a leg", sum, what, least, most)}
}

// anchorWords are the anchors of one leg.
func anchorWords(h tent.Held) string {
	var what []string
	switch {
	case h.Stakes == 1:
		what = append(what, "1 stake")
	case h.Stakes > 1:
		what = append(what, itoa(h.Stakes)+" stakes")
	}
	if h.Ballast > 0 {
		what = append(what, itoa(h.Ballast)+" ballast")
	}
	if len(what) == 0 {
		return "nothing"
	}
	return strings.Join(what, " and ")
}
