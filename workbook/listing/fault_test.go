package listing_test

import (
	"os"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/workbook/listing"
	"tentwright/workbook/sheet"
)

// small is the small shop of the tests.
func small(t testing.TB) *catalog.Catalog {
	t.Helper()
	c, list := catalog.Load("", os.DirFS("../../testdata/shops/small"))
	if c == nil {
		t.Fatal(list.Err())
	}
	return c
}

// mapped reads a mapping that must be sound.
func mapped(t testing.TB, text string) *listing.Mapping {
	t.Helper()
	m, list := listing.ReadMapping("map.yaml", []byte(text))
	if m == nil {
		t.Fatal(list.Err())
	}
	return m
}

// take reads a list as text and holds it against the small shop; every fault
// comes back in one list.
func take(t testing.TB, mapping, text string) (*listing.Result, diag.List) {
	t.Helper()
	m := mapped(t, mapping)
	table, list := listing.CSV("list.csv", []byte(text), m)
	if table == nil {
		return nil, list
	}
	return all(listing.Take(m, table, small(t)))
}

// all joins the faults of the rows to those of the table.
func all(r *listing.Result, list diag.List) (*listing.Result, diag.List) {
	if r != nil {
		for i := range r.Rows {
			list.Join(r.Rows[i].Faults)
		}
	}
	return r, list
}

const (
	dialect = "decimal: point\ncsv: {separator: comma, encoding: utf-8}\n"
	items   = "into: items\nkey: Code\nfields: [{heading: Price, field: price}]\n" + dialect
	parts   = "into: parts\nkey: Part\nfields: [{heading: Weight, field: weight}, {heading: Have, field: owned}]\nskip_empty: yes\n" + dialect
	sizes   = "into: sizes\nkey: Tent\nfields: [{heading: Rate, field: price}]\n" + dialect
	hired   = "into: items\nkey: Code\nfields: [{heading: Add, field: sub_hire.markup, written: percent}]\n" + dialect
	named   = "into: items\nkey: Code\nfields: [{heading: Name, field: name}]\n" + dialect
)

// A mapping that does not fit is refused at the place that is wrong.
func TestFaultsOfMappings(t *testing.T) {
	tests := []struct{ name, mapping, want string }{
		{"no fields", "into: items\nkey: Code\ndecimal: point\n", `map.yaml:1:1: field "fields" is missing`},
		{"nothing said of decimals", "into: items\nkey: Code\nfields: [{heading: P, field: price}]\n", `field "decimal" is missing`},
		{"unknown line", items + "seperator: comma\n", `map.yaml:6:1: unknown field "seperator"`},
		{"unknown kind", strings.Replace(items, "items", "tents", 1), `map.yaml:1:7: into: "tents" is not one of items, parts, sizes`},
		{"field of another kind", strings.Replace(items, "field: price", "field: owned", 1), `map.yaml:3:34: "owned" is not a field that a list of items can set; one of name, price`},
		{"misspelt field", strings.Replace(items, "field: price", "field: prise", 1), `did you mean "price"?`},
		{"a field twice", strings.Replace(items, "}]", "}, {heading: Cost, field: price}]", 1), `map.yaml:3:65: field "price" is mapped already`},
		{"a column twice", strings.Replace(items, "}]", "}, {heading: price, field: cost}]", 1), `map.yaml:3:52: heading "price" is mapped already`},
		{"the key as a field", strings.Replace(items, "heading: Price", "heading: CODE", 1), `heading "CODE" is mapped already`},
		{"one mark for two things", items + "thousands: point\n", `map.yaml:6:12: the point cannot part both decimals and thousands`},
		{"a currency with a digit", items + "currency: 1$\n", `map.yaml:6:11: "1$" cannot be told from a number`},
		{"a currency that is a mark", items + "currency: \".\"\n", `map.yaml:6:11: "." parts digits already`},
		{"too many places", items + "places: 7\n", "map.yaml:6:9: places: 7 is above the largest value, 6"},
		{"a size of an item", items + "key_size: Size\n", "map.yaml:6:11: key_size is for sizes"},
		{"one column for two keys", sizes + "key_size: tent\n", `heading "tent" is that of the key already`},
		{"a unit of a price", strings.Replace(items, "field: price", "field: price, unit: lb", 1), "unit is for weights; price has none"},
		{"an unknown unit", strings.Replace(parts, "field: weight", "field: weight, unit: stone", 1), `"stone" is not one of lb, oz, g, kg, t`},
		{"a price in percent", strings.Replace(items, "field: price", "field: price, written: percent", 1), "written is for percentages; price is none"},
		{"a percentage either way", strings.Replace(hired, ", written: percent", "", 1), "map.yaml:3:10: it is not said how a quarter is written"},
		{"new sizes", sizes + "add: {owned: 1}\n", "map.yaml:6:6: a new size needs its frame and top"},
		{"new things by name", items + "key_is: name\nadd: {unit: each}\n", "a new entry needs an id, and the key is a name"},
		{"new things with a misspelt field", items + "add: {sektion: Linen}\n", `map.yaml:6:16: "sektion" is not a field that new items can be given`},
		{"an unknown separator", strings.Replace(items, "separator: comma", "separator: bar", 1), `"bar" is not one of comma, semicolon, tab`},
		{"an unknown encoding", strings.Replace(items, "utf-8", "latin", 1), `"latin" is not one of utf-8, windows-1252`},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			m, list := listing.ReadMapping("map.yaml", []byte(test.mapping))
			if m != nil {
				t.Error("the mapping was taken in spite of its fault")
			}
			wants(t, list, test.want)
		})
	}
}

