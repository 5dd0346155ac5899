package quote_test

import (
	"encoding/json"
	"maps"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"tentwright/catalog/money"
	"tentwright/catalog/source"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
)

// everyField is a job that says something of its own in every field, so that
// no default can stand in for what the job says. All of it is invented.
const everyField = `
number: 2026-077
revision: 3
customer: {name: Weir Rowers, contact: the boatman, address: [3 Weir Lane, Larkmere], phone: 555-0101, email: row@weir.example, class: trade, tax_exempt: yes}
event: {name: Regatta, guests: 90, use: tables, address: [The Weir Meadow, Larkmere Lock], tax_place: county-ashby, site_contact: the lock keeper, access: over the lock, parking: behind the mill}
dates: {quoted: 2026-05-01, signed: 2026-05-04, deliver: 2026-06-10, event_from: 2026-06-12, event_to: 2026-06-13, strike: 2026-06-14, collect: 2026-06-16, charged_days: 4}
tents:
  - {id: bar, family: hip, size: 20x40, name: Bar tent}
  - id: stage
    family: hip
    size: 20x40
    count: 1
    leg: 8 ft
    sides: [{side: front, wall: window, doors: [single, double], no_stakes: yes, ground: sand}]
    ground: gravel
    joins: bar
    join_side: back
    discount: 7.5
    name: Stage tent
    uses: [{use: standing, area: 123 sq ft}]
  - {id: tickets, family: hip, size: 10x10, place: {x: 21 ft, y: 32 ft, turn: 90}}
  - {id: stall, family: hip, size: 10x10, count: 3}
items:
  - {item: chandelier, quantity: 2, optional: yes, chosen: yes, discount: 12.5, note: over the bar}
site: [{factor: surface, option: soft}, {factor: slope, option: gentle}]
wind: {gust: 43 mph, terrain: gust}
heat: {inside: 66 F, outside: 41 F, hours: 7, tents: [stage]}
power: {source: site, distance: 83 ft, hours: 9}
plot:
  width: 301 ft
  depth: 202 ft
  north: 15
  obstacles: [{name: Willow, kind: tree, x: 251 ft, y: 52 ft, radius: 6 ft}, {name: Pump house, kind: building, x: 262 ft, y: 151 ft, width: 11 ft, depth: 12 ft}]
delivery: {zone: far, distance: 17 mi, loadings: [timed, saturday], free: yes}
labour:
  charge: included
  windows: [{window: install, crew: 9, days: 2, worked: 6.5, crews: 3, from: "08:10", until: "20:20", ready: "15:40", inspect: "16:50", stay: yes}]
  weather: {temperature: 93 F, humidity: 61}
  tries: 37
discount: {percent: 2.5, reason: old friends}
show_prices: section
payments: [{date: 2026-05-09, amount: 321.5, note: by cheque}]
notes: Please mow the meadow.
office_notes: Bring the long ladder.
`

