package spread

import (
	"math"
	"slices"
)

// Result is how the finishes of the runs are spread, in working minutes.
type Result struct {
	Runs   int
	Mean   float64
	Dev    float64 // standard deviation
	Half   int     // half of the runs are finished by then
	Ninety int     // nine of ten

	ends []int // of each run, in ticks, ascending
}

// newResult takes the finishes of runs in ticks.
func newResult(ends []int) Result {
	slices.Sort(ends)
	r := Result{Runs: len(ends), ends: ends}
	sum := 0.0
	for _, e := range ends {
		sum += float64(e)
	}
	mean := sum / float64(len(ends))
	squares := 0.0
	for _, e := range ends {
		squares += (float64(e) - mean) * (float64(e) - mean)
	}
	r.Mean = mean / tick
	if len(ends) > 1 {
		r.Dev = math.Sqrt(squares/float64(len(ends)-1)) / tick
	}
	r.Half, r.Ninety = r.By(50), r.By(90)
	return r
}

// By is the first whole minute by which so many percent of the runs are
// finished; 0 where nothing was run.
func (r *Result) By(percent int) int {
	if r.Runs == 0 {
		return 0
	}
	most := (len(r.ends)*percent + 99) / 100
	return (r.ends[min(max(most, 1), len(r.ends))-1] + tick - 1) / tick
}

// InTime is the share of the runs, from 0 to 1, that are finished by a minute.
func (r *Result) InTime(minute int) float64 {
	if r.Runs == 0 {
		return 0
	}
	n, _ := slices.BinarySearch(r.ends, minute*tick+1)
	return float64(n) / float64(r.Runs)
}
