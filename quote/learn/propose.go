package learn

import (
	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/catalog/money"
)

// State is what becomes of a rule's minutes.
type State string

// The states. Only a change is written.
const (
	Change State = "change"
	Same   State = "no change" // the old minutes are as likely as the new ones
	TooFew State = "too few"   // jobs
	ByHand State = "by hand"   // a person must look at more than the minutes
)

// Proposal is what the jobs say of one labour rule.
type Proposal struct {
	Rule       *catalog.LabourRule
	State      State
	Why        string // of the state ByHand
	Jobs       int
	Median     money.Number // minutes by the jobs, not rounded
	New        money.Number // as a person would write them; the old ones unless there is a change
	Low, High  money.Number // between which the true median lies
	Confidence money.Number // with which it does, in percent
	Sure       Sure
	Fit        *Fit  // what would follow the sizes better; nil if nothing is plain
	Far        []Far // hours that are most likely typed wrongly
}

// Why minutes are not proposed although there are jobs enough.
const (
	AllFixed    = "the rule has fixed minutes only"
	BelowFixed  = "half of the jobs took less than the fixed minutes"
	BeyondRange = "the new minutes are beyond the optimistic or pessimistic ones of the rule"
)

// LeastJobs is the fewest jobs that anything is proposed from. Even of three, all
// lie on one side of minutes that are right in one case of four; of two, in every
// other.
const LeastJobs = 3

// propose holds the tasks of one rule against it. There is at least one.
func propose(rule *catalog.LabourRule, tasks []Task, least int) Proposal {
	works := jobs(tasks)
	each := make([]money.Number, len(works))
	for i := range works {
		each[i] = works[i].each(rule.Fixed)
	}
	p := Proposal{Rule: rule, Jobs: len(works), Median: median(each), New: rule.Minutes}
	p.Low, p.High, p.Confidence = interval(each)
	fresh := rounded(p.Median, p.Low, p.High)
	p.Sure = sure(len(works), p.Low, p.High, p.Median)
	p.State, p.Why = p.judge(fresh, max(least, LeastJobs))
	if p.State == Change {
		p.New = fresh
	}
	if p.Jobs >= LeastJobs {
		p.Fit, p.Far = fit(rule, works), far(rule, p.Median, tasks)
	}
	if p.Why == AllFixed {
		p.Fit = &Fit{Fixed: fixedOnly(works)}
	}
	return p
}

// judge says what becomes of the rule's minutes, and why that is for a person.
func (p *Proposal) judge(fresh money.Number, least int) (State, string) {
	r := p.Rule
	switch {
	case p.Jobs < least:
		return TooFew, ""
	case within(r.Minutes, p.Low, p.High) || fresh.Equal(r.Minutes):
		return Same, ""
	case r.Minutes.IsZero() && r.Fixed.IsPositive():
		return ByHand, AllFixed
	case !p.Median.IsPositive():
		return ByHand, BelowFixed
	case r.Optimistic != nil && fresh.LessThan(*r.Optimistic), r.Pessimistic != nil && fresh.GreaterThan(*r.Pessimistic):
		return ByHand, BeyondRange
	}
	return Change, ""
}

// Percent is by how much the minutes change, to a whole percent.
func (p *Proposal) Percent() money.Number {
	return money.DivRound(p.New.Sub(p.Rule.Minutes).Mul(money.Hundred), p.Rule.Minutes, 0)
}

// Far is a figure far from what the other jobs took.
type Far struct {
	Pos             diag.Pos
	Hours, Expected money.Number // typed, and by the median
}

// Hours are far off from this many times, or as small a part, of what is
// expected: the slip of minutes for hours makes it sixty, a comma ten. A slow
// crew takes twice or three times. The difference in hours keeps the roundings
// of small tasks out.
var (
	farTimes = money.Int(10)
	farHours = money.One
)

// far lists the hours that are most likely typed wrongly. They need not be
// mended: the median stands without them.
func far(rule *catalog.LabourRule, minutes money.Number, tasks []Task) []Far {
	if !minutes.IsPositive() {
		return nil
	}
	var all []Far
	for i := range tasks {
		t := &tasks[i]
		want := money.DivRound(t.Amount.Mul(minutes).Add(rule.Fixed).Mul(t.Factor), money.Sixty, 2)
		off := t.Hours.Sub(want).Abs()
		if off.GreaterThan(farHours) && (t.Hours.GreaterThan(want.Mul(farTimes)) || t.Hours.Mul(farTimes).LessThan(want)) {
			all = append(all, Far{t.Pos, t.Hours, want})
		}
	}
	return all
}
