package workbook_test

import (
	"io/fs"
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote"
	"tentwright/quote/power"
	"tentwright/workbook"
	"tentwright/workbook/internal/calc"
	"tentwright/workbook/sheet"
)

// metricPower is what the shop of metres would need to warm and light its tents.
const (
	metricPower = `units: metric
power:
  cover: {roof: 5.7, wall: 5.7, source: own trials}
  air: {changes: 1.5, source: own trials}
  fuels: [{item: gas, holds: 33, energy: 12.87, source: merchant}, {item: oil}]
  fuel_reserve: 10
  heaters: [{item: heater, output: 30, input: 36, fuel: gas}]
  loads: [{part: heater, watts: 700, factor: 0.85, group: heat}, {part: lamp, watts: 60, factor: 0.9, lumens: 7200, group: light}]
  light: {reach: 0.45, level: 100, uses: [{use: seated, level: 150}], source: own trials}
  circuit: {volts: 230, amps: 16, continuous: 80, source: own rule}
  drop: {branch: 3, whole: 5, source: own rule}
  generator_reserve: 25
  generators: [{item: set, kva: 12, legs: 3, line: 400, fuel: oil, idle: 0.8, full: 3.1}]
  boxes: [{item: box, circuits: 3, amps: 16, plug: five}]
  conductors: [{gauge: "2.5", ohms: 8.21, source: own table}, {gauge: "6", ohms: 3.39, source: own table}]
  feeders: [{item: lead, gauge: "6", length: 25, amps: 32, plug: five}]
  cords: [{item: cord, gauge: "2.5", length: 20, amps: 16}]
`
	metricItems = `units: metric
items:
  - {id: wall, name: Solid sidewall, section: Walls, unit: m, price: 4.5, cost: 0.9, period: event, tax: rental, kind: hire, geometry: true}
  - {id: gas, name: Gas 33 kg, section: Heat, unit: each, price: 70, cost: 40, period: event, tax: rental, kind: sale}
  - {id: oil, name: Oil, section: Heat, unit: l, price: 2, cost: 1.6, period: event, tax: rental, kind: sale}
  - {id: heater, name: Heater, section: Heat, unit: each, contents: [{part: heater, count: 1}], price: 160, cost: 40, period: event, tax: rental, kind: hire}
  - {id: lamps, name: Six lamps, section: Light, unit: set, contents: [{part: lamp, count: 6}], price: 90, cost: 12, period: event, tax: rental, kind: hire}
  - {id: set, name: Generator, section: Power, unit: each, contents: [{part: set, count: 1}], price: 190, cost: 60, period: event, tax: rental, kind: hire}
  - {id: box, name: Box, section: Power, unit: each, contents: [{part: piece, count: 1}], price: 30, cost: 6, period: event, tax: rental, kind: hire}
  - {id: lead, name: Lead 25 m, section: Power, unit: each, contents: [{part: piece, count: 1}], price: 20, cost: 3, period: event, tax: rental, kind: hire}
  - {id: cord, name: Cord 20 m, section: Power, unit: each, contents: [{part: piece, count: 1}], price: 6, cost: 1, period: event, tax: rental, kind: hire}
`
	metricGoods = `  - {id: heater, name: Heater, unit: piece, weight: 95 kg, bin: H-01-1, pack: {kind: loose, holds: 1, size: 1 m x 70 cm x 90 cm}, use: power, replacement: 2000}
  - {id: lamp, name: Lamp, unit: piece, weight: 3 kg, bin: H-01-2, pack: {kind: crate, holds: 6, size: 60 cm x 40 cm x 40 cm}, use: power, replacement: 90}
  - {id: set, name: Generator, unit: piece, weight: 310 kg, bin: H-01-3, pack: {kind: loose, holds: 1, size: 1.4 m x 80 cm x 1 m}, use: power, replacement: 9000}
  - {id: piece, name: Box or cable, unit: piece, weight: 8 kg, bin: H-01-4, pack: {kind: loose, holds: 1, size: 50 cm x 50 cm x 30 cm}, use: power, replacement: 120}
rules:`
	metricHead = `number: M-1
customer: {name: Test Customer}
event: {name: Test Event, guests: 40, use: seated}
dates: {quoted: 2027-01-10, deliver: 2027-06-11, event_from: 2027-06-12, event_to: 2027-06-12, strike: 2027-06-13, collect: 2027-06-13}
delivery: {distance: 32.5 km}
tents: [{id: a, family: hip, size: 6x12, count: 2, sides: [{side: front, wall: solid}, {side: right, wall: solid}, {side: back, wall: solid}, {side: left, wall: solid}]}]
`
)

