package calc

import (
	"context"
	"encoding/xml"
	"fmt"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"tentwright/workbook/sheet"
)

// The office program's own macro library, as it keeps it in a profile. The
// profile counts as set up, or else the library would be replaced at the first
// start.
const (
	macroSettings = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
<item oor:path="/org.openoffice.Setup/Office"><prop oor:name="ooSetupInstCompleted" oor:op="fuse"><value>true</value></prop></item>
</oor:items>`
	libraries = `<?xml version="1.0" encoding="UTF-8"?>
<library:libraries xmlns:library="http://openoffice.org/2000/library" xmlns:xlink="http://www.w3.org/1999/xlink">
<library:library library:name="Standard" xlink:href="$(USER)/basic/Standard/script.xlb/" xlink:type="simple" library:link="false"/>
</library:libraries>`
	library = `<?xml version="1.0" encoding="UTF-8"?>
<library:library xmlns:library="http://openoffice.org/2000/library" library:name="Standard" library:readonly="false" library:passwordprotected="false">
<library:element library:name="Module1"/>
</library:library>`
	module = `<?xml version="1.0" encoding="UTF-8"?>
<script:module xmlns:script="http://openoffice.org/2000/script" script:name="Module1" script:language="StarBasic">%s</script:module>`
)

// basic is what each step calls; rows and columns count from 0. Protection is
// taken off, as people do who insert rows.
const basic = `
Function Opened(url)
  Dim a(0) As New com.sun.star.beans.PropertyValue
  a(0).Name = "Hidden" : a(0).Value = True
  doc = StarDesktop.loadComponentFromURL(url, "_blank", 0, a())
  For i = 0 To doc.Sheets.Count - 1
    doc.Sheets.getByIndex(i).unprotect("")
  Next
  Opened = doc
End Function
Sub Saved(doc, url)
  Dim a(0) As New com.sun.star.beans.PropertyValue
  a(0).Name = "FilterName" : a(0).Value = "Calc MS Excel 2007 XML"
  doc.calculateAll()
  doc.storeToURL(url, a())
  doc.close(True)
End Sub
Function Cell(doc, tab, col, row)
  Cell = doc.Sheets.getByName(tab).getCellByPosition(col, row)
End Function
Sub Inserted(doc, tab, above, many)
  doc.Sheets.getByName(tab).Rows.insertByIndex(above, many)
End Sub
Sub Deleted(doc, tab, first, many)
  doc.Sheets.getByName(tab).Rows.removeByIndex(first, many)
End Sub
Sub Copied(doc, tab, from, onto)
  s = doc.Sheets.getByName(tab)
  s.copyRange(s.getCellByPosition(0, onto).CellAddress, s.getCellRangeByPosition(0, from, 60, from).RangeAddress)
End Sub
Sub Sorted(doc, tab, c1, r1, c2, r2, key)
  Dim f(0) As New com.sun.star.table.TableSortField
  f(0).Field = key : f(0).IsAscending = False
  Dim a(1) As New com.sun.star.beans.PropertyValue
  a(0).Name = "SortFields" : a(0).Value = f()
  a(1).Name = "ContainsHeader" : a(1).Value = False
  doc.Sheets.getByName(tab).getCellRangeByPosition(c1, r1, c2, r2).sort(a())
End Sub
Sub Looks(doc, tab, col, row, code)
  Dim here As New com.sun.star.lang.Locale
  formats = doc.NumberFormats
  n = formats.queryKey(code, here, False)
  If n < 0 Then n = formats.addNew(code, here)
  Cell(doc, tab, col, row).NumberFormat = n
End Sub
Sub Remarked(doc, tab, col, row, words)
  doc.Sheets.getByName(tab).Annotations.insertNew(Cell(doc, tab, col, row).CellAddress, words)
End Sub
`

// Macro is the steps of people at work on workbooks, for LibreOffice itself to
// make: many workbooks in one start. Rows and columns count from 1 and names of
// sheets are as they then stand. The zero value is ready.
type Macro struct {
	books []string // the lines of each workbook
}

// step adds a line for the workbook that was opened last.
func (m *Macro) step(format string, args ...any) {
	last := len(m.books) - 1
	m.books[last] += "  " + fmt.Sprintf(format, args...) + "\n"
}

// basicText is a text as the macro's language writes it.
func basicText(s string) string {
	s = strings.ReplaceAll(s, `"`, `""`)
	return `"` + strings.ReplaceAll(s, "\n", `" & Chr(10) & "`) + `"`
}

// Open opens a workbook and takes the protection off its sheets. All steps up
// to Save are made in it.
func (m *Macro) Open(path string) {
	m.books = append(m.books, "")
	m.step("doc = Opened(%s)", basicText(fileURL(path)))
}

// Save computes every formula, saves the workbook elsewhere and closes it.
func (m *Macro) Save(path string) { m.step("Saved(doc, %s)", basicText(fileURL(path))) }

// Type puts a string, a number, a truth or, for nil, nothing into a cell.
// Truths are typed as 1 or 0 and shown as TRUE or FALSE.
func (m *Macro) Type(tab string, row, col int, v any) {
	at := fmt.Sprintf("Cell(doc, %s, %d, %d)", basicText(tab), col-1, row-1)
	switch v := v.(type) {
	case nil:
		m.step("%s.String = \"\"", at)
	case bool:
		m.step("%s.Formula = \"=%t()\"", at, v)
	case string:
		m.step("%s.String = %s", at, basicText(v))
	case float64:
		m.step("%s.Value = %s", at, strconv.FormatFloat(v, 'f', -1, 64))
	default:
		m.step("%s.Value = %v", at, v)
	}
}

