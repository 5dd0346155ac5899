package workbook_test

import (
	"math"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/workbook/internal/calc"
	"tentwright/workbook/sheet"
)

// pickJob has what the yard's lists tell apart: tagged tops, chairs on more
// than one run with spares, stakes that are used up, and an extra that nobody
// ordered.
const pickJob = "tents: [{id: a, family: hip, size: 10x10, count: 2, sides: [{side: back, wall: solid}]}]\n" +
	"items: [{item: chair, quantity: 300}, {item: seat8, quantity: 1, optional: yes}]\n"

func pickShop(t *testing.T) *catalog.Catalog {
	return smallShop(t, "tags: [stake]}", "tags: [stake], consumable: true}")
}

// loadCase is a line of the pick list as somebody loads it.
type loadCase struct {
	key    string
	pick   int // that the list asks for
	loaded any // typed; nil: left empty, all of the pick
	state  string
	out    int // that went out
}

// loads are whole trips: less than the pick, more, none, all, and all by an
// empty cell, of one line or of some lines of a part.
var loads = []loadCase{
	{"corner@V2", 8, 5, "short 3", 5},
	{"crown@V2", 2, 4, "over 2", 4},
	{"base@V2", 8, nil, "", 8},
	{"leg_7@V1", 8, 8, "", 8},
	{"pole_9_4@V1", 8, 0, "short 8", 0},
	{"pole_hip@V1", 8, nil, "", 8},
	{"top_10@V1#1", 1, 0, "short 1", 0},
	{"top_10@V1#2", 1, nil, "", 1},
	{"wall_10@V2", 2, nil, "", 2},
	{"stake@V1", 16, 20, "over 4", 20},
	{"chair@V1", 150, 140, "short 10", 140},
	{"chair@V2", 150, 155, "over 5", 155},
	{"chair@V3", 6, nil, "", 6},
	{"table@V3", 0, 3, "over 3", 3},
}

// backCase is a line of the check-in as somebody counts it.
type backCase struct {
	key     string
	out     int // that went out, by what was loaded
	counted any // typed; nil: not counted
	damaged int
	wet     string
	each    float64 // charge for one: the part's own, or typed
	missing any     // nil: an empty text
	state   string
}

// backs come home after the loads above. The charges are the replacements of
// the shop's parts, but for the chairs, whose charge is typed.
var backs = []backCase{
	{"corner@V2", 5, 5, 0, "", 90, 0, "complete"},
	{"crown@V2", 4, 3, 1, "", 140, 1, "missing 1"},
	{"base@V2", 8, 9, 0, "", 30, 0, "too many, 1"},
	{"leg_7@V1", 8, nil, 0, "", 60, nil, ""},
	{"pole_9_4@V1", 0, nil, 0, "", 80, nil, "none out"},
	{"pole_hip@V1", 8, 8, 2, "Yes", 70, 0, "to mending"},
	{"top_10@V1#1", 0, 1, 0, "", 500, 0, "too many, 1"},
	{"top_10@V1#2", 1, 0, 0, "", 500, 1, "missing 1"},
	{"wall_10@V2", 2, 2, 0, "Yes", 120, 0, "dry first"},
	{"chair@V1", 301, 290, 3, "No", 31.25, 11, "missing 11"},
	{"table@V3", 3, 3, 0, "No", 130, 0, "complete"},
}

// slips are lines of the check-in with counts that cannot be, after nothing is
// said of what was loaded.
var slips = []backCase{
	{"corner@V2", 8, nil, 3, "", 90, nil, "count first"},
	{"crown@V2", 2, nil, 0, "Yes", 140, nil, "count first"},
	{"base@V2", 8, 4, 30, "", 30, 4, "more damaged than back"},
	{"leg_7@V1", 8, 8, 9, "Yes", 60, 0, "more damaged than back"},
	{"pole_9_4@V1", 8, 0, 1, "", 80, 8, "more damaged than back"},
	{"pole_hip@V1", 8, 8, 8, "", 70, 0, "to mending"},
	{"wall_10@V2", 2, 5, 6, "", 120, 0, "more damaged than back"},
	{"table@V3", 0, nil, 1, "", 130, nil, "count first"},
	{"top_10@V1#1", 1, nil, 0, "", 500, nil, ""},
}

