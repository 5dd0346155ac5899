package money

import (
	"slices"
	"testing"
)

// Places by ISO 4217: USD, EUR, GBP and JPY read at
// reference.opcfoundation.org/specs/OPC-10000-3/8.61; the others from memory.
func TestCurrencyPlaces(t *testing.T) {
	want := map[string]int{
		"USD": 2, "EUR": 2, "GBP": 2, "JPY": 0,
		"AUD": 2, "CAD": 2, "CHF": 2, "DKK": 2, "NOK": 2, "NZD": 2, "SEK": 2,
	}
	for code, places := range want {
		if c, ok := CurrencyOf(code); !ok || c.Code != code || c.Minor != places {
			t.Errorf("%s: got %+v, %v, want %d places", code, c, ok, places)
		}
	}
	codes := CurrencyCodes()
	if len(codes) != len(want) || !slices.IsSorted(codes) {
		t.Errorf("codes are %v", codes)
	}
	for _, code := range []string{"", "usd", "XXX", "US$"} {
		if c, ok := CurrencyOf(code); ok {
			t.Errorf("%q is %+v", code, c)
		}
	}
}

func TestCurrencyText(t *testing.T) {
	// Three places: BHD by ISO 4217, read at
	// pub.dev/documentation/moneys/latest/moneys/CurrencyX/exponent.html.
	threePlaces := Currency{"BHD", "BHD", 3}
	currency := func(code string) Currency {
		c, ok := CurrencyOf(code)
		if !ok {
			t.Fatalf("%s is missing", code)
		}
		return c
	}
	tests := []struct {
		currency Currency
		n, want  string
	}{
		{currency("USD"), "1234.5", "$1,234.50"},
		{currency("USD"), "0", "$0.00"},
		{currency("USD"), "999.995", "$1,000.00"},
		{currency("USD"), "-0.05", "-$0.05"},
		{currency("USD"), "-0.004", "$0.00"}, // no minus before nothing
		{currency("USD"), "1234567.891", "$1,234,567.89"},
		{currency("JPY"), "1234.5", "¥1,235"},
		{currency("CHF"), "12", "CHF 12.00"},
		{currency("EUR"), "100000", "€100,000.00"},
		{threePlaces, "1.0005", "BHD 1.001"},
	}
	for _, tt := range tests {
		if got := tt.currency.Text(must(t, tt.n)); got != tt.want {
			t.Errorf("%s in %s: got %q, want %q", tt.n, tt.currency.Code, got, tt.want)
		}
	}
}
