package listing

import (
	"strings"

	"tentwright/catalog/money"
)

// marks that may part digits, by their names. Cells are tidied before, so that
// every kind of blank is a plain one.
var marks = map[string]string{"point": ".", "comma": ",", "space": " ", "apostrophe": "'"}

// number reads a text in the stated form; false when it does not fit.
func (m *Mapping) number(text string) (money.Number, bool) {
	text, negative := strings.CutPrefix(text, "-")
	whole, fraction, parted := strings.Cut(text, marks[m.Decimal])
	whole, ok := ungrouped(whole, marks[m.Thousands])
	// Digits only: with a decimal comma a point means nothing, and must not be
	// taken for one by what reads plain numbers.
	if !ok || !digits(whole) || parted && !digits(fraction) {
		return money.Zero, false
	}
	if parted {
		whole += "." + fraction
	}
	if negative {
		whole = "-" + whole
	}
	n, err := money.Parse(whole)
	return n, err == nil
}

// digits tells whether a text is one or more of 0 to 9.
func digits(text string) bool { return text != "" && strings.Trim(text, "0123456789") == "" }

// ungrouped takes the marks between groups of three digits out; false when the
// groups are others.
func ungrouped(digits, mark string) (string, bool) {
	if mark == "" || !strings.Contains(digits, mark) {
		return digits, true
	}
	groups := strings.Split(digits, mark)
	for i, g := range groups {
		if i > 0 && len(g) != 3 || len(g) < 1 || len(g) > 3 {
			return "", false
		}
	}
	return strings.Join(groups, ""), true
}

// expected is a number in the stated form, for messages.
func (m *Mapping) expected() string {
	example := "1234" + marks[m.Decimal] + "50"
	if marks[m.Thousands] == "" {
		return "a number with a decimal " + m.Decimal + " and nothing between thousands, such as " + example
	}
	example = example[:1] + marks[m.Thousands] + example[1:]
	return "a number with a decimal " + m.Decimal + " and " + m.Thousands + " between thousands, such as " + example
}

// bare is an amount without the stated currency, before or behind it.
func (m *Mapping) bare(text string) string {
	rest, negative := strings.CutPrefix(text, "-")
	rest, before := strings.CutPrefix(rest, m.Currency)
	if !before {
		rest = strings.TrimSuffix(rest, m.Currency)
	}
	if rest = strings.TrimSpace(rest); negative {
		return "-" + rest
	}
	return rest
}

// numberAdvice is what the mapping could say for a number that does not fit.
func (m *Mapping) numberAdvice(text string) string {
	if at := strings.IndexAny(text, "$€£¥"); at >= 0 && m.Currency == "" {
		sign := string([]rune(text[at:])[0])
		return `to have the sign left out, write currency: "` + sign + `" into the mapping`
	}
	if strings.ContainsAny(text, ".,' ") {
		return "decimal and thousands in the mapping say how numbers are written"
	}
	return ""
}
