package quote

import (
	"tentwright/catalog/unit"
	"tentwright/quote/job"
)

func (r reporter) hours(w *job.WindowCrew) ReportHours {
	return ReportHours{Window: w.Window, Crews: w.Crews, From: clock(w.From), Until: clock(w.Until), Ready: clock(w.Ready), Inspect: clock(w.Inspect), Stay: w.Stay}
}

// clock is a time of day, or nothing where none is given.
func clock(at unit.Clock) string {
	if at == 0 {
		return ""
	}
	return at.String()
}

func (r reporter) weather(w *job.Weather) *ReportWeather {
	if w == nil {
		return nil
	}
	return &ReportWeather{Temperature: r.degrees(w.Temperature), Humidity: exact(w.Humidity)}
}
