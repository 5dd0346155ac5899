package workbook

import (
	"slices"
	"strconv"
	"strings"

	"tentwright/catalog/money"
	"tentwright/quote/lift"
	"tentwright/workbook/sheet"
)

// Words for what becomes of a lift or of raising a side.
const (
	liftMachine = "by machine"
	liftNone    = "no team: machine"
	liftCrew    = "crew too small"
	liftAbsent  = "not along"
	liftAlone   = "one person"
)

// wettest is the most that wet cloth may be said to weigh, times its dry weight.
const wettest = 3

// lifting lays out what is too heavy for one person, who lifts it, and how many
// people raise a side. What a wetter cloth or a changed order asks for follows
// at once; ways of lifting and shares of teams are the shop's file's.
func (l *layout) lifting(s *sheet.Sheet) {
	r := l.q.Lift
	if r == nil || l.q.Catalog.Crew == nil || l.q.Catalog.Crew.Lifting == nil && len(r.Raises) == 0 {
		return
	}
	s.Breaks = append(s.Breaks, len(s.Rows)+2) // the band begins a page
	if len(r.Raises) > 0 {
		l.raiseTable(s)
	}
	if l.q.Catalog.Crew.Lifting != nil {
		band(s, "Lifting", crewPrinted)
		l.liftGaps(s)
		l.liftTable(s)
		l.teamTable(s)
	}
	s.Rows = append(s.Rows, sheet.Row{})
	for _, line := range []string{
		"A limit is guidance for one healthy person who lifts with both hands in the open (NIOSH Publication 94-110). It is no law, holds for nobody who is tired, hurt or new to it, and is not multiplied by heads.",
		"What a team lifts is counted by a share of the shop's own, below the sum. Use machines, wheels and lift gates wherever they go; who lifts decides, and says no to what is too much.",
	} {
		s.Rows = append(s.Rows, sheet.Row{Cells: []sheet.Cell{in(text(line), sheet.Style{Role: sheet.Faint})}})
	}
}

// liftGaps says first what the figures below do not cover.
func (l *layout) liftGaps(s *sheet.Sheet) {
	var lines []string
	for _, m := range l.q.Lift.Missing {
		lines = append(lines, "Not entered: "+m+".")
	}
	if parts := l.q.Lift.Unjudged; len(parts) > 0 {
		var names []string
		for _, p := range parts {
			names = append(names, p.Name)
		}
		lines = append(lines, "Not judged, since the shop says no way of lifting that counts: "+strings.Join(names, "; ")+".")
	}
	for _, line := range lines {
		const fits = 170 // characters of one line over the columns
		row := sheet.Row{Cells: []sheet.Cell{in(text(line), sheet.Style{Role: sheet.Warn, Wrap: true})}, Height: float64(14 * (1 + len([]rune(line))/fits))}
		s.Rows = append(s.Rows, row)
		spread(s, 1, crewPrinted)
	}
}

// liftTable has one row for each part that one person should not lift, and for
// those that may become one by rain or by an order.
func (l *layout) liftTable(s *sheet.Sheet) {
	times := body(sheet.Num2)
	key := sheet.Style{Role: sheet.Key}
	t := l.startTable(s, "lift", []column{
		{"name", "Part", 0, wrap()},
		{"weight", "Lifted at once, " + l.sys.MassUnit(), 0, calc(sheet.Weight)},
		{"limit", "Limit of one, " + l.sys.MassUnit(), 0, calc(sheet.Weight)},
		{"index", "Times the limit", 0, sheet.Style{Role: sheet.Calc, Format: sheet.Num2, Bold: true}},
		{"people", "People", 0, sheet.Style{Role: sheet.Calc, Format: sheet.Whole, Bold: true}},
		{"crew", "Crew there", 0, calc(sheet.Whole)},
		{"how", "How it is lifted", 0, after()},
		{"horizontal", "Reach", 0, times}, {"vertical", "Height", 0, times}, {"distance", "Way up", 0, times},
		{"asymmetry", "Twist", 0, times}, {"frequency", "How often", 0, times}, {"coupling", "Grip", 0, times},
		{"state", "Note", 0, sheet.Style{Role: sheet.Calc, Wrap: true, Indent: 1}},
		{"part", "Part id", 0, key}, {"tags", "Tags", 0, key},
		{"each", "One, " + l.sys.MassUnit(), 0, body(sheet.Num2)}, {"holds", "At once", 0, body(sheet.Whole)},
		{"tare", "Pack, " + l.sys.MassUnit(), 0, body(sheet.Num2)}, {"along", "Along", 0, calc(sheet.Whole)},
	})
	for _, x := range l.heavies() {
		l.liftRow(t, x)
	}
	t.end()
	l.peopleMarks(t)
}

