package listing_test

import (
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tentwright/catalog"
	"tentwright/workbook/listing"
	"tentwright/workbook/sheet"
)

// told is a result in short: a line for each row.
func told(r *listing.Result) []string {
	var lines []string
	for i := range r.Rows {
		row := &r.Rows[i]
		line := row.ID + " " + string(row.State)
		for _, c := range row.Changes {
			line += fmt.Sprintf(" %s %s>%s", c.Field, c.Old, c.New)
		}
		lines = append(lines, line)
	}
	return lines
}

// Each row has its state, and only what differs is a change.
func TestStates(t *testing.T) {
	const mapping = "into: items\nkey: Code\nfields: [{heading: Price, field: price}, {heading: Cost, field: cost}, {heading: Note, field: describe}]\n" +
		dialect + "skip_empty: yes\nadd: {name: Bench, section: Furniture, unit: each, period: event, tax: rental, kind: hire}\n"
	r, list := take(t, mapping, "Prices of 2027\n\nCode,Price,Cost,Note\nFurniture,,,\nchair,2.25,0.5,\nseat8,28,5.00,\n ,,,\nchair,2.25,.5,\nbench,4,1,\"Oak,\nheavy\"\nchair,2.25,0.50,\nchairs,3,1,\n")
	wants(t, list, `".5" does not fit`)
	want := []string{" no figures", "chair refused", "seat8 unchanged", "chair refused", "bench added price none>4 cost none>1 describe none>Oak,\nheavy", "chair refused", "chairs added price none>3 cost none>1"}
	if diff := cmp.Diff(want, told(r)); diff != "" {
		t.Error(diff)
	}
	if r.Rows[6].Near != "chair" {
		t.Errorf("the near id is %q", r.Rows[6].Near)
	}
	c, faults := catalog.Load("", with(small(t), r))
	if c == nil {
		t.Fatal(faults.Err())
	}
	if it := c.Item("bench"); it == nil || it.Describe != "Oak,\nheavy" || it.Name != "Bench" || it.Price.String() != "4" {
		t.Errorf("the new item is %+v", it)
	}
}

// Rows that say the same are fine, however they write it.
func TestRepeatedRows(t *testing.T) {
	r, list := take(t, parts, "Part,Weight,Have\nstake,12.5 lb,40\nstake,12.50 LB,40\ncorner,80 oz,\n")
	if list.Err() != nil {
		t.Fatal(list.Err())
	}
	want := []string{"stake taken weight 12 lb>12.5 lb owned 0>40", "stake repeated", "corner unchanged"}
	if got := told(r); strings.Replace(got[0], "owned none", "owned 0", 1) != want[0] || !slices.Equal(got[1:], want[1:]) {
		t.Error(cmp.Diff(want, got))
	}
}

// with is the files of a shop after an import.
func with(c *catalog.Catalog, r *listing.Result) catalog.Shop {
	all := maps.Clone(c.Source)
	maps.Copy(all, r.Changed)
	return all
}

// Numbers are read in the stated form. The forms are common practice in English,
// German, French and Swiss lists, no source.
func TestForms(t *testing.T) {
	tests := []struct{ decimal, thousands, currency, cell, want string }{
		{"point", "none", "", "1234.50", "1234.5"},
		{"point", "comma", "$", "$1,234.50", "1234.5"},
		{"point", "comma", "$", "$ 1234", "1234"},
		{"comma", "point", "EUR", "1.234,50 EUR", "1234.5"},
		{"comma", "space", "€", "1\u202f234,50\u00a0€", "1234.5"},
		{"comma", "space", "kr", "1 234 567,00 kr", "1234567"},
		{"point", "apostrophe", "CHF", "CHF 1'234.50", "1234.5"},
		{"comma", "none", "", "2,5", "2.5"},
	}
	for _, test := range tests {
		mapping := "into: items\nkey: Code\nfields: [{heading: Price, field: price}]\ncsv: {separator: tab, encoding: utf-8}\n" +
			"decimal: " + test.decimal + "\nthousands: " + test.thousands + "\n"
		if test.currency != "" {
			mapping += "currency: \"" + test.currency + "\"\n"
		}
		r, list := take(t, mapping, "Code\tPrice\nchair\t"+test.cell+"\n")
		if list.Err() != nil {
			t.Error(list.Err())
			continue
		}
		if got := r.Rows[0].Changes[0].New; got != test.want {
			t.Errorf("%q is read as %s, want %s", test.cell, got, test.want)
		}
	}
}

