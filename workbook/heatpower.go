package workbook

import (
	"strings"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/power"
	"tentwright/workbook/sheet"
)

// heatCols is the width of the sheet in columns.
const heatCols = 10

// heatPower lays out heat, light and current. What a search chose, such as
// heaters, circuits and cables, are values; what is asked of them follows from
// the cells, and Checks holds the two against each other.
func (l *layout) heatPower() {
	p := l.q.Power
	if p == nil || p.Heat == nil && p.Supply == nil && p.VA.IsZero() && (p.Light == nil || p.Light.Lumens.IsZero()) {
		return
	}
	s := l.sheet(SheetPower, "What the tents lose and what warms them; what takes current and what brings it. Heaters, cables and generators planned here stand on the quote.", sheet.TabOffice, true)
	for _, w := range []float64{32, 46, 11, 11, 11, 11, 11, 11, 11, 11} {
		s.Columns = append(s.Columns, sheet.Column{Width: w})
	}
	l.demoRow(s)
	l.missingRows(s, p.Missing)
	l.heatSettings(s)
	if p.Heat != nil && len(p.Heat.Tents) > 0 {
		l.warmTable(s, p.Heat)
	}
	if p.Heat != nil && p.Heat.Known {
		l.burnerTable(s, p.Heat)
	}
	l.fuelTable(s)
	if p.Heat != nil && p.Heat.Known && len(p.Gear) > 0 {
		s.Breaks = append(s.Breaks, len(s.Rows)+2) // the band begins a page; without heat there is room for it
	}
	l.currentTable(s)
	l.lightRows(s)
	if p.Supply != nil && p.Supply.Carries.IsPositive() {
		l.supplyTables(s, p.Supply)
	}
	if len(p.Gear) > 0 {
		l.gearTable(s)
	}
	l.estimate(s, powerWords()...)
	s.FreezeRows, s.TitleRows = 2, [2]int{1, 1}
}

// powerWords are what must be said where gas and current are planned.
func powerWords() []string {
	return []string{
		"A licensed electrician connects, earths and tests generator, boxes and cables; a licensed gas fitter connects gas. The electrical, gas and fire codes of the place govern.",
		"Heaters stand outside the tent and blow in through ducts, clear of cloth and exits by what their makers ask; nothing with a flame or fumes is used inside. Put up a carbon monoxide alarm.",
		"Fuel stands outside, upright, apart from people and flames; nobody refuels a running engine. Keep an extinguisher at each heater and generator.",
		"A cylinder that is cold or nearly empty gives off less gas than a large heater burns: plan enough cylinders together, and shelter none of them in an enclosed space.",
		"Cables over walkways lie under covers; connections stay dry and off the ground. Light on the way out and emergency light have rules of their own: see Occupancy.",
	}
}

// missingRows say which values the shop must enter first.
func (l *layout) missingRows(s *sheet.Sheet, missing []string) {
	for _, what := range missing {
		s.Rows = append(s.Rows, sheet.Row{Cells: []sheet.Cell{in(text("Not worked out: it is not known "+what), sheet.Style{Role: sheet.Warn})}})
	}
}

