package cli

import (
	"testing"
	"time"

	"tentwright/catalog"
	"tentwright/quote"
	"tentwright/quote/job"
)

// A plan that is looked for longer is never worse, stands in the job by the
// number of its schedules, and comes again from them.
func TestThinkIsReproducible(t *testing.T) {
	q := quoteOfFile(t, "../../../testdata/jobs/fairground.yaml")
	at := time.Date(2026, 6, 15, 12, 0, 0, 0, time.UTC)
	a := &app{now: func() time.Time { at = at.Add(time.Second); return at }} // each look at the clock takes a second
	longer, err := a.think(q, 8*time.Second)
	if err != nil {
		t.Fatal(err)
	}
	if longer.Crew.Minutes() > q.Crew.Minutes() {
		t.Errorf("%d minutes after a longer search, %d before", longer.Crew.Minutes(), q.Crew.Minutes())
	}
	if longer.Crew.Minutes() < q.Crew.Minutes() && longer.Job.Labour.Tries <= q.Catalog.Crew.Tries {
		t.Errorf("the job says %d schedules", longer.Job.Labour.Tries)
	}
	again, list := quote.Build(longer.Catalog, longer.Job)
	if list.Err() != nil {
		t.Fatal(list.Err())
	}
	if again.Crew.Minutes() != longer.Crew.Minutes() {
		t.Errorf("%d minutes when read again, %d before", again.Crew.Minutes(), longer.Crew.Minutes())
	}
	if same, err := a.think(q, 0); err != nil || same != q {
		t.Errorf("without time, the quote changed: %v", err)
	}
}

// quoteOfFile is the quote of a job file by the demonstration shop.
func quoteOfFile(t *testing.T, path string) *quote.Quote {
	t.Helper()
	file, err := readJob(path)
	if err != nil {
		t.Fatal(err)
	}
	c, list := catalog.Load("", catalog.Demo())
	if list.Err() != nil {
		t.Fatal(list.Err())
	}
	j, list := job.ReadFor(c, path, file.data)
	if list.Err() != nil {
		t.Fatal(list.Err())
	}
	q, list := quote.Build(c, j)
	if list.Err() != nil {
		t.Fatal(list.Err())
	}
	return q
}
