package cli

import (
	"strconv"
	"strings"

	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
)

// flagReader reads the values of flags and keeps the first fault.
type flagReader struct{ err error }

func (r *flagReader) bad(advice, format string, args ...any) {
	if r.err == nil {
		r.err = misuse(advice, format, args...)
	}
}

// missing reports a flag that a price by phone needs.
func (r *flagReader) missing(name, text, example string) bool {
	if text == "" {
		r.bad("e.g. --"+name+" "+example, "--%s is missing; a price by phone needs it", name)
	}
	return text == ""
}

// date reads a day; a day far in the past or future is no event.
func (r *flagReader) date(name, text string) unit.Date {
	if r.missing(name, text, "2027-06-12") {
		return unit.Date{}
	}
	d, err := unit.ParseDate(text)
	if err != nil {
		r.bad("", "--%s: %v", name, err)
	}
	return d
}

// whole reads a whole number from least to most.
func (r *flagReader) whole(name, text string, least, most int) int {
	if r.missing(name, text, "120") {
		return 0
	}
	n, err := strconv.Atoi(text)
	if err != nil || n < least || n > most {
		r.bad("", "--%s %q is not a whole number from %d to %d", name, text, least, most)
		return least
	}
	return n
}

// number reads a plain decimal number from 0 to a million.
func (r *flagReader) number(name, text string) money.Number {
	n, err := money.Parse(text)
	switch {
	case err != nil:
		r.bad("", "--%s: %v", name, err)
	case n.IsNegative() || n.GreaterThan(money.Int(1000000)):
		r.bad("", "--%s %q is not from 0 to 1000000", name, text)
	}
	return n
}

// distance reads miles or kilometres, whichever is given.
func (r *flagReader) distance(miles, km string) unit.Length {
	name, text, one := "miles", miles, "mi"
	switch {
	case miles != "" && km != "":
		r.bad("give one of them", "both --miles and --km are given")
	case km != "":
		name, text, one = "km", km, "km"
	case r.missing("miles", miles, "12"):
		return 0
	}
	r.number(name, text)
	l, err := unit.ParseLength(text + " " + one)
	if err != nil {
		r.bad("", "--%s: %v", name, err)
	}
	return l
}

// item reads ID=QUANTITY.
func (r *flagReader) item(text string) job.Line {
	id, quantity, ok := strings.Cut(text, "=")
	if !ok {
		r.bad("write ID=QUANTITY, e.g. --item chair-folding=120", "--item %q has no quantity", text)
		return job.Line{}
	}
	return job.Line{Item: id, Quantity: r.number("item", quantity)}
}

// site reads FACTOR=OPTION.
func (r *flagReader) site(text string) job.SiteChoice {
	factor, option, ok := strings.Cut(text, "=")
	if !ok || factor == "" || option == "" {
		r.bad("write FACTOR=OPTION, e.g. --site surface=gravel", "--site %q is not a factor and its option", text)
	}
	return job.SiteChoice{Factor: factor, Option: option}
}
