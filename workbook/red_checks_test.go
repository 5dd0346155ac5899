package workbook_test

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"tentwright/workbook/internal/calc"
	"tentwright/workbook/sheet"
)

const (
	good = "OK"
	look = "LOOK"
	stop = "STOP"
)

// Jobs of the smallest shop for the checks: two tents, chairs and tables; and
// of the other shop: a tent without a way out, and a heater without fuel.
const (
	redTents = "tents: [{id: a, family: hip, size: 10x10, count: 2, sides: [{side: back, wall: solid}]}]\n"
	redJob   = redTents + "items: [{item: chair, quantity: 50}, {item: seat8, quantity: 1}]\n"

	shutTent  = "tents: [{id: a, family: hip, size: 20x20, sides: [{side: front, wall: solid}, {side: right, wall: solid}, {side: back, wall: solid}, {side: left, wall: solid}]}]\n"
	heaterJob = "items: [{item: heater-170, quantity: 1"

	// A hall of 2,400 sq ft with two doors of 72 in in one side, and a dance floor.
	hallJob = "tents: [{id: a, family: hip, size: 40x60, sides: [{side: front, wall: solid, doors: [double, double]}, {side: right, wall: solid}, {side: back, wall: solid}, {side: left, wall: solid}]}]\n" +
		"items: [{item: safety-kit, quantity: 1}, {item: dance-floor, quantity: 256}]\n"
	stakedJob = "tents: [{id: a, family: hip, size: 20x20}]"
	poledJob  = "tents: [{id: a, family: pole, size: 40x60}]"
	walledJob = "tents: [{id: a, family: hip, size: 20x20, sides: [{side: back, wall: solid}]}]"
)

// turn takes a check from the state it begins in to the other, and back by
// another input where there is one.
type turn struct {
	check string // key
	bad   string // its state where it does not hold
	first []typed
	then  []typed

	body   string   // of the job; none: redJob
	demo   bool     // of the shop that comes with the program, not of the smallest
	swaps  []string // in the smallest shop's files
	begins string   // state; none: good
}

// book is the workbook of the job.
func (x *turn) book(t *testing.T) *sheet.Book {
	t.Helper()
	c := demoCatalog(t)
	if !x.demo {
		c = smallShop(t, x.swaps...)
	}
	_, book := laidOut(t, c, cmp.Or(x.body, redJob))
	return book
}

// fewOwned limits the chairs of the smallest shop.
var fewOwned = []string{"use: furnish, replacement: 28", "use: furnish, owned: 60, replacement: 28"}

