package quote

import (
	"encoding/json"

	"tentwright/quote/layout"
)

// ReportPlan is the plot and where each tent stands on it. Lengths run from the
// front left corner of the plot: x to the right, y to the back.
type ReportPlan struct {
	Given     bool                 `json:"plot_given"` // by the job; else it is only what the tents take
	X         json.Number          `json:"x"`          // of the front left corner, other than 0 only where no plot is given
	Y         json.Number          `json:"y"`
	Width     json.Number          `json:"width"`
	Depth     json.Number          `json:"depth"`
	North     json.Number          `json:"north"` // degrees clockwise from the back
	Tents     []ReportStanding     `json:"tents"`
	Distances []ReportPlanDistance `json:"distances"` // those that are too short, and the nearest of each kind
	Faults    []ReportPlanFault    `json:"faults"`
}

// ReportStanding is one tent where it stands. Corners are those of the roof,
// from the front left one against the clock.
type ReportStanding struct {
	Number    int           `json:"number"` // on the drawing
	Tent      string        `json:"tent"`
	Copy      int           `json:"copy,omitempty"` // of several of one line
	X         json.Number   `json:"x"`              // of its front left corner
	Y         json.Number   `json:"y"`
	Turn      int           `json:"turn"`        // degrees against the clock
	ByHand    bool          `json:"place_given"` // by the job
	Corners   []ReportPoint `json:"corners"`
	Footprint []ReportPoint `json:"footprint"` // with all stakes
	Stakes    []ReportPoint `json:"stakes"`
	Nearest   string        `json:"nearest,omitempty"`
	NearestBy json.Number   `json:"nearest_by,omitempty"` // from roof to roof
}

// ReportPoint is a place on the plot.
type ReportPoint struct {
	X json.Number `json:"x"`
	Y json.Number `json:"y"`
}

// ReportPlanDistance is how far what is staked of a tent is from what the code
// wants it clear of.
type ReportPlanDistance struct {
	Kind   string      `json:"kind"`  // edge, building, vehicle or tent
	Tent   string      `json:"tent"`  // id
	Other  string      `json:"other"` // the other tent's id, the obstacle or the side of the plot
	Is     json.Number `json:"is"`
	Wanted json.Number `json:"wanted"` // 0: the code does not say
}

// ReportPlanFault is what cannot stand so, and by how much one must move.
type ReportPlanFault struct {
	Kind    string      `json:"kind"`  // overlap, footprint, obstacle or edge
	Tent    string      `json:"tent"`  // id
	Other   string      `json:"other"` // the other tent's id, the obstacle or the side of the plot
	Words   string      `json:"words"` // what is wrong
	Missing json.Number `json:"missing"`
}

func (r reporter) plan() ReportPlan {
	p := r.q.Plan
	if p == nil {
		p = &layout.Plan{}
	}
	return ReportPlan{Given: p.Given, X: r.metres(p.Low.X), Y: r.metres(p.Low.Y), Width: r.metres(p.High.X - p.Low.X), Depth: r.metres(p.High.Y - p.Low.Y),
		North: measured(p.North), Tents: each(p.Tents, r.standing), Distances: each(p.Distances, r.planDistance), Faults: each(p.Faults, r.planFault)}
}

func (r reporter) point(p *layout.Point) ReportPoint {
	return ReportPoint{r.metres(p.X), r.metres(p.Y)}
}

func (r reporter) standing(t *layout.Tent) ReportStanding {
	out := ReportStanding{Number: t.Number, Tent: t.ID, Copy: t.Copy, X: r.metres(t.At.X), Y: r.metres(t.At.Y), Turn: t.Turn, ByHand: t.ByHand,
		Corners: each(t.Outline, r.point), Footprint: each(t.Footprint, r.point), Stakes: each(t.Stakes, r.point), Nearest: t.Nearest}
	if t.Nearest != "" {
		out.NearestBy = r.metres(t.NearestBy)
	}
	return out
}

func (r reporter) planFault(f *layout.Fault) ReportPlanFault {
	return ReportPlanFault{Kind: f.Kind, Tent: f.A, Other: f.B, Words: f.Words(), Missing: exact(r.q.missing(f))}
}

func (r reporter) planDistance(d *layout.Distance) ReportPlanDistance {
	return ReportPlanDistance{Kind: d.Kind, Tent: d.A, Other: d.B, Is: r.metres(d.Is), Wanted: r.metres(d.Wanted)}
}
