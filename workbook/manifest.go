package workbook

import (
	"slices"
	"strings"

	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/labour"
	"tentwright/quote/load"
	"tentwright/quote/price"
	"tentwright/workbook/sheet"
)

// manifestCols is how many columns of the manifest print.
const manifestCols = 15

// Words for a vehicle against its limits.
const (
	tripOK   = "OK"
	tripOver = "OVER"
)

// way is one direction: its trips and shares, and the names of its tables.
type way struct {
	m        *load.Manifest
	vehicles string // table of the vehicles
	goods    string // table of what they carry
	loads    string // named column of weights that a vehicle's load adds up
	rooms    string // and of room
	trips    string // and of the trips beside them
	title    string
}

// ways are the two directions. What goes out is listed by the pick list, which
// people sort; what comes home has its own table on the manifest.
func (l *layout) ways() (out, back way) {
	return way{&l.q.Load.Out, "trip", "out", "pick_out_weight", "pick_out_volume", "pick_trip", "Vehicles out"},
		way{&l.q.Load.Back, "back", "home", "home_weight", "home_volume", "home_trip", "Vehicles back"}
}

// manifest lays out the vehicles of both ways, and for each trip a page with
// what it carries in the order of loading.
func (l *layout) manifest() {
	s := l.sheet(SheetManifest, "Vehicles with their limits, then a page for each: what goes in first stands first.", sheet.TabYard, true)
	out, back := l.ways()
	l.manifestHead(s)
	l.vehicles(s, out)
	l.vehicles(s, back)
	l.licences(s)
	l.outPages(s, out)
	last := l.homePages(s, back)
	last.ends("note")
	s.PrintArea.C2 = manifestCols
	s.FreezeRows = 2
}

// manifestHead is the job, the trips, the weights, and the caution.
func (l *layout) manifestHead(s *sheet.Sheet) {
	q := l.q
	unit := l.sys.MassUnit()
	whole := sheet.Style{Role: sheet.Total, Format: sheet.Whole}
	sum := sheet.Style{Role: sheet.Total, Format: sheet.Num2}
	l.fields(s, span(1, 1, label("Event")), span(2, 3, text(q.Job.Event.Name)), span(4, 5, label("Deliver")), span(6, 7, in(value(q.Job.Dates.Deliver), dated())),
		span(8, 9, label("Trips out")), span(10, 10, in(value(labour.Drives(&q.Load.Out)), whole)),
		span(12, 13, label("Weight out, "+unit)), span(14, 15, in(formula("ROUND(SUM(pick_out_weight),2)", hundredths(massOf(l.carried.picks), l.sys)), sum)),
		span(16, 16, label("Trip costs to the yard")), span(17, 17, in(value(price.TripCosts(q.Load)), sheet.Style{Role: sheet.Total, Format: sheet.Money})))
	l.cellName("job_trips_out", s, 10)
	l.cellName("job_trip_costs", s, 17)
	l.fields(s, span(1, 1, label("Place")), span(2, 3, in(text(l.address()), sheet.Style{Wrap: true})), span(4, 5, label("Collect")), span(6, 7, in(value(q.Job.Dates.Collect), dated())),
		span(8, 9, label("Trips back")), span(10, 10, in(value(labour.Drives(&q.Load.Back)), whole)),
		span(12, 13, label("Weight back, "+unit)), span(14, 15, in(formula("ROUND(SUM(home_weight),2)", hundredths(massOf(l.carried.home), l.sys)), sum)),
		span(16, 16, label("Weight back by the pick")), span(17, 17, in(formula("ROUND(SUM(home_picked_weight),2)", hundredths(q.Load.Back.Mass, l.sys)), sum)))
	l.cellName("job_trips_back", s, 10)
	l.cellName("total_weight_back", s, 17)
	n := l.fields(s, span(1, manifestCols, in(text(manifestCaution), sheet.Style{Role: sheet.Notice})))
	s.Rows[n-1].Height = 32
}

