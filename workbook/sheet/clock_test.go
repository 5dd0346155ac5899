package sheet

import (
	"math"
	"strings"
	"testing"

	"tentwright/catalog/unit"
)

// Every time of the day comes back from its cell, also with the noise of
// programs that keep 15 digits, and from its text.
func TestTimesOfDayComeBack(t *testing.T) {
	for c := unit.Clock(1); c <= minutes; c++ {
		number := TimeOfDay(c).(float64)
		for _, cell := range []FoundCell{
			{Kind: FoundNumber, Number: number}, {Kind: FoundNumber, Number: math.Round(number*1e9) / 1e9},
			{Kind: FoundText, Text: c.String()}, {Kind: FoundText, Text: " " + strings.TrimPrefix(c.String(), "0") + " "},
		} {
			if got, err := cell.Clock(); err != nil || got != c {
				t.Fatalf("%+v: got %s, %v, want %s", cell, got, err, c)
			}
		}
	}
	if TimeOfDay(0) != nil {
		t.Error("no time is written as one")
	}
}

// What is no time of day is refused with what was found.
func TestNoTimeOfDay(t *testing.T) {
	for want, cell := range map[string]FoundCell{
		"the cell is empty":           {},
		`found "noon"`:                {Kind: FoundText, Text: "noon"},
		`found "6 pm"`:                {Kind: FoundText, Text: "6 pm"},
		"found the number 0;":         {Kind: FoundNumber},
		"found the number 18;":        {Kind: FoundNumber, Number: 18},
		"found the number 1.5;":       {Kind: FoundNumber, Number: 1.5},
		"found the number -0.5;":      {Kind: FoundNumber, Number: -0.5},
		"found the number 0.3126;":    {Kind: FoundNumber, Number: 0.3126}, // 07:30:08
		"found a date, day number 1;": {Kind: FoundNumber, Number: 1, Day: true},
		"found TRUE":                  {Kind: FoundBool, Number: 1, Text: "TRUE"},
		"found #REF!":                 {Kind: FoundError, Text: "#REF!"},
	} {
		if got, err := cell.Clock(); err == nil || got != 0 || !strings.Contains(err.Error(), want) || !strings.Contains(err.Error(), "such as 07:30") {
			t.Errorf("%+v: got %s, %v; %q was expected", cell, got, err, want)
		}
	}
}

// The rule on a cell takes what [FoundCell.Clock] takes.
func TestAnyTimeIsSound(t *testing.T) {
	v := AnyTime()
	v.Prompt = "a time"
	book := &Book{Created: "2026-05-01T00:00:00Z", Sheets: []*Sheet{{Name: "A", Rows: []Row{{Cells: []Cell{{Value: TimeOfDay(450), Style: Style{Role: Input, Format: Clock}}}}}}}}
	v.Range = Range{R1: 1, C1: 1, R2: 1, C2: 1}
	book.Sheets[0].Validations = []Validation{v}
	if err := book.Check(); err != nil {
		t.Error(err)
	}
	if least := 1.0 / minutes; least <= 0.0006 {
		t.Errorf("the first minute is %g of a day, which the rule refuses", least)
	}
}
