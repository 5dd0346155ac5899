package unit

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestParseArea(t *testing.T) {
	for text, want := range map[string]Area{
		"600 sq ft": 600 * 0.09290304, // a square foot is 0.09290304 m2, NIST SP 811
		"600 ft2":   600 * 0.09290304, "50 m2": 50, "50 sq m": 50, "50.5  sq  m": 50.5, "0 m2": 0,
	} {
		if got, err := ParseArea(text); err != nil || got != want {
			t.Errorf("%q: got %g, %v, want %g", text, got, err, want)
		}
	}
	for text, want := range map[string]string{
		"600": "a number without a unit", "-5 m2": "is negative", "5 ft": `the unknown unit "ft"`, "m2": "not a number",
		"1,200 sq ft": `the unknown unit`, "1e3 m2": `the unknown unit`, "1.2.3 m2": "not a number", "2000000000 m2": "too large", "": "not a number",
	} {
		if _, err := ParseArea(text); err == nil || !strings.Contains(err.Error(), want) || !strings.Contains(err.Error(), `"600 sq ft"`) {
			t.Errorf("%q: got %v, want %q and an example", text, err, want)
		}
	}
}

func TestParseVolume(t *testing.T) {
	tests := []struct {
		text   string
		want   Volume
		source string
	}{
		{"1 cu ft", 28317, "28316.846592 cm3, NIST SP 811"},
		{"1700 cu ft", 48138639, "derived"},
		{"1 gal", 3785, "231 cubic inches, 3785.411784 cm3, NIST SP 811"},
		{"20 gal", 75708, "derived"},
		{"20 l", 20000, "derived"},
		{"48 m3", 48e6, "derived"},
		{"2.5 m3", 25e5, "derived"},
		{"48 cu m", 48e6, "derived"},
		{"10 ft3", 283168, "derived"},
	}
	for _, tt := range tests {
		if got, err := ParseVolume(tt.text); err != nil || got != tt.want {
			t.Errorf("%q: got %d, %v, want %d (%s)", tt.text, got, err, tt.want, tt.source)
		}
	}
	for text, want := range map[string]string{
		"1700": "a number without a unit", "-1 l": "is negative", "5 ft": `the unknown unit "ft"`, "1 l 2 l": "more than one number",
	} {
		if _, err := ParseVolume(text); err == nil || !strings.Contains(err.Error(), want) || !strings.Contains(err.Error(), `"1700 cu ft"`) {
			t.Errorf("%q: got %v, want %q and an example", text, err, want)
		}
	}
}

func TestSpaceForPeople(t *testing.T) {
	area := Area(600 * squareFoot)
	if area.Text(Imperial) != "600 sq ft" || area.Text(Metric) != "55.74 m2" || area.In(Metric) != float64(area) {
		t.Errorf("got %s, %s", area.Text(Imperial), area.Text(Metric))
	}
	volume := Volume(48138639)
	if volume.Text(Imperial) != "1700 cu ft" || volume.Text(Metric) != "48.14 m3" || volume.In(Metric) != 48.138639 {
		t.Errorf("got %s, %s", volume.Text(Imperial), volume.Text(Metric))
	}
}

func TestVolumeOf(t *testing.T) {
	tests := []struct {
		a, b, c Length
		want    Volume
	}{
		{Foot, Foot, Foot, 28317},
		{10 * Foot, Foot, 8 * Inch, 188779}, // 6.667 cu ft
		{Metre, Metre, Metre, 1e6},
		{Metre, Metre, 0, 0},
		{-Metre, Metre, Metre, 0},
		{math.MaxInt64, math.MaxInt64, Metre, math.MaxInt64},
		{math.MaxInt64, math.MaxInt64, 0, 0},
		{1000 * Kilometre, 1000 * Kilometre, 1000 * Kilometre, math.MaxInt64},
	}
	for _, tt := range tests {
		if got := VolumeOf(tt.a, tt.b, tt.c); got != tt.want {
			t.Errorf("%d x %d x %d: got %d, want %d", tt.a, tt.b, tt.c, got, tt.want)
		}
	}
}

func TestSpaceProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := Area(rapid.Float64Range(0, maxArea).Draw(t, "a"))
		if rapid.Bool().Draw(t, "hundredths") {
			a = Area(float64(rapid.IntRange(0, 1e7).Draw(t, "n")) / 100 * squareFoot)
		}
		text, err := a.MarshalText()
		if err != nil {
			t.Fatal(err)
		}
		if back, err := ParseArea(string(text)); err != nil || back != a {
			t.Fatalf("%g is %q and reads back as %g, %v", a, text, back, err)
		}
	})
	rapid.Check(t, func(t *rapid.T) {
		v := Volume(rapid.Int64Range(0, math.MaxInt64).Draw(t, "v"))
		text, err := v.MarshalText()
		if err != nil {
			t.Fatal(err)
		}
		if back, err := ParseVolume(string(text)); err != nil || back != v {
			t.Fatalf("%d is %q and reads back as %d, %v", v, text, back, err)
		}
	})
	for _, a := range []Area{-1, Area(math.NaN()), Area(math.Inf(1)), 2e9} {
		if text, err := a.MarshalText(); err == nil {
			t.Errorf("%g was written as %q", a, text)
		}
	}
	if _, err := Volume(-1).MarshalText(); err == nil {
		t.Error("a negative volume was written")
	}
}

func TestSize(t *testing.T) {
	want := Size{10 * Foot, 12 * Inch, 8 * Inch}
	for _, text := range []string{"10 ft x 12 in x 8 in", "10'x12\"x8\"", "10 ft × 1 ft X 8 in"} {
		if got, err := ParseSize(text); err != nil || got != want {
			t.Errorf("%q: got %v, %v, want %v", text, got, err, want)
		}
	}
	if want.Longest() != 10*Foot || (Size{1, 2, 3}).Longest() != 3 || want.Volume() != 188779 {
		t.Errorf("longest %d, volume %d", want.Longest(), want.Volume())
	}
	if got := want.In(Imperial); got != "10 ft x 1 ft x 8 in" {
		t.Errorf("got %q", got)
	}
	for text, want := range map[string]string{
		"10 ft": "three lengths", "10 ft x 2 ft": "three lengths", "1 ft x 1 ft x 1 ft x 1 ft": "three lengths",
		"1 ft x x 1 ft": "is empty", "1 ft x 2 x 1 ft": "without a unit", "1 ft x 0 ft x 1 ft": "a side of zero", "": "three lengths",
	} {
		if _, err := ParseSize(text); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: got %v, want %q", text, err, want)
		}
	}
	if _, err := (Size{1, 0, 1}).MarshalText(); err == nil {
		t.Error("a size with a side of zero was written")
	}
	side := rapid.Custom(func(t *rapid.T) Length { return Length(rapid.Int64Range(1, 1e8).Draw(t, "side")) })
	rapid.Check(t, func(t *rapid.T) {
		z := Size{side.Draw(t, "l"), side.Draw(t, "w"), side.Draw(t, "h")}
		text, err := z.MarshalText()
		if err != nil {
			t.Fatal(err)
		}
		if back, err := ParseSize(string(text)); err != nil || back != z {
			t.Fatalf("%v is %q and reads back as %v, %v", z, text, back, err)
		}
	})
}
