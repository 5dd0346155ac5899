package workbook

import (
	"strings"

	"tentwright/catalog/money"
	"tentwright/quote/egress"
	"tentwright/workbook/sheet"
)

// occupancyCols is the width of the sheet in columns.
const occupancyCols = 14

// occupancySheet is the sheet while it is laid out.
type occupancySheet struct {
	l *layout
	s *sheet.Sheet
	e *egress.Result
	m egress.Measures
}

// occupancy lays out how many people each tent may hold, and its exits.
func (l *layout) occupancy() {
	if l.q.Egress == nil {
		return
	}
	s := l.sheet(SheetOccupancy, "People by floor and use, and how they get out. "+l.q.Egress.Code.Code+".", sheet.TabOffice, true)
	for _, w := range []float64{24, 34, 9.5, 9.5, 9.5, 9.5, 9.5, 9.5, 9.5, 9.5, 9.5, 9.5, 9.5, 9.5} {
		s.Columns = append(s.Columns, sheet.Column{Width: w})
	}
	o := &occupancySheet{l: l, s: s, e: l.q.Egress, m: egress.Measures{Units: l.sys}}
	o.terms()
	o.summary()
	o.halls()
	o.ways()
	o.spaces()
	o.stands()
	o.equipment()
	o.flames()
	s.Breaks = append(s.Breaks, len(s.Rows)+2) // what the code says begins a page
	o.uses()
	o.exitRules()
	o.hazards()
	o.seats()
	o.clearances()
	o.rules()
	l.estimate(s, "People are those for whom the code wants exits designed, whoever is invited. The walk to the nearest exit is not checked: measure it on the floor plan.")
	s.TitleRows = [2]int{1, 1}
	s.FreezeRows = 2
	keepTables(s, occupancyCols)
}

// terms are what people may change here, uses apart.
func (o *occupancySheet) terms() {
	l, c := o.l, o.e.Code
	band(o.s, "Terms", occupancyCols)
	explain := "what the floor is for, unless something else is said of it"
	if !o.e.Given {
		explain = "not said by the job, so the first of the table holds"
	}
	positive := sheet.Validation{Kind: sheet.Decimal, Min: "0.001", Max: "1000"}
	list := []setting{
		{"job_use", "Use of the floor", explain, o.e.Use.ID, sheet.Text, choiceOf(c.UseIDs())},
		{"exit_class", "Tents count as", "tent or membrane structure: which column of the exits table; a local decision", c.Class, sheet.Text, choiceOf([]string{"tent", "membrane"})},
		{"exit_each", "Exit width for one person", o.m.WidthUnit() + " of all exits together", float(o.m.Each(c.Exits.Each)), sheet.General, positive},
		{"exit_every", "Open side: an exit for each", l.sys.LengthUnit() + " of its length, at least one; empty: one. The yard's own reckoning", nil, sheet.General, sheet.Validation{Kind: sheet.Decimal, Min: "0", Max: "1000", AllowBlank: true}},
	}
	if c.Exits.OpenEvery > 0 {
		list[3].value = float(o.m.Length(c.Exits.OpenEvery))
	}
	if f := c.Fire; f != nil {
		ids := make([]string, len(f.Hazards))
		for i := range f.Hazards {
			ids[i] = f.Hazards[i].ID
		}
		list = append(list,
			setting{"fire_hazard", "Hazard of fire", "how much there is to burn", f.Hazard, sheet.Text, choiceOf(ids)},
			setting{"fire_rating", "Rating of one extinguisher", "in units of A", f.Rating, sheet.Whole, wholes(1, 40)})
	}
	l.settings(o.s, list)
}

// choiceOf limits a cell to some words, as [layout.allowList] does; where they do
// not fit a list, any word is taken.
func choiceOf(choices []string) sheet.Validation {
	list := strings.Join(choices, ",")
	if len(list) > mostListed || strings.Count(list, ",") >= len(choices) {
		return words(60)
	}
	return sheet.Validation{Kind: sheet.List, Source: list}
}

// summaryRow is one figure of the whole job held against another.
type summaryRow struct {
	name, label, explain string // name of the cell of the limit; of the figure with is_ before it
	is                   sheet.Cell
	rule                 string // at least, at most; none: only told
	limit                sheet.Cell
	holds                bool
	bad                  string // state where it does not hold
}

