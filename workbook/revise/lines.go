package revise

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/catalog/money"
	"tentwright/quote/job"
	"tentwright/workbook/sheet"
)

// spareKey begins the keys of the lines that the office fills in itself.
const spareKey = "S:"

// tentKey begins the keys of the lines of tents.
const tentKey = "T:"

// orders looks for order lines that the office added: in the lines that are
// kept free for it, in rows that it inserted, and in rows that it copied; and
// for lines whose item it changed.
func (d *differ) orders() {
	for _, table := range []string{"tents", "build"} {
		block, ok := d.b.found.over[table]
		if !ok {
			continue
		}
		originals := map[int]bool{}
		for _, key := range slices.Sorted(maps.Keys(d.b.was.rows[table])) {
			if strings.HasPrefix(key, spareKey) {
				continue
			}
			a := address{table: table, key: key, column: "id"}
			if row := d.original(a); row > 0 {
				originals[row] = true
				d.otherItem(a, row)
			}
		}
		for row := block.R1; row <= block.R2; row++ {
			if !originals[row] {
				d.added(table, row)
			}
		}
	}
}

// original is the row of an order line, of several with its key the one that
// still has its item, or the first; 0 if it was deleted.
func (d *differ) original(a address) int {
	rows := d.b.found.rows[a.table][a.key]
	if len(rows) == 0 {
		return 0
	}
	a.column = "id"
	was, ok := d.b.was.find(a)
	ids, named := d.b.found.f.Names[a.table+"_id"]
	if ok == here && named {
		for _, row := range rows {
			if same(d.b.was.cell(was), d.b.found.f.Sheet(ids.Sheet).At(row, ids.C1)) {
				return row
			}
		}
	}
	return rows[0]
}

// otherItem takes an id that was typed over that of a line.
func (d *differ) otherItem(a address, row int) {
	was, ok := d.b.was.find(a)
	now, named := d.b.found.f.Names[a.table+"_id"]
	if ok != here || !named {
		return
	}
	now.R1, now.R2 = row, row
	id, old := shown(d.b.found.cell(now)), shown(d.b.was.cell(was))
	note := ""
	if a.table == "build" {
		id, note = d.idOf(id)
	}
	if id == old {
		return
	}
	e := Edit{Pos: at(d.b.File, now), What: d.rowWords(was), Old: old, New: id, Note: note}
	switch n := itemIndex(a.key); {
	case a.table == "tents":
		family, size, _ := strings.Cut(id, ":")
		tent := strings.TrimPrefix(a.key, tentKey)
		e.path = tentPath(d.b.Quote.Job, tent) + ".size"
		e.job = onTent(tent, func(t *job.Tent) { t.Family, t.Size = family, size })
	case n >= 0:
		e.path, e.job = fmt.Sprintf("items[%d].item", n), func(j *job.Job) { j.Items[n].Item = id }
	default:
		return // it follows from a tent, and is told as overwritten
	}
	if d.known(now, id, a.table == "tents", a.table == "build") {
		d.b.Edits = append(d.b.Edits, e)
	}
}

// known reports an id that is not on the price list, or that stands there as a
// tent where an item belongs.
func (d *differ) known(p sheet.Place, id string, tents, items bool) bool {
	c := d.b.Quote.Catalog
	family, size, tent := strings.Cut(id, ":")
	if items && c.Item(id) != nil || tents && tent && c.Family(family) != nil && c.Family(family).Size(size) != nil {
		return true
	}
	var ids []string
	for key := range d.b.was.rows["item"] {
		if strings.Contains(key, ":") && tents || !strings.Contains(key, ":") && items {
			ids = append(ids, key)
		}
	}
	slices.Sort(ids)
	x := diag.Problem{Pos: at(d.b.File, p), Code: NoItem, Message: fmt.Sprintf("found %q; an id of the Price List was expected", id), Advice: diag.DidYouMean(id, ids)}
	if it := d.nearItem(id, ids); it != nil && items {
		x.Advice = fmt.Sprintf("did you mean %q, %s?", it.ID, it.Name)
	}
	d.list.Add(x)
	return false
}

// idOf is the id of the one item whose name was typed in place of an id, with a
// note that says so; of anything else, the word itself.
func (d *differ) idOf(typed string) (id, note string) {
	if d.b.Quote.Catalog.Item(typed) != nil {
		return typed, ""
	}
	for i := range d.b.Quote.Catalog.Items {
		if it := &d.b.Quote.Catalog.Items[i]; strings.EqualFold(strings.TrimSpace(it.Name), typed) {
			if id != "" {
				return typed, ""
			}
			id = it.ID
		}
	}
	if id == "" {
		return typed, ""
	}
	return id, "read as " + id
}

// nearItem is the item that a word most likely means, by its id or its name;
// nil where none is near.
func (d *differ) nearItem(word string, ids []string) *catalog.Item {
	c := d.b.Quote.Catalog
	if id, ok := diag.Nearest(word, ids); ok {
		return c.Item(id)
	}
	byName := map[string]*catalog.Item{}
	for i := range c.Items {
		byName[c.Items[i].Name] = &c.Items[i]
	}
	name, _ := diag.Nearest(word, slices.Sorted(maps.Keys(byName)))
	return byName[name]
}

