package xlsx_test

import (
	"errors"
	"testing"

	"tentwright/workbook/sheet"
	"tentwright/workbook/xlsx"
)

// checkRead reads whatever it is given: a workbook that holds together, or a
// fault in words.
func checkRead(t *testing.T, data []byte) {
	found, err := xlsx.Read("book.xlsx", data)
	var f *xlsx.Fault
	switch {
	case err != nil && (found != nil || !errors.As(err, &f) || f.File != "book.xlsx" || f.What == "" || f.Advice == ""):
		t.Fatalf("got %v, %v; want a fault with file, what and advice", found, err)
	case err != nil:
		return
	}
	on := map[string]bool{}
	for _, s := range found.Sheets {
		on[s.Name] = true
		for i, row := range s.Rows {
			if len(row) > sheet.MaxCols || len(row) > 0 && row[len(row)-1] == (sheet.FoundCell{}) {
				t.Fatalf("%s: row %d ends with an empty cell or is too long", s.Name, i+1)
			}
		}
		if n := len(s.Rows); n > sheet.MaxRows || n > 0 && len(s.Rows[n-1]) == 0 {
			t.Fatalf("%s: last of %d rows is empty", s.Name, n)
		}
		for _, m := range s.Merges {
			if !m.Valid() {
				t.Fatalf("%s: merge %+v is not on the sheet", s.Name, m)
			}
		}
		for _, n := range s.Notes {
			if r := (sheet.Range{R1: n.Row, C1: n.Col, R2: n.Row, C2: n.Col}); !r.Valid() || n.Text == "" {
				t.Fatalf("%s: note %+v", s.Name, n)
			}
		}
	}
	for name, p := range found.Names {
		if !p.Valid() || !on[p.Sheet] {
			t.Fatalf("name %q leads to %+v", name, p)
		}
	}
}

// FuzzRead changes bytes of whole files.
func FuzzRead(f *testing.F) {
	f.Add(write(f, sample(f)))
	f.Add(handmade(f, aCell, nil))
	f.Add(ole("Workbook"))
	f.Add([]byte("a,b\n"))
	f.Fuzz(func(t *testing.T, data []byte) { checkRead(t, data) })
}

// FuzzReadParts changes the parts before they are packed, for a change in a
// packed part is mostly found out by its checksum.
func FuzzReadParts(f *testing.F) {
	f.Add(`<sheets><sheet name="Work" id="r1"/></sheets><definedNames><definedName name="a">Work!$A$1:$B$2</definedName></definedNames>`,
		`<cols><col min="1" max="3" width="9"/></cols>`+aCell+`<mergeCells><mergeCell ref="A1:B2"/></mergeCells>`,
		`<si><t>a_x000D_</t></si>`, `<numFmts><numFmt numFmtId="164" formatCode="yyyy"/></numFmts><cellXfs><xf numFmtId="164"/></cellXfs>`,
		`<commentList><comment ref="A1"><text><t>a</t></text></comment></commentList>`)
	f.Add(`<workbookPr date1904="1"/><sheets><sheet name="'a'" id="r1" state="hidden"/></sheets><definedNames><definedName name="b">'''a'''!A:$B,'x'!1:2</definedName></definedNames>`,
		`<sheetData><row><c><f t="shared" si="0">SUM(A:B,$1:2,'x'!A1,[1]b!C$1)&amp;"x"</f></c><c s="0"><v>5</v></c></row><row r="5"><c r="F5"><f t="shared" si="0"/></c></row><row><c><f t="array" ref="A1:F9">1</f></c><c t="d"><v>2026-01-01</v></c></row></sheetData>`,
		`<si><r><t><![CDATA[a]]>&#65;</t></r></si>`, `<cellXfs><xf numFmtId="14"/></cellXfs>`, ``)
	f.Fuzz(func(t *testing.T, book, content, texts, styles, notes string) {
		checkRead(t, handmade(t, content, map[string]string{
			"xl/workbook.xml":                     "<workbook>" + book + "</workbook>",
			"xl/sharedStrings.xml":                "<sst>" + texts + "</sst>",
			"xl/styles.xml":                       "<styleSheet>" + styles + "</styleSheet>",
			"xl/worksheets/_rels/sheet1.xml.rels": rels("comments>/xl/comments1.xml"),
			"xl/comments1.xml":                    "<comments>" + notes + "</comments>",
		}))
	})
}
