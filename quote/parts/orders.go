package parts

import (
	"fmt"
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/tent"
)

// SectionTents is the section of a quote that holds the tents; all others come
// from items.
const SectionTents = "Tents"

// orders lists what the customer orders: each tent with its walls, doors and
// gutter, then the job's items.
func (b *builder) orders() {
	for i := range b.r.Tents {
		t := &b.r.Tents[i]
		b.addOrder(Order{
			Key: tentKey(t), Section: SectionTents, Name: TentName(t), Tent: t,
			Quantity: money.Int(t.Job.Many()), Discount: t.Job.Discount, Pos: t.Job.Where.Pos(),
		})
	}
	for i := range b.r.Tents {
		b.orderSides(&b.r.Tents[i])
	}
	for i := range b.j.Items {
		line := &b.j.Items[i]
		item := b.c.Item(line.Item)
		b.addOrder(Order{
			Key: fmt.Sprintf("L:%d", i+1), Section: item.Section, Name: item.Name, Item: item,
			Quantity: line.Quantity, Optional: line.Optional, Chosen: line.Chosen,
			Discount: line.Discount, Note: line.Note, Pos: line.Where.Pos(),
		})
	}
}

// Orders tells whether an item is on the job and counts; an extra that is not
// chosen does not.
func (r *Result) IsOrdered(item string) bool {
	return slices.ContainsFunc(r.Orders, func(o Order) bool {
		return o.Item != nil && o.Item.ID == item && o.Ordered().IsPositive()
	})
}

// addOrder takes an order line in and remembers where it stands.
func (b *builder) addOrder(o Order) {
	b.ordered[o.Key] = len(b.r.Orders)
	b.r.Orders = append(b.r.Orders, o)
}

// tentKey is the key of a tent's own order line.
func tentKey(t *tent.Tent) string { return "T:" + t.Job.ID }

// TentName is what the quote calls a tent: the customer's word for it, if there
// is one, before family and size.
func TentName(t *tent.Tent) string {
	name := fmt.Sprintf("%s %s", t.Family.Name, t.Size.ID)
	if t.Job.Name != "" {
		name = t.Job.Name + ": " + name
	}
	return name
}

// orderSides makes the order lines that follow from a tent's sides; their
// quantity comes from a count, so that it grows with the number of tents.
func (b *builder) orderSides(t *tent.Tent) {
	add := func(item *catalog.Item, driver string, per money.Number) {
		count := Count{Key: t.Job.ID + "." + driver, Driver: driver, Tent: t.Job.ID,
			Name: item.Name, Per: per, Order: tentKey(t)}
		b.addCount(count)
		b.addOrder(Order{
			Key: "W:" + count.Key, Section: item.Section, Name: item.Name + ", " + t.Label(), Item: item, Tent: t,
			Quantity: b.r.Amount(count.Key), Derived: count.Key, Pos: t.Job.Where.Pos(),
		})
	}
	for i := range t.Family.Walls {
		spec := &t.Family.Walls[i]
		if length := t.Walled(spec); length > 0 {
			add(b.c.Item(spec.Item), "wall "+spec.Kind, Length(b.c.Company.Units, length))
		}
	}
	for i := range t.Family.Doors {
		spec := &t.Family.Doors[i]
		if n := t.DoorsOf(spec); n > 0 {
			add(b.c.Item(spec.Item), "door "+spec.Kind, money.Int(n))
		}
	}
	if t.Job.Joins != "" && t.Family.Gutter != nil {
		add(b.c.Item(t.Family.Gutter.Item), "gutter", Length(b.c.Company.Units, t.GutterLength()))
	}
}

// Length is a length in feet or metres, to two places.
func Length(sys unit.System, l unit.Length) money.Number {
	value := l.Feet()
	if sys == unit.Metric {
		value = l.Metres()
	}
	return money.Round(money.Float(value), 2)
}

// Area is an area in the shop's unit, square feet or square metres, to two
// places, halves away from zero.
func Area(c *catalog.Catalog, a unit.Area) money.Number {
	return money.Round(money.Float(a.In(c.Company.Units)), 2)
}

// plan orders what earlier stages decided to bring. Its quantity is a count, so
// that nobody takes it for one that was ordered by hand.
func (b *builder) plan(planned []Planned) {
	for _, p := range planned {
		count := Count{Key: "job.planned " + p.Item.ID, Driver: "planned", Name: p.Item.Name + ", planned", Per: p.Quantity}
		b.addCount(count)
		b.addOrder(Order{Key: "P:" + p.Item.ID, Section: p.Item.Section, Name: p.Item.Name, Item: p.Item,
			Quantity: p.Quantity, Derived: count.Key, Note: p.Why, Pos: b.j.Where.Pos()})
	}
}