// turns has every kind of check that something typed can turn.
var turns = []turn{
	{check: "payload:V1", bad: stop, first: []typed{{"riders_v1", "", 17}}, then: []typed{{"rate_rider", "", 1}}},
	{check: "payload:V1", bad: stop, first: []typed{{"qty_l.1", "", 700}}, then: []typed{{"qty_l.1", "", 25}}},
	{check: "payload:B1", bad: stop, first: []typed{{"riders_b1", "", 17}}, then: []typed{{"riders_b1", "", 1}}},
	{check: "payload:B1", bad: stop, first: []typed{{"rate_rider", "", 1600}}, then: []typed{{"riders_b1", "", 1}}},
	{check: "room:V1", bad: stop, first: []typed{{"qty_l.1", "", 250}}, then: []typed{{"qty_l.1", "", 25}}},
	{check: "room:B1", bad: stop, first: []typed{{"qty_l.1", "", 250}}, then: []typed{{"qty_l.1", "", 25}}},
	{check: "margin", bad: look, first: []typed{{"rate_margin_floor", "", 95}}, then: []typed{{"rate_hand_bill", "", 9000}}},
	{check: "margin", bad: look, first: []typed{{"job_discount", "", 100}, {"job_labour_charged", "", "No"}}, then: []typed{{"job_discount", "", 0}}},
	{check: "lines below floor", bad: look, first: []typed{{"build_hand", "build_key=L:1", 90}}, then: []typed{{"item_cost", "item_id=chair", 0.01}}},
	{check: "lines below floor", bad: look, first: []typed{{"tents_hand", "tents_key=T:a", 95}}, then: []typed{{"item_price", "item_id=hip:10x10", 5000}}},
	{check: "overpaid", bad: look, first: []typed{{"payments_amount", "", 99999}}, then: []typed{{"qty_l.1", "", 60000}}},
	{check: "day:out", bad: stop, first: []typed{{"minutes_frame", "", 400}}, then: []typed{{"window_out_days", "", 20}}},
	{check: "day:out", bad: stop, first: []typed{{"fixed_drive", "", 5000}}, then: []typed{{"window_out_crew", "", 150}}},
	{check: "crew:out", bad: stop, first: []typed{{"window_out_crew", "", 1}}, then: []typed{{"smallest_frame", "", 1}}},
	{check: "crew:out", bad: stop, first: []typed{{"smallest_chairs", "", 5}}, then: []typed{{"window_out_crew", "", 5}}},
	{check: "seats:out", bad: look, first: []typed{{"window_out_crew", "", 3}}, then: []typed{{"window_out_crew", "", 2}}},
	{check: "stock", bad: stop, swaps: fewOwned, first: []typed{{"qty_l.1", "", 55}}, then: []typed{{"qty_l.2", "", 0}}},
	{check: "stock:chair", bad: stop, swaps: fewOwned, begins: stop, body: redTents + "items: [{item: chair, quantity: 100}]",
		first: []typed{{"qty_l.1", "", 55}}, then: []typed{{"qty_l.1", "", 66}}},
	{check: "chairs", bad: look, first: []typed{{"job_guests", "", 100}}, then: []typed{{"qty_l.2", "", 10}}},
	{check: "requote tents", bad: stop, first: []typed{{"tent_size", "tent_id=a", "20x20"}}, then: []typed{{"tent_size", "tent_id=a", "10x10"}}},
	{check: "requote job", bad: stop, first: []typed{{"job_date_quoted", "", 46398}}, then: []typed{{"job_date_quoted", "", 46397}}},
	{check: "added lines", bad: stop, first: []typed{{"build_id", "build_key=S:3", "chiar"}}, then: []typed{{"build_id", "build_key=S:3", "chair"}}},
	{check: "requote lines", bad: look, first: []typed{{"build_id", "build_key=S:3", "chair"}}, then: []typed{{"build_id", "build_key=S:3", nil}}},
	{check: "requote site", bad: look, first: []typed{{"site_surface_degree", "", "asphalt"}}, then: []typed{{"site_surface_degree", "", "grass"}}},
	{check: "requote site", bad: look, body: "site: [{factor: surface, option: asphalt}]\n" + redJob,
		first: []typed{{"site_surface_degree", "", "grass"}}, then: []typed{{"site_surface_degree", "", "asphalt"}}},
	{check: "requote schedule", bad: look, demo: true, body: stakedJob, first: []typed{{"window_install_crew", "", 6}}, then: []typed{{"window_install_crew", "", 5}}},
	{check: "requote schedule", bad: look, demo: true, body: stakedJob, first: []typed{{"minutes_frame_raise", "", 90}}, then: []typed{{"minutes_frame_raise", "", 4}}},
	{check: "requote schedule", bad: look, demo: true, body: stakedJob, first: []typed{{"rate_lead_cost", "", 99}, {"job_date_strike", "", 46550}}, then: []typed{{"rate_lead_cost", "", 43}, {"job_date_strike", "", 46551}}},
	{check: "lifts", bad: look, demo: true, body: stakedJob, first: []typed{{"rate_wet", "", 2.4}}, then: []typed{{"qty_t.a", "", 0}}},
	{check: "requote zone", bad: stop, first: []typed{{"job_distance", "", 500.1}}, then: []typed{{"job_distance", "", 500}}},
	{check: "requote zone", bad: stop, first: []typed{{"zones_upto", "zones_id=near", 7.9}}, then: []typed{{"job_zone", "", "near"}}},
	{check: "need:L:1:propane-100", bad: stop, demo: true, begins: stop, body: heaterJob + "}]",
		first: []typed{{"build_id", "build_key=S:2", "propane-100"}, {"build_quantity", "build_key=S:2", 1}}, then: []typed{{"build_quantity", "build_key=S:2", 0}}},
	{check: "need:L:1:propane-100", bad: stop, demo: true, body: heaterJob + ", optional: yes}]",
		first: []typed{{"extra_choice", "", "Yes"}}, then: []typed{{"qty_l.1", "", 0}}},
	{check: "holding:a", bad: stop, demo: true, begins: stop, body: "tents: [{id: a, family: pole, size: 40x60, ground: asphalt-whole}]",
		first: []typed{{"qty_t.a", "", 0}}, then: []typed{{"qty_t.a", "", 1}}},
	{check: "door:a", bad: stop, demo: true, begins: stop, body: shutTent, first: []typed{{"qty_t.a", "", 0}}, then: []typed{{"qty_t.a", "", 1}}},
	{check: "sizes:hip:40x80", bad: stop, demo: true, body: "tents: [{id: a, family: hip, size: 40x80}, {id: b, family: hip, size: 40x80}]",
		first: []typed{{"qty_t.b", "", 900}}, then: []typed{{"qty_t.b", "", 0}}},
	{check: "anchor:a", bad: stop, demo: true, body: poledJob, first: []typed{{"wind_gust", "", 59}}, then: []typed{{"wind_gust", "", 40}}},
	{check: "anchor:a", bad: stop, demo: true, body: poledJob, first: []typed{{"wind_safety_stake", "", 9}}, then: []typed{{"wind_gust", "", 15}}},
	{check: "gust of shop", bad: look, demo: true, body: stakedJob, first: []typed{{"wind_gust", "", 30}}, then: []typed{{"wind_gust", "", nil}}},
	{check: "wind actions", bad: look, demo: true, body: stakedJob, first: []typed{{"wind_gust", "", 35}}, then: []typed{{"action_gust", "action_id=down", 34}}},
	{check: "anchor legs", bad: stop, demo: true, body: stakedJob, first: []typed{{"site_surface_degree", "", "deck"}}, then: []typed{{"site_surface_degree", "", "sand"}}},
	{check: "anchor gust", bad: stop, demo: true, body: stakedJob, first: []typed{{"wind_gust", "", 61}}, then: []typed{{"wind_limit", "", 70}}},
	{check: "late:marking", bad: stop, demo: true, body: stakedJob, first: []typed{{"job_date_quoted", "", 46547}}, then: []typed{{"date_days_last", "date_key=marking", 0}}},
	{check: "late:marking", bad: stop, demo: true, body: stakedJob, first: []typed{{"date_days_first", "date_key=marking", 400}}, then: []typed{{"date_done", "date_key=marking", "☑"}}},
	{check: "late:marked", bad: stop, demo: true, body: stakedJob, first: []typed{{"job_date_signed", "", 46550}}, then: []typed{{"qty_t.a", "", 0}}},
	{check: "dates", bad: look, demo: true, body: stakedJob, first: []typed{{"date_days_last", "date_key=permit", -400}}, then: []typed{{"date_done", "date_key=permit", "☑"}}},
	{check: "days off", bad: look, demo: true, body: stakedJob, first: []typed{{"job_date_collect", "", 46573}}, then: []typed{{"job_date_collect", "", 46571}}},
	{check: "warm:a", bad: stop, demo: true, body: warmJob, first: []typed{{"heat_outside", "", 0}}, then: []typed{{"heat_inside", "", 30}}},
	{check: "warm:a", bad: stop, demo: true, body: warmJob, first: []typed{{"heat_u_roof", "", 3}}, then: []typed{{"heat_u_wall", "", 0.01}, {"heat_u_roof", "", 1.5}}},
	{check: "heaters", bad: stop, demo: true, body: warmJob, first: []typed{{"qty_l.2", "", 0}}, then: []typed{{"heat_outside", "", 60}}},
	{check: "burns:propane-100", bad: stop, demo: true, body: warmJob, first: []typed{{"heat_hours", "", 40}}, then: []typed{{"heat_outside", "", 66}}},
	{check: "burns:diesel", bad: stop, demo: true, body: warmJob, first: []typed{{"power_hours", "", 100}}, then: []typed{{"build_id", "build_key=S:2", "diesel"}, {"build_quantity", "build_key=S:2", 60}}},
	{check: "lit", bad: look, demo: true, begins: look, body: warmJob, first: []typed{{"load_lumens", "load_part=perimeter-light", 4000}}, then: []typed{{"light_wanted", "", 20}}},
	{check: "generator", bad: stop, demo: true, body: warmJob, first: []typed{{"load_watts", "load_part=perimeter-light", 400}}, then: []typed{{"qty_l.1", "", 2}}},
	{check: "generator", bad: stop, demo: true, body: warmJob, first: []typed{{"generator_reserve", "", 60}}, then: []typed{{"load_factor", "load_part=heater-170", 1}, {"load_watts", "load_part=heater-170", 100}}},
	{check: "circuits", bad: stop, demo: true, body: warmJob, first: []typed{{"load_watts", "load_part=perimeter-light", 400}}, then: []typed{{"load_watts", "load_part=perimeter-light", 50}}},
	{check: "circuits", bad: stop, demo: true, body: warmJob, first: []typed{{"qty_l.1", "", 300}}, then: []typed{{"load_watts", "load_part=perimeter-light", 5}}},
	{check: "cable:feeder-50", bad: look, demo: true, body: warmJob, first: []typed{{"power_distance", "", 400}}, then: []typed{{"build_id", "build_key=S:2", "feeder-50"}, {"build_quantity", "build_key=S:2", 5}}},
	{check: "cable:cord", bad: look, demo: true, body: warmJob, first: []typed{{"build_id", "build_key=P:cord", "bar"}}, then: []typed{{"build_id", "build_key=S:2", "cord-short"}, {"build_quantity", "build_key=S:2", 3}}},
	{check: "amps", bad: stop, demo: true, body: warmJob, first: []typed{{"load_watts", "load_part=perimeter-light", 800}}, then: []typed{{"qty_l.1", "", 1}}},
	{check: "drop", bad: stop, demo: true, body: warmJob, first: []typed{{"power_distance", "", 2000}}, then: []typed{{"power_distance", "", 90}}},
	{check: "floor", bad: stop, demo: true, body: hallJob, first: []typed{{"job_guests", "", 500}}, then: []typed{{"use_area", "use_id=tables", 1}}},
	{check: "ways out", bad: stop, demo: true, body: hallJob, first: []typed{{"job_guests", "", 250}}, then: []typed{{"qty_t.a", "", 2}}},
	{check: "exits:a", bad: stop, demo: true, body: hallJob, first: []typed{{"use_area", "use_id=tables", 7}}, then: []typed{{"job_use", "", "kitchen"}}},
	{check: "exit width:a", bad: stop, demo: true, body: hallJob, first: []typed{{"exit_each", "", 1}}, then: []typed{{"job_use", "", "kitchen"}}},
	{check: "exit sides:a", bad: look, demo: true, begins: look, body: hallJob,
		first: []typed{{"job_use", "", "kitchen"}, {"qty_l.2", "", 0}, {"use_area", "use_id=kitchen", 400}}, then: []typed{{"job_use", "", "tables"}}},
	{check: "floor taken:a", bad: look, demo: true, body: hallJob, first: []typed{{"qty_l.2", "", 3000}}, then: []typed{{"qty_t.a", "", 2}}},
	{check: "exit signs", bad: look, demo: true, body: hallJob, first: []typed{{"qty_l.1", "", 0}}, then: []typed{{"job_use", "", "kitchen"}}},
	{check: "emergency lights", bad: look, demo: true, body: hallJob, first: []typed{{"qty_l.1", "", 0}}, then: []typed{{"job_use", "", "kitchen"}}},
	{check: "extinguishers", bad: look, demo: true, body: hallJob, first: []typed{{"fire_hazard", "", "extra"}}, then: []typed{{"fire_rating", "", 4}}},
	{check: "permit papers", bad: look, demo: true, begins: look, body: hallJob,
		first: []typed{{"build_id", "build_key=S:3", "permit"}, {"build_quantity", "build_key=S:3", 1}}, then: []typed{{"build_quantity", "build_key=S:3", 0}}},
	// No input can do this: a line of the list is cleared by hand.
	{check: "parts on vehicles", bad: stop, first: []typed{{"pick_part", "pick_key=top_10@V1#2", nil}}, then: []typed{{"pick_part", "pick_key=top_10@V1#2", "top_10"}}},
}

