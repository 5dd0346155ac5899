// Package schedule puts tasks in order: each takes some minutes of some
// resources of which there are only so many, waits for others to finish, and
// may be done in several ways, with more hands in less time. The aim is the
// earliest finish of the whole (the multi-mode resource-constrained project
// scheduling problem, with renewable resources).
//
// Times are whole minutes of working time from 0: the caller lays working
// days end to end and says where they end. The package knows no clock; the
// same problem, number of schedules and seed give the same plan everywhere.
package schedule

import (
	"fmt"
	"strconv"
	"strings"
)

// Problem is work to be put in order: times are whole minutes of working time
// from 0.
type Problem struct {
	Capacity []int  // of each resource
	Tasks    []Task // a task is not its own predecessor, directly or not
	Edges    []int  // ends of working days on the axis, ascending; a Whole task does not run across one unless it is longer than every day
}

// Task is one piece of work, done without a break.
type Task struct {
	Modes   []Mode // the ways to do it, at least one
	After   []int  // indices of tasks that are finished before it starts
	Release int    // earliest start
	Whole   bool   // not across the end of a working day
}

// Mode is one way to do a task.
type Mode struct {
	Minutes int   // 0 for a milestone, which uses nothing
	Use     []int // of each resource while it runs
}

// Plan is a time and a mode for every task.
type Plan struct {
	Start  []int
	Mode   []int
	Finish int // when the last task is done
	Tried  int // schedules made to find it
}

// End returns when a task of the plan is done.
func (pl *Plan) End(p *Problem, task int) int {
	return pl.Start[task] + p.Tasks[task].Modes[pl.Mode[task]].Minutes
}

// axisEnd is the longest axis, in minutes: four thousand years, so that all
// work on a resource, and a time beside a task, fit one word.
const axisEnd = 1 << 31

// Longest is the minutes of all tasks together, each at its slowest, up to which
// the days that plans of them can reach always fit the axis.
const Longest = axisEnd / 16

// Check says in words what is wrong with the problem; nothing if it can be
// planned. First and Solve return no plan for a problem with faults.
func (p *Problem) Check() []string {
	faults, _ := p.check()
	return faults
}

// check is Check; it returns also the order that it found.
func (p *Problem) check() ([]string, *links) {
	var faults []string
	add := func(format string, args ...any) { faults = append(faults, fmt.Sprintf(format, args...)) }
	for k, c := range p.Capacity {
		if c < 0 || c > axisEnd {
			add("capacity of resource %d is %d; 0 to %d expected", k, c, axisEnd)
		}
	}
	for i, e := range p.Edges {
		if e <= 0 || e > axisEnd || i > 0 && e <= p.Edges[i-1] {
			add("end of day %d is at %d; expected after the one before", i, e)
		}
	}
	longest := 0
	for i := range p.Tasks {
		longest += p.checkTask(i, add)
	}
	if len(faults) > 0 {
		return faults, nil
	}
	if longest > axisEnd || len(p.Tasks) > 1<<20 {
		add("%d tasks of %d minutes in all; at most %d tasks and %d minutes expected", len(p.Tasks), longest, 1<<20, axisEnd)
	}
	l := p.sorted()
	if circle := p.circle(l); circle != nil {
		names := make([]string, len(circle))
		for i, t := range circle {
			names[i] = strconv.Itoa(t)
		}
		add("task %s waits for itself: %s; an order without a circle expected", names[0], strings.Join(names, " after "))
	}
	return faults, l
}

// checkTask reports the faults of one task and returns its longest minutes.
func (p *Problem) checkTask(i int, add func(string, ...any)) int {
	t, longest := &p.Tasks[i], 0
	if len(t.Modes) == 0 {
		add("task %d has no mode; at least one expected", i)
	}
	if t.Release < 0 || t.Release > axisEnd {
		add("task %d is released at %d; 0 to %d expected", i, t.Release, axisEnd)
	}
	for _, a := range t.After {
		if a < 0 || a >= len(p.Tasks) {
			add("task %d waits for task %d; 0 to %d expected", i, a, len(p.Tasks)-1)
		}
	}
	for m, mode := range t.Modes {
		longest = max(longest, mode.Minutes)
		if mode.Minutes < 0 || mode.Minutes > axisEnd {
			add("task %d, mode %d takes %d minutes; 0 to %d expected", i, m, mode.Minutes, axisEnd)
		}
		if len(mode.Use) != len(p.Capacity) {
			add("task %d, mode %d uses %d resources; all %d expected", i, m, len(mode.Use), len(p.Capacity))
			continue
		}
		for k, u := range mode.Use {
			if u < 0 || u > p.Capacity[k] {
				add("task %d, mode %d uses %d of resource %d; 0 to %d expected", i, m, u, k, p.Capacity[k])
			}
		}
	}
	return longest
}
