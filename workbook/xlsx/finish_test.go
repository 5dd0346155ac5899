package xlsx

import (
	"strings"
	"testing"

	"tentwright/workbook/sheet"
)

func TestInsertRows(t *testing.T) {
	filter := sheet.Range{R1: 1, C1: 1, R2: 9, C2: 2}
	g := &grid{sheet: &sheet.Sheet{
		Name: "Prices", Filter: &filter,
		Columns: []sheet.Column{{}, {Width: 8.5}, {Hidden: true}},
		Merges:  []sheet.Range{{R1: 1, C1: 1, R2: 1, C2: 2}},
	}}
	const before, after = `<sheetPr filterMode="true"></sheetPr>`, `<sheetProtection></sheetProtection><autoFilter ref="$A$1:$B$9"></autoFilter>`
	got, err := g.insertRows([]byte("-"), []byte(before+"<sheetData></sheetData>"+after+"<printOptions>"))
	const want = `-<sheetPr></sheetPr>` +
		`<cols><col min="2" max="2" width="8.5" customWidth="1"/><col min="3" max="3" hidden="1"/></cols><sheetData></sheetData>` +
		`<sheetProtection></sheetProtection><autoFilter ref="A1:B9"></autoFilter>` +
		`<mergeCells count="1"><mergeCell ref="A1:B1"/></mergeCells><printOptions>`
	if err != nil || string(got) != want {
		t.Errorf("got %s, %v\nwant %s", got, err, want)
	}
	// A part that looks otherwise must not become a file without rows.
	if _, err := g.insertRows(nil, []byte("<sheetData/>")); err == nil || !strings.Contains(err.Error(), "Prices") {
		t.Errorf("got %v; want an error with the sheet's name", err)
	}
}

func TestInsertNames(t *testing.T) {
	x := &writer{book: &sheet.Book{Names: []sheet.Name{{Name: "tax_rate", Refers: "'A&B'!$A$1", Comment: "say \"tax\"\nhere"}}}}
	const one = `<definedName comment="say &quot;tax&quot;&#10;here" name="tax_rate">'A&amp;B'!$A$1</definedName>`
	for part, want := range map[string]string{
		"</sheets><calcPr>":                    "</sheets><definedNames>" + one + "</definedNames><calcPr>",
		"</sheets><definedNames><definedName>": "</sheets><definedNames>" + one + "<definedName>",
	} {
		if got, err := x.insertNames(nil, []byte(part)); err != nil || string(got) != want {
			t.Errorf("got %s, %v; want %s", got, err, want)
		}
	}
	if _, err := x.insertNames(nil, []byte("<workbook/>")); err == nil {
		t.Error("a part without sheets took names; want an error")
	}
}

func TestCharCode(t *testing.T) {
	for s, want := range map[string]bool{
		"_x000D_": true, "_xaBcF_ and more": true, "_x000D": false, "_x00G0_": false, "_x000D-": false, "_x": false,
	} {
		if charCode(s) != want {
			t.Errorf("%s: got %t, want %t", s, !want, want)
		}
	}
}