// steps are the workbook after the first inputs and after the others, with the
// state that each must give; the state that it begins in is looked at at once.
func (x *turn) steps(t *testing.T) (list []typing, want []string) {
	t.Helper()
	book := x.book(t)
	begins, other := good, x.bad
	if x.begins == x.bad {
		begins, other = x.bad, good
	}
	keys, s, _ := cellsOf(t, book, "check_key")
	states, _, first := cellsOf(t, book, "check_state")
	at := slices.IndexFunc(keys, func(c sheet.Cell) bool { return c.Value == x.check })
	if at < 0 || states[at].Value != begins {
		t.Errorf("%s: %s, row %d: wanted %s as the workbook is made, got %v", x.check, s.Name, first+at, begins, states[max(at, 0)].Value)
	}
	list = []typing{{step(x.check, 1), book, x.first}, {step(x.check, 2), book, slices.Concat(x.first, x.then)}}
	return list, []string{other, begins}
}

// Every check that compares something people can change turns red when they
// change it so, says what to do, and turns back.
func TestChecksTurnRedAndBack(t *testing.T) {
	calc.Need(t)
	var all []typing
	var keys, want []string
	for i := range turns {
		list, states := turns[i].steps(t)
		all, want = append(all, list...), append(want, states...)
		keys = append(keys, turns[i].check, turns[i].check)
	}
	for at := 0; at < len(all); at += batchSize {
		t.Run(strconv.Itoa(at), func(t *testing.T) {
			t.Parallel()
			end, rows := min(at+batchSize, len(all)), 0
			for i, f := range recalculated(t, all[at:end]) {
				checkState(t, f, all[at+i].name, keys[at+i], want[at+i])
				rows += checkRule(t, f, all[at+i].name)
			}
			t.Logf("%d workbooks, %d states", end-at, rows)
		})
	}
}

