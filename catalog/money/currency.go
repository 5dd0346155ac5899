package money

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Currency is a kind of money by ISO 4217.
type Currency struct {
	Code   string // three capital letters
	Symbol string // as it stands before an amount
	Minor  int    // decimal places of its smallest unit, 0 to 3
}

// currencies are those whose way of writing is known here: codes and places
// by ISO 4217; symbols are common practice, no source.
var currencies = []Currency{
	{"AUD", "A$", 2},
	{"CAD", "C$", 2},
	{"CHF", "CHF", 2},
	{"DKK", "DKK", 2},
	{"EUR", "€", 2},
	{"GBP", "£", 2},
	{"JPY", "¥", 0},
	{"NOK", "NOK", 2},
	{"NZD", "NZ$", 2},
	{"SEK", "SEK", 2},
	{"USD", "$", 2},
}

// CurrencyOf is the currency with the given ISO 4217 code in capitals; false
// when it is not in the table.
func CurrencyOf(code string) (Currency, bool) {
	for _, c := range currencies {
		if c.Code == code {
			return c, true
		}
	}
	return Currency{}, false
}

// CurrencyCodes is every code that [CurrencyOf] knows, in alphabetical order.
func CurrencyCodes() []string {
	codes := make([]string, len(currencies))
	for i, c := range currencies {
		codes[i] = c.Code
	}
	return codes
}

// Round is n to the currency's smallest unit, halves away from zero.
func (c Currency) Round(n Number) Number { return Round(n, c.Minor) }

// Text is n rounded to the smallest unit, with symbol, thousands commas and
// all its places: "$1,234.50", "-$0.05", "CHF 12.00".
func (c Currency) Text(n Number) string {
	rounded := c.Round(n)
	text := grouped(rounded.Abs().StringFixed(int32(c.Minor)))
	symbol := c.Symbol
	if last, _ := utf8.DecodeLastRuneInString(symbol); unicode.IsLetter(last) {
		symbol += " "
	}
	if rounded.Sign() < 0 {
		return "-" + symbol + text
	}
	return symbol + text
}

// grouped puts a comma before each three digits of the whole part.
func grouped(text string) string {
	whole, fraction, pointed := strings.Cut(text, ".")
	var out strings.Builder
	for i, digit := range whole {
		if i > 0 && (len(whole)-i)%3 == 0 {
			out.WriteByte(',')
		}
		out.WriteRune(digit)
	}
	if pointed {
		out.WriteString("." + fraction)
	}
	return out.String()
}
