package unit

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// An inch is 25.4 mm exactly since 1959 (NIST SP 811, appendix B.6).
func TestLengthConstants(t *testing.T) {
	for name, tt := range map[string][2]Length{
		"inch": {Inch, 25400}, "foot": {Foot, 304800}, "yard": {Yard, 914400}, "mile": {Mile, 1609344000},
		"millimetre": {Millimetre, 1000}, "centimetre": {Centimetre, 10000}, "metre": {Metre, 1e6}, "kilometre": {Kilometre, 1e9},
	} {
		if tt[0] != tt[1] {
			t.Errorf("%s: got %d, want %d micrometres", name, tt[0], tt[1])
		}
	}
}

func TestParseLength(t *testing.T) {
	tests := []struct {
		text string
		want Length
	}{
		{"14 ft 4 in", 14*Foot + 4*Inch},
		{"14 ft", 14 * Foot},
		{"14ft4in", 14*Foot + 4*Inch},
		{"9 ft 4 1/2 in", 9*Foot + 9*Inch/2},
		{"9 ft 1/2 in", 9*Foot + Inch/2},
		{"1/2 in", Inch / 2},
		{"3 3/8 in", 27 * Inch / 8},
		{"3/16 in", 4763}, // 4762.5 µm, half up
		{"14'4\"", 14*Foot + 4*Inch},
		{"14' 4 1/2\"", 14*Foot + 9*Inch/2},
		{"14′ 4″", 14*Foot + 4*Inch},
		{"6'", 6 * Foot},
		{`30"`, 30 * Inch},
		{"30 in", 30 * Inch},
		{"2.5 in", 5 * Inch / 2},
		{"0.080 in", 2032},
		{"2.5 ft", 5 * Foot / 2},
		{"6 m", 6 * Metre},
		{"60 cm", 60 * Centimetre},
		{"25 mm", 25 * Millimetre},
		{"4.370001 m", 4370001},
		{"23 mi", 23 * Mile},
		{"1.5 km", 1500 * Metre},
		{"100 yd", 100 * Yard},
		{"  6 Feet ", 6 * Foot},
		{"0 ft", 0},
	}
	for _, tt := range tests {
		if got, err := ParseLength(tt.text); err != nil || got != tt.want {
			t.Errorf("%q: got %d, %v, want %d", tt.text, got, err, tt.want)
		}
	}
}

func TestParseLengthErrorsSayWhy(t *testing.T) {
	tests := []struct{ text, want string }{
		{"", "is empty"},
		{"14", "a number without a unit"},
		{"14 ft 4", "a number without a unit"},
		{"-3 ft", "is negative"},
		{"3 ft -2 in", "has a dash"},
		{"3 ft - 2 in", "has a dash"},
		{"ft", "no number before its unit"},
		{"14 ft 12 in", "12 inches or more"},
		{"14.5 ft 4 in", "a part of a foot and inches"},
		{"4 m 37 cm", "not feet and inches"},
		{"4 in 3 ft", "not feet and inches"},
		{"1 ft 2 in 3 in", "not feet and inches"},
		{"6 parsecs", `the unknown unit "parsecs"`},
		{"6 lb", `the unknown unit "lb"`},
		{"1,200 ft", "a comma in a number"},
		{"1e3 ft", `the unknown unit "e"`},
		{"2.5 1/2 in", "a point and a fraction"},
		{"4 1/0 in", "a fraction that is not like 1/2"},
		{"3/2 in", "a fraction that is not like 1/2"},
		{"1/2", "a number without a unit"},
		{"1.2.3 ft", "is not a plain number"},
		{".5 in", "is not a plain number"},
		{"5. in", "is not a plain number"},
		{"12345678901234567890 in", "more than 19 digits"},
		{"999999999999999 mi", "is too large"},
		{"6000000000 mi", "is too large"},
		{strings.Repeat("9 ft ", 30), "is not feet and inches"},
	}
	for _, tt := range tests {
		_, err := ParseLength(tt.text)
		if err == nil || !strings.Contains(err.Error(), tt.want) || !strings.Contains(err.Error(), `such as "14 ft 4 in"`) {
			t.Errorf("%q: got %v, want %q and an example", tt.text, err, tt.want)
		}
	}
}

