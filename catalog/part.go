package catalog

import (
	"tentwright/catalog/money"
	"tentwright/catalog/source"
	"tentwright/catalog/unit"
)

// Part is a thing with a bin in the yard: what is picked, loaded and counted
// back. Its weight is given, or follows from its pole or its cloth.
type Part struct {
	Where       source.Where
	ID          string        `yaml:"id,required" long:"60"`
	Name        string        `yaml:"name,required" long:"120"`
	Unit        string        `yaml:"unit,required" enum:"piece|pair|set|roll|bag|bottle|can"`
	Weight      *unit.Mass    `yaml:"weight"`
	Pole        *PoleStock    `yaml:"pole"`
	Cloth       *ClothStock   `yaml:"cloth"`
	Full        *unit.Mass    `yaml:"full"` // weight on site once filled with water; it rides empty
	Bin         string        `yaml:"bin,required" long:"30"`
	Pack        Pack          `yaml:"pack,required"`
	Use         string        `yaml:"use,required" enum:"mark|anchor|frame|top|walls|floor|power|furnish|safety|gear"` // when the crew first needs it
	Tags        []string      `yaml:"tags"`                                                                            // what labour rules count: stake, chair, table ...
	Spare       *Spare        `yaml:"spare"`
	Consumable  bool          `yaml:"consumable"` // used up, does not come back
	Tracked     bool          `yaml:"tracked"`    // each one carries its own tag
	Wets        bool          `yaml:"wets"`       // may come back wet and heavier
	Apart       bool          `yaml:"apart"`      // fuel and the like: rides in the open or vented, never shut in
	Owned       int           `yaml:"owned" min:"0"`
	Replacement *money.Number `yaml:"replacement" min:"0"` // charge for one that does not come back
}

// PoleStock is a pole, beam, rope or cable cut from a profile.
type PoleStock struct {
	Where   source.Where
	Profile string      `yaml:"profile,required"`
	Length  unit.Length `yaml:"length,required"`
}

// ClothStock is a fabric part. A wall gives its own size; a top section takes
// its area from the tent's geometry.
type ClothStock struct {
	Where  source.Where
	Fabric string      `yaml:"fabric,required"`
	Width  unit.Length `yaml:"width"`
	Height unit.Length `yaml:"height"`
}

// Pack is how the part rides: how many in one, and how large that is.
type Pack struct {
	Where source.Where
	Kind  string     `yaml:"kind,required" enum:"loose|bundle|bag|pail|crate|rack|pallet|roll|case|cage"`
	Holds int        `yaml:"holds,required" min:"1" max:"10000"`
	Size  unit.Size  `yaml:"size,required"`
	Tare  *unit.Mass `yaml:"tare"` // of the empty pack
}

// Spare is what is taken beyond the count, because small parts get lost.
type Spare struct {
	Where   source.Where
	Percent money.Number `yaml:"percent,required" min:"0" max:"100"`
	Min     int          `yaml:"min" min:"0"`
}

// Profile is a tube, box, rope or cable that poles are cut from.
type Profile struct {
	Where   source.Where
	ID      string       `yaml:"id,required" long:"60"`
	Name    string       `yaml:"name,required" long:"120"`
	Outside unit.Length  `yaml:"outside,required"`         // diameter, or the longer side of a box
	Across  unit.Length  `yaml:"across"`                   // the shorter side of a box; none for a tube
	Wall    unit.Length  `yaml:"wall"`                     // thickness; none for a solid rod or rope
	Density money.Number `yaml:"density,required" min:"1"` // kg per cubic metre
}

// Fabric is a cloth by its weight.
type Fabric struct {
	Where source.Where
	ID    string       `yaml:"id,required" long:"60"`
	Name  string       `yaml:"name,required" long:"120"`
	Grams money.Number `yaml:"grams,required" min:"1"` // per square metre
	Seam  money.Number `yaml:"seam" min:"1" max:"2"`   // for walls; tops use the family's
}

// PartRule takes parts along by a count: joint hardware by the joints, stakes
// by the legs, jacks and ladders by the tent, cloth by the area.
type PartRule struct {
	Where    source.Where
	ID       string       `yaml:"id,required" long:"60"`
	Part     string       `yaml:"part,required"`
	Driver   string       `yaml:"driver,required"`
	Families []string     `yaml:"families"`             // none: every family
	Per      money.Number `yaml:"per,required" min:"0"` // parts per one of the driver
	Min      int          `yaml:"min" min:"0"`          // when there is anything to count
	Why      string       `yaml:"why,required"`
}
