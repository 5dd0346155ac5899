package revise_test

import (
	"strings"
	"testing"

	"tentwright/workbook"
	"tentwright/workbook/revise"
	"tentwright/workbook/sheet"
)

// Minutes of a rule and the shop's percentages are written into the files of the
// record, where the rule had none, and are taken out again where a cell is
// emptied.
func TestSpreadIsTakenOver(t *testing.T) {
	f := workbook.Layout(demoQuote(t, "dinner")).Found()
	typeInto(t, f, typed{"optimistic_frame_poles", 0, num(0.5)}, typed{"pessimistic_frame_poles", 0, num(1.25)}, typed{"pessimistic_drive_out", 0, num(3)},
		typed{"spread_optimistic", 0, num(70)}, typed{"spread_pessimistic", 0, num(180)})
	b, list := revise.Open("dinner.xlsx", f)
	if b == nil || len(list) > 0 || len(b.Edits) != 5 {
		t.Fatal(list, b)
	}
	r, list := b.Revise(nil)
	if r == nil {
		t.Fatal(list)
	}
	c := r.Quote.Catalog
	for i := range c.Labour {
		switch l := &c.Labour[i]; l.ID {
		case "frame-poles":
			if l.Optimistic == nil || l.Optimistic.String() != "0.5" || l.Pessimistic == nil || l.Pessimistic.String() != "1.25" {
				t.Errorf("the rule has %v and %v", l.Optimistic, l.Pessimistic)
			}
		case "drive-out":
			if l.Optimistic != nil || l.Pessimistic == nil || l.Pessimistic.String() != "3" {
				t.Errorf("the rule has %v and %v", l.Optimistic, l.Pessimistic)
			}
		default:
			if l.Optimistic != nil || l.Pessimistic != nil {
				t.Errorf("%s has a spread of its own", l.ID)
			}
		}
	}
	if s := c.Crew.Spread; s.Optimistic.String() != "70" || s.Pessimistic.String() != "180" {
		t.Errorf("the shop spreads by %s and %s percent", s.Optimistic, s.Pessimistic)
	}
	for file, want := range map[string][]string{"labour.yaml": {"optimistic: 0.5", "pessimistic: 1.25", "pessimistic: 3"}, "crew.yaml": {"optimistic: 70", "pessimistic: 180"}} {
		for _, words := range want {
			if !strings.Contains(string(r.Shop[file]), words) {
				t.Errorf("%s does not say %q", file, words)
			}
		}
	}

	// The next workbook shows them, and an emptied cell takes one out.
	f = workbook.Layout(r.Quote).Found()
	typeInto(t, f, typed{"optimistic_frame_poles", 0, sheet.FoundCell{}})
	if b, list = revise.Open("next.xlsx", f); b == nil || len(list) > 0 || len(b.Edits) != 1 {
		t.Fatal(list, b)
	}
	if r, list = b.Revise(nil); r == nil {
		t.Fatal(list)
	}
	if text := string(r.Shop["labour.yaml"]); strings.Contains(text, "optimistic: 0.5") || !strings.Contains(text, "pessimistic: 1.25") {
		t.Error("the emptied minutes are still in the file, or others are not")
	}
}

// What does not rise is told with the cell, also where the usual minutes were
// typed; what is sound only together is taken together.
func TestSpreadMustRise(t *testing.T) {
	for _, x := range []struct {
		typed []typed
		cell  string
		says  string
	}{
		{[]typed{{"optimistic_frame_poles", 0, num(0.9)}}, "optimistic_frame_poles", "optimistic is 0.9 but minutes is 0.8; no more was expected"},
		{[]typed{{"pessimistic_frame_poles", 0, num(0.79)}}, "pessimistic_frame_poles", "pessimistic is 0.79 but minutes is 0.8; no less was expected"},
		{[]typed{{"optimistic_frame_poles", 0, num(-1)}}, "optimistic_frame_poles", "0"},
		{[]typed{{"pessimistic_frame_poles", 0, txt("long")}}, "pessimistic_frame_poles", `"long"`},
		{[]typed{{"spread_optimistic", 0, num(120)}}, "spread_optimistic", "100"},
		{[]typed{{"spread_pessimistic", 0, num(90)}}, "spread_pessimistic", "100"},
		{[]typed{{"optimistic_frame_poles", 0, num(0.9)}, {"minutes_frame_poles", 0, num(1)}}, "", ""},
	} {
		f := workbook.Layout(demoQuote(t, "dinner")).Found()
		typeInto(t, f, x.typed...)
		b, list := revise.Open("dinner.xlsx", f)
		if b != nil && list.Err() == nil {
			_, list = b.Revise(nil)
		}
		switch {
		case x.says == "" && list.Err() != nil:
			t.Errorf("%v: %v", x.typed, list)
		case x.says != "":
			p := placeIn(t, f, x.cell, 0)
			want := sheet.Ref(p.R1, p.C1)
			if len(list.Faults()) != 1 || list.Faults()[0].Pos.Cell != want || !strings.Contains(list.Faults()[0].Message, x.says) {
				t.Errorf("%v: %v; %q at %s was expected", x.typed, list, x.says, want)
			}
		}
	}
}
