package job

import (
	"strings"
	"testing"

	"tentwright/catalog"
)

// The tents to be heated are tents of the job, each once.
func TestHeatedTentsAreKnown(t *testing.T) {
	c, list := catalog.Load("demo", catalog.Demo())
	if c == nil {
		t.Fatal(list)
	}
	const body = `number: T-1
customer: {name: Test Customer}
event: {name: Test Event}
dates: {quoted: 2027-01-10, deliver: 2027-06-11, event_from: 2027-06-12, event_to: 2027-06-12, strike: 2027-06-13, collect: 2027-06-13}
delivery: {distance: 8 mi}
tents: [{id: hall, family: hip, size: 20x20}]
heat: {inside: 68 F, outside: 36 F, hours: 8, tents: [%]}
`
	for _, x := range []struct{ tents, code, words string }{
		{"hall", "", ""},
		{"", "", ""},
		{"hal", UnknownID, `tent "hal" is not known`},
		{"hall, hall", RepeatedID, `tent "hall" is to be heated twice`},
	} {
		j, list := ReadFor(c, "job.yaml", []byte(strings.Replace(body, "%", x.tents, 1)))
		switch {
		case x.code == "" && j == nil:
			t.Errorf("tents %q: %v", x.tents, list)
		case x.code != "" && (len(list) != 1 || list[0].Code != x.code || !strings.Contains(list[0].Message, x.words) || list[0].Pos.Line != 7):
			t.Errorf("tents %q: %v was said; %s was expected in line 7", x.tents, list, x.words)
		}
	}
}
