package schedule

// More hands make a task shorter but take more work in all. Where hands are
// short the work counts, where tasks wait for each other the minutes count,
// and no rule fits both: so each draft has its own thrift, and the search
// finds out which pays. Thrift 0 takes the mode that ends first; from 1 on the
// extra work of a mode, as minutes of everybody, counts as delay: a quarter of
// it at 1, all of it at 3, twice as much with each step.
const thriftiest = 10

// delay returns the minutes that a mode's extra work counts as.
func delay(extra int, thrift uint) int {
	if thrift == 0 {
		return 0
	}
	return extra << thrift >> 3
}

// weigh gives each resource a weight: a part of a resource that is hardly
// used is no loss. The least work of all tasks on it, as minutes of the whole
// of it, tells how short a resource is; the weight is the square of that, 1
// for the shortest.
func (g *net) weigh() {
	g.weight = make([]float64, len(g.p.Capacity))
	for i := range g.p.Tasks {
		for k, c := range g.p.Capacity {
			if c > 0 {
				g.weight[k] += float64(g.p.Tasks[i].work(k, c, 0)) / float64(c)
			}
		}
	}
	for _, w := range g.weight {
		g.busy = max(g.busy, w)
	}
	for k, c := range g.p.Capacity {
		if g.busy > 0 && c > 0 {
			g.weight[k] *= g.weight[k] / g.busy / g.busy / float64(c)
		}
	}
}

// share is the weighted work of a mode, as minutes of everybody. The product
// is rounded on its own, so that it is the same on every machine.
func (g *net) share(m *Mode) float64 {
	sum := 0.0
	for k, u := range m.Use {
		sum += float64(float64(u*m.Minutes) * g.weight[k])
	}
	return sum
}

// thrift returns what suits a first pass, from how long the busiest resource
// works against the longest path: the steps were found by trial on invented
// jobs, where each mode with more hands takes more work.
func (g *net) thrift() uint {
	switch path := float64(g.times.Finish); {
	case g.busy < 0.8*path:
		return 0
	case g.busy < 1.2*path:
		return 3
	case g.busy < 2.5*path:
		return 5
	}
	return 8
}
