package listing

import "slices"

// form is how the value of a field is written.
type form int

const (
	amount  form = iota // money, 0 or more
	count               // a whole number
	percent             // of a mark-up
	weight              // a mass with its unit
	line                // a text of one line
	prose               // a text that may have several
)

// kind is a kind of entries that a list can be of.
type kind struct {
	file, list string // of the shop; "" for entries that lie deeper
	one        string
	fields     []target
	add        []string // further fields that new entries may be given
}

// target is a field that a list may set.
type target struct {
	name string
	form form
}

// kinds by the word after into. The fields added to new entries are those of
// the catalog that are single values; contents and the like need a person.
var kinds = map[string]kind{
	"items": {"accessories.yaml", "items", "item", []target{
		{"name", line}, {"price", amount}, {"cost", amount}, {"describe", prose},
		{"sub_hire.cost", amount}, {"sub_hire.markup", percent}},
		[]string{"section", "unit", "free", "period", "tax", "breaks", "kind", "sub_hire.from"}},
	"parts": {"parts.yaml", "parts", "part", []target{
		{"name", line}, {"owned", count}, {"weight", weight}, {"replacement", amount}, {"bin", line}},
		[]string{"unit", "use", "pack.kind", "pack.holds", "pack.size", "pack.tare", "consumable", "tracked", "wets", "apart"}},
	"sizes": {"tents.yaml", "", "size", []target{
		{"price", amount}, {"cost", amount}, {"owned", count}}, nil},
}

// plain are the added fields that are no texts: numbers, and yes or no.
var plain = []string{"free", "pack.holds", "consumable", "tracked", "wets", "apart"}

// names of the fields that a list may set.
func (k kind) names() []string {
	var names []string
	for _, t := range k.fields {
		names = append(names, t.name)
	}
	return names
}

// form of a field that the kind has.
func (k kind) form(field string) form {
	i := slices.IndexFunc(k.fields, func(t target) bool { return t.name == field })
	if i < 0 {
		return line
	}
	return k.fields[i].form
}

// order is the fields of a new entry behind its id: the name, then what it is,
// then its figures.
func (k kind) order() []string {
	names := k.names()
	return slices.Concat(names[:1], k.add, names[1:])
}
