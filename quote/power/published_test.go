package power

import (
	"fmt"
	"math"
	"os"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
)

// near holds a figure against a published one.
func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if math.Abs(got-want) > within {
		t.Errorf("%s is %g; %g was expected, within %g", what, got, want, within)
	}
}

// Worked examples of the voltage lost along a cable. The last is another
// formula, by the area of the conductor, of which the two sources of resistance
// differ by a few percent.
func TestDropAsPublished(t *testing.T) {
	for _, x := range []struct {
		source               string
		legs                 int
		length, amps, ohms   float64
		volts                float64
		lost, percent, apart float64
	}{
		{"electrakit.com, voltage drop formula, read: 150 ft, 20 A, 1.93 ohm, 120 V", 1, 150, 20, 1.93, 120, 11.58, 9.65, 0.005},
		{"the same page, read: 200 ft, 30 A, 1.21 ohm, 480 V, three phases; it prints 12.58 V", 3, 200, 30, 1.21, 480, 12.57, 2.62, 0.006},
		{"NFPA 70 (NEC) chapter 9 table 8, 10 AWG solid against 2 K L I / CM, K 12.9, CM 10,380: 3.98 V", 1, 100, 16, 1.21, 120, 3.98, 3.32, 0.12},
	} {
		near(t, x.source, Drop(x.legs, x.length, x.amps, x.ohms), x.lost, x.apart)
		n := func(f float64) money.Number { return money.Float(f) }
		near(t, x.source+", percent", DropPercent(x.legs, n(x.length), n(x.amps), n(x.ohms), n(x.volts)).InexactFloat64(), x.percent, x.apart)
	}
}

// Apparent power, by sqrt(3) V I of three phases (handbook rule; worked out from
// it): 100 A on each leg. A supply counts the volts of its circuits, 120, where
// 208/sqrt(3) is 120.1.
func TestKVAOfASupply(t *testing.T) {
	for legs, want := range map[int]float64{3: math.Sqrt(3) * 208 * 100 / 1000, 2: 240 * 100 / 1000.0} {
		b := &builder{r: &Result{VA: money.Int(legs * 12000)}}
		s := &Supply{Circuits: make([]Circuit, legs)}
		for i := range s.Circuits {
			s.Circuits[i].VA = money.Int(12000)
		}
		b.legs(s, legs, money.Int(1))
		near(t, fmt.Sprintf("%d legs of 100 A", legs), s.KVA.InexactFloat64(), want, 0.04)
	}
}

// 120 V x 20 A x 80 percent (NFPA 70 (NEC), the 80 percent from memory).
func TestCircuitCarries(t *testing.T) {
	c := &catalog.Circuit{Volts: money.Int(120), Amps: money.Int(20), Continuous: money.Int(80)}
	if got := Carries(c); !got.Equal(money.Int(1920)) {
		t.Errorf("a circuit carries %s VA; 1920 was expected", got)
	}
}

// Propane at 21,548 Btu/lb (a propane merchant's table of properties, read): the
// heat of a cylinder, and how long it lasts at a rate (worked out from it).
func TestPropaneAsPublished(t *testing.T) {
	f := demo(t).Power.FuelOf("propane-20")
	near(t, "20 lb", f.Holds.Mul(f.Energy).InexactFloat64(), 430960, 0.5)
	f = demo(t).Power.FuelOf("propane-100")
	heat := f.Holds.Mul(f.Energy).InexactFloat64()
	near(t, "hours of 100 lb at 120,000 Btu/h", heat/120000, 17.96, 0.005)
	near(t, "hours of 100 lb at 400,000 Btu/h", heat/400000, 5.39, 0.005)
}

// Resistances as the table has them, stranded (NFPA 70 (NEC) chapter 9 table 8,
// read); the solid ones are other values that are often printed in
// their place.
func TestConductorsAsPublished(t *testing.T) {
	p := demo(t).Power
	for gauge, want := range map[string]float64{"14": 3.14, "12": 1.98, "10": 1.24, "8": .778, "6": .491, "4": .308, "2": .194, "1/0": .122, "2/0": .0967, "4/0": .0608} {
		near(t, "gauge "+gauge, p.Conductor(gauge).Ohms.InexactFloat64(), want, 1e-9)
	}
	for gauge, solid := range map[string]float64{"14": 3.07, "12": 1.93, "10": 1.21, "8": .764} {
		if p.Conductor(gauge).Ohms.InexactFloat64() == solid {
			t.Errorf("gauge %s has the resistance of a solid conductor", gauge)
		}
	}
}

