package lift

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
	"tentwright/quote/parts"
	"tentwright/quote/tent"
)

const head = `number: T-1
customer: {name: Test Customer}
event: {name: Test Event, guests: 40}
dates: {quoted: 2027-01-10, deliver: 2027-06-11, event_from: 2027-06-12, event_to: 2027-06-12, strike: 2027-06-13, collect: 2027-06-13}
delivery: {distance: 8 mi}
`

// built is the stage for a job, with the parts that it looks at.
func built(t testing.TB, c *catalog.Catalog, body string) (*Result, *parts.Result) {
	t.Helper()
	j, list := job.ReadFor(c, "job.yaml", []byte(head+body))
	if j == nil {
		t.Fatal(list.Err())
	}
	tents, list := tent.Build(c, j)
	if list.Err() != nil {
		t.Fatal(list.Err())
	}
	p, list := parts.Build(c, j, tents, nil)
	if list.Err() != nil {
		t.Fatal(list.Err())
	}
	return Build(c, p), p
}

const large = "tents: [{id: a, family: hip, size: 40x80}, {id: b, family: pole, size: 40x60}]\nitems: [{item: table-round-60, quantity: 10}, {item: chair-folding, quantity: 40}]\n"

// find is the lift of a part, of whichever list.
func find(t testing.TB, r *Result, part string) *Lift {
	t.Helper()
	for _, list := range [][]Lift{r.Lifts, r.Others} {
		for i := range list {
			if list[i].Key == part {
				return &list[i]
			}
		}
	}
	t.Fatalf("%s is not among the lifts", part)
	return nil
}

func rule(t testing.TB, c *catalog.Catalog, id string) *catalog.LabourRule {
	t.Helper()
	at := slices.IndexFunc(c.Labour, func(r catalog.LabourRule) bool { return r.ID == id })
	if at < 0 {
		t.Fatalf("no labour rule %q", id)
	}
	return &c.Labour[at]
}

// Weights, limits and people of one job, worked out by hand from the files of
// the demonstration shop.
func TestBuild(t *testing.T) {
	c := demoShop(t)
	r, _ := built(t, c, large)
	if len(r.Missing) > 0 || len(r.Unjudged) > 0 {
		t.Errorf("%v is missing and %d parts are not judged; nothing was expected", r.Missing, len(r.Unjudged))
	}
	for _, tc := range []struct {
		part          string
		weight, limit float64
		people        int
		heavy         bool
	}{
		// 12 base plates of 6.3 lb in a crate of 3 lb are 78.6 lb; 51 lb at 24 to 36
		// in (0.955), 12 in up (0.82 + 1.8/12 = 0.97), once a minute (0.94): 44.41
		// lb. 1.77 times that takes four: 4 x 0.45 = 1.8.
		{"fit-base", 78.6, 51 * 0.955 * 0.97 * 0.94, 4, true},
		// A round table of 54 lb at 30 to 36 in (0.955), twice a minute for 2 h
		// (0.84): 40.91 lb. 1.32 times that takes two: 2 x 0.667 = 1.334.
		{"table-60", 54, 51 * 0.955 * 0.84, 2, true},
		// One folding chair, on the way: piece by piece though it rides in tens.
		{"chair-fold", 9.4, 51 * 0.955 * 0.84, 1, false},
		// Nobody lifts a top of this size: 147.38 lb, wet 191.59, in a bag of 4 lb.
		{"ptop-40-end", 195.59, 0, 0, true},
	} {
		x := find(t, r, tc.part)
		if !near(x.Weight.Pounds(), tc.weight, 0.001) || !near(x.Limit.Pounds(), tc.limit, 1e-6) || x.People != tc.people {
			t.Errorf("%s: %.2f of %.2f lb by %d people; %.2f of %.2f by %d were expected", tc.part, x.Weight.Pounds(), x.Limit.Pounds(), x.People, tc.weight, tc.limit, tc.people)
		}
		if heavy := slices.ContainsFunc(r.Lifts, func(y Lift) bool { return y.Key == tc.part }); heavy != tc.heavy {
			t.Errorf("%s is too much for one person: %v; %v was expected", tc.part, heavy, tc.heavy)
		}
	}
	if !slices.IsSortedFunc(r.Lifts, func(a, b Lift) int { return rank(&a) - rank(&b) }) {
		t.Error("machines stand before people")
	}
	for task, want := range map[string]int{"unload-weight": 4, "load-weight": 0, "set-tables": 2, "set-chairs": 0} {
		if got := r.Smallest(rule(t, c, task), ""); got != want {
			t.Errorf("%s takes %d people because of what it lifts; %d were expected", task, got, want)
		}
	}
}

