package crew_test

import (
	"bufio"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"tentwright/quote/crew/schedule"
)

// instance is one project of the PSPLIB collection with what is known of its
// shortest length.
type instance struct {
	name    string
	problem schedule.Problem
	lower   int // -1: not listed
	upper   int // optimum, or best known
}

// BenchmarkPSPLIB runs every project of the lists j*.txt in the folder that
// TENTWRIGHT_BENCH names, TENTWRIGHT_BENCH_SECONDS for each (1 if unset), and
// reports how far above the listed lengths the plans end.
//
// The sets are those of Kolisch and Sprecher 1996 (EJOR 96, 205-216), not
// ours, and stay outside the repository. A list has a line
// `I name jobs capacities lower..upper` for each project and below it, for
// each job, `J id duration uses : followers`.
func BenchmarkPSPLIB(b *testing.B) {
	dir := os.Getenv("TENTWRIGHT_BENCH")
	if dir == "" {
		b.Skip("TENTWRIGHT_BENCH names no folder with benchmark sets")
	}
	files, err := filepath.Glob(filepath.Join(dir, "j*.txt"))
	if err != nil || len(files) == 0 {
		b.Skipf("%s holds no j*.txt", dir)
	}
	for _, file := range files {
		b.Run(filepath.Base(file), func(b *testing.B) { benchmarkList(b, file) })
	}
}

func benchmarkList(b *testing.B, file string) {
	list := readList(b, file)
	limit := secondsEach(b)
	gap, optimal, tried, spent := 0.0, 0, 0, time.Duration(0)
	for b.Loop() {
		for i := range list {
			in := &list[i]
			begin := time.Now()
			plan := schedule.Solve(&in.problem, schedule.Options{
				Schedules: 1 << 40, Seed: 1,
				Stop: func() bool { return time.Since(begin) >= limit },
			})
			spent += time.Since(begin)
			if err := follows(&in.problem, plan); err != nil {
				b.Fatalf("%s: %v", in.name, err)
			}
			if plan.Finish < in.lower {
				b.Fatalf("%s: %d is below the listed lower bound %d", in.name, plan.Finish, in.lower)
			}
			above := float64(plan.Finish-in.upper) / float64(in.upper)
			gap += above
			tried += plan.Tried
			if plan.Finish <= in.upper {
				optimal++
			} else {
				b.Logf("%s: %d, listed %d", in.name, plan.Finish, in.upper)
			}
		}
	}
	runs := float64(b.N * len(list))
	b.ReportMetric(100*gap/runs, "gap-%")
	b.ReportMetric(100*float64(optimal)/runs, "optimal-%")
	b.ReportMetric(float64(tried)/spent.Seconds(), "schedules/s")
}

// secondsEach returns the time for each project.
func secondsEach(b *testing.B) time.Duration {
	text := os.Getenv("TENTWRIGHT_BENCH_SECONDS")
	if text == "" {
		return time.Second
	}
	s, err := strconv.ParseFloat(text, 64)
	if err != nil || s <= 0 {
		b.Fatalf("TENTWRIGHT_BENCH_SECONDS is %q; a number of seconds expected", text)
	}
	return time.Duration(s * float64(time.Second))
}

// follows checks a plan of one mode a task, minute by minute.
func follows(p *schedule.Problem, plan *schedule.Plan) error {
	if len(plan.Start) != len(p.Tasks) {
		return fmt.Errorf("%d starts for %d jobs", len(plan.Start), len(p.Tasks))
	}
	finish := 0
	end := func(i int) int { return plan.Start[i] + p.Tasks[i].Modes[0].Minutes }
	for i, task := range p.Tasks {
		finish = max(finish, end(i))
		if plan.Start[i] < 0 {
			return fmt.Errorf("job %d starts at %d", i+1, plan.Start[i])
		}
		for _, a := range task.After {
			if end(a) > plan.Start[i] {
				return fmt.Errorf("job %d starts at %d, before job %d ends at %d", i+1, plan.Start[i], a+1, end(a))
			}
		}
	}
	if finish != plan.Finish {
		return fmt.Errorf("finish %d, said to be %d", finish, plan.Finish)
	}
	for minute := range finish {
		for k, capacity := range p.Capacity {
			used := 0
			for i, task := range p.Tasks {
				if plan.Start[i] <= minute && minute < end(i) {
					used += task.Modes[0].Use[k]
				}
			}
			if used > capacity {
				return fmt.Errorf("minute %d: %d of resource %d in use, %d there", minute, used, k+1, capacity)
			}
		}
	}
	return nil
}

// readList reads a list of projects.
func readList(b *testing.B, file string) []instance {
	f, err := os.Open(file)
	if err != nil {
		b.Fatal(err)
	}
	defer f.Close()
	list, err := parseList(bufio.NewScanner(f))
	if err != nil {
		b.Fatalf("%s: %v", file, err)
	}
	return list
}

