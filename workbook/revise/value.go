package revise

import (
	"errors"
	"fmt"
	"strings"

	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/workbook/sheet"
)

// kind is what a cell is expected to hold.
type kind int

const (
	number  kind = iota
	percent      // of a hundred: 3 is three percent
	whole
	truth    // Yes or No
	word     // any text
	day      // a date
	distance // a number of miles or kilometres, or one with its unit
	length   // a length with its unit
	clock    // a time of day
)

// value is what a cell holds, read as its kind.
type value struct {
	text   string
	number money.Number
	yes    bool
	day    unit.Date
	length unit.Length
	at     unit.Clock
}

// equal tells whether two values of a kind are the same, however they were typed.
func (v value) equal(o value, k kind) bool {
	switch k {
	case word:
		return v.text == o.text
	case truth:
		return v.yes == o.yes
	case day:
		return v.day == o.day
	case distance, length:
		return v.length == o.length
	case clock:
		return v.at == o.at
	}
	return v.number.Equal(o.number)
}

// read reads a cell as a kind. The error says what was found and what was
// expected; nothing is guessed.
func read(c sheet.FoundCell, k kind, sys unit.System) (value, error) {
	if c.Kind == sheet.FoundError {
		return value{}, fmt.Errorf("the cell shows the error %s; %s was expected", c.Text, expected(k, sys))
	}
	text := shown(c)
	switch {
	case c.Kind == sheet.FoundEmpty && c.Formula != "":
		return value{}, errors.New("the formula has no stored result; save the file in a spreadsheet program, or type the value")
	case text == "" && k != word:
		return value{}, fmt.Errorf("the cell is empty; %s was expected", expected(k, sys))
	case c.Day && k != day:
		return value{}, fmt.Errorf("found the date %s; %s was expected", serialDay(int(c.Number)), expected(k, sys))
	}
	switch k {
	case word:
		return value{text: text}, nil
	case truth:
		return readTruth(c, text)
	case day:
		return readDay(c, text)
	case distance, length:
		return readLength(c, k, text, sys)
	case clock:
		at, err := c.Clock()
		return value{text: at.String(), at: at}, err
	}
	return readNumber(c, k, text, sys)
}

// expected says what a kind looks like.
func expected(k kind, sys unit.System) string {
	switch k {
	case word:
		return "a text"
	case percent:
		return "a number such as 5 for five percent"
	case whole:
		return "a whole number such as 4"
	case truth:
		return "Yes or No"
	case day:
		return "a date such as 2026-07-04"
	case distance:
		return fmt.Sprintf("a number of %s such as 12.5, or one with its unit", sys.DistanceUnit())
	case clock:
		return "a time of day such as 07:30"
	case length:
		return `a length with its unit such as "7 ft" or "2.5 m"`
	}
	return "a number such as 12.5"
}

// mostWhole is the largest whole number that any cell may hold.
const mostWhole = 1_000_000_000

// readNumber takes a number, or a text that is nothing but one.
func readNumber(c sheet.FoundCell, k kind, text string, sys unit.System) (value, error) {
	n := money.Round(money.Float(c.Number), 10)
	if c.Kind != sheet.FoundNumber {
		parsed, err := money.Parse(text)
		if err != nil {
			return value{}, fmt.Errorf("found %q; %s was expected%s", text, expected(k, sys), numberAdvice(text))
		}
		n = parsed
	}
	if c.Percent && k != percent {
		return value{}, fmt.Errorf("found %s%%; %s was expected", n.Shift(2), expected(k, sys))
	}
	if c.Percent {
		n = n.Shift(2) // the sign was typed too, and the program keeps a hundredth
	}
	if k == whole && (!n.Equal(n.Truncate(0)) || n.Abs().GreaterThan(money.Int(mostWhole))) {
		return value{}, fmt.Errorf("found %s; %s was expected", n, expected(k, sys))
	}
	return value{text: n.String(), number: n}, nil
}

// numberAdvice says more where a text is a number but for its comma or its
// percent sign.
func numberAdvice(text string) string {
	if _, err := money.Parse(strings.Replace(text, ",", ".", 1)); err == nil && strings.Count(text, ",") == 1 {
		return ", with a point and no comma"
	}
	if _, err := money.Parse(strings.TrimSpace(strings.TrimSuffix(text, "%"))); err == nil {
		return ", without the percent sign"
	}
	return ""
}

func readTruth(c sheet.FoundCell, text string) (value, error) {
	switch strings.ToLower(text) {
	case "yes", "y":
		return value{text: "Yes", yes: true}, nil
	case "no", "n":
		return value{text: "No"}, nil
	}
	return value{}, fmt.Errorf("found %q; Yes or No was expected", text)
}

// inDays tells whether a number can be a day that people type.
func inDays(n float64) bool {
	return n >= float64(sheet.FirstDay().Serial()) && n < float64(sheet.LastDay().Serial()+1)
}

func readDay(c sheet.FoundCell, text string) (value, error) {
	if c.Kind == sheet.FoundNumber {
		serial := int(c.Number)
		if !inDays(c.Number) {
			return value{}, fmt.Errorf("found the number %s; %s was expected", plainNumber(c), expected(day, ""))
		}
		d := serialDay(serial)
		return value{text: d.String(), day: d}, nil
	}
	d, err := unit.ParseDate(text)
	if err != nil {
		return value{}, fmt.Errorf("found %q; %s was expected", text, expected(day, ""))
	}
	return value{text: d.String(), day: d}, nil
}

// serialDay is the day of a spreadsheet's day number; day 60 and those before
// it, which spreadsheets count wrongly, lie outside what is read.
func serialDay(serial int) unit.Date {
	return unit.Date{Year: 1899, Month: 12, Day: 30}.AddDays(serial)
}

// readLength takes a length with its unit; of a distance also the bare number,
// but no unit of the tape measure, for "12 ft" to the site is a slip.
func readLength(c sheet.FoundCell, k kind, text string, sys unit.System) (value, error) {
	if k == distance {
		if n, err := readNumber(c, number, text, sys); err == nil {
			text = n.text + " " + sys.DistanceUnit()
		}
	}
	l, err := unit.ParseLength(text)
	if err != nil || k == distance && !strings.HasSuffix(text, "mi") && !strings.HasSuffix(text, "km") {
		return value{}, fmt.Errorf("found %q; %s was expected", text, expected(k, sys))
	}
	return value{text: text, length: l}, nil
}
