package catalog

import (
	"slices"
	"strings"
	"testing"

	"tentwright/catalog/diag"
)

// crewWith is a crew file of the small shop with some lines of its own.
func crewWith(more string) []byte {
	return []byte("crew:\n  days: [{window: out, start: \"07:00\", finish: \"18:00\", first: deliver, site: yes}, {window: in, start: \"07:00\", finish: \"18:00\", first: strike, site: yes}]\n" +
		"  people_per_lead: 8\n  inspection: 30 min\n  tries: 10\n  spread: {optimistic: 80, pessimistic: 160}\n" + more)
}

// A point is found again by its id, which is therefore its own within its list
// and of the signs that a spreadsheet looks up.
func TestCrewPoints(t *testing.T) {
	for more, want := range map[string]string{
		"  arrival: [{id: a, what: Look}, {id: A, what: Again}]\n":                            `arrival point "A" is defined twice`,
		"  handover: [{id: a*, what: Look}]\n":                                                `handover point "a*" has a '*'`,
		"  arrival: [{id: a, what: Look, needs: stake}]\n":                                    `"stake" is not one of`,
		"  arrival: [{id: a, what: Look}]\n  handover: [{id: a, what: Look, needs: walls}]\n": "",
	} {
		_, list := Load("shop", smallWith(t, "crew.yaml", crewWith(more)))
		found := slices.ContainsFunc(list, func(p diag.Problem) bool { return strings.Contains(p.Message, want) })
		if want == "" && len(list) > 0 || want != "" && (!found || len(list) != 1) {
			t.Errorf("%s: %v; %q was expected", more, list.Err(), want)
		}
	}
}
