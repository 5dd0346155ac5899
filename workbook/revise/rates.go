package revise

import (
	"maps"
	"slices"
	"strings"

	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/catalog/source"
	"tentwright/quote"
	"tentwright/workbook"
)

// RateState tells what a changed figure of the shop finds in the shop of today.
type RateState string

// The states. Only a figure that is still as it was may be written.
const (
	RateOpen    RateState = "to write"      // the shop still has the old figure
	RateDone    RateState = "there already" // the shop has the new figure
	RateDiffers RateState = "differs"       // the shop has a third figure: a person decides
	RateGone    RateState = "gone"          // the shop no longer has what it is of
)

// Rate is a figure of the shop that was changed in a workbook.
type Rate struct {
	Edit
	Present string // in the shop of today
	State   RateState
}

// Rates lists the figures of the shop that were changed in the workbook, each
// beside what the shop of today has. The shop may have grown since: figures are
// found by their ids, not by their place in the file.
func (b *Book) Rates(now *catalog.Catalog) ([]Rate, diag.List) {
	q, list := quote.Build(now, b.Quote.Job)
	if q == nil {
		return nil, list
	}
	today := newView(workbook.LayoutWith(q, workbook.Options{NoRecord: true, NoPlan: true}).Found())
	present := map[address]input{}
	for _, in := range inputs(q) {
		present[in.at] = in
	}
	var rates []Rate
	for i := range b.Edits {
		if e := &b.Edits[i]; e.File != "" {
			rates = append(rates, e.rate(b, present, today))
		}
	}
	return rates, list
}

// rate holds one edit against the shop of today.
func (e *Edit) rate(b *Book, present map[address]input, today *view) Rate {
	r := Rate{Edit: *e, State: RateGone}
	at, stands := b.stepIn(today, e.at)
	if !stands {
		return r
	}
	in, ok := present[at]
	place, missing := today.find(at)
	if !ok || missing != here {
		return r
	}
	r.File, r.Shop.Path = in.file, in.path
	cell := today.cell(place)
	r.Present = shown(cell)
	switch was, _ := b.was.find(e.at); {
	case r.Present == e.New:
		r.State = RateDone
	case same(cell, b.was.cell(was)):
		r.State = RateOpen
	default:
		r.State = RateDiffers
	}
	return r
}

// stepIn is the address of a step of prices by days, or of a quantity break, in
// another workbook: steps are known by where they begin, since others may stand
// before them there. All other addresses stay. False where there is no such step.
func (b *Book) stepIn(then *view, a address) (address, bool) {
	end := strings.LastIndex(a.name, "_")
	if !strings.HasPrefix(a.name, "period_") && !strings.HasPrefix(a.name, "break_") || end < 0 {
		return a, true
	}
	from := address{name: a.name[:end] + "_from", index: a.index}
	// A beginning that was changed in the workbook may be in the shop already.
	for _, v := range []*view{b.was, b.found} {
		p, ok := v.find(from)
		if ok != here {
			continue
		}
		for n := range then.filled(then.f.Names[from.name]) {
			q, ok := then.find(address{name: from.name, index: n})
			if ok == here && same(v.cell(p), then.cell(q)) {
				a.index = n
				return a, true
			}
		}
	}
	return a, false
}

// WriteRates gives the shop's files with the open rates in them, those files
// only that change. The shop must still be sound with them.
func WriteRates(shop catalog.Shop, rates []Rate) (catalog.Shop, diag.List) {
	byFile := map[string][]source.Edit{}
	for i := range rates {
		if r := &rates[i]; r.State == RateOpen {
			byFile[r.File] = append(byFile[r.File], r.Shop)
		}
	}
	all, changed := catalog.Shop{}, catalog.Shop{}
	for name, data := range shop {
		all[name] = data
	}
	var list diag.List
	for _, file := range slices.Sorted(maps.Keys(byFile)) {
		data, _, faults := source.Apply(file, shop[file], byFile[file])
		list.Join(faults)
		all[file], changed[file] = data, data
	}
	if list.Err() != nil {
		return nil, list.Sorted()
	}
	if c, list := catalog.Load("", all); c == nil {
		return nil, list
	}
	return changed, nil
}
