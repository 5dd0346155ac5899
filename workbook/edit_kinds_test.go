package workbook_test

import (
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
	"tentwright/quote/parts"
)

// kind is one kind of input that people change. do types it into the workbook
// and sets it in the catalog or the job; it is false where the job has none.
type kind struct {
	what string
	do   func(e *editing) bool
}

// kinds leave out what is only marked for quoting again: sizes, sides, and
// ground where stakes can be driven instead of ground where they can't.
var kinds = []kind{
	{"charge of an hour", func(e *editing) bool {
		s := some(e, e.now.Catalog.Rates.Skills)
		return e.number("rate_"+named(s.ID)+"_bill", &s.Bill, 20, 150, 2)
	}},
	{"cost of an hour", func(e *editing) bool {
		s := some(e, e.now.Catalog.Rates.Skills)
		return e.number("rate_"+named(s.ID)+"_cost", &s.Cost, 15, 90, 2)
	}},
	{"daily limit", func(e *editing) bool {
		return e.number("overtime_daily", &e.now.Catalog.Rates.Overtime.Daily, 4, 12, 2)
	}},
	{"weekly limit", func(e *editing) bool {
		return e.number("overtime_weekly", &e.now.Catalog.Rates.Overtime.Weekly, 20, 60, 1)
	}},
	{"overtime pay", func(e *editing) bool {
		return e.number("overtime_cost", &e.now.Catalog.Rates.Overtime.CostFactor, 1, 2, 2)
	}},
	{"overtime charge", func(e *editing) bool {
		return e.number("overtime_bill", &e.now.Catalog.Rates.Overtime.BillFactor, 1, 2, 2)
	}},
	{"charged days", func(e *editing) bool { return e.whole("job_days", &e.now.Job.Dates.Charged, 1, 60) }},
	{"distance and zone", editDistance},
	{"class discount", func(e *editing) bool {
		return e.number("job_class_discount", &e.now.Job.Class(e.now.Catalog).Discount, 0, 25, 1)
	}},
	{"job discount", func(e *editing) bool { return e.number("job_discount", &e.now.Job.Discount.Percent, 0, 40, 2) }},
	{"exempt", func(e *editing) bool { return e.yes("job_exempt", func(y bool) { e.now.Job.Customer.Exempt = y }) }},
	{"labour charged", func(e *editing) bool {
		return e.yes("job_labour_charged", func(y bool) { e.now.Job.Labour.Charge = map[bool]string{true: "charged", false: "included"}[y] })
	}},
	{"delivery charged", func(e *editing) bool {
		return e.yes("job_delivery_charged", func(y bool) { e.now.Job.Delivery.Free = !y })
	}},
	{"waiver", func(e *editing) bool { return e.number("rate_waiver", &e.now.Catalog.Rates.Waiver, 0, 15, 2) }},
	{"deposit", func(e *editing) bool {
		return e.number("rate_deposit", &e.now.Catalog.Company.Quote.Deposit, 0, 100, 1)
	}},
	{"minimum order", func(e *editing) bool { return e.number("rate_min_order", &e.now.Catalog.Rates.MinOrder, 0, 20000, 2) }},
	{"margin floor", func(e *editing) bool {
		return e.number("rate_margin_floor", &e.now.Catalog.Rates.MarginFloor, 0, 90, 1)
	}},
	{"cost of distance", func(e *editing) bool { return e.number("rate_mileage", &e.now.Catalog.Rates.MileCost, 0, 4, 3) }},
	{"wet factor", func(e *editing) bool { return e.number("rate_wet", &e.now.Catalog.Rates.WetFactor, 1, 2, 2) }},
	{"minutes", func(e *editing) bool {
		rule := e.rule()
		return e.number("minutes_"+named(rule.ID), &rule.Minutes, 0, 40, 3)
	}},
	{"fixed minutes", func(e *editing) bool {
		rule := e.rule()
		return e.number("fixed_"+named(rule.ID), &rule.Fixed, 0, 90, 1)
	}},
	{"smallest crew", func(e *editing) bool { rule := e.rule(); return e.whole("smallest_"+named(rule.ID), &rule.Crew, 1, 12) }},
	{"tax", func(e *editing) bool {
		id := some(e, e.q.Price.Taxes).Tax.ID
		at := slices.IndexFunc(e.now.Catalog.Rates.Taxes, func(t catalog.Tax) bool { return t.ID == id })
		return e.number("tax_"+named(id)+"_rate", &e.now.Catalog.Rates.Taxes[at].Rate, 0, 12, 3)
	}},
	{"zone flat", func(e *editing) bool { return e.zonePrice("zones_flat", &e.zone().Flat, 300, 2) }},
	{"zone by distance", func(e *editing) bool { return e.zonePrice("zones_each", &e.zone().PerMile, 9, 3) }},
	{"zone minimum", func(e *editing) bool { return e.zonePrice("zones_minimum", &e.zone().Minimum, 900, 2) }},
	{"loading", func(e *editing) bool {
		l := some(e, e.now.Catalog.Rates.Loadings)
		return slices.Contains(e.now.Job.Delivery.Loadings, l.ID) && e.number("loading_"+named("A:"+l.ID), &l.Percent, 0, 120, 1)
	}},
	{"crew", func(e *editing) bool {
		w := e.window()
		return e.whole("window_"+named(w.Window)+"_crew", &w.Crew, 1, 20)
	}},
	{"days of work", func(e *editing) bool {
		w := e.window()
		return e.whole("window_"+named(w.Window)+"_days", &w.Days, 1, 6)
	}},
	{"hours worked", func(e *editing) bool {
		w := e.window()
		return e.number("window_"+named(w.Window)+"_worked", &w.Worked, 0, 50, 2)
	}},
	{"guests", func(e *editing) bool { return e.whole("job_guests", &e.now.Job.Event.Guests, 1, 900) }},
	{"days out", func(e *editing) bool {
		days := 0
		if !e.whole("job_days_out", &days, 1, 40) {
			return false
		}
		e.now.Job.Dates.Collect = e.now.Job.Dates.Deliver.AddDays(days - 1)
		return true
	}},
	{"payment", func(e *editing) bool {
		at := len(e.now.Job.Payments)
		e.now.Job.Payments = append(e.now.Job.Payments, job.Payment{})
		return e.cell("payments_amount", at, &e.now.Job.Payments[at].Amount, 0, 9000, 2)
	}},
	{"quantity", editQuantity}, {"quantity again", editQuantity},
	{"line discount", editLineDiscount},
	{"extra", editExtra}, {"another extra", editExtra},
	{"period", editPeriod}, {"break", editBreak},
	{"degree", editDegree}, {"factor of a degree", editFactor},
	{"item price", editItemPrice}, {"size price", editSizePrice},
	{"part rule", editPartRule},
	{"added line", editAdded},
}

