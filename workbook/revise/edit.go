package revise

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"tentwright/catalog/diag"
	"tentwright/catalog/money"
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
	Note string // how it was read, where that is not plain

	at   address // of an input; empty for added and deleted lines
	path string  // of the value, in the job or in the shop's file
	job  func(*job.Job)
	File string      // of the shop; none for the job
	Shop source.Edit // in that file
}

// compare finds all edits, and what is not taken over.
func (b *Book) compare() diag.List {
	d := &differ{b: b, told: map[string]bool{}, seen: map[string]int{}, lines: map[string]int{}, fixed: map[string]bool{}}
	d.gone()
	d.counted()
	for _, in := range inputs(b.Quote) {
		d.input(in)
	}
	d.orders()
	d.payments()
	d.collection()
	d.overwritten()
	order := map[string]int{}
	for i, s := range b.found.f.Sheets {
		order[s.Name] = i
	}
	slices.SortStableFunc(b.Edits, func(x, y Edit) int {
		return cmp.Or(cmp.Compare(x.turn(), y.turn()), cmp.Compare(order[x.Pos.Sheet], order[y.Pos.Sheet]), compareCells(x.Pos.Cell, y.Pos.Cell))
	})
	return d.list
}

// turn is 1 for the days out, which count from the day of delivery and so come
// after it, wherever their sheets stand; 0 for all others.
func (e *Edit) turn() int {
	if e.at.name == "job_days_out" {
		return 1
	}
	return 0
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
	b     *Book
	list  diag.List
	told  map[string]bool // what was said already
	seen  map[string]int  // edits by what they change
	lines map[string]int  // how many lines were added to each list of the job
	fixed map[string]bool // names of lists whose rows were added to or taken from
}

// once reports a problem unless the same was said before.
func (d *differ) once(about string, p diag.Problem) {
	if !d.told[about] {
		d.told[about] = true
		d.list.Add(p)
	}
}

// unreadable reports a cell that does not hold what was expected.
func (d *differ) unreadable(p sheet.Place, what string, err error) {
	d.list.Add(diag.Problem{Pos: at(d.b.File, p), Code: Unreadable, Path: what, Message: err.Error()})
}

// input looks for an edit of one input. Rows and names that are gone, and rows
// that stand twice, are told elsewhere.
func (d *differ) input(in input) {
	was, ok := d.b.was.find(in.at)
	if ok != here || !d.b.open(was) || d.fixed[in.at.name] {
		return // not an input in this workbook
	}
	now, ok := d.b.found.find(in.at)
	if ok == twoRows && isOrders(in.at.table) {
		now.R1 = d.original(in.at)
		now.R2 = now.R1
	} else if ok != here {
		return
	}
	old, cell := d.b.was.cell(was), d.b.found.cell(now)
	if same(old, cell) || shown(cell) == "" && shown(old) == "0" && cell.Formula == "" {
		return
	}
	var v value
	var err error
	what := d.words(was)
	if !in.none || shown(cell) != "" {
		v, err = read(cell, in.kind, d.b.Quote.Catalog.Company.Units)
	}
	if err == nil {
		err = in.within(v)
	}
	if err != nil {
		d.unreadable(now, what, err)
		return
	}
	if before, err := read(old, in.kind, d.b.Quote.Catalog.Company.Units); v.text == shown(old) || err == nil && shown(cell) != "" && v.equal(before, in.kind) {
		return // typed otherwise, but the same
	}
	if in.kind == percent && !cell.Percent && v.number.IsPositive() && v.number.LessThan(money.One) {
		d.list.Add(diag.Problem{Pos: at(d.b.File, now), Code: Doubtful, Path: what, Warning: true,
			Message: fmt.Sprintf("found %s; it is taken for %s percent, less than one", v.text, v.text), Advice: "three percent is typed as 3, without the percent sign"})
	}
	d.edit(in, v, at(d.b.File, now), what, in.words(old))
}

// within refuses numbers that no job may have, before anything is planned with
// them.
func (in *input) within(v value) error {
	if in.most == 0 || !v.number.LessThan(money.One) && !v.number.GreaterThan(money.Int(in.most)) {
		return nil
	}
	return fmt.Errorf("found %s; a whole number from 1 to %d was expected", v.text, in.most)
}

// words are what a cell held, as people read it: a time is no fraction of a day.
func (in *input) words(c sheet.FoundCell) string {
	if v, err := read(c, in.kind, ""); in.kind == clock && err == nil {
		return v.text
	}
	return shown(c)
}

// edit takes an edit in, unless another cell changes the same figure of the
// shop already; to the same is no matter.
func (d *differ) edit(in input, v value, pos diag.Pos, what, old string) {
	e := Edit{Pos: pos, What: what, Old: old, New: v.text, at: in.at, path: in.path, File: in.file}
	if in.set != nil {
		e.job = func(j *job.Job) { in.set(j, v) }
		d.b.Edits = append(d.b.Edits, e)
		return
	}
	e.Shop = source.Edit{Path: in.path, Value: v.text, Drop: v.text == ""}
	if in.text != nil && v.text != "" {
		e.Shop.Value = in.text(v)
	}
	figure := in.file + "#" + in.path
	if n, ok := d.seen[figure]; ok {
		if other := &d.b.Edits[n]; other.New != e.New {
			d.conflict(other, &e)
		}
		return
	}
	d.seen[figure] = len(d.b.Edits)
	d.b.Edits = append(d.b.Edits, e)
}

// conflict reports two cells that give one value differently.
func (d *differ) conflict(a, b *Edit) {
	d.list.Add(diag.Problem{Pos: b.Pos, Code: Conflict, Path: b.What, Related: []diag.Pos{a.Pos},
		Message: fmt.Sprintf("found %s here, but %s in %s!%s for the same; one value was expected", b.New, a.New, a.Pos.Sheet, a.Pos.Cell)})
}

// collection holds the two cells against each other that each tell the day of
// collection, one by its date and one by the days out.
func (d *differ) collection() {
	var date, days *Edit
	j := *d.b.Quote.Job
	for i := range d.b.Edits {
		switch e := &d.b.Edits[i]; e.at.name {
		case "job_date_deliver":
			e.job(&j)
		case "job_date_collect":
			date = e
		case "job_days_out":
			days = e
		}
	}
	if date == nil || days == nil {
		return
	}
	date.job(&j)
	day := j.Dates.Collect
	if days.job(&j); day != j.Dates.Collect {
		d.conflict(date, days)
	}
}

// open tells whether people may type at a place of the workbook as it was
// written, and nothing computes it.
func (b *Book) open(p sheet.Place) bool {
	c := b.laidCell(p)
	return c != nil && c.Formula == "" && !c.Style.Role.Locked()
}

// laidCell is a cell of the workbook as it was written; nil beyond its cells.
func (b *Book) laidCell(p sheet.Place) *sheet.Cell {
	for _, s := range b.laid.Sheets {
		if s.Name == p.Sheet && p.R1 > 0 && p.R1 <= len(s.Rows) && p.C1 <= len(s.Rows[p.R1-1].Cells) {
			return &s.Rows[p.R1-1].Cells[p.C1-1]
		}
	}
	return nil
}
