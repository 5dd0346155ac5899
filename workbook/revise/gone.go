package revise

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"tentwright/catalog/diag"
	"tentwright/quote/job"
	"tentwright/workbook"
)

// isOrders tells the tables of order lines, whose rows people add and delete.
func isOrders(table string) bool { return table == "build" || table == "tents" }

// gone tells of names and rows that were deleted or copied. The deletion of an
// order line is an edit; nothing else can be done without.
func (d *differ) gone() {
	d.namesGone()
	for _, t := range keyedTables() {
		if _, ok := d.b.found.over[t.table]; !ok {
			continue // its names are gone, which was told
		}
		for _, key := range slices.Sorted(maps.Keys(d.b.was.rows[t.table])) {
			switch rows := d.b.found.rows[t.table][key]; {
			case len(rows) == 0:
				d.rowGone(t, key)
			case len(rows) > 1 && !isOrders(t.table):
				d.rowTwice(t, key, rows)
			}
		}
	}
}

// namesGone tells of defined names that point nowhere any more, row by row, or
// that their whole sheet is gone.
func (d *differ) namesGone() {
	was, found := d.b.was.f, d.b.found.f
	type where struct {
		tab string
		row int
	}
	lost := map[where][]string{}
	for _, name := range slices.Sorted(maps.Keys(was.Names)) {
		if _, ok := found.Names[name]; !ok && !strings.HasPrefix(name, "qty_") {
			p := was.Names[name]
			lost[where{p.Sheet, p.R1}] = append(lost[where{p.Sheet, p.R1}], name)
		}
	}
	left := map[string]bool{}
	for _, tab := range d.b.sheets {
		left[tab] = true
	}
	for at, names := range lost {
		pos := diag.Pos{File: d.b.File, Sheet: at.tab}
		if !left[at.tab] {
			d.once("sheet "+at.tab, diag.Problem{Pos: pos, Code: NameGone, Warning: true, Message: fmt.Sprintf("the sheet %q was deleted; it is made anew, as it was", at.tab)})
			continue
		}
		words := "the name " + quotedNames(names) + " points"
		if len(names) > 1 {
			words = "the names " + quotedNames(names) + " point"
		}
		d.list.Add(diag.Problem{Pos: pos, Code: NameGone, Warning: true, Message: words + " nowhere any more; what stood there is kept as it was",
			Advice: "a deleted row, column or name takes it along; use an older copy if its changes matter"})
	}
}

// mostNames is how many names one message lists.
const mostNames = 4

// quotedNames lists names, the first few of many.
func quotedNames(names []string) string {
	var words []string
	for _, name := range names[:min(len(names), mostNames)] {
		words = append(words, fmt.Sprintf("%q", name))
	}
	text := strings.Join(words, ", ")
	if more := len(names) - len(words); more > 0 {
		text += fmt.Sprintf(" and %d more", more)
	}
	return text
}

// rowGone takes the deletion of an order line as such and tells of other rows.
func (d *differ) rowGone(t keyed, key string) {
	b := d.b
	a := address{table: t.table, key: key, column: t.keys[0]}
	was, _ := b.was.find(a)
	pos := diag.Pos{File: b.File, Sheet: b.foundName(was.Sheet)}
	was.C1++ // words for a row are those left of a cell
	e := Edit{Pos: pos, What: d.rowWords(was), New: "line deleted"}
	if p, ok := b.was.find(address{table: t.table, key: key, column: "quantity"}); ok == here {
		e.Old = shown(b.was.cell(p))
	}
	n := itemIndex(key)
	switch {
	case strings.HasPrefix(key, spareKey) || t.table == "extra" && d.extraDeleted(key):
		return
	case t.table == "build" && n >= 0:
		e.path, e.job = fmt.Sprintf("items[%d]", n), func(j *job.Job) { dropItem(j, n) }
	case t.table == "tents":
		id := strings.TrimPrefix(key, tentKey)
		e.path, e.job = tentPath(b.Quote.Job, id), func(j *job.Job) { dropTent(j, id) }
	default:
		d.list.Add(diag.Problem{Pos: pos, Code: RowGone, Warning: true, Path: e.What, Message: "its row was deleted; it is kept as it was"})
		return
	}
	b.Edits = append(b.Edits, e)
}

// extraDeleted tells whether the order line of an extra was deleted too.
func (d *differ) extraDeleted(number string) bool {
	for key, no := range workbook.Numbers(d.b.Quote) {
		if fmt.Sprint(no) == number {
			return len(d.b.found.rows["build"][key]) == 0
		}
	}
	return false
}

// rowTwice tells of a copied row; which of the two holds cannot be known.
func (d *differ) rowTwice(t keyed, key string, rows []int) {
	first := d.b.found.over[t.table]
	first.R1, first.R2 = rows[1], rows[1]
	d.list.Add(diag.Problem{Pos: at(d.b.File, first), Code: RowTwice, Related: []diag.Pos{at(d.b.File, place(first.Sheet, rows[0], first.C1))},
		Message: fmt.Sprintf("row %d has the key %q of row %d; one row for each was expected", rows[1], key, rows[0]), Advice: "delete the copied row, or its key"})
}

// counted holds the lists without keys against what was written. Their rows are
// known by their order, so none may be added or taken out.
func (d *differ) counted() {
	for _, in := range inputs(d.b.Quote) {
		was, ok := d.b.was.f.Names[in.at.name]
		now, ok2 := d.b.found.f.Names[in.at.name]
		if !ok || !ok2 || was.R1 == was.R2 || d.fixed[in.at.name] {
			continue
		}
		n, m := len(d.b.was.filled(was)), len(d.b.found.filled(now))
		if n == m {
			continue
		}
		d.fixed[in.at.name] = true
		d.once(fmt.Sprintf("rows %s %d", was.Sheet, was.R1), diag.Problem{Pos: at(d.b.File, now), Code: RowCount, Path: d.rowWords(was),
			Message: fmt.Sprintf("%d rows stand here; %d were expected", m, n), Advice: "a step is added or taken out in the shop's rates.yaml, not here"})
	}
}
