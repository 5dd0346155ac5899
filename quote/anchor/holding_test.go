package anchor

import (
	"math"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/frame"
	"tentwright/quote/job"
	"tentwright/quote/tent"

	"pgregory.net/rapid"
)

// Weight of ballast: W >= U + H/mu at one foot, both times the safety factor
// (statics, derived).
func TestBallastWeight(t *testing.T) {
	c := demoShop(t)
	piece := &c.Anchors.Ballast[0]
	ground := c.SiteFactor(catalog.Surface).Option("deck")
	mat := &tent.Tent{Family: c.Family("hip")}
	for _, row := range []struct {
		mu, safety string
		want       float64
	}{{"0.3", "1", 1233}, {"0.45", "1", 956}, {"0.6", "1", 817}, {"0.75", "1", 733}, {"0.3", "1.5", 1850}, {"0.45", "1.5", 1433}, {"0.6", "1.5", 1225}, {"0.75", "1.5", 1100}} {
		c.Anchors.Safety.Ballast = dec(t, row.safety)
		c.Anchors.Friction = []catalog.Friction{{Ballast: piece.ID, Surface: "deck", Mu: dec(t, row.mu)}}
		b := &builder{c: c, a: c.Anchors, rubbed: map[rub]answer{}}
		l := &Leg{Up: 400, Side: 250}
		h, ok := b.weighted(mat, l, &foot{surfaces: []*catalog.SiteOption{ground}}, piece)
		if !ok {
			t.Fatal("no friction was found")
		}
		about(t, "mu "+row.mu+", safety "+row.safety, h.Need, row.want, 0.5)
	}
}

// A guy at an angle from the ground that carries 500 sideways: its pull is
// H/cos a, and it lifts the stake by H tan a (statics, derived).
func TestGuyAngle(t *testing.T) {
	for _, row := range []struct{ degrees, pull, lift float64 }{{30, 577.35, 288.68}, {45, 707.11, 500}, {60, 1000, 866.03}} {
		a := row.degrees * math.Pi / 180
		l := &Leg{Guys: 1, Run: math.Cos(a), Rise: math.Sin(a), Side: 500}
		about(t, "pull", pullOf(l), row.pull, 0.05)
		// A lift of exactly what the guy gives asks for no more; a greater one governs.
		l.Up = row.lift
		about(t, "pull with its lift", pullOf(l), row.pull, 0.05)
		l.Up = 2 * row.lift
		about(t, "pull of twice the lift", pullOf(l), 2*row.pull, 0.1)
	}
	about(t, "upright", pullOf(&Leg{Up: 300, Side: 200}), 500, 0)
}

// Picket holdfasts in undisturbed loam: one 700 lb, three in a row 1,800 lb
// (United States Navy, NAVEDTRA 14251, read). A picket of the table's own size in
// its own soil is what the table says; a thinner one holds less, a thicker one no
// more.
func TestPickets(t *testing.T) {
	c := demoShop(t)
	c.Demo = false
	b := &builder{c: c, a: c.Anchors}
	grass := c.SiteFactor(catalog.Surface).Option("grass")
	picket := &catalog.Stake{ID: "picket", Driven: 4 * unit.Foot, Diameter: 3 * unit.Inch, Rake: dec(t, "15")}
	one, _, ok := b.strength(picket, grass, Guyed)
	if !ok {
		t.Fatal("the table was not used")
	}
	about(t, "one, lb", unit.Imperial.Force(one), 700, 0.001)
	about(t, "three, lb", unit.Imperial.Force(3*one*b.grouped(3)), 1800, 1)
	picket.Rake = dec(t, "14")
	if _, _, ok := b.strength(picket, grass, Guyed); ok {
		t.Error("the table of pickets driven at 15 degrees was used for one driven at 14")
	}
	picket.Rake, picket.Diameter = dec(t, "15"), 6*unit.Inch
	thick, _, _ := b.strength(picket, grass, Guyed)
	picket.Diameter = unit.Inch
	thin, _, _ := b.strength(picket, grass, Guyed)
	about(t, "thicker", thick, one, 1e-9)
	about(t, "a third as thick", thin, one/3, 1e-9)
	if _, _, ok := b.strength(picket, grass, Upright); ok {
		t.Error("the table of pickets pulled sideways was used for one pulled upright")
	}
	if _, _, ok := b.strength(picket, c.SiteFactor(catalog.Surface).Option("sand"), Guyed); ok {
		t.Error("the table was used for a soil that it does not give")
	}
	for n, want := range map[int]float64{1: 1, 2: 0.9285, 3: 0.857, 4: 0.7855, 20: 0} {
		about(t, "group", b.grouped(n), want, 1e-9)
	}
}

// The shop's own test stands before any table, and the least of several holds.
func TestLeastPullTest(t *testing.T) {
	c := demoShop(t)
	grass := c.SiteFactor(catalog.Surface).Option("grass")
	s := &c.Anchors.Stakes[0]
	b := &builder{c: c, a: c.Anchors}
	first, _, _ := b.strength(s, grass, Guyed)
	c.Anchors.Tests = append(c.Anchors.Tests, catalog.PullTest{Stake: s.ID, Surface: "grass", Way: "guy", Pull: 300 * unit.Pound, Date: unit.Date{Year: 2026, Month: 4, Day: 1}})
	least, basis, _ := b.strength(s, grass, Guyed)
	if about(t, "least, lb", unit.Imperial.Force(least), 300, 0.001); first <= least || basis != "own pull test of 2026-04-01" {
		t.Errorf("%g before, %g and %q after a test of 300 lb", first, least, basis)
	}
}

