package intake

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/catalog/unit"
	"tentwright/workbook/sheet"
)

// with are the cells of one map and of another.
func with(cells ...map[string]any) map[string]any {
	all := map[string]any{}
	for _, c := range cells {
		maps.Copy(all, c)
	}
	return all
}

// What several faults of the site stand beside.
var (
	ground = map[string]any{"plot_width": 120, "plot_depth": "80 ft"}
	oak    = with(ground, map[string]any{"obstacle_name:1": "Oak", "obstacle_x:1": 100, "obstacle_y:1": 0})
	warm   = map[string]any{"inside": 68, "outside": 40, "heat_hours": 6}
)

// Faults of what the form says of the site.
var siteSpoils = []spoiled{
	{"width alone", map[string]any{"plot_width": 120}, "plot_depth", HalfFilled, "Plot depth, ft: the cell is empty although others that need it are filled in; a distance such as 12 was expected"},
	{"depth alone", map[string]any{"plot_depth": 80}, "plot_width", HalfFilled, "Plot width, ft: the cell is empty although"},
	{"width in words", with(ground, map[string]any{"plot_width": "wide"}), "plot_width", diag.BadValue, `"wide" is no length that can be read`},
	{"north too far", with(ground, map[string]any{"plot_north": 400}), "plot_north", diag.OutOfRange, "North: 400 is too large; at most 360 was expected"},
	{"north in words", with(ground, map[string]any{"plot_north": "left"}), "plot_north", diag.BadValue, `"left" is no number`},
	{"obstacle without a name", with(oak, map[string]any{"obstacle_name:1": nil, "obstacle_radius:1": 9}), "obstacle_name:1", HalfFilled, "obstacle 1, name: the cell is empty although the row is filled in"},
	{"obstacle without x", with(oak, map[string]any{"obstacle_x:1": nil, "obstacle_radius:1": 9}), "obstacle_x:1", HalfFilled, "obstacle 1, x: the cell is empty although the row is filled in"},
	{"obstacle without y", with(oak, map[string]any{"obstacle_y:1": nil, "obstacle_radius:1": 9}), "obstacle_y:1", HalfFilled, "obstacle 1, y: the cell is empty"},
	{"obstacle without a size", oak, "obstacle_width:1", HalfFilled, "the obstacle has no size; a width and a depth, or a radius, were expected"},
	{"obstacle without a depth", with(oak, map[string]any{"obstacle_width:1": 3}), "obstacle_depth:1", HalfFilled, "the cell is empty although the width is given"},
	{"obstacle without a width", with(oak, map[string]any{"obstacle_depth:1": 3}), "obstacle_width:1", HalfFilled, "the cell is empty although the depth is given"},
	{"round and square", with(oak, map[string]any{"obstacle_depth:1": 3, "obstacle_radius:1": 9}), "obstacle_radius:1", HalfFilled, "a radius is given beside a width or depth"},
	{"radius in words", with(oak, map[string]any{"obstacle_radius:1": "big"}), "obstacle_radius:1", diag.BadValue, `obstacle 1, radius: "big" is no length`},
	{"two of a name", with(oak, map[string]any{"obstacle_radius:1": 9, "obstacle_name:3": "oak", "obstacle_x:3": 4, "obstacle_y:3": 4, "obstacle_radius:3": 2}), "obstacle_name:3", "repeated-id", `obstacle 3, name: obstacle "oak" stands twice`},
	{"obstacle beside the plot", with(oak, map[string]any{"obstacle_radius:1": 9, "obstacle_x:1": 200}), "obstacle_x:1", "bad-plot", "lies beside the plot"},
	{"x without y", map[string]any{"place_x:1": 10}, "place_y:1", HalfFilled, "tent 1, y: the cell is empty although x is given"},
	{"y without x", map[string]any{"place_y:1": 10}, "place_x:1", HalfFilled, "tent 1, x: the cell is empty although y is given"},
	{"turned nowhere", map[string]any{"place_turn:1": 90}, "place_x:1", HalfFilled, "tent 1, x: the cell is empty although the tent is turned"},
	{"turned askew", map[string]any{"place_x:1": 1, "place_y:1": 1, "place_turn:1": 45}, "place_turn:1", diag.NotOneOf, `tent 1, turned: "45" is not in the list; 0, 90, 180 or 270 was expected`},
	{"left of the plot", map[string]any{"place_x:1": -3, "place_y:1": 1}, "place_x:1", diag.BadValue, `"-3"`},
	{"place of an empty row", map[string]any{"place_x:2": 3, "place_y:2": 1}, "place_x:2", HalfFilled, "the row of its tent is empty"},
	{"area without a use", map[string]any{"place_area:1": 20}, "place_use:1", HalfFilled, "tent 1, use of a part: the cell is empty although an area is given"},
	{"other area without a use", map[string]any{"place_others:1": 20}, "place_other:1", HalfFilled, "although an area is given"},
	{"area in words", map[string]any{"place_use:1": "?", "place_area:1": "half"}, "place_area:1", diag.BadValue, `"half" is no area that can be read; a number such as 12, or 12 sq ft, was expected`},
	{"use without an area", map[string]any{"place_use:1": "?"}, "place_area:1", HalfFilled, "tent 1, area of the part: the cell is empty although a use is given"},
	{"more than the floor", map[string]any{"place_use:1": "?", "place_area:1": "9000 sq ft"}, "place_area:1", "use-too-large", "tent 1, area of the part: "},
	{"heated at no temperature", map[string]any{"place_heated:1": "Yes"}, "place_heated:1", HalfFilled, "tent 1, heated: the tent is to be heated but nothing says how warm"},
	{"heated perhaps", with(warm, map[string]any{"place_heated:1": "perhaps"}), "place_heated:1", diag.NotOneOf, "Yes or No was expected"},
	{"nothing left to heat", with(warm, map[string]any{"side_wall:1": "solid", "place_heated:1": "No"}), "place_heated:1", HalfFilled, "no tent with a wall is left to heat"},
	{"no hours of heating", map[string]any{"inside": 68, "outside": 40}, "heat_hours", HalfFilled, "Hours of heating: the cell is empty although others that need it are filled in; a number such as 12 was expected"},
	{"not how cold", map[string]any{"inside": 68, "heat_hours": 6}, "outside", HalfFilled, "Coldest outside, F: the cell is empty although"},
	{"no source of power", map[string]any{"power_distance": 68}, "power", HalfFilled, "Power: the cell is empty although others that need it are filled in; one of the list was expected"},
	{"ground of a side unknown", map[string]any{"side_ground:1": "moon"}, "side_ground:1", diag.NotOneOf, "tent 1, front, ground: \"moon\" is not in the list; a kind of ground was expected"},
}