// wants fails unless a problem contains the text.
func wants(t *testing.T, list diag.List, want string) {
	t.Helper()
	var shown []string
	for _, p := range list {
		shown = append(shown, p.String())
		if strings.Contains(p.String(), want) {
			return
		}
	}
	t.Errorf("no fault says %s; there are:\n%s", want, strings.Join(shown, "\n"))
}

// A row or a list that does not fit is refused at its cell, and what is refused
// changes nothing.
func TestFaultsOfLists(t *testing.T) {
	tests := []struct{ name, mapping, list, want string }{
		{"unknown id", items, "Code,Price\nchiar,2\n", `list.csv:2:1: the shop has no item "chiar"; one that accessories.yaml has was expected [unknown-id]` + "\n  did you mean \"chair\"?"},
		{"far id", items, "Code,Price\ntrampoline,2\n", "[unknown-id]\n  known: wall, chair, seat8, visit"},
		{"id in capitals", items, "Code,Price\nChair,2\n", `did you mean "chair"?`},
		{"unknown name", items + "key_is: name\n", "Code,Price\nchair,2\n", `the shop has no item of the name "chair"`},
		{"unknown size", sizes, "Tent,Rate\nhip:10x1,2\n", `did you mean "hip:10x10"?`},
		{"no id", items, "Code,Price\n,2\n", "list.csv:2:1: is empty; the id of the row was expected [no-key]"},
		{"no price", items, "Code,Price\nchair,\n", "list.csv:2:7: price: is empty; expected a number with a decimal point"},
		{"short line", items, "Code,Price\nchair\n", "list.csv:2: price: is empty"},
		{"thousands not stated", items, "Code,Price\nchair,\"1,234.50\"\n", `list.csv:2:7: price: "1,234.50" does not fit; expected a number with a decimal point and nothing between thousands, such as 1234.50`},
		{"decimal comma not stated", items, "Code,Price\nchair,\"2,50\"\n", `"2,50" does not fit`},
		{"a decimal point not stated", strings.Replace(items, "point", "comma", 1), "Code,Price\nchair,2.50\n", `"2.50" does not fit; expected a number with a decimal comma`},
		{"two decimal marks", items, "Code,Price\nchair,1.234.5\n", `"1.234.5" does not fit`},
		{"a mark between decimals", items + "thousands: comma\n", "Code,Price\nchair,\"1.234,5\"\n", `"1.234,5" does not fit`},
		{"two minus signs", items, "Code,Price\nchair,--2\n", `"--2" does not fit`},
		{"groups of two", items + "thousands: comma\n", "Code,Price\nchair,\"12,34\"\n", `"12,34" does not fit; expected a number with a decimal point and comma between thousands, such as 1,234.50`},
		{"a first group of four", items + "thousands: comma\n", "Code,Price\nchair,\"1234,567\"\n", "does not fit"},
		{"currency not stated", items, "Code,Price\nchair,$2.50\n", `write currency: "$" into the mapping`},
		{"another currency", items + "currency: $\n", "Code,Price\nchair,€2.50\n", `"€2.50" does not fit`},
		{"a word", items, "Code,Price\nchair,on request\n", `"on request" does not fit`},
		{"an exponent", items, "Code,Price\nchair,1e3\n", `"1e3" does not fit`},
		{"brackets for minus", items, "Code,Price\nchair,(2.50)\n", `"(2.50)" does not fit`},
		{"a percentage for a price", items, "Code,Price\nchair,20%\n", `"20%" does not fit`},
		{"a negative price", items, "Code,Price\nchair,-2.50\n", `list.csv:2:7: price: "-2.50" is negative; 0 or more was expected`},
		{"a price of zero", items, "Code,Price\nchair,0\n", `list.csv:2:7: price: item "chair" has a price of zero`},
		{"a price of what is free", items, "Code,Price\nvisit,5\n", `list.csv:2:7: price: item "visit" is marked free but has a price of 5`},
		{"three decimals", items, "Code,Price\nchair,2.345\n", `"2.345" has more than 2 decimals`},
		{"half a stake", parts, "Part,Weight,Have\nstake,,3.5\n", `list.csv:2:8: owned: "3.5" is not whole`},
		{"fewer than none", parts, "Part,Weight,Have\nstake,,-3\n", `"-3" is negative`},
		{"more than fits", parts, "Part,Weight,Have\nstake,,99999999999999999999\n", "owned: 99999999999999999999 is too large"},
		{"a weight without unit", parts, "Part,Weight,Have\nstake,12.5,\n", `weight: "12.5" has no unit; a weight such as "12.5 lb" was expected`},
		{"an unknown unit", parts, "Part,Weight,Have\nstake,12.5 stone,\n", `has the unknown unit "stone"`},
		{"two units", parts, "Part,Weight,Have\nstake,12 lb 5 oz,\n", "has more than one number"},
		{"a unit alone", parts, "Part,Weight,Have\nstake,lb,\n", `"lb" does not fit`},
		{"the weight of a pole", parts, "Part,Weight,Have\nleg_7,12 lb,\n", "list.csv:2:7: weight: the weight of this part follows from its pole or cloth"},
		{"a mark-up of one's own", hired, "Code,Add\nchair,20\n", "list.csv:2:7: sub_hire.markup: the item is not hired in from anyone"},
		{"a name of two lines", named, "Code,Name\nchair,\"Chair\nwhite\"\n", `"Chair\nwhite" has several lines`},
		{"a long name", named, "Code,Name\nchair," + strings.Repeat("long ", 30) + "\n", "list.csv:2:7: name: has 149 characters; at most 120 were expected"},
		{"a hidden character", named, "Code,Name\nchair,Chair\u202e\n", "list.csv:2:7: name: holds the character U+202E"},
		{"two prices", items, "Code,Price\nchair,2\nwall,1.5\nchair,3\n", `list.csv:2:1: item "chair" stands in the list twice with different values, here and at list.csv:4:1`},
		{"a new one without name", items + "add: {unit: each}\n", "Code,Price\nbench,2\n", `list.csv:2:1: cannot be added: field "name" is missing`},
		{"a new one with a bad price", items + "add: {name: Bench, section: S, unit: each, period: event, tax: rental, kind: hire}\n", "Code,Price\nbench,0\n", "cannot be added: item \"bench\" has a price of zero"},
		{"a new one of no period", items + "add: {name: Bench, section: S, unit: each, period: evnt, tax: rental, kind: hire}\n", "Code,Price\nbench,2\n", `cannot be added: `},
		{"a new id that spreadsheets cannot find", items + "add: {name: Bench, section: S, unit: each, period: event, tax: rental, kind: hire}\n", "Code,Price\nben*ch,2\n", "list.csv:2:1: cannot be added: item \"ben*ch\" has a '*'"},
		{"no heading", items, "Id,Rate\nchair,2\n", `list.csv: no row holds the headings "Code", "Price"`},
		{"half a heading", items, "x\nCode,Prize\nchair,2\n", `list.csv:2:1: heading "Price" is missing in this row; "Code", "Price" were expected [no-heading]` + "\n  did you mean \"Prize\"?"},
		{"a heading twice", items, "Code,Price,price\nchair,2,3\n", `list.csv:1:12: heading "Price" stands here a second time`},
		{"an empty list", items, "", "no row holds the headings"},
		{"a stray quote", items, "Code,Price\nchair,2 \"\n", "list.csv:2:9: a quote stands within a cell"},
		{"a quote left open", items, "Code,Price\n\"chair,2\nwall,1\n", "list.csv:3:8: a cell in quotes does not end where it should"},
		{"text behind a quote", items, "Code,Price\n\"chäir\"x,2\n", "list.csv:2:7: a cell in quotes does not end"},
		{"not UTF-8", items, "Code,Price\nch\xe4ir,2\n", "list.csv:2:3: the byte 0xe4 is no UTF-8"},
		{"UTF-16", items, "\xff\xfeC\x00", "this is text in UTF-16"},
		{"a workbook", items, "PK\x03\x04", "this is a workbook, not a text"},
		{"UTF-8 where another was stated", strings.Replace(items, "utf-8", "windows-1252", 1), "\xef\xbb\xbfCode,Price\n", "list.csv:1:1: the file says that it is UTF-8"},
		{"a byte without character", strings.Replace(items, "utf-8", "windows-1252", 1), "Code,Price\n\x81,2\n", "list.csv:2:1: the byte 0x81 stands for no character"},
		{"a zero byte", items, "Code\x00,Price\n", "list.csv:1:5: the control character U+0000"},
		{"returns alone", items, "Code,Price\rchair,2\r", "the lines end in a bare return"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			r, list := take(t, test.mapping, test.list)
			wants(t, list, test.want)
			if r != nil && len(r.Changed) > 0 {
				t.Error("the shop changes in spite of the fault")
			}
		})
	}
}

