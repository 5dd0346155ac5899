package quote

import (
	"encoding/json"

	"tentwright/quote/egress"
)

// ReportOccupancy is how many people the tents hold by the code, and what they
// need to get out. Without an occupancy file of the shop, it is empty.
type ReportOccupancy struct {
	Code         string                `json:"code"`
	Use          string                `json:"use"`
	Given        bool                  `json:"use_given"` // by the job
	WidthUnit    string                `json:"width_unit"`
	Load         int                   `json:"people"`
	Guests       int                   `json:"guests_by_floor"`
	Out          int                   `json:"guests_by_exits"`
	Wheelchairs  int                   `json:"wheelchair_spaces"`
	Signs        int                   `json:"signs_needed"`
	HasSigns     int                   `json:"signs"`
	Lights       int                   `json:"emergency_lights_needed"`
	HasLights    int                   `json:"emergency_lights"`
	Extinguisher int                   `json:"extinguishers_needed"`
	HasExting    int                   `json:"extinguishers"`
	Permits      int                   `json:"tents_with_permit"`
	Tents        []ReportOccupancyTent `json:"tents"`
}

// ReportOccupancyTent is one line of tents; its figures are those of one.
type ReportOccupancyTent struct {
	Tent         string        `json:"tent"`
	Many         int           `json:"count"`
	Area         json.Number   `json:"area"`
	Load         int           `json:"people"`
	Guests       int           `json:"guests"`
	Need         int           `json:"exits_needed"`
	Least        json.Number   `json:"exit_width_least"`
	Have         int           `json:"exits"`
	Sides        int           `json:"sides_with_exits"`
	Width        json.Number   `json:"total_width_needed"`
	HasWidth     json.Number   `json:"total_width"`
	Allow        int           `json:"people_by_exits"`
	Aisle        json.Number   `json:"aisle_width"`
	Signs        int           `json:"signs"`
	Extinguisher int           `json:"extinguishers"`
	Permit       bool          `json:"permit"`
	Floors       []ReportFloor `json:"floors"`
	Ways         []ReportExit  `json:"exits_at"`
}

// ReportFloor is a part of a floor by its use; none where nobody stands.
type ReportFloor struct {
	Use    string      `json:"use"`
	Rest   bool        `json:"rest"`
	Area   json.Number `json:"area"`
	Per    json.Number `json:"area_each"`
	People int         `json:"people"`
}

// ReportExit is the exits of one kind in a side.
type ReportExit struct {
	Side  string      `json:"side"`
	Kind  string      `json:"kind"` // of door, or open
	Count int         `json:"count"`
	Width json.Number `json:"width_each"`
}

func (r reporter) occupancy() ReportOccupancy {
	e := r.q.Egress
	out := ReportOccupancy{WidthUnit: egress.Measures{Units: r.sys}.WidthUnit(), Tents: []ReportOccupancyTent{}}
	if e == nil {
		return out
	}
	out.Code, out.Use, out.Given = e.Code.Code, e.Use.ID, e.Given
	out.Load, out.Guests, out.Out, out.Wheelchairs, out.Permits = e.Load, e.Guests, e.Out, e.Wheelchairs, e.Permits
	out.Signs, out.HasSigns, out.Lights, out.HasLights = e.Signs, e.HasSigns, e.Lights, e.HasLights
	out.Extinguisher, out.HasExting = e.Fire, e.HasFire
	out.Tents = each(e.Tents, r.occupied)
	return out
}

func (r reporter) occupied(t *egress.Tent) ReportOccupancyTent {
	return ReportOccupancyTent{Tent: t.Tent.Job.ID, Many: t.Many, Area: exact(t.Area), Load: t.Load, Guests: t.Guests,
		Need: t.Need, Least: exact(t.Least), Have: t.Have, Sides: t.Sides, Width: exact(t.Width), HasWidth: exact(t.HasWidth),
		Allow: t.Allow, Aisle: exact(t.Aisle), Signs: t.Signs, Extinguisher: t.Fire, Permit: t.Permit,
		Floors: each(t.Floors, floorOf), Ways: each(t.Ways, wayOut)}
}

func floorOf(f *egress.Floor) ReportFloor {
	out := ReportFloor{Use: "none", Rest: f.Rest, Area: exact(f.Area), Per: exact(f.Per), People: f.People}
	if f.Use != nil {
		out.Use = f.Use.ID
	}
	return out
}

func wayOut(w *egress.Way) ReportExit {
	out := ReportExit{Side: w.Side, Kind: "open", Count: w.Many, Width: exact(w.Each)}
	if w.Door != nil {
		out.Kind = w.Door.Kind
	}
	return out
}
