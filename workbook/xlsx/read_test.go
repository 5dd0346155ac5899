package xlsx_test

import (
	"archive/zip"
	"bytes"
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/xuri/excelize/v2"

	"tentwright/workbook/sheet"
	"tentwright/workbook/xlsx"
)

const (
	mainSpace = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
	relSpace  = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
)

// handmade is the smallest workbook a program could write: one sheet "Work"
// with the given content, no texts, no styles. more adds or replaces parts; an
// empty one goes.
func handmade(t testing.TB, content string, more map[string]string) []byte {
	t.Helper()
	p := map[string]string{
		"[Content_Types].xml":        `<Types/>`,
		"_rels/.rels":                rels(`officeDocument>xl/workbook.xml`),
		"xl/workbook.xml":            `<workbook xmlns="` + mainSpace + `" xmlns:r="` + relSpace + `"><sheets><sheet name="Work" sheetId="1" r:id="r1"/></sheets></workbook>`,
		"xl/_rels/workbook.xml.rels": rels(`worksheet>worksheets/sheet1.xml`, `sharedStrings>sharedStrings.xml`, `styles>styles.xml`),
		"xl/worksheets/sheet1.xml":   `<worksheet xmlns="` + mainSpace + `">` + content + `</worksheet>`,
	}
	maps.Copy(p, more)
	maps.DeleteFunc(p, func(_, text string) bool { return text == "" })
	return zipped(t, p)
}