// A percentage is read as it is written, and amounts are rounded when asked for.
func TestPercentAndRounding(t *testing.T) {
	shop, list := catalog.Load("", catalog.Demo())
	if shop == nil {
		t.Fatal(list.Err())
	}
	number := func(n float64) sheet.FoundCell { return sheet.FoundCell{Kind: sheet.FoundNumber, Number: n, Text: "?"} }
	signed := func(n float64) sheet.FoundCell {
		return sheet.FoundCell{Kind: sheet.FoundNumber, Number: n, Text: "?", Percent: true}
	}
	text := func(s string) sheet.FoundCell { return sheet.FoundCell{Kind: sheet.FoundText, Text: s} }
	id := ""
	for i := range shop.Items {
		if shop.Items[i].SubHire != nil {
			id = shop.Items[i].ID
			break
		}
	}
	for _, test := range []struct {
		written string
		cell    sheet.FoundCell
		want    string
	}{
		{"percent", number(37.5), "37.5"}, {"fraction", number(0.28999999999999998), "29"}, {"fraction", number(1.1 * 3), "330"},
		{"fraction", text("37.5 %"), "37.5"}, {"percent", text("37.5%"), "37.5"}, {"fraction", text("0.375"), "37.5"},
		// A cell that shows percent says itself what it means.
		{"percent", signed(0.25), "25"}, {"fraction", signed(0.25), "25"}, {"percent", signed(0.28999999999999998), "29"},
	} {
		m := mapped(t, "into: items\nkey: Code\ndecimal: point\nplaces: 2\nround: yes\nfields:\n  - {heading: Add, field: sub_hire.markup, written: "+test.written+"}\n  - {heading: Cost, field: sub_hire.cost}\n")
		table, _ := listing.Sheet("l.xlsx", book([]sheet.FoundCell{text("Code"), text("Add"), text("Cost")}, []sheet.FoundCell{text(id), test.cell, number(10.0 / 3)}), "Prices")
		r, list := all(listing.Take(m, table, shop))
		if list.Err() != nil {
			t.Error(list.Err())
			continue
		}
		if got := r.Rows[0].Changes; got[0].New != test.want || got[1].New != "3.33" {
			t.Errorf("%v: read as %v, want %s and 3.33", test, got, test.want)
		}
	}
}

// Without places, amounts are rounded to those of the shop's currency.
func TestRoundingByTheCurrency(t *testing.T) {
	r, list := take(t, items+"round: yes\n", "Code,Price\nchair,2.505\n")
	if list.Err() != nil {
		t.Fatal(list.Err())
	}
	if got := r.Rows[0].Changes[0].New; got != "2.51" { // ISO 4217: two decimals of USD
		t.Errorf("read as %s, want 2.51", got)
	}
}

// An amount far from the old one is taken, and said. The chair is 2.25.
func TestFarOffAmounts(t *testing.T) {
	for price, look := range map[string]bool{"225": true, "11.26": true, "11.25": false, "2.5": false, "0.45": false, "0.44": true} {
		r, list := take(t, items, "Code,Price\nchair,"+price+"\n")
		if list.Err() != nil || r.Rows[0].State != listing.Taken {
			t.Fatal(price, list.Err())
		}
		if c := r.Rows[0].Changes[0]; c.Look != look || strings.Contains(c.String(), "LOOK") != look {
			t.Errorf("%s: look %t, want %t: %s", price, c.Look, look, c)
		}
	}
	r, _ := take(t, parts, "Part,Weight,Have\nstake,,4000\n")
	if c := r.Rows[0].Changes[0]; c.Look {
		t.Errorf("a count is no amount: %s", c)
	}
}

