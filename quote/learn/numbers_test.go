package learn

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"tentwright/catalog"
	"tentwright/catalog/money"
)

// numbers are values of a test.
func numbers(values ...float64) []money.Number {
	var all []money.Number
	for _, v := range values {
		all = append(all, money.Float(v))
	}
	return all
}

// The interval of the sign test bounds the median by the values that published
// tables name: Nair 1940, Table of confidence interval for the median in samples
// from any continuous population, Sankhya 4, 551-558, for 95 percent; and the
// critical values of Dixon and Mood 1946, The statistical sign test, JASA 41,
// 557-566, which are one less. Both from memory.
func TestRanksOfTables(t *testing.T) {
	from := map[int]int{6: 1, 9: 2, 12: 3, 15: 4, 17: 5, 20: 6, 23: 7, 25: 8, 28: 9, 30: 10} // number of values, from which on the rank holds
	want := 1
	for n := 1; n <= 31; n++ {
		if k, ok := from[n]; ok {
			want = k
		}
		if k, _ := rank(n); k != want {
			t.Errorf("of %d values the rank is %d; the table has %d", n, k, want)
		}
	}
}

// Its confidence is that of counting all outcomes: of so many tosses, in how many
// neither side comes up fewer times than the rank.
func TestConfidenceByCounting(t *testing.T) {
	for n := 1; n <= 16; n++ {
		k, level := rank(n)
		held := 0
		for toss := range 1 << n {
			below := 0
			for bit := range n {
				below += toss >> bit & 1
			}
			if below >= k && n-below >= k {
				held++
			}
		}
		if want := float64(held) / float64(int(1)<<n); math.Abs(level-want) > 1e-12 {
			t.Errorf("of %d values with rank %d: %v, counted %v", n, k, level, want)
		}
	}
	if k, level := rank(5000); k < 2400 || k > 2450 || level < wanted {
		t.Errorf("of 5000 values: rank %d, confidence %v", k, level)
	}
}

// The median of the minutes for each is the line through the fixed minutes with
// the least sum of relative errors: no other of the lines through a job is better.
func TestMedianIsLeast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 14).Draw(t, "jobs")
		amounts, minutes, each := make([]float64, n), make([]float64, n), make([]money.Number, n)
		for i := range n {
			amounts[i], minutes[i] = rapid.Float64Range(1, 500).Draw(t, "amount"), rapid.Float64Range(0, 900).Draw(t, "minutes")
			each[i] = money.Float(minutes[i] / amounts[i])
		}
		errors := func(slope float64) float64 {
			sum := 0.0
			for i := range n {
				sum += math.Abs(minutes[i]-slope*amounts[i]) / amounts[i]
			}
			return sum
		}
		own := errors(median(each).InexactFloat64())
		for i := range n {
			if other := errors(minutes[i] / amounts[i]); other < own*(1-1e-9)-1e-9 {
				t.Fatalf("the median errs by %v, the line through job %d by %v", own, i, other)
			}
		}
	})
}

// Simulated jobs with times that are skewed, that spread more for some jobs than
// for others, and of which some are noted wrongly to either side: the interval
// holds the true median at least as often as it says.
func TestIntervalHolds(t *testing.T) {
	const runs = 20000
	for _, n := range []int{3, 4, 5, 6, 8, 12, 20, 40} {
		t.Run(fmt.Sprint(n), func(t *testing.T) {
			rng := rand.New(rand.NewPCG(7, uint64(n)))
			held, level := 0, 0.0
			for range runs {
				values := make([]float64, n)
				for i := range values {
					z := rng.NormFloat64()
					if rng.IntN(10) == 0 {
						z *= 8
					}
					values[i] = math.Exp(z * (0.1 + 0.4*rng.Float64()))
				}
				low, high, confidence := interval(numbers(values...))
				level = confidence.InexactFloat64() / 100
				if low.LessThanOrEqual(money.One) && high.GreaterThanOrEqual(money.One) {
					held++
				}
			}
			// Three standard deviations of the count; the level is printed to 0.1
			// percent.
			share, slack := float64(held)/runs, 3*math.Sqrt(level*(1-level)/runs)+0.0005
			if math.Abs(share-level) > slack {
				t.Errorf("held in %.4f of the runs; %.4f was said", share, level)
			}
		})
	}
}

// The worked example of Sen 1968, Estimates of the regression coefficient based
// on Kendall's tau, JASA 63, 1379-1389: the slope is 4. From memory.
func TestSenExample(t *testing.T) {
	x, y := []float64{1, 2, 3, 4, 10, 12, 18}, []float64{9, 15, 19, 20, 45, 55, 78}
	slope, start := theilSen(x, y)
	if slope != 4 || start != 6 {
		t.Errorf("slope %v, start %v; want 4, and 6 as the median of y less 4 x", slope, start)
	}
}

