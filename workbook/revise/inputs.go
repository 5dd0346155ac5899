package revise

import (
	"fmt"
	"strings"

	"tentwright/catalog"
	"tentwright/quote"
	"tentwright/quote/job"
	"tentwright/quote/labour"
	"tentwright/quote/parts"
	"tentwright/workbook"
)

// input is one cell that people may change, and what it means: a value of the
// job, or one in a file of the shop.
type input struct {
	at   address
	kind kind
	path string // of the value, in the job or in the shop's file

	set  func(*job.Job, value) // of the job; nil for the shop
	file string                // of the shop
	text func(value) string    // how the shop's file writes it; nil: as a plain number
	most int                   // of people, days and the like: from 1 to so many; 0: not limited here
	none bool                  // an empty cell is no value, and takes the field out
}

// inputs lists what people may change in the workbook of a quote.
func inputs(q *quote.Quote) []input {
	l := &inputList{q: q, c: q.Catalog}
	l.job()
	l.fields()
	l.orders()
	l.tents()
	l.crews()
	l.crewJob()
	l.sites()
	l.terms()
	l.skills()
	l.steps()
	l.charges()
	l.minutes()
	l.spread()
	l.prices()
	l.rules()
	l.replacements()
	l.anchors()
	l.occupancy()
	l.power()
	l.calendar()
	return l.all
}

// inputList is the list while it grows.
type inputList struct {
	q   *quote.Quote
	c   *catalog.Catalog
	all []input
}

// named is a cell with a name of its own.
func named(name string) address { return address{name: name} }

// ofJob adds a value of the job.
func (l *inputList) ofJob(at address, k kind, path string, set func(*job.Job, value)) {
	l.all = append(l.all, input{at: at, kind: k, path: path, set: set})
}

// job is what holds for this job alone on the sheet of rates.
func (l *inputList) job() {
	l.ofJob(named("job_days"), whole, "dates.charged_days", func(j *job.Job, v value) { j.Dates.Charged = int(v.number.IntPart()) })
	l.ofJob(named("job_distance"), distance, "delivery.distance", func(j *job.Job, v value) { j.Delivery.Distance = v.length })
	l.ofJob(named("job_zone"), word, "delivery.zone", func(j *job.Job, v value) { j.Delivery.Zone = v.text })
	l.ofJob(named("job_discount"), percent, "discount.percent", func(j *job.Job, v value) { j.Discount.Percent = v.number })
	l.ofJob(named("job_exempt"), truth, "customer.tax_exempt", func(j *job.Job, v value) { j.Customer.Exempt = v.yes })
	l.ofJob(named("job_labour_charged"), truth, "labour.charge", func(j *job.Job, v value) {
		j.Labour.Charge = map[bool]string{true: "charged", false: "included"}[v.yes]
	})
	l.ofJob(named("job_delivery_charged"), truth, "delivery.free", func(j *job.Job, v value) { j.Delivery.Free = !v.yes })
	l.ofJob(named("job_show"), word, "show_prices", func(j *job.Job, v value) { j.Show = v.text })
	l.ofJob(named("job_guests"), whole, "event.guests", func(j *job.Job, v value) { j.Event.Guests = int(v.number.IntPart()) })
	l.ofJob(named("job_days_out"), whole, "dates.collect", func(j *job.Job, v value) {
		j.Dates.Collect = j.Dates.Deliver.AddDays(int(v.number.IntPart()) - 1)
	})
	if class := l.q.Job.Class(l.c); class.ID != "" {
		l.ofShop(named("job_class_discount"), percent, class.Where, "discount")
	}
}

// fields are the texts and days of the sheet Job.
func (l *inputList) fields() {
	for _, f := range workbook.JobFields() {
		switch {
		case f.Whole != nil: // the guests, which stand among the terms of the job
		case f.Day != nil:
			l.ofJob(named(f.Name), day, f.Path, func(j *job.Job, v value) { *f.Day(j) = v.day })
			l.all[len(l.all)-1].none = f.None
		case f.List != nil:
			l.ofJob(named(f.Name), word, f.Path, func(j *job.Job, v value) { *f.List(j) = pieces(v.text) })
		default:
			l.ofJob(named(f.Name), word, f.Path, func(j *job.Job, v value) { *f.Text.Of(j) = v.text })
		}
	}
}

