package job

import (
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/unit"
)

// A zone reaches as far as its limit, both to a tenth of the shop's unit. The
// zones are made up: one to 8, one to 25, and one without a limit.
func TestZoneByRoundedDistance(t *testing.T) {
	for _, x := range []struct {
		units unit.System
		tenth float64 // how many tenths of a mile or kilometre
		named string
		want  string
	}{
		{unit.Imperial, 80, "", "town"},
		{unit.Imperial, 80.4, "", "town"},
		{unit.Imperial, 80.6, "", "near"},
		{unit.Imperial, 250.1, "", "near"},
		{unit.Imperial, 250.6, "", "far"},
		{unit.Imperial, 900, "town", "town"},
		{unit.Metric, 80.4, "", "town"},
		{unit.Metric, 80.6, "", "near"},
	} {
		each := unit.Mile
		if x.units == unit.Metric {
			each = unit.Kilometre
		}
		c := &catalog.Catalog{}
		c.Company.Units = x.units
		c.Rates.Zones = []catalog.Zone{{ID: "town", UpTo: 8 * each}, {ID: "near", UpTo: 25 * each}, {ID: "far"}}
		j := &Job{Delivery: Delivery{Distance: unit.Length(x.tenth * float64(each) / 10), Zone: x.named}}
		if got := j.Zone(c).ID; got != x.want {
			t.Errorf("%g tenths of the unit %s, zone %q named: the zone is %q, want %q", x.tenth, x.units.DistanceUnit(), x.named, got, x.want)
		}
	}
}

// Beyond every zone there is none.
func TestNoZoneReaches(t *testing.T) {
	c := &catalog.Catalog{Rates: catalog.Rates{Zones: []catalog.Zone{{ID: "town", UpTo: 8 * unit.Mile}}}}
	j := &Job{Delivery: Delivery{Distance: 9 * unit.Mile}}
	if got := j.Zone(c).ID; got != "" {
		t.Errorf("a site at 9 miles is in zone %q; want none", got)
	}
}
