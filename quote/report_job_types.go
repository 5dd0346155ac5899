package quote

import "encoding/json"

// ReportJob is what the job asks for, beside tents and items. Where it leaves a
// choice to the shop, such as class, zone or show_prices, the one in force
// stands here.
type ReportJob struct {
	Number   string          `json:"number"`
	Revision int             `json:"revision"`
	Customer string          `json:"customer"`
	Contact  string          `json:"customer_contact"`
	Address  []string        `json:"customer_address"` // line by line
	Phone    string          `json:"customer_phone"`
	Email    string          `json:"customer_email"`
	Class    string          `json:"customer_class"`
	Exempt   bool            `json:"tax_exempt"`
	Event    string          `json:"event"`
	Guests   int             `json:"guests"`
	Use      string          `json:"use"`           // of the floors
	Venue    []string        `json:"event_address"` // line by line
	Place    string          `json:"tax_place"`
	OnSite   string          `json:"site_contact"`
	Access   string          `json:"access"`
	Parking  string          `json:"parking"`
	Dates    ReportDates     `json:"dates"`
	Distance json.Number     `json:"distance"` // one way
	Zone     string          `json:"delivery_zone"`
	Free     bool            `json:"delivery_free"`
	Loadings []string        `json:"loadings"`
	Site     []ReportChoice  `json:"site"`
	Wind     ReportWind      `json:"wind"`
	Heat     *ReportWarmth   `json:"heat,omitempty"`
	Power    *ReportSupply   `json:"power,omitempty"`
	Plot     *ReportPlot     `json:"plot,omitempty"`
	Labour   string          `json:"labour_charge"` // charged or included
	Hours    []ReportHours   `json:"hours"`         // of the windows that the job says something of
	Weather  *ReportWeather  `json:"weather,omitempty"`
	Tries    int             `json:"tries"` // schedules to be made; 0 leaves it to the shop
	Discount json.Number     `json:"discount_percent"`
	Reason   string          `json:"discount_reason"`
	Show     string          `json:"show_prices"` // to the customer: line, section or total
	Payments []ReportPayment `json:"payments"`
	Notes    string          `json:"notes"`
	Internal string          `json:"office_notes"`
}

// ReportDates are the days of a job by ISO 8601, and how many are counted.
type ReportDates struct {
	Quoted  string `json:"quoted"`
	Signed  string `json:"signed,omitempty"`
	Deliver string `json:"deliver"`
	From    string `json:"event_from"`
	To      string `json:"event_to"`
	Strike  string `json:"strike"`
	Collect string `json:"collect"`
	Charged int    `json:"charged_days"`
	Out     int    `json:"days_out"`
}

// ReportChoice is a site factor as it holds for the job or for one tent.
type ReportChoice struct {
	Key    string      `json:"key"`
	Option string      `json:"option"`
	Factor json.Number `json:"factor"`
}

// ReportWind is the wind that a job asks to stand up to; 0 and no terrain leave
// it to the shop.
type ReportWind struct {
	Gust    json.Number `json:"gust"`
	Terrain string      `json:"terrain"`
}

// ReportWarmth is how warm the tents are to be.
type ReportWarmth struct {
	Inside  json.Number `json:"inside"`
	Outside json.Number `json:"outside"`
	Hours   json.Number `json:"hours"`
	Tents   []string    `json:"tents"`
}

// ReportSupply is where the current comes from.
type ReportSupply struct {
	Source   string      `json:"source"`
	Distance json.Number `json:"distance"` // of cable, in units of length
	Hours    json.Number `json:"hours"`
}

// ReportPlot is the ground that the tents share.
type ReportPlot struct {
	Width     json.Number      `json:"width"`
	Depth     json.Number      `json:"depth"`
	North     json.Number      `json:"north"` // degrees clockwise from the back
	Obstacles []ReportObstacle `json:"obstacles"`
}

// ReportObstacle is a rectangle by its front left corner, or a circle by its
// middle.
type ReportObstacle struct {
	Name   string      `json:"name"`
	Kind   string      `json:"kind,omitempty"`
	X      json.Number `json:"x"`
	Y      json.Number `json:"y"`
	Width  json.Number `json:"width"`
	Depth  json.Number `json:"depth"`
	Radius json.Number `json:"radius"`
}

// ReportUse is what a part of a floor is for.
type ReportUse struct {
	Use  string      `json:"use"`
	Area json.Number `json:"area"`
}

// ReportPlace is where a tent stands on the plot.
type ReportPlace struct {
	X    json.Number `json:"x"`
	Y    json.Number `json:"y"`
	Turn string      `json:"turn"` // degrees against the clock
}

// ReportHours is what the job says of the crews and times of a window of work.
// Times are of the day, such as 07:30; empty where the job says none.
type ReportHours struct {
	Window  string `json:"window"`
	Crews   int    `json:"crews"` // 0 and 1: all work as one
	From    string `json:"from"`
	Until   string `json:"until"`
	Ready   string `json:"ready"`
	Inspect string `json:"inspect"`
	Stay    bool   `json:"stay"`
}

// ReportWeather is what the crew must work in.
type ReportWeather struct {
	Temperature json.Number `json:"temperature"`
	Humidity    json.Number `json:"humidity"` // relative, in percent
}

// ReportPayment is money received.
type ReportPayment struct {
	Date   string      `json:"date"`
	Amount json.Number `json:"amount"`
	Note   string      `json:"note"`
}

// ReportTent is one line of tents, with what is measured on one of them.
type ReportTent struct {
	ID       string       `json:"id"`
	Name     string       `json:"name"`
	Family   string       `json:"family"`
	Size     string       `json:"size"`
	Count    int          `json:"count"`
	Leg      json.Number  `json:"leg"`
	Area     json.Number  `json:"area"`
	Ground   string       `json:"ground"`
	Sides    []ReportSide `json:"sides"`
	Joins    string       `json:"joins,omitempty"`     // tent that it shares a gutter with
	JoinAt   string       `json:"join_side,omitempty"` // its own side at that gutter
	Staked   int          `json:"stakes"`
	Ballast  int          `json:"ballast"`
	Long     json.Number  `json:"footprint_length"` // with the outer stakes; 0 without stakes
	Wide     json.Number  `json:"footprint_width"`
	Discount json.Number  `json:"discount_percent"` // given on this line by hand
	Uses     []ReportUse  `json:"uses"`
	Place    *ReportPlace `json:"place,omitempty"`
}

// ReportSide is how one side of a tent is closed and held.
type ReportSide struct {
	Side     string        `json:"side"`
	Wall     string        `json:"wall"`   // kind, or open
	Length   json.Number   `json:"length"` // of the side, doors taken out
	Panels   []ReportPanel `json:"panels"`
	Doors    []string      `json:"doors"`
	NoStakes bool          `json:"no_stakes"` // none may be driven along it
	Gutter   bool          `json:"gutter"`    // hangs on another tent's side
	Ground   string        `json:"ground"`    // of its own; else the tent's
}

// ReportPanel is so many alike of the wall panels of one side.
type ReportPanel struct {
	Part  string `json:"part"`
	Count int    `json:"count"`
}