// A line with a fifth of its points anywhere else is found all the same, where
// least squares are carried away.
func TestTheilSenStands(t *testing.T) {
	var x, y []float64
	for i := range 20 {
		x, y = append(x, float64(i+1)), append(y, 3*float64(i+1)+40)
		if i%5 == 4 {
			y[i] *= 60
		}
	}
	if slope, start := theilSen(x, y); math.Abs(slope-3) > 0.2 || math.Abs(start-40) > 2 {
		t.Errorf("slope %v, start %v; want about 3 and 40", slope, start)
	}
	if slope, start := theilSen([]float64{2, 2}, []float64{1, 5}); slope != 0 || start != 0 {
		t.Errorf("of one size: %v, %v", slope, start)
	}
}

// The standard deviation of the rank correlation is that over all orders.
func TestKendallByCounting(t *testing.T) {
	x := []float64{1, 2, 3, 4, 5, 6}
	sum, square, orders := 0.0, 0.0, 0.0
	permute(slices.Clone(x), 0, func(y []float64) {
		s := 0.0
		for i := range x {
			for k := range i {
				s += sign(y[i] - y[k])
			}
		}
		sum, square, orders = sum+s, square+s*s, orders+1
	})
	sd := math.Sqrt(square/orders - sum*sum/orders/orders)
	if got, want := kendall(x, x), (15-1)/sd; math.Abs(got-want) > 1e-12 {
		t.Errorf("in order: %v, want %v", got, want)
	}
	if got := kendall(x, []float64{6, 5, 4, 3, 2, 1}); got != -kendall(x, x) {
		t.Errorf("in reverse: %v", got)
	}
	if got := kendall([]float64{3, 3, 3}, []float64{1, 2, 3}); got != 0 {
		t.Errorf("of one size: %v", got)
	}
}

// permute visits all orders.
func permute(y []float64, at int, visit func([]float64)) {
	if at == len(y) {
		visit(y)
	}
	for i := at; i < len(y); i++ {
		y[at], y[i] = y[i], y[at]
		permute(y, at+1, visit)
		y[at], y[i] = y[i], y[at]
	}
}

// Numbers come as a person would write them, no more exact than the jobs are.
func TestRounded(t *testing.T) {
	for _, x := range []struct{ n, low, high, want string }{
		{"28.7", "27", "30", "29"},
		{"28.7", "28.6", "28.8", "28.7"},
		{"0.017342", "0.0165", "0.019", "0.017"},
		{"0.017342", "0.0172", "0.0175", "0.0173"},
		{"9.96", "9", "11", "10"},
		{"1234.5", "1200", "1300", "1200"},
		{"1234.5", "1230", "1240", "1230"},
		{"0.999", "0.9", "1.1", "1"},
		{"0.0005", "0.0004", "0.0006", "0.0005"},
		{"0.25", "0.25", "0.25", "0.25"},
		{"0.2454", "0.2454", "0.2454", "0.245"},
	} {
		n, _ := money.Parse(x.n)
		low, _ := money.Parse(x.low)
		high, _ := money.Parse(x.high)
		if got := rounded(n, low, high).String(); got != x.want {
			t.Errorf("%s from %s to %s is written %s, want %s", x.n, x.low, x.high, got, x.want)
		}
	}
}

// Fixed minutes that are too few are hinted at, with a line that is close to the
// truth; right ones are not.
func TestFit(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 9))
	line := func(fixed float64) []work {
		var all []work
		for i := range 30 {
			amount := float64(10 + 12*i)
			all = append(all, work{money.One, money.Float(amount), money.Float((2*amount + fixed) * math.Exp(0.1*rng.NormFloat64()))})
		}
		return all
	}
	r := ruleOf("2", "0")
	f := fit(r, line(90))
	if f == nil || !f.SmallSlow || math.Abs(f.Minutes.InexactFloat64()-2) > 0.2 || math.Abs(f.Fixed.InexactFloat64()-90) > 30 {
		t.Errorf("%+v; about 2 and 90 were expected", f)
	}
	if f := fit(r, line(0)); f != nil {
		t.Errorf("%+v where nothing is fixed", f)
	}
}

// ruleOf is a labour rule of these minutes.
func ruleOf(minutes, fixed string) *catalog.LabourRule {
	m, _ := money.Parse(minutes)
	f, _ := money.Parse(fixed)
	return &catalog.LabourRule{ID: "legs", Driver: "legs", Minutes: m, Fixed: f}
}
