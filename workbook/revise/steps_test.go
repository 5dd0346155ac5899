package revise_test

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"tentwright/catalog/source"
	"tentwright/workbook"
	"tentwright/workbook/revise"
	"tentwright/workbook/sheet"
)

// openedWith is the workbook of a demonstration job with some cells typed into.
func openedWith(t *testing.T, job string, cells ...typed) *revise.Book {
	t.Helper()
	f := workbook.Layout(demoQuote(t, job)).Found()
	typeInto(t, f, cells...)
	b, list := revise.Open(job+".xlsx", f)
	if b == nil {
		t.Fatal(list)
	}
	return b
}

// The steps of the demonstration shop's quantity break for chairs, and others.
const (
	chairSteps  = "steps: [{from: 100, off: 5}, {from: 250, off: 10}, {from: 500, off: 15}]"
	moreSteps   = "steps: [{from: 50, off: 2}, {from: 100, off: 5}, {from: 250, off: 10}, {from: 500, off: 15}]"
	fewerSteps  = "steps: [{from: 100, off: 5}, {from: 500, off: 15}]"
	editedSteps = "steps: [{from: 50, off: 2}, {from: 100, off: 5}, {from: 250, off: 12}, {from: 500, off: 15}]"
)

// A step is known by where it begins, wherever it stands in the shop of today.
func TestStepsAreKnownByWhereTheyBegin(t *testing.T) {
	b := openedWith(t, "dinner", typed{"break_chairs_off", 1, num(12)})
	today := shopWith(t, "rates.yaml", chairSteps, moreSteps)
	rates, list := b.Rates(today)
	if len(list.Faults()) > 0 || len(rates) != 1 || rates[0].State != revise.RateOpen || rates[0].Present != "10" {
		t.Fatalf("%+v %v", rates, list)
	}
	changed, list := revise.WriteRates(today.Source, rates)
	if list.Err() != nil || !bytes.Contains(changed["rates.yaml"], []byte(editedSteps)) {
		t.Errorf("the step was written elsewhere: %v", list)
	}
	if rates, _ := b.Rates(shopWith(t, "rates.yaml", chairSteps, fewerSteps)); len(rates) != 1 || rates[0].State != revise.RateGone {
		t.Errorf("a step that is gone is %+v", rates)
	}
	r, list := b.Revise(today)
	if r == nil {
		t.Fatal(list)
	}
	for _, c := range r.Changes {
		if c.Note == "the shop's present figure" {
			t.Errorf("told of a step that is the same: %+v", c)
		}
	}
}

// Figures that were written into the shop are told once when it is taken.
func TestRepriceAfterWriting(t *testing.T) {
	b := openedWith(t, "dinner", typed{"rate_waiver", 0, num(11)}, typed{"rate_wet", 0, num(1.5)})
	r, list := b.Revise(shopWith(t, "rates.yaml", "  waiver: 9 ", "  waiver: 11 "))
	if r == nil {
		t.Fatal(list)
	}
	waiver, wet := 0, 0
	for _, c := range r.Changes {
		waiver += strings.Count(c.What, "Damage waiver")
		if c.What == "Wet cloth" && strings.HasPrefix(c.Note, "not taken") {
			wet++
		}
	}
	if waiver != 1 || wet != 1 {
		t.Errorf("the waiver is told %d times, the figure not taken %d: %+v", waiver, wet, r.Changes)
	}
}

// Days out count from the day of delivery in whatever order the sheets stand.
func TestDaysOutInAnyOrder(t *testing.T) {
	for _, turned := range []bool{false, true} {
		f := workbook.Layout(demoQuote(t, "dinner")).Found()
		typeInto(t, f, typed{"job_date_deliver", 0, txt("2026-10-07")}, typed{"job_days_out", 0, num(7)})
		if turned {
			for i, j := 0, len(f.Sheets)-1; i < j; i, j = i+1, j-1 {
				f.Sheets[i], f.Sheets[j] = f.Sheets[j], f.Sheets[i]
			}
		}
		b, list := revise.Open("dinner.xlsx", f)
		if b == nil {
			t.Fatal(list)
		}
		if len(b.Edits) != 2 || b.Edits[0].Old != "2026-10-08" || b.Edits[0].New != "2026-10-07" {
			t.Errorf("edits %+v", b.Edits)
		}
		r, list := b.Revise(nil)
		if r == nil {
			t.Fatal(list)
		}
		if d := r.Quote.Job.Dates; d.Collect.String() != "2026-10-13" {
			t.Errorf("turned %v: collected %s", turned, d.Collect)
		}
	}
}

// The same typed another way is no edit.
func TestSameTypedOtherwise(t *testing.T) {
	q := demoQuote(t, "dinner")
	f := workbook.Layout(q).Found()
	p := f.Names["job_distance"]
	miles := f.Sheet(p.Sheet).At(p.R1, p.C1)
	for _, x := range []typed{
		{"job_date_deliver", 0, txt("2026-10-08")},
		{"job_distance", 0, txt(miles.Text + " mi")},
		{"rate_waiver", 0, txt("9.0")},
		{"job_exempt", 0, sheet.FoundCell{Kind: sheet.FoundBool, Text: "FALSE"}},
	} {
		if b := openedWith(t, "dinner", x); len(b.Edits) > 0 {
			t.Errorf("%s: %+v", x.name, b.Edits)
		}
	}
}

// The name of an item, typed in place of its id, is read as that item, and said.
func TestNameForAnID(t *testing.T) {
	b := openedWith(t, "garden", typed{"build_id", spare(t, "garden"), txt("portable bar, 6 ft")}, typed{"build_quantity", spare(t, "garden"), num(2)})
	if len(b.Edits) != 1 || b.Edits[0].Note != "read as bar" {
		t.Fatalf("edits %+v", b.Edits)
	}
	r, list := b.Revise(nil)
	if r == nil {
		t.Fatal(list)
	}
	items := r.Quote.Job.Items
	if last := items[len(items)-1]; last.Item != "bar" || r.Changes[0].Note != "read as bar" {
		t.Errorf("added %+v, told %+v", last, r.Changes)
	}
	f := workbook.Layout(demoQuote(t, "garden")).Found()
	typeInto(t, f, typed{"build_id", spare(t, "garden"), txt("portable bar, 6 tf")}, typed{"build_quantity", spare(t, "garden"), num(2)})
	if _, list := revise.Open("garden.xlsx", f); len(list) != 1 || list[0].Advice != `did you mean "bar", Portable bar, 6 ft?` {
		t.Errorf("told %v", list)
	}
}

// spare is the place of the first free line among the order lines.
func spare(t *testing.T, job string) int {
	t.Helper()
	f := workbook.Layout(demoQuote(t, job)).Found()
	return placeIn(t, f, "build_id/S:1", 0).R1 - f.Names["build_id"].R1
}

// Faults of several files are all told, in the order of the files' names.
func TestFaultsOfAllFiles(t *testing.T) {
	shop := demoQuote(t, "garden").Catalog.Source
	open := func(file string) revise.Rate {
		r := revise.Rate{State: revise.RateOpen}
		r.File, r.Shop = file, source.Edit{Path: "no.such", Value: "1"}
		return r
	}
	_, list := revise.WriteRates(shop, []revise.Rate{open("trucks.yaml"), open("labour.yaml"), open("rates.yaml")})
	var files []string
	for _, p := range list {
		files = append(files, p.Pos.File)
	}
	if !slices.Equal(files, []string{"labour.yaml", "rates.yaml", "trucks.yaml"}) {
		t.Errorf("faults in %v", files)
	}
}
