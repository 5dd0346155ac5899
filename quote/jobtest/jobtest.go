// Package jobtest makes up jobs for tests: any tents, sides, grounds, items
// and terms of a catalog, always ones that the catalog can quote.
//
// All persons and places in them are invented, and some of their texts are of
// the kind that breaks files: quotes, leading equal signs, other scripts.
package jobtest

import (
	"math/rand/v2"
	"strconv"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/job"

	"pgregory.net/rapid"
)

// Draw makes a job by rapid's choices, so that a failing one is shrunk to few
// and plain lines. It always passes its check against c.
func Draw(t *rapid.T, c *catalog.Catalog) *job.Job { return build(drawn{t}, c) }

// Random makes a job by a seed; the same seed and catalog give the same job.
// It always passes its check against c.
func Random(c *catalog.Catalog, seed uint64) *job.Job {
	return build(seeded{rand.New(rand.NewPCG(seed, 0))}, c)
}

// chooser decides between n possibilities, 0 being the plainest.
type chooser interface {
	choose(what string, n int) int
}

type drawn struct{ t *rapid.T }

func (d drawn) choose(what string, n int) int { return rapid.IntRange(0, n-1).Draw(d.t, what) }

type seeded struct{ r *rand.Rand }

func (s seeded) choose(_ string, n int) int { return s.r.IntN(n) }

// maker is a job being made.
type maker struct {
	chooser
	c *catalog.Catalog
	j *job.Job
}

func build(ch chooser, c *catalog.Catalog) *job.Job {
	m := &maker{chooser: ch, c: c, j: &job.Job{Number: "R-" + strconv.Itoa(ch.choose("number", 1000)+1)}}
	m.people()
	m.dates()
	m.tents()
	m.items()
	m.site()
	m.place()
	m.delivery()
	m.labour()
	m.money()
	m.uses()
	m.hours()
	return m.j
}

// chance is true in so many of a hundred cases.
func (m *maker) chance(what string, percent int) bool { return m.choose(what, 100) >= 100-percent }

// between chooses a whole number, both ends included.
func (m *maker) between(what string, from, to int) int { return from + m.choose(what, to-from+1) }

// one chooses one of a list, which must not be empty.
func one[T any](m *maker, what string, list []T) *T { return &list[m.choose(what, len(list))] }

// percent is zero in half of all cases, else up to most, in halves.
func (m *maker) percent(what string, most int) money.Number {
	if !m.chance(what, 50) {
		return money.Zero
	}
	return money.Percent(money.Int(50 * m.between(what+" halves", 1, 2*most)))
}

// words are names and notes; the later ones are hard on files and formulas.
var words = []string{"Garden dinner", "Marquee day", "Smith & Sons \"Big\" Day", "=1+1", "-5%", "L'été, Größe № 7", "a|b, <c> & 'd'", "_x0041_ long " +
	"text that goes on for more than one line of any column in the whole workbook, to see how it wraps"}

func (m *maker) people() {
	m.j.Revision = max(0, m.between("revision", -3, 3))
	m.j.Customer = job.Customer{Name: *one(m, "customer", words), Address: []string{"1 Mill Way", "Larkmere"}, Exempt: m.chance("exempt", 20)}
	if m.chance("class named", 60) {
		m.j.Customer.Class = one(m, "class", m.c.Rates.Classes).ID
	}
	m.j.Event = job.Event{Name: *one(m, "event", words), Guests: m.choose("guests", 400)}
	if m.chance("placed", 70) {
		m.j.Event.Address = []string{"Mill Meadow", "Larkmere"}
	}
	if places := m.places(); len(places) > 0 && m.chance("place named", 70) {
		m.j.Event.Place = *one(m, "place", places)
	}
	if m.chance("notes", 30) {
		m.j.Notes, m.j.Internal = *one(m, "note", words), *one(m, "office note", words)
	}
	m.j.Show = []string{"", "line", "section", "total"}[m.choose("show", 4)]
}

// places lists where some tax is due.
func (m *maker) places() []string {
	var places []string
	for _, tax := range m.c.Rates.Taxes {
		places = append(places, tax.Places...)
	}
	return places
}

func (m *maker) dates() {
	d := &m.j.Dates
	d.Quoted = unit.Date{Year: 2026, Month: 1, Day: 5}.AddDays(m.choose("quoted", 300))
	d.Deliver = d.Quoted.AddDays(m.choose("deliver", 90))
	d.From = d.Deliver.AddDays(m.choose("from", 4))
	d.To = d.From.AddDays(m.choose("to", 12))
	d.Strike = d.To.AddDays(m.choose("strike", 4))
	d.Collect = d.Strike.AddDays(m.choose("collect", 4))
	if m.chance("signed", 30) {
		d.Signed = d.Quoted.AddDays(m.choose("days to sign", 20))
	}
	if m.chance("charged", 50) {
		d.Charged = m.between("charged days", 1, 40)
	}
}

func (m *maker) site() {
	for i := range m.c.Site {
		if f := &m.c.Site[i]; m.chance("site "+f.ID, 50) {
			m.j.Site = append(m.j.Site, job.SiteChoice{Factor: f.ID, Option: one(m, "degree", f.Options).ID})
		}
	}
}

func (m *maker) delivery() {
	d := &m.j.Delivery
	mile := unit.Mile
	if m.c.Company.Units == unit.Metric {
		mile = unit.Kilometre
	}
	// Tenths of a mile and, for a few, what no distance in tenths is.
	d.Distance = unit.Length(m.choose("distance", 1200)) * mile / 10
	if m.chance("odd distance", 10) {
		d.Distance += 37 * unit.Metre
	}
	if m.chance("zone named", 30) {
		d.Zone = one(m, "zone", m.c.Rates.Zones).ID
	}
	for i := range m.c.Rates.Loadings {
		if m.chance("loading", 15) {
			d.Loadings = append(d.Loadings, m.c.Rates.Loadings[i].ID)
		}
	}
	d.Free = m.chance("free", 10)
}

func (m *maker) labour() {
	if m.chance("included", 15) {
		m.j.Labour.Charge = "included"
	}
	for i := range m.c.Rates.Windows {
		if !m.chance("window", 40) {
			continue
		}
		m.j.Labour.Windows = append(m.j.Labour.Windows, job.WindowCrew{Window: m.c.Rates.Windows[i].ID, Crew: m.choose("crew", 15),
			Days: m.choose("days", 5), Worked: money.Percent(money.Int(25 * m.choose("worked", 180)))})
	}
}

func (m *maker) money() {
	m.j.Discount.Percent = m.percent("job discount", 20)
	if m.j.Discount.Percent.IsPositive() {
		m.j.Discount.Reason = *one(m, "reason", words)
	}
	for n := range m.choose("payments", 4) {
		m.j.Payments = append(m.j.Payments, job.Payment{Date: m.j.Dates.Quoted.AddDays(n),
			Amount: money.Percent(money.Int(m.choose("amount", 300000))), Note: *one(m, "payment note", words)})
	}
}

// Times is a job several times as large: every tent and item stands in it that
// often, as lines of their own.
func Times(j *job.Job, many int) *job.Job {
	large := *j
	large.Tents, large.Items = nil, nil
	for n := range many {
		for _, t := range j.Tents {
			t.ID += "-" + strconv.Itoa(n+1)
			if t.Joins != "" {
				t.Joins += "-" + strconv.Itoa(n+1)
			}
			large.Tents = append(large.Tents, t)
		}
		large.Items = append(large.Items, j.Items...)
	}
	return &large
}
