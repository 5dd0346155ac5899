package sheet

import "testing"

// Numbers of cells are those that people see; values of the first two are what
// IEEE 754 doubles give for 3-4e-16 and 1.1*3.
func TestExact(t *testing.T) {
	for _, tt := range []struct {
		cell        FoundCell
		want, shown string
	}{
		{FoundCell{Kind: FoundNumber, Number: 2.9999999999999996}, "3", "3"},
		{FoundCell{Kind: FoundNumber, Number: 3.3000000000000003}, "3.3", "3.3"},
		{FoundCell{Kind: FoundNumber, Number: 0.25, Percent: true}, "0.25", "25%"},
		{FoundCell{Kind: FoundNumber, Number: 0.28999999999999998, Percent: true}, "0.29", "29%"},
		{FoundCell{Kind: FoundNumber, Number: -123456789012345}, "-123456789012345", "-123456789012345"},
		{FoundCell{Kind: FoundNumber, Number: 1e-7}, "0.0000001", "0.0000001"},
		{FoundCell{Kind: FoundText, Text: "3"}, "0", "0"},
	} {
		if got := tt.cell.Exact().String(); got != tt.want || tt.cell.Shown() != tt.shown {
			t.Errorf("%v is %s, shown %s; want %s, shown %s", tt.cell.Number, got, tt.cell.Shown(), tt.want, tt.shown)
		}
	}
}