// editDistance moves the site, into the zone that reaches it or one that is
// named.
func editDistance(e *editing) bool {
	tenths := 1 + e.r.IntN(900)
	e.now.Job.Delivery.Distance = unit.Length(tenths) * unit.Mile / 10
	e.now.Job.Delivery.Zone = ""
	if e.r.IntN(2) == 0 {
		e.now.Job.Delivery.Zone = some(e, e.now.Catalog.Rates.Zones).ID
	}
	return e.set("job_distance", float64(tenths)/10) && e.set("job_zone", e.now.Job.Delivery.Zone)
}

// editQuantity changes how many are ordered of a tent or an item.
func editQuantity(e *editing) bool {
	o := some(e, e.q.Parts.Orders)
	switch {
	case o.Derived != "":
		return false
	case o.Item == nil:
		t := e.now.Job.Tent(o.Tent.Job.ID)
		return e.whole("qty_"+named(o.Key), &t.Count, 1, 6)
	case o.Item.CountsWhole():
		return e.number("qty_"+named(o.Key), &line(e.now.Job, o.Key).Quantity, 0, 700, 0)
	}
	return e.number("qty_"+named(o.Key), &line(e.now.Job, o.Key).Quantity, 0, 4000, 2)
}

// tableOfOrder is the table of the build-up in which an order stands.
func tableOfOrder(o *parts.Order) string {
	if o.Item == nil {
		return "tents"
	}
	return "build"
}

func editLineDiscount(e *editing) bool {
	o := some(e, e.q.Parts.Orders)
	row := e.row(tableOfOrder(o)+"_key", o.Key)
	switch {
	case o.Derived != "":
		return false
	case o.Item == nil:
		return e.cell("tents_hand", row, &e.now.Job.Tent(o.Tent.Job.ID).Discount, 0, 50, 2)
	}
	return e.cell("build_hand", row, &line(e.now.Job, o.Key).Discount, 0, 100, 2)
}

