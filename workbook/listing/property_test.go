package listing_test

import (
	"bytes"
	"encoding/csv"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/workbook/listing"
)

// Whatever prices a list has, in whatever dialect it is written, they are the
// shop's afterwards, and nothing else changes.
func TestPricesArrive(t *testing.T) {
	shop, list := catalog.Load("", catalog.Demo())
	if shop == nil {
		t.Fatal(list.Err())
	}
	file := shop.Source["accessories.yaml"]
	rapid.Check(t, func(t *rapid.T) {
		d := drawDialect(t)
		want := map[string]money.Number{}
		rows := [][]string{{"Notes of the yard"}, {"Kept by", d.name, "Code", "Price"}}
		for i := range shop.Items {
			it := &shop.Items[i]
			want[it.ID] = it.Price
			if it.Where.Of("price") == it.Where.Pos() || it.Free || rapid.Bool().Draw(t, "left out") {
				continue
			}
			price := money.Int(rapid.IntRange(1, 99_999_999).Draw(t, "cents")).Shift(-2)
			want[it.ID] = price
			rows = append(rows, []string{"x", it.Name, it.ID, d.number(price)})
		}
		var text bytes.Buffer
		w := csv.NewWriter(&text)
		w.Comma, w.UseCRLF = d.separator, d.crlf
		if err := w.WriteAll(rows); err != nil {
			t.Fatal(err)
		}
		m, list := listing.ReadMapping("m.yaml", []byte(d.mapping()))
		if m == nil {
			t.Fatal(list.Err())
		}
		table, list := listing.CSV("l.csv", append([]byte(d.mark), text.Bytes()...), m)
		if table == nil {
			t.Fatal(list.Err())
		}
		r, list := all(listing.Take(m, table, shop))
		if list.Err() != nil {
			t.Fatal(list.Err())
		}
		changed, list := catalog.Load("", with(shop, r))
		if changed == nil {
			t.Fatal(list.Err())
		}
		for i := range changed.Items {
			if it := &changed.Items[i]; !it.Price.Equal(want[it.ID]) {
				t.Errorf("%s is %s, want %s", it.ID, it.Price, want[it.ID])
			}
		}
		if data := r.Changed["accessories.yaml"]; data != nil && !bytes.Equal(unpriced(shop, file), unpriced(changed, data)) {
			t.Error("more than prices changed")
		}
	})
}

// unpriced is the file of items without the figures behind price.
func unpriced(c *catalog.Catalog, data []byte) []byte {
	lines := bytes.SplitAfter(data, []byte("\n"))
	// From the end, so that places before stay what they are.
	for i := len(c.Items) - 1; i >= 0; i-- {
		it := &c.Items[i]
		at := it.Where.Of("price")
		if at == it.Where.Pos() {
			continue
		}
		line := lines[at.Line-1]
		rest := bytes.TrimLeft(line[at.Column-1:], "0123456789.")
		lines[at.Line-1] = slices.Concat(line[:at.Column-1], rest)
	}
	return bytes.Join(lines, nil)
}

// A number is read as it was meant or refused: a text of digits and marks that
// is written in one form never means another number in another form.
func TestFormsAreNotMixedUp(t *testing.T) {
	digit := func(r rune) rune {
		if r < '0' || r > '9' {
			return -1
		}
		return r
	}
	shop := small(t)
	rapid.Check(t, func(t *rapid.T) {
		d := drawDialect(t)
		text := rapid.StringMatching(`[0-9]{1,4}([.,' ][0-9]{1,3}){0,3}`).Draw(t, "number")
		m, list := listing.ReadMapping("m.yaml", []byte(d.mapping()+"places: 6\n"))
		if m == nil {
			t.Fatal(list.Err())
		}
		sep := string(d.separator)
		table, list := listing.CSV("l.csv", []byte("Code"+sep+"Price\nchair"+sep+"\""+text+"\"\n"), m)
		if table == nil {
			t.Fatal(list.Err())
		}
		r, list := listing.Take(m, table, shop)
		if r == nil {
			t.Fatal(list.Err())
		}
		if row := r.Rows[0]; row.State == listing.Taken {
			whole, fraction, _ := strings.Cut(text, map[string]string{"point": ".", "comma": ","}[d.decimal])
			plain := strings.Map(digit, whole)
			if fraction != "" {
				plain += "." + fraction
			}
			if want, err := money.Parse(plain); err != nil || want.String() != row.Changes[0].New {
				t.Errorf("%q is read as %s", text, row.Changes[0].New)
			}
		}
	})
}

// dialectOf is how a list is written.
type dialectOf struct {
	name, word, decimal, thousands, currency, mark string
	separator                                      rune
	crlf, behind                                   bool
}

func drawDialect(t *rapid.T) dialectOf {
	d := dialectOf{
		name:      rapid.StringOfN(rapid.RuneFrom([]rune("ab \",;\t\n")), 0, 8, -1).Draw(t, "cell"),
		word:      rapid.SampledFrom([]string{"comma", "semicolon", "tab"}).Draw(t, "separator"),
		decimal:   rapid.SampledFrom([]string{"point", "comma"}).Draw(t, "decimal"),
		thousands: rapid.SampledFrom([]string{"none", "comma", "point", "space", "apostrophe"}).Draw(t, "thousands"),
		currency:  rapid.SampledFrom([]string{"", "$", "USD"}).Draw(t, "currency"),
		mark:      rapid.SampledFrom([]string{"", "\ufeff"}).Draw(t, "mark"),
		crlf:      rapid.Bool().Draw(t, "crlf"),
		behind:    rapid.Bool().Draw(t, "currency behind"),
	}
	d.separator = map[string]rune{"comma": ',', "semicolon": ';', "tab": '\t'}[d.word]
	if d.thousands == d.decimal {
		d.thousands = "none"
	}
	return d
}

func (d dialectOf) mapping() string {
	text := "into: items\nkey: Code\nfields: [{heading: Price, field: price}]\ncsv: {separator: " + d.word + ", encoding: utf-8}\ndecimal: " + d.decimal + "\nthousands: " + d.thousands + "\n"
	if d.currency != "" {
		text += "currency: " + d.currency + "\n"
	}
	return text
}

// number writes a price in the dialect.
func (d dialectOf) number(n money.Number) string {
	marks := map[string]string{"point": ".", "comma": ",", "space": "\u00a0", "apostrophe": "'"}
	whole, fraction, _ := strings.Cut(n.StringFixed(2), ".")
	if mark := marks[d.thousands]; mark != "" {
		for at := len(whole) - 3; at > 0; at -= 3 {
			whole = whole[:at] + mark + whole[at:]
		}
	}
	text := whole + marks[d.decimal] + fraction
	if d.behind {
		return text + " " + d.currency
	}
	return d.currency + text
}
