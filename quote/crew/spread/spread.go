// Package spread says how sure a finish is: it draws the minutes of each task
// between what is optimistic and what is pessimistic, and runs the plan again.
//
//	Three    optimistic, likely and pessimistic minutes of one task
//	Run      the plan with drawn minutes, many times
//	Result   mean, deviation and percentiles of the finishes
//
// A plan is run as people follow it: each task is done in the way that the plan
// chose, and people and gear take their tasks in the order of the planned starts.
// Nothing is known ahead: a task begins when those it waits for are done, when
// all before it in the plan that need the same people or gear have begun, and
// when its own are free, however long anything then takes. In the theory this is
// an activity-based policy (Stork 2001, Stochastic resource-constrained project
// scheduling, TU Berlin), applied resource by resource.
//
// The tasks are drawn apart from each other. What slows all of them together,
// such as rain or hard ground, is not in here: that is for the site factors.
package spread

import (
	"math/rand/v2"

	"tentwright/quote/crew/schedule"
)

// Run runs a plan with drawn minutes, three for each task of the problem in the
// mode that the plan has chosen for it. The same seed gives the same result
// everywhere, and the same draws to every plan of the same tasks, so that plans
// can be compared. There are no runs in the result where plan and tasks do not
// belong together.
func Run(p *schedule.Problem, plan *schedule.Plan, three []Three, runs int, seed uint64) Result {
	if !fits(p, plan, three) || runs < 1 {
		return Result{}
	}
	r := newReplay(p, plan)
	of := shapesOf(three)
	random := rand.NewPCG(seed, 0)
	ends := make([]int, runs)
	for n := range ends {
		for i := range three {
			r.ticks[i] = of[i].draw(random.Uint64())
		}
		ends[n] = r.run()
	}
	return newResult(ends)
}

// fits tells whether a plan has a mode and a start for every task.
func fits(p *schedule.Problem, plan *schedule.Plan, three []Three) bool {
	if p == nil || plan == nil || len(three) != len(p.Tasks) || len(plan.Start) != len(p.Tasks) || len(plan.Mode) != len(p.Tasks) {
		return false
	}
	for i, m := range plan.Mode {
		if m < 0 || m >= len(p.Tasks[i].Modes) {
			return false
		}
	}
	return true
}
