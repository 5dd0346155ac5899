package catalog

import (
	"tentwright/catalog/money"
	"tentwright/catalog/source"
	"tentwright/catalog/unit"
)

// Occupancy is the tables of the code that governs how many people a tent may
// hold and how they get out. Codes differ by place and by year, so all of it is
// data, each table with its source.
type Occupancy struct {
	Where         source.Where
	Code          string         `yaml:"code,required" long:"200"`            // its name and edition
	Class         string         `yaml:"class,required" enum:"tent|membrane"` // column of the exits table
	Uses          []FloorUse     `yaml:"uses,required"`                       // the first holds where a job says nothing
	Takes         []FloorPart    `yaml:"takes"`                               // parts that stand on the floor
	Exits         ExitTable      `yaml:"exits,required"`                      // number and width
	Aisle         *AisleRule     `yaml:"aisle"`                               // none: not told
	Signs         *SignRule      `yaml:"signs"`                               // none: not counted
	Fire          *FireRule      `yaml:"extinguishers"`                       // likewise
	Wheelchairs   []SeatStep     `yaml:"wheelchairs"`                         // by rising guests
	WheelchairsBy string         `yaml:"wheelchairs_source" long:"200"`       // with the edition
	Permit        *PermitRule    `yaml:"permit"`                              // none: not told
	PlansFrom     int            `yaml:"plans_from" min:"0" max:"1000000"`    // people from whom a floor plan is wanted; 0: not told
	Clearances    []Clearance    `yaml:"clearances"`                          // measured to ropes and guys
	Rules         []OccupantRule `yaml:"rules"`                               // in words
}

// NoPeople is what a part takes its floor for where nobody stands on it.
const NoPeople = "none"

// FloorUse is a use of floor and the area that the code counts for one person.
type FloorUse struct {
	Where  source.Where
	ID     string    `yaml:"id,required" long:"60"`
	Name   string    `yaml:"name,required" long:"120"`
	Area   unit.Area `yaml:"area,required"`
	Of     string    `yaml:"of,required" enum:"net|gross"`
	Staff  bool      `yaml:"staff"` // not for guests: a kitchen, a stage
	Source string    `yaml:"source,required" long:"200"`
}

// FloorPart is the floor that one piece of a part takes, and for which use.
type FloorPart struct {
	Where source.Where
	Part  string    `yaml:"part,required"`
	Area  unit.Area `yaml:"area,required"`
	Use   string    `yaml:"use,required"` // NoPeople: nobody stands there
}

// ExitTable is how many exits people need, and how wide.
type ExitTable struct {
	Where     source.Where
	Source    string      `yaml:"source,required" long:"200"`
	Each      unit.Length `yaml:"each,required"`                // width of all exits together, for one person
	OpenEvery unit.Length `yaml:"open_every"`                   // by the shop's own reckoning an open side counts as an exit for each such length; none: as one
	ApartFrom int         `yaml:"apart_from" min:"0" max:"100"` // from so many exits on they lie on two sides at least; 0: not told
	Rows      []ExitRow   `yaml:"rows,required"`                // by rising number of people, the first from 1
}

// Sides is on how many sides of a tent so many exits must lie at least.
func (x *ExitTable) Sides(exits int) int {
	if x.ApartFrom == 0 || exits < x.ApartFrom {
		return 0
	}
	return 2
}

// ExitRow holds from so many people up to the next row.
type ExitRow struct {
	Where    source.Where
	From     int         `yaml:"from,required" min:"1" max:"1000000"`
	Exits    int         `yaml:"exits,required" min:"1" max:"100"`
	Tent     unit.Length `yaml:"tent"`     // least clear width of each; none: not told
	Membrane unit.Length `yaml:"membrane"` // of a membrane structure
	Note     string      `yaml:"note" long:"200"`
}

// Least is the least clear width of an exit in the column of a class.
func (r *ExitRow) Least(class string) unit.Length {
	if class == "membrane" {
		return r.Membrane
	}
	return r.Tent
}

// AisleRule is the width of an aisle: at least so much, and so much more for
// each so many people whom it serves.
type AisleRule struct {
	Where  source.Where
	Least  unit.Length `yaml:"least,required"`
	Add    unit.Length `yaml:"add,required"`
	For    int         `yaml:"for,required" min:"1" max:"10000"`
	Source string      `yaml:"source,required" long:"200"`
}

