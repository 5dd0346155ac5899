package cli

import (
	"strconv"
	"strings"
	"time"

	"github.com/spf13/pflag"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
)

// phone is a job as flags give it.
type phone struct {
	tents, items       []string
	loadings, site     []string
	class, place       string
	guests, date, days string
	miles, km          string
	walls, today, save string
}

// flags adds the flags of a price by phone.
func (p *phone) flags(flags *pflag.FlagSet) {
	flags.StringArrayVar(&p.tents, "tent", nil, "by phone: a tent as `FAMILY:SIZE`, several alike as hip:20x40x2; may be repeated")
	flags.StringArrayVar(&p.items, "item", nil, "by phone: an item as `ID=QUANTITY`, e.g. chair-folding=120; may be repeated")
	flags.StringVar(&p.walls, "walls", "", "by phone: a `KIND` of wall on every side but the front, e.g. solid")
	flags.StringVar(&p.guests, "guests", "", "by phone: how `MANY` guests")
	flags.StringVar(&p.date, "date", "", "by phone: first day of the event, as `YYYY-MM-DD`")
	flags.StringVar(&p.days, "days", "", "by phone: `DAYS` that the event lasts (default: 1)")
	flags.StringVar(&p.miles, "miles", "", "by phone: `MILES` to the site, one way")
	flags.StringVar(&p.km, "km", "", "by phone: `KILOMETRES` to the site, one way, instead of miles")
	flags.StringVar(&p.class, "class", "", "by phone: `CLASS` of customer, of rates.yaml (default: the first)")
	flags.StringVar(&p.place, "tax-place", "", "by phone: `PLACE` where tax is due, of rates.yaml")
	flags.StringArrayVar(&p.loadings, "loading", nil, "by phone: a `LOADING` of rates.yaml, e.g. sunday; may be repeated")
	flags.StringArrayVar(&p.site, "site", nil, "by phone: what the site is like, as `FACTOR=OPTION` of site.yaml; may be repeated")
	flags.StringVar(&p.today, "today", "", "by phone: the quote's own date, as `YYYY-MM-DD` (default: today)")
	flags.StringVar(&p.save, "save", "", "by phone: keep the job as `JOB.yaml`")
}

// given is the first flag of a price by phone that was given; "" for none.
func (p *phone) given(flags *pflag.FlagSet) string {
	for _, name := range []string{"tent", "item", "walls", "guests", "date", "days", "miles", "km", "class", "tax-place", "loading", "site", "today", "save"} {
		if flags.Changed(name) {
			return name
		}
	}
	return ""
}

// today is the day of the clock where the office is.
func today(now time.Time) unit.Date {
	year, month, day := now.Date()
	return unit.Date{Year: year, Month: int(month), Day: day}
}

// job makes the job: delivered the day before the event, taken down the day
// after it.
func (p *phone) job(c *catalog.Catalog, clock unit.Date) (*job.Job, error) {
	r := &flagReader{}
	if len(p.tents)+len(p.items) == 0 {
		r.bad("give at least one, e.g. --tent hip:20x40", "there is neither a tent nor an item to price")
	}
	first := r.date("date", p.date)
	days := 1
	if p.days != "" {
		days = r.whole("days", p.days, 1, 365)
	}
	quoted := clock
	if p.today != "" {
		quoted = r.date("today", p.today)
	}
	j := &job.Job{
		Number:   "phone-" + first.String(),
		Customer: job.Customer{Name: "Caller by phone", Class: p.class},
		Event:    job.Event{Name: "Event on " + first.String(), Guests: r.whole("guests", p.guests, 0, 100000), Place: p.place},
		Dates: job.Dates{Quoted: quoted, Deliver: first.AddDays(-1), From: first, To: first.AddDays(days - 1),
			Strike: first.AddDays(days), Collect: first.AddDays(days)},
		Delivery: job.Delivery{Distance: r.distance(p.miles, p.km), Loadings: p.loadings},
	}
	for i, text := range p.tents {
		t := p.tent(c, "tent-"+strconv.Itoa(i+1), text, r)
		// The name is what the customer reads.
		t.Name = "Tent"
		if len(p.tents) > 1 {
			t.Name += " " + strconv.Itoa(i+1)
		}
		j.Tents = append(j.Tents, t)
	}
	for _, text := range p.items {
		j.Items = append(j.Items, r.item(text))
	}
	for _, text := range p.site {
		j.Site = append(j.Site, r.site(text))
	}
	return j, r.err
}

// tent reads FAMILY:SIZE or FAMILY:SIZExN. A size that the family has is taken
// as it stands, so that 20x40 is never twenty tents.
func (p *phone) tent(c *catalog.Catalog, id, text string, r *flagReader) job.Tent {
	family, size, ok := strings.Cut(text, ":")
	if !ok {
		r.bad("write FAMILY:SIZE, e.g. --tent hip:20x40", "--tent %q has no colon between family and size", text)
	}
	t := job.Tent{ID: id, Family: family, Size: size}
	f := c.Family(family)
	if at := strings.LastIndex(size, "x"); f != nil && f.Size(size) == nil && at >= 0 && f.Size(size[:at]) != nil {
		t.Size, t.Count = size[:at], r.whole("tent", size[at+1:], 1, 500)
	}
	if p.walls != "" && p.walls != "open" {
		for _, side := range []string{"right", "back", "left"} {
			t.Sides = append(t.Sides, job.TentSide{Side: side, Wall: p.walls})
		}
	}
	return t
}