// metricShop is the shop of metres with heat, light and current.
func metricShop(t *testing.T) *catalog.Catalog {
	t.Helper()
	shop := fstest.MapFS{}
	dir := os.DirFS("../testdata/shops/metric")
	names, err := fs.Glob(dir, "*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range names {
		data, err := fs.ReadFile(dir, name)
		if err != nil {
			t.Fatal(err)
		}
		shop[name] = &fstest.MapFile{Data: data}
	}
	shop["power.yaml"] = &fstest.MapFile{Data: []byte(metricPower)}
	shop["accessories.yaml"] = &fstest.MapFile{Data: []byte(metricItems)}
	shop["parts.yaml"] = &fstest.MapFile{Data: []byte(strings.Replace(string(shop["parts.yaml"].Data), "\nrules:", "\n"+metricGoods, 1))}
	c, list := catalog.Load("metric", shop)
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	return c
}

// Jobs of every kind of supply, in both systems of units: the formulas of the
// sheet are as true as all others.
func TestHeatAndPowerIsTrue(t *testing.T) {
	calc.Need(t)
	c, metric := demoCatalog(t), metricShop(t)
	var trials []trial
	for name, x := range map[string]struct {
		c    *catalog.Catalog
		body string
	}{
		"warm":        {c, warmJob},
		"heat-alone":  {c, warmTent + "heat: {inside: 21.5 C, outside: -7 C, hours: 12.5}\n"},
		"site":        {c, warmTent + "items: [{item: light-kit-20x40, quantity: 2}, {item: cooler-evap, quantity: 3}, {item: cord-short, quantity: 1}]\npower: {source: site, distance: 333 ft}\n"},
		"three-phase": {c, warmTent + "items: [{item: fan-drum, quantity: 9}, {item: generator-7, quantity: 1}, {item: diesel, quantity: 2.5}]\nheat: {inside: 70 F, outside: 0 F, hours: 30}\npower: {source: generator, distance: 700 ft, hours: 40}\n"},
		"no-load":     {c, warmTent + "power: {source: generator, distance: 10 ft, hours: 4}\n"},
		"open":        {c, "tents: [{id: a, family: span, size: 40x45, count: 2, sides: [{side: left, wall: solid}]}, {id: b, family: hip, size: 20x20}]\nheat: {inside: 60 F, outside: 70 F, hours: 3, tents: [b, a]}\n"},
		"metric":      {metric, metricHead + "items: [{item: lamps, quantity: 3}, {item: gas, quantity: 1}]\nheat: {inside: 20 C, outside: -6.5 C, hours: 9}\npower: {source: generator, distance: 60 m, hours: 11}\n"},
	} {
		q, book := laidOut(t, x.c, x.body)
		trials = append(trials, trial{name, q, book, 100})
	}
	checkTruth(t, trials)
}

// What is typed on the sheet gives the figures that the program computes for the
// job and the shop with those values; the edits are small enough that the same
// heaters and cables are chosen.
func TestEditedHeatAndPowerGivesTheSameFigures(t *testing.T) {
	calc.Need(t)
	_, book := laidOut(t, demoCatalog(t), warmJob)
	f := recalculated(t, []typing{{"heat and power", book, []typed{{"heat_inside", "", 66.5}, {"heat_outside", "", 35}, {"heat_hours", "", 9.5}, {"heat_u_roof", "", 1.3}, {"heat_u_wall", "", 1.1},
		{"heat_changes", "", 0.8}, {"fuel_reserve", "", 25}, {"power_distance", "", 145}, {"power_hours", "", 12}, {"generator_reserve", "", 10}, {"light_reach", "", 0.35}, {"light_wanted", "", 4},
		{"load_watts", "load_part=perimeter-light", 40}, {"load_factor", "load_part=heater-170", 0.81}, {"load_lumens", "load_part=perimeter-light", 3000}}}})[0]
	c, j := demoCatalog(t), jobOf(t, warmJob)
	inside, outside := unit.TemperatureIn(66.5, unit.Imperial), unit.TemperatureIn(35, unit.Imperial)
	j.Heat.Inside, j.Heat.Outside, j.Heat.Hours = &inside, &outside, money.Float(9.5)
	j.Power.Distance, j.Power.Hours = 145*unit.Foot, money.Int(12)
	p := c.Power
	p.Cover.Roof, p.Cover.Wall, p.Air.Changes, p.FuelReserve, p.Reserve = money.Float(1.3), money.Float(1.1), money.Float(0.8), money.Int(25), money.Int(10)
	p.Light.Reach, p.Light.Level = money.Float(0.35), money.Int(4)
	for i := range p.Loads {
		switch l := &p.Loads[i]; l.Part {
		case "perimeter-light":
			l.Watts, l.Lumens = money.Int(40), money.Int(3000)
		case "heater-170":
			l.Factor = money.Float(0.81)
		}
	}
	holdPower(t, f, mustQuote(t, c, j), mustQuote(t, demoCatalog(t), jobOf(t, warmJob)))
}

