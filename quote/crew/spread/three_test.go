package spread

import (
	"math"
	"testing"
)

// Mean and variance of the three-point estimate, worked by hand from the
// formulas of Malcolm, Roseboom, Clark and Fazar 1959: (a+4m+b)/6, ((b-a)/6)^2.
func TestMomentsOfThePublishedEstimate(t *testing.T) {
	for _, x := range []struct {
		three          Three
		mean, variance float64
	}{
		{Three{2, 5, 14}, 6, 4},
		{Three{4, 6, 8}, 6, 4.0 / 9},
		{Three{10, 10, 10}, 10, 0},
		{Three{80, 100, 160}, 640.0 / 6, 6400.0 / 36},
		{Three{9, 5, 3}, 9, 0},                  // not rising: what stands first holds
		{Three{-6, 5, 12}, 32.0 / 6, 4},         // nothing takes less than no time
		{Three{5, 30, 12}, 65.0 / 6, 49.0 / 36}, // likely beyond the range: its end
	} {
		if m, v := x.three.Mean(), x.three.Variance(); math.Abs(m-x.mean) > 1e-12 || math.Abs(v-x.variance) > 1e-12 {
			t.Errorf("%v: mean %v, variance %v; %v and %v were expected", x.three, m, v, x.mean, x.variance)
		}
	}
}

// The beta distribution has the moments of the estimate: a/(a+b), and
// ab/((a+b)^2 (a+b+1)); its exponents stay from 2/3 to 4.68. Its table has them too. Its
// mode is less than 6 hundredths of the range from the likely minutes.
func TestShapeHasTheMoments(t *testing.T) {
	for n := range 101 {
		three := Three{0, float64(n), 100}
		a, b := three.shape()
		if a < 2.0/3-1e-9 || b < 2.0/3-1e-9 || a > 4.68 || b > 4.68 {
			t.Errorf("%v: exponents %v and %v; 2/3 to 4.68 was expected", three, a, b)
		}
		if mode := min(max(0, (a-1)/(a+b-2)), 1); math.Abs(100*mode-three.Likely) > 6 {
			t.Errorf("%v: the mode is %v", three, 100*mode)
		}
		mean, variance := a/(a+b), a*b/((a+b)*(a+b)*(a+b+1))
		if math.Abs(100*mean-three.Mean()) > 1e-9 || math.Abs(10000*variance-three.Variance()) > 1e-9 {
			t.Errorf("%v: mean %v, variance %v; %v and %v were expected", three, 100*mean, 10000*variance, three.Mean(), three.Variance())
		}
		mean, variance = newTable(a, b).moments()
		if math.Abs(100*mean-three.Mean()) > 0.02 || math.Abs(variance*36-1) > 0.002 {
			t.Errorf("%v: the table has mean %v and variance %v of 1/36; %v and 1 were expected", three, 100*mean, variance*36, three.Mean())
		}
	}
}

// moments of a table, of which each cell is uniform.
func (t *table) moments() (mean, variance float64) {
	square := 0.0
	for i := range cells {
		p := float64(t.reached[i+1]-t.reached[i]) / (1 << 32)
		low, high := float64(i)/cells, float64(i+1)/cells
		mean += p * (low + high) / 2
		square += p * (low*low + low*high + high*high) / 3
	}
	return mean, square - mean*mean
}

// A uniform distribution is the beta one with exponents of 1: its draws are the
// random numbers themselves.
func TestUniformTable(t *testing.T) {
	table := newTable(1, 1)
	for _, share := range []float64{0, 0.001, 0.25, 0.5, 0.737, 0.999} {
		if got := table.at(uint64(share * (1 << 32))); math.Abs(got-share) > 1e-9 {
			t.Errorf("the draw at %v is %v", share, got)
		}
	}
}

// Of an exponent of 2 and one of 1 the chance below x is x squared.
func TestTableAgainstClosedForm(t *testing.T) {
	table := newTable(2, 1)
	for _, share := range []float64{0.01, 0.09, 0.25, 0.5, 0.81, 0.99} {
		if got := table.at(uint64(share * (1 << 32))); math.Abs(got-math.Sqrt(share)) > 2e-4 {
			t.Errorf("the draw at %v is %v; %v was expected", share, got, math.Sqrt(share))
		}
	}
}
