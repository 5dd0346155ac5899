package schedule

// Options bound a search.
type Options struct {
	Schedules int // most schedules to make; at least one is
	Seed      uint64
	Stop      func() bool // asked now and then; nil: never. The package has no clock
}

// First returns the plan of one serial pass in the order of latest starts,
// each task in the mode that ends first, sparing hands where there are few.
func First(p *Problem) *Plan {
	g := compile(p)
	if g == nil {
		return nil
	}
	r, d := newRunner(g), newDraft(g.n)
	r.first(&d)
	return g.plan(&d, r.tried)
}

// Solve searches for the plan that finishes first, from the plan of First on.
// It stops when the schedules are made, when Stop says so, or when the finish
// is LowerBound, which nothing can beat.
func Solve(p *Problem, o Options) *Plan {
	g := compile(p)
	if g == nil {
		return nil
	}
	s := newSearch(g, o, p.bound(g.links, g.times))
	s.run()
	return g.plan(&s.best, s.tried)
}

// first makes the draft of one serial pass.
func (r *runner) first(d *draft) {
	r.byLateness(d)
	d.thrift = r.g.thrift()
	r.pass(&r.g.ahead, d, true)
}

// byLateness orders the tasks by the time at which they must be started.
func (r *runner) byLateness(d *draft) {
	for i := range r.keys {
		r.keys[i] = uint64(r.g.times.LateStart[r.g.number[i]])<<20 | uint64(i)
		d.mode[i] = r.g.modeAt[i]
	}
	r.sortKeys(d)
}

// plan turns a draft back into the numbers of the problem.
func (g *net) plan(d *draft, tried int) *Plan {
	pl := &Plan{Start: make([]int, g.n), Mode: make([]int, g.n), Finish: d.finish, Tried: tried}
	for i, t := range g.number {
		pl.Start[t] = d.start[i]
		pl.Mode[t] = int(g.origin[d.mode[i]])
	}
	return pl
}
