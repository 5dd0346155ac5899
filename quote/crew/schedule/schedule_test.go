package schedule_test

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tentwright/quote/crew/schedule"
)

// Every plan stands up to the checker, no plan beats the bound, and more
// search is never worse.
func TestPlansHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyProblem(t, 14, 3)
		if faults := p.Check(); len(faults) > 0 {
			t.Fatal(faults)
		}
		seed := rapid.Uint64().Draw(t, "seed")
		bound := schedule.LowerBound(p)
		last := schedule.First(p)
		for _, n := range []int{0, 1, 2, 7, 40, 300, 1000} {
			plan := last
			if n > 0 {
				plan = schedule.Solve(p, schedule.Options{Schedules: n, Seed: seed})
			}
			if err := faulty(p, plan); err != nil {
				t.Fatalf("%d schedules: %v", n, err)
			}
			if plan.Finish < bound || plan.Finish > last.Finish {
				t.Fatalf("%d schedules: finish %d, bound %d, before %d", n, plan.Finish, bound, last.Finish)
			}
			if plan.Tried < 1 || plan.Tried > max(n, 1) {
				t.Fatalf("%d schedules: %d tried", n, plan.Tried)
			}
			last = plan
		}
		chainHolds(t, p, last)
	})
}

// chainHolds looks at a critical chain: each task begins where the one before
// ends, or at the start of a day that was too short for it after that.
func chainHolds(t *rapid.T, p *schedule.Problem, plan *schedule.Plan) {
	chain := schedule.Critical(p, plan)
	if len(p.Tasks) == 0 {
		return
	}
	if len(chain) == 0 || plan.End(p, chain[len(chain)-1]) != plan.Finish {
		t.Fatalf("chain %v does not reach %d", chain, plan.Finish)
	}
	morning := func(i int) bool { return p.Tasks[i].Whole && slices.Contains(p.Edges, plan.Start[i]) }
	first := chain[0]
	if s := plan.Start[first]; s != 0 && s != p.Tasks[first].Release && !morning(first) {
		t.Fatalf("chain %v begins at %d", chain, s)
	}
	for x, i := range chain[1:] {
		before := plan.End(p, chain[x])
		if before != plan.Start[i] && !(morning(i) && before < plan.Start[i]) {
			t.Fatalf("chain %v: task %d starts at %d, the one before ends at %d", chain, i, plan.Start[i], before)
		}
	}
}

// Small problems are solved to the end, against a search of all plans.
func TestSmallProblemsAreOptimal(t *testing.T) {
	for name, modes := range map[string]int{"one mode": 1, "modes": 2} {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				p := anyProblem(t, 7-modes, modes)
				plan := schedule.Solve(p, schedule.Options{Schedules: 6000, Seed: 3})
				if want := shortest(p); len(p.Tasks) > 0 && plan.Finish != want {
					t.Fatalf("finish %d; %d expected", plan.Finish, want)
				}
			})
		})
	}
}

// The same problem, number of schedules and seed give the same plan.
func TestSolveRepeats(t *testing.T) {
	p := tents(60)
	a := schedule.Solve(p, schedule.Options{Schedules: 2000, Seed: 5})
	b := schedule.Solve(p, schedule.Options{Schedules: 2000, Seed: 5})
	if !reflect.DeepEqual(a, b) {
		t.Error("two runs differ")
	}
}

// A stop is heard, and a plan is there all the same.
func TestSolveStops(t *testing.T) {
	p := tents(60)
	plan := schedule.Solve(p, schedule.Options{Schedules: 1 << 40, Stop: func() bool { return true }})
	if err := faulty(p, plan); err != nil {
		t.Error(err)
	}
	if plan.Tried != 1 {
		t.Errorf("%d schedules tried; 1 expected", plan.Tried)
	}
}

// Long problems, where First skips what is full, hold too, in one word of
// uses and in several.
func TestLongPlansHold(t *testing.T) {
	for _, family := range families {
		p := family.problem(700)
		for range 2 {
			for _, plan := range []*schedule.Plan{schedule.First(p), schedule.Solve(p, schedule.Options{Schedules: 30})} {
				if err := faulty(p, plan); err != nil {
					t.Errorf("%s: %v", family.name, err)
				}
			}
			p = doubled(p)
		}
	}
}

