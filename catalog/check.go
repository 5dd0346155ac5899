package catalog

import (
	"fmt"
	"sort"
	"strings"

	"tentwright/catalog/diag"
	"tentwright/catalog/money"
	"tentwright/catalog/source"
)

// known is the ids of one kind, for look-ups and for the nearest name.
type known struct {
	kind string
	ids  map[string]diag.Pos

	folded map[string]diag.Pos // in lower case: spreadsheets hold A and a for one
	part   bool                // a fault of form hides some of the ids
}

// add takes an id in and reports a repeated one; an empty one was not read.
func (k *known) add(list *diag.List, id string, pos diag.Pos) {
	if id == "" {
		return
	}
	if why := BadInSheet(id); why != "" {
		list.Addf(pos, diag.BadValue, "%s %q %s", k.kind, id, why)
	}
	folded := strings.ToLower(id)
	if first, again := k.folded[folded]; again {
		list.Add(diag.Problem{Pos: pos, Code: RepeatedID, Related: []diag.Pos{first},
			Message: fmt.Sprintf("%s %q is defined twice; each id may stand once, whatever its capitals", k.kind, id)})
		return
	}
	k.ids[id], k.folded[folded] = pos, pos
}

// BadInSheet says why a spreadsheet program could not look an id up by itself,
// or "". Such programs take * ? ~ for patterns and < > = for comparisons; the
// bar parts tags from each other.
func BadInSheet(id string) string {
	if at := strings.IndexAny(id, "*?~<>=|"); at >= 0 {
		return fmt.Sprintf("has a %q, by which no workbook can look it up; letters, digits, - and . were expected", id[at])
	}
	return ""
}

