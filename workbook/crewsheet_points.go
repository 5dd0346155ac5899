package workbook

import (
	"slices"

	"tentwright/catalog"
	"tentwright/quote/power"
	"tentwright/quote/tent"
	"tentwright/workbook/sheet"
)

// points are what the lead looks at on arrival and before the hand-over, each
// with a box to tick, and the wind at both times.
func (c *crewSheet) points() {
	spec := c.q.Catalog.Crew
	arrival, handover := c.needed(spec.Arrival), c.needed(spec.Handover)
	if len(arrival)+len(handover) == 0 {
		return
	}
	c.band("On arrival, before anything is unloaded", "Before the hand-over")
	first := len(c.s.Rows) + 1
	for i := range max(len(arrival), len(handover)) {
		row := append(pointFields(arrival, i), half(pointFields(handover, i))...)
		for k, list := range [][]*catalog.CrewPoint{arrival, handover} {
			key := ""
			if i < len(list) {
				key = list[i].ID
			}
			row = append(row, span(crewSheetKeys+k, crewSheetKeys+k, in(text(key), sheet.Style{Role: sheet.Key})))
		}
		n := c.line(0, row...)
		c.s.Rows[n-1].Height = max(crewRow+1, quotePageHeight(c.s, n))
	}
	c.pointNames("arrival", first, len(arrival), 1, crewSheetKeys)
	c.pointNames("handover", first, len(handover), crewSheetHalf+1, crewSheetKeys+1)
	mph := c.sys.SpeedUnit()
	wind := func(words, name, explain string) []field {
		return []field{span(1, 4, label(words)), blank(5, crewSheetHalf, name, explain)}
	}
	c.line(crewPen, append(wind("Wind on arrival, gusts, "+mph, "crewsheet_wind_arrival", "the gusts on arrival, by the gauge"),
		half(wind("Wind at hand-over, gusts, "+mph, "crewsheet_wind_handover", "the gusts at the hand-over, by the gauge"))...)...)
}

// quotePageHeight is how high a row prints that fits its text.
func quotePageHeight(s *sheet.Sheet, row int) float64 {
	page := quotePage{s: s}
	return page.height(row)
}

// pointFields are a box and what it stands for; nothing beyond the list.
func pointFields(list []*catalog.CrewPoint, i int) []field {
	if i >= len(list) {
		return nil
	}
	return []field{span(1, 1, in(text(""), tick())), span(2, crewSheetHalf, in(text(list[i].What), wrap()))}
}

// pointNames names the columns of a list, which may be ticked on a screen too.
func (c *crewSheet) pointNames(name string, first, many, box, key int) {
	if many == 0 {
		return
	}
	last := first + many - 1
	column := func(id string, col int) {
		c.name(name+"_"+id, c.s, sheet.Range{R1: first, C1: col, R2: last, C2: col}, "")
	}
	column("tick", box)
	column("what", box+1)
	column("id", key)
	rule := ticks()
	rule.AllowBlank = true
	c.allowRange(c.s, sheet.Range{R1: first, C1: box, R2: last, C2: box}, rule, "a tick once it was looked at")
}

// needed are the points of which the job has what they are for.
func (c *crewSheet) needed(all []catalog.CrewPoint) []*catalog.CrewPoint {
	var list []*catalog.CrewPoint
	for i := range all {
		if c.has(all[i].Needs) {
			list = append(list, &all[i])
		}
	}
	return list
}

