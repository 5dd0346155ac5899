package crew

import (
	"fmt"
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/quote/crew/schedule"
	"tentwright/quote/labour"
)

// work is one piece of work before anybody knows when it is done.
type work struct {
	key, name, kind string
	task            *labour.Task
	rule            *catalog.LabourRule
	phase           int
	tent            string
	part            int // which of several alike tents, from 1; 0: not split
	turn            int // which turn of the vehicles it unloads or loads; 0: all
	crew            int // index of the crew that does it; -1: either
	share           share
	least, most     int
	skill           string // that one of the hands must have; none: anyone
	gear            []int  // indices of the network's gear, one in use each
	after           []int
	release         int
	whole           bool
}

// share is person-minutes as a fraction, so that hours are split between tents
// and turns without being rounded.
type share struct{ num, den int64 }

// minutes is how long so many hands take, rounded up.
func (s share) minutes(hands int) int {
	den := s.den * int64(hands)
	return max(1, int((s.num+den-1)/den))
}

// network is the works of one place, in order of the rules, and the gear that
// they share.
type network struct {
	works []work
	gear  []gear
	rules map[*catalog.LabourRule][]int
}

// gear is so many of one part, of which a task has one in use.
type gear struct {
	part  string
	count int
}

// mostParts is into how many a line of alike tents is split at most; beyond,
// several tents go together, so that a field of stalls stays quick to plan.
const mostParts = 10

// networks sorts the tasks of the window into those in the yard before the
// first drive, those on the site, and those in the yard after the last drive,
// and finds what waits for what.
func (b *winder) networks() {
	b.head, b.site, b.tail = newNetwork(), newNetwork(), newNetwork()
	for i := range b.l.Tasks {
		t := &b.l.Tasks[i]
		if t.Window != b.w.Spec.ID || !t.Hours.IsPositive() || b.set.Site && rides(t.Rule) {
			continue
		}
		b.add(b.place(t.Rule), t)
	}
	b.turns()
	b.closing()
	for _, n := range []*network{b.head, b.site, b.tail} {
		b.order(n)
	}
	b.allot()
	b.inspection()
	for _, n := range []*network{b.head, b.site, b.tail} {
		b.limit(n)
	}
}

// mostMinutes is how many person-minutes of one work are planned, two thousand
// days of one person: more is a slip in a rule or a quantity.
const mostMinutes = 1 << 20

// limit cuts works that no plan could hold, and says so.
func (b *winder) limit(n *network) {
	most, sum := mostMinutes, 0
	for i := range n.works {
		sum += min(n.works[i].share.minutes(1), most)
	}
	if sum > schedule.Longest {
		most = schedule.Longest / len(n.works)
	}
	var long []string
	for i := range n.works {
		if w := &n.works[i]; w.share.minutes(1) > most {
			long = append(long, fmt.Sprintf("%s of %d hours", w.name, w.share.minutes(1)/60))
			w.share = share{int64(most), 1}
		}
	}
	if len(long) > 0 {
		b.say("minutes", true, "the work is too long to plan: %s; at most %d hours each were expected and are shown: look at the quantities and at the minutes of the rules",
			few(long), most/60)
	}
}

func newNetwork() *network { return &network{rules: map[*catalog.LabourRule][]int{}} }

// place is where a rule's tasks stand.
func (b *winder) place(r *catalog.LabourRule) *network {
	if !b.set.Site {
		return b.site
	}
	switch r.Phase {
	case "load":
		return b.head
	case "wash and dry", "put away":
		return b.tail
	case catalog.Travel:
		if !b.behindDrive(r) {
			return b.head
		}
	case catalog.Return:
		if b.behindDrive(r) {
			return b.tail
		}
	}
	return b.site
}

// behindDrive tells whether a rule waits for a drive of its own phase.
func (b *winder) behindDrive(r *catalog.LabourRule) bool {
	seen := map[string]bool{}
	var walk func(r *catalog.LabourRule) bool
	walk = func(r *catalog.LabourRule) bool {
		for _, id := range r.After {
			before := b.rules[id]
			if seen[id] || before == nil {
				continue
			}
			seen[id] = true
			if before.Phase == r.Phase && rides(before) && before.Driver != "trips" || walk(before) {
				return true
			}
		}
		return false
	}
	return walk(r)
}

// add makes the works of a task: one for each tent of a line.
func (b *winder) add(n *network, t *labour.Task) {
	w := work{key: t.Key, name: t.Rule.Name, kind: Labour, task: t, rule: t.Rule, tent: t.Tent, crew: -1,
		phase: slices.Index(catalog.Phases(), t.Rule.Phase), skill: b.skill(t.Rule), whole: b.whole(t.Rule),
		least: t.Least, most: max(t.Rule.Most, t.Least), share: share{hundredths(t.Hours) * 60, 100}}
	if t.Rule.Most == 0 {
		w.most = max(2*t.Rule.Crew, t.Least)
	}
	for _, part := range t.Rule.Gear {
		if g := b.gear(n, part); g >= 0 {
			w.gear = append(w.gear, g)
		}
	}
	many := 1
	if tent := b.j.Tent(t.Tent); tent != nil {
		many = tent.Many()
	}
	parts := min(many, mostParts)
	for k := range parts {
		one := w
		if parts > 1 {
			one.part = k + 1
			one.key, one.name = fmt.Sprintf("%s/%d", w.key, k+1), fmt.Sprintf("%s (%d of %d)", w.name, k+1, parts)
			one.share.den *= int64(parts)
			if w.skill == "" && len(w.gear) == 0 {
				one.most *= (many + parts - 1) / parts // one lead and one machine are at one tent at a time
			}
		}
		n.put(one)
	}
}

func (n *network) put(w work) int {
	at := len(n.works)
	n.works = append(n.works, w)
	if w.rule != nil {
		n.rules[w.rule] = append(n.rules[w.rule], at)
	}
	return at
}

// hundredths is hours of two places in their last place, of very many only so
// many.
func hundredths(hours money.Number) int64 {
	const most = 1_000_000_000 // hours, so that shares of it fit a word
	if most := money.Int(most); most.LessThan(hours) {
		hours = most
	}
	return money.Round(hours, 2).Shift(2).IntPart()
}

// whole tells whether a rule's tasks are not left half done overnight.
func (b *winder) whole(r *catalog.LabourRule) bool {
	return r.Whole || slices.Contains(b.c.Crew.Whole, r.Phase)
}

// skill is what one of the hands must be; none where any hand does.
func (b *winder) skill(r *catalog.LabourRule) string {
	if r.Skill == b.c.Hand().ID {
		return ""
	}
	return r.Skill
}

// gear is the index of a part among the gear of a network; -1 where nobody
// carries any, which is said and limits nothing.
func (b *winder) gear(n *network, part string) int {
	at := slices.IndexFunc(n.gear, func(g gear) bool { return g.part == part })
	if at >= 0 {
		return at
	}
	count := 0
	if b.set.Site && n == b.site {
		if line := b.p.Find(part); line != nil {
			count = line.Total()
		}
	} else if p := b.c.Part(part); p != nil {
		count = p.Owned
	}
	if count == 0 {
		name := part
		if p := b.c.Part(part); p != nil {
			name = p.Name
		}
		where := "the vehicles carry none"
		if !b.set.Site {
			where = "the yard owns none"
		}
		b.say("gear."+part, false, "tasks of this window use %s, but %s; as many as the tasks need were assumed", name, where)
		return -1
	}
	n.gear = append(n.gear, gear{part, count})
	return len(n.gear) - 1
}
