package quote_test

import (
	"bytes"
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote"
	"tentwright/quote/job"
	"tentwright/quote/jobtest"
	"tentwright/quote/load"
	"tentwright/quote/parts"
	"tentwright/quote/price"

	"pgregory.net/rapid"
)

// demo is the shop that comes with the program; each test reads its own.
func demo(t testing.TB) *catalog.Catalog {
	t.Helper()
	c, list := catalog.Load("demo", catalog.Demo())
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	return c
}

// failer is a test or one case of a property.
type failer interface {
	Helper()
	Fatal(...any)
	Fatalf(string, ...any)
}

func quoted(t failer, c *catalog.Catalog, j *job.Job) *quote.Quote {
	t.Helper()
	q, list := quote.Build(c, j)
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	return q
}

// holds checks a property on random jobs of the demonstration shop.
func holds(t *testing.T, property func(t *rapid.T, c *catalog.Catalog, j *job.Job)) {
	t.Helper()
	c := demo(t)
	rapid.Check(t, func(t *rapid.T) { property(t, c, jobtest.Draw(t, c)) })
}

// alike fails where two numbers differ.
func alike(t failer, what string, got, want money.Number) {
	t.Helper()
	if !got.Equal(want) {
		t.Fatalf("%s is %s; %s was expected", what, got, want)
	}
}

// added adds up one figure of each of a list.
func added[T any](list []T, figure func(*T) money.Number) money.Number {
	total := money.Zero
	for i := range list {
		total = total.Add(figure(&list[i]))
	}
	return total
}

// Each total is the sum of lines that are rounded to the cent already.
func TestTotalsAddUp(t *testing.T) {
	holds(t, func(t *rapid.T, c *catalog.Catalog, j *job.Job) {
		p := quoted(t, c, j).Price
		for i := range p.Lines {
			l := &p.Lines[i]
			alike(t, l.Key+", rounded", l.Amount.Round(int32(p.Currency.Minor)), l.Amount)
			if l.Amount.IsNegative() {
				t.Fatalf("%s is %s", l.Key, l.Amount)
			}
		}
		alike(t, "subtotal", p.Subtotal, added(p.Lines, func(l *price.Line) money.Number { return l.Amount }))
		alike(t, "tax", p.Tax, added(p.Taxes, func(x *price.TaxLine) money.Number { return x.Amount }))
		alike(t, "total", p.Total, p.Subtotal.Add(p.Tax))
		alike(t, "deposit and balance", p.Deposit.Add(p.Balance), p.Total)
		alike(t, "received and due", p.Received.Add(p.Due), p.Total)
		alike(t, "received", p.Received, added(j.Payments, func(x *job.Payment) money.Number { return x.Amount }))
		if j.Customer.Exempt && !p.Tax.IsZero() {
			t.Fatalf("tax of %s from an exempt customer", p.Tax)
		}
	})
}

// The margin is what the subtotal leaves over the costs of the lines, and its
// percentage is within half a hundredth of that share.
func TestMarginIsConsistent(t *testing.T) {
	holds(t, func(t *rapid.T, c *catalog.Catalog, j *job.Job) {
		p := quoted(t, c, j).Price
		alike(t, "cost", p.Cost, added(p.Lines, func(l *price.Line) money.Number { return l.Cost }))
		alike(t, "margin and cost", p.Margin.Add(p.Cost), p.Subtotal)
		off := p.Percent.Mul(p.Subtotal).Sub(p.Margin.Mul(money.Hundred)).Abs()
		if p.Subtotal.IsPositive() && off.GreaterThan(p.Subtotal.Mul(money.Float(0.005))) {
			t.Fatalf("%s percent of %s is not %s", p.Percent, p.Subtotal, p.Margin)
		}
	})
}

