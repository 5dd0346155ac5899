package dates_test

import (
	"bytes"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"tentwright/catalog"
	"tentwright/quote/dates"
)

// property is one line of a calendar: name, parameters and the text behind the
// colon, not unescaped.
type property struct{ name, params, value string }

var propertyForm = regexp.MustCompile(`^([A-Z-]+)((?:;[A-Z-]+=[^;:,"]+)*):(.*)$`)

// fataler is what both kinds of test stop by.
type fataler interface{ Fatalf(string, ...any) }

// unfolded is the lines of a calendar put together again: they end in CRLF, have
// at most 75 octets of whole characters, and go on behind a space (3.1).
func unfolded(t fataler, data []byte) (lines []string) {
	if !bytes.HasSuffix(data, []byte("\r\n")) {
		t.Fatalf("the last line does not end in CRLF")
	}
	for _, raw := range strings.Split(strings.TrimSuffix(string(data), "\r\n"), "\r\n") {
		switch {
		case len(raw) > 75 || !utf8.ValidString(raw) || strings.ContainsAny(raw, "\r\n\x00") || raw == "":
			t.Fatalf("line %q: %d octets; at most 75 of whole characters were expected", raw, len(raw))
		case raw[0] == ' ' && len(lines) > 0:
			lines[len(lines)-1] += raw[1:]
		default:
			lines = append(lines, raw)
		}
	}
	return lines
}

// readICal reads a calendar by RFC 5545: each line is a property, and components
// nest.
func readICal(t fataler, data []byte) (head []property, events [][]property) {
	depth := ""
	for _, line := range unfolded(t, data) {
		m := propertyForm.FindStringSubmatch(line)
		if m == nil {
			t.Fatalf("%q is no property", line)
		}
		p := property{m[1], m[2], m[3]}
		switch {
		case p.name == "BEGIN":
			depth += "/" + p.value
			if p.value == "VEVENT" {
				events = append(events, nil)
			}
		case p.name == "END":
			if !strings.HasSuffix(depth, "/"+p.value) {
				t.Fatalf("%q ends what is not open: %q", p.value, depth)
			}
			depth = strings.TrimSuffix(depth, "/"+p.value)
		case depth == "/VCALENDAR":
			head = append(head, p)
		case depth == "/VCALENDAR/VEVENT":
			events[len(events)-1] = append(events[len(events)-1], p)
		default:
			t.Fatalf("%q stands in %q", line, depth)
		}
	}
	if depth != "" {
		t.Fatalf("%q does not end", depth)
	}
	return head, events
}

// plain undoes the escapes of a text, 3.3.11; false where one is unknown or a
// sign that must be escaped is not.
func plain(text string) (string, bool) {
	var out strings.Builder
	for i := 0; i < len(text); i++ {
		switch ch := text[i]; {
		case ch == ',' || ch == ';':
			return "", false
		case ch != '\\':
			out.WriteByte(ch)
		case i+1 == len(text) || !strings.ContainsRune(`\;,nN`, rune(text[i+1])):
			return "", false
		default:
			i++
			out.WriteString(strings.NewReplacer("n", "\n", "N", "\n").Replace(text[i : i+1]))
		}
	}
	return out.String(), true
}

// one is the only property of a name.
func one(t fataler, all []property, name string) property {
	at := slices.IndexFunc(all, func(p property) bool { return p.name == name })
	if at < 0 || slices.IndexFunc(all[at+1:], func(p property) bool { return p.name == name }) >= 0 {
		t.Fatalf("%s must stand once, in %v", name, all)
	}
	return all[at]
}

// The file holds what RFC 5545 requires: PRODID and VERSION (3.6), UID and
// DTSTAMP of each event (3.6.1), which METHOD wants too; whole days have no time
// and an end that is not within them.
func TestICal(t *testing.T) {
	c := demoShop(t)
	q := quoted(t, c, "2026-05-01,", "2026-05-01, signed: 2026-05-10,")
	data := dates.ICal(c, q.Job, q.Dates)
	head, events := readICal(t, data)
	if v := one(t, head, "VERSION"); v.value != "2.0" || one(t, head, "PRODID").value == "" || one(t, head, "METHOD").value != "PUBLISH" {
		t.Errorf("the head is %v", head)
	}
	got := daysByName(t, events)
	for summary, want := range map[string]string{
		"Ask for utilities to be marked: Test Event": "20260624 20260707", // 24 June to 6 July
		"Event: Test Event":                          "20260711 20260713",
		"Take down: Test Event":                      "20260713 20260714",
		"Free to hire again: Test Event":             "20260717 20260718",
		"Deposit: Test Event":                        "20260510 20260511",
	} {
		if got[summary] != want {
			t.Errorf("%s: %q; %q was expected", summary, got[summary], want)
		}
	}
	if len(events) != len(q.Dates.Dates) {
		t.Errorf("%d events of %d dates", len(events), len(q.Dates.Dates))
	}
}

