package intake

import (
	"fmt"

	"tentwright/catalog/diag"
	"tentwright/quote/job"
	"tentwright/workbook/sheet"
)

// items reads every row with a quantity. A row of the form names its item by
// the id in its key column; another by what stands in the column of names.
func (r *reader) items() {
	t := r.table("item", "items", "id", "name", "quantity", "optional", "note", "off")
	if t == nil {
		return
	}
	more := false
	for row := t.first; row <= t.last; row++ {
		id, name := t.word(row, "id"), t.word(row, "name")
		if id == headsMark {
			continue
		}
		if more && id == "" && t.freeRow(row) {
			continue
		}
		more = more || name == moreLines
		filled := t.filled(row, "quantity", "note", "off")
		if filled == "" && t.wants(row) {
			filled = "optional"
		}
		if filled == "" && (id != "" || !items(r.c).has(name)) {
			continue // a heading, or nothing ordered
		}
		r.item(t, row, id)
	}
}

// freeRow holds a row below "More lines" that has words but no quantity, note
// or the like against the items: false when there is nothing to say about it.
func (t *table) freeRow(row int) bool {
	if t.filled(row, "quantity", "optional", "note", "off") != "" {
		return false
	}
	s := t.at(row, "name", "", fmt.Sprintf("More lines, row %d, item", row))
	name := t.word(row, "name")
	beside := s
	beside.col++
	hint := shown(t.r.at(beside))
	switch {
	case name == "" && hint != "" && hint != chooseItem:
		t.r.told[row] = true
		t.r.fault(s, HalfFilled, "choose it from the list, or clear the row", "no item is chosen although %q stands beside it; an item was expected", sheet.Short(hint, 60))
	case name != "" && !items(t.r.c).has(name):
		t.r.fault(s, diag.NotOneOf, diag.DidYouMean(name, items(t.r.c).texts()), "%q is not in the list; an item of the shop was expected", sheet.Short(name, 60))
	default:
		return false
	}
	return true
}

// wants tells whether a row is marked as an extra; No says nothing.
func (t *table) wants(row int) bool {
	id, ok := extras().id(t.word(row, "optional"))
	return t.filled(row, "optional") != "" && (!ok || id != extraNo)
}

// item reads one line.
func (r *reader) item(t *table, row int, id string) {
	path := fmt.Sprintf("items[%d]", len(r.j.Items))
	label := t.word(row, "name")
	if label == "" {
		label = fmt.Sprintf("More lines, row %d", row)
	}
	at := func(column, field, what string) spot { return t.at(row, column, path+"."+field, label+", "+what) }
	r.labels[path] = label
	line := job.Line{Item: id}
	name := at("name", "item", "item")
	switch {
	case id != "":
		r.cells[name.path] = r.pos(t.sheet.Name, row, t.cols["name"])
	case r.blank(name):
		r.fault(name, HalfFilled, "choose it from the list, or clear the row", "no item is named although the row is filled in; an item was expected")
	default:
		line.Item = r.choice(name, items(r.c), "an item of the shop")
	}
	r.cells[path] = r.cells[name.path]
	line.Quantity = r.needNumber(at("quantity", "quantity", "quantity"), "12")
	switch r.choice(at("optional", "optional", "optional"), extras(), "Yes, No or Chosen") {
	case extraOffered:
		line.Optional = true
	case extraChosen:
		line.Optional, line.Chosen = true, true
	}
	line.Note = r.words(at("note", "note", "note"))
	line.Discount = r.percent(at("off", "discount", "% off"))
	r.j.Items = append(r.j.Items, line)
}
