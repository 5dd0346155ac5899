package workbook_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/quote"
	"tentwright/quote/job"
	"tentwright/quote/jobtest"
	"tentwright/quote/labour"
	"tentwright/quote/lift"
	"tentwright/quote/load"
	"tentwright/quote/parts"
	"tentwright/quote/price"
	"tentwright/quote/tent"
	"tentwright/workbook"
	"tentwright/workbook/internal/calc"
	"tentwright/workbook/sheet"
)

// mostEdits is how many kinds of input one workbook is changed by.
const mostEdits = 8

// Inputs typed into a workbook give, after recalculation, the figures that
// the program computes from the same inputs in the job and the catalog. The
// vehicles are a choice that the workbook keeps, so the expected figures keep
// the trips of the first quote too; weights, hours and prices follow.
func TestEditedInputsGiveTheSameFigures(t *testing.T) {
	calc.Need(t)
	first, many := firstSeed(t), 60
	if testing.Short() {
		many = 8
	}
	t.Logf("random jobs and edits by the seeds %d to %d", first, first+uint64(many)-1)
	for at := 0; at < many; at += batchSize {
		t.Run(strconv.Itoa(at), func(t *testing.T) {
			t.Parallel()
			checkEdits(t, first+uint64(at), min(batchSize, many-at))
		})
	}
}

// checkEdits edits the workbooks of some jobs and recalculates them in one
// start of the program.
func checkEdits(t *testing.T, first uint64, many int) {
	dir, out := t.TempDir(), t.TempDir()
	var all []*editing
	var files []string
	for seed := first; seed < first+uint64(many); seed++ {
		e := newEditing(t, seed)
		e.draw()
		name := fmt.Sprintf("seed-%d", seed)
		written := writeBook(t, dir, name, e.book)
		edited := filepath.Join(dir, name+"-edited.xlsx")
		if err := calc.EditCells(written, edited, e.edits); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		all, files = append(all, e), append(files, edited)
	}
	if err := calc.Recalculate(t.Context(), files, out); err != nil {
		t.Fatal(err)
	}
	compared, moved := 0, 0
	for i, e := range all {
		f := readFigures(t, filepath.Join(out, filepath.Base(files[i])))
		want := e.expected(t)
		reportFigures(t, fmt.Sprintf("seed %d, after %s", e.seed, strings.Join(e.said, "; ")), want, bookFigures(f))
		compared += len(want)
		if want["total_due"] != e.q.Price.Total.InexactFloat64() {
			moved++
		}
	}
	if moved < many/2 {
		t.Errorf("the total moved in %d of %d workbooks; in most of them was expected", moved, many)
	}
	t.Logf("%d figures in %d workbooks; the total moved in %d", compared, many, moved)
}

// editing is a workbook with the edits made to it, and the same made to the
// job and the catalog that it came from.
type editing struct {
	t     testing.TB
	seed  uint64
	r     *rand.Rand
	q     *quote.Quote // as it was
	book  *sheet.Book
	now   *quote.Quote // Catalog and Job with the edits made
	edits []calc.Edit
	said  []string
	added []parts.Order // lines added on the build-up: priced, not picked
}

func newEditing(t *testing.T, seed uint64) *editing {
	t.Helper()
	was, now := demoCatalog(t), demoCatalog(t)
	e := &editing{t: t, seed: seed, r: rand.New(rand.NewPCG(seed, 1)), q: mustQuote(t, was, jobtest.Random(was, seed)),
		now: &quote.Quote{Catalog: now, Job: jobtest.Random(now, seed)}}
	e.book = workbook.Layout(e.q)
	// The workbook keeps the terms of the zone even if the distance changes.
	e.now.Job.Delivery.Zone = e.q.Job.Zone(was).ID
	return e
}

// draw makes some edits of different kinds.
func (e *editing) draw() {
	for _, at := range e.r.Perm(len(kinds))[:1+e.r.IntN(mostEdits)] {
		before := len(e.edits)
		if kinds[at].do(e) {
			e.said = append(e.said, fmt.Sprintf("%s %v", kinds[at].what, e.edits[before:]))
		}
	}
}

// expected is what the program computes from the edited inputs with the trips
// as they were.
func (e *editing) expected(t *testing.T) map[string]float64 {
	t.Helper()
	c, j := e.now.Catalog, e.now.Job
	tents, list := tent.Build(c, j)
	if list.Err() != nil {
		t.Fatal(list.Err())
	}
	// Which anchors, and how many, is a choice that the workbook keeps too.
	for i := range tents {
		tents[i].Holding = e.q.Parts.Tents[i].Holding
	}
	p, list := parts.Build(c, j, tents, e.planned(c))
	if err := list.Err(); err != nil {
		t.Fatalf("seed %d, after %s: %v", e.seed, e.said, err)
	}
	plan, list := load.Pack(c, p, parts.Distance(c, j.Delivery.Distance))
	if err := list.Err(); err != nil {
		t.Fatalf("seed %d, after %s: %v", e.seed, e.said, err)
	}
	plan.Out.Trips, plan.Back.Trips = e.q.Load.Out.Trips, e.q.Load.Back.Trips
	hours := labour.Estimate(c, j, p, plan, lift.Build(c, p))
	priced := *p
	priced.Orders = append(slices.Clone(p.Orders), e.added...)
	q := &quote.Quote{Catalog: c, Job: j, Parts: p, Load: plan, Labour: hours, Price: price.Build(c, j, &priced, plan, hours)}
	return quoteFigures(q)
}

