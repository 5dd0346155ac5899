package revise_test

import (
	"bytes"
	"maps"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/workbook"
	"tentwright/workbook/revise"
)

// shopWith is the demonstration shop with texts of its files replaced.
func shopWith(t *testing.T, changes ...string) *catalog.Catalog {
	t.Helper()
	shop := maps.Clone(demoQuote(t, "dinner").Catalog.Source)
	for i := 0; i < len(changes); i += 3 {
		file, from, to := changes[i], changes[i+1], changes[i+2]
		if !bytes.Contains(shop[file], []byte(from)) {
			t.Fatalf("%s does not hold %q", file, from)
		}
		shop[file] = bytes.Replace(shop[file], []byte(from), []byte(to), 1)
	}
	c, list := catalog.Load("today", shop)
	if c == nil {
		t.Fatal(list)
	}
	return c
}

// editedBook is the dinner with three figures of the shop and one of the job
// changed.
func editedBook(t *testing.T) *revise.Book {
	t.Helper()
	f := workbook.Layout(demoQuote(t, "dinner")).Found()
	typeInto(t, f, typed{"rate_waiver", 0, num(11)}, typed{"rate_margin_floor", 0, num(33)}, typed{"rate_wet", 0, num(1.5)}, typed{"job_guests", 0, num(150)})
	b, list := revise.Open("dinner.xlsx", f)
	if b == nil {
		t.Fatal(list)
	}
	return b
}

// A changed figure is held against the shop of today, wherever in its files it
// now stands, and only one that is as it was is written.
func TestRatesAgainstTheShopOfToday(t *testing.T) {
	b := editedBook(t)
	today := shopWith(t, "rates.yaml", "  waiver: 9 ", "  waiver: 11 ", "rates.yaml", "  margin_floor: 30", "  margin_floor: 25")
	rates, list := b.Rates(today)
	if len(list.Faults()) > 0 || len(rates) != 3 {
		t.Fatal(rates, list)
	}
	for i, want := range []revise.RateState{revise.RateDone, revise.RateDiffers, revise.RateOpen} {
		if rates[i].State != want {
			t.Errorf("%s is %q; %q was expected", rates[i].What, rates[i].State, want)
		}
	}
	changed, list := revise.WriteRates(today.Source, rates)
	if list.Err() != nil || len(changed) != 1 {
		t.Fatal(changed, list)
	}
	before, after := lines(today.Source["rates.yaml"]), lines(changed["rates.yaml"])
	differ := 0
	for i := range before {
		if before[i] != after[i] {
			differ++
			if !strings.Contains(after[i], "wet_factor: 1.5") || !strings.Contains(after[i], "#") {
				t.Errorf("line %d became %q", i+1, after[i])
			}
		}
	}
	if len(before) != len(after) || differ != 1 {
		t.Errorf("%d lines differ; one was expected", differ)
	}
}

func lines(data []byte) []string { return strings.Split(string(data), "\n") }

// With the present shop, its figures hold and are listed; the job's edits are
// made, and the effects add up.
func TestReprice(t *testing.T) {
	b := editedBook(t)
	r, list := b.Revise(shopWith(t, "rates.yaml", "  waiver: 9 ", "  waiver: 10 "))
	if r == nil {
		t.Fatal(list)
	}
	sum, told := money.Zero, ""
	for _, c := range r.Changes {
		if c.Effect != nil {
			sum = sum.Add(c.Effect.Price)
		}
		told += c.What + " " + c.Old + "-" + c.New + " " + c.Note + "\n"
	}
	if want := r.Quote.Price.Total.Sub(b.Quote.Price.Total); !sum.Equal(want) {
		t.Errorf("the effects add up to %s; the difference is %s", sum, want)
	}
	for _, want := range []string{"Damage waiver 9-10 the shop's present figure", "Damage waiver 9-11 not taken", "Wet cloth 1.3-1.5 not taken", "uests 160-150"} {
		if !strings.Contains(told, want) {
			t.Errorf("nothing says %q in\n%s", want, told)
		}
	}
	if r.Quote.Job.Event.Guests != 150 || r.Quote.Catalog.Rates.Waiver.String() != "10" {
		t.Error("the job's edits or the shop's figures are not taken")
	}
}
