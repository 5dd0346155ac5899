package revise

import (
	"testing"

	"tentwright/catalog/money"
)

// Numbers that no job may have are refused before anything is planned with them;
// an input without a bound takes any.
func TestWithinBounds(t *testing.T) {
	for _, test := range []struct {
		most, n int
		fits    bool
	}{{mostPeople, 0, false}, {mostPeople, 1, true}, {mostPeople, 200, true}, {mostPeople, 201, false}, {mostTries, 100_000_000, false}, {0, 0, true}, {0, -3, true}} {
		in := input{most: test.most}
		n := money.Int(test.n)
		if err := in.within(value{text: n.String(), number: n}); (err == nil) != test.fits {
			t.Errorf("%d of at most %d: %v", test.n, test.most, err)
		}
	}
}
