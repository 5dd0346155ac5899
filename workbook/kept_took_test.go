package workbook

import (
	"testing"

	"pgregory.net/rapid"

	"tentwright/catalog"
	"tentwright/quote/load"
)

// However many went out, the rows of a part take all of them, and each but the
// last no more than its share.
func TestRowsTakeAllThatWentOut(t *testing.T) {
	part := &catalog.Part{ID: "pole"}
	rapid.Check(t, func(t *rapid.T) {
		var shares []load.Share
		for range rapid.IntRange(1, 4).Draw(t, "rows") {
			shares = append(shares, load.Share{Part: part, Trip: 0, Quantity: rapid.IntRange(0, 9).Draw(t, "share")})
		}
		total, sum, before := rapid.IntRange(0, 40).Draw(t, "total"), 0, 0
		rows := portions(twoTrips(shares...), false)
		for i := range rows {
			n := rows[i].took(total, before)
			if n < 0 || i < len(rows)-1 && n > rows[i].quantity {
				t.Fatalf("row %d of %d takes %d of %d; its share is %d", i+1, len(rows), n, total, rows[i].quantity)
			}
			sum += n
			before += rows[i].quantity
		}
		if sum != total {
			t.Fatalf("rows take %d; %d went out", sum, total)
		}
	})
}
