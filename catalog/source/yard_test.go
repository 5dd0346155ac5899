package source

import (
	"strings"
	"testing"

	"tentwright/catalog/money"
	"tentwright/catalog/unit"
)

// yard is a small file of every kind of field.
type yard struct {
	Where  Where
	Name   string                  `yaml:"name,required"`
	Units  unit.System             `yaml:"units" enum:"imperial|metric"`
	Parts  []part                  `yaml:"parts"`
	Rates  map[string]money.Number `yaml:"rates" min:"0" max:"100"`
	Drives map[string]drive        `yaml:"drives"`
	Opened *unit.Date              `yaml:"opened"`
	Days   []unit.Date             `yaml:"days"`
}

// named is embedded, so its fields count as those of its owner.
type named struct {
	ID   string `yaml:"id,required" want:"a short name, e.g. stake_42"`
	Bin  string `yaml:"bin"`
	Note string // no tag, so not a field of the file
}

type part struct {
	Where Where
	named
	Weight  *unit.Mass     `yaml:"weight"`
	Length  unit.Length    `yaml:"length"`
	Pack    unit.Size      `yaml:"pack"`
	Minutes money.Number   `yaml:"minutes" min:"0" want:"a number of minutes, e.g. 2.5"`
	Owned   int            `yaml:"owned" min:"0" max:"9999"`
	Small   int8           `yaml:"small"`
	Tracked bool           `yaml:"tracked"`
	Unit    string         `yaml:"unit" enum:"piece|pair|set"`
	Tags    []string       `yaml:"tags"`
	Needs   map[string]int `yaml:"needs" min:"1"`
	Grid    [][]int        `yaml:"grid"`
	Spare   *spare         `yaml:"spare"`
}

type spare struct {
	Where   Where
	Percent money.Number `yaml:"percent,required" max:"100"`
	Least   *int         `yaml:"least" min:"0"`
}

type drive struct {
	Where Where
	Miles money.Number `yaml:"miles,required"`
}

// mustDecode is the yard of a text without faults.
func mustDecode(t testing.TB, text string) *yard {
	t.Helper()
	var y yard
	if err := Decode("yard.yaml", []byte(text), &y).Err(); err != nil {
		t.Fatal(err)
	}
	return &y
}

// only is the one problem of a text, as a line.
func only(t testing.TB, text string) string {
	t.Helper()
	var y yard
	list := Decode("yard.yaml", []byte(text), &y)
	if len(list) != 1 {
		t.Fatalf("got %d problems, want 1: %v", len(list), list.Err())
	}
	return strings.SplitN(list[0].String(), "\n", 2)[0]
}

const good = `# The yard of a test.
name: Fernhollow Tent Yard
units: imperial
opened: 2026-07-04
days: [2026-07-04, "2026-07-05"]
rates: {waiver: 8.50, fuel: 0}
drives:
  larkmere:
    miles: 23
parts:
  - id: stake_42
    bin: 1e3
    weight: 12.64 lb
    length: 42 in
    pack: 10 ft x 12 in x 8 in
    minutes: 1.10
    owned: 400
    small: -128
    tracked: yes
    unit: piece
    tags: [stake, 42, yes, "null", 2026-07-04]
    needs: {hammer: 1, glove: 2}
    grid: [[1, 2], []]
    spare:
      percent: 5
      least: 2
  - id: "007"
    tracked: false
`
