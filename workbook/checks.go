package workbook

import (
	"strings"

	"tentwright/catalog/money"
	"tentwright/quote"
	"tentwright/workbook/sheet"
)

// Words for the state of a check.
const (
	stateOK   = "OK"
	stateLook = "LOOK"
	stateStop = "STOP"
)

// checks lays out every comparison of the quote, made again by formula from
// the workbook as it now stands.
func (l *layout) checks() {
	s := l.sheet(SheetChecks, "What must hold before the truck leaves. Red is to be settled by a person; nothing here changes a figure.", sheet.TabOffice, true)
	l.demoRow(s)
	t := l.startTable(s, "check", []column{
		{"key", "Key", 22, sheet.Style{Role: sheet.Key}},
		{"what", "Check", 52, wrap()},
		{"value", "Is", 13, calc(sheet.General)},
		{"rule", "Must be", 10, sheet.Style{Role: sheet.Body, Align: sheet.Centre}},
		{"limit", "Limit", 13, calc(sheet.General)},
		{"state", "State", 10, sheet.Style{Role: sheet.Calc, Align: sheet.Centre, Bold: true}},
		{"advice", "What to do", 60, wrap()},
	})
	for i := range l.q.Checks {
		l.checkRow(t, &l.q.Checks[i])
	}
	for _, c := range workbookChecks() {
		l.checkRow(t, &c)
	}
	t.end()
	t.widths()
	state := t.at("state", t.first)
	s.Highlights = append(s.Highlights,
		sheet.Highlight{Range: t.column("state"), Formula: "OR(" + state + `="` + stateStop + `",` + state + `="` + stateLook + `")`, Role: sheet.Warn},
		sheet.Highlight{Range: t.column("state"), Formula: state + `="` + stateOK + `"`, Role: sheet.Good})
	s.FreezeRows, s.TitleRows = t.first-1, [2]int{t.first - 1, t.first - 1}
	l.caution(s)
}

// workbookChecks are those that only an edited workbook can fail.
func workbookChecks() []quote.Check {
	return []quote.Check{
		{Key: "requote tents", Title: "Tents whose size, eave or sides differ from what was counted", Severe: true, Advice: "quote the job again; parts, hours and vehicles must follow"},
		{Key: "requote job", Title: "Days, class or place for tax on the sheet Job that figures were not computed for", Severe: true, Advice: "quote the job again; dates of payment, prices and taxes must follow"},
		{Key: "requote lines", Title: "Added lines: parts, hours and vehicles do not have them yet", Advice: "quote the job again"},
		{Key: "added lines", Title: "Added lines with an id that the Price List does not have", Severe: true, Advice: "choose an id of the list; such a line counts nothing"},
		{Key: "requote site", Title: "Surfaces chosen anew where stakes can be driven instead of ballast, or the other way round", Advice: "quote the job again; anchors must follow"},
		{Key: "requote schedule", Title: "People, days, hours, dates or pay that the schedule was not made for", Advice: "quote the job again so that the schedule follows; see the red rows on Schedule"},
		{Key: "requote zone", Title: "Distance beyond every delivery zone", Severe: true, Advice: "name a zone on Rates, or give one there no limit"},
		{Key: "parts on vehicles", Title: "Parts counted but on no vehicle", Severe: true, Advice: "quote the job again so that vehicles are chosen anew"},
	}
}

// checkRow makes a comparison again by formula; advice shows only where it
// fails.
func (l *layout) checkRow(t *table, c *quote.Check) {
	c = l.checkNow(c)
	row := t.next()
	op := "<="
	if c.AtLeast {
		op = ">="
	}
	bad := stateLook
	if c.Severe {
		bad = stateStop
	}
	state, advice := bad, c.Advice
	if c.Holds() {
		state, advice = stateOK, ""
	}
	is, limit := l.checkFormulas(c)
	v, lim := value(c.Value), value(c.Limit)
	if is != "" {
		v = formula(is, c.Value)
	}
	if limit != "" {
		lim = formula(limit, c.Limit)
	}
	t.add(text(c.Key), text(c.Title), v, text(c.Rule()), lim,
		formula("IF("+t.at("value", row)+op+t.at("limit", row)+`,"`+stateOK+`","`+bad+`")`, state),
		formula("IF("+t.at("state", row)+`="`+stateOK+`","",`+quoted(c.Advice)+")", advice))
}

