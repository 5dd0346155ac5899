package workbook_test

import (
	"context"
	"encoding/xml"
	"fmt"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"tentwright/quote/jobtest"
	"tentwright/workbook"
	"tentwright/workbook/internal/calc"
	"tentwright/workbook/sheet"
)

// The office program's own settings and macro library, as it keeps them in a
// profile. Sheets are computed afresh on loading, and the profile counts as
// set up, or else the library would be replaced at the first start.
const (
	settings = `<?xml version="1.0" encoding="UTF-8"?>
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

// basic is what the macro is made from; rows and columns count from 0.
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
Sub Inserted(doc, tab, above, many)
  doc.Sheets.getByName(tab).Rows.insertByIndex(above, many)
End Sub
Sub Sorted(doc, tab, c1, r1, c2, r2, key)
  Dim f(0) As New com.sun.star.table.TableSortField
  f(0).Field = key : f(0).IsAscending = False
  Dim a(1) As New com.sun.star.beans.PropertyValue
  a(0).Name = "SortFields" : a(0).Value = f()
  a(1).Name = "ContainsHeader" : a(1).Value = False
  doc.Sheets.getByName(tab).getCellRangeByPosition(c1, r1, c2, r2).sort(a())
End Sub
`

// run frames the body, since an error would stop a macro without a word.
const run = `%s
Sub Run
  On Error Goto Failed
%s
  Exit Sub
Failed:
  n = FreeFile()
  Open "%s" For Output As #n
  Print #n, Error$ & ", line " & Erl
  Close #n
End Sub
`

// fileURL is a file as the office program names it.
func fileURL(path string) string { return (&url.URL{Scheme: "file", Path: path}).String() }

// runMacro runs the body of a macro in one start of the office program.
func runMacro(t *testing.T, body string) {
	t.Helper()
	home := t.TempDir()
	var text strings.Builder
	fault := filepath.Join(home, "fault.txt")
	if err := xml.EscapeText(&text, fmt.Appendf(nil, run, basic, body, fault)); err != nil {
		t.Fatal(err)
	}
	for name, content := range map[string]string{"registrymodifications.xcu": settings, "basic/script.xlc": libraries,
		"basic/Standard/script.xlb": library, "basic/Standard/Module1.xba": fmt.Sprintf(module, text.String())} {
		path := filepath.Join(home, "user", name)
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(content), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	ctx, cancel := context.WithTimeout(t.Context(), 3*time.Minute)
	defer cancel()
	cmd := exec.CommandContext(ctx, "soffice", "-env:UserInstallation="+fileURL(home), "--headless", "--norestore", "macro:///Standard.Module1.Run")
	cmd.WaitDelay = 5 * time.Second
	if said, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, said)
	}
	if why, err := os.ReadFile(fault); err == nil {
		t.Fatalf("the macro stopped: %s\n%s", why, body)
	}
}

// Rows that people insert and lists that they sort leave every figure as it
// was: formulas reach each other by names and keys.
func TestMovedRowsKeepTheFigures(t *testing.T) {
	calc.Need(t)
	c := demoCatalog(t)
	books := map[string]*sheet.Book{}
	for name, q := range demoQuotes(t, c) {
		books[name] = workbook.Layout(q)
	}
	first := firstSeed(t)
	for seed := first; seed < first+6; seed++ {
		books[fmt.Sprintf("seed-%d", seed)] = workbook.Layout(mustQuote(t, c, jobtest.Random(c, seed)))
	}
	dir, out := t.TempDir(), t.TempDir()
	var body strings.Builder
	for name, b := range books {
		file := writeBook(t, dir, name, b)
		fmt.Fprintf(&body, "  doc = Opened(%q)\n%s  Saved(doc, %q)\n", fileURL(file), moves(t, b), fileURL(filepath.Join(out, name+".xlsx")))
	}
	runMacro(t, body.String())
	for name := range books {
		was, now := readFigures(t, filepath.Join(dir, name+".xlsx")), readFigures(t, filepath.Join(out, name+".xlsx"))
		reportFigures(t, name, bookFigures(was), bookFigures(now))
		if a, b := was.texts("pick_part"), now.texts("pick_part"); len(a) != len(b) || len(a) > 9 && slices.Equal(a, b) {
			t.Errorf("%s: the pick list has %d lines and was not sorted; %d in another order were expected", name, len(b), len(a))
		}
	}
}

// moves is the macro's lines for one book: rows above and within the lines of
// the build-up, and lists sorted by columns other than those they come by.
func moves(t *testing.T, b *sheet.Book) string {
	t.Helper()
	var text strings.Builder
	for _, x := range []struct{ keys, by string }{{"pick_key", "pick_item"}, {"need_key", "need_part"}, {"return_key", "return_item"},
		{"task_key", "task_name"}, {"item_id", "item_name"}, {"build_key", "build_name"}, {"tents_key", "tents_name"}} {
		if strings.HasPrefix(x.keys, "tents") && !defines(b, x.keys) {
			continue // a job without tents
		}
		place, rows, err := placeOf(b, x.keys)
		_, by, err2 := placeOf(b, x.by)
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		// The last row is the spare one, which ends the names.
		fmt.Fprintf(&text, "  Sorted(doc, %q, 0, %d, %d, %d, %d)\n", place, rows.R1-1, widthOf(b, place)-1, rows.R2-2, by.C1-1)
	}
	for name, many := range map[string]int{"build_key": 2, "rate_waiver": 1, "window_id": 2, "pick_key": 1} {
		place, rows, err := placeOf(b, name)
		if err != nil {
			t.Fatal(err)
		}
		// First within the lines, then above their headings.
		if rows.R2 > rows.R1+1 {
			fmt.Fprintf(&text, "  Inserted(doc, %q, %d, 1)\n", place, rows.R1)
		}
		fmt.Fprintf(&text, "  Inserted(doc, %q, %d, %d)\n", place, rows.R1-2, many)
	}
	return text.String()
}

func defines(b *sheet.Book, name string) bool {
	return slices.ContainsFunc(b.Names, func(n sheet.Name) bool { return n.Name == name })
}

// widthOf is the number of columns of a sheet.
func widthOf(b *sheet.Book, name string) int {
	widest := 0
	for _, s := range b.Sheets {
		if s.Name != name {
			continue
		}
		for i := range s.Rows {
			widest = max(widest, len(s.Rows[i].Cells))
		}
	}
	return widest
}

// texts lists what stands in a named range, without empty cells.
func (f figures) texts(name string) []string {
	place, at, err := placeOf(f.book, name)
	if err != nil {
		return nil
	}
	var list []string
	for row := at.R1; row <= at.R2; row++ {
		if c := f.cells[place][sheet.Ref(row, at.C1)]; c.Text != "" {
			list = append(list, c.Text)
		}
	}
	return list
}
