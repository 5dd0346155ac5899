package listing

import (
	"fmt"
	"strings"

	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/catalog/money"
	"tentwright/catalog/source"
	"tentwright/workbook/sheet"
)

// edit is a change of the shop's file and the cell that asks for it.
type edit struct {
	source.Edit
	cell  cell
	field string
}

// taking is the state of one run.
type taking struct {
	*Mapping
	kind    kind
	shop    *catalog.Catalog
	table   *Table
	columns columns
	readers []reader
	entries []entry
	byKey   map[string][]int // entries by id, or by name
	keys    []string
	first   map[string]int // row of an id that was seen
	result  Result
}

// Take holds every row of the list against the shop. The list of faults is
// about the table as a whole; faults of rows are in the result.
func Take(m *Mapping, t *Table, shop *catalog.Catalog) (*Result, diag.List) {
	at, fault := t.locate(m)
	if fault != nil {
		return nil, diag.List{*fault}
	}
	k := &taking{Mapping: m, kind: kinds[m.Into], shop: shop, table: t, columns: at,
		entries: entriesOf(shop, m.Into), byKey: map[string][]int{}, first: map[string]int{}}
	k.prepare()
	for i := at.heading + 1; i < len(t.rows); i++ {
		k.row(i)
	}
	if list := k.settle(); list.Err() != nil {
		return nil, list
	}
	return &k.result, nil
}

// prepare makes the readers of the columns and the keys of the shop.
func (k *taking) prepare() {
	places := k.shop.Currency().Minor
	if k.Places != nil {
		places = *k.Places
	}
	for i := range k.Fields {
		c := &k.Fields[i]
		k.readers = append(k.readers, reader{Mapping: k.Mapping, column: c, form: k.kind.form(c.Field), places: places})
	}
	for i := range k.entries {
		key := k.entries[i].id
		if k.KeyIs == "name" {
			key = tidy(k.entries[i].name)
		}
		if k.byKey[key] == nil {
			k.keys = append(k.keys, key)
		}
		k.byKey[key] = append(k.byKey[key], i)
	}
}

// row reads one row of the table, unless all its mapped cells are blank.
func (k *taking) row(at int) {
	key, size := k.table.at(at, k.columns.key), cell{}
	cells := make([]cell, len(k.columns.fields))
	figures := 0
	for i, col := range k.columns.fields {
		if cells[i] = k.table.at(at, col); !cells[i].blank() {
			figures++
		}
	}
	keyless := key.blank()
	if k.columns.size >= 0 {
		size = k.table.at(at, k.columns.size)
		keyless = keyless && size.blank()
	}
	if keyless && figures == 0 {
		return
	}
	r := Row{Pos: key.pos, at: at}
	switch fault := k.keyOf(&r, &key, &size); {
	case figures == 0 && k.SkipEmpty:
		r.State = Empty
	case fault != nil:
		r.refuse(*fault)
	default:
		k.cells(&r, cells)
		k.compare(&r, cells)
	}
	k.result.Rows = append(k.result.Rows, r)
}

// keyOf reads the key of a row.
func (k *taking) keyOf(r *Row, key, size *cell) *diag.Problem {
	parts := []*cell{key}
	if k.columns.size >= 0 {
		parts = append(parts, size)
	}
	var texts []string
	for i, c := range parts {
		text := tidy(c.Text)
		why := ""
		switch {
		case c.blank():
			why = fmt.Sprintf("is empty; the %s of the row was expected", k.keyWord(i))
		case c.Kind == sheet.FoundNumber && c.Day:
			why = fmt.Sprintf("holds a date; the %s of the row was expected", k.keyWord(i))
		case c.Kind == sheet.FoundNumber && c.Percent:
			why = fmt.Sprintf("holds %s; the %s of the row was expected", c.Shown(), k.keyWord(i))
		case c.Kind == sheet.FoundNumber:
			text = c.Exact().String()
		case c.Kind != sheet.FoundText:
			why = fmt.Sprintf("holds %q; the %s of the row was expected", c.Text, k.keyWord(i))
		}
		if why != "" {
			p := problem(c, "", NoKey, why, "")
			return &p
		}
		texts = append(texts, text)
	}
	joint := ":"
	if k.KeyIs == "name" {
		joint = " "
	}
	r.Key = strings.Join(texts, joint)
	return nil
}

// keyWord is what a part of the key is called in messages.
func (k *taking) keyWord(part int) string {
	word := "id"
	if k.KeyIs == "name" {
		word = "name"
	}
	switch {
	case k.columns.size < 0:
		return word
	case part == 0:
		return word + " of the family"
	}
	return "size"
}

// cells reads the mapped cells of a row.
func (k *taking) cells(r *Row, cells []cell) {
	r.values = map[string]value{}
	for i := range cells {
		c, field := &cells[i], k.Fields[i].Field
		if c.blank() {
			if !k.SkipEmpty {
				r.refuse(problem(c, field, diag.EmptyValue, "is empty; expected "+k.readers[i].wants(),
					"to leave such fields as they are, write skip_empty: yes into the mapping"))
			}
			continue
		}
		v, why, advice := k.readers[i].read(c)
		if why != "" {
			r.refuse(problem(c, field, diag.BadValue, why, advice))
			continue
		}
		r.values[field] = v
	}
}

