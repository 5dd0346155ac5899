package crew

import (
	"slices"

	"tentwright/quote/crew/schedule"
)

// puzzle is a network as the solver sees it, with the meaning of its modes.
type puzzle struct {
	p     schedule.Problem
	pools []pool
	gear  int      // index of the first gear among the resources
	total int      // index of the people of the first crew; none behind: each crew is one pool
	modes [][]mode // of each work
	known map[hired][]mode
}

// puzzle states a network for a team. Resources are the pools, the gear, and
// all people of each crew: the last follow from the pools, but a bound on the
// time follows from them together.
func (b *winder) puzzle(n *network, t *team, ax *axis) *puzzle {
	z := &puzzle{pools: n.pools(t), known: map[hired][]mode{}}
	for i := range z.pools {
		z.p.Capacity = append(z.p.Capacity, len(z.pools[i].people))
	}
	z.gear = len(z.p.Capacity)
	for _, g := range n.gear {
		z.p.Capacity = append(z.p.Capacity, g.count)
	}
	z.total = len(z.p.Capacity)
	if len(z.pools) > t.crews {
		z.p.Capacity = append(z.p.Capacity, t.size...)
	}
	z.p.Tasks = make([]schedule.Task, len(n.works))
	z.modes = make([][]mode, len(n.works))
	for i := range n.works {
		w := &n.works[i]
		task := &z.p.Tasks[i]
		task.After, task.Release, task.Whole = w.after, w.release, w.whole
		for _, m := range z.ways(w, t) {
			z.add(i, w, m)
		}
	}
	z.edges(ax, t)
	return z
}

// add adds a way to do a work and returns its place.
func (z *puzzle) add(i int, w *work, m mode) int {
	use := m.need
	if len(w.gear) > 0 {
		use = slices.Clone(use)
		for _, g := range w.gear {
			use[z.gear+g] = 1
		}
	}
	task := &z.p.Tasks[i]
	task.Modes = append(task.Modes, schedule.Mode{Minutes: w.share.minutes(m.hands), Use: use})
	z.modes[i] = append(z.modes[i], m)
	return len(z.modes[i]) - 1
}

// plain is the problem without the resources that follow from others: whoever
// follows hands from task to task would count them twice.
func (z *puzzle) plain() *schedule.Problem {
	p := schedule.Problem{Capacity: z.p.Capacity[:z.total], Edges: z.p.Edges, Tasks: slices.Clone(z.p.Tasks)}
	for i := range p.Tasks {
		t := &p.Tasks[i]
		t.Modes = slices.Clone(t.Modes)
		for k := range t.Modes {
			t.Modes[k].Use = t.Modes[k].Use[:z.total]
		}
	}
	return &p
}

// edges sets the ends of days, where a work heeds them. They reach as far as
// any plan of passes does: the longest chain, and all work with nobody idle
// twice over.
func (z *puzzle) edges(ax *axis, t *team) {
	if !slices.ContainsFunc(z.p.Tasks, func(t schedule.Task) bool { return t.Whole }) {
		return
	}
	sum := 0
	for i := range z.p.Tasks {
		sum += z.p.Tasks[i].Modes[0].Minutes*z.modes[i][0].hands + z.p.Tasks[i].Release
	}
	z.p.Edges = ax.edges(2 * sum / max(1, len(t.people)))
	if times := schedule.EarliestLatest(&z.p); times != nil {
		z.p.Edges = ax.edges(times.Finish + 3*sum/max(1, len(t.people)))
	}
}

// solve puts the puzzle in order. It does not fail: the works do not wait in
// circles, every mode fits the team, no work is longer than limit left it, and the
// axis always reaches as far as it is asked to.
func (z *puzzle) solve(ax *axis, tries int) *schedule.Plan {
	for again := 0; ; again++ {
		plan := schedule.Solve(&z.p, schedule.Options{Schedules: tries, Seed: 1})
		last := len(z.p.Edges) - 1
		if plan == nil || last < 0 || plan.Finish <= z.p.Edges[last] {
			return plan
		}
		end := z.p.Edges[last]
		z.p.Edges = ax.edges(2 * plan.Finish)
		if again >= patience {
			z.loosen(plan, end)
		}
	}
}

// patience is how often the axis is doubled before a work that still fits no day
// is taken for one that never will.
const patience = 3

// loosen lets works run over the end of a day that no later day is long enough
// for: the days beyond those of the window are all alike, and such a work would
// wait for ever. Only those that the plan puts behind the end of the axis are.
func (z *puzzle) loosen(plan *schedule.Plan, end int) {
	last := len(z.p.Edges) - 1
	if last < 1 {
		return
	}
	day := z.p.Edges[last] - z.p.Edges[last-1]
	for i := range z.p.Tasks {
		t := &z.p.Tasks[i]
		fits := slices.ContainsFunc(t.Modes, func(m schedule.Mode) bool { return m.Minutes <= day })
		t.Whole = t.Whole && (fits || plan.End(&z.p, i) <= end)
	}
}
