package intake

import (
	"bytes"
	"encoding/json"
	"os"
	"testing"

	"tentwright/catalog"
	"tentwright/quote"
	"tentwright/quote/job"
	"tentwright/quote/jobtest"

	"pgregory.net/rapid"
)

// jobOf reads a demo job.
func jobOf(t testing.TB, c *catalog.Catalog, name string) *job.Job {
	t.Helper()
	data, err := os.ReadFile("../../testdata/jobs/" + name)
	if err != nil {
		t.Fatal(err)
	}
	j, list := job.ReadFor(c, name, data)
	if list.Err() != nil {
		t.Fatal(list.Err())
	}
	return j
}

// report is everything that a quote says, as JSON.
func report(t testing.TB, c *catalog.Catalog, j *job.Job) []byte {
	t.Helper()
	q, list := quote.Build(c, j)
	if list.Err() != nil {
		t.Fatal(list.Err())
	}
	data, err := json.MarshalIndent(q.Report(), "", "  ")
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// A demo job that was typed into the form gives the same quote as its file with
// its lines in the order of the form.
func TestDemoJobs(t *testing.T) {
	c := demo(t)
	for _, name := range []string{"dinner.yaml", "garden.yaml", "fairground.yaml"} {
		want, ok := canon(c, jobOf(t, c, name))
		if !ok {
			t.Fatalf("%s: the form has no room for it", name)
		}
		want, _ = job.ReadFor(c, "job.yaml", job.Write(want)) // positions are part of a report
		b := fill(c, want)
		if err := b.Check(); err != nil {
			t.Fatal(err)
		}
		data, got, list := Read("job.yaml", b.Found(), c) // the file that positions of the report name
		if list.Err() != nil {
			t.Fatalf("%s: %v", name, list.Err())
		}
		if string(data) != string(job.Write(want)) {
			t.Fatalf("%s: read\n%s\nwant\n%s", name, data, job.Write(want))
		}
		if !bytes.Equal(report(t, c, got), report(t, c, want)) {
			t.Errorf("%s: the quotes differ", name)
		}
	}
}

// Any job that the form has room for comes back as it was.
func TestAnyJob(t *testing.T) {
	c := demo(t)
	read := 0
	rapid.Check(t, func(t *rapid.T) {
		drawn := jobtest.Draw(t, c)
		floors(t, c, drawn)
		j, ok := canon(c, drawn)
		if !ok {
			t.Skip("the form has no room for it")
		}
		data, _, list := Read("intake.xlsx", fill(c, j).Found(), c)
		if list.Err() != nil {
			t.Fatal(list.Err())
		}
		if string(data) != string(job.Write(j)) {
			t.Fatalf("read\n%s\nwant\n%s", data, job.Write(j))
		}
		read++
	})
	if read < 20 {
		t.Errorf("only %d jobs fitted the form; at least 20 were expected", read)
	}
}

// A blank form is sound, is known as one, and says all that must be filled.
func TestBlank(t *testing.T) {
	c := demo(t)
	b := Form(c, made)
	if err := b.Check(); err != nil {
		t.Fatal(err)
	}
	f := b.Found()
	if !Is(f) {
		t.Error("not known as a form")
	}
	_, _, list := Read("blank.xlsx", f, c)
	need := 0
	for _, sec := range sections(c.Company.Units) {
		for _, d := range sec.fields {
			if d.need {
				need++
			}
		}
	}
	if len(list) != need {
		t.Errorf("%d faults, want one for each of %d needed cells:\n%v", len(list), need, list.Err())
	}
	for _, p := range list {
		if p.Pos.Sheet != SheetIntake || p.Pos.Cell == "" {
			t.Errorf("no cell: %s", p)
		}
	}
}
