package intake

import (
	"cmp"
	"fmt"
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
)

// Columns of the two tables of the windows of work.
var (
	crewColumns = []string{"crew", "days", "worked"}
	hourColumns = []string{"crews", "from", "until", "ready", "inspect", "stay"}
)

// windowRows are the rows in which the two tables say something of a window; 0
// where one says nothing.
type windowRows struct{ crew, hours int }

// windows reads crews that are not the usual ones and their hours, in the order
// of the rates. Forms of earlier versions have no hours.
func (r *reader) windows() {
	crews := r.table("window", "labour.windows", append([]string{"id"}, crewColumns...)...)
	if crews == nil {
		return
	}
	rows := map[string]windowRows{}
	crews.keyed("id", "work", crewColumns, func(row int, id string) { rows[id] = windowRows{crew: row} })
	var hours *table
	if r.has("hours", append([]string{"id"}, hourColumns...)...) {
		if hours = r.table("hours", "labour.windows", append([]string{"id"}, hourColumns...)...); hours == nil {
			return
		}
		hours.keyed("id", "work", hourColumns, func(row int, id string) { rows[id] = windowRows{rows[id].crew, row} })
	}
	var ids []string
	for id := range rows {
		ids = append(ids, id)
	}
	slices.SortFunc(ids, func(a, b string) int { return cmp.Or(cmp.Compare(r.windowAt(a), r.windowAt(b)), cmp.Compare(a, b)) })
	for _, id := range ids {
		r.window(id, crews, hours, rows[id])
	}
}

// windowAt is the place of a window among the rates; behind them all if it is
// none of them.
func (r *reader) windowAt(id string) int {
	if n := slices.IndexFunc(r.c.Rates.Windows, func(w catalog.Window) bool { return w.ID == id }); n >= 0 {
		return n
	}
	return len(r.c.Rates.Windows)
}

// window reads one window from its rows.
func (r *reader) window(id string, crews, hours *table, rows windowRows) {
	path := fmt.Sprintf("labour.windows[%d]", len(r.j.Labour.Windows))
	w, name := job.WindowCrew{Window: id}, id
	if n := r.windowAt(id); n < len(r.c.Rates.Windows) {
		name = r.c.Rates.Windows[n].Name
	}
	r.labels[path] = name
	if row := rows.hours; row > 0 {
		at := func(column, what string) spot { return hours.at(row, column, path+"."+column, name+", "+what) }
		r.cells[path] = r.pos(hours.sheet.Name, row, hours.cols["crews"])
		w.Crews = r.whole(at("crews", "crews"), 1)
		w.From = r.clock(at("from", "on site from"))
		w.Until = r.clock(at("until", "off it by"))
		w.Ready = r.clock(at("ready", "ready by"))
		w.Inspect = r.clock(at("inspect", "inspection"))
		w.Stay = r.choice(at("stay", "sleeps there"), yesNo(), "Yes or No") == "yes"
	}
	if row := rows.crew; row > 0 {
		r.cells[path] = r.pos(crews.sheet.Name, row, crews.cols["crew"])
		w.Crew = r.whole(crews.at(row, "crew", path+".crew", name+", people"), 1)
		w.Days = r.whole(crews.at(row, "days", path+".days", name+", days"), 1)
		w.Worked, _ = r.number(crews.at(row, "worked", path+".worked", name+", hours before"), "8")
	}
	r.j.Labour.Windows = append(r.j.Labour.Windows, w)
}

// clock reads a time of day; none of an empty cell.
func (r *reader) clock(s spot) unit.Clock {
	c, ok := r.take(s)
	if !ok {
		return 0
	}
	at, err := c.Clock()
	if err != nil {
		r.fault(s, diag.BadValue, "type it as hours and minutes of 24 hours", "%s", err)
	}
	return at
}
