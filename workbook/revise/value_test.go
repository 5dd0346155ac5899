package revise

import (
	"strings"
	"testing"

	"tentwright/catalog/unit"
	"tentwright/workbook/sheet"
)

// What cells may hold, by what is expected there; the word behind a ! is in the
// reason why it is not taken.
func TestReadCells(t *testing.T) {
	num := func(n float64) sheet.FoundCell { return sheet.FoundCell{Kind: sheet.FoundNumber, Number: n} }
	txt := func(s string) sheet.FoundCell { return sheet.FoundCell{Kind: sheet.FoundText, Text: s} }
	day46180 := sheet.FoundCell{Kind: sheet.FoundNumber, Number: 46180.75, Day: true}
	for _, x := range []struct {
		kind kind
		cell sheet.FoundCell
		want string
	}{
		{number, num(12.5), "12.5"}, {number, num(0.1 + 0.2), "0.3"}, {number, txt(" 12.50 "), "12.5"},
		{number, txt("12,5"), "!with a point and no comma"}, {number, txt("1,200.50"), "!a number such as"}, {number, txt("$5"), "!a number such as"},
		{number, sheet.FoundCell{Kind: sheet.FoundBool, Number: 1}, "!a number"}, {number, sheet.FoundCell{}, "!empty"}, {number, txt(""), "!empty"},
		{number, sheet.FoundCell{Formula: "A1+1"}, "!no stored result"}, {number, sheet.FoundCell{Kind: sheet.FoundNumber, Number: 3, Formula: "1+2"}, "3"},
		{number, sheet.FoundCell{Kind: sheet.FoundError, Text: "#N/A"}, "!#N/A"}, {number, day46180, "!the date 2026-06-07"},
		{percent, num(3), "3"}, {percent, txt("3%"), "!without the percent sign"}, {percent, txt("3 %"), "!without the percent sign"},
		{whole, num(4), "4"}, {whole, num(4.5), "!whole"}, {whole, num(1e15), "!whole"}, {whole, txt("four"), "!whole"},
		{truth, txt("YES"), "Yes"}, {truth, txt("n"), "No"}, {truth, sheet.FoundCell{Kind: sheet.FoundBool, Number: 1}, "Yes"}, {truth, num(1), "!Yes or No"},
		{day, day46180, "2026-06-07"}, {day, num(46180), "2026-06-07"}, {day, txt("2026-06-07"), "2026-06-07"}, {day, txt("7 June"), "!a date such as"},
		{day, num(20260607), "!a date such as"}, {day, num(3), "!a date such as"}, {day, sheet.FoundCell{}, "!empty"},
		{word, txt("a\r\nb "), "a\nb"}, {word, num(5550163), "5550163"}, {word, sheet.FoundCell{}, ""}, {word, day46180, "!a text was expected"},
		{word, sheet.FoundCell{Formula: "A1"}, "!no stored result"},
		{distance, num(12.5), "12.5 mi"}, {distance, txt("20 km"), "20 km"}, {distance, txt("12 ft"), "!a number of mi"}, {distance, txt("near"), "!a number of mi"},
		{distance, num(-1), "!a number of mi"}, {length, txt("7 ft 6 in"), "7 ft 6 in"}, {length, num(7), "!with its unit"}, {length, txt("7"), "!with its unit"},
	} {
		v, err := read(x.cell, x.kind, unit.Imperial)
		reason, bad := strings.CutPrefix(x.want, "!")
		switch {
		case bad && (err == nil || !strings.Contains(err.Error(), reason)):
			t.Errorf("kind %d of %+v: %q, %v; a reason with %q was expected", x.kind, x.cell, v.text, err, reason)
		case !bad && (err != nil || v.text != x.want):
			t.Errorf("kind %d of %+v: %q, %v; %q was expected", x.kind, x.cell, v.text, err, x.want)
		}
	}
}
