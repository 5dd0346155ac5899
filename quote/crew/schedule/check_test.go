package schedule_test

import (
	"fmt"

	"pgregory.net/rapid"

	"tentwright/quote/crew/schedule"
)

// faulty looks at a plan minute by minute, with nothing of the solver.
func faulty(p *schedule.Problem, plan *schedule.Plan) error {
	if len(plan.Start) != len(p.Tasks) || len(plan.Mode) != len(p.Tasks) {
		return fmt.Errorf("%d starts and %d modes for %d tasks", len(plan.Start), len(plan.Mode), len(p.Tasks))
	}
	finish := 0
	end := make([]int, len(p.Tasks))
	for i, t := range p.Tasks {
		if plan.Mode[i] < 0 || plan.Mode[i] >= len(t.Modes) {
			return fmt.Errorf("task %d has mode %d", i, plan.Mode[i])
		}
		end[i] = plan.Start[i] + t.Modes[plan.Mode[i]].Minutes
		finish = max(finish, end[i])
	}
	if finish != plan.Finish {
		return fmt.Errorf("finish %d, said to be %d", finish, plan.Finish)
	}
	used := make([][]int, finish)
	for minute := range used {
		used[minute] = make([]int, len(p.Capacity))
	}
	for i, t := range p.Tasks {
		if err := misplaced(p, i, plan.Start[i], end); err != nil {
			return err
		}
		for minute := plan.Start[i]; minute < end[i]; minute++ {
			for k, u := range t.Modes[plan.Mode[i]].Use {
				if used[minute][k] += u; used[minute][k] > p.Capacity[k] {
					return fmt.Errorf("minute %d: %d of resource %d", minute, used[minute][k], k)
				}
			}
		}
	}
	return nil
}

// misplaced looks at one task's release, predecessors and day.
func misplaced(p *schedule.Problem, i, start int, end []int) error {
	t := p.Tasks[i]
	if start < t.Release || start < 0 {
		return fmt.Errorf("task %d starts at %d, released at %d", i, start, t.Release)
	}
	for _, a := range t.After {
		if end[a] > start {
			return fmt.Errorf("task %d starts at %d, task %d ends at %d", i, start, a, end[a])
		}
	}
	if t.Whole && crosses(p, start, end[i]) {
		return fmt.Errorf("task %d runs from %d to %d across the end of a day", i, start, end[i])
	}
	return nil
}

// crosses tells whether a span runs across an edge though a day is long enough.
func crosses(p *schedule.Problem, start, end int) bool {
	day, from, across := 0, 0, false
	for _, e := range p.Edges {
		day = max(day, e-from)
		from = e
		across = across || start < e && e < end
	}
	return across && end-start <= day
}

// every tries all plans of a small problem in which each task starts at the
// first minute where it fits, given those before it.
type every struct {
	p                *schedule.Problem
	start, end, mode []int
	placed           []bool
	best             int
}

// shortest returns the shortest finish of a small problem.
func shortest(p *schedule.Problem) int {
	n := len(p.Tasks)
	e := &every{p: p, start: make([]int, n), end: make([]int, n), mode: make([]int, n), placed: make([]bool, n), best: 1 << 40}
	e.next(0, 0)
	return e.best
}

func (e *every) next(count, finish int) {
	if finish >= e.best {
		return
	}
	if count == len(e.p.Tasks) {
		e.best = finish
		return
	}
	for i, t := range e.p.Tasks {
		from, ready := t.Release, !e.placed[i]
		for _, a := range t.After {
			ready = ready && e.placed[a]
			from = max(from, e.end[a])
		}
		for m := 0; ready && m < len(t.Modes); m++ {
			e.mode[i] = m
			at := from
			for !e.fits(i, at, at+t.Modes[m].Minutes) {
				at++
			}
			e.start[i], e.end[i], e.placed[i] = at, at+t.Modes[m].Minutes, true
			e.next(count+1, max(finish, e.end[i]))
			e.placed[i] = false
		}
	}
}

func (e *every) fits(i, from, to int) bool {
	if e.p.Tasks[i].Whole && crosses(e.p, from, to) {
		return false
	}
	for k, c := range e.p.Capacity {
		for minute := from; minute < to; minute++ {
			sum := e.p.Tasks[i].Modes[e.mode[i]].Use[k]
			for j := range e.p.Tasks {
				if e.placed[j] && e.start[j] <= minute && minute < e.end[j] {
					sum += e.p.Tasks[j].Modes[e.mode[j]].Use[k]
				}
			}
			if sum > c {
				return false
			}
		}
	}
	return true
}

// anyProblem draws a sound problem of up to so many tasks and modes each.
func anyProblem(t *rapid.T, tasks, modes int) *schedule.Problem {
	number := func(low, high int, what string) int { return rapid.IntRange(low, high).Draw(t, what) }
	p := &schedule.Problem{}
	for range number(1, 3, "resources") {
		p.Capacity = append(p.Capacity, number(1, 6, "capacity"))
	}
	for e, days := 0, number(0, 4, "days"); days > 0; days-- {
		e += number(2, 12, "day")
		p.Edges = append(p.Edges, e)
	}
	for i := range number(0, tasks, "tasks") {
		task := schedule.Task{Whole: rapid.Bool().Draw(t, "whole"), Release: max(0, number(-10, 8, "release"))}
		for a := range i {
			if number(0, 2, "after") == 0 {
				task.After = append(task.After, a)
			}
		}
		for range number(1, modes, "modes") {
			m := schedule.Mode{Minutes: number(0, 7, "minutes")}
			for _, c := range p.Capacity {
				m.Use = append(m.Use, number(0, c, "use"))
			}
			task.Modes = append(task.Modes, m)
		}
		p.Tasks = append(p.Tasks, task)
	}
	return renumbered(t, p)
}

// renumbered puts the tasks of a problem in another order, so that a task may
// wait for one with a higher number.
func renumbered(t *rapid.T, p *schedule.Problem) *schedule.Problem {
	old := make([]int, len(p.Tasks))
	for i := range old {
		old[i] = i
	}
	old = rapid.Permutation(old).Draw(t, "numbers")
	at := make([]int, len(old))
	for i, o := range old {
		at[o] = i
	}
	out := &schedule.Problem{Capacity: p.Capacity, Edges: p.Edges, Tasks: make([]schedule.Task, len(p.Tasks))}
	for i, o := range old {
		out.Tasks[i] = p.Tasks[o]
		for x, a := range out.Tasks[i].After {
			out.Tasks[i].After[x] = at[a]
		}
	}
	return out
}
