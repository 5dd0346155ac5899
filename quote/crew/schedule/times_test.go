package schedule_test

import (
	"slices"
	"testing"

	"tentwright/quote/crew/schedule"
)

// plain makes a task of one mode that uses nothing.
func plain(minutes int, after ...int) schedule.Task {
	return schedule.Task{Modes: []schedule.Mode{{Minutes: minutes, Use: []int{0}}}, After: after}
}

// The building project of Hillier and Lieberman, Introduction to Operations
// Research, chapter on project management with PERT/CPM: 14 activities A to N
// in weeks, done in 44 on the path A B C E F J L N. The network is from
// memory; the times below are worked out by hand from it:
//
//	early: A 0, B 0+2, C 2+4, D 6+10, E 16, I 16, F 16+4, G 16+6, J max(20+5, 16+7),
//	       H max(16+4, 22+7), K 25+8, L 33, M 29+9, N max(33+4, 33+5); ends at 38+6 = 44
//	late:  N 44-6, M 44-2, L 38-5, K 38-4, J min(33, 34)-8, F 25-5, I 25-7, H 42-9,
//	       G 33-7, D 26-6, E min(20, 33)-4, C min(20, 16, 18)-10, B 6-4, A 2-2
func TestTextbookTimes(t *testing.T) {
	p := &schedule.Problem{Capacity: []int{1}, Tasks: []schedule.Task{
		plain(2),         // 0 A excavate
		plain(4, 0),      // 1 B foundation
		plain(10, 1),     // 2 C rough wall
		plain(6, 2),      // 3 D roof
		plain(4, 2),      // 4 E outside plumbing
		plain(5, 4),      // 5 F inside plumbing
		plain(7, 3),      // 6 G outside siding
		plain(9, 4, 6),   // 7 H outside painting
		plain(7, 2),      // 8 I electrical work
		plain(8, 5, 8),   // 9 J wallboard
		plain(4, 9),      // 10 K flooring
		plain(5, 9),      // 11 L inside painting
		plain(2, 7),      // 12 M outside fixtures
		plain(6, 10, 11), // 13 N inside fixtures
	}}
	got := schedule.EarliestLatest(p)
	if got.Finish != 44 {
		t.Errorf("finish %d; 44 expected", got.Finish)
	}
	want := map[string][2][]int{
		"early": {got.EarlyStart, {0, 2, 6, 16, 16, 20, 22, 29, 16, 25, 33, 33, 38, 38}},
		"late":  {got.LateStart, {0, 2, 6, 20, 16, 20, 26, 33, 18, 25, 34, 33, 42, 38}},
		"slack": {got.Slack, {0, 0, 0, 4, 0, 0, 4, 4, 2, 0, 1, 0, 4, 0}},
	}
	for what, pair := range want {
		if !slices.Equal(pair[0], pair[1]) {
			t.Errorf("%s %v; %v expected", what, pair[0], pair[1])
		}
	}
	plan := schedule.First(p)
	if chain := schedule.Critical(p, plan); plan.Finish != 44 || !slices.Equal(chain, []int{0, 1, 2, 4, 5, 9, 11, 13}) {
		t.Errorf("plan of %d, critical %v; 44 on A B C E F J L N expected", plan.Finish, chain)
	}
}

// Days of 10: a whole task of 6 after one of 7 waits for the morning, and
// being done by 19 it starts by 13; the one of 12 is longer than any day and
// runs on, to 19. The release holds task 3.
func TestTimesHeedDays(t *testing.T) {
	whole := func(task schedule.Task) schedule.Task { task.Whole = true; return task }
	late := plain(1)
	late.Release = 13
	p := &schedule.Problem{Capacity: []int{1}, Edges: []int{10, 20, 30}, Tasks: []schedule.Task{
		plain(7), whole(plain(6, 0)), whole(plain(12, 0)), late, plain(2, 1, 2),
	}}
	got := schedule.EarliestLatest(p)
	if want := []int{0, 10, 7, 13, 19}; !slices.Equal(got.EarlyStart, want) {
		t.Errorf("early %v; %v expected", got.EarlyStart, want)
	}
	if want := []int{0, 13, 7, 20, 19}; !slices.Equal(got.LateStart, want) || got.Finish != 21 {
		t.Errorf("late %v, finish %d; %v and 21 expected", got.LateStart, got.Finish, want)
	}
}

// Two tents for a crew of four, by hand: 3 hands for 10, twice, cannot go side
// by side; a fifth and sixth hand would do it in one go. So 20, where the
// critical path is 10 and the work (3*10 + 3*10) / 4 = 15; the hand left over
// helps nobody, which the bound knows.
func TestCriticalByHands(t *testing.T) {
	p := &schedule.Problem{Capacity: []int{4}, Tasks: []schedule.Task{
		{Modes: []schedule.Mode{{Minutes: 10, Use: []int{3}}}},
		{Modes: []schedule.Mode{{Minutes: 10, Use: []int{3}}}},
	}}
	plan := schedule.Solve(p, schedule.Options{Schedules: 50})
	if plan.Finish != 20 || len(schedule.Critical(p, plan)) != 2 {
		t.Errorf("finish %d, critical %v; 20 and both expected", plan.Finish, schedule.Critical(p, plan))
	}
	if b := schedule.LowerBound(p); b != 20 {
		t.Errorf("bound %d; 20 expected", b)
	}
}

// More hands for less time pay only where hands are free: a task of 6 minutes
// by two or 4 by three, beside one of 6 by one. Three hands: 6 if the first
// takes two, 10 if it takes all three.
func TestModesLeaveHands(t *testing.T) {
	p := &schedule.Problem{Capacity: []int{3}, Tasks: []schedule.Task{
		{Modes: []schedule.Mode{{Minutes: 4, Use: []int{3}}, {Minutes: 6, Use: []int{2}}}},
		{Modes: []schedule.Mode{{Minutes: 6, Use: []int{1}}}},
	}}
	plan := schedule.Solve(p, schedule.Options{Schedules: 200})
	if plan.Finish != 6 || plan.Mode[0] != 1 {
		t.Errorf("finish %d in mode %d; 6 in mode 1 expected", plan.Finish, plan.Mode[0])
	}
}

// A mode longer than every day runs across its end, so that it starts before a
// quicker one that waits for the morning; the bound must not take the quick one's
// start for every mode. The figures are those of a crew that beat a wrong bound:
// unloading ends at 178, the day at 266; steps then take 99 minutes of all three
// hands from 266 on, power 180 of one from 178 on, and the hand-over 14.
func TestLongModeStartsSooner(t *testing.T) {
	p := &schedule.Problem{Capacity: []int{5}, Edges: []int{96, 266, 436, 606}, Tasks: []schedule.Task{
		{Release: 96, Whole: true, Modes: []schedule.Mode{{Minutes: 82, Use: []int{5}}}},
		{After: []int{0}, Whole: true, Modes: []schedule.Mode{{Minutes: 99, Use: []int{4}}}},
		{After: []int{0}, Whole: true, Modes: []schedule.Mode{{Minutes: 90, Use: []int{2}}, {Minutes: 180, Use: []int{1}}}},
		{After: []int{1, 2}, Whole: true, Modes: []schedule.Mode{{Minutes: 14, Use: []int{3}}}},
	}}
	plan := schedule.Solve(p, schedule.Options{Schedules: 200, Seed: 1})
	if bound := schedule.LowerBound(p); plan.Finish != 379 || bound > 379 {
		t.Errorf("finish %d, bound %d; 379 and no more were expected", plan.Finish, bound)
	}
}
