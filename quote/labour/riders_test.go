package labour

import (
	"testing"

	"tentwright/catalog"
	"tentwright/quote/job"
	"tentwright/quote/load"
)

// Everyone of the crew rides there and home on each day, but for those who
// drive; a trailer has no driver of its own.
func TestRiders(t *testing.T) {
	e := estimator{j: &job.Job{}, c: &catalog.Catalog{Rates: catalog.Rates{Windows: []catalog.Window{
		{ID: "out", Phases: []string{"travel"}, Crew: 6, Days: 3}, {ID: "in", Phases: []string{"return"}, Crew: 1, Days: 1}}}}}
	m := &load.Manifest{Trips: []load.Trip{{Key: "V1"}, {Key: "V2"}, {Key: "V3", Tow: "V1"}}}
	for phase, want := range map[string]int{"travel": 6*3 - 2, "return": 0} {
		if got := e.riders(phase, m); got != want {
			t.Errorf("%d ride on %s, %d were expected", got, phase, want)
		}
	}
}
