package intake

import (
	"fmt"
	"slices"
	"strconv"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
	"tentwright/workbook/sheet"
)

// years says which days a form takes: others are slips of the keyboard.
const years = " Days of the years 2000 to 2099 are taken."

// section writes a band and its fields, each with words beside it.
func (f *form) section(sec *section) {
	f.band(sec.title, "")
	for i := range sec.fields {
		f.field(&sec.fields[i])
	}
}

// field writes one cell that stands alone.
func (f *form) field(d *field) {
	in, rule := f.shape(d)
	style := label()
	style.Bold = d.need
	last, help := colE, colF
	if d.tall {
		last, help = colH, colI
	}
	n := f.row(cell(colLabel, d.label, style), in, cell(help, d.help, beside()))
	if d.tall {
		f.s.Rows[n-1].Height = 62
	}
	f.nameCell(d.name, colValue)
	f.merge(colValue, last)
	if d.list != "" {
		f.allowFrom(colValue, d.list, d.of(f.c), d.help)
		return
	}
	prompt := d.help
	if rule.Kind == sheet.Date {
		prompt += years
	}
	f.allow(colValue, rule, prompt)
}

// shape is the empty cell of a field and what may be typed into it.
func (f *form) shape(d *field) (placed, sheet.Validation) {
	left := func(p placed) placed {
		p.Style.Align = sheet.Left
		return p
	}
	if d.list != "" {
		return pick(colValue), sheet.Validation{}
	}
	switch d.to(new(job.Job)).(type) {
	case *unit.Date:
		return input(colValue, sheet.DateISO), sheet.AnyDay()
	case *int:
		return left(input(colValue, sheet.General)), wholes(d.least, d.most)
	case *money.Number:
		most := d.most
		if d.plain && most == 0 {
			most = 2000 // hours
		}
		return left(input(colValue, sheet.General)), decimals(most)
	case *bool:
		return pick(colValue), yesOrNo()
	case *unit.Length, *unit.Speed, **unit.Temperature:
		// Words too: "12 mi" says its unit itself.
		return left(input(colValue, sheet.General)), words(40)
	}
	most := d.most
	if most == 0 {
		most = 250
	}
	p := input(colValue, sheet.Text)
	if d.tall {
		// Some programs show no text of more than 255 characters in a cell
		// that is marked as text.
		p.Style.Format = sheet.General
	}
	return p, words(most)
}

// site writes a drop-down for every factor that slows the work.
func (f *form) site() {
	f.newPage()
	f.band("Site", "What slows the work. Empty: the first of the list, which is usual. The page Site Visit asks the same.")
	first := len(f.s.Rows) + 1
	for i := range f.c.Site {
		factor := &f.c.Site[i]
		f.row(cell(colLabel, factor.Name, label()), pick(colValue), cell(colF, "Usual: "+degrees(factor)[0].text, beside()), cell(colKey, factor.ID, key()))
		f.merge(colValue, colE)
		f.allowFrom(colValue, "degrees_"+strconv.Itoa(i+1), degrees(factor), "The degree of "+factor.Name+" on this site; empty is the usual one.")
	}
	f.nameColumns("site", first, map[string]int{"id": colKey, "degree": colValue})
}

// loadings writes a Yes or No for every surcharge of unusual hours.
func (f *form) loadings() {
	if len(f.c.Rates.Loadings) == 0 {
		return
	}
	f.row(cell(colLabel, "Unusual hours", sheet.Style{Role: sheet.Label, Bold: true}), cell(colValue, "Yes where the surcharge is due; empty: No.", faint()))
	first := len(f.s.Rows) + 1
	for i := range f.c.Rates.Loadings {
		l := &f.c.Rates.Loadings[i]
		f.row(cell(colLabel, l.Name, sheet.Style{Role: sheet.Label, Wrap: true, Indent: 1}), pick(colValue), cell(colF, "+"+l.Percent.String()+"% on delivery and on labour of its hours", beside()), cell(colKey, l.ID, key()))
		f.merge(colValue, colE)
		f.allow(colValue, yesOrNo(), "Yes if this surcharge is due: "+l.Name)
	}
	f.nameColumns("loading", first, map[string]int{"id": colKey, "due": colValue})
}

