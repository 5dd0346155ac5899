package revise_test

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"tentwright/workbook"
	"tentwright/workbook/revise"
	"tentwright/workbook/sheet"
)

// keptOf is the next revision's workbook with what was written beside the quote,
// and what of that was lost.
func keptOf(t *testing.T, b *revise.Book) (*sheet.Found, []workbook.Change, []string) {
	t.Helper()
	r, list := b.Revise(nil)
	if r == nil {
		t.Fatal(list)
	}
	next := workbook.LayoutWith(r.Quote, workbook.Options{Changes: r.Changes, Kept: b.Kept()})
	lost, added := b.Keep(next)
	return next.Found(), lost, added
}

// What the yard typed follows the parts to another vehicle.
func TestYardFollowsTheVehicle(t *testing.T) {
	n := spare(t, "garden")
	b := openedWith(t, "garden", typed{"build_id", n, txt("table-round-60")}, typed{"build_quantity", n, num(400)},
		typed{"pick_ticked", 0, txt("☑")}, typed{"pick_loaded", 0, num(3)}, typed{"pick_note", 0, txt("the old ones")},
		typed{"return_wet", 0, sheet.FoundCell{Kind: sheet.FoundBool, Number: 1, Text: "TRUE"}})
	was := workbook.Layout(b.Quote).Found()
	found, lost, _ := keptOf(t, b)
	key := func(f *sheet.Found, table string, row int) string {
		p := f.Names[table+"_key"]
		return f.Sheet(p.Sheet).At(p.R1+row, p.C1).Text
	}
	part, _, _ := strings.Cut(key(was, "pick", 0), "@")
	row := 0
	for ; !strings.HasPrefix(key(found, "pick", row), part+"@"); row++ {
	}
	if key(found, "pick", row) == key(was, "pick", 0) {
		t.Fatal("the vehicle is the same")
	}
	cell := func(name string, row int) sheet.FoundCell {
		p := found.Names[name]
		return found.Sheet(p.Sheet).At(p.R1+row, p.C1)
	}
	if cell("pick_ticked", row).Text != "☑" || cell("pick_loaded", row).Number != 3 || cell("pick_note", row).Text != "the old ones" || cell("pick_out", row).Number != 3 {
		t.Errorf("the row has %v, %v, %v; lost %v", cell("pick_ticked", row), cell("pick_loaded", row), cell("pick_out", row), lost)
	}
	wet := ""
	for i := range found.Names["return_wet"].R2 - found.Names["return_wet"].R1 + 1 {
		wet += cell("return_wet", i).Text
	}
	if wet != "Yes" || len(lost) > 0 {
		t.Errorf("wet %q, lost %v", wet, lost)
	}
	if !slices.Contains(slices.Collect(maps.Values(b.Kept().Wet)), "Yes") {
		t.Errorf("kept %v", b.Kept().Wet)
	}
}

// A formula of the office's own sheet that names a cell which moves is told,
// with the name to use; so is one in a free cell.
func TestReferencesToMovedCells(t *testing.T) {
	f := workbook.Layout(demoQuote(t, "garden")).Found()
	n := spare(t, "garden")
	typeInto(t, f, typed{"build_id", n, txt("table-round-60")}, typed{"build_quantity", n, num(2)})
	total, stays := f.Names["total_due"], f.Names["rate_waiver"]
	ref := func(p sheet.Place) string { return sheet.Quote(p.Sheet) + "!" + sheet.Ref(p.R1, p.C1) }
	f.Sheets = append(f.Sheets, &sheet.FoundSheet{Name: "My Sums", Rows: [][]sheet.FoundCell{
		{{Kind: sheet.FoundNumber, Formula: ref(total) + "*2"}, {Kind: sheet.FoundNumber, Formula: ref(stays)}, {Kind: sheet.FoundNumber, Formula: "total_due"}},
	}}, &sheet.FoundSheet{Name: "changes"})
	p := f.Names["build_quantity"]
	s := f.Sheet(p.Sheet)
	for len(s.Rows[p.R1-1]) < 60 {
		s.Rows[p.R1-1] = append(s.Rows[p.R1-1], sheet.FoundCell{})
	}
	s.Rows[p.R1-1][59] = sheet.FoundCell{Kind: sheet.FoundNumber, Number: 7, Formula: "3+4"}
	f.Names["waiver_twice"] = sheet.Place{Sheet: "My Sums", Range: sheet.Range{R1: 1, C1: 1, R2: 1, C2: 1}}
	f.Names["qty_l.7"] = f.Names["waiver_twice"] // the added line will have this name
	b, list := revise.Open("garden.xlsx", f)
	if b == nil {
		t.Fatal(list)
	}
	_, lost, added := keptOf(t, b)
	told := ""
	for _, c := range lost {
		told += c.Place + " " + c.What + " " + c.Note + "\n"
	}
	for _, want := range []string{"My Sums!A1 Refers to " + total.Sheet + "!" + sheet.Ref(total.R1, total.C1) + " the figure now stands in ", "; use the name total_due",
		"Own formulas in free cells, in BH", "The name qty_l.7, which this workbook now has itself left out", "changes An added sheet with the name of one of this workbook's"} {
		if !strings.Contains(told, want) {
			t.Errorf("nothing says %q in\n%s", want, told)
		}
	}
	if len(lost) != 4 || len(added) != 1 || len(b.OwnNames(added)) != 1 {
		t.Errorf("lost %d, added %v, names %v:\n%s", len(lost), added, b.OwnNames(added), told)
	}
}

// Words beside a tent that was taken out are told with what it was.
func TestLostWordsNameTheirLine(t *testing.T) {
	f := workbook.Layout(demoQuote(t, "dinner")).Found()
	p := placeIn(t, f, "tents_quantity/T:kitchen", 0)
	s := f.Sheet(p.Sheet)
	for len(s.Rows[p.R1-1]) < 60 {
		s.Rows[p.R1-1] = append(s.Rows[p.R1-1], sheet.FoundCell{})
	}
	s.Rows[p.R1-1][59] = txt("ask the cook")
	s.Rows[p.R1-1][p.C1-1] = num(0)
	b, list := revise.Open("dinner.xlsx", f)
	if b == nil {
		t.Fatal(list)
	}
	_, lost, _ := keptOf(t, b)
	if !slices.ContainsFunc(lost, func(c workbook.Change) bool {
		return c.New == "ask the cook" && strings.HasPrefix(c.What, "Kitchen tent")
	}) {
		t.Errorf("lost %+v", lost)
	}
}
