package catalog

import (
	"strings"
	"testing"
)

// Each row is one fault of an anchors file, put where a part of a sound file
// stands, and the words that tell of it.
func TestFaultsOfAnchors(t *testing.T) {
	const sound = `anchors:
  method: european
  gust: 40 mph
  limit: 60 mph
  safety: {stake: 2, ballast: 1.5, dead: 0.9}
  terrains:
    - {id: open, name: Open, factors: [{height: 5 m, factor: 1}, {height: 10 m, factor: 1.2}]}
  european: {source: none, density: 1.25, roofs: [{angle: 5, down: 0.3, open: -0.6, blocked: -1.3}, {angle: 10, down: 0.4, open: -0.7, blocked: -1.3}]}
  american:
    {source: none, constant: 0.00256, profile: 2.01, direction: 0.85, gust_effect: 0.85,
     net: [{angle: 7.5, case: A, clear_windward: 1, clear_leeward: 1, obstructed_windward: 1, obstructed_leeward: 1},
           {angle: 7.5, case: B, clear_windward: 1, clear_leeward: 1, obstructed_windward: 1, obstructed_leeward: 1}]}
  stakes: [{id: long, part: table, families: [hip], driven: 40 in, diameter: 1 in, most: 4, with: [{part: chair, count: 1}]}]
  pull_tests: [{stake: long, surface: grass, way: guy, pull: 900 lb, date: 2026-01-02}]
  holdfast: {source: none, driven: 4 ft, diameter: 3 in, pull: 700 lb, soils: [{surface: grass, factor: 1, source: none}]}
  groups: [{stakes: 1, factor: 1}, {stakes: 3, factor: 0.8}]
  ballast: [{id: heavy, part: base, most: 3}]
  friction: [{ballast: heavy, surface: asphalt, mu: 0.5, source: none}]
`
	if _, list := Load("shop", smallWith(t, anchorFile, []byte(sound))); len(list) > 0 {
		t.Fatal(list.Err())
	}
	for _, row := range []struct{ was, is, code, words string }{
		{"part: table", "part: tabel", UnknownID, `part "tabel" is not known`},
		{"part: chair", "part: chiar", UnknownID, `part "chiar" is not known`},
		{"[hip]", "[hop]", UnknownID, `tent family "hop" is not known`},
		{"stake: long, surface", "stake: lang, surface", UnknownID, `stake "lang" is not known`},
		{"surface: grass, way", "surface: gras, way", UnknownID, `surface "gras" is not known`},
		{"soils: [{surface: grass", "soils: [{surface: gravel", UnknownID, `surface "gravel" is not known`},
		{"ballast: heavy, surface", "ballast: havy, surface", UnknownID, `ballast "havy" is not known`},
		{"surface: asphalt", "surface: asfalt", UnknownID, `surface "asfalt" is not known`},
		{"part: base", "part: bass", UnknownID, `part "bass" is not known`},
		{"{stakes: 3,", "{stakes: 1,", BadSteps, "a row of stakes in a group for 1 comes after one for 1"},
		{"{angle: 10,", "{angle: 5,", BadSteps, "a row of roof slopes for 5 comes after one for 5"},
		{"{height: 10 m", "{height: 4 m", BadSteps, "a row of terrain factors for 4 comes after one for 5"},
		{"A, clear_windward: 1, clear_leeward: 1, obstructed_windward: 1, obstructed_leeward: 1},", "B, clear_windward: 1, clear_leeward: 1, obstructed_windward: 1, obstructed_leeward: 1},", BadAnchor, "no row of case A; rows of both cases, A and B, were expected"},
		{"case: B", "case: A", BadSteps, "a row of case A for 7.5 comes after one for 7.5"},
		{"pull_tests: [", "pull_tests: [{stake: long, surface: grass, way: guy, pull: 0 lb, date: 2026-01-02}, ", BadAnchor, "a pull of nothing"},
		{"gust: 40 mph", "gust: 0 mph", BadAnchor, "a gust of 0 mph"},
		{"driven: 40 in", "driven: 0 in", BadAnchor, "is driven 0 ft deep"},
	} {
		if !strings.Contains(sound, row.was) {
			t.Fatalf("%q is not in the sound file", row.was)
		}
		c, list := Load("shop", smallWith(t, anchorFile, []byte(strings.Replace(sound, row.was, row.is, 1))))
		if c != nil || !strings.Contains(list.Err().Error(), row.words) || !strings.Contains(list.Err().Error(), "["+row.code+"]") {
			t.Errorf("%s: %v; %q, %s was expected", row.is, list.Err(), row.words, row.code)
		}
	}
}
