package unit

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Length is a length in whole micrometres; an inch and a millimetre are both
// whole.
type Length int64

// Lengths of the units.
const (
	Micrometre Length = 1
	Millimetre        = 1000 * Micrometre
	Centimetre        = 10 * Millimetre
	Metre             = 1000 * Millimetre
	Kilometre         = 1000 * Metre
	Inch              = 25400 * Micrometre
	Foot              = 12 * Inch
	Yard              = 3 * Foot
	Mile              = 5280 * Foot
)

var lengthForm = form{"a length", `"14 ft 4 in", "9 ft 4 1/2 in" or "4.37 m"`}

// lengthUnits is what a person may write behind a number.
var lengthUnits = map[string]scale{
	"ft": {uint64(Foot), 1}, "foot": {uint64(Foot), 1}, "feet": {uint64(Foot), 1}, "'": {uint64(Foot), 1}, "′": {uint64(Foot), 1},
	"in": {uint64(Inch), 1}, "inch": {uint64(Inch), 1}, "inches": {uint64(Inch), 1}, `"`: {uint64(Inch), 1}, "″": {uint64(Inch), 1},
	"yd": {uint64(Yard), 1}, "yard": {uint64(Yard), 1}, "yards": {uint64(Yard), 1},
	"mi": {uint64(Mile), 1}, "mile": {uint64(Mile), 1}, "miles": {uint64(Mile), 1},
	"mm": {uint64(Millimetre), 1}, "cm": {uint64(Centimetre), 1}, "m": {uint64(Metre), 1}, "km": {uint64(Kilometre), 1},
}

// ParseLength reads "14 ft 4 in", "9 ft 4 1/2 in", "14'4\"", "2.5 in", "6 m",
// "60 cm", "25 mm" or "23 mi". What is finer than a micrometre is rounded half
// up. A bare number, a negative one and inches from 12 up behind feet are
// errors.
func ParseLength(s string) (Length, error) {
	all, err := lengthForm.read(s)
	if err != nil {
		return 0, err
	}
	for _, q := range all {
		if _, ok := lengthUnits[q.unit]; !ok {
			return 0, lengthForm.bad(s, fmt.Sprintf("has the unknown unit %q", clipped(q.unit)))
		}
	}
	if why := badFeetAndInches(all); why != "" {
		return 0, lengthForm.bad(s, why)
	}
	var sum Length
	for _, q := range all {
		one := lengthUnits[q.unit]
		part, ok := q.times(one.base, one.per)
		if !ok || Length(part) > math.MaxInt64-sum {
			return 0, lengthForm.bad(s, tooLarge)
		}
		sum += Length(part)
	}
	return sum, nil
}

// badFeetAndInches says what is wrong with a length of several parts; only
// whole feet with less than 12 inches behind them are a length.
func badFeetAndInches(all []quantity) string {
	if len(all) < 2 {
		return ""
	}
	feet, inches := all[0], all[1]
	switch {
	case len(all) > 2 || lengthUnits[feet.unit].base != uint64(Foot) || lengthUnits[inches.unit].base != uint64(Inch):
		return "is not feet and inches"
	case feet.decimal || feet.fraction:
		return "has a part of a foot and inches"
	case inches.mantissa >= 12*inches.denominator:
		return "has 12 inches or more behind its feet"
	}
	return ""
}

// ParseText sets l from a text as [ParseLength] reads it.
func (l *Length) ParseText(s string) (err error) {
	*l, err = ParseLength(s)
	return err
}

// MarshalText is a text that [ParseLength] reads back exactly: feet and inches
// when eighths of an inch suffice, else metres. A negative length has none.
func (l Length) MarshalText() ([]byte, error) {
	const eighth = Inch / 8
	switch {
	case l < 0:
		return nil, fmt.Errorf("a negative length, %s, cannot be written", l.metric(6))
	case l%eighth == 0:
		return []byte(l.imperial(8)), nil
	}
	return []byte(l.metric(6)), nil
}

// Metres is the length in metres.
func (l Length) Metres() float64 { return float64(l) / float64(Metre) }

// Feet is the length in feet.
func (l Length) Feet() float64 { return float64(l) / float64(Foot) }

// Miles is the length in statute miles.
func (l Length) Miles() float64 { return float64(l) / float64(Mile) }

// Kilometres is the length in kilometres.
func (l Length) Kilometres() float64 { return float64(l) / float64(Kilometre) }

// FromMetres is m metres to the nearest micrometre, halves away from zero.
// Not-a-number gives zero; what does not fit gives the largest or smallest.
func FromMetres(m float64) Length { return Length(whole(m * float64(Metre))) }

// whole is f to the nearest int64, halves away from zero, held in range.
func whole(f float64) int64 {
	switch f = math.Round(f); {
	case math.IsNaN(f):
		return 0
	case f >= math.MaxInt64:
		return math.MaxInt64
	case f <= math.MinInt64:
		return math.MinInt64
	}
	return int64(f)
}

// In is the length for people: "14 ft 4 1/2 in" to the nearest half inch, or
// "4.37 m" to the nearest millimetre, halves away from zero.
func (l Length) In(sys System) string {
	if sys == Imperial {
		return l.imperial(2)
	}
	return l.metric(3)
}

// imperial is feet and inches in steps of 1/parts inch; parts of zero are left
// out.
func (l Length) imperial(parts int64) string {
	sign, size := signed(int64(l))
	// Half up of the size is half away from zero.
	steps, _ := mulDiv(size, uint64(parts), uint64(Inch))
	feet, steps := steps/(12*parts), steps%(12*parts)
	inches, above := steps/parts, steps%parts
	below := parts
	for above > 0 && above%2 == 0 {
		above, below = above/2, below/2
	}
	var out []string
	if feet > 0 {
		out = append(out, fmt.Sprintf("%d ft", feet))
	}
	if inches > 0 {
		out = append(out, strconv.FormatInt(inches, 10))
	}
	if above > 0 {
		out = append(out, fmt.Sprintf("%d/%d", above, below))
	}
	switch {
	case len(out) == 0:
		return "0 ft"
	case steps > 0:
		out = append(out, "in")
	}
	return sign + strings.Join(out, " ")
}

// metric is metres to the given number of places, trailing zeros dropped.
func (l Length) metric(places int) string {
	return decimalText(int64(l), 6, places) + " m"
}

// signed splits n into "-" or "" and its size.
func signed(n int64) (sign string, size uint64) {
	if n < 0 {
		return "-", -uint64(n)
	}
	return "", uint64(n)
}

// decimalText writes n/10^shift to at most places decimal places, halves away
// from zero, trailing zeros dropped. No shift is above 18.
func decimalText(n int64, shift, places int) string {
	sign, size := signed(n)
	for ; shift > places; shift-- {
		// Only the last digit cut may round, or 0.45 would climb to 1.
		if digit := size % 10; shift == places+1 && digit >= 5 {
			size += 10
		}
		size /= 10
	}
	text := fmt.Sprintf("%0*d", shift+1, size)
	if shift > 0 {
		point := len(text) - shift
		text = strings.TrimRight(strings.TrimRight(text[:point]+"."+text[point:], "0"), ".")
	}
	if text == "0" {
		return text
	}
	return sign + text
}
