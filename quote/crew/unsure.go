package crew

import (
	"tentwright/quote/crew/spread"
)

const (
	runs = 500 // of the simulation
	seed = 1   // of its random numbers: the same job gives the same figures
)

// spread says how sure the finish is, by running the plan of the site, or of
// the yard for a window there, with other minutes.
func (d *draft) spread() Spread {
	p := d.parts[1]
	if p.plan == nil {
		return Spread{}
	}
	three := make([]spread.Three, len(p.n.works))
	for i := range three {
		three[i] = d.b.three(&p.n.works[i], float64(p.a.minutes(i)))
	}
	r := spread.Run(p.z.plain(), p.plan, three, runs, seed)
	ready := p.ax.before(d.b.ready())
	return Spread{Runs: r.Runs, Mean: r.Mean, Dev: r.Dev, InTime: r.InTime(ready),
		Half: p.ax.moment(r.Half), Ninety: p.ax.moment(r.Ninety)}
}

// three is the minutes of a work when all goes well, as planned, and when much
// goes wrong: by its rule, else by the shop's spread.
func (b *winder) three(w *work, likely float64) spread.Three {
	if w.kind == Inspect {
		return spread.Three{Optimistic: likely, Likely: likely, Pessimistic: likely}
	}
	shop := &b.c.Crew.Spread
	low, high := shop.Optimistic.InexactFloat64()/100, shop.Pessimistic.InexactFloat64()/100
	if w.rule != nil {
		low, high = shop.Shares(w.rule)
	}
	return spread.Three{Optimistic: low * likely, Likely: likely, Pessimistic: high * likely}
}
