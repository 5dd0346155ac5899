package schedule

import "slices"

// draft is a schedule in the making: an order of tasks, a mode for each, and
// what a pass makes of them.
type draft struct {
	order  []int32 // tasks, each behind those it waits for
	mode   []int32 // of each task, an index of the net's modes
	start  []int
	finish int
	thrift uint   // how much work counts where modes are chosen, see quickest
	print  uint64 // of starts and modes, to tell drafts apart
}

func newDraft(n int) draft {
	return draft{order: make([]int32, n), mode: make([]int32, n), start: make([]int, n)}
}

func (d *draft) copy(from *draft) {
	copy(d.order, from.order)
	copy(d.mode, from.mode)
	copy(d.start, from.start)
	d.finish, d.thrift, d.print = from.finish, from.thrift, from.print
}

// runner makes passes without allocating.
type runner struct {
	g       *net
	line    line
	startAt []int32 // event at which each task starts
	endAt   []int32 // and ends
	link    []int32 // the next task hung at the same event
	keys    []uint64
	edges   []int // seen from the finish back
	kept    draft
	tried   int
	most    int  // passes allowed
	over    bool // the next step would make too many
}

func newRunner(g *net) *runner {
	r := &runner{
		g: g, startAt: make([]int32, g.n), endAt: make([]int32, g.n), link: make([]int32, g.n),
		keys: make([]uint64, g.n), kept: newDraft(g.n),
	}
	r.line.g = g
	r.line.passed = make([]int32, len(g.skips))
	r.line.events = make([]event, 0, g.n+len(g.ahead.marks)+2)
	return r
}

// pass is the serial schedule generation scheme: each task in turn as early
// as those before it and the resources left allow. With choose it takes the
// mode that ends first, least work first among equals.
func (r *runner) pass(ax *axis, d *draft, choose bool) {
	l := &r.line
	l.clear(ax)
	r.tried++
	finish := 0
	for _, i := range d.order {
		from := ax.release[i]
		ready := l.events[from].at
		for _, a := range ax.of(i) {
			e := r.endAt[a]
			if at := l.events[e].at; at > ready {
				from, ready = e, at
			}
		}
		var start int32
		mode := d.mode[i]
		if choose {
			mode, start = r.quickest(i, from, d.thrift)
			d.mode[i] = mode
		} else {
			start = l.find(from, mode)
		}
		end := l.take(start, mode)
		r.startAt[i], r.endAt[i] = start, end
		d.start[i] = l.events[start].at
		finish = max(finish, l.events[end].at)
	}
	d.finish = finish
}

// quickest returns the mode of a task that ends first, and where it starts,
// where extra work counts as delay.
func (r *runner) quickest(i, from int32, thrift uint) (mode, start int32) {
	g, l := r.g, &r.line
	best := axisEnd * 16
	for m := g.modeAt[i]; m < g.modeAt[i+1]; m++ {
		after := g.minutes[m] + delay(g.extra[m], thrift)
		if l.events[from].at+after >= best {
			continue
		}
		s := l.find(from, m)
		if score := l.events[s].at + after; score < best {
			mode, start, best = m, s, score
		}
	}
	return mode, start
}

// squeeze moves every task as late as it goes, the last first, and then as
// early, the first first, which never ends later while the modes stay
// (forward-backward improvement, also called double justification: Valls,
// Ballestin and Quintanilla 2005, EJOR 165, 375-386). With choose, modes
// change on the way where that helps; what ends later is undone. It follows
// the pass that made the draft, and the order becomes that of the starts.
func (r *runner) squeeze(d *draft, choose bool) {
	for {
		if r.over = r.tried+2 > r.most; r.over {
			break
		}
		finish := d.finish
		if choose {
			r.kept.copy(d)
		}
		r.orderByEnd(d, false)
		r.mirror(finish)
		r.pass(&r.g.back, d, choose)
		r.orderByEnd(d, true)
		r.pass(&r.g.ahead, d, choose)
		if d.finish > finish {
			d.copy(&r.kept)
			r.orderByKey(d)
			return
		}
		if d.finish == finish {
			break
		}
	}
	r.orderByStart(d)
}

// mirror lays the edges out as seen from the finish back.
func (r *runner) mirror(finish int) {
	r.edges = r.edges[:0]
	for _, e := range slices.Backward(r.g.ahead.edges) {
		if e < finish {
			r.edges = append(r.edges, finish-e)
		}
	}
	r.g.back.edges, r.g.back.marks = r.edges, r.edges
}

// orderByStart sorts the tasks by the starts of the last pass; of equals,
// those that others wait for come first. The events stand in order already,
// so hanging each task at its event sorts them in linear time.
func (r *runner) orderByStart(d *draft) {
	ev := r.line.events
	for i := r.g.n - 1; i >= 0; i-- {
		r.hang(int32(i), r.startAt[i])
	}
	to := 0
	for at := int32(0); to < len(d.order); at = ev[at].next {
		for i := ev[at].first; i >= 0; i = r.link[i] {
			d.order[to] = i
			to++
		}
		ev[at].first = -1
	}
}

// orderByEnd sorts the tasks by the ends of the last pass, the last first: so
// it is the order for the pass the other way, which back says this one was.
func (r *runner) orderByEnd(d *draft, back bool) {
	ev := r.line.events
	if back {
		for i := range r.g.n {
			r.hang(int32(i), r.endAt[i])
		}
	} else {
		for i := r.g.n - 1; i >= 0; i-- {
			r.hang(int32(i), r.endAt[i])
		}
	}
	to := len(d.order)
	for at := int32(0); to > 0; at = ev[at].next {
		for i := ev[at].first; i >= 0; i = r.link[i] {
			to--
			d.order[to] = i
		}
		ev[at].first = -1
	}
}

func (r *runner) hang(task, event int32) {
	e := &r.line.events[event]
	r.link[task], e.first = e.first, task
}

// orderByKey sorts the tasks by start where the events are no longer known.
func (r *runner) orderByKey(d *draft) {
	for i, s := range d.start {
		r.keys[i] = uint64(s)<<20 | uint64(i)
	}
	r.sortKeys(d)
}

func (r *runner) sortKeys(d *draft) {
	slices.Sort(r.keys)
	for i, k := range r.keys {
		d.order[i] = int32(k & (1<<20 - 1))
	}
}
