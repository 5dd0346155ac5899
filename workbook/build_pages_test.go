package workbook

import (
	"strings"
	"testing"
)

// However many lines stand before it, a band on the price build-up has lines
// below it on its page, and no page up to the last band holds more than it can.
func TestBandsStayWithTheirLines(t *testing.T) {
	paged := 0
	for lines := range 60 {
		more := "items:\n" + strings.Repeat("  - {item: cord, quantity: 1}\n", lines+1)
		l := newLayout(makeQuote(t, gardenJob, "items:\n", more))
		l.build()
		s := l.book.Sheets[0]
		rows, page := quotePage{s: s}, widePage(s, buildPrinted)
		begins := map[int]bool{}
		for _, b := range s.Breaks {
			begins[b] = true
		}
		paged += len(s.Breaks)
		used := 0.0
		for row := 1; row <= lastBand(s); row++ {
			if begins[row] {
				used = rows.height(s.TitleRows[0])
			}
			if used += rows.height(row); used > page {
				t.Fatalf("%d lines: the page with row %d holds %g points of %g", lines, row, used, page)
			}
			if isBand(s, row) && (begins[row+1] || begins[row+2] || used+rows.height(row+1)+rows.height(row+2) > page) {
				t.Errorf("%d lines: the band %q in row %d is the last of its page", lines, s.Rows[row-1].Cells[0].Value, row)
			}
		}
	}
	if paged == 0 {
		t.Error("none of the price build-ups is longer than a page; some were expected")
	}
}
