package workbook

import (
	"fmt"
	"strings"

	"tentwright/catalog/unit"
	"tentwright/quote"
	"tentwright/quote/anchor"
	"tentwright/quote/tent"
	"tentwright/workbook/sheet"
)

// anchorWidths are those of the columns of the sheet, which its tables share;
// the widths are the legs', whose table is by far the longest.
var anchorWidths = []float64{10, 15, 9, 7.5, 7.5, 7.5, 8, 9.5, 7.5, 6.5, 7.5, 13.5, 21, 6.5, 7.5, 7, 7, 7.5, 8, 9, 8, 10, 20, 14, 26, 12}

// anchorPrinted is how many columns print; those behind them hold ids.
const anchorPrinted = 22

// anchorage lays out what holds each leg, beside what it must hold. Forces
// follow from the gust and what each anchor holds follows from the surface, so
// that a changed one shows at once; which anchors, and how many, is a search
// and stays as it was counted.
func (l *layout) anchorage() {
	if l.q.Anchor == nil || len(l.q.Anchor.Tents) == 0 {
		return
	}
	s := l.sheet(SheetAnchor, "What wind does at each leg, and what holds it there. Change the gust here, or a surface on Rates: what no longer holds turns red. Counts stay as they were until the job is quoted again.", sheet.TabCrew, true)
	for _, w := range anchorWidths {
		s.Columns = append(s.Columns, sheet.Column{Width: w})
	}
	l.unsettled(s)
	l.windActions(s)
	l.around(s)
	l.windTerms(s)
	l.windTents(s)
	l.estimate(s,
		"Goods that are stacked or hung under an open tent close it to the wind: plan such a tent with closed sides. On an open tent nothing but the slopes of its roof is counted as pushed sideways.",
		"What a stake holds is known from pulling it out of this ground and from nothing else: theory alone spans a factor of ten. Wet, frozen, filled or disturbed ground holds less than a test elsewhere.",
		"Have buried utilities marked before a stake is driven; wait for every mark. A leg that cannot be staked as written here is held otherwise before the top goes up.",
		"One reading of the wind is no forecast, and a mean is not a gust: have somebody watch both, and leave nobody under a tent beyond its limit.")
	l.stakeHolds(s)
	l.frictions(s)
	l.legTable(s)
	s.FreezeRows = 2
	s.PrintArea = &sheet.Range{R1: 1, C1: 1, R2: len(s.Rows), C2: anchorPrinted}
}

// unsettled says first what the figures below do not cover.
func (l *layout) unsettled(s *sheet.Sheet) {
	a := l.q.Anchor
	var lines []string
	for _, r := range a.Refused {
		who := "Every tent"
		if r.Tent != "" {
			who = l.labelOf(r.Tent)
		}
		lines = append(lines, who+": "+r.Why+". A licensed engineer must design it.")
	}
	for _, m := range a.Missing {
		lines = append(lines, "Not entered: "+m)
	}
	for _, line := range lines {
		l.anchorWords(s, line, sheet.Style{Role: sheet.Warn, Wrap: true})
	}
}

// anchorWords writes words over all printed columns, as high as they need.
func (l *layout) anchorWords(s *sheet.Sheet, words string, style sheet.Style) {
	cells := make([]sheet.Cell, anchorPrinted)
	for i := range cells {
		cells[i].Style = style
	}
	cells[0].Value = words
	const fits = 190 // characters of one line over the columns
	s.Rows = append(s.Rows, sheet.Row{Cells: cells, Height: float64(14 * (1 + len([]rune(words))/fits))})
	s.Merges = append(s.Merges, sheet.Range{R1: len(s.Rows), C1: 1, R2: len(s.Rows), C2: anchorPrinted})
}

// termCol is the column of the terms' figures, behind their labels.
const termCol = 4