// heavies is the lifts that the sheet shows.
func (l *layout) heavies() []*lift.Lift {
	var list []*lift.Lift
	for i := range l.q.Lift.Lifts {
		list = append(list, &l.q.Lift.Lifts[i])
	}
	for i := range l.q.Lift.Others {
		x := &l.q.Lift.Others[i]
		if !x.How.Machine && (x.Limit <= 0 || x.WeightAt(money.Int(wettest), l.sys) > x.Limit) {
			list = append(list, x)
		}
	}
	return list
}

// liftRow writes what package lift computed as formulas: the limit from its
// multipliers, the index from both weights, the team from the index.
func (l *layout) liftRow(t *table, x *lift.Lift) {
	n := t.line()
	n.set("name", text(x.Part.Name))
	n.set("how", text(x.How.Name))
	n.set("part", text(x.Key))
	n.set("tags", text(tagText(x.Part.Tags)))
	n.set("each", value(x.Each.In(l.sys)))
	n.set("holds", value(x.Holds))
	n.set("tare", value(x.Tare.In(l.sys)))
	n.set("along", formula("SUMIFS(pick_quantity,pick_part,"+n.at("part")+")", x.Count))
	each := n.at("each")
	if x.Wet {
		each = "ROUND(" + each + "*rate_wet,2)"
	}
	n.set("weight", formula(each+"*"+n.at("holds")+"+"+n.at("tare"), x.Weight.In(l.sys)))
	windows, people := l.liftWindows(x), 0
	crew := l.smallestOf(windows)
	if crew > 0 {
		n.set("crew", formula(crewFormula(windows), crew))
	}
	if x.How.Machine {
		n.set("state", text(liftMachine))
	} else {
		l.liftTerms(n, x)
		if x.Count > 0 {
			people = x.People
		}
		n.set("people", formula(l.teamFormula(n), people))
		n.set("state", formula(stateFormula(n, crew > 0), liftState(x.Count, people, crew)))
	}
	n.add()
}

// liftTerms writes the multipliers and what follows from them.
func (l *layout) liftTerms(n *line, x *lift.Lift) {
	limit := strconv.FormatFloat(lift.Constant(l.sys).In(l.sys), 'f', -1, 64)
	for _, m := range []struct {
		id string
		v  float64
	}{{"horizontal", x.Terms.Horizontal}, {"vertical", x.Terms.Vertical}, {"distance", x.Terms.Distance},
		{"asymmetry", x.Terms.Asymmetry}, {"frequency", x.Terms.Frequency}, {"coupling", x.Terms.Coupling}} {
		n.set(m.id, value(m.v))
		limit += "*" + n.at(m.id)
	}
	n.set("limit", formula(limit, x.Limit.In(l.sys)))
	var index any = ""
	if x.Limit > 0 {
		index = x.Index
	}
	n.set("index", formula("IF("+n.at("limit")+">0,"+n.at("weight")+"/"+n.at("limit")+`,"")`, index))
}

// teamFormula is the smallest team of the table for an index: the row behind
// those that lift less. Behind the last row stands an empty one, which is no
// team. A part that does not go along asks for nobody.
func (l *layout) teamFormula(n *line) string {
	team := "0"
	if len(l.q.Lift.Team) > 0 {
		team = "N(INDEX(team_people,1+SUMPRODUCT((team_people>0)*(team_times<" + n.at("index") + "-0.000001))))"
	}
	return "IF(OR(" + n.at("along") + "<=0," + n.at("limit") + "<=0),0,IF(" + n.at("index") + "<=1.000001,1," + team + "))"
}

