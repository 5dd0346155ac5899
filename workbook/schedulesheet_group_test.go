package workbook

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote"
	"tentwright/quote/crew"
	"tentwright/quote/job"
	"tentwright/quote/jobtest"
	"tentwright/workbook/sheet"
)

// dayBook is the schedule of a job, laid out alone.
func dayBook(t *testing.T, c *catalog.Catalog, j *job.Job, paper string) *scheduleSheet {
	t.Helper()
	q, list := quote.Build(c, j)
	if q == nil {
		t.Fatal(list.Err())
	}
	l := newLayout(q)
	l.schedule()
	if len(l.book.Sheets) == 0 {
		return nil
	}
	p := &scheduleSheet{layout: l, s: l.book.Sheets[0], r: q.Crew}
	if paper != "" {
		p.s.Page.Paper = paper
	}
	return p
}

// dayJobs are the jobs of the demonstration, random ones, and ones with many
// more tents.
func dayJobs(t *testing.T, c *catalog.Catalog) map[string]*job.Job {
	jobs := map[string]*job.Job{}
	for _, name := range []string{"garden", "dinner", "fairground"} {
		jobs[name] = crewJob(t, c, name)
	}
	jobs["fairground, 4 times"] = jobtest.Times(jobs["fairground"], 4)
	for seed := range uint64(12) {
		jobs[fmt.Sprint("random ", seed)] = jobtest.Random(c, seed)
	}
	return jobs
}

// Every day has one page, with all its work: the rows of its chart hold each task
// once, and each column the hands that minute by minute are most at work.
func TestEveryDayHasOnePage(t *testing.T) {
	c := demoShop(t)
	counts, many := map[grouping]int{}, 0
	for name, j := range dayJobs(t, c) {
		p := dayBook(t, c, j, "")
		if p == nil {
			continue
		}
		for i := range p.r.Windows {
			w := &p.r.Windows[i]
			for k := range w.Days {
				d := &w.Days[k]
				tasks := tasksOf(w, d.Number)
				if len(tasks) == 0 {
					continue
				}
				where := name + ", " + dayTitle(w, d)
				f := p.fit(tasks, shiftsOf(w, d))
				counts[f.by]++
				checkDayPage(t, where, p, f)
				for by := byTask; by <= byKind; by++ {
					many += checkDayRows(t, where, p, d, tasks, by)
				}
				checkCalled(t, where, w, d)
			}
		}
	}
	t.Logf("days by grouping %v; in %d columns tasks one after the other would add up to more hands than are at work", counts, many)
	if counts[byTask] == 0 || counts[byBoth] == 0 || counts[byTent]+counts[byPhase] == 0 {
		t.Errorf("days by grouping %v; tasks, tents with phases and coarser rows were expected", counts)
	}
}

// checkDayPage looks for the page of a day and what stands on it.
func checkDayPage(t *testing.T, where string, p *scheduleSheet, f dayFit) {
	t.Helper()
	_, title, _ := strings.Cut(where, ", ")
	var page []sheet.Row
	found, detail := 0, 0
	for i, from := range p.s.Breaks {
		to := len(p.s.Rows)
		if i+1 < len(p.s.Breaks) {
			to = p.s.Breaks[i+1] - 1
		}
		switch words, _ := p.s.Rows[from-1].Cells[0].Value.(string); {
		case strings.HasSuffix(title, words) && strings.Contains(where, words):
			found, page = found+1, p.s.Rows[from-1:to]
		case strings.Contains(words, ", in detail") && strings.HasSuffix(where, words[:strings.Index(words, ", in detail")]):
			detail++
		}
	}
	if found != 1 || detail > 0 != (f.by != byTask) {
		t.Errorf("%s: %d pages, %d in detail, grouping %d; one page was expected, and detail where rows are several tasks", where, found, detail, f.by)
		return
	}
	bars, calls, high := 0, 0, 0.0
	for _, r := range page {
		high += max(rowLeast, r.Height)
		if slices.ContainsFunc(r.Cells, func(c sheet.Cell) bool { return c.Style.Role == sheet.Bar || c.Style.Role == sheet.Chain }) {
			bars++
		} else if len(r.Cells) > planPrinted && r.Cells[planPrinted].Style.Role == sheet.Key && r.Cells[planPrinted].Value != nil {
			calls++
		}
	}
	for _, h := range p.rowHeights(f.rows) {
		high += h - rowLeast
	}
	if bars != len(f.rows) || !f.brief && calls == 0 || high > p.room()-23 {
		t.Errorf("%s: %d bars, %d people, %.0f points; want %d bars, their people, at most %.0f points", where, bars, calls, high, len(f.rows), p.room()-23)
	}
}

