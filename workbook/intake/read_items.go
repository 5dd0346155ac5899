package intake

import (
	"fmt"

	"tentwright/quote/job"
)

// items reads every row with a quantity. A row of the form names its item by
// the id in its key column; another by what stands in the column of names.
func (r *reader) items() {
	t := r.table("item", "items", "id", "name", "quantity", "optional", "note", "off")
	if t == nil {
		return
	}
	for row := t.first; row <= t.last; row++ {
		id, name := t.word(row, "id"), t.word(row, "name")
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
		label = fmt.Sprintf("row %d", row)
	}
	at := func(column, field, what string) spot { return t.at(row, column, path+"."+field, label+", "+what) }
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
