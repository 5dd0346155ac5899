package revise

import (
	"fmt"
	"slices"
	"strings"

	"tentwright/catalog/diag"
	"tentwright/catalog/money"
	"tentwright/quote/job"
	"tentwright/workbook/sheet"
)

// spareKey begins the keys of the lines that the office fills in itself.
const spareKey = "S:"

// lines looks for order lines that the office added: in the lines that are
// kept free for it, in rows that it inserted, and in rows that it copied; and
// for lines whose item it changed.
func (d *differ) lines() {
	keys, ok := d.b.found.over["build"]
	if !ok {
		return
	}
	originals := map[int]bool{}
	for key := range d.b.was.rows["build"] {
		if strings.HasPrefix(key, spareKey) {
			continue
		}
		a := address{table: "build", key: key, column: "id"}
		if row := d.original(a); row > 0 {
			originals[row] = true
			d.otherItem(a, row)
		}
	}
	for row := keys.R1; row <= keys.R2; row++ {
		if !originals[row] {
			d.added(row)
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
	place, named := d.b.found.f.Names["build_id"]
	if ok != here || !named || !strings.HasPrefix(a.key, "L:") {
		return
	}
	place.R1, place.R2 = row, row
	id, old := shown(d.b.found.cell(place)), shown(d.b.was.cell(was))
	if id == old || id == "" {
		return
	}
	n := itemIndex(a.key)
	d.b.Edits = append(d.b.Edits, Edit{Pos: at(d.b.File, place), What: d.words(address{table: "build", key: a.key}, was), Old: old, New: id,
		path: fmt.Sprintf("items[%d].item", n), job: func(j *job.Job) { j.Items[n].Item = id }})
}

// added takes a row of the build-up that is none of the quote's lines.
func (d *differ) added(row int) {
	cell := func(column string) (sheet.FoundCell, sheet.Place) {
		p, ok := d.b.found.f.Names["build_"+column]
		if !ok {
			return sheet.FoundCell{}, p
		}
		p.R1, p.R2 = row, row
		return d.b.found.cell(p), p
	}
	idCell, idPlace := cell("id")
	quantityCell, quantityPlace := cell("quantity")
	handCell, handPlace := cell("hand")
	id, many := shown(idCell), shown(quantityCell)
	switch {
	case id == "" && (many == "" || many == "0"):
		return
	case id == "":
		d.list.Add(diag.Problem{Pos: at(d.b.File, idPlace), Code: NoItem, Message: fmt.Sprintf("a quantity of %s has no item beside it; an id of the Price List was expected", many)})
		return
	}
	v, err := read(quantityCell, number, d.b.Quote.Catalog.Company.Units)
	if err != nil {
		d.list.Add(diag.Problem{Pos: at(d.b.File, quantityPlace), Code: Unreadable, Path: id, Message: err.Error()})
		return
	}
	off := money.Zero
	if shown(handCell) != "" {
		hand, err := read(handCell, number, d.b.Quote.Catalog.Company.Units)
		if err != nil {
			d.list.Add(diag.Problem{Pos: at(d.b.File, handPlace), Code: Unreadable, Path: id, Message: err.Error()})
			return
		}
		off = hand.number
	}
	d.addLine(idPlace, id, v, off)
}

// addLine adds an item, or a tent by its family and size.
func (d *differ) addLine(place sheet.Place, id string, many value, off money.Number) {
	e := Edit{Pos: at(d.b.File, place), What: id, New: many.text}
	if it := d.b.Quote.Catalog.Item(id); it != nil {
		e.What = it.Name
	}
	e.What += ", added line"
	family, size, tent := strings.Cut(id, ":")
	if tent {
		e.path = fmt.Sprintf("tents[%d]", len(d.b.Quote.Job.Tents)+d.count("tents"))
		e.job = func(j *job.Job) {
			j.Tents = append(j.Tents, job.Tent{ID: freshID(j), Family: family, Size: size, Count: int(many.number.IntPart()), Discount: off})
		}
	} else {
		e.path = fmt.Sprintf("items[%d]", len(d.b.Quote.Job.Items)+d.count("items"))
		e.job = func(j *job.Job) {
			j.Items = append(j.Items, job.Line{Item: id, Quantity: many.number, Discount: off})
		}
	}
	d.b.Edits = append(d.b.Edits, e)
	d.told["added "+e.path] = true
}

// count is how many lines of a list were added so far.
func (d *differ) count(list string) int {
	n := 0
	for about := range d.told {
		if strings.HasPrefix(about, "added "+list+"[") {
			n++
		}
	}
	return n
}

// freshID is an id that no tent of the job has.
func freshID(j *job.Job) string {
	for n := len(j.Tents) + 1; ; n++ {
		if id := fmt.Sprintf("tent-%d", n); j.Tent(id) == nil {
			return id
		}
	}
}

// dropped marks an item that was deleted until all edits are made, so that the
// places of the others stay as they were.
const dropped = "\x00dropped"

// dropItem marks an item as deleted.
func dropItem(j *job.Job, n int) { j.Items[n].Note, j.Items[n].Quantity = dropped, money.Zero }

// sweep takes the deleted items out and gives the place of each of the others.
func sweep(j *job.Job) (places map[int]int) {
	places = map[int]int{}
	var kept []job.Line
	for i := range j.Items {
		if j.Items[i].Note != dropped {
			places[i] = len(kept)
			kept = append(kept, j.Items[i])
		}
	}
	j.Items = kept
	return places
}

// dropTent takes a tent out.
func dropTent(j *job.Job, id string) {
	j.Tents = slices.DeleteFunc(j.Tents, func(t job.Tent) bool { return t.ID == id })
}

// payments takes the list of payments as it now stands.
func (d *differ) payments() {
	was, _, _ := d.paid(d.b.was)
	now, first, faults := d.paid(d.b.found)
	d.list.Join(faults)
	if faults.Err() != nil || first.Sheet == "" || paidText(was) == paidText(now) {
		return
	}
	d.b.Edits = append(d.b.Edits, Edit{Pos: at(d.b.File, first), What: "Payments received", Old: paidText(was), New: paidText(now), path: "payments",
		job: func(j *job.Job) { j.Payments = now }})
}

// paid reads the payments that a workbook lists, and where the list begins.
func (d *differ) paid(v *view) ([]job.Payment, sheet.Place, diag.List) {
	var all []job.Payment
	var list diag.List
	amounts, ok := v.f.Names["payments_amount"]
	dates, ok2 := v.f.Names["payments_date"]
	notes, ok3 := v.f.Names["payments_note"]
	if !ok || !ok2 || !ok3 {
		return nil, sheet.Place{}, nil
	}
	for row := amounts.R1; row <= amounts.R2; row++ {
		cell := func(p sheet.Place, k kind) value {
			p.R1, p.R2 = row, row
			got, err := read(v.cell(p), k, d.b.Quote.Catalog.Company.Units)
			if err != nil {
				list.Add(diag.Problem{Pos: at(d.b.File, p), Code: Unreadable, Path: "payment", Message: err.Error()})
			}
			return got
		}
		s := v.f.Sheet(amounts.Sheet)
		if shown(s.At(row, amounts.C1))+shown(s.At(row, dates.C1))+shown(s.At(row, notes.C1)) == "" {
			continue
		}
		all = append(all, job.Payment{Amount: cell(amounts, number).number, Date: cell(dates, day).day, Note: cell(notes, word).text})
	}
	return all, amounts, list
}

// paidText is payments in words.
func paidText(all []job.Payment) string {
	var words []string
	for _, p := range all {
		words = append(words, strings.TrimSpace(p.Amount.String()+" on "+p.Date.String()+" "+p.Note))
	}
	return strings.Join(words, "; ")
}