// Formula puts a formula, with its '=' and in English, into a cell.
func (m *Macro) Formula(tab string, row, col int, formula string) {
	m.step("Cell(doc, %s, %d, %d).Formula = %s", basicText(tab), col-1, row-1, basicText(formula))
}

// Format shows a cell by a format code such as "YYYY-MM-DD" or "0%".
func (m *Macro) Format(tab string, row, col int, code string) {
	m.step("Looks(doc, %s, %d, %d, %s)", basicText(tab), col-1, row-1, basicText(code))
}

// Insert puts empty rows above a row.
func (m *Macro) Insert(tab string, above, many int) {
	m.step("Inserted(doc, %s, %d, %d)", basicText(tab), above-1, many)
}

// Delete takes rows out, from one on.
func (m *Macro) Delete(tab string, row, many int) {
	m.step("Deleted(doc, %s, %d, %d)", basicText(tab), row-1, many)
}

// Copy copies a whole row over another.
func (m *Macro) Copy(tab string, row, onto int) {
	m.step("Copied(doc, %s, %d, %d)", basicText(tab), row-1, onto-1)
}

// Sort sorts a block downwards by one of its columns, counted on the sheet.
func (m *Macro) Sort(tab string, block sheet.Range, by int) {
	m.step("Sorted(doc, %s, %d, %d, %d, %d, %d)", basicText(tab), block.C1-1, block.R1-1, block.C2-1, block.R2-1, by-block.C1)
}

// Rename gives a sheet another name.
func (m *Macro) Rename(tab, name string) {
	m.step("doc.Sheets.getByName(%s).Name = %s", basicText(tab), basicText(name))
}

// Add adds an empty sheet at the end.
func (m *Macro) Add(tab string) {
	m.step("doc.Sheets.insertNewByName(%s, doc.Sheets.Count)", basicText(tab))
}

// Remove deletes a sheet.
func (m *Macro) Remove(tab string) { m.step("doc.Sheets.removeByName(%s)", basicText(tab)) }

// Width sets the width of a column in hundredths of a millimetre.
func (m *Macro) Width(tab string, col, width int) {
	m.step("doc.Sheets.getByName(%s).Columns.getByIndex(%d).Width = %d", basicText(tab), col-1, width)
}

// Merge joins a block of cells.
func (m *Macro) Merge(tab string, r sheet.Range) {
	m.step("doc.Sheets.getByName(%s).getCellRangeByPosition(%d, %d, %d, %d).merge(True)", basicText(tab), r.C1-1, r.R1-1, r.C2-1, r.R2-1)
}

// Remark puts a remark on a cell.
func (m *Macro) Remark(tab string, row, col int, words string) {
	m.step("Remarked(doc, %s, %d, %d, %s)", basicText(tab), col-1, row-1, basicText(words))
}

// DropName deletes a defined name of the workbook.
func (m *Macro) DropName(name string) {
	m.step("doc.NamedRanges.removeByName(%s)", basicText(name))
}

// text is the whole module: a procedure for each workbook, and one that calls
// them all. An error would stop a macro without a word, so it is written down.
func (m *Macro) text(fault string) string {
	var b strings.Builder
	b.WriteString(basic)
	for i, lines := range m.books {
		fmt.Fprintf(&b, "Sub Book%d\n%sEnd Sub\n", i, lines)
	}
	b.WriteString("Sub Run\n  On Error Goto Failed\n")
	for i := range m.books {
		fmt.Fprintf(&b, "  at = %d\n  Book%d\n", i, i)
	}
	fmt.Fprintf(&b, `  Exit Sub
Failed:
  n = FreeFile()
  Open %s For Output As #n
  Print #n, Error$ & ", line " & Erl & ", workbook " & at
  Close #n
End Sub
`, basicText(fault))
	return b.String()
}

// Run makes all steps in one start of the office program. The test fails where
// a step does.
func (m *Macro) Run(t testing.TB) {
	t.Helper()
	home := t.TempDir()
	fault := filepath.Join(home, "fault.txt")
	source := m.text(fault)
	var text strings.Builder
	if err := xml.EscapeText(&text, []byte(source)); err != nil {
		t.Fatal(err)
	}
	for name, content := range map[string]string{"registrymodifications.xcu": macroSettings, "basic/script.xlc": libraries,
		"basic/Standard/script.xlb": library, "basic/Standard/Module1.xba": fmt.Sprintf(module, text.String())} {
		path := filepath.Join(home, "user", name)
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(content), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	ctx, cancel := context.WithTimeout(t.Context(), limit)
	defer cancel()
	cmd := exec.CommandContext(ctx, program, "-env:UserInstallation="+fileURL(home), "--headless", "--norestore", "macro:///Standard.Module1.Run")
	// The program starts another that may outlive it and hold its output open.
	cmd.WaitDelay = 5 * time.Second
	if said, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, said)
	}
	if why, err := os.ReadFile(fault); err == nil {
		t.Fatalf("the macro stopped: %s\n%s", why, source[len(basic):])
	}
}

// fileURL is a file as the office program names it.
func fileURL(path string) string {
	return (&url.URL{Scheme: "file", Path: filepath.ToSlash(path)}).String()
}
