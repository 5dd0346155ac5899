package revise

import (
	"fmt"
	"maps"
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/catalog/money"
	"tentwright/catalog/source"
	"tentwright/quote"
	"tentwright/quote/job"
	"tentwright/workbook"
)

// mostSteps is how many edits of the shop are given an effect each; beyond it
// they are computed together, since each wants the whole shop read again, which
// takes longer than all else.
const mostSteps = 10

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
		e := &b.Edits[i]
		switch {
		case present != nil && e.File != "" && r.present[e.at] == e.New:
			// The shop has it already; it is among what differs, or no change.
		case present != nil && e.File != "":
			r.changes = append(r.changes, e.change("not taken: the shop's present figures hold"))
		default:
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
	pending []*Edit            // of the shop, which is not sound with them yet
	late    []*Edit            // of the shop, computed together at the end
	present map[address]string // the shop's present figures, of those that the workbook has
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
	j, list := job.Read("", job.Write(b.Quote.Job))
	if list.Err() != nil {
		return nil, list
	}
	return &reviser{b: b, c: b.Quote.Catalog, shop: maps.Clone(b.Record.Shop), job: j, before: figuresOf(b.Quote)}, nil
}

// step makes one edit and measures what it does.
func (r *reviser) step(e *Edit) {
	r.changes = append(r.changes, e.change(e.Note))
	last := &r.changes[len(r.changes)-1]
	switch {
	case e.job != nil:
		e.job(r.job)
	case r.steps >= mostSteps:
		last.Note = "effect told below, with others"
		r.late = append(r.late, e)
		return
	default:
		r.steps++
		// Some edits are sound only together, such as two steps that both rise.
		r.pending = append(r.pending, e)
		if r.edit(r.pending).Err() != nil {
			last.Note = withNext
			return
		}
		r.pending = nil
	}
	r.measure()
}

// withNext stands beside a change without an effect of its own.
const withNext = "effect told with the next"

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
		last.Note = withNext
		return
	}
	now := figuresOf(q)
	last.Effect = &workbook.Effect{Price: now.price.Sub(r.before.price), Hours: now.hours.Sub(r.before.hours), Weight: now.weight.Sub(r.before.weight)}
	r.before = now
}

// swept is the job without what was deleted.
func swept(j *job.Job) *job.Job {
	c := *j
	sweep(&c)
	return &c
}

// edit makes edits of the shop's files and reads the shop again. Where it is
// not sound with them, it stays as it was.
func (r *reviser) edit(edits []*Edit) diag.List {
	byFile := map[string][]*Edit{}
	for _, e := range edits {
		byFile[e.File] = append(byFile[e.File], e)
	}
	shop, at := maps.Clone(r.shop), map[*Edit]diag.Pos{}
	var wrong diag.List
	for _, file := range slices.Sorted(maps.Keys(byFile)) {
		list := byFile[file]
		values := make([]source.Edit, len(list))
		for i, e := range list {
			values[i], at[e] = e.Shop, diag.Pos{File: file}
		}
		data, places, faults := source.Apply(file, shop[file], values)
		if faults.Err() != nil {
			wrong.Join(faults)
			continue
		}
		for i, e := range list {
			at[e] = diag.Pos{File: file, Line: places[i].Line}
		}
		shop[file] = data
	}
	if wrong.Err() != nil {
		return r.b.blameShop(wrong, at)
	}
	c, faults := catalog.Load("", shop)
	if c == nil {
		return r.b.blameShop(faults, at)
	}
	r.c, r.shop = c, shop
	return nil
}

// settle makes the edits of the shop that were put off, as one.
func (r *reviser) settle() {
	rest := append(r.pending, r.late...)
	if len(rest) == 0 {
		return
	}
	if faults := r.edit(rest); faults.Err() != nil {
		r.list.Join(faults)
		return
	}
	r.changes = append(r.changes, workbook.Change{What: fmt.Sprintf("%d more changes of prices, rates and minutes, together", len(r.late))})
	r.measure()
}

// finish computes the revision from files as anyone would read them.
func (r *reviser) finish() (*Result, diag.List) {
	r.parted()
	r.b.places = sweep(r.job)
	r.job.Revision++
	if len(r.changes) == 0 && r.list.Err() == nil {
		r.b.next = r.b.Quote
		return &Result{Quote: r.b.Quote, Shop: r.shop}, nil
	}
	text := job.Write(r.job)
	j, list := job.ReadFor(r.c, "", text)
	if j == nil || r.list.Err() != nil {
		r.list.Join(r.b.blameJob(list, text))
		return nil, r.list.Sorted()
	}
	q, list := quote.Build(r.c, j)
	list = r.b.blameJob(list, text)
	if q == nil {
		return nil, list.Sorted()
	}
	r.b.next = q
	return &Result{Quote: q, Shop: r.shop, Changes: r.changes}, list.Sorted()
}

// parted reports tents that were deleted while another stands at their side,
// and lets the other stand alone so that more faults can be found.
func (r *reviser) parted() {
	for i := range r.job.Tents {
		t := &r.job.Tents[i]
		other := r.job.Tent(t.Joins)
		if t.Name == dropped || t.Joins == "" || other == nil || other.Name != dropped {
			continue
		}
		p := diag.Problem{Pos: diag.Pos{File: r.b.File}, Code: Joined, Message: fmt.Sprintf("tent %q was taken out, but tent %q stands at its side and shares its gutter", t.Joins, t.ID),
			Advice: "take both out, or keep both"}
		for n := range r.b.Edits {
			if e := &r.b.Edits[n]; e.path == tentPath(r.job, t.Joins) || e.path == tentPath(r.job, t.Joins)+".count" {
				p.Pos, p.Path = e.Pos, e.What
			}
		}
		r.list.Add(p)
		t.Joins, t.JoinAt = "", ""
	}
}
