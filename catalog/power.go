package catalog

import (
	"tentwright/catalog/money"
	"tentwright/catalog/source"
)

// Power is what a shop knows of heat, light and current. Its bare numbers are
// for the shop's units:
//
//	                    imperial              metric
//	heat                Btu/h                 kW
//	conductance         Btu/(h sq ft F)       W/(m2 K)
//	energy of a fuel    Btu for each lb       kWh for each kg
//	resistance          ohm for each 1,000 ft ohm for each km
//	length of a cable   ft                    m
//	light on the floor  foot-candles          lux
//
// Watts, volts, amperes, lumens and kVA are the same everywhere. An entry marked
// demo is of the demonstration yard and counts for no other.
type Power struct {
	Where       source.Where
	Cover       *Cover       `yaml:"cover"`
	Air         *Air         `yaml:"air"`
	Fuels       []Fuel       `yaml:"fuels"`
	FuelReserve money.Number `yaml:"fuel_reserve" min:"0" max:"200"` // percent on the fuel worked out
	Heaters     []Heater     `yaml:"heaters"`
	Loads       []PowerLoad  `yaml:"loads"`
	Light       *Light       `yaml:"light"`
	Circuit     *Circuit     `yaml:"circuit"`
	Drop        *DropLimits  `yaml:"drop"`
	Supply      *SiteSupply  `yaml:"site_supply"`
	Exits       int          `yaml:"exit_circuits" min:"1" max:"10"`     // over which loads of the group exit are spread; none: one
	Reserve     money.Number `yaml:"generator_reserve" min:"0" max:"90"` // percent of a generator that is kept free
	Generators  []Generator  `yaml:"generators"`
	Boxes       []Box        `yaml:"boxes"`
	Conductors  []Conductor  `yaml:"conductors"`
	Feeders     []Cable      `yaml:"feeders"`
	Cords       []Cable      `yaml:"cords"`
}

// Cover is how much heat passes through roof and walls.
type Cover struct {
	Where  source.Where
	Roof   money.Number `yaml:"roof,required" min:"0.01" max:"100"`
	Wall   money.Number `yaml:"wall,required" min:"0.01" max:"100"`
	Source string       `yaml:"source,required"`
	Demo   bool         `yaml:"demo"`
}

// Air is how often the air in a closed tent changes by itself.
type Air struct {
	Where   source.Where
	Changes money.Number `yaml:"changes,required" min:"0" max:"100"` // an hour
	Source  string       `yaml:"source,required"`
	Demo    bool         `yaml:"demo"`
}

// Fuel is an item that heaters or generators burn.
type Fuel struct {
	Where  source.Where
	Item   string       `yaml:"item,required"`
	Holds  money.Number `yaml:"holds" min:"0.01" max:"100000"`   // weight of the fuel in one of the item
	Energy money.Number `yaml:"energy" min:"0.01" max:"1000000"` // of each unit of that weight
	Source string       `yaml:"source"`
	Steady *Steady      `yaml:"steady"` // none: one of the item feeds any heater
}

// Steady is the heat that one of an item of fuel gives off for hours on the
// coldest day: a cylinder cools as it gives gas, and then gives less.
type Steady struct {
	Where  source.Where
	Output money.Number `yaml:"output,required" min:"0.01" max:"10000000"`
	Source string       `yaml:"source,required"`
	Demo   bool         `yaml:"demo"`
}

// Feeds is how many of the item must stand at one heater to feed it at full
// output; at least one.
func (f *Fuel) Feeds(h *Heater, demo bool) int {
	if f.Steady == nil || f.Steady.Demo && !demo {
		return 1
	}
	return max(1, money.RoundUp(h.Input.Div(f.Steady.Output)))
}

// Heater is an item that heats a tent from outside through ducts.
type Heater struct {
	Where  source.Where
	Item   string       `yaml:"item,required"`
	Output money.Number `yaml:"output,required" min:"0.01" max:"10000000"` // into the tent
	Input  money.Number `yaml:"input,required" min:"0.01" max:"10000000"`  // burnt at full output
	Fuel   string       `yaml:"fuel,required"`                             // item of the fuels
}

// PowerLoad is a part that takes current or gives light.
type PowerLoad struct {
	Where  source.Where
	Part   string       `yaml:"part,required"`
	Watts  money.Number `yaml:"watts,required" min:"0" max:"1000000"` // of one, by its plate
	Factor money.Number `yaml:"factor" min:"0.1" max:"1"`             // power factor; none: 1
	Lumens money.Number `yaml:"lumens" min:"0" max:"10000000"`
	Group  string       `yaml:"group,required" enum:"exit|heat|light|other"` // circuits are not shared between groups
}

// Light is how light is judged.
type Light struct {
	Where  source.Where
	Reach  money.Number `yaml:"reach,required" min:"0.01" max:"1"`   // share of the lumens that reaches the floor
	Level  money.Number `yaml:"level,required" min:"0" max:"100000"` // wanted on the floor
	Uses   []UseLevel   `yaml:"uses"`                                // levels of some uses of the floor
	Source string       `yaml:"source,required"`
	Demo   bool         `yaml:"demo"`
}

// UseLevel is the light wanted for one use of the floor.
type UseLevel struct {
	Where source.Where
	Use   string       `yaml:"use,required" long:"60"`
	Level money.Number `yaml:"level,required" min:"0" max:"100000"`
}

