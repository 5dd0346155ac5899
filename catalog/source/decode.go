package source

import (
	"fmt"
	"reflect"

	"tentwright/catalog/diag"

	"gopkg.in/yaml.v3"
)

// value decodes n into v, a settable value of the field f or of an entry
// below it. at is the way to it.
func (d *decoder) value(n *yaml.Node, v reflect.Value, f *field, at ref) {
	if unusable(n) {
		return
	}
	t := v.Type()
	switch {
	case isNull(n):
		d.fault(n, at, diag.EmptyValue, "give a value, or leave the field out", "is empty; expected %s", f.expected(t))
	case t.Kind() == reflect.Pointer:
		// A pointer tells "not given" from zero; its bounds and words are the
		// field's.
		target := reflect.New(t.Elem())
		d.value(n, target.Elem(), f, at)
		v.Set(target)
	case t == numberType || v.CanAddr() && reflect.PointerTo(t).Implements(parserType):
		d.scalar(n, v, f, at)
	case t.Kind() == reflect.Struct:
		d.mapping(n, v, f, at)
	case t.Kind() == reflect.Slice:
		d.sequence(n, v, f, at)
	case t.Kind() == reflect.Map:
		d.names(n, v, f, at)
	default:
		d.scalar(n, v, f, at)
	}
}

// kindFault reports a node of another kind than the field's.
func (d *decoder) kindFault(n *yaml.Node, t reflect.Type, f *field, at ref) {
	d.fault(n, at, diag.WrongKind, "", "expected %s, found %s", f.expected(t), found(n))
}

// found says what a node is.
func found(n *yaml.Node) string {
	switch n.Kind {
	case yaml.SequenceNode:
		return "a list"
	case yaml.MappingNode:
		return "fields"
	}
	return fmt.Sprintf("%q", clipped(n.Value))
}

// expected is the field's own words for what it wants, or words for its type.
func (f *field) expected(t reflect.Type) string {
	if f.want != "" {
		return f.want
	}
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	switch {
	case len(f.enum) > 0 && t.Kind() == reflect.String:
		return "one of " + joined(f.enum)
	case t == numberType:
		return "a plain decimal number such as 2.5"
	case reflect.PointerTo(t).Implements(parserType):
		return "a single value"
	}
	switch t.Kind() {
	case reflect.String:
		return "a text"
	case reflect.Bool:
		return "yes or no"
	case reflect.Slice:
		return `a list, each entry after "- "`
	case reflect.Map:
		return `names, each with ": " and a value`
	case reflect.Struct:
		return `fields, each with ": " and a value`
	}
	return "a whole number such as 12"
}

// mapping decodes fields into a struct.
func (d *decoder) mapping(n *yaml.Node, v reflect.Value, f *field, at ref) {
	if n.Kind != yaml.MappingNode {
		d.kindFault(n, v.Type(), f, at)
		return
	}
	t := d.table(v.Type())
	if t.err != nil {
		d.fault(n, at, diag.BadTarget, "", "%v", t.err)
		return
	}
	here := d.newPlace(n, at)
	for _, index := range t.where {
		v.FieldByIndex(index).Set(reflect.ValueOf(Where{here}))
	}
	// The key of each field given so far. A slice by number is cheaper than a
	// map for the hundreds of structs of a file.
	seen := make([]*yaml.Node, len(t.order))
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, val := n.Content[i], n.Content[i+1]
		name, ok := d.key(key, here)
		if !ok {
			continue
		}
		known := t.fields[name]
		if known == nil {
			d.fault(key, here.ref, diag.UnknownField, unknownAdvice(n, name, t), "unknown field %q", clipped(name))
			continue
		}
		if first := seen[known.number]; first != nil {
			d.repeated(key, first, here)
			continue
		}
		seen[known.number] = key
		d.value(located(key, val), v.FieldByIndex(known.index), known, ref{up: here, name: name})
	}
	d.missing(n, v, t, seen, here)
}

