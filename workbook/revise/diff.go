package revise

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"tentwright/catalog/diag"
	"tentwright/catalog/source"
	"tentwright/quote/job"
	"tentwright/workbook/sheet"
)

// Edit is one thing that the office changed.
type Edit struct {
	Pos  diag.Pos // where it stands in the workbook
	What string
	Old  string
	New  string

	at   address // of an input; empty for added and deleted lines
	path string  // of the value, in the job or in the shop's file
	job  func(*job.Job)
	File string      // of the shop; none for the job
	Shop source.Edit // in that file
}

// compare finds all edits.
func (b *Book) compare() diag.List {
	d := &differ{b: b, told: map[string]bool{}, seen: map[string]int{}}
	for _, in := range inputs(b.Quote) {
		d.input(in)
	}
	d.lines()
	d.payments()
	d.overwritten()
	order := map[string]int{}
	for i, s := range b.found.f.Sheets {
		order[s.Name] = i
	}
	slices.SortStableFunc(b.Edits, func(x, y Edit) int {
		return cmp.Or(cmp.Compare(order[x.Pos.Sheet], order[y.Pos.Sheet]), compareCells(x.Pos.Cell, y.Pos.Cell))
	})
	return d.list
}

// compareCells orders cells from top to bottom, then from left to right.
func compareCells(a, b string) int {
	rowOf := func(ref string) int {
		n := 0
		fmt.Sscan(strings.TrimLeft(ref, "ABCDEFGHIJKLMNOPQRSTUVWXYZ"), &n)
		return n
	}
	return cmp.Or(cmp.Compare(rowOf(a), rowOf(b)), cmp.Compare(len(a), len(b)), cmp.Compare(a, b))
}

// differ is a comparison while it runs.
type differ struct {
	b    *Book
	list diag.List
	told map[string]bool // names and rows of which it was said that they are gone
	seen map[string]int  // edits by what they change
}

// once reports a problem unless the same was said before.
func (d *differ) once(about string, p diag.Problem) {
	if !d.told[about] {
		d.told[about] = true
		d.list.Add(p)
	}
}

// input looks for an edit of one input.
func (d *differ) input(in input) {
	was, ok := d.b.was.find(in.at)
	if ok != here || !d.open(was) {
		return // not an input in this workbook
	}
	now, ok := d.b.found.find(in.at)
	switch ok {
	case noName:
		d.once(nameOf(in.at), diag.Problem{Pos: diag.Pos{File: d.b.File, Sheet: was.Sheet}, Code: NameGone, Warning: true,
			Message: fmt.Sprintf("the name %q points nowhere any more; what it stood for is kept as it was", nameOf(in.at)),
			Advice:  "a deleted row or column took it along; take an older copy if its changes matter"})
		return
	case noRow:
		d.rowGone(in)
		return
	case twoRows:
		if in.at.table == "build" || in.at.table == "tents" {
			now.R1 = d.original(in.at)
			now.R2 = now.R1
			break
		}
		d.once(in.at.table+in.at.key, diag.Problem{Pos: at(d.b.File, now), Code: RowTwice,
			Message: fmt.Sprintf("two rows have the key %q; one row for each was expected", in.at.key), Advice: "delete the copied row, or its key"})
		return
	}
	old, cell := d.b.was.cell(was), d.b.found.cell(now)
	if same(old, cell) || shown(cell) == "" && shown(old) == "0" && cell.Formula == "" {
		return
	}
	var v value
	var err error
	if !in.none || shown(cell) != "" {
		v, err = read(cell, in.kind, d.b.Quote.Catalog.Company.Units)
	}
	if err != nil {
		d.list.Add(diag.Problem{Pos: at(d.b.File, now), Code: Unreadable, Path: d.words(in.at, was), Message: err.Error()})
		return
	}
	d.edit(in, v, at(d.b.File, now), d.words(in.at, was), shown(old))
}

// edit takes an edit in, unless another cell changes the same value already; to
// the same is no matter.
func (d *differ) edit(in input, v value, pos diag.Pos, what, old string) {
	e := Edit{Pos: pos, What: what, Old: old, New: v.text, at: in.at, path: in.path, File: in.file}
	if in.set != nil {
		e.job = func(j *job.Job) { in.set(j, v) }
	} else {
		e.Shop = source.Edit{Path: in.path, Value: v.text, Drop: v.text == ""}
		if in.text != nil && v.text != "" {
			e.Shop.Value = in.text(v)
		}
	}
	target := in.file + "#" + in.path
	if n, ok := d.seen[target]; ok && in.file != "" {
		if other := &d.b.Edits[n]; other.New != e.New {
			d.list.Add(diag.Problem{Pos: pos, Code: Conflict, Path: what, Related: []diag.Pos{other.Pos},
				Message: fmt.Sprintf("found %s, but %s in another cell for the same; one value was expected", e.New, other.New)})
		}
		return
	}
	d.seen[target] = len(d.b.Edits)
	d.b.Edits = append(d.b.Edits, e)
}

