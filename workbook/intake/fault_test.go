package intake

import (
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/workbook/sheet"
)

// spoiled is a form of the garden party with cells typed over; what is found is
// what the reader says at the cell of that name.
type spoiled struct {
	name   string
	values map[string]any
	at     string // cell that is blamed, as find has it
	code   string
	says   string
}

// The garden party has one row of tents filled in. Row 2 of the tents is empty.
var spoils = []spoiled{
	{"no number", map[string]any{"number": nil}, "number", diag.MissingField, "Quote number: the cell is empty; a text was expected"},
	{"blanks for a name", map[string]any{"customer_name": "  "}, "customer_name", diag.MissingField, "Customer: the cell is empty"},
	{"no delivery", map[string]any{"deliver": nil}, "deliver", diag.MissingField, "a day such as 2026-07-04 was expected"},
	{"no distance", map[string]any{"distance": nil}, "distance", diag.MissingField, "a distance such as 12 was expected"},
	{"words for a count", map[string]any{"event_guests": "about 120"}, "event_guests", diag.BadValue, `Guests: "about 120" is no number`},
	{"comma for a point", map[string]any{"item_quantity:2": "12,5"}, "item_quantity:2", diag.BadValue, `"12,5" is no number`},
	{"thousands", map[string]any{"event_guests": "1,200"}, "event_guests", diag.BadValue, `"1,200" is no number`},
	{"half a guest", map[string]any{"event_guests": 12.5}, "event_guests", diag.BadValue, "12.5 is no whole number"},
	{"guests below zero", map[string]any{"event_guests": -3}, "event_guests", diag.OutOfRange, "-3 is too small"},
	{"too many guests", map[string]any{"event_guests": 1000000}, "event_guests", diag.OutOfRange, ""},
	{"a date for a count", map[string]any{"event_guests": made}, "event_guests", diag.WrongKind, "the cell holds a date"},
	{"a truth for a count", map[string]any{"event_guests": true}, "event_guests", diag.WrongKind, "the cell holds Yes; a number"},
	{"a truth for words", map[string]any{"event_name": false}, "event_name", diag.WrongKind, "the cell holds No; a text"},
	{"day and month in words", map[string]any{"from": "20 June 2026"}, "from", diag.BadValue, `"20 June 2026" is a text and not a day`},
	{"day first or month first", map[string]any{"from": "06/07/2026"}, "from", diag.BadValue, "(year-month-day) was expected"},
	{"no such day", map[string]any{"from": "2026-02-30"}, "from", diag.BadValue, `"2026-02-30"`},
	{"time of day", map[string]any{"from": 46023.5}, "from", diag.BadValue, "46023.5 is no day"},
	{"a year for a day", map[string]any{"from": 2026}, "from", diag.OutOfRange, "is not between 2000-01-01 and 2099-12-31"},
	{"event before delivery", map[string]any{"from": "2026-06-01"}, "from", "date-order", "is before"},
	{"zero charged days", map[string]any{"charged": 0}, "charged", diag.OutOfRange, "at least 1 was expected"},
	{"feet without a number", map[string]any{"distance": "near"}, "distance", diag.BadValue, `"near" is no length that can be read; a number such as 12, or 12 mi, was expected`},
	{"distance below zero", map[string]any{"distance": -4}, "distance", diag.BadValue, `"-4"`},
	{"class pasted over", map[string]any{"customer_class": "School"}, "customer_class", diag.NotOneOf, `"School" is not in the list`},
	{"exempt perhaps", map[string]any{"customer_exempt": "maybe"}, "customer_exempt", diag.NotOneOf, "Yes or No was expected"},
	{"zone unknown", map[string]any{"zone": "Larkmere twon"}, "zone", diag.NotOneOf, "is not in the list"},
	{"degree unknown", map[string]any{"site_degree:1": "Flat gras"}, "site_degree:1", diag.NotOneOf, "is not in the list"},
	{"surcharge perhaps", map[string]any{"loading_due:1": 1}, "loading_due:1", diag.NotOneOf, `"1" is not in the list`},
	{"crew of none", map[string]any{"window_crew:2": 0}, "window_crew:2", diag.OutOfRange, "0 is too small"},
	{"discount above all", map[string]any{"discount": 120}, "discount", diag.OutOfRange, ""},
	{"long name", map[string]any{"customer_name": strings.Repeat("x", 200)}, "customer_name", diag.TooLongText, ""},
	{"tent without a size", map[string]any{"tent_family:2": "Pole tent"}, "tent_size:2", HalfFilled, "tent 2, size: the cell is empty although the row is filled in"},
	{"tent without a family", map[string]any{"tent_size:2": "10x10"}, "tent_family:2", HalfFilled, "tent 2, family: the cell is empty"},
	{"family unknown", map[string]any{"tent_family:1": "Hip-fram tent"}, "tent_family:1", diag.NotOneOf, "a family of tents was expected"},
	{"size of another family", map[string]any{"tent_size:1": "60x90"}, "tent_size:1", diag.NotOneOf, `"60x90" is no size of Hip-frame tent`},
	{"size of none", map[string]any{"tent_size:1": "10x11"}, "tent_size:1", diag.NotOneOf, "one of its sizes was expected"},
	{"eave that it has not", map[string]any{"tent_eave:1": "12 ft"}, "tent_eave:1", "leg-height", "no legs of 12 ft"},
	{"no tents alike", map[string]any{"tent_count:1": 0}, "tent_count:1", diag.OutOfRange, "0 is too small"},
	{"joins nobody", map[string]any{"tent_joins:1": "barn", "tent_at:1": "Front"}, "tent_joins:1", "unknown-id", `"barn" is not known`},
	{"side of no tent", map[string]any{"tent_at:1": "Front"}, "tent_at:1", HalfFilled, "no tent that it joins"},
	{"wall of an empty row", map[string]any{"side_wall:5": "solid"}, "side_wall:5", HalfFilled, "the row of its tent is empty"},
	{"wall unknown", map[string]any{"side_wall:1": "sollid"}, "side_wall:1", diag.NotOneOf, "a wall of the family was expected"},
	{"doors without a kind", map[string]any{"side_doors:1": 2}, "side_doors:1", HalfFilled, "but no kind"},
	{"doors wider than the side", map[string]any{"side_wall:1": "solid", "side_door:1": "double", "side_doors:1": 9}, "side_door:1", "", "wider"},
	{"offered without a quantity", map[string]any{"item_optional:2": "Yes"}, "item_quantity:2", HalfFilled, "the cell is empty although the row is filled in"},
	{"note without a quantity", map[string]any{"item_note:2": "white"}, "item_quantity:2", HalfFilled, "a number such as 12 was expected"},
	{"extra perhaps", map[string]any{"item_optional:2": "perhaps", "item_quantity:2": 1}, "item_optional:2", diag.NotOneOf, "Yes, No or Chosen was expected"},
	{"half a door", map[string]any{"item_quantity:2": 1.5}, "item_quantity:2", "quantity", "whole"},
	{"less than none", map[string]any{"item_quantity:2": -1}, "item_quantity:2", diag.OutOfRange, ""},
	{"item without a name", map[string]any{"item_quantity:1": 3}, "item_name:1", "", ""},
	{"payment without a day", map[string]any{"payment_amount:1": 500}, "payment_date:1", HalfFilled, "a day such as 2026-07-04 was expected"},
	{"payment without an amount", map[string]any{"payment_date:1": made}, "payment_amount:1", HalfFilled, "a number such as 500 was expected"},
}

// Every fault names its cell, what was found and what was expected; and it is
// the only one, since nothing else is wrong.
func TestFaults(t *testing.T) {
	testSpoils(t, demo(t), spoils)
}

func testSpoils(t *testing.T, c *catalog.Catalog, list []spoiled) {
	t.Helper()
	garden, _ := canon(c, jobOf(t, c, "garden.yaml"))
	for _, s := range list {
		b := fill(c, garden)
		typed(b, s.values)
		data, j, list := Read("garden.xlsx", b.Found(), c)
		if data != nil || j != nil {
			t.Errorf("%s: a job in spite of faults", s.name)
		}
		want := find(b, s.at)
		pos := diag.Pos{File: "garden.xlsx", Sheet: want.Sheet, Cell: sheet.Ref(want.R1, want.C1)}
		if len(list.Faults()) != 1 || list[0].Pos != pos || s.code != "" && list[0].Code != s.code || !strings.Contains(list[0].Message, s.says) {
			t.Errorf("%s: want one fault at %s [%s] with %q, got %d:\n%v", s.name, pos, s.code, s.says, len(list), list.Err())
		}
	}
}
