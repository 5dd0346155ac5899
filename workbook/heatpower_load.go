package workbook

import (
	"fmt"
	"strings"

	"tentwright/catalog/money"
	"tentwright/quote/power"
	"tentwright/workbook/sheet"
)

// currentTable is every part of the shop's list that takes current or gives light;
// how many go along is looked up among the parts.
func (l *layout) currentTable(s *sheet.Sheet) {
	p := l.q.Power
	band(s, "What takes current and gives light", heatCols)
	t := l.startTable(s, "load", []column{
		{"name", "Part", 0, wrap()}, {"part", "Id", 0, sheet.Style{Role: sheet.Key}},
		{"count", "Go along", 0, calc(sheet.Whole)}, {"watts", "Watts of one", 0, input(sheet.General)}, {"factor", "Power factor", 0, input(sheet.General)},
		{"each", "VA of one", 0, calc(sheet.Num1)}, {"va", "VA of all", 0, sheet.Style{Role: sheet.Calc, Format: sheet.Num1, Bold: true}},
		{"all", "Watts of all", 0, calc(sheet.Num1)}, {"lumens", "Lumens of one", 0, input(sheet.Whole)}, {"light", "Lumens of all", 0, calc(sheet.Whole)},
	})
	for i := range p.Loads {
		x := &p.Loads[i]
		row := t.next()
		at := func(id string) string { return t.at(id, row) }
		t.add(text(x.Part.Name), text(x.Part.ID), formula("SUMIFS(need_quantity,need_part,"+at("part")+")", x.Count),
			value(x.Spec.Watts), value(x.Spec.PowerFactor()), formula("ROUND("+at("watts")+"/"+at("factor")+",1)", x.Each),
			formula(at("count")+"*"+at("each"), x.VA), formula(at("count")+"*"+at("watts"), x.Watts),
			value(x.Spec.Lumens), formula(at("count")+"*"+at("lumens"), x.Light))
	}
	t.end()
	l.allowColumn(t, "watts", sheet.Validation{Kind: sheet.Decimal, Min: "0", Max: "1000000"}, "watts of one, by its plate")
	l.allowColumn(t, "factor", sheet.Validation{Kind: sheet.Decimal, Min: "0.1", Max: "1"}, "power factor: 1 for plain resistance, less for motors and electronics")
	l.allowColumn(t, "lumens", sheet.Validation{Kind: sheet.Decimal, Min: "0", Max: "10000000"}, "light of one, in lumens")
	l.figures(s, []figure{
		{"power_va", "All that takes current", "apparent power: watts by the power factor", "VA", formula("SUM(load_va)", p.VA), sheet.Num1},
		{"power_watts", "The same in watts", "", "W", formula("SUM(load_all)", p.Watts), sheet.Num1}})
}

// lightRows are the light on the floor of all tents.
func (l *layout) lightRows(s *sheet.Sheet) {
	x := l.q.Power.Light
	if x == nil {
		return
	}
	l.figures(s, []figure{
		{"light_area", "Floor of all tents", "", l.sys.AreaUnit(), formula(`SUMIFS(count_amount,count_key,"*.plan")`, x.Area), sheet.Num1},
		{"light_level", "Light on the floor", "spread evenly: lumens x share that reaches the floor / floor", power.LightUnit(l.sys), formula("IF(light_area>0,ROUND(SUM(load_light)*light_reach/light_area,1),0)", x.Level), sheet.Num1}})
}