// holdPower holds a recalculated workbook against a quote; the share of the
// heaviest leg is one that the workbook keeps, by the first quote.
func holdPower(t *testing.T, f figures, q, was *quote.Quote) {
	t.Helper()
	h, s, first := q.Power.Heat, q.Power.Supply, was.Power.Supply
	if h.Tents[0].Sets[0].Count != was.Power.Heat.Tents[0].Sets[0].Count || s.Feeder.Item != first.Feeder.Item || s.Boxes != first.Boxes {
		t.Fatal("other heaters or cables were chosen; edits that change no choice were expected")
	}
	amps := money.DivRound(money.Round(q.Power.VA.Mul(first.BoxShare), 1), q.Catalog.Power.Circuit.Volts, 2)
	run := power.DropPercent(1, s.Feeder.Length.Mul(money.Int(s.Lengths)), amps, s.Ohms, q.Catalog.Power.Circuit.Volts)
	heaviest := money.Round(q.Power.VA.Mul(first.Share), 1)
	for name, want := range map[string]money.Number{"heat_rise": h.Rise, "heat_need": h.Need, "power_va": q.Power.VA, "power_watts": q.Power.Watts, "light_level": q.Power.Light.Level,
		"power_heaviest": heaviest, "power_kva": money.Round(heaviest.Mul(money.Int(s.Legs)).Shift(-3), 2), "power_capacity": s.Capacity, "power_load": s.Load,
		"power_lengths": money.Int(s.Lengths), "power_fullest": s.Largest, "power_branch": s.Branch, "power_amps": amps, "power_run": run} {
		f.named(t, name).number(t, name, want.InexactFloat64())
	}
	f.beside(t, "burner_burn", "burner_tent", "a").number(t, "burnt", h.Tents[0].Sets[0].Burn.InexactFloat64())
	for i := range q.Power.Fuels {
		x := &q.Power.Fuels[i]
		if x.Burn.IsZero() && x.Hourly.IsZero() {
			continue // no row: nothing burns it
		}
		f.beside(t, "fuel_needed", "fuel_item", x.Spec.Item).number(t, "needed "+x.Spec.Item, x.Needed.InexactFloat64())
	}
}

// A job that asks for nothing and has no load has no such sheet, nor has a shop
// without the file; what the shop must enter first is said on it.
func TestHeatAndPowerWhereItIsKnown(t *testing.T) {
	has := func(b *sheet.Book) bool {
		for _, s := range b.Sheets {
			if s.Name == workbook.SheetPower {
				return true
			}
		}
		return false
	}
	c := demoCatalog(t)
	if _, b := laidOut(t, c, "items: [{item: table-round-60, quantity: 3}]\n"); has(b) {
		t.Error("a job of tables has the sheet")
	}
	if _, b := laidOut(t, smallShop(t), redJob); has(b) {
		t.Error("a shop without the file has the sheet")
	}
	other := *c
	other.Demo = false
	q, list := quote.Build(&other, jobOf(t, warmJob))
	if q == nil {
		t.Fatal(list)
	}
	if err := workbook.Layout(q).Check(); err != nil || len(q.Power.Missing) != 3 {
		t.Errorf("missing %q, %v; three kinds of values were expected", q.Power.Missing, err)
	}
}
