package learn_test

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/catalog/money"
	"tentwright/quote/labour"
	"tentwright/quote/learn"
)

// num reads a number of a test.
func num(text string) money.Number {
	n, err := money.Parse(text)
	if err != nil {
		panic(err)
	}
	return n
}

// rule is a labour rule that counts legs.
func rule(minutes, fixed string) catalog.LabourRule {
	return catalog.LabourRule{ID: "legs", Driver: "legs", Minutes: num(minutes), Fixed: num(fixed)}
}

// took is the tasks of one job each: amounts, and the minutes for one of them
// beside the fixed ones, on an ordinary site.
func took(fixed string, pairs ...[2]string) []learn.Task {
	var all []learn.Task
	for i, p := range pairs {
		minutes := num(p[0]).Mul(num(p[1])).Add(num(fixed))
		all = append(all, learn.Task{Job: fmt.Sprint("job ", i), Rule: "legs", Driver: "legs", Amount: num(p[0]), Factor: money.One, Plan: money.One,
			Hours: money.DivRound(minutes, money.Sixty, 16), Pos: diag.Pos{File: fmt.Sprint(i)}})
	}
	return all
}

// only is the proposal of a single rule.
func only(t testing.TB, r catalog.LabourRule, tasks []learn.Task) learn.Proposal {
	t.Helper()
	all, left := learn.Proposals([]catalog.LabourRule{r}, tasks, learn.LeastJobs)
	if len(all) != 1 || len(left) != 0 {
		t.Fatalf("%d proposals, left out %v; one proposal was expected", len(all), left)
	}
	return all[0]
}

// What becomes of a rule, case by case.
func TestProposals(t *testing.T) {
	five := num("5")
	for _, x := range []struct {
		name  string
		rule  catalog.LabourRule
		tasks []learn.Task
		state learn.State
		why   string
		fresh string
		jobs  int
		sure  learn.Sure
	}{
		{"two jobs are too few", rule("4", "0"), took("0", [2]string{"10", "6"}, [2]string{"20", "6"}), learn.TooFew, "", "4", 2, learn.Thin},
		{"three jobs, thin", rule("4", "0"), took("0", [2]string{"10", "6"}, [2]string{"20", "6.2"}, [2]string{"8", "5.8"}), learn.Change, "", "6", 3, learn.Thin},
		{"six jobs, firm", rule("4", "10"), took("10", [2]string{"10", "6"}, [2]string{"20", "6.2"}, [2]string{"8", "5.8"}, [2]string{"9", "6"}, [2]string{"9", "6.1"}, [2]string{"9", "5.9"}), learn.Change, "", "6", 6, learn.Firm},
		{"six jobs, fair", rule("4", "0"), took("0", [2]string{"10", "6"}, [2]string{"20", "7"}, [2]string{"8", "5"}, [2]string{"9", "6"}, [2]string{"9", "6"}, [2]string{"9", "6"}), learn.Change, "", "6", 6, learn.Fair},
		{"six jobs, wide", rule("1", "0"), took("0", [2]string{"10", "6"}, [2]string{"20", "12"}, [2]string{"8", "3"}, [2]string{"9", "6"}, [2]string{"9", "6"}, [2]string{"9", "6"}), learn.Change, "", "6", 6, learn.Thin},
		{"the old minutes are as likely", rule("6.1", "0"), took("0", [2]string{"10", "6"}, [2]string{"20", "6.2"}, [2]string{"8", "5.8"}), learn.Same, "", "6.1", 3, learn.Thin},
		{"the same once rounded", rule("0.333", "0"), took("0", [2]string{"10", "0.3333"}, [2]string{"20", "0.3333"}, [2]string{"8", "0.3333"}), learn.Same, "", "0.333", 3, learn.Thin},
		{"less than the fixed minutes", rule("4", "60"), took("0", [2]string{"10", "1"}, [2]string{"20", "1"}, [2]string{"8", "1"}), learn.ByHand, learn.BelowFixed, "4", 3, learn.Thin},
		{"fixed minutes only", rule("0", "20"), took("30", [2]string{"10", "0.1"}, [2]string{"20", "0.1"}, [2]string{"8", "0.1"}), learn.ByHand, learn.AllFixed, "0", 3, learn.Thin},
		{"beyond the range", catalog.LabourRule{ID: "legs", Driver: "legs", Minutes: num("4"), Pessimistic: &five}, took("0", [2]string{"10", "6"}, [2]string{"20", "6"}, [2]string{"8", "6"}), learn.ByHand, learn.BeyondRange, "4", 3, learn.Thin},
		{"from nothing", rule("0", "0"), took("0", [2]string{"10", "6"}, [2]string{"20", "6"}, [2]string{"8", "6"}), learn.Change, "", "6", 3, learn.Thin},
	} {
		t.Run(x.name, func(t *testing.T) {
			p := only(t, x.rule, x.tasks)
			if p.State != x.state || p.Why != x.why || !p.New.Equal(num(x.fresh)) || p.Jobs != x.jobs || p.Sure != x.sure {
				t.Errorf("%s (%q), new %s of %d jobs, %s; want %s (%q), %s of %d, %s", p.State, p.Why, p.New, p.Jobs, p.Sure, x.state, x.why, x.fresh, x.jobs, x.sure)
			}
		})
	}
}

