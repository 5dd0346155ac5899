package power

import (
	"fmt"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/quote/job"

	"pgregory.net/rapid"
)

func readJob(t testing.TB, c *catalog.Catalog, data []byte) *job.Job {
	t.Helper()
	j, list := job.ReadFor(c, "job.yaml", data)
	if j == nil {
		t.Fatal(list.Err())
	}
	return j
}

// drawOptions are a few kinds of things with few of each.
func drawOptions(t *rapid.T) []option {
	options := make([]option, rapid.IntRange(1, 3).Draw(t, "kinds"))
	for i := range options {
		options[i] = option{
			size:   money.Int(rapid.IntRange(1, 9).Draw(t, "size")),
			first:  money.Int(rapid.IntRange(0, 6).Draw(t, "price")),
			second: money.Int(rapid.IntRange(0, 2).Draw(t, "second")),
			have:   rapid.IntRange(0, 2).Draw(t, "have"),
			most:   rapid.IntRange(-1, 4).Draw(t, "most"),
		}
	}
	return options
}

// total is what a set costs and covers.
func total(options []option, have, more []int) (first, second, size money.Number, pieces int) {
	for i, o := range options {
		n, m := money.Int(have[i]), money.Int(more[i])
		first, second = first.Add(o.first.Mul(m)), second.Add(o.second.Mul(m))
		size, pieces = size.Add(o.size.Mul(n.Add(m))), pieces+have[i]+more[i]
	}
	return first, second, size, pieces
}

// A set covers the need whenever anything does, takes no more than there is, and
// no cheaper one exists: held against every set there is.
func TestCoverIsTheCheapest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		options := drawOptions(t)
		need := money.Int(rapid.IntRange(1, 24).Draw(t, "need"))
		have, more, ok := cover(need, options)
		first, second, size, pieces := total(options, have, more)
		for i, o := range options {
			if have[i] > o.have || o.most >= 0 && more[i] > o.most {
				t.Fatalf("took %d and %d of %+v", have[i], more[i], o)
			}
		}
		if ok != size.GreaterThanOrEqual(need) {
			t.Fatalf("covers %s of %s, but says %t", size, need, ok)
		}
		every(options, int(need.IntPart()), func(h, m []int) {
			f, s, z, n := total(options, h, m)
			if z.LessThan(need) {
				if !ok && z.GreaterThan(size) {
					t.Fatalf("%v and %v cover more, %s, than %s", h, m, z, size)
				}
				return
			}
			other := &choice{first: f, second: s, pieces: n, size: z}
			if mine := (&choice{first: first, second: second, pieces: pieces, size: size}); !ok || other.better(mine) {
				t.Fatalf("%v and %v at %s, %s beat %v and %v at %s, %s", h, m, f, s, have, more, first, second)
			}
		})
	})
}

// every goes through all sets of at most so many pieces of a kind.
func every(options []option, many int, do func(have, more []int)) {
	have, more := make([]int, len(options)), make([]int, len(options))
	var fill func(i int)
	fill = func(i int) {
		if i == len(options) {
			do(have, more)
			return
		}
		most := options[i].most
		if most < 0 {
			most = many
		}
		for have[i] = 0; have[i] <= options[i].have; have[i]++ {
			for more[i] = 0; more[i] <= most; more[i]++ {
				fill(i + 1)
			}
		}
	}
	fill(0)
}

// drawLoads are lights, heaters and others of any size.
func drawLoads(t *rapid.T) []Load {
	loads := make([]Load, rapid.IntRange(1, 6).Draw(t, "kinds"))
	for i := range loads {
		spec := &catalog.PowerLoad{Part: fmt.Sprint(i), Group: rapid.SampledFrom([]string{"light", "heat", "other"}).Draw(t, "group")}
		loads[i] = Load{Spec: spec, Count: rapid.IntRange(0, 30).Draw(t, "count"), Each: money.Float(float64(rapid.IntRange(1, 25000).Draw(t, "tenths")) / 10)}
		loads[i].VA = loads[i].Each.Mul(money.Int(loads[i].Count))
	}
	return loads
}

// Every load hangs on a circuit of its group, none is over what it carries but
// one with a single load that is too large, and no two of a group could be one.
func TestCircuitsCarryTheirLoads(t *testing.T) {
	most := money.Int(1920)
	rapid.Check(t, func(t *rapid.T) {
		loads := drawLoads(t)
		list := circuits(loads, most, 1)
		hung := map[*Load]int{}
		for i, c := range list {
			sum := money.Zero
			for _, on := range c.On {
				hung[on.Load] += on.Count
				sum = sum.Add(on.Load.Each.Mul(money.Int(on.Count)))
				if on.Load.Spec.Group != c.Group {
					t.Fatalf("a load for %s hangs on a circuit for %s", on.Load.Spec.Group, c.Group)
				}
			}
			single := len(c.On) == 1 && c.On[0].Count == 1
			if !sum.Equal(c.VA) || sum.GreaterThan(most) && !single {
				t.Fatalf("circuit %d has %s VA, says %s, and carries %s", i+1, sum, c.VA, most)
			}
			for _, o := range list[:i] {
				if o.Group == c.Group && o.VA.Add(c.VA).LessThanOrEqual(most) {
					t.Fatalf("two circuits for %s of %s and %s VA could be one", c.Group, o.VA, c.VA)
				}
			}
		}
		for i := range loads {
			if hung[&loads[i]] != loads[i].Count {
				t.Fatalf("%d of %d hang on circuits", hung[&loads[i]], loads[i].Count)
			}
		}
	})
}

