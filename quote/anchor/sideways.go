package anchor

import (
	"math"

	"tentwright/quote/frame"
)

// hold is one way in which a leg can be held sideways: by a guy, which only
// pulls outward, or by friction or a plate, which holds either way.
type hold struct {
	leg  int
	x, y float64 // unit vector of the force on the leg
	turn float64 // moment of a force of 1 about the middle, over the size
	guy  bool

	least float64 // of a guy: what it pulls in any case
}

// sideways finds the horizontal forces of the ground: those that differ least
// from what each leg's share of the surfaces asks for, and yet balance the
// whole. With guys that cannot push, and pull at least what the lift of their
// leg makes them, this is a quadratic programme; its dual has
// three unknowns, the multipliers of the two forces and the moment, and is
// solved by Newton's method on the set of guys that pull.
type sideways struct {
	holds  []hold
	middle frame.Point
	size   float64

	asked, found []float64 // kept between cases
}

// newSideways lists what holds; rest takes in the legs that are spared as long
// as others hold, such as those under a gutter.
func newSideways(feet []foot, rest bool) *sideways {
	s := &sideways{}
	for i := range feet {
		s.middle = plus(s.middle, scaled(1/float64(len(feet)), feet[i].at))
	}
	for i := range feet {
		s.size = max(s.size, math.Hypot(feet[i].at.X-s.middle.X, feet[i].at.Y-s.middle.Y))
	}
	add := func(i int, out frame.Point, guy bool) {
		x, y := feet[i].at.X-s.middle.X, feet[i].at.Y-s.middle.Y
		s.holds = append(s.holds, hold{leg: i, x: out.X, y: out.Y, turn: (x*out.Y - y*out.X) / s.size, guy: guy})
	}
	for i := range feet {
		switch f := &feet[i]; {
		case f.way == Guyed:
			for _, out := range f.outs {
				add(i, out, true)
			}
		case rest || !f.spared:
			add(i, frame.Point{X: 1}, false)
			add(i, frame.Point{Y: 1}, false)
		}
	}
	s.asked, s.found = make([]float64, len(s.holds)), make([]float64, len(s.holds))
	return s
}

// solve sets the horizontal part of each leg's reaction, and the most that one
// guy of it pulls. It is false when nothing holds the tent that way.
func (s *sideways) solve(l *load, reactions []frame.Point, pulls []float64) bool {
	scale := 0.0
	for k, h := range s.holds {
		f := l.share[h.leg]
		s.asked[k] = -(f.X*h.x + f.Y*h.y)
		scale += math.Abs(s.asked[k])
	}
	turn := l.moment.Z - s.middle.X*l.force.Y + s.middle.Y*l.force.X
	want := [3]float64{-l.force.X, -l.force.Y, -turn / s.size}
	scale += math.Abs(want[0]) + math.Abs(want[1]) + math.Abs(want[2])
	if !s.newton(want, scale) {
		return false
	}
	for i := range reactions {
		reactions[i], pulls[i] = frame.Point{}, 0
	}
	for k, h := range s.holds {
		r, n := &reactions[h.leg], s.found[k]
		r.X, r.Y = r.X+n*h.x, r.Y+n*h.y
		if h.guy {
			pulls[h.leg] = max(pulls[h.leg], n)
		} else {
			pulls[h.leg] = math.Hypot(r.X, r.Y)
		}
	}
	return true
}

// Limits of Newton's method: a few rounds do where anything does.
const (
	mostRounds = 80
	tiny       = 1e-12 // of the forces that are balanced
	enough     = 1e-9
)

// newton climbs the dual from no correction at all. Each round solves for the
// guys that pull now, and halves its step until the dual gets better.
func (s *sideways) newton(want [3]float64, scale float64) bool {
	var by [3]float64
	value, off := s.at(by, want)
	for range mostRounds {
		if largest(off) <= tiny*scale {
			return true
		}
		step, ok := solve3(s.curvature(), off)
		if !ok {
			break
		}
		slope := step[0]*off[0] + step[1]*off[1] + step[2]*off[2]
		better := false
		for times := 1.0; times > 1e-10 && !better; times /= 2 {
			next := [3]float64{by[0] - times*step[0], by[1] - times*step[1], by[2] - times*step[2]}
			v, o := s.at(next, want)
			// The dual falls, or rounding hides that and the balance is nearer.
			if v <= value-1e-4*times*slope || largest(o) < largest(off)/2 {
				by, value, off, better = next, v, o, true
			}
		}
		if !better {
			break
		}
	}
	_, off = s.at(by, want)
	return largest(off) <= enough*scale
}

// at sets the forces that belong to some multipliers, and tells the dual and how
// far the forces are from balance.
func (s *sideways) at(by, want [3]float64) (value float64, off [3]float64) {
	for k, h := range s.holds {
		raw := s.asked[k] + by[0]*h.x + by[1]*h.y + by[2]*h.turn
		n := raw
		if h.guy && n < h.least {
			n = h.least
		}
		s.found[k] = n
		value += n * (raw - n/2)
		off[0], off[1], off[2] = off[0]+n*h.x, off[1]+n*h.y, off[2]+n*h.turn
	}
	for i := range off {
		off[i] -= want[i]
		value -= by[i] * want[i]
	}
	return value, off
}

// curvature is the second derivative of the dual: of the holds that pull. A
// grain of all the others keeps it from being singular.
func (s *sideways) curvature() [3][3]float64 {
	var m [3][3]float64
	for k, h := range s.holds {
		weight := 1.0
		if h.guy && s.found[k] <= h.least {
			weight = 1e-9
		}
		row := [3]float64{h.x, h.y, h.turn}
		for i := range row {
			for j := range row {
				m[i][j] += weight * row[i] * row[j]
			}
		}
	}
	return m
}

func largest(v [3]float64) float64 {
	return max(math.Abs(v[0]), math.Abs(v[1]), math.Abs(v[2]))
}

// solve3 solves three equations by elimination with the largest pivot; false
// where they do not tell the unknowns apart.
func solve3(m [3][3]float64, v [3]float64) (x [3]float64, ok bool) {
	most := 0.0
	for i := range m {
		most = max(most, largest(m[i]))
	}
	for col := range 3 {
		pivot := col
		for row := col + 1; row < 3; row++ {
			if math.Abs(m[row][col]) > math.Abs(m[pivot][col]) {
				pivot = row
			}
		}
		if math.Abs(m[pivot][col]) <= 1e-14*most {
			return x, false
		}
		m[col], m[pivot], v[col], v[pivot] = m[pivot], m[col], v[pivot], v[col]
		for row := col + 1; row < 3; row++ {
			times := m[row][col] / m[col][col]
			for k := col; k < 3; k++ {
				m[row][k] -= times * m[col][k]
			}
			v[row] -= times * v[col]
		}
	}
	for row := 2; row >= 0; row-- {
		sum := v[row]
		for k := row + 1; k < 3; k++ {
			sum -= m[row][k] * x[k]
		}
		x[row] = sum / m[row][row]
	}
	return x, true
}
