package catalog

import (
	"fmt"
	"sort"
	"strings"

	"tentwright/catalog/diag"
	"tentwright/catalog/money"
)

// known is the ids of one kind, for look-ups and for the nearest name.
type known struct {
	kind string
	ids  map[string]diag.Pos
}

// add takes an id in and reports a repeated one.
func (k *known) add(list *diag.List, id string, pos diag.Pos) {
	if first, again := k.ids[id]; again {
		list.Add(diag.Problem{Pos: pos, Code: RepeatedID, Related: []diag.Pos{first},
			Message: fmt.Sprintf("%s %q is defined twice; each id may stand once", k.kind, id)})
		return
	}
	k.ids[id] = pos
}

// want reports an id that is not known, with the nearest that is.
func (k *known) want(list *diag.List, id string, pos diag.Pos) {
	if _, ok := k.ids[id]; ok || id == "" {
		return
	}
	list.Add(diag.Problem{Pos: pos, Code: UnknownID,
		Message: fmt.Sprintf("%s %q is not defined; the id of a defined one was expected", k.kind, id),
		Advice:  diag.DidYouMean(id, k.names())})
}

func (k *known) names() []string {
	names := make([]string, 0, len(k.ids))
	for id := range k.ids {
		names = append(names, id)
	}
	sort.Strings(names)
	return names
}

func newKnown(kind string) *known { return &known{kind: kind, ids: map[string]diag.Pos{}} }

// checker holds what is known while the kinds are checked against each other.
type checker struct {
	c    *Catalog
	list *diag.List

	parts, items, profiles, fabrics, families            *known
	periods, breaks, taxClasses, skills, factors, labour *known
	vehicles, tags                                       *known
}

// index builds the look-ups; repeated ids are reported by collect.
func (c *Catalog) index() {
	c.parts = byID(c.Parts, func(p *Part) string { return p.ID })
	c.items = byID(c.Items, func(i *Item) string { return i.ID })
	c.families = byID(c.Families, func(f *Family) string { return f.ID })
	c.fabrics = byID(c.Fabrics, func(f *Fabric) string { return f.ID })
	c.profiles = byID(c.Profiles, func(p *Profile) string { return p.ID })
}

func byID[T any](all []T, id func(*T) string) map[string]*T {
	m := make(map[string]*T, len(all))
	for i := range all {
		m[id(&all[i])] = &all[i]
	}
	return m
}

// check runs every cross-check of the shop.
func (c *Catalog) check(list *diag.List) {
	k := c.collect(list)
	if _, ok := money.CurrencyOf(c.Company.Currency); !ok {
		list.Addf(c.Company.Where.Of("currency"), BadCurrency, "currency %q is not known; an ISO 4217 code such as USD or EUR was expected", c.Company.Currency)
	}
	k.checkProfiles()
	k.checkParts()
	k.checkRules()
	k.checkItems()
	k.checkFamilies()
	k.checkLabour()
	k.checkRates()
	k.checkFleet()
}

// collect takes in every id of the shop.
func (c *Catalog) collect(list *diag.List) *checker {
	k := &checker{c: c, list: list,
		parts: newKnown("part"), items: newKnown("item"), profiles: newKnown("profile"), fabrics: newKnown("fabric"),
		families: newKnown("tent family"), periods: newKnown("period"), breaks: newKnown("quantity break"),
		taxClasses: newKnown("tax class"), skills: newKnown("skill"), factors: newKnown("site factor"),
		labour: newKnown("labour rule"), vehicles: newKnown("vehicle"), tags: newKnown("tag")}
	for i := range c.Parts {
		p := &c.Parts[i]
		k.parts.add(list, p.ID, p.Where.Of("id"))
		for _, tag := range p.Tags {
			k.tags.ids[tag] = p.Where.Of("tags")
		}
	}
	addAll(k.items, list, c.Items, func(x *Item) (string, diag.Pos) { return x.ID, x.Where.Of("id") })
	addAll(k.profiles, list, c.Profiles, func(x *Profile) (string, diag.Pos) { return x.ID, x.Where.Of("id") })
	addAll(k.fabrics, list, c.Fabrics, func(x *Fabric) (string, diag.Pos) { return x.ID, x.Where.Of("id") })
	addAll(k.families, list, c.Families, func(x *Family) (string, diag.Pos) { return x.ID, x.Where.Of("id") })
	addAll(k.periods, list, c.Rates.Periods, func(x *Period) (string, diag.Pos) { return x.ID, x.Where.Of("id") })
	addAll(k.breaks, list, c.Rates.Breaks, func(x *BreakClass) (string, diag.Pos) { return x.ID, x.Where.Of("id") })
	addAll(k.taxClasses, list, c.Rates.TaxClasses, func(x *TaxClass) (string, diag.Pos) { return x.ID, x.Where.Of("id") })
	addAll(k.skills, list, c.Rates.Skills, func(x *Skill) (string, diag.Pos) { return x.ID, x.Where.Of("id") })
	addAll(k.factors, list, c.Site, func(x *SiteFactor) (string, diag.Pos) { return x.ID, x.Where.Of("id") })
	addAll(k.labour, list, c.Labour, func(x *LabourRule) (string, diag.Pos) { return x.ID, x.Where.Of("id") })
	addAll(k.vehicles, list, c.Fleet.Vehicles, func(x *Vehicle) (string, diag.Pos) { return x.ID, x.Where.Of("id") })
	return k
}

func addAll[T any](k *known, list *diag.List, all []T, at func(*T) (string, diag.Pos)) {
	for i := range all {
		id, pos := at(&all[i])
		k.add(list, id, pos)
	}
}

// checkDriver reports a rule that nothing drives or that names a driver which
// is never counted.
func (k *checker) checkDriver(driver string, pos, missing diag.Pos) {
	if driver == "" {
		k.list.Addf(missing, NoDriver, "the rule has no driver; it must say what is counted, e.g. legs or tag:chair")
		return
	}
	if tag, ok := strings.CutPrefix(driver, TagDriver); ok {
		k.tags.want(k.list, tag, pos)
		return
	}
	if _, ok := FindDriver(driver); ok {
		return
	}
	var names []string
	for _, d := range Drivers() {
		names = append(names, d.ID)
	}
	k.list.Add(diag.Problem{Pos: pos, Code: UnknownDriver,
		Message: fmt.Sprintf("driver %q is never counted; a count of the tents or the job was expected", driver),
		Advice:  diag.DidYouMean(driver, names)})
}

// checkPrice reports a price of zero that is not meant, and a free price that
// is not zero.
func (k *checker) checkPrice(price money.Number, free bool, pos diag.Pos, what string) {
	switch {
	case price.IsZero() && !free:
		k.list.Addf(pos, ZeroPrice, "%s has a price of zero; a price above zero, or free: true, was expected", what)
	case free && !price.IsZero():
		k.list.Addf(pos, FreeWithPrice, "%s is marked free but has a price of %s; one of the two was expected", what, price)
	}
}
