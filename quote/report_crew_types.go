package quote

import "encoding/json"

// ReportSchedule is the crew plan: for each window of work its days, tasks and
// people, and what a person must look at.
type ReportSchedule struct {
	Windows  []ReportCrewPlan    `json:"windows"` // those with work
	Cautions []ReportCrewCaution `json:"cautions"`
}

// ReportCrewPlan is the plan of one window. Minutes of work run without breaks
// and nights; numbers of people are those of People.
type ReportCrewPlan struct {
	Window   string         `json:"window"`
	Crews    int            `json:"crews"`
	Leads    int            `json:"leads"`
	Asked    int            `json:"days_asked"`
	Finish   ReportMoment   `json:"finish"`
	Ready    ReportMoment   `json:"ready_by"`
	Inspect  *ReportMoment  `json:"inspection,omitempty"`
	Minutes  int            `json:"minutes"`
	Shortest int            `json:"minutes_at_least"` // that no plan can beat
	Work     int            `json:"person_minutes_at_tasks"`
	Paid     int            `json:"person_minutes_paid"`
	Idle     int            `json:"person_minutes_idle"`
	Tried    int            `json:"plans_compared"`
	Chain    []string       `json:"critical_chain"` // keys of tasks, first to last
	Days     []ReportShift  `json:"days"`
	Tasks    []ReportStint  `json:"tasks"`
	People   []ReportPerson `json:"people"`
	Sizes    []ReportSize   `json:"crew_sizes"`
	Spread   *ReportSpread  `json:"spread,omitempty"`
}

// ReportMoment is a time of a day of the window, the day counted from 1.
type ReportMoment struct {
	Day  int    `json:"day"`
	Date string `json:"date,omitempty"` // none: no such time
	At   string `json:"at"`
}

// ReportShift is a day of a window's crew.
type ReportShift struct {
	Day    int           `json:"day"`
	Date   string        `json:"date"`
	Call   string        `json:"call"`
	Arrive string        `json:"arrive"`
	Leave  string        `json:"leave"`
	End    string        `json:"end"`
	Breaks []ReportBreak `json:"breaks"`
}

// ReportBreak is a pause of a day.
type ReportBreak struct {
	Name string `json:"name"`
	From string `json:"from"`
	To   string `json:"to"`
	Paid bool   `json:"paid"`
}

// ReportStint is when a task is done, and by whom.
type ReportStint struct {
	Key      string        `json:"key"`
	Kind     string        `json:"kind"` // labour, drive, inspect
	Name     string        `json:"name"`
	Tent     string        `json:"tent,omitempty"`
	Crew     int           `json:"crew"`
	Hands    int           `json:"hands"`
	Minutes  int           `json:"minutes"`
	Start    ReportMoment  `json:"start"`
	Finish   ReportMoment  `json:"finish"`
	Spells   []ReportSpell `json:"spells"` // between breaks and nights
	People   []int         `json:"people"`
	Critical bool          `json:"critical"`
	After    []string      `json:"after"` // keys of the tasks that it waits for
}

// ReportSpell is a stretch of a task without a pause.
type ReportSpell struct {
	Day  int    `json:"day"`
	From string `json:"from"`
	To   string `json:"to"`
}

// ReportPerson is one of a crew with the hours of each day of the window.
type ReportPerson struct {
	Number int              `json:"number"`
	Crew   int              `json:"crew"`
	Lead   bool             `json:"lead"`
	Driver bool             `json:"driver"`
	Drives string           `json:"drives,omitempty"` // key of a trip
	Rides  string           `json:"rides_in,omitempty"`
	Skills []string         `json:"skills"`
	Days   []ReportOwnShift `json:"days"`
}

// ReportOwnShift is one person's day.
type ReportOwnShift struct {
	Call string `json:"call"`
	End  string `json:"end"`
	Work int    `json:"minutes_at_tasks"`
	Paid int    `json:"minutes_paid"`
}

// ReportSize is what another number of people would take and cost.
type ReportSize struct {
	People   int          `json:"people"`
	Days     int          `json:"days"`
	Nights   int          `json:"nights"`
	Finish   ReportMoment `json:"finish"`
	Meets    bool         `json:"in_time"`
	Paid     int          `json:"person_minutes_paid"`
	Overtime int          `json:"person_minutes_overtime"`
	Wages    json.Number  `json:"wages"`
	Beds     json.Number  `json:"beds"`
	Cost     json.Number  `json:"cost"`
	Asked    bool         `json:"asked"`
	Cheapest bool         `json:"cheapest"`
}

// ReportSpread is how sure the finish is, by simulation.
type ReportSpread struct {
	Runs   int          `json:"runs"`
	Half   ReportMoment `json:"half_sure"`
	Ninety ReportMoment `json:"ninety_sure"`
	Mean   json.Number  `json:"mean_minutes"`
	Dev    json.Number  `json:"standard_deviation"`
	InTime json.Number  `json:"in_time_percent"`
}

// ReportCrewCaution is something of the plan that a person must look at.
type ReportCrewCaution struct {
	Key    string `json:"key"`
	Window string `json:"window,omitempty"`
	Text   string `json:"text"`
	Source string `json:"source,omitempty"`
	Severe bool   `json:"severe"`
}

// ReportLifts is what is too heavy for one person, and what a tent's side asks
// for.
type ReportLifts struct {
	Parts    []ReportLift  `json:"parts"`    // that go along and one person should not lift
	Unjudged []string      `json:"unjudged"` // parts of which the shop does not say how they are lifted
	Raises   []ReportRaise `json:"raises"`
	Missing  []string      `json:"missing"` // what the shop has not entered
}

// ReportLift is how one part, or a pack of it, is lifted, by the revised lifting
// equation: the limit is 23 kg times the six multipliers.
type ReportLift struct {
	Part       string      `json:"part"`
	How        string      `json:"lift"`
	Count      int         `json:"count"`           // pieces that go along
	Holds      int         `json:"pieces_together"` // lifted at once
	Machine    bool        `json:"machine"`         // lifts it, nobody by hand
	Weight     json.Number `json:"weight"`
	Limit      json.Number `json:"limit_of_one"` // 0: beyond what the equation allows, or by machine
	Horizontal json.Number `json:"horizontal"`
	Vertical   json.Number `json:"vertical"`
	Distance   json.Number `json:"distance"`
	Asymmetry  json.Number `json:"asymmetry"`
	Frequency  json.Number `json:"frequency"`
	Coupling   json.Number `json:"coupling"`
	Index      json.Number `json:"index"`
	People     int         `json:"people"` // 0: a machine
}

// ReportRaise is the people that one side of a tent takes to lift.
type ReportRaise struct {
	Key    string `json:"key"`
	Tent   string `json:"tent"`
	How    string `json:"raising"`
	Side   string `json:"side"`
	Legs   int    `json:"legs"`
	Jacks  int    `json:"jacks"`
	Jacked bool   `json:"by_jacks"`
	People int    `json:"people"`
}