// daysByName is the first day of each event and the one after its last, by its
// summary, with what must stand in each.
func daysByName(t *testing.T, events [][]property) map[string]string {
	t.Helper()
	uids, got := map[string]bool{}, map[string]string{}
	form := regexp.MustCompile(`^[0-9a-f]{8}-[0-9a-f]{4}-5[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$`)
	for _, e := range events {
		uid := one(t, e, "UID").value
		if uids[uid] || !form.MatchString(uid) {
			t.Errorf("UID %q is no UUID of version 5, or stands twice", uid)
		}
		uids[uid] = true
		start, end := one(t, e, "DTSTART"), one(t, e, "DTEND")
		if start.params != ";VALUE=DATE" || end.params != ";VALUE=DATE" || start.value >= end.value || one(t, e, "DTSTAMP").value != "20260501T000000Z" {
			t.Errorf("days of %v", e)
		}
		summary, ok := plain(one(t, e, "SUMMARY").value)
		if !ok {
			t.Errorf("summary of %v", e)
		}
		got[summary] = start.value + " " + end.value
	}
	return got
}

// The same job gives the same bytes; a later revision takes the place of an
// earlier one.
func TestICalOfARevision(t *testing.T) {
	c := demoShop(t)
	q := quoted(t, c, "2026-05-01,", "2026-05-01, signed: 2026-05-10,")
	data := dates.ICal(c, q.Job, q.Dates)
	_, events := readICal(t, data)
	again := quoted(t, c, "number: T-1", "number: T-1\nrevision: 2", "2026-05-01,", "2026-05-01, signed: 2026-05-10,")
	_, later := readICal(t, dates.ICal(c, again.Job, again.Dates))
	for i := range later {
		if one(t, later[i], "UID") != one(t, events[i], "UID") || one(t, later[i], "SEQUENCE").value != "2" {
			t.Errorf("a later revision does not take the place of %v", events[i])
		}
	}
	if !bytes.Equal(data, dates.ICal(c, q.Job, q.Dates)) {
		t.Error("the same job gives other bytes")
	}
}

// What is not needed, or has no day, makes no event; two shops or jobs share no
// UID.
func TestICalLeavesOut(t *testing.T) {
	c := demoShop(t)
	q := quoted(t, c, "size: 20x20", "size: 20x20, ground: deck")
	_, events := readICal(t, dates.ICal(c, q.Job, q.Dates))
	for _, e := range events {
		if s := one(t, e, "SUMMARY").value; strings.Contains(s, "utilities") || strings.Contains(s, "Deposit") {
			t.Errorf("%s is an event", s)
		}
	}
	other := quoted(t, c, "number: T-1", "number: T-2", "size: 20x20", "size: 20x20, ground: deck")
	_, others := readICal(t, dates.ICal(c, other.Job, other.Dates))
	if one(t, events[0], "UID") == one(t, others[0], "UID") {
		t.Error("two jobs share a UID")
	}
}

// Whatever people write comes back as it was, whatever its length and signs.
func TestICalKeepsAwkwardTexts(t *testing.T) {
	c := demoShop(t)
	q := quoted(t, c)
	text := rapid.StringOf(rapid.OneOf(rapid.RuneFrom([]rune(`,;\:"n`+"\n äß€漢字🎪é")), rapid.Rune()))
	rapid.Check(t, func(t *rapid.T) {
		j, r := *q.Job, *q.Dates
		j.Event.Name = text.Draw(t, "event")
		j.Event.Address = []string{text.Draw(t, "street")}
		rule := catalog.DateRule{ID: "x", Name: text.Draw(t, "name")}
		r.Dates = []dates.Date{{Rule: &rule, Needed: true, Exact: true, Last: &dates.End{Day: j.Dates.Deliver}}}
		_, events := readICal(t, dates.ICal(c, &j, &r))
		want := strings.Map(func(r rune) rune {
			switch {
			case r == '\t':
				return ' '
			case r != '\n' && (r < ' ' || r >= 0x7f && r < 0xa0):
				return -1
			}
			return r
		}, strings.ReplaceAll(rule.Name+": "+j.Event.Name, "\r\n", "\n"))
		if got, ok := plain(one(t, events[0], "SUMMARY").value); !ok || got != want {
			t.Fatalf("the summary is %q; %q was expected", got, want)
		}
		if _, ok := plain(one(t, events[0], "DESCRIPTION").value); !ok {
			t.Fatalf("the description %q is not escaped", one(t, events[0], "DESCRIPTION").value)
		}
	})
}

func BenchmarkDates(b *testing.B) {
	c := demoShop(b)
	q := quoted(b, c)
	for b.Loop() {
		dates.ICal(c, q.Job, dates.Build(c, q.Job, q.Parts))
	}
}
