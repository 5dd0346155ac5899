package listing

import (
	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/source"
	"tentwright/catalog/unit"
)

// entry is one thing of the shop as it is today. A field that it cannot have
// is not among its values, and without says why.
type entry struct {
	id, name string
	where    source.Where
	values   map[string]value
	without  map[string]string
}

// entriesOf is everything of a kind that the shop has.
func entriesOf(c *catalog.Catalog, into string) []entry {
	var all []entry
	switch into {
	case "items":
		for i := range c.Items {
			all = append(all, itemEntry(&c.Items[i]))
		}
	case "parts":
		for i := range c.Parts {
			all = append(all, partEntry(c, &c.Parts[i]))
		}
	case "sizes":
		for i := range c.Families {
			f := &c.Families[i]
			for j := range f.Sizes {
				all = append(all, sizeEntry(f, &f.Sizes[j]))
			}
		}
	}
	return all
}

// itemEntry is an item; what only a sub-hired one has is without the others.
func itemEntry(it *catalog.Item) entry {
	e := entry{id: it.ID, name: it.Name, where: it.Where, values: map[string]value{
		"name": words(it.Name), "price": figure(it.Price, it.Where, "price"), "cost": figure(it.Cost, it.Where, "cost"),
		"describe": words(it.Describe)}}
	if s := it.SubHire; s != nil {
		e.values["sub_hire.cost"] = figure(s.Cost, s.Where, "cost")
		e.values["sub_hire.markup"] = figure(s.Markup, s.Where, "markup")
		return e
	}
	const why = "the item is not hired in from anyone; an item with sub_hire was expected"
	e.without = map[string]string{"sub_hire.cost": why, "sub_hire.markup": why}
	return e
}

// partEntry is a part; one cut from a profile or a cloth has no weight to set.
func partEntry(c *catalog.Catalog, p *catalog.Part) entry {
	e := entry{id: p.ID, name: p.Name, where: p.Where, values: map[string]value{
		"name": words(p.Name), "owned": figure(money.Int(p.Owned), p.Where, "owned"), "bin": words(p.Bin),
		"replacement": optional(p.Replacement)}}
	if p.Weight == nil {
		e.without = map[string]string{"weight": "the weight of this part follows from its pole or cloth; a part with a weight of its own was expected"}
		return e
	}
	e.values["weight"] = massOf(c, *p.Weight)
	return e
}

// sizeEntry is a size by the id that jobs name it by.
func sizeEntry(f *catalog.Family, s *catalog.Size) entry {
	return entry{id: f.ID + ":" + s.ID, name: f.Name + " " + s.ID, where: s.Where, values: map[string]value{
		"price": optional(s.Price), "cost": optional(s.Cost), "owned": figure(money.Int(s.Owned), s.Where, "owned")}}
}

// words is a text; an empty one is not given.
func words(text string) value { return value{shown: text, same: text, given: text != ""} }

// figure is a number that counts as zero when the file does not give it.
func figure(n money.Number, where source.Where, field string) value {
	return value{shown: n.String(), same: n.String(), given: !n.IsZero() || where.Of(field) != where.Pos()}
}

// optional is a number that is not the same as zero when it is not given.
func optional(n *money.Number) value {
	if n == nil {
		return value{}
	}
	return value{shown: n.String(), same: n.String(), given: true}
}

// massOf is a weight as the shop shows it.
func massOf(c *catalog.Catalog, m unit.Mass) value {
	return value{shown: m.Text(c.Company.Units), same: massKey(m), given: true}
}

// old is the value for people.
func (v value) old() string {
	if !v.given {
		return "none"
	}
	return v.shown
}
