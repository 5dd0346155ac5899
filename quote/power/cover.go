package power

import (
	"slices"

	"tentwright/catalog/money"
)

// option is a kind of thing that covers a part of a need.
type option struct {
	size          money.Number // what one covers
	first, second money.Number // costs of one more; the sum of the first is least, then that of the second
	have          int          // without any cost, since they are ordered
	most          int          // more than those; below zero: any number
}

// choice is how many of each option are taken, of those at hand and of more.
type choice struct {
	have, more    []int
	first, second money.Number
	pieces        int
	size          money.Number
}

// cover is the cheapest set that covers a need: the least sum of first costs, of
// these that of second costs, then the fewest pieces, then the least size. Where
// nothing covers it, everything is taken that helps and ok is false.
func cover(need money.Number, options []option) (have, more []int, ok bool) {
	s := &search{need: need, options: options, order: make([]int, len(options)),
		now: choice{have: make([]int, len(options)), more: make([]int, len(options))}}
	for i := range s.order {
		s.order[i] = i
	}
	// The cheapest for its size first, so that good sets are found early and no
	// later option covers the rest for less than the next one's rate.
	slices.SortStableFunc(s.order, func(a, b int) int {
		return options[a].first.Mul(options[b].size).Cmp(options[b].first.Mul(options[a].size))
	})
	if most := s.all(); most != nil {
		return most.have, most.more, false
	}
	s.take(0)
	return s.best.have, s.best.more, true
}

// search goes through the sets, leaving out those that cannot be the best.
type search struct {
	need    money.Number
	options []option
	order   []int
	now     choice
	best    *choice
}

// all takes everything where that does not reach the need; nil where it does.
func (s *search) all() *choice {
	sum := choice{have: make([]int, len(s.options)), more: make([]int, len(s.options))}
	for i, o := range s.options {
		if o.most < 0 && o.size.IsPositive() {
			return nil
		}
		sum.have[i], sum.more[i] = o.have, max(0, o.most)
		sum.size = sum.size.Add(o.size.Mul(money.Int(sum.have[i] + sum.more[i])))
	}
	if sum.size.GreaterThanOrEqual(s.need) {
		return nil
	}
	return &sum
}

// take decides how many of the option at a place of the order are taken.
func (s *search) take(at int) {
	left := s.need.Sub(s.now.size)
	if !left.IsPositive() {
		s.keep()
		return
	}
	if at == len(s.order) || s.hopeless(at, left) {
		return
	}
	i := s.order[at]
	o := s.options[i]
	want := int(left.Div(o.size).IntPart())
	if o.size.Mul(money.Int(want)).LessThan(left) {
		want++
	}
	have := min(want, o.have)
	for n := have + s.mostMore(o, want-have); n >= 0; n-- {
		before := s.now
		have, more := min(n, o.have), money.Int(max(0, n-o.have)) // those at hand first: they cost nothing
		s.now.have[i], s.now.more[i] = have, n-have
		s.now.pieces += n
		s.now.size = s.now.size.Add(o.size.Mul(money.Int(n)))
		s.now.first = s.now.first.Add(o.first.Mul(more))
		s.now.second = s.now.second.Add(o.second.Mul(more))
		s.take(at + 1)
		s.now = before
		s.now.have[i], s.now.more[i] = 0, 0
	}
}

// mostMore is how many of an option can be added at most.
func (s *search) mostMore(o option, want int) int {
	if o.most < 0 {
		return want
	}
	return min(want, o.most)
}

// hopeless tells whether nothing that covers the rest can be better than the
// best set: the rest beyond what is at hand, which costs nothing, is taken at the
// least rate of any option still to come, the pieces at the largest size.
func (s *search) hopeless(at int, left money.Number) bool {
	if s.best == nil {
		return false
	}
	beyond, largest := left, money.Zero
	for _, i := range s.order[at:] {
		o := &s.options[i]
		beyond = beyond.Sub(o.size.Mul(money.Int(o.have)))
		if o.size.GreaterThan(largest) {
			largest = o.size
		}
	}
	if d := s.over(at, beyond, s.now.first, s.best.first, firstCost); d != 0 {
		return d > 0
	}
	if d := s.over(at, beyond, s.now.second, s.best.second, secondCost); d != 0 {
		return d > 0
	}
	if d := s.now.pieces + money.RoundUp(left.Div(largest)) - s.best.pieces; d != 0 {
		return d > 0
	}
	return s.best.size.LessThanOrEqual(s.need)
}

func firstCost(o *option) money.Number  { return o.first }
func secondCost(o *option) money.Number { return o.second }

// over holds the least that a sum of costs can come to against the best: above
// zero where it is larger. It multiplies, since a rate may have no end.
func (s *search) over(at int, beyond, sum, best money.Number, cost func(*option) money.Number) int {
	if !beyond.IsPositive() {
		return sum.Cmp(best)
	}
	least := &s.options[s.order[at]]
	for _, i := range s.order[at+1:] {
		if o := &s.options[i]; cost(o).Mul(least.size).LessThan(cost(least).Mul(o.size)) {
			least = o
		}
	}
	return sum.Mul(least.size).Add(beyond.Mul(cost(least))).Cmp(best.Mul(least.size))
}

// keep holds a set that covers the need against the best so far.
func (s *search) keep() {
	if s.best != nil && !s.now.better(s.best) {
		return
	}
	c := s.now
	c.have, c.more = slices.Clone(c.have), slices.Clone(c.more)
	s.best = &c
}

// better tells whether a set is to be preferred.
func (c *choice) better(o *choice) bool {
	for _, pair := range [][2]money.Number{{c.first, o.first}, {c.second, o.second}, {money.Int(c.pieces), money.Int(o.pieces)}, {c.size, o.size}} {
		if d := pair[0].Cmp(pair[1]); d != 0 {
			return d < 0
		}
	}
	return false
}
