package job

import (
	"fmt"
	"strings"
	"unicode"

	"tentwright/catalog/money"
	"tentwright/catalog/unit"
)

// writeHead tells whoever opens the file what it is.
const writeHead = `# A job: what one customer asks for. Ids of tents, items, walls and doors are those of the shop's files.
# Lengths carry their unit (7 ft, 12 mi, 25 km); dates are year-month-day; discounts are percent.
`

// Write is the job as YAML that [Read] turns into the same job again, places
// in the file apart. Fields that are not set are left out. j must be one that
// Read could have returned; what no file can hold is written so that Read
// refuses it.
func Write(j *Job) []byte {
	w := &writer{}
	w.out.WriteString(writeHead)
	w.text("number", j.Number)
	w.whole("revision", j.Revision)
	w.group("customer", func() { w.customer(&j.Customer) })
	w.group("event", func() { w.event(&j.Event) })
	w.group("dates", func() { w.dates(&j.Dates) })
	entries(w, "tents", j.Tents, w.tent)
	entries(w, "items", j.Items, w.line)
	entries(w, "site", j.Site, func(s *SiteChoice) {
		w.text("factor", s.Factor)
		w.text("option", s.Option)
	})
	w.group("delivery", func() { w.delivery(&j.Delivery) })
	if l := &j.Labour; l.Charge != "" || len(l.Windows) > 0 || l.Weather != nil || l.Tries > 0 {
		w.group("labour", func() { w.labour(&j.Labour) })
	}
	w.surroundings(j)
	if !j.Discount.Percent.IsZero() || j.Discount.Reason != "" {
		w.group("discount", func() {
			w.number("percent", j.Discount.Percent)
			w.text("reason", j.Discount.Reason)
		})
	}
	w.text("show_prices", j.Show)
	entries(w, "payments", j.Payments, func(p *Payment) {
		w.field("date", p.Date.String())
		w.field("amount", p.Amount.String())
		w.text("note", p.Note)
	})
	w.text("notes", j.Notes)
	w.text("office_notes", j.Internal)
	return []byte(w.out.String())
}

// writer writes fields at an indent; first holds the mark of a list entry
// until the entry's first field stands behind it.
type writer struct {
	out    strings.Builder
	indent string
	first  string
}

func (w *writer) customer(c *Customer) {
	w.text("name", c.Name)
	w.text("contact", c.Contact)
	w.texts("address", c.Address)
	w.text("phone", c.Phone)
	w.text("email", c.Email)
	w.text("class", c.Class)
	w.flag("tax_exempt", c.Exempt)
}

func (w *writer) event(e *Event) {
	w.text("name", e.Name)
	w.whole("guests", e.Guests)
	w.text("use", e.Use)
	w.texts("address", e.Address)
	w.text("tax_place", e.Place)
	w.text("site_contact", e.Contact)
	w.text("access", e.Access)
	w.text("parking", e.Parking)
}

func (w *writer) dates(d *Dates) {
	w.field("quoted", d.Quoted.String())
	if !d.Signed.IsZero() {
		w.field("signed", d.Signed.String())
	}
	w.field("deliver", d.Deliver.String())
	w.field("event_from", d.From.String())
	w.field("event_to", d.To.String())
	w.field("strike", d.Strike.String())
	w.field("collect", d.Collect.String())
	w.whole("charged_days", d.Charged)
}

func (w *writer) tent(t *Tent) {
	w.text("id", t.ID)
	w.text("name", t.Name)
	w.text("family", t.Family)
	w.text("size", t.Size)
	w.whole("count", t.Count)
	if t.Leg != 0 {
		w.field("leg", lengthText(t.Leg))
	}
	w.text("ground", t.Ground)
	w.text("joins", t.Joins)
	w.text("join_side", t.JoinAt)
	w.number("discount", t.Discount)
	entries(w, "sides", t.Sides, func(s *TentSide) {
		w.text("side", s.Side)
		w.text("wall", s.Wall)
		w.texts("doors", s.Doors)
		w.flag("no_stakes", s.NoStakes)
		w.text("ground", s.Ground)
	})
	entries(w, "uses", t.Uses, func(u *FloorUse) {
		w.text("use", u.Use)
		w.field("area", exactText(u.Area))
	})
	if t.Place != nil {
		w.group("place", func() {
			w.field("x", exactText(t.Place.X))
			w.field("y", exactText(t.Place.Y))
			if t.Place.Turn != "" {
				w.field("turn", t.Place.Turn)
			}
		})
	}
}

func (w *writer) line(l *Line) {
	w.text("item", l.Item)
	w.field("quantity", l.Quantity.String())
	w.flag("optional", l.Optional)
	w.flag("chosen", l.Chosen)
	w.number("discount", l.Discount)
	w.text("note", l.Note)
}

func (w *writer) delivery(d *Delivery) {
	w.text("zone", d.Zone)
	w.field("distance", distanceText(d.Distance))
	w.texts("loadings", d.Loadings)
	w.flag("free", d.Free)
}

