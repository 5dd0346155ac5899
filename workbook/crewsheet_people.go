package workbook

import (
	"fmt"
	"strconv"
	"strings"

	"tentwright/catalog/unit"
	"tentwright/quote/anchor"
	"tentwright/quote/crew"
	"tentwright/quote/load"
	"tentwright/workbook/sheet"
)

// people is who comes with which vehicle, beside what is done in wind.
func (c *crewSheet) people() {
	left, right := c.vehicles(), c.wind()
	if len(left) == 0 {
		left = append(left, []field{span(1, crewSheetHalf, in(text("No vehicle goes out for this job."), wrapped()))})
	}
	c.band("Who comes with what", "In wind, "+c.sys.SpeedUnit())
	for i := range max(len(left), len(right)) {
		var row []field
		if i < len(left) {
			row = append(row, left[i]...)
		}
		if i < len(right) {
			row = append(row, half(right[i])...)
		}
		c.line(0, row...)
	}
	c.line(crewPen, span(1, 8, label("Danger to life: emergency services first; then the manager, phone")),
		blank(9, crewSheetCols, "crewsheet_emergency", "phone at which the manager is reached while the crew works"))
}

// vehicles are the trips of the way out with their people. Without a plan there
// is room to write who they are.
func (c *crewSheet) vehicles() [][]field {
	var rows [][]field
	plan := c.outgoing()
	trips := c.q.Load.Out.Trips
	for i := range trips[:min(len(trips), c.shown.trips)] {
		t := &trips[i]
		vehicle := span(1, 3, in(text(shortVehicle(t)), wrap()))
		switch {
		case t.Tow != "":
			rows = append(rows, []field{vehicle, span(4, crewSheetHalf, in(text("behind "+t.Tow), wrap()))})
		case plan == nil:
			rows = append(rows, []field{vehicle, blank(4, crewSheetHalf, "crewsheet_people_"+ident(t.Key), "who drives it, and who rides in it")})
		default:
			rows = append(rows, []field{vehicle, span(4, crewSheetHalf, in(c.riders(plan, t), wrap()))})
		}
	}
	if more := len(trips) - c.shown.trips; more > 0 {
		rows = append(rows, []field{span(1, crewSheetHalf, in(text("and "+itoa(more)+" more: see "+SheetManifest), wrap()))})
	}
	if plan == nil {
		return rows
	}
	if cell := c.riders(plan, nil); cell.Value != "" {
		rows = append(rows, []field{span(1, 3, in(text("No seat in these"), wrap())), span(4, crewSheetHalf, in(cell, wrap()))})
	}
	return rows
}

// outgoing is the plan of the window in which the crew drives to the site; nil
// without one.
func (c *crewSheet) outgoing() *crew.Window {
	for i := range c.q.Labour.Windows {
		spec := c.q.Labour.Windows[i].Spec
		for _, phase := range spec.Phases {
			if phase == "travel" {
				return c.planOf(spec.ID)
			}
		}
	}
	return nil
}

// riders are the people of a vehicle, or those without a seat: by the names typed
// on Schedule, else by their numbers.
func (c *crewSheet) riders(w *crew.Window, t *load.Trip) sheet.Cell {
	var words, terms []string
	for i := range w.People {
		who := &w.People[i]
		in := who.Vehicle == "" && who.Rides == ""
		if t != nil {
			in = who.Vehicle == t.Key || who.Vehicle == "" && who.Rides == t.Key
		}
		if !in {
			continue
		}
		key, number, does := personKey(w, who), "no. "+itoa(who.Number), ""
		if who.Vehicle != "" {
			does += ", drives"
		}
		if who.Lead {
			does += ", leads"
		}
		cell := find("people_name", "people_key", quoted(key))
		terms = append(terms, "IF(LEN("+cell+")>0,"+cell+","+quoted(number)+")&"+quoted(does))
		if typed, ok := c.kept.Names[key]; ok && typed != nil && typed != "" {
			number = keptWords(typed)
		}
		words = append(words, number+does)
	}
	if len(terms) == 0 {
		return text("")
	}
	return formula(strings.Join(terms, `&"; "&`), strings.Join(words, "; "))
}

// keptWords is a name that was typed, as a formula joins it to other words.
func keptWords(typed any) string {
	if n, ok := typed.(float64); ok {
		return strconv.FormatFloat(n, 'f', -1, 64)
	}
	return sheet.Clean(fmt.Sprint(typed))
}

// wind is what the manager has decided to do at which gust.
func (c *crewSheet) wind() [][]field {
	if c.q.Anchor == nil || len(c.q.Anchor.Tents) == 0 || len(c.q.Anchor.Actions) == 0 {
		words := "No gusts are entered at which something is done: ask the manager before a tent goes up."
		return [][]field{{span(1, crewSheetHalf, in(text(words), sheet.Style{Role: sheet.Warn, Wrap: true}))}}
	}
	var rows [][]field
	for i := range c.q.Anchor.Actions {
		rows = append(rows, c.action(&c.q.Anchor.Actions[i]))
	}
	return rows
}

// openGust stands where the manager has not decided.
const openGust = "ask"

// action is one wind action at its gust on the sheet of anchors.
func (c *crewSheet) action(a *anchor.Action) []field {
	var gust any = openGust
	if a.Spec.Gust > 0 {
		gust = a.Spec.Gust.In(c.sys)
	}
	cell := find("action_gust", "action_id", quoted(a.Spec.ID))
	style := sheet.Style{Role: sheet.Body, Format: sheet.Whole, Bold: true, Align: sheet.Centre}
	if c.sys == unit.Metric {
		style.Format = sheet.Num1
	}
	return []field{span(1, 2, in(formula("IF(N("+cell+")>0,"+cell+","+quoted(openGust)+")", gust), style)),
		span(3, crewSheetHalf, in(text(sheet.Short(a.Spec.What, threeLines)), wrap()))}
}
