package workbook

import (
	"strings"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/egress"
	"tentwright/quote/parts"
	"tentwright/workbook/sheet"
)

// halls holds the exits of each tent against those that its people need.
func (o *occupancySheet) halls() {
	wide, area := o.m.WidthUnit(), o.l.sys.AreaUnit()
	band(o.s, "Exits by tent, of one tent", occupancyCols)
	t := o.l.startTable(o.s, "hall", []column{
		{"tent", "Tent", 0, sheet.Style{Role: sheet.Key, Wrap: true}},
		{"name", "Name and size", 0, wrap()},
		{"many", "Tents", 0, calc(sheet.Whole)},
		{"area", "Floor, " + area, 0, body(sheet.Num2)},
		{"people", "People", 0, calc(sheet.Whole)},
		{"guests", "Of these guests", 0, calc(sheet.Whole)},
		{"need", "Exits wanted", 0, calc(sheet.Whole)},
		{"least", "Each at least, " + wide, 0, calc(sheet.General)},
		{"have", "Exits that wide", 0, calc(sheet.Whole)},
		{"width", "Width wanted, " + wide, 0, calc(sheet.Num1)},
		{"has", "Width of those, " + wide, 0, calc(sheet.Num1)},
		{"sides", "Sides with one", 0, calc(sheet.Whole)},
		{"allow", "People let out", 0, calc(sheet.Whole)},
		{"out", "Guests let out", 0, calc(sheet.Whole)},
	})
	for i := range o.e.Tents {
		o.hallRow(t, &o.e.Tents[i])
	}
	t.end()
	red := func(id, formula string) {
		o.s.Highlights = append(o.s.Highlights, sheet.Highlight{Range: t.column(id), Formula: formula, Role: sheet.Warn})
	}
	at := func(id string) string { return t.at(id, t.first) }
	red("have", at("have")+"<"+at("need"))
	red("has", at("has")+"<"+at("width"))
	red("sides", at("sides")+"<"+apartFormula(&o.e.Code.Exits, at("need")))
	red("out", at("out")+"<"+at("guests"))
}

// apartFormula is ExitTable.Sides of the exits that a cell tells.
func apartFormula(x *catalog.ExitTable, exits string) string {
	if x.ApartFrom == 0 {
		return "0"
	}
	return "IF(" + exits + "<" + itoa(x.ApartFrom) + ",0," + itoa(x.Sides(x.ApartFrom)) + ")"
}

// hallRow makes egress.Build's figures of a tent again.
func (o *occupancySheet) hallRow(t *table, x *egress.Tent) {
	n := t.line()
	id := x.Tent.Job.ID
	people, least := n.at("people"), n.at("least")
	byRow := func(column string) string {
		return "IF(" + people + "<1,0,INDEX(exit_rule_" + column + ",MATCH(" + people + ",exit_rule_from,1)))"
	}
	var sides []string
	for _, side := range sideNames() {
		sides = append(sides, "SIGN(SUMIFS(exit_many,exit_tent,"+n.at("tent")+",exit_side,"+quoted(side)+`,exit_width,">="&`+least+"))")
	}
	n.set("tent", text(id))
	n.set("name", text(parts.TentName(x.Tent)))
	n.set("many", formula(manyOf(id), x.Many))
	n.set("area", value(x.Area))
	n.set("people", formula("SUMIFS(space_people,space_tent,"+n.at("tent")+")", x.Load))
	n.set("guests", formula("SUMIFS(space_people,space_tent,"+n.at("tent")+`,space_guests,"Yes")`, x.Guests))
	n.set("need", formula(byRow("exits"), x.Need))
	n.set("least", formula(byRow("least"), x.Least))
	n.set("have", formula("SUMIFS(exit_many,exit_tent,"+n.at("tent")+`,exit_width,">="&`+least+")", x.Have))
	n.set("width", formula("ROUND(exit_each*"+people+",2)", x.Width))
	n.set("has", formula("SUMPRODUCT((exit_tent="+n.at("tent")+")*(exit_width>="+least+")*exit_many*exit_width)", x.HasWidth))
	n.set("sides", formula(strings.Join(sides, "+"), x.Sides))
	n.set("allow", formula("MIN(SUMPRODUCT(MAX((SUMIFS(exit_many,exit_tent,"+n.at("tent")+`,exit_width,">="&exit_rule_least)>=exit_rule_exits)*exit_rule_to)),`+
		"INT(ROUND("+n.at("has")+"/exit_each,6)))", x.Allow))
	n.set("out", formula("MIN("+n.at("guests")+","+n.at("allow")+")", x.Out))
	n.add()
}