// typedLoads and typedBacks are what the cases type.
func typedLoads() (list []typed) {
	for _, x := range loads {
		if x.loaded != nil {
			list = append(list, typed{"pick_loaded", "pick_key=" + x.key, x.loaded})
		}
	}
	return list
}

func typedBacks() []typed {
	return append(typedCounts(backs), typed{"return_each", "return_key=chair@V1", 31.25})
}

func typedCounts(lines []backCase) (list []typed) {
	for _, x := range lines {
		at := "return_key=" + x.key
		if x.counted != nil {
			list = append(list, typed{"return_counted", at, x.counted})
		}
		if x.damaged > 0 {
			list = append(list, typed{"return_damaged", at, x.damaged})
		}
		if x.wet != "" {
			list = append(list, typed{"return_wet", at, x.wet})
		}
	}
	return list
}

// What was loaded goes by the count where there is one and by the pick where
// there is none; the check-in counts by what was loaded, and charges for what
// is missing or damaged.
func TestLoadsAndReturns(t *testing.T) {
	calc.Need(t)
	t.Parallel()
	_, book := laidOut(t, pickShop(t), pickJob)
	fewer := []typed{{"qty_l.1", "", 100}, {"pick_loaded", "pick_key=chair@V1", 140}}
	all := recalculated(t, []typing{{"nothing typed", book, nil}, {"loaded", book, typedLoads()},
		{"counted back", book, append(typedLoads(), typedBacks()...)}, {"fewer ordered than loaded", book, fewer}})
	for _, x := range loads {
		none := ""
		if x.pick == 0 {
			none = "not ordered"
		}
		checkLoad(t, all[0], "nothing typed", loadCase{x.key, x.pick, nil, none, x.pick})
		checkLoad(t, all[1], "loaded", x)
		checkLoad(t, all[2], "counted back", x)
	}
	for _, x := range backs {
		checkBack(t, all[1], "loaded", backCase{key: x.key, out: x.out, state: noneOut(x.out)})
		checkBack(t, all[2], "counted back", x)
	}
	want := 0.0
	for _, x := range backs {
		want += chargeOf(x)
	}
	all[1].named(t, "total_replacement").number(t, "loaded", 0)
	all[2].named(t, "total_replacement").number(t, "counted back", want)
	for _, x := range []loadCase{{"chair@V1", 102, 140, "over 38", 140}, {"chair@V2", 0, nil, "not ordered", 0}, {"chair@V3", 0, nil, "not ordered", 0}} {
		checkLoad(t, all[3], "fewer ordered than loaded", x)
	}
	all[3].beside(t, "return_out", "return_key", "chair@V1").number(t, "fewer ordered than loaded", 140)
	t.Logf("%d lines loaded, %d counted back, charges %v", len(loads), len(backs), want)
}

// noneOut is the state of a line that nobody has counted.
func noneOut(out int) string {
	if out == 0 {
		return "none out"
	}
	return ""
}

// chargeOf is what a line is charged, to the cent: nothing before it is counted,
// and no more damaged than came back.
func chargeOf(x backCase) float64 {
	n, counted := x.counted.(int)
	if !counted {
		return 0
	}
	return math.Round(float64(max(0, x.out-n)+min(x.damaged, n))*x.each*100) / 100
}

func checkLoad(t *testing.T, f figures, context string, x loadCase) {
	t.Helper()
	context += ", " + x.key
	f.beside(t, "pick_quantity", "pick_key", x.key).number(t, context, float64(x.pick))
	f.beside(t, "pick_state", "pick_key", x.key).text(t, context, x.state)
	f.beside(t, "pick_out", "pick_key", x.key).number(t, context, float64(x.out))
}

func checkBack(t *testing.T, f figures, context string, x backCase) {
	t.Helper()
	context += ", " + x.key
	f.beside(t, "return_out", "return_key", x.key).number(t, context, float64(x.out))
	f.beside(t, "return_charge", "return_key", x.key).number(t, context, chargeOf(x))
	f.beside(t, "return_state", "return_key", x.key).text(t, context, x.state)
	missing := f.beside(t, "return_missing", "return_key", x.key)
	if n, counted := x.missing.(int); counted {
		missing.number(t, context, float64(n))
	} else {
		missing.text(t, context, "")
	}
}