// supplyTables are the circuits, and how the current is led to them.
func (l *layout) supplyTables(s *sheet.Sheet, x *power.Supply) {
	if len(x.Circuits) > 0 {
		l.circuitTable(s, x)
	}
	if len(x.Circuits) > 0 {
		s.Breaks = append(s.Breaks, len(s.Rows)+2)
	}
	source := "the site's supply, to be looked at by an electrician"
	if x.Generator {
		source = "our generator"
	}
	band(s, "The way of the current", heatCols)
	l.figures(s, []figure{
		{"", "Source", source, "", sheet.Cell{}, sheet.General},
		{"power_legs", "Live legs", "over which the circuits are spread", "", value(x.Legs), sheet.Whole},
		{"power_line", "Voltage", "between two legs; of one leg, its own", "V", value(x.Line), sheet.General},
		{"power_share", "Share of the heaviest leg", "of the whole load, by the circuits above", "", value(x.Share), sheet.Percent},
		{"power_heaviest", "Heaviest leg", "", "VA", formula("ROUND(power_va*power_share,1)", x.Heaviest), sheet.Num1},
		{"power_kva", "Asked of the source", "each leg as strong as the heaviest must be", "kVA", formula("ROUND(power_heaviest*power_legs/1000,2)", x.KVA), sheet.Num2}})
	if x.Generator {
		all := `SUMPRODUCT((gear_kind="generator")*gear_taken*gear_gives)`
		l.figures(s, []figure{
			{"power_total", "Generators that go along", "by their plates", "kVA", formula(all, x.Total), sheet.Num2},
			{"power_capacity", "Of it to be used", "less what is kept free", "kVA", formula("power_total*(1-generator_reserve/100)", x.Capacity), sheet.Num2},
			{"power_load", "Share that runs", "of their plates, for the fuel", "", formula("IF(power_total>0,MIN(1,ROUND(power_va/1000/power_total,4)),0)", x.Load), sheet.Percent}})
	}
	if x.Feeder != nil {
		l.feederRows(s, x)
		l.cordRows(s, x)
	}
}

// feederRows are the first part of the way, from the source to the boxes.
func (l *layout) feederRows(s *sheet.Sheet, x *power.Supply) {
	c := l.q.Catalog.Power
	times, way := "2", "power_lengths*"+x.Feeder.Length.String()
	if x.Legs == 3 {
		times = "SQRT(3)"
	}
	volts := c.Circuit.Volts.String()
	lengths := "MAX(0,ROUNDUP(power_distance/" + x.Feeder.Length.String() + "-0.000001,0))"
	ohms := "ohm/" + pickUnit(l.sys, "1,000 ft", "km")
	l.figures(s, []figure{
		{"", "Feeder", l.q.Catalog.Item(x.Feeder.Item).Name + ", a run to each of " + itoa(x.Boxes) + " x " + l.q.Catalog.Item(x.Box.Item).Name, "", sheet.Cell{}, sheet.General},
		{"power_lengths", "Feeders in one run", "of " + x.Feeder.Length.String() + " " + l.sys.LengthUnit(), "", formula(lengths, x.Lengths), sheet.Whole},
		{"power_box_share", "Share of the fullest run", "of the whole load, on the heaviest leg of any box, by the circuits above", "", value(x.BoxShare), sheet.Percent},
		{"power_amps", "Current of that leg", fmt.Sprintf("%s A may flow for hours", c.Circuit.Lasting(x.Least())), "A", formula("ROUND(ROUND(power_va*power_box_share,1)/"+volts+",2)", x.Amps), sheet.Num2},
		{"power_ohms", "Resistance of its conductor", "gauge " + x.Feeder.Gauge + "; " + c.Conductor(x.Feeder.Gauge).Source, ohms, value(x.Ohms), sheet.General},
		{"power_run", "Voltage lost in the feeder", "2 x length x amperes x ohms / " + volts + " V: one leg alone, its whole current returning by the neutral", "percent",
			formula("ROUND(2*"+way+"*power_amps*power_ohms/1000*100/"+volts+",2)", x.Run), sheet.Num2},
		{"power_alike", "The same, legs loaded alike", "for comparison: " + times + " x length x amperes x ohms / " + x.Line.String() + " V", "percent",
			formula("ROUND("+times+"*"+way+"*power_amps*power_ohms/1000*100/power_line,2)", x.Alike), sheet.Num2}})
}

// cordRows are the last part of the way, on the fullest circuit.
func (l *layout) cordRows(s *sheet.Sheet, x *power.Supply) {
	c := l.q.Catalog.Power
	branch := value(money.Zero)
	if x.Cord != nil {
		conductor := c.Conductor(x.Cord.Gauge)
		amps := "ROUND(power_fullest/" + c.Circuit.Volts.String() + ",2)"
		branch = formula("ROUND(2*"+x.Cord.Length.String()+"*"+amps+"*"+conductor.Ohms.String()+"/1000*100/"+c.Circuit.Volts.String()+",2)", x.Branch)
	}
	limits := []string{"one cord on the fullest circuit", "feeder and cord"}
	if c.Drop != nil {
		limits[0] += "; at most " + c.Drop.Branch.String()
		limits[1] += "; at most " + c.Drop.Whole.String() + ". " + c.Drop.Source
	}
	l.figures(s, []figure{
		{"power_branch", "Voltage lost in a cord", limits[0], "percent", branch, sheet.Num2},
		{"power_drop", "Voltage lost in all", limits[1], "percent", formula("power_run+power_branch", x.Whole), sheet.Num2}})
}

