package workbook_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tentwright/catalog/diag"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote"
	"tentwright/workbook"
	"tentwright/workbook/internal/calc"
	"tentwright/workbook/revise"
	"tentwright/workbook/xlsx"
)

// What the office types into a workbook with a spreadsheet program, whose rows
// it inserts, deletes, copies and sorts, gives as the next revision the quote
// that is computed from the same edits of the job and the catalog.
func TestRequoteGivesTheEditedQuote(t *testing.T) {
	calc.Need(t)
	first, many := firstSeed(t)+2000, 40
	if testing.Short() {
		many = 10
	}
	t.Logf("random jobs and edits by the seeds %d to %d", first, first+uint64(many)-1)
	for at := 0; at < many; at += batchSize {
		t.Run(strconv.Itoa(at), func(t *testing.T) {
			t.Parallel()
			var all []*requoting
			for seed := first + uint64(at); seed < first+uint64(at+min(batchSize, many-at)); seed++ {
				all = append(all, newRequoting(t, fmt.Sprintf("seed-%d", seed), seed, nil))
			}
			if at == 0 {
				for name, q := range demoQuotes(t, demoCatalog(t)) {
					all = append(all, newRequoting(t, name, first, q))
				}
			}
			checkRequotes(t, all)
		})
	}
}

// requoting is a workbook edited in every way that a requote reads.
type requoting struct {
	*editing
	name    string
	dropped map[int]bool // places of the job's items that were deleted
	rows    []rowEdit
	touched map[int]bool // rows of the build-up that were deleted or copied
	file    string       // as the office saved it
}

// newRequoting draws edits: of figures, of the job's texts and days, and of rows.
func newRequoting(t *testing.T, name string, seed uint64, q *quote.Quote) *requoting {
	t.Helper()
	e := newEditing(t, seed)
	if q != nil {
		// Edits of a job that is given; its copy is read from its own text.
		e.q, e.now.Job = q, demoQuotes(t, e.now.Catalog)[name].Job
		e.book = workbook.Layout(q)
	}
	e.now.Job.Delivery.Zone = e.q.Job.Delivery.Zone
	x := &requoting{editing: e, name: name, dropped: map[int]bool{}, touched: map[int]bool{}}
	e.draw()
	for _, at := range e.r.Perm(len(moreKinds))[:1+e.r.IntN(4)] {
		if before := len(e.edits); moreKinds[at].do(x) {
			e.said = append(e.said, fmt.Sprintf("%s %v", moreKinds[at].what, e.edits[before:]))
		}
	}
	x.datePayments()
	return x
}

// datePayments gives the payments typed a day, which they must have.
func (x *requoting) datePayments() {
	for i := range x.now.Job.Payments {
		if p := &x.now.Job.Payments[i]; p.Date.IsZero() {
			p.Date = unit.Date{Year: 2026, Month: 3, Day: 2}
			x.setAt("payments_date", i, p.Date.Serial())
		}
	}
}

// edit makes the edits in the office program.
func (x *requoting) edit(m *calc.Macro, dir string) {
	m.Open(writeBook(x.t, dir, x.name, x.book))
	for _, e := range x.edits {
		row, col := corner(x.t, e.Ref)
		m.Type(e.Sheet, row, col, e.Value)
	}
	x.editRows(m)
	x.file = filepath.Join(dir, x.name+"-saved.xlsx")
	moveRows(x.t.(*testing.T), m, x.book, len(x.rows) == 0)
	m.Save(x.file)
}

// corner is the row and column of a cell by its name.
func corner(t testing.TB, ref string) (row, col int) {
	t.Helper()
	digits := strings.TrimLeft(ref, "ABCDEFGHIJKLMNOPQRSTUVWXYZ")
	for _, letter := range ref[:len(ref)-len(digits)] {
		col = col*26 + int(letter-'A') + 1
	}
	row, err := strconv.Atoi(digits)
	if err != nil {
		t.Fatal(err)
	}
	return row, col
}

// want is the quote of the edited job, from the catalog as it was edited; nil
// where the edits do not fit together.
func (x *requoting) want() *quote.Quote {
	j := x.now.Job
	for _, o := range x.added {
		j.Items = append(j.Items, newLine(o.Item.ID, o.Quantity))
	}
	kept := j.Items[:0:0]
	for i := range j.Items {
		if !x.dropped[i] {
			kept = append(kept, j.Items[i])
		}
	}
	j.Items = kept
	q, _ := quote.Build(x.now.Catalog, j)
	return q
}

