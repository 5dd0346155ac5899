package load

import (
	"fmt"
	"math"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/parts"

	"pgregory.net/rapid"
)

const testRider = 90 * unit.Kilogram

func lengthOf(cm int) unit.Length { return unit.Length(cm) * unit.Centimetre }
func kilos(n int) unit.Mass       { return unit.Mass(n) * unit.Kilogram }

// drawFleet makes a catalog with a few vehicles, the last perhaps a trailer.
func drawFleet(t *rapid.T, kinds, count int) *catalog.Catalog {
	c := &catalog.Catalog{}
	c.Company.Units = unit.Metric
	c.Rates.WetFactor = money.Float(rapid.SampledFrom([]float64{1, 1.25, 1.3, 2}).Draw(t, "wet"))
	c.Rates.MileCost = money.Float(1.15)
	c.Fleet.Rider = testRider
	var towers []string
	for i := range rapid.IntRange(1, kinds).Draw(t, "kinds") {
		v := catalog.Vehicle{ID: fmt.Sprintf("v%d", i), Kind: "box truck", Count: rapid.IntRange(1, count).Draw(t, "count"),
			Empty: kilos(rapid.IntRange(500, 3000).Draw(t, "empty")), Fuel: kilos(50), Seats: rapid.IntRange(0, 3).Draw(t, "seats"),
			Deck:    unit.Size{L: lengthOf(rapid.IntRange(150, 800).Draw(t, "deck")), W: lengthOf(200), H: lengthOf(200)},
			Longest: lengthOf(rapid.IntRange(200, 900).Draw(t, "longest")), Fill: money.Int(rapid.IntRange(40, 100).Draw(t, "fill")),
			TripCost: money.Int(rapid.IntRange(0, 80).Draw(t, "cost"))}
		v.Rating = v.Empty + kilos(rapid.IntRange(300, 5000).Draw(t, "rating"))
		if i > 0 && rapid.IntRange(0, 2).Draw(t, "trailer") == 0 {
			v.Kind, v.Seats, v.Fuel, v.TowedBy = "trailer", 0, 0, towers
		} else {
			towers = append(towers, v.ID)
			if rapid.Bool().Draw(t, "tows") {
				both := v.Rating + kilos(rapid.IntRange(300, 5000).Draw(t, "combined"))
				v.Combined = &both
			}
		}
		c.Fleet.Vehicles = append(c.Fleet.Vehicles, v)
	}
	return c
}

// drawLines makes part lines of all sizes, some of nothing.
func drawLines(t *rapid.T, most, quantity int) []parts.Line {
	lines := make([]parts.Line, rapid.IntRange(0, most).Draw(t, "lines"))
	for i := range lines {
		p := &catalog.Part{ID: fmt.Sprintf("p%d", i), Use: rapid.SampledFrom(needed).Draw(t, "use"),
			Consumable: rapid.IntRange(0, 9).Draw(t, "consumable") == 0, Wets: rapid.IntRange(0, 3).Draw(t, "wets") == 0}
		p.Pack = catalog.Pack{Holds: rapid.SampledFrom([]int{1, 1, 2, 5, 12, 100}).Draw(t, "holds"),
			Size: unit.Size{L: lengthOf(rapid.IntRange(10, 300).Draw(t, "long")), W: lengthOf(rapid.IntRange(5, 60).Draw(t, "wide")), H: lengthOf(40)}}
		if rapid.Bool().Draw(t, "tared") {
			tare := kilos(rapid.IntRange(1, 20).Draw(t, "tare"))
			p.Pack.Tare = &tare
		}
		each := unit.Mass(rapid.IntRange(1, 40000/(p.Pack.Holds*p.Pack.Holds)+10).Draw(t, "each")) * unit.Kilogram / 100
		lines[i] = parts.Line{Part: p, Each: each, Counted: rapid.IntRange(0, quantity).Draw(t, "counted"), Spare: rapid.IntRange(0, 2).Draw(t, "spare")}
	}
	return lines
}

// Whatever is planned stands up to the separate check, and the way back keeps
// to the trips of the way out exactly when the wet load fits them.
func TestPlansHold(t *testing.T) {
	planned, refused, turns := 0, 0, 0
	rapid.Check(t, func(t *rapid.T) {
		c := drawFleet(t, 4, 3)
		lines := drawLines(t, 30, 60)
		plan, list := Pack(c, &parts.Result{Lines: lines}, money.Int(rapid.IntRange(0, 80).Draw(t, "distance")))
		if list.Err() != nil {
			refused++
			// Too many turns is a limit that we set, not one of a plate.
			if list[0].Code != TooMuch {
				checkFaults(t, c, lines, list.Err())
			}
			return
		}
		planned++
		if n := len(plan.Out.Trips); n > 0 && plan.Out.Trips[n-1].Turn > 1 {
			turns++
		}
		checkPlan(t, c, lines, plan)
	})
	t.Logf("%d planned, %d of them in turns, %d refused", planned, turns, refused)
}

// checkFaults wants a refused job to have a pack that no vehicle takes, by
// the plates alone.
func checkFaults(t failer, c *catalog.Catalog, lines []parts.Line, err error) {
	t.Helper()
	for i := range lines {
		l := &lines[i]
		n := min(l.Counted+l.Spare, l.Part.Pack.Holds)
		fits := n == 0
		for j := range c.Fleet.Vehicles {
			v := &c.Fleet.Vehicles[j]
			payload := v.Rating - v.Empty - v.Fuel - unit.Mass(v.Seats)*testRider
			if v.Kind == "trailer" {
				payload = min(payload, hitched(c, v))
			}
			mass := unit.Mass(n) * l.Each
			if l.Part.Wets && !l.Part.Consumable {
				mass = unit.MassOf(mass.Kilograms() * c.Rates.WetFactor.InexactFloat64())
			}
			if l.Part.Pack.Tare != nil {
				mass += *l.Part.Pack.Tare
			}
			fits = fits || mass <= payload && v.Longest >= l.Part.Pack.Size.Longest() &&
				float64(l.Part.Pack.Size.Volume()) <= math.Floor(float64(v.Deck.Volume())*v.Fill.InexactFloat64()/100)
		}
		if !fits {
			return
		}
	}
	t.Fatalf("refused without a reason: %v", err)
}

// hitched is the most that a trailer may carry behind any vehicle.
func hitched(c *catalog.Catalog, trailer *catalog.Vehicle) unit.Mass {
	best := unit.Mass(0)
	for i := range c.Fleet.Vehicles {
		v := &c.Fleet.Vehicles[i]
		for _, id := range trailer.TowedBy {
			own := v.Empty + v.Fuel + unit.Mass(v.Seats)*testRider
			switch {
			case id != v.ID || own >= v.Rating:
			case v.Combined == nil:
				return math.MaxInt64
			default:
				best = max(best, *v.Combined-own-trailer.Empty)
			}
		}
	}
	return best
}
