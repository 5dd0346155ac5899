package workbook

import (
	"slices"
	"strings"

	"tentwright/catalog"
	"tentwright/quote/parts"
	"tentwright/quote/tent"
	"tentwright/workbook/sheet"
)

// sideNames in the order in which the sheet shows them.
func sideNames() []string { return []string{"front", "right", "back", "left"} }

// counts lays out what was counted: on each tent's graph, and of the job. A
// count of one tent is a value; how many tents there are is the order's.
func (l *layout) counts() {
	s := l.sheet(SheetCounts, "What rules are driven by. Tents are counted on their frames; a changed size or side is counted anew when the job is quoted again.", sheet.TabCrew, true)
	for _, width := range []float64{22, 17, 26, 11, 9, 15, 15, 15, 15, 14, 20, 9} {
		s.Columns = append(s.Columns, sheet.Column{Width: width})
	}
	if len(l.q.Parts.Tents) > 0 {
		l.tentTable(s)
	}
	l.countTable(s)
	s.FreezeRows = 2
}

// tentTable shows how each tent was asked for; the cells are inputs, and the
// last column tells when they no longer match what was counted.
func (l *layout) tentTable(s *sheet.Sheet) {
	band(s, "Tents as counted", 12)
	side := sheet.Style{Role: sheet.Input, Format: sheet.Text, Wrap: true}
	t := l.startTable(s, "tent", []column{
		{"id", "Tent", 0, sheet.Style{Role: sheet.Key, Wrap: true}},
		{"family", "Family", 0, wrap()},
		{"ground", "Ground", 0, wrap()},
		{"size", "Size", 0, input(sheet.Text)},
		{"leg", "Eave", 0, input(sheet.Text)},
		{"front", "Front", 0, side},
		{"right", "Right", 0, side},
		{"back", "Back", 0, side},
		{"left", "Left", 0, side},
		{"footprint", "Staked footprint", 0, wrap()},
		{"counted", "Counted for", 0, sheet.Style{Role: sheet.Faint, Wrap: true}},
		{"state", "State", 0, calc(sheet.Text)},
	})
	for i := range l.q.Parts.Tents {
		l.tentRow(t, &l.q.Parts.Tents[i])
	}
	t.end()
	s.Highlights = append(s.Highlights, sheet.Highlight{Range: t.column("state"), Formula: t.at("state", t.first) + `="requote"`, Role: sheet.Warn})
}

// tentRow puts what was asked for side by side with what was counted, joined in
// one text, so that any change of it shows.
func (l *layout) tentRow(t *table, tent *tent.Tent) {
	row := t.next()
	asked := []string{tent.Size.ID, tent.Leg.In(l.sys)}
	for _, side := range sideNames() {
		asked = append(asked, sideText(tent, side))
	}
	cells := []sheet.Cell{text(tent.Job.ID), text(tent.Family.Name), text(groundName(tent))}
	for _, a := range asked {
		cells = append(cells, text(a))
	}
	now := make([]string, 0, 6)
	for _, id := range append([]string{"size", "leg"}, sideNames()...) {
		now = append(now, t.at(id, row))
	}
	cells = append(cells, text(l.footprint(tent)), text(strings.Join(asked, "|")),
		formula("IF("+strings.Join(now, `&"|"&`)+"="+t.at("counted", row)+`,"counted","requote")`, "counted"))
	t.add(cells...)
	l.tentInputs(t, tent, row)
}

// footprint is the ground that a tent takes with its outer stakes.
func (l *layout) footprint(tent *tent.Tent) string {
	if tent.Staked == 0 {
		return "no stakes"
	}
	length, width := tent.Graph.Footprint()
	return length.In(l.sys) + " x " + width.In(l.sys)
}

// tentInputs offers what the family has. A side with doors offers its own words
// too, so that they can be put back: its doors cannot be told in one.
func (l *layout) tentInputs(t *table, tent *tent.Tent, row int) {
	var sizes, legs, walls []string
	for _, s := range tent.Family.Sizes {
		sizes = append(sizes, s.ID)
	}
	for _, leg := range tent.Family.Legs {
		legs = append(legs, leg.In(l.sys))
	}
	walls = append(walls, "open")
	for _, w := range tent.Family.Walls {
		walls = append(walls, w.Kind)
	}
	const then = "; then quote the job again, since its parts must be counted anew"
	l.allowList(t.s, row, t.col("size"), sizes, "a size of this family"+then)
	l.allowList(t.s, row, t.col("leg"), legs, "an eave height of this family"+then)
	for _, side := range sideNames() {
		choices := walls
		if own := sideText(tent, side); !slices.Contains(walls, own) {
			choices = append([]string{own}, walls...)
		}
		l.allowList(t.s, row, t.col(side), choices, "a kind of wall, or open"+then)
	}
}

