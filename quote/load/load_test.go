package load

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/parts"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func pounds(n int) unit.Mass        { return unit.Mass(n) * unit.Pound }
func feet(n int) unit.Length        { return unit.Length(n) * unit.Foot }
func massOf(m unit.Mass) *unit.Mass { return &m }

// shop is a catalog with the vehicles given, in pounds and feet.
func shop(vehicles ...catalog.Vehicle) *catalog.Catalog {
	c := &catalog.Catalog{}
	c.Company.Units = unit.Imperial
	c.Rates.WetFactor = money.Float(1.3)
	c.Rates.MileCost = money.Float(1.1)
	c.Fleet.Rider = pounds(200)
	c.Fleet.Vehicles = vehicles
	return c
}

// truck has 8 ft by 8 ft inside and loads half of it.
func truck(id string, count, empty, rating, long, cost int) catalog.Vehicle {
	return catalog.Vehicle{ID: id, Name: id, Kind: "box truck", Count: count, Empty: pounds(empty), Rating: pounds(rating),
		Deck: unit.Size{L: feet(long), W: feet(8), H: feet(8)}, Longest: feet(long), Fill: money.Int(50), TripCost: money.Int(cost)}
}

func line(id, use string, quantity, lb, holds, long int) parts.Line {
	return parts.Line{Each: pounds(lb), Counted: quantity, Part: &catalog.Part{ID: id, Use: use,
		Pack: catalog.Pack{Holds: holds, Size: unit.Size{L: feet(long), W: feet(1), H: feet(1)}}}}
}

func pack(c *catalog.Catalog, lines ...parts.Line) (*Plan, error) {
	plan, list := Pack(c, &parts.Result{Lines: lines}, money.Int(10))
	return plan, list.Err()
}

func TestPacks(t *testing.T) {
	for _, tt := range []struct{ quantity, holds, full, rest int }{
		{0, 8, 0, 0}, {7, 8, 0, 7}, {8, 8, 1, 0}, {9, 8, 1, 1}, {30, 1, 30, 0}, {5, 0, 5, 0},
	} {
		full, rest := Packs(tt.quantity, tt.holds)
		if full != tt.full || rest != tt.rest {
			t.Errorf("Packs(%d, %d) = %d, %d, want %d, %d", tt.quantity, tt.holds, full, rest, tt.full, tt.rest)
		}
	}
}

// 49 CFR 383.91: group A is a combination of 26,001 lb or more with more than
// 10,000 lb towed, group B a single vehicle of 26,001 lb or more; the ratings
// count, not the load.
func TestLicenceFlags(t *testing.T) {
	for _, tt := range []struct {
		truck, trailer int
		want           []string
	}{
		{26000, 0, nil},
		{26001, 0, []string{"B"}},
		{16000, 10001, []string{"A"}},
		{16001, 10000, nil},
		{15999, 10001, nil},
		{26001, 10000, []string{"B"}},
		{26001, 10001, []string{"B", "A"}},
	} {
		c := shop(truck("truck", 1, 5000, tt.truck, 20, 10))
		c.Fleet.Licences = []catalog.LicenceFlag{{Over: pounds(26000), Flag: "B"}, {Over: pounds(26000), Towed: pounds(10000), Flag: "A"}}
		lines := []parts.Line{line("pole", "frame", 2, 100, 1, 10)}
		if tt.trailer > 0 {
			trailer := truck("trailer", 1, 2000, tt.trailer, 20, 1)
			trailer.Kind, trailer.TowedBy, trailer.Longest = "trailer", []string{"truck"}, feet(30)
			c.Fleet.Vehicles = append(c.Fleet.Vehicles, trailer)
			lines = append(lines, line("beam", "frame", 1, 300, 1, 28)) // rides on the trailer only
		}
		plan, err := pack(c, lines...)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(tt.want, plan.Out.Trips[0].Flags); diff != "" {
			t.Errorf("truck %d lb, trailer %d lb: %s", tt.truck, tt.trailer, diff)
		}
	}
}

func TestFaults(t *testing.T) {
	small := truck("van", 1, 5000, 8000, 10, 10) // carries 3,000 lb, 320 cu ft
	for _, tt := range []struct {
		name string
		c    *catalog.Catalog
		line parts.Line
		want string
	}{
		{"long", shop(small), line("purlin", "frame", 3, 40, 1, 16), `part "purlin" rides in packs 16 ft long, but the longest piece that a vehicle takes is 10 ft; a shorter piece or a longer vehicle was expected [too-long]`},
		{"heavy", shop(small), line("weight", "anchor", 40, 400, 8, 4), `one pack of part "weight" weighs 3200 lb, but a vehicle long enough carries at most 3000 lb; a smaller pack or a stronger vehicle was expected [too-heavy]`},
		{"none", shop(truck("van", 1, 5000, 5000, 10, 10)), line("pole", "frame", 1, 1, 1, 1), "no vehicle of the fleet can carry anything; one whose rating exceeds its own weight with fuel and riders was expected [no-vehicle]"},
		{"much", shop(small), line("pole", "frame", 400000, 10, 1, 10), "the whole fleet would drive more than 100 turns; a smaller job or a larger fleet was expected [too-much]"},
		{"endless", shop(small), line("pole", "frame", 1e15, 10, 1, 10), "the job weighs more than can be counted; a load that the fleet carries in 100 turns was expected [too-much]"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			plan, err := pack(tt.c, tt.line)
			if plan != nil || err == nil || err.Error() != tt.want {
				t.Errorf("got  %v\nwant %s", err, tt.want)
			}
		})
	}
	wide := line("stage", "floor", 1, 100, 1, 9)
	wide.Part.Pack.Size.W, wide.Part.Pack.Size.H = feet(7), feet(6)
	if _, err := pack(shop(small), wide); err == nil || !strings.Contains(err.Error(), "[too-bulky]") {
		t.Errorf("a pack of 378 cu ft in a room of 320: %v", err)
	}
	wet := line("top", "top", 1, 2900, 1, 8)
	wet.Part.Wets = true
	if _, err := pack(shop(small), wet); err == nil || !strings.Contains(err.Error(), `"top" weighs 3770 lb wet`) {
		t.Errorf("a top too heavy only when wet: %v", err)
	}
}

