package workbook

import (
	"fmt"

	"tentwright/catalog/unit"
	"tentwright/quote/anchor"
	"tentwright/workbook/sheet"
)

// windActions are what the crew does, at the gusts that the manager enters, and
// the force of the mean wind that goes with each.
func (l *layout) windActions(s *sheet.Sheet) {
	band(s, "What the crew does in wind", anchorPrinted)
	t := l.startTable(s, "action", append([]column{
		{"id", "Action", 0, sheet.Style{Role: sheet.Body, Bold: true}},
		{"gust", "At gusts of, " + l.sys.SpeedUnit(), 0, input(sheet.Num1)},
		{"mean", "Mean wind, " + l.sys.SpeedUnit(), 0, calc(sheet.Num1)},
		{"force", "Beaufort of mean", 0, calc(sheet.Whole)},
		{"state", "State", 0, stateStyle()},
		{"", "", 0, body(sheet.Text)},
		{"what", "What is done", 0, wrap()},
	}, fillers(anchorPrinted-7)...))
	l.spreadAction(s)
	for i := range l.q.Anchor.Actions {
		l.actionRow(t, &l.q.Anchor.Actions[i])
	}
	t.end()
	l.spreadAction(s)
	l.allowColumn(t, "gust", l.gusts(), "the gust at which the crew does this; the manager decides, below what the anchors are planned for")
	state := t.at("state", t.first)
	s.Highlights = append(s.Highlights, sheet.Highlight{Range: t.column("state"), Formula: "OR(" + state + "=" + quoted(actionLate) + "," + state + "=" + quoted(actionOpen) + ")", Role: sheet.Warn})
}

// gustFactor is the shop's; one that is only the demonstration's counts for no
// other shop, and is entered in its file.
func (l *layout) gustFactor(s *sheet.Sheet) {
	shop, factor := l.q.Catalog.Anchors, in(sheet.Cell{}, input(sheet.Num2))
	if shop.GustFactor.IsPositive() {
		factor.Value = float(shop.GustFactor)
	}
	if shop.GustDemo && !l.q.Catalog.Demo {
		factor = in(sheet.Cell{}, body(sheet.Num2))
	}
	l.term(s, "Gust, times the mean wind", factor, "the shop's gust factor; the mean below is the gust divided by it")
	l.cellName("wind_gust_factor", s, termCol)
	if !factor.Style.Role.Locked() {
		l.allow(s, len(s.Rows), termCol, sheet.Validation{Kind: sheet.Decimal, Min: "1", Max: "3", AllowBlank: true}, "how many times the mean wind the gust is; empty: no mean is shown")
	}
}

// Words for the state of a wind action.
const (
	actionSet  = "decided"
	actionOpen = "not decided"
	actionLate = "too late"
)

func (l *layout) spreadAction(s *sheet.Sheet) {
	spread(s, 5, 6)
	spread(s, 7, anchorPrinted)
}

// actionRow is one action. One at a gust above what is planned for comes too
// late.
func (l *layout) actionRow(t *table, a *anchor.Action) {
	row := t.next()
	at := func(id string) string { return t.at(id, row) }
	gust, state := in(value(nil), input(sheet.Num1)), actionOpen
	if a.Spec.Demo && !l.q.Catalog.Demo {
		gust.Style = body(sheet.Num1) // of the demonstration, and entered in the file
	}
	if a.Spec.Gust > 0 {
		gust.Value, state = a.Spec.Gust.In(l.sys), actionSet
		if a.Spec.Gust > l.q.Anchor.Gust {
			state = actionLate
		}
	}
	var mean, force any = "", ""
	if a.Mean > 0 {
		mean = a.Spec.Gust.In(l.sys) / float(l.q.Catalog.Anchors.GustFactor)
		force = a.Beaufort
	}
	mph := at("mean")
	if l.sys == unit.Metric {
		mph += fmt.Sprintf("*%v", unit.MetrePerSecond.MilesPerHour())
	}
	t.add(text(a.Spec.ID), gust, formula("IF(AND(N("+at("gust")+")>0,N(wind_gust_factor)>0),"+at("gust")+`/wind_gust_factor,"")`, mean),
		formula("IF(N("+at("mean")+")>0,MATCH(ROUND("+mph+`,0),beaufort_from,1)-1,"")`, force),
		formula("IF(N("+at("gust")+")>0,IF("+at("gust")+">wind_speed,"+quoted(actionLate)+","+quoted(actionSet)+"),"+quoted(actionOpen)+")", state),
		sheet.Cell{}, text(a.Spec.What))
	l.spreadAction(t.s)
}

// beaufortScale writes the least mean wind of each force, in whole miles per hour
// as it was published, whatever the shop's unit.
func (l *layout) beaufortScale(s *sheet.Sheet) {
	force := []sheet.Cell{in(text("Beaufort's scale"), sheet.Style{Role: sheet.Heading})}
	from := []sheet.Cell{in(text("mean from, mph"), wrap())}
	for n, least := range append([]int{0}, anchor.BeaufortFrom()...) {
		force = append(force, in(value(n), sheet.Style{Role: sheet.Heading, Align: sheet.Centre}))
		from = append(from, in(value(least), sheet.Style{Role: sheet.Body, Format: sheet.Whole, Align: sheet.Centre}))
	}
	s.Rows = append(s.Rows, sheet.Row{Cells: force}, sheet.Row{Cells: from})
	row := len(s.Rows)
	l.name("beaufort_from", s, sheet.Range{R1: row, C1: 2, R2: row, C2: len(from)}, "")
}
