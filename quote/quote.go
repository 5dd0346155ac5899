// Package quote runs the stages that turn a job into a finished quote: parts,
// load, labour, price, in this order, and nothing else.
//
// Minutes depend on weights and trips, and payload on the people who ride.
// The circle is cut by one rule: as many ride as the vehicles have seats,
// before any crew is known.
package quote

import (
	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/quote/job"
	"tentwright/quote/labour"
	"tentwright/quote/load"
	"tentwright/quote/parts"
	"tentwright/quote/price"
)

// Quote is a job with the result of every stage.
type Quote struct {
	Catalog *catalog.Catalog
	Job     *job.Job
	Parts   *parts.Result
	Load    *load.Plan
	Labour  *labour.Result
	Price   *price.Result
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
	var problems diag.List
	q.Parts, problems = parts.Build(c, j)
	list.Join(problems)
	if list.Err() != nil {
		return nil, list.Sorted()
	}
	q.Load, problems = load.Pack(c, q.Parts, parts.Distance(c, j.Delivery.Distance))
	list.Join(problems)
	if list.Err() != nil {
		return nil, list.Sorted()
	}
	q.Labour = labour.Estimate(c, j, q.Parts, q.Load)
	q.Price = price.Build(c, j, q.Parts, q.Load, q.Labour)
	q.check()
	return q, list.Sorted()
}
