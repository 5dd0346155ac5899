package intake

import (
	"math"
	"strings"

	"tentwright/catalog/diag"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
	"tentwright/workbook/sheet"
)

// wanted is what a cell that stands alone should hold.
func wanted(d *field) string {
	if d.list != "" {
		return "one of the list"
	}
	switch d.to(new(job.Job)).(type) {
	case *unit.Date:
		return "a day such as 2026-07-04"
	case *unit.Length:
		return "a distance such as 12"
	case **unit.Temperature:
		return "a temperature such as 20"
	case *money.Number:
		return "a number such as 12"
	}
	return "a text"
}

// value reads a filled cell to where it goes.
func (r *reader) value(d *field, s spot) {
	if d.list != "" {
		*d.to(r.j).(*string) = r.choice(s, d.of(r.c), "one of the list")
		return
	}
	switch to := d.to(r.j).(type) {
	case *string:
		*to = r.words(s)
		if d.path == "customer.email" && *to != "" && !strings.Contains(*to, "@") {
			r.warn(s, diag.BadValue, "", "%q has no @; an address such as office@larkmere.example was expected", sheet.Short(*to, 60))
		}
	case *[]string:
		*to = append(*to, r.words(s))
	case *int:
		*to = r.whole(s, d.least)
	case *money.Number:
		if d.plain {
			*to, _ = r.number(s, "12")
			return
		}
		*to = r.percent(s)
	case *unit.Date:
		*to = r.day(s)
	case *unit.Length:
		*to = measure(r, s, "length", d.unit, unit.ParseLength)
	case *unit.Speed:
		*to = measure(r, s, "speed", d.unit, unit.ParseSpeed)
	case **unit.Temperature:
		degrees := measure(r, s, "temperature", d.unit, unit.ParseTemperature)
		*to = &degrees
	case *bool:
		*to = r.choice(s, yesNo(), "Yes or No") == "yes"
	}
}

// at is what a cell holds. Words of blanks alone are nothing.
func (r *reader) at(s spot) sheet.FoundCell {
	c := s.sheet.At(s.row, s.col)
	if c.Kind == sheet.FoundText && strings.TrimSpace(c.Text) == "" {
		return sheet.FoundCell{}
	}
	return c
}

// blank tells whether a cell holds nothing. A cell under a merge holds nothing
// either, but may have lost what was typed.
func (r *reader) blank(s spot) bool {
	return r.at(s).Kind == sheet.FoundEmpty && !r.merged(s)
}

// merged tells whether a cell lies under the first one of a merge.
func (r *reader) merged(s spot) bool {
	for _, m := range s.sheet.Merges {
		if s.row >= m.R1 && s.row <= m.R2 && s.col >= m.C1 && s.col <= m.C2 && (s.row != m.R1 || s.col != m.C1) {
			return true
		}
	}
	return false
}

// take is a filled cell that can be read; its place is kept for later faults.
func (r *reader) take(s spot) (sheet.FoundCell, bool) {
	r.cells[s.path] = r.pos(s.sheet.Name, s.row, s.col)
	if r.merged(s) {
		r.fault(s, MergedCell, "take the merge away and fill in each cell", "the cell is merged with others, so that it cannot hold a value of its own; a cell by itself was expected")
		return sheet.FoundCell{}, false
	}
	c := r.at(s)
	if c.Kind == sheet.FoundError {
		r.fault(s, ErrorCell, "type the value itself", "the cell shows the error %s; a value was expected", c.Text)
		return c, false
	}
	return c, c.Kind != sheet.FoundEmpty
}

// shown is what a cell holds as people see it; a truth, which programs make of a
// typed Yes, is Yes or No.
func shown(c sheet.FoundCell) string {
	switch {
	case c.Kind == sheet.FoundNumber:
		return c.Shown()
	case c.Kind == sheet.FoundBool && c.Number != 0:
		return "Yes"
	case c.Kind == sheet.FoundBool:
		return "No"
	}
	return strings.TrimSpace(c.Text)
}

// words reads a text; a number typed for one, such as a phone number, is its
// digits.
func (r *reader) words(s spot) string {
	c, ok := r.take(s)
	switch {
	case !ok:
		return ""
	case c.Kind == sheet.FoundBool:
		r.fault(s, diag.WrongKind, "", "the cell holds %s; a text was expected", shown(c))
		return ""
	case c.Kind == sheet.FoundNumber && c.Day:
		r.fault(s, diag.WrongKind, "put an apostrophe before it to keep it as typed", "the cell holds a date, day number %s; a text was expected", shown(c))
		return ""
	}
	return sheet.Clean(shown(c))
}

// number reads a plain number, whether the sheet holds it as number or as text.
func (r *reader) number(s spot, example string) (money.Number, bool) {
	n, signed, ok := r.figure(s, example)
	if ok && signed {
		r.fault(s, diag.BadValue, "", "%s%% is no plain number; a number such as %s was expected", n, example)
		return money.Zero, false
	}
	return n, ok
}

