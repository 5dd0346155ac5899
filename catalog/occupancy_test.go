package catalog

import (
	"os"
	"strings"
	"testing"

	"tentwright/catalog/diag"
	"tentwright/catalog/unit"
)

// soundOccupancy fits the small shop.
const soundOccupancy = `occupancy:
  code: A code of 2018
  class: tent
  uses:
    - {id: tables, name: Tables, area: 15 sq ft, of: net, source: a table}
    - {id: kitchen, name: Kitchen, area: 200 sq ft, of: gross, staff: yes, source: a table}
  takes: [{part: table, area: 20 sq ft, use: none}]
  exits:
    source: a table
    each: 0.2 in
    rows: [{from: 1, exits: 1}, {from: 10, exits: 2, tent: 72 in, membrane: 36 in}]
  signs: {from: 50, sign_tag: chair, light_tag: table, source: a section}
  extinguishers:
    tag: chair
    rating: 2
    hazard: light
    most: 11250 sq ft
    travel: 75 ft
    source: a table
    hazards: [{id: light, name: Light, least: 2, area: 3000 sq ft}]
  wheelchairs: [{from: 4, spaces: 1}, {from: 26, spaces: 2}]
  permit: {enclosed: 400 sq ft, open: 700 sq ft, open_share: 100, item: visit, source: a section}
`

func withOccupancy(t *testing.T, text string) (*Catalog, diag.List) {
	t.Helper()
	return Load("shop", smallWith(t, "occupancy.yaml", []byte(text)))
}

// A shop may have the file or not; the two give it or nil.
func TestOccupancyIsRead(t *testing.T) {
	c, list := withOccupancy(t, soundOccupancy)
	if c == nil || len(list) > 0 {
		t.Fatal(list.Err())
	}
	o := c.Occupancy
	if o.UseOr("").ID != "tables" || o.UseOr("kitchen").ID != "kitchen" || o.Use("none") != nil || len(o.UseIDs()) != 2 {
		t.Errorf("the uses are %v; tables first, then kitchen were expected", o.UseIDs())
	}
	if row := &o.Exits.Rows[1]; row.Least("tent") != 72*unit.Inch || row.Least("membrane") != 36*unit.Inch {
		t.Errorf("the row from 10 asks for %v", row)
	}
	if o.Fire.InForce().ID != "light" {
		t.Errorf("the hazard in force is %q", o.Fire.InForce().ID)
	}
	if c, _ := Load("small", os.DirFS(smallShop)); c == nil || c.Occupancy != nil {
		t.Error("a shop without the file has its tables")
	}
}

// Each change makes one fault, told at its line with what was expected.
func TestFaultsOfOccupancy(t *testing.T) {
	for _, tc := range []struct{ was, is, code, want string }{
		{"class: tent", "class: tents", diag.NotOneOf, "tents"},
		{"id: kitchen", "id: tables", RepeatedID, `use of floor "tables" is defined twice`},
		{"id: kitchen", "id: none", RepeatedID, "stands for floor on which nobody is"},
		{"area: 15 sq ft", "area: 0 sq ft", diag.OutOfRange, "area is zero"},
		{"part: table", "part: tabel", UnknownID, `part "tabel" is not known`},
		{"use: none", "use: tabels", UnknownID, `use of floor "tabels" is not known`},
		{"{from: 1, exits", "{from: 2, exits", BadSteps, "the first step is from 2; 1 was expected"},
		{"from: 10", "from: 1", BadSteps, "rising steps were expected"},
		{"rows: [{from: 1, exits: 1}, {from: 10, exits: 2, tent: 72 in, membrane: 36 in}]", "rows: []", diag.EmptyValue, "is empty"},
		{"from: 26", "from: 4", BadSteps, "rising steps were expected"},
		{"sign_tag: chair", "sign_tag: sign", UnknownID, `tag "sign" is not known`},
		{"hazard: light", "hazard: heavy", UnknownID, `hazard "heavy" is not known`},
		{"travel: 75 ft", "travel: 0 ft", diag.OutOfRange, "travel is zero"},
		{"item: visit", "item: permit", UnknownID, `item "permit" is not known`},
	} {
		t.Run(tc.is, func(t *testing.T) {
			if !strings.Contains(soundOccupancy, tc.was) {
				t.Fatalf("%q is not in the file", tc.was)
			}
			c, list := withOccupancy(t, strings.Replace(soundOccupancy, tc.was, tc.is, 1))
			if c != nil || len(list) == 0 {
				t.Fatal("the shop was taken in spite of its fault")
			}
			p := list[0]
			if p.Code != tc.code || !strings.Contains(p.Message, tc.want) || p.Pos.File != "shop/occupancy.yaml" || p.Pos.Line < 2 {
				t.Errorf("%s %s: %s; %s with %q was expected", p.Pos, p.Code, p.Message, tc.code, tc.want)
			}
		})
	}
}

// A door is never wider inside its frame than outside.
func TestDoorWiderThanItsFrame(t *testing.T) {
	shop := Shop{}
	for _, name := range append(Files(), "occupancy.yaml", "logo.png", "terms.txt", "payment.txt") {
		if data, why := readRegular(Demo(), name, maxFile); why == "" {
			shop[name] = data
		}
	}
	shop["tents.yaml"] = []byte(strings.Replace(string(shop["tents.yaml"]), "clear: 72 in", "clear: 8 ft", 1))
	c, list := Load("shop", shop)
	if c != nil || len(list) != 1 || list[0].Code != diag.OutOfRange || !strings.Contains(list[0].Message, `door "double" is 8 ft clear but takes 7 ft`) {
		t.Errorf("got %v", list)
	}
}

// Every value that the demonstration shop ships tells where it was read.
func TestDemoOccupancyTellsItsSources(t *testing.T) {
	c, list := Load("demo", Demo())
	if c == nil {
		t.Fatal(list.Err())
	}
	o := c.Occupancy
	for i := range o.Uses {
		if !strings.Contains(o.Uses[i].Source, "1004.5") {
			t.Errorf("use %q has the source %q", o.Uses[i].ID, o.Uses[i].Source)
		}
	}
	if o.Exits.Source == "" || o.WheelchairsBy == "" || !strings.Contains(o.Code, "2018") {
		t.Error("a table of the demonstration shop tells no source or edition")
	}
}
