package source

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"

	"tentwright/catalog/money"
)

// textParser is what quantities and dates implement on their pointer.
type textParser interface{ ParseText(string) error }

var (
	parserType = reflect.TypeFor[textParser]()
	numberType = reflect.TypeFor[money.Number]()
	whereType  = reflect.TypeFor[Where]()
)

// table is what is known of a struct type: its fields by name, embedded ones
// included.
type table struct {
	fields map[string]*field
	order  []*field // as declared
	where  [][]int  // fields of type Where
	err    error    // the type cannot be decoded into
}

// field is one field of a struct and what its tags ask.
type field struct {
	index    []int
	number   int // in the order of the table
	name     string
	required bool
	want     string
	enum     []string
	min, max *money.Number
	long     int // most characters of a string
}

// names are the fields a mapping may have, as declared.
func (t *table) names() []string {
	names := make([]string, len(t.order))
	for i, f := range t.order {
		names[i] = f.name
	}
	return names
}

// table is made once per type and run.
func (d *decoder) table(t reflect.Type) *table {
	if have, ok := d.tables[t]; ok {
		return have
	}
	// No table outlives its run: there is nothing to lock and nothing global.
	made := &table{fields: map[string]*field{}}
	d.tables[t] = made
	made.err = made.add(t, nil)
	return made
}

// add takes in the fields of a struct that sits at the index path above.
func (t *table) add(owner reflect.Type, above []int) error {
	for i := range owner.NumField() {
		sf := owner.Field(i)
		// A fresh slice each, or siblings would share a tail.
		index := append(append([]int(nil), above...), i)
		tag, tagged := sf.Tag.Lookup("yaml")
		switch {
		case sf.Type == whereType:
			t.where = append(t.where, index)
		case tagged:
			f, err := newField(sf, tag, index)
			if err != nil {
				return fmt.Errorf("field %s of %s: %w", sf.Name, owner, err)
			}
			if t.fields[f.name] != nil {
				return fmt.Errorf("field %s of %s: a second field is named %q", sf.Name, owner, f.name)
			}
			f.number = len(t.order)
			t.fields[f.name], t.order = f, append(t.order, f)
		case sf.Anonymous && sf.Type.Kind() == reflect.Struct:
			if err := t.add(sf.Type, index); err != nil {
				return err
			}
		}
	}
	return nil
}

// newField reads the tags of a field.
func newField(sf reflect.StructField, tag string, index []int) (*field, error) {
	name, option, _ := strings.Cut(tag, ",")
	f := &field{index: index, name: name, required: option == "required", want: sf.Tag.Get("want"), long: maxText}
	switch {
	case !sf.IsExported():
		return nil, fmt.Errorf("it is not exported")
	case name == "" || option != "" && !f.required:
		return nil, fmt.Errorf("the yaml tag %q is not a name or a name and required", tag)
	}
	leaf := leafType(sf.Type)
	if leaf == nil {
		return nil, fmt.Errorf("its type %s cannot be decoded into", sf.Type)
	}
	if words, ok := sf.Tag.Lookup("enum"); ok {
		if leaf.Kind() != reflect.String {
			return nil, fmt.Errorf("an enum tag is for strings")
		}
		f.enum = strings.Split(words, "|")
	}
	var err error
	if most, ok := sf.Tag.Lookup("long"); ok {
		if f.long, err = strconv.Atoi(most); err != nil || leaf.Kind() != reflect.String {
			return nil, fmt.Errorf("a long tag is a whole number, for strings")
		}
	}
	if f.min, err = bound(sf.Tag, "min", leaf); err != nil {
		return nil, err
	}
	f.max, err = bound(sf.Tag, "max", leaf)
	return f, err
}

// bound reads a min or max tag; nil when there is none.
func bound(tag reflect.StructTag, key string, leaf reflect.Type) (*money.Number, error) {
	text, ok := tag.Lookup(key)
	if !ok {
		return nil, nil
	}
	if leaf != numberType && (!isInt(leaf) || reflect.PointerTo(leaf).Implements(parserType)) {
		return nil, fmt.Errorf("a %s tag is for int and money.Number", key)
	}
	n, err := money.Parse(text)
	return &n, err
}

// leafType is the type of the values in t, below pointers, slices and maps;
// nil when it is one that is never decoded into.
func leafType(t reflect.Type) reflect.Type {
	switch {
	case t == numberType || reflect.PointerTo(t).Implements(parserType):
		return t
	case t.Kind() == reflect.Pointer || t.Kind() == reflect.Slice:
		return leafType(t.Elem())
	case t.Kind() == reflect.Map && t.Key().Kind() == reflect.String:
		return leafType(t.Elem())
	case t.Kind() == reflect.String || t.Kind() == reflect.Bool || t.Kind() == reflect.Struct || isInt(t):
		return t
	}
	return nil
}

func isInt(t reflect.Type) bool { return reflect.Int <= t.Kind() && t.Kind() <= reflect.Int64 }
