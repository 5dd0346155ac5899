package workbook_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"tentwright/catalog"
	"tentwright/quote"
	"tentwright/quote/job"
	"tentwright/quote/jobtest"
	"tentwright/workbook"
	"tentwright/workbook/internal/calc"
)

// smallShop is the smallest shop with words swapped in all of its files.
func smallShop(t *testing.T, swaps ...string) *catalog.Catalog {
	t.Helper()
	shop := fstest.MapFS{}
	for _, name := range catalog.Files() {
		data, err := os.ReadFile(filepath.Join("..", "testdata", "shops", "small", name))
		if err != nil {
			t.Fatal(err)
		}
		shop[name] = &fstest.MapFile{Data: []byte(strings.NewReplacer(swaps...).Replace(string(data)))}
	}
	c, list := catalog.Load("small", shop)
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	return c
}

// usualHead is what every job file must say.
const usualHead = `number: T-1
customer: {name: Test Customer}
event: {name: Test Event, guests: 40}
dates: {quoted: 2027-01-10, deliver: 2027-06-11, event_from: 2027-06-12, event_to: 2027-06-12, strike: 2027-06-13, collect: 2027-06-13}
delivery: {distance: 8 mi}
`

// Jobs and shops at the edge of what is allowed make whole workbooks too, and
// their formulas are as true.
func TestEdges(t *testing.T) {
	calc.Need(t)
	const tent = "tents: [{id: a, family: hip, size: 10x10, sides: [{side: back, wall: solid}]}]\n"
	var trials []trial
	for _, x := range []struct {
		name, body string
		swaps      []string
	}{
		{"one choice only", tent, nil}, // one size, one eave height
		{"nothing to load", "items: [{item: visit, quantity: 1}]", nil},
		{"extras only", "items: [{item: chair, quantity: 10, optional: yes}]", nil},
		{"no small coins", tent + "items: [{item: chair, quantity: 111}]\npayments: [{date: 2027-01-11, amount: 10}]", []string{"USD", "JPY"}},
		{"metric", tent + "items: [{item: chair, quantity: 11}]", []string{"units: imperial", "units: metric", "unit: ft", "unit: m", "letter", "a4"}},
		{"fractions of cents", tent + "items: [{item: chair, quantity: 11}]", []string{"bill: 45", "bill: 45.125", "price: 2.25", "price: 2.255", "cost: 0.4", "cost: 0.405"}},
		{"choices with commas", strings.ReplaceAll(tent, "solid", "'solid, white'"), []string{"kind: solid", "kind: 'solid, white'"}},
		{"ids alike", "tents: [{id: zelt-ä, family: hip, size: 10x10, ground: asphalt}, {id: zelt-ö, family: hip, size: 10x10, count: 3, ground: grass}, {id: a_b, family: hip, size: 10x10}, {id: a-b, family: hip, size: 10x10}]", nil},
		{"ids like names", "tents: [{id: times, family: hip, size: 10x10, ground: asphalt}]", []string{"{id: event,", "{id: event_from, name: X, steps: [{from: 1, factor: 1}]}, {id: event,", "id: hand", "id: mile", "skill: hand", "skill: mile"}},
		{"long names", tent + "discount: {percent: 5, reason: " + strings.Repeat("long ", 45) + "}", []string{"Sales tax", strings.Repeat("tax ", 25), "name: Surface", "name: " + strings.Repeat("ground ", 15)}},
	} {
		c := smallShop(t, x.swaps...)
		j, list := job.Read("job.yaml", []byte(usualHead+x.body))
		if err := list.Err(); err != nil {
			t.Fatalf("%s: %v", x.name, err)
		}
		q := mustQuote(t, c, j)
		name := strings.ReplaceAll(x.name, " ", "-")
		trials = append(trials, trial{name, q, workbook.Layout(q), 100}, trial{name + "-customer", q, workbook.Customer(q), 3})
	}
	checkTruth(t, trials)
}

// Many tents on ground of their own do not make any formula too long.
func TestManyGrounds(t *testing.T) {
	c := demoCatalog(t)
	j := tented(c)
	stall := j.Tents[0]
	stall.Sides, stall.Joins, stall.Count = nil, "", 1
	stall.Ground = c.SiteFactor("surface").Options[1].ID
	j.Tents = nil
	for i := range 300 {
		stall.ID = fmt.Sprintf("stall-%d", i)
		j.Tents = append(j.Tents, stall)
	}
	q, list := quote.Build(c, j)
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	if err := workbook.Layout(q).Check(); err != nil {
		t.Error(err)
	}
}

// tented is the first random job that has tents.
func tented(c *catalog.Catalog) *job.Job {
	for seed := uint64(1); ; seed++ {
		if j := jobtest.Random(c, seed); len(j.Tents) > 0 {
			return j
		}
	}
}