// A list as text needs its dialect.
func TestDialectIsNeeded(t *testing.T) {
	m := mapped(t, "into: items\nkey: Code\nfields: [{heading: Price, field: price}]\ndecimal: point\n")
	_, list := listing.CSV("list.csv", nil, m)
	wants(t, list, "map.yaml:1:1: a list as text needs its dialect")
}

// Cells of a workbook that show no value of use are refused by their place.
func TestFaultsOfCells(t *testing.T) {
	const mapping = "into: items\nsheet: Prices\nkey: Code\nfields: [{heading: Price, field: price}]\ndecimal: point\n"
	text := func(s string) sheet.FoundCell { return sheet.FoundCell{Kind: sheet.FoundText, Text: s} }
	chair := text("chair")
	tests := []struct {
		name      string
		key, cell sheet.FoundCell
		want      string
	}{
		{"an error", chair, sheet.FoundCell{Kind: sheet.FoundError, Text: "#REF!"}, `list.xlsx: Prices!C4: price: holds the error "#REF!"`},
		{"no result", chair, sheet.FoundCell{Formula: "B4*2"}, "list.xlsx: Prices!C4: price: holds a formula without a result"},
		{"a date", chair, sheet.FoundCell{Kind: sheet.FoundNumber, Number: 46000, Text: "46000", Day: true}, "price: holds a date"},
		{"yes", chair, sheet.FoundCell{Kind: sheet.FoundBool, Number: 1}, "price: holds yes or no"},
		{"a percentage for a price", chair, sheet.FoundCell{Kind: sheet.FoundNumber, Number: 0.25, Text: "0.25", Percent: true}, "list.xlsx: Prices!C4: price: found 25%; expected a number"},
		{"a percentage for an id", sheet.FoundCell{Kind: sheet.FoundNumber, Number: 0.25, Text: "0.25", Percent: true}, text("2"), "Prices!B4: holds 25%; the id"},
		{"a large number", chair, sheet.FoundCell{Kind: sheet.FoundNumber, Number: 1e300, Text: "1e300"}, "1e300 is too large"},
		{"a fine result", chair, sheet.FoundCell{Kind: sheet.FoundNumber, Number: 2.0333333333333332, Text: "2.0333333333333332", Formula: "6.1/3"}, "has more than 2 decimals"},
		{"an error for an id", sheet.FoundCell{Kind: sheet.FoundError, Text: "#N/A"}, text("2"), `list.xlsx: Prices!B4: holds "#N/A"; the id of the row was expected`},
		{"a date for an id", sheet.FoundCell{Kind: sheet.FoundNumber, Number: 46000, Text: "46000", Day: true}, text("2"), "Prices!B4: holds a date"},
		{"a number for an id", sheet.FoundCell{Kind: sheet.FoundNumber, Number: 101, Text: "101"}, text("2"), `the shop has no item "101"`},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			found := book([]sheet.FoundCell{}, []sheet.FoundCell{{}, text("Code"), text(" PRICE\n")}, nil, []sheet.FoundCell{{}, test.key, test.cell})
			m := mapped(t, mapping)
			table, list := listing.Sheet("list.xlsx", found, m.Sheet)
			if table == nil {
				t.Fatal(list.Err())
			}
			_, list = all(listing.Take(m, table, small(t)))
			wants(t, list, test.want)
		})
	}
	_, list := listing.Sheet("list.xlsx", book(), "Price")
	wants(t, list, `list.xlsx: the workbook has no sheet "Price"; the sheet of the list was expected [no-sheet]`+"\n  did you mean \"Prices\"?")
}

// book is a workbook whose second sheet has these rows.
func book(rows ...[]sheet.FoundCell) *sheet.Found {
	return &sheet.Found{Sheets: []*sheet.FoundSheet{{Name: "Notes"}, {Name: "Prices", Rows: rows}}}
}
