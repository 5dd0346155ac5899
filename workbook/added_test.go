package workbook_test

import (
	"fmt"
	"strings"
	"testing"

	"tentwright/workbook"
	"tentwright/workbook/internal/calc"
	"tentwright/workbook/sheet"
)

// addedTents is a job of the demonstration shop to which lines are added.
const addedTents = "tents: [{id: a, family: hip, size: 20x20, count: 2}]\n"

// Added lines weigh what the price list says, tents and walls too, and their
// weight stands apart from that of what is loaded.
func TestAddedLinesHaveAWeight(t *testing.T) {
	calc.Need(t)
	cases := []struct {
		id   string
		many float64
	}{{"hip:40x80", 1}, {"span:40x60", 2}, {"sidewall-solid", 62.5}, {"chair-padded", 40}, {"dinner-kit-8", 3}, {"attendant", 6}}
	var list []typing
	for _, x := range cases {
		_, book := laidOut(t, demoCatalog(t), addedTents)
		list = append(list, typing{x.id, book, []typed{{"build_id", "build_key=S:1", x.id}, {"build_quantity", "build_key=S:1", x.many}}})
	}
	for i, f := range recalculated(t, list) {
		x := cases[i]
		each := f.beside(t, "item_weight", "item_id", x.id).Number
		if each <= 0 != (x.id == "attendant") {
			t.Errorf("%s weighs %v; only people weigh nothing here", x.id, each)
		}
		f.named(t, "total_added_weight").number(t, x.id, float64(int(each*x.many*100+0.5))/100)
		f.named(t, "total_whole_weight").number(t, x.id, f.at("total_weight")+f.at("total_added_weight"))
	}
}

// What comes in pieces is added in whole numbers only, what is measured with a
// fraction too; a part of a piece shows in red.
func TestAddedPiecesAreWhole(t *testing.T) {
	calc.Need(t)
	cases := []struct {
		id        string
		many      float64
		fits, red bool
	}{
		{"chair-padded", 12, true, false}, {"chair-padded", 12.5, false, true}, {"hip:20x20", 1.5, false, true}, {"hip:20x20", 2, true, false},
		{"sidewall-solid", 12.5, true, false}, {"attendant", 2.25, true, false}, {"chair-padded", -1, false, false},
		{"lining", 2000000, false, false},
	}
	var list []typing
	for _, x := range cases {
		_, book := laidOut(t, demoCatalog(t), addedTents)
		rules := rulesOfAdded(t, book)
		list = append(list, typing{fmt.Sprint(x.id, " ", x.many), book, []typed{{"build_id", "build_key=S:1", x.id}, {"build_quantity", "build_key=S:1", x.many}}})
		s := book.Sheets[sheetAt(book, workbook.SheetBuild)]
		s.Rows = append(s.Rows, sheet.Row{Cells: []sheet.Cell{{Formula: "IF(" + rules[0] + ",1,0)", Value: 0}, {Formula: "IF(" + rules[1] + ",1,0)", Value: 0}}})
		at := len(s.Rows)
		for col, name := range []string{"test_fits", "test_red"} {
			book.Names = append(book.Names, sheet.Name{Name: name, Refers: sheet.Range{R1: at, C1: col + 1, R2: at, C2: col + 1}.Abs(s.Name)})
		}
	}
	for i, f := range recalculated(t, list) {
		x := cases[i]
		for name, want := range map[string]bool{"test_fits": x.fits, "test_red": x.red} {
			f.named(t, name).number(t, list[i].name+", "+name, map[bool]float64{true: 1}[want])
		}
	}
}

// rulesOfAdded are the formulas that limit the first added quantity, and show it
// in red.
func rulesOfAdded(t *testing.T, b *sheet.Book) [2]string {
	t.Helper()
	_, at, err := placeOf(b, "build_added")
	_, many, err2 := placeOf(b, "build_quantity")
	if err != nil || err2 != nil {
		t.Fatal(err, err2)
	}
	first := sheet.Range{R1: at.R1, C1: many.C1, R2: at.R1, C2: many.C1}
	s := b.Sheets[sheetAt(b, workbook.SheetBuild)]
	var rules [2]string
	for _, v := range s.Validations {
		if v.Kind == sheet.Custom && v.Range.Overlaps(first) {
			rules[0] = v.Source
		}
	}
	for _, h := range s.Highlights {
		if h.Range.Overlaps(first) && h.Role == sheet.Warn {
			rules[1] = h.Formula
		}
	}
	if rules[0] == "" || rules[1] == "" || !strings.Contains(rules[0], sheet.Ref(at.R1, many.C1)) {
		t.Fatalf("the rules of added quantities are %q", rules)
	}
	return rules
}

func sheetAt(b *sheet.Book, name string) int {
	for i, s := range b.Sheets {
		if s.Name == name {
			return i
		}
	}
	return -1
}

// A line whose item is of no use without another is checked even while it is an
// extra that nobody wants, and any ordered line of the other settles it, also
// an added one. What follows from a tent's shape is settled by having none.
func TestChecksFollowWhatIsOrdered(t *testing.T) {
	calc.Need(t)
	const (
		extra  = addedTents + "items: [{item: heater-170, quantity: 1, optional: yes}]\n"
		sealed = "tents: [{id: a, family: hip, size: 20x20, sides: [{side: front, wall: solid}, {side: right, wall: solid}, {side: back, wall: solid}, {side: left, wall: solid}]}]\n"
		held   = "tents: [{id: a, family: pole, size: 40x60, ground: asphalt-whole}]\n"
		need   = "need:L:1:propane-100"
	)
	chosen := typed{"extra_choice", "", "Yes"}
	propane := []typed{{"build_id", "build_key=S:1", "propane-100"}, {"build_quantity", "build_key=S:1", 2}}
	cases := []struct {
		body, check, want string
		typed             []typed
	}{
		{extra, need, "OK", []typed{{"job_days", "", 2}}},
		{extra, need, "STOP", []typed{chosen}},
		{extra, need, "OK", append([]typed{chosen}, propane...)},
		{sealed, "door:a", "STOP", []typed{{"job_days", "", 2}}},
		{sealed, "door:a", "OK", []typed{{"qty_t.a", "", 0}}},
		{held, "holding:a", "OK", []typed{{"qty_t.a", "", 0}}},
		{addedTents, "sizes:hip:20x20", "STOP", []typed{{"qty_t.a", "", 5}}},
		{addedTents, "sizes:hip:20x20", "OK", []typed{{"qty_t.a", "", 4}}},
		{addedTents, "sizes:hip:20x20", "STOP", []typed{{"build_id", "build_key=S:1", "hip:20x20"}, {"build_quantity", "build_key=S:1", 3}}},
		{addedTents, "requote site", "OK", []typed{{"site_surface_degree", "", "hard"}}},
		{addedTents, "requote site", "LOOK", []typed{{"site_surface_degree", "", "deck"}}},
		{strings.Replace(addedTents, "count: 2", "ground: soft", 1), "requote site", "OK", []typed{{"site_surface_degree", "", "deck"}}},
		{strings.Replace(addedTents, "count: 2", "ground: soft", 1), "requote site", "LOOK", []typed{{"site_surface.a_degree", "", "deck"}}},
	}
	var list []typing
	for _, x := range cases {
		_, book := laidOut(t, demoCatalog(t), x.body)
		list = append(list, typing{fmt.Sprint(x.check, " after ", x.typed), book, x.typed})
	}
	for i, f := range recalculated(t, list) {
		f.beside(t, "check_state", "check_key", cases[i].check).text(t, list[i].name, cases[i].want)
	}
}
