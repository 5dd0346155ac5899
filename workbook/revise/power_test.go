package revise_test

import (
	"slices"
	"strings"
	"testing"

	"tentwright/quote"
	"tentwright/workbook"
	"tentwright/workbook/revise"
	"tentwright/workbook/sheet"
)

// planned is how many of an item a quote brings beyond its order.
func planned(q *quote.Quote, item string) string {
	for i := range q.Parts.Orders {
		if o := &q.Parts.Orders[i]; o.Key == "P:"+item {
			return o.Quantity.String()
		}
	}
	return "0"
}

// Weather, way and the shop's values are taken over from their cells, and what
// is planned follows from them.
func TestHeatAndPowerAreTakenOver(t *testing.T) {
	f := workbook.Layout(demoQuote(t, "dinner")).Found()
	lamp := rowOf(t, f, "load_part", "perimeter-light")
	typeInto(t, f, typed{"heat_outside", 0, num(-4)}, typed{"heat_hours", 0, num(20)}, typed{"power_distance", 0, num(210.5)}, typed{"power_hours", 0, num(12)},
		typed{"heat_u_roof", 0, num(1.5)}, typed{"generator_reserve", 0, num(25)}, typed{"fuel_reserve", 0, num(30)}, typed{"load_watts", lamp, num(50)}, typed{"light_wanted", 0, num(6)})
	b, list := revise.Open("dinner.xlsx", f)
	if b == nil || len(list) > 0 || len(b.Edits) != 9 {
		t.Fatal(list, b)
	}
	before := b.Quote
	r, list := b.Revise(nil)
	if r == nil {
		t.Fatal(list)
	}
	j, p := r.Quote.Job, r.Quote.Catalog.Power
	if j.Heat.Outside.Fahrenheit() != -4 || j.Heat.Hours.String() != "20" || j.Power.Distance.Feet() != 210.5 || j.Power.Hours.String() != "12" {
		t.Errorf("the job has %+v and %+v", j.Heat, j.Power)
	}
	if p.Cover.Roof.String() != "1.5" || p.Reserve.String() != "25" || p.FuelReserve.String() != "30" || p.Loads[3].Watts.String() != "50" || p.Light.Level.String() != "6" {
		t.Errorf("the shop has %+v, %s, %s, %+v, %+v", p.Cover, p.Reserve, p.FuelReserve, p.Loads[3], p.Light)
	}
	for _, item := range []string{"heater-170", "propane-100", "feeder-50", "diesel"} {
		if was, now := planned(before, item), planned(r.Quote, item); was == now {
			t.Errorf("%s of %s are planned as before", now, item)
		}
	}
	if got := r.Quote.Failed(); slices.ContainsFunc(got, func(c quote.Check) bool { return strings.HasPrefix(c.Key, "warm:") || c.Key == "drop" }) {
		t.Errorf("the new plan fails %+v", got)
	}
	next, list := revise.Open("next.xlsx", workbook.Layout(r.Quote).Found())
	if next == nil || len(list) > 0 || len(next.Edits) > 0 {
		t.Errorf("the next workbook has edits of its own: %v", list)
	}
}

// What is planned follows from the job: nobody changes it by hand, and who does
// is told. A line of the order that is deleted is planned instead.
func TestPlannedLinesAreNotTypedOver(t *testing.T) {
	f := workbook.Layout(demoQuote(t, "dinner")).Found()
	row := rowOf(t, f, "build_key", "P:propane-100")
	typeInto(t, f, typed{"build_quantity", row, num(40)})
	b, list := revise.Open("dinner.xlsx", f)
	if b == nil || len(b.Edits) > 0 || len(list) != 1 || !list[0].Warning {
		t.Fatalf("%v was said; one warning and no edit were expected", list)
	}

	f = workbook.Layout(demoQuote(t, "dinner")).Found()
	typeInto(t, f, typed{"build_quantity", rowOf(t, f, "build_key", heaterLine(t, f)), num(0)})
	b, list = revise.Open("dinner.xlsx", f)
	if b == nil || len(list) > 0 || len(b.Edits) != 1 {
		t.Fatal(list)
	}
	r, list := b.Revise(nil)
	if r == nil {
		t.Fatal(list)
	}
	if was, now := planned(b.Quote, "heater-170"), planned(r.Quote, "heater-170"); was != "1" || now != "2" {
		t.Errorf("%s heaters were planned beside the one ordered, %s without it; 1 and 2 were expected", was, now)
	}
}

// heaterLine is the key of the line by which the job orders heaters.
func heaterLine(t *testing.T, f *sheet.Found) string {
	t.Helper()
	ids, keys := f.Names["build_id"], f.Names["build_key"]
	for row := ids.R1; row <= ids.R2; row++ {
		s := f.Sheet(ids.Sheet)
		if key := s.At(row, keys.C1).Text; s.At(row, ids.C1).Text == "heater-170" && strings.HasPrefix(key, "L:") {
			return key
		}
	}
	t.Fatal("no line orders heaters")
	return ""
}
