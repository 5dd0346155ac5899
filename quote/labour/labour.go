// Package labour turns counts into crew hours: by task, window of work, phase
// and skill, with overtime by the day and by the week.
//
// Until there is a schedule the crew of a window shares its hours evenly over
// its people and days.
package labour

import (
	"slices"
	"strings"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/quote/job"
	"tentwright/quote/lift"
	"tentwright/quote/load"
	"tentwright/quote/parts"
)

// Result is the hours of a job.
type Result struct {
	Counts  []parts.Count // known only once vehicles are loaded, and those of tagged parts
	Sites   []Site
	Tasks   []Task
	Windows []Window
	Skills  []SkillHours // by window, then by skill
	Hours   money.Number // of all tasks
}

// Site is a site factor as it holds for the job, or for one tent that stands
// on ground of its own.
type Site struct {
	Key    string // surface, or surface.dinner
	Factor *catalog.SiteFactor
	Tent   string
	Option *catalog.SiteOption
}

// Task is one labour rule applied to one count.
type Task struct {
	Key    string
	Rule   *catalog.LabourRule
	Tent   string // id; none for the whole job
	Window string
	Count  string // key of the count
	Amount money.Number
	Sites  []string     // keys of the site factors that apply
	Factor money.Number // their product, to four places
	Hours  money.Number // person-hours, to two places
	Least  int          // people that the task needs: its rule's, or more because of what it lifts
}

// Window is a stretch of work by one crew, per person.
type Window struct {
	Spec     *catalog.Window
	Crew     int
	Days     int
	Worked   money.Number // that week before this job
	Smallest int          // crew that its tasks need
	Hours    money.Number // of all its tasks
	Person   money.Number // hours of each person
	Day      money.Number // hours of each person on each day
	DayOver  money.Number // of Person, beyond the daily limit
	Plain    money.Number // of Person, within it
	Before   money.Number // hours of the same week before this window
	WeekOver money.Number // of Plain, beyond the weekly limit
	Share    money.Number // overtime as a share of Person, to six places
}

// SkillHours is what one skill works in one window.
type SkillHours struct {
	Key    string
	Window string
	Skill  *catalog.Skill
	Hours  money.Number
	Over   money.Number // of these, overtime
	Cost   money.Number // to the yard
	Bill   money.Number // to the customer, where labour is charged
	Plain  money.Number // Hours less Over
}

// Estimate works out the hours of a job.
func Estimate(c *catalog.Catalog, j *job.Job, p *parts.Result, plan *load.Plan, lifts *lift.Result) *Result {
	e := &estimator{c: c, j: j, p: p, plan: plan, lifts: lifts, r: &Result{}}
	e.counts()
	e.sites()
	e.tasks()
	e.windows()
	e.skills()
	return e.r
}

type estimator struct {
	c     *catalog.Catalog
	j     *job.Job
	p     *parts.Result
	plan  *load.Plan
	lifts *lift.Result
	r     *Result
}

// counts adds what is known only now: trips, weights, tagged parts.
func (e *estimator) counts() {
	asked := map[string]bool{}
	for i := range e.c.Labour {
		rule := &e.c.Labour[i]
		driver, _ := catalog.FindDriver(rule.Driver)
		if !driver.Late || asked[rule.Driver] {
			continue
		}
		asked[rule.Driver] = true
		amount, any := e.late(rule.Driver)
		if any {
			e.r.Counts = append(e.r.Counts, parts.Count{Key: "job." + rule.Driver, Driver: rule.Driver, Name: driver.Name,
				Per: amount, Many: money.One, Amount: amount})
		}
	}
}

// late is the amount of a driver that depends on the load, and whether the job
// has any of it.
func (e *estimator) late(driver string) (money.Number, bool) {
	there := parts.Distance(e.c, e.j.Delivery.Distance).Mul(money.Int(2)) // and home
	// The workbook writes each of these as a formula, so that they follow a
	// changed distance or crew.
	switch driver {
	case "trips":
		return money.Int(Drives(&e.plan.Out)), true
	case "back-trips":
		return money.Int(Drives(&e.plan.Back)), true
	case "truck-miles":
		return there.Mul(money.Int(Drives(&e.plan.Out))), true
	case "back-truck-miles":
		return there.Mul(money.Int(Drives(&e.plan.Back))), true
	case "ride-miles":
		return there.Mul(money.Int(e.riders(catalog.Travel, &e.plan.Out))), true
	case "back-ride-miles":
		return there.Mul(money.Int(e.riders(catalog.Return, &e.plan.Back))), true
	case "weight-out":
		return money.Round(money.Float(e.plan.Out.Mass.In(e.c.Company.Units)), 2), true
	case "weight-back":
		return money.Round(money.Float(e.plan.Back.Mass.In(e.c.Company.Units)), 2), true
	}
	count, any := e.p.Tagged(strings.TrimPrefix(driver, catalog.TagDriver))
	return money.Int(count), any
}

