package cli

import (
	"bytes"
	"fmt"
	"runtime"
	"runtime/debug"
	"sync"

	"tentwright/quote/learn"
	"tentwright/workbook/revise"
)

// worked is the hours of one workbook, or why there are none.
type worked struct {
	hours *revise.Actuals
	err   error
	said  []byte // beside it
	fault any    // a panic, with its stack
	stack []byte
}

// actuals reads the hours of all workbooks, each job's once. A fault of one does
// not keep those of the others back; with any, nothing is learned.
func (a *app) actuals(paths []string, l *lesson) ([]learn.Task, error) {
	var all []*revise.Actuals
	var first error
	bad, any := 0, false
	for i, w := range a.readAll(paths, l.shop) {
		switch {
		case w.fault != nil:
			return nil, &failure{code: a.ownFault(fmt.Sprintf("%s: %v", paths[i], w.fault), w.stack), told: true}
		case w.err != nil:
			code := a.fail(w.err)
			if bad++; first == nil {
				first = &failure{code: code}
			}
		default:
			a.pass(w.said)
			all = append(all, w.hours)
			any = any || len(w.hours.Tasks) > 0
		}
	}
	switch {
	case bad > 0:
		wrong := first.(*failure)
		wrong.problem = fmt.Sprintf("nothing is proposed: workbooks with faults: %d of %d", bad, len(paths))
		wrong.advice = "put them right, or leave them out"
		return nil, wrong
	case !any:
		return nil, &failure{code: Faults, problem: "nothing is proposed: no workbook has actual hours", advice: "after a job, type what each task took into the column Actual of Crew Hours"}
	}
	tasks, left, list := revise.Latest(all)
	if list.Err() != nil {
		return nil, faults("the season", list, nil)
	}
	l.leftBooks = left
	return tasks, nil
}

// readAll reads workbooks on all processors, and gives what came of each in
// their order. A workbook is let go as soon as its hours are known, since a
// season of them would fill the memory.
func (a *app) readAll(paths []string, s *shop) []worked {
	all := make([]worked, len(paths))
	next := make(chan int)
	step, done := a.progress(len(paths), "reading workbooks")
	var group sync.WaitGroup
	for range min(len(paths), runtime.GOMAXPROCS(0)) {
		group.Go(func() {
			for i := range next {
				all[i] = a.readHours(paths[i], s)
				step()
			}
		})
	}
	for i := range paths {
		next <- i
	}
	close(next)
	group.Wait()
	done()
	return all
}

// readHours reads the hours of one workbook. What is to be said of it waits for
// its turn; what is said of a workbook with hours beside them is for who
// requotes it or closes it out.
func (a *app) readHours(path string, s *shop) (w worked) {
	defer func() {
		if w.fault = recover(); w.fault != nil {
			w.stack = debug.Stack()
		}
	}()
	var said bytes.Buffer
	own := *a
	own.errs = &said
	b, _, err := own.openBook(path)
	if err != nil {
		return worked{err: err}
	}
	hours, list := b.Actuals()
	if hours == nil {
		return worked{err: faults("workbook "+path, list, nil)}
	}
	if now := s.catalog.Company.Units; hours.Units != now {
		return worked{err: &failure{code: Faults, problem: fmt.Sprintf("%s counts in %s units; those of the shop %s, %s, were expected", path, hours.Units, s.dir, now)}}
	}
	if len(hours.Tasks) > 0 {
		said.Reset()
	}
	return worked{hours: hours, said: said.Bytes()}
}