// open tells whether people may type at a place of the workbook as it was
// written, and nothing computes it.
func (d *differ) open(p sheet.Place) bool {
	c := d.b.laidCell(p)
	return c != nil && c.Formula == "" && !c.Style.Role.Locked()
}

// laidCell is a cell of the workbook as it was written.
func (b *Book) laidCell(p sheet.Place) *sheet.Cell {
	for _, s := range b.laid.Sheets {
		if s.Name == p.Sheet && p.R1 <= len(s.Rows) && p.C1 <= len(s.Rows[p.R1-1].Cells) {
			return &s.Rows[p.R1-1].Cells[p.C1-1]
		}
	}
	return nil
}

// nameOf is the defined name that an address needs.
func nameOf(a address) string {
	if a.name != "" {
		return a.name
	}
	return a.table + "_" + a.column
}

// rowGone takes the deletion of an order line as such; other rows cannot be
// done without and are kept.
func (d *differ) rowGone(in input) {
	b := d.b
	place, _ := b.was.find(in.at)
	pos := diag.Pos{File: b.File, Sheet: place.Sheet}
	what := d.words(address{table: in.at.table, key: in.at.key}, place)
	switch {
	case in.at.table == "build" && in.at.column == "quantity":
		n := itemIndex(in.at.key)
		b.Edits = append(b.Edits, Edit{Pos: pos, What: what, Old: shown(b.was.cell(place)), New: "line deleted", path: fmt.Sprintf("items[%d]", n),
			job: func(j *job.Job) { dropItem(j, n) }})
	case in.at.table == "tents" && in.at.column == "quantity":
		id := strings.TrimPrefix(in.at.key, "T:")
		b.Edits = append(b.Edits, Edit{Pos: pos, What: what, Old: shown(b.was.cell(place)), New: "line deleted", path: in.path,
			job: func(j *job.Job) { dropTent(j, id) }})
	case in.at.table == "build" || in.at.table == "tents" || in.at.table == "extra" || in.at.table == "tent":
	default:
		d.once(in.at.table+in.at.key, diag.Problem{Pos: pos, Code: RowGone, Warning: true, Path: what,
			Message: "its row was deleted; it is kept as it was"})
	}
}

// words say what an address holds: the words of its row and the heading of its
// column.
func (d *differ) words(a address, was sheet.Place) string {
	row := d.rowWords(a, was)
	if a.table == "" && a.index == 0 && !strings.HasPrefix(a.name, "rate_") && !strings.HasPrefix(a.name, "smallest_") && !strings.HasPrefix(a.name, "fixed_") && !strings.HasPrefix(a.name, "minutes_") {
		return row
	}
	if head := d.heading(was); head != "" && a.column+a.name != "" {
		return row + ": " + head
	}
	return row
}

// rowWords are the words for a row: those of its table's own column, or the
// first text in it.
func (d *differ) rowWords(a address, was sheet.Place) string {
	for _, t := range keyedTables() {
		if t.table != a.table || t.label == "" {
			continue
		}
		if p, ok := d.b.was.f.Names[t.table+"_"+t.label]; ok {
			return shown(d.b.was.f.Sheet(p.Sheet).At(was.R1, p.C1))
		}
	}
	s := d.b.was.f.Sheet(was.Sheet)
	for col := 1; col < was.C1; col++ {
		if c := s.At(was.R1, col); c.Kind == sheet.FoundText && shown(c) != "" {
			return shown(c)
		}
	}
	return a.key
}

// heading is the nearest head of a column above a cell, within its band.
func (d *differ) heading(p sheet.Place) string {
	for row := p.R1 - 1; row > 0; row-- {
		p.R1 = row
		c := d.b.laidCell(p)
		if c == nil {
			continue
		}
		switch c.Style.Role {
		case sheet.Heading:
			return shown(d.b.was.cell(p))
		case sheet.Section:
			return ""
		}
	}
	return ""
}
