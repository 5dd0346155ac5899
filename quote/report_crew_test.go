package quote_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"tentwright/quote"
	"tentwright/quote/job"
)

// The report has the plan of each window that has work, with every task and
// person, and the keys that it names are those of its tasks.
func TestReportHasTheSchedule(t *testing.T) {
	data, err := os.ReadFile(filepath.Join("..", "testdata", "jobs", "dinner.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	j, list := job.Read("dinner.yaml", data)
	if list.Err() != nil {
		t.Fatal(list)
	}
	q := quoted(t, demo(t), j)
	var r quote.Report
	if err := json.Unmarshal(encode(t, q.Report()), &r); err != nil {
		t.Fatal(err)
	}
	if r.Schedule == nil || len(r.Schedule.Windows) != 4 {
		t.Fatalf("%+v; the plans of four windows were expected", r.Schedule)
	}
	for i, p := range r.Schedule.Windows {
		w := &q.Crew.Windows[i]
		if len(p.Tasks) != len(w.Tasks) || len(p.People) != len(w.People) || len(p.Days) != len(w.Days) || len(p.Sizes) != len(w.Sizes) || len(p.Chain) == 0 {
			t.Errorf("%s: %d tasks, %d people, %d days, %d sizes, chain of %d", p.Window, len(p.Tasks), len(p.People), len(p.Days), len(p.Sizes), len(p.Chain))
		}
		known, numbers := map[string]bool{}, map[int]bool{}
		for _, task := range p.Tasks {
			known[task.Key] = true
		}
		for _, who := range p.People {
			numbers[who.Number] = true
		}
		for _, key := range p.Chain {
			if !known[key] {
				t.Errorf("%s: the chain names %q, which is no task", p.Window, key)
			}
		}
		for _, task := range p.Tasks {
			if task.Start.Date != p.Days[task.Start.Day-1].Date || task.Start.At != task.Spells[0].From {
				t.Errorf("%s: %s starts %+v; its day is %s and its first spell begins at %s", p.Window, task.Key, task.Start, p.Days[task.Start.Day-1].Date, task.Spells[0].From)
			}
			for _, n := range task.People {
				if !numbers[n] {
					t.Errorf("%s: %s is done by %d, who is nobody", p.Window, task.Key, n)
				}
			}
		}
	}
}
