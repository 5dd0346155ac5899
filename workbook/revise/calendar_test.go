package revise_test

import (
	"strings"
	"testing"

	"tentwright/catalog/unit"
	"tentwright/quote"
	"tentwright/quote/dates"
	"tentwright/workbook"
	"tentwright/workbook/revise"
	"tentwright/workbook/sheet"
)

// dateOf is a date of a quote by the id of its rule.
func dateOf(t *testing.T, q *quote.Quote, id string) *dates.Date {
	t.Helper()
	for i := range q.Dates.Dates {
		if q.Dates.Dates[i].Rule.ID == id {
			return &q.Dates.Dates[i]
		}
	}
	t.Fatalf("no date %q", id)
	return nil
}

// Numbers of days become the shop's calendar and the day of signing the job's;
// what was ticked stays ticked, and is not late though its day has passed.
func TestDatesAreTakenOver(t *testing.T) {
	q := demoQuote(t, "dinner")
	f := workbook.Layout(q).Found()
	row := func(id string) int { return rowOf(t, f, "date_key", id) }
	signed := unit.Date{Year: 2026, Month: 9, Day: 21}
	typeInto(t, f, typed{"date_days_last", row("marking"), num(-5)}, typed{"date_days_first", row("marking"), num(-9)},
		typed{"date_days_last", row("strike"), num(1)}, typed{"job_date_signed", 0, num(float64(signed.Serial()))},
		typed{"date_done", row("permit"), txt(workbook.TickedBox)})
	b, list := revise.Open("dinner.xlsx", f)
	if b == nil || len(list) > 0 {
		t.Fatal(list)
	}
	r, list := b.Revise(nil)
	if r == nil {
		t.Fatal(list)
	}
	file := string(r.Shop["calendar.yaml"])
	for _, want := range []string{"earliest: {from: deliver, days: -9, count: business, roll: after, on: yard},", "latest: {from: deliver, days: -5, count: business, roll: before, on: yard},", "day: {from: strike, days: 1}"} {
		if !strings.Contains(file, want) {
			t.Errorf("calendar.yaml does not hold %q", want)
		}
	}
	if d := dateOf(t, r.Quote, "marking"); d.First.Day.String() != "2026-09-25" || d.Last.Day.String() != "2026-10-01" {
		t.Errorf("marking from %s to %s; 25 September to 1 October was expected", d.First.Day, d.Last.Day)
	}
	if got := r.Quote.Job.Dates.Signed; got != signed || dateOf(t, r.Quote, "deposit").Last.Day != signed {
		t.Errorf("signed on %s; %s was expected", got, signed)
	}
	checkTicked(t, b, r.Quote)
}

// checkTicked looks at the next workbook: the permit was due before the day of
// signing, as the walk of the site was, of which nobody said that it is done.
func checkTicked(t *testing.T, b *revise.Book, q *quote.Quote) {
	t.Helper()
	if dateOf(t, q, "permit").State != dates.Late {
		t.Errorf("the permit is %q; late was expected", dateOf(t, q, "permit").State)
	}
	next, lost, _ := keptOf(t, b)
	at := func(name, keys, key string) sheet.FoundCell {
		p := next.Names[name]
		return next.Sheet(p.Sheet).At(p.R1+rowOf(t, next, keys, key), p.C1)
	}
	if got := at("date_done", "date_key", "permit").Text + at("date_state", "date_key", "permit").Text + at("date_state", "date_key", "site-visit").Text; got != "☑donelate" || len(lost) > 0 {
		t.Errorf("ticked, with the states %q, and %v lost; done and late were expected", got, lost)
	}
	var late float64
	for _, c := range q.Checks {
		if c.Key == "dates" {
			late = c.Value.InexactFloat64()
		}
	}
	if got := at("check_value", "check_key", "dates").Number; got != late-1 {
		t.Errorf("%v dates are late in the workbook and %v in the quote; one fewer was expected", got, late)
	}
}

// An emptied day of signing is none.
func TestUnsignedAgain(t *testing.T) {
	q := demoQuote(t, "garden")
	q.Job.Dates.Signed = unit.Date{Year: 2026, Month: 5, Day: 18}
	again, list := quote.Build(q.Catalog, q.Job)
	if again == nil {
		t.Fatal(list)
	}
	f := workbook.Layout(again).Found()
	typeInto(t, f, typed{"job_date_signed", 0, sheet.FoundCell{}})
	b, list := revise.Open("garden.xlsx", f)
	if b == nil || len(b.Edits) != 1 {
		t.Fatal(list)
	}
	r, list := b.Revise(nil)
	if r == nil || !r.Quote.Job.Dates.Signed.IsZero() || dateOf(t, r.Quote, "deposit").State != dates.Unsigned {
		t.Fatalf("still signed; no day was expected, %v", list)
	}
}