const manifestCaution = "Weights are computed from the shop's own data. Weigh the loaded vehicle: the plate, axle limits and local law govern. " +
	"The driver secures the load and answers for it. What comes back wet is heavier."

// vehicleColumns are a vehicle's limits and what is used of them. The trailer's
// limit stands beside what prints.
func vehicleColumns(mass, room string) []column {
	middle := sheet.Style{Role: sheet.Calc, Align: sheet.Centre, Bold: true}
	return []column{
		{"key", "Trip", 6, sheet.Style{Role: sheet.Body, Bold: true, Align: sheet.Centre}},
		{"name", "Vehicle", 28, wrap()},
		{"rating", "Plate rating, " + mass, 14, body(sheet.Weight)},
		{"empty", "Empty, " + mass, 9, body(sheet.Weight)},
		{"fuel", "Fuel and reserve, " + mass, 9, body(sheet.Weight)},
		{"riders", "Riders", 9, sheet.Style{Role: sheet.Input, Format: sheet.Whole, Align: sheet.Centre}},
		{"payload", "Payload, " + mass, 10, calc(sheet.Weight)},
		{"load", "Load, " + mass, 10, sheet.Style{Role: sheet.Calc, Format: sheet.Weight, Bold: true}},
		{"margin", "Left, " + mass, 9, calc(sheet.Weight)},
		{"percent", "Weight used", 7, calc(sheet.PercentWhole)},
		{"room", "Room,\n" + room, 8, body(sheet.Num1)},
		{"volume", "Filled,\n" + room, 8, calc(sheet.Num1)},
		{"full", "Room used", 7, calc(sheet.PercentWhole)},
		{"longest", "Longest piece", 12, sheet.Style{Role: sheet.Body, Wrap: true, Indent: 1}},
		{"state", "State", 7, middle},
		{"limit", "Limit with trailer, before riders", 22, body(sheet.Weight)},
	}
}

// vehicles is the table of one way's vehicles against their limits.
func (l *layout) vehicles(s *sheet.Sheet, w way) {
	band(s, w.title, manifestCols)
	t := l.startTable(s, w.vehicles, vehicleColumns(l.sys.MassUnit(), l.sys.VolumeUnit()))
	for i := range w.m.Trips {
		l.vehicleRow(t, w, &w.m.Trips[i])
	}
	t.end()
	state := t.at("state", t.first)
	s.Highlights = append(s.Highlights,
		sheet.Highlight{Range: t.column("state"), Formula: state + "=" + quoted(tripOver), Role: sheet.Warn},
		sheet.Highlight{Range: t.column("state"), Formula: state + "=" + quoted(tripOK), Role: sheet.Good})
}

// vehicleRow holds one trip against its limits. A trailer has no riders, and
// what pulls it may be held lower than its own plate by their common rating.
func (l *layout) vehicleRow(t *table, w way, trip *load.Trip) {
	row := t.next()
	at := func(id string) string { return t.at(id, row) }
	v := trip.Vehicle
	mass := func(m unit.Mass) float64 { return m.In(l.sys) }
	sum := func(column string) string { return "SUMIFS(" + column + "," + w.trips + "," + at("key") + ")" }
	now := l.carried.trips[trip.Key]
	room, volume := tenths(trip.Room, l.sys), tenths(now.Volume, l.sys)
	name, riders, payload, limit := vehicleName(trip), value(now.Riders), l.payload(t, row, trip, now.Payload), value(nil)
	if trip.Tow != "" {
		name, riders = name+", behind "+trip.Tow, in(value(nil), body(sheet.Whole))
	}
	if capped(trip, l.q.Catalog.Fleet.Rider) {
		limit = value(mass(trip.Payload + unit.Mass(trip.Riders)*l.q.Catalog.Fleet.Rider))
	}
	t.add(text(trip.Key), text(name), value(mass(v.Rating)), value(mass(v.Empty)), value(mass(v.Fuel+v.Reserve)), riders, payload,
		formula("ROUND("+sum(w.loads)+",2)", hundredths(now.Mass, l.sys)),
		formula("ROUND("+at("payload")+"-"+at("load")+",2)", hundredths(now.Payload-now.Mass, l.sys)),
		formula(shareOf(at("load"), at("payload")), ratio(hundredths(now.Mass, l.sys), mass(now.Payload))),
		value(room), formula("ROUND("+sum(w.rooms)+",1)", volume),
		formula(shareOf(at("volume"), at("room")), ratio(volume, room)),
		text(trip.Longest.In(l.sys)+"\nof "+v.Longest.In(l.sys)),
		formula("IF(OR("+at("margin")+"<0,"+at("volume")+">"+at("room")+"),"+quoted(tripOver)+","+quoted(tripOK)+")", l.tripState(now)), limit)
	if trip.Tow == "" {
		l.allow(t.s, row, t.col("riders"), wholes(0, 20), "people in the vehicle, the driver included; each takes from the payload")
		l.name("riders_"+ident(trip.Key), t.s, sheet.Range{R1: row, C1: t.col("riders"), R2: row, C2: t.col("riders")}, "")
	}
}