// checkNow is a check of a trip by what it now carries and who rides, or of dates
// by what is done; any other is as the quote made it.
func (l *layout) checkNow(c *quote.Check) *quote.Check {
	kind, key, _ := strings.Cut(c.Key, ":")
	trip := l.carried.trips[key]
	now := *c
	switch {
	case l.datesNow(&now, kind, key):
	case trip == nil:
	case kind == "payload":
		now.Value, now.Limit = money.Float(hundredths(trip.Mass, l.sys)), money.Float(trip.Payload.In(l.sys))
	case kind == "room":
		now.Value = money.Float(tenths(trip.Volume, l.sys))
	}
	return &now
}

// checkFormulas gives the formulas of both sides of a check; an empty one is a
// value that nothing in the workbook can change.
func (l *layout) checkFormulas(c *quote.Check) (is, limit string) {
	kind, rest, _ := strings.Cut(c.Key, ":")
	switch kind {
	case "payload", "room":
		return tripFormulas(kind, rest)
	case "margin":
		return "total_percent", "rate_margin_floor"
	case "lines below floor":
		return sumOver(l.orderTables(), "SUM(@_low)"), ""
	case "crew":
		return "window_" + ident(rest) + "_crew", "window_" + ident(rest) + "_smallest"
	case "day":
		return "window_" + ident(rest) + "_day", "overtime_longest"
	case "overpaid":
		return "total_received", "total_due"
	case "need":
		return needFormula(rest), ""
	case "holding", "door":
		return "IF(" + manyOf(rest) + ">0," + c.Value.String() + ",0)", ""
	case "sizes":
		return sumOver(l.orderTables(), "SUMIFS(@_ordered,@_id,"+quoted(rest)+")"), ""
	case "seats":
		return "window_" + ident(rest) + "_crew", ""
	case "stock":
		if rest == "" {
			return "SUM(pick_beyond)", ""
		}
		return "SUMIFS(pick_quantity,pick_part," + quoted(rest) + ")", ""
	case "chairs":
		return "SUMIFS(need_quantity,need_tags," + tagPattern(quote.ChairTag) + ")", "job_guests"
	}
	for _, of := range []func(kind, rest string) (string, string, bool){
		l.anchorFormulas, l.egressFormulas, l.powerFormulas, l.datesFormulas, l.scheduleFormulas, l.liftFormulas} {
		if is, limit, ok := of(kind, rest); ok {
			return is, limit
		}
	}
	return l.editedFormula(kind), ""
}

// editedFormula is the formula of a check that only an edited workbook can fail.
func (l *layout) editedFormula(kind string) string {
	if kind == "requote tents" && len(l.q.Parts.Tents) == 0 {
		return ""
	}
	return map[string]string{
		"requote tents":     `COUNTIF(tent_state,"requote")`,
		"requote job":       `COUNTIF(field_state,"requote")`,
		"requote lines":     `COUNTIF(build_added,"?*")`,
		"requote site":      groundFormula,
		"requote zone":      `IF(COUNTIF(zones_reaches,"Yes")=0,1,0)`,
		"added lines":       `SUMPRODUCT((LEN(build_added)>0)*(COUNTIF(item_id,build_added)=0))`,
		"parts on vehicles": offVehicle,
	}[kind]
}

// needFormula tells whether a line is ordered and what it needs is not, by any
// line, also one that the office has added. The key is that of the line and
// the id of the needed item.
func needFormula(key string) string {
	at := strings.LastIndex(key, ":")
	line, item := key[:at], key[at+1:]
	return "IF(AND(" + find("build_ordered", "build_key", quoted(line)) + ">0,SUMIFS(build_ordered,build_id," + quoted(item) + ")=0),1,0)"
}

// tripFormulas look a trip's load and limit up on the manifest; the keys of
// trips home begin with B.
func tripFormulas(kind, trip string) (is, limit string) {
	table := "trip"
	if strings.HasPrefix(trip, "B") {
		table = "back"
	}
	load, room := "load", "payload"
	if kind == "room" {
		load, room = "volume", "room"
	}
	key := quoted(trip)
	return find(table+"_"+load, table+"_key", key), find(table+"_"+room, table+"_key", key)
}

// Formulas over whole columns, since one term for each tent or part would pass
// the longest formula that the format takes.
const (
	// groundFormula counts the surfaces that take other anchors than were counted.
	groundFormula = `SUMPRODUCT((here_counted<>"")*(here_stakes<>here_counted))`
	// offVehicle is how far all that is picked is from what is counted and its
	// spares, each part counted on its first row. No share exceeds what is left
	// of its part, so that no part can hide another's gap.
	offVehicle = "ABS(SUM(pick_quantity)-SUMIFS(pick_counted,pick_rank,1)-SUMIFS(pick_spare,pick_rank,1))"
)
