package learn

import (
	"math"

	"tentwright/catalog"
	"tentwright/catalog/money"
)

// Fit is minutes and fixed minutes that follow the sizes of the jobs. It is a
// hint: both together are for a person to judge.
type Fit struct {
	Minutes, Fixed money.Number // to two digits
	SmallSlow      bool         // small tasks take longer for each than large ones
}

// fitJobs is the fewest jobs that a trend with size is looked for in: from about
// ten on the normal approximation of its test is good enough (common practice, no
// source).
const fitJobs = 10

// fitBound is how many standard deviations a trend must be from none: one rule
// of a hundred is hinted at without cause.
const fitBound = 2.576

// fit looks for a trend of the minutes for each with the size of the task, by
// Kendall's rank correlation; with one, it gives the line of Theil (1950,
// Proceedings KNAW 53) and Sen (1968, JASA 63, 1379-1389). Nil without a trend,
// or where the line makes no sense as minutes.
func fit(rule *catalog.LabourRule, works []work) *Fit {
	var size, each, minutes []float64
	for i := range works {
		w := &works[i]
		many := w.tasks.InexactFloat64()
		size = append(size, w.amount.InexactFloat64()/many)
		each = append(each, w.each(rule.Fixed).InexactFloat64())
		minutes = append(minutes, w.minutes.InexactFloat64()/many)
	}
	trend := kendall(size, each)
	if len(works) < fitJobs || math.Abs(trend) < fitBound {
		return nil
	}
	slope, start := theilSen(size, minutes)
	if slope <= 0 || start < 0 {
		return nil
	}
	return &Fit{Minutes: Digits(money.Float(slope), 2), Fixed: Digits(money.Float(start), 2), SmallSlow: trend < 0}
}

// fixedOnly is the fixed minutes of a rule that has no others.
func fixedOnly(works []work) money.Number {
	once := make([]money.Number, len(works))
	for i := range works {
		once[i] = money.DivRound(works[i].minutes, works[i].tasks, places)
	}
	return Digits(median(once), 2)
}

// kendall is how many standard deviations the rank correlation of two variables
// is from none: S, one nearer to 0, over the root of n(n-1)(2n+5)/18. Ties
// count nothing, which makes it smaller.
func kendall(x, y []float64) float64 {
	s := 0.0
	for i := range x {
		for k := range i {
			s += sign((x[i] - x[k]) * (y[i] - y[k]))
		}
	}
	n := float64(len(x))
	if n < 2 {
		return 0
	}
	return sign(s) * max(0, math.Abs(s)-1) / math.Sqrt(n*(n-1)*(2*n+5)/18)
}

func sign(v float64) float64 {
	switch {
	case v > 0:
		return 1
	case v < 0:
		return -1
	}
	return 0
}

// theilSen is the median of the slopes between all pairs of points that differ
// in x, and the median of where lines of that slope through the points start.
func theilSen(x, y []float64) (slope, start float64) {
	var slopes, starts []money.Number
	for i := range x {
		for k := range i {
			if x[i] != x[k] {
				slopes = append(slopes, money.Float((y[i]-y[k])/(x[i]-x[k])))
			}
		}
	}
	if len(slopes) == 0 {
		return 0, 0
	}
	slope = median(slopes).InexactFloat64()
	for i := range x {
		starts = append(starts, money.Float(y[i]-slope*x[i]))
	}
	return slope, median(starts).InexactFloat64()
}
