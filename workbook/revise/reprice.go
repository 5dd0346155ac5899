package revise

import (
	"tentwright/catalog"
	"tentwright/quote"
	"tentwright/workbook"
)

// reprice takes the shop's present files instead of those on record, and lists
// the figures that differ. Edits of the shop's figures in the workbook are not
// taken: the present ones hold.
func (r *reviser) reprice(now *catalog.Catalog) {
	q, list := quote.Build(now, swept(r.job))
	if q == nil {
		r.list.Join(r.b.blameJob(list, r.job.Source))
		return
	}
	then := newView(workbook.LayoutWith(q, workbook.Options{NoRecord: true, NoPlan: true}).Found())
	d := &differ{b: r.b}
	r.present = map[address]string{}
	for _, in := range inputs(r.b.Quote) {
		if in.set != nil {
			continue
		}
		was, ok := r.b.was.find(in.at)
		if ok != here || !r.b.open(was) {
			continue
		}
		at, stands := r.b.stepIn(then, in.at)
		place, ok := then.find(at)
		if !stands || ok != here {
			continue // the sum of all covers it
		}
		r.present[in.at] = shown(then.cell(place))
		if same(r.b.was.cell(was), then.cell(place)) {
			continue
		}
		r.changes = append(r.changes, workbook.Change{Place: in.file, What: d.words(was), Old: shown(r.b.was.cell(was)), New: shown(then.cell(place)), Note: "the shop's present figure"})
	}
	r.c, r.shop = now, now.Source
	if !figuresOf(q).equal(r.before) || len(r.changes) > 0 {
		r.changes = append(r.changes, workbook.Change{What: "The shop's present prices, rates and stock, together"})
		r.measure()
	}
}
