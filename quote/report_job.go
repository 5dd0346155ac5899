package quote

import (
	"slices"

	"tentwright/catalog/unit"
	"tentwright/quote/job"
	"tentwright/quote/labour"
	"tentwright/quote/parts"
	"tentwright/quote/price"
	"tentwright/quote/tent"
)

func (r reporter) job() ReportJob {
	j, c := r.q.Job, r.q.Catalog
	who, event := &j.Customer, &j.Event
	out := ReportJob{Number: j.Number, Revision: j.Revision,
		Customer: who.Name, Contact: who.Contact, Address: list(who.Address), Phone: who.Phone, Email: who.Email, Class: j.Class(c).ID, Exempt: who.Exempt,
		Event: event.Name, Guests: event.Guests, Use: event.Use, Venue: list(event.Address), Place: event.Place, OnSite: event.Contact, Access: event.Access, Parking: event.Parking, Dates: r.dates(),
		Distance: exact(parts.Distance(c, j.Delivery.Distance)), Zone: j.Zone(c).ID, Free: j.Delivery.Free, Loadings: list(j.Delivery.Loadings),
		Site: []ReportChoice{}, Labour: "charged", Discount: exact(j.Discount.Percent), Reason: j.Discount.Reason, Show: j.ShowPrices(c),
		Payments: each(j.Payments, r.payment), Notes: j.Notes, Internal: j.Internal}
	out.Wind = ReportWind{Gust: r.speed(j.Wind.Gust), Terrain: j.Wind.Terrain}
	out.Heat, out.Power, out.Plot = r.warmth(j.Heat), r.supply(j.Power), r.plot(j.Plot)
	out.Hours, out.Weather, out.Tries = each(j.Labour.Windows, r.hours), r.weather(j.Labour.Weather), j.Labour.Tries
	if price.Included(j) {
		out.Labour = j.Labour.Charge
	}
	for i := range r.q.Labour.Sites {
		if s := &r.q.Labour.Sites[i]; s.Option != nil {
			out.Site = append(out.Site, r.choice(s))
		}
	}
	return out
}

func (r reporter) dates() ReportDates {
	j := r.q.Job
	d := &j.Dates
	out := ReportDates{Quoted: d.Quoted.String(), Deliver: d.Deliver.String(), From: d.From.String(), To: d.To.String(),
		Strike: d.Strike.String(), Collect: d.Collect.String(), Charged: j.ChargedDays(), Out: j.DaysOut()}
	if !d.Signed.IsZero() {
		out.Signed = d.Signed.String()
	}
	return out
}

func (r reporter) choice(s *labour.Site) ReportChoice {
	return ReportChoice{Key: s.Key, Option: s.Option.ID, Factor: exact(s.Option.Factor)}
}

func (r reporter) payment(p *job.Payment) ReportPayment {
	return ReportPayment{Date: p.Date.String(), Amount: exact(p.Amount), Note: p.Note}
}

func (r reporter) tent(t *tent.Tent) ReportTent {
	out := ReportTent{ID: t.Job.ID, Name: t.Job.Name, Family: t.Family.ID, Size: t.Size.ID, Count: t.Job.Many(), Leg: r.length(t.Leg),
		Area: r.area(t.Graph.Area()), Sides: each(t.Walls, func(w *tent.Wall) ReportSide { return r.side(t, w) }),
		Joins: t.Job.Joins, JoinAt: t.Job.JoinAt, Staked: t.Staked, Ballast: t.Held, Discount: exact(t.Job.Discount),
		Uses: each(t.Job.Uses, r.use), Place: r.stands(t.Job.Place)}
	// Without stakes nothing stands beyond the plan, so that there is no
	// footprint to keep free of pipes and cables.
	var long, wide unit.Length
	if t.Staked > 0 {
		long, wide = t.Graph.Footprint()
	}
	out.Long, out.Wide = r.length(long), r.length(wide)
	if t.Ground != nil {
		out.Ground = t.Ground.ID
	}
	return out
}

func (r reporter) side(t *tent.Tent, w *tent.Wall) ReportSide {
	out := ReportSide{Side: w.Side, Wall: "open", Length: r.length(w.Length), Panels: []ReportPanel{},
		Doors: []string{}, Gutter: slices.Contains(t.Shared, w.Side)}
	if w.Spec != nil {
		out.Wall = w.Spec.Kind
	}
	for i, n := range w.Panels {
		if n > 0 {
			out.Panels = append(out.Panels, ReportPanel{Part: w.Stock[i].Part, Count: n})
		}
	}
	for _, d := range w.Doors {
		out.Doors = append(out.Doors, d.Kind)
	}
	if ask := t.Job.Side(w.Side); ask != nil {
		out.NoStakes, out.Ground = ask.NoStakes, ask.Ground
	}
	return out
}