func checkRequotes(t *testing.T, all []*requoting) {
	dir := t.TempDir()
	var m calc.Macro
	for _, x := range all {
		x.edit(&m, dir)
	}
	m.Run(t)
	done, refused := 0, 0
	for _, x := range all {
		context := fmt.Sprintf("%s, after %s", x.name, strings.Join(x.said, "; "))
		want := x.want()
		b, list := openFile(t, x.file)
		if b == nil {
			t.Errorf("%s: cannot be read: %v", context, list)
			continue
		}
		for _, p := range list {
			if p.Code != revise.Doubtful {
				t.Errorf("%s: %v", context, p)
			}
		}
		r, list := b.Revise(nil)
		switch {
		case r == nil && want == nil:
			refused++
			continue
		case r == nil:
			t.Errorf("%s: refused: %v", context, list)
			continue
		case want == nil:
			t.Errorf("%s: was revised, though the job does not fit", context)
			continue
		}
		if diff := cmp.Diff(report(t, want), report(t, r.Quote)); diff != "" {
			t.Errorf("%s: (-computed +requoted)\n%s", context, diff[:min(len(diff), 3000)])
		}
		done++
		addsUp(t, context, b.Quote, r)
		againUnchanged(t, context, b, r)
	}
	t.Logf("%d workbooks requoted, %d refused as their jobs are", done, refused)
	if done < len(all)*2/3 {
		t.Errorf("%d of %d were requoted; more were expected", done, len(all))
	}
}

// openFile reads a workbook that the office saved.
func openFile(t testing.TB, file string) (*revise.Book, diag.List) {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	found, err := xlsx.Read(filepath.Base(file), data)
	if err != nil {
		t.Fatal(err)
	}
	return revise.Open(filepath.Base(file), found)
}

// report is a quote as other programs read it, line by line, but for its
// revision and for places in files.
func report(t testing.TB, q *quote.Quote) []string {
	t.Helper()
	data, err := json.MarshalIndent(q.Report(), "", " ")
	if err != nil {
		t.Fatal(err)
	}
	return slices.DeleteFunc(strings.Split(strings.ReplaceAll(string(data), ",\n", "\n"), "\n"), func(line string) bool {
		line = strings.TrimSpace(line)
		return strings.HasPrefix(line, `"revision":`) || strings.HasPrefix(line, `"at":`)
	})
}

// addsUp holds the effects of all changes against the difference that they made.
func addsUp(t *testing.T, context string, was *quote.Quote, r *revise.Result) {
	t.Helper()
	var sum workbook.Effect
	for _, c := range r.Changes {
		if e := c.Effect; e != nil {
			sum.Price, sum.Hours, sum.Weight = sum.Price.Add(e.Price), sum.Hours.Add(e.Hours), sum.Weight.Add(e.Weight)
		}
	}
	mass := func(q *quote.Quote) money.Number {
		sys := q.Catalog.Company.Units
		return money.Float(q.Load.Out.Mass.RoundTo(sys).In(sys))
	}
	now := r.Quote
	for _, x := range []struct {
		what      string
		got, want money.Number
	}{{"price", sum.Price, now.Price.Total.Sub(was.Price.Total)}, {"hours", sum.Hours, now.Labour.Hours.Sub(was.Labour.Hours)},
		{"weight", sum.Weight, mass(now).Sub(mass(was))}} {
		if !x.got.Sub(x.want).Abs().LessThan(money.Float(1e-6)) {
			t.Errorf("%s: the effects on %s add up to %s; the difference is %s", context, x.what, x.got, x.want)
		}
	}
}

// againUnchanged writes the revision and opens it: nothing in it is an edit, and
// nothing is told.
func againUnchanged(t *testing.T, context string, b *revise.Book, r *revise.Result) {
	t.Helper()
	next := workbook.LayoutWith(r.Quote, workbook.Options{Changes: r.Changes})
	b.Keep(next)
	var data bytes.Buffer
	if err := xlsx.Write(&data, next); err != nil {
		t.Fatalf("%s: %v", context, err)
	}
	found, err := xlsx.Read("next.xlsx", data.Bytes())
	if err != nil {
		t.Fatalf("%s: %v", context, err)
	}
	then, list := revise.Open("next.xlsx", found)
	if then == nil || len(list) > 0 || len(then.Edits) > 0 {
		t.Errorf("%s: the revision itself is not clean: %v", context, list)
		if then != nil {
			t.Errorf("%s: %+v", context, then.Edits)
		}
	}
}
