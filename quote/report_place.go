package quote

import (
	"encoding/json"

	"tentwright/catalog/unit"
	"tentwright/quote/job"
)

// speed is a speed in the shop's unit.
func (r reporter) speed(v unit.Speed) json.Number { return measured(v.In(r.sys)) }

// degrees is a temperature on the shop's scale.
func (r reporter) degrees(t *unit.Temperature) json.Number { return measured(t.In(r.sys)) }

func (r reporter) warmth(h *job.Heat) *ReportWarmth {
	if h == nil {
		return nil
	}
	return &ReportWarmth{Inside: r.degrees(h.Inside), Outside: r.degrees(h.Outside), Hours: exact(h.Hours), Tents: list(h.Tents)}
}

func (r reporter) supply(p *job.Power) *ReportSupply {
	if p == nil {
		return nil
	}
	return &ReportSupply{Source: p.Source, Distance: r.length(p.Distance), Hours: exact(p.Hours)}
}

func (r reporter) plot(p *job.Plot) *ReportPlot {
	if p == nil {
		return nil
	}
	return &ReportPlot{Width: r.length(p.Width), Depth: r.length(p.Depth), North: exact(p.North), Obstacles: each(p.Obstacles, r.obstacle)}
}

func (r reporter) obstacle(o *job.Obstacle) ReportObstacle {
	return ReportObstacle{Name: o.Name, Kind: o.Kind, X: r.length(o.X), Y: r.length(o.Y), Width: r.length(o.Width), Depth: r.length(o.Depth), Radius: r.length(o.Radius)}
}

func (r reporter) use(u *job.FloorUse) ReportUse {
	return ReportUse{Use: u.Use, Area: r.area(u.Area)}
}

func (r reporter) stands(p *job.Place) *ReportPlace {
	if p == nil {
		return nil
	}
	return &ReportPlace{X: r.length(p.X), Y: r.length(p.Y), Turn: p.Turn}
}