// A tent of 40 x 60 ft with a roof of 6:12 and walls of 8 ft: 1.118034 x 2,400
// sq ft of roof and 200 x 8 of wall are 4,283.3 sq ft, gables left out; at 1.2
// Btu/(h sq ft F) and 40 F it loses 205,598 Btu/h. The handbook figure of 205,594
// takes the area rounded to 4,283.2 sq ft.
func TestLossAsWorkedOut(t *testing.T) {
	roof := money.Round(money.Float(2400*math.Sqrt(1+0.25)), 2)
	h := &Heat{Rise: money.Int(40), Roof: money.Float(1.2), Wall: money.Float(1.2), Changes: money.Zero}
	got := h.Loss(unit.Imperial, roof, money.Int(1600), money.Zero)
	near(t, "the area", roof.InexactFloat64()+1600, 4283, 0.5)
	near(t, "the loss", got.InexactFloat64(), 205594, 5)
	h.Changes = money.One // 2,400 x (8 + 10/2) ft at 0.018
	near(t, "with the air", h.Loss(unit.Imperial, roof, money.Int(1600), money.Int(31200)).InexactFloat64(), 205594+0.018*31200*40, 5)
}

// The heat of air follows from the gas law: (7/2) p/T for each cubic metre and
// kelvin; Btu, foot and degree by NIST SP 811.
func TestAirHeatFollowsFromTheGasLaw(t *testing.T) {
	const joules = 3.5 * 101325 / (273.15 + 21.11)
	near(t, "Wh/(m3 K)", AirHeat(unit.Metric).InexactFloat64(), joules/3600, 0.0005)
	near(t, "Btu/(cu ft F)", AirHeat(unit.Imperial).InexactFloat64(), joules*0.028316846592/1055.05585262*5/9, 0.00005)
}

// The same tent loses the same heat in both systems of units.
func TestLossIsTheSameInBothUnits(t *testing.T) {
	const foot, btu = 0.3048, 0.00029307107
	imperial := &Heat{Rise: money.Int(36), Roof: money.Float(1.2), Wall: money.Float(0.9), Changes: money.Float(1.5)}
	metric := &Heat{Rise: money.Int(20), Roof: money.Float(1.2 * 5.678263), Wall: money.Float(0.9 * 5.678263), Changes: money.Float(1.5)}
	n := func(f float64) money.Number { return money.Round(money.Float(f), 2) }
	a := imperial.Loss(unit.Imperial, n(3000), n(1500), n(40000)).InexactFloat64() * btu
	b := metric.Loss(unit.Metric, n(3000*foot*foot), n(1500*foot*foot), n(40000*foot*foot*foot)).InexactFloat64()
	near(t, "kW", a, b, 0.03)
}

// The demonstration jobs are planned within seconds of reading; none of them is
// left short.
func TestDemoJobsAreCovered(t *testing.T) {
	c := demo(t)
	for _, name := range []string{"dinner", "fairground"} {
		data, err := os.ReadFile("../../testdata/jobs/" + name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		r := buildJob(t, c, readJob(t, c, data))
		if r.Supply == nil || r.Supply.Capacity.LessThan(r.Supply.KVA) || len(r.Missing) > 0 {
			t.Errorf("%s: supply %+v, missing %v", name, r.Supply, r.Missing)
		}
		if r.Heat != nil && r.Heat.Output.LessThan(r.Heat.Need) {
			t.Errorf("%s: the heaters give %s of %s", name, r.Heat.Output, r.Heat.Need)
		}
		for _, f := range r.Fuels {
			if f.Taken().LessThan(f.Needed) {
				t.Errorf("%s: %s of %s is taken", name, f.Taken(), fmt.Sprint(f.Needed, " ", f.Item.ID))
			}
		}
	}
}
