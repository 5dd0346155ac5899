package revise_test

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"tentwright/workbook"
	"tentwright/workbook/revise"
	"tentwright/workbook/xlsx"
)

// typist types into a workbook with openpyxl, a library that shares no code
// with the writer of the workbook: names and values come in pairs.
const typist = `
import sys, openpyxl
book = openpyxl.load_workbook(sys.argv[1])
for name, value in zip(sys.argv[3::2], sys.argv[4::2]):
    sheet, cell = next(iter(book.defined_names[name].destinations))
    first = cell.replace("$", "").split(":")[0]
    book[sheet][first].value = float(value) if value.replace(".", "").isdigit() else value
book.save(sys.argv[2])
`

// python is a Python that has the library; "" where none has.
func python() string {
	for _, name := range []string{"python3", "/usr/bin/python3"} {
		if exec.Command(name, "-c", "import openpyxl").Run() == nil {
			return name
		}
	}
	return ""
}

// A workbook that another library opened and saved reads as before, and what it
// typed is found.
func TestSavedByAnotherLibrary(t *testing.T) {
	program := python()
	if program == "" {
		t.Skip("no Python with openpyxl; install it (Debian: python3-openpyxl) to run this test")
	}
	dir := t.TempDir()
	save := func(in string, typed ...string) *revise.Book {
		out := filepath.Join(dir, "saved.xlsx")
		if said, err := exec.Command(program, append([]string{"-c", typist, in, out}, typed...)...).CombinedOutput(); err != nil {
			t.Fatalf("%v: %s", err, said)
		}
		data, err := os.ReadFile(out)
		if err != nil {
			t.Fatal(err)
		}
		found, err := xlsx.Read("saved.xlsx", data)
		if err != nil {
			t.Fatal(err)
		}
		b, list := revise.Open("saved.xlsx", found)
		if b == nil || len(list) > 0 {
			t.Fatal(list)
		}
		return b
	}
	for _, name := range demoJobs {
		q := demoQuote(t, name)
		in := filepath.Join(dir, name+".xlsx")
		var data bytes.Buffer
		if err := xlsx.Write(&data, workbook.Layout(q)); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(in, data.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
		if b := save(in); len(b.Edits) > 0 {
			t.Errorf("%s: only saved, but found %v", name, b.Edits)
		}
		b := save(in, "rate_waiver", "12.5", "job_guests", "41", "job_customer_name", "Mill Lane Choir")
		if len(b.Edits) != 3 {
			t.Errorf("%s: three cells were typed into; found %v", name, b.Edits)
		}
		r, list := b.Revise(nil)
		if r == nil {
			t.Fatal(list)
		}
		if got := r.Quote; got.Catalog.Rates.Waiver.String() != "12.5" || got.Job.Event.Guests != 41 || got.Job.Customer.Name != "Mill Lane Choir" {
			t.Errorf("%s: the revision has waiver %s, %d guests, customer %q", name, got.Catalog.Rates.Waiver, got.Job.Event.Guests, got.Job.Customer.Name)
		}
	}
}
