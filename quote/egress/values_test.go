package egress

import (
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
)

var feet = Measures{unit.Imperial}

func demoShop(t testing.TB) *catalog.Catalog {
	t.Helper()
	c, list := catalog.Load("demo", catalog.Demo())
	if c == nil {
		t.Fatal(list.Err())
	}
	return c
}

func squareFeet(t testing.TB, n string) unit.Area {
	t.Helper()
	a, err := unit.ParseArea(n + " sq ft")
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// The factors are those of IBC and IFC 2018 table 1004.5 (read); the loads are
// worked out from them, rounded up since the load is "not less than" the
// quotient. 1,120 / 20 = 56 is a published example (read).
func TestPeopleOfAFloor(t *testing.T) {
	o := demoShop(t).Occupancy
	for _, tc := range []struct {
		area float64
		use  string
		want int
	}{
		{3200, "tables", 214}, {3200, "rows", 458}, {3200, "standing", 640}, {3200, "stage", 214}, {3200, "exhibit", 107},
		{3200, "kitchen", 16}, {3200, "selling", 54}, {3200, "office", 22}, {3200, "gaming", 291},
		{3000, "tables", 200}, {3000.01, "tables", 201}, {0, "tables", 0},
	} {
		if got := People(money.Float(tc.area), feet.Area(o.Use(tc.use).Area)); got != tc.want {
			t.Errorf("%g sq ft of %s: %d people; %d were expected", tc.area, tc.use, got, tc.want)
		}
	}
	if got := People(money.Int(1120), money.Int(20)); got != 56 {
		t.Errorf("1,120 sq ft at 20: %d people; 56 were expected", got)
	}
}

// IFC 2018 table 3103.12.2 (read). Exactly 3,000 people belong to no row of the
// printed table; taking the higher is this program's choice.
func TestExitsByPeople(t *testing.T) {
	x := &demoShop(t).Occupancy.Exits
	for _, tc := range []struct {
		people, exits  int
		tent, membrane int64 // inches
	}{
		{1, 1, 0, 0}, {9, 1, 0, 0}, {10, 2, 72, 36}, {150, 2, 72, 36}, {199, 2, 72, 36}, {200, 3, 72, 72}, {214, 3, 72, 72}, {499, 3, 72, 72},
		{500, 4, 96, 72}, {999, 4, 96, 72}, {1000, 5, 120, 96}, {1999, 5, 120, 96}, {2000, 6, 120, 96}, {2999, 6, 120, 96},
		{3000, 7, 120, 96}, {3001, 7, 120, 96}, {50000, 7, 120, 96},
	} {
		row := Row(x, tc.people)
		if row == nil || row.Exits != tc.exits {
			t.Errorf("%d people: %v; %d exits were expected", tc.people, row, tc.exits)
			continue
		}
		for class, want := range map[string]int64{"tent": tc.tent, "membrane": tc.membrane} {
			if got := feet.Width(row.Least(class)); got.IntPart() != want || !got.IsInteger() {
				t.Errorf("%d people, %s: each %s in; %d were expected", tc.people, class, got, want)
			}
		}
	}
	if Row(x, 0) != nil {
		t.Error("nobody needs no exit")
	}
	if Row(x, 3000).Note == "" {
		t.Error("the row from 3,000 does not tell of the gap in the printed table")
	}
}

// 0.2 in for one person (IFC 2018 table 3103.12.2, read; sums worked out): 4,200
// people just fill seven exits of 120 in, 5,000 do not fit.
func TestWidthOfExits(t *testing.T) {
	each := feet.Each(demoShop(t).Occupancy.Exits.Each)
	have := money.Int(7 * 120)
	for people, enough := range map[int]bool{214: true, 4200: true, 4201: false, 5000: false} {
		if need := each.Mul(money.Int(people)); have.GreaterThanOrEqual(need) != enough {
			t.Errorf("%d people need %s in; 840 being enough %t was expected", people, need, enough)
		}
	}
}

// At least 44 in, and 1 ft for each 50 people served (IFC 2018 section 3103.12,
// read; the number of the subsection from memory).
func TestAisles(t *testing.T) {
	a := demoShop(t).Occupancy.Aisle
	for people, want := range map[int]string{0: "44", 100: "44", 183: "44", 184: "44.16", 200: "48", 300: "72"} {
		if got := AisleWidth(a, feet, people); got.String() != want {
			t.Errorf("%d people: %s in; %s were expected", people, got, want)
		}
	}
}

// 2010 ADA Standards, table 221.2.1.1 (read up to 500; above worked out).
func TestWheelchairSpaces(t *testing.T) {
	steps := demoShop(t).Occupancy.Wheelchairs
	for seats, want := range map[int]int{3: 0, 4: 1, 25: 1, 26: 2, 50: 2, 51: 4, 150: 4, 151: 5, 200: 5, 300: 5, 301: 6, 500: 6, 501: 7,
		650: 7, 651: 8, 1000: 10, 5000: 36, 5001: 37, 5201: 38} {
		if got := Wheelchairs(steps, seats); got != want {
			t.Errorf("%d seats: %d spaces; %d were expected", seats, got, want)
		}
	}
}

// NFPA 10, 2007 edition, class A (read); the numbers are worked out from it.
func TestExtinguishers(t *testing.T) {
	for _, tc := range []struct {
		long, wide float64 // feet
		hazard     string
		rating     int
		cover      int64
		want       int
	}{
		{80, 40, "ordinary", 2, 3000, 2},
		{120, 80, "ordinary", 2, 3000, 4},
		{100, 100, "light", 4, 11250, 1}, // 12,000 by rating, but never more than 11,250
		{100, 100, "light", 2, 6000, 2},
		{100, 100, "extra", 4, 4000, 3},
		{150, 20, "light", 4, 11250, 2}, // by area one, but its ends are too far from one place
		{10, 10, "ordinary", 2, 3000, 1},
	} {
		f := *demoShop(t).Occupancy.Fire
		f.Hazard, f.Rating = tc.hazard, tc.rating
		if got := Cover(&f, feet); got.IntPart() != tc.cover {
			t.Errorf("%d-A, %s: one protects %s; %d was expected", tc.rating, tc.hazard, got, tc.cover)
		}
		long, wide := unit.FromMetres(tc.long*0.3048), unit.FromMetres(tc.wide*0.3048)
		if got := Extinguishers(&f, feet, money.Float(tc.long*tc.wide), long, wide); got != tc.want {
			t.Errorf("%g x %g ft, %d-A, %s: %d; %d were expected", tc.long, tc.wide, tc.rating, tc.hazard, got, tc.want)
		}
	}
}

// IFC 2018 section 3103.2 and the changes of North Carolina of 2015 (both read):
// one place wants a permit for a tent for which another wants none.
func TestPermits(t *testing.T) {
	ifc := demoShop(t).Occupancy.Permit
	carolina := &catalog.PermitRule{Enclosed: squareFeet(t, "800"), Open: squareFeet(t, "1800"), OpenShare: money.Int(75)}
	for _, tc := range []struct {
		rule *catalog.PermitRule
		open int // percent of the edge
		area int
		want bool
	}{
		{ifc, 100, 600, false}, {ifc, 0, 600, true}, {ifc, 75, 600, true}, {ifc, 0, 400, false}, {ifc, 0, 401, true}, {ifc, 100, 700, false}, {ifc, 100, 701, true},
		{carolina, 100, 600, false}, {carolina, 0, 600, false}, {carolina, 0, 801, true}, {carolina, 75, 1800, false}, {carolina, 74, 1800, true}, {carolina, 75, 1801, true},
	} {
		area := money.Int(tc.area)
		if got := NeedsPermit(tc.rule, feet, money.Int(tc.open), area, area); got != tc.want {
			t.Errorf("%d sq ft, %d percent open: permit %t; %t was expected", tc.area, tc.open, got, tc.want)
		}
	}
}

// The distances and thresholds that the sheet prints are those that were read:
// IFC 2018 sections 3103.2, 3103.8 and 3103.12, and its chapter 31.
func TestPrintedRules(t *testing.T) {
	o := demoShop(t).Occupancy
	want := []string{"20 ft", "20 ft", "12 ft", "20 ft"}
	for i, c := range o.Clearances {
		if got := c.Distance.In(unit.Imperial); got != want[i] {
			t.Errorf("clearance to %s: %s; %s was expected", c.To, got, want[i])
		}
	}
	if o.Signs.From != 50 || o.PlansFrom != 50 || o.Permit.Gap != 12*unit.Foot {
		t.Errorf("signs from %d, plans from %d, gap %s; 50, 50 and 12 ft were expected", o.Signs.From, o.PlansFrom, o.Permit.Gap.In(unit.Imperial))
	}
}