// circuitTable is what hangs on each circuit, and on which leg it lies.
func (l *layout) circuitTable(s *sheet.Sheet, x *power.Supply) {
	volts := l.q.Catalog.Power.Circuit.Volts
	band(s, "Circuits of "+volts.String()+" V and "+l.q.Catalog.Power.Circuit.Amps.String()+" A, light apart from heaters", heatCols)
	t := l.startTable(s, "circuit", []column{
		{"name", "Circuit", 0, body(sheet.Text)}, {"on", "What hangs on it", 0, wrap()}, {"leg", "Leg", 0, body(sheet.Whole)}, {"box", "Box", 0, body(sheet.Whole)}, {"group", "For", 0, beside()},
		{"va", "VA", 0, calc(sheet.Num1)}, {"amps", "Amperes", 0, calc(sheet.Num2)}, {"share", "Of what it carries", 0, calc(sheet.PercentWhole)},
	})
	for i := range x.Circuits {
		k := &x.Circuits[i]
		row := t.next()
		var words, terms []string
		for _, on := range k.On {
			words = append(words, fmt.Sprintf("%d x %s", on.Count, on.Load.Part.Name))
			terms = append(terms, itoa(on.Count)+"*"+find("load_each", "load_part", quoted(on.Load.Part.ID)))
		}
		box := sheet.Cell{}
		if k.Box > 0 {
			box = value(k.Box)
		}
		t.add(text("Circuit "+itoa(i+1)), text(strings.Join(words, "; ")), value(k.Leg), box, text(k.Group), formula(strings.Join(terms, "+"), k.VA),
			formula("ROUND("+t.at("va", row)+"/"+volts.String()+",2)", money.DivRound(k.VA, volts, 2)),
			formula("ROUND("+t.at("va", row)+"/power_carries,4)", money.DivRound(k.VA, x.Carries, 4)))
	}
	t.end()
	s.Highlights = append(s.Highlights, sheet.Highlight{Range: t.column("share"), Formula: t.at("share", t.first) + ">1", Role: sheet.Warn})
	circuit := l.q.Catalog.Power.Circuit
	l.figures(s, []figure{
		{"power_carries", "A circuit carries", volts.String() + " V x " + circuit.Amps.String() + " A x " + circuit.Continuous.String() + " percent; " + circuit.Source, "VA", value(x.Carries), sheet.Num1},
		{"power_fullest", "The fullest circuit", "never less than the mean of all, should more be taken along", "VA", formula("MAX(MAX(circuit_va),ROUND(power_va/COUNT(circuit_va),1))", x.Largest), sheet.Num1}})
}

// fuelTable is what is burnt, and how much of it goes along.
func (l *layout) fuelTable(s *sheet.Sheet) {
	fuels := l.burntFuels()
	if len(fuels) == 0 {
		return
	}
	band(s, "Fuel", heatCols)
	t := l.startTable(s, "fuel", []column{
		{"name", "Item", 0, wrap()}, {"item", "Id", 0, sheet.Style{Role: sheet.Key}},
		{"burn", "Heaters burn, " + power.HeatUnit(l.sys), 0, calc(heatFormat(l.sys))}, {"holds", pickUnit(l.sys, "Btu", "kWh") + " in one", 0, body(sheet.Whole)},
		{"hourly", "Generators burn an hour", 0, calc(sheet.Num2)}, {"once", "At the heaters at once", 0, calc(sheet.Whole)}, {"needed", "Needed", 0, calc(sheet.Whole)},
		{"taken", "Goes along", 0, sheet.Style{Role: sheet.Calc, Format: sheet.General, Bold: true}}, {"planned", "Of it planned here", 0, body(sheet.General)},
		{"unit", "Unit", 0, beside()},
	})
	for _, f := range fuels {
		l.fuelRow(t, f)
	}
	t.end()
	s.Highlights = append(s.Highlights, sheet.Highlight{Range: t.column("taken"), Formula: t.at("taken", t.first) + "<" + t.at("needed", t.first), Role: sheet.Warn})
}

// burntFuels are the fuels that a heater or generator of the plan can burn.
func (l *layout) burntFuels() []*power.Fuel {
	var list []*power.Fuel
	for i := range l.q.Power.Fuels {
		if f := &l.q.Power.Fuels[i]; l.heats(f) != "" || l.runs(f) != "" {
			list = append(list, f)
		}
	}
	return list
}

