package workbook

import (
	"strings"
	"testing"

	"tentwright/workbook/sheet"
)

// What was set to nothing, ordered or offered, does not reach the customer; the
// office keeps it, since its quantity may be raised again.
func TestCustomerSeesNothingOfNothing(t *testing.T) {
	q := makeQuote(t, gardenJob, "quantity: 12}", "quantity: 0}")
	words := func(b *sheet.Book) string {
		var all []string
		for _, r := range sheetOf(t, b, SheetQuote).Rows {
			for _, c := range r.Cells {
				if s, ok := c.Value.(string); ok {
					all = append(all, s)
				}
			}
		}
		return strings.Join(all, "\n")
	}
	name := q.Catalog.Item("string-light").Name
	if strings.Contains(words(Customer(q)), name) {
		t.Errorf("the customer is offered 0 of %q", name)
	}
	if !strings.Contains(words(Layout(q)), name) {
		t.Errorf("the office has lost %q", name)
	}
}