// checkDayRows holds the rows of a grouping against the tasks, minute by minute.
// It gives the columns in which a sum of tasks would be too much.
func checkDayRows(t *testing.T, where string, p *scheduleSheet, d *crew.Day, tasks []dayTask, by grouping) (many int) {
	t.Helper()
	a, seen, last := axisOf(d.Call, d.End), map[string]int{}, unit.Clock(0)
	for _, r := range p.rowsOf(tasks, by) {
		if r.start < last {
			t.Errorf("%s, grouping %d: %s begins before the row above it", where, by, r.words)
		}
		last = r.start
		most, star := 0, false
		for slot, m := range r.marks(a) {
			want, sum, on, critical := 0, 0, false, false
			for minute := a.from + unit.Clock(slot)*a.slot; minute < a.from+unit.Clock(slot+1)*a.slot; minute++ {
				hands, all := 0, 0
				for i := range r.tasks {
					if k := &r.tasks[i]; slices.ContainsFunc(k.spells, func(s [2]unit.Clock) bool { return s[0] <= minute && minute < s[1] }) {
						all += k.Hands
						if k.in(a, slot) {
							hands += k.Hands
						}
					}
				}
				want, most = max(want, hands), max(most, all)
			}
			for i := range r.tasks {
				if k := &r.tasks[i]; k.in(a, slot) {
					on, critical, sum = true, critical || k.Critical, sum+k.Hands
				}
			}
			if m != (mark{on, critical, want}) {
				t.Errorf("%s, grouping %d: %s, column %d: %+v; want bar %t, critical %t, %d hands", where, by, r.words, slot, m, on, critical, want)
			}
			if sum > most {
				many++
			}
		}
		for i := range r.tasks {
			seen[r.tasks[i].Key]++
			star = star || r.tasks[i].Critical
		}
		if most != r.hands || star != strings.HasPrefix(r.words, "* ") || len(r.tasks) > 1 && !strings.HasSuffix(r.words, fmt.Sprintf(" (%d tasks)", len(r.tasks))) {
			t.Errorf("%s, grouping %d: %s: %d hands; want %d, star %t, %d tasks", where, by, r.words, r.hands, most, star, len(r.tasks))
		}
	}
	for i := range tasks {
		if seen[tasks[i].Key] != 1 {
			t.Errorf("%s, grouping %d: %s is in %d rows; one was expected", where, by, tasks[i].Key, seen[tasks[i].Key])
		}
	}
	return many
}

// in tells whether a task's own bar fills a column.
func (d *dayTask) in(a axis, slot int) bool { return a.filled(d.spells)[slot] }

// checkCalled looks for everybody in the short lines of call times.
func checkCalled(t *testing.T, where string, w *crew.Window, d *crew.Day) {
	t.Helper()
	list := shiftsOf(w, d)
	words := strings.Join(callWords(list), "\n")
	for _, c := range list {
		if !strings.Contains(words, fmt.Sprintf("Call %s, end %s", c.shift.Call, c.shift.End)) {
			t.Errorf("%s: no line for person %d, called at %s", where, c.who.Number, c.shift.Call)
		}
	}
}

// The rows of a day that is grouped are named by tent and phase.
func TestGroupNames(t *testing.T) {
	c := demoShop(t)
	p := dayBook(t, c, crewJob(t, c, "fairground"), "")
	for by, want := range map[grouping][]string{
		byBoth:  {"Stalls", ": assemble (", "Whole job: "},
		byTent:  {"Stalls", "Whole job: "},
		byPhase: {"Assemble (", "Unload ("},
		byKind:  {"Drives ("},
	} {
		var words []string
		for i := range p.r.Windows {
			for _, d := range p.r.Windows[i].Days {
				for _, r := range p.rowsOf(tasksOf(&p.r.Windows[i], d.Number), by) {
					words = append(words, r.words)
				}
			}
		}
		all := strings.Join(words, "\n")
		for _, name := range want {
			if !strings.Contains(all, name) {
				t.Errorf("grouping %d: no row is named %q; one was expected in:\n%s", by, name, all)
			}
		}
	}
}

// A day with more people than a page has room for says in a few lines who comes
// when, and lists them on the next page.
func TestManyPeopleAreCalledInLines(t *testing.T) {
	c := demoShop(t)
	p := dayBook(t, c, crewJob(t, c, "garden"), "a4")
	w := &p.r.Windows[slices.IndexFunc(p.r.Windows, func(w crew.Window) bool { return w.Labour.Spec.ID == "install" })]
	d := &w.Days[0]
	var list []called
	for n := range 70 {
		who := w.People[0]
		who.Number = n + 1
		shift := crew.Shift{Call: 420, End: 960}
		if n%2 == 1 {
			shift.Call = 390
		}
		list = append(list, called{&who, shift})
	}
	if f := p.fit(tasksOf(w, 1), list[:20]); f.brief {
		t.Error("20 people have no rows on the page; a row for each was expected")
	}
	f := p.fit(tasksOf(w, d.Number), list)
	if !f.brief || f.by > byBoth {
		t.Errorf("70 people: brief %t, grouping %d; lines and rows of tents and phases were expected", f.brief, f.by)
	}
	got := callWords(list[:6])
	if want := []string{"Call 06:30, end 16:00, 3 people: 2, 4, 6", "Call 07:00, end 16:00, 3 people: 1, 3, 5"}; !slices.Equal(got, want) {
		t.Errorf("%q; want %q", got, want)
	}
}
