package schedule

import "slices"

// links is who follows whom.
type links struct {
	order  []int // tasks, each behind those it waits for; without those of a circle
	nextAt []int32
	next   []int32 // the followers of task i are next[nextAt[i]:nextAt[i+1]]
}

// after returns the followers of a task.
func (l *links) after(i int) []int32 { return l.next[l.nextAt[i]:l.nextAt[i+1]] }

// sorted returns the order of the tasks.
func (p *Problem) sorted() *links {
	n := len(p.Tasks)
	l := &links{order: make([]int, 0, n), nextAt: make([]int32, n+2)}
	waits := make([]int32, n)
	for i := range p.Tasks {
		for _, a := range p.Tasks[i].After {
			l.nextAt[a+2]++
		}
		if waits[i] = int32(len(p.Tasks[i].After)); waits[i] == 0 {
			l.order = append(l.order, i)
		}
	}
	for i := 1; i < len(l.nextAt); i++ {
		l.nextAt[i] += l.nextAt[i-1]
	}
	l.next = make([]int32, l.nextAt[n+1])
	for i := range p.Tasks {
		for _, a := range p.Tasks[i].After {
			l.next[l.nextAt[a+1]] = int32(i)
			l.nextAt[a+1]++
		}
	}
	for at := 0; at < len(l.order); at++ {
		for _, b := range l.after(l.order[at]) {
			if waits[b]--; waits[b] == 0 {
				l.order = append(l.order, int(b))
			}
		}
	}
	return l
}

// circle returns tasks of which each waits for the next and the last is the
// first again; nil if there is no circle.
func (p *Problem) circle(l *links) []int {
	if len(l.order) == len(p.Tasks) {
		return nil
	}
	done := make([]bool, len(p.Tasks))
	for _, i := range l.order {
		done[i] = true
	}
	// Whatever is left waits for something left: walking back must return.
	var path []int
	seen := make([]bool, len(p.Tasks))
	i := slices.Index(done, false)
	for !seen[i] {
		seen[i] = true
		path = append(path, i)
		i = p.Tasks[i].After[slices.IndexFunc(p.Tasks[i].After, func(a int) bool { return !done[a] })]
	}
	return append(path[slices.Index(path, i):], i)
}
