package workbook

import (
	"fmt"
	"unicode/utf8"

	"tentwright/catalog/money"
	"tentwright/quote/egress"
	"tentwright/quote/parts"
	"tentwright/workbook/sheet"
)

// summarySafety holds what is ordered against what is wanted.
func (o *occupancySheet) summarySafety() []summaryRow {
	e, c := o.e, o.e.Code
	tagged := func(tag string) string { return "SUMIFS(need_quantity,need_tags," + tagPattern(tag) + ")" }
	wanted := func(column string) string { return "SUMPRODUCT(egress_many*egress_" + column + ")" }
	var rows []summaryRow
	if s := c.Signs; s != nil {
		rows = append(rows,
			summaryRow{"sign_needed", "Exit signs", fmt.Sprintf("where an exit serves %d people or more", s.From), formula(tagged(s.SignTag), e.HasSigns), "at least", formula(wanted("signs"), e.Signs), e.HasSigns >= e.Signs, stateLook},
			summaryRow{"light_needed", "Emergency lights", itoa(s.Lights) + " at least in each such tent; how many follows from the light at the floor", formula(tagged(s.LightTag), e.HasLights), "at least", formula(wanted("lights"), e.Lights), e.HasLights >= e.Lights, stateLook})
	}
	if f := c.Fire; f != nil {
		rows = append(rows, summaryRow{"fire_needed", "Extinguishers", "by floor and travel; those rated too small for the hazard do not count",
			formula("IF(fire_rating>="+find("hazard_least", "hazard_id", "fire_hazard")+","+tagged(f.Tag)+",0)", e.HasFire), "at least", formula(wanted("fire"), e.Fire), e.HasFire >= e.Fire, stateLook})
	}
	if p := c.Permit; p != nil && p.Item != "" {
		missing := e.Permits
		if o.l.q.Parts.IsOrdered(p.Item) {
			missing = 0
		}
		rows = append(rows, summaryRow{"permit_paper", "Permits not ordered", "tents that need one, by " + p.Source,
			formula("IF(SUMIFS(build_ordered,build_id,"+quoted(p.Item)+`)>0,0,SUMIFS(egress_many,egress_permit,"Yes"))`, missing), "at most", value(0), missing == 0, stateLook})
	}
	return rows
}

// equipment is what each tent needs beside exits.
func (o *occupancySheet) equipment() {
	wide, area := o.m.WidthUnit(), o.l.sys.AreaUnit()
	band(o.s, "Aisles, signs, extinguishers and permit by tent, of one tent", occupancyCols)
	t := o.l.startTable(o.s, "egress", []column{
		{"tent", "Tent", 0, sheet.Style{Role: sheet.Key, Wrap: true}},
		{"name", "Name and size", 0, wrap()},
		{"many", "Tents", 0, calc(sheet.Whole)},
		{"served", "People at each exit", 0, calc(sheet.Whole)},
		{"aisle", "Aisle to it, " + wide, 0, calc(sheet.General)},
		{"signs", "Exit signs", 0, calc(sheet.Whole)},
		{"lights", "Emergency light", 0, calc(sheet.Whole)},
		{"fire", "Extin-guishers", 0, calc(sheet.Whole)},
		{"edge", "Edge open, percent", 0, body(sheet.Num1)},
		{"joined", "Area with those joined, " + area, 0, body(sheet.Num2)},
		{"open", "Area that counts as open, " + area, 0, calc(sheet.Num2)},
		{"permit", "Permit", 0, sheet.Style{Role: sheet.Calc, Align: sheet.Centre}},
	})
	for i := range o.e.Tents {
		o.equipmentRow(t, &o.e.Tents[i])
	}
	t.end()
}