func parseList(lines *bufio.Scanner) ([]instance, error) {
	var list []instance
	for n := 1; lines.Scan(); n++ {
		fields := strings.Fields(lines.Text())
		var err error
		switch {
		case len(fields) == 0 || strings.HasPrefix(fields[0], "#"):
		case fields[0] == "I":
			list, err = addInstance(list, fields[1:])
		case fields[0] == "J" && len(list) > 0:
			err = list[len(list)-1].addJob(fields[1:])
		default:
			err = fmt.Errorf("%q; a line I or J expected", lines.Text())
		}
		if err != nil {
			return nil, fmt.Errorf("line %d: %w", n, err)
		}
	}
	for i := range list {
		if err := list[i].complete(); err != nil {
			return nil, err
		}
	}
	return list, lines.Err()
}

// addInstance reads `name jobs capacities lower..upper`.
func addInstance(list []instance, f []string) ([]instance, error) {
	if len(f) < 4 {
		return nil, fmt.Errorf("%d fields; name, jobs, capacities and bounds expected", len(f))
	}
	numbers, err := whole(f[1 : len(f)-1])
	if err != nil {
		return nil, err
	}
	low, high, found := strings.Cut(f[len(f)-1], "..")
	in := instance{name: f[0], lower: -1}
	if in.upper, err = strconv.Atoi(high); err != nil || !found {
		return nil, fmt.Errorf("bounds %q; lower..upper expected", f[len(f)-1])
	}
	if low != "?" {
		if in.lower, err = strconv.Atoi(low); err != nil || in.lower > in.upper {
			return nil, fmt.Errorf("bounds %q; lower..upper expected", f[len(f)-1])
		}
	}
	in.problem.Capacity = numbers[1:]
	in.problem.Tasks = make([]schedule.Task, numbers[0])
	return append(list, in), nil
}

// addJob reads `id duration uses : followers`.
func (in *instance) addJob(f []string) error {
	colon := len(f)
	for i, s := range f {
		if s == ":" {
			colon = i
		}
	}
	if want := 2 + len(in.problem.Capacity); colon != want || colon == len(f) {
		return fmt.Errorf("job %q; %d numbers, a colon and the followers expected", strings.Join(f, " "), want)
	}
	n, err := whole(f[:colon])
	if err != nil {
		return err
	}
	next, err := whole(f[colon+1:])
	if err != nil {
		return err
	}
	tasks := in.problem.Tasks
	if n[0] < 1 || n[0] > len(tasks) || tasks[n[0]-1].Modes != nil {
		return fmt.Errorf("job %d; each of 1 to %d once expected", n[0], len(tasks))
	}
	tasks[n[0]-1].Modes = []schedule.Mode{{Minutes: n[1], Use: n[2:]}}
	for _, b := range next {
		if b < 1 || b > len(tasks) {
			return fmt.Errorf("follower %d; 1 to %d expected", b, len(tasks))
		}
		tasks[b-1].After = append(tasks[b-1].After, n[0]-1)
	}
	return nil
}

// complete says what is missing or impossible.
func (in *instance) complete() error {
	for i, t := range in.problem.Tasks {
		if t.Modes == nil {
			return fmt.Errorf("%s: job %d is missing", in.name, i+1)
		}
	}
	if faults := in.problem.Check(); len(faults) > 0 {
		return fmt.Errorf("%s: %s", in.name, strings.Join(faults, "; "))
	}
	return nil
}

// whole reads whole numbers from 0 on.
func whole(f []string) ([]int, error) {
	out := make([]int, len(f))
	for i, s := range f {
		n, err := strconv.Atoi(s)
		if err != nil || n < 0 {
			return nil, fmt.Errorf("%q; a whole number expected", s)
		}
		out[i] = n
	}
	return out, nil
}

// The reader takes a sound list and names the line of a bad one.
func TestProjectLists(t *testing.T) {
	const sound = "# a list\nI a 2 4 3 5..6\nJ 1 5 1 2 : 2\nJ 2 0 0 0 :\n"
	list, err := parseList(bufio.NewScanner(strings.NewReader(sound)))
	if err != nil || len(list) != 1 {
		t.Fatalf("%d projects, %v; 1 expected", len(list), err)
	}
	in := list[0]
	if in.lower != 5 || in.upper != 6 || len(in.problem.Capacity) != 2 || in.problem.Tasks[1].After[0] != 0 {
		t.Errorf("read as %+v", in)
	}
	for _, bad := range []string{
		"J 1 5 1 : 2", "X", "I a 2 4 5", "I a 2 4 6..5", "I a x 4 5..6", "I a 1 4 ?..6",
		"I a 1 4 ?..6\nJ 1 5 1", "I a 1 4 ?..6\nJ 1 5 1 1 :", "I a 1 4 ?..6\nJ 2 5 1 :", "I a 1 4 ?..6\nJ 1 5 1 : 9",
		"I a 1 4 ?..6\nJ 1 5 9 :", "I a 1 4 ?..6\nJ 1 5 -1 :", "I a 1 4 ?..6\nJ 1 5 1 : 1",
	} {
		if list, err := parseList(bufio.NewScanner(strings.NewReader(bad))); err == nil {
			t.Errorf("%q read as %+v; an error expected", bad, list)
		}
	}
}
