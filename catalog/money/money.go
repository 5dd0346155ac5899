// Package money holds exact decimal numbers: rates, factors, minutes, hours
// and amounts of money. A [Number] never drifts as a float does; each rounding
// is a function with a name, and its comment says which way halves go. A
// [Currency] knows its smallest unit and how an amount is written. No other
// package imports the decimal library.
package money

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"
)

// Number is an exact decimal number.
type Number = decimal.Decimal

// Whole numbers that formulas use.
var (
	Zero    = decimal.NewFromInt(0)
	One     = decimal.NewFromInt(1)
	Sixty   = decimal.NewFromInt(60) // minutes of an hour
	Hundred = decimal.NewFromInt(100)
)

// maxDigits bounds what Parse accepts; 30 digits hold any amount that is not a
// slip of the keyboard.
const maxDigits = 30

// slack is taken off before rounding up to whole pieces, so that a quotient
// that is a whole number but for its last printed digits stays that number.
var slack = decimal.New(1, -6)

// Parse reads a plain decimal number such as "12", "-0.5" or "1234.50": an
// optional "-", digits, and optionally a point and digits. Exponents,
// thousands commas, other signs and more than 30 digits are errors.
func Parse(s string) (Number, error) {
	if reason := notPlain(s); reason != "" {
		return Zero, fmt.Errorf("%q %s; expected a plain decimal number such as 1234.50", s, reason)
	}
	n, err := decimal.NewFromString(s)
	if err != nil {
		return Zero, fmt.Errorf("%q is not a number; expected a plain decimal number such as 1234.50", s)
	}
	return n, nil
}

// notPlain says why s is not a plain decimal number, or "".
func notPlain(s string) string {
	whole, fraction, pointed := strings.Cut(strings.TrimPrefix(s, "-"), ".")
	switch {
	case s == "":
		return "is empty"
	case digits(whole) && (!pointed || digits(fraction)):
		if len(whole)+len(fraction) > maxDigits {
			return fmt.Sprintf("has more than %d digits", maxDigits)
		}
		return ""
	case strings.Contains(s, ","):
		return "has a comma"
	case strings.Contains(s, "_"):
		return "has an underscore"
	case strings.HasSuffix(s, "%"):
		return "has a percent sign"
	case !strings.HasPrefix(s, "0x") && strings.ContainsAny(s, "eE") && strings.Trim(s, "0123456789.+-eE") == "":
		return "has an exponent"
	}
	return "is not a number"
}

// digits tells whether s is one or more of 0 to 9.
func digits(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }

// Int is n as a Number.
func Int(n int) Number { return decimal.NewFromInt(int64(n)) }

// Float is the shortest decimal that reads back as f, so 0.1 is exactly 0.1.
// Infinities and not-a-number give zero.
func Float(f float64) Number {
	if math.IsNaN(f) || math.IsInf(f, 0) {
		return Zero
	}
	n, err := decimal.NewFromString(strconv.FormatFloat(f, 'f', -1, 64))
	if err != nil {
		return Zero
	}
	return n
}

// Round keeps the given number of decimal places; halves go away from zero
// (8.125 to 8.13, -2.5 to -3), as ROUND does in a sheet.
func Round(n Number, places int) Number { return n.Round(int32(places)) }

// RoundUp is the smallest whole number that is at least n less 0.000001, and
// never below 0: MAX(0,ROUNDUP(n-0.000001,0)) in a sheet. Numbers above the
// largest int give that int.
func RoundUp(n Number) int {
	up := n.Sub(slack).Ceil()
	switch {
	case up.Sign() <= 0:
		return 0
	case up.GreaterThan(Int(math.MaxInt)):
		return math.MaxInt
	}
	return int(up.IntPart())
}

// Percent is n hundredths, exactly: 6.25 gives 0.0625.
func Percent(n Number) Number { return n.Shift(-2) }

// Sum adds all ns; of none it is zero.
func Sum(ns ...Number) Number {
	total := Zero
	for _, n := range ns {
		total = total.Add(n)
	}
	return total
}

// DivRound is a divided by b to the given number of decimal places, halves
// away from zero, in one rounding. It is zero when b is zero.
func DivRound(a, b Number, places int) Number {
	if b.IsZero() {
		return Zero
	}
	return a.DivRound(b, int32(places))
}
