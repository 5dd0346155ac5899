package schedule

import (
	"math"
	"slices"
)

// LowerBound returns a time before which no plan finishes: the critical path
// with the quickest modes, and for each resource the work that it must do
// between what comes before and after.
func LowerBound(p *Problem) int {
	faults, l := p.check()
	if len(faults) > 0 {
		return 0
	}
	return p.bound(l, p.earliestLatest(l))
}

// bound is LowerBound of a sound problem.
func (p *Problem) bound(l *links, t *Times) int {
	bound := t.Finish
	tail := p.tails(l)
	for k, c := range p.Capacity {
		for _, small := range p.thresholds(k) {
			bound = max(bound, p.workBound(k, c, small, t.EarlyStart, tail))
		}
	}
	return bound
}

// thresholds returns the uses of a resource up to half of it, and 0: a few
// of them where there are many.
func (p *Problem) thresholds(k int) []int {
	uses := []int{0, (p.Capacity[k] + 1) / 2}
	for i := range p.Tasks {
		for m := range p.Tasks[i].Modes {
			if u := p.Tasks[i].Modes[m].Use[k] + 1; 2*u <= p.Capacity[k] {
				uses = append(uses, u)
			}
		}
	}
	slices.Sort(uses)
	uses = slices.Compact(uses)
	return thin(uses, 12)
}

// thin returns so many of a list, evenly, with its first and last.
func thin(list []int, most int) []int {
	if len(list) <= most {
		return list
	}
	out := make([]int, most)
	for i := range out {
		out[i] = list[i*(len(list)-1)/(most-1)]
	}
	return out
}

// tails returns for each task the least minutes from its end to the finish.
func (p *Problem) tails(l *links) []int {
	tail := make([]int, len(p.Tasks))
	for _, i := range slices.Backward(l.order) {
		for _, b := range l.after(i) {
			tail[i] = max(tail[i], tail[b]+p.Tasks[b].quickest())
		}
	}
	return tail
}

// quickest returns the minutes of the quickest mode.
func (t *Task) quickest() int {
	least := t.Modes[0].Minutes
	for _, m := range t.Modes {
		least = min(least, m.Minutes)
	}
	return least
}

// work returns the least work of a task on a resource of which there is so
// much. Uses below the threshold count nothing, and those that leave less
// than the threshold to others count as all of it: a task that leaves only
// crumbs has the resource for itself, where crumbs do not count (a dual
// feasible function: Fekete and Schepers 2001, Math. Programming 91, 11-31).
func (t *Task) work(k, capacity, small int) int {
	least := math.MaxInt
	for i := range t.Modes {
		u := t.Modes[i].Use[k]
		switch {
		case u < small:
			u = 0
		case capacity-u < small:
			u = capacity
		}
		if u == 0 {
			return 0
		}
		least = min(least, t.Modes[i].Minutes*u)
	}
	return least
}

// workBound returns the greatest, over pairs of a head and a tail, of head,
// tail and the time that the resource needs for the work of all tasks that
// cannot start before the head nor end nearer to the finish than the tail.
func (p *Problem) workBound(k, capacity, small int, head, tail []int) int {
	var at []int
	work := make([]int, len(p.Tasks))
	for i := range p.Tasks {
		if work[i] = p.Tasks[i].work(k, capacity, small); work[i] > 0 {
			at = append(at, i)
		}
	}
	slices.SortFunc(at, func(a, b int) int { return tail[b] - tail[a] })
	heads := make([]int, len(at))
	for i, a := range at {
		heads[i] = head[a]
	}
	slices.Sort(heads)
	heads = thin(slices.Compact(heads), max(2, 10000/(len(at)+1)))
	bound := 0
	for _, h := range heads {
		sum := 0
		for _, a := range at {
			if head[a] >= h {
				sum += work[a]
				bound = max(bound, h+(sum+capacity-1)/capacity+tail[a])
			}
		}
	}
	return bound
}
