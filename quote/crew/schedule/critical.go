package schedule

import "slices"

// Critical returns one critical chain of a plan, from its beginning to the
// finish: tasks of which each is held by the one before, because it waits for
// it, because both want the same hands, or because a Whole task found no room
// left in the day. The first starts at 0, at its release, or where nothing
// but a day's end holds it.
func Critical(p *Problem, plan *Plan) []int {
	if len(p.Tasks) == 0 {
		return nil
	}
	at := 0
	for i := range p.Tasks {
		if plan.End(p, i) > plan.End(p, at) {
			at = i
		}
	}
	chain := []int{at}
	for len(chain) <= len(p.Tasks) {
		if at = p.holder(plan, at); at < 0 {
			break
		}
		chain = append(chain, at)
	}
	slices.Reverse(chain)
	return chain
}

// holder returns the task that keeps a task from starting earlier; -1 if none
// does.
func (p *Problem) holder(plan *Plan, i int) int {
	task, start := &p.Tasks[i], plan.Start[i]
	if start == 0 {
		return -1
	}
	for _, a := range task.After {
		if plan.End(p, a) == start {
			return a
		}
	}
	if start == task.Release {
		return -1
	}
	if j := p.blocker(plan, i, start-1, start); j >= 0 {
		return j
	}
	if _, edge := slices.BinarySearch(p.Edges, start); !edge || !task.Whole {
		return -1
	}
	// Held by the morning: by what stood in the way the day before.
	from := start - task.Modes[plan.Mode[i]].Minutes
	last := -1
	for _, a := range task.After {
		if e := plan.End(p, a); e > from && (last < 0 || e > plan.End(p, last)) {
			last = a
		}
	}
	if last >= 0 {
		return last
	}
	return p.blocker(plan, i, from, start)
}

// blocker returns the task that ends last of those that end in a span, up to
// its end, and take what a task would need in the minute before they end.
func (p *Problem) blocker(plan *Plan, i, from, until int) int {
	use := p.Tasks[i].Modes[plan.Mode[i]].Use
	last, end := -1, from
	for j := range p.Tasks {
		e := plan.End(p, j)
		if j == i || e <= end || e > until || e == plan.Start[j] {
			continue
		}
		for k, u := range p.Tasks[j].Modes[plan.Mode[j]].Use {
			if u > 0 && use[k] > 0 && p.inUse(plan, k, e-1)+use[k] > p.Capacity[k] {
				last, end = j, e
				break
			}
		}
	}
	return last
}

// inUse returns how much of a resource is taken in a minute.
func (p *Problem) inUse(plan *Plan, k, minute int) int {
	sum := 0
	for i := range p.Tasks {
		if plan.Start[i] <= minute && minute < plan.End(p, i) {
			sum += p.Tasks[i].Modes[plan.Mode[i]].Use[k]
		}
	}
	return sum
}
