package unit

import (
	"fmt"
	"math"
	"math/bits"
	"strconv"
	"strings"
)

// Area is an area in square metres.
type Area float64

// squareFoot is a square foot in square metres, exactly.
const squareFoot = 0.09290304

// maxArea is what Parse accepts at most: 1,000 square kilometres.
const maxArea = 1e9

var areaForm = form{"an area", `"600 sq ft" or "50 m2"`}

// ParseArea reads "600 sq ft", "600 ft2", "50 m2" or "50 sq m". A bare or a
// negative number and one above 1e9 square metres are errors.
func ParseArea(s string) (Area, error) {
	number, word := span(strings.TrimSpace(s), "0123456789.")
	if strings.HasPrefix(word, "-") {
		return 0, areaForm.bad(s, "is negative")
	}
	n, err := strconv.ParseFloat(number, 64)
	if err != nil {
		return 0, areaForm.bad(s, "is not a number and a unit")
	}
	one := 1.0
	switch strings.ToLower(strings.Join(strings.Fields(word), " ")) {
	case "sq ft", "ft2":
		one = squareFoot
	case "sq m", "m2":
	case "":
		return 0, areaForm.bad(s, "has a number without a unit")
	default:
		return 0, areaForm.bad(s, fmt.Sprintf("has the unknown unit %q", clipped(strings.TrimSpace(word))))
	}
	if n*one > maxArea {
		return 0, areaForm.bad(s, "is too large")
	}
	return Area(n * one), nil
}

// ParseText sets a from a text as [ParseArea] reads it.
func (a *Area) ParseText(s string) (err error) {
	*a, err = ParseArea(s)
	return err
}

// MarshalText is a text that [ParseArea] reads back exactly: square feet when
// two places suffice, else square metres. What it would refuse has none.
func (a Area) MarshalText() ([]byte, error) {
	if !(a >= 0 && a <= maxArea) {
		return nil, fmt.Errorf("an area of %g m2 cannot be written", float64(a))
	}
	if text := a.Text(Imperial); reads(ParseArea, text, a) {
		return []byte(text), nil
	}
	return []byte(strconv.FormatFloat(math.Abs(float64(a)), 'f', -1, 64) + " m2"), nil
}

// reads tells whether parse turns text into exactly want.
func reads[T comparable](parse func(string) (T, error), text string, want T) bool {
	got, err := parse(text)
	return err == nil && got == want
}

// SquareFeet is the area in square feet.
func (a Area) SquareFeet() float64 { return float64(a) / squareFoot }

// In is the area in square feet or square metres.
func (a Area) In(sys System) float64 { return pick(sys, a.SquareFeet(), float64(a)) }

// Text is the area for people, to the nearest hundredth: "600 sq ft".
func (a Area) Text(sys System) string {
	return decimalText(whole(100*a.In(sys)), 2, 2) + " " + sys.AreaUnit()
}

// Volume is a volume in whole cubic centimetres.
type Volume int64

// cubicCentimetresPerFoot is a cubic foot, exactly.
const cubicCentimetresPerFoot = 28316.846592

var volumeForm = form{"a volume", `"1700 cu ft", "48 m3", "20 gal" or "20 l"`}

// volumeUnits is what a person may write behind a number. A gallon is the US
// liquid gallon of 231 cubic inches (NIST SP 811).
var volumeUnits = map[string]scale{
	"cu ft": {28316846592, 1e6}, "ft3": {28316846592, 1e6},
	"gal": {3785411784, 1e6}, "gallon": {3785411784, 1e6}, "gallons": {3785411784, 1e6},
	"m3": {1e6, 1}, "cu m": {1e6, 1}, "l": {1000, 1},
}

// ParseVolume reads "1700 cu ft", "48 m3", "20 gal" (US liquid) or "20 l",
// rounded half up to a cubic centimetre. A bare or negative number is an
// error.
func ParseVolume(s string) (Volume, error) {
	n, err := volumeForm.single(s, volumeUnits)
	return Volume(n), err
}

// ParseText sets v from a text as [ParseVolume] reads it.
func (v *Volume) ParseText(s string) (err error) {
	*v, err = ParseVolume(s)
	return err
}

// MarshalText is a text that [ParseVolume] reads back exactly: whole cubic
// feet where that suffices, else cubic metres. A negative volume has none.
func (v Volume) MarshalText() ([]byte, error) {
	if v < 0 {
		return nil, fmt.Errorf("a negative volume, %d cm3, cannot be written", int64(v))
	}
	feet := strconv.FormatInt(whole(v.CubicFeet()), 10) + " cu ft"
	if reads(ParseVolume, feet, v) {
		return []byte(feet), nil
	}
	return []byte(decimalText(int64(v), 6, 6) + " m3"), nil
}

// CubicFeet is the volume in cubic feet.
func (v Volume) CubicFeet() float64 { return float64(v) / cubicCentimetresPerFoot }

// CubicMetres is the volume in cubic metres.
func (v Volume) CubicMetres() float64 { return float64(v) / 1e6 }

// In is the volume in cubic feet or cubic metres.
func (v Volume) In(sys System) float64 { return pick(sys, v.CubicFeet(), v.CubicMetres()) }

// Text is the volume for people, to the nearest hundredth: "48.14 m3".
func (v Volume) Text(sys System) string {
	return decimalText(whole(100*v.In(sys)), 2, 2) + " " + sys.VolumeUnit()
}

// VolumeOf is the volume of a box to the nearest cubic centimetre, halves up.
// A side below zero counts as zero; what does not fit gives the largest.
func VolumeOf(a, b, c Length) Volume {
	if a <= 0 || b <= 0 || c <= 0 {
		return 0
	}
	hi, base := bits.Mul64(uint64(a), uint64(b))
	if hi > 0 {
		return math.MaxInt64
	}
	v, ok := mulDiv(base, uint64(c), uint64(Centimetre*Centimetre*Centimetre))
	if !ok {
		return math.MaxInt64
	}
	return Volume(v)
}