// ways lists the exits: doors in walls, and open sides.
func (o *occupancySheet) ways() {
	unit, wide := o.l.sys.LengthUnit(), o.m.WidthUnit()
	band(o.s, "Exits by side", occupancyCols)
	t := o.l.startTable(o.s, "exit", []column{
		{"tent", "Tent", 0, sheet.Style{Role: sheet.Key, Wrap: true}},
		{"what", "Exit", 0, wrap()},
		{"side", "Side", 0, body(sheet.Text)},
		{"long", "Side, " + unit, 0, body(sheet.Num2)},
		{"clear", "Open, " + unit, 0, body(sheet.Num2)},
		{"many", "Exits", 0, calc(sheet.Whole)},
		{"width", "Each, " + wide, 0, calc(sheet.General)},
		{"counts", "Wide enough", 0, sheet.Style{Role: sheet.Calc, Align: sheet.Centre}},
	})
	for i := range o.e.Tents {
		x := &o.e.Tents[i]
		for n := range x.Ways {
			o.wayRow(t, x, &x.Ways[n])
		}
		if len(x.Ways) == 0 {
			t.add(text(x.Tent.Job.ID), text(x.Tent.Label()+": none, every side is closed"), text(""), value(nil), value(nil), value(0), value(0), text(notCounted))
		}
	}
	t.end()
	o.s.Highlights = append(o.s.Highlights, sheet.Highlight{Range: t.column("counts"), Formula: t.at("counts", t.first) + "=" + quoted(notCounted), Role: sheet.Faint})
}

// notCounted stands at an exit that is narrower than the people of its tent ask
// for. It is no fault by itself: whether those that count suffice is told by tent.
const notCounted = "not counted"

// wayRow is one entry of egress.Way.
func (o *occupancySheet) wayRow(t *table, x *egress.Tent, w *egress.Way) {
	row := t.next()
	at := func(column string) string { return t.at(column, row) }
	what, clear, many, width := "open side", sheet.Cell{}, value(w.Many), value(w.Each)
	switch {
	case w.Door == nil:
		clear = value(w.Clear)
		many = formula("IF(exit_every>0,MAX(1,INT(ROUND("+at("long")+"/exit_every,6))),1)", w.Many)
		width = formula("ROUND("+at("clear")+"*"+itoa(o.m.InLength())+"/"+at("many")+",2)", w.Each)
	case w.Door.Clear == 0:
		what = "door, " + w.Door.Kind + ": no clear width in tents.yaml, so it does not count"
	default:
		what = "door, " + w.Door.Kind
	}
	counts := notCounted
	if w.Many > 0 && !w.Each.LessThan(x.Least) {
		counts = yes(true)
	}
	t.add(text(x.Tent.Job.ID), text(x.Tent.Label()+": "+what), text(w.Side), value(w.Long), clear, many, width,
		formula("IF(AND("+at("many")+">0,"+at("width")+">="+find("hall_least", "hall_tent", at("tent"))+`),"Yes",`+quoted(notCounted)+")", counts))
}

// exitRules prints the table of exits; the column in force follows from the
// class of the tents.
func (o *occupancySheet) exitRules() {
	wide := o.m.WidthUnit()
	x := &o.e.Code.Exits
	band(o.s, "Number and width of exits: "+x.Source, occupancyCols)
	t := o.l.startTable(o.s, "exit_rule", []column{
		{"from", "From people", 0, body(sheet.Whole)},
		{"note", "Note", 0, wrap()},
		{"to", "To", 0, body(sheet.Whole)},
		{"exits", "Exits", 0, body(sheet.Whole)},
		{"tent", "Tent, " + wide, 0, body(sheet.General)},
		{"membrane", "Membrane, " + wide, 0, body(sheet.General)},
		{"least", "In force, " + wide, 0, calc(sheet.General)},
	})
	for i := range x.Rows {
		r := &x.Rows[i]
		row := t.next()
		t.add(value(r.From), text(r.Note), value(egress.UpTo(x, i)), value(r.Exits), o.told(r.Tent), o.told(r.Membrane),
			formula(`MAX(0,IF(exit_class="tent",`+t.at("tent", row)+","+t.at("membrane", row)+"))", o.m.Width(r.Least(o.e.Code.Class))))
	}
	o.endTight(t)
}

// told is a width of the table; one that it does not tell leaves its cell empty.
func (o *occupancySheet) told(width unit.Length) sheet.Cell {
	if width == 0 {
		return value(nil)
	}
	return value(o.m.Width(width))
}