// Nothing is charged before it is counted, nor more than went out; counts that
// cannot be are told in red.
func TestCountsThatCannotBe(t *testing.T) {
	calc.Need(t)
	t.Parallel()
	_, book := laidOut(t, pickShop(t), pickJob)
	red := map[string][]string{}
	for _, x := range slips {
		for _, column := range []string{"return_state", "return_damaged"} {
			red[x.key+column] = probe(t, book, shown{column, "return_key", x.key, sheet.Warn, true})
		}
	}
	f := recalculated(t, []typing{{"slips", book, typedCounts(slips)}})[0]
	want := 0.0
	for _, x := range slips {
		checkBack(t, f, "slips", x)
		want += chargeOf(x)
		for column, wanted := range map[string]bool{"return_state": x.state != "", "return_damaged": x.state != "" && x.state != "to mending"} {
			if got := f.lit(t, column, red[x.key+column]); got != wanted {
				t.Errorf("%s of %s, %q: red is %t; want %t", column, x.key, x.state, got, wanted)
			}
		}
	}
	f.named(t, "total_replacement").number(t, "slips", want)
}

// More pieces than the list has rows for fall to the last one, which has one
// tag: it says in red how many it takes.
func TestMorePiecesThanTags(t *testing.T) {
	calc.Need(t)
	t.Parallel()
	_, book := laidOut(t, pickShop(t), pickJob)
	last := shown{"pick_state", "pick_key", "top_10@V1#2", sheet.Warn, true}
	red := probe(t, book, last)
	last.name = "pick_tag"
	redTag := probe(t, book, last)
	tents := typed{"qty_t.a", "", 4}
	f := recalculated(t, []typing{{"two tents", book, nil}, {"four tents", book, []typed{tents}},
		{"all loaded", book, []typed{tents, {"pick_loaded", "pick_key=top_10@V1#2", 3}}},
		{"one loaded", book, []typed{tents, {"pick_loaded", "pick_key=top_10@V1#2", 1}}}})
	for i, x := range []loadCase{{"", 1, nil, "", 1}, {"", 3, nil, "needs 3 tags", 3}, {"", 3, 3, "needs 3 tags", 3}, {"", 3, 1, "short 2", 1}} {
		x.key = last.key
		context := []string{"two tents", "four tents", "all loaded", "one loaded"}[i]
		checkLoad(t, f[i], context, x)
		if got := f[i].lit(t, "pick_state", red); got != (x.state != "") {
			t.Errorf("%s: the state %q is red: %t", context, x.state, got)
		}
		if got := f[i].lit(t, "pick_tag", redTag); got != (x.state == "needs 3 tags") {
			t.Errorf("%s: the tag beside %q is red: %t", context, x.state, got)
		}
	}
	f[1].beside(t, "pick_state", "pick_key", "top_10@V1#1").text(t, "four tents", "")
}

// Tags typed on the pick list, as words or as a number, stand on the check-in
// beside the same piece; what is used up is not counted back.
func TestTagsComeBack(t *testing.T) {
	calc.Need(t)
	t.Parallel()
	_, book := laidOut(t, pickShop(t), pickJob)
	tags := []typed{{"pick_tag", "pick_key=top_10@V1#1", "T-017"}, {"pick_tag", "pick_key=top_10@V1#2", 42}, {"pick_tag", "pick_key=corner@V2", "lost"}}
	f := recalculated(t, []typing{{"tags", book, tags}, {"one tag", book, tags[1:2]}})
	f[0].beside(t, "return_tag", "return_key", "top_10@V1#1").text(t, "tags", "T-017")
	f[0].beside(t, "return_tag", "return_key", "top_10@V1#2").text(t, "tags", "42")
	f[0].beside(t, "return_tag", "return_key", "corner@V2").text(t, "a part without tags", "")
	f[1].beside(t, "return_tag", "return_key", "top_10@V1#1").text(t, "one tag", "")
	f[1].beside(t, "return_tag", "return_key", "top_10@V1#2").text(t, "one tag", "42")
	for _, key := range f[0].texts("return_key") {
		if strings.HasPrefix(key, "stake@") {
			t.Errorf("the check-in lists %q; what is used up was expected to be left out", key)
		}
	}
}
