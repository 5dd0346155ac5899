package catalog

import (
	"tentwright/catalog/money"
	"tentwright/catalog/source"
	"tentwright/catalog/unit"
)

// Anchors is what a shop knows of wind, soil, stakes and ballast. A pull or a
// weight on an anchor is written as a weight ("1400 lb"): the force with which
// that weight hangs.
//
// An entry marked demo is of the demonstration yard and counts for no other:
// a stake that was never pulled in the shop's own ground holds nothing there.
type Anchors struct {
	Where    source.Where
	Method   string         `yaml:"method,required" enum:"european|american"`
	Gust     unit.Speed     `yaml:"gust,required"`  // to plan for, at the height of the roof, unless a job has its own
	Limit    unit.Speed     `yaml:"limit,required"` // above it, an engineer designs what holds
	WindDemo bool           `yaml:"wind_demo"`      // of gust and limit
	Safety   Safety         `yaml:"safety,required"`
	Terrains []Terrain      `yaml:"terrains"`
	European *EuropeanWind  `yaml:"european"`
	American *AmericanWind  `yaml:"american"`
	Walls    *WallPressure  `yaml:"walls"`
	Stakes   []Stake        `yaml:"stakes"`
	Tests    []PullTest     `yaml:"pull_tests"`
	Holdfast *Holdfast      `yaml:"holdfast"`
	Groups   []GroupStep    `yaml:"groups"` // none: stakes of a group hold as much as single ones
	Ballast  []BallastPiece `yaml:"ballast"`
	Friction []Friction     `yaml:"friction"`
	Actions  []WindAction   `yaml:"actions"`
	// GustFactor is how many times the mean wind the gust is, for the Beaufort
	// force beside each action.
	GustFactor money.Number `yaml:"gust_factor" min:"1" max:"3"`
	GustDemo   bool         `yaml:"gust_demo"` // of the gust factor
}

// DesignGust is the gust that the shop plans for and its limit; none of either
// where they are the demonstration's and the shop is another, or where the shop
// has no anchors file.
func (c *Catalog) DesignGust() (gust, limit unit.Speed) {
	if c.Anchors == nil || c.Anchors.WindDemo && !c.Demo {
		return 0, 0
	}
	return c.Anchors.Gust, c.Anchors.Limit
}

// Safety is the factors between what is needed and what holds, and the share of
// a tent's own weight that is counted on.
type Safety struct {
	Where   source.Where
	Stake   money.Number `yaml:"stake,required" min:"1" max:"10"`
	Ballast money.Number `yaml:"ballast,required" min:"1" max:"10"`
	Dead    money.Number `yaml:"dead,required" min:"0" max:"1"`
}

// Terrain is how open the country round the site is.
type Terrain struct {
	Where    source.Where
	ID       string        `yaml:"id,required" long:"60"`
	Name     string        `yaml:"name,required" long:"120"`
	Factors  []TerrainStep `yaml:"factors"` // European: on pressure, by height; none: the gust is that at the roof
	Alpha    money.Number  `yaml:"alpha" min:"0" max:"20"`
	Gradient unit.Length   `yaml:"gradient"` // American: height where the ground no longer slows the wind
	Source   string        `yaml:"source"`
	Demo     bool          `yaml:"demo"`
}

// TerrainStep is the factor at one height; between two it is interpolated.
type TerrainStep struct {
	Where  source.Where
	Height unit.Length  `yaml:"height,required"`
	Factor money.Number `yaml:"factor,required" min:"0" max:"10"`
}

// EuropeanWind is peak velocity pressure, half the density times the square of
// the gust, with overall force coefficients of canopy roofs by slope.
type EuropeanWind struct {
	Where   source.Where
	Source  string       `yaml:"source,required"`
	Density money.Number `yaml:"density,required" min:"0.5" max:"2"` // of air, kg per cubic metre
	Roofs   []CanopyRow  `yaml:"roofs"`                              // by rising angle
}

// CanopyRow is the overall force coefficients of a duopitch canopy: down, up
// when the space below is empty, and up when it is blocked to the lee eave.
type CanopyRow struct {
	Where   source.Where
	Angle   money.Number `yaml:"angle,required" min:"-30" max:"60"` // degrees
	Down    money.Number `yaml:"down,required" min:"0" max:"5"`
	Open    money.Number `yaml:"open,required" min:"-5" max:"0"`
	Blocked money.Number `yaml:"blocked,required" min:"-5" max:"0"`
}

// AmericanWind is velocity pressure with net coefficients of open pitched roofs.
type AmericanWind struct {
	Where      source.Where
	Source     string       `yaml:"source,required"`                      // with the edition
	Constant   money.Number `yaml:"constant,required" min:"0"`            // pressure in psf at 1 mph
	Profile    money.Number `yaml:"profile,required" min:"0"`             // 2.01 or 2.41 by edition
	Direction  money.Number `yaml:"direction,required" min:"0" max:"1"`   // Kd; applied once, whatever the edition says where
	GustEffect money.Number `yaml:"gust_effect,required" min:"0" max:"2"` // G
	Net        []NetRow     `yaml:"net"`
}