// term writes a figure with its label before and what it means behind it.
func (l *layout) term(s *sheet.Sheet, label string, c sheet.Cell, explain string) {
	cells := make([]sheet.Cell, termCol+1)
	cells[0] = in(text(label), sheet.Style{Role: sheet.Label})
	cells[termCol-1] = c
	cells[termCol] = in(text(explain), sheet.Style{Role: sheet.Faint, Indent: 1})
	s.Rows = append(s.Rows, sheet.Row{Cells: cells})
}

// set is a term that people may change, under its name.
func (l *layout) set(s *sheet.Sheet, x setting) {
	l.term(s, x.label, in(value(x.value), input(x.format)), x.explain)
	l.cellName(x.name, s, termCol)
	l.allow(s, len(s.Rows), termCol, x.allow, x.explain)
}

// gusts are wind speeds in the shop's unit.
func (l *layout) gusts() sheet.Validation {
	return sheet.Validation{Kind: sheet.Decimal, Min: "1", Max: itoa(int(300 * unit.MilePerHour.In(l.sys)))}
}

// windTerms are what the whole calculation rests on.
func (l *layout) windTerms(s *sheet.Sheet) {
	a, shop := l.q.Anchor, l.q.Catalog.Anchors
	band(s, "Wind and safety", anchorPrinted)
	l.term(s, "Method", in(text(strings.ToUpper(a.Method[:1])+a.Method[1:]), sheet.Style{Role: sheet.Body}), "tables: "+a.Source)
	l.gustTerms(s)
	l.gustFactor(s)
	l.beaufortScale(s)
	terrain, explain := "at the roof", "the gust is that at the height of the roof; nothing is taken off it"
	if a.Terrain != nil {
		terrain, explain = a.Terrain.ID, a.Terrain.Name
	}
	l.term(s, "Terrain", in(text(terrain), sheet.Style{Role: sheet.Body}), explain)
	safety := sheet.Validation{Kind: sheet.Decimal, Min: "1", Max: "10"}
	l.set(s, setting{"wind_safety_stake", "Safety factor of stakes", "times what pulls at them", float(shop.Safety.Stake), sheet.Num2, safety})
	l.set(s, setting{"wind_safety_ballast", "Safety factor of ballast", "times what lifts and slides it", float(shop.Safety.Ballast), sheet.Num2, safety})
	l.term(s, "Own weight counted", in(value(float(shop.Safety.Dead)), sheet.Style{Role: sheet.Body, Format: sheet.PercentWhole}), "of what the tent weighs, against lift where no guy holds; the factors are on the wind alone, and a guyed leg counts on no weight")
}

// gustTerms are the gust and the limit. What the shop has not entered stays
// empty: a gust of this place stands in for the shop's, but nothing for its
// limit.
func (l *layout) gustTerms(s *sheet.Sheet) {
	a, each := l.q.Anchor, l.sys.SpeedUnit()
	shop, _ := l.q.Catalog.DesignGust()
	gusts := l.gusts()
	gusts.AllowBlank = true
	gust, speed, empty := any(nil), 0.0, "none, since the shop has not entered any"
	if a.Gust > 0 {
		gust = a.Gust.In(l.sys)
	}
	if shop > 0 {
		speed, empty = shop.In(l.sys), "the shop's, "+shop.Text(l.sys)
	}
	l.set(s, setting{"wind_gust", "Gust to plan for at this place, " + each, "at the height of the roof; empty: " + empty, gust, sheet.Num1, gusts})
	// An emptied cell must not count as no wind.
	l.term(s, "Gust that counts, "+each, in(formula(fmt.Sprintf("IF(N(wind_gust)>0,wind_gust,%v)", speed), a.Gust.In(l.sys)),
		sheet.Style{Role: sheet.Calc, Format: sheet.Num1, Bold: true}), "red above the shop's limit")
	l.cellName("wind_speed", s, termCol)
	row := len(s.Rows)
	s.Highlights = append(s.Highlights, sheet.Highlight{Range: sheet.Range{R1: row, C1: termCol, R2: row, C2: termCol}, Formula: "wind_speed>wind_limit", Role: sheet.Warn})
	if a.Limit <= 0 { // only the shop's file can give it
		l.term(s, "The shop's limit, "+each, in(value(nil), body(sheet.Num1)), "not entered; above it, a licensed engineer designs what holds")
		l.cellName("wind_limit", s, termCol)
		return
	}
	l.set(s, setting{"wind_limit", "The shop's limit, " + each, "above it, a licensed engineer designs what holds", a.Limit.In(l.sys), sheet.Num1, l.gusts()})
}

