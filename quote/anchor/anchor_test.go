package anchor_test

import (
	"os"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/anchor"
	"tentwright/quote/job"
	"tentwright/quote/tent"
)

// demo is the demonstration shop, fresh, so that a test may change it.
func demo(t testing.TB) *catalog.Catalog {
	t.Helper()
	c, list := catalog.Load("demo", catalog.Demo())
	if c == nil {
		t.Fatal(list.Err())
	}
	return c
}

// jobOf is a job with some tents and lines of a site, written as in a file.
func jobOf(t testing.TB, c *catalog.Catalog, tents, rest string) *job.Job {
	t.Helper()
	text := `number: T-1
customer: {name: Test}
event: {name: Test, guests: 10}
dates: {quoted: 2026-05-01, deliver: 2026-06-10, event_from: 2026-06-11, event_to: 2026-06-11, strike: 2026-06-12, collect: 2026-06-12}
delivery: {distance: 5 mi}
tents:
` + tents + "\n" + rest
	j, list := job.ReadFor(c, "job.yaml", []byte(text))
	if j == nil {
		t.Fatal(list.Err())
	}
	return j
}

// built plans the anchors of a job. A size that a test makes up may lack stock.
func built(t testing.TB, c *catalog.Catalog, j *job.Job) (*anchor.Result, []tent.Tent) {
	t.Helper()
	tents, _ := tent.Build(c, j)
	r, tents := anchor.Build(c, j, tents)
	return r, tents
}

// A shop without an anchors file keeps what its own rules take.
func TestWithoutAnchorsFile(t *testing.T) {
	c, list := catalog.Load("small", os.DirFS("../../testdata/shops/small"))
	if c == nil {
		t.Fatal(list.Err())
	}
	j := jobOf(t, c, "  - {id: a, family: hip, size: 10x10}", "")
	r, tents := built(t, c, j)
	if r != nil || tents[0].Staked != 8 || len(tents[0].Holding.Parts) != 0 {
		t.Errorf("got %v, %+v; nothing planned and the customary 8 stakes were expected", r, tents[0].Holding)
	}
}

// What the method does not cover is refused by name, and the tent keeps its
// customary anchors, which then come from the anchors file.
func TestRefused(t *testing.T) {
	for _, row := range []struct {
		name, tents, rest, words string
		change                   func(c *catalog.Catalog)
	}{
		{name: "slope", tents: "  - {id: a, family: hip, size: 20x20}", rest: "site: [{factor: slope, option: steep}]", words: "Slope: Steep"},
		{name: "snow", tents: "  - {id: a, family: hip, size: 20x20}", rest: "site: [{factor: snow, option: possible}]", words: "Snow: Snow or ice possible"},
		{name: "wind", tents: "  - {id: a, family: hip, size: 20x20}", rest: "wind: {gust: 61 mph}", words: "a gust of 61 mph is above the shop's limit of 60 mph"},
		{name: "other ground", tents: "  - {id: a, family: hip, size: 20x20}\n  - {id: b, family: hip, size: 20x20, joins: a, join_side: front, ground: asphalt}",
			words: "joined with others but stands on other ground at its front"},
		{name: "other ground at one side", tents: "  - {id: a, family: hip, size: 20x20, sides: [{side: left, ground: sand}]}\n  - {id: b, family: hip, size: 20x20, joins: a, join_side: front}",
			words: "joined with others but stands on other ground at its left"},
		{name: "pole tent on asphalt", tents: "  - {id: a, family: pole, size: 40x40, ground: asphalt-whole}", words: "stands by its guys, and at 16 of its side poles"},
		{name: "pole tent at a pipe", tents: "  - {id: a, family: pole, size: 40x40, sides: [{side: back, no_stakes: yes}]}", words: "at 3 of its side poles"},
		{name: "slope of the roof", tents: "  - {id: a, family: hip, size: 20x20}", words: "a roof slope of 26.6 degrees is outside the table, 5 to 25 degrees",
			change: func(c *catalog.Catalog) { c.Anchors.European.Roofs = c.Anchors.European.Roofs[:5] }},
		{name: "height", tents: "  - {id: a, family: hip, size: 20x20}", words: "is above the heights",
			change: func(c *catalog.Catalog) {
				c.Anchors.Terrains[0].Factors = []catalog.TerrainStep{{Height: unit.Metre, Factor: money.One}, {Height: 2 * unit.Metre, Factor: money.One}}
			}},
		{name: "kind", tents: "  - {id: a, family: hip, size: 20x20}", words: `no rule is known for a roof of kind "sail"`,
			change: func(c *catalog.Catalog) {}},
	} {
		c := demo(t)
		if row.change != nil {
			row.change(c)
		}
		j := jobOf(t, c, row.tents, row.rest)
		tents, _ := tent.Build(c, j)
		if row.name == "kind" {
			other := *tents[0].Family
			other.Kind = "sail"
			tents[0].Family = &other
		}
		custom := tents[0].Customary()
		r, held := anchor.Build(c, j, tents)
		if len(r.Refused) == 0 || !strings.Contains(r.Refused[0].Why, row.words) {
			t.Errorf("%s: refused %v; %q was expected", row.name, r.Refused, row.words)
			continue
		}
		for i := range r.Tents {
			if r.Tents[i].Planned {
				t.Errorf("%s: tent %s is planned all the same", row.name, r.Tents[i].ID)
			}
		}
		if h := held[0].Holding; h.Staked != custom.Staked || h.Held != custom.Held || len(h.Parts) == 0 {
			t.Errorf("%s: held by %+v; the customary %+v with parts was expected", row.name, h, custom)
		}
	}
}

