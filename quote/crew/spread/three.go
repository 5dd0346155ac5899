package spread

import (
	"math"
)

// Three is what a task takes, in minutes, when all goes well, as a rule, and
// when much goes wrong; rising.
type Three struct{ Optimistic, Likely, Pessimistic float64 }

// sorted is the three as they must be: none below 0, and the likely one between
// the others.
func (t Three) sorted() Three {
	low := max(0, t.Optimistic)
	high := max(low, t.Pessimistic)
	return Three{low, min(max(low, t.Likely), high), high}
}

// Mean is the mean of the three-point estimate (Malcolm, Roseboom, Clark and
// Fazar 1959, Operations Research 7, 646-669).
func (t Three) Mean() float64 {
	t = t.sorted()
	return (t.Optimistic + 4*t.Likely + t.Pessimistic) / 6
}

// Variance is the variance of the same estimate, in square minutes.
func (t Three) Variance() float64 {
	t = t.sorted()
	dev := (t.Pessimistic - t.Optimistic) / 6
	return dev * dev
}

// shape returns the exponents of the beta distribution between the optimistic
// and the pessimistic minutes of which mean and variance are those of the
// three-point estimate. The estimate alone does not name a distribution; where
// its mode is set to the likely minutes instead, the variance comes out
// otherwise. The mode of this one is less than 6 hundredths of the range away.
//
// Both exponents are from 2/3 to 4.68, for all likely minutes in the range.
func (t Three) shape() (alpha, beta float64) {
	at := (t.Mean() - t.Optimistic) / (t.Pessimistic - t.Optimistic)
	sum := 36*at*(1-at) - 1
	return at * sum, (1 - at) * sum
}

// tick is the unit of simulated time: whole, so that sums never drift, and short
// enough not to round a task of a minute. There are so many in a minute.
const tick = 60

// cells is how many parts of the range a shape is tabled in.
const cells = 128

// shape is a distribution over a range of ticks.
type shape struct {
	from, width float64
	table       *table
}

// table is a beta distribution by its chances: reached[n] is how many of 2^32
// draws lie below n of the cells; guide[b] is the cell of the first draw that
// begins with the byte b. Within a cell all values are alike likely.
type table struct {
	reached [cells + 1]uint64
	guide   [256]uint8
}

// shapesOf gives each task its shape. Tasks of one proportion share a table:
// those whose rules all spread by the shop's percentages do.
func shapesOf(three []Three) []shape {
	tables := map[[2]float64]*table{}
	list := make([]shape, len(three))
	for i, t := range three {
		t = t.sorted()
		list[i] = shape{from: t.Optimistic * tick, width: (t.Pessimistic - t.Optimistic) * tick}
		if list[i].width == 0 {
			continue
		}
		alpha, beta := t.shape()
		key := [2]float64{round(alpha), round(beta)}
		if tables[key] == nil {
			tables[key] = newTable(key[0], key[1])
		}
		list[i].table = tables[key]
	}
	return list
}

// round takes away what is only error of arithmetic.
func round(x float64) float64 { return math.Round(x*1e6) / 1e6 }

// newTable adds the masses of the cells up to chances.
func newTable(alpha, beta float64) *table {
	var mass [cells]float64
	near, far := masses(alpha, beta), masses(beta, alpha)
	all := 0.0
	for i := range near {
		mass[i], mass[cells-1-i] = near[i], far[i]
		all += near[i] + far[i]
	}
	t, sum := &table{}, 0.0
	for i, m := range mass {
		sum += m
		t.reached[i+1] = uint64(math.Round(min(sum/all, 1) * (1 << 32)))
	}
	t.reached[cells] = 1 << 32
	cell := 0
	for b := range t.guide {
		for t.reached[cell+1] <= uint64(b)<<24 {
			cell++
		}
		t.guide[b] = uint8(cell)
	}
	return t
}

// masses integrates x^(own-1) (1-x)^(other-1) over each cell of the nearer half:
// the first power exactly, since it may rise without bound at the end, the other
// at the middle of the cell, where it is smooth.
func masses(own, other float64) (mass [cells / 2]float64) {
	low := 0.0
	for i := range mass {
		high := math.Pow(float64(i+1)/cells, own)
		mass[i] = (high - low) / own * math.Pow(1-(float64(i)+0.5)/cells, other-1)
		low = high
	}
	return mass
}

// draw turns 64 random bits into ticks: the first half chooses the cell, and
// where in it; a value that does not spread needs none.
func (s *shape) draw(random uint64) int {
	if s.table == nil {
		return int(s.from + 0.5)
	}
	return int(s.from + float64(s.width*s.table.at(random>>32)) + 0.5)
}

// at is the value, from 0 to 1, below which so many of 2^32 draws lie.
func (t *table) at(draws uint64) float64 {
	cell := int(t.guide[draws>>24])
	for t.reached[cell+1] <= draws {
		cell++
	}
	low, high := t.reached[cell], t.reached[cell+1]
	return (float64(cell) + float64(draws-low)/float64(high-low)) / cells
}