// compare holds a row against its entry of the shop and against earlier rows.
func (k *taking) compare(r *Row, cells []cell) {
	found := k.byKey[r.Key]
	switch {
	case len(found) > 1:
		r.refuse(diag.Problem{Pos: r.Pos, Code: TwoNames,
			Message: fmt.Sprintf("the name %q is that of %q and of %q; key_is: id was expected", r.Key, k.entries[found[0]].id, k.entries[found[1]].id)})
		return
	case len(found) == 0 && k.Add == nil:
		r.refuse(k.unknown(r))
		return
	case len(found) == 0:
		r.ID = r.Key
		r.Near, _ = diag.Nearest(r.Key, k.keys)
	default:
		r.ID = k.entries[found[0]].id
	}
	switch again := k.repeated(r); {
	case again || r.State == Refused:
		return
	case len(found) == 0 && k.result.Count(Added) == mostAdded:
		r.refuse(diag.Problem{Pos: r.Pos, Code: diag.TooMany, Advice: "import the list in parts, or add such entries to " + k.kind.file,
			Message: fmt.Sprintf("is one more than the %d new entries that one list can add", mostAdded)})
	case len(found) == 0:
		r.State = Added
		for i, c := range k.Fields {
			if v, ok := r.values[c.Field]; ok {
				r.Changes = append(r.Changes, Change{Field: c.Field, Old: "none", New: v.shown, Pos: cells[i].pos})
			}
		}
	default:
		k.changes(r, &k.entries[found[0]], cells)
	}
}

// unknown is the fault of a row whose entry the shop does not have.
func (k *taking) unknown(r *Row) diag.Problem {
	word := k.kind.one
	if k.KeyIs == "name" {
		word += " of the name"
	}
	p := diag.Problem{Pos: r.Pos, Code: catalog.UnknownID,
		Message: fmt.Sprintf("the shop has no %s %q; one that %s has was expected", word, r.Key, k.kind.file), Advice: diag.DidYouMean(r.Key, k.keys)}
	if p.Advice == "" {
		p.Advice = "add it to " + k.kind.file + " first"
		if k.kind.add != nil {
			p.Advice += ", or give the mapping an add"
		}
	}
	return p
}

// repeated tells whether an earlier row is of the same entry; rows that differ
// are both refused, for nobody can tell which one is meant.
func (k *taking) repeated(r *Row) bool {
	at, again := k.first[r.ID]
	if !again {
		k.first[r.ID] = len(k.result.Rows)
		return false
	}
	earlier := &k.result.Rows[at]
	switch same := sameValues(earlier.values, r.values); {
	case same && earlier.State == Refused:
		r.refuse(diag.Problem{Pos: r.Pos, Code: Differs, Message: fmt.Sprintf("says the same as %s, which is refused", earlier.Pos)})
		return true
	case same && r.State != Refused:
		r.State = Repeated
		return true
	case same:
		return true
	}
	for _, pair := range [2][2]*Row{{earlier, r}, {r, earlier}} {
		pair[0].refuse(diag.Problem{Pos: pair[0].Pos, Code: Differs, Related: []diag.Pos{pair[1].Pos},
			Message: fmt.Sprintf("%s %q stands in the list twice with different values, here and at %s; one row was expected", k.kind.one, r.ID, pair[1].Pos)})
	}
	return true
}

// sameValues tells whether two rows set the same fields to the same values.
func sameValues(a, b map[string]value) bool {
	if len(a) != len(b) {
		return false
	}
	for field, v := range a {
		if w, ok := b[field]; !ok || v.same != w.same {
			return false
		}
	}
	return true
}

// changes gathers what a row changes of its entry.
func (k *taking) changes(r *Row, e *entry, cells []cell) {
	r.State = Unchanged
	for i, c := range k.Fields {
		v, ok := r.values[c.Field]
		if !ok {
			continue
		}
		was, can := e.values[c.Field]
		switch {
		case !can:
			r.refuse(problem(&cells[i], c.Field, NotThere, e.without[c.Field], "leave the cell empty"))
		case r.State == Refused || was.same == v.same:
		default:
			r.State = Taken
			r.Changes = append(r.Changes, Change{c.Field, was.old(), v.shown, cells[i].pos, farOff(k.kind.form(c.Field), was, v)})
			r.edits = append(r.edits, edit{source.Edit{Path: e.where.Path() + "." + c.Field, Value: v.shown, Text: v.text}, cells[i], c.Field})
		}
	}
}

// farOff tells an amount that is more than five times the old one, or less than
// a fifth of it: a decimal mark in the wrong place, or another unit. Common
// practice, no source.
func farOff(f form, was, now value) bool {
	if f != amount || !was.given || !now.given {
		return false
	}
	from, err := money.Parse(was.same)
	to, bad := money.Parse(now.same)
	five := money.Int(5)
	return err == nil && bad == nil && from.IsPositive() && (to.GreaterThan(from.Mul(five)) || to.Mul(five).LessThan(from))
}