// equipmentRow makes what egress counts by people and floor again.
func (o *occupancySheet) equipmentRow(t *table, x *egress.Tent) {
	n, c := t.line(), o.e.Code
	id := x.Tent.Job.ID
	of := func(column string) string { return find("hall_"+column, "hall_tent", n.at("tent")) }
	n.set("tent", text(id))
	n.set("name", text(parts.TentName(x.Tent)))
	n.set("many", formula(manyOf(id), x.Many))
	n.set("served", formula("MAX(0,ROUNDUP("+of("people")+"/MAX(1,"+of("have")+")-0.000001,0))", x.Served))
	if a := c.Aisle; a != nil {
		n.set("aisle", formula(fmt.Sprintf("MAX(%s,ROUND(%s*%s/%d,2))", o.m.Width(a.Least), o.m.Width(a.Add), n.at("served"), a.For), x.Aisle))
	}
	signs, lights := value(0), value(0)
	if s := c.Signs; s != nil {
		from := "IF(" + n.at("served") + ">=" + itoa(s.From) + ","
		signs = formula(from+"MAX("+of("need")+","+of("have")+"),0)", x.Signs)
		lights = formula(from+itoa(s.Lights)+",0)", x.Lights)
	}
	n.set("signs", signs)
	n.set("lights", lights)
	fire := value(0)
	if c.Fire != nil {
		fire = formula(fmt.Sprintf("MAX(1,%d,ROUNDUP(%s/fire_cover-0.000001,0))", egress.Squares(c.Fire, o.m, x.Tent.Graph.Length, x.Tent.Graph.Width), of("area")), x.Fire)
	}
	n.set("fire", fire)
	n.set("edge", value(x.Open))
	n.set("joined", value(x.Joined))
	o.permitCells(n, x)
	n.add()
}

// permitCells tells whether a tent needs a permit.
func (o *occupancySheet) permitCells(n *line, x *egress.Tent) {
	p := o.e.Code.Permit
	if p == nil {
		n.set("open", value(0))
		n.set("permit", text(""))
		return
	}
	is := n.at("edge") + ">=" + p.OpenShare.String()
	open := money.Zero
	if x.Open.GreaterThanOrEqual(p.OpenShare) {
		open = x.Area.Mul(money.Int(x.Many))
	}
	n.set("open", formula("IF("+is+","+find("hall_area", "hall_tent", n.at("tent"))+"*"+n.at("many")+",0)", open))
	n.set("permit", formula("IF(AND("+n.at("many")+">0,IF("+is+",SUM(egress_open)>"+o.m.Area(p.Open).String()+","+n.at("joined")+">"+o.m.Area(p.Enclosed).String()+`)),"Yes","No")`, yes(x.Permit)))
}

// hazards prints what one extinguisher protects.
func (o *occupancySheet) hazards() {
	f := o.e.Code.Fire
	if f == nil {
		return
	}
	area := o.l.sys.AreaUnit()
	band(o.s, "Extinguishers: "+f.Source, occupancyCols)
	t := o.l.startTable(o.s, "hazard", []column{
		{"id", "Hazard", 0, sheet.Style{Role: sheet.Key}},
		{"name", "Name", 0, wrap()},
		{"least", "Rating at least, A", 0, body(sheet.Whole)},
		{"area", area + " for each A", 0, body(sheet.Num2)},
	})
	for i := range f.Hazards {
		h := &f.Hazards[i]
		t.add(text(h.ID), text(h.Name), value(h.Least), value(o.m.Area(h.Area)))
	}
	o.endTight(t)
	o.s.Rows = append(o.s.Rows, sheet.Row{Cells: []sheet.Cell{in(text("One protects"), sheet.Style{Role: sheet.Label}),
		in(text(fmt.Sprintf("%s, at most %s; no place farther than %s from one, walked", area, f.Most.Text(o.l.sys), f.Travel.In(o.l.sys))), sheet.Style{Role: sheet.Faint, Wrap: true}),
		in(formula("MIN("+o.m.Area(f.Most).String()+","+find("hazard_area", "hazard_id", "fire_hazard")+"*fire_rating)", egress.Cover(f, o.m)), calc(sheet.Num2))}})
	o.l.cellName("fire_cover", o.s, 3)
}