// NetRow is the net coefficients of one load case at one slope; down is above
// zero.
type NetRow struct {
	Where              source.Where
	Angle              money.Number `yaml:"angle,required" min:"0" max:"60"`
	Case               string       `yaml:"case,required" enum:"A|B"`
	ClearWindward      money.Number `yaml:"clear_windward,required" min:"-5" max:"5"`
	ClearLeeward       money.Number `yaml:"clear_leeward,required" min:"-5" max:"5"`
	ObstructedWindward money.Number `yaml:"obstructed_windward,required" min:"-5" max:"5"`
	ObstructedLeeward  money.Number `yaml:"obstructed_leeward,required" min:"-5" max:"5"`
}

// WallPressure is the coefficients of closed sides: pressed on the windward,
// sucked on the leeward. One that is not given is not counted, and said so.
type WallPressure struct {
	Where    source.Where
	Windward *money.Number `yaml:"windward" min:"0" max:"3"`
	Leeward  *money.Number `yaml:"leeward" min:"0" max:"3"`
	Source   string        `yaml:"source,required"`
	Demo     bool          `yaml:"demo"` // of the leeward one
}

// Stake is a kind of stake that the yard owns, and what goes with each.
type Stake struct {
	Where    source.Where
	ID       string       `yaml:"id,required" long:"60"`
	Part     string       `yaml:"part,required"`
	Families []string     `yaml:"families"` // none: every family
	Driven   unit.Length  `yaml:"driven,required"`
	Diameter unit.Length  `yaml:"diameter,required"`
	Rake     money.Number `yaml:"rake" min:"0" max:"60"`          // degrees from upright, away from the tent
	Most     int          `yaml:"most,required" min:"1" max:"12"` // at one leg
	With     []Along      `yaml:"with"`
}

// Along is a part that goes with each anchor.
type Along struct {
	Where source.Where
	Part  string       `yaml:"part,required"`
	Count money.Number `yaml:"count,required" min:"0" max:"100"` // rounded up for each tent
}

// PullTest is a stake that the shop pulled out: the least of a series, in the
// way in which it is loaded.
type PullTest struct {
	Where   source.Where
	Stake   string    `yaml:"stake,required"`
	Surface string    `yaml:"surface,required"` // an option of the site's surface
	Way     string    `yaml:"way,required" enum:"guy|upright"`
	Pull    unit.Mass `yaml:"pull,required"`
	Date    unit.Date `yaml:"date,required"`
	By      string    `yaml:"by"`
	Demo    bool      `yaml:"demo"`
}

// Holdfast is a published table of picket holdfasts, for ground without a test.
type Holdfast struct {
	Where    source.Where
	Source   string       `yaml:"source,required"`
	Driven   unit.Length  `yaml:"driven,required"`
	Diameter unit.Length  `yaml:"diameter,required"`
	Rake     money.Number `yaml:"rake" min:"0" max:"60"` // degrees from upright; a stake driven steeper is not of the table
	Pull     unit.Mass    `yaml:"pull,required"`         // of a single picket
	Soils    []SoilFactor `yaml:"soils"`
}

// SoilFactor is what a surface holds beside the table's own soil.
type SoilFactor struct {
	Where   source.Where
	Surface string       `yaml:"surface,required"`
	Factor  money.Number `yaml:"factor,required" min:"0" max:"2"`
	Source  string       `yaml:"source,required"`
}

// GroupStep is what each stake of a group still holds of a single one.
type GroupStep struct {
	Where  source.Where
	Stakes int          `yaml:"stakes,required" min:"1" max:"20"`
	Factor money.Number `yaml:"factor,required" min:"0" max:"1"`
	Source string       `yaml:"source"`
}

// BallastPiece is a kind of ballast that the yard owns, and what goes with each.
// It weighs what its part weighs full.
type BallastPiece struct {
	Where    source.Where
	ID       string   `yaml:"id,required" long:"60"`
	Part     string   `yaml:"part,required"`
	Families []string `yaml:"families"`
	Most     int      `yaml:"most,required" min:"1" max:"40"` // at one leg
	With     []Along  `yaml:"with"`
}

// Friction is that of a kind of ballast on a surface.
type Friction struct {
	Where   source.Where
	Ballast string       `yaml:"ballast,required"`
	Surface string       `yaml:"surface,required"`
	Mu      money.Number `yaml:"mu,required" min:"0.01" max:"2"`
	Source  string       `yaml:"source,required"`
	Demo    bool         `yaml:"demo"`
}

// WindAction is what the crew does at a gust that the manager decides.
type WindAction struct {
	Where source.Where
	ID    string     `yaml:"id,required" enum:"watch|clear|down"`
	Gust  unit.Speed `yaml:"gust"` // none: not decided yet
	What  string     `yaml:"what,required" long:"200"`
	Demo  bool       `yaml:"demo"`
}
