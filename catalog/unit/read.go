package unit

import (
	"errors"
	"fmt"
	"math"
	"math/bits"
	"strings"
)

// quantity is a number as written: mantissa/denominator, with the unit's word
// behind it.
type quantity struct {
	mantissa, denominator uint64
	decimal               bool // has a point
	fraction              bool // has a numerator over a denominator
	unit                  string
}

// form is a kind of quantity for its errors: its name and what was expected.
type form struct{ name, example string }

// maxQuantity bounds a number's digits, so that they and a power of ten with
// as many zeros fit 64 bits.
const maxQuantity = 19

// bad is the error for a text that is not such a quantity.
func (f form) bad(text, why string) error {
	return fmt.Errorf("%q %s; expected %s such as %s", clipped(text), why, f.name, f.example)
}

// clipped keeps an error to one line when a file holds something odd.
func clipped(text string) string {
	const most = 60
	if r := []rune(text); len(r) > most {
		return string(r[:most]) + "..."
	}
	return text
}

// read splits a text into quantities, each a number and a unit.
func (f form) read(text string) ([]quantity, error) {
	var all []quantity
	for rest := strings.TrimSpace(text); rest != ""; {
		q, after, err := readOne(rest)
		if err != nil {
			return nil, f.bad(text, err.Error())
		}
		all, rest = append(all, q), strings.TrimSpace(after)
	}
	if len(all) == 0 {
		return nil, f.bad(text, "is empty")
	}
	return all, nil
}

// readOne takes a number, a fraction or both, and a unit off the front.
func readOne(text string) (q quantity, rest string, err error) {
	if strings.HasPrefix(text, "-") {
		return q, "", errors.New("is negative")
	}
	number, rest := span(text, "0123456789.")
	if q, err = readNumber(number); err != nil {
		return q, "", err
	}
	if strings.HasPrefix(rest, "/") {
		return readFraction(0, number, rest)
	}
	// A second number before any unit can only be the numerator of "4 1/2".
	if numerator, after := span(strings.TrimLeft(rest, " "), "0123456789"); numerator != "" && strings.HasPrefix(after, "/") {
		if q.decimal {
			return q, "", errors.New("has a point and a fraction")
		}
		return readFraction(q.mantissa, numerator, after)
	}
	q.unit, rest, err = readUnit(rest)
	return q, rest, err
}

// readNumber reads digits with at most one point.
func readNumber(number string) (quantity, error) {
	whole, places, pointed := strings.Cut(number, ".")
	digits := whole + places
	switch {
	case number == "":
		return quantity{}, errors.New("has no number before its unit")
	case whole == "" || pointed && places == "" || strings.Contains(places, "."):
		return quantity{}, errors.New("is not a plain number")
	case len(digits) > maxQuantity:
		return quantity{}, fmt.Errorf("has more than %d digits", maxQuantity)
	}
	q := quantity{denominator: 1, decimal: pointed}
	for _, d := range digits {
		q.mantissa = 10*q.mantissa + uint64(d-'0')
	}
	for range places {
		q.denominator *= 10
	}
	return q, nil
}

// readFraction reads "/denominator unit" behind a numerator.
func readFraction(whole uint64, numerator, rest string) (quantity, string, error) {
	below, rest := span(rest[1:], "0123456789")
	n, err1 := readNumber(numerator)
	d, err2 := readNumber(below)
	if err1 != nil || err2 != nil || n.decimal || d.mantissa == 0 || n.mantissa >= d.mantissa || d.mantissa > 128 || whole > 1e12 {
		return quantity{}, "", errors.New("has a fraction that is not like 1/2")
	}
	q := quantity{mantissa: whole*d.mantissa + n.mantissa, denominator: d.mantissa, fraction: true}
	q.unit, rest, err1 = readUnit(rest)
	return q, rest, err1
}

// readUnit takes the word up to the next digit; signs that join numbers in
// other notations are refused by name.
func readUnit(text string) (unit, rest string, err error) {
	end := strings.IndexAny(text+"0", "0123456789")
	// A last digit that touches its letter belongs to the word: m2, ft3.
	if last := len(strings.TrimRight(text, " ")); end+1 == last && end > 0 && text[end-1] != ' ' {
		end = last
	}
	unit = strings.ToLower(strings.TrimSpace(text[:end]))
	switch {
	case unit == "":
		return "", "", errors.New("has a number without a unit")
	case strings.HasPrefix(unit, ","):
		return "", "", errors.New("has a comma in a number")
	case strings.Contains(unit, "-"):
		return "", "", errors.New("has a dash between number and unit")
	}
	return unit, text[end:], nil
}

// span cuts text behind its first characters that are all in set.
func span(text, set string) (in, rest string) {
	rest = strings.TrimLeft(text, set)
	return text[:len(text)-len(rest)], rest
}

// times is the quantity in base units, rounded half up; base over per is one
// of its unit. False when it does not fit.
func (q quantity) times(base, per uint64) (int64, bool) {
	if per > math.MaxUint64/q.denominator {
		return 0, false
	}
	return mulDiv(q.mantissa, base, per*q.denominator)
}

// mulDiv is a*b/c rounded half up with no loss in between; false when the
// result exceeds the largest int64.
func mulDiv(a, b, c uint64) (int64, bool) {
	hi, lo := bits.Mul64(a, b)
	if hi >= c {
		return 0, false
	}
	whole, left := bits.Div64(hi, lo, c)
	if left >= c-left {
		whole++
	}
	return int64(whole), whole <= math.MaxInt64
}

const tooLarge = "is too large or too fine"

// scale is one unit of a kind in base units: base over per.
type scale struct{ base, per uint64 }

// single reads the one quantity of a kind that has no compound form.
func (f form) single(text string, units map[string]scale) (int64, error) {
	all, err := f.read(text)
	if err != nil {
		return 0, err
	}
	if len(all) > 1 {
		return 0, f.bad(text, "has more than one number")
	}
	one, ok := units[strings.Join(strings.Fields(all[0].unit), " ")]
	if !ok {
		return 0, f.bad(text, fmt.Sprintf("has the unknown unit %q", clipped(all[0].unit)))
	}
	base, ok := all[0].times(one.base, one.per)
	if !ok {
		return 0, f.bad(text, tooLarge)
	}
	return base, nil
}
