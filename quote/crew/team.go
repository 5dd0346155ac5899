package crew

import (
	"cmp"
	"slices"

	"tentwright/catalog"
	"tentwright/quote/labour"
)

// team is the people of a window, and what they can do.
type team struct {
	people []Person
	crews  int
	size   []int // people of each crew
	leads  int
}

// team makes up a crew of so many: drivers first, then leads, then whoever has
// another skill that the work asks for. One person has two of these only where
// there are not enough people.
func (b *winder) team(people int) *team {
	t := &team{crews: max(1, min(b.crews(), people)), people: make([]Person, people)}
	t.leads = min(people, max(t.crews, (people+b.c.Crew.Lead-1)/max(1, b.c.Crew.Lead)))
	roles := make([]int, people)
	give := func(count int, skill string) {
		for range count {
			t.pick(roles, skill)
		}
	}
	give(min(people, len(b.trip.vehicles)), catalog.DriverSkill)
	give(t.leads, catalog.LeadSkill)
	for _, skill := range b.skills() {
		if skill != catalog.LeadSkill && !(skill == catalog.DriverSkill && len(b.trip.vehicles) > 0) {
			give(1, skill)
		}
	}
	for i := range t.people {
		p := &t.people[i]
		p.Number = i + 1
		if roles[i] == 0 {
			p.Skills = append(p.Skills, b.c.Hand().ID)
		}
		if b.set.Site && i < len(b.trip.vehicles) {
			p.Driver, p.Vehicle, p.Rides = true, b.trip.vehicles[i].Key, b.trip.vehicles[i].Key
		}
	}
	t.split()
	t.count()
	b.seat(t)
	return t
}

// pick gives a skill to whoever has the fewest yet, drivers apart from it in
// order.
func (t *team) pick(roles []int, skill string) {
	best := -1
	for i := range t.people {
		if !slices.Contains(t.people[i].Skills, skill) && (best < 0 || roles[i] < roles[best]) {
			best = i
		}
	}
	if best < 0 {
		return
	}
	roles[best]++
	p := &t.people[best]
	p.Skills = append(p.Skills, skill)
	p.Lead = p.Lead || skill == catalog.LeadSkill
}

// skills is every skill that some work of the window asks for, in order.
func (b *winder) skills() []string {
	var out []string
	for _, n := range []*network{b.head, b.site, b.tail} {
		for i := range n.works {
			if s := n.works[i].skill; s != "" && !slices.Contains(out, s) {
				out = append(out, s)
			}
		}
	}
	slices.Sort(out)
	return out
}

// split shares the people out to the crews: leads in turn, then drivers, then
// the rest, so that crews are of one size within a person.
func (t *team) split() {
	room := make([]int, t.crews)
	for i := range t.people {
		room[i%t.crews]++
	}
	order := make([]int, len(t.people))
	for i := range order {
		order[i] = i
	}
	rank := func(p *Person) int {
		switch {
		case p.Lead:
			return 0
		case p.Driver:
			return 1
		}
		return 2
	}
	slices.SortStableFunc(order, func(x, y int) int { return cmp.Compare(rank(&t.people[x]), rank(&t.people[y])) })
	turn := 0
	for _, i := range order {
		for room[turn%t.crews] == 0 {
			turn++
		}
		t.people[i].Crew = turn%t.crews + 1
		room[turn%t.crews]--
		turn++
	}
}

// count adds up who is in each crew.
func (t *team) count() {
	t.size = make([]int, t.crews)
	for i := range t.people {
		t.size[t.people[i].Crew-1]++
	}
}

// seat gives a seat to everybody who does not drive, crew by crew.
func (b *winder) seat(t *team) {
	if !b.set.Site {
		return
	}
	at, taken := 0, 1 // the driver's
	for crew := 1; crew <= t.crews; crew++ {
		for i := range t.people {
			p := &t.people[i]
			if p.Crew != crew || p.Driver {
				continue
			}
			for at < len(b.trip.vehicles) && taken >= b.trip.vehicles[at].Riders {
				at, taken = at+1, 1
			}
			if at < len(b.trip.vehicles) {
				p.Rides = b.trip.vehicles[at].Key
				taken++
			}
		}
	}
}

// smallest is the fewest people who can do the window's tasks and drive its
// vehicles.
func (b *winder) smallest() int {
	least := max(1, len(b.trip.vehicles))
	for _, n := range []*network{b.head, b.site, b.tail} {
		for i := range n.works {
			least = max(least, n.works[i].least)
		}
	}
	return least
}

// asked is the crew that the job asks for.
func asked(w *labour.Window) int { return max(1, w.Crew) }
