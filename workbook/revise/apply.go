package revise

import (
	"fmt"
	"maps"
	"strings"

	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/catalog/money"
	"tentwright/catalog/source"
	"tentwright/quote"
	"tentwright/quote/job"
	"tentwright/workbook"
)

// mostSteps is how many edits of the shop are given an effect each; beyond it
// they are computed together, since each wants the shop read again.
const mostSteps = 20

// Result is a workbook's next revision.
type Result struct {
	Quote   *quote.Quote
	Shop    catalog.Shop // with the edits
	Changes []workbook.Change
}

// Revise makes the edits, one after the other, and computes the next revision.
// The effects of the changes add up to the difference between the two. Where
// the edits do not fit together, the list names the cells. With a shop, its
// present figures are taken instead of those on record.
func (b *Book) Revise(present *catalog.Catalog) (*Result, diag.List) {
	r, list := b.start()
	if list.Err() != nil {
		return nil, list
	}
	if present != nil {
		r.reprice(present)
	}
	for i := range b.Edits {
		if e := &b.Edits[i]; present != nil && e.File != "" {
			r.changes = append(r.changes, e.change("not taken: the shop's present figures hold"))
		} else {
			r.step(e)
		}
	}
	r.settle()
	return r.finish()
}

// reviser is a revision while it is made.
type reviser struct {
	b       *Book
	c       *catalog.Catalog
	shop    catalog.Shop
	job     *job.Job
	before  figures // of the last state that could be computed
	changes []workbook.Change
	steps   int
	late    []*Edit // of the shop, computed together at the end
	list    diag.List
}

// figures are what an effect is told in.
type figures struct{ price, hours, weight money.Number }

func figuresOf(q *quote.Quote) figures {
	sys := q.Catalog.Company.Units
	return figures{q.Price.Total, q.Labour.Hours, money.Float(q.Load.Out.Mass.RoundTo(sys).In(sys))}
}

func (f figures) equal(o figures) bool {
	return f.price.Equal(o.price) && f.hours.Equal(o.hours) && f.weight.Equal(o.weight)
}

// start copies the job, so that the one on record stays as it is.
func (b *Book) start() (*reviser, diag.List) {
	j, list := job.Read(b.File, job.Write(b.Quote.Job))
	if list.Err() != nil {
		return nil, list
	}
	return &reviser{b: b, c: b.Quote.Catalog, shop: maps.Clone(b.Record.Shop), job: j, before: figuresOf(b.Quote)}, nil
}

// step makes one edit and measures what it does.
func (r *reviser) step(e *Edit) {
	change := e.change("")
	if e.job != nil {
		e.job(r.job)
	} else if r.steps++; r.steps > mostSteps {
		r.late = append(r.late, e)
		r.changes = append(r.changes, change)
		return
	} else {
		r.edit([]*Edit{e})
	}
	r.changes = append(r.changes, change)
	r.measure()
}

// change is an edit in words.
func (e *Edit) change(note string) workbook.Change {
	place := e.Pos.Sheet
	if e.Pos.Cell != "" {
		place += "!" + e.Pos.Cell
	}
	return workbook.Change{Place: place, What: e.What, Old: e.Old, New: e.New, Note: note}
}

// measure computes the job as it now stands and tells the last change's effect.
// A job that cannot be computed yet wants the next edits too: their effect is
// told with the last of them.
func (r *reviser) measure() {
	last := &r.changes[len(r.changes)-1]
	q, _ := quote.Build(r.c, swept(r.job))
	if q == nil {
		last.Note = "effect told with the next"
		return
	}
	now := figuresOf(q)
	last.Effect = &workbook.Effect{Price: now.price.Sub(r.before.price), Hours: now.hours.Sub(r.before.hours), Weight: now.weight.Sub(r.before.weight)}
	r.before = now
}

// swept is the job without what was deleted.
func swept(j *job.Job) *job.Job {
	c := *j
	c.Items = append([]job.Line(nil), j.Items...)
	sweep(&c)
	return &c
}

// edit makes edits of the shop's files and reads the shop again.
func (r *reviser) edit(edits []*Edit) {
	byFile := map[string][]source.Edit{}
	for _, e := range edits {
		byFile[e.File] = append(byFile[e.File], e.Shop)
	}
	for file, list := range byFile {
		data, _, faults := source.Apply(file, r.shop[file], list)
		if faults.Err() != nil {
			r.list.Join(r.b.cells(faults, nil))
			return
		}
		r.shop[file] = data
	}
	c, faults := catalog.Load("", r.shop)
	if c == nil {
		r.list.Join(r.b.cells(faults, nil))
		return
	}
	r.c = c
}

// settle makes the edits of the shop that were put off, as one.
func (r *reviser) settle() {
	if len(r.late) == 0 {
		return
	}
	r.edit(r.late)
	r.changes = append(r.changes, workbook.Change{What: fmt.Sprintf("%d more changes of prices, rates and minutes, together", len(r.late))})
	r.measure()
}

// finish computes the revision from files as anyone would read them.
func (r *reviser) finish() (*Result, diag.List) {
	places := sweep(r.job)
	r.job.Revision++
	if r.list.Err() != nil {
		return nil, r.list.Sorted()
	}
	if len(r.changes) == 0 {
		return &Result{Quote: r.b.Quote, Shop: r.shop}, nil
	}
	j, list := job.ReadFor(r.c, "", job.Write(r.job))
	if j == nil {
		return nil, r.b.cells(list, places)
	}
	q, list := quote.Build(r.c, j)
	list = r.b.cells(list, places)
	if q == nil {
		return nil, list
	}
	return &Result{Quote: q, Shop: r.shop, Changes: r.changes}, list
}

// cells gives problems of the job and the shop the place of the cell that they
// come from: that of the edit nearest on the way to the value.
func (b *Book) cells(list diag.List, places map[int]int) diag.List {
	var out diag.List
	for _, p := range list {
		best := -1
		for i := range b.Edits {
			e := &b.Edits[i]
			if e.File != "" && e.File != p.Pos.File {
				continue
			}
			way := moved(e.path, places)
			if way == p.Path || strings.HasPrefix(p.Path, way+".") || strings.HasPrefix(p.Path, way+"[") || strings.HasPrefix(way, p.Path+".") || strings.HasPrefix(way, p.Path+"[") {
				if best < 0 || len(way) > len(moved(b.Edits[best].path, places)) {
					best = i
				}
			}
		}
		if best >= 0 {
			p.Pos, p.Path = b.Edits[best].Pos, b.Edits[best].What
		} else {
			p.Pos = diag.Pos{File: b.File}
		}
		out.Add(p)
	}
	return out
}

// moved is the way to a value after the deleted items were taken out.
func moved(way string, places map[int]int) string {
	var n int
	if _, err := fmt.Sscanf(way, "items[%d]", &n); err != nil || places == nil {
		return way
	}
	now, kept := places[n]
	if !kept {
		return way
	}
	return fmt.Sprintf("items[%d]", now) + strings.TrimPrefix(way, fmt.Sprintf("items[%d]", n))
}