// stateStyle is the style of a word behind a figure.
func stateStyle() sheet.Style { return sheet.Style{Role: sheet.Calc, Indent: 1} }

// after is the style of words behind a figure.
func after() sheet.Style { return sheet.Style{Role: sheet.Body, Wrap: true, Indent: 1} }

// fillers are columns without a name, into which the words of the column before
// them are merged.
func fillers(n int) []column {
	all := make([]column, n)
	for i := range all {
		all[i].style = sheet.Style{Role: sheet.Body}
	}
	return all
}

// spread merges the cells from a column to another in the sheet's last row; the
// first of them has the words, and its look.
func spread(s *sheet.Sheet, from, to int) {
	row := &s.Rows[len(s.Rows)-1]
	for len(row.Cells) < to {
		row.Cells = append(row.Cells, sheet.Cell{})
	}
	for col := from; col < to; col++ {
		row.Cells[col] = sheet.Cell{Style: row.Cells[from-1].Style}
	}
	s.Merges = append(s.Merges, sheet.Range{R1: len(s.Rows), C1: from, R2: len(s.Rows), C2: to})
}

// force is a force in the shop's unit as cells show it.
func (l *layout) force(newtons float64) float64 { return l.sys.Force(newtons) }

// forceFormat shows whole pounds, or kilonewtons to ten newtons.
func (l *layout) forceFormat() sheet.Format {
	if l.sys == unit.Metric {
		return sheet.Num2
	}
	return sheet.Whole
}

// windTents has one row for each tent: its pressure, and the most that any of
// its anchors is asked for.
func (l *layout) windTents(s *sheet.Sheet) {
	band(s, "Tents", anchorPrinted)
	t := l.startTable(s, "roof", append([]column{
		{"name", "Tent", 0, wrap()},
		{"", "", 0, wrap()},
		{"sides", "Sides", 0, body(sheet.Text)},
		{"angle", "Roof angle, degrees", 0, body(sheet.Num1)},
		{"height", "Mean height, " + l.sys.LengthUnit(), 0, body(sheet.Num1)},
		{"down", "Down, times pressure", 0, body(sheet.Num2)},
		{"up", "Up, times pressure", 0, body(sheet.Num2)},
		{"per", l.sys.PressureUnit() + " at 1 " + l.sys.SpeedUnit(), 0, body(sheet.General)},
		{"pressure", "Pressure, " + l.sys.PressureUnit(), 0, calc(sheet.Num2)},
		{"dead", "Own weight, " + l.sys.ForceUnit(), 0, body(l.forceFormat())},
		{"use", "Most used", 0, calc(sheet.Percent)},
		{"held", "State", 0, stateStyle()},
		{"anchors", "Anchors of one such tent, as counted", 0, wrap()},
	}, append(fillers(anchorPrinted-13), column{"tent", "Tent id", 0, sheet.Style{Role: sheet.Key, Wrap: true}})...))
	spreadRoof(s)
	for i := range l.q.Anchor.Tents {
		l.windTent(t, &l.q.Anchor.Tents[i])
	}
	t.end()
	spreadRoof(s)
	state := t.at("held", t.first)
	for _, id := range []string{"use", "held"} {
		s.Highlights = append(s.Highlights, sheet.Highlight{Range: t.column(id), Formula: "AND(LEN(" + state + ")>0," + state + "<>" + quoted(legHolds) + ")", Role: sheet.Warn})
	}
}

