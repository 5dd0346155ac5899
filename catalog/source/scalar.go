package source

import (
	"reflect"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"tentwright/catalog/diag"
	"tentwright/catalog/money"

	"gopkg.in/yaml.v3"
)

// scalar decodes a single value from its own text, so that nothing is lost or
// reread as something else on the way.
func (d *decoder) scalar(n *yaml.Node, v reflect.Value, f *field, at ref) {
	t := v.Type()
	if n.Kind != yaml.ScalarNode {
		d.kindFault(n, t, f, at)
		return
	}
	if parser, ok := v.Addr().Interface().(textParser); ok && t != numberType {
		if err := parser.ParseText(n.Value); err != nil {
			// A parser may have set part of a value before it failed.
			v.SetZero()
			d.fault(n, at, diag.BadValue, f.hint(), "%v", err)
		}
		return
	}
	if t.Kind() == reflect.String {
		d.text(n, v, f, at)
		return
	}
	// 12 and "12" differ in YAML; the one with quotes is a text.
	if n.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle|yaml.LiteralStyle|yaml.FoldedStyle) != 0 {
		d.fault(n, at, diag.WrongKind, "take the quotes off", "expected %s, found the text %q", f.expected(t), clipped(n.Value))
		return
	}
	switch {
	case t == numberType:
		d.decimal(n, v, f, at)
	case t.Kind() == reflect.Bool:
		d.yesNo(n, v, f, at)
	default:
		d.whole(n, v, f, at)
	}
}

// hint passes a field's own words on as advice, when the error comes from the
// type's parser and has words of its own.
func (f *field) hint() string {
	if f.want == "" {
		return ""
	}
	return "expected " + f.want
}

// text decodes a string: the scalar's text, whatever it looks like.
func (d *decoder) text(n *yaml.Node, v reflect.Value, f *field, at ref) {
	switch {
	case f.required && strings.TrimSpace(n.Value) == "":
		d.fault(n, at, diag.EmptyValue, "", "is empty; expected %s", f.expected(v.Type()))
	case strings.ContainsFunc(n.Value, hidden):
		r := []rune(n.Value[strings.IndexFunc(n.Value, hidden):])[0]
		d.fault(n, at, diag.BadValue, "leave the character out", "holds the character %U, which cannot be seen and can mislead; a text of visible characters was expected", r)
	case len(f.enum) > 0 && !slices.Contains(f.enum, n.Value):
		advice := ""
		if near, ok := diag.Nearest(n.Value, f.enum); ok {
			advice = "did you mean " + strconv.Quote(near) + "?"
		}
		d.fault(n, at, diag.NotOneOf, advice, "%q is not one of %s", clipped(n.Value), joined(f.enum))
	case utf8.RuneCountInString(n.Value) > f.long:
		d.fault(n, at, diag.TooLongText, "", "has %d characters; at most %d were expected", utf8.RuneCountInString(n.Value), f.long)
	default:
		v.SetString(n.Value)
	}
}

// hidden tells characters that steer a screen or a printer, and those that turn
// the order of the text around them; only line ends and tabs are of use.
func hidden(r rune) bool {
	return unicode.IsControl(r) && r != '\n' && r != '\t' || r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069
}

// joined is the words of an enum as a message lists them.
func joined(words []string) string { return strings.Join(words, ", ") }

// yesNo decodes a bool from the four words for it.
func (d *decoder) yesNo(n *yaml.Node, v reflect.Value, f *field, at ref) {
	switch n.Value {
	case "yes", "true":
		v.SetBool(true)
	case "no", "false":
		v.SetBool(false)
	default:
		// "on", "True" and the like mean different things to different YAML
		// readers, so only these four are taken.
		d.kindFault(n, v.Type(), f, at)
	}
}

// whole decodes an int from plain digits.
func (d *decoder) whole(n *yaml.Node, v reflect.Value, f *field, at ref) {
	// By hand: strconv would take "+1", and YAML "0x10", "0o7" and "1_000".
	digits := strings.TrimPrefix(n.Value, "-")
	if digits == "" || strings.Trim(digits, "0123456789") != "" {
		d.kindFault(n, v.Type(), f, at)
		return
	}
	i, err := strconv.ParseInt(n.Value, 10, 64)
	if err != nil || v.OverflowInt(i) {
		d.fault(n, at, diag.OutOfRange, "", "%s is too large", clipped(n.Value))
		return
	}
	if (f.min != nil || f.max != nil) && !d.inRange(n, money.Int(int(i)), f, at) {
		return
	}
	v.SetInt(i)
}

// decimal decodes a money.Number from the scalar's text.
func (d *decoder) decimal(n *yaml.Node, v reflect.Value, f *field, at ref) {
	x, err := money.Parse(n.Value)
	if err != nil {
		d.fault(n, at, diag.BadValue, f.hint(), "%v", err)
		return
	}
	if d.inRange(n, x, f, at) {
		v.Set(reflect.ValueOf(x))
	}
}

// inRange checks a number against the field's bounds and reports it when it
// is outside.
func (d *decoder) inRange(n *yaml.Node, x money.Number, f *field, at ref) bool {
	switch {
	case f.min != nil && x.LessThan(*f.min):
		d.fault(n, at, diag.OutOfRange, f.hint(), "%s is below the least value, %s", clipped(n.Value), f.min)
	case f.max != nil && x.GreaterThan(*f.max):
		d.fault(n, at, diag.OutOfRange, f.hint(), "%s is above the largest value, %s", clipped(n.Value), f.max)
	default:
		return true
	}
	return false
}