func (w *writer) labour(l *Labour) {
	w.text("charge", l.Charge)
	entries(w, "windows", l.Windows, func(c *WindowCrew) {
		w.text("window", c.Window)
		w.whole("crew", c.Crew)
		w.whole("days", c.Days)
		w.number("worked", c.Worked)
		w.whole("crews", c.Crews)
		w.clock("from", c.From)
		w.clock("until", c.Until)
		w.clock("ready", c.Ready)
		w.clock("inspect", c.Inspect)
		w.flag("stay", c.Stay)
	})
	if l.Weather != nil {
		w.group("weather", func() {
			if l.Weather.Temperature != nil {
				w.field("temperature", exactText(l.Weather.Temperature))
			}
			w.field("humidity", l.Weather.Humidity.String())
		})
	}
	w.whole("tries", l.Tries)
}

// clock writes a time of day that is given.
func (w *writer) clock(name string, at unit.Clock) {
	if at != 0 {
		w.field(name, `"`+exactText(at)+`"`)
	}
}

// field writes one field on one line.
func (w *writer) field(name, value string) {
	if w.first != "" {
		w.out.WriteString(w.first)
		w.first = ""
	} else {
		w.out.WriteString(w.indent)
	}
	w.out.WriteString(strings.TrimRight(name+": "+value, " ") + "\n")
}

// group writes a field that holds fields.
func (w *writer) group(name string, fields func()) {
	w.field(name, "")
	outer := w.indent
	w.indent += "  "
	fields()
	w.indent = outer
}

// entries writes a list of which each entry has fields; nothing for no entry.
func entries[T any](w *writer, name string, all []T, fields func(*T)) {
	if len(all) == 0 {
		return
	}
	w.field(name, "")
	outer := w.indent
	w.indent += "    "
	for i := range all {
		w.first = outer + "  - "
		fields(&all[i])
	}
	w.indent = outer
}

func (w *writer) whole(name string, n int) {
	if n != 0 {
		w.field(name, fmt.Sprint(n))
	}
}

func (w *writer) number(name string, n money.Number) {
	if !n.IsZero() {
		w.field(name, n.String())
	}
}

func (w *writer) flag(name string, set bool) {
	if set {
		w.field(name, "yes")
	}
}

func (w *writer) text(name, text string) {
	if text != "" {
		w.field(name, scalar(text, w.indent+"  "))
	}
}

// texts writes a list of texts on one line.
func (w *writer) texts(name string, all []string) {
	if len(all) == 0 {
		return
	}
	quoted := make([]string, len(all))
	for i, text := range all {
		quoted[i] = scalar(text, w.indent+"  ")
	}
	w.field(name, "["+strings.Join(quoted, ", ")+"]")
}

// lengthText is a length that reads back exactly.
func lengthText(l unit.Length) string {
	text, err := l.MarshalText()
	if err != nil {
		return l.In(unit.Imperial)
	}
	return string(text)
}

// distanceText is a road distance in miles or kilometres where hundredths of
// them suffice, as people write it.
func distanceText(l unit.Length) string {
	for _, in := range []struct {
		word string
		one  unit.Length
	}{{"mi", unit.Mile}, {"km", unit.Kilometre}} {
		text := money.Round(money.Float(float64(l)/float64(in.one)), 2).String() + " " + in.word
		if back, err := unit.ParseLength(text); err == nil && back == l {
			return text
		}
	}
	return lengthText(l)
}

// scalar is a text as YAML: bare when it is plain words, else in double
// quotes. Each line of a text stands on a line of its own, at the indent.
func scalar(text, indent string) string {
	if bare(text) {
		return text
	}
	var out strings.Builder
	out.WriteByte('"')
	for i, line := range strings.SplitAfter(text, "\n") {
		if i > 0 && line != "" {
			// A line end after "\" is no part of the text, nor are the
			// blanks behind it unless the first has a "\" of its own.
			out.WriteString("\\\n" + indent)
			if line[0] == ' ' {
				out.WriteByte('\\')
			}
		}
		for _, r := range line {
			out.WriteString(escaped(r))
		}
	}
	out.WriteByte('"')
	return out.String()
}

// bare tells whether a text is only letters, digits, "-" and "_" from a letter
// on, and no word that means something else in YAML.
func bare(text string) bool {
	switch strings.ToLower(text) {
	case "null", "true", "false", "yes", "no", "on", "off", "y", "n":
		return false
	}
	for i, r := range text {
		letter := r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z'
		if !letter && (i == 0 || !strings.ContainsRune("0123456789-_", r)) {
			return false
		}
	}
	return text != ""
}

// escaped is one character between double quotes.
func escaped(r rune) string {
	switch {
	case r == '"' || r == '\\':
		return "\\" + string(r)
	case r == '\n':
		return `\n`
	case r == '\t':
		return `\t`
	case unicode.IsPrint(r):
		return string(r)
	case r <= 0xff:
		return fmt.Sprintf(`\x%02x`, r)
	case r <= 0xffff:
		return fmt.Sprintf(`\u%04x`, r)
	}
	return fmt.Sprintf(`\U%08x`, r)
}