// windTent is the row of one tent. Pressure grows with the square of the gust; of
// a tent for which nothing was computed it stays empty.
func (l *layout) windTent(t *table, w *anchor.Tent) {
	n, sides := t.line(), "open"
	if w.Blocked {
		sides = "blocked"
	}
	n.set("tent", text(w.ID))
	n.set("name", text(l.tentName(w.ID)))
	n.set("sides", text(sides))
	n.set("angle", value(w.Angle))
	n.set("height", value(lengthIn(w.Height, l.sys)))
	if w.Planned {
		step := unit.SpeedIn(1, l.sys).MetresPerSecond() // the gust of one of the shop's unit
		n.set("down", value(w.Down))
		n.set("up", value(w.Up))
		n.set("per", value(l.sys.Pressure(w.PerGust*step*step)))
		n.set("pressure", formula(n.at("per")+"*wind_speed^2", l.sys.Pressure(w.Pressure)))
		n.set("dead", value(l.force(w.Dead)))
		n.set("use", formula(useFormula(n.at("tent")), quote.GreatestUse(w)))
	}
	unheld := "COUNTIFS(leg_tent," + n.at("tent") + ",leg_state," + quoted(legUnknown) + ")"
	n.set("held", formula("IF("+unheld+">0,"+quoted(legUnknown)+",IF(ROUND("+n.at("use")+",8)>1,"+quoted(legOver)+","+quoted(legHolds)+"))", tentState(w)))
	n.set("anchors", text(l.anchorsOf(w)))
	n.add()
	spreadRoof(t.s)
}

// spreadRoof gives the words of a tent's row their room.
func spreadRoof(s *sheet.Sheet) {
	spread(s, 1, 2)
	spread(s, 13, anchorPrinted)
}

// tentOf is a tent of the quote; nil where it has none of that id.
func (l *layout) tentOf(id string) *tent.Tent {
	for i := range l.q.Parts.Tents {
		if t := &l.q.Parts.Tents[i]; t.Job.ID == id {
			return t
		}
	}
	return nil
}

// labelOf is how people call a tent.
func (l *layout) labelOf(id string) string {
	if t := l.tentOf(id); t != nil {
		return t.Label()
	}
	return id
}

// tentName is how people call a tent, and how many alike there are.
func (l *layout) tentName(id string) string {
	if many := l.q.Job.Tent(id).Many(); many > 1 {
		return fmt.Sprintf("%s (%d alike)", l.labelOf(id), many)
	}
	return l.labelOf(id)
}

// lengthIn is a length in feet or metres.
func lengthIn(v unit.Length, sys unit.System) float64 {
	if sys == unit.Metric {
		return v.Metres()
	}
	return v.Feet()
}

// useFormula is the greatest share of its capacity that any leg of a tent takes,
// of those whose capacity is known.
func useFormula(tent string) string {
	return "SUMPRODUCT(MAX((leg_tent=" + tent + ")*(leg_capacity>0)*leg_need/(leg_capacity+(leg_capacity<=0))))"
}

// anchorsOf tells the anchors of one tent in words.
func (l *layout) anchorsOf(w *anchor.Tent) string {
	if !w.Planned {
		return "by custom; nothing could be computed"
	}
	var names []string
	counts := map[string]int{}
	for i := range w.Legs {
		h := &w.Legs[i].Holding
		if h.Part == nil || h.Count == 0 {
			continue
		}
		if counts[h.Part.Name] == 0 {
			names = append(names, h.Part.Name)
		}
		counts[h.Part.Name] += h.Count
	}
	for i, name := range names {
		names[i] = fmt.Sprintf("%d %s", counts[name], name)
	}
	return strings.Join(names, "; ")
}
