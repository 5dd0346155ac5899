// Package quote runs the stages that turn a job into a finished quote: tents,
// anchors, power, parts, exits, site plan, load, lifts, labour, crew, price,
// dates, in this order, and nothing else.
//
// Minutes depend on weights and trips, and payload on the people who ride.
// The circle is cut by one rule: as many ride as the vehicles have seats,
// before any crew is known.
package quote

import (
	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/quote/anchor"
	"tentwright/quote/crew"
	"tentwright/quote/dates"
	"tentwright/quote/egress"
	"tentwright/quote/job"
	"tentwright/quote/labour"
	"tentwright/quote/layout"
	"tentwright/quote/lift"
	"tentwright/quote/load"
	"tentwright/quote/parts"
	"tentwright/quote/power"
	"tentwright/quote/price"
	"tentwright/quote/tent"
)

// Quote is a job with the result of every stage. A stage whose file the shop
// does not have leaves nil.
type Quote struct {
	Catalog *catalog.Catalog
	Job     *job.Job
	Anchor  *anchor.Result
	Power   *power.Result
	Parts   *parts.Result
	Egress  *egress.Result
	Plan    *layout.Plan
	Load    *load.Plan
	Lift    *lift.Result
	Labour  *labour.Result
	Crew    *crew.Result
	Price   *price.Result
	Dates   *dates.Result
	Checks  []Check
}

// Build computes a quote. Nothing is computed from a job that does not fit
// the catalog; the list then says everything that is wrong with it.
func Build(c *catalog.Catalog, j *job.Job) (*Quote, diag.List) {
	list := j.Check(c)
	if list.Err() != nil {
		return nil, list
	}
	q := &Quote{Catalog: c, Job: j}
	if list.Join(q.goods()); list.Err() != nil {
		return nil, list.Sorted()
	}
	var problems diag.List
	q.Load, problems = load.Pack(c, q.Parts, parts.Distance(c, j.Delivery.Distance))
	list.Join(problems)
	if list.Err() != nil {
		return nil, list.Sorted()
	}
	q.Lift = lift.Build(c, q.Parts)
	q.Labour = labour.Estimate(c, j, q.Parts, q.Load, q.Lift)
	q.Crew = crew.Build(c, j, q.Parts, q.Load, q.Labour)
	q.Price = price.Build(c, j, q.Parts, q.Load, q.Labour)
	q.Dates = dates.Build(c, j, q.Parts)
	q.check()
	return q, list.Sorted()
}

// goods finds all that goes along: the tents, what holds, warms and lights
// them, and what is ordered beside them.
func (q *Quote) goods() diag.List {
	c, j := q.Catalog, q.Job
	tents, list := tent.Build(c, j)
	if list.Err() != nil {
		return list
	}
	var problems diag.List
	q.Anchor, tents = anchor.Build(c, j, tents)
	list.Join(problems)
	q.Power = power.Build(c, j, tents)
	var planned []parts.Planned
	if q.Power != nil {
		planned = q.Power.Planned
	}
	q.Parts, problems = parts.Build(c, j, tents, planned)
	list.Join(problems)
	if list.Err() == nil {
		q.Egress = egress.Build(c, j, q.Parts)
		q.Plan = layout.Build(c, j, tents)
	}
	return list
}
