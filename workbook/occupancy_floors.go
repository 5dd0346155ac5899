package workbook

import (
	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/quote/egress"
	"tentwright/workbook/sheet"
)

// manyOf is how many tents of a line are ordered.
func manyOf(tent string) string { return find("tents_ordered", "tents_key", quoted("T:"+tent)) }

// spaces divides each tent's floor by its uses and counts people on them.
func (o *occupancySheet) spaces() {
	unit := o.l.sys.AreaUnit()
	band(o.s, "Floors by use, of one tent", occupancyCols)
	t := o.l.startTable(o.s, "space", []column{
		{"tent", "Tent", 0, sheet.Style{Role: sheet.Key, Wrap: true}},
		{"what", "Floor", 0, wrap()},
		{"use", "Use", 0, sheet.Style{Role: sheet.Key}},
		{"many", "Tents", 0, calc(sheet.Whole)},
		{"said", "Said by the job, all, " + unit, 0, calc(sheet.Num2)},
		{"taken", "Taken, " + unit, 0, calc(sheet.Num2)},
		{"area", "Area, " + unit, 0, calc(sheet.Num2)},
		{"per", unit + " each", 0, calc(sheet.General)},
		{"people", "People", 0, calc(sheet.Whole)},
		{"guests", "For guests", 0, sheet.Style{Role: sheet.Calc, Align: sheet.Centre}},
	})
	for i := range o.e.Tents {
		x := &o.e.Tents[i]
		for n := range x.Floors {
			o.spaceRow(t, x, &x.Floors[n])
		}
	}
	t.end()
}

// spaceRow is one part of a floor. What is said is a value, what stands follows
// from what is ordered, and the rest from both.
func (o *occupancySheet) spaceRow(t *table, x *egress.Tent, f *egress.Floor) {
	row, id := t.next(), x.Tent.Job.ID
	at := func(column string) string { return t.at(column, row) }
	use, guests := text(catalog.NoPeople), "No"
	if f.Use != nil {
		use, guests = text(f.Use.ID), yes(!f.Use.Staff)
	}
	what, said, taken := "as the job says", sheet.Cell{}, sheet.Cell{}
	area := formula(at("taken"), f.Area)
	switch {
	case f.Rest:
		what, use = "the rest", formula("job_use", o.e.Use.ID)
		area = formula("MAX(0,"+find("hall_area", "hall_tent", at("tent"))+"-SUMIFS(space_taken,space_tent,"+at("tent")+"))", f.Area)
	case f.Stands:
		what = "stands here, unless the job says where"
		taken = formula("IF("+at("many")+">0,ROUND(MAX(0,SUMIFS(stand_area,stand_use,"+at("use")+")-SUMIFS(space_said,space_use,"+at("use")+"))/"+at("many")+","+itoa(egress.AreaPlaces)+"),0)", f.Taken)
	default:
		said = formula(f.Taken.String()+"*"+at("many"), f.Taken.Mul(money.Int(x.Many)))
		taken = value(f.Taken)
	}
	use.Style = sheet.Style{Role: sheet.Key}
	nobody := at("use") + "=" + quoted(catalog.NoPeople)
	t.add(text(id), text(x.Tent.Label()+": "+what), use, formula(manyOf(id), x.Many), said, taken, area,
		formula("IF("+nobody+",0,"+find("use_area", "use_id", at("use"))+")", f.Per),
		formula("IF("+at("per")+">0,MAX(0,ROUNDUP("+at("area")+"/"+at("per")+"-0.000001,0)),0)", f.People),
		formula("IF("+nobody+`,"No",`+find("use_guests", "use_id", at("use"))+")", guests))
}

// stands counts what stands on the floors.
func (o *occupancySheet) stands() {
	if len(o.e.Stands) == 0 {
		return
	}
	unit := o.l.sys.AreaUnit()
	band(o.s, "What stands on the floors", occupancyCols)
	t := o.l.startTable(o.s, "stand", []column{
		{"part", "Part", 0, sheet.Style{Role: sheet.Key, Wrap: true}},
		{"name", "Name", 0, wrap()},
		{"use", "Use", 0, sheet.Style{Role: sheet.Key}},
		{"count", "Pieces", 0, calc(sheet.Whole)},
		{"each", unit + " each", 0, calc(sheet.Num2)},
		{"area", "Area, " + unit, 0, calc(sheet.Num2)},
	})
	for i := range o.e.Stands {
		x := &o.e.Stands[i]
		row := t.next()
		t.add(text(x.Part.ID), text(x.Part.Name), text(x.Takes.Use),
			formula("SUMIFS(need_quantity,need_part,"+t.at("part", row)+")", x.Count), value(x.Each),
			formula(t.at("count", row)+"*"+t.at("each", row), x.Area))
	}
	t.end()
}

// uses lists what the code counts for one person.
func (o *occupancySheet) uses() {
	unit := o.l.sys.AreaUnit()
	band(o.s, "Area for one person", occupancyCols)
	t := o.l.startTable(o.s, "use", []column{
		{"id", "Use", 0, sheet.Style{Role: sheet.Key}},
		{"name", "Name", 0, wrap()},
		{"area", unit + " each", 0, input(sheet.General)},
		{"of", "Of floor", 0, sheet.Style{Role: sheet.Body, Align: sheet.Centre}},
		{"guests", "For guests", 0, sheet.Style{Role: sheet.Body, Align: sheet.Centre}},
		{"source", "Source", 0, sheet.Style{Role: sheet.Faint}},
	})
	for i := range o.e.Code.Uses {
		u := &o.e.Code.Uses[i]
		t.add(text(u.ID), text(u.Name), value(o.m.Area(u.Area)), text(u.Of), text(yes(!u.Staff)), text(u.Source))
	}
	o.endTight(t)
	o.l.allowRange(o.s, t.column("area"), sheet.Validation{Kind: sheet.Decimal, Min: "0.01", Max: "100000"}, unit+" of floor for one person of this use, by the code")
}

// endTight names the columns of a table over its lines alone: where a line is
// looked for by its size, an empty one behind them would be the last.
func (o *occupancySheet) endTight(t *table) {
	for i, c := range t.cols {
		if c.id != "" {
			o.l.rangeName(t.name+"_"+c.id, o.s, t.left+i, t.first)
		}
	}
}
