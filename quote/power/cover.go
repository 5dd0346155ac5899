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
	for have := min(want, o.have); have >= 0; have-- {
		for more := s.mostMore(o, want-have); more >= 0; more-- {
			before := s.now
			s.now.have[i], s.now.more[i] = have, more
			s.now.pieces += have + more
			s.now.size = s.now.size.Add(o.size.Mul(money.Int(have + more)))
			s.now.first = s.now.first.Add(o.first.Mul(money.Int(more)))
			s.now.second = s.now.second.Add(o.second.Mul(money.Int(more)))
			s.take(at + 1)
			s.now = before
			s.now.have[i], s.now.more[i] = 0, 0
		}
	}
}

// mostMore is how many of an option can be added at most.
func (s *search) mostMore(o option, want int) int {
	if o.most < 0 {
		return want
	}
	return min(want, o.most)
}

// hopeless tells whether the rest, at the rate of the cheapest option still to
// come, costs more than the best set. What is at hand costs nothing.
func (s *search) hopeless(at int, left money.Number) bool {
	if s.best == nil {
		return false
	}
	for _, i := range s.order[at:] {
		left = left.Sub(s.options[i].size.Mul(money.Int(s.options[i].have)))
	}
	o := s.options[s.order[at]]
	least := s.now.first
	if left.IsPositive() {
		least = least.Add(left.Mul(o.first).DivRound(o.size, 6).Sub(slack))
	}
	return least.GreaterThan(s.best.first)
}

// slack is taken off a bound that was rounded.
var slack = money.Percent(money.Percent(money.Percent(money.One)))

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