// mostListed is the longest list of choices, in bytes, that a cell can offer.
const mostListed = 250

// allowList offers choices in a cell. A single one leaves nothing to offer and
// is the only text taken; choices that a list between commas cannot hold are
// not offered, and any word is taken.
func (l *layout) allowList(s *sheet.Sheet, row, col int, choices []string, explain string) {
	list := strings.Join(choices, ",")
	switch {
	case len(choices) == 1:
		l.allow(s, row, col, sheet.Validation{Kind: sheet.Custom, Source: sheet.AbsRef(row, col) + "=" + quoted(list)}, explain)
	case len(list) > mostListed || strings.Count(list, ",") >= len(choices):
		l.allow(s, row, col, words(mostExplained), explain)
	default:
		l.allow(s, row, col, sheet.Validation{Kind: sheet.List, Source: list}, explain)
	}
}

// sideText is how a side is closed, in a word or two.
func sideText(t *tent.Tent, side string) string {
	ask := t.Job.Side(side)
	if ask == nil || ask.Wall == "" {
		return "open"
	}
	if len(ask.Doors) > 0 {
		return ask.Wall + " with " + strings.Join(ask.Doors, " and ")
	}
	return ask.Wall
}

// groundName is the surface under a tent in words.
func groundName(t *tent.Tent) string {
	if t.Ground == nil {
		return ""
	}
	return t.Ground.Name
}

// countTable lists every count by key.
func (l *layout) countTable(s *sheet.Sheet) {
	band(s, "Counts", 12)
	t := l.startTable(s, "count", []column{
		{"key", "Key", 0, sheet.Style{Role: sheet.Key, Wrap: true}},
		{"tent", "Tent", 0, wrap()},
		{"what", "Counted", 0, wrap()},
		{"per", "Of one", 0, body(sheet.Num2)},
		{"many", "Times", 0, calc(sheet.Whole)},
		{"amount", "Amount", 0, calc(sheet.Num2)},
	})
	for i := range l.q.Parts.Counts {
		l.countRow(t, &l.q.Parts.Counts[i])
	}
	t.end()
	s.TitleRows = [2]int{t.first - 1, t.first - 1}
	l.lateTable(t)
}

// lateTable lists the counts that follow from the parts and their load. It is
// a table of its own, since parts follow from the counts above.
func (l *layout) lateTable(counts *table) {
	band(counts.s, "Counted once vehicles are loaded", 12)
	t := counts.after("late")
	for i := range l.q.Labour.Counts {
		l.lateRow(t, &l.q.Labour.Counts[i])
	}
	t.end()
}

// countRow is one count. Of one tent, it is a value; the few facts of the job
// that people change are inputs.
func (l *layout) countRow(t *table, c *parts.Count) {
	row := t.next()
	per := value(c.Per)
	switch c.Driver {
	case "distance":
		per = formula("job_distance", c.Per)
	case "guests":
		per = formula("job_guests", c.Per)
	case "days-out":
		per = in(value(c.Per), input(sheet.Whole))
	}
	many := value(1)
	if c.Order != "" {
		many = formula(find("tents_ordered", "tents_key", quoted(c.Order)), c.Many)
	}
	t.add(text(c.Key), text(c.Tent), text(c.Name), per, many, formula(t.at("per", row)+"*"+t.at("many", row), c.Amount))
	if c.Driver == "days-out" {
		l.allow(t.s, row, t.col("per"), wholes(0, 100000), c.Name)
		l.name("job_"+ident(c.Driver), t.s, sheet.Range{R1: row, C1: t.col("per"), R2: row, C2: t.col("per")}, "")
	}
}

// lateRow is a count that follows from the load, or from the parts of a tag.
func (l *layout) lateRow(t *table, c *parts.Count) {
	row := t.next()
	t.add(text(c.Key), text(""), text(c.Name), formula(l.lateFormula(c.Driver), c.Per), value(1),
		formula(t.at("per", row)+"*"+t.at("many", row), c.Amount))
}

