package workbook_test

import (
	"bytes"
	"testing"
	"time"

	"tentwright/catalog"
	"tentwright/quote"
	"tentwright/quote/job"
	"tentwright/quote/jobtest"
	"tentwright/workbook"
	"tentwright/workbook/xlsx"
)

// makeBook quotes a job and writes its workbook, in memory.
func makeBook(b *testing.B, c *catalog.Catalog, j *job.Job, out *bytes.Buffer) {
	q, list := quote.Build(c, j)
	if list.Err() != nil {
		b.Fatal(list.Err())
	}
	out.Reset()
	if err := xlsx.Write(out, workbook.Layout(q)); err != nil {
		b.Fatal(err)
	}
}

// BenchmarkWorkbook quotes different random jobs and writes their workbooks.
func BenchmarkWorkbook(b *testing.B) {
	c := demoCatalog(b)
	jobs := make([]*job.Job, 200)
	for i := range jobs {
		jobs[i] = jobtest.Random(c, uint64(i))
	}
	var out bytes.Buffer
	b.ReportAllocs()
	n, size := 0, 0
	for b.Loop() {
		makeBook(b, c, jobs[n%len(jobs)], &out)
		size += out.Len()
		n++
	}
	b.ReportMetric(float64(n)/b.Elapsed().Seconds(), "jobs/s")
	b.ReportMetric(float64(size)/float64(n)/1000, "kB/file")
}

// BenchmarkGrowth makes workbooks of jobs and of the same jobs ten times as
// large.
func BenchmarkGrowth(b *testing.B) {
	c := demoCatalog(b)
	var small []*job.Job
	for seed := uint64(0); len(small) < 5; seed++ {
		// Some are too much for the yard ten times over.
		j := jobtest.Random(c, seed)
		if _, list := quote.Build(c, jobtest.Times(j, 10)); list.Err() == nil {
			small = append(small, j)
		}
	}
	var one, ten time.Duration
	var out bytes.Buffer
	for b.Loop() {
		for _, j := range small {
			start := time.Now()
			makeBook(b, c, j, &out)
			one += time.Since(start)
			start = time.Now()
			makeBook(b, c, jobtest.Times(j, 10), &out)
			ten += time.Since(start)
		}
	}
	b.ReportMetric(float64(ten)/float64(one), "ratio-10x")
}