// What the shop has not entered is said, and nothing is made up for it. A shop
// that is not the demonstration has none of its invented tests.
func TestMissing(t *testing.T) {
	grass := "  - {id: a, family: hip, size: 20x20, sides: [{side: left, wall: solid}]}"
	another := func(c *catalog.Catalog) { c.Demo, c.Anchors.WindDemo = false, false }
	for _, row := range []struct {
		name, tents string
		change      func(c *catalog.Catalog)
		words       []string
		planned     bool
		way         string
	}{
		{"all there", grass, func(c *catalog.Catalog) {}, nil, true, anchor.Guyed},
		{"another yard, table for grass", grass, another, []string{"suction on closed sides is not counted"}, true, anchor.Guyed},
		{"another yard, sand", strings.Replace(grass, "size", "ground: sand, size", 1), another,
			[]string{"suction", `no pull test of stake "stake-42" by a guy in "sand"`}, true, anchor.Custom},
		{"another yard, base plates", "  - {id: a, family: span, size: 40x45}", another,
			[]string{"suction", `no pull test of stake "stake-48" upright in "grass"`}, true, anchor.Custom},
		{"another yard, paving", strings.Replace(grass, "size", "ground: concrete, size", 1), another,
			[]string{"suction", `no friction of ballast "water-barrel" on "concrete"`}, true, anchor.Custom},
		{"another yard's wind", grass, func(c *catalog.Catalog) { c.Demo = false }, []string{"the gust to plan for and the limit are not entered"}, false, anchor.Custom},
		{"no coefficients", grass, func(c *catalog.Catalog) { c.Anchors.European = nil }, []string{"no force coefficients"}, false, anchor.Custom},
		{"American, as shipped", grass, func(c *catalog.Catalog) { c.Anchors.Method = "american" }, []string{"no net coefficients"}, false, anchor.Custom},
		{"no stake fits", grass, func(c *catalog.Catalog) { c.Anchors.Stakes = nil }, []string{"no stake or ballast of the shop is for Hip-frame tent"}, true, anchor.Custom},
	} {
		c := demo(t)
		row.change(c)
		r, tents := built(t, c, jobOf(t, c, row.tents, ""))
		if len(r.Missing) != len(row.words) {
			t.Errorf("%s: missing %q; %q was expected", row.name, r.Missing, row.words)
			continue
		}
		for i, words := range row.words {
			if !strings.Contains(r.Missing[i], words) {
				t.Errorf("%s: missing %q; %q was expected", row.name, r.Missing[i], words)
			}
		}
		a := &r.Tents[0]
		if a.Planned != row.planned || a.Legs[0].Holding.Way != row.way {
			t.Errorf("%s: planned %v, held %s; %v, %s was expected", row.name, a.Planned, a.Legs[0].Holding.Way, row.planned, row.way)
		}
		if row.way == anchor.Custom && (tents[0].Staked != tents[0].Customary().Staked || tents[0].Held != tents[0].Customary().Held) {
			t.Errorf("%s: held by %+v; the customary number was expected", row.name, tents[0].Holding)
		}
	}
}