// anyUse puts a use that the shop has for "?".
func anyUse(c *catalog.Catalog, values map[string]any) map[string]any {
	values = maps.Clone(values)
	for key, v := range values {
		if v == "?" {
			values[key] = "seated"
			if list := uses(c); len(list) > 0 {
				values[key] = list[0].text
			}
		}
	}
	return values
}

// Faults of the site are told as those of other cells.
func TestSiteFaults(t *testing.T) {
	c := demo(t)
	list := slices.Clone(siteSpoils)
	for i := range list {
		list[i].values = anyUse(c, list[i].values)
	}
	testSpoils(t, c, list)
}

// What is half said but clear is read: an obstacle at the edge, a plot without
// tents on it, a turn of nothing, a tent that is not heated.
func TestSiteRead(t *testing.T) {
	c := demo(t)
	for _, tt := range []struct {
		name   string
		values map[string]any
		want   string
	}{
		{"plot", ground, "plot:\n  width: 120 ft\n  depth: 80 ft\n"},
		{"north at the back", with(ground, map[string]any{"plot_north": 0}), "  depth: 80 ft\n"},
		{"obstacle at the edge", with(oak, map[string]any{"obstacle_radius:1": "9 ft"}), "    - name: Oak\n      x: 100 ft\n      y: 0 ft\n      radius: 9 ft\n"},
		{"in metres", map[string]any{"place_x:1": "3 m", "place_y:1": 0, "place_turn:1": "90"}, "    place:\n      x: 3 m\n      y: 0 ft\n      turn: 90\n"},
		{"turn of nothing", map[string]any{"place_turn:1": 0}, ""},
		{"not heated", map[string]any{"place_heated:1": "No"}, ""},
		{"one with a wall", with(warm, map[string]any{"side_wall:1": "solid"}), "  hours: 6\n"},
		{"heated", with(warm, map[string]any{"place_heated:1": true}), "  tents: [lawn]\n"},
		{"all but one", with(warm, map[string]any{"tent_family:2": "Hip-frame tent", "tent_size:2": "10x10", "side_wall:1": "solid", "side_wall:5": "solid", "place_heated:1": "No"}), "  tents: [tent-2]\n"},
		{"ground of a side", map[string]any{"side_ground:3": grounds(c)[1].text}, "        wall: solid\n        ground: " + grounds(c)[1].id + "\n"},
	} {
		b, plain := filled(t, c)
		typed(b, tt.values)
		data, _, list := Read("garden.xlsx", b.Found(), c)
		if len(list) > 0 || !strings.Contains(string(data), tt.want) || tt.want == "" && string(data) != plain {
			t.Errorf("%s: %v\nwant %q in\n%s", tt.name, list, tt.want, data)
		}
	}
}

