package xlsx_test

import (
	"os"
	"runtime"
	"testing"

	"tentwright/workbook/xlsx"
)

// bookFile is a workbook to measure with instead of the one made here.
const bookFile = "TENTWRIGHT_READ_FILE"

// BenchmarkRead reads a large quote on one core.
func BenchmarkRead(b *testing.B) {
	data := write(b, large())
	if name := os.Getenv(bookFile); name != "" {
		var err error
		if data, err = os.ReadFile(name); err != nil {
			b.Fatal(err)
		}
	}
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := xlsx.Read("book.xlsx", data); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(b.Elapsed().Microseconds())/1000/float64(b.N), "ms/book")
}