// editExtra takes an extra, or leaves it, on the quote.
func editExtra(e *editing) bool {
	o := some(e, e.q.Parts.Orders)
	if !o.Optional {
		return false
	}
	number := e.value("build_no", e.row("build_key", o.Key))
	l := line(e.now.Job, o.Key)
	l.Chosen = !l.Chosen
	return e.setAt("extra_choice", e.row("extra_no", number), map[bool]string{true: "Yes", false: "No"}[l.Chosen])
}

func editPeriod(e *editing) bool {
	p := some(e, e.now.Catalog.Rates.Periods)
	at := e.r.IntN(len(p.Steps))
	if e.r.IntN(2) == 0 {
		return e.cell("period_"+named(p.ID)+"_each", at, &p.Steps[at].Each, 0, 1, 3)
	}
	return e.cell("period_"+named(p.ID)+"_factor", at, &p.Steps[at].Factor, 1, 9, 2)
}

func editBreak(e *editing) bool {
	b := some(e, e.now.Catalog.Rates.Breaks)
	at := e.r.IntN(len(b.Steps))
	return e.cell("break_"+named(b.ID)+"_off", at, &b.Steps[at].Off, 0, 40, 1)
}

// editDegree chooses how much a site factor slows the work.
func editDegree(e *editing) bool {
	f := some(e, e.now.Catalog.Site)
	o := some(e, f.Options)
	if o.NoStakes != e.now.Job.Option(e.now.Catalog, f.ID).NoStakes {
		return false
	}
	e.now.Job.Site = slices.DeleteFunc(slices.Clone(e.now.Job.Site), func(s job.SiteChoice) bool { return s.Factor == f.ID })
	e.now.Job.Site = append(e.now.Job.Site, job.SiteChoice{Factor: f.ID, Option: o.ID})
	return e.set("site_"+named(f.ID)+"_degree", o.ID)
}

func editFactor(e *editing) bool {
	f := some(e, e.now.Catalog.Site)
	o := some(e, f.Options)
	return e.cell("degree_times", e.row("degree_key", f.ID+":"+o.ID), &o.Factor, 1, 3, 2)
}

// editItemPrice changes the price and the cost of an item; the price of one
// that is hired in follows from its cost and its mark-up.
func editItemPrice(e *editing) bool {
	o := some(e, e.q.Parts.Orders)
	if o.Item == nil {
		return false
	}
	item, row := e.now.Catalog.Item(o.Item.ID), e.row("item_id", o.Item.ID)
	switch {
	case item.SubHire == nil:
		return e.cell("item_price", row, &item.Price, 1, 400, 2) && e.cell("item_cost", row, &item.Cost, 0, 200, 2)
	case item.Price.IsZero():
		return e.cell("item_cost", row, &item.SubHire.Cost, 1, 900, 2) && e.cell("item_markup", row, &item.SubHire.Markup, 0, 90, 1)
	}
	return false
}

// editSizePrice changes what a size costs, its own price or that of its area.
func editSizePrice(e *editing) bool {
	f := some(e, e.now.Catalog.Families)
	s := some(e, f.Sizes)
	row := e.row("item_id", f.ID+":"+s.ID)
	if s.Price == nil {
		return e.number("area_price_"+named(f.ID), f.AreaPrice, 1, 9, 3) && e.number("area_cost_"+named(f.ID), f.AreaCost, 0, 2, 3)
	}
	return e.cell("item_price", row, s.Price, 100, 9000, 2) && e.cell("item_cost", row, s.Cost, 0, 3000, 2)
}

// editPartRule changes how many parts a rule takes along, in each of its rows.
func editPartRule(e *editing) bool {
	rule := some(e, e.now.Catalog.Rules)
	was := rule.Per
	rule.Per = e.decimal(0, 5, 3)
	typed := false
	for i := range e.q.Parts.Needs {
		if n := &e.q.Parts.Needs[i]; n.Rule == rule.ID {
			typed = e.setAt("need_per", e.row("need_key", n.Key), rule.Per.InexactFloat64())
		}
	}
	if !typed {
		rule.Per = was
	}
	return typed
}

// editAdded fills one of the lines for the office; nothing is picked for them
// until the job is quoted again.
func editAdded(e *editing) bool {
	item := some(e, e.now.Catalog.Items)
	if item.Geometry {
		return false
	}
	o := parts.Order{Key: "S:1", Section: "Added lines", Name: item.Name, Item: item}
	if row := e.row("build_key", o.Key); !e.cell("build_quantity", row, &o.Quantity, 1, 600, 0) || !e.setAt("build_id", row, item.ID) {
		return false
	}
	e.added = append(e.added, o)
	return true
}
