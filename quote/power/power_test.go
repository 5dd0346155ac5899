package power

import (
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/diag/diagtest"
	"tentwright/catalog/money"
	"tentwright/quote/job"
	"tentwright/quote/tent"
)

// head is what every job file must say.
const head = `number: T-1
customer: {name: Test Customer}
event: {name: Test Event, guests: 40}
dates: {quoted: 2027-01-10, deliver: 2027-06-11, event_from: 2027-06-12, event_to: 2027-06-12, strike: 2027-06-13, collect: 2027-06-13}
delivery: {distance: 8 mi}
`

// hall is a closed tent of the demonstration shop.
const hall = "tents: [{id: a, family: hip, size: 40x80, sides: [{side: front, wall: window, doors: [double]}, {side: right, wall: solid}, {side: back, wall: window}, {side: left, wall: solid}]}]\n"

func demo(t testing.TB) *catalog.Catalog {
	t.Helper()
	c, list := catalog.Load("demo", catalog.Demo())
	if c == nil {
		t.Fatal(list.Err())
	}
	return c
}

// ownShop is the demonstration shop under another name, so that what is marked
// demo does not count.
func ownShop(t testing.TB) *catalog.Catalog {
	t.Helper()
	const company = "company: {name: Other Yard, address: [1 Yard Lane], currency: USD, units: imperial, paper: letter, quote: {valid_days: 30, deposit: 25, balance_days: 14, show_prices: line}}\n"
	c, list := catalog.Load("own", diagtest.With(t, catalog.Demo(), "company.yaml", []byte(company)))
	if c == nil {
		t.Fatal(list.Err())
	}
	return c
}

// built plans a job.
func built(t testing.TB, c *catalog.Catalog, body string) *Result {
	t.Helper()
	j, list := job.ReadFor(c, "job.yaml", []byte(head+body))
	if j == nil {
		t.Fatal(list.Err())
	}
	return buildJob(t, c, j)
}

// failer is a test, also one of rapid's.
type failer interface {
	Helper()
	Fatal(...any)
}

func buildJob(t failer, c *catalog.Catalog, j *job.Job) *Result {
	t.Helper()
	tents, list := tent.Build(c, j)
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	return Build(c, j, tents)
}

// planned is how many of an item are planned.
func (r *Result) plannedOf(item string) string {
	for _, p := range r.Planned {
		if p.Item.ID == item {
			return p.Quantity.String()
		}
	}
	return "0"
}

// A job that asks for nothing is planned nothing; its load is added up all the
// same. A shop without the file gets nothing at all.
func TestNothingAsked(t *testing.T) {
	r := built(t, demo(t), hall+"items: [{item: light-kit-20x40, quantity: 2}]\n")
	if len(r.Planned) > 0 || r.Heat != nil || r.Supply != nil || len(r.Missing) > 0 {
		t.Errorf("planned %v, heat %v, supply %v, missing %v; nothing was expected", r.Planned, r.Heat, r.Supply, r.Missing)
	}
	if want := "960"; r.VA.String() != want { // 24 bars of 36 W at a power factor of 0.9
		t.Errorf("the load is %s VA; %s was expected", r.VA, want)
	}
	c := *demo(t)
	c.Power = nil
	if r := Build(&c, &job.Job{}, nil); r != nil {
		t.Errorf("a shop without the file got %v", r)
	}
}

// What is ordered by hand, in kits too, is planned no more; an extra that is not
// chosen is.
func TestOrderedByHandCountsFirst(t *testing.T) {
	c := demo(t)
	const cold = "heat: {inside: 68 F, outside: 36 F, hours: 8}\n"
	for _, x := range []struct{ name, items, heaters, propane string }{
		{"nothing ordered", "[]", "2", "4"},
		{"one ordered", "[{item: heater-170, quantity: 1}]", "1", "4"},
		{"a kit of one heater and two cylinders", "[{item: heat-kit, quantity: 1}]", "1", "2"},
		{"all ordered", "[{item: heater-170, quantity: 2}, {item: propane-100, quantity: 9}]", "0", "0"},
		{"an extra that is not chosen", "[{item: heater-170, quantity: 2, optional: yes}]", "2", "4"},
		{"an extra that is chosen", "[{item: heater-170, quantity: 2, optional: yes, chosen: yes}]", "0", "4"},
	} {
		r := built(t, c, hall+"items: "+x.items+"\n"+cold)
		if got := r.plannedOf("heater-170"); got != x.heaters {
			t.Errorf("%s: %s heaters are planned; %s were expected", x.name, got, x.heaters)
		}
		if got := r.plannedOf("propane-100"); got != x.propane {
			t.Errorf("%s: %s cylinders are planned; %s were expected", x.name, got, x.propane)
		}
	}
}

// Values marked demo do not count for another shop: what needs them is left out
// and named, and the rest goes on.
func TestValuesFromMemoryDoNotCount(t *testing.T) {
	r := built(t, ownShop(t), hall+"items: [{item: perimeter-light, quantity: 22}]\nheat: {inside: 68 F, outside: 36 F, hours: 8}\npower: {source: generator, distance: 150 ft, hours: 9}\n")
	if len(r.Missing) != 3 {
		t.Errorf("missing is %q; the cloth, the light and the circuits were expected", r.Missing)
	}
	if len(r.Planned) > 0 || r.Heat.Known || !r.Heat.Need.IsZero() || r.Light != nil || r.Supply.Carries.IsPositive() {
		t.Errorf("planned %v from values that do not count: %+v", r.Planned, r.Heat)
	}
	if !r.VA.Equal(money.Int(880)) {
		t.Errorf("the load is %s VA; 880 was expected", r.VA)
	}
}

// No more is planned than the yard owns beside what is ordered.
func TestNoMoreThanOwned(t *testing.T) {
	c := demo(t)
	many := "tents: [{id: a, family: hip, size: 40x80, count: 4, sides: [{side: front, wall: window}, {side: right, wall: solid}, {side: back, wall: window}, {side: left, wall: solid}]}]\n"
	r := built(t, c, many+"items: [{item: heater-170, quantity: 2}]\nheat: {inside: 70 F, outside: 10 F, hours: 8}\n")
	w := r.Heat.Tents[0]
	if r.plannedOf("heater-170") != "4" || r.plannedOf("heater-80") != "6" {
		t.Errorf("%s and %s heaters are planned beside two; 4 and 6 were expected, all that the yard owns", r.plannedOf("heater-170"), r.plannedOf("heater-80"))
	}
	if !w.Output.LessThan(w.Need) || !w.Output.Equal(r.Heat.Taken) {
		t.Errorf("the heaters give %s of %s, %s go along; too little was expected", w.Output, w.Need, r.Heat.Taken)
	}
}
