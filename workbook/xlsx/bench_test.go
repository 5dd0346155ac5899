package xlsx_test

import (
	"bytes"
	"fmt"
	"testing"

	"github.com/shopspring/decimal"

	"tentwright/workbook/sheet"
	"tentwright/workbook/xlsx"
)

// large is a book of the size of a big quote: 12 sheets, 2,940 cells with
// values and 1,200 formulas.
func large() *sheet.Book {
	b := &sheet.Book{Title: "Large", Created: "2026-05-01T00:00:00Z", Currency: sheet.Currency{Symbol: "$", Minor: 2}}
	for i := range 12 {
		s := &sheet.Sheet{Name: fmt.Sprintf("Sheet %d", i+1), Protected: true, Columns: []sheet.Column{{Width: 10}, {Width: 30}}}
		for r := 1; r <= 49; r++ {
			price := decimal.New(int64(r*137), -2)
			s.Rows = append(s.Rows, row(
				cell(fmt.Sprintf("P-%d", r), sheet.Key, sheet.Text),
				sheet.Cell{Value: "Part with a name of usual length", Style: sheet.Style{Role: sheet.Body, Wrap: true}},
				cell(r, sheet.Input, sheet.Whole), cell(price, sheet.Body, sheet.Money), cell("piece", sheet.Body, sheet.General),
				sheet.Cell{Value: price.Mul(decimal.NewFromInt(int64(r))), Formula: fmt.Sprintf("ROUND(C%d*D%d*factor_%d,2)", r, r, i), Style: st(sheet.Calc, sheet.Money)},
				sheet.Cell{Value: r, Formula: fmt.Sprintf("MAX(0,ROUNDUP(C%d-0.000001,0))", r), Style: st(sheet.Calc, sheet.Whole)}))
		}
		s.Rows = append(s.Rows,
			row(sheet.Cell{Value: 1225, Formula: "SUM(C1:C49)", Style: st(sheet.Total, sheet.Whole)}),
			row(sheet.Cell{Value: 49, Formula: "COUNT(C1:C49)", Style: st(sheet.Total, sheet.Whole)}))
		b.Sheets = append(b.Sheets, s)
		b.Names = append(b.Names, sheet.Name{Name: fmt.Sprintf("factor_%d", i), Refers: sheet.Range{R1: 1, C1: 3, R2: 1, C2: 3}.Abs(s.Name)})
	}
	return b
}

func BenchmarkWrite(b *testing.B) {
	book := large()
	var out bytes.Buffer
	b.ReportAllocs()
	for b.Loop() {
		out.Reset()
		if err := xlsx.Write(&out, book); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(b.Elapsed().Microseconds())/1000/float64(b.N), "ms/book")
	b.ReportMetric(float64(out.Len())/1e6, "MB/file")
}

func BenchmarkCheck(b *testing.B) {
	book := large()
	for b.Loop() {
		if err := book.Check(); err != nil {
			b.Fatal(err)
		}
	}
}
