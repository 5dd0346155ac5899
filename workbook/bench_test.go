package workbook_test

import (
	"bytes"
	"os"
	"runtime/debug"
	"sync/atomic"
	"testing"
	"time"

	"tentwright/catalog"
	"tentwright/catalog/money"
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

// BenchmarkWorkbook quotes different jobs and writes their workbooks, on all
// cores and with garbage collected as the program does it: random ones, which
// are larger than the demo jobs, and the demo jobs with other numbers of guests.
func BenchmarkWorkbook(b *testing.B) {
	c := demoCatalog(b)
	random := make([]*job.Job, 200)
	for i := range random {
		random[i] = jobtest.Random(c, uint64(i))
	}
	b.Run("random", func(b *testing.B) { writeMany(b, c, random) })
	for _, name := range []string{"garden", "dinner", "fairground"} {
		b.Run(name, func(b *testing.B) { writeMany(b, c, guestsVaried(b, name)) })
	}
}

// guestsVaried is a demo job for fifty numbers of guests, with as many chairs.
func guestsVaried(b *testing.B, name string) []*job.Job {
	data, err := os.ReadFile("../testdata/jobs/" + name + ".yaml")
	if err != nil {
		b.Fatal(err)
	}
	jobs := make([]*job.Job, 50)
	for i := range jobs {
		j, list := job.Read(name, data)
		if j == nil {
			b.Fatal(list.Err())
		}
		j.Event.Guests += i
		j.Items[0].Quantity = j.Items[0].Quantity.Add(money.Int(i))
		jobs[i] = j
	}
	return jobs
}

func writeMany(b *testing.B, c *catalog.Catalog, jobs []*job.Job) {
	defer debug.SetGCPercent(debug.SetGCPercent(400))
	var n, size atomic.Int64
	b.ReportAllocs()
	b.RunParallel(func(pb *testing.PB) {
		var out bytes.Buffer
		for pb.Next() {
			makeBook(b, c, jobs[int(n.Add(1))%len(jobs)], &out)
			size.Add(int64(out.Len()))
		}
	})
	b.ReportMetric(float64(n.Load())/b.Elapsed().Seconds(), "jobs/s")
	b.ReportMetric(float64(size.Load())/float64(n.Load())/1000, "kB/file")
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
