package workbook_test

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"tentwright/quote"
	"tentwright/workbook"
	"tentwright/workbook/internal/calc"
	"tentwright/workbook/revise"
	"tentwright/workbook/sheet"
	"tentwright/workbook/xlsx"
)

// Workbooks that the office edited and the yard filled in make next revisions
// in which every formula carries the value that follows from both.
func TestKeptThroughRequote(t *testing.T) {
	calc.Need(t)
	first, many := firstSeed(t)+3000, 20
	if testing.Short() {
		many = 10
	}
	for at := 0; at < many; at += batchSize {
		t.Run(strconv.Itoa(at), func(t *testing.T) { requoteYards(t, first+uint64(at), min(batchSize, many-at)) })
	}
}

func requoteYards(t *testing.T, first uint64, many int) {
	dir := t.TempDir()
	var trials []trial
	typed := 0
	for seed := first; seed < first+uint64(many); seed++ {
		y := newYard(t, seed)
		y.drawWorked()
		y.dropCharges()
		name := fmt.Sprintf("seed-%d", seed)
		edited := filepath.Join(dir, name+"-edited.xlsx")
		if err := calc.EditCells(writeBook(t, dir, name, y.book), edited, y.edits); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		q, book, kept := requoted(t, name, edited)
		if book == nil {
			continue // edits that do not fit together
		}
		typed += kept
		trials = append(trials, trial{name, q, book, leastCount})
	}
	if len(trials) < many/2 || typed < 10*len(trials) {
		t.Errorf("%d of %d workbooks were quoted again, with %d cells kept; most of them, with more, were expected", len(trials), many, typed)
	}
	t.Logf("%d workbooks with %d cells kept", len(trials), typed)
	checkTruth(t, trials)
}

// drawWorked notes the hours of some tasks.
func (y *yard) drawWorked() {
	for i := range y.q.Labour.Tasks {
		if y.r.IntN(4) == 0 {
			y.setAt("task_actual", y.row("task_key", y.q.Labour.Tasks[i].Key), y.decimal(0, 40, 2).InexactFloat64())
		}
	}
}

// dropCharges leaves out what is charged for lost pieces: two pieces of a part
// that are charged differently are refused.
func (y *yard) dropCharges() {
	_, at, err := placeOf(y.book, "return_each")
	y.edits = slices.DeleteFunc(y.edits, func(e calc.Edit) bool {
		return err == nil && e.Sheet == workbook.SheetReturn && strings.HasPrefix(e.Ref, sheet.ColName(at.C1))
	})
}

// requoted is the next revision of a file, and how many cells of it were kept;
// no book where its edits are refused.
func requoted(t *testing.T, name, file string) (*quote.Quote, *sheet.Book, int) {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	found, err := xlsx.Read(file, data)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	b, list := revise.Open(file, found)
	if b == nil {
		t.Logf("%s: %v", name, list.Err())
		return nil, nil, 0
	}
	result, list := b.Revise(nil)
	if result == nil {
		t.Logf("%s: %v", name, list.Err())
		return nil, nil, 0
	}
	k := b.Kept()
	next := workbook.LayoutWith(result.Quote, workbook.Options{Changes: result.Changes, Kept: k})
	b.Keep(next)
	return result.Quote, next, len(k.Loaded) + len(k.Tag) + len(k.Counted) + len(k.Damaged) + len(k.Wet) + len(k.Riders) + len(k.Actual)
}
