package catalog

import (
	"tentwright/catalog/money"
	"tentwright/catalog/source"
	"tentwright/catalog/unit"
)

// Family is one kind of tent as the yard owns it: how it is framed, which
// stock its members and fittings are, and the sizes it comes in.
type Family struct {
	Where     source.Where
	ID        string        `yaml:"id,required" long:"60"`
	Name      string        `yaml:"name,required" long:"120"`
	Kind      string        `yaml:"kind,required" enum:"hip-frame|pole|clear-span"` // the geometry generator
	Legs      []unit.Length `yaml:"legs,required"`                                  // eave heights it can stand at; the first is usual
	Fabric    string        `yaml:"fabric,required"`                                // of the top
	Seam      money.Number  `yaml:"seam,required" min:"1" max:"2"`                  // seam and hem allowance on fabric area
	Tolerance unit.Length   `yaml:"tolerance,required"`                             // stock may differ from a cut length by this
	Members   []MemberSpec  `yaml:"members,required"`
	Fittings  []FittingSpec `yaml:"fittings,required"`
	Walls     []WallSpec    `yaml:"walls"`
	Doors     []DoorSpec    `yaml:"doors"`
	Gutter    *GutterSpec   `yaml:"gutter"`
	Guy       *GuySpec      `yaml:"guy"`   // pole tents
	Span      *SpanSpec     `yaml:"span"`  // clear-span structures
	Poles     *PoleTentSpec `yaml:"poles"` // pole tents
	Anchorage AnchorageSpec `yaml:"anchorage,required"`
	AreaPrice *money.Number `yaml:"area_price" min:"0"` // per square foot or square metre of plan, for sizes without a price
	AreaCost  *money.Number `yaml:"area_cost" min:"0"`
	Period    string        `yaml:"period,required"`
	Tax       string        `yaml:"tax,required"`
	Sizes     []Size        `yaml:"sizes,required"`
}

// Kinds of families, each with a geometry generator of its own.
const (
	KindHip  = "hip-frame"
	KindPole = "pole"
	KindSpan = "clear-span"
)

// MemberSpec says what a role of pole, beam or cable is made from.
type MemberSpec struct {
	Where   source.Where
	Role    string      `yaml:"role,required" enum:"perimeter|ridge|common|hip|purlin|leg|centre-pole|quarter-pole|side-pole|guy|upright|rafter|eave-purlin|ridge-purlin|gable-upright|brace"`
	Profile string      `yaml:"profile,required"` // of the stock; guys and braces are ropes and cables
	TakeUp  unit.Length `yaml:"take_up"`          // length that the fitting takes up at each end
}

// FittingSpec maps a node of the frame to the stock fitting that makes it.
type FittingSpec struct {
	Where source.Where
	Role  string `yaml:"role,required" enum:"corner|side-tee|crown|ridge-tee|purlin-cross|hip-cross|base|peak|quarter-peak|pole-foot|eave|eave-corner|stake|arch-eave|arch-ridge|arch-splice|gable-head|base-plate"`
	Ways  int    `yaml:"ways" min:"0" max:"12"` // poles it takes; 0 fits any number
	Part  string `yaml:"part,required"`
}

// WallSpec is one kind of sidewall: the item it is priced by, its panels.
type WallSpec struct {
	Where   source.Where
	Kind    string      `yaml:"kind,required" long:"60"` // solid, window, mesh ... as the job names it
	Item    string      `yaml:"item,required"`           // priced by the foot or metre of side
	Overlap unit.Length `yaml:"overlap"`                 // each joint between panels
	Panels  []WallPanel `yaml:"panels,required"`
}

// WallPanel is a stock panel for one eave height.
type WallPanel struct {
	Where  source.Where
	Width  unit.Length `yaml:"width,required"`
	Height unit.Length `yaml:"height,required"` // eave height it is made for
	Part   string      `yaml:"part,required"`
}

// DoorSpec is one kind of door: the item it is priced by and the length of
// side that it takes from the wall.
type DoorSpec struct {
	Where source.Where
	Kind  string      `yaml:"kind,required" long:"60"`
	Item  string      `yaml:"item,required"`
	Width unit.Length `yaml:"width,required"`
	Clear unit.Length `yaml:"clear"` // of the opening, by which it counts as an exit; none: it does not
}

// GutterSpec is the gutter hung between two tents that stand side by side.
type GutterSpec struct {
	Where  source.Where
	Item   string      `yaml:"item,required"`   // priced by the foot or metre
	Length unit.Length `yaml:"length,required"` // of one stock section
	Part   string      `yaml:"part,required"`
}

// AnchorageSpec is the customary holding of a family, used until an anchor
// calculation asks for more.
type AnchorageSpec struct {
	Where   source.Where
	Out     unit.Length `yaml:"out"`                              // distance of the outer stake from the leg
	PerLeg  int         `yaml:"per_leg,required" min:"1" max:"8"` // anchors per leg, side pole or base plate
	Corner  int         `yaml:"corner,required" min:"1" max:"8"`  // anchors at a corner
	Ballast int         `yaml:"ballast,required" min:"1" max:"8"` // ballast pieces where no stake may be driven
}

// PoleTentSpec holds what only a pole tent has.
type PoleTentSpec struct {
	Where       source.Where
	SideSpacing unit.Length `yaml:"side_spacing,required"` // side poles stand at most this far apart
	QuarterFrom unit.Length `yaml:"quarter_from,required"` // quarter poles from this width up
}

// GuySpec is how a pole tent's side poles are guyed.
type GuySpec struct {
	Where source.Where
	Slack unit.Length `yaml:"slack"` // rope beyond the straight line, for knots and tensioning
}

// SpanSpec holds what only a clear-span structure has.
type SpanSpec struct {
	Where         source.Where
	PurlinSpacing unit.Length `yaml:"purlin_spacing,required"`               // along the rafter, at most
	GableSpacing  unit.Length `yaml:"gable_spacing,required"`                // between gable uprights, at most
	BeamMax       unit.Length `yaml:"beam_max,required"`                     // longest rafter piece; longer ones are spliced
	BraceEvery    int         `yaml:"brace_every,required" min:"1" max:"20"` // bays between braced bays
}

// Size is one size that the yard owns of a family.
type Size struct {
	Where  source.Where
	ID     string        `yaml:"id,required" long:"60"` // e.g. 20x30
	Width  unit.Length   `yaml:"width,required"`
	Length unit.Length   `yaml:"length,required"`
	Bay    unit.Length   `yaml:"bay,required"` // frame bay, pole-tent middle section, or arch spacing
	End    unit.Length   `yaml:"end"`          // length of each end section of a pole tent
	Rise   unit.Length   `yaml:"rise,required"`
	Top    TopSpec       `yaml:"top,required"`
	Owned  int           `yaml:"owned" min:"0"` // how many can be put up at once
	Price  *money.Number `yaml:"price" min:"0"` // event rate
	Cost   *money.Number `yaml:"cost" min:"0"`  // wear, washing and storage of one hire
	Free   bool          `yaml:"free"`
}

// Floor is the plan of a size.
func (s *Size) Floor() unit.Area { return unit.Area(s.Length.Metres() * s.Width.Metres()) }

// TopSpec names the stock sections of the top. Either one piece, or ends and
// middles, or bay panels and gables; the generator counts them.
type TopSpec struct {
	Where    source.Where
	OnePiece string `yaml:"one_piece"`
	End      string `yaml:"end"`
	Middle   string `yaml:"middle"`
	Bay      string `yaml:"bay"`
	Gable    string `yaml:"gable"`
}
