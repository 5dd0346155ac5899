package workbook_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/quote"
	"tentwright/quote/job"
	"tentwright/quote/jobtest"
	"tentwright/workbook"
	"tentwright/workbook/internal/calc"
	"tentwright/workbook/sheet"
	"tentwright/workbook/xlsx"
)

const (
	seedVariable = "TENTWRIGHT_SEED" // first seed of the random jobs; none: always the same
	batchSize    = 30                // workbooks that one start of the office program recalculates
	leastCount   = 500               // formulas that any whole workbook has; fewer are no test
	mostShown    = 25                // differences of one workbook that are printed
)

// trial is one workbook to be recalculated.
type trial struct {
	name  string // of the file, without its ending; a seed if it begins with "seed-"
	q     *quote.Quote
	book  *sheet.Book
	least int // formulas
}

func demoCatalog(t testing.TB) *catalog.Catalog {
	t.Helper()
	c, list := catalog.Load("demo", catalog.Demo())
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	return c
}

func mustQuote(t testing.TB, c *catalog.Catalog, j *job.Job) *quote.Quote {
	t.Helper()
	q, list := quote.Build(c, j)
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	return q
}

// firstSeed of the random jobs.
func firstSeed(t testing.TB) uint64 {
	t.Helper()
	text := os.Getenv(seedVariable)
	if text == "" {
		return 20260704
	}
	seed, err := strconv.ParseUint(text, 10, 64)
	if err != nil {
		t.Fatalf("%s=%q; a whole number was expected", seedVariable, text)
	}
	return seed
}

// demoQuotes are those of the jobs that come with the program.
func demoQuotes(t testing.TB, c *catalog.Catalog) map[string]*quote.Quote {
	t.Helper()
	files, err := filepath.Glob(filepath.Join("..", "testdata", "jobs", "*.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	quotes := map[string]*quote.Quote{}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		j, list := job.Read(file, data)
		if err := list.Err(); err != nil {
			t.Fatal(err)
		}
		quotes[strings.TrimSuffix(filepath.Base(file), ".yaml")] = mustQuote(t, c, j)
	}
	return quotes
}

// writeBook writes a book into a folder of the test.
func writeBook(t testing.TB, dir, name string, b *sheet.Book) string {
	t.Helper()
	var out bytes.Buffer
	if err := xlsx.Write(&out, b); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	path := filepath.Join(dir, name+".xlsx")
	if err := os.WriteFile(path, out.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// Every formula of every sheet, recalculated by another program, gives the
// value that this program wrote: for the jobs that come with it, their
// customers' files, and random jobs.
func TestEveryFormulaIsTrue(t *testing.T) {
	calc.Need(t)
	c := demoCatalog(t)
	var trials []trial
	for name, q := range demoQuotes(t, c) {
		trials = append(trials, trial{name, q, workbook.Layout(q), leastCount}, trial{name + "-customer", q, workbook.Customer(q), 3})
	}
	slices.SortFunc(trials, func(a, b trial) int { return strings.Compare(a.name, b.name) })
	first, many := firstSeed(t), uint64(200)
	if testing.Short() {
		many = 20
	}
	t.Logf("random jobs by the seeds %d to %d", first, first+many-1)
	for seed := first; seed < first+many; seed++ {
		q := mustQuote(t, c, jobtest.Random(c, seed))
		name := fmt.Sprintf("seed-%d", seed)
		trials = append(trials, trial{name, q, workbook.Layout(q), leastCount})
		if seed%10 == 0 {
			trials = append(trials, trial{name + "-customer", q, workbook.Customer(q), 3})
		}
	}
	for n := 0; len(trials) > 0; n++ {
		some := trials[:min(batchSize, len(trials))]
		trials = trials[len(some):]
		t.Run(strconv.Itoa(n), func(t *testing.T) {
			t.Parallel()
			checkTruth(t, some)
		})
	}
}

// checkTruth recalculates workbooks in one start of the program.
func checkTruth(t *testing.T, trials []trial) {
	dir, out := t.TempDir(), t.TempDir()
	var files []string
	for _, x := range trials {
		files = append(files, writeBook(t, dir, x.name, x.book))
	}
	if err := calc.Recalculate(t.Context(), files, out); err != nil {
		t.Fatal(err)
	}
	total := 0
	for i, x := range trials {
		diffs, count, err := calc.Compare(files[i], filepath.Join(out, filepath.Base(files[i])))
		if err != nil {
			t.Fatal(err)
		}
		total += count
		if count < x.least {
			t.Errorf("%s: %d formulas; at least %d were expected", x.name, count, x.least)
		}
		for _, d := range diffs[:min(len(diffs), mostShown)] {
			t.Errorf("%s: %s", x.name, d)
		}
		if len(diffs) > mostShown {
			t.Errorf("%s: %d more", x.name, len(diffs)-mostShown)
		}
	}
	t.Logf("%d formulas in %d workbooks", total, len(trials))
}

// A job ten times as large as a usual one, of some forty lines of tents, still
// makes a workbook, and its formulas are as true.
func TestLargeJob(t *testing.T) {
	c := demoCatalog(t)
	q := mustQuote(t, c, jobtest.Times(tented(c), 10))
	for _, b := range []*sheet.Book{workbook.Layout(q), workbook.Customer(q)} {
		if err := b.Check(); err != nil {
			t.Fatal(err)
		}
	}
	calc.Need(t)
	checkTruth(t, []trial{{"large", q, workbook.Layout(q), leastCount}, {"large-customer", q, workbook.Customer(q), 3}})
}
