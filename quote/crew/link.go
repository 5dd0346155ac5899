package crew

import (
	"fmt"
	"slices"

	"tentwright/quote/crew/schedule"
)

// keyOfDay is the key of a drive.
func keyOfDay(what string, day int) string { return fmt.Sprintf("%s/%d", what, day) }

// later is the later of two moments.
func later(a, b Moment) Moment {
	if a.before(b) {
		return b
	}
	return a
}

// before tells whether a moment is earlier than another.
func (m Moment) before(o Moment) bool { return m.Day < o.Day || m.Day == o.Day && m.At < o.At }

// find is the index of a task by its key; -1: none.
func (d *draft) find(key string) int {
	return slices.IndexFunc(d.tasks, func(t Task) bool { return t.Key == key })
}

// link ties the works to the drives before and after them.
func (d *draft) link() {
	followed := make([]bool, len(d.tasks))
	for i := range d.tasks {
		for _, a := range d.tasks[i].After {
			followed[a] = true
		}
	}
	papers, out := d.find(keyOfDay("papers", d.first)), d.find(keyOfDay("drive-out", d.first))
	home := -1
	for i := range d.tasks {
		if t := &d.tasks[i]; t.Kind == Drive && t.Key == keyOfDay("drive-home", t.Start.Day) && (home < 0 || d.tasks[home].Start.before(t.Start)) {
			home = i
		}
	}
	if papers >= 0 && out >= 0 {
		d.tasks[out].After = append(d.tasks[out].After, papers)
	}
	if out < 0 {
		out = papers
	}
	for part, p := range d.parts {
		for k := range p.n.works {
			i := d.at[part] + k
			t := &d.tasks[i]
			switch {
			case part == 1 && len(t.After) == 0 && out >= 0:
				t.After = append(t.After, out)
			case part == 2 && len(t.After) == 0 && home >= 0:
				t.After = append(t.After, home)
			}
			if part == 1 && !followed[i] && home >= 0 {
				d.tasks[home].After = append(d.tasks[home].After, i)
			}
		}
	}
}

// chain is the critical chain: the first way out, works each held up by the one
// before, the last way home, and the works behind it.
func (d *draft) chain() []int {
	var out []int
	if len(d.parts[1].n.works) > 0 {
		out = d.addKeys(out, keyOfDay("papers", d.first), keyOfDay("drive-out", d.first))
		out = d.addChain(out, 1)
		for i := len(d.tasks) - 1; i >= 0; i-- {
			if t := &d.tasks[i]; t.Kind == Drive && t.Key == keyOfDay("drive-home", t.Start.Day) {
				out = append(out, i)
				break
			}
		}
	} else {
		out = d.addChain(out, 0)
	}
	return d.addChain(out, 2)
}

func (d *draft) addKeys(out []int, keys ...string) []int {
	for _, key := range keys {
		if at := d.find(key); at >= 0 {
			out = append(out, at)
		}
	}
	return out
}

// addChain adds the critical chain of a part.
func (d *draft) addChain(out []int, part int) []int {
	p := d.parts[part]
	if p.plan == nil {
		return out
	}
	for _, i := range schedule.Critical(p.z.plain(), p.plan) {
		out = append(out, d.to[d.at[part]+i])
	}
	return out
}
