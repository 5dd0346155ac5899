package quote

import (
	"encoding/json"

	"tentwright/quote/parts"
	"tentwright/quote/power"
)

// ReportPower is heat, light and current: what is asked for, what it takes and
// what is brought for it. Where the shop has no power file everything in it is
// empty. What the job asks for stands with the job.
type ReportPower struct {
	HeatUnit  string              `json:"heat_unit"`
	LightUnit string              `json:"light_unit"`
	Missing   []string            `json:"missing"` // values that shop or job must give first
	Heat      ReportHeating       `json:"heat"`
	Loads     []ReportLoad        `json:"loads"`
	VA        json.Number         `json:"load_va"`
	Watts     json.Number         `json:"load_watts"`
	Light     ReportLight         `json:"light"`
	Supply    ReportCurrent       `json:"supply"`
	Gear      []ReportGear        `json:"gear"`
	Fuels     []ReportFuel        `json:"fuels"`
	Planned   []ReportPlannedItem `json:"planned"`
}

// ReportHeating is what the heated tents lose and what warms them.
type ReportHeating struct {
	Tents []ReportWarm `json:"tents"`
	Need  json.Number  `json:"need"`
	Given json.Number  `json:"output"` // of all heaters that go along
}

// ReportWarm is a line of heated tents.
type ReportWarm struct {
	Tent    string         `json:"tent"`
	Roof    json.Number    `json:"roof_area"`
	Wall    json.Number    `json:"wall_area"`
	Volume  json.Number    `json:"volume"`
	Open    int            `json:"open_sides"`
	Each    json.Number    `json:"need_each"`
	Need    json.Number    `json:"need"`
	Output  json.Number    `json:"output"`
	Heaters []ReportBurner `json:"heaters"`
}

// ReportBurner is so many of a heater for a line of tents.
type ReportBurner struct {
	Item  string      `json:"item"`
	Count int         `json:"count"`
	Burn  json.Number `json:"burns"` // of the fuel's heat, at the need
}

// ReportLoad is a part that takes current or gives light.
type ReportLoad struct {
	Part   string      `json:"part"`
	Count  int         `json:"count"`
	Each   json.Number `json:"va_each"`
	VA     json.Number `json:"va"`
	Lumens json.Number `json:"lumens"`
}

// ReportLight is the light on the floor of all tents.
type ReportLight struct {
	Lumens json.Number `json:"lumens"`
	Area   json.Number `json:"area"`
	Level  json.Number `json:"level"`
	Wanted json.Number `json:"wanted"`
}

// ReportCurrent is how the current is led to the tents.
type ReportCurrent struct {
	Legs     int             `json:"legs"`
	Volts    json.Number     `json:"volts"`
	Circuits []ReportCircuit `json:"circuits"`
	KVA      json.Number     `json:"kva"`
	Capacity json.Number     `json:"kva_capacity"`
	Box      string          `json:"box"`
	Boxes    int             `json:"boxes"`
	Feeder   string          `json:"feeder"`
	Lengths  int             `json:"feeders_each"` // one behind the other, to each box
	Amps     json.Number     `json:"feeder_amps"`
	Run      json.Number     `json:"feeder_drop_percent"`
	Branch   json.Number     `json:"cord_drop_percent"`
	Whole    json.Number     `json:"drop_percent"`
}

// ReportCircuit is what hangs on one circuit.
type ReportCircuit struct {
	Group string      `json:"group"`
	Leg   int         `json:"leg"`
	VA    json.Number `json:"va"`
	On    []ReportOn  `json:"on"`
}

// ReportOn is so many of a part on a circuit.
type ReportOn struct {
	Part  string `json:"part"`
	Count int    `json:"count"`
}

// ReportGear is a heater, generator, box or cable.
type ReportGear struct {
	Item    string      `json:"item"`
	Kind    string      `json:"kind"`
	Needed  json.Number `json:"needed"`
	Ordered json.Number `json:"ordered"`
	Planned json.Number `json:"planned"`
}

