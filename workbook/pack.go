package workbook

import (
	"fmt"
	"strings"

	"tentwright/catalog"
	"tentwright/quote/load"
)

// useWords says for what part of the work a part is needed.
var useWords = map[string]string{
	"mark": "marking", "gear": "gear", "anchor": "anchors", "frame": "frame", "top": "tops",
	"walls": "walls", "floor": "floor", "power": "power", "furnish": "furniture", "safety": "safety",
}

// singles is the word for what is counted when a pack is not: "loose" for
// plain pieces, a unit such as "pair", or the pack itself when it holds one.
func singles(p *catalog.Part) (one, many string) {
	word := p.Pack.Kind
	if word == "loose" {
		if p.Unit == "piece" {
			return "loose", "loose"
		}
		word = p.Unit
	}
	return word, word + "s"
}

// packed tells whether a part is counted in packs of several.
func packed(p *catalog.Part) bool { return p.Pack.Kind != "loose" && p.Pack.Holds > 1 }

// packText is a quantity as a picker says it: "2 bags of 50 + 12", "12 in a
// bag", "12 loose"; empty for none.
func packText(p *catalog.Part, quantity int) string {
	if quantity == 0 {
		return ""
	}
	if !packed(p) {
		one, many := singles(p)
		return fmt.Sprintf("%d %s", quantity, either(quantity == 1, one, many))
	}
	kind, holds := p.Pack.Kind, p.Pack.Holds
	full, rest := load.Packs(quantity, holds)
	if full == 0 {
		return fmt.Sprintf("%d in a %s", rest, kind)
	}
	words := fmt.Sprintf("%d %s of %d", full, either(full == 1, kind, kind+"s"), holds)
	if rest > 0 {
		words += fmt.Sprintf(" + %d", rest)
	}
	return words
}

// packFormula is packText of a quantity in a cell.
func packFormula(p *catalog.Part, quantity string) string {
	if !packed(p) {
		one, many := singles(p)
		words := quoted(" " + one)
		if one != many {
			words = "IF(" + quantity + "=1," + words + "," + quoted(" "+many) + ")"
		}
		return "IF(" + quantity + `=0,"",` + quantity + "&" + words + ")"
	}
	kind, holds := p.Pack.Kind, itoa(p.Pack.Holds)
	full := "INT(" + quantity + "/" + holds + ")"
	rest := "MOD(" + quantity + "," + holds + ")"
	return strings.Join([]string{
		"IF(", quantity, `=0,"",IF(`, full, "=0,", quantity, "&", quoted(" in a " + kind), ",",
		full, "&IF(", full, "=1,", quoted(" " + kind + " of " + holds), ",", quoted(" " + kind + "s of " + holds), ")&IF(",
		rest, `=0,""," + "&`, rest, ")))"}, "")
}

// packCountFormula is load.PackCount of a quantity in a cell.
func packCountFormula(p *catalog.Part, quantity string) string {
	return "MAX(0,ROUNDUP(" + quantity + "/" + itoa(max(p.Pack.Holds, 1)) + "-0.000001,0))"
}

// natural compares two texts so that numbers in them count as numbers: bin
// A-2-1 stands before A-10-1.
func natural(a, b string) int {
	for a != "" && b != "" {
		x, y := run(a), run(b)
		a, b = a[len(x):], b[len(y):]
		if isDigit(x[0]) && isDigit(y[0]) {
			if c := compareDigits(x, y); c != 0 {
				return c
			}
			continue
		}
		if c := strings.Compare(x, y); c != 0 {
			return c
		}
	}
	return len(a) - len(b)
}

// compareDigits compares numbers of any length by their digits.
func compareDigits(x, y string) int {
	x, y = strings.TrimLeft(x, "0"), strings.TrimLeft(y, "0")
	if len(x) != len(y) {
		return len(x) - len(y)
	}
	return strings.Compare(x, y)
}

// run is what a text begins with: digits only, or none.
func run(s string) string {
	n := 1
	for n < len(s) && isDigit(s[n]) == isDigit(s[0]) {
		n++
	}
	return s[:n]
}

// isDigit tells the digits of plain numbers; others count as letters.
func isDigit(b byte) bool { return b >= '0' && b <= '9' }

// zoneOf is the first part of a bin, which names its zone of the yard.
func zoneOf(bin string) string {
	zone, _, _ := strings.Cut(bin, "-")
	return zone
}

// either is a, or b where the first does not hold.
func either(first bool, a, b string) string {
	if first {
		return a
	}
	return b
}
