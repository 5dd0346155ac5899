package crew

import (
	"slices"

	"tentwright/catalog"
)

// orderer finds what each work of a network waits for.
type orderer struct {
	b    *winder
	n    *network
	memo map[asking][]int
}

// asking is a rule as it is asked for by a work of one tent.
type asking struct {
	rule *catalog.LabourRule
	tent string
	part int
}

// order fills in what the works of a network wait for: what their rules say,
// tent by tent, and through rules that have nothing to do here. A rule that
// waits for none follows the phases before its own.
func (b *winder) order(n *network) {
	o := &orderer{b: b, n: n, memo: map[asking][]int{}}
	for i := range n.works {
		w := &n.works[i]
		switch {
		case w.rule == nil:
			continue
		case len(w.rule.After) == 0:
			w.after = append(w.after, o.earlier(w)...)
		default:
			w.after = append(w.after, o.behind(asking{w.rule, w.tent, w.part})...)
		}
		if w.turn > 0 {
			w.after = slices.DeleteFunc(w.after, func(a int) bool { return n.works[a].rule == w.rule })
		} else {
			w.after = slices.DeleteFunc(w.after, func(a int) bool { return b.comesLater(w, &n.works[a]) })
		}
		slices.Sort(w.after)
		w.after = slices.Compact(w.after)
	}
}

// behind is every work that the rules of an after list ask for.
func (o *orderer) behind(q asking) []int {
	if known, ok := o.memo[q]; ok {
		return known
	}
	o.memo[q] = nil // circles are refused by the shop's check
	var out []int
	for _, id := range q.rule.After {
		r := o.b.rules[id]
		if r == nil {
			continue
		}
		found := o.of(r, q)
		switch {
		case len(found) > 0:
			out = append(out, found...)
		case o.elsewhere(r):
			// Done before this place is reached.
		default:
			out = append(out, o.behind(asking{r, q.tent, q.part})...)
		}
	}
	slices.Sort(out)
	out = slices.Compact(out)
	o.memo[q] = out
	return out
}

// of is the works of a rule that concern one who asks: those of the same tent
// and of the whole job, or all for a work of the whole job.
func (o *orderer) of(r *catalog.LabourRule, q asking) []int {
	var out []int
	for _, i := range o.n.rules[r] {
		if w := &o.n.works[i]; o.concerns(w, q.tent, q.part) {
			out = append(out, i)
		}
	}
	return out
}

func (o *orderer) concerns(w *work, tent string, part int) bool {
	return w.tent == "" || tent == "" || w.tent == tent && (w.part == part || w.part == 0 || part == 0)
}

// elsewhere tells whether a rule has something to do at another place or in
// another window: that is over by then.
func (o *orderer) elsewhere(r *catalog.LabourRule) bool {
	b := o.b
	if b.set.Site && rides(r) {
		return true
	}
	window, busy := b.busy[r]
	return busy && (window != b.w.Spec.ID || b.place(r) != o.n)
}

// earlier is the works of earlier phases that concern a work.
func (o *orderer) earlier(w *work) []int {
	var out []int
	for i := range o.n.works {
		if e := &o.n.works[i]; e.rule != nil && e.phase < w.phase && o.concerns(e, w.tent, w.part) {
			out = append(out, i)
		}
	}
	return out
}
