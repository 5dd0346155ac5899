package workbook_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"tentwright/workbook"
	"tentwright/workbook/internal/calc"
	"tentwright/workbook/sheet"
)

// Mean and deviation of a rule follow from its own minutes, and where it has none
// from the percentages of the shop; minutes on the wrong side of the usual ones
// show red, and the schedule asks to be made again. The wanted figures are (a+4m+b)/6 and (b-a)/6 of the three-point
// estimate, worked apart from the program.
func TestMinutesSpread(t *testing.T) {
	calc.Need(t)
	type want struct {
		mean, dev float64
		red       string // column of the cell that shows red
	}
	cases := []struct {
		typed []typed
		want  want
	}{
		{nil, want{8.5333, 1.0667, ""}}, // 8 minutes, 80 and 160 percent
		{[]typed{{"optimistic_layout_span", "", 5}}, want{8.3, 1.3, ""}},
		{[]typed{{"pessimistic_layout_span", "", 20}}, want{9.7333, 2.2667, ""}},
		{[]typed{{"optimistic_layout_span", "", 5}, {"pessimistic_layout_span", "", 20}}, want{9.5, 2.5, ""}},
		{[]typed{{"spread_optimistic", "", 50}, {"spread_pessimistic", "", 250}}, want{9.3333, 2.6667, ""}},
		{[]typed{{"minutes_layout_span", "", 12}}, want{12.8, 1.6, ""}},
		{[]typed{{"optimistic_layout_span", "", 9}}, want{8.9667, 0.6333, "optimistic"}},
		{[]typed{{"pessimistic_layout_span", "", 7}}, want{7.5667, 0.1, "pessimistic"}},
		{[]typed{{"pessimistic_layout_span", "", 8}}, want{7.7333, 0.2667, ""}},
		{[]typed{{"minutes_layout_span", "", 0}, {"optimistic_layout_span", "", 0}}, want{0, 0, "optimistic"}},
	}
	columns := []string{"optimistic", "pessimistic"}
	var list []typing
	var probes [][]string
	for _, x := range cases {
		_, book := laidOut(t, demoCatalog(t), addedTents)
		keys := "rule_key"
		book.Names = append(book.Names, ruleKeys(t, book, keys))
		for _, column := range columns {
			probes = append(probes, probe(t, book, shown{name: "rule_" + column, keys: keys, key: "layout-span", role: sheet.Warn}))
		}
		list = append(list, typing{"minutes", book, x.typed})
	}
	for i, f := range recalculated(t, list) {
		mean, dev := f.beside(t, "rule_mean", "rule_key", "layout-span"), f.beside(t, "rule_dev", "rule_key", "layout-span")
		if w := cases[i].want; math.Abs(mean.Number-w.mean) > 1e-9 || math.Abs(dev.Number-w.dev) > 1e-9 {
			t.Errorf("%v: mean %v and deviation %v; %v and %v were expected", cases[i].typed, mean.Number, dev.Number, w.mean, w.dev)
		}
		state := "LOOK"
		if len(cases[i].typed) == 0 {
			state = "OK"
		}
		f.beside(t, "check_state", "check_key", "requote schedule").text(t, fmt.Sprint(cases[i].typed), state)
		for n, column := range columns {
			refs := probes[2*i+n]
			if len(refs) == 0 {
				t.Fatalf("no highlight over %s", column)
			}
			if got := f.lit(t, "rule_"+column, refs); got != (cases[i].want.red == column) {
				t.Errorf("%v: %s shows red %t", cases[i].typed, column, got)
			}
		}
	}
}

// ruleKeys names the column of the rules' ids, for tests alone.
func ruleKeys(t *testing.T, b *sheet.Book, name string) sheet.Name {
	t.Helper()
	place, at, err := placeOf(b, "rule_mean")
	if err != nil {
		t.Fatal(err)
	}
	at.C1, at.C2 = at.C1-1, at.C2-1
	return sheet.Name{Name: name, Refers: at.Abs(place)}
}

// A shop that does not plan its crews has no cells for a spread, from which
// nothing would follow; its other minutes stand as ever. Its own minutes stay in
// its files.
func TestNoSpreadWithoutCrews(t *testing.T) {
	c := smallShop(t, "minutes: 6,", "minutes: 6, optimistic: 5, pessimistic: 9,")
	_, book := laidOut(t, c, "items: [{item: chair, quantity: 50}]")
	for _, n := range book.Names {
		if strings.HasPrefix(n.Name, "optimistic_") || strings.HasPrefix(n.Name, "pessimistic_") || strings.HasPrefix(n.Name, "spread_") || strings.HasPrefix(n.Name, "rule_") {
			t.Errorf("the workbook has the name %s", n.Name)
		}
	}
	for _, name := range []string{"minutes_frame", "fixed_frame", "smallest_frame"} {
		if cells, _, _ := cellsOf(t, book, name); cells[0].Style.Role.Locked() {
			t.Errorf("%s cannot be typed into", name)
		}
	}
}

// With crews the sheet prints its inputs and the skills; ids and what is worked
// out stand behind.
func TestMinutesPrint(t *testing.T) {
	_, book := laidOut(t, demoCatalog(t), addedTents)
	at := slices.IndexFunc(book.Sheets, func(s *sheet.Sheet) bool { return s.Name == workbook.SheetRates })
	s := book.Sheets[at]
	for _, p := range openCells(s) {
		if p.C1 > s.PrintArea.C2 {
			t.Errorf("the input %s is not printed", p)
		}
	}
	wide := 0.0
	for _, c := range s.Columns[:s.PrintArea.C2] {
		wide += c.Width
	}
	if wide > 130 {
		t.Errorf("%v characters are printed side by side; at most 130 can be read on one page", wide)
	}
}