// A job's own gust stands in for the shop's, but nothing for the shop's limit;
// and a terrain of the demonstration is not taken for another yard's.
func TestWindOfAnotherYard(t *testing.T) {
	tents := "  - {id: a, family: hip, size: 20x20}"
	for _, row := range []struct {
		rest, words string
		wind        bool
		planned     bool
	}{
		{"wind: {gust: 35 mph}", "the limit, above which an engineer designs", true, false},
		{"wind: {gust: 35 mph}", "", false, true},
		{"wind: {terrain: shore}", `terrain "shore", which the job names`, false, true},
	} {
		c := demo(t)
		c.Anchors.Terrains = append(c.Anchors.Terrains, catalog.Terrain{ID: "shore", Demo: true})
		c.Demo, c.Anchors.WindDemo = false, row.wind
		r, _ := built(t, c, jobOf(t, c, tents, row.rest))
		if got := strings.Join(r.Missing, "; "); r.Tents[0].Planned != row.planned || !strings.Contains(got, row.words) || row.words == "" && got != "" {
			t.Errorf("%s: planned %v, missing %q; %v, %q was expected", row.rest, r.Tents[0].Planned, got, row.planned, row.words)
		}
	}
}

// The parts are those of the legs, with what goes along: a cap for each stake, a
// strap and a cover for each barrel.
func TestParts(t *testing.T) {
	c := demo(t)
	_, tents := built(t, c, jobOf(t, c, "  - {id: a, family: hip, size: 10x10}\n  - {id: b, family: hip, size: 10x10, ground: deck}", ""))
	want := []map[string]int{{"stake-42": tents[0].Staked, "stake-cap": tents[0].Staked},
		{"water-barrel": tents[1].Held, "ballast-strap": tents[1].Held, "ballast-cover": tents[1].Held}}
	for i := range tents {
		got := map[string]int{}
		for _, p := range tents[i].Holding.Parts {
			got[p.Part] += p.Count
		}
		for part, n := range want[i] {
			if got[part] != n || n == 0 {
				t.Errorf("tent %d: %d of %s; %d was expected", i, got[part], part, n)
			}
		}
		if len(got) != len(want[i]) {
			t.Errorf("tent %d: parts %v; %v was expected", i, got, want[i])
		}
	}
	for i := range tents {
		stakes, ballast := 0, 0
		for _, leg := range tents[i].Holding.Legs {
			stakes, ballast = stakes+leg.Stakes, ballast+leg.Ballast
		}
		if len(tents[i].Holding.Legs) != 4 || stakes != tents[i].Staked || ballast != tents[i].Held {
			t.Errorf("tent %d: legs %v; %d stakes and %d pieces of ballast were expected", i, tents[i].Holding.Legs, tents[i].Staked, tents[i].Held)
		}
	}
	if tents[1].Filled != tents[1].Held || tents[0].Filled != 0 || tents[0].Held != 0 {
		t.Errorf("held by %+v and %+v; stakes alone, and barrels alone, were expected", tents[0].Holding, tents[1].Holding)
	}
}

// What the yard does not own is not chosen while something else does: with few
// stakes of the lighter kind the heavier comes, with no barrel the blocks.
func TestOwned(t *testing.T) {
	tents := "  - {id: a, family: hip, size: 20x20, count: 2}\n  - {id: b, family: hip, size: 20x20, ground: concrete}"
	chosen := func(c *catalog.Catalog) (stake, ballast string) {
		r, _ := built(t, c, jobOf(t, c, tents, ""))
		return r.Tents[0].Legs[0].Holding.Part.ID, r.Tents[1].Legs[0].Holding.Part.ID
	}
	c := demo(t)
	if s, b := chosen(c); s != "stake-42" || b != "water-barrel" {
		t.Errorf("got %s and %s; what is lightest to carry was expected", s, b)
	}
	c.Part("stake-42").Owned, c.Part("water-barrel").Owned = 20, 0
	if s, b := chosen(c); s != "stake-48" || b != "concrete-block" {
		t.Errorf("got %s and %s of a yard that owns no other; stake-48 and concrete-block were expected", s, b)
	}
}

