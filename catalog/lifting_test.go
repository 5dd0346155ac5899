package catalog

import (
	"strings"
	"testing"
)

// Each row is one fault of what a crew file says of lifting, put where a part of
// a sound file stands, and the words that tell of it.
func TestFaultsOfLifting(t *testing.T) {
	const file = "crew.yaml"
	const sound = `crew:
  days:
    - {window: out, start: "07:00", finish: "19:00", first: deliver, site: yes}
    - {window: in, start: "07:00", finish: "19:00", first: strike, site: yes}
  people_per_lead: 8
  inspection: 30 min
  tries: 20
  spread: {optimistic: 80, pessimistic: 160}
  lifting:
    frequency: [{per_minute: 1, low: [0.94, 0.88, 0.75], high: [0.94, 0.88, 0.75]}, {per_minute: 2, low: [0.9, 0.8, 0.6], high: [0.91, 0.84, 0.65]}]
    poor_grip: {times: 0.9}
    lifts:
      - {id: hand, name: By hand, parts: [table, chair], packs: [bag], whole_pack: yes, horizontal: 12 in, from: 0 in, to: 40 in, angle: 30, per_minute: 1, hours: 2, coupling: poor}
      - {id: wheels, name: On wheels, packs: [rack], machine: yes}
    team: [{people: 2, share: 0.66}, {people: 3, share: 0.5}]
    rules: [frame]
  raising: [{id: side, families: [hip], rules: [frame], hands: 1, jack: base, with_jack: 0.5}]
`
	if _, list := Load("shop", smallWith(t, file, []byte(sound))); len(list) > 0 {
		t.Fatal(list.Err())
	}
	for _, row := range []struct{ was, is, code, words string }{
		{"parts: [table,", "parts: [tabel,", UnknownID, `part "tabel" is not known`},
		{"table, chair", "table, table", RepeatedID, `part to lift "table" is defined twice`},
		{"packs: [rack]", "packs: [bag]", RepeatedID, `pack to lift "bag" is defined twice`},
		{"id: wheels", "id: hand", RepeatedID, `way of lifting "hand" is defined twice`},
		{"    rules: [frame]", "    rules: [frmae]", UnknownID, `labour rule "frmae" is not known`},
		{"rules: [frame], hands", "rules: [frmae], hands", UnknownID, `labour rule "frmae" is not known`},
		{"families: [hip]", "families: [hop]", UnknownID, `tent family "hop" is not known`},
		{"jack: base", "jack: bass", UnknownID, `part "bass" is not known`},
		{"{per_minute: 2,", "{per_minute: 1,", BadSteps, "a row of frequencies for 1 a minute comes after one for 1"},
		{"{people: 3,", "{people: 2,", BadSteps, "a team of 2 comes after one of 2"},
		{"{people: 2, share: 0.66}", "{people: 2, share: 0.5}", BadLift, "a team of 2 lifts 1 times what one person does, and one of 1 lifts 1 times"},
		{"from: 0 in, to: 40 in", "from: 0 in, to: 0 in", BadLift, "does not say how high the hands are"},
	} {
		if !strings.Contains(sound, row.was) {
			t.Fatalf("%q is not in the sound file", row.was)
		}
		c, list := Load("shop", smallWith(t, file, []byte(strings.Replace(sound, row.was, row.is, 1))))
		if c != nil || !strings.Contains(list.Err().Error(), row.words) || !strings.Contains(list.Err().Error(), "["+row.code+"]") {
			t.Errorf("%s: %v; %q, %s was expected", row.is, list.Err(), row.words, row.code)
		}
	}
}
