package catalog

import (
	"tentwright/catalog/money"
	"tentwright/catalog/source"
	"tentwright/catalog/unit"
)

// Crew is how the yard's crews work: their days and breaks, the light they work
// by, what they may lift and drive, how far times spread, and what the lead
// looks at on arrival and before the hand-over.
type Crew struct {
	Where      source.Where
	Days       []CrewDay    `yaml:"days,required"`                             // one for each window of work
	Breaks     []Break      `yaml:"breaks"`                                    // of every day, in order
	Unbroken   unit.Span    `yaml:"unbroken"`                                  // longest work without a break before the plan says so; none: it never does
	Daylight   []Daylight   `yaml:"daylight"`                                  // by month; none: light limits nothing
	Lead       int          `yaml:"people_per_lead,required" min:"1" max:"50"` // one lead for so many people
	Night      money.Number `yaml:"night" min:"0"`                             // cost of a bed and meals for one person away overnight
	Inspection unit.Span    `yaml:"inspection,required"`                       // how long an inspection takes
	Tries      int          `yaml:"tries,required" min:"1" max:"100000"`       // schedules that are made in search of a short one
	Spread     Spread       `yaml:"spread,required"`
	Whole      []string     `yaml:"whole" enum:"load|travel|unload|lay out|assemble|raise|anchor|sidewalls|floor|furnish|strike|reload|return|wash and dry|put away"` // phases of which no task is left half done overnight

	Lifting *Lifting     `yaml:"lifting"` // none: nothing is said of what one person may lift
	Raising []Raising    `yaml:"raising"`
	Duty    *Duty        `yaml:"duty"` // none: nothing is said of driving hours
	Heat    *HeatCaution `yaml:"heat"`

	Arrival  []CrewPoint `yaml:"arrival"`  // what the lead looks at on arrival
	Handover []CrewPoint `yaml:"handover"` // what the lead looks at before the tent is handed over
}

// CrewDay is when the day of a window's crew begins and ends, and on which day
// the window begins.
type CrewDay struct {
	Where  source.Where
	Window string     `yaml:"window,required"`
	Start  unit.Clock `yaml:"start,required"`                      // the crew is in the yard
	Finish unit.Clock `yaml:"finish,required"`                     // the crew is back in the yard
	First  string     `yaml:"first" enum:"deliver|strike|collect"` // the window's first day is this day of the job
	Last   string     `yaml:"last" enum:"deliver|strike|collect"`  // or its last day is the day before this one
	Least  unit.Span  `yaml:"least"`                               // for so long each person is paid who is called, however soon they go home
	Site   bool       `yaml:"site"`                                // it works on the site, so that it drives there and home, needs light, and the job's hours hold
}

// Break is a pause of everybody after so much work in a day.
type Break struct {
	Where source.Where
	Name  string    `yaml:"name,required" long:"60"`
	After unit.Span `yaml:"after,required"` // since the day began, earlier breaks included
	Lasts unit.Span `yaml:"lasts,required"`
	Paid  bool      `yaml:"paid"`
}

// Daylight is between which times there is light enough to work in a month.
type Daylight struct {
	Where source.Where
	Month string     `yaml:"month,required" enum:"january|february|march|april|may|june|july|august|september|october|november|december"`
	From  unit.Clock `yaml:"from,required"`
	Until unit.Clock `yaml:"until,required"`
}

// Spread is how far minutes spread where a rule does not say, in percent of its
// likely ones.
type Spread struct {
	Where       source.Where
	Optimistic  money.Number `yaml:"optimistic,required" min:"1" max:"100"`
	Pessimistic money.Number `yaml:"pessimistic,required" min:"100" max:"1000"`
}

// Lifting is what one person may lift by the lifting equation of NIOSH
// (Publication 94-110), how heavy parts are lifted in fact, and what a team
// lifts together.
type Lifting struct {
	Where     source.Where
	Frequency []FrequencyRow `yaml:"frequency"` // multipliers, rising; none: no lift is judged
	Poor      *PoorGrip      `yaml:"poor_grip"` // none: no lift with a poor grip is judged
	Lifts     []Lift         `yaml:"lifts,required"`
	Team      []TeamShare    `yaml:"team"`  // rising; none: nobody says what several lift together
	Rules     []string       `yaml:"rules"` // labour rules whose smallest crew follows: those that are counted by a tag carry the parts with it, the others every part
}

// FrequencyRow is the frequency multiplier for so many lifts a minute, by how
// long the lifting lasts and by where it begins: below 75 cm (30 in), or there
// and above. A number between two rows takes the later one; beyond the last
// row nothing may be lifted.
type FrequencyRow struct {
	Where     source.Where
	PerMinute money.Number   `yaml:"per_minute,required" min:"0.2" max:"20"`
	Low       []money.Number `yaml:"low,required" min:"0" max:"1"`  // up to 1 h, 2 h, 8 h
	High      []money.Number `yaml:"high,required" min:"0" max:"1"` // likewise
	Source    string         `yaml:"source" long:"250"`
	Demo      bool           `yaml:"demo"`
}