// pieces are the parts of a text with commas or line ends between.
func pieces(text string) []string {
	var list []string
	for _, part := range strings.FieldsFunc(text, func(r rune) bool { return r == ',' || r == '\n' }) {
		if part = strings.TrimSpace(part); part != "" {
			list = append(list, part)
		}
	}
	return list
}

// orders are quantities, discounts and the choice of extras.
func (l *inputList) orders() {
	for i := range l.q.Parts.Orders {
		o := &l.q.Parts.Orders[i]
		switch {
		case o.Item == nil:
			l.tentOrder(o)
		case o.Derived == "":
			l.itemOrder(o)
		}
	}
}

// tentOrder is how many of a tent, and its discount.
func (l *inputList) tentOrder(o *parts.Order) {
	id := o.Tent.Job.ID
	path := tentPath(l.q.Job, id)
	l.ofJob(address{table: "tents", key: o.Key, column: "quantity"}, whole, path+".count", func(j *job.Job, v value) {
		// In a job, no count is one tent; in a cell, 0 is none.
		if v.number.IsZero() {
			dropTent(j, id)
			return
		}
		onTent(id, func(t *job.Tent) { t.Count = int(v.number.IntPart()) })(j)
	})
	l.ofJob(address{table: "tents", key: o.Key, column: "hand"}, percent, path+".discount", func(j *job.Job, v value) {
		onTent(id, func(t *job.Tent) { t.Discount = v.number })(j)
	})
}

// onTent does something to a tent of a job, unless that tent was deleted.
func onTent(id string, do func(*job.Tent)) func(*job.Job) {
	return func(j *job.Job) {
		if t := j.Tent(id); t != nil {
			do(t)
		}
	}
}

// tentPath is the way to a tent in the job's file.
func tentPath(j *job.Job, id string) string {
	for i := range j.Tents {
		if j.Tents[i].ID == id {
			return fmt.Sprintf("tents[%d]", i)
		}
	}
	return "tents"
}

// itemOrder is how much of an item, its discount, and whether an extra is
// wanted.
func (l *inputList) itemOrder(o *parts.Order) {
	n := itemIndex(o.Key)
	path := fmt.Sprintf("items[%d]", n)
	l.ofJob(address{table: "build", key: o.Key, column: "quantity"}, number, path+".quantity", func(j *job.Job, v value) { j.Items[n].Quantity = v.number })
	l.ofJob(address{table: "build", key: o.Key, column: "hand"}, percent, path+".discount", func(j *job.Job, v value) { j.Items[n].Discount = v.number })
	l.ofJob(address{table: "build", key: o.Key, column: "note"}, word, path+".note", func(j *job.Job, v value) { j.Items[n].Note = v.text })
	if no, ok := workbook.Numbers(l.q)[o.Key]; ok && o.Optional {
		l.ofJob(address{table: "extra", key: fmt.Sprint(no), column: "choice"}, truth, path+".chosen", func(j *job.Job, v value) { j.Items[n].Chosen = v.yes })
	}
}

// itemIndex is the place of an order line among the job's items, from 0; below
// zero for other lines.
func itemIndex(key string) int {
	n := 0
	fmt.Sscanf(key, "L:%d", &n)
	return n - 1
}

// tents are sizes, eaves and sides.
func (l *inputList) tents() {
	for i := range l.q.Parts.Tents {
		id := l.q.Parts.Tents[i].Job.ID
		path := tentPath(l.q.Job, id)
		cell := func(column string) address { return address{table: "tent", key: id, column: column} }
		l.ofJob(cell("size"), word, path+".size", func(j *job.Job, v value) { onTent(id, func(t *job.Tent) { t.Size = v.text })(j) })
		l.ofJob(cell("leg"), length, path+".leg", func(j *job.Job, v value) { onTent(id, func(t *job.Tent) { t.Leg = v.length })(j) })
		for _, side := range []string{"front", "right", "back", "left"} {
			l.ofJob(cell(side), word, path+".sides{"+side+"}.wall", func(j *job.Job, v value) {
				onTent(id, func(t *job.Tent) { closeSide(t, side, v.text) })(j)
			})
		}
	}
}