// want reports an id that is not known, with the nearest that is.
func (k *known) want(list *diag.List, id string, pos diag.Pos) {
	if _, ok := k.ids[id]; ok || id == "" || k.part {
		return
	}
	list.Add(diag.Problem{Pos: pos, Code: UnknownID,
		Message: fmt.Sprintf("%s %q is not known; an id that the shop's files define was expected", k.kind, id),
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

func newKnown(kind string) *known {
	return &known{kind: kind, ids: map[string]diag.Pos{}, folded: map[string]diag.Pos{}}
}

// checker holds what is known while the kinds are checked against each other.
type checker struct {
	c    *Catalog
	form *source.Form
	list *diag.List

	parts, items, profiles, fabrics, families            *known
	periods, breaks, taxClasses, skills, factors, labour *known
	vehicles, tags, windows                              *known
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
	delete(m, "") // of what could not be read
	return m
}

// check runs every cross-check of the shop that its faults of form leave
// certain, and works out the weights.
func (c *Catalog) check(f *files, form *source.Form, list *diag.List) {
	k := c.collect(form, list)
	k.checkUnits(f)
	if _, ok := money.CurrencyOf(c.Company.Currency); !ok {
		list.Add(diag.Problem{Pos: c.Company.Where.Of("currency"), Code: BadCurrency, Advice: diag.DidYouMean(c.Company.Currency, money.CurrencyCodes()),
			Message: fmt.Sprintf("currency %q is not known; an ISO 4217 code such as USD or EUR was expected", c.Company.Currency)})
	}
	k.checkProfiles()
	k.checkParts()
	k.checkRules()
	k.checkItems()
	k.checkFamilies()
	k.checkLabour()
	k.checkSpread()
	k.checkSharing()
	k.checkRates()
	k.checkFleet()
	k.checkMore()
	c.weigh(form, list)
}

// checkMore checks the files that a shop need not have.
func (k *checker) checkMore() {
	if k.c.Anchors != nil {
		k.checkAnchors()
	}
	if k.c.Occupancy != nil {
		k.checkOccupancy()
	}
	if k.c.Power != nil {
		k.checkPower()
	}
	if k.c.Calendar != nil {
		k.checkCalendar()
	}
	if k.c.Crew != nil {
		k.checkCrew()
		k.checkLifting()
		k.checkCrewPoints()
		k.checkDuty()
	}
}

// checkUnits wants every file's numbers to be for the company's units.
func (k *checker) checkUnits(f *files) {
	want := k.c.Company.Units
	for _, b := range []*basis{&f.tents.basis, &f.parts.basis, &f.items.basis, &f.labour.basis, &f.rates.basis, &f.power.basis} {
		if b.Units != want && b.Units != "" && want != "" {
			k.list.Addf(b.Where.Of("units"), UnitsDiffer, "the numbers of this file are for %s units but the company's are %s; "+
				"convert its prices per area and length and its minutes per weight and distance first, then this line", b.Units, want)
		}
	}
}

// collect takes in every id of the shop.
func (c *Catalog) collect(form *source.Form, list *diag.List) *checker {
	k := &checker{c: c, form: form, list: list,
		parts: newKnown("part"), items: newKnown("item"), profiles: newKnown("profile"), fabrics: newKnown("fabric"),
		families: newKnown("tent family"), periods: newKnown("period"), breaks: newKnown("quantity break"),
		taxClasses: newKnown("tax class"), skills: newKnown("skill"), factors: newKnown("site factor"),
		labour: newKnown("labour rule"), vehicles: newKnown("vehicle"), tags: newKnown("tag"),
		windows: newKnown("window of work")}
	for i := range c.Parts {
		for _, tag := range c.Parts[i].Tags {
			k.tags.ids[tag] = c.Parts[i].Where.Of("tags")
		}
	}
	k.tags.part = form.In("parts.yaml")
	addAll(k, k.parts, "parts.yaml", c.Parts, func(x *Part) (string, source.Where) { return x.ID, x.Where })
	addAll(k, k.items, "accessories.yaml", c.Items, func(x *Item) (string, source.Where) { return x.ID, x.Where })
	addAll(k, k.profiles, "parts.yaml", c.Profiles, func(x *Profile) (string, source.Where) { return x.ID, x.Where })
	addAll(k, k.fabrics, "parts.yaml", c.Fabrics, func(x *Fabric) (string, source.Where) { return x.ID, x.Where })
	addAll(k, k.families, "tents.yaml", c.Families, func(x *Family) (string, source.Where) { return x.ID, x.Where })
	addAll(k, k.periods, "rates.yaml", c.Rates.Periods, func(x *Period) (string, source.Where) { return x.ID, x.Where })
	addAll(k, k.breaks, "rates.yaml", c.Rates.Breaks, func(x *BreakClass) (string, source.Where) { return x.ID, x.Where })
	addAll(k, k.taxClasses, "rates.yaml", c.Rates.TaxClasses, func(x *TaxClass) (string, source.Where) { return x.ID, x.Where })
	addAll(k, k.skills, "rates.yaml", c.Rates.Skills, func(x *Skill) (string, source.Where) { return x.ID, x.Where })
	addAll(k, k.windows, "rates.yaml", c.Rates.Windows, func(x *Window) (string, source.Where) { return x.ID, x.Where })
	addAll(k, newKnown("tax"), "rates.yaml", c.Rates.Taxes, func(x *Tax) (string, source.Where) { return x.ID, x.Where })
	addAll(k, newKnown("delivery zone"), "rates.yaml", c.Rates.Zones, func(x *Zone) (string, source.Where) { return x.ID, x.Where })
	addAll(k, newKnown("loading"), "rates.yaml", c.Rates.Loadings, func(x *Loading) (string, source.Where) { return x.ID, x.Where })
	addAll(k, newKnown("customer class"), "rates.yaml", c.Rates.Classes, func(x *CustomerClass) (string, source.Where) { return x.ID, x.Where })
	addAll(k, k.factors, "site.yaml", c.Site, func(x *SiteFactor) (string, source.Where) { return x.ID, x.Where })
	addAll(k, k.labour, "labour.yaml", c.Labour, func(x *LabourRule) (string, source.Where) { return x.ID, x.Where })
	addAll(k, k.vehicles, "trucks.yaml", c.Fleet.Vehicles, func(x *Vehicle) (string, source.Where) { return x.ID, x.Where })
	return k
}

// addAll takes in the ids of one kind, which a file defines.
func addAll[T any](k *checker, kind *known, file string, all []T, of func(*T) (string, source.Where)) {
	ids := make([]string, len(all))
	for i := range all {
		id, where := of(&all[i])
		ids[i] = id
		kind.add(k.list, id, where.Of("id"))
	}
	kind.part = !k.form.Complete(file, ids)
}

// checkDriver reports a rule that nothing drives or that names a driver which
// is never counted.
func (k *checker) checkDriver(driver string, rule source.Where) {
	if driver == "" {
		if k.form.Sound(rule, "driver") {
			k.list.Addf(rule.Pos(), NoDriver, "the rule has no driver; it must say what is counted, e.g. legs or tag:chair")
		}
		return
	}
	pos := rule.Of("driver")
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
