package crew

import (
	"cmp"
	"slices"
)

// stint is a work of one person: when it ends, and at which tent it is.
type stint struct {
	until int
	tent  string
	any   bool // they have done something
}

// assigner gives the works of a plan to persons.
type assigner struct {
	n     *network
	pools []pool
	mode  []mode
	start []int
	until []int   // end of each work
	who   [][]int // people of each work
	last  []stint // of each person
	free  []int
}

// assign gives the works of a plan their people, in the order of their starts:
// of a pool first those who come from the same tent, then those who waited the
// shortest. There are always enough, since the plan keeps to the numbers of
// each pool at every time.
func assign(n *network, t *team, pools []pool, start []int, modes []mode) *assigner {
	a := &assigner{n: n, pools: pools, mode: modes, start: start, until: make([]int, len(start)),
		who: make([][]int, len(start)), last: make([]stint, len(t.people))}
	order := make([]int, len(start))
	for i := range order {
		order[i] = i
		a.until[i] = start[i] + a.minutes(i)
	}
	slices.SortStableFunc(order, func(x, y int) int { return cmp.Compare(start[x], start[y]) })
	for _, i := range order {
		for k, count := range modes[i].use {
			a.take(i, &pools[k], count)
		}
		slices.Sort(a.who[i])
	}
	return a
}

func (a *assigner) minutes(i int) int { return a.n.works[i].share.minutes(a.mode[i].hands) }

// take gives a work so many people of a pool.
func (a *assigner) take(i int, from *pool, count int) {
	if count == 0 {
		return
	}
	a.free = a.free[:0]
	for _, p := range from.people {
		if a.last[p].until <= a.start[i] {
			a.free = append(a.free, p)
		}
	}
	tent := a.n.works[i].tent
	slices.SortStableFunc(a.free, func(x, y int) int {
		return cmp.Or(cmp.Compare(a.strange(x, tent), a.strange(y, tent)), cmp.Compare(a.last[y].until, a.last[x].until))
	})
	for _, p := range a.free[:min(count, len(a.free))] {
		a.last[p] = stint{a.until[i], tent, true}
		a.who[i] = append(a.who[i], p)
	}
}

// strange is 0 for a person who comes from the same tent, 1 where that does not
// matter, 2 for one who comes from another.
func (a *assigner) strange(p int, tent string) int {
	switch last := &a.last[p]; {
	case tent == "" || !last.any || last.tent == "":
		return 1
	case last.tent == tent:
		return 0
	}
	return 2
}
