package schedule

import "slices"

// Times are the times of the critical path method: every task as early and as
// late as the order of work allows, were there hands enough.
type Times struct {
	EarlyStart []int // in whichever mode starts first
	LateStart  []int // that does not delay Finish
	Slack      []int // minutes between the two; 0 on a critical path
	Finish     int
}

// EarliestLatest returns the critical path times, with the quickest mode of
// each task, its release and the ends of days. Resources do not count.
func EarliestLatest(p *Problem) *Times {
	faults, l := p.check()
	if len(faults) > 0 {
		return nil
	}
	return p.earliestLatest(l)
}

// earliestLatest is EarliestLatest of a sound problem.
func (p *Problem) earliestLatest(l *links) *Times {
	day := p.longestDay()
	n := len(p.Tasks)
	t := &Times{EarlyStart: make([]int, n), LateStart: make([]int, n), Slack: make([]int, n)}
	end := make([]int, n)
	for _, i := range l.order {
		task := &p.Tasks[i]
		from := task.Release
		for _, a := range task.After {
			from = max(from, end[a])
		}
		for m := range task.Modes {
			d := task.Modes[m].Minutes
			at := from
			if task.Whole && d <= day {
				at = p.fitAfter(from, d)
			}
			if m == 0 {
				t.EarlyStart[i], end[i] = at, at+d
			}
			// A slow mode that is longer than every day may start sooner than a quick
			// one that waits for the morning.
			t.EarlyStart[i], end[i] = min(t.EarlyStart[i], at), min(end[i], at+d)
		}
		t.Finish = max(t.Finish, end[i])
	}
	for _, i := range slices.Backward(l.order) {
		until := t.Finish
		for _, b := range l.after(i) {
			until = min(until, t.LateStart[b])
		}
		t.LateStart[i] = p.latest(&p.Tasks[i], until, day)
		t.Slack[i] = t.LateStart[i] - t.EarlyStart[i]
	}
	return t
}

// latest returns the latest start of a task that is done by a time.
func (p *Problem) latest(task *Task, until, day int) int {
	best := -axisEnd
	for _, m := range task.Modes {
		at := until - m.Minutes
		if task.Whole && m.Minutes <= day {
			at = p.fitBefore(until, m.Minutes)
		}
		best = max(best, at)
	}
	return best
}

// longestDay returns the minutes of the longest working day that ends; 0
// where no day ends.
func (p *Problem) longestDay() int {
	day, from := 0, 0
	for _, e := range p.Edges {
		day = max(day, e-from)
		from = e
	}
	return day
}

// fitAfter returns the first start from a time on from which so many minutes
// run across no end of a day.
func (p *Problem) fitAfter(from, minutes int) int {
	i, _ := slices.BinarySearch(p.Edges, from+1)
	for ; i < len(p.Edges) && p.Edges[i] < from+minutes; i++ {
		from = p.Edges[i]
	}
	return from
}

// fitBefore is fitAfter from the other side: the last start of so many
// minutes that are over by a time.
func (p *Problem) fitBefore(until, minutes int) int {
	i, _ := slices.BinarySearch(p.Edges, until)
	for ; i > 0 && p.Edges[i-1] > until-minutes; i-- {
		until = p.Edges[i-1]
	}
	return until - minutes
}
