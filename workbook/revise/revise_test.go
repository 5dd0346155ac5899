package revise_test

import (
	"os"
	"path/filepath"
	"testing"

	"tentwright/catalog"
	"tentwright/quote"
	"tentwright/quote/job"
	"tentwright/workbook"
	"tentwright/workbook/revise"
	"tentwright/workbook/sheet"
)

// demoJobs are the demonstration jobs by the names of their files.
var demoJobs = []string{"garden", "dinner", "fairground"}

// demoQuote computes a demonstration job.
func demoQuote(t testing.TB, name string) *quote.Quote {
	t.Helper()
	c, list := catalog.Load("demo", catalog.Demo())
	if c == nil {
		t.Fatal(list)
	}
	data, err := os.ReadFile(filepath.Join("..", "..", "testdata", "jobs", name+".yaml"))
	if err != nil {
		t.Fatal(err)
	}
	j, list := job.ReadFor(c, name+".yaml", data)
	if j == nil {
		t.Fatal(list)
	}
	q, list := quote.Build(c, j)
	if q == nil {
		t.Fatal(list)
	}
	return q
}

// typed is what somebody types into a cell that has a name; index counts down
// from the first cell of it.
type typed struct {
	name  string
	index int
	cell  sheet.FoundCell
}

func num(n float64) sheet.FoundCell { return sheet.FoundCell{Kind: sheet.FoundNumber, Number: n} }
func txt(s string) sheet.FoundCell  { return sheet.FoundCell{Kind: sheet.FoundText, Text: s} }

// typeInto types into a workbook as it was found.
func typeInto(t testing.TB, f *sheet.Found, list ...typed) {
	t.Helper()
	for _, x := range list {
		p, ok := f.Names[x.name]
		if !ok {
			t.Fatalf("no name %s", x.name)
		}
		f.Sheet(p.Sheet).Rows[p.R1+x.index-1][p.C1-1] = x.cell
	}
}

func TestUneditedHasNoEdits(t *testing.T) {
	for _, name := range demoJobs {
		b, list := revise.Open(name+".xlsx", workbook.Layout(demoQuote(t, name)).Found())
		if b == nil || len(list) > 0 || len(b.Edits) > 0 {
			t.Errorf("%s: %v %v", name, list, b)
			continue
		}
		r, list := b.Revise(nil)
		if r == nil || len(r.Changes) > 0 || r.Quote != b.Quote {
			t.Errorf("%s: a revision of nothing: %v", name, list)
		}
	}
}

func TestEditsBecomeARevision(t *testing.T) {
	q := demoQuote(t, "dinner")
	f := workbook.Layout(q).Found()
	typeInto(t, f, typed{"rate_waiver", 0, num(11)}, typed{"job_guests", 0, num(150)}, typed{"job_customer_name", 0, txt("Larkmere Choir")},
		typed{"job_discount", 0, num(3)}, typed{"minutes_frame_poles", 0, num(9)})
	b, list := revise.Open("dinner.xlsx", f)
	if b == nil {
		t.Fatal(list)
	}
	for _, e := range b.Edits {
		t.Logf("%s | %s | %s -> %s", e.Pos, e.What, e.Old, e.New)
	}
	r, list := b.Revise(nil)
	if r == nil {
		t.Fatal(list)
	}
	for _, c := range r.Changes {
		t.Logf("%+v %+v", c, c.Effect)
	}
}