// counterparts names for each field of a job the place in the report where
// what it says can be read. Lists are followed into every entry.
var counterparts = map[string]string{
	"number": "job.number", "revision": "job.revision",
	"customer.name": "job.customer", "customer.contact": "job.customer_contact", "customer.address": "job.customer_address",
	"customer.phone": "job.customer_phone", "customer.email": "job.customer_email", "customer.class": "job.customer_class",
	"customer.tax_exempt": "job.tax_exempt",
	"event.name":          "job.event", "event.guests": "job.guests", "event.address": "job.event_address",
	"event.tax_place": "job.tax_place", "event.site_contact": "job.site_contact", "event.access": "job.access", "event.parking": "job.parking",
	"dates.quoted": "job.dates.quoted", "dates.deliver": "job.dates.deliver", "dates.event_from": "job.dates.event_from",
	"dates.event_to": "job.dates.event_to", "dates.strike": "job.dates.strike", "dates.collect": "job.dates.collect",
	"dates.charged_days": "job.dates.charged_days",
	"tents.id":           "tents.id", "tents.family": "tents.family", "tents.size": "tents.size", "tents.count": "tents.count",
	"tents.leg": "tents.leg", "tents.sides.side": "tents.sides.side", "tents.sides.wall": "tents.sides.wall",
	"tents.sides.doors": "tents.sides.doors", "tents.sides.no_stakes": "tents.sides.no_stakes", "tents.ground": "tents.ground",
	"tents.joins": "tents.joins", "tents.join_side": "tents.join_side", "tents.discount": "tents.discount_percent", "tents.name": "tents.name",
	"items.item": "orders.item", "items.quantity": "orders.quantity", "items.optional": "orders.optional", "items.chosen": "orders.chosen",
	"items.discount": "orders.discount_percent", "items.note": "orders.note",
	"site.factor": "job.site.key", "site.option": "job.site.option",
	"delivery.zone": "job.delivery_zone", "delivery.distance": "job.distance", "delivery.loadings": "job.loadings", "delivery.free": "job.delivery_free",
	"event.use": "job.use", "dates.signed": "job.dates.signed", "tents.sides.ground": "tents.sides.ground",
	"tents.uses.use": "tents.uses.use", "tents.uses.area": "tents.uses.area",
	"tents.place.x": "tents.place.x", "tents.place.y": "tents.place.y", "tents.place.turn": "tents.place.turn",
	"wind.gust": "job.wind.gust", "wind.terrain": "job.wind.terrain",
	"heat.inside": "job.heat.inside", "heat.outside": "job.heat.outside", "heat.hours": "job.heat.hours", "heat.tents": "job.heat.tents",
	"power.source": "job.power.source", "power.distance": "job.power.distance", "power.hours": "job.power.hours",
	"plot.width": "job.plot.width", "plot.depth": "job.plot.depth", "plot.north": "job.plot.north", "plot.obstacles.name": "job.plot.obstacles.name", "plot.obstacles.kind": "job.plot.obstacles.kind",
	"plot.obstacles.x": "job.plot.obstacles.x", "plot.obstacles.y": "job.plot.obstacles.y", "plot.obstacles.width": "job.plot.obstacles.width",
	"plot.obstacles.depth": "job.plot.obstacles.depth", "plot.obstacles.radius": "job.plot.obstacles.radius",
	"labour.charge": "job.labour_charge", "labour.windows.window": "windows.window", "labour.windows.crew": "windows.crew",
	"labour.windows.days": "windows.days", "labour.windows.worked": "windows.worked_before",
	"labour.windows.crews": "job.hours.crews", "labour.windows.from": "job.hours.from", "labour.windows.until": "job.hours.until",
	"labour.windows.ready": "job.hours.ready", "labour.windows.inspect": "job.hours.inspect", "labour.windows.stay": "job.hours.stay",
	"labour.weather.temperature": "job.weather.temperature", "labour.weather.humidity": "job.weather.humidity", "labour.tries": "job.tries",
	"discount.percent": "job.discount_percent", "discount.reason": "job.discount_reason", "show_prices": "job.show_prices",
	"payments.date": "job.payments.date", "payments.amount": "job.payments.amount", "payments.note": "job.payments.note",
	"notes": "job.notes", "office_notes": "job.office_notes",
}

// leftOut is what a job has and its report has not, each with the reason.
var leftOut = map[string]string{
	"Source": "the bytes of the file; the report is of what they say",
}

