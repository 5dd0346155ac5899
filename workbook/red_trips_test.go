package workbook_test

import (
	"cmp"
	"math"
	"testing"

	"tentwright/workbook/internal/calc"
)

// tripCase is a trip against its limits after something is typed.
type tripCase struct {
	what    string
	typed   []typed
	key     string
	payload float64 // in pounds
	state   string
}

// trips of the van: 9500 on the plate, 6000 empty and 150 of fuel leave 3350;
// each of its two riders takes 200. The first trip carries 1816.24.
var trips = []tripCase{
	{"two riders", nil, "V1", 2950, "OK"},
	{"nobody", []typed{{"riders_v1", "", 0}}, "V1", 3350, "OK"},
	{"seven", []typed{{"riders_v1", "", 7}}, "V1", 1950, "OK"},
	{"eight", []typed{{"riders_v1", "", 8}}, "V1", 1750, "OVER"},
	{"eight in another", []typed{{"riders_v1", "", 8}}, "V2", 2950, "OK"},
	{"heavier people", []typed{{"rate_rider", "", 300}}, "V1", 2750, "OK"},
	{"heavy people", []typed{{"rate_rider", "", 800}}, "V1", 1750, "OVER"},
	{"nine on the way home", []typed{{"riders_b1", "", 9}}, "B1", 1550, "OVER"},
	{"two on the way home", []typed{{"riders_v1", "", 8}}, "B1", 2950, "OK"},
	{"more chairs", []typed{{"qty_l.1", "", 700}}, "V3", 2950, "OVER"},
	{"more chairs, the first run", []typed{{"qty_l.1", "", 700}}, "V1", 2950, "OK"},
	{"as many more as the last run takes", []typed{{"qty_l.1", "", 400}}, "V3", 2950, "OK"},
	{"more chairs, not all loaded", []typed{{"qty_l.1", "", 700}, {"pick_loaded", "pick_key=chair@V3", 100}}, "V3", 2950, "OK"},
	{"more loaded than picked", []typed{{"pick_loaded", "pick_key=chair@V1", 700}}, "V1", 2950, "OVER"},
	{"more loaded into another", []typed{{"pick_loaded", "pick_key=chair@V1", 700}}, "V2", 2950, "OK"},
	{"more chairs than ride home", []typed{{"qty_l.1", "", 700}}, "B3", 2950, "OVER"},
}

// Riders take from the payload of their own trip, and a trip that carries more
// than it may says so.
func TestTripsAgainstTheirLimits(t *testing.T) {
	calc.Need(t)
	t.Parallel()
	_, book := laidOut(t, pickShop(t), pickJob)
	var list []typing
	for _, x := range trips {
		list = append(list, typing{x.what, book, x.typed})
	}
	for i, f := range recalculated(t, list) {
		x := trips[i]
		table := map[byte]string{'V': "trip", 'B': "back"}[x.key[0]]
		at := func(column string) found { return f.beside(t, table+"_"+column, table+"_key", x.key) }
		at("payload").number(t, x.what, x.payload)
		at("state").text(t, x.what, x.state)
		at("margin").number(t, x.what, math.Round((x.payload-at("load").Number)*100)/100)
		over := at("load").Number > x.payload || at("volume").Number > at("room").Number
		if over != (x.state == "OVER") {
			t.Errorf("%s: %s: wanted %s, got a load of %v", x.what, at("load").place, x.state, at("load").Text)
		}
	}
}

// What was loaded counts for its trip, for the checks and for the load order;
// the weight that hours and costs follow from stays as picked.
func TestLoadsCountForTheirTrips(t *testing.T) {
	calc.Need(t)
	t.Parallel()
	_, book := laidOut(t, pickShop(t), pickJob)
	const row = "chair@V1"
	f := recalculated(t, []typing{{"as picked", book, nil}, {"short", book, []typed{{"pick_loaded", "pick_key=" + row, 140}}},
		{"over", book, []typed{{"pick_loaded", "pick_key=" + row, 700}}}})
	each, tare := f[0].beside(t, "pick_each", "pick_key", row).Number, f[0].beside(t, "pick_tare", "pick_key", row).Number
	size := f[0].beside(t, "pick_size", "pick_key", row).Number
	holds := 150 / f[0].beside(t, "pick_packs", "pick_key", row).Number
	was := f[0].beside(t, "trip_load", "trip_key", "V1").Number
	for i, x := range []struct {
		out   float64
		state string
	}{{150, "OK"}, {140, "OK"}, {700, "STOP"}} {
		context := []string{"as picked", "short", "over"}[i]
		packs := math.Ceil(x.out / holds)
		more := (x.out-150)*each + (packs-150/holds)*tare
		f[i].beside(t, "trip_load", "trip_key", "V1").number(t, context, math.Round((was+more)*100)/100)
		f[i].beside(t, "pick_out_volume", "pick_key", row).number(t, context, packs*size)
		f[i].beside(t, "check_value", "check_key", "payload:V1").number(t, context, math.Round((was+more)*100)/100)
		f[i].beside(t, "check_state", "check_key", "payload:V1").text(t, context, x.state)
		f[i].beside(t, "out_quantity", "out_part", "chair").number(t, context, x.out)
		f[i].beside(t, "out_weight", "out_part", "chair").number(t, context, x.out*each+packs*tare)
		f[i].named(t, "total_weight").number(t, context, f[0].at("total_weight"))
		f[i].named(t, "total_cost").number(t, context, f[0].at("total_cost"))
	}
}

// requoteCase is a tent asked for otherwise than it was counted.
type requoteCase struct {
	column string
	value  any
}

var requotes = []requoteCase{{"size", "20x30"}, {"leg", "7 ft"}, {"front", "solid"}, {"right", "window"}, {"back", "open"}, {"left", "solid"}}

// A tent whose size, eave or side is changed wants a new quote, and the others
// do not; typed as it was, it is as it was counted.
func TestTentsThatWantANewQuote(t *testing.T) {
	calc.Need(t)
	t.Parallel()
	q, book := laidOut(t, demoCatalog(t), "tents: [{id: a, family: hip, size: 20x20, sides: [{side: back, wall: solid}]}, {id: b, family: hip, size: 20x20}]\n")
	var list []typing
	was := map[string]any{"size": "20x20", "leg": q.Parts.Tents[0].Leg.In(q.Catalog.Company.Units), "back": "solid"}
	for _, x := range requotes {
		in := []typed{{"tent_" + x.column, "tent_id=a", x.value}}
		back := typed{"tent_" + x.column, "tent_id=a", cmp.Or[any](was[x.column], "open")}
		list = append(list, typing{"tent_" + x.column, book, in}, typing{"tent_" + x.column + " as it was", book, append(in, back)})
	}
	for i, f := range recalculated(t, list) {
		want := map[bool]string{true: "requote", false: "counted"}[i%2 == 0]
		f.beside(t, "tent_state", "tent_id", "a").text(t, list[i].name, want)
		f.beside(t, "tent_state", "tent_id", "b").text(t, list[i].name, "counted")
	}
}