// heats is the formula of how many of a fuel stand at the heaters; none where it
// heats nothing.
func (l *layout) heats(f *power.Fuel) string {
	h, c := l.q.Power.Heat, l.q.Catalog
	if h == nil || !h.Known {
		return ""
	}
	var terms []string
	for i := range c.Power.Heaters {
		if x := &c.Power.Heaters[i]; x.Fuel == f.Spec.Item {
			terms = append(terms, itoa(f.Spec.Feeds(x, c.Demo))+"*"+find("gear_taken", "gear_item", quoted(x.Item)))
		}
	}
	return strings.Join(terms, "+")
}

// runs is what all generators burn of a fuel in an hour, by their load; none
// where it runs nothing.
func (l *layout) runs(f *power.Fuel) string {
	x := l.q.Power.Supply
	if x == nil || !x.Generator || !x.Carries.IsPositive() {
		return ""
	}
	return l.rateFormula(f.Spec.Item)
}

// fuelRow is one item of fuel: what heaters burn of its heat by their hours, and
// what generators burn of it by theirs; no fewer than stand at the heaters.
func (l *layout) fuelRow(t *table, f *power.Fuel) {
	row := t.next()
	var terms []string
	least := "0"
	burn, holds, hourly, once := sheet.Cell{}, sheet.Cell{}, sheet.Cell{}, sheet.Cell{}
	if heats := l.heats(f); heats != "" {
		burn, holds = formula("SUMIFS(burner_burn,burner_fuel,"+t.at("item", row)+")", f.Burn), value(f.Spec.Holds.Mul(f.Spec.Energy))
		once = formula("MAX(0,ROUNDUP("+heats+"-0.000001,0))", f.Once)
		terms, least = append(terms, t.at("burn", row)+"*heat_hours/"+t.at("holds", row)), t.at("once", row)
	}
	if rate := l.runs(f); rate != "" {
		hourly = formula("ROUND("+rate+",4)", f.Hourly)
		terms = append(terms, t.at("hourly", row)+"*power_hours")
	}
	needed := formula("MAX(0,"+least+",ROUNDUP(("+strings.Join(terms, "+")+")*(1+fuel_reserve/100)-0.000001,0))", f.Needed)
	t.add(text(f.Item.Name), text(f.Item.ID), burn, holds, hourly, once, needed, formula(l.itemCount(f.Item.ID), f.Taken()), value(f.Planned), text(f.Item.Unit))
}

// rateFormula is what all generators burn of a fuel in an hour, by their load.
func (l *layout) rateFormula(fuel string) string {
	var terms []string
	for i := range l.q.Catalog.Power.Generators {
		if g := &l.q.Catalog.Power.Generators[i]; g.Fuel == fuel {
			terms = append(terms, find("gear_taken", "gear_item", quoted(g.Item))+"*("+g.Idle.String()+"+"+g.Full.Sub(g.Idle).String()+"*power_load)")
		}
	}
	return strings.Join(terms, "+")
}

// powerFormulas gives the formulas of both sides of a check that this sheet can
// make again; false for any other check.
func (l *layout) powerFormulas(kind, rest string) (is, limit string, ok bool) {
	switch kind {
	case "warm":
		return find("warm_need", "warm_id", quoted(rest)), find("warm_output", "warm_id", quoted(rest)), true
	case "heaters":
		return "heat_need", `SUMPRODUCT((gear_kind="heater")*gear_taken*gear_gives)`, true
	case "burns":
		return find("fuel_taken", "fuel_item", quoted(rest)), find("fuel_needed", "fuel_item", quoted(rest)), true
	case "lit":
		return "light_level", "light_wanted", true
	case "generator":
		return "power_kva", "power_capacity", true
	case "circuits":
		return "power_fullest", "power_carries", true
	case "cable":
		taken := find("gear_taken", "gear_item", quoted(rest))
		if x := l.q.Power.Supply; x.Cord != nil && x.Cord.Item == rest {
			taken = `SUMIFS(gear_taken,gear_kind,"cord")`
		}
		return taken, find("gear_needed", "gear_item", quoted(rest)), true
	case "amps":
		return "power_amps", "", true
	case "drop":
		return "power_drop", "", true
	}
	return "", "", false
}