// A side of 80 ft with a leg every 10 ft has nine. With a jack at each of them
// 9 x 0.5 people are five; without, nine. A pole tent goes up pole by pole.
func TestRaise(t *testing.T) {
	c := demoShop(t)
	raise := rule(t, c, "frame-raise")
	r, p := built(t, c, large)
	if len(r.Raises) != 1 || r.Raises[0].Legs != 9 || !r.Raises[0].Jacked || r.Smallest(raise, "a") != 5 {
		t.Errorf("the side is raised by %+v; nine legs with jacks and five people were expected", r.Raises)
	}
	if r.Smallest(raise, "b") != 0 || r.Smallest(raise, "") != 0 || r.Smallest(rule(t, c, "frame-joints"), "a") != 0 {
		t.Error("people are asked for where no side is raised")
	}
	line := p.Find("tent-jack")
	line.Counted, line.Spare = 8, 0 // one too few
	if r := Build(c, p); r.Raises[0].Jacked || r.Smallest(raise, "a") != 9 {
		t.Errorf("with eight jacks the side is raised by %+v; nine people were expected", r.Raises[0])
	}
	line.Counted = 9
	if r := Build(c, p); r.Smallest(raise, "a") != 5 {
		t.Errorf("with nine jacks the side is raised by %+v; five people were expected", r.Raises[0])
	}
	var none *Result
	if none.Smallest(raise, "a") != 0 {
		t.Error("no result asks for people")
	}
}

// What is known from memory counts only in the demonstration. Another yard that
// keeps the file has no multipliers, so nothing is judged, and no team.
func TestAnotherYard(t *testing.T) {
	own := func(demo bool, change func(*catalog.Lifting)) *Result {
		c := demoShop(t)
		c.Demo = demo
		change(c.Crew.Lifting)
		r, _ := built(t, c, large)
		return r
	}
	said := func(r *Result, words string) bool {
		return slices.ContainsFunc(r.Missing, func(m string) bool { return strings.Contains(m, words) })
	}
	r := own(false, func(*catalog.Lifting) {})
	if len(r.Team) != 0 || !said(r, "frequency") || len(r.Unjudged) == 0 {
		t.Errorf("%d rows of teams, %v missing, %d parts not judged; none, and the multipliers, were expected", len(r.Team), r.Missing, len(r.Unjudged))
	}
	if slices.ContainsFunc(append(r.Lifts, r.Others...), func(x Lift) bool { return !x.How.Machine }) {
		t.Error("a lift by hand is judged without multipliers")
	}
	entered := func(l *catalog.Lifting) {
		for i := range l.Frequency {
			l.Frequency[i].Demo = false
		}
	}
	r = own(false, entered)
	if x := find(t, r, "fit-base"); x.People != 0 || x.Index < 1.7 || len(r.Team) != 0 || !said(r, "team") {
		t.Errorf("without a team of its own %d people lift the base plates, %v missing; a machine was expected", x.People, r.Missing)
	}
	if x := find(t, r, "chair-fold"); x.People != 1 {
		t.Errorf("%d people lift a chair; one was expected", x.People)
	}
	poor := func(l *catalog.Lifting) {
		entered(l)
		for i := range l.Lifts {
			if l.Lifts[i].ID == "pieces" {
				l.Lifts[i].Coupling = "poor"
			}
		}
	}
	if r = own(false, poor); !said(r, "poor") || !slices.ContainsFunc(r.Unjudged, func(p *catalog.Part) bool { return p.ID == "table-60" }) {
		t.Errorf("a poor grip without its multiplier is judged; %v missing", r.Missing)
	}
	if r = own(true, poor); said(r, "poor") || !near(find(t, r, "table-60").Limit.Pounds(), 0.9*51*0.955*0.84, 1e-6) {
		t.Errorf("a poor grip lifts %v; 0.9 of a good one was expected", find(t, r, "table-60").Limit.Pounds())
	}
	c := demoShop(t)
	c.Crew = nil
	if r, _ := built(t, c, large); len(r.Lifts)+len(r.Others)+len(r.Raises)+len(r.Missing) > 0 {
		t.Error("something is said of lifting in a shop without a crew file")
	}
}