// windows writes the crew of every stretch of work, for jobs that are not like
// others.
func (f *form) windows() {
	f.heads(colLabel, "Crews, if not the usual", "People", "Days", "Hours before")
	first := len(f.s.Rows) + 1
	for i := range f.c.Rates.Windows {
		w := &f.c.Rates.Windows[i]
		f.row(cell(colLabel, w.Name, wrapped()), input(colValue, sheet.General), input(colD, sheet.General), input(colE, sheet.General),
			cell(colF, fmt.Sprintf("Usual: people %d, days %d. Hours before: what each has worked that week already.", w.Crew, w.Days), beside()), cell(colKey, w.ID, key()))
		f.allow(colValue, wholes(1, 200), "People; empty: the usual crew of this work.")
		f.allow(colD, wholes(1, 60), "Days; empty: the usual ones of this work.")
		f.allow(colE, decimals(168), "Hours that each has worked that week already; empty: none.")
	}
	f.nameColumns("window", first, map[string]int{"id": colKey, "crew": colValue, "days": colD, "worked": colE})
}

// hours writes what the crew must keep to on each stretch of work: into how many
// crews it is split, and its times, which hold on the site alone.
func (f *form) hours() {
	f.heads(colLabel, "Hours of the crew, if any are given", "Crews", "On site from", "Off it by", "Ready by", "Inspection", "Sleeps there")
	first := len(f.s.Rows) + 1
	for i := range f.c.Rates.Windows {
		w := &f.c.Rates.Windows[i]
		cells := []placed{cell(colLabel, w.Name, wrapped()), input(colValue, sheet.General), timed(colF), cell(colKey, w.ID, key())}
		site := f.onSite(w.ID)
		if site {
			cells = append(cells, timed(colD), timed(colE), timed(colG), pick(colH))
		}
		f.row(cells...)
		f.allow(colValue, wholes(1, 20), "Crews into which the people are split, each with tents of its own; empty: one.")
		f.allow(colF, sheet.AnyTime(), "By when all must be ready on the last day, such as 16:00; empty: any time of that day.")
		if site {
			f.allow(colD, sheet.AnyTime(), "Before when the site may not be entered, such as 7:30; empty: none is given.")
			f.allow(colE, sheet.AnyTime(), "By when the site must be left, such as 20:00; empty: none is given.")
			f.allow(colG, sheet.AnyTime(), "When the authority comes on the last day, such as 15:00; empty: nobody does.")
			f.allow(colH, yesOrNo(), "Yes if the crew sleeps near the site between its days; empty: No.")
		}
	}
	f.nameColumns("hours", first, map[string]int{"id": colKey, "crews": colValue, "from": colD, "until": colE, "ready": colF, "inspect": colG, "stay": colH})
}

// timed is an empty cell for a time of day.
func timed(col int) placed {
	p := input(col, sheet.Clock)
	p.Style.Align = sheet.Centre
	return p
}

// onSite tells whether a window works on the site. Of a shop that does not say,
// each may.
func (f *form) onSite(window string) bool {
	if f.c.Crew == nil {
		return true
	}
	return slices.ContainsFunc(f.c.Crew.Days, func(d catalog.CrewDay) bool { return d.Window == window && d.Site })
}

// payments writes rows for money received.
func (f *form) payments() {
	f.band("Payments received", "Money that has come in already, each with its day.")
	f.heads(colLabel, "", "Day", "Amount", "Note", "", "", "")
	f.merge(colE, colH)
	first := len(f.s.Rows) + 1
	for n := range paymentLines {
		f.row(cell(colLabel, fmt.Sprintf("Payment %d", n+1), label()), input(colValue, sheet.DateISO), input(colD, sheet.Money), input(colE, sheet.Text))
		f.merge(colE, colH)
		f.allow(colValue, sheet.AnyDay(), "The day on which it was received, e.g. 2026-07-04."+years)
		f.allow(colD, decimals(10000000), "The amount, without a currency sign.")
		f.allow(colE, words(250), "What it is for.")
	}
	f.nameColumns("payment", first, map[string]int{"date": colValue, "amount": colD, "note": colE})
}
