package spread

import (
	"slices"

	"tentwright/quote/crew/schedule"
)

// replay runs a plan with other minutes. Times are in ticks.
type replay struct {
	tasks []step // by planned start, each behind those it waits for
	edges []int
	ticks []int // what each task takes in this run, by its number in the problem
	end   []int // when it is done, likewise
	last  []int // the latest start on each resource so far
	busy  [][]stock
	all   []int // of each resource
}

// step is a task of the plan as people follow it.
type step struct {
	task    int
	release int
	after   []int
	uses    []use // of what can run short
	planned int   // ticks, of a task that runs across no end of a day; 0 for others
	edges   int   // so many days end before the plan has it begin
}

type use struct{ resource, many int }

// stock is some of a resource that is in use, and until when.
type stock struct{ end, many int }

// newReplay takes from a plan what people keep to.
func newReplay(p *schedule.Problem, plan *schedule.Plan) *replay {
	n := len(p.Tasks)
	r := &replay{ticks: make([]int, n), end: make([]int, n), last: make([]int, len(p.Capacity)), busy: make([][]stock, len(p.Capacity)), all: p.Capacity}
	from, day := 0, 0
	for _, e := range p.Edges {
		r.edges = append(r.edges, e*tick)
		day, from = max(day, e-from), e
	}
	short := scarce(p, plan)
	for _, i := range byStart(p, plan) {
		t := &p.Tasks[i]
		mode := &t.Modes[plan.Mode[i]]
		s := step{task: i, release: t.Release * tick, after: t.After}
		for k, many := range mode.Use {
			if many > 0 && short[k] {
				s.uses = append(s.uses, use{k, many})
			}
		}
		if t.Whole && mode.Minutes <= day {
			s.planned = mode.Minutes * tick
			s.edges, _ = slices.BinarySearch(r.edges, plan.Start[i]*tick+1)
		}
		r.tasks = append(r.tasks, s)
	}
	return r
}

// scarce tells of which resources there is not enough for all tasks at once.
func scarce(p *schedule.Problem, plan *schedule.Plan) []bool {
	most := make([]int, len(p.Capacity))
	for i := range p.Tasks {
		for k, many := range p.Tasks[i].Modes[plan.Mode[i]].Use {
			most[k] += many
		}
	}
	short := make([]bool, len(most))
	for k := range most {
		short[k] = most[k] > p.Capacity[k]
	}
	return short
}

// run returns the finish of the whole with the ticks as they stand.
func (r *replay) run() int {
	for k := range r.busy {
		r.busy[k], r.last[k] = r.busy[k][:0], 0
	}
	finish := 0
	for n := range r.tasks {
		s := &r.tasks[n]
		end := r.start(s) + r.ticks[s.task]
		r.end[s.task] = end
		finish = max(finish, end)
		for _, u := range s.uses {
			r.busy[u.resource] = append(r.busy[u.resource], stock{end, u.many})
		}
	}
	return finish
}

// start finds when a task begins, once all before it in the plan have. It does
// not go ahead of one that needs the same people or gear, so that what is free
// once it may begin only becomes more.
func (r *replay) start(s *step) int {
	at := s.release
	for _, a := range s.after {
		at = max(at, r.end[a])
	}
	for _, u := range s.uses {
		at = max(at, r.last[u.resource])
	}
	for _, u := range s.uses {
		at = r.free(u, at)
	}
	if s.planned > 0 {
		at = r.inDay(s, at)
	}
	for _, u := range s.uses {
		r.last[u.resource] = at
	}
	return at
}

// free is when so much of a resource is free, from a time on. Nothing asks again
// what was free before it.
func (r *replay) free(u use, at int) int {
	busy := r.busy[u.resource]
	for {
		left, next := r.all[u.resource], 0
		kept := busy[:0]
		for _, b := range busy {
			if b.end <= at {
				continue
			}
			kept = append(kept, b)
			left -= b.many
			if next == 0 || b.end < next {
				next = b.end
			}
		}
		busy = kept
		if left >= u.many || next == 0 {
			r.busy[u.resource] = busy
			return at
		}
		at = next
	}
}

// inDay puts a task off to a morning as the plan does, where it would not be done
// that day if it took what is planned; nobody knows yet how long it takes in
// fact. One that the plan has on a day is begun on it though it be late, and the
// crew stays until it is done.
func (r *replay) inDay(s *step, at int) int {
	n, _ := slices.BinarySearch(r.edges, at+1)
	for ; n < s.edges && r.edges[n] < at+s.planned; n++ {
		at = r.edges[n]
	}
	return at
}

// byStart orders tasks by their planned start, and of equal ones those first
// that others wait for.
func byStart(p *schedule.Problem, plan *schedule.Plan) []int {
	next := make([][]int, len(p.Tasks))
	waits, rank := make([]int, len(p.Tasks)), make([]int, len(p.Tasks))
	order := make([]int, 0, len(p.Tasks))
	for i := range p.Tasks {
		for _, a := range p.Tasks[i].After {
			next[a] = append(next[a], i)
		}
		if waits[i] = len(p.Tasks[i].After); waits[i] == 0 {
			order = append(order, i)
		}
	}
	for n := 0; n < len(order); n++ {
		rank[order[n]] = n
		for _, b := range next[order[n]] {
			if waits[b]--; waits[b] == 0 {
				order = append(order, b)
			}
		}
	}
	slices.SortFunc(order, func(a, b int) int {
		if plan.Start[a] != plan.Start[b] {
			return plan.Start[a] - plan.Start[b]
		}
		return rank[a] - rank[b]
	})
	return order
}
