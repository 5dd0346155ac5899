package workbook_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"tentwright/catalog/money"
	"tentwright/quote"
	"tentwright/quote/jobtest"
	"tentwright/quote/load"
	"tentwright/workbook"
	"tentwright/workbook/internal/calc"
)

// drawKept types counts, tags, riders and hours into some cells of a quote's
// workbook, right and wrong ones.
func drawKept(q *quote.Quote, seed uint64) workbook.Kept {
	r := rand.New(rand.NewPCG(seed, 7))
	k := workbook.Kept{Loaded: map[string]int{}, Tag: map[string]any{}, Counted: map[string]int{}, Damaged: map[string]int{}, Wet: map[string]string{},
		Each: map[string]money.Number{}, Riders: map[string]int{}, Actual: map[string]money.Number{}, Names: map[string]any{}}
	for _, line := range workbook.PickLines(q) {
		if r.IntN(3) == 0 {
			k.Loaded[line.Key] = max(0, line.Quantity+r.IntN(9)-4)
		}
		switch {
		case !line.Part.Tracked:
		case r.IntN(3) == 0:
			k.Tag[line.Key] = "tag " + strconv.Itoa(r.IntN(1000))
		case r.IntN(2) == 0:
			k.Tag[line.Key] = float64(r.IntN(1000))
		}
	}
	for _, line := range workbook.CheckIn(q) {
		key := line.Key
		if r.IntN(2) == 0 {
			k.Counted[key] = r.IntN(40)
		}
		if r.IntN(3) == 0 {
			k.Damaged[key] = r.IntN(5)
		}
		if r.IntN(3) == 0 {
			k.Wet[key] = []string{"Yes", "No", "yes", "rather"}[r.IntN(4)]
		}
		if r.IntN(5) == 0 {
			k.Each[key] = money.Percent(money.Int(r.IntN(40000)))
		}
	}
	for _, m := range []*load.Manifest{&q.Load.Out, &q.Load.Back} {
		for i := range m.Trips {
			if trip := &m.Trips[i]; trip.Tow == "" && r.IntN(2) == 0 {
				k.Riders[trip.Key] = r.IntN(21)
			}
		}
	}
	for i := range q.Crew.Windows {
		w := &q.Crew.Windows[i]
		for n := range w.People {
			if key := fmt.Sprintf("%s.%d", w.Labour.Spec.ID, n+1); r.IntN(2) == 0 {
				k.Names[key] = []any{"Ann Weir", 12.0, "=1+1"}[r.IntN(3)]
			}
		}
	}
	for i := range q.Labour.Tasks {
		if r.IntN(4) == 0 {
			k.Actual[q.Labour.Tasks[i].Key] = money.Percent(money.Int(r.IntN(3000)))
		}
	}
	return k
}

// A workbook that is laid out with what was typed before carries in every
// formula the value that follows from it.
func TestKeptFiguresAreTrue(t *testing.T) {
	calc.Need(t)
	c := demoCatalog(t)
	var trials []trial
	add := func(name string, q *quote.Quote, seed uint64) {
		book := workbook.LayoutWith(q, workbook.Options{Kept: drawKept(q, seed)})
		trials = append(trials, trial{name, q, book, leastCount})
	}
	first, many := firstSeed(t)+2000, uint64(25)
	if testing.Short() {
		many = 10
	}
	for name, q := range demoQuotes(t, c) {
		add(name, q, first)
	}
	slices.SortFunc(trials, func(a, b trial) int { return strings.Compare(a.name, b.name) })
	for seed := first; seed < first+many; seed++ {
		add(fmt.Sprintf("seed-%d", seed), mustQuote(t, c, jobtest.Random(c, seed)), seed)
	}
	for n := 0; len(trials) > 0; n++ {
		some := trials[:min(batchSize, len(trials))]
		trials = trials[len(some):]
		t.Run(strconv.Itoa(n), func(t *testing.T) { checkTruth(t, some) })
	}
}
