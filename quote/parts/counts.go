package parts

import (
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/tent"
)

// addCount takes a count in, with its amount.
func (b *builder) addCount(c Count) {
	c.Many = money.One
	if c.Order != "" {
		c.Many = b.order(c.Order).Ordered()
	}
	c.Amount = c.Per.Mul(c.Many)
	b.r.counted[c.Key] = len(b.r.Counts)
	b.r.Counts = append(b.r.Counts, c)
}

// order finds an order line by key; one that is not there counts as none.
func (b *builder) order(key string) *Order {
	if at, ok := b.ordered[key]; ok {
		return &b.r.Orders[at]
	}
	return &Order{}
}

// counts counts, for each tent, what some rule of the shop asks for, then the
// facts of the job.
func (b *builder) counts() {
	for i := range b.r.Tents {
		t := &b.r.Tents[i]
		for _, d := range catalog.Drivers() {
			if !d.Tent || !b.asked(d.ID, t.Family.ID) {
				continue
			}
			per := b.measure(t, d.ID)
			if _, again := b.r.counted[t.Job.ID+"."+d.ID]; again || per.IsZero() {
				continue
			}
			b.addCount(Count{Key: t.Job.ID + "." + d.ID, Driver: d.ID, Tent: t.Job.ID, Name: d.Name, Per: per, Order: tentKey(t)})
		}
	}
	for _, d := range catalog.Drivers() {
		if !d.Tent && !d.Late && d.ID != "all-area" {
			b.addCount(Count{Key: "job." + d.ID, Driver: d.ID, Name: d.Name, Per: b.fact(d.ID)})
		}
	}
	for i := range b.r.Tents {
		t := &b.r.Tents[i]
		b.addCount(Count{Key: t.Job.ID + ".plan", Driver: "all-area", Tent: t.Job.ID, Name: "floor area, of all", Per: Area(b.c, t.Graph.Area()), Order: tentKey(t)})
	}
}

// asked tells whether some rule that fits the family is driven by it.
func (b *builder) asked(driver, family string) bool {
	fits := func(families []string) bool { return len(families) == 0 || slices.Contains(families, family) }
	for i := range b.c.Rules {
		if b.c.Rules[i].Driver == driver && fits(b.c.Rules[i].Families) {
			return true
		}
	}
	for i := range b.c.Labour {
		if b.c.Labour[i].Driver == driver && fits(b.c.Labour[i].Families) {
			return true
		}
	}
	return false
}

// measure is one driver of one tent, in the shop's units.
func (b *builder) measure(t *tent.Tent, driver string) money.Number {
	switch driver {
	case "area":
		return Area(b.c, t.Graph.Area())
	case "roof-area":
		return Area(b.c, t.Graph.RoofArea())
	case "perimeter":
		return Length(b.c.Company.Units, t.Graph.Perimeter())
	case "walled":
		return Length(b.c.Company.Units, t.Closed())
	case "wall-panels":
		return money.Int(t.PanelCount())
	case "doors":
		return money.Int(t.DoorCount())
	case "gutter":
		return Length(b.c.Company.Units, t.Hung())
	case "stakes":
		return money.Int(t.Staked)
	case "ballast":
		return money.Int(t.Held)
	case "filled-ballast":
		return money.Int(t.Filled)
	case "solid-ballast":
		return money.Int(t.Held - t.Filled)
	}
	return money.Int(t.Graph.Count(driver))
}

// fact is one driver of the job, in the shop's units.
func (b *builder) fact(driver string) money.Number {
	switch driver {
	case "job":
		return money.One
	case "guests":
		return money.Int(b.j.Event.Guests)
	case "days-out":
		return money.Int(b.j.DaysOut())
	case "distance":
		return Distance(b.c, b.j.Delivery.Distance)
	}
	return money.Zero
}

// Distance is a road distance as the shop's rates count it.
func Distance(c *catalog.Catalog, l unit.Length) money.Number { return c.Distance(l) }

// TentCounts lists the counts that a driver of a rule stands for: one per tent
// that has any, or the job's own.
func (r *Result) TentCounts(driver string, families []string) []*Count {
	var found []*Count
	for i := range r.Counts {
		c := &r.Counts[i]
		if c.Driver != driver || c.Amount.IsZero() && c.Tent == "" {
			continue
		}
		if c.Tent == "" || len(families) == 0 || slices.Contains(families, r.tent(c.Tent).Family.ID) {
			found = append(found, c)
		}
	}
	return found
}

// tent finds a tent of the job; the caller knows that it is there.
func (r *Result) tent(id string) *tent.Tent { return &r.Tents[r.placed[id]] }

// Tagged counts the parts that carry a tag, without spares: those are neither
// set up nor sat on. It is false where the job takes no part with the tag.
func (r *Result) Tagged(tag string) (count int, any bool) {
	for i := range r.Lines {
		if l := &r.Lines[i]; slices.Contains(l.Part.Tags, tag) {
			count += l.Counted
			any = true
		}
	}
	return count, any
}
