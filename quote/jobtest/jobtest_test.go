package jobtest_test

import (
	"bytes"
	"testing"

	"tentwright/catalog"
	"tentwright/quote"
	"tentwright/quote/job"
	"tentwright/quote/jobtest"

	"pgregory.net/rapid"
)

func demo(t testing.TB) *catalog.Catalog {
	t.Helper()
	c, list := catalog.Load("demo", catalog.Demo())
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	return c
}

// Every job can be quoted, and between them they have all that a job can have.
func TestRandom(t *testing.T) {
	c := demo(t)
	seen := map[string]int{}
	for seed := range uint64(400) {
		j := jobtest.Random(c, seed)
		if _, list := quote.Build(c, j); list.Err() != nil {
			t.Fatalf("seed %d: %v\n%s", seed, list.Err(), job.Write(j))
		}
		note(seen, j)
	}
	for _, what := range []string{"no tent", "family hip", "family pole", "family span", "join", "wall", "doors", "no stakes", "ground", "kit",
		"unchosen", "chosen", "exempt", "free", "included", "payment", "loading", "zone", "site", "window", "discount", "long hire",
		"access", "crews", "from", "until", "ready", "inspect", "stay", "weather", "tries"} {
		if seen[what] < 5 {
			t.Errorf("%q stands in %d of 400 jobs; at least 5 were expected: %v", what, seen[what], seen)
		}
	}
}

// note counts what a job has.
func note(seen map[string]int, j *job.Job) {
	count := func(what string, has bool) {
		if has {
			seen[what]++
		}
	}
	count("no tent", len(j.Tents) == 0)
	for _, t := range j.Tents {
		count("family "+t.Family, true)
		count("join", t.Joins != "")
		count("ground", t.Ground != "")
		for _, s := range t.Sides {
			count("wall", s.Wall != "" && s.Wall != "open")
			count("doors", len(s.Doors) > 0)
			count("no stakes", s.NoStakes)
		}
	}
	for _, l := range j.Items {
		count("kit", l.Item == "dinner-kit-8")
		count("unchosen", l.Optional && !l.Chosen)
		count("chosen", l.Optional && l.Chosen)
	}
	count("exempt", j.Customer.Exempt)
	count("free", j.Delivery.Free)
	count("included", j.Labour.Charge == "included")
	count("payment", len(j.Payments) > 0)
	count("loading", len(j.Delivery.Loadings) > 0)
	count("zone", j.Delivery.Zone != "")
	count("site", len(j.Site) > 0)
	count("window", len(j.Labour.Windows) > 0)
	for _, w := range j.Labour.Windows {
		count("crews", w.Crews > 1)
		count("from", w.From != 0)
		count("until", w.Until != 0)
		count("ready", w.Ready != 0)
		count("inspect", w.Inspect != 0)
		count("stay", w.Stay)
	}
	count("access", j.Event.Access != "" && j.Event.Parking != "")
	count("weather", j.Labour.Weather != nil)
	count("tries", j.Labour.Tries > 0)
	count("discount", j.Discount.Percent.IsPositive())
	count("long hire", j.ChargedDays() > 28)
}

func TestSeedDecidesAll(t *testing.T) {
	c := demo(t)
	if !bytes.Equal(job.Write(jobtest.Random(c, 7)), job.Write(jobtest.Random(c, 7))) {
		t.Error("one seed gave two jobs")
	}
	if bytes.Equal(job.Write(jobtest.Random(c, 7)), job.Write(jobtest.Random(c, 8))) {
		t.Error("two seeds gave the same job")
	}
}

// A made-up job is one that a person could have written: its file reads back.
func TestDraw(t *testing.T) {
	c := demo(t)
	rapid.Check(t, func(t *rapid.T) {
		j := jobtest.Draw(t, c)
		if err := j.Check(c).Err(); err != nil {
			t.Fatal(err)
		}
		if _, list := job.Read("job.yaml", job.Write(j)); list.Err() != nil {
			t.Fatalf("%v\n%s", list.Err(), job.Write(j))
		}
	})
}
