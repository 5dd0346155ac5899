package revise_test

import (
	"slices"
	"testing"

	"tentwright/quote"
	"tentwright/quote/job"
	"tentwright/workbook"
	"tentwright/workbook/revise"
)

// vehiclesOf lists, by the load's own plan, on which trips each part rides.
func vehiclesOf(q *quote.Quote) map[string][]string {
	on := map[string][]string{}
	for i := range q.Load.Out.Shares {
		s := &q.Load.Out.Shares[i]
		if key := q.Load.Out.Trips[s.Trip].Key; s.Quantity > 0 && !slices.Contains(on[s.Part.ID], key) {
			on[s.Part.ID] = append(on[s.Part.ID], key)
		}
	}
	for _, keys := range on {
		slices.Sort(keys)
	}
	return on
}

// What stays on the load but rides on other vehicles is listed, and nothing
// else is.
func TestMovesAreListed(t *testing.T) {
	q := demoQuote(t, "fairground")
	f := workbook.Layout(q).Found()
	a, list := revise.Open("a.xlsx", f)
	if a == nil {
		t.Fatal(list)
	}
	j, list := job.Read("", job.Write(q.Job))
	if j == nil {
		t.Fatal(list)
	}
	j.Tents[2].Count = 2
	more, list := quote.Build(q.Catalog, j)
	if more == nil {
		t.Fatal(list)
	}
	b, list := revise.Open("b.xlsx", workbook.Layout(more).Found())
	if b == nil {
		t.Fatal(list)
	}
	c, list := revise.Compare(a, b)
	if c == nil {
		t.Fatal(list)
	}
	was, now := vehiclesOf(q), vehiclesOf(more)
	var want []string
	for part, keys := range was {
		if len(now[part]) > 0 && !slices.Equal(keys, now[part]) {
			want = append(want, part)
		}
	}
	var got []string
	for i := range c.Moves {
		got = append(got, c.Moves[i].Part.ID)
	}
	slices.Sort(want)
	slices.Sort(got)
	if len(want) == 0 || !slices.Equal(got, want) {
		t.Errorf("moves %v\nwanted %v", got, want)
	}
	if err := workbook.LayoutSideBySide(more, &c.SideBySide).Check(); err != nil {
		t.Error(err)
	}
}
