package dates

import (
	"bytes"
	"crypto/sha1"
	"encoding/hex"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
)

// ICal is the dates of a job as a calendar by RFC 5545, each a whole day or
// several; what is not needed, or has no day yet, is left out. The same job
// gives the same bytes: its stamp is the day of the quote, and a later revision
// takes an earlier one's place.
func ICal(c *catalog.Catalog, j *job.Job, r *Result) []byte {
	w := &icalWriter{}
	w.line("BEGIN", "VCALENDAR")
	w.line("VERSION", "2.0")
	w.line("PRODID", "-//tentwright//dates of a job//EN")
	w.line("CALSCALE", "GREGORIAN")
	w.line("METHOD", "PUBLISH")
	for i := range r.Dates {
		if d := &r.Dates[i]; d.Needed && !d.Begin().IsZero() {
			w.event(c, j, d)
		}
	}
	w.line("END", "VCALENDAR")
	return w.out.Bytes()
}

type icalWriter struct{ out bytes.Buffer }

// event is one date. DTEND is the day after the last one, since the end of an
// event is not within it. It blocks nobody's time.
func (w *icalWriter) event(c *catalog.Catalog, j *job.Job, d *Date) {
	first, last := d.Begin(), d.Until()
	if last.Before(first) {
		first = last // no day is left; by the last one it should have been done
	}
	w.line("BEGIN", "VEVENT")
	w.line("UID", icalUID(c.Company.Name, j.Number, d.Rule.ID))
	w.line("DTSTAMP", icalDay(j.Dates.Quoted)+"T000000Z")
	w.line("SEQUENCE", fmt.Sprint(j.Revision))
	w.line("DTSTART;VALUE=DATE", icalDay(first))
	w.line("DTEND;VALUE=DATE", icalDay(last.AddDays(1)))
	w.text("SUMMARY", d.Rule.Name+": "+j.Event.Name)
	w.text("DESCRIPTION", strings.Join(describe(c, j, d), "\n"))
	if len(j.Event.Address) > 0 {
		w.text("LOCATION", strings.Join(j.Event.Address, ", "))
	}
	w.line("TRANSP", "TRANSPARENT")
	w.line("END", "VEVENT")
}

// describe says what a date follows from, for whom it is, and who says so.
func describe(c *catalog.Catalog, j *job.Job, d *Date) []string {
	lines := []string{"Quote " + j.Number + " for " + j.Customer.Name}
	if j.Revision > 0 {
		lines[0] = fmt.Sprintf("Quote %s revision %d for %s", j.Number, j.Revision, j.Customer.Name)
	}
	if d.Rule.Who != "" {
		lines = append(lines, "Who: "+d.Rule.Who)
	}
	lines = append(lines, "When: "+d.Words())
	for _, e := range []*End{d.First, d.Last} {
		if e == nil {
			continue
		}
		for _, off := range e.Skipped {
			if line := fmt.Sprintf("Not counted: %s, %s", off.Day, off.Name); lines[len(lines)-1] != line {
				lines = append(lines, line)
			}
		}
	}
	if d.State != "" {
		lines = append(lines, "State: "+d.State)
	}
	for _, more := range []string{d.Rule.Note, Behind("Source: ", d.Rule.Source)} {
		if more != "" {
			lines = append(lines, more)
		}
	}
	if c.Demo {
		lines = append(lines, "Demonstration data, not for customers.")
	}
	return append(lines, "A planning estimate: local codes and the authority having jurisdiction govern.")
}

// Behind is a text with words before it; nothing of no text.
func Behind(before, text string) string {
	if text == "" {
		return ""
	}
	return before + text
}

// icalDay is a day as RFC 5545 writes it, 3.3.4.
func icalDay(d unit.Date) string { return fmt.Sprintf("%04d%02d%02d", d.Year, d.Month, d.Day) }

// icalUID names one date of one job of one shop, always alike, so that a later
// file changes the entry that an earlier one made: a UUID by name, version 5 of
// RFC 9562.
func icalUID(shop, number, key string) string {
	space, _ := hex.DecodeString("6ba7b8119dad11d180b400c04fd430c8")
	sum := sha1.Sum(append(space, strings.Join([]string{"tentwright", shop, number, key}, "\x00")...))
	id := sum[:16]
	id[6], id[8] = id[6]&0x0f|0x50, id[8]&0x3f|0x80
	return fmt.Sprintf("%x-%x-%x-%x-%x", id[:4], id[4:6], id[6:8], id[8:10], id[10:])
}

// text writes a text, with the signs that mean something escaped: 3.3.11.
func (w *icalWriter) text(name, value string) {
	value = strings.Map(func(r rune) rune {
		switch {
		case r == '\n':
			return r
		case r == '\t':
			return ' '
		case unicode.IsControl(r):
			return -1 // no text may hold one
		}
		return r
	}, strings.ReplaceAll(strings.ToValidUTF8(value, "\ufffd"), "\r\n", "\n"))
	w.line(name, strings.NewReplacer(`\`, `\\`, ";", `\;`, ",", `\,`, "\n", `\n`).Replace(value))
}

// mostOctets is the most octets of a line, its end not counted: 3.1.
const mostOctets = 75

// line writes one property, folded where it is longer, and never within a
// character. A line that goes on begins with a space.
func (w *icalWriter) line(name, value string) {
	rest := name + ":" + value
	for room := mostOctets; len(rest) > room; room = mostOctets - 1 {
		cut := room
		for !utf8.RuneStart(rest[cut]) {
			cut--
		}
		w.out.WriteString(rest[:cut] + "\r\n ")
		rest = rest[cut:]
	}
	w.out.WriteString(rest + "\r\n")
}