func TestLengthIn(t *testing.T) {
	tests := []struct {
		l                Length
		imperial, metric string
	}{
		{0, "0 ft", "0 m"},
		{14*Foot + 4*Inch, "14 ft 4 in", "4.369 m"},
		{14 * Foot, "14 ft", "4.267 m"},
		{4 * Inch, "4 in", "0.102 m"},
		{9*Foot + 9*Inch/2, "9 ft 4 1/2 in", "2.858 m"},
		{9*Foot + Inch/2, "9 ft 1/2 in", "2.756 m"},
		{Inch / 4, "1/2 in", "0.006 m"},                 // half up to the next half
		{12*Foot - Inch/8, "12 ft", "3.654 m"},          // carries into feet
		{6 * Metre, "19 ft 8 in", "6 m"},                // 19 ft 8.22 in
		{4370 * Millimetre, "14 ft 4 in", "4.37 m"},     // 14 ft 4.05 in
		{437 * Centimetre / 10, "1 ft 5 in", "0.437 m"}, // 17.2 in
		{499 * Micrometre, "0 ft", "0 m"},
		{500 * Micrometre, "0 ft", "0.001 m"},
		{-(5*Foot + 6*Inch), "-5 ft 6 in", "-1.676 m"},
	}
	for _, tt := range tests {
		if got := tt.l.In(Imperial); got != tt.imperial {
			t.Errorf("%d µm imperial: got %q, want %q", int64(tt.l), got, tt.imperial)
		}
		if got := tt.l.In(Metric); got != tt.metric {
			t.Errorf("%d µm metric: got %q, want %q", int64(tt.l), got, tt.metric)
		}
	}
}

func TestLengthAsFloat(t *testing.T) {
	l := 26400 * Foot / 10
	if l.Feet() != 2640 || l.Miles() != 0.5 || l.Metres() != 804.672 || l.Kilometres() != 0.804672 {
		t.Errorf("got %g ft, %g mi, %g m, %g km", l.Feet(), l.Miles(), l.Metres(), l.Kilometres())
	}
	for metres, want := range map[float64]Length{1.5: 1500000, 0.0000005: 1, -0.0000005: -1, 0.0000004: 0,
		math.Inf(1): math.MaxInt64, math.Inf(-1): math.MinInt64} {
		if got := FromMetres(metres); got != want {
			t.Errorf("%g m: got %d, want %d", metres, got, want)
		}
	}
	if FromMetres(math.NaN()) != 0 {
		t.Error("not-a-number is not zero")
	}
}

func TestLengthMarshalText(t *testing.T) {
	for want, l := range map[string]Length{"14 ft 4 1/8 in": 14*Foot + 33*Inch/8, "6 m": 6 * Metre, "0.000001 m": 1, "0 ft": 0} {
		if got, err := l.MarshalText(); err != nil || string(got) != want {
			t.Errorf("got %q, %v, want %q", got, err, want)
		}
	}
	if _, err := Length(-1).MarshalText(); err == nil {
		t.Error("a negative length was written")
	}
}

func TestLengthProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := Length(rapid.Int64Range(0, math.MaxInt64).Draw(t, "l"))
		if rapid.Bool().Draw(t, "eighths") {
			l -= l % (Inch / 8)
		}
		text, err := l.MarshalText()
		if err != nil {
			t.Fatal(err)
		}
		if back, err := ParseLength(string(text)); err != nil || back != l {
			t.Fatalf("%d is %q and reads back as %d, %v", l, text, back, err)
		}
	})
	rapid.Check(t, func(t *rapid.T) {
		l := Length(rapid.Int64Range(0, int64(Mile)).Draw(t, "l"))
		for sys, step := range map[System]Length{Imperial: Inch / 2, Metric: Millimetre} {
			shown, err := ParseLength(l.In(sys))
			if err != nil || max(shown-l, l-shown)*2 > step {
				t.Fatalf("%d is shown as %q, %v", l, l.In(sys), err)
			}
		}
	})
}