// riders is how often someone rides to the site and home without driving: each
// of the window's crew on each day, less those who drive the vehicles.
func (e *estimator) riders(phase string, m *load.Manifest) int {
	window := e.window(phase)
	for i := range e.c.Rates.Windows {
		if spec := &e.c.Rates.Windows[i]; spec.ID == window {
			w := e.crewOf(spec)
			return max(0, w.Crew*w.Days-Drives(m))
		}
	}
	return 0
}

// Drives counts the trips that someone drives: a trailer rides behind one.
func Drives(m *load.Manifest) int {
	n := 0
	for i := range m.Trips {
		if m.Trips[i].Tow == "" {
			n++
		}
	}
	return n
}

// sites settles each site factor for the job and for each tent whose ground
// differs.
func (e *estimator) sites() {
	for i := range e.c.Site {
		f := &e.c.Site[i]
		e.r.Sites = append(e.r.Sites, Site{Key: f.ID, Factor: f, Option: e.j.Option(e.c, f.ID)})
		if f.ID != catalog.Surface {
			continue
		}
		for k := range e.p.Tents {
			if t := &e.p.Tents[k]; t.Job.Ground != "" {
				e.r.Sites = append(e.r.Sites, Site{Key: catalog.Surface + "." + t.Job.ID, Factor: f, Tent: t.Job.ID, Option: t.Ground})
			}
		}
	}
}

// site finds the key and factor of a kind for a tent, its own before the job's.
func (e *estimator) site(kind, tent string) (string, money.Number) {
	var own, general *Site
	for i := range e.r.Sites {
		s := &e.r.Sites[i]
		switch {
		case s.Factor.ID != kind:
		case s.Tent == "":
			general = s
		case s.Tent == tent:
			own = s
		}
	}
	if own == nil {
		own = general
	}
	if own == nil || own.Option == nil {
		return "", money.One
	}
	return own.Key, own.Option.Factor
}

// tasks applies each rule to each count that drives it.
func (e *estimator) tasks() {
	for i := range e.c.Labour {
		rule := &e.c.Labour[i]
		for _, count := range e.driven(rule) {
			e.r.Tasks = append(e.r.Tasks, e.task(rule, count))
		}
	}
	hours := make([]money.Number, len(e.r.Tasks))
	for i := range e.r.Tasks {
		hours[i] = e.r.Tasks[i].Hours
	}
	e.r.Hours = money.Sum(hours...)
}

// driven lists the counts that a rule is applied to: its one count that was
// known late, or those of the tents and of the job.
func (e *estimator) driven(rule *catalog.LabourRule) []*parts.Count {
	for i := range e.r.Counts {
		if e.r.Counts[i].Driver == rule.Driver {
			return []*parts.Count{&e.r.Counts[i]}
		}
	}
	return e.p.TentCounts(rule.Driver, rule.Families)
}

// task applies a rule to a count, slowed by the site that the count is of.
func (e *estimator) task(rule *catalog.LabourRule, count *parts.Count) Task {
	t := Task{Key: rule.ID + "/" + count.Key, Rule: rule, Tent: count.Tent, Window: e.window(rule.Phase),
		Count: count.Key, Amount: count.Amount, Factor: money.One,
		Least: max(rule.Crew, e.lifts.Smallest(rule, count.Tent))}
	for _, kind := range rule.Factors {
		key, factor := e.site(kind, count.Tent)
		if key != "" {
			t.Sites = append(t.Sites, key)
			t.Factor = t.Factor.Mul(factor)
		}
	}
	t.Factor = money.Round(t.Factor, 4)
	t.Hours = TaskHours(count.Amount, rule.Minutes, rule.Fixed, t.Factor)
	return t
}

// TaskHours is the person-hours of a task, rounded half away from zero to two
// places: fixed minutes and minutes for each of the driver, slowed by the
// site. There is nothing to do where the driver counts nothing.
func TaskHours(amount, minutes, fixed, factor money.Number) money.Number {
	if !amount.IsPositive() {
		return money.Zero
	}
	return money.DivRound(amount.Mul(minutes).Add(fixed).Mul(factor), money.Sixty, 2)
}

// window is the id of the window in which a phase is done; the shop's check has
// found one for each.
func (e *estimator) window(phase string) string {
	for i := range e.c.Rates.Windows {
		if slices.Contains(e.c.Rates.Windows[i].Phases, phase) {
			return e.c.Rates.Windows[i].ID
		}
	}
	return ""
}
