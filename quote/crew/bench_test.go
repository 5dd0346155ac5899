package crew_test

import (
	"os"
	"testing"

	"tentwright/catalog"
	"tentwright/quote"
	"tentwright/quote/crew"
	"tentwright/quote/job"
)

// BenchmarkBuild plans all windows of the demonstration's jobs, their tables
// of crew sizes included.
func BenchmarkBuild(b *testing.B) {
	for _, name := range []string{"dinner", "garden", "fairground"} {
		b.Run(name, func(b *testing.B) {
			q := quoted(b, name)
			for b.Loop() {
				crew.Build(q.Catalog, q.Job, q.Parts, q.Load, q.Labour)
			}
			b.ReportMetric(float64(b.Elapsed().Microseconds())/1000/float64(b.N), "ms/job")
		})
	}
}

// demo is the shop that comes with the program.
func demo(t testing.TB) *catalog.Catalog {
	t.Helper()
	c, list := catalog.Load("demo", catalog.Demo())
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	return c
}

// quoted is one of the demonstration's jobs.
func quoted(t testing.TB, name string) *quote.Quote {
	t.Helper()
	data, err := os.ReadFile("../../testdata/jobs/" + name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	c := demo(t)
	j, list := job.ReadFor(c, name+".yaml", data)
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	q, list := quote.Build(c, j)
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	return q
}