// Circuit is what one circuit carries: volts times amperes, of which only a
// share for a load that runs for hours.
type Circuit struct {
	Where      source.Where
	Volts      money.Number `yaml:"volts,required" min:"1" max:"1000"`
	Amps       money.Number `yaml:"amps,required" min:"1" max:"1000"`
	Continuous money.Number `yaml:"continuous,required" min:"1" max:"100"` // percent
	Source     string       `yaml:"source,required"`
	Demo       bool         `yaml:"demo"`
}

// Lasting is what of a current may flow for hours.
func (c *Circuit) Lasting(amps money.Number) money.Number {
	return amps.Mul(money.Percent(c.Continuous))
}

// DropLimits is how many percent of the voltage may be lost on the way.
type DropLimits struct {
	Where  source.Where
	Branch money.Number `yaml:"branch,required" min:"0.1" max:"50"` // from the box to the farthest load
	Whole  money.Number `yaml:"whole,required" min:"0.1" max:"50"`  // from the source to there
	Source string       `yaml:"source,required"`
}

// SiteSupply is what a site is taken to offer until it has been looked at.
type SiteSupply struct {
	Where source.Where
	Legs  int          `yaml:"legs,required" min:"1" max:"3"`
	Line  money.Number `yaml:"line,required" min:"1" max:"1000"` // volts between two legs; of one leg: its own
}

// Generator is an item that gives current.
type Generator struct {
	Where source.Where
	Item  string       `yaml:"item,required"`
	KVA   money.Number `yaml:"kva,required" min:"0.1" max:"10000"`
	Legs  int          `yaml:"legs,required" min:"1" max:"3"`
	Line  money.Number `yaml:"line,required" min:"1" max:"1000"`
	Fuel  string       `yaml:"fuel,required"`                    // item of the fuels
	Idle  money.Number `yaml:"idle,required" min:"0" max:"1000"` // of the fuel item, an hour, without load
	Full  money.Number `yaml:"full,required" min:"0" max:"1000"` // the same at full load
}

// Box is an item that splits a feeder into circuits.
type Box struct {
	Where    source.Where
	Item     string       `yaml:"item,required"`
	Circuits int          `yaml:"circuits,required" min:"1" max:"1000"`
	Amps     money.Number `yaml:"amps,required" min:"1" max:"10000"` // of each leg
	Plug     string       `yaml:"plug,required" long:"60"`           // of its feeder
}

// Conductor is the resistance of a copper conductor of one size.
type Conductor struct {
	Where  source.Where
	Gauge  string       `yaml:"gauge,required" long:"20"`
	Ohms   money.Number `yaml:"ohms,required" min:"0.0001" max:"1000"` // of each thousand of the unit of length
	Source string       `yaml:"source,required"`
}

// Cable is an item that carries current: a feeder from the source to a box, or
// a cord from a box to a load.
type Cable struct {
	Where  source.Where
	Item   string       `yaml:"item,required"`
	Gauge  string       `yaml:"gauge,required" long:"20"`
	Length money.Number `yaml:"length,required" min:"0.1" max:"10000"`
	Amps   money.Number `yaml:"amps,required" min:"1" max:"10000"`
	Plug   string       `yaml:"plug" long:"60"` // of a feeder, as its box has it
}

// Conductor finds a size of conductor; nil if the shop lists none.
func (p *Power) Conductor(gauge string) *Conductor {
	for i := range p.Conductors {
		if p.Conductors[i].Gauge == gauge {
			return &p.Conductors[i]
		}
	}
	return nil
}

// FuelOf finds a fuel by its item; nil if the shop lists none.
func (p *Power) FuelOf(item string) *Fuel {
	for i := range p.Fuels {
		if p.Fuels[i].Item == item {
			return &p.Fuels[i]
		}
	}
	return nil
}

// PowerFactor is a load's power factor, 1 where none is given.
func (l *PowerLoad) PowerFactor() money.Number {
	if l.Factor.IsZero() {
		return money.One
	}
	return l.Factor
}

// Wanted is the light wanted for a use of the floor, and the entry that says so.
func (l *Light) Wanted(use string) (money.Number, source.Where) {
	for i := range l.Uses {
		if l.Uses[i].Use == use {
			return l.Uses[i].Level, l.Uses[i].Where
		}
	}
	return l.Level, l.Where
}

// Open goes through the parts that one of an item holds, kits opened down: each
// with how many of it stand there, and again for each place where it does.
func (c *Catalog) Open(it *Item, each func(p *Part, count money.Number)) {
	c.open(it, money.One, each)
}

func (c *Catalog) open(it *Item, times money.Number, each func(*Part, money.Number)) {
	for _, content := range it.Contents {
		count := times.Mul(content.Count)
		if inner := c.Item(content.Item); inner != nil {
			c.open(inner, count, each)
		} else if p := c.Part(content.Part); p != nil {
			each(p, count)
		}
	}
}

// Holds is how many of one item stand in one of another, kits opened down; of
// an item in itself, one.
func (c *Catalog) Holds(in *Item, item string) money.Number {
	if in.ID == item {
		return money.One
	}
	sum := money.Zero
	for _, content := range in.Contents {
		if inner := c.Item(content.Item); inner != nil {
			sum = sum.Add(content.Count.Mul(c.Holds(inner, item)))
		}
	}
	return sum
}
