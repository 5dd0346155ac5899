package sheet

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"tentwright/catalog/unit"
)

// minutes is how many a day has; spreadsheets keep a time as a fraction of one.
const minutes = 24 * 60

// TimeOfDay is a time as the value of a cell with the format [Clock]: 07:30 is
// 0.3125. No time leaves the cell empty.
func TimeOfDay(c unit.Clock) any {
	if c == 0 {
		return nil
	}
	return float64(c) / minutes
}

// AnyTime limits a cell to the times of a day, from its first minute to its end.
// They are typed as 7:30, which programs keep as a number.
func AnyTime() Validation {
	return Validation{Kind: Decimal, Min: "0.0006", Max: "1", AllowBlank: true}
}

// Clock is the time of day that a cell holds: a fraction of a day, or a text
// such as "07:30". The end of the day is kept as 1. The error says what was found
// and what was expected.
func (c FoundCell) Clock() (unit.Clock, error) {
	switch c.Kind {
	case FoundText:
		at, err := unit.ParseClock(strings.TrimSpace(c.Text))
		if err != nil {
			return 0, fmt.Errorf("found %q; %s", Short(strings.TrimSpace(c.Text), 60), clockExpected)
		}
		return at, nil
	case FoundEmpty:
		return 0, errors.New("the cell is empty; " + clockExpected)
	case FoundNumber:
	default:
		return 0, fmt.Errorf("found %s; %s", c.Text, clockExpected)
	}
	// A thousandth of a minute is the grain of the programs' arithmetic.
	exact := c.Number * minutes
	at := math.Round(exact)
	switch {
	case c.Day:
		return 0, fmt.Errorf("found a date, day number %s; %s", c.Exact(), clockExpected)
	case at < 1 || at > minutes || math.Abs(exact-at) > 0.001:
		return 0, fmt.Errorf("found the number %s; %s", c.Shown(), clockExpected)
	}
	return unit.Clock(at), nil
}

const clockExpected = `a time of day in whole minutes such as 07:30 or 18:00 was expected`