// lateFormula is what labour.Estimate counts, in a cell.
func (l *layout) lateFormula(driver string) string {
	switch driver {
	case "trips":
		return "job_trips_out"
	case "back-trips":
		return "job_trips_back"
	case "truck-miles":
		return "2*job_distance*job_trips_out"
	case "back-truck-miles":
		return "2*job_distance*job_trips_back"
	case "ride-miles":
		return l.rideFormula("travel", "job_trips_out")
	case "back-ride-miles":
		return l.rideFormula("return", "job_trips_back")
	case "weight-out":
		return "total_weight"
	case "weight-back":
		return "total_weight_back"
	}
	return "SUMIFS(need_quantity,need_tags," + tagPattern(strings.TrimPrefix(driver, catalog.TagDriver)) + ")"
}

// rideFormula is the distance of those who ride without driving: each of the
// crew on each day, less the drivers.
func (l *layout) rideFormula(phase, trips string) string {
	for i := range l.q.Labour.Windows {
		if spec := l.q.Labour.Windows[i].Spec; slices.Contains(spec.Phases, phase) {
			window := "window_" + ident(spec.ID)
			return "2*job_distance*MAX(0," + window + "_crew*" + window + "_days-" + trips + ")"
		}
	}
	return "0"
}

// partCounts lays out which count or order asks for which part, at what rate.
func (l *layout) partCounts() {
	s := l.sheet(SheetParts, "Which count or order asks for which part. Spares are added on the pick list.", sheet.TabYard, true)
	s.Rows = append(s.Rows, sheet.Row{})
	t := l.startTable(s, "need", []column{
		{"key", "Key", 30, sheet.Style{Role: sheet.Key}},
		{"part", "Part", 22, sheet.Style{Role: sheet.Key}},
		{"name", "Name", 34, wrap()},
		{"source", "For", 40, wrap()},
		{"driver", "Driven by", 20, sheet.Style{Role: sheet.Key}},
		{"of", "Amount of it", 12, calc(sheet.Num2)},
		{"per", "Parts for each", 12, input(sheet.General)},
		{"min", "At least", 10, input(sheet.Whole)},
		{"quantity", "Parts", 10, calc(sheet.Whole)},
		{"tags", "Tags", 22, sheet.Style{Role: sheet.Key}},
	})
	for i := range l.q.Parts.Needs {
		l.needRow(t, &l.q.Parts.Needs[i])
	}
	t.end()
	t.widths()
	s.FreezeRows, s.TitleRows = t.first-1, [2]int{t.first - 1, t.first - 1}
	rows := t.rows()
	rows.R1--
	s.Filter = &rows
	l.allowColumn(t, "per", amounts(), "parts for each of what drives it; rounded up")
	l.allowColumn(t, "min", wholes(0, 100000), "at least as many, when there is anything to count")
}

// allowColumn limits what may be typed into a column of a table, its spare row
// included; a cell may be left empty.
func (l *layout) allowColumn(t *table, id string, v sheet.Validation, explain string) {
	v.AllowBlank = true
	l.allowRange(t.s, t.column(id), v, explain)
}

// needRow writes parts.Need as a formula. The driver is looked up by its key
// among the counts, or among the order lines of its own table.
func (l *layout) needRow(t *table, n *parts.Need) {
	row := t.next()
	driver, lookup := n.Count, find("count_amount", "count_key", t.at("driver", row))
	if n.Order != "" {
		table := itemLines
		if strings.HasPrefix(n.Order, "T:") {
			table = tentLines
		}
		driver, lookup = n.Order, find(table+"_ordered", table+"_key", t.at("driver", row))
	}
	of, per, least := t.at("of", row), t.at("per", row), t.at("min", row)
	each, min := value(n.Per), value(n.Min)
	if n.Rule == "" {
		// What a frame or a kit is made of is no rate that anyone sets here.
		each, min = in(each, body(sheet.General)), in(min, body(sheet.Whole))
	}
	count := "IF(" + of + ">0,MAX(" + least + ",ROUNDUP(" + of + "*" + per + "-0.000001,0)),0)"
	t.add(text(n.Key), text(n.Part.ID), text(n.Part.Name), text(n.Source), text(driver), formula(lookup, n.Of), each, min,
		formula(count, n.Quantity), text(tagText(n.Part.Tags)))
}

// tagPattern finds one tag in what tagText writes.
func tagPattern(tag string) string { return quoted("*|" + tag + "|*") }

// tagText writes tags so that a pattern finds one whole tag among them.
func tagText(tags []string) string {
	if len(tags) == 0 {
		return ""
	}
	return "|" + strings.Join(tags, "|") + "|"
}