// Tasks that say nothing are left out, each for its reason.
func TestLeftOut(t *testing.T) {
	tasks := took("0", [2]string{"10", "6"}, [2]string{"0", "6"}, [2]string{"10", "0"}, [2]string{"10", "6"}, [2]string{"10", "6"}, [2]string{"10", "0"})
	tasks[1].Hours = money.One
	tasks[3].Rule = "gone"
	tasks[4].Driver = "corners"
	all, left := learn.Proposals([]catalog.LabourRule{rule("4", "0"), {ID: "other", Driver: "legs"}}, tasks, 3)
	if len(all) != 1 || all[0].Jobs != 1 {
		t.Errorf("%+v; one proposal of one job was expected", all)
	}
	want := []learn.Left{{Rule: "legs", Why: learn.Nothing, Tasks: 1}, {Rule: "legs", Why: learn.NotDone, Tasks: 2},
		{Rule: "gone", Why: learn.NoRule, Tasks: 1}, {Rule: "legs", Why: learn.Driver, Tasks: 1}}
	if fmt.Sprint(left) != fmt.Sprint(want) {
		t.Errorf("left out %v, want %v", left, want)
	}
}

// A job in which a rule takes less than a quarter of an hour, all tents together,
// tells of rounding and not of minutes.
func TestShortIsLeftOut(t *testing.T) {
	tasks := took("0", [2]string{"10", "6"}, [2]string{"10", "6"}, [2]string{"1", "15"}, [2]string{"1", "15"}, [2]string{"1", "15"})
	for i := range 4 {
		tasks[i+1].Plan = num("0.12")
	}
	tasks[2].Job, tasks[3].Job = "three small tents", "three small tents"
	tasks[4].Job = "three small tents"
	all, left := learn.Proposals([]catalog.LabourRule{rule("4", "0")}, tasks, 3)
	if len(all) != 1 || all[0].Jobs != 2 || len(left) != 1 || left[0] != (learn.Left{Rule: "legs", Why: learn.Short, Tasks: 1}) {
		t.Errorf("%+v, left out %v; two jobs, and one task left out, were expected", all, left)
	}
}

// The tents of one job are one observation, however many they are.
func TestJobsAreClusters(t *testing.T) {
	tasks := took("0", [2]string{"10", "9"}, [2]string{"10", "9"}, [2]string{"10", "9"}, [2]string{"10", "9"}, [2]string{"10", "6"}, [2]string{"10", "6.1"})
	for i := range 4 {
		tasks[i].Job = "fairground"
	}
	p := only(t, rule("4", "0"), tasks)
	if p.Jobs != 3 || !p.Median.Equal(num("6.1")) {
		t.Errorf("%d jobs, median %s; want 3 and 6.1", p.Jobs, p.Median)
	}
}

// Exact times give the minutes back that they were made of, whatever the sizes,
// the site and the fixed minutes.
func TestExactGivesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		minutes := money.Round(money.Float(float64(rapid.IntRange(1, 999).Draw(t, "minutes"))), 0).Shift(int32(rapid.IntRange(-4, 0).Draw(t, "places")))
		r := catalog.LabourRule{ID: "legs", Driver: "legs", Minutes: minutes.Mul(money.Int(3)), Fixed: money.Int(rapid.IntRange(0, 60).Draw(t, "fixed"))}
		var tasks []learn.Task
		for i := range rapid.IntRange(3, 12).Draw(t, "jobs") {
			for range rapid.IntRange(1, 3).Draw(t, "tents") {
				amount := money.Int(rapid.IntRange(1, 5000).Draw(t, "amount"))
				factor := money.Int(rapid.IntRange(8, 30).Draw(t, "factor")).Shift(-1)
				hours := money.DivRound(amount.Mul(minutes).Add(r.Fixed).Mul(factor), money.Sixty, 16)
				tasks = append(tasks, learn.Task{Job: fmt.Sprint(i), Rule: "legs", Driver: "legs", Amount: amount, Factor: factor, Plan: money.One, Hours: hours})
			}
		}
		all, _ := learn.Proposals([]catalog.LabourRule{r}, tasks, learn.LeastJobs)
		p := &all[0]
		if p.State != learn.Change || !p.New.Equal(minutes) || p.Median.Sub(minutes).Abs().GreaterThan(num("0.000000001")) {
			t.Fatalf("%s: new %s, median %s; %s was expected", p.State, p.New, p.Median, minutes)
		}
	})
}