// zipped packs parts in the order of their names.
func zipped(t testing.TB, p map[string]string) []byte {
	t.Helper()
	var out bytes.Buffer
	z := zip.NewWriter(&out)
	for _, name := range slices.Sorted(maps.Keys(p)) {
		w, err := z.Create(name)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := w.Write([]byte(p[name])); err != nil {
			t.Fatal(err)
		}
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// rels is a list of references "kind>target" with the keys r1, r2 and so on. A
// target that starts with "file:" is outside.
func rels(links ...string) string {
	var b strings.Builder
	b.WriteString(`<Relationships>`)
	for i, l := range links {
		kind, target, _ := strings.Cut(l, ">")
		b.WriteString(`<Relationship Id="r` + string(rune('1'+i)) + `" Type="` + relSpace + "/" + kind + `" Target="` + target + `"`)
		if strings.HasPrefix(target, "file:") {
			b.WriteString(` TargetMode="External"`)
		}
		b.WriteString(`/>`)
	}
	return b.String() + `</Relationships>`
}

func mustRead(t testing.TB, data []byte) *sheet.Found {
	t.Helper()
	found, err := xlsx.Read("book.xlsx", data)
	if err != nil {
		t.Fatal(err)
	}
	return found
}

// used are the cells of a sheet that hold something, by their names.
func used(s *sheet.FoundSheet) map[string]sheet.FoundCell {
	out := map[string]sheet.FoundCell{}
	for r, cells := range s.Rows {
		for c, cell := range cells {
			if cell != (sheet.FoundCell{}) {
				out[sheet.Ref(r+1, c+1)] = cell
			}
		}
	}
	return out
}

func num(n float64, text string) sheet.FoundCell {
	return sheet.FoundCell{Kind: sheet.FoundNumber, Number: n, Text: text}
}

func txt(s string) sheet.FoundCell { return sheet.FoundCell{Kind: sheet.FoundText, Text: s} }

// by is a cell that a formula gave.
func by(formula string, c sheet.FoundCell) sheet.FoundCell { c.Formula = formula; return c }

func asDay(c sheet.FoundCell) sheet.FoundCell { c.Day = true; return c }

// The values come from the format's own examples and rules, ISO/IEC 29500-1,
// 18.3.1.4 (cells), 18.3.1.40 (formulas), 18.4 (texts), 22.9.2.19 (codes for
// characters).
func TestReadCells(t *testing.T) {
	shared := `<sst xmlns="` + mainSpace + `"><si><t xml:space="preserve"> poles </t></si>` +
		`<si><r><rPr><b/></rPr><t>side</t></r><r><t xml:space="preserve"> wall</t></r><rPh sb="0" eb="1"><t>no</t></rPh><phoneticPr fontId="1"/></si></sst>`
	for _, c := range []struct {
		name, cells string
		want        map[string]sheet.FoundCell
	}{
		{"shared text", `<row r="1"><c r="A1" t="s"><v>0</v></c><c r="B1" t="s"><v>1</v></c></row>`,
			map[string]sheet.FoundCell{"A1": txt(" poles "), "B1": txt("side wall")}},
		{"inline text", `<row r="2"><c r="B2" t="inlineStr"><is><t>a &lt;b&gt; &amp; &#x41;&#10;c</t></is></c><c t="inlineStr"><v>odd</v></c><c><is><r><t>x</t></r><r><t>y</t></r></is></c></row>`,
			map[string]sheet.FoundCell{"B2": txt("a <b> & A\nc"), "C2": txt("odd"), "D2": txt("xy")}},
		{"no numbers of rows and cells", `<row><c><v>1</v></c><c/><c><v>2</v></c></row><row/><row><c><v>3</v></c></row>`,
			map[string]sheet.FoundCell{"A1": num(1, "1"), "C1": num(2, "2"), "A3": num(3, "3")}},
		{"rows out of order and twice", `<row r="3"><c r="B3"><v>1</v></c></row><row r="1"><c r="A1"><v>2</v></c></row><row r="3"><c r="A3"><v>3</v></c></row>`,
			map[string]sheet.FoundCell{"B3": num(1, "1"), "A1": num(2, "2"), "A3": num(3, "3")}},
		{"cell says the row", `<row><c r="C7"><v>1</v></c></row>`, map[string]sheet.FoundCell{"C7": num(1, "1")}},
		{"numbers", `<row><c><v>-1.5E-3</v></c><c t="n"><v> 7 </v></c><c><v>1,5</v></c><c><v>NaN</v></c><c><v>0x10</v></c></row>`,
			map[string]sheet.FoundCell{"A1": num(-0.0015, "-1.5E-3"), "B1": num(7, "7"), "C1": txt("1,5"), "D1": txt("NaN"), "E1": txt("0x10")}},
		{"truths and errors", `<row><c t="b"><v>1</v></c><c t="b"><v>0</v></c><c t="e"><f>1/0</f><v>#DIV/0!</v></c></row>`,
			map[string]sheet.FoundCell{"A1": {Kind: sheet.FoundBool, Number: 1}, "B1": {Kind: sheet.FoundBool}, "C1": {Kind: sheet.FoundError, Text: "#DIV/0!", Formula: "1/0"}}},
		{"no value", `<row r="9"><c r="A9" s="4"/><c r="B9"><v></v></c><c r="C9"><v/></c><c r="D9"><f>A1</f></c><c r="E9" t="str"><f>""</f><v></v></c><c t="str"><f>A2</f></c></row>`,
			map[string]sheet.FoundCell{"D9": {Formula: "A1"}, "E9": by(`""`, txt("")), "F9": {Formula: "A2"}}},
		{"codes for characters", `<row><c t="inlineStr"><is><t>a_x000D_b _x005F_x0041_ _x00G1_ _xD83D__xDE00_ _x</t></is></c></row>`,
			map[string]sheet.FoundCell{"A1": txt("a\rb _x0041_ _x00G1_ \U0001F600 _x")}},
		{"parts of a text", `<row><c t="str"><f>B1</f><v>a<!-- no -->b<![CDATA[<c>&amp;]]>d</v></c></row>`,
			map[string]sheet.FoundCell{"A1": by("B1", txt("ab<c>&amp;d"))}},
		{"ISO dates", `<row><c t="d"><v>2026-06-06</v></c><c t="d"><v>2026-06-06T12:00:00Z</v></c><c t="d"><v>soon</v></c></row>`,
			map[string]sheet.FoundCell{"A1": asDay(num(46179, "46179")), "B1": asDay(num(46179.5, "46179.5")), "C1": txt("soon")}},
		{"array", `<row r="1"><c r="A1"><f t="array" ref="A1:A2">B1:B2*2</f><v>2</v></c></row><row r="2"><c r="A2"><v>4</v></c><c r="B2"><v>2</v></c></row>`,
			map[string]sheet.FoundCell{"A1": by("B1:B2*2", num(2, "2")), "A2": by("B1:B2*2", num(4, "4")), "B2": num(2, "2")}},
		{"data table", `<row><c><f t="dataTable" ref="A1:A1" r1="B1" r2="B2"/><v>2</v></c></row>`, map[string]sheet.FoundCell{"A1": by("TABLE(B1,B2)", num(2, "2"))}},
		{"equals sign", `<row><c><f>=B1</f><v>2</v></c></row>`, map[string]sheet.FoundCell{"A1": by("B1", num(2, "2"))}},
		{"shared without a first", `<row><c><f t="shared" si="4"/><v>2</v></c></row>`, map[string]sheet.FoundCell{"A1": by("#REF!", num(2, "2"))}},
	} {
		t.Run(c.name, func(t *testing.T) {
			found := mustRead(t, handmade(t, "<sheetData>"+c.cells+"</sheetData>", map[string]string{"xl/sharedStrings.xml": shared}))
			if diff := cmp.Diff(c.want, used(found.Sheet("Work"))); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// A shared formula moves as copying the cell would move it.
func TestReadSharedFormulas(t *testing.T) {
	for _, c := range []struct{ first, want string }{
		{"A1+$A1+A$1+$A$1", "B3+$A3+B$1+$A$1"},
		{"SUM(A1:B2)", "SUM(B3:C4)"},
		{"LOG10(A1)", "LOG10(B3)"},
		{`"A1"&'A1 it''s'!A1&Rates!B2`, `"A1"&'A1 it''s'!B3&Rates!C4`},
		{"[1]Work!A1+tax_1+A1_b", "[1]Work!B3+tax_1+A1_b"},
		{"SUM(A:A)+SUM($A:B)+SUM(1:2)+SUM($1:2)", "SUM(B:B)+SUM($A:C)+SUM(3:4)+SUM($1:4)"},
		{"Hire[A1]+1E5+1.5+10", "Hire[A1]+1E5+1.5+10"},
		{"XFD1+A1048576+#REF!", "#REF!+#REF!+#REF!"},
		{"TRUE+åA1", "TRUE+åA1"},
	} {
		esc := strings.NewReplacer("&", "&amp;", "<", "&lt;").Replace(c.first)
		found := mustRead(t, handmade(t, `<sheetData><row r="4"><c r="D4"><f t="shared" si="0" ref="D4:E6">`+esc+`</f><v>1</v></c></row>`+
			`<row r="6"><c r="E6"><f t="shared" si="0"/><v>2</v></c></row></sheetData>`, nil))
		s := found.Sheet("Work")
		if got := s.At(4, 4).Formula; got != c.first {
			t.Errorf("first: got %q, want %q", got, c.first)
		}
		if got := s.At(6, 5).Formula; got != c.want {
			t.Errorf("%s moved 2 down, 1 right: got %q, want %q", c.first, got, c.want)
		}
	}

	// A cell above or to the left of the first.
	found := mustRead(t, handmade(t, `<sheetData><row r="1"><c r="A1"><f t="shared" si="0"/><v>2</v></c></row>`+
		`<row r="3"><c r="B3"><f t="shared" si="0">B3+A3+B2+$A$2+B:B+A:A</f><v>1</v></c></row></sheetData>`, nil))
	if got, want := found.Sheets[0].At(1, 1).Formula, "A1+#REF!+#REF!+$A$2+A:A+#REF!:#REF!"; got != want {
		t.Errorf("moved up and left: got %q, want %q", got, want)
	}
}

// Built-in formats: ISO/IEC 29500-1, 18.8.30. The codes are common ones.
func TestReadDates(t *testing.T) {
	codes := []struct {
		id, code string
		day      bool
	}{
		{"0", "", false}, {"2", "", false}, {"14", "", true}, {"20", "", false}, {"22", "", true}, {"46", "", false}, {"57", "", true},
		{"164", "yyyy-mm-dd", true}, {"165", "[$-409]mmmm d, yyyy;@", true}, {"166", "hh:mm", false}, {"167", "[h]:mm:ss", false},
		{"168", `0 "days"`, false}, {"169", "mmm", true}, {"170", "[Red]0.00", false}, {"171", "General", false}, {"172", "h:mm AM/PM", false},
		{"173", `_-* #,##0.00\ "yd"_-`, false}, {"174", "#,##0;[Red]-#,##0", false}, {"175", "ddd", true}, {"176", "[mm]", false},
		{"177", `0\d`, false}, {"178", "DD.MM.YYYY", true}, {"179", `"open`, false}, {"180", "[", false},
	}
	formats, styles, cells := "", "", ""
	for i, c := range codes {
		if c.code != "" {
			formats += `<numFmt numFmtId="` + c.id + `" formatCode="` + strings.ReplaceAll(c.code, `"`, "&quot;") + `"/>`
		}
		styles += `<xf numFmtId="` + c.id + `"/>`
		cells += `<c s="` + string([]byte{'0' + byte(i/10), '0' + byte(i%10)}) + `"><v>44717.25</v></c>`
	}
	sheetStyles := map[string]string{"xl/styles.xml": `<styleSheet><numFmts>` + formats + `</numFmts><cellXfs>` + styles + `</cellXfs></styleSheet>`}
	found := mustRead(t, handmade(t, "<sheetData><row>"+cells+"</row></sheetData>", sheetStyles))
	for i, c := range codes {
		if got := found.Sheets[0].At(1, i+1); got.Day != c.day || got.Number != 44717.25 {
			t.Errorf("format %s %q: got %+v, want a date: %v", c.id, c.code, got, c.day)
		}
	}

	// In a file that counts from 1904 the same number is 1462 days later,
	// where it is shown as a date; ISO/IEC 29500-1, 18.17.4.1.
	sheetStyles["xl/workbook.xml"] = `<workbook><workbookPr date1904="1"/><sheets><sheet name="Work" id="r1"/></sheets></workbook>`
	found = mustRead(t, handmade(t, "<sheetData><row>"+cells+"</row></sheetData>", sheetStyles))
	if got := found.Sheets[0].At(1, 8); got.Number != 46179.25 || got.Text != "46179.25" {
		t.Errorf("date from 1904: got %+v, want 46179.25", got)
	}
	if got := found.Sheets[0].At(1, 1); got.Number != 44717.25 {
		t.Errorf("number in a file from 1904: got %+v, want 44717.25", got)
	}
}

func TestReadSheetSettings(t *testing.T) {
	found := mustRead(t, handmade(t, `<cols><col min="1" max="1" width="9.5" customWidth="1"/><col min="2" max="4" width="12"/>`+
		`<col min="5" max="5" width="3" customWidth="0"/><col min="10" max="16384" width="20"/></cols>`+
		`<sheetData/><mergeCells count="2"><mergeCell ref="A1:C2"/><mergeCell ref="B5"/></mergeCells>`+
		`<extLst><ext><sheetData><row><c><v>1</v></c></row></sheetData></ext></extLst>`,
		map[string]string{
			"xl/worksheets/_rels/sheet1.xml.rels": rels("comments>../comments1.xml", "comments>../gone.xml"),
			"xl/comments1.xml": `<comments><authors><author>Office</author></authors><commentList>` +
				`<comment ref="C3" authorId="0"><text><r><t>Office:</t></r><r><t xml:space="preserve"> ask</t></r></text></comment>` +
				`<comment ref="A3"><text><t>plain</t></text></comment></commentList></comments>`,
		}))
	s := found.Sheets[0]
	if len(s.Widths) != 204 || s.Widths[1] != 9.5 || s.Widths[4] != 12 || s.Widths[209] != 20 || s.Widths[210] != 0 {
		t.Errorf("widths: %d of them, %v", len(s.Widths), s.Widths)
	}
	want := &sheet.FoundSheet{
		Name: "Work", Widths: s.Widths, Merges: []sheet.Range{{R1: 1, C1: 1, R2: 2, C2: 3}, {R1: 5, C1: 2, R2: 5, C2: 2}},
		Notes: []sheet.Note{{Row: 3, Col: 1, Text: "plain"}, {Row: 3, Col: 3, Text: "Office: ask"}},
	}
	if diff := cmp.Diff(want, s); diff != "" {
		t.Error(diff)
	}
}

func TestReadBook(t *testing.T) {
	found := mustRead(t, handmade(t, `<sheetData><row><c><v>1</v></c></row></sheetData>`, map[string]string{
		"xl/workbook.xml": `<?xml version="1.0" encoding="UTF-8"?><x:workbook xmlns:x="http://purl.oclc.org/ooxml/spreadsheetml/main" xmlns:q="http://purl.oclc.org/ooxml/officeDocument/relationships">
<x:sheets><x:sheet name="Sue's &amp; Bob" q:id="r1"/><x:sheet name="Chart" q:id="r2"/><x:sheet name="Old" q:id="r3" state="veryHidden"/></x:sheets>
<x:externalReferences><x:externalReference q:id="r4"/></x:externalReferences><x:definedNames>
<x:definedName name="Tax_Rate">'Sue''s &amp; Bob'!$B$7</x:definedName>
<x:definedName name="area">old!$C$9:$A$1</x:definedName>
<x:definedName name="columns">Old!$A:$C</x:definedName>
<x:definedName name="rows">Old!$2:$3</x:definedName>
<x:definedName name="two">Old!$A$1,Old!$C$1</x:definedName>
<x:definedName name="gone">Old!#REF!</x:definedName>
<x:definedName name="nowhere">#REF!</x:definedName>
<x:definedName name="chart">Chart!$A$1</x:definedName>
<x:definedName name="elsewhere">[1]Sheet1!$A$1</x:definedName>
<x:definedName name="percent">0.075</x:definedName>
<x:definedName name="sum">SUM(Old!$A$1:$A$3)</x:definedName>
<x:definedName name="own" localSheetId="0">Old!$A$1</x:definedName>
<x:definedName name="_xlnm.Print_Area" localSheetId="0">Old!$A$1</x:definedName></x:definedNames></x:workbook>`,
		"xl/_rels/workbook.xml.rels":                    strings.ReplaceAll(rels("worksheet>/xl/worksheets/sheet1.xml", "chartsheet>chartsheets/sheet1.xml", "worksheet>Worksheets\\Sheet1.xml", "externalLink>externalLinks/externalLink1.xml", "vbaProject>vbaProject.bin"), relSpace, "http://purl.oclc.org/ooxml/officeDocument/relationships"),
		"xl/externalLinks/_rels/externalLink1.xml.rels": rels("externalLinkPath>file:///C:/Yard/old%20prices.xlsx"),
	}))
	want := &sheet.Found{
		Names: map[string]sheet.Place{
			"tax_rate": {Sheet: "Sue's & Bob", Range: sheet.Range{R1: 7, C1: 2, R2: 7, C2: 2}},
			"area":     {Sheet: "Old", Range: sheet.Range{R1: 1, C1: 1, R2: 9, C2: 3}},
			"columns":  {Sheet: "Old", Range: sheet.Range{R1: 1, C1: 1, R2: sheet.MaxRows, C2: 3}},
			"rows":     {Sheet: "Old", Range: sheet.Range{R1: 2, C1: 1, R2: 3, C2: sheet.MaxCols}},
		},
		Lost:   []string{"chart", "elsewhere", "gone", "nowhere", "two"},
		Links:  []string{"C:/Yard/old prices.xlsx"},
		Macros: true,
		Sheets: []*sheet.FoundSheet{
			{Name: "Sue's & Bob", Rows: [][]sheet.FoundCell{{num(1, "1")}}},
			{Name: "Old", Hidden: true, Rows: [][]sheet.FoundCell{{num(1, "1")}}},
		},
	}
	if diff := cmp.Diff(want, found); diff != "" {
		t.Error(diff)
	}
}

// Parts may be in two-byte characters, XML 1.0 section 4.3.3, and bytes that are
// no characters must not stop the reading.
func TestReadCharacterSets(t *testing.T) {
	part := `<?xml version="1.0" encoding="UTF-16"?><sst><si><t>Größe</t></si></sst>`
	wide := []byte("\xFE\xFF")
	for _, r := range part {
		wide = append(wide, byte(r>>8), byte(r))
	}
	cells := `<sheetData><row><c t="s"><v>0</v></c></row></sheetData>`
	for text, want := range map[string]string{
		string(wide): "Größe", "\xEF\xBB\xBF" + `<sst><si><t>Größe</t></si></sst>`: "Größe", "<sst><si><t>Gr\xF6\xDFe</t></si></sst>": "Gr\uFFFDe",
	} {
		found := mustRead(t, handmade(t, cells, map[string]string{"xl/sharedStrings.xml": text}))
		if got := found.Sheets[0].At(1, 1).Text; got != want {
			t.Errorf("%q: got %q, want %q", text, got, want)
		}
	}
}

// A file of another library: it stores texts once for all cells.
func TestReadLibraryFile(t *testing.T) {
	f := excelize.NewFile()
	defer f.Close()
	for ref, v := range map[string]any{"A1": "Pole", "B1": 12.5, "C1": true, "A2": "Pole", "B2": " wide "} {
		if err := f.SetCellValue("Sheet1", ref, v); err != nil {
			t.Fatal(err)
		}
	}
	if err := f.SetCellFormula("Sheet1", "D1", "B1*2"); err != nil {
		t.Fatal(err)
	}
	data, err := f.WriteToBuffer()
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]sheet.FoundCell{
		"A1": txt("Pole"), "B1": num(12.5, "12.5"), "C1": {Kind: sheet.FoundBool, Number: 1},
		"A2": txt("Pole"), "B2": txt(" wide "), "D1": {Formula: "B1*2"},
	}
	if diff := cmp.Diff(want, used(mustRead(t, data.Bytes()).Sheets[0])); diff != "" {
		t.Error(diff)
	}
}
