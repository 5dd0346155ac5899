package xlsx_test

import (
	"bytes"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"tentwright/workbook/sheet"
	"tentwright/workbook/xlsx"
)

// office is a file of the office with the named sheets; the cells A1 and C3 of
// each are filled, row 2 and column B hidden.
func office(t *testing.T, names ...string) *excelize.File {
	t.Helper()
	f := excelize.NewFile()
	t.Cleanup(func() { f.Close() })
	for _, name := range names {
		_, err := f.NewSheet(name)
		for _, err := range []error{err, f.SetCellStr(name, "A1", "first of "+name), f.SetCellInt(name, "C3", 7),
			f.SetRowVisible(name, 2, false), f.SetColWidth(name, "B", "B", 21), f.SetColVisible(name, "B", false)} {
			if err != nil {
				t.Fatal(err)
			}
		}
	}
	return f
}

// saved is the bytes of a file.
func saved(t *testing.T, f *excelize.File) []byte {
	t.Helper()
	data, err := f.WriteToBuffer()
	if err != nil {
		t.Fatal(err)
	}
	return data.Bytes()
}

// What the office hid stays hidden: sheets, very hidden ones, columns and rows.
func TestForeignStaysHidden(t *testing.T) {
	f := office(t, "Open", "Shut", "Sealed")
	if err := f.SetSheetVisible("Shut", false); err != nil {
		t.Fatal(err)
	}
	if err := f.SetSheetVisible("Sealed", false, true); err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := xlsx.WriteWith(&out, sample(t), xlsx.Foreign{Data: saved(t, f), Sheets: []string{"Open", "Shut", "Sealed"}}); err != nil {
		t.Fatal(err)
	}
	next, err := excelize.OpenReader(&out)
	if err != nil {
		t.Fatal(err)
	}
	defer next.Close()
	want := map[string]string{"Open": "", "Shut": "hidden", "Sealed": "veryHidden"}
	for _, s := range next.WorkBook.Sheets.Sheet {
		state, foreign := want[s.Name]
		if !foreign {
			continue
		}
		delete(want, s.Name)
		row1, _ := next.GetRowVisible(s.Name, 1)
		row2, _ := next.GetRowVisible(s.Name, 2)
		colA, _ := next.GetColVisible(s.Name, "A")
		colB, _ := next.GetColVisible(s.Name, "B")
		width, _ := next.GetColWidth(s.Name, "B")
		if s.State != state || !row1 || row2 || !colA || colB || width != 21 {
			t.Errorf("sheet %q: state %q, rows 1 and 2 visible: %v, %v; columns A and B: %v, %v; column B is %v wide", s.Name, s.State, row1, row2, colA, colB, width)
		}
	}
	if len(want) > 0 {
		t.Errorf("sheets %v did not come along", want)
	}
}

// A sheet is not left out in silence because its name is taken.
func TestForeignNameTaken(t *testing.T) {
	b := sample(t)
	name := strings.ToUpper(b.Sheets[0].Name)
	err := xlsx.WriteWith(&bytes.Buffer{}, b, xlsx.Foreign{Data: saved(t, office(t, name)), Sheets: []string{name}})
	if err == nil || !strings.Contains(err.Error(), name) {
		t.Errorf("the error is %v; one that names the sheet %q was expected", err, name)
	}
}

// A list that was added before is replaced by the new one, before the others.
func TestAddFirstReplaces(t *testing.T) {
	s := &sheet.Sheet{Name: "Corrections", Rows: []sheet.Row{{Cells: []sheet.Cell{{Value: "new"}}}}}
	for _, before := range [][]string{{"Form"}, {"CORRECTIONS", "Form"}, {"Form", "Corrections"}} {
		f := office(t, before...)
		if err := f.DeleteSheet("Sheet1"); err != nil {
			t.Fatal(err)
		}
		data, err := xlsx.AddFirst(saved(t, f), s)
		if err != nil {
			t.Fatal(err)
		}
		found, err := xlsx.Read("form.xlsx", data)
		if err != nil {
			t.Fatal(err)
		}
		if len(found.Sheets) != 2 || found.Sheets[0].Name != "Corrections" || found.Sheets[1].Name != "Form" {
			t.Errorf("of %q became %d sheets", before, len(found.Sheets))
			continue
		}
		if a, c := found.Sheets[0].At(1, 1).Text, found.Sheets[0].At(3, 3); a != "new" || c.Text != "" {
			t.Errorf("of %q: the sheet holds %q and %q", before, a, c.Text)
		}
	}
}