// A barrel of 55 gallons holds 459 lb of water at 8.345 lb a gallon (US Navy Ship
// Salvage Manual, appendix E, read; derived): what it weighs full less what it
// weighs empty, and it rides empty.
func TestWaterBarrel(t *testing.T) {
	c := demoShop(t)
	p := c.Part("water-barrel")
	b := &builder{c: c, a: c.Anchors}
	empty, _ := c.Mass(p.ID)
	about(t, "water, lb", unit.Imperial.Force(b.fullWeight(p)-force(empty)), 55*8.345, 0.5)
}

// The correction is the smallest that balances: no other one that does has a
// smaller sum of squares. By the conditions of Kuhn and Tucker a hold that pulls
// is asked for by three multipliers, and one that does not is asked to push.
func TestSmallestCorrection(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var feet []foot
		n := rapid.IntRange(3, 12).Draw(t, "legs")
		number := rapid.Float64Range(-10, 10)
		for range n {
			f := foot{at: frame.Point{X: number.Draw(t, "x"), Y: number.Draw(t, "y")}, way: Guyed}
			if rapid.Bool().Draw(t, "weight") {
				f.way = Weight
			}
			a := rapid.Float64Range(0, 2*math.Pi).Draw(t, "out")
			f.outs = []frame.Point{{X: math.Cos(a), Y: math.Sin(a)}}
			feet = append(feet, f)
		}
		l := load{force: frame.Point{X: number.Draw(t, "fx"), Y: number.Draw(t, "fy")}, moment: frame.Point{Z: number.Draw(t, "turn")}}
		for range n {
			l.share = append(l.share, frame.Point{X: number.Draw(t, "sx"), Y: number.Draw(t, "sy")})
		}
		s := newSideways(feet, true)
		reactions, pulls := make([]frame.Point, n), make([]float64, n)
		if s.size < 0.1 || !s.solve(&l, reactions, pulls) {
			return // nothing holds it that way
		}
		var fx, fy, turn, scale float64
		for i, r := range reactions {
			fx, fy, turn = fx+r.X, fy+r.Y, turn+feet[i].at.X*r.Y-feet[i].at.Y*r.X
			scale += math.Abs(r.X) + math.Abs(r.Y) + math.Abs(l.share[i].X) + math.Abs(l.share[i].Y)
		}
		if math.Abs(fx+l.force.X)+math.Abs(fy+l.force.Y)+math.Abs(turn+l.moment.Z)/10 > 1e-6*(scale+30) {
			t.Fatalf("not in balance: %g, %g, %g against %v", fx, fy, turn, l)
		}
		// Multipliers by least squares over the holds that pull.
		var m [3][3]float64
		var v [3]float64
		for k, h := range s.holds {
			if row := [3]float64{h.x, h.y, h.turn}; !h.guy || s.found[k] > 0 {
				for a := range row {
					v[a] += row[a] * (s.found[k] - s.asked[k])
					for b := range row {
						m[a][b] += row[a] * row[b]
					}
				}
			}
		}
		by, ok := solve3(m, v)
		if !ok {
			return // fewer holds pull than there are conditions
		}
		most := largest(by)
		for k, h := range s.holds {
			asked := s.asked[k] + by[0]*h.x + by[1]*h.y + by[2]*h.turn
			if h.guy {
				asked = max(0, asked)
			}
			if math.Abs(asked-s.found[k]) > 1e-5*(scale+most) {
				t.Fatalf("hold %d has %g; the smallest correction gives %g", k, s.found[k], asked)
			}
		}
	})
}

// A tent's own weight is that of its parts as the pick list has it, but for the
// rounding to a hundredth of a pound each.
func TestOwnWeight(t *testing.T) {
	c := demoShop(t)
	j := &job.Job{Tents: []job.Tent{{ID: "a", Family: "hip", Size: "20x40"}, {ID: "b", Family: "pole", Size: "40x60"}, {ID: "c", Family: "span", Size: "40x45"}}}
	tents, _ := tent.Build(c, j)
	for i := range tents {
		g, want, pieces := tents[i].Graph, 0.0, 0
		for _, m := range g.Members {
			mass, _ := c.Mass(m.Part)
			want, pieces = want+mass.Pounds(), pieces+1
		}
		for _, n := range g.Nodes {
			mass, _ := c.Mass(n.Part)
			want, pieces = want+mass.Pounds(), pieces+1
		}
		for _, s := range g.Sections {
			each := c.ClothMass(c.Fabric(tents[i].Family.Fabric), s.Area, tents[i].Family.Seam.InexactFloat64())
			want, pieces = want+float64(s.Count)*each.Pounds(), pieces+s.Count
		}
		about(t, "own weight, lb", unit.Imperial.Force(weightOf(c, &tents[i])), want, 0.006*float64(pieces))
	}
	// What each leg counts on adds up to the share that counts.
	r, _ := Build(c, j, tents)
	for i := range r.Tents {
		sum := 0.0
		for _, l := range r.Tents[i].Legs {
			sum += l.Dead
		}
		about(t, "dead weight of legs", sum, 0.9*weightOf(c, &tents[i]), 1e-6*sum)
	}
}