// Hours as the program itself estimates them, to two places, change nothing.
func TestEstimatesStay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rule("4", "10")
		var tasks []learn.Task
		for i := range rapid.IntRange(3, 12).Draw(t, "jobs") {
			amount, factor := money.Int(rapid.IntRange(4, 500).Draw(t, "amount")), money.Int(rapid.IntRange(8, 30).Draw(t, "factor")).Shift(-1)
			tasks = append(tasks, learn.Task{Job: fmt.Sprint(i), Rule: "legs", Driver: "legs", Amount: amount, Factor: factor, Plan: money.One,
				Hours: labour.TaskHours(amount, r.Minutes, r.Fixed, factor)})
		}
		all, _ := learn.Proposals([]catalog.LabourRule{r}, tasks, learn.LeastJobs)
		if p := &all[0]; !p.New.Equal(r.Minutes) && p.New.Sub(r.Minutes).Abs().GreaterThan(num("0.2")) {
			t.Fatalf("%s: new %s", p.State, p.New)
		}
	})
}

// Fewer than half of the jobs, in minutes instead of hours, by the clock instead
// of by the hand, or with no work noted at all, never carry the minutes out of
// what the others took.
func TestWrongHoursCarryNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 15).Draw(t, "jobs")
		low, high := money.Int(1000), money.Zero
		var tasks []learn.Task
		for i := range n {
			amount, each := money.Int(rapid.IntRange(1, 400).Draw(t, "amount")), money.Int(rapid.IntRange(40, 80).Draw(t, "minutes")).Shift(-1)
			hours := money.DivRound(amount.Mul(each), money.Sixty, 16)
			if i < (n-1)/2 {
				hours = hours.Mul(money.Int(rapid.SampledFrom([]int{60, 10, 1000}).Draw(t, "times")))
			} else {
				low, high = lesser(low, each), greater(high, each)
			}
			tasks = append(tasks, learn.Task{Job: fmt.Sprint(i), Rule: "legs", Driver: "legs", Amount: amount, Factor: money.One, Plan: money.One, Hours: hours})
		}
		all, _ := learn.Proposals([]catalog.LabourRule{rule("1", "0")}, tasks, learn.LeastJobs)
		slack := num("0.000000001")
		if m := all[0].Median; m.LessThan(low.Sub(slack)) || m.GreaterThan(high.Add(slack)) {
			t.Fatalf("median %s; from %s to %s was expected", m, low, high)
		}
	})
}

func lesser(a, b money.Number) money.Number {
	if a.LessThan(b) {
		return a
	}
	return b
}

func greater(a, b money.Number) money.Number {
	if a.GreaterThan(b) {
		return a
	}
	return b
}

// One job of seven typed in minutes leaves the proposal as it was to its last
// digit, and its cell is told.
func TestMinutesForHours(t *testing.T) {
	pairs := [][2]string{{"10", "6"}, {"20", "6.2"}, {"8", "5.8"}, {"9", "6"}, {"9", "6.1"}, {"9", "5.9"}, {"30", "6"}}
	clean := only(t, rule("4", "10"), took("10", pairs...))
	slip := took("10", pairs...)
	slip[6].Hours = slip[6].Hours.Mul(money.Sixty)
	p := only(t, rule("4", "10"), slip)
	if clean.State != learn.Change || !p.New.Equal(clean.New) || !p.Median.Equal(clean.Median) {
		t.Errorf("new %s, median %s; want %s, %s", p.New, p.Median, clean.New, clean.Median)
	}
	if len(clean.Far) != 0 || len(p.Far) != 1 || p.Far[0].Pos.File != "6" {
		t.Errorf("far off: %v, and %v with the slip", clean.Far, p.Far)
	}
}
