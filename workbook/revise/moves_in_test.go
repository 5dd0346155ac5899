package revise

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"tentwright/workbook/sheet"
)

// Rows of parts are paired where that is plain, and nowhere else.
func TestOneToOne(t *testing.T) {
	for _, x := range []struct {
		name      string
		was, next []string
		want      map[string]string
	}{
		{"another vehicle", []string{"chair@V1"}, []string{"chair@V2"}, map[string]string{"chair@V1": "chair@V2"}},
		{"one of two", []string{"chair@V1", "chair@V2"}, []string{"chair@V1", "chair@V3"}, map[string]string{"chair@V2": "chair@V3"}},
		{"shared out", []string{"chair@V1"}, []string{"chair@V2", "chair@V3"}, map[string]string{}},
		{"put together", []string{"chair@V1", "chair@V2"}, []string{"chair@V2"}, map[string]string{}},
		{"tagged pieces", []string{"gen@V1#1", "gen@V1#2"}, []string{"gen@V2#1"}, map[string]string{"gen@V1#1": "gen@V2#1"}},
		{"load orders", []string{"chair|V1", "table|V1"}, []string{"table|V2"}, map[string]string{"table|V1": "table|V2"}},
		{"as it was", []string{"chair@V1"}, []string{"chair@V1", "chair@V2"}, map[string]string{}},
	} {
		if diff := cmp.Diff(x.want, oneToOne(x.was, x.next)); diff != "" {
			t.Errorf("%s: %s", x.name, diff)
		}
	}
}

// What a split part had is told in one line with its name; its notes stay with it.
func TestStraysAreToldByPart(t *testing.T) {
	q := quotes(t, 0)["garden"]
	b := &Book{Quote: q, was: newView(&sheet.Found{})}
	names := map[string]sheet.Place{}
	columns := []string{"key", "note"}
	for i, column := range columns {
		names["pick_"+column] = sheet.Place{Sheet: "Pick List", Range: sheet.Range{R1: 1, C1: i + 1, R2: 2, C2: i + 1}}
	}
	txt := func(s string) sheet.FoundCell { return sheet.FoundCell{Kind: sheet.FoundText, Text: s} }
	then := &sheet.Found{Names: names, Sheets: []*sheet.FoundSheet{{Name: "Pick List", Rows: [][]sheet.FoundCell{{txt("chair-fold@V2"), {}}, {txt("chair-fold@V3"), {}}}}}}
	out := &sheet.Sheet{Name: "Pick List", Rows: []sheet.Row{{Cells: make([]sheet.Cell, 2)}, {Cells: make([]sheet.Cell, 2)}}}
	k := &keeper{b: b, next: map[string]*sheet.Sheet{"pick list": out}, then: newView(then)}
	of := func(column string, cell sheet.FoundCell) stray {
		return stray{at: address{table: "pick", column: column, key: "chair-fold@V1"}, now: place("Pick List", 9, 3), cell: cell}
	}
	k.strays([]stray{of("ticked", txt("☑")), of("pulled", txt("☑")), of("loaded", sheet.FoundCell{Kind: sheet.FoundNumber, Number: 100}), of("note", txt("white")), of("note", txt("clean"))})
	if len(k.lost) != 1 || k.lost[0].New != "2 ticks, the count 100 on V1" || k.lost[0].Note != "not carried: the part now rides on V2, V3" || k.lost[0].What != "Folding chair, white resin" {
		t.Errorf("told %+v", k.lost)
	}
	if got := out.Rows[0].Cells[1].Value; got != "white; clean" {
		t.Errorf("the note is %v", got)
	}
}