// tripState is the word for a trip against its limits.
func (l *layout) tripState(trip *load.Trip) string {
	if hundredths(trip.Payload-trip.Mass, l.sys) < 0 || tenths(trip.Volume, l.sys) > tenths(trip.Room, l.sys) {
		return tripOver
	}
	return tripOK
}

// payload is what a vehicle may carry, and now has, with other riders than were
// planned. A trailer's is what the load left it, since it shares a rating with
// what pulls it.
func (l *layout) payload(t *table, row int, trip *load.Trip, now unit.Mass) sheet.Cell {
	at := func(id string) string { return t.at(id, row) }
	have := now.In(l.sys)
	if trip.Tow != "" {
		return in(value(have), body(sheet.Weight))
	}
	own := at("rating") + "-" + at("empty") + "-" + at("fuel")
	if capped(trip, l.q.Catalog.Fleet.Rider) {
		own = "MIN(" + own + "," + at("limit") + ")"
	}
	return formula(own+"-"+at("riders")+"*rate_rider", have)
}

// capped tells whether the rating of a combination leaves a driven vehicle
// less than its own plate does.
func capped(trip *load.Trip, rider unit.Mass) bool {
	v := trip.Vehicle
	return trip.Tow == "" && trip.Payload < v.Rating-v.Empty-v.Fuel-v.Reserve-unit.Mass(trip.Riders)*rider
}

// shareOf is ratio in a cell.
func shareOf(part, whole string) string { return "IF(" + whole + ">0," + part + "/" + whole + ",0)" }

// ratio is how much of a whole is used; none of what has no limit.
func ratio(part, whole float64) float64 {
	if whole <= 0 {
		return 0
	}
	return part / whole
}

// tenths is a room as the manifest shows it, to one place.
func tenths(v unit.Volume, sys unit.System) float64 {
	return float(money.Round(money.Float(v.In(sys)), 1))
}

// licences lists what an ordinary licence may not cover, each once, with the
// trips that it concerns.
func (l *layout) licences(s *sheet.Sheet) {
	var flags []string
	trips := map[string][]string{}
	for _, m := range []*load.Manifest{&l.q.Load.Out, &l.q.Load.Back} {
		for i := range m.Trips {
			for _, flag := range m.Trips[i].Flags {
				if !slices.Contains(flags, flag) {
					flags = append(flags, flag)
				}
				trips[flag] = append(trips[flag], m.Trips[i].Key)
			}
		}
	}
	if len(flags) == 0 {
		return
	}
	band(s, "Licence and papers, before anyone drives", manifestCols)
	for _, flag := range flags {
		keys := strings.Join(trips[flag], ", ")
		l.fields(s, span(1, manifestCols, in(text(keys+": "+flag), sheet.Style{Role: sheet.Warn, Wrap: true})))
	}
}
