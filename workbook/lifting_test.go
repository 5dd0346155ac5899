package workbook_test

import (
	"math"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote"
	"tentwright/quote/lift"
	"tentwright/workbook"
	"tentwright/workbook/internal/calc"
	"tentwright/workbook/sheet"
)

// liftJob has parts for one person, for teams and for machines, sides of two
// lengths, and an extra that is too heavy for one and that nobody ordered yet.
const liftJob = `tents:
  - {id: big, family: hip, size: 40x80, sides: [{side: front, wall: window}]}
  - {id: small, family: hip, size: 20x20}
  - {id: pole, family: pole, size: 40x60}
items:
  - {item: table-round-60, quantity: 10}
  - {item: table-banquet-8, quantity: 6, optional: yes}
  - {item: chair-folding, quantity: 40}
labour: {windows: [{window: install, crew: 8}, {window: strike, crew: 7}]}
`

// haul is what is typed into a workbook, and what holds then.
type haul struct {
	name    string
	typed   []typed
	wet     float64 // 0: the shop's
	crew    int     // of the smaller window; 0: as the job has it
	gone    string  // part that does not go along any more
	ordered string  // part that does, though it did not
}

var hauls = []haul{
	{name: "as made"},
	{name: "wetter", typed: []typed{{"rate_wet", "", 2.4}}, wet: 2.4},
	{name: "dry", typed: []typed{{"rate_wet", "", 1}}, wet: 1},
	{name: "few people", typed: []typed{{"window_strike_crew", "", 2}}, crew: 2},
	{name: "no tables", typed: []typed{{"qty_l.1", "", 0}}, gone: "table-60"},
	{name: "the extra", typed: []typed{{"extra_choice", "", "Yes"}}, ordered: "table-8ft"},
}

// Whatever is typed, each lift shows the weight, limit, index and team that are
// reckoned here once more, and each task the crew that follows.
func TestLiftsFollowWhatIsTyped(t *testing.T) {
	calc.Need(t)
	t.Parallel()
	var list []typing
	var made []*quote.Quote
	var tried []haul
	for _, sys := range []unit.System{unit.Imperial, unit.Metric} {
		c := demoCatalog(t)
		c.Company.Units = sys
		q := mustQuote(t, c, jobOf(t, liftJob))
		for _, x := range hauls {
			if sys == unit.Metric && x.wet == 0 {
				continue // nothing else depends on units
			}
			list, made, tried = append(list, typing{string(sys) + ", " + x.name, workbook.Layout(q), x.typed}), append(made, q), append(tried, x)
		}
	}
	states := map[string]int{}
	for i, f := range recalculated(t, list) {
		checkHauls(t, list[i].name, f, made[i], &tried[i], states)
	}
	t.Logf("states %v", states)
	for _, state := range []string{"", "by machine", "crew too small", "not along", "one person", "no team: machine"} {
		if states[state] == 0 {
			t.Errorf("no lift was in the state %q; each was expected somewhere", state)
		}
	}
}

// checkHauls holds every lift on the sheet against what it must show.
func checkHauls(t *testing.T, context string, f figures, q *quote.Quote, x *haul, states map[string]int) {
	t.Helper()
	most, shown := 0, f.column("lift_part", "lift_people")
	for _, all := range [][]lift.Lift{q.Lift.Lifts, q.Lift.Others} {
		for i := range all {
			l := &all[i]
			people, state, weight := haulOf(q, l, x)
			if _, ok := shown[l.Key]; !ok {
				if people > 1 {
					t.Errorf("%s: %s takes %d people and is not on the sheet", context, l.Key, people)
				}
				continue
			}
			most = max(most, people)
			states[state]++
			f.beside(t, "lift_weight", "lift_part", l.Key).number(t, context, weight)
			f.beside(t, "lift_state", "lift_part", l.Key).text(t, context, state)
			if !l.How.Machine {
				f.beside(t, "lift_people", "lift_part", l.Key).number(t, context, float64(people))
				got := f.beside(t, "lift_index", "lift_part", l.Key)
				if want := weight / l.Limit.In(q.Catalog.Company.Units); math.Abs(got.Number-want) > 1e-9 {
					t.Errorf("%s: %s: wanted %v, got %v", context, got.place, want, got.Number)
				}
			}
		}
	}
	f.beside(t, "task_smallest", "task_rule", "unload-weight").number(t, context, math.Max(2, float64(most)))
	f.beside(t, "task_smallest", "task_rule", "load-weight").number(t, context, 2)
	f.beside(t, "task_smallest", "task_key", "frame-raise/big.legs").number(t, context, 5)   // nine legs, jacked
	f.beside(t, "task_smallest", "task_key", "frame-raise/small.legs").number(t, context, 4) // three legs; the rule asks for four
	f.beside(t, "raise_people", "raise_key", "big/side").number(t, context, 5)
}

