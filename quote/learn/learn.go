// Package learn proposes new minutes for labour rules from the hours that past
// jobs took.
//
// Of each job and rule it takes one figure: the minutes for one of what the
// rule counts, once the site factor is divided out and the fixed minutes are
// taken off. The new minutes are the median of these figures. That is the line
// through the fixed minutes with the least sum of relative errors, and fewer than
// half of the jobs may be noted wrongly, in minutes instead of hours or by the
// clock instead of by the hand, without carrying it away.
//
// Each job has one vote, whatever its size: tents of one job share their crew
// and their weather, and a fairground with ten times the legs would otherwise
// decide alone.
package learn

import (
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/catalog/money"
)

// Task is what one task of a past job took.
type Task struct {
	Job    string       // tasks of one job count as one observation
	Rule   string       // id of the labour rule
	Driver string       // what the amount counts
	Amount money.Number // of the driver
	Factor money.Number // by which the site slowed it
	Plan   money.Number // person-hours that it was planned with
	Hours  money.Number // and that it took
	Pos    diag.Pos     // where they were typed
}

// minutes is the hand-minutes that a task would have taken on a usual site, to
// places enough that no figure of the shop shows the rounding.
func (t *Task) minutes() money.Number {
	return money.DivRound(t.Hours.Mul(money.Sixty), t.Factor, places)
}

// places is how many decimals are kept on the way.
const places = 12

// Why a task says nothing of its rule's minutes.
const (
	NoRule  = "the shop no longer has this rule"
	Driver  = "the shop now counts it by something else"
	Nothing = "no count was planned"
	NotDone = "0 hours were typed, so it was not done"
	Short   = "less than a quarter of an hour was planned in the job, too little to be timed"
)

// Left is the tasks of one rule that are left out for one reason.
type Left struct {
	Rule, Why string
	Tasks     int
}

// Proposals holds what jobs took against the labour rules of a shop. Rules of
// which no job tells anything are left out; the others come in the shop's
// order. A rule wants least jobs before anything is proposed.
func Proposals(rules []catalog.LabourRule, tasks []Task, least int) ([]Proposal, []Left) {
	byRule, left := sorted(rules, tasks)
	var all []Proposal
	for i := range rules {
		long, short := timed(byRule[rules[i].ID])
		if short > 0 {
			left = append(left, Left{rules[i].ID, Short, short})
		}
		if len(long) > 0 {
			all = append(all, propose(&rules[i], long, least))
		}
	}
	return all, left
}

// sorted gives each rule its tasks, and counts those that no rule can use.
func sorted(rules []catalog.LabourRule, tasks []Task) (map[string][]Task, []Left) {
	known := map[string]*catalog.LabourRule{}
	for i := range rules {
		known[rules[i].ID] = &rules[i]
	}
	byRule := map[string][]Task{}
	var left []Left
	for i := range tasks {
		t := &tasks[i]
		if why := t.useless(known[t.Rule]); why != "" {
			left = leave(left, t.Rule, why)
			continue
		}
		byRule[t.Rule] = append(byRule[t.Rule], *t)
	}
	return byRule, left
}

// useless says why a task tells nothing of a rule's minutes; "" if it does.
func (t *Task) useless(rule *catalog.LabourRule) string {
	switch {
	case rule == nil:
		return NoRule
	case rule.Driver != t.Driver:
		return Driver
	case !t.Amount.IsPositive() || !t.Factor.IsPositive():
		return Nothing
	case !t.Hours.IsPositive():
		return NotDone
	}
	return ""
}

// leastPlan is the hours that a rule must take in a job to tell anything: people
// note quarters of an hour (common practice, no source), and what is shorter
// would tell of their rounding. The plan is asked and not the hours, since to
// leave out low hours alone would raise the minutes.
var leastPlan = money.Percent(money.Int(25))

// timed is the tasks of one rule in the jobs in which it is long enough to be
// timed, and how many there are in the others.
func timed(tasks []Task) (long []Task, short int) {
	plan := map[string]money.Number{}
	for i := range tasks {
		plan[tasks[i].Job] = plan[tasks[i].Job].Add(tasks[i].Plan)
	}
	for i := range tasks {
		if plan[tasks[i].Job].LessThan(leastPlan) {
			short++
		} else {
			long = append(long, tasks[i])
		}
	}
	return long, short
}

// leave counts a task that is left out.
func leave(left []Left, rule, why string) []Left {
	n := slices.IndexFunc(left, func(l Left) bool { return l.Rule == rule && l.Why == why })
	if n < 0 {
		return append(left, Left{rule, why, 1})
	}
	left[n].Tasks++
	return left
}

// work is what all tasks of one rule took in one job.
type work struct {
	tasks   money.Number
	amount  money.Number
	minutes money.Number
}

// jobs adds up the tasks of each job, in the order in which they come.
func jobs(tasks []Task) []work {
	at := map[string]int{}
	var all []work
	for i := range tasks {
		t := &tasks[i]
		n, ok := at[t.Job]
		if !ok {
			n = len(all)
			at[t.Job] = n
			all = append(all, work{})
		}
		w := &all[n]
		w.tasks, w.amount, w.minutes = w.tasks.Add(money.One), w.amount.Add(t.Amount), w.minutes.Add(t.minutes())
	}
	return all
}

// each is the minutes for one of what is counted, beside the fixed ones.
func (w *work) each(fixed money.Number) money.Number {
	return money.DivRound(w.minutes.Sub(fixed.Mul(w.tasks)), w.amount, places)
}
