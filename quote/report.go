package quote

import (
	"encoding/json"

	"tentwright/catalog/diag"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/load"
	"tentwright/quote/parts"
)

// Report writes the whole quote down as plain data with every figure's terms.
func (q *Quote) Report() Report {
	company := &q.Catalog.Company
	r := reporter{q: q, sys: company.Units}
	return Report{
		Shop: company.Name, Demo: q.Catalog.Demo, Currency: company.Currency,
		Units: ReportUnits{Length: r.sys.LengthUnit(), Distance: r.sys.DistanceUnit(), Area: r.sys.AreaUnit(),
			Mass: r.sys.MassUnit(), Volume: r.sys.VolumeUnit(),
			Speed: r.sys.SpeedUnit(), Force: r.sys.ForceUnit(), Pressure: r.sys.PressureUnit()},
		Job: r.job(), Totals: r.totals(), Checks: each(q.Checks, r.check),
		Tents: each(q.Parts.Tents, r.tent), Orders: each(q.Parts.Orders, r.order), Counts: each(q.Parts.Counts, r.count),
		Needs: each(q.Parts.Needs, r.need), Parts: each(q.Parts.Lines, r.part),
		Out: r.way(&q.Load.Out), Back: r.way(&q.Load.Back),
		Tasks: each(q.Labour.Tasks, r.task), Windows: each(q.Labour.Windows, r.window), Skills: each(q.Labour.Skills, r.skill),
		Lines: each(q.Price.Lines, r.line), Taxes: each(q.Price.Taxes, r.tax), Dates: r.days(), Occupancy: r.occupancy(),
		Anchorage: r.anchorage(), SitePlan: r.plan(), Power: r.power(), Schedule: r.schedule(), Lifts: r.lifts(),
	}
}

// reporter turns the values of the stages into plain ones.
type reporter struct {
	q   *Quote
	sys unit.System
}

// each turns a list; never nil, so that JSON has [] for an empty one.
func each[T, R any](all []T, one func(*T) R) []R {
	out := make([]R, len(all))
	for i := range all {
		out[i] = one(&all[i])
	}
	return out
}

// list is a list that is never nil.
func list(all []string) []string { return append([]string{}, all...) }

// exact is a decimal number as JSON has it, with no digit lost.
func exact(n money.Number) json.Number { return json.Number(n.String()) }

// measured is a figure of physics to two places.
func measured(f float64) json.Number { return exact(money.Round(money.Float(f), 2)) }

func (r reporter) mass(m unit.Mass) json.Number     { return measured(m.In(r.sys)) }
func (r reporter) volume(v unit.Volume) json.Number { return measured(v.In(r.sys)) }
func (r reporter) area(a unit.Area) json.Number     { return measured(a.In(r.sys)) }

func (r reporter) length(l unit.Length) json.Number {
	if r.sys == unit.Metric {
		return measured(l.Metres())
	}
	return measured(l.Feet())
}

func (r reporter) totals() ReportTotals {
	p := r.q.Price
	return ReportTotals{Hire: exact(p.Hire), Subtotal: exact(p.Subtotal), Tax: exact(p.Tax), Total: exact(p.Total), Deposit: exact(p.Deposit),
		Balance: exact(p.Balance), Received: exact(p.Received), Due: exact(p.Due), Cost: exact(p.Cost), Margin: exact(p.Margin),
		Percent: exact(p.Percent), Hours: exact(r.q.Labour.Hours), ValidUntil: p.ValidUntil.String(), BalanceBy: p.BalanceBy.String()}
}

// State is "pass" for a check that holds, else "stop" for a severe one and
// "look" for any other.
func (c *Check) State() string {
	switch {
	case c.Holds():
		return "pass"
	case c.Severe:
		return "stop"
	}
	return "look"
}

// Rule is how the value is held against the limit: "at least" or "at most".
func (c *Check) Rule() string {
	if c.AtLeast {
		return "at least"
	}
	return "at most"
}

func (r reporter) check(c *Check) ReportCheck {
	return ReportCheck{Key: c.Key, Title: c.Title, State: c.State(), Value: exact(c.Value), Limit: exact(c.Limit), Rule: c.Rule(), Advice: c.Advice}
}

func (r reporter) order(o *parts.Order) ReportOrder {
	out := ReportOrder{Key: o.Key, Section: o.Section, Name: o.Name, Quantity: exact(o.Quantity), Ordered: exact(o.Ordered()),
		Optional: o.Optional, Chosen: o.Chosen, Derived: o.Derived, Discount: exact(o.Discount), Note: o.Note, At: r.place(o.Pos)}
	if o.Item != nil {
		out.Item = o.Item.ID
	}
	if o.Tent != nil {
		out.Tent = o.Tent.Job.ID
	}
	return out
}

// place is where a line stands in the job file: line and column without the
// file's name, so that the same job gives the same report wherever it lies.
func (r reporter) place(at diag.Pos) string {
	at.File = ""
	return at.String()
}

func (r reporter) count(c *parts.Count) ReportCount {
	return ReportCount{Key: c.Key, Name: c.Name, Driver: c.Driver, Tent: c.Tent, Per: exact(c.Per), Order: c.Order, Many: exact(c.Many), Amount: exact(c.Amount)}
}

func (r reporter) need(n *parts.Need) ReportNeed {
	return ReportNeed{Key: n.Key, Part: n.Part.ID, Source: n.Source, Rule: n.Rule, Count: n.Count, Order: n.Order,
		Of: exact(n.Of), Per: exact(n.Per), Min: n.Min, Quantity: n.Quantity}
}

func (r reporter) part(l *parts.Line) ReportPart {
	pack := l.Part.Pack
	full, rest := load.Packs(l.Total(), pack.Holds)
	out := ReportPart{Part: l.Part.ID, Name: l.Part.Name, Bin: l.Part.Bin, Unit: l.Part.Unit, Counted: l.Counted, Spare: l.Spare,
		SpareOf: exact(money.Zero), Total: l.Total(), Pack: pack.Kind, Holds: pack.Holds, Packs: load.PackCount(l.Total(), pack.Holds),
		FullPacks: full, PartPack: rest, Each: r.mass(l.Each), Mass: r.mass(l.Mass())}
	if spare := l.Part.Spare; spare != nil {
		out.SpareOf, out.SpareTo = exact(spare.Percent), spare.Min
	}
	if charge := l.Part.Replacement; charge != nil {
		out.Replace = exact(*charge)
	}
	return out
}

func (r reporter) way(m *load.Manifest) ReportWay {
	return ReportWay{Mass: r.mass(m.Mass), Trips: each(m.Trips, r.trip),
		Shares: each(m.Shares, func(s *load.Share) ReportShare { return r.share(m, s) })}
}

func (r reporter) trip(t *load.Trip) ReportTrip {
	return ReportTrip{Key: t.Key, Vehicle: t.Vehicle.ID, Name: t.Vehicle.Name, Number: t.Number, Turn: t.Turn, Tow: t.Tow, Riders: t.Riders,
		Mass: r.mass(t.Mass), Payload: r.mass(t.Payload), Volume: r.volume(t.Volume), Room: r.volume(t.Room),
		Longest: r.length(t.Longest), Flags: list(t.Flags)}
}

func (r reporter) share(m *load.Manifest, s *load.Share) ReportShare {
	out := ReportShare{Part: s.Part.ID, Order: s.Order, Quantity: s.Quantity, Packs: s.Packs, Mass: r.mass(s.Mass), Volume: r.volume(s.Volume)}
	if s.Trip >= 0 {
		out.Trip = m.Trips[s.Trip].Key
	}
	return out
}