// doubled repeats the resources of a problem, with huge numbers, so that they
// fill several words.
func doubled(p *schedule.Problem) *schedule.Problem {
	const times = 1 << 26
	q := &schedule.Problem{Capacity: slices.Clone(p.Capacity), Edges: p.Edges, Tasks: slices.Clone(p.Tasks)}
	for _, c := range p.Capacity {
		q.Capacity = append(q.Capacity, c*times)
	}
	for i := range q.Tasks {
		q.Tasks[i].Modes = slices.Clone(q.Tasks[i].Modes)
		for m := range q.Tasks[i].Modes {
			mode := &q.Tasks[i].Modes[m]
			use := slices.Clone(mode.Use)
			for _, u := range mode.Use {
				use = append(use, u*times)
			}
			mode.Use = use
		}
	}
	return q
}

// Resources said twice change nothing, whether they fit one word or not. (Of
// several modes another may be chosen: what is said twice weighs twice.)
func TestWordsAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyProblem(t, 10, 1)
		o := schedule.Options{Schedules: 60, Seed: 1}
		a, b := schedule.Solve(p, o), schedule.Solve(doubled(p), o)
		if !reflect.DeepEqual(a.Start, b.Start) {
			t.Fatalf("starts %v and %v", a.Start, b.Start)
		}
	})
}

// What cannot be planned is said in words, and not planned.
func TestCheck(t *testing.T) {
	one := []schedule.Mode{{Minutes: 1, Use: []int{1}}}
	task := func(after ...int) schedule.Task { return schedule.Task{Modes: one, After: after} }
	mode := func(minutes int, use ...int) []schedule.Task {
		return []schedule.Task{{Modes: []schedule.Mode{{Minutes: minutes, Use: use}}}}
	}
	for _, c := range []struct {
		name string
		p    schedule.Problem
		want string
	}{
		{"circle", schedule.Problem{Tasks: []schedule.Task{task(), task(0, 3), task(1), task(2)}}, "task 1 waits for itself: 1 after 3 after 2 after 1"},
		{"itself", schedule.Problem{Tasks: []schedule.Task{task(0)}}, "task 0 waits for itself: 0 after 0"},
		{"no such task", schedule.Problem{Tasks: []schedule.Task{task(7)}}, "task 0 waits for task 7; 0 to 0 expected"},
		{"no mode", schedule.Problem{Tasks: []schedule.Task{{}}}, "task 0 has no mode; at least one expected"},
		{"too much", schedule.Problem{Tasks: mode(1, 5)}, "task 0, mode 0 uses 5 of resource 0; 0 to 4 expected"},
		{"negative use", schedule.Problem{Tasks: mode(1, -1)}, "task 0, mode 0 uses -1 of resource 0; 0 to 4 expected"},
		{"negative minutes", schedule.Problem{Tasks: mode(-1, 1)}, "task 0, mode 0 takes -1 minutes"},
		{"another number of resources", schedule.Problem{Tasks: mode(1)}, "task 0, mode 0 uses 0 resources; all 1 expected"},
		{"release", schedule.Problem{Tasks: []schedule.Task{{Modes: one, Release: -1}}}, "task 0 is released at -1"},
		{"edges", schedule.Problem{Edges: []int{5, 5}}, "end of day 1 is at 5; expected after the one before"},
		{"capacity", schedule.Problem{Capacity: []int{-1}}, "capacity of resource 0 is -1"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if c.p.Capacity == nil {
				c.p.Capacity = []int{4}
			}
			faults := strings.Join(c.p.Check(), "\n")
			if !strings.Contains(faults, c.want) {
				t.Errorf("got %q; %q expected", faults, c.want)
			}
			if schedule.First(&c.p) != nil || schedule.Solve(&c.p, schedule.Options{}) != nil || schedule.EarliestLatest(&c.p) != nil {
				t.Error("planned all the same")
			}
		})
	}
}