// A form of an earlier version, which has none of this, says nothing of it.
func TestOlderForm(t *testing.T) {
	c := demo(t)
	b, want := filled(t, c)
	f := b.Found()
	gone := 0
	for name, p := range f.Names {
		late := name == "intake_side_ground" || name == "intake_event_use"
		for _, group := range []string{"plot_", "obstacle_", "place_", "gust", "inside", "power"} {
			late = late || strings.HasPrefix(name, "intake_"+group)
		}
		if !late {
			continue
		}
		delete(f.Names, name)
		gone++
		s := f.Sheet(p.Sheet)
		for row := p.R1; row <= p.R2; row++ {
			if p.C1 <= len(s.Rows[row-1]) {
				s.Rows[row-1][p.C1-1] = sheet.FoundCell{}
			}
		}
	}
	beside, s := find(b, "from"), f.Sheet(SheetIntake)
	for i, words := range former {
		s.Rows[beside.R1-1+i][colF-1] = sheet.FoundCell{Kind: sheet.FoundText, Text: words}
	}
	want = strings.Replace(want, "  use: standing\n", "", 1)
	data, _, list := Read("garden.xlsx", f, c)
	if gone < 20 || len(list) > 0 || string(data) != want {
		t.Errorf("%d names taken away: %v\n%s\nwant\n%s", gone, list, data, want)
	}
}

// A column of the newer tables that was lost is told of, for what it held would
// be lost too.
func TestNewColumnGone(t *testing.T) {
	c := demo(t)
	for _, name := range []string{"intake_obstacle_radius", "intake_place_turn"} {
		b, _ := filled(t, c)
		f := b.Found()
		delete(f.Names, name)
		_, j, list := Read("garden.xlsx", f, c)
		if j != nil || len(list) != 1 || list[0].Code != LostName || !strings.Contains(list[0].Message, name+" is gone") {
			t.Errorf("%s: %v", name, list)
		}
	}
}

// The uses are those of the shop's code, by their names.
func TestUses(t *testing.T) {
	c := demo(t)
	if c.Occupancy == nil {
		c.Occupancy = &catalog.Occupancy{Uses: []catalog.FloorUse{{ID: "tables", Name: "Seated at tables", Area: unit.Area(1.4)}, {ID: "dance", Name: "Dance floor", Area: unit.Area(0.6)}}}
	}
	list := uses(c)
	b, _ := filled(t, c)
	p := b.Found().Names["intake_list_uses"]
	if got := at(b, p).Value; got != list[0].text {
		t.Errorf("the list begins with %v, want %s", got, list[0].text)
	}
	typed(b, map[string]any{"event_use": list[1].text, "place_other:1": list[0].text, "place_others:1": 20})
	data, _, faults := Read("garden.xlsx", b.Found(), c)
	for _, want := range []string{"  use: " + list[1].id + "\n", "    uses:\n      - use: " + list[0].id + "\n        area: 20 sq ft\n"} {
		if len(faults) > 0 || !strings.Contains(string(data), want) {
			t.Errorf("%v\nwant %q in\n%s", faults, want, data)
		}
	}
	typed(b, map[string]any{"event_use": "Sleeping"})
	_, _, faults = Read("garden.xlsx", b.Found(), c)
	if len(faults) != 1 || faults[0].Code != diag.NotOneOf || !told(faults, b, saying{"event_use", `Use of the floor: "Sleeping" is not in the list`}) {
		t.Errorf("%v", faults)
	}
}
