package quote

import (
	"fmt"
	"slices"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/quote/labour"
	"tentwright/quote/load"
	"tentwright/quote/parts"
)

// Check is one comparison that must hold before the truck leaves. It keeps
// both sides, so that a workbook can make it again when an input changes. A
// failed check changes no figure and refuses no job: people decide.
type Check struct {
	Key     string // payload:V1, margin, crew:install ...
	Title   string
	Value   money.Number
	Limit   money.Number
	AtLeast bool // Value must reach Limit; otherwise it must not exceed it
	Severe  bool // stop, not only look
	Advice  string
}

// Holds tells whether the check is passed.
func (c *Check) Holds() bool {
	if c.AtLeast {
		return c.Value.GreaterThanOrEqual(c.Limit)
	}
	return c.Value.LessThanOrEqual(c.Limit)
}

// Failed lists the checks that do not hold.
func (q *Quote) Failed() []Check {
	var failed []Check
	for _, c := range q.Checks {
		if !c.Holds() {
			failed = append(failed, c)
		}
	}
	return failed
}

// check makes every comparison of the job.
func (q *Quote) check() {
	q.checkVehicles(&q.Load.Out)
	q.checkVehicles(&q.Load.Back)
	q.checkMoney()
	q.checkCrews()
	q.checkSense()
	q.checkAnchors()
	q.checkEgress()
	q.checkPower()
	q.checkDates()
	q.checkSchedule()
	q.checkLifts()
	q.checkPlan()
	q.checkStock()
	q.checkSizes()
	q.checkStanding()
}

// add takes a comparison in, in the order in which people read them.
func (q *Quote) add(c Check) { q.Checks = append(q.Checks, c) }

// none is a check that something never occurs.
func (q *Quote) none(key, title string, count int, severe bool, advice string) {
	q.add(Check{Key: key, Title: title, Value: money.Int(count), Severe: severe, Advice: advice})
}

// checkVehicles holds each trip of one way against its payload and room. A plan
// always fits; a workbook whose counts were edited may not.
func (q *Quote) checkVehicles(m *load.Manifest) {
	sys := q.Catalog.Company.Units
	for i := range m.Trips {
		t := &m.Trips[i]
		q.add(Check{Key: "payload:" + t.Key, Title: fmt.Sprintf("%s %s: load within payload, %s", t.Key, t.Vehicle.Name, sys.MassUnit()),
			Value: money.Float(t.Mass.In(sys)), Limit: money.Float(t.Payload.In(sys)), Severe: true,
			Advice: "quote again so that vehicles are chosen anew; weigh the vehicle, the plate governs"})
		q.add(Check{Key: "room:" + t.Key, Title: fmt.Sprintf("%s %s: load within room, %s", t.Key, t.Vehicle.Name, sys.VolumeUnit()),
			Value: money.Round(money.Float(t.Volume.In(sys)), 1), Limit: money.Round(money.Float(t.Room.In(sys)), 1), Severe: true,
			Advice: "quote again so that vehicles are chosen anew"})
	}
}

// checkMoney looks at margins, dates of payment, tax and what was paid. None of
// it stops a job but a delivery that lies in the past: prices are the manager's.
func (q *Quote) checkMoney() {
	floor := q.Catalog.Rates.MarginFloor
	q.add(Check{Key: "margin", Title: "Margin of the whole job, percent", Value: q.Price.Percent, Limit: floor, AtLeast: true,
		Advice: "a discount below the floor is kept; the manager decides"})
	low := 0
	for i := range q.Price.Lines {
		if q.Price.Lines[i].BelowFloor(floor) {
			low++
		}
	}
	q.none("lines below floor", "Lines with a margin below the floor", low, false, "see the red lines on Price Build-up")
	q.none("quote before balance", "Balance due before the quote's own date",
		boolCount(q.Price.BalanceBy.Before(q.Job.Dates.Quoted)), false, "ask for the whole sum with the order")
	q.none("past", "Delivery before the quote's own date", boolCount(q.Job.Dates.Deliver.Before(q.Job.Dates.Quoted)), true, "look at the dates")
	q.none("tax place", "No place for tax, though some taxes are local", boolCount(q.Job.Event.Place == "" && q.localTaxes()), false,
		"set tax_place; what is due where is for the accountant")
	q.add(Check{Key: "overpaid", Title: "Payments received against the total", Value: q.Price.Received, Limit: q.Price.Total, Advice: "look at the payments, or give money back"})
}

// localTaxes tells whether the shop has a tax that is due only in some places.
func (q *Quote) localTaxes() bool {
	return slices.ContainsFunc(q.Catalog.Rates.Taxes, func(t catalog.Tax) bool { return len(t.Places) > 0 })
}

// checkCrews holds the crews against the longest day, against what their tasks
// need and against the seats. The load was planned with every seat taken, before
// any crew was known, so that only here the two can be found to differ.
func (q *Quote) checkCrews() {
	longest := q.Catalog.Rates.Overtime.Longest
	for i := range q.Labour.Windows {
		w := &q.Labour.Windows[i]
		q.add(Check{Key: "day:" + w.Spec.ID, Title: w.Spec.Name + ": hours of each person's day", Value: w.Day, Limit: longest, Severe: true,
			Advice: "add people or days; the law limits work and driving further"})
	}
	for i := range q.Labour.Windows {
		w := &q.Labour.Windows[i]
		q.add(Check{Key: "crew:" + w.Spec.ID, Title: w.Spec.Name + ": people against the smallest crew of its tasks",
			Value: money.Int(w.Crew), Limit: money.Int(w.Smallest), AtLeast: true, Severe: true, Advice: "add people; some tasks are not safe with fewer"})
	}
	seats := seatsOf(&q.Load.Out)
	for i := range q.Labour.Windows {
		w := &q.Labour.Windows[i]
		if rides(w) {
			q.add(Check{Key: "seats:" + w.Spec.ID, Title: w.Spec.Name + ": people against seats in the vehicles",
				Value: money.Int(w.Crew), Limit: money.Int(seats), Advice: "plan another way to the site for those without a seat"})
		}
	}
}