// heatSettings are the inputs of the job and of the shop.
func (l *layout) heatSettings(s *sheet.Sheet) {
	p, c := l.q.Power, l.q.Catalog.Power
	degrees := sheet.Validation{Kind: sheet.Decimal, Min: "-100", Max: "200"}
	hours := sheet.Validation{Kind: sheet.Decimal, Min: "0", Max: "2000"}
	var list []setting
	if h := p.Heat; h != nil {
		deg := "degrees " + l.sys.TemperatureUnit()
		list = append(list, setting{"heat_inside", "Inside", deg, float(h.Inside), sheet.General, degrees},
			setting{"heat_outside", "Outside", deg + ", the coldest to plan for", float(h.Outside), sheet.General, degrees},
			setting{"heat_hours", "Hours of heating", "in all", float(h.Hours), sheet.General, hours})
		if h.Known {
			u := pickUnit(l.sys, "Btu/(h sq ft F)", "W/(m2 K)")
			small := sheet.Validation{Kind: sheet.Decimal, Min: "0.01", Max: "100"}
			list = append(list, setting{"heat_u_roof", "Heat through the roof", u + "; " + c.Cover.Source, float(h.Roof), sheet.General, small},
				setting{"heat_u_wall", "Heat through walls", u + "; " + c.Cover.Source, float(h.Wall), sheet.General, small},
				setting{"heat_changes", "Changes of the air", "an hour; " + c.Air.Source, float(h.Changes), sheet.General, sheet.Validation{Kind: sheet.Decimal, Min: "0", Max: "100"}})
		}
	}
	if x := p.Supply; x != nil {
		list = append(list, setting{"power_distance", "Way of the cable", l.sys.LengthUnit() + " from the source to the farthest tent", float(x.Distance), sheet.General, amounts()})
		if x.Generator {
			list = append(list, setting{"power_hours", "Hours of the generator", "that it runs in all", float(x.Hours), sheet.General, hours},
				setting{"generator_reserve", "Kept free of a generator", "percent of its plate", float(c.Reserve), sheet.PercentPoint, sheet.Validation{Kind: sheet.Decimal, Min: "0", Max: "90"}})
		}
	}
	if len(l.burntFuels()) > 0 {
		list = append(list, setting{"fuel_reserve", "Reserve of fuel", "percent on what is worked out", float(c.FuelReserve), sheet.PercentPoint, sheet.Validation{Kind: sheet.Decimal, Min: "0", Max: "200"}})
	}
	if p.Light != nil {
		list = append(list, setting{"light_reach", "Light that reaches the floor", "share of the lumens; " + c.Light.Source, float(p.Light.Reach), sheet.General, sheet.Validation{Kind: sheet.Decimal, Min: "0.01", Max: "1"}},
			setting{"light_wanted", "Light wanted", power.LightUnit(l.sys) + " on the floor; " + c.Light.Source, float(p.Light.Wanted), sheet.General, sheet.Validation{Kind: sheet.Decimal, Min: "0", Max: "100000"}})
	}
	if len(list) > 0 {
		band(s, "Planned for", heatCols)
		l.settings(s, list)
	}
}

// pickUnit is the word for a shop's units.
func pickUnit(sys unit.System, imperial, metric string) string {
	if sys == unit.Metric {
		return metric
	}
	return imperial
}

// figure is one named figure that follows from others, or that a search chose.
type figure struct {
	name, label, explain, unit string
	cell                       sheet.Cell
	format                     sheet.Format
}

// figures writes figures, one a row.
func (l *layout) figures(s *sheet.Sheet, list []figure) {
	for _, x := range list {
		style := calc(x.format)
		if x.cell.Formula == "" {
			style = body(x.format)
		}
		cells := []sheet.Cell{in(text(x.label), sheet.Style{Role: sheet.Label}), in(text(x.explain), sheet.Style{Role: sheet.Faint, Wrap: true}), in(x.cell, style)}
		if x.cell == (sheet.Cell{}) { // words alone
			cells[1].Style = sheet.Style{Role: sheet.Plain, Wrap: true}
			cells = cells[:2]
		} else if x.unit != "" {
			cells = append(cells, in(text(x.unit), beside()))
		}
		s.Rows = append(s.Rows, sheet.Row{Cells: cells})
		if x.name != "" {
			l.cellName(x.name, s, 3)
		}
	}
}

// notKnown stands where a figure would be that nobody gave the values for.
const notKnown = "not known"

