package schedule

import (
	"cmp"
	"math/bits"
	"slices"
)

// net is a problem made ready for many passes: tasks renumbered so that each
// stands behind those it waits for, all lists flat, and the uses of all
// resources in fields of few words, so that one subtraction compares them all.
type net struct {
	p       *Problem
	n       int
	number  []int   // of our task i in the problem
	modeAt  []int32 // modes of task i are modeAt[i] to modeAt[i+1], least work first
	minutes []int   // of each mode
	extra   []int   // minutes for which all hands could work on what it takes beyond the least
	whole   []bool  // mode does not run across an edge
	use     []uint64
	rest    []uint64 // words of use behind the first, `words-1` a mode
	origin  []int32  // which mode of the task of the problem it is
	words   int
	short   []float64
	guard   []uint64 // the top bit of each field
	full    []uint64 // the capacities
	fields  []field
	ahead   axis // from 0 on
	back    axis // from the finish back
	multi   bool // some task has a choice
	times   *Times
	weight  []float64 // of each resource, see weigh
	busy    float64   // minutes that the busiest resource works at least
	links   *links
	skips   []skip
	least   uint64  // of each resource of the first word, what each mode uses at least
	skipAt  []int32 // skips of a mode are skipsOf[skipAt[mode]:skipAt[mode+1]]
	skipsOf []int32
}

// field is where a resource stands in the words of use.
type field struct {
	resource, word int
	shift          uint
}

// axis is one direction of time.
type axis struct {
	prevAt  []int32
	prev    []int32 // those of task i are prev[prevAt[i]:prevAt[i+1]]
	marks   []int   // times, ascending, at which a line has events from the first
	release []int32 // event of the earliest start of each task
	edges   []int
	edgeAt  []int32 // event of each edge
}

// of returns those that a task waits for on its way.
func (ax *axis) of(task int32) []int32 { return ax.prev[ax.prevAt[task]:ax.prevAt[task+1]] }

// edgeIn returns the event of the first edge inside a span; 0 if there is none.
func (ax *axis) edgeIn(from, to int) int32 {
	i, _ := slices.BinarySearch(ax.edges, from+1)
	if i == len(ax.edges) || ax.edges[i] >= to {
		return 0
	}
	return ax.edgeAt[i]
}

// compile makes a problem ready; nil if it has faults.
func compile(p *Problem) *net {
	faults, l := p.check()
	if len(faults) > 0 {
		return nil
	}
	order := l.order
	g := &net{p: p, n: len(order), number: order, times: p.earliestLatest(l), links: l}
	ours := make([]int32, g.n)
	for i, t := range order {
		ours[t] = int32(i)
	}
	arcs := len(l.next)
	g.ahead = axis{prevAt: make([]int32, 1, g.n+1), prev: make([]int32, 0, arcs)}
	g.back = axis{prevAt: make([]int32, 1, g.n+1), prev: make([]int32, 0, arcs)}
	for _, t := range order {
		for _, a := range p.Tasks[t].After {
			g.ahead.prev = append(g.ahead.prev, ours[a])
		}
		for _, b := range l.after(t) {
			g.back.prev = append(g.back.prev, ours[b])
		}
		g.ahead.prevAt = append(g.ahead.prevAt, int32(len(g.ahead.prev)))
		g.back.prevAt = append(g.back.prevAt, int32(len(g.back.prev)))
	}
	g.fillMarks()
	g.pack()
	g.fillModes()
	if g.n >= manyTasks {
		g.fillSkips()
	}
	return g
}

// fillMarks lists the edges, if a task heeds them, and the releases.
func (g *net) fillMarks() {
	ax := &g.ahead
	if slices.ContainsFunc(g.p.Tasks, func(t Task) bool { return t.Whole }) {
		ax.edges = g.p.Edges
	}
	ax.marks = slices.Clone(ax.edges)
	for _, t := range g.p.Tasks {
		if t.Release > 0 {
			ax.marks = append(ax.marks, t.Release)
		}
	}
	slices.Sort(ax.marks)
	ax.marks = slices.Compact(ax.marks)
	event := func(at int) int32 {
		i, found := slices.BinarySearch(ax.marks, at)
		if !found {
			return 0
		}
		return int32(i + 1)
	}
	for _, e := range ax.edges {
		ax.edgeAt = append(ax.edgeAt, event(e))
		g.back.edgeAt = append(g.back.edgeAt, int32(len(ax.edgeAt)))
	}
	ax.release, g.back.release = make([]int32, g.n), make([]int32, g.n)
	for i, t := range g.number {
		ax.release[i] = event(g.p.Tasks[t].Release)
	}
}

// pack gives each resource that can run short a field of its own.
func (g *net) pack() {
	most := make([]int, len(g.p.Capacity))
	for _, t := range g.p.Tasks {
		for k := range most {
			worst := 0
			for m := range t.Modes {
				worst = max(worst, t.Modes[m].Use[k])
			}
			most[k] += worst
		}
	}
	used := uint(0)
	g.words, g.guard, g.full = 1, []uint64{0}, []uint64{0}
	for k, c := range g.p.Capacity {
		if most[k] <= c {
			continue // enough for everything at once
		}
		width := uint(bits.Len(uint(c))) + 1
		if used+width > 64 {
			g.guard, g.full = append(g.guard, 0), append(g.full, 0)
			g.words, used = g.words+1, 0
		}
		g.fields = append(g.fields, field{k, g.words - 1, used})
		g.guard[g.words-1] |= 1 << (used + width - 1)
		g.full[g.words-1] |= uint64(c) << used
		used += width
	}
}

// fillModes lists the modes of each task, least work first: of equal finishes
// the one that ties up least is then taken.
func (g *net) fillModes() {
	all := 0
	for i := range g.p.Tasks {
		all += len(g.p.Tasks[i].Modes)
	}
	g.modeAt = make([]int32, 1, g.n+1)
	g.minutes, g.whole = make([]int, 0, all), make([]bool, 0, all)
	g.use, g.origin = make([]uint64, 0, all), make([]int32, 0, all)
	g.extra = make([]int, 0, all)
	day := g.p.longestDay()
	g.weigh()
	var which []weighed
	words := make([]uint64, g.words)
	for _, t := range g.number {
		task := &g.p.Tasks[t]
		which = which[:0]
		for m := range task.Modes {
			which = append(which, weighed{g.share(&task.Modes[m]), int32(m)})
		}
		if len(which) > 1 {
			slices.SortStableFunc(which, func(a, b weighed) int { return cmp.Compare(a.share, b.share) })
			g.multi = true
		}
		for _, w := range which {
			g.addMode(task, w.mode, day, words)
			g.extra = append(g.extra, int(w.share-which[0].share))
		}
		g.modeAt = append(g.modeAt, int32(len(g.minutes)))
	}
}

// weighed is a mode and its share.
type weighed struct {
	share float64
	mode  int32
}

func (g *net) addMode(task *Task, m int32, day int, words []uint64) {
	mode := &task.Modes[m]
	clear(words)
	for _, f := range g.fields {
		words[f.word] |= uint64(mode.Use[f.resource]) << f.shift
	}
	g.minutes = append(g.minutes, mode.Minutes)
	g.whole = append(g.whole, task.Whole && mode.Minutes > 1 && mode.Minutes <= day)
	g.use = append(g.use, words[0])
	g.rest = append(g.rest, words[1:]...)
	g.origin = append(g.origin, m)
}