// planned is what was planned for heat and current: a choice that the workbook
// keeps too, at the prices as they now are.
func (e *editing) planned(c *catalog.Catalog) []parts.Planned {
	if e.q.Power == nil {
		return nil
	}
	list := slices.Clone(e.q.Power.Planned)
	for i := range list {
		list[i].Item = c.Item(list[i].Item.ID)
	}
	return list
}

// quoteFigures is every figure of a quote that the workbook has too.
func quoteFigures(q *quote.Quote) map[string]float64 {
	f := map[string]float64{}
	put := func(key string, n money.Number) { f[key] += n.InexactFloat64() }
	p, sys := q.Price, q.Catalog.Company.Units
	for name, n := range map[string]money.Number{"hire": p.Hire, "subtotal": p.Subtotal, "tax": p.Tax, "due": p.Total, "cost": p.Cost,
		"margin": p.Margin, "percent": p.Percent, "deposit": p.Deposit, "balance": p.Balance, "received": p.Received, "open": p.Due,
		"hours": q.Labour.Hours, "weight": money.Round(money.Float(q.Load.Out.Mass.In(sys)), 2),
		"weight_back": money.Round(money.Float(q.Load.Back.Mass.In(sys)), 2)} {
		put("total_"+name, n)
	}
	for i := range p.Lines {
		l := &p.Lines[i]
		put("amount "+l.Key, l.Amount)
		if l.Kind != price.Loading && l.Kind != price.Waiver && l.Kind != price.Minimum {
			put("offer "+l.Key, l.Offer)
			put("cost "+l.Key, l.Cost)
			if l.BelowFloor(q.Catalog.Rates.MarginFloor) {
				put("low "+l.Key, money.One)
			}
		}
	}
	for _, c := range slices.Concat(q.Parts.Counts, q.Labour.Counts) {
		put("count "+c.Key, c.Amount)
	}
	for i := range q.Parts.Needs {
		put("need "+q.Parts.Needs[i].Key, money.Int(q.Parts.Needs[i].Quantity))
	}
	for i := range q.Parts.Lines {
		put("pick "+q.Parts.Lines[i].Part.ID, money.Int(q.Parts.Lines[i].Total()))
	}
	for i := range q.Labour.Tasks {
		put("task "+q.Labour.Tasks[i].Key, q.Labour.Tasks[i].Hours)
	}
	for i := range q.Labour.Windows {
		w := &q.Labour.Windows[i]
		put("person "+w.Spec.ID, w.Person)
		put("overtime "+w.Spec.ID, w.DayOver.Add(w.WeekOver))
		put("smallest "+w.Spec.ID, money.Int(w.Smallest))
	}
	return f
}

// bookFigures is the same of a workbook, by its defined names alone.
func bookFigures(b figures) map[string]float64 {
	f := map[string]float64{}
	for _, name := range []string{"hire", "subtotal", "tax", "due", "cost", "margin", "percent", "deposit", "balance", "received", "open",
		"hours", "weight", "weight_back"} {
		f["total_"+name] = b.at("total_" + name)
	}
	for _, x := range []struct{ what, keys, values string }{
		{"amount", "tents_key", "tents_amount"}, {"amount", "build_key", "build_amount"}, {"amount", "work_key", "work_amount"}, {"amount", "charge_key", "charge_amount"},
		{"offer", "tents_key", "tents_offer"}, {"offer", "build_key", "build_offer"}, {"offer", "work_key", "work_offer"}, {"cost", "tents_key", "tents_cost"}, {"cost", "build_key", "build_cost"},
		{"cost", "work_key", "work_cost"}, {"low", "tents_key", "tents_low"}, {"low", "build_key", "build_low"}, {"count", "count_key", "count_amount"}, {"count", "late_key", "late_amount"},
		{"need", "need_key", "need_quantity"}, {"pick", "pick_part", "pick_quantity"}, {"task", "task_key", "task_hours"},
		{"person", "window_id", "window_person"}, {"overtime", "window_id", "window_over"}, {"smallest", "window_id", "window_smallest"},
	} {
		for key, n := range b.column(x.keys, x.values) {
			f[x.what+" "+key] += n
		}
	}
	return f
}

// reportFigures fails for every figure that differs; one that a side does not
// have counts as zero.
func reportFigures(t *testing.T, context string, want, got map[string]float64) {
	t.Helper()
	var bad []string
	for key, w := range want {
		if g := got[key]; !(math.Abs(w-g) <= 1e-9*max(1, math.Abs(w))) {
			bad = append(bad, fmt.Sprintf("%s: program %v, workbook %v", key, w, g))
		}
	}
	for key, g := range got {
		if _, both := want[key]; !both && g != 0 {
			bad = append(bad, fmt.Sprintf("%s: only in the workbook, %v", key, g))
		}
	}
	if len(bad) > 0 {
		slices.Sort(bad)
		t.Errorf("%s: %d figures differ:\n  %s", context, len(bad), strings.Join(bad[:min(len(bad), mostShown)], "\n  "))
	}
}

// line is the job's own line of an order key such as "L:3".
func line(j *job.Job, key string) *job.Line {
	n, err := strconv.Atoi(strings.TrimPrefix(key, "L:"))
	if err != nil || n < 1 || n > len(j.Items) {
		return nil
	}
	return &j.Items[n-1]
}
