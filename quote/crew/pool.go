package crew

import "slices"

// pool is the people of one crew who can do the same: of the skills that a
// network asks for they have the same ones. Within a pool one is as good as
// another, so that whatever fits the numbers can be given to persons.
type pool struct {
	crew   int
	people []int
	skills []string
}

// pools groups the people for a network, the plainest first.
func (n *network) pools(t *team) []pool {
	var asked []string
	for i := range n.works {
		if s := n.works[i].skill; s != "" && !slices.Contains(asked, s) {
			asked = append(asked, s)
		}
	}
	var pools []pool
	for i := range t.people {
		p := &t.people[i]
		var skills []string
		for _, s := range p.Skills {
			if slices.Contains(asked, s) {
				skills = append(skills, s)
			}
		}
		at := slices.IndexFunc(pools, func(o pool) bool { return o.crew == p.Crew-1 && slices.Equal(o.skills, skills) })
		if at < 0 {
			pools = append(pools, pool{crew: p.Crew - 1, skills: skills})
			at = len(pools) - 1
		}
		pools[at].people = append(pools[at].people, i)
	}
	slices.SortStableFunc(pools, func(a, b pool) int { return len(a.skills) - len(b.skills) })
	return pools
}

// mode is one way to do a work: so many hands of a crew, so many of each pool.
type mode struct {
	crew, hands int
	use         []int // of each pool
	need        []int // of each resource, gear apart
}

// Of a task only so many numbers of hands, and so many ways to make them up,
// are tried: among more a search finds nothing better in the time.
const (
	mostHands = 4
	mostModes = 12
	mostMade  = 256 // of one number of hands: the ways grow as a power of the pools
)

// ways lists the modes of a work: hands from the fewest to the most that
// shorten it, in its crew or in any that has the skill.
func (z *puzzle) ways(w *work, t *team) []mode {
	var out []mode
	for k := range t.crews {
		if w.crew < 0 || w.crew%t.crews == k {
			out = z.inCrew(out, w, t, k)
		}
	}
	for k := 0; len(out) == 0 && k < t.crews; k++ {
		out = z.inCrew(out, w, t, k) // its own crew has nobody for it: another lends them
	}
	return out
}

// inCrew adds the modes in one crew; none where nobody of it has the skill. A
// work that takes more people than the crew has is done by all crews together.
func (z *puzzle) inCrew(out []mode, w *work, t *team, k int) []mode {
	able, size, from := 0, t.size[k], k
	if w.least > size && t.crews > 1 {
		size, from = len(t.people), anyCrew
	}
	for i := range z.pools {
		if p := &z.pools[i]; p.in(from) && (w.skill == "" || slices.Contains(p.skills, w.skill)) {
			able += len(p.people)
		}
	}
	if able == 0 {
		return out
	}
	least, most := min(w.least, size), min(max(w.most, w.least), size)
	if w.kind == Drive { // all drivers at once
		least = min(w.least, able)
		most = least
	}
	step := max(1, (most-least+mostHands-2)/(mostHands-1))
	last, first := 0, len(out)
	for hands := least; hands <= most; hands += step {
		if m := w.share.minutes(hands); last == 0 || m < last {
			out, last = append(out, z.made(k, from, hands, w.skilled(hands), w.skill)...), m
		}
	}
	if made := len(out) - first; made > mostModes {
		// Every so many, so that all numbers of hands are among them.
		for i := range mostModes {
			out[first+i] = out[first+i*made/mostModes]
		}
		out = out[:first+mostModes]
	}
	return out
}

// skilled is how many of the hands must have the work's skill: all drivers of
// the papers, else one.
func (w *work) skilled(hands int) int {
	switch {
	case w.skill == "":
		return 0
	case w.kind == Drive:
		return hands
	}
	return 1
}

// anyCrew is the people of all crews.
const anyCrew = -1

// in tells whether a pool is of a crew.
func (p *pool) in(crew int) bool { return crew == anyCrew || p.crew == crew }

// mixed tells whether hands are of more than one crew.
func (z *puzzle) mixed(use []int) bool {
	crew := anyCrew
	for k, n := range use {
		if n > 0 && crew != anyCrew && z.pools[k].crew != crew {
			return true
		}
		if n > 0 {
			crew = z.pools[k].crew
		}
	}
	return false
}

// size is the people of a crew.
func (z *puzzle) size(crew int) int {
	sum := 0
	for k := range z.pools {
		if z.pools[k].crew == crew {
			sum += len(z.pools[k].people)
		}
	}
	return sum
}

// hired is hands as they are asked for.
type hired struct {
	crew, from, hands, skilled int
	skill                      string
}

// made is the ways to make up so many hands, so many of them with a skill. The
// same are asked for by many works.
func (z *puzzle) made(k, from, hands, skilled int, skill string) []mode {
	q := hired{k, from, hands, skilled, skill}
	if known, ok := z.known[q]; ok {
		return known
	}
	f := filler{pools: z.pools, q: q, use: make([]int, len(z.pools))}
	f.fill(len(z.pools)-1, hands, skilled)
	for i := range f.out {
		f.out[i].need = z.needs(f.out[i].use)
	}
	z.known[q] = f.out
	return f.out
}

// needs is what hands use of each resource.
func (z *puzzle) needs(use []int) []int {
	need := make([]int, len(z.p.Capacity))
	copy(need, use)
	for k, n := range use {
		if z.total < len(need) {
			need[z.total+z.pools[k].crew] += n
		}
	}
	return need
}

// filler makes up hands from pools: plain people first, and of each other pool
// none, one, or all.
type filler struct {
	pools []pool
	q     hired
	use   []int
	out   []mode
}

// fill chooses from a pool and those before it for the hands that are left, of
// whom so many need the skill.
func (f *filler) fill(at, left, need int) {
	if len(f.out) == mostMade || need > left || need > f.able(at) {
		return // nothing comes of it, or there are enough
	}
	if at < 0 {
		if left == 0 && need <= 0 {
			f.out = append(f.out, mode{crew: f.q.crew, hands: f.q.hands, use: slices.Clone(f.use)})
		}
		return
	}
	p := &f.pools[at]
	if !p.in(f.q.from) {
		f.fill(at-1, left, need)
		return
	}
	skilled := f.q.skill != "" && slices.Contains(p.skills, f.q.skill)
	for _, n := range f.options(at, left) {
		f.use[at] = n
		if skilled {
			f.fill(at-1, left-n, need-n)
		} else {
			f.fill(at-1, left-n, need)
		}
		f.use[at] = 0
	}
}

// able is how many people of a pool and those before it have the skill.
func (f *filler) able(at int) int {
	sum := 0
	for i := range f.pools[:at+1] {
		if p := &f.pools[i]; p.in(f.q.from) && slices.Contains(p.skills, f.q.skill) {
			sum += len(p.people)
		}
	}
	return sum
}

// options is how many of a pool may go: all that are left to find for the first
// pool, else none, one, as many as must, or as many as there are.
func (f *filler) options(at, left int) []int {
	p := &f.pools[at]
	all, room, first := min(left, len(p.people)), 0, true
	for i := range f.pools[:at] { // those that are still to come
		if f.pools[i].in(f.q.from) {
			room, first = room+len(f.pools[i].people), false
		}
	}
	if first {
		return []int{all}
	}
	var out []int
	for _, n := range []int{0, 1, left - room, all} {
		if n >= 0 && n <= all && n >= left-room && !slices.Contains(out, n) {
			out = append(out, n)
		}
	}
	return out
}