// warmTable is what each line of tents loses, from its areas.
func (l *layout) warmTable(s *sheet.Sheet, h *power.Heat) {
	heat, area := power.HeatUnit(l.sys), l.sys.AreaUnit()
	band(s, "Heat that the tents lose, "+heat, heatCols)
	l.figures(s, []figure{{"heat_rise", "Rise", "inside less outside", l.sys.TemperatureUnit(), formula("MAX(0,heat_inside-heat_outside)", h.Rise), sheet.General}})
	t := l.startTable(s, "warm", []column{
		{"name", "Tent", 0, wrap()}, {"id", "Id", 0, sheet.Style{Role: sheet.Key}},
		{"many", "Tents", 0, calc(sheet.Whole)},
		{"roof", "Roof, " + area, 0, body(sheet.Num1)}, {"wall", "Walls, doors, gables, " + area, 0, body(sheet.Num1)},
		{"volume", "Volume, " + pickUnit(l.sys, "cu ft", "m3"), 0, body(sheet.Whole)}, {"open", "Open sides", 0, body(sheet.Whole)},
		{"each", "One loses", 0, calc(heatFormat(l.sys))}, {"need", "All lose", 0, sheet.Style{Role: sheet.Calc, Format: heatFormat(l.sys), Bold: true}},
		{"output", "Their heaters give", 0, calc(heatFormat(l.sys))},
	})
	for i := range h.Tents {
		w := &h.Tents[i]
		row := t.next()
		at := func(id string) string { return t.at(id, row) }
		each, need, output := in(text(notKnown), sheet.Style{Role: sheet.Warn}), in(text(notKnown), sheet.Style{Role: sheet.Warn}), sheet.Cell{}
		if h.Known {
			each, need = formula(l.lossFormula(at("roof"), at("wall"), at("volume")), w.Each), formula(at("each")+"*"+at("many"), w.Need)
			output = formula("SUMIFS(burner_output,burner_tent,"+at("id")+")", w.Output)
		}
		t.add(text(w.Tent.Label()), text(w.Tent.Job.ID), formula(find("tents_ordered", "tents_key", quoted("T:"+w.Tent.Job.ID)), w.Tent.Job.Many()),
			value(w.Roof), value(w.Wall), value(w.Volume), value(w.Open), each, need, output)
	}
	t.end()
	s.Highlights = append(s.Highlights, sheet.Highlight{Range: t.column("open"), Formula: t.at("open", t.first) + ">0", Role: sheet.Warn})
	if !h.Known {
		return
	}
	s.Highlights = append(s.Highlights, sheet.Highlight{Range: t.column("output"), Formula: t.at("output", t.first) + "<" + t.at("need", t.first), Role: sheet.Warn})
	l.figures(s, []figure{{"heat_need", "All tents lose", "", heat, formula("SUM(warm_need)", h.Need), heatFormat(l.sys)},
		{"", "How it is worked out", "(heat through the roof x its area + through walls x theirs + " + power.AirHeat(l.sys).String() + " x volume x changes) x rise; " + power.AirHeat(l.sys).String() + " " +
			pickUnit(l.sys, "Btu warms a cubic foot of air by 1 F", "Wh warms a cubic metre of air by 1 C") + "; the volume is the floor by the mean of eave and peak", "", sheet.Cell{}, sheet.General}})
}

// lossFormula is power.Heat.Loss in a cell.
func (l *layout) lossFormula(roof, wall, volume string) string {
	sum := "(heat_u_roof*" + roof + "+heat_u_wall*" + wall + "+" + power.AirHeat(l.sys).String() + "*" + volume + "*heat_changes)*heat_rise"
	if l.sys == unit.Metric {
		return "ROUND(" + sum + "/1000,2)"
	}
	return "ROUND(" + sum + ",0)"
}

// heatFormat shows Btu/h in wholes and kW with two places.
func heatFormat(sys unit.System) sheet.Format {
	if sys == unit.Metric {
		return sheet.Num2
	}
	return sheet.Whole
}

// burnerTable is which heaters each tent was given, and what they burn.
func (l *layout) burnerTable(s *sheet.Sheet, h *power.Heat) {
	band(s, "Heaters of each tent, the cheapest set by price that covers what it loses", heatCols)
	t := l.startTable(s, "burner", []column{
		{"name", "Heater", 0, wrap()}, {"tent", "For tent", 0, sheet.Style{Role: sheet.Key}},
		{"count", "Heaters", 0, body(sheet.Whole)}, {"one", "One gives", 0, body(heatFormat(l.sys))}, {"output", "All give", 0, calc(heatFormat(l.sys))},
		{"input", "Burn at full output", 0, body(heatFormat(l.sys))}, {"burn", "Burn at this loss", 0, calc(heatFormat(l.sys))},
		{"fuel", "Fuel", 0, sheet.Style{Role: sheet.Key, Wrap: true, Indent: 1}},
	})
	places := "0"
	if l.sys == unit.Metric {
		places = "2"
	}
	for i := range h.Tents {
		w := &h.Tents[i]
		for _, set := range w.Sets {
			row := t.next()
			n := money.Int(set.Count)
			need, output := find("warm_need", "warm_id", t.at("tent", row)), find("warm_output", "warm_id", t.at("tent", row))
			t.add(text(l.q.Catalog.Item(set.Heater.Item).Name), text(w.Tent.Job.ID), value(set.Count), value(set.Heater.Output),
				formula(t.at("count", row)+"*"+t.at("one", row), set.Heater.Output.Mul(n)), value(set.Heater.Input.Mul(n)),
				formula("ROUND("+t.at("input", row)+"*MIN("+need+","+output+")/"+output+","+places+")", set.Burn), text(set.Heater.Fuel))
		}
	}
	t.end()
}