// The legs share the load: none has more than the least plus one circuit.
func TestLegsAreBalanced(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := circuits(drawLoads(t), money.Int(1920), 1)
		legs := rapid.IntRange(1, 3).Draw(t, "legs")
		sums := balance(list, legs)
		again := balance(list, legs)
		all, largest := money.Zero, money.Zero
		by := make([]money.Number, legs)
		for _, c := range list {
			all = all.Add(c.VA)
			by[c.Leg-1] = by[c.Leg-1].Add(c.VA)
			if c.VA.GreaterThan(largest) {
				largest = c.VA
			}
		}
		least, most := sums[0], sums[0]
		for i, s := range sums {
			if !s.Equal(by[i]) || !s.Equal(again[i]) {
				t.Fatalf("leg %d has %s VA, then %s; its circuits have %s", i+1, s, again[i], by[i])
			}
			if s.LessThan(least) {
				least = s
			}
			if s.GreaterThan(most) {
				most = s
			}
		}
		if !money.Sum(sums...).Equal(all) || most.Sub(least).GreaterThan(largest) {
			t.Fatalf("legs of %v for %s VA, the largest circuit having %s", sums, all, largest)
		}
	})
}

// Any tent and weather: the heaters cover what is lost unless the yard owns too
// few, and the fuel lasts at the rate at which they burn.
func TestPlansCover(t *testing.T) {
	c := demo(t)
	rapid.Check(t, func(t *rapid.T) {
		body := fmt.Sprintf("tents: [{id: a, family: hip, size: %s, count: %d, sides: [{side: front, wall: solid}]}, {id: b, family: span, size: 40x45, sides: [{side: back, wall: solid}]}]\n"+
			"items: [{item: heater-170, quantity: %d}, {item: heat-kit, quantity: %d}, {item: fan-drum, quantity: %d}, {item: perimeter-light, quantity: %d}]\n"+
			"heat: {inside: 68 F, outside: %d F, hours: %d}\npower: {source: generator, distance: %d ft, hours: %d}\n",
			rapid.SampledFrom([]string{"10x10", "20x20", "20x40", "40x80"}).Draw(t, "size"), rapid.IntRange(1, 3).Draw(t, "tents"),
			rapid.IntRange(0, 3).Draw(t, "heaters"), rapid.IntRange(0, 2).Draw(t, "kits"), rapid.IntRange(0, 10).Draw(t, "fans"), rapid.IntRange(0, 40).Draw(t, "bars"),
			rapid.IntRange(0, 75).Draw(t, "outside"), rapid.IntRange(0, 60).Draw(t, "hours"), rapid.IntRange(0, 900).Draw(t, "way"), rapid.IntRange(1, 40).Draw(t, "running"))
		j, list := job.ReadFor(c, "job.yaml", []byte(head+body))
		if j == nil {
			t.Fatal(list.Err())
		}
		holdPlan(t, c, buildJob(t, c, j))
	})
}

// holdPlan looks at a plan from the outside: what is planned and ordered is what
// goes along, covers what is needed, and is owned.
func holdPlan(t *rapid.T, c *catalog.Catalog, r *Result) {
	short := false // the yard owns too few heaters
	for _, g := range r.Gear {
		part := c.Part(g.Item.Contents[0].Part)
		switch {
		case g.Planned.IsNegative() || part.Owned > 0 && g.Planned.IsPositive() && g.Taken().GreaterThan(money.Int(part.Owned)):
			t.Fatalf("%s of %s are planned, %s go along, %d are owned", g.Planned, g.Item.ID, g.Taken(), part.Owned)
		case g.Kind == KindHeater && g.Taken().GreaterThanOrEqual(money.Int(part.Owned)):
			short = true
		case g.Kind == KindFeeder && g.Taken().LessThan(g.Needed) && r.Supply.Boxes*r.Supply.Lengths <= part.Owned:
			t.Fatalf("%s of %s feeders go along", g.Taken(), g.Needed)
		}
	}
	sum := money.Zero
	for _, w := range r.Heat.Tents {
		sum = sum.Add(w.Need)
		if w.Output.LessThan(w.Need) && !short {
			t.Fatalf("tent %s loses %s and is given %s, though heaters are left", w.Tent.Job.ID, w.Need, w.Output)
		}
	}
	if !sum.Equal(r.Heat.Need) || r.Heat.Output.GreaterThan(r.Heat.Taken) {
		t.Fatalf("all lose %s, the sum is %s; heaters of %s are given, of %s go along", r.Heat.Need, sum, r.Heat.Output, r.Heat.Taken)
	}
	for _, f := range r.Fuels {
		if f.Taken().LessThan(f.Needed) {
			t.Fatalf("%s of %s %s go along", f.Taken(), f.Needed, f.Item.ID)
		}
		if f.Burn.IsPositive() && f.Taken().Mul(f.Spec.Holds).Mul(f.Spec.Energy).Div(f.Burn).InexactFloat64() < r.Heat.Hours.InexactFloat64()-1e-4 {
			t.Fatalf("%s %s do not last %s hours at %s", f.Taken(), f.Item.ID, r.Heat.Hours, f.Burn)
		}
	}
	if s := r.Supply; r.VA.IsPositive() && s.Capacity.LessThan(s.KVA) {
		t.Fatalf("generators of %s kVA for %s", s.Capacity, s.KVA)
	}
}
