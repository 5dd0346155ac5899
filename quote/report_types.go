package quote

import "encoding/json"

// Report is a whole quote as plain data, for programs that read JSON. Money,
// hours and factors are exact decimal numbers; lengths, weights and volumes
// are in the units that Units names. Order is that of the stages, so that the
// same quote gives the same bytes.
type Report struct {
	Shop     string         `json:"shop"`
	Demo     bool           `json:"demonstration_prices"`
	Currency string         `json:"currency"` // ISO 4217
	Units    ReportUnits    `json:"units"`
	Job      ReportJob      `json:"job"`
	Totals   ReportTotals   `json:"totals"`
	Checks   []ReportCheck  `json:"checks"`
	Tents    []ReportTent   `json:"tents"`
	Orders   []ReportOrder  `json:"orders"`
	Counts   []ReportCount  `json:"counts"`
	Needs    []ReportNeed   `json:"needs"`
	Parts    []ReportPart   `json:"parts"`
	Out      ReportWay      `json:"out"`
	Back     ReportWay      `json:"back"`
	Tasks    []ReportTask   `json:"tasks"`
	Windows  []ReportWindow `json:"windows"`
	Skills   []ReportSkill  `json:"skills"`
	Lines    []ReportLine   `json:"price_lines"`
	Taxes    []ReportTax    `json:"taxes"`
	Dates    []ReportDay    `json:"dates"` // none where the shop has no calendar

	Occupancy ReportOccupancy  `json:"occupancy"`
	Anchorage *ReportAnchorage `json:"anchorage,omitempty"` // where the shop has an anchors file
	SitePlan  ReportPlan       `json:"site_plan"`
	Power     ReportPower      `json:"power"`
	Schedule  *ReportSchedule  `json:"schedule,omitempty"` // where the shop has a crew file
	Lifts     ReportLifts      `json:"lifts"`
}

// ReportUnits names the units of a report's figures, such as "ft" and "lb".
type ReportUnits struct {
	Length   string `json:"length"`
	Distance string `json:"distance"`
	Area     string `json:"area"`
	Mass     string `json:"weight"`
	Volume   string `json:"volume"`
	Speed    string `json:"speed"`
	Force    string `json:"force"`
	Pressure string `json:"pressure"`
}

// ReportTotals is the money of the whole job, its hours and its dates.
type ReportTotals struct {
	Hire       json.Number `json:"hire"`
	Subtotal   json.Number `json:"subtotal"`
	Tax        json.Number `json:"tax"`
	Total      json.Number `json:"total"`
	Deposit    json.Number `json:"deposit"`
	Balance    json.Number `json:"balance"`
	Received   json.Number `json:"received"`
	Due        json.Number `json:"due"`
	Cost       json.Number `json:"cost"`
	Margin     json.Number `json:"margin"`
	Percent    json.Number `json:"margin_percent"`
	Hours      json.Number `json:"hours"`
	ValidUntil string      `json:"valid_until"`
	BalanceBy  string      `json:"balance_by"`
}

// ReportCheck is a comparison and how it went: pass, look or stop.
type ReportCheck struct {
	Key    string      `json:"key"`
	Title  string      `json:"title"`
	State  string      `json:"state"`
	Value  json.Number `json:"value"`
	Limit  json.Number `json:"limit"`
	Rule   string      `json:"rule"` // "at least" or "at most" the limit
	Advice string      `json:"advice"`
}

// ReportOrder is a line that the customer orders or is offered.
type ReportOrder struct {
	Key      string      `json:"key"`
	Section  string      `json:"section"`
	Name     string      `json:"name"`
	Item     string      `json:"item,omitempty"`
	Tent     string      `json:"tent,omitempty"`
	Quantity json.Number `json:"quantity"`
	Ordered  json.Number `json:"ordered"`
	Optional bool        `json:"optional"`
	Chosen   bool        `json:"chosen"`
	Derived  string      `json:"from_count,omitempty"`
	Discount json.Number `json:"discount_percent"` // given on this line by hand
	Note     string      `json:"note,omitempty"`
	At       string      `json:"at,omitempty"` // line:column in the job file
}

// ReportCount is an amount that rules are driven by: Per times Many.
type ReportCount struct {
	Key    string      `json:"key"`
	Name   string      `json:"name"`
	Driver string      `json:"driver"`
	Tent   string      `json:"tent,omitempty"`
	Per    json.Number `json:"per"`
	Order  string      `json:"order,omitempty"` // whose quantity is Many
	Many   json.Number `json:"many"`
	Amount json.Number `json:"amount"`
}

// ReportNeed is parts asked for by one source: the larger of Min and Of times
// Per rounded up.
type ReportNeed struct {
	Key      string      `json:"key"`
	Part     string      `json:"part"`
	Source   string      `json:"source"`
	Rule     string      `json:"rule,omitempty"`
	Count    string      `json:"count,omitempty"`
	Order    string      `json:"order,omitempty"`
	Of       json.Number `json:"of"`
	Per      json.Number `json:"per"`
	Min      int         `json:"min"`
	Quantity int         `json:"quantity"`
}

