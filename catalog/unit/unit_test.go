package unit

import (
	"math"
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

func TestSystemUnits(t *testing.T) {
	for sys, want := range map[System][5]string{Imperial: {"ft", "lb", "mi", "sq ft", "cu ft"}, Metric: {"m", "kg", "km", "m2", "m3"}} {
		if got := [5]string{sys.LengthUnit(), sys.MassUnit(), sys.DistanceUnit(), sys.AreaUnit(), sys.VolumeUnit()}; got != want {
			t.Errorf("%s: got %v, want %v", sys, got, want)
		}
	}
}

// ParseText sets the value, and zero after an error.
func TestParseText(t *testing.T) {
	var (
		l Length
		m Mass
		a Area
		v Volume
		z Size
		d Date
		c Clock
		p Span
	)
	for text, into := range map[string]interface{ ParseText(string) error }{
		"1 ft": &l, "1 lb": &m, "1 m2": &a, "1 l": &v, "1 m x 1 m x 1 m": &z, "2026-07-04": &d, "07:30": &c, "1 h": &p,
	} {
		if err := into.ParseText(text); err != nil {
			t.Errorf("%q: %v", text, err)
		}
	}
	if l != Foot || m != Pound || a != 1 || v != 1000 || z != (Size{Metre, Metre, Metre}) || d != (Date{2026, 7, 4}) || c != 450 || p != Hour {
		t.Errorf("got %v, %v, %v, %v, %v, %v, %v, %v", l, m, a, v, z, d, c, p)
	}
	if err := l.ParseText("1"); err == nil || l != 0 {
		t.Errorf("after an error: got %d, %v", l, err)
	}
}

// The 128-bit arithmetic agrees with arithmetic that has no limit.
func TestMulDiv(t *testing.T) {
	any64 := rapid.Uint64Range(1, math.MaxUint64)
	rapid.Check(t, func(t *rapid.T) {
		a, b, c := any64.Draw(t, "a"), any64.Draw(t, "b"), any64.Draw(t, "c")
		big64 := func(n uint64) *big.Int { return new(big.Int).SetUint64(n) }
		// Half up: (2ab + c) / 2c.
		want := new(big.Int).Mul(big64(a), big64(b))
		want.Mul(want, big.NewInt(2)).Add(want, big64(c)).Div(want, new(big.Int).Mul(big64(c), big.NewInt(2)))
		got, ok := mulDiv(a, b, c)
		if ok != want.IsInt64() || ok && got != want.Int64() {
			t.Fatalf("got %d, %v, want %s", got, ok, want)
		}
	})
}

// No text makes a reader panic, and what one accepts it writes and reads again.
func FuzzParse(f *testing.F) {
	for _, text := range []string{"14 ft 4 1/2 in", "14'4\"", "12.64 lb", "600 sq ft", "20 gal", "1 m x 2 m x 3 m", "2026-07-04", "-1/0 m", "9 ft3", "07:30", "24:00", "2 h 30 min"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		again(t, ParseLength, text)
		again(t, ParseMass, text)
		again(t, ParseArea, text)
		again(t, ParseVolume, text)
		again(t, ParseSize, text)
		again(t, ParseDate, text)
		again(t, ParseClock, text)
		again(t, ParseSpan, text)
	})
}

func again[T interface {
	comparable
	MarshalText() ([]byte, error)
}](t *testing.T, parse func(string) (T, error), text string) {
	first, err := parse(text)
	if err != nil {
		return
	}
	written, err := first.MarshalText()
	if err != nil {
		t.Fatalf("%q reads as %v, which cannot be written: %v", text, first, err)
	}
	if second, err := parse(string(written)); err != nil || second != first {
		t.Fatalf("%q is written as %q and reads back as %v, %v", text, written, second, err)
	}
}
