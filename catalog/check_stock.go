package catalog

import (
	"fmt"

	"tentwright/catalog/diag"
)

func (k *checker) checkProfiles() {
	for i := range k.c.Profiles {
		p := &k.c.Profiles[i]
		narrow := p.Outside
		if p.Across > 0 && p.Across < narrow {
			narrow = p.Across
		}
		if 2*p.Wall > narrow && k.form.Sound(p.Where, "outside", "across", "wall") {
			k.list.Addf(p.Where.Of("wall"), BadProfile, "profile %q has walls thicker than half its outside; at most %s was expected", p.ID, (narrow / 2).In(k.c.Company.Units))
		}
	}
}

func (k *checker) checkParts() {
	for i := range k.c.Parts {
		p := &k.c.Parts[i]
		k.checkPartWeight(p)
		if !p.Consumable && p.Replacement == nil && k.form.Sound(p.Where, "consumable", "replacement") {
			k.list.Addf(p.Where.Pos(), NoReplacement, "part %q comes back but has no replacement charge; replacement, or consumable: true, was expected", p.ID)
		}
	}
}

func (k *checker) checkPartWeight(p *Part) {
	ways := 0
	if p.Weight != nil {
		ways++
	}
	if p.Pole != nil {
		ways++
		k.profiles.want(k.list, p.Pole.Profile, p.Pole.Where.Of("profile"))
	}
	if p.Cloth != nil {
		ways++
		k.fabrics.want(k.list, p.Cloth.Fabric, p.Cloth.Where.Of("fabric"))
	}
	switch {
	case !k.form.Sound(p.Where, "weight", "pole", "cloth"):
	case ways == 0:
		k.list.Addf(p.Where.Pos(), NoWeight, "part %q has no weight; weight, pole or cloth was expected", p.ID)
	case ways > 1:
		k.list.Addf(p.Where.Pos(), TwoWeights, "part %q has its weight in %d ways; only one of weight, pole and cloth was expected", p.ID, ways)
	}
}

func (k *checker) checkRules() {
	ids := newKnown("part rule")
	for i := range k.c.Rules {
		r := &k.c.Rules[i]
		ids.add(k.list, r.ID, r.Where.Of("id"))
		k.parts.want(k.list, r.Part, r.Where.Of("part"))
		k.checkDriver(r.Driver, r.Where)
		if d, ok := FindDriver(r.Driver); ok && d.Late {
			k.list.Addf(r.Where.Of("driver"), LateDriver, "driver %q is known only after the parts are; a count of the tents or the job was expected", r.Driver)
		} else {
			k.checkRuleFamilies(r.Driver, r.Families, r.Where)
		}
		k.wantAll(k.families, r.Families, func(n int) diag.Pos { return r.Where.Of(fmt.Sprintf("families[%d]", n)) })
	}
}

func (k *checker) wantAll(in *known, ids []string, at func(int) diag.Pos) {
	for n, id := range ids {
		in.want(k.list, id, at(n))
	}
}

func (k *checker) checkItems() {
	for i := range k.c.Items {
		it := &k.c.Items[i]
		if k.form.Sound(it.Where, "price", "free", "sub_hire") {
			k.checkPrice(k.c.itemPrice(it), it.Free, it.Where.Of("price"), fmt.Sprintf("item %q", it.ID))
		}
		k.periods.want(k.list, it.Period, it.Where.Of("period"))
		k.breaks.want(k.list, it.Breaks, it.Where.Of("breaks"))
		k.taxClasses.want(k.list, it.Tax, it.Where.Of("tax"))
		k.wantAll(k.items, it.Needs, func(n int) diag.Pos { return it.Where.Of(fmt.Sprintf("needs[%d]", n)) })
		for j := range it.Contents {
			k.checkContent(it, &it.Contents[j])
		}
		if cycle := k.c.kitCycle(it); cycle != "" && it.ID != "" {
			k.list.Addf(it.Where.Of("contents"), KitCycle, "kit %q contains itself by way of %q; a kit of other things was expected", it.ID, cycle)
		}
	}
}

func (k *checker) checkContent(it *Item, content *Content) {
	if (content.Part == "") == (content.Item == "") && k.form.Sound(content.Where, "part", "item") {
		k.list.Addf(content.Where.Pos(), BadContent, "a content of %q names %s; either part or item was expected", it.ID,
			map[bool]string{true: "neither a part nor an item", false: "both a part and an item"}[content.Part == ""])
		return
	}
	k.parts.want(k.list, content.Part, content.Where.Of("part"))
	k.items.want(k.list, content.Item, content.Where.Of("item"))
	inner := k.c.Item(content.Item)
	measured := inner != nil && !inner.CountsWhole() // half a foot of it can be in a kit
	if it.CountsWhole() && !measured && !content.Count.IsInteger() {
		k.list.Addf(content.Where.Of("count"), UnitMismatch, "item %q is counted in whole units (%s), so %s of a content does not fit; a whole count was expected", it.ID, it.Unit, content.Count)
	}
}

// CountsWhole tells whether the item is counted in pieces; the others are
// measured and may have a fraction.
func (it *Item) CountsWhole() bool {
	switch it.Unit {
	case "each", "pair", "set":
		return true
	}
	return false
}

// kitCycle finds an item by way of which a kit contains itself.
func (c *Catalog) kitCycle(start *Item) string {
	seen := map[string]bool{}
	var walk func(it *Item) string
	walk = func(it *Item) string {
		for _, content := range it.Contents {
			if content.Item == start.ID {
				return it.ID
			}
			next := c.Item(content.Item)
			if next == nil || seen[next.ID] {
				continue
			}
			seen[next.ID] = true
			if by := walk(next); by != "" {
				return by
			}
		}
		return ""
	}
	return walk(start)
}
