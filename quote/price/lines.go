package price

import (
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
	"tentwright/quote/labour"
	"tentwright/quote/load"
	"tentwright/quote/parts"
	"tentwright/quote/tent"
)

// orders prices what the customer orders, tents first.
func (b *builder) orders() {
	for i := range b.p.Orders {
		o := &b.p.Orders[i]
		l := Line{Key: o.Key, Section: o.Section, Name: o.Name, Order: o,
			Quantity: o.Quantity, Ordered: o.Ordered(), Hand: o.Discount}
		if o.Item == nil {
			b.tent(&l, o.Tent)
		} else {
			b.item(&l, o.Item)
		}
		if l.Kind == Hire {
			l.Class = b.j.Class(b.c).Discount
			l.Job = b.j.Discount.Percent
		}
		l.Factor = b.r.FactorOf(l.Period)
		b.amount(&l)
		b.r.Lines = append(b.r.Lines, l)
	}
}

// tent takes the price of a size, or of its floor area.
func (b *builder) tent(l *Line, t *tent.Tent) {
	l.Kind, l.Unit, l.Period, l.Tax = Hire, "each", t.Family.Period, t.Family.Tax
	l.Base = b.round(SizePrice(b.c, t.Family, t.Size))
	l.CostEach = b.round(SizeCost(b.c, t.Family, t.Size))
}

// SizePrice is the base price of one tent of a size: its own, or its family's
// price of the floor area.
func SizePrice(c *catalog.Catalog, f *catalog.Family, s *catalog.Size) money.Number {
	return sized(c, s, s.Price, f.AreaPrice)
}

// SizeCost is what one hire of a size costs the yard.
func SizeCost(c *catalog.Catalog, f *catalog.Family, s *catalog.Size) money.Number {
	return sized(c, s, s.Cost, f.AreaCost)
}

// sized is the size's own figure, or its family's figure for each unit of area;
// zero where the shop gives neither, as with a cost that it does not follow.
func sized(c *catalog.Catalog, s *catalog.Size, own, perArea *money.Number) money.Number {
	switch {
	case own != nil:
		return *own
	case perArea == nil:
		return money.Zero
	}
	return perArea.Mul(SizeArea(c, s))
}

// SizeArea is the floor area of a size in the shop's unit, to two places.
func SizeArea(c *catalog.Catalog, s *catalog.Size) money.Number {
	return parts.Area(c, unit.Area(s.Width.Metres()*s.Length.Metres()))
}

// item takes the price of an item. Its break follows from the quantity asked
// for, so that an extra is offered at the price that it would be charged at.
func (b *builder) item(l *Line, item *catalog.Item) {
	l.Kind, l.Unit, l.Period, l.Tax = item.Kind, item.Unit, item.Period, item.Tax
	l.Base = b.c.ItemPrice(item)
	l.CostEach = b.c.ItemCost(item)
	l.Break = BreakOff(b.breakClass(item.Breaks), l.Quantity)
}

// breakClass finds a quantity discount by id; nil for an item without one.
func (b *builder) breakClass(id string) *catalog.BreakClass {
	for i := range b.c.Rates.Breaks {
		if b.c.Rates.Breaks[i].ID == id {
			return &b.c.Rates.Breaks[i]
		}
	}
	return nil
}

// amount works a line out from its terms.
func (b *builder) amount(l *Line) {
	each := l.Base.Mul(l.Factor).Mul(off(l.Break)).Mul(off(l.Class)).Mul(off(l.Hand)).Mul(off(l.Job))
	l.Offer = b.round(l.Quantity.Mul(each))
	l.Cost = b.round(l.Ordered.Mul(l.CostEach))
	l.Amount = money.Zero
	if l.Ordered.IsPositive() {
		l.Amount = l.Offer
	}
}

// labour makes a line of plain hours and one of overtime for each skill.
func (b *builder) labour() {
	for i := range b.c.Rates.Skills {
		skill := &b.c.Rates.Skills[i]
		plain, over, cost, any := skillTotals(b.hours, skill)
		if !any {
			continue
		}
		// The wages of both stand on the first line: overtime is part of its cost.
		b.hoursLine("H:"+skill.ID, skill.Name, plain, skill.Bill, cost)
		b.hoursLine("O:"+skill.ID, skill.Name+", overtime", over, b.round(skill.Bill.Mul(b.c.Rates.Overtime.BillFactor)), money.Zero)
	}
}

// skillTotals adds up a skill's hours over all windows.
func skillTotals(r *labour.Result, skill *catalog.Skill) (plain, over, cost money.Number, any bool) {
	for i := range r.Skills {
		if s := &r.Skills[i]; s.Skill == skill {
			plain, over, cost, any = plain.Add(s.Plain), over.Add(s.Over), cost.Add(s.Cost), true
		}
	}
	return plain, over, cost, any
}

