package listing

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"tentwright/catalog/diag"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/workbook/sheet"
)

// value is what a field holds or shall hold.
type value struct {
	shown string // to people, and into the file
	same  string // equal for equal values
	given bool
	text  bool // must not be read as a number when it looks like one
}

// mostFigure bounds numbers of cells; a price above it is no price.
const mostFigure = 1e12

// finest is the most decimals of a percentage.
const finest = 4

// reader reads the cells of one column.
type reader struct {
	*Mapping
	column *Column
	form   form
	places int // of amounts
}

// read is what a cell says for the field, or why it says nothing of use.
func (r *reader) read(c *cell) (value, string, string) {
	switch {
	case c.Kind == sheet.FoundEmpty:
		return value{}, "holds a formula without a result; a value was expected", "open the list in a spreadsheet program and save it"
	case c.Kind == sheet.FoundError:
		return value{}, fmt.Sprintf("holds the error %q; a value was expected", c.Text), ""
	case c.Kind == sheet.FoundBool:
		return value{}, "holds yes or no; expected " + r.wants(), ""
	case c.Kind == sheet.FoundNumber && c.Day:
		return value{}, "holds a date; expected " + r.wants(), "spreadsheets turn figures such as 3-12 into dates: give the column a format of numbers or text"
	case c.Kind == sheet.FoundNumber && c.Percent && r.form != percent:
		return value{}, fmt.Sprintf("found %s; expected %s", c.Shown(), r.wants()), "give the column a format of plain numbers and type it again"
	}
	switch r.form {
	case line, prose:
		return r.words(c)
	case weight:
		return r.mass(c)
	}
	return r.figure(c)
}

// wants is what the column expects.
func (r *reader) wants() string {
	switch r.form {
	case line, prose:
		return "a text"
	case weight:
		return `a weight such as "12.5 lb"`
	case count:
		return "a whole number"
	}
	return r.expected()
}

// words is a text.
func (r *reader) words(c *cell) (value, string, string) {
	text := strings.TrimSpace(strings.ReplaceAll(c.Text, "\r\n", "\n"))
	if c.Kind == sheet.FoundNumber {
		text = c.Exact().String()
	}
	if r.form == line {
		if strings.Contains(text, "\n") {
			return value{}, fmt.Sprintf("%q has several lines; one was expected", text), ""
		}
		text = tidy(text)
	}
	return value{shown: text, same: text, given: true, text: true}, "", ""
}

// figure is an amount, a count or a percentage.
func (r *reader) figure(c *cell) (value, string, string) {
	n, shift := money.Zero, 0
	text := tidy(c.Text)
	if r.form == percent && r.column.Written == "fraction" {
		shift = 2
	}
	switch {
	case c.Kind == sheet.FoundNumber && math.Abs(c.Number) > mostFigure:
		return value{}, fmt.Sprintf("%s is too large", text), ""
	case c.Kind == sheet.FoundNumber:
		n = c.Exact()
		if c.Percent {
			shift, text = 2, c.Shown() // the cell itself says how it is written
		}
	default:
		bare := text
		switch sign, signed := strings.CutSuffix(text, "%"); {
		case r.form == percent && signed:
			bare, shift = strings.TrimSpace(sign), 0 // the sign says how it is written
		case r.form == amount:
			bare = r.bare(text)
		}
		var ok bool
		if n, ok = r.number(bare); !ok {
			return value{}, fmt.Sprintf("%q does not fit; expected %s", text, r.expected()), r.numberAdvice(text)
		}
	}
	return r.fit(n.Shift(int32(shift)), text)
}

// fit holds a number against what the field can take.
func (r *reader) fit(n money.Number, text string) (value, string, string) {
	places, round := r.places, r.Round
	if r.form == percent {
		places, round = finest, false
	}
	switch whole := n.IsInteger(); {
	case n.IsNegative():
		return value{}, fmt.Sprintf("%q is negative; 0 or more was expected", text), ""
	case r.form == count && !whole:
		return value{}, fmt.Sprintf("%q is not whole; a whole number was expected", text), ""
	case r.form == count || n.Equal(money.Round(n, places)):
	case round:
		n = money.Round(n, places)
	default:
		return value{}, fmt.Sprintf("%q has more than %d decimals", text, places),
			"if the mark is one between thousands, say so in the mapping; else write places: N there, and round: yes to have it rounded"
	}
	return value{shown: n.String(), same: n.String(), given: true}, "", ""
}

// mass is a weight; its unit stands in the cell or in the mapping.
func (r *reader) mass(c *cell) (value, string, string) {
	text := tidy(c.Text)
	var n money.Number
	word := r.column.Unit
	if c.Kind == sheet.FoundNumber {
		n = c.Exact()
	} else {
		at := strings.IndexFunc(text+"a", func(r rune) bool { return strings.ContainsRune("abcdefghijklmnopqrstuvwxyz", r|0x20) })
		if at < len(text) {
			word = text[at:]
		}
		var ok bool
		if n, ok = r.number(strings.TrimSpace(text[:at])); !ok {
			return value{}, fmt.Sprintf("%q does not fit; expected a weight, as %s, and its unit", text, r.expected()), r.numberAdvice(text)
		}
	}
	if word == "" {
		return value{}, fmt.Sprintf("%q has no unit; a weight such as %q was expected", text, text+" lb"), "write unit: lb or another into the mapping, beside the heading"
	}
	shown := n.String() + " " + word
	m, err := unit.ParseMass(shown)
	if err != nil {
		return value{}, err.Error(), ""
	}
	return value{shown: shown, same: massKey(m), given: true}, "", ""
}

// massKey is equal for equal masses.
func massKey(m unit.Mass) string { return strconv.FormatInt(int64(m), 10) }

// problem is a fault of one cell.
func problem(c *cell, field, code, message, advice string) diag.Problem {
	return diag.Problem{Pos: c.pos, Path: field, Code: code, Message: message, Advice: advice}
}