// Every part of the demonstration is lifted in some way, and no demonstration
// job needs more people for it than its crews have.
func TestDemonstration(t *testing.T) {
	c := demoShop(t)
	for i := range c.Parts {
		if wayOf(c.Crew.Lifting, &c.Parts[i]) == nil {
			t.Errorf("nothing says how %s is lifted", c.Parts[i].ID)
		}
	}
	files, err := filepath.Glob(filepath.Join("..", "..", "testdata", "jobs", "*.yaml"))
	if err != nil || len(files) == 0 {
		t.Fatal("no jobs", err)
	}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		j, list := job.Read(file, data)
		if list.Err() != nil {
			t.Fatal(list.Err())
		}
		tents, _ := tent.Build(c, j)
		p, list := parts.Build(c, j, tents, nil)
		if list.Err() != nil {
			t.Fatal(list.Err())
		}
		r := Build(c, p)
		for i := range r.Lifts {
			if x := &r.Lifts[i]; x.People == 0 && !x.How.Machine {
				t.Errorf("%s: no team lifts %s, %.1f of %.1f lb", filepath.Base(file), x.Key, x.Weight.Pounds(), x.Limit.Pounds())
			}
		}
		for _, w := range j.Labour.Windows {
			for k := range c.Labour {
				phases := c.Rates.Windows[slices.IndexFunc(c.Rates.Windows, func(x catalog.Window) bool { return x.ID == w.Window })].Phases
				for _, tent := range tents {
					if l := &c.Labour[k]; w.Crew > 0 && slices.Contains(phases, l.Phase) && r.Smallest(l, tent.Job.ID) > w.Crew {
						t.Errorf("%s: %s takes %d people and %s has %d", filepath.Base(file), l.ID, r.Smallest(l, tent.Job.ID), w.Window, w.Crew)
					}
				}
			}
		}
	}
}

// A team never lifts more than the sum of its people, nor fewer people more; a
// heavier load never takes fewer, until no team does.
func TestTeams(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, sum := &Result{}, 1.0
		for people := 2; people <= rapid.IntRange(1, 8).Draw(t, "largest"); people++ {
			share := money.Percent(money.Int(rapid.IntRange(int(100*sum)/people+1, 100).Draw(t, "share")))
			sum = float64(people) * share.InexactFloat64()
			r.Team = append(r.Team, catalog.TeamShare{People: people, Share: share})
		}
		index, more := rapid.Float64Range(0, 9).Draw(t, "index"), rapid.Float64Range(0, 3).Draw(t, "more")
		light, heavy := r.people(index), r.people(index+more)
		if light > 0 && float64(light) < index-2*slack {
			t.Fatalf("%d people lift %v times what one does, above their sum", light, index)
		}
		if heavy > 0 && (light == 0 || heavy < light) {
			t.Fatalf("%d people lift %v and %d lift %v", light, index, heavy, index+more)
		}
		if light == 0 && index <= sum {
			t.Fatalf("no team lifts %v, though the largest lifts %v", index, sum)
		}
	})
}

// The smallest crew never shrinks as parts grow heavier, while teams lift them.
func TestHeavierTakesMore(t *testing.T) {
	c := demoShop(t)
	_, p := built(t, c, large)
	unload, before := rule(t, c, "unload-weight"), 0
	for tenth := 1; tenth <= 10; tenth++ {
		lighter := *p
		lighter.Lines = slices.Clone(p.Lines)
		for i := range lighter.Lines {
			lighter.Lines[i].Each = lighter.Lines[i].Each * unit.Mass(tenth) / 10
		}
		got := Build(c, &lighter).Smallest(unload, "")
		if got < before {
			t.Errorf("at %d tenths of the weights %d people unload, %d at one less", tenth, got, before)
		}
		before = got
	}
	if before != 4 {
		t.Errorf("%d people unload at last; four were expected", before)
	}
}
