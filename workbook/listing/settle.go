package listing

import (
	"cmp"
	"maps"
	"slices"
	"strings"

	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/catalog/source"
)

// owner is an edit that was made: its row, its cell, where it stands now.
type owner struct {
	row  *Row
	edit *edit
	at   diag.Pos
}

// settle makes the changes in memory and loads the shop with them. Rows whose
// changes it does not take are refused, until the rest is sound; what cannot
// be laid to a row is returned.
func (k *taking) settle() diag.List {
	data := k.shop.Source[k.kind.file]
	for {
		changed, owners, list := k.apply(data)
		if list.Err() == nil {
			list = k.load(changed)
		}
		if list.Err() == nil {
			data = changed
			break
		}
		if !blame(owners, list) {
			return list
		}
	}
	data, list := k.append(data)
	if list.Err() != nil {
		return list
	}
	k.result.Changed = catalog.Shop{}
	if k.result.Count(Taken)+k.result.Count(Added) > 0 {
		k.result.Changed[k.kind.file] = data
	}
	return nil
}

// apply makes the changes of all rows that are taken.
func (k *taking) apply(data []byte) ([]byte, []owner, diag.List) {
	var owners []owner
	var edits []source.Edit
	for i := range k.result.Rows {
		r := &k.result.Rows[i]
		for j := range r.edits {
			owners = append(owners, owner{row: r, edit: &r.edits[j]})
			edits = append(edits, r.edits[j].Edit)
		}
	}
	if len(edits) == 0 {
		return data, nil, nil
	}
	changed, places, list := source.Apply(k.kind.file, data, edits)
	for i, at := range places {
		owners[i].at = at
	}
	return changed, owners, list
}

// load checks the shop with one of its files changed.
func (k *taking) load(data []byte) diag.List {
	all := maps.Clone(k.shop.Source)
	all[k.kind.file] = data
	_, list := catalog.Load("", all)
	return list.Faults()
}

// blame refuses the rows that faults of the changed file come from; false when
// one comes from no row.
func blame(owners []owner, list diag.List) bool {
	for _, p := range list.Faults() {
		if p.Code == diag.TooMany {
			continue // the rest is found in the next round
		}
		o := cause(owners, p)
		if o == nil {
			return false
		}
		if o.row.State == Refused && slices.ContainsFunc(o.row.Faults, func(q diag.Problem) bool { return q.Message == p.Message }) {
			continue
		}
		o.row.refuse(diag.Problem{Pos: o.edit.cell.pos, Path: o.edit.field, Code: p.Code, Message: p.Message, Advice: p.Advice})
	}
	return true
}

// cause is the edit that a fault comes from: the one of its path or its place,
// else, as the shop was sound before, the first one behind where its entry
// begins.
func cause(owners []owner, p diag.Problem) *owner {
	var next *owner
	for i := range owners {
		o := &owners[i]
		if p.Path != "" && (o.edit.Path == p.Path || strings.HasPrefix(o.edit.Path, p.Path+".")) || o.at.File != "" && o.at == p.Pos {
			return o
		}
		if o.at.File == p.Pos.File && !before(o.at, p.Pos) && (next == nil || before(o.at, next.at)) {
			next = o
		}
	}
	return next
}

// before tells whether a place of a file comes before another.
func before(a, b diag.Pos) bool {
	return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column)) < 0
}