// haulOf is who lifts a part, in which state, and how much it weighs in the
// shop's unit, from the catalog.
func haulOf(q *quote.Quote, l *lift.Lift, x *haul) (people int, state string, weight float64) {
	c, part := q.Catalog, q.Catalog.Part(l.Key)
	sys := c.Company.Units
	each := l.Each.In(sys)
	if part.Wets {
		wet := x.wet
		if wet == 0 {
			wet = c.Rates.WetFactor.InexactFloat64()
		}
		each = math.Round(each*wet*100+1e-6) / 100
	}
	weight = each
	if l.How.Whole {
		weight = each * float64(part.Pack.Holds)
		if part.Pack.Tare != nil {
			weight += part.Pack.Tare.In(sys)
		}
	}
	count := l.Count
	switch l.Key {
	case x.gone:
		count = 0
	case x.ordered:
		count = 1
	}
	crew := x.crew
	if crew == 0 {
		crew = 7
	}
	return haulTeam(c, l, count, weight/l.Limit.In(sys)), haulState(c, l, count, weight/l.Limit.In(sys), crew), weight
}

// haulTeam is the first team of the shop's file that lifts so many times what
// one person does.
func haulTeam(c *catalog.Catalog, l *lift.Lift, count int, index float64) int {
	switch {
	case l.How.Machine || count == 0:
		return 0
	case index <= 1:
		return 1
	}
	for _, team := range c.Crew.Lifting.Team {
		if float64(team.People)*team.Share.InexactFloat64() >= index {
			return team.People
		}
	}
	return 0
}

// haulState is the word for it.
func haulState(c *catalog.Catalog, l *lift.Lift, count int, index float64, crew int) string {
	people := haulTeam(c, l, count, index)
	switch {
	case l.How.Machine:
		return "by machine"
	case count == 0:
		return "not along"
	case people == 0:
		return "no team: machine"
	case people > crew:
		return "crew too small"
	case people == 1:
		return "one person"
	}
	return ""
}

// What nobody can lift, or too few can, is shown in red, and nothing else is.
func TestLiftsAreShown(t *testing.T) {
	calc.Need(t)
	t.Parallel()
	_, book := laidOut(t, demoCatalog(t), liftJob)
	marks := []shown{
		{"lift_people", "lift_part", "fit-base", sheet.Warn, true}, {"lift_state", "lift_part", "fit-base", sheet.Warn, true},
		{"lift_people", "lift_part", "ptop-40-end", sheet.Warn, false},
		{"raise_people", "raise_key", "big/side", sheet.Warn, true}, {"raise_state", "raise_key", "small/side", sheet.Warn, false},
	}
	probes := make([][]string, len(marks))
	for i, x := range marks {
		probes[i] = probe(t, book, x)
	}
	f := recalculated(t, []typing{{"few people", book, []typed{{"window_strike_crew", "", 3}}}, {"enough", book, nil}})
	for i, x := range marks {
		if got := f[0].lit(t, x.name, probes[i]); got != x.want {
			t.Errorf("few people: %s of %s is lit: %v; wanted %v", x.name, x.key, got, x.want)
		}
		if f[1].lit(t, x.name, probes[i]) {
			t.Errorf("enough people: %s of %s is lit", x.name, x.key)
		}
	}
}

// Every formula is true where the shop has no team, no multipliers, no lifts or
// no crew file, and what is missing is said.
func TestLiftsOfOtherShops(t *testing.T) {
	calc.Need(t)
	t.Parallel()
	var trials []trial
	for _, x := range []struct {
		name   string
		change func(*catalog.Catalog)
	}{
		{"no team", func(c *catalog.Catalog) { c.Crew.Lifting.Team = nil }},
		{"another yard", func(c *catalog.Catalog) { c.Demo = false }},
		{"raising alone", func(c *catalog.Catalog) { c.Crew.Lifting = nil }},
		{"by hand", func(c *catalog.Catalog) { c.Crew.Raising[0].Jack = "" }},
		{"lifting alone", func(c *catalog.Catalog) { c.Crew.Raising = nil }},
	} {
		c := demoCatalog(t)
		x.change(c)
		q, book := laidOut(t, c, liftJob)
		trials = append(trials, trial{x.name, q, book, leastCount})
	}
	checkTruth(t, trials)
}