// SignRule says from how many people for one exit it is signed and lit, and by
// which tags the parts for it are known.
type SignRule struct {
	Where    source.Where
	From     int    `yaml:"from,required" min:"1" max:"1000000"`
	SignTag  string `yaml:"sign_tag,required" long:"60"`
	LightTag string `yaml:"light_tag,required" long:"60"`
	Lights   int    `yaml:"lights" min:"0" max:"1000"` // emergency lights at least in a tent whose exits are signed
	Source   string `yaml:"source,required" long:"200"`
}

// FireRule is how many extinguishers of class A a floor needs.
type FireRule struct {
	Where   source.Where
	Tag     string      `yaml:"tag,required" long:"60"`           // of the yard's extinguishers
	Rating  int         `yaml:"rating,required" min:"1" max:"40"` // of one of them, in units of A
	Hazard  string      `yaml:"hazard,required" long:"60"`        // of Hazards
	Most    unit.Area   `yaml:"most,required"`                    // that one may protect
	Travel  unit.Length `yaml:"travel,required"`                  // to the nearest one, walked
	Hazards []Hazard    `yaml:"hazards,required"`
	Source  string      `yaml:"source,required" long:"200"`
}

// Hazard is how much there is to burn.
type Hazard struct {
	Where source.Where
	ID    string    `yaml:"id,required" long:"60"`
	Name  string    `yaml:"name,required" long:"120"`
	Least int       `yaml:"least,required" min:"1" max:"40"` // rating that counts
	Area  unit.Area `yaml:"area,required"`                   // for each unit of A
}

// SeatStep is the wheelchair spaces from so many seats on: a number, and one
// more for each so many seats from there or part of them.
type SeatStep struct {
	Where  source.Where
	From   int `yaml:"from,required" min:"1" max:"1000000"`
	Spaces int `yaml:"spaces,required" min:"0" max:"100000"`
	Each   int `yaml:"each" min:"0" max:"1000000"`
}

// PermitRule is above which area a tent needs a permit.
type PermitRule struct {
	Where     source.Where
	Enclosed  unit.Area    `yaml:"enclosed,required"`
	Open      unit.Area    `yaml:"open,required"`                         // of tents that are open, all those together that no gap parts
	OpenShare money.Number `yaml:"open_share,required" min:"0" max:"100"` // percent of the edge without a wall that makes a tent open
	Gap       unit.Length  `yaml:"gap"`                                   // that parts open tents
	Item      string       `yaml:"item"`                                  // of the shop, that stands for the papers
	Source    string       `yaml:"source,required" long:"200"`
}

// Clearance is what stays free around the ropes and guys of a tent.
type Clearance struct {
	Where    source.Where
	To       string      `yaml:"to,required" long:"120"`
	Plan     []string    `yaml:"plan" enum:"edge|building|tent|vehicle"` // what it is measured to on the site plan; none: in words only
	Distance unit.Length `yaml:"distance,required"`
	Unless   string      `yaml:"unless" long:"250"`
	Source   string      `yaml:"source,required" long:"200"`
}

// OccupantRule is a rule of the code in words, for so many people and more.
type OccupantRule struct {
	Where  source.Where
	From   int    `yaml:"from" min:"0" max:"1000000"` // 0: always
	What   string `yaml:"what,required" long:"250"`
	Source string `yaml:"source,required" long:"200"`
}

// Use looks a use up by id; nil if the code has none.
func (o *Occupancy) Use(id string) *FloorUse {
	for i := range o.Uses {
		if o.Uses[i].ID == id {
			return &o.Uses[i]
		}
	}
	return nil
}

// UseOr is the use of an id, or the first where none is named.
func (o *Occupancy) UseOr(id string) *FloorUse {
	if u := o.Use(id); u != nil {
		return u
	}
	return &o.Uses[0]
}

// InForce is the hazard that the shop reckons with; its first if it names none
// that there is.
func (f *FireRule) InForce() *Hazard {
	for i := range f.Hazards {
		if f.Hazards[i].ID == f.Hazard {
			return &f.Hazards[i]
		}
	}
	return &f.Hazards[0]
}