// rides tells whether a window's crew travels to the site and home.
func rides(w *labour.Window) bool {
	return slices.ContainsFunc(w.Spec.Phases, func(phase string) bool { return phase == catalog.Travel || phase == catalog.Return })
}

// seatsOf adds up the seats of the vehicles that go out first.
func seatsOf(m *load.Manifest) int {
	seats := 0
	for i := range m.Trips {
		if m.Trips[i].Turn == 1 {
			seats += m.Trips[i].Vehicle.Seats
		}
	}
	return seats
}

// ChairTag is the tag of the parts that guests sit on.
const ChairTag = "chair"

// checkSense looks for what is often forgotten: what an item is of no use
// without, what holds a tent, a way out of it, and a seat for each guest.
func (q *Quote) checkSense() {
	for i := range q.Parts.Orders {
		o := &q.Parts.Orders[i]
		if o.Item == nil {
			continue
		}
		// Also of an extra that is not chosen yet: it may be, in the workbook.
		for _, need := range o.Item.Needs {
			missing := boolCount(o.Ordered().IsPositive() && !q.Parts.IsOrdered(need))
			q.none("need:"+o.Key+":"+need, fmt.Sprintf("%s without %s", o.Name, q.Catalog.Item(need).Name), missing, true, "add it, or make sure that the site has it")
		}
	}
	for i := range q.Parts.Tents {
		t := &q.Parts.Tents[i]
		if t.Held > 0 && t.Family.Kind == catalog.KindPole {
			q.none("holding:"+t.Job.ID, t.Label()+": pole tent where stakes cannot be driven, pieces of ballast", t.Held, true,
				"a pole tent stands by its guys: take a frame tent, or have a licensed engineer design what holds it")
		}
		if t.Sealed() {
			q.none("door:"+t.Job.ID, t.Label()+": closed on every side without a door", 1, true, "open a side or add doors; exits are a matter of local code")
		}
	}
	// A job without any chair is one where guests stand, or bring their own.
	if chairs, _ := q.Parts.Tagged(ChairTag); chairs > 0 {
		q.add(Check{Key: "chairs", Title: "Chairs against guests", Value: money.Int(chairs), Limit: money.Int(q.Job.Event.Guests), AtLeast: true,
			Advice: "ask whether some guests stand"})
	}
}

// checkStock compares what is taken with what the yard owns, where it says.
func (q *Quote) checkStock() {
	beyond := 0
	for i := range q.Parts.Lines {
		beyond += Beyond(&q.Parts.Lines[i])
	}
	q.none("stock", "Pieces picked beyond what the yard owns", beyond, true, "sub-hire what is missing, or change the order")
	for i := range q.Parts.Lines {
		l := &q.Parts.Lines[i]
		if Beyond(l) > 0 {
			q.add(Check{Key: "stock:" + l.Part.ID, Title: "Owned: " + l.Part.Name, Value: money.Int(l.Total()), Limit: money.Int(l.Part.Owned), Severe: true,
				Advice: "sub-hire what is missing, or change the order"})
		}
	}
}

// Beyond is how many of a part are picked beyond what the yard owns; a part
// without a number owned is not limited.
func Beyond(l *parts.Line) int {
	if l.Part.Owned == 0 {
		return 0
	}
	return max(0, l.Total()-l.Part.Owned)
}

// checkSizes compares the tents of each size with how many can be put up at
// once, where the yard says.
func (q *Quote) checkSizes() {
	taken := map[*catalog.Size]int{}
	for i := range q.Parts.Tents {
		taken[q.Parts.Tents[i].Size] += q.Parts.Tents[i].Job.Many()
	}
	for i := range q.Parts.Tents {
		t := &q.Parts.Tents[i]
		if n := taken[t.Size]; t.Size.Owned > 0 && n > 0 {
			q.add(Check{Key: "sizes:" + t.Family.ID + ":" + t.Size.ID, Title: "Owned: " + t.Family.Name + " " + t.Size.ID, Value: money.Int(n), Limit: money.Int(t.Size.Owned),
				Severe: true, Advice: "sub-hire what is missing, or change the order"})
			delete(taken, t.Size) // one comparison for each size
		}
	}
}

// checkStanding says what always needs a person's eye.
func (q *Quote) checkStanding() {
	flags := 0
	for i := range q.Load.Out.Trips {
		flags += len(q.Load.Out.Trips[i].Flags)
	}
	q.none("fuel", "Fuel in a closed vehicle", q.shutIn(), true, "carry it in the open or vented, upright and apart; the law on dangerous goods governs")
	q.none("licence", "Vehicles that an ordinary licence may not cover", flags, false, "see Truck Manifest; ask the licensing authority")
	q.none("demo", "Demonstration prices, not for customers", boolCount(q.Catalog.Demo), true, "set up the yard's own company file and prices")
}

// shutIn counts the parts that must not ride shut in but do.
func (q *Quote) shutIn() int {
	n := 0
	for _, m := range []*load.Manifest{&q.Load.Out, &q.Load.Back} {
		for i := range m.Shares {
			if s := &m.Shares[i]; s.Part.Apart && s.Quantity > 0 && !m.Trips[s.Trip].Vehicle.Open {
				n += s.Quantity
			}
		}
	}
	return n
}

// boolCount is how a fact stands in a check that counts: 1 where it is true.
func boolCount(b bool) int {
	if b {
		return 1
	}
	return 0
}