// seats prints the table of wheelchair spaces.
func (o *occupancySheet) seats() {
	steps := o.e.Code.Wheelchairs
	if len(steps) == 0 {
		return
	}
	band(o.s, "Wheelchair spaces: "+o.e.Code.WheelchairsBy, occupancyCols)
	t := o.l.startTable(o.s, "seat", []column{
		{"from", "From guests", 0, body(sheet.Whole)},
		{"", "", 0, wrap()},
		{"number", "Spaces", 0, body(sheet.Whole)},
		{"each", "One more each", 0, body(sheet.Whole)},
	})
	for i := range steps {
		more := value(nil)
		if steps[i].Each > 0 {
			more = value(steps[i].Each)
		}
		t.add(value(steps[i].From), text(""), value(steps[i].Spaces), more)
	}
	o.endTight(t)
}

// flames lists the tops whose certificates go along.
func (o *occupancySheet) flames() {
	band(o.s, "Flame certificates to take along", occupancyCols)
	t := o.l.startTable(o.s, "flame", []column{
		{"tent", "Tent", 0, sheet.Style{Role: sheet.Key, Wrap: true}},
		{"name", "Top", 0, wrap()},
		{"number", "Sections", 0, calc(sheet.Whole)},
	})
	for i := range o.e.Tents {
		x := &o.e.Tents[i]
		for _, section := range x.Tent.Graph.Sections {
			p := o.l.q.Catalog.Part(section.Part)
			if p == nil {
				continue
			}
			t.add(text(x.Tent.Job.ID), text(x.Tent.Label()+": "+p.Name), formula(itoa(section.Count)+"*"+manyOf(x.Tent.Job.ID), section.Count*x.Many))
		}
	}
	t.end()
}

// clearances prints what stays free around a tent's ropes and guys.
func (o *occupancySheet) clearances() {
	p := o.e.Code.Permit
	apart := p != nil && p.Gap > 0
	if len(o.e.Code.Clearances) == 0 && !apart {
		return
	}
	band(o.s, "Clearances, measured to ropes and guys", occupancyCols)
	for i := range o.e.Code.Clearances {
		c := &o.e.Code.Clearances[i]
		words := c.To
		if c.Unless != "" {
			words += ", unless " + c.Unless
		}
		o.words(in(text(c.Distance.In(o.l.sys)), body(sheet.Text)), words+" ("+c.Source+")")
	}
	if apart {
		o.words(in(text(p.Gap.In(o.l.sys)), body(sheet.Text)), "Between tents that are open on their sides, to count apart for the permit; here all of them count together ("+p.Source+")")
	}
}

// rules prints the rules of the code in words.
func (o *occupancySheet) rules() {
	if len(o.e.Code.Rules) == 0 {
		return
	}
	band(o.s, "Rules in words, and whether they apply", occupancyCols)
	for i := range o.e.Code.Rules {
		r := &o.e.Code.Rules[i]
		below := "from " + itoa(r.From) + " people on"
		applies := formula("IF(floor_people>="+itoa(r.From)+`,"Yes",`+quoted(below)+")", "Yes")
		if o.e.Load < r.From {
			applies.Value = below
		}
		o.words(in(applies, sheet.Style{Role: sheet.Calc, Align: sheet.Left}), r.What+" ("+r.Source+")")
	}
}

// lineFits is how many characters of a wide text go on one line.
const lineFits = 170

// words writes a row whose second text runs to the last column.
func (o *occupancySheet) words(first sheet.Cell, long string) {
	cells := []sheet.Cell{first, in(text(long), wrap())}
	for len(cells) < occupancyCols {
		cells = append(cells, in(sheet.Cell{}, wrap()))
	}
	o.s.Rows = append(o.s.Rows, sheet.Row{Height: 15 * float64(1+utf8.RuneCountInString(long)/lineFits), Cells: cells})
	row := len(o.s.Rows)
	o.s.Merges = append(o.s.Merges, sheet.Range{R1: row, C1: 2, R2: row, C2: occupancyCols})
}
