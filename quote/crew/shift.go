package crew

import (
	"slices"

	"tentwright/catalog/unit"
)

// shifts gives each person the hours of each day. On the site all stay until
// the vehicles leave; in the yard each comes for the first of their tasks and
// goes after the last.
func (d *draft) shifts() {
	for i := range d.days {
		day := &d.days[i]
		day.Breaks = slices.DeleteFunc(slices.Clone(day.Breaks), func(p Pause) bool { return p.From < day.Call || p.To > day.End })
	}
	site, party := d.siteDays(), make([][]int, len(d.days))
	for n := range d.days {
		party[n] = d.party(n + 1)
	}
	for p := range d.t.people {
		person := &d.t.people[p]
		person.Days = make([]Shift, len(d.days))
		for n := range d.days {
			if site[n] && slices.Contains(party[n], p) {
				person.Days[n] = Shift{Call: d.days[n].Arrive, End: d.days[n].Leave}
			}
		}
	}
	for i := range d.tasks {
		t := &d.tasks[i]
		for _, s := range t.Spells {
			for _, p := range t.People {
				d.t.people[p].Days[s.Day-1].add(s)
			}
		}
	}
	for p := range d.t.people {
		for n := range d.days {
			d.t.people[p].Days[n].pay(&d.days[n], d.b.set.Least)
		}
	}
}

// siteDays tells of each day whether work is done on the site.
func (d *draft) siteDays() []bool {
	site := make([]bool, len(d.days))
	if !d.b.set.Site {
		return site
	}
	for k := range d.parts[1].n.works {
		for _, s := range d.tasks[d.to[d.at[1]+k]].Spells {
			site[s.Day-1] = true
		}
	}
	return site
}

// add puts a spell of work into a shift.
func (h *Shift) add(s Spell) {
	if h.Call == 0 || s.From < h.Call {
		h.Call = s.From
	}
	h.End = max(h.End, s.To)
	h.Work += int(s.To - s.From)
}

// pay works out the paid minutes of a shift: not fewer than those that every
// call is paid for.
func (h *Shift) pay(day *Day, least unit.Span) {
	if h.Call == 0 {
		return
	}
	h.Paid = int(h.End - h.Call)
	for _, p := range day.Breaks {
		if !p.Spec.Paid {
			h.Paid -= int(max(0, min(p.To, h.End)-max(p.From, h.Call)))
		}
	}
	h.Paid = max(h.Paid, int(least))
}

// longestStretch is the most minutes that a shift goes on without a break.
func (h *Shift) longestStretch(day *Day) int {
	most, from := unit.Clock(0), h.Call
	for _, p := range day.Breaks {
		if p.From >= h.Call && p.To <= h.End {
			most, from = max(most, p.From-from), p.To
		}
	}
	return int(max(most, h.End-from))
}
