package listing

import (
	"fmt"
	"slices"
	"strings"

	"tentwright/catalog/diag"
	"tentwright/catalog/source"
)

// Mapping says which columns of a list are which fields of the shop, and how
// its numbers are written. [ReadMapping] makes one.
type Mapping struct {
	Where     source.Where
	Into      string            `yaml:"into,required" enum:"items|parts|sizes"`
	Sheet     string            `yaml:"sheet"` // of a workbook; empty: the first
	CSV       *Text             `yaml:"csv"`   // needed for a list as text
	Key       string            `yaml:"key,required"`
	KeyIs     string            `yaml:"key_is" enum:"id|name"`
	KeySize   string            `yaml:"key_size"` // of sizes, when the family stands in a column of its own
	Fields    []Column          `yaml:"fields,required"`
	Decimal   string            `yaml:"decimal,required" enum:"point|comma"`
	Thousands string            `yaml:"thousands" enum:"none|comma|point|space|apostrophe"`
	Currency  string            `yaml:"currency" long:"8"`      // sign or letters to leave out of amounts
	Places    *int              `yaml:"places" min:"0" max:"6"` // of amounts; nil: the currency's
	Round     bool              `yaml:"round"`
	SkipEmpty bool              `yaml:"skip_empty"`
	Add       map[string]string `yaml:"add"`
}

// Column maps a heading of the list to a field of the shop.
type Column struct {
	Where   source.Where
	Heading string `yaml:"heading,required"`
	Field   string `yaml:"field,required"`
	Unit    string `yaml:"unit" enum:"lb|oz|g|kg|t"`        // of weights without one
	Written string `yaml:"written" enum:"percent|fraction"` // 25 or 0.25 for a quarter
}

// Text is the dialect of a list in CSV.
type Text struct {
	Where     source.Where
	Separator string `yaml:"separator,required" enum:"comma|semicolon|tab"`
	Encoding  string `yaml:"encoding,required" enum:"utf-8|windows-1252"`
}

// ReadMapping reads a mapping from the contents of file; nil when it has
// faults.
func ReadMapping(file string, data []byte) (*Mapping, diag.List) {
	m := &Mapping{}
	list := source.Decode(file, data, m)
	form := source.NewForm(list)
	if form.FieldsOnly() {
		k := &mappingCheck{Mapping: m, kind: kinds[m.Into], form: form}
		k.run()
		list = form.With(k.found)
	}
	if list.Err() != nil {
		return nil, list
	}
	return m, list
}

// mappingCheck gathers what the fields of a mapping have against each other.
type mappingCheck struct {
	*Mapping
	kind  kind
	form  *source.Form
	found diag.List
}

// run checks the lines of the mapping one against the other.
func (k *mappingCheck) run() {
	mark := map[string]string{"point": ".", "comma": ",", "space": " ", "apostrophe": "'"}
	switch {
	case k.Decimal != "" && k.Decimal == k.Thousands:
		k.fault("thousands", "the %s cannot part both decimals and thousands; two different marks were expected", k.Decimal)
	case strings.ContainsAny(k.Currency, "0123456789-+%"):
		k.fault("currency", `%q cannot be told from a number; a sign or letters such as "$" or "EUR" were expected`, k.Currency)
	case k.Currency != "" && (mark[k.Decimal] == k.Currency || mark[k.Thousands] == k.Currency):
		k.fault("currency", "%q parts digits already; a sign or letters were expected", k.Currency)
	}
	if k.Into == "" {
		return
	}
	if k.KeySize != "" && k.Into != "sizes" {
		k.fault("key_size", "key_size is for sizes; %s have one key", k.Into)
	}
	k.columns()
	k.additions()
}

// fault is one of a line at the top of the mapping.
func (k *mappingCheck) fault(field, format string, args ...any) {
	k.found.Addf(k.Where.Of(field), BadMapping, format, args...)
}

// columns checks that each column and each field is named once, and that the
// fields are among those of the kind.
func (k *mappingCheck) columns() {
	headings := map[string]bool{folded(k.Key): true}
	if k.KeySize != "" {
		if headings[folded(k.KeySize)] {
			k.fault("key_size", "heading %q is that of the key already; another column was expected", k.KeySize)
		}
		headings[folded(k.KeySize)] = true
	}
	fields := map[string]bool{}
	for i := range k.Fields {
		c := &k.Fields[i]
		if c.Heading != "" && headings[folded(c.Heading)] {
			k.found.Addf(c.Where.Of("heading"), BadMapping, "heading %q is mapped already; each column once was expected", c.Heading)
		}
		headings[folded(c.Heading)] = true
		k.column(c, fields[c.Field])
		fields[c.Field] = true
	}
}

// column checks one column by what its field can hold.
func (k *mappingCheck) column(c *Column, again bool) {
	switch names := k.kind.names(); {
	case c.Field == "":
		return
	case !slices.Contains(names, c.Field):
		k.found.Add(diag.Problem{Pos: c.Where.Of("field"), Code: diag.NotOneOf, Advice: diag.DidYouMean(c.Field, names),
			Message: fmt.Sprintf("%q is not a field that a list of %s can set; one of %s was expected", c.Field, k.Into, strings.Join(names, ", "))})
		return
	case again:
		k.found.Addf(c.Where.Of("field"), BadMapping, "field %q is mapped already; each field once was expected", c.Field)
	}
	switch f := k.kind.form(c.Field); {
	case c.Unit != "" && f != weight:
		k.found.Addf(c.Where.Of("unit"), BadMapping, "unit is for weights; %s has none", c.Field)
	case c.Written != "" && f != percent:
		k.found.Addf(c.Where.Of("written"), BadMapping, "written is for percentages; %s is none", c.Field)
	case c.Written == "" && f == percent && k.form.Sound(c.Where, "written"):
		k.found.Addf(c.Where.Pos(), BadMapping,
			"it is not said how a quarter is written; written: percent (25) or written: fraction (0.25, as a cell shown in percent holds it) was expected")
	}
}

// additions checks what new entries are given.
func (k *mappingCheck) additions() {
	if k.Add == nil {
		return
	}
	switch {
	case k.kind.add == nil:
		k.fault("add", "a new size needs its frame and top, which no list has; write it into %s by hand", k.kind.file)
		return
	case k.KeyIs == "name":
		k.fault("add", "a new entry needs an id, and the key is a name; key_is: id was expected")
	}
	known := append(k.kind.names(), k.kind.add...)
	for _, name := range sortedKeys(k.Add) {
		if !slices.Contains(known, name) {
			k.found.Add(diag.Problem{Pos: k.Where.Of("add." + name), Code: diag.UnknownField, Advice: diag.DidYouMean(name, known),
				Message: fmt.Sprintf("%q is not a field that new %s can be given; expected among %s", name, k.Into, strings.Join(known, ", "))})
		}
	}
}