// unknownAdvice is advice for a field that its mapping does not have. Between
// braces a comma ends a value, so the second half of 3,200 looks like a field.
func unknownAdvice(n *yaml.Node, name string, t *table) string {
	if n.Style&yaml.FlowStyle != 0 && name[0] >= '0' && name[0] <= '9' {
		return "a number is written without commas, e.g. 3200 or 22.5"
	}
	return diag.DidYouMean(name, t.names())
}

// located is val, moved to its key when there is nothing behind the colon:
// the YAML reader puts nothing at the next thing it finds.
func located(key, val *yaml.Node) *yaml.Node {
	if at := shown(key, val); at != val {
		// A copy: the tree is kept by Where and must stay as it was read.
		moved := *val
		moved.Line, moved.Column = at.Line, at.Column
		return &moved
	}
	return val
}

// key is the text of a key. What cannot be one is reported here or was by
// allowed.
func (d *decoder) key(key *yaml.Node, here *place) (string, bool) {
	switch {
	case unusable(key) || key.Tag == "!!merge":
		return "", false
	case key.Kind != yaml.ScalarNode:
		d.fault(key, here.ref, diag.WrongKind, "", "expected a name, found %s", found(key))
		return "", false
	case isNull(key) || key.Value == "":
		d.fault(key, here.ref, diag.WrongKind, "", "expected a name before the colon")
		return "", false
	}
	return key.Value, true
}

// repeated reports a second field or name; the first one counts.
func (d *decoder) repeated(key, first *yaml.Node, here *place) {
	d.report(diag.Problem{
		Pos: d.pos(key), Path: here.path(), Code: diag.RepeatedField,
		Message: fmt.Sprintf("%q is given twice", clipped(key.Value)), Related: []diag.Pos{d.pos(first)},
	})
}

// missing reports required fields that were not given.
func (d *decoder) missing(n *yaml.Node, v reflect.Value, t *table, seen []*yaml.Node, here *place) {
	for i, f := range t.order {
		if f.required && seen[i] == nil {
			d.fault(n, here.ref, diag.MissingField, "", "field %q is missing; expected %s", f.name, f.expected(v.Type().FieldByIndex(f.index).Type))
		}
	}
}

// sequence decodes a list into a slice; entries with a fault are left zero.
func (d *decoder) sequence(n *yaml.Node, v reflect.Value, f *field, at ref) {
	if n.Kind != yaml.SequenceNode {
		d.kindFault(n, v.Type(), f, at)
		return
	}
	if f.required && len(n.Content) == 0 {
		d.fault(n, at, diag.EmptyValue, "", "is empty; expected %s", f.expected(v.Type()))
		return
	}
	here := d.newPlace(n, at)
	list := reflect.MakeSlice(v.Type(), len(n.Content), len(n.Content))
	for i, c := range n.Content {
		d.value(c, list.Index(i), f, ref{up: here, index: i})
	}
	v.Set(list)
}

// names decodes a mapping with free names into a map.
func (d *decoder) names(n *yaml.Node, v reflect.Value, f *field, at ref) {
	if n.Kind != yaml.MappingNode {
		d.kindFault(n, v.Type(), f, at)
		return
	}
	here := d.newPlace(n, at)
	t := v.Type()
	all := reflect.MakeMapWithSize(t, len(n.Content)/2)
	first := make(map[string]*yaml.Node, len(n.Content)/2)
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, val := n.Content[i], n.Content[i+1]
		name, ok := d.key(key, here)
		if !ok {
			continue
		}
		if first[name] != nil {
			d.repeated(key, first[name], here)
			continue
		}
		first[name] = key
		entry := reflect.New(t.Elem()).Elem()
		d.value(located(key, val), entry, f, ref{up: here, name: name})
		// Values of a map cannot be set in place, so each is made on its own.
		all.SetMapIndex(reflect.ValueOf(name).Convert(t.Key()), entry)
	}
	v.Set(all)
}
