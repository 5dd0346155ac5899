package learn

import (
	"math"
	"slices"

	"tentwright/catalog/money"
)

// median is the middle of the values, or half way between the two in the
// middle.
func median(values []money.Number) money.Number {
	v := ordered(values)
	n := len(v)
	if n%2 == 1 {
		return v[n/2]
	}
	return money.DivRound(v[n/2-1].Add(v[n/2]), money.Int(2), places)
}

// ordered is the values from the lowest to the highest.
func ordered(values []money.Number) []money.Number {
	return slices.SortedFunc(slices.Values(values), money.Number.Cmp)
}

// wanted is the confidence that an interval is made for, where the jobs are
// enough for it; six are.
const wanted = 0.95

// interval is between which of the values the median of all jobs like these
// lies, and with which confidence in percent. It rests on the sign test: each
// job lies above the true median as likely as below it, so that the number of
// those below has a binomial distribution, however times spread and however
// differently from job to job (Thompson 1936, Annals of Mathematical Statistics
// 7, 122-128). With too few jobs it reaches from the lowest to the highest, and
// the confidence is what that gives.
func interval(values []money.Number) (low, high, confidence money.Number) {
	v := ordered(values)
	k, level := rank(len(v))
	return v[k-1], v[len(v)-k], money.Round(money.Float(100*level), 1)
}

// rank is which value from either end bounds the interval, counted from 1, and
// the interval's confidence.
func rank(n int) (k int, level float64) {
	tail := below(n, 0)
	k, level = 1, max(0, 1-2*tail)
	for i := 1; i <= n/2; i++ {
		if tail += below(n, i); 1-2*tail < wanted {
			break
		}
		k, level = i+1, 1-2*tail
	}
	return k, level
}

// below is the chance that so many of n jobs lie below the median.
func below(n, many int) float64 {
	lg := func(i int) float64 { v, _ := math.Lgamma(float64(i + 1)); return v }
	return math.Exp(lg(n) - lg(many) - lg(n-many) - float64(n)*math.Ln2)
}

// within tells whether a value lies between two, both included.
func within(v, low, high money.Number) bool {
	return !v.LessThan(low) && !v.GreaterThan(high)
}

// rounded is a number as a person would write it: to two digits if that stays
// between low and high, else to three. More digits than the jobs tell would
// only look exact.
func rounded(n, low, high money.Number) money.Number {
	if short := Digits(n, 2); within(short, low, high) {
		return short
	}
	return Digits(n, 3)
}

// Digits rounds a number to so many significant digits, halves away from zero.
func Digits(n money.Number, many int) money.Number {
	before := n.NumDigits() + int(n.Exponent()) // digits before the point, below 0 for zeros behind it
	return money.Round(n, many-before)
}

// Sure is a word for how much weight a proposal bears.
type Sure string

// The words. Fewer than six jobs are thin, since even the interval from the
// lowest to the highest of five holds the true median in less than 95 of 100
// cases. Firm is what a manager may plan by: an interval within a tenth of the
// minutes either way, less than crews differ from day to day. Fair is within a
// quarter, as far as the last person of a crew of four tips a plan.
const (
	Firm Sure = "firm"
	Fair Sure = "fair"
	Thin Sure = "thin"
)

// sure finds the word for an interval about a median.
func sure(jobs int, low, high, middle money.Number) Sure {
	wide := max(high.Sub(middle).InexactFloat64(), middle.Sub(low).InexactFloat64())
	switch share := wide / middle.InexactFloat64(); {
	case jobs < 6 || !middle.IsPositive() || share > 0.25:
		return Thin
	case share > 0.1:
		return Fair
	}
	return Firm
}
