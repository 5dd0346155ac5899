package job

import (
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/diag/diagtest"
)

// Uses are those of the shop's table where it has one; a shop without takes any
// word, since it asks nothing of it.
func TestUsesAreTheShops(t *testing.T) {
	const text = `number: T-1
customer: {name: Test Customer}
event: {name: Test Event, guests: 40, use: standing-room}  # want: use of floor "standing-room" is not known
dates: {quoted: 2027-01-10, deliver: 2027-06-11, event_from: 2027-06-12, event_to: 2027-06-12, strike: 2027-06-13, collect: 2027-06-13}
tents:
  - id: main
    family: hip
    size: 10x10
    uses: [{use: kitchn, area: 60 sq ft}]  # want: use of floor "kitchn" is not known
delivery: {distance: 8 mi}
`
	c, list := catalog.Load("demo", catalog.Demo())
	if c == nil {
		t.Fatal(list.Err())
	}
	_, list = ReadFor(c, "job.yaml", []byte(text))
	diagtest.Compare(t, "job.yaml", []byte(text), list)
	if len(list) == 2 && !strings.Contains(list[1].Advice, `"kitchen"`) {
		t.Errorf("the advice is %q; kitchen was expected", list[1].Advice)
	}
	if _, list := ReadFor(smallShop(t), "job.yaml", []byte(text)); len(list) > 0 {
		t.Errorf("the small shop, which has no table: %v", list)
	}
}
