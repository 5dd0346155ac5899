package quote_test

import (
	"testing"
	"time"

	"tentwright/catalog"
	"tentwright/quote"
	"tentwright/quote/job"
	"tentwright/quote/jobtest"
)

// BenchmarkBuild quotes different random jobs, without a workbook.
func BenchmarkBuild(b *testing.B) {
	c := demo(b)
	jobs := make([]*job.Job, 200)
	for i := range jobs {
		jobs[i] = jobtest.Random(c, uint64(i))
	}
	b.ReportAllocs()
	n := 0
	for b.Loop() {
		if _, list := quote.Build(c, jobs[n%len(jobs)]); list.Err() != nil {
			b.Fatal(list.Err())
		}
		n++
	}
	b.ReportMetric(float64(n)/b.Elapsed().Seconds(), "jobs/s")
}

// BenchmarkGrowth quotes jobs and the same jobs ten times as large.
func BenchmarkGrowth(b *testing.B) {
	c := demo(b)
	var small, large []*job.Job
	for seed := uint64(0); len(small) < 20; seed++ {
		j := jobtest.Random(c, seed)
		// Some are too much for the yard ten times over.
		if _, list := quote.Build(c, jobtest.Times(j, 10)); list.Err() == nil {
			small, large = append(small, j), append(large, jobtest.Times(j, 10))
		}
	}
	var one, ten time.Duration
	for b.Loop() {
		one += buildTime(b, c, small)
		ten += buildTime(b, c, large)
	}
	b.ReportMetric(float64(ten)/float64(one), "ratio-10x")
	b.ReportMetric(float64(one.Microseconds())/1000/float64(b.N*len(small)), "ms/job")
}

func buildTime(b *testing.B, c *catalog.Catalog, jobs []*job.Job) time.Duration {
	start := time.Now()
	for _, j := range jobs {
		if _, list := quote.Build(c, j); list.Err() != nil {
			b.Fatal(list.Err())
		}
	}
	return time.Since(start)
}