// Each part line is the sum of what asks for it, and of spares.
func TestPartsAreTheirNeeds(t *testing.T) {
	holds(t, func(t *rapid.T, c *catalog.Catalog, j *job.Job) {
		p := quoted(t, c, j).Parts
		needed := map[string]int{}
		for i := range p.Needs {
			needed[p.Needs[i].Part.ID] += p.Needs[i].Quantity
		}
		for i := range p.Lines {
			l := &p.Lines[i]
			if l.Counted != needed[l.Part.ID] || l.Spare != parts.Spares(l.Part, l.Counted) || l.Total() != l.Counted+l.Spare {
				t.Fatalf("%s: %d counted and %d spare are %d in all; %d are needed", l.Part.ID, l.Counted, l.Spare, l.Total(), needed[l.Part.ID])
			}
			delete(needed, l.Part.ID)
		}
		if len(needed) > 0 {
			t.Fatalf("no line for what is needed: %v", needed)
		}
	})
}

// The vehicles out carry just what is picked; the vehicles back the same less
// what is used up. Weights of trips and shares are the weight of all.
func TestManifestHoldsWhatIsPicked(t *testing.T) {
	holds(t, func(t *rapid.T, c *catalog.Catalog, j *job.Job) {
		q := quoted(t, c, j)
		for _, way := range []struct {
			m    *load.Manifest
			back bool
		}{{&q.Load.Out, false}, {&q.Load.Back, true}} {
			carried := map[*catalog.Part]int{}
			var shares, trips unit.Mass
			for i := range way.m.Shares {
				carried[way.m.Shares[i].Part] += way.m.Shares[i].Quantity
				shares += way.m.Shares[i].Mass
			}
			for i := range way.m.Trips {
				trips += way.m.Trips[i].Mass
			}
			if shares != way.m.Mass || trips != way.m.Mass {
				t.Fatalf("shares weigh %d, trips %d, all %d", shares, trips, way.m.Mass)
			}
			for i := range q.Parts.Lines {
				l := &q.Parts.Lines[i]
				want := l.Total()
				if way.back && l.Part.Consumable {
					want = 0
				}
				if carried[l.Part] != want {
					t.Fatalf("%s: %d carried, back %t; %d are picked", l.Part.ID, carried[l.Part], way.back, want)
				}
				delete(carried, l.Part)
			}
			if len(carried) > 0 {
				t.Fatalf("%d parts are carried but not picked", len(carried))
			}
		}
	})
}

// Hours of all are those of the tasks, however they are added up.
func TestHoursAddUp(t *testing.T) {
	holds(t, func(t *rapid.T, c *catalog.Catalog, j *job.Job) {
		q := quoted(t, c, j)
		h := q.Labour
		tasks, windows, skills, plain := money.Zero, money.Zero, money.Zero, money.Zero
		for i := range h.Tasks {
			tasks = tasks.Add(h.Tasks[i].Hours)
		}
		for i := range h.Windows {
			windows = windows.Add(h.Windows[i].Hours)
		}
		for i := range h.Skills {
			skills, plain = skills.Add(h.Skills[i].Hours), plain.Add(h.Skills[i].Plain).Add(h.Skills[i].Over)
		}
		alike(t, "hours", h.Hours, tasks)
		alike(t, "hours of windows", windows, tasks)
		alike(t, "hours of skills", skills, tasks)
		alike(t, "plain hours and overtime", plain, tasks)
		charged := money.Zero
		for i := range q.Price.Lines {
			if l := &q.Price.Lines[i]; l.Kind == price.Labour {
				charged = charged.Add(l.Ordered)
			}
		}
		alike(t, "hours charged", charged, tasks)
	})
}

// An extra that is not chosen adds nothing: the job without it has the same
// parts, vehicles, hours and price.
func TestUnchosenExtrasAddNothing(t *testing.T) {
	holds(t, func(t *rapid.T, c *catalog.Catalog, j *job.Job) {
		without := *j
		without.Items = slices.DeleteFunc(slices.Clone(j.Items), func(l job.Line) bool { return l.Optional && !l.Chosen })
		if len(without.Items) == len(j.Items) || len(without.Items)+len(without.Tents) == 0 {
			return
		}
		a, b := quoted(t, c, j), quoted(t, c, &without)
		alike(t, "total", a.Price.Total, b.Price.Total)
		alike(t, "cost", a.Price.Cost, b.Price.Cost)
		alike(t, "hours", a.Labour.Hours, b.Labour.Hours)
		if x, y := picked(a), picked(b); !equal(x, y) {
			t.Fatalf("picked %v with the extras offered, %v without", x, y)
		}
		if a.Load.Out.Mass != b.Load.Out.Mass || len(a.Load.Out.Trips) != len(b.Load.Out.Trips) {
			t.Fatalf("%d trips with %d, without the extras %d with %d", len(a.Load.Out.Trips), a.Load.Out.Mass, len(b.Load.Out.Trips), b.Load.Out.Mass)
		}
	})
}