// figure reads a number, and tells whether it stands in a cell that shows
// percent: 20% is 20 then, though the sheet keeps 0.2.
func (r *reader) figure(s spot, example string) (n money.Number, signed, ok bool) {
	c, ok := r.take(s)
	if !ok {
		return money.Zero, false, false
	}
	switch c.Kind {
	case sheet.FoundNumber:
		if c.Day {
			r.fault(s, diag.WrongKind, "the program took what was typed for a date; type it again", "the cell holds a date, day number %s; a number such as %s was expected", shown(c), example)
			return money.Zero, false, false
		}
		if c.Percent {
			return c.Exact().Shift(2), true, true
		}
		return c.Exact(), false, true
	case sheet.FoundText:
		text := strings.TrimSpace(c.Text)
		if n, err := money.Parse(text); err == nil {
			return n, false, true
		}
		advice := ""
		if strings.Count(text, ",") == 1 && strings.Trim(text, "0123456789,") == "" {
			advice = "write a point for decimals and nothing between thousands"
		}
		r.fault(s, diag.BadValue, advice, "%q is no number; a number such as %s was expected", sheet.Short(text, 60), example)
		return money.Zero, false, false
	}
	r.fault(s, diag.WrongKind, "", "the cell holds %s; a number such as %s was expected", shown(c), example)
	return money.Zero, false, false
}

// whole reads a count; the job's own limits hold above the least.
func (r *reader) whole(s spot, least int) int {
	n, ok := r.number(s, "120")
	switch {
	case !ok:
		return 0
	case !n.IsInteger():
		r.fault(s, diag.BadValue, "", "%s is no whole number; a whole number such as 120 was expected", n)
		return 0
	case n.LessThan(money.Int(least)):
		r.fault(s, diag.OutOfRange, "leave the cell empty for the usual", "%s is too small; at least %d was expected", n, least)
		return 0
	case n.GreaterThan(money.Int(math.MaxInt32)):
		r.fault(s, diag.OutOfRange, "", "%s is too large; a whole number such as 120 was expected", n)
		return 0
	}
	return int(n.IntPart())
}

// percent reads a percentage, with its sign or without. Below one it is read as
// it stands, but a person may have meant a part of one.
func (r *reader) percent(s spot) money.Number {
	n, signed, ok := r.figure(s, "10")
	if ok && !signed && n.IsPositive() && n.LessThan(money.One) {
		r.warn(s, diag.OutOfRange, "type 10 for ten percent, without a sign", "%s is read as %s percent", n, n)
	}
	if !ok {
		return money.Zero
	}
	return n
}

// day reads a date cell, or a date that was typed as text in the one form that
// means the same everywhere.
func (r *reader) day(s spot) unit.Date {
	const expected = "a day such as 2026-07-04 (year-month-day) was expected"
	c, ok := r.take(s)
	if !ok {
		return unit.Date{}
	}
	var d unit.Date
	switch c.Kind {
	case sheet.FoundNumber:
		n := c.Exact()
		if !n.IsInteger() || n.LessThan(money.Int(61)) || n.GreaterThan(money.Int(lastSerial)) {
			r.fault(s, diag.BadValue, "", "%s is no day; %s", shown(c), expected)
			return d
		}
		// The sheet's day 60 never was; above it the count is one higher.
		d = unit.Date{Year: 1899, Month: 12, Day: 30}.AddDays(int(n.IntPart()))
	case sheet.FoundText:
		var err error
		if d, err = unit.ParseDate(strings.TrimSpace(c.Text)); err != nil {
			r.fault(s, diag.BadValue, "type it into the date cell as 2026-07-04; nobody can tell day and month apart in other forms", "%q is a text and not a day that can be read; %s", sheet.Short(shown(c), 60), expected)
			return d
		}
	default:
		r.fault(s, diag.WrongKind, "", "the cell holds %s; %s", shown(c), expected)
		return d
	}
	if d.Before(sheet.FirstDay()) || sheet.LastDay().Before(d) {
		r.fault(s, diag.OutOfRange, "", "%s is not between %s and %s; %s", d, sheet.FirstDay(), sheet.LastDay(), expected)
		return unit.Date{}
	}
	return d
}

// lastSerial is the number of the last day that a sheet knows, 31 December 9999.
const lastSerial = 2958465

// measure reads a quantity of a kind with its unit; a bare number is in the unit
// that the label names.
func measure[T any](r *reader, s spot, kind, bare string, parse func(string) (T, error)) (none T) {
	c, ok := r.take(s)
	if !ok {
		return none
	}
	text := shown(c)
	if c.Kind == sheet.FoundNumber && c.Day || c.Kind == sheet.FoundBool {
		r.fault(s, diag.WrongKind, "", "the cell holds no %s; a number such as 12, or 12 %s, was expected", kind, bare)
		return none
	}
	if strings.Trim(text, "0123456789.-") == "" {
		text += " " + bare
	}
	q, err := parse(text)
	if err != nil {
		r.fault(s, diag.BadValue, "", "%q is no %s that can be read; a number such as 12, or 12 %s, was expected", sheet.Short(shown(c), 60), kind, bare)
		return none
	}
	return q
}

// choice reads the entry of a drop-down; "" when it is none.
func (r *reader) choice(s spot, list choices, expected string) string {
	c, ok := r.take(s)
	if !ok {
		return ""
	}
	text := shown(c)
	if id, ok := list.id(text); ok {
		return id
	}
	if len(list) == 0 {
		return text // the shop has no list; the job's check decides
	}
	r.fault(s, diag.NotOneOf, diag.DidYouMean(text, list.texts()), "%q is not in the list; %s was expected", sheet.Short(text, 60), expected)
	return ""
}