// A load that fits one truck dry and not wet comes back on two.
func TestWayBack(t *testing.T) {
	c := shop(truck("truck", 2, 5000, 9000, 20, 10))
	top, paint := line("top", "top", 8, 400, 1, 4), line("paint", "mark", 10, 50, 1, 1)
	top.Part.Wets, paint.Part.Consumable = true, true
	lines := []parts.Line{top, paint}
	plan, err := pack(c, lines...)
	if err != nil {
		t.Fatal(err)
	}
	checkPlan(t, c, lines, plan)
	if n, m := len(plan.Out.Trips), len(plan.Back.Trips); n != 1 || m != 2 {
		t.Errorf("%d out, %d back, want 1 and 2", n, m)
	}
	// 3,200 lb of tops at 1.3; no paint.
	if got, want := plan.Back.Mass, pounds(4160); got != want {
		t.Errorf("%s come back, want %s", got.Text(unit.Imperial), want.Text(unit.Imperial))
	}
}

func TestNothingChosen(t *testing.T) {
	c := shop(truck("truck", 1, 5000, 9000, 20, 10))
	extra := line("heater", "power", 0, 90, 1, 4)
	plan, err := pack(c, extra)
	if err != nil {
		t.Fatal(err)
	}
	checkPlan(t, c, []parts.Line{extra}, plan)
	if len(plan.Out.Trips) != 0 || len(plan.Out.Shares) != 1 || plan.Out.Shares[0].Trip != -1 {
		t.Errorf("nothing to carry gives %+v", plan.Out)
	}
	lines := []parts.Line{line("chair", "furnish", 10, 9, 5, 4), extra}
	if plan, err = pack(c, lines...); err != nil {
		t.Fatal(err)
	}
	checkPlan(t, c, lines, plan)
	if s := plan.Out.Shares[1]; s.Trip != 0 || s.Quantity != 0 || s.Order != 2 {
		t.Errorf("an extra that is not chosen has %+v", s)
	}
}

// What is needed first on the site is loaded last (marking and
// tools, anchors, frame, top, walls, floor, furniture; common practice, no
// source).
func TestLoadingOrder(t *testing.T) {
	c := shop(truck("truck", 1, 5000, 19000, 30, 10))
	lines := []parts.Line{line("paint", "mark", 1, 1, 1, 1), line("pole", "frame", 1, 20, 1, 8), line("rafter", "frame", 1, 30, 1, 8),
		line("top", "top", 1, 90, 1, 4), line("chair", "furnish", 1, 9, 1, 3), line("stake", "anchor", 1, 12, 1, 4)}
	plan, err := pack(c, lines...)
	if err != nil {
		t.Fatal(err)
	}
	shares := slices.Clone(plan.Out.Shares)
	slices.SortFunc(shares, func(a, b Share) int { return a.Order - b.Order })
	var got []string
	for _, s := range shares {
		got = append(got, s.Part.ID)
	}
	if diff := cmp.Diff([]string{"chair", "top", "rafter", "pole", "stake", "paint"}, got); diff != "" {
		t.Error(diff)
	}
}

// The trailer gets what the truck leaves of their common rating: 14,000 lb
// together, less 5,000 and 2,000 empty, is 7,000 lb of load.
func TestCombination(t *testing.T) {
	tower := truck("truck", 1, 5000, 9000, 20, 10)
	tower.Combined = massOf(pounds(14000))
	trailer := truck("trailer", 1, 2000, 8000, 20, 5)
	trailer.Kind, trailer.TowedBy = "trailer", []string{"truck"}
	c := shop(tower, trailer)
	for _, tt := range []struct{ weights, turns int }{{40, 1}, {70, 1}, {71, 2}} {
		lines := []parts.Line{line("weight", "anchor", tt.weights, 100, 1, 1)}
		plan, err := pack(c, lines...)
		if err != nil {
			t.Fatal(err)
		}
		checkPlan(t, c, lines, plan)
		if got := plan.Out.Trips[len(plan.Out.Trips)-1].Turn; got != tt.turns {
			t.Errorf("%d00 lb take %d turns, want %d", tt.weights, got, tt.turns)
		}
	}
}

// Fleets with too many sets to look at each are planned well too.
func TestLargeFleets(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawFleet(t, 9, 30)
		lines := drawLines(t, 60, 800)
		plan, list := Pack(c, &parts.Result{Lines: lines}, money.Int(12))
		if list.Err() == nil {
			checkPlan(t, c, lines, plan)
		}
	})
}

// The same job gives the same plan.
func TestRepeatable(t *testing.T) {
	c, lines := busyYard(), busyJob(60, 1)
	first, err := pack(c, lines...)
	if err != nil {
		t.Fatal(err)
	}
	second, _ := pack(c, lines...)
	text := func(p *Plan) string { return fmt.Sprintf("%+v", p) }
	if text(first) != text(second) {
		t.Error("two plans of one job differ")
	}
	checkPlan(t, c, lines, first)
}
