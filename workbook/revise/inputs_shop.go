package revise

import (
	"maps"
	"path"
	"slices"
	"strings"

	"tentwright/catalog/source"
	"tentwright/quote/price"
	"tentwright/workbook"
)

// ofShop adds a number in a file of the shop.
func (l *inputList) ofShop(at address, k kind, where source.Where, field string) {
	if where.Path() != "" {
		field = where.Path() + "." + field
	}
	l.all = append(l.all, input{at: at, kind: k, file: path.Base(where.Pos().File), path: field})
}

// terms are the shop's terms that hold for every job.
func (l *inputList) terms() {
	r := &l.c.Rates
	l.ofShop(named("rate_waiver"), percent, r.Where, "waiver")
	l.ofShop(named("rate_deposit"), percent, l.c.Company.Quote.Where, "deposit")
	l.ofShop(named("rate_min_order"), number, r.Where, "min_order")
	l.ofShop(named("rate_margin_floor"), percent, r.Where, "margin_floor")
	l.ofShop(named("rate_mileage"), number, r.Where, "mile_cost")
	l.ofShop(named("rate_wet"), number, r.Where, "wet_factor")
	l.ofShop(named("rate_rider"), number, l.c.Fleet.Where, "rider")
	unit := l.c.Company.Units.MassUnit()
	l.all[len(l.all)-1].text = func(v value) string { return v.text + " " + unit }
	o := r.Overtime.Where
	for _, field := range []string{"daily", "weekly", "longest", "cost_factor", "bill_factor"} {
		l.ofShop(named("overtime_"+strings.TrimSuffix(field, "_factor")), number, o, field)
	}
}

// skills are what hours are charged at and paid at.
func (l *inputList) skills() {
	for i := range l.c.Rates.Skills {
		k := &l.c.Rates.Skills[i]
		l.ofShop(named("rate_"+workbook.Ident(k.ID)+"_bill"), number, k.Where, "bill")
		l.ofShop(named("rate_"+workbook.Ident(k.ID)+"_cost"), number, k.Where, "cost")
	}
}

// steps are prices by days, and quantity breaks.
func (l *inputList) steps() {
	for _, p := range l.q.Price.Periods {
		name := "period_" + workbook.Ident(p.Period.ID)
		for n := range p.Period.Steps {
			step := p.Period.Steps[n].Where
			if n > 0 {
				l.ofShop(address{name: name + "_from", index: n}, whole, step, "from")
			}
			l.ofShop(address{name: name + "_factor", index: n}, number, step, "factor")
			l.ofShop(address{name: name + "_each", index: n}, number, step, "each")
		}
	}
	for i := range l.c.Rates.Breaks {
		b := &l.c.Rates.Breaks[i]
		name := "break_" + workbook.Ident(b.ID)
		for n := range b.Steps {
			l.ofShop(address{name: name + "_from", index: n}, whole, b.Steps[n].Where, "from")
			l.ofShop(address{name: name + "_off", index: n}, percent, b.Steps[n].Where, "off")
		}
	}
}

// charges are taxes, delivery and surcharges.
func (l *inputList) charges() {
	for _, t := range l.q.Price.Taxes {
		l.ofShop(named("tax_"+workbook.Ident(t.Tax.ID)+"_rate"), percent, t.Tax.Where, "rate")
	}
	for i := range l.c.Rates.Zones {
		z := &l.c.Rates.Zones[i]
		cell := func(column string) address { return address{table: "zones", key: z.ID, column: column} }
		l.ofShop(cell("flat"), number, z.Where, "flat")
		l.ofShop(cell("each"), number, z.Where, "per_mile")
		l.ofShop(cell("minimum"), number, z.Where, "minimum")
		l.ofShop(cell("upto"), number, z.Where, "up_to")
		limit := &l.all[len(l.all)-1]
		limit.none, limit.text = true, func(v value) string { return v.text + " " + l.c.Company.Units.DistanceUnit() }
	}
	for i := range l.q.Price.Lines {
		if line := &l.q.Price.Lines[i]; line.Kind == price.Loading {
			l.loading(line.Key)
		}
	}
}

func (l *inputList) loading(key string) {
	for i := range l.c.Rates.Loadings {
		if loading := &l.c.Rates.Loadings[i]; "A:"+loading.ID == key {
			l.ofShop(named("loading_"+workbook.Ident(key)), percent, loading.Where, "percent")
		}
	}
}

// minutes are those of every labour rule.
func (l *inputList) minutes() {
	for i := range l.c.Labour {
		r := &l.c.Labour[i]
		id := workbook.Ident(r.ID)
		l.ofShop(named("minutes_"+id), number, r.Where, "minutes")
		l.ofShop(named("fixed_"+id), number, r.Where, "fixed")
		l.ofShop(named("smallest_"+id), whole, r.Where, "crew")
	}
}

// prices are those of the price list. A price that follows from an area or from
// a mark-up is a formula there and no input.
func (l *inputList) prices() {
	for i := range l.c.Families {
		f := &l.c.Families[i]
		l.ofShop(named("area_price_"+workbook.Ident(f.ID)), number, f.Where, "area_price")
		l.ofShop(named("area_cost_"+workbook.Ident(f.ID)), number, f.Where, "area_cost")
		for n := range f.Sizes {
			s := &f.Sizes[n]
			l.ofShop(address{table: "item", key: f.ID + ":" + s.ID, column: "price"}, number, s.Where, "price")
			l.ofShop(address{table: "item", key: f.ID + ":" + s.ID, column: "cost"}, number, s.Where, "cost")
		}
	}
	for i := range l.c.Items {
		it := &l.c.Items[i]
		cell := func(column string) address { return address{table: "item", key: it.ID, column: column} }
		l.ofShop(cell("price"), number, it.Where, "price")
		if it.SubHire == nil {
			l.ofShop(cell("cost"), number, it.Where, "cost")
			continue
		}
		l.ofShop(cell("cost"), number, it.SubHire.Where, "cost")
		l.ofShop(cell("markup"), percent, it.SubHire.Where, "markup")
	}
}

// rules are how many parts go with each of what is counted. A rule that several
// tents follow stands in several rows.
func (l *inputList) rules() {
	for i := range l.q.Parts.Needs {
		n := &l.q.Parts.Needs[i]
		for k := range l.c.Rules {
			if r := &l.c.Rules[k]; n.Rule != "" && r.ID == n.Rule {
				l.ofShop(address{table: "need", key: n.Key, column: "per"}, number, r.Where, "per")
				l.ofShop(address{table: "need", key: n.Key, column: "min"}, whole, r.Where, "min")
			}
		}
	}
}

// replacements are what a lost piece costs the customer.
func (l *inputList) replacements() {
	parts := workbook.ReturnKeys(l.q)
	for _, key := range slices.Sorted(maps.Keys(parts)) {
		if p := l.c.Part(parts[key]); p != nil && p.Replacement != nil {
			l.ofShop(address{table: "return", key: key, column: "each"}, number, p.Where, "replacement")
		}
	}
}