// added takes a row of order lines that is none of the quote's.
func (d *differ) added(table string, row int) {
	cell := func(column string) (sheet.FoundCell, sheet.Place) {
		p := d.b.found.f.Names[table+"_"+column]
		p.R1, p.R2 = row, row
		return d.b.found.cell(p), p
	}
	idCell, idPlace := cell("id")
	manyCell, manyPlace := cell("quantity")
	id, many := shown(idCell), shown(manyCell)
	id, read := d.idOf(id)
	switch {
	case id == "" && (many == "" || many == "0"):
		return
	case id == "":
		d.list.Add(diag.Problem{Pos: at(d.b.File, idPlace), Code: NoItem, Message: fmt.Sprintf("a quantity of %s has no item beside it; an id of the Price List was expected", many)})
		return
	}
	tent := strings.Contains(id, ":")
	kind := number
	if tent {
		kind = whole
	}
	quantity, ok := d.numberIn(manyCell, manyPlace, kind, id)
	off := value{number: money.Zero}
	if handCell, handPlace := cell("hand"); shown(handCell) != "" {
		var fine bool
		off, fine = d.numberIn(handCell, handPlace, percent, id)
		ok = ok && fine
	}
	if !d.known(idPlace, id, true, true) || !ok {
		return
	}
	if tent && quantity.number.IsZero() {
		d.list.Add(diag.Problem{Pos: at(d.b.File, manyPlace), Code: Unused, Path: id, Warning: true, Message: "an added tent has the quantity 0; it is left out"})
		return
	}
	note, _ := cell("note")
	d.addLine(idPlace, id, quantity, off.number, shown(note))
	d.b.Edits[len(d.b.Edits)-1].Note = read
}

// numberIn reads a number of an added line.
func (d *differ) numberIn(c sheet.FoundCell, p sheet.Place, k kind, id string) (value, bool) {
	v, err := read(c, k, d.b.Quote.Catalog.Company.Units)
	if err == nil && v.number.IsNegative() {
		err = fmt.Errorf("found %s; %s, not below zero, was expected", v.text, expected(k, ""))
	}
	if err != nil {
		d.unreadable(p, id, err)
	}
	return v, err == nil
}

// addLine adds an item, or a tent by its family and size.
func (d *differ) addLine(p sheet.Place, id string, many value, off money.Number, note string) {
	e := Edit{Pos: at(d.b.File, p), What: id + ", added line", New: many.text}
	if it := d.b.Quote.Catalog.Item(id); it != nil {
		e.What = it.Name + ", added line"
	}
	list, n := "items", len(d.b.Quote.Job.Items)
	e.job = func(j *job.Job) {
		j.Items = append(j.Items, job.Line{Item: id, Quantity: many.number, Discount: off, Note: note})
	}
	if family, size, tent := strings.Cut(id, ":"); tent {
		list, n = "tents", len(d.b.Quote.Job.Tents)
		e.job = func(j *job.Job) {
			j.Tents = append(j.Tents, job.Tent{ID: freshID(j), Family: family, Size: size, Count: int(many.number.IntPart()), Discount: off})
		}
	}
	e.path = fmt.Sprintf("%s[%d]", list, n+d.lines[list])
	d.lines[list]++
	d.b.added[rowAt{p.Sheet, p.R1}] = e.path
	d.b.Edits = append(d.b.Edits, e)
}

// freshID is an id that no tent of the job has.
func freshID(j *job.Job) string {
	for n := len(j.Tents) + 1; ; n++ {
		if id := fmt.Sprintf("tent-%d", n); j.Tent(id) == nil {
			return id
		}
	}
}

// dropped marks an item or a tent that was deleted until all edits are made,
// so that the places of the others stay as they were.
const dropped = "\x00dropped"

// dropItem marks an item as deleted.
func dropItem(j *job.Job, n int) { j.Items[n].Note, j.Items[n].Quantity = dropped, money.Zero }

// dropTent marks a tent as deleted.
func dropTent(j *job.Job, id string) {
	onTent(id, func(t *job.Tent) { t.Name, t.Count = dropped, 1 })(j)
}

// places are the places of the job's lines after what was deleted was taken
// out, by the places before.
type places struct{ items, tents map[int]int }

// sweep takes the deleted lines out and gives the place of each of the others.
func sweep(j *job.Job) places {
	p := places{map[int]int{}, map[int]int{}}
	var items []job.Line
	for i := range j.Items {
		if j.Items[i].Note != dropped {
			p.items[i] = len(items)
			items = append(items, j.Items[i])
		}
	}
	var tents []job.Tent
	for i := range j.Tents {
		if j.Tents[i].Name != dropped {
			p.tents[i] = len(tents)
			tents = append(tents, j.Tents[i])
		}
	}
	j.Items, j.Tents = items, tents
	return p
}

// moved is the way to a value after the deleted lines were taken out; "" for
// one that went with them.
func (p places) moved(way string) string {
	for list, now := range map[string]map[int]int{"items": p.items, "tents": p.tents} {
		n := wayIndex(list, way)
		if n < 0 || now == nil {
			continue
		}
		to, kept := now[n]
		if !kept {
			return ""
		}
		return fmt.Sprintf("%s[%d]", list, to) + strings.TrimPrefix(way, fmt.Sprintf("%s[%d]", list, n))
	}
	return way
}

// wayIndex is the place in a list that a way leads to, from 0; below zero for
// ways elsewhere.
func wayIndex(list, way string) int {
	n := 0
	if _, err := fmt.Sscanf(way, list+"[%d]", &n); err != nil {
		return -1
	}
	return n
}

// lineKey is the key of an order line in the next workbook, by that in the
// workbook that came back: lines move up when others before them are deleted.
func (p places) lineKey(key string) string {
	n := itemIndex(key)
	if p.items == nil || n < 0 {
		return key
	}
	to, kept := p.items[n]
	if !kept {
		return ""
	}
	return lineKey(to) + strings.TrimPrefix(key, lineKey(n))
}

// lineKey is the key of the order line of an item, by its place from 0.
func lineKey(n int) string { return fmt.Sprintf("L:%d", n+1) }
