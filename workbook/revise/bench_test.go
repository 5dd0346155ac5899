package revise_test

import (
	"bytes"
	"io"
	"testing"
	"time"

	"tentwright/catalog/money"
	"tentwright/workbook"
	"tentwright/workbook/revise"
	"tentwright/workbook/sheet"
	"tentwright/workbook/xlsx"
)

// requoted reads a workbook, computes its next revision and writes that.
func requoted(tb testing.TB, data []byte) *revise.Result {
	tb.Helper()
	found, err := xlsx.Read("fair.xlsx", data)
	if err != nil {
		tb.Fatal(err)
	}
	b, list := revise.Open("fair.xlsx", found)
	if b == nil {
		tb.Fatal(list)
	}
	r, list := b.Revise(nil)
	if r == nil {
		tb.Fatal(list)
	}
	next := workbook.LayoutWith(r.Quote, workbook.Options{Changes: r.Changes})
	b.Keep(next)
	if err := xlsx.Write(io.Discard, next); err != nil {
		tb.Fatal(err)
	}
	return r
}

// fair is the workbook of the largest demonstration job after some edits of the
// job and so many of the shop's prices.
func fair(tb testing.TB, prices int) []byte {
	tb.Helper()
	book := workbook.Layout(demoQuote(tb, "fairground"))
	put := func(name string, index int, v any) {
		p := book.Found().Names[name]
		for _, s := range book.Sheets {
			if s.Name == p.Sheet {
				s.Rows[p.R1+index-1].Cells[p.C1-1].Value = v
			}
		}
	}
	put("job_guests", 0, 800)
	put("qty_l.1", 0, 150)
	put("job_discount", 0, 7)
	items := book.Found()
	prizes := items.Names["item_price"]
	for row, typed := prizes.R1, 0; typed < prices; row++ {
		if c := items.Sheet(prizes.Sheet).At(row, prizes.C1); c.Kind == sheet.FoundNumber && c.Formula == "" && c.Number > 0 {
			put("item_price", row-prizes.R1, c.Number+1)
			typed++
		}
	}
	var out bytes.Buffer
	if err := xlsx.Write(&out, book); err != nil {
		tb.Fatal(err)
	}
	return out.Bytes()
}

func BenchmarkRequote(b *testing.B) {
	for _, x := range []struct {
		name   string
		prices int
	}{{"job", 0}, {"1-price", 1}, {"40-prices", 40}} {
		data := fair(b, x.prices)
		b.Run(x.name, func(b *testing.B) {
			for b.Loop() {
				requoted(b, data)
			}
		})
	}
}

// longest is how long a requote may take, with many prices changed; it is far
// more than any machine needs, to catch what grows with the size of the job.
const longest = 4 * time.Second

// Many changed prices are computed together, and their effects still add up.
func TestManyPricesStayQuick(t *testing.T) {
	data := fair(t, 60)
	start := time.Now()
	r := requoted(t, data)
	if took := time.Since(start); took > longest {
		t.Errorf("a requote took %v; at most %v was expected", took, longest)
	}
	sum := money.Zero
	for _, c := range r.Changes {
		if c.Effect != nil {
			sum = sum.Add(c.Effect.Price)
		}
	}
	if want := r.Quote.Price.Total.Sub(demoQuote(t, "fairground").Price.Total); !sum.Equal(want) {
		t.Errorf("the effects add up to %s; the difference is %s", sum, want)
	}
	if last := r.Changes[len(r.Changes)-1]; len(r.Changes) != 64 || last.Effect == nil || last.What != "50 more changes of prices, rates and minutes, together" {
		t.Errorf("%d changes, the last is %+v", len(r.Changes), last)
	}
}