// stateFormula is what must be known of a lift by hand.
func stateFormula(n *line, crew bool) string {
	small := "IF(" + n.at("people") + "=1," + quoted(liftAlone) + `,"")`
	if crew {
		small = "IF(" + n.at("people") + ">" + n.at("crew") + "," + quoted(liftCrew) + "," + small + ")"
	}
	return "IF(" + n.at("along") + "<=0," + quoted(liftAbsent) + ",IF(" + n.at("people") + "=0," + quoted(liftNone) + "," + small + "))"
}

// liftState is stateFormula of the numbers; crew 0: no task says who lifts it.
func liftState(along, people, crew int) string {
	switch {
	case along <= 0:
		return liftAbsent
	case people == 0:
		return liftNone
	case crew > 0 && people > crew:
		return liftCrew
	case people == 1:
		return liftAlone
	}
	return ""
}

// liftWindows are the windows of the tasks that carry a part.
func (l *layout) liftWindows(x *lift.Lift) []string {
	var ids []string
	for i := range l.q.Labour.Tasks {
		task := &l.q.Labour.Tasks[i]
		tag, carries := l.q.Lift.Carries(task.Rule)
		if carries && (tag == "" || slices.Contains(x.Part.Tags, tag)) && !slices.Contains(ids, task.Window) {
			ids = append(ids, task.Window)
		}
	}
	return ids
}

// crewFormula is the smallest crew of some windows.
func crewFormula(windows []string) string {
	names := make([]string, len(windows))
	for i, id := range windows {
		names[i] = "window_" + ident(id) + "_crew"
	}
	return "MIN(" + strings.Join(names, ",") + ")"
}

// smallestOf is crewFormula of the numbers.
func (l *layout) smallestOf(windows []string) int {
	least := 0
	for i := range l.q.Labour.Windows {
		if w := &l.q.Labour.Windows[i]; slices.Contains(windows, w.Spec.ID) && (least == 0 || w.Crew < least) {
			least = w.Crew
		}
	}
	return least
}

// peopleMarks shows where nobody, or too few, can lift.
func (l *layout) peopleMarks(t *table) {
	state := t.at("state", t.first)
	for _, id := range []string{"people", "state"} {
		t.s.Highlights = append(t.s.Highlights, sheet.Highlight{Range: t.column(id),
			Formula: "OR(" + state + "=" + quoted(liftNone) + "," + state + "=" + quoted(liftCrew) + ")", Role: sheet.Warn})
	}
}

// teamTable has one row for each size of a team that the shop knows.
func (l *layout) teamTable(s *sheet.Sheet) {
	if len(l.q.Lift.Team) == 0 {
		return
	}
	t := l.startTable(s, "team", []column{
		{"people", "People together", 0, sheet.Style{Role: sheet.Body, Format: sheet.Whole, Align: sheet.Left}},
		{"share", "Share of the sum", 0, body(sheet.PercentWhole)},
		{"times", "Times one person", 0, calc(sheet.Num2)},
		{"source", "Source", 0, sheet.Style{Role: sheet.Body, Indent: 1}},
	})
	from, to := t.col("source"), t.col("source")+3
	spread(s, from, to)
	for i := range l.q.Lift.Team {
		x := &l.q.Lift.Team[i]
		n := t.line()
		n.set("people", value(x.People))
		n.set("share", value(float(x.Share)))
		n.set("times", formula(n.at("people")+"*"+n.at("share"), float(money.Int(x.People).Mul(x.Share))))
		n.set("source", text(x.Source))
		n.add()
		spread(s, from, to)
	}
	t.end()
	spread(s, from, to)
}

// liftFormulas gives the formula of the check that counts what no team lifts.
func (l *layout) liftFormulas(kind, _ string) (is, limit string, ok bool) {
	if kind == "lifts" {
		return "COUNTIF(lift_state," + quoted(liftNone) + ")", "", true
	}
	return "", "", false
}
