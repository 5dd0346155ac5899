package listing

import (
	"slices"
	"strings"

	"tentwright/catalog/diag"
	"tentwright/catalog/source"
)

// mostAdded is how many new entries a list may bring: each is written and read
// again by itself, so more would be waited for too long.
const mostAdded = 400

// append adds the new entries to the file. Only when the shop is not sound with
// all of them are they tried one by one.
func (k *taking) append(data []byte) ([]byte, diag.List) {
	if k.result.Count(Added) == 0 {
		return data, nil
	}
	all, list := data, diag.List(nil)
	for i := range k.result.Rows {
		if r := &k.result.Rows[i]; r.State == Added && list.Err() == nil {
			all, list = k.appendRow(all, r)
		}
	}
	if list.Err() == nil && k.load(all).Err() == nil {
		return all, nil
	}
	for i := range k.result.Rows {
		r := &k.result.Rows[i]
		if r.State != Added {
			continue
		}
		with, list := k.appendRow(data, r)
		if list.Err() == nil {
			list = k.load(with)
		}
		if list.Err() == nil {
			data = with
			continue
		}
		changes := r.Changes
		for _, p := range list.Faults() {
			r.refuse(diag.Problem{Pos: placeOf(r, changes, p.Path), Code: p.Code, Message: "cannot be added: " + p.Message, Advice: p.Advice})
		}
	}
	return data, nil
}

// appendRow adds the entry of one row.
func (k *taking) appendRow(data []byte, r *Row) ([]byte, diag.List) {
	fields := []source.Field{{Name: "id", Value: r.ID, Text: true}}
	for _, name := range k.kind.order() {
		v, given := r.values[name]
		if !given {
			f := k.kind.form(name)
			v.shown, given = k.Add[name]
			v.text = (f == line || f == prose) && !slices.Contains(plain, name)
		}
		if given {
			fields = append(fields, source.Field{Name: name, Value: v.shown, Text: v.text})
		}
	}
	return source.Append(k.kind.file, data, k.kind.list, fields)
}

// placeOf is the cell of the field that a fault's path ends in, or the row's
// key.
func placeOf(r *Row, changes []Change, path string) diag.Pos {
	for _, c := range changes {
		if strings.HasSuffix(path, "]."+c.Field) {
			return c.Pos
		}
	}
	return r.Pos
}