// picked is what goes along of each part, without those of which nothing does.
func picked(q *quote.Quote) map[string]int {
	m := map[string]int{}
	for i := range q.Parts.Lines {
		if l := &q.Parts.Lines[i]; l.Total() > 0 {
			m[l.Part.ID] = l.Total()
		}
	}
	return m
}

func equal(a, b map[string]int) bool {
	for id, n := range a {
		if b[id] != n {
			return false
		}
	}
	return len(a) == len(b)
}

// Twice as many of each tent need twice what stands on their graphs; rules and
// items, which round up or ask for it once, are left out.
func TestTwiceTheTentsTwiceTheirParts(t *testing.T) {
	holds(t, func(t *rapid.T, c *catalog.Catalog, j *job.Job) {
		twice := *j
		twice.Tents = slices.Clone(j.Tents)
		for i := range twice.Tents {
			// Tents at a gutter come one by one.
			if x := &twice.Tents[i]; len(j.SharedSides(x)) == 0 {
				x.Count = 2 * x.Many()
			}
		}
		once, doubled := ofTents(quoted(t, c, j)), ofTents(quoted(t, c, &twice))
		for key, n := range once {
			id, _, _ := strings.Cut(strings.TrimPrefix(key, "T:"), ":")
			want := 2 * n
			if len(j.SharedSides(j.Tent(id))) > 0 {
				want = n
			}
			if doubled[key] != want {
				t.Fatalf("%s: %d, and %d of twice the tents", key, n, doubled[key])
			}
		}
		if len(once) != len(doubled) {
			t.Fatalf("%d kinds of need, and %d of twice the tents", len(once), len(doubled))
		}
	})
}

// ofTents is what the graphs of the tents ask for. Anchors are left out: of
// which kind they are follows from how many the yard owns.
func ofTents(q *quote.Quote) map[string]int {
	m, anchors := map[string]int{}, map[string]bool{}
	for i := range q.Parts.Tents {
		for _, taken := range q.Parts.Tents[i].Holding.Parts {
			anchors["T:"+q.Parts.Tents[i].Job.ID+":"+taken.Part] = true
		}
	}
	for i := range q.Parts.Needs {
		if n := &q.Parts.Needs[i]; strings.HasPrefix(n.Key, "T:") && !anchors[n.Key] {
			m[n.Key] = n.Quantity
		}
	}
	return m
}

// The same inputs, read anew, give the same report to the last byte.
func TestSameInputsSameReport(t *testing.T) {
	c := demo(t)
	rapid.Check(t, func(t *rapid.T) {
		j := jobtest.Draw(t, c)
		again, list := job.Read("job.yaml", job.Write(j))
		if err := list.Err(); err != nil {
			t.Fatal(err)
		}
		twice, list := job.Read("job.yaml", job.Write(j))
		if err := list.Err(); err != nil {
			t.Fatal(err)
		}
		other, list := catalog.Load("demo", catalog.Demo())
		if err := list.Err(); err != nil {
			t.Fatal(err)
		}
		if a, b := reported(t, c, again), reported(t, other, twice); !bytes.Equal(a, b) {
			t.Fatalf("two reports of one job:\n%s\n%s", a, b)
		}
	})
}

func reported(t failer, c *catalog.Catalog, j *job.Job) []byte {
	t.Helper()
	data, err := json.Marshal(quoted(t, c, j).Report())
	if err != nil {
		t.Fatal(err)
	}
	return data
}
