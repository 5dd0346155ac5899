package schedule_test

import (
	"fmt"
	"math"
	"testing"

	"tentwright/quote/crew/schedule"
)

// numbers is a small generator of numbers (Knuth's MMIX constants), so that
// the benchmarks meet the same problems everywhere.
type numbers uint64

func (r *numbers) below(n int) int {
	*r = *r*6364136223846793005 + 1442695040888963407
	return int(uint64(*r>>33) % uint64(n))
}

// tents is a problem like a job's: tents of ten tasks one after the other,
// two modes each, a crew of twelve, two trucks and one lift, in days of nine
// hours.
func tents(n int) *schedule.Problem {
	r := numbers(n)
	p := &schedule.Problem{Capacity: []int{12, 2, 1}}
	for i := range n {
		hands, minutes := 2+r.below(3), 10+r.below(110)
		lift := max(0, r.below(8)-6)
		t := schedule.Task{Whole: r.below(3) == 0, Modes: []schedule.Mode{
			{Minutes: minutes, Use: []int{hands, max(0, r.below(6)-4), lift}},
			{Minutes: minutes*2/3 + 1, Use: []int{hands * 2, 0, lift}},
		}}
		if i%10 > 0 {
			t.After = append(t.After, i-1)
		}
		if i%10 > 4 && r.below(2) == 0 {
			t.After = append(t.After, i-1-r.below(4))
		}
		p.Tasks = append(p.Tasks, t)
	}
	for e := 540; e < 40*n; e += 540 {
		p.Edges = append(p.Edges, e)
	}
	return p
}

// loose is a problem without any order: all tasks want to start at once.
func loose(n int) *schedule.Problem {
	r := numbers(n)
	p := &schedule.Problem{Capacity: []int{10, 20}}
	for range n {
		p.Tasks = append(p.Tasks, schedule.Task{Modes: []schedule.Mode{{Minutes: 1 + r.below(200), Use: []int{1 + r.below(5), r.below(9)}}}})
	}
	return p
}

// woven is a problem of which each task waits for up to three of the twenty
// before it.
func woven(n int) *schedule.Problem {
	r := numbers(n)
	p := &schedule.Problem{Capacity: []int{20, 20, 20, 20}}
	for i := range n {
		t := schedule.Task{Modes: []schedule.Mode{{Minutes: 1 + r.below(10), Use: []int{r.below(11), r.below(11), r.below(11), r.below(11)}}}}
		for range 3 {
			if a := i - 1 - r.below(20); a >= 0 {
				t.After = append(t.After, a)
			}
		}
		p.Tasks = append(p.Tasks, t)
	}
	return p
}

// families are problems of different shapes, by number of tasks.
var families = []struct {
	name    string
	problem func(int) *schedule.Problem
}{{"tents", tents}, {"loose", loose}, {"woven", woven}}

// BenchmarkFirst prints how the time of one serial pass grows: the exponent
// between 100 and 10,000 tasks.
func BenchmarkFirst(b *testing.B) {
	for _, family := range families {
		took := map[int]float64{} // on average: where others share the machine they slow short runs and long ones alike
		for _, n := range []int{100, 1000, 10000} {
			p := family.problem(n)
			b.Run(fmt.Sprintf("%s/n=%d", family.name, n), func(b *testing.B) {
				for b.Loop() {
					if schedule.First(p) == nil {
						b.Fatal("no plan")
					}
				}
				took[n] = float64(b.Elapsed().Nanoseconds()) / float64(b.N)
				b.ReportMetric(took[n]/float64(n), "ns/task")
				if n == 10000 && took[100] > 0 {
					b.ReportMetric(math.Log(took[n]/took[100])/math.Log(100), "exponent")
				}
			})
		}
	}
}

// BenchmarkSolve prints what a thousand schedules gain on 300 tasks.
func BenchmarkSolve(b *testing.B) {
	p := tents(300)
	for b.Loop() {
		plan := schedule.Solve(p, schedule.Options{Schedules: 1000, Seed: 1})
		b.ReportMetric(100*(1-float64(plan.Finish)/float64(schedule.First(p).Finish)), "gain-%")
		b.ReportMetric(100*(float64(plan.Finish)/float64(schedule.LowerBound(p))-1), "above-bound-%")
	}
}
