package crew

import (
	"slices"
	"strconv"
	"strings"

	"tentwright/quote/crew/schedule"
)

// Keys of the drives begin with these; the day follows.
const (
	driveOut  = "drive-out/"
	driveHome = "drive-home/"
	papersOut = "papers/"
)

// keyOfDay is the key of a drive.
func keyOfDay(what string, day int) string { return what + strconv.Itoa(day) }

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
	// The way out begins with the papers, where there are any.
	begin, out := d.find(keyOfDay(papersOut, d.first)), d.find(keyOfDay(driveOut, d.first))
	switch {
	case begin >= 0 && out >= 0:
		d.after(out, begin)
	case begin < 0:
		begin = out
	default:
		out = begin
	}
	home := d.lastHome()
	for part, p := range d.parts {
		for k := range p.n.works {
			i := d.at[part] + k
			first := len(d.tasks[i].After) == 0
			switch {
			case part == 0 && !followed[i]:
				d.after(begin, i)
			case part == 1 && first:
				d.after(i, out)
			case part == 2 && first:
				d.after(i, home)
			}
			if part == 1 && !followed[i] {
				d.after(home, i)
			}
		}
	}
}

// after makes a task wait for another, if there are both.
func (d *draft) after(task, before int) {
	if task >= 0 && before >= 0 {
		d.tasks[task].After = append(d.tasks[task].After, before)
	}
}

// lastHome is the last way home; -1: none.
func (d *draft) lastHome() int {
	home := -1
	for i := range d.tasks {
		if t := &d.tasks[i]; strings.HasPrefix(t.Key, driveHome) && (home < 0 || d.tasks[home].Start.before(t.Start)) {
			home = i
		}
	}
	return home
}

// chain is the critical chain: the works before the first way out, works each held up by the one
// before, the last way home, and the works behind it.
func (d *draft) chain() []int {
	out := d.addChain(nil, 0)
	if len(d.parts[1].n.works) > 0 {
		out = d.addKeys(out, keyOfDay(papersOut, d.first), keyOfDay(driveOut, d.first))
		out = d.addChain(out, 1)
		if home := d.lastHome(); home >= 0 {
			out = append(out, home)
		}
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