// closeSide closes a side of a tent with a wall, or opens it. Doors stay in
// another wall and go with an opened one.
func closeSide(t *job.Tent, name, wall string) {
	side := t.Side(name)
	if side == nil {
		t.Sides = append(t.Sides, job.TentSide{Side: name})
		side = &t.Sides[len(t.Sides)-1]
	}
	if side.Wall = wall; wall == "" || strings.EqualFold(wall, "open") {
		side.Wall, side.Doors = "", nil
	}
}

// Bounds of a window, as a job file has them.
const (
	mostPeople = 200
	mostDays   = 60
	mostCrews  = 20
	mostTries  = 1_000_000
)

// most bounds the last input: a whole number from 1 on.
func (l *inputList) most(n int) { l.all[len(l.all)-1].most = n }

// crews are people, days and hours worked of each window.
func (l *inputList) crews() {
	for i := range l.q.Labour.Windows {
		spec := l.q.Labour.Windows[i].Spec
		cell := func(column string) address { return address{table: "window", key: spec.ID, column: column} }
		set := func(of func(*job.WindowCrew, value)) func(*job.Job, value) {
			return func(j *job.Job, v value) { of(windowOf(j, spec), v) }
		}
		path := "labour.windows{" + spec.ID + "}."
		l.ofJob(cell("crew"), whole, path+"crew", set(func(w *job.WindowCrew, v value) { w.Crew = int(v.number.IntPart()) }))
		l.most(mostPeople)
		l.ofJob(cell("days"), whole, path+"days", set(func(w *job.WindowCrew, v value) { w.Days = int(v.number.IntPart()) }))
		l.most(mostDays)
		l.ofJob(cell("worked"), number, path+"worked", set(func(w *job.WindowCrew, v value) { w.Worked = v.number }))
	}
}

// windowOf is what the job says of a window; where it says nothing, an entry
// that leaves people and days to the shop.
func windowOf(j *job.Job, spec *catalog.Window) *job.WindowCrew {
	for i := range j.Labour.Windows {
		if j.Labour.Windows[i].Window == spec.ID {
			return &j.Labour.Windows[i]
		}
	}
	j.Labour.Windows = append(j.Labour.Windows, job.WindowCrew{Window: spec.ID})
	return &j.Labour.Windows[len(j.Labour.Windows)-1]
}

// sites are the degrees that hold here, and how much each slows the work.
func (l *inputList) sites() {
	for i := range l.q.Labour.Sites {
		site := &l.q.Labour.Sites[i]
		path := "site{" + site.Factor.ID + "}.option"
		if site.Tent != "" {
			path = tentPath(l.q.Job, site.Tent) + ".ground"
		}
		l.ofJob(named("site_"+workbook.Ident(site.Key)+"_degree"), word, path, func(j *job.Job, v value) { chooseDegree(j, site, v.text) })
	}
	for i := range l.c.Site {
		f := &l.c.Site[i]
		for _, o := range f.Options {
			l.ofShop(address{table: "degree", key: f.ID + ":" + o.ID, column: "times"}, number, o.Where, "factor")
		}
	}
}

// chooseDegree sets the degree of a factor, of the job or of the one tent that
// stands on ground of its own.
func chooseDegree(j *job.Job, site *labour.Site, option string) {
	if site.Tent != "" {
		onTent(site.Tent, func(t *job.Tent) { t.Ground = option })(j)
		return
	}
	for i := range j.Site {
		if j.Site[i].Factor == site.Factor.ID {
			j.Site[i].Option = option
			return
		}
	}
	j.Site = append(j.Site, job.SiteChoice{Factor: site.Factor.ID, Option: option})
}
