package intake

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"tentwright/quote/job"
	"tentwright/workbook/internal/calc"
	"tentwright/workbook/sheet"
	"tentwright/workbook/xlsx"
)

// A form that a spreadsheet program computed and saved is read the same, and its
// drop-downs offer what the family in the row has.
func TestSavedByAnotherProgram(t *testing.T) {
	calc.Need(t)
	c := demo(t)
	j, _ := canon(c, jobOf(t, c, "fairground.yaml"))
	var out bytes.Buffer
	if err := xlsx.Write(&out, fill(c, j)); err != nil {
		t.Fatal(err)
	}
	dir, saved := t.TempDir(), t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "fair.xlsx"), out.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := calc.Recalculate(t.Context(), []string{filepath.Join(dir, "fair.xlsx")}, saved); err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile(filepath.Join(saved, "fair.xlsx"))
	if err != nil {
		t.Fatal(err)
	}
	f, err := xlsx.Read("fair.xlsx", data)
	if err != nil {
		t.Fatal(err)
	}
	got, _, list := Read("fair.xlsx", f, c)
	if list.Err() != nil || string(got) != string(job.Write(j)) {
		t.Fatalf("%v\n%s\nwant\n%s", list.Err(), got, job.Write(j))
	}
	for i := range j.Tents {
		m := c.Family(j.Tents[i].Family)
		for id, want := range map[string][]string{"sizes": sizes(m).texts(), "legs": legs(c, m), "walls": walls(m).texts(), "doors": doors(m).texts()} {
			if have := offered(f, fmt.Sprintf("intake_%s_%d", id, i+1)); !slices.Equal(have, want) {
				t.Errorf("tent %d, %s: offered %q, want %q", i+1, id, have, want)
			}
		}
		if have := offered(f, "intake_list_tents"); have[i] != j.Tents[i].ID {
			t.Errorf("tents to join: %q at %d, want %q", have[i], i, j.Tents[i].ID)
		}
	}
	if have := offered(f, fmt.Sprintf("intake_sizes_%d", Tents)); len(have) > 0 {
		t.Errorf("a row without a family offers sizes: %q", have)
	}
}

// offered is the words of a list, without the empty ones at its end.
func offered(f *sheet.Found, name string) []string {
	p := f.Names[name]
	var words []string
	for row := p.R1; row <= p.R2; row++ {
		if w := shown(f.Sheet(p.Sheet).At(row, p.C1)); w != "" {
			words = append(words, w)
		}
	}
	return words
}
