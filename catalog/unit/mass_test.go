package unit

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestParseMass(t *testing.T) {
	tests := []struct {
		text string
		want Mass
	}{
		{"12.64 lb", 1264 * Pound / 100},
		{"1 lb", 4535923700}, // 453.59237 g, NIST SP 811 appendix B
		{"16 oz", Pound},
		{"18 oz", 5102914163}, // 510.29141625 g, half up
		{"1 oz", Ounce},
		{"250 g", 250 * Gram},
		{"3 kg", 3 * Kilogram},
		{"1.2 t", 1200 * Kilogram},
		{"5lbs", 5 * Pound},
		{"0 lb", 0},
		{"0.0000000001 kg", 1},
	}
	for _, tt := range tests {
		if got, err := ParseMass(tt.text); err != nil || got != tt.want {
			t.Errorf("%q: got %d, %v, want %d", tt.text, got, err, tt.want)
		}
	}
}

func TestParseMassErrorsSayWhy(t *testing.T) {
	tests := []struct{ text, want string }{
		{"12", "a number without a unit"},
		{"-1 lb", "is negative"},
		{"1 lb 4 oz", "more than one number"},
		{"12 ft", `the unknown unit "ft"`},
		{"1,200 lb", "a comma in a number"},
		{"", "is empty"},
		{"heavy", "no number before its unit"},
		{"1000000 t", "is too large"},
	}
	for _, tt := range tests {
		_, err := ParseMass(tt.text)
		if err == nil || !strings.Contains(err.Error(), tt.want) || !strings.Contains(err.Error(), `such as "12.64 lb"`) {
			t.Errorf("%q: got %v, want %q and an example", tt.text, err, tt.want)
		}
	}
}

func TestMassForPeople(t *testing.T) {
	tests := []struct {
		m         Mass
		lb, kg    string
		lbRounded Mass
	}{
		{1264 * Pound / 100, "12.64 lb", "5.73 kg", 1264 * Pound / 100},
		{3 * Kilogram, "6.61 lb", "3 kg", 661 * Pound / 100},
		{Pound / 2, "0.5 lb", "0.23 kg", Pound / 2},
		{Pound/200 + 1, "0.01 lb", "0 kg", Pound / 100}, // the half itself is not whole
		{Pound / 200, "0 lb", "0 kg", 0},
		{Kilogram / 200, "0.01 lb", "0.01 kg", Pound / 100}, // half up
		{-Kilogram / 200, "-0.01 lb", "-0.01 kg", -Pound / 100},
		{0, "0 lb", "0 kg", 0},
	}
	for _, tt := range tests {
		if got := tt.m.Text(Imperial); got != tt.lb {
			t.Errorf("%d: got %q, want %q", int64(tt.m), got, tt.lb)
		}
		if got := tt.m.Text(Metric); got != tt.kg {
			t.Errorf("%d: got %q, want %q", int64(tt.m), got, tt.kg)
		}
		if got := tt.m.RoundTo(Imperial); got != tt.lbRounded {
			t.Errorf("%d to a hundredth: got %d, want %d", int64(tt.m), got, tt.lbRounded)
		}
	}
	if m := 10 * Pound; m.Pounds() != 10 || m.In(Imperial) != 10 || m.Kilograms() != 4.5359237 || m.In(Metric) != 4.5359237 {
		t.Errorf("got %g lb, %g kg", m.Pounds(), m.Kilograms())
	}
	if MassOf(1.5) != 1500*Gram || MassOf(math.NaN()) != 0 || MassOf(1e30) != math.MaxInt64 {
		t.Error("kilograms as a float convert wrongly")
	}
}

func TestMassProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := Mass(rapid.Int64Range(0, math.MaxInt64).Draw(t, "m"))
		if rapid.Bool().Draw(t, "hundredths") {
			m -= m % (Pound / 100)
		}
		text, err := m.MarshalText()
		if err != nil {
			t.Fatal(err)
		}
		if back, err := ParseMass(string(text)); err != nil || back != m {
			t.Fatalf("%d is %q and reads back as %d, %v", m, text, back, err)
		}
	})
	rapid.Check(t, func(t *rapid.T) {
		m := Mass(rapid.Int64Range(-1e16, 1e16).Draw(t, "m"))
		for _, sys := range []System{Imperial, Metric} {
			r, step := m.RoundTo(sys), pick(sys, Pound, Kilogram)/100
			if r%step != 0 || max(r-m, m-r)*2 > step || r.RoundTo(sys) != r || (-m).RoundTo(sys) != -r {
				t.Fatalf("%d rounds to %d", m, r)
			}
			// What is shown is what is reckoned with.
			if m >= 0 {
				if shown, err := ParseMass(m.Text(sys)); err != nil || shown != r {
					t.Fatalf("%d is shown as %s, %v", m, m.Text(sys), err)
				}
			}
		}
	})
	if _, err := Mass(-1).MarshalText(); err == nil {
		t.Error("a negative mass was written")
	}
}
