package crew

import (
	"tentwright/catalog"
	"tentwright/quote/crew/schedule"
	"tentwright/quote/job"
	"tentwright/quote/labour"
	"tentwright/quote/load"
	"tentwright/quote/parts"
)

// Build plans every window of a job. It is nil where the shop has no crew file.
func Build(c *catalog.Catalog, j *job.Job, p *parts.Result, plan *load.Plan, l *labour.Result) *Result {
	if c.Crew == nil {
		return nil
	}
	r := &Result{}
	rules, busy := map[string]*catalog.LabourRule{}, map[*catalog.LabourRule]string{}
	for i := range c.Labour {
		rules[c.Labour[i].ID] = &c.Labour[i]
	}
	for i := range l.Tasks {
		if t := &l.Tasks[i]; t.Hours.IsPositive() {
			busy[t.Rule] = t.Window
		}
	}
	for i := range l.Windows {
		b := &winder{c: c, j: j, p: p, l: l, rules: rules, busy: busy, w: &l.Windows[i], done: r.Windows}
		r.Windows = append(r.Windows, b.window(plan))
		r.Cautions = append(r.Cautions, b.says...)
	}
	r.Cautions = append(r.Cautions, heatCautions(c, j)...)
	return r
}

// window plans one window.
func (b *winder) window(plan *load.Plan) Window {
	w := Window{Labour: b.w, Setting: b.c.Crew.Day(b.w.Spec.ID), Asked: b.w.Days}
	if !b.prepare(plan) {
		return w
	}
	var d *draft
	d, w.Sizes = b.sizes()
	w.Crews, w.Leads = d.t.crews, d.t.leads
	w.Days, w.Tasks, w.People = d.days, d.tasks, d.t.people
	b.leave, b.quiet = d.leave, d.quiet
	if n := len(d.days); n > b.w.Days {
		w.Asked = min(n, b.given())
	}
	w.Finish, w.Ready = d.done, b.ready()
	if b.ask.Inspect != 0 {
		w.Inspect = Moment{b.due(), b.ask.Inspect}
	}
	for i := range w.People {
		for _, h := range w.People[i].Days {
			w.Work, w.Paid = w.Work+h.Work, w.Paid+h.Paid
		}
	}
	w.Idle = w.Paid - w.Work
	w.Chain = d.chain()
	for _, i := range w.Chain {
		w.Tasks[i].Critical = true
	}
	w.Tried = d.tried
	if site := d.parts[1]; site.plan != nil {
		w.Minutes, w.Shortest = site.finish(), schedule.LowerBound(&site.z.p)
	}
	w.Spread = d.spread()
	b.look(d)
	b.crossed(&w)
	return w
}