// has tells whether the job has any of something that points can be for.
func (c *crewSheet) has(what string) bool {
	tents := c.q.Parts.Tents
	any := func(is func(*tent.Tent) bool) bool {
		return slices.ContainsFunc(tents, func(t tent.Tent) bool { return is(&t) })
	}
	switch what {
	case catalog.NeedsTents:
		return len(tents) > 0
	case catalog.NeedsStakes:
		return any(func(t *tent.Tent) bool { return t.Staked > 0 })
	case catalog.NeedsBallast:
		return any(func(t *tent.Tent) bool { return t.Held > 0 })
	case catalog.NeedsWalls:
		return any(func(t *tent.Tent) bool {
			return slices.ContainsFunc(t.Walls, func(w tent.Wall) bool { return w.Spec != nil || len(w.Doors) > 0 })
		})
	case catalog.NeedsHeaters:
		return c.heaters()
	case catalog.NeedsPower:
		return c.current()
	case catalog.NeedsStage:
		many, _ := c.q.Parts.Tagged("stage")
		return many > 0
	}
	return true
}

// heaters tells whether heaters go along, by plan or by order.
func (c *crewSheet) heaters() bool {
	p := c.q.Catalog.Power
	return p != nil && (slices.ContainsFunc(c.q.Power.Gear, func(g power.Gear) bool { return g.Kind == power.KindHeater && g.Taken().IsPositive() }) ||
		slices.ContainsFunc(p.Heaters, func(h catalog.Heater) bool { return c.q.Parts.IsOrdered(h.Item) }))
}

// current tells whether anything that goes along takes or gives current.
func (c *crewSheet) current() bool {
	p := c.q.Catalog.Power
	return p != nil && (c.q.Power.Supply != nil || slices.ContainsFunc(c.q.Power.Loads, func(x power.Load) bool { return x.Count > 0 }) ||
		slices.ContainsFunc(p.Generators, func(g catalog.Generator) bool { return c.q.Parts.IsOrdered(g.Item) }))
}

// crewCaution stands above the signatures.
const crewCaution = "The crew lead decides on site: what is not marked, does not fit or blows too hard, waits. " +
	"Local codes and the authority having jurisdiction govern; what these plans do not cover, a licensed professional decides."

// notes are those that the quote prints, and room for the lead's own.
func (c *crewSheet) notes() {
	c.s.Rows = append(c.s.Rows, sheet.Row{Height: crewGap})
	c.line(0, span(1, 2, label("Notes")), span(3, crewSheetCols, in(c.told(c.q.Job.Notes, "job_notes", wideLines), wrapped())))
	c.line(crewPen+2, span(1, 2, label("On site")), blank(3, crewSheetCols, "crewsheet_notes", "what was found, what differs from the plan, what is missing"))
	c.line(0, span(1, crewSheetCols, in(text(crewCaution), wrapped())))
}

// signatures are of the crew lead and of who takes the tents over.
func (c *crewSheet) signatures() {
	c.band("Handed over", "")
	head := func(from, to int, words string) field { return span(from, to, label(words)) }
	c.line(crewRow, head(1, 3, ""), head(4, 7, "Name"), head(8, 10, "Signature"), head(11, 12, "Date"), head(13, 14, "Time"))
	for _, x := range []struct{ whose, words string }{{"lead", "For the yard, crew lead"}, {"handover", "For the customer"}} {
		at := sheet.Style{Role: sheet.Input, Format: sheet.DateLong, Align: sheet.Left}
		time := at
		time.Format = sheet.Clock
		n := c.line(crewPen+4, span(1, 3, label(x.words)), blank(4, 7, "sign_"+x.whose+"_name", "name of who signs"),
			blank(8, 10, "sign_"+x.whose+"_signature", "signature, by hand on paper"), span(11, 12, in(value(nil), at)), span(13, 14, in(value(nil), time)))
		day := sheet.AnyDay()
		day.AllowBlank = true
		c.name("sign_"+x.whose+"_date", c.s, sheet.Range{R1: n, C1: 11, R2: n, C2: 11}, "")
		c.allow(c.s, n, 11, day, "day of signing, such as 2026-07-04")
		c.name("sign_"+x.whose+"_time", c.s, sheet.Range{R1: n, C1: 13, R2: n, C2: 13}, "")
		c.allow(c.s, n, 13, sheet.AnyTime(), "time of signing, such as 17:30")
	}
}
