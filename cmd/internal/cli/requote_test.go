package cli

import (
	"os"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/quote"
	"tentwright/quote/job"
	"tentwright/workbook"
)

// What the yard loads beyond a vehicle's payload is told, although the plan of
// the quote holds; without counts of the yard there is nothing to tell.
func TestWorseChecks(t *testing.T) {
	c, list := catalog.Load("demo", catalog.Demo())
	if c == nil {
		t.Fatal(list)
	}
	data, err := os.ReadFile("../../../testdata/jobs/garden.yaml")
	if err != nil {
		t.Fatal(err)
	}
	j, list := job.ReadFor(c, "garden.yaml", data)
	if j == nil {
		t.Fatal(list)
	}
	q, list := quote.Build(c, j)
	if q == nil {
		t.Fatal(list)
	}
	book := workbook.Layout(q)
	if worse := worseChecks(book, q); len(worse) > 0 {
		t.Errorf("as planned, these fail: %+v", worse)
	}
	f := book.Found()
	keys := f.Names["pick_key"]
	first := f.Sheet(keys.Sheet).At(keys.R1, keys.C1).Text
	loaded := workbook.LayoutWith(q, workbook.Options{Kept: workbook.Kept{Loaded: map[string]int{first: 100_000}}})
	worse := worseChecks(loaded, q)
	if len(worse) == 0 || !strings.HasPrefix(worse[0].Key, "payload:") && !strings.HasPrefix(worse[0].Key, "room:") {
		t.Fatalf("100,000 pieces of %s fail %+v", first, worse)
	}
	if worse[0].Holds() || !strings.Contains(verdict(&worse[0]), "above") {
		t.Errorf("it says %q", verdict(&worse[0]))
	}
}