// ReportPart is one part in total: what is counted and the spares, the larger
// of SpareTo and SpareOf percent. It rides in Packs packs: so many full ones,
// and one more with the pieces of PartPack where these are not 0.
type ReportPart struct {
	Part      string      `json:"part"`
	Name      string      `json:"name"`
	Bin       string      `json:"bin"`
	Unit      string      `json:"unit"`
	Counted   int         `json:"counted"`
	Spare     int         `json:"spare"`
	SpareOf   json.Number `json:"spare_percent"` // of Counted, rounded up
	SpareTo   int         `json:"spare_min"`
	Total     int         `json:"total"`
	Pack      string      `json:"pack"`       // kind: loose, bundle, crate ...
	Holds     int         `json:"pack_holds"` // pieces in a full one
	Packs     int         `json:"packs"`
	FullPacks int         `json:"full_packs"`
	PartPack  int         `json:"part_pack"` // pieces in the pack that is not full
	Each      json.Number `json:"weight_each"`
	Mass      json.Number `json:"weight"`
	Replace   json.Number `json:"replacement_charge,omitempty"` // for one that does not come back; left out where the shop sets none
}

// ReportWay is the vehicles of the way out or back and what each carries.
type ReportWay struct {
	Mass   json.Number   `json:"weight"`
	Trips  []ReportTrip  `json:"trips"`
	Shares []ReportShare `json:"shares"`
}

// ReportTrip is one drive of one vehicle.
type ReportTrip struct {
	Key     string      `json:"key"`
	Vehicle string      `json:"vehicle"`
	Name    string      `json:"name"`
	Number  int         `json:"number"`
	Turn    int         `json:"turn"`
	Tow     string      `json:"towed_by,omitempty"`
	Riders  int         `json:"riders"`
	Mass    json.Number `json:"weight"`
	Payload json.Number `json:"payload"`
	Volume  json.Number `json:"volume"`
	Room    json.Number `json:"room"`
	Longest json.Number `json:"longest"`
	Flags   []string    `json:"licence_flags"`
}

// ReportShare is so many of one part on one trip; order 1 is loaded first.
type ReportShare struct {
	Part     string      `json:"part"`
	Trip     string      `json:"trip"`
	Order    int         `json:"order"`
	Quantity int         `json:"quantity"`
	Packs    int         `json:"packs"`
	Mass     json.Number `json:"weight"`
	Volume   json.Number `json:"volume"`
}

// ReportTask is one labour rule applied to one count, in person-hours.
type ReportTask struct {
	Key     string      `json:"key"`
	Name    string      `json:"name"`
	Phase   string      `json:"phase"`
	Window  string      `json:"window"`
	Skill   string      `json:"skill"`
	Count   string      `json:"count"`
	Amount  json.Number `json:"amount"`
	Minutes json.Number `json:"minutes_each"`
	Fixed   json.Number `json:"minutes_fixed"`
	Sites   []string    `json:"site_factors"`
	Factor  json.Number `json:"factor"`
	Hours   json.Number `json:"hours"`
}

// ReportWindow is a stretch of work by one crew; hours from Person on are
// those of each person.
type ReportWindow struct {
	Window   string      `json:"window"`
	Name     string      `json:"name"`
	Crew     int         `json:"crew"`
	Smallest int         `json:"smallest_crew"`
	Days     int         `json:"days"`
	Worked   json.Number `json:"worked_before"` // by each person that week, as the job says
	Before   json.Number `json:"week_before"`   // the same, and by this job in its windows before this one
	Hours    json.Number `json:"hours"`
	Person   json.Number `json:"hours_each"`
	Day      json.Number `json:"hours_each_day"`
	DayOver  json.Number `json:"overtime_by_day"`
	WeekOver json.Number `json:"overtime_by_week"`
}

// ReportSkill is what one skill works in one window; Bill is to the customer
// where labour is charged.
type ReportSkill struct {
	Window string      `json:"window"`
	Skill  string      `json:"skill"`
	Hours  json.Number `json:"hours"`
	Over   json.Number `json:"overtime"`
	Cost   json.Number `json:"cost"`
	Bill   json.Number `json:"bill"`
}

// ReportLine is one line of the price with the terms of its amount.
type ReportLine struct {
	Key      string      `json:"key"`
	Section  string      `json:"section"`
	Kind     string      `json:"kind"`
	Name     string      `json:"name"`
	Quantity json.Number `json:"quantity"`
	Ordered  json.Number `json:"ordered"`
	Unit     string      `json:"unit"`
	Base     json.Number `json:"base"`
	Period   string      `json:"period,omitempty"`
	Factor   json.Number `json:"factor"`
	Break    json.Number `json:"off_by_quantity"`
	Class    json.Number `json:"off_by_class"`
	Hand     json.Number `json:"off_by_hand"`
	Job      json.Number `json:"off_job"`
	Offer    json.Number `json:"offer"`
	Amount   json.Number `json:"amount"`
	CostEach json.Number `json:"cost_each"`
	Cost     json.Number `json:"cost"`
	Tax      string      `json:"tax_class"`
}

// ReportTax is one tax that is due.
type ReportTax struct {
	Tax     string      `json:"tax"`
	Name    string      `json:"name"`
	Rate    json.Number `json:"rate_percent"`
	Taxable json.Number `json:"taxable"`
	Amount  json.Number `json:"amount"`
}
