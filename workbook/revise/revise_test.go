package revise_test

import (
	"os"
	"path/filepath"
	"strings"
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

// Each edit is told with its place, in words, with the old and the new.
func TestEditsAreTold(t *testing.T) {
	f := workbook.Layout(demoQuote(t, "dinner")).Found()
	typeInto(t, f, typed{"rate_waiver", 0, num(11)}, typed{"job_guests", 0, num(150)}, typed{"job_customer_name", 0, txt("Larkmere Choir")},
		typed{"job_discount", 0, num(3)}, typed{"minutes_frame_poles", 0, num(9)}, typed{"zones_upto", 0, sheet.FoundCell{}}, typed{"qty_l.1", 0, num(24)})
	b, list := revise.Open("dinner.xlsx", f)
	if b == nil || len(list) > 0 {
		t.Fatal(list)
	}
	want := []string{"Job!B4 Customer: Larkmere Choral Society -> Larkmere Choir", "uests: 160 -> 150", "Price Build-up!E", "Rates!C8 Discount on the whole hire: 0 -> 3",
		"Rates!C15 Damage waiver: 9 -> 11", "Up to, mi: 8 -> ", "Minutes"}
	if len(b.Edits) != len(want) {
		t.Fatalf("%d edits; %d were expected", len(b.Edits), len(want))
	}
	for i, e := range b.Edits {
		if got := e.Pos.Sheet + "!" + e.Pos.Cell + " " + e.What + ": " + e.Old + " -> " + e.New; !strings.Contains(got, want[i]) {
			t.Errorf("%q; %q was expected", got, want[i])
		}
	}
	r, list := b.Revise(nil)
	if r == nil {
		t.Fatal(list)
	}
	if c := r.Changes[4]; c.Effect == nil || !c.Effect.Price.IsPositive() || !c.Effect.Hours.IsZero() || !c.Effect.Weight.IsZero() {
		t.Errorf("a dearer waiver has the effect %+v", c.Effect)
	}
}
