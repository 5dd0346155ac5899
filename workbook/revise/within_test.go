package revise

import (
	"fmt"
	"strings"
	"testing"

	"tentwright/catalog/money"
	"tentwright/quote/job"
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

// The bounds of cells are those of a job file, which takes the largest number and
// not the one after it.
func TestBoundsAreTheJobs(t *testing.T) {
	for text, most := range map[string]int{
		"labour: {windows: [{window: install, crew: %d}]}\n":  mostPeople,
		"labour: {windows: [{window: install, days: %d}]}\n":  mostDays,
		"labour: {windows: [{window: install, crews: %d}]}\n": mostCrews,
		"labour: {tries: %d}\n":                               mostTries,
	} {
		for n, fits := range map[int]bool{most: true, most + 1: false} {
			_, list := job.Read("job.yaml", fmt.Appendf(nil, text, n))
			if out := strings.Contains(fmt.Sprint(list), fmt.Sprint(n)); out == fits {
				t.Errorf("%s: refused %v, %v was expected: %v", fmt.Sprintf(text, n), out, !fits, list)
			}
		}
	}
}