// summary holds the whole job against what it needs.
func (o *occupancySheet) summary() {
	l, e := o.l, o.e
	guests := money.Int(l.q.Job.Event.Guests)
	rows := []summaryRow{
		{"floor_guests", "Guests by the floors", "on floor that is for guests", formula("job_guests", guests), "at most", formula("SUMPRODUCT(hall_many*hall_guests)", e.Guests), l.q.Job.Event.Guests <= e.Guests, stateStop},
		{"exit_guests", "Guests by the exits", "of these, as many as each tent's exits let out", formula("job_guests", guests), "at most", formula("SUMPRODUCT(hall_many*hall_out)", e.Out), l.q.Job.Event.Guests <= e.Out, stateStop},
	}
	rows = append(rows, o.summarySafety()...)
	rows = append(rows, summaryRow{"floor_people", "People by the code", "on all floors, staff too; exits are designed for them", sheet.Cell{}, "", formula("SUMPRODUCT(hall_many*hall_people)", e.Load), true, ""})
	if len(e.Code.Wheelchairs) > 0 {
		rows = append(rows, summaryRow{"seat_spaces", "Wheelchair spaces", e.Code.WheelchairsBy + "; for fixed seats, here by analogy", sheet.Cell{}, "", formula(wheelchairFormula, e.Wheelchairs), true, ""})
	}
	if from := e.Code.PlansFrom; from > 0 {
		rows = append(rows, summaryRow{"plan_wanted", "Site and floor plan", "wanted from " + itoa(from) + " people on", sheet.Cell{}, "", formula("IF(floor_people>="+itoa(from)+`,"Yes","No")`, yes(e.Load >= from)), true, ""})
	}
	band(o.s, "The whole job", occupancyCols)
	t := l.startTable(o.s, "held", []column{
		{"what", "What", 0, sheet.Style{Role: sheet.Label, Wrap: true}},
		{"", "", 0, sheet.Style{Role: sheet.Faint, Wrap: true}},
		{"is", "Is", 0, calc(sheet.Whole)},
		{"rule", "Must be", 0, sheet.Style{Role: sheet.Body, Align: sheet.Centre}},
		{"limit", "Limit", 0, calc(sheet.Whole)},
		{"state", "State", 0, sheet.Style{Role: sheet.Calc, Align: sheet.Centre, Bold: true}},
	})
	for i := range rows {
		o.summaryRow(t, &rows[i])
	}
	t.end()
	o.s.Highlights = append(o.s.Highlights, sheet.Highlight{Range: t.column("state"), Formula: "OR(" + t.at("state", t.first) + `="` + stateLook + `",` + t.at("state", t.first) + `="` + stateStop + `")`, Role: sheet.Warn})
}

// wheelchairFormula is egress.Wheelchairs.
const wheelchairFormula = `IF(job_guests<MIN(seat_from),0,INDEX(seat_number,MATCH(job_guests,seat_from,1))+` +
	`IF(INDEX(seat_each,MATCH(job_guests,seat_from,1))>0,ROUNDUP((job_guests-INDEX(seat_from,MATCH(job_guests,seat_from,1))+1)/` +
	`MAX(1,INDEX(seat_each,MATCH(job_guests,seat_from,1)))-0.000001,0),0))`

// summaryRow writes a figure; one without a rule stands among the limits.
func (o *occupancySheet) summaryRow(t *table, r *summaryRow) {
	row := t.next()
	state := sheet.Cell{}
	if r.rule != "" {
		op, word := "<=", r.bad
		if r.rule == "at least" {
			op = ">="
		}
		if r.holds {
			word = stateOK
		}
		state = formula("IF("+t.at("is", row)+op+t.at("limit", row)+`,"`+stateOK+`","`+r.bad+`")`, word)
	}
	t.add(text(r.label), text(r.explain), r.is, text(r.rule), r.limit, state)
	o.l.name(r.name, o.s, sheet.Range{R1: row, C1: t.col("limit"), R2: row, C2: t.col("limit")}, "")
	if r.rule != "" {
		o.l.name("is_"+r.name, o.s, sheet.Range{R1: row, C1: t.col("is"), R2: row, C2: t.col("is")}, "")
	}
}

// egressFormulas gives the formulas of both sides of a check that this sheet can
// make again; false for any other check.
func (l *layout) egressFormulas(kind, rest string) (is, limit string, ok bool) {
	if l.q.Egress == nil {
		return "", "", false
	}
	both := map[string]string{"floor": "floor_guests", "ways out": "exit_guests", "exit signs": "sign_needed",
		"emergency lights": "light_needed", "extinguishers": "fire_needed", "permit papers": "permit_paper"}
	if name := both[kind]; name != "" {
		return "is_" + name, name, true
	}
	of := func(column string) string { return find("hall_"+column, "hall_tent", quoted(rest)) }
	switch kind {
	case "exits":
		return of("have"), of("need"), true
	case "exit width":
		return of("has"), of("width"), true
	case "exit sides":
		return of("sides"), apartFormula(&l.q.Egress.Code.Exits, of("need")), true
	case "floor taken":
		return "SUMIFS(space_taken,space_tent," + quoted(rest) + ")", of("area"), true
	}
	return "", "", false
}
