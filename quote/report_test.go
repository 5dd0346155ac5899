package quote_test

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/quote"
	"tentwright/quote/job"
)

// build computes the quote of a demonstration job.
func build(t *testing.T, name string) *quote.Quote {
	t.Helper()
	c, list := catalog.Load("demo", catalog.Demo())
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	j, list := job.Read(name, data)
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	q, list := quote.Build(c, j)
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	return q
}

// demoJobs is every job of the demonstration.
func demoJobs(t *testing.T) []string {
	t.Helper()
	names, err := filepath.Glob("../testdata/jobs/*.yaml")
	if err != nil || len(names) == 0 {
		t.Fatalf("no jobs: %v", err)
	}
	return names
}

// The same job gives the same report, and nothing in it is missing.
func TestReportIsTheSame(t *testing.T) {
	for _, name := range demoJobs(t) {
		first, again := encode(t, build(t, name).Report()), encode(t, build(t, name).Report())
		if !bytes.Equal(first, again) {
			t.Errorf("%s: two reports differ", name)
		}
		if bytes.Contains(first, []byte("null")) {
			t.Errorf("%s: a list is null where [] was expected", name)
		}
		var back quote.Report
		if err := json.Unmarshal(first, &back); err != nil {
			t.Errorf("%s: %v", name, err)
		} else if third := encode(t, back); !bytes.Equal(first, third) {
			t.Errorf("%s: a report read back differs", name)
		}
	}
}

func encode(t *testing.T, r quote.Report) []byte {
	t.Helper()
	data, err := json.Marshal(r)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// The figures of a report add up by themselves, exactly.
func TestReportAddsUp(t *testing.T) {
	for _, name := range demoJobs(t) {
		q := build(t, name)
		r := q.Report()
		var lines, taxes, hours []json.Number
		for _, l := range r.Lines {
			lines = append(lines, l.Amount)
		}
		for _, x := range r.Taxes {
			taxes = append(taxes, x.Amount)
		}
		for _, x := range r.Tasks {
			hours = append(hours, x.Hours)
		}
		same(t, name+": subtotal", sum(t, lines...), sum(t, r.Totals.Subtotal))
		same(t, name+": tax", sum(t, taxes...), sum(t, r.Totals.Tax))
		same(t, name+": total", sum(t, r.Totals.Subtotal, r.Totals.Tax), sum(t, r.Totals.Total))
		same(t, name+": balance", sum(t, r.Totals.Deposit, r.Totals.Balance), sum(t, r.Totals.Total))
		same(t, name+": hours", sum(t, hours...), sum(t, r.Totals.Hours))
		checkParts(t, name, &r)
		checkStates(t, name, q, &r)
	}
}

// checkParts holds needs, parts and what is carried out against each other.
func checkParts(t *testing.T, name string, r *quote.Report) {
	t.Helper()
	needed, carried := map[string]int{}, map[string]int{}
	for _, n := range r.Needs {
		needed[n.Part] += n.Quantity
	}
	for _, s := range r.Out.Shares {
		carried[s.Part] += s.Quantity
	}
	for _, p := range r.Parts {
		if p.Counted != needed[p.Part] || p.Counted+p.Spare != p.Total || p.Total != carried[p.Part] {
			t.Errorf("%s: part %s: needed %d, counted %d, spare %d, total %d, carried %d", name, p.Part, needed[p.Part], p.Counted, p.Spare, p.Total, carried[p.Part])
		}
	}
}

// checkStates holds the states of the checks against the quote's failed ones.
func checkStates(t *testing.T, name string, q *quote.Quote, r *quote.Report) {
	t.Helper()
	failed := 0
	for _, c := range r.Checks {
		if c.State != "pass" {
			failed++
		}
	}
	if failed != len(q.Failed()) || len(r.Checks) != len(q.Checks) {
		t.Errorf("%s: %d of %d checks failed, want %d of %d", name, failed, len(r.Checks), len(q.Failed()), len(q.Checks))
	}
}

func same(t *testing.T, what string, got, want money.Number) {
	t.Helper()
	if !got.Equal(want) {
		t.Errorf("%s is %s, want %s", what, got, want)
	}
}

func sum(t *testing.T, all ...json.Number) money.Number {
	t.Helper()
	total := money.Zero
	for _, n := range all {
		x, err := money.Parse(n.String())
		if err != nil {
			t.Fatal(err)
		}
		total = total.Add(x)
	}
	return total
}

// A check says how it went and which way its limit lies.
func TestCheckState(t *testing.T) {
	for _, c := range []struct {
		check       quote.Check
		state, rule string
	}{
		{quote.Check{Value: money.Int(2), Limit: money.Int(2)}, "pass", "at most"},
		{quote.Check{Value: money.Int(3), Limit: money.Int(2)}, "look", "at most"},
		{quote.Check{Value: money.Int(3), Limit: money.Int(2), Severe: true}, "stop", "at most"},
		{quote.Check{Value: money.Int(2), Limit: money.Int(2), AtLeast: true}, "pass", "at least"},
		{quote.Check{Value: money.Int(1), Limit: money.Int(2), AtLeast: true}, "look", "at least"},
	} {
		if got, rule := c.check.State(), c.check.Rule(); got != c.state || rule != c.rule {
			t.Errorf("%+v: %s, %s; want %s, %s", c.check, got, rule, c.state, c.rule)
		}
	}
}