// PoorGrip is the coupling multiplier of what is hard to hold. Those of a good
// and of a fair grip are in the equation.
type PoorGrip struct {
	Where  source.Where
	Times  money.Number `yaml:"times,required" min:"0" max:"1"`
	Source string       `yaml:"source" long:"250"`
	Demo   bool         `yaml:"demo"`
}

// Lift is how pieces or packs of some kind are lifted. A lift that names the
// part comes before one for its kind of pack.
type Lift struct {
	Where      source.Where
	ID         string       `yaml:"id,required" long:"60"`
	Name       string       `yaml:"name,required" long:"120"`
	Parts      []string     `yaml:"parts"`
	Packs      []string     `yaml:"packs" enum:"loose|bundle|bag|pail|crate|rack|pallet|roll|case|cage"`
	Whole      bool         `yaml:"whole_pack"`                     // the full pack is lifted, not piece by piece
	Machine    bool         `yaml:"machine"`                        // a machine or wheels lift it: nobody does by hand, and nothing below is asked
	Horizontal unit.Length  `yaml:"horizontal"`                     // hands from the ankles, the farther of both ends
	From       unit.Length  `yaml:"from"`                           // height of the hands where the lift begins
	To         unit.Length  `yaml:"to"`                             // and ends
	Angle      int          `yaml:"angle" min:"0" max:"180"`        // twist, in degrees, the greater of both ends
	PerMinute  money.Number `yaml:"per_minute" min:"0" max:"20"`    // lifts
	Hours      int          `yaml:"hours" min:"1" max:"8"`          // that the lifting lasts: 1, 2 or 8
	Coupling   string       `yaml:"coupling" enum:"good|fair|poor"` // grip
}

// TeamShare is what so many people lift together, as a share of the sum of
// what each may lift alone.
type TeamShare struct {
	Where  source.Where
	People int          `yaml:"people,required" min:"2" max:"20"`
	Share  money.Number `yaml:"share,required" min:"0.1" max:"1"`
	Source string       `yaml:"source" long:"250"`
	Demo   bool         `yaml:"demo"`
}

// Raising is how many people it takes to lift one side of a tent of some
// families: for each leg of its longest side, by hand or with jacks.
type Raising struct {
	Where    source.Where
	ID       string       `yaml:"id,required" long:"60"`
	Families []string     `yaml:"families,required"`
	Rules    []string     `yaml:"rules,required"`                    // labour rules that lift or lower a side
	Hands    money.Number `yaml:"hands,required" min:"0.1" max:"10"` // people for each leg
	Jack     string       `yaml:"jack"`                              // part; with one at each leg of the side
	WithJack money.Number `yaml:"with_jack" min:"0.1" max:"10"`      // people for each leg
	Source   string       `yaml:"source" long:"250"`
}

// Duty is how long a driver may drive and be on duty.
type Duty struct {
	Where  source.Where
	Over   unit.Mass `yaml:"over"`            // gross rating, or that of a combination, from which the rule holds
	Drive  unit.Span `yaml:"drive,required"`  // in a day
	Window unit.Span `yaml:"window,required"` // from coming on duty until driving must end
	Off    unit.Span `yaml:"off,required"`    // between two days
	After  unit.Span `yaml:"break_after"`     // of driving a break is due
	Break  unit.Span `yaml:"break"`           // and lasts
	Week   unit.Span `yaml:"week"`            // on duty in so many days
	Days   int       `yaml:"days" min:"1" max:"14"`
	Source string    `yaml:"source,required" long:"250"`
}

// HeatCaution is what is said from which heat index on.
type HeatCaution struct {
	Where  source.Where
	Bands  []HeatBand `yaml:"bands,required"`
	Source string     `yaml:"source" long:"250"`
	Demo   bool       `yaml:"demo"`
}

// HeatBand is a heat index and what is done from there on.
type HeatBand struct {
	Where source.Where
	From  unit.Temperature `yaml:"from,required"`
	Name  string           `yaml:"name,required" long:"60"`
	What  string           `yaml:"what,required" long:"250"`
}

// CrewPoint is one thing that the lead looks at and ticks.
type CrewPoint struct {
	Where source.Where
	ID    string `yaml:"id,required" long:"60"`
	What  string `yaml:"what,required" long:"250"`
	Needs string `yaml:"needs" enum:"stakes|ballast|tents|walls|heaters|power|stage"` // only where the job has any
}

// What a point can be for, beside [NeedsStakes] and [NeedsTents].
const (
	NeedsBallast = "ballast"
	NeedsWalls   = "walls"
	NeedsHeaters = "heaters"
	NeedsPower   = "power" // something that takes or gives current
	NeedsStage   = "stage"
)