// itemCount is the formula of how many of an item are ordered, by lines of its
// own and within kits.
func (l *layout) itemCount(item string) string {
	var terms []string
	for i := range l.q.Catalog.Items {
		it := &l.q.Catalog.Items[i]
		n := l.q.Catalog.Holds(it, item)
		if n.IsZero() {
			continue
		}
		term := "SUMIFS(build_ordered,build_id," + quoted(it.ID) + ")"
		if !n.Equal(money.One) {
			term = n.String() + "*" + term
		}
		terms = append(terms, term)
	}
	return strings.Join(terms, "+")
}

// beside is the style of words behind a figure.
func beside() sheet.Style { return sheet.Style{Role: sheet.Body, Format: sheet.Text, Indent: 1} }

// gearTable is what goes along, by hand or planned, beside what the plan needs.
func (l *layout) gearTable(s *sheet.Sheet) {
	band(s, "Heaters, generators, boxes and cables", heatCols)
	t := l.startTable(s, "gear", []column{
		{"name", "Item", 0, wrap()}, {"item", "Id", 0, sheet.Style{Role: sheet.Key}}, {"kind", "Kind", 0, body(sheet.Text)},
		{"needed", "Wanted", 0, calc(sheet.General)}, {"taken", "Goes along", 0, sheet.Style{Role: sheet.Calc, Format: sheet.General, Bold: true}},
		{"planned", "Of it planned here", 0, body(sheet.General)}, {"gives", "One gives or carries", 0, body(sheet.General)}, {"in", "In", 0, beside()},
	})
	for i := range l.q.Power.Gear {
		g := &l.q.Power.Gear[i]
		gives, unit := l.gives(g)
		format := sheet.General
		if gives.IsInteger() {
			format = sheet.Whole
		}
		t.add(text(g.Item.Name), text(g.Item.ID), text(g.Kind), l.gearNeeded(g), formula(l.itemCount(g.Item.ID), g.Taken()), value(g.Planned), in(value(gives), body(format)), text(unit))
	}
	t.end()
	s.Highlights = append(s.Highlights, sheet.Highlight{Range: t.column("taken"),
		Formula: "AND(" + t.at("kind", t.first) + `<>"cord",` + t.at("taken", t.first) + "<" + t.at("needed", t.first) + ")", Role: sheet.Warn})
}

// gives is what one piece of gear gives or carries, and in what.
func (l *layout) gives(g *power.Gear) (money.Number, string) {
	c := l.q.Catalog.Power
	for i := range c.Heaters {
		if g.Kind == power.KindHeater && c.Heaters[i].Item == g.Item.ID {
			return c.Heaters[i].Output, power.HeatUnit(l.sys)
		}
	}
	for i := range c.Generators {
		if g.Kind == power.KindGenerator && c.Generators[i].Item == g.Item.ID {
			return c.Generators[i].KVA, "kVA"
		}
	}
	for i := range c.Boxes {
		if g.Kind == power.KindBox && c.Boxes[i].Item == g.Item.ID {
			return money.Int(c.Boxes[i].Circuits), "circuits"
		}
	}
	for _, list := range [][]catalog.Cable{c.Feeders, c.Cords} {
		for i := range list {
			if list[i].Item == g.Item.ID {
				return list[i].Amps, "A"
			}
		}
	}
	return money.Zero, ""
}

// gearNeeded is how many of a piece of gear the plan needs; of feeders, by the
// way of the cable as it now is.
func (l *layout) gearNeeded(g *power.Gear) sheet.Cell {
	x := l.q.Power.Supply
	if g.Kind == power.KindFeeder && g.Needed.IsPositive() {
		return formula(itoa(x.Boxes)+"*power_lengths", g.Needed)
	}
	if g.Needed.IsZero() {
		return sheet.Cell{}
	}
	return in(value(g.Needed), body(sheet.General))
}