// checkState holds state and advice of one check.
func checkState(t *testing.T, f figures, context, key, want string) {
	t.Helper()
	f.beside(t, "check_state", "check_key", key).text(t, context, want)
	advice := f.beside(t, "check_advice", "check_key", key)
	if (want == good) != (advice.Text == "") {
		t.Errorf("%s: %s: wanted advice only where the state is not %s, got %q with %s", context, advice.place, good, advice.Text, want)
	}
}

// checkRule holds the state of every check against its own two sides; it
// gives the number of checks.
func checkRule(t *testing.T, f figures, context string) int {
	t.Helper()
	keys := f.texts("check_key")
	for _, key := range keys {
		is, limit := f.beside(t, "check_value", "check_key", key), f.beside(t, "check_limit", "check_key", key)
		state, rule := f.beside(t, "check_state", "check_key", key), f.beside(t, "check_rule", "check_key", key)
		holds := is.Number <= limit.Number
		if strings.Contains(rule.Text, "least") {
			holds = is.Number >= limit.Number
		}
		if holds != (state.Text == good) || !holds && state.Text != look && state.Text != stop {
			t.Errorf("%s: %s, %q: %v %s %v, got %q", context, state.place, key, is.Number, rule.Text, limit.Number, state.Text)
		}
	}
	return len(keys)
}
