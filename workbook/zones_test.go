package workbook_test

import (
	"fmt"
	"strings"
	"testing"

	"tentwright/workbook/internal/calc"
)

// The terms of delivery are those of the first zone that reaches the typed
// distance, with the limits as they now stand; a named zone holds at any. The
// zones of the demonstration shop end at 8, 25 and 60 miles, and the last does
// not end.
func TestZoneFollowsTheDistance(t *testing.T) {
	calc.Need(t)
	far := typed{"zones_upto", "zones_id=far", 90}
	cases := []struct {
		typed []typed
		zone  string // id; none: no zone reaches
		state string
	}{
		{[]typed{{"job_distance", "", 0}}, "town", "OK"},
		{[]typed{{"job_distance", "", 8}}, "town", "OK"},
		{[]typed{{"job_distance", "", 8.1}}, "near", "OK"},
		{[]typed{{"job_distance", "", 60}}, "valley", "OK"},
		{[]typed{{"job_distance", "", 60.1}}, "far", "OK"},
		{[]typed{{"job_distance", "", 90}, far}, "far", "OK"},
		{[]typed{{"job_distance", "", 90.1}, far}, "", "STOP"},
		{[]typed{{"job_distance", "", 90.1}, far, {"job_zone", "", "near"}}, "near", "OK"},
		{[]typed{{"zones_upto", "zones_id=town", 7.9}}, "near", "OK"},
		{[]typed{{"zones_upto", "zones_id=town", nil}, {"job_distance", "", 400}}, "town", "OK"},
	}
	var list []typing
	for _, x := range cases {
		_, book := laidOut(t, demoCatalog(t), addedTents)
		list = append(list, typing{fmt.Sprint(x.typed), book, x.typed})
	}
	for i, f := range recalculated(t, list) {
		name, flat, each, least := "no zone", 0.0, 0.0, 0.0
		for _, z := range demoCatalog(t).Rates.Zones {
			if z.ID == cases[i].zone {
				name, flat, each, least = z.Name, z.Flat.InexactFloat64(), z.PerMile.InexactFloat64(), z.Minimum.InexactFloat64()
			}
		}
		f.named(t, "zone_name").text(t, list[i].name, name)
		f.named(t, "zone_flat").number(t, list[i].name, flat)
		f.named(t, "zone_each").number(t, list[i].name, each)
		f.named(t, "zone_minimum").number(t, list[i].name, least)
		f.beside(t, "work_name", "work_key", "D:delivery").text(t, list[i].name, "Delivery and collection, "+name)
		f.beside(t, "check_state", "check_key", "requote zone").text(t, list[i].name, cases[i].state)
	}
}

// Distances are compared as they are shown, to a tenth, so that the workbook's
// zone is the quote's, and none is named where the job names none.
func TestRoundedDistanceKeepsItsZone(t *testing.T) {
	for distance, want := range map[string]string{"8 mi": "town", "8.04 mi": "town", "8.06 mi": "near", "25.01 mi": "near", "25.06 mi": "valley"} {
		q, book := laidOut(t, demoCatalog(t), strings.Replace(usualHead, "8 mi", distance, 1)+addedTents)
		named, _, _ := cellsOf(t, book, "job_zone")
		ids, _, _ := cellsOf(t, book, "zones_id")
		reaches, _, _ := cellsOf(t, book, "zones_reaches")
		first := ""
		for i := len(ids) - 1; i >= 0; i-- {
			if reaches[i].Value == "Yes" {
				first, _ = ids[i].Value.(string)
			}
		}
		if got := q.Job.Zone(q.Catalog).ID; named[0].Value != "" || first != want || got != want {
			t.Errorf("%s: zone %q is named, %q reaches first and %q is quoted; want none named and %q", distance, named[0].Value, first, got, want)
		}
	}
}
