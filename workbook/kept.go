package workbook

import (
	"slices"
	"strings"

	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote"
	"tentwright/quote/load"
)

// Kept is what yard and office typed into a workbook that changes no quote, but
// the figures that follow from it. A key that is missing stands for a cell as it
// is laid out.
type Kept struct {
	Loaded map[string]int // pieces, by the key of a row of the pick list
	Tag    map[string]any // text or number, by the same

	Counted, Damaged map[string]int          // pieces, by the key of a row of the check-in
	Wet              map[string]string       // words, by the same; Yes is wet
	Each             map[string]money.Number // charge for one, by the same

	Riders map[string]int          // people, by the key of a trip of either way
	Actual map[string]money.Number // hours, by the key of a task
	Done   map[string]bool         // by the key of a date
	Names  map[string]any          // text or number, by the key of a person of the crew
}

// keptCell is the cell of what was typed for a key; as laid out where nothing
// was.
func keptCell[T any](typed map[string]T, key string, laid any) any {
	if v, ok := typed[key]; ok {
		return v
	}
	return laid
}

// carried is what rides on the trips by the counts that the yard typed, and by
// the pick where it typed none.
type carried struct {
	picks []portion             // rows of the pick list, in the walking order of the yard
	out   []portion             // of the load orders of the way out
	home  []portion             // and of the way back, where what is used up is left out
	rows  map[string]int        // pieces out by the row of the pick list
	parts map[string]int        // and by part
	trips map[string]*load.Trip // of both ways, with their riders, payload and load
}

// heap is so many pieces with their packs.
type heap struct {
	pieces int
	mass   unit.Mass
	room   unit.Volume
}

// with is two heaps together.
func (h heap) with(o heap) heap { return heap{h.pieces + o.pieces, h.mass + o.mass, h.room + o.room} }

// heap is the weight and room of so many pieces of a row.
func (p *portion) heap(pieces int) heap {
	packs := load.PackCount(pieces, p.part.Pack.Holds)
	return heap{pieces, unit.Mass(pieces)*p.share.Each + unit.Mass(packs)*load.Tare(p.part), unit.Volume(packs) * p.part.Pack.Size.Volume()}
}

// carry reckons what rides.
func (l *layout) carry() {
	c := &carried{rows: map[string]int{}, parts: map[string]int{}, trips: map[string]*load.Trip{}}
	l.carried = c
	for _, m := range []*load.Manifest{&l.q.Load.Out, &l.q.Load.Back} {
		for i := range m.Trips {
			l.crewed(&m.Trips[i])
		}
	}
	c.picks = portions(&l.q.Load.Out, true)
	byBin(c.picks)
	c.out = portions(&l.q.Load.Out, false)
	byLoading(c.out)
	pages := map[string]heap{}
	for i := range c.picks {
		p := &c.picks[i]
		out := p.quantity
		if n, ok := l.kept.Loaded[p.key]; ok {
			out = n
		}
		p.rides = p.heap(out)
		c.rows[p.key] = out
		c.parts[p.part.ID] += out
		c.load(p)
		pages[p.page()] = pages[p.page()].with(p.rides)
	}
	for i := range c.out {
		c.out[i].rides = pages[c.out[i].page()]
	}
	c.bring(l.q)
}

// crewed takes a trip in, still empty, with the people who ride. A trailer has
// none, and keeps its payload.
func (l *layout) crewed(trip *load.Trip) {
	t := *trip
	t.Mass, t.Volume = 0, 0
	if n, ok := l.kept.Riders[t.Key]; ok && t.Tow == "" {
		t.Payload += unit.Mass(t.Riders-n) * l.q.Catalog.Fleet.Rider
		t.Riders = n
	}
	l.carried.trips[t.Key] = &t
}

// load puts what rides of a row on its trip.
func (c *carried) load(p *portion) {
	if trip := c.trips[p.tripKey()]; trip != nil {
		trip.Mass += p.rides.mass
		trip.Volume += p.rides.room
	}
}

// bring shares what went out among the trips home.
func (c *carried) bring(q *quote.Quote) {
	c.home = portions(&q.Load.Back, false)
	before := map[string]int{}
	for i := range c.home {
		p := &c.home[i]
		if !p.part.Consumable {
			p.rides = p.heap(p.took(c.parts[p.part.ID], before[p.part.ID]))
			before[p.part.ID] += p.quantity
			c.load(p)
		}
	}
	c.home = slices.DeleteFunc(c.home, func(p portion) bool { return p.part.Consumable })
	byLoading(c.home)
}

// massOf is the weight of what rides of some rows.
func massOf(rows []portion) unit.Mass {
	var mass unit.Mass
	for i := range rows {
		mass += rows[i].rides.mass
	}
	return mass
}

// page is the key of a part on a trip.
func (p *portion) page() string { return p.part.ID + "@" + p.tripKey() }

// isWet tells whether a word in the column of wet goods says so, as formulas
// compare words.
func isWet(word string) bool { return strings.EqualFold(word, "yes") }
