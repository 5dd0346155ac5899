package revise_test

import (
	"io"
	"math/rand/v2"
	"testing"

	"tentwright/catalog/money"
	"tentwright/workbook"
	"tentwright/workbook/revise"
	"tentwright/workbook/sheet"
	"tentwright/workbook/xlsx"
)

// mess does anything to a workbook: cells of any kind anywhere, rows taken out
// or doubled without their names, names and sheets lost.
func mess(r *rand.Rand, f *sheet.Found) {
	cells := []sheet.FoundCell{{}, num(3), num(-1e18), num(0.5), txt("x"), txt(""), txt("L:1"), txt("12 ft"), {Kind: sheet.FoundError, Text: "#REF!"},
		{Kind: sheet.FoundBool, Number: 1}, {Formula: "A1"}, {Kind: sheet.FoundNumber, Number: 46180, Day: true}}
	for range 1 + r.IntN(12) {
		s := f.Sheets[r.IntN(len(f.Sheets))]
		if len(s.Rows) < 3 || s.Name == workbook.SheetRecord {
			continue
		}
		row := r.IntN(len(s.Rows))
		switch r.IntN(9) {
		case 0:
			s.Rows = append(s.Rows[:row:row], s.Rows[row+1:]...)
		case 1:
			s.Rows = append(s.Rows[:row+1:row+1], s.Rows[row:]...)
		case 2:
			for name := range f.Names {
				if name != workbook.RecordName {
					delete(f.Names, name)
					break
				}
			}
		case 3:
			s.Name += "!"
		default:
			if n := len(s.Rows[row]); n > 0 {
				s.Rows[row][r.IntN(n)] = cells[r.IntN(len(cells))]
			}
		}
	}
}

// Whatever was done to a workbook, it is told or becomes a revision that is
// sound, whose effects add up.
func TestAnyMess(t *testing.T) {
	q := demoQuote(t, "garden")
	done, refused := 0, 0
	for seed := range uint64(80) {
		f := workbook.Layout(q).Found()
		mess(rand.New(rand.NewPCG(seed, 7)), f)
		b, list := revise.Open("mess.xlsx", f)
		if b == nil {
			if list.Err() == nil {
				t.Fatalf("seed %d: refused without a word", seed)
			}
			refused++
			continue
		}
		r, list := b.Revise(nil)
		if r == nil {
			if list.Err() == nil {
				t.Fatalf("seed %d: no revision without a word", seed)
			}
			refused++
			continue
		}
		sum := money.Zero
		for _, c := range r.Changes {
			if c.Effect != nil {
				sum = sum.Add(c.Effect.Price)
			}
		}
		if want := r.Quote.Price.Total.Sub(b.Quote.Price.Total); !sum.Equal(want) {
			t.Errorf("seed %d: effects of %s, difference of %s", seed, sum, want)
		}
		next := workbook.LayoutWith(r.Quote, workbook.Options{Changes: r.Changes})
		b.Keep(next)
		if err := xlsx.Write(io.Discard, next); err != nil {
			t.Errorf("seed %d: %v", seed, err)
		}
		done++
	}
	if done < 20 || refused < 20 {
		t.Errorf("%d revised, %d refused; some of each were expected", done, refused)
	}
	t.Logf("%d revised, %d refused", done, refused)
}