// Whatever a job says can be read in the report of its quote.
func TestReportHasEveryFieldOfTheJob(t *testing.T) {
	j, list := job.Read("every.yaml", []byte(everyField))
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	said := map[string][]string{}
	walkJob("", reflect.ValueOf(*j), said)
	var report any
	if err := json.Unmarshal(encode(t, quoted(t, demo(t), j).Report()), &report); err != nil {
		t.Fatal(err)
	}
	for _, field := range slices.Sorted(maps.Keys(said)) {
		_, out := leftOut[field]
		place, known := counterparts[field]
		switch {
		case out && known:
			t.Errorf("field %s of a job is left out and has a counterpart", field)
		case out:
		case !known:
			t.Errorf("field %s of a job has no counterpart in the report; give it one, or say in leftOut why not", field)
		case len(said[field]) == 0:
			t.Errorf("field %s: everyField says nothing of it, so that nothing is shown", field)
		default:
			found := values(report, strings.Split(place, "."))
			for _, want := range said[field] {
				if !slices.Contains(found, want) {
					t.Errorf("field %s is %q in the job; %s of the report has %q", field, want, place, found)
				}
			}
		}
	}
	for _, table := range []map[string]string{counterparts, leftOut} {
		for field := range table {
			if _, ok := said[field]; !ok {
				t.Errorf("%s is no field of a job any more", field)
			}
		}
	}
}

// walkJob collects what a job says by field, in the words of the report. A
// field without a YAML name goes by its Go name; positions are no fields. An
// empty list is walked by one empty entry, so that no field is overlooked.
func walkJob(path string, v reflect.Value, said map[string][]string) {
	if text, leaf := words(v); leaf {
		said[path] = append(said[path], text...)
		return
	}
	if v.Kind() == reflect.Slice {
		for i := range v.Len() {
			walkJob(path, v.Index(i), said)
		}
		if v.Len() == 0 {
			walkJob(path, reflect.Zero(v.Type().Elem()), said)
		}
		return
	}
	// A group that is not given says nothing of each of its fields.
	if v.Kind() == reflect.Pointer {
		if v.IsNil() {
			v = reflect.New(v.Type().Elem())
		}
		walkJob(path, v.Elem(), said)
		return
	}
	for i := range v.NumField() {
		field := v.Type().Field(i)
		if field.Type == reflect.TypeFor[source.Where]() {
			continue
		}
		name, _, _ := strings.Cut(field.Tag.Get("yaml"), ",")
		if name == "" {
			name = field.Name
		}
		walkJob(strings.TrimPrefix(path+"."+name, "."), v.Field(i), said)
	}
}

// words is a single value as JSON has it; nothing for one that is not given.
// It is false for what has fields or entries of its own.
func words(v reflect.Value) ([]string, bool) {
	var text string
	switch x := v.Interface().(type) {
	case string:
		text = x
	case []byte:
		text = string(x)
	case int:
		text = strconv.Itoa(x)
	case bool:
		text = strconv.FormatBool(x)
	case money.Number:
		text = x.String()
	case unit.Date:
		text = x.String()
	case unit.Clock:
		text = x.String()
	case unit.Speed:
		text = money.Round(money.Float(x.MilesPerHour()), 2).String()
	case unit.Temperature:
		text = money.Round(money.Float(x.Fahrenheit()), 2).String()
	case unit.Area:
		text = money.Round(money.Float(x.SquareFeet()), 2).String()
	case unit.Length:
		// The lengths of a job are few: legs in feet, the distance in miles.
		if text = money.Round(money.Float(x.Feet()), 2).String(); x.Miles() >= 1 {
			text = money.Round(money.Float(x.Miles()), 2).String()
		}
	default:
		return nil, false
	}
	if v.IsZero() {
		return nil, true
	}
	return []string{text}, true
}

// values collects what stands at a place of a report, through every list.
func values(at any, place []string) []string {
	switch x := at.(type) {
	case []any:
		var all []string
		for _, entry := range x {
			all = append(all, values(entry, place)...)
		}
		return all
	case map[string]any:
		if len(place) == 0 {
			return nil
		}
		return values(x[place[0]], place[1:])
	case string:
		return []string{x}
	case bool:
		return []string{strconv.FormatBool(x)}
	case float64:
		return []string{strconv.FormatFloat(x, 'f', -1, 64)}
	}
	return nil
}