// ReportFuel is an item that is burnt.
type ReportFuel struct {
	Item    string      `json:"item"`
	Burn    json.Number `json:"heat_an_hour"`
	Hourly  json.Number `json:"generators_an_hour"` // of the item
	Needed  json.Number `json:"needed"`
	Ordered json.Number `json:"ordered"`
	Planned json.Number `json:"planned"`
}

// ReportPlannedItem is what is brought beyond the order.
type ReportPlannedItem struct {
	Item     string      `json:"item"`
	Quantity json.Number `json:"quantity"`
	Why      string      `json:"why"`
}

// power writes the stage down, with empty lists where it did nothing.
func (r reporter) power() ReportPower {
	p := r.q.Power
	if p == nil {
		p = &power.Result{}
	}
	return ReportPower{HeatUnit: power.HeatUnit(r.sys), LightUnit: power.LightUnit(r.sys), Missing: list(p.Missing), Heat: r.heating(p.Heat),
		Loads: each(p.Loads, r.load), VA: exact(p.VA), Watts: exact(p.Watts), Light: r.light(p.Light), Supply: r.current(p.Supply),
		Gear: each(p.Gear, r.gear), Fuels: each(p.Fuels, r.burnt),
		Planned: each(p.Planned, func(x *parts.Planned) ReportPlannedItem {
			return ReportPlannedItem{Item: x.Item.ID, Quantity: exact(x.Quantity), Why: x.Why}
		})}
}

func (r reporter) heating(h *power.Heat) ReportHeating {
	out := ReportHeating{Tents: []ReportWarm{}}
	if h != nil {
		out.Tents, out.Need, out.Given = each(h.Tents, r.warm), exact(h.Need), exact(h.Taken)
	}
	return out
}

func (r reporter) warm(w *power.Warm) ReportWarm {
	return ReportWarm{Tent: w.Tent.Job.ID, Roof: exact(w.Roof), Wall: exact(w.Wall), Volume: exact(w.Volume), Open: w.Open,
		Each: exact(w.Each), Need: exact(w.Need), Output: exact(w.Output), Heaters: each(w.Sets, func(s *power.Set) ReportBurner {
			return ReportBurner{Item: s.Heater.Item, Count: s.Count, Burn: exact(s.Burn)}
		})}
}

func (r reporter) load(l *power.Load) ReportLoad {
	return ReportLoad{Part: l.Part.ID, Count: l.Count, Each: exact(l.Each), VA: exact(l.VA), Lumens: exact(l.Light)}
}

func (r reporter) light(l *power.Light) ReportLight {
	if l == nil {
		return ReportLight{}
	}
	return ReportLight{Lumens: exact(l.Lumens), Area: exact(l.Area), Level: exact(l.Level), Wanted: exact(l.Wanted)}
}

func (r reporter) current(s *power.Supply) ReportCurrent {
	out := ReportCurrent{Circuits: []ReportCircuit{}}
	if s == nil {
		return out
	}
	out.Legs, out.Volts, out.KVA, out.Capacity = s.Legs, exact(s.Line), exact(s.KVA), exact(s.Capacity)
	out.Circuits = each(s.Circuits, func(c *power.Circuit) ReportCircuit {
		return ReportCircuit{Group: c.Group, Leg: c.Leg, VA: exact(c.VA), On: each(c.On, func(o *power.On) ReportOn {
			return ReportOn{Part: o.Load.Part.ID, Count: o.Count}
		})}
	})
	if s.Feeder != nil {
		out.Box, out.Boxes, out.Feeder, out.Lengths = s.Box.Item, s.Boxes, s.Feeder.Item, s.Lengths
		out.Amps, out.Run, out.Branch, out.Whole = exact(s.Amps), exact(s.Run), exact(s.Branch), exact(s.Whole)
	}
	return out
}

func (r reporter) gear(g *power.Gear) ReportGear {
	return ReportGear{Item: g.Item.ID, Kind: g.Kind, Needed: exact(g.Needed), Ordered: exact(g.Ordered), Planned: exact(g.Planned)}
}

func (r reporter) burnt(f *power.Fuel) ReportFuel {
	return ReportFuel{Item: f.Spec.Item, Burn: exact(f.Burn), Hourly: exact(f.Hourly), Needed: exact(f.Needed), Ordered: exact(f.Ordered), Planned: exact(f.Planned)}
}
