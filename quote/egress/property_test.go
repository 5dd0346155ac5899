package egress

import (
	"testing"

	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/jobtest"

	"pgregory.net/rapid"
)

// More floor, or less of it for each, never means fewer people; more people
// never mean fewer exits, a narrower aisle or fewer wheelchair spaces.
func TestMoreNeverNeedsLess(t *testing.T) {
	o := demoShop(t).Occupancy
	rapid.Check(t, func(t *rapid.T) {
		area := money.Percent(money.Int(rapid.IntRange(0, 10_000_000).Draw(t, "area")))
		more := area.Add(money.Percent(money.Int(rapid.IntRange(0, 1_000_000).Draw(t, "more"))))
		per := money.Percent(money.Int(rapid.IntRange(100, 20000).Draw(t, "each")))
		a, b := People(area, per), People(more, per)
		if b < a || People(more, per.Add(money.One)) > b {
			t.Fatalf("%s and %s sq ft at %s: %d and %d people", area, more, per, a, b)
		}
		// Never fewer than the area divided by the factor, and less than one more.
		if load := money.Int(a); load.Mul(per).LessThan(area.Sub(per.Shift(-5))) || load.Sub(money.One).Mul(per).GreaterThanOrEqual(area) && a > 0 {
			t.Fatalf("%s sq ft at %s: %d people", area, per, a)
		}
		x, y := Row(&o.Exits, a+1), Row(&o.Exits, b+1)
		if y.Exits < x.Exits || y.Tent < x.Tent || y.Membrane < x.Membrane {
			t.Fatalf("%d and %d people: %v and %v", a+1, b+1, x, y)
		}
		if AisleWidth(o.Aisle, feet, b).LessThan(AisleWidth(o.Aisle, feet, a)) || Wheelchairs(o.Wheelchairs, b) < Wheelchairs(o.Wheelchairs, a) {
			t.Fatalf("%d and %d people: a narrower aisle or fewer spaces", a, b)
		}
	})
}

// Whatever the job: no floor is lost or counted twice, exits that hold let all
// out, and exits that do not hold let fewer out than there are people.
func TestAnyJobAddsUp(outer *testing.T) {
	c := demoShop(outer)
	rapid.Check(outer, func(t *rapid.T) {
		j := jobtest.Draw(t, c)
		if len(j.Tents) == 0 {
			return
		}
		r := staged(outer, c, j)
		for i := range r.Tents {
			x := &r.Tents[i]
			sum, people := money.Zero, 0
			for _, f := range x.Floors {
				sum, people = sum.Add(f.Area), people+f.People
			}
			if over := x.Taken().GreaterThan(x.Area); !over && !sum.Equal(x.Area) || over && sum.LessThan(x.Area) || people != x.Load {
				t.Fatalf("tent %s of %s: floors of %s with %d people, %d in all", x.Tent.Job.ID, x.Area, sum, people, x.Load)
			}
			holds := x.Have >= x.Need && x.HasWidth.GreaterThanOrEqual(x.Width)
			if holds != (x.Allow >= x.Load) {
				t.Fatalf("tent %s: %d of %d exits, %s of %s in, let %d of %d out", x.Tent.Job.ID, x.Have, x.Need, x.HasWidth, x.Width, x.Allow, x.Load)
			}
		}
	})
}

// A floor of whole feet holds as many people, and asks for a permit and for
// extinguishers as much, in a shop that counts in metres.
func TestWholeFeetInMetres(t *testing.T) {
	o, metres := demoShop(t).Occupancy, Measures{unit.Metric}
	rapid.Check(t, func(t *rapid.T) {
		long, wide := rapid.IntRange(1, 400).Draw(t, "long"), rapid.IntRange(1, 200).Draw(t, "wide")
		floor := unit.Area((unit.Length(long) * unit.Foot).Metres() * (unit.Length(wide) * unit.Foot).Metres())
		for i := range o.Uses {
			use := &o.Uses[i]
			if a, b := People(feet.Area(floor), feet.Area(use.Area)), People(metres.Area(floor), metres.Area(use.Area)); a != b {
				t.Fatalf("%d x %d ft, %s: %d people, but %d in metres", long, wide, use.ID, a, b)
			}
		}
		for _, open := range []money.Number{money.Zero, money.Hundred} {
			a, b := feet.Area(floor), metres.Area(floor)
			if NeedsPermit(o.Permit, feet, open, a, a) != NeedsPermit(o.Permit, metres, open, b, b) {
				t.Fatalf("%d x %d ft, %s percent open: a permit in one system alone", long, wide, open)
			}
		}
		for _, use := range []string{"tables", "rows"} {
			per := o.Use(use).Area
			if a, b := feet.Area(per).Mul(money.Int(long)), metres.Area(per).Mul(money.Int(long)); People(a, feet.Area(per)) != long || People(b, metres.Area(per)) != long {
				t.Fatalf("%s for %d people do not hold them", use, long)
			}
		}
	})
}

// The people of any tent are the same in a shop that counts in metres.
func TestAnyTentInMetres(outer *testing.T) {
	c, metric := demoShop(outer), demoShop(outer)
	metric.Company.Units = unit.Metric
	rapid.Check(outer, func(t *rapid.T) {
		j := jobtest.Draw(t, c)
		if len(j.Tents) == 0 {
			return
		}
		a, b := staged(outer, c, j), staged(outer, metric, j)
		for i := range a.Tents {
			if x, y := &a.Tents[i], &b.Tents[i]; x.Load != y.Load || x.Guests != y.Guests || x.Permit != y.Permit {
				t.Fatalf("tent %s: %d people and %d guests, but %d and %d in metres", x.Tent.Job.ID, x.Load, x.Guests, y.Load, y.Guests)
			}
		}
	})
}

// A shop that counts in metres reckons with the same lengths and areas.
func TestMetricMeasures(t *testing.T) {
	m := Measures{unit.Metric}
	if m.WidthUnit() != "cm" || m.Width(72*unit.Inch).String() != "182.88" || m.Each(unit.Inch/5).String() != "0.508" || m.Area(squareFeet(t, "15")).String() != "1.3935456" {
		t.Errorf("72 in are %s %s, 0.2 in %s, 15 sq ft %s", m.Width(72*unit.Inch), m.WidthUnit(), m.Each(unit.Inch/5), m.Area(squareFeet(t, "15")))
	}
}
