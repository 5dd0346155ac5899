package money

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// must is a number from a table of this file.
func must(t testing.TB, s string) Number {
	t.Helper()
	n, err := Parse(s)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

func TestParse(t *testing.T) {
	tests := []struct{ text, want string }{
		{"0", "0"}, {"-0", "0"}, {"12", "12"}, {"-0.5", "-0.5"}, {"1234.50", "1234.5"}, {"007", "7"},
		{"0.000001", "0.000001"}, {"123456789012345678901234567890", "123456789012345678901234567890"},
	}
	for _, tt := range tests {
		if got := must(t, tt.text).String(); got != tt.want {
			t.Errorf("%q: got %s, want %s", tt.text, got, tt.want)
		}
	}
}

func TestParseErrorsSayWhy(t *testing.T) {
	tests := []struct{ text, want string }{
		{"", "is empty"},
		{"1e3", "has an exponent"},
		{"1.5E-3", "has an exponent"},
		{"1,234.50", "has a comma"},
		{"12,5", "has a comma"},
		{"1_000", "has an underscore"},
		{"6.25%", "has a percent sign"},
		{"0x10", "is not a number"},
		{".5", "is not a number"},
		{"5.", "is not a number"},
		{"+5", "is not a number"},
		{"--5", "is not a number"},
		{"-", "is not a number"},
		{".inf", "is not a number"},
		{"1.2.3", "is not a number"},
		{" 5", "is not a number"},
		{"$5", "is not a number"},
		{"١٢", "is not a number"}, // digits of another script
		{strings.Repeat("1", 31), "more than 30 digits"},
	}
	for _, tt := range tests {
		_, err := Parse(tt.text)
		if err == nil || !strings.Contains(err.Error(), tt.want) || !strings.Contains(err.Error(), "plain decimal number") {
			t.Errorf("%q: got %v, want %q and the form expected", tt.text, err, tt.want)
		}
	}
}

func TestRound(t *testing.T) {
	tests := []struct {
		n      string
		places int
		want   string
		source string
	}{
		{"8.125", 2, "8.13", "derived: 130.00 at 6.25 %, rounded up by SSUTA section 324"},
		{"123.425", 2, "123.43", "half-up column, docs.oracle.com/cd/F28171_01/DR/BankRound.html"},
		{"123.435", 2, "123.44", "the same page; both ways of rounding agree"},
		{"2.5", 0, "3", "half-up, learn.microsoft.com databricks functions/bround"},
		{"3.5", 0, "4", "the same page"},
		{"2.25", 1, "2.3", "the same page"},
		{"10.755", 2, "10.76", "cloud.baidu.com/doc/PALO/s/3mc8v6g4z; both ways agree"},
		{"-2.5", 0, "-3", "LibreOffice Calc ROUND, tried"},
		{"-3.5", 0, "-4", "cloud.baidu.com/doc/PALO/s/3mc8v6g4z; both ways agree"},
		{"1.005", 2, "1.01", "LibreOffice Calc ROUND, tried; a float gives 1.00"},
		{"2.345", 2, "2.35", "derived"},
		{"-2.345", 2, "-2.35", "derived"},
		{"1234.5", -2, "1200", "derived"},
		{"1250", -2, "1300", "derived"},
		{"0.004", 2, "0", "derived"},
	}
	for _, tt := range tests {
		if got := Round(must(t, tt.n), tt.places); !got.Equal(must(t, tt.want)) {
			t.Errorf("Round(%s, %d): got %s, want %s (%s)", tt.n, tt.places, got, tt.want, tt.source)
		}
	}
}

// Derived from the rule of SSUTA section 324: a third place above 4 rounds up.
func TestTaxOfALine(t *testing.T) {
	tests := []struct{ amount, rate, want string }{
		{"130.00", "6.25", "8.13"},
		{"2.00", "6.25", "0.13"},
		{"1.99", "8.25", "0.16"}, // three such items: 0.48
		{"5.97", "8.25", "0.49"}, // the same three as one invoice
		{"34.40", "7.25", "2.49"},
	}
	for _, tt := range tests {
		if got := Round(must(t, tt.amount).Mul(Percent(must(t, tt.rate))), 2); !got.Equal(must(t, tt.want)) {
			t.Errorf("%s at %s %%: got %s, want %s", tt.amount, tt.rate, got, tt.want)
		}
	}
}

func TestPercent(t *testing.T) {
	for _, tt := range [][2]string{{"45", "0.45"}, {"6.25", "0.0625"}, {"0", "0"}, {"100", "1"}, {"-12.5", "-0.125"}, {"33.333333", "0.33333333"}} {
		if got := Percent(must(t, tt[0])); got.String() != tt[1] {
			t.Errorf("%s %%: got %s, want %s", tt[0], got, tt[1])
		}
	}
}

// Wanted values follow from the sheet formula MAX(0,ROUNDUP(n-0.000001,0)).
func TestRoundUp(t *testing.T) {
	tests := []struct {
		n    string
		want int
	}{
		{"0", 0}, {"0.000001", 0}, {"0.0000011", 1}, {"1", 1}, {"1.000001", 1}, {"1.0000011", 2},
		{"2.4", 3}, {"9.5", 10}, {"213.33", 214}, {"-0.4", 0}, {"-7", 0},
		{"999999999999999999999999", math.MaxInt},
	}
	for _, tt := range tests {
		if got := RoundUp(must(t, tt.n)); got != tt.want {
			t.Errorf("RoundUp(%s): got %d, want %d", tt.n, got, tt.want)
		}
	}
}

// Margins: table read at math.techqa.club, "convert percentage margin into
// percentage markup": margin 10/20/30/50 -> markup 11.1/25.0/42.9/100. Its row
// for 40 prints 80.0; 0.4/0.6 is 66.7 by arithmetic.
func TestDivRound(t *testing.T) {
	for margin, markup := range map[string]string{"10": "11.1", "20": "25", "30": "42.9", "40": "66.7", "50": "100"} {
		m := Percent(must(t, margin))
		if got := DivRound(m.Mul(Hundred), One.Sub(m), 1); !got.Equal(must(t, markup)) {
			t.Errorf("margin %s %%: got markup %s, want %s", margin, got, markup)
		}
	}
	tests := []struct {
		a, b   string
		places int
		want   string
	}{
		{"1", "3", 4, "0.3333"}, {"2", "3", 2, "0.67"}, {"1", "8", 2, "0.13"}, {"-1", "8", 2, "-0.13"},
		{"100", "0.65", 2, "153.85"}, // price at a margin of 35 %, derived
		{"5", "0", 2, "0"},
	}
	for _, tt := range tests {
		if got := DivRound(must(t, tt.a), must(t, tt.b), tt.places); !got.Equal(must(t, tt.want)) {
			t.Errorf("%s / %s: got %s, want %s", tt.a, tt.b, got, tt.want)
		}
	}
}

func TestFloat(t *testing.T) {
	for f, want := range map[float64]string{0.1: "0.1", 1.005: "1.005", -2.5: "-2.5", 1e21: "1000000000000000000000", 0: "0", math.Inf(1): "0", math.Inf(-1): "0"} {
		if got := Float(f).String(); got != want {
			t.Errorf("Float(%g): got %s, want %s", f, got, want)
		}
	}
	if !Float(math.NaN()).IsZero() {
		t.Error("not-a-number is not zero")
	}
}

func TestSum(t *testing.T) {
	if !Sum().IsZero() {
		t.Error("the sum of nothing is not zero")
	}
	if got := Sum(must(t, "0.1"), must(t, "0.2"), Sixty); got.String() != "60.3" {
		t.Errorf("got %s, want 60.3", got)
	}
}

func TestNumberProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cents := rapid.Int64Range(-1e12, 1e12).Draw(t, "cents")
		n := Percent(Int(int(cents)))
		// What is printed reads back exactly.
		if back, err := Parse(n.String()); err != nil || !back.Equal(n) {
			t.Fatalf("%s reads back as %s, %v", n, back, err)
		}
		// A float64 holds every amount of this size, so its shortest decimal
		// is the amount.
		if f, _ := n.Float64(); !Float(f).Equal(n) {
			t.Fatalf("%s is %s through a float", n, Float(f))
		}
		// Rounding is symmetric and off by at most half a unit.
		whole := Round(n, 0)
		if !Round(n.Neg(), 0).Equal(whole.Neg()) || whole.Sub(n).Abs().Mul(Int(2)).GreaterThan(One) {
			t.Fatalf("%s rounds to %s", n, whole)
		}
		if up := Int(RoundUp(n)); up.LessThan(n.Sub(slack)) || n.Sign() > 0 && up.Sub(n).GreaterThanOrEqual(One) {
			t.Fatalf("%s rounds up to %s", n, up)
		}
	})
}
