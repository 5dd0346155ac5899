package revise_test

import (
	"bytes"
	"testing"

	"tentwright/catalog/unit"
	"tentwright/workbook"
	"tentwright/workbook/revise"
	"tentwright/workbook/sheet"
)

// What is typed on the sheet Occupancy reaches the job and the shop's file, in
// its units, and the next revision is computed from it.
func TestOccupancyIsTakenOver(t *testing.T) {
	q := demoQuote(t, "dinner")
	f := workbook.Layout(q).Found()
	typeInto(t, f, typed{"job_use", 0, txt("rows")}, typed{"use_area", 1, num(8)}, typed{"exit_class", 0, txt("membrane")}, typed{"exit_each", 0, num(0.3)},
		typed{"exit_every", 0, sheet.FoundCell{}}, typed{"fire_hazard", 0, txt("extra")}, typed{"fire_rating", 0, num(4)})
	b, list := revise.Open("dinner.xlsx", f)
	if b == nil || len(list) > 0 || len(b.Edits) != 7 {
		t.Fatal(list, b)
	}
	r, list := b.Revise(nil)
	if r == nil {
		t.Fatal(list.Err())
	}
	e, o := r.Quote.Egress, r.Quote.Catalog.Occupancy
	if r.Quote.Job.Event.Use != "rows" || e.Use.ID != "rows" || e.Use.Area.Text(unit.Imperial) != "8 sq ft" {
		t.Errorf("the floor is for %q at %s; rows at 8 sq ft were expected", e.Use.ID, e.Use.Area.Text(unit.Imperial))
	}
	if o.Class != "membrane" || o.Exits.Each != 3*unit.Inch/10 || o.Exits.OpenEvery != 0 || o.Fire.Hazard != "extra" || o.Fire.Rating != 4 {
		t.Errorf("the shop has %q, %v, %v, %q, %d", o.Class, o.Exits.Each, o.Exits.OpenEvery, o.Fire.Hazard, o.Fire.Rating)
	}
	if e.Load <= q.Egress.Load {
		t.Errorf("%d people in rows, %d at tables; more were expected", e.Load, q.Egress.Load)
	}
	was, is := lines(q.Catalog.Source["occupancy.yaml"]), lines(r.Shop["occupancy.yaml"])
	if !bytes.Contains(r.Shop["occupancy.yaml"], []byte("area: 8 sq ft")) || len(is) < len(was)-1 {
		t.Errorf("the file has %d lines, it had %d", len(is), len(was))
	}
}

// A use that the shop's table does not have is told at its cell.
func TestUnknownUseIsToldAtItsCell(t *testing.T) {
	f := workbook.Layout(demoQuote(t, "dinner")).Found()
	typeInto(t, f, typed{"job_use", 0, txt("dancing")})
	b, list := revise.Open("dinner.xlsx", f)
	if b == nil {
		t.Fatal(list)
	}
	r, list := b.Revise(nil)
	if r != nil || len(list) != 1 || list[0].Pos.Sheet != workbook.SheetOccupancy || list[0].Pos.Cell == "" {
		t.Errorf("got %v; the cell of the use was expected", list)
	}
}
