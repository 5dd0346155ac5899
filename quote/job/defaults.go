package job

import (
	"tentwright/catalog"
	"tentwright/catalog/unit"
)

// Many is how many tents of the line there are; one where the job says none.
func (t *Tent) Many() int {
	if t.Count == 0 {
		return 1
	}
	return t.Count
}

// LegOf is the eave height asked for, or the family's usual one.
func (t *Tent) LegOf(f *catalog.Family) unit.Length {
	if t.Leg != 0 || len(f.Legs) == 0 {
		return t.Leg
	}
	return f.Legs[0]
}

// Side is how a side is closed; nil where the job does not say, which is open.
func (t *Tent) Side(name string) *TentSide {
	for i := range t.Sides {
		if t.Sides[i].Side == name {
			return &t.Sides[i]
		}
	}
	return nil
}

// Tent finds a tent of the job by id; nil if there is none.
func (j *Job) Tent(id string) *Tent {
	for i := range j.Tents {
		if j.Tents[i].ID == id {
			return &j.Tents[i]
		}
	}
	return nil
}

// Opposite is the side across the tent.
func Opposite(side string) string {
	switch side {
	case "front":
		return "back"
	case "back":
		return "front"
	case "left":
		return "right"
	}
	return "left"
}

// SharedSides lists the sides of a tent at which a gutter hangs.
func (j *Job) SharedSides(t *Tent) []string {
	var sides []string
	if t.Joins != "" {
		sides = append(sides, t.JoinAt)
	}
	for i := range j.Tents {
		if other := &j.Tents[i]; other.Joins == t.ID && other != t {
			sides = append(sides, Opposite(other.JoinAt))
		}
	}
	return sides
}

// ChargedDays is the days that are paid for; those of the event unless the
// job says otherwise.
func (j *Job) ChargedDays() int {
	if j.Dates.Charged > 0 {
		return j.Dates.Charged
	}
	return j.Dates.From.DaysUntil(j.Dates.To) + 1
}

// DaysOut is the days from delivery to collection, both counted.
func (j *Job) DaysOut() int { return j.Dates.Deliver.DaysUntil(j.Dates.Collect) + 1 }

// Option is the degree of a site factor that holds for the job: the one
// chosen, else the first. It is nil where the shop has no such factor.
func (j *Job) Option(c *catalog.Catalog, factor string) *catalog.SiteOption {
	f := c.SiteFactor(factor)
	if f == nil || len(f.Options) == 0 {
		return nil
	}
	for i := range j.Site {
		if j.Site[i].Factor == factor {
			if o := f.Option(j.Site[i].Option); o != nil {
				return o
			}
		}
	}
	return &f.Options[0]
}

// Ground is the surface that a tent stands on: its own, else the job's.
func (j *Job) Ground(c *catalog.Catalog, t *Tent) *catalog.SiteOption {
	if f := c.SiteFactor(catalog.Surface); f != nil && t.Ground != "" {
		if o := f.Option(t.Ground); o != nil {
			return o
		}
	}
	return j.Option(c, catalog.Surface)
}

// ShowPrices is how much of the prices the customer sees.
func (j *Job) ShowPrices(c *catalog.Catalog) string {
	if j.Show != "" {
		return j.Show
	}
	return c.Company.Quote.ShowPrices
}

// Class is the customer's class; the shop's first where the job names none.
func (j *Job) Class(c *catalog.Catalog) *catalog.CustomerClass {
	for i := range c.Rates.Classes {
		if c.Rates.Classes[i].ID == j.Customer.Class {
			return &c.Rates.Classes[i]
		}
	}
	if len(c.Rates.Classes) == 0 {
		return &catalog.CustomerClass{}
	}
	return &c.Rates.Classes[0]
}

// Zone is the delivery zone: the one named, else the first that reaches the
// distance. A job that passed its check has one; another's is empty.
func (j *Job) Zone(c *catalog.Catalog) *catalog.Zone {
	if z := j.Delivery.zone(c); z != nil {
		return z
	}
	return &catalog.Zone{}
}

// zone is nil when none of the zones is named or reaches.
func (d *Delivery) zone(c *catalog.Catalog) *catalog.Zone {
	for i := range c.Rates.Zones {
		z := &c.Rates.Zones[i]
		if z.ID == d.Zone || d.Zone == "" && d.Within(c, z) {
			return z
		}
	}
	return nil
}

// Within tells whether the site is no farther than the limit of a zone, both
// rounded as they are charged and shown.
func (d *Delivery) Within(c *catalog.Catalog, z *catalog.Zone) bool {
	return z.UpTo == 0 || c.Distance(d.Distance).LessThanOrEqual(c.Distance(z.UpTo))
}