// Of what holds, the yard takes what costs its hands the least by its own labour
// rules: barrels are filled on site, and blocks are heavy to carry.
func TestCheapestByHands(t *testing.T) {
	for _, row := range []struct {
		barrel, block, weight int // minutes for one, thousandths of a minute for a pound
		want                  string
	}{{20, 1, 0, "concrete-block"}, {1, 20, 0, "water-barrel"}, {1, 1, 50, "water-barrel"}} {
		c := demo(t)
		for i := range c.Labour {
			r := &c.Labour[i]
			switch r.Driver {
			case "filled-ballast":
				r.Minutes = money.Int(row.barrel)
			case "solid-ballast":
				r.Minutes = money.Int(row.block)
			case "weight-out", "weight-back":
				r.Minutes = money.Float(float64(row.weight) / 1000)
			}
		}
		for i := range c.Anchors.Friction { // so that both need alike
			c.Anchors.Friction[i].Mu = money.One
		}
		r, _ := built(t, c, jobOf(t, c, "  - {id: a, family: hip, size: 10x10, ground: concrete}", ""))
		if got := r.Tents[0].Legs[0].Holding.Part.ID; got != row.want {
			t.Errorf("%+v: %s is chosen; %s was expected", row, got, row.want)
		}
	}
}

// A small frame at a marked side has guys to three sides only; ballast at the
// corners of the fourth takes what pushes there. Nothing is refused for it.
func TestMarkedSideOfASmallTent(t *testing.T) {
	c := demo(t)
	r, _ := built(t, c, jobOf(t, c, "  - {id: a, family: hip, size: 10x10, sides: [{side: front, no_stakes: yes}]}", ""))
	if len(r.Refused) > 0 || !r.Tents[0].Planned {
		t.Fatalf("refused: %v", r.Refused)
	}
	for i := range r.Tents[0].Legs {
		l := &r.Tents[0].Legs[i]
		want := anchor.Guyed
		if l.Sides[0] == "front" {
			want = anchor.Weight
		}
		if l.Holding.Way != want {
			t.Errorf("leg %s is held by %s; %s was expected", l.Name, l.Holding.Way, want)
		}
	}
}

// Two tents at one gutter are one structure: no guy and no sideways force in the
// middle, where ballast holds the lift, and guys at the outer sides carry both.
func TestJoinedTents(t *testing.T) {
	c := demo(t)
	r, _ := built(t, c, jobOf(t, c, "  - {id: a, family: hip, size: 20x40}\n  - {id: b, family: hip, size: 20x40, joins: a, join_side: front}", ""))
	for i, shared := range []string{"back", "front"} {
		for n := range r.Tents[i].Legs {
			l := &r.Tents[i].Legs[n]
			switch {
			case len(l.Sides) == 1 && l.Sides[0] == shared:
				if l.Holding.Way != anchor.Weight || l.Side != 0 || l.Up <= 0 {
					t.Errorf("leg %s of %s in the middle: %s, %g sideways, %g up", l.Name, r.Tents[i].ID, l.Holding.Way, l.Side, l.Up)
				}
			case l.Holding.Way != anchor.Guyed || l.Side <= 0:
				t.Errorf("leg %s of %s outside: %s, %g sideways", l.Name, r.Tents[i].ID, l.Holding.Way, l.Side)
			}
			if l.Guys == 2 && (l.Sides[0] == shared || l.Sides[1] == shared) {
				t.Errorf("leg %s of %s has a guy under the gutter", l.Name, r.Tents[i].ID)
			}
		}
	}
}

// Where the most stakes do not hold a leg, ballast that the yard owns does; a
// yard without any plans the most stakes, and the use says that they are short.
func TestWhereStakesDoNotHold(t *testing.T) {
	count := func(c *catalog.Catalog) (ballast, short, most int) {
		c.Anchors.Stakes[0].Most, c.Anchors.Stakes[1].Most = 2, 2
		r, _ := built(t, c, jobOf(t, c, "  - {id: a, family: hip, size: 30x45, ground: sand}", "wind: {gust: 46 mph}"))
		if !r.Own || r.Tents[0].Pressure <= 0 {
			t.Fatalf("gust of the job: own %v, pressure %g", r.Own, r.Tents[0].Pressure)
		}
		for i := range r.Tents[0].Legs {
			h := &r.Tents[0].Legs[i].Holding
			if h.Way == anchor.Weight {
				ballast++
			}
			if h.Use() > 1 {
				short++
				if h.Stake != nil && h.Count == h.Stake.Most {
					most++
				}
			}
		}
		return ballast, short, most
	}
	c := demo(t)
	if ballast, short, _ := count(c); ballast == 0 || short > 0 {
		t.Errorf("%d legs on ballast and %d not held; some and none were expected", ballast, short)
	}
	c = demo(t)
	c.Part("concrete-block").Owned, c.Part("water-barrel").Owned = 0, 0
	if ballast, short, most := count(c); ballast > 0 || short == 0 || most != short {
		t.Errorf("%d legs on ballast that is not owned, %d not held, %d with the most stakes", ballast, short, most)
	}
}