// Sizes are found by one key or by two, by id or by name.
func TestKeysOfSizes(t *testing.T) {
	base := "into: sizes\nfields: [{heading: Rate, field: price}]\n" + dialect
	for _, test := range []struct{ mapping, list string }{
		{"key: Tent\n", "Tent,Rate\nhip:10x10,175\n"},
		{"key: Tent\nkey_size: Size\n", "Size,Tent,Rate\n10x10,hip,175\n"},
		{"key: Tent\nkey_is: name\n", "Tent,Rate\nFrame  tent 10x10,175\n"},
		{"key: Tent\nkey_size: Size\nkey_is: name\n", "Size,Tent,Rate\n10x10,Frame tent,175\n"},
	} {
		r, list := take(t, base+test.mapping, test.list)
		if list.Err() != nil {
			t.Error(list.Err())
			continue
		}
		if got := told(r); got[0] != "hip:10x10 taken price 150>175" {
			t.Errorf("%s gives %v", test.mapping, got)
		}
	}
}

// A mark at the head, any line ends, quoted separators, quotes and line breaks,
// and letters of another encoding.
func TestDialects(t *testing.T) {
	mapping := "into: items\nkey: Code\nfields: [{heading: Preis, field: price}, {heading: Größe, field: describe}]\ndecimal: comma\ncsv: {separator: semicolon, encoding: %s}\n"
	text := "Code;Preis;Größe\r\nchair;2,50;\"ein;\"\"Stuhl\"\",\r\ngrün\"\r\n"
	// The bytes of windows-1252 are those of Latin-1 for these letters, CP1252.TXT
	// of the Unicode consortium.
	ansi := strings.NewReplacer("ö", "\xf6", "ß", "\xdf", "ü", "\xfc").Replace(text)
	for _, test := range []struct{ encoding, text string }{
		{"utf-8", text}, {"utf-8", "\ufeff" + text}, {"utf-8", strings.ReplaceAll(text, "\r\n", "\n")}, {"windows-1252", ansi},
	} {
		r, list := take(t, fmt.Sprintf(mapping, test.encoding), test.text)
		if list.Err() != nil {
			t.Error(list.Err())
			continue
		}
		want := "chair taken price 2.25>2.5 describe none>ein;\"Stuhl\",\ngrün"
		if got := told(r); got[0] != want || r.Rows[0].Pos.Line != 2 {
			t.Errorf("%s: %q, want %q", test.encoding, got, want)
		}
	}
	r, _ := take(t, fmt.Sprintf(mapping, "windows-1252"), "Code;Preis;Gr\xf6\xdfe\nchair;2,5;5 \x80\n")
	if got := r.Rows[0].Changes[1].New; got != "5 €" { // 0x80 is U+20AC, CP1252.TXT
		t.Errorf("0x80 is read as %q", got)
	}
}

// The examples are sound.
func TestExamples(t *testing.T) {
	for _, name := range []string{"prices", "stock", "sizes"} {
		data, err := os.ReadFile("../../testdata/imports/" + name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		mapped(t, string(data))
	}
}

// No text and no mapping makes the reader fail otherwise than with a fault.
func FuzzTake(f *testing.F) {
	f.Add([]byte(items), []byte("Code,Price\nchair,2\n"))
	f.Add([]byte(parts), []byte("Part,Weight,Have\nstake,12 lb,3\n\"x"))
	f.Add([]byte(sizes+"key_size: Size\nskip_empty: yes\n"), []byte("Size,Tent,Rate\n10x10,hip,5\n"))
	f.Add([]byte(items+"add: {name: Bench, section: S, unit: each, period: event, tax: rental, kind: hire}\n"), []byte("Code,Price\nbench,2\n"))
	shop := small(f)
	f.Fuzz(func(t *testing.T, mapping, text []byte) {
		m, _ := listing.ReadMapping("m.yaml", mapping)
		if m == nil {
			return
		}
		table, list := listing.CSV("l.csv", text, m)
		if table == nil {
			if list.Err() == nil {
				t.Error("no table and no fault")
			}
			return
		}
		r, list := listing.Take(m, table, shop)
		if r == nil {
			if list.Err() == nil {
				t.Error("no result and no fault")
			}
			return
		}
		if c, list := catalog.Load("", with(shop, r)); c == nil {
			t.Errorf("the shop is not sound: %v", list.Err())
		}
	})
}