// hoursLine charges hours, or only counts their cost where labour is within
// the price of the tents.
func (b *builder) hoursLine(key, name string, hours, bill, cost money.Number) {
	if Included(b.j) {
		bill = money.Zero
	}
	amount := b.round(hours.Mul(bill))
	b.r.Lines = append(b.r.Lines, Line{Key: key, Section: SectionLabour, Kind: Labour, Name: name, Quantity: hours, Ordered: hours,
		Unit: "hour", Base: bill, Factor: money.One, Offer: amount, Amount: amount, Cost: cost, Tax: b.c.Rates.LabourTax})
}

// Included tells whether labour is within the price of the tents.
func Included(j *job.Job) bool { return j.Labour.Charge == "included" }

// delivery charges each trip that is driven: a flat sum and the distance one
// way, at least the zone's minimum for all.
func (b *builder) delivery() {
	zone := b.j.Zone(b.c)
	trips := labour.Drives(&b.plan.Out)
	distance := parts.Distance(b.c, b.j.Delivery.Distance)
	l := Line{Key: "D:delivery", Section: SectionDelivery, Kind: Delivery, Name: "Delivery and collection, " + zone.Name,
		Quantity: money.Int(trips), Ordered: money.Int(trips), Unit: "trip", Factor: money.One, Tax: b.c.Rates.DeliveryTax}
	if !b.j.Delivery.Free {
		l.Base = b.round(zone.Flat.Add(zone.PerMile.Mul(distance)))
	}
	l.Offer = b.round(l.Quantity.Mul(l.Base))
	if trips > 0 && !b.j.Delivery.Free && l.Offer.LessThan(zone.Minimum) {
		l.Offer = b.round(zone.Minimum)
	}
	l.Amount = l.Offer
	driven := money.Int(2 * (trips + labour.Drives(&b.plan.Back))).Mul(distance) // each trip goes there and home
	l.Cost = b.round(TripCosts(b.plan).Add(driven.Mul(b.c.Rates.MileCost)))
	b.r.Lines = append(b.r.Lines, l)
}

// TripCosts is what the vehicles cost the yard beside the distance.
func TripCosts(plan *load.Plan) money.Number {
	sum := money.Zero
	for i := range plan.Out.Trips {
		sum = sum.Add(plan.Out.Trips[i].Vehicle.TripCost)
	}
	return sum
}

// loadings charges the hours that cost more: on delivery, and on the labour of
// the windows of work that the loading is for.
func (b *builder) loadings() {
	for _, id := range b.j.Delivery.Loadings {
		for i := range b.c.Rates.Loadings {
			if loading := &b.c.Rates.Loadings[i]; loading.ID == id {
				b.follow("A:"+id, loading.Name, Loading, b.loaded(loading), loading.Percent, b.c.Rates.LabourTax)
			}
		}
	}
}

// loaded is what a loading is a percentage of.
func (b *builder) loaded(loading *catalog.Loading) money.Number {
	sum := b.r.Sum(Delivery)
	for i := range b.hours.Skills {
		if s := &b.hours.Skills[i]; !Included(b.j) && slices.Contains(loading.Windows, s.Window) {
			sum = sum.Add(s.Bill)
		}
	}
	return sum
}

// waiver is a percentage of hire after discounts.
func (b *builder) waiver() {
	b.r.Hire = b.r.Sum(Hire)
	b.follow("X:waiver", "Damage waiver", Waiver, b.r.Hire, b.c.Rates.Waiver, b.c.Rates.WaiverTax)
}

// follow adds a line that is a percentage of others.
func (b *builder) follow(key, name, kind string, base, percent money.Number, tax string) {
	amount := b.round(base.Mul(money.Percent(percent)))
	b.r.Lines = append(b.r.Lines, Line{Key: key, Section: SectionOther, Kind: kind, Name: name, Quantity: percent, Ordered: percent,
		Unit: "%", Base: base, Factor: money.One, Offer: amount, Amount: amount, Tax: tax})
}

// minimum tops a small order up.
func (b *builder) minimum() {
	gap := money.Zero
	if subtotal := b.r.Sum(); subtotal.LessThan(b.c.Rates.MinOrder) {
		gap = b.round(b.c.Rates.MinOrder.Sub(subtotal))
	}
	b.r.Lines = append(b.r.Lines, Line{Key: "M:minimum", Section: SectionOther, Kind: Minimum, Name: "Top-up to the minimum order",
		Quantity: money.One, Ordered: money.One, Unit: "each", Base: gap, Factor: money.One, Offer: gap, Amount: gap, Tax: b.c.Rates.DeliveryTax})
}
