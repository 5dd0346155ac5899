package intake

import (
	"os"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/unit"
	"tentwright/quote/job"
	"tentwright/workbook/sheet"
)

// A form stands for any shop: one with next to nothing, one of metric units, one
// whose names are shared, long or look like something else.
func TestShops(t *testing.T) {
	small, list := catalog.Load("small", os.DirFS("../../testdata/shops/small"))
	if list.Err() != nil {
		t.Fatal(list.Err())
	}
	metric := demo(t)
	metric.Company.Units, metric.Company.Paper = unit.Metric, "a4"
	odd := demo(t)
	odd.Families[1].Name, odd.Families[2].Name = odd.Families[0].Name, "=1+1, <b> & \"so on\""
	odd.Items[20].Name = odd.Items[21].ID
	odd.Rates.Classes[0].Name, odd.Rates.Classes[1].Name = strings.Repeat("long ", 24), "WALK-in"
	odd.Rates.Loadings, odd.Rates.Taxes = nil, nil
	for i := range odd.Site[0].Options {
		odd.Site[0].Options[i].Name = "The same"
	}
	for name, c := range map[string]*catalog.Catalog{"small": small, "metric": metric, "odd": odd} {
		b := Form(c, made)
		if err := b.Check(); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		inputsGuarded(t, name, b)
	}
	j, _ := canon(odd, jobOf(t, demo(t), "dinner.yaml"))
	j.Delivery.Loadings, j.Event.Place = nil, "anywhere"
	if data, _, list := Read("odd.xlsx", fill(odd, j).Found(), odd); list.Err() != nil || string(data) != string(job.Write(j)) {
		t.Errorf("%v\n%s\nwant\n%s", list.Err(), data, job.Write(j))
	}
}

// inputsGuarded checks that each cell that can be typed into has one rule with
// a prompt, and lies under a name.
func inputsGuarded(t *testing.T, name string, b *sheet.Book) {
	t.Helper()
	names := b.Found().Names
	for _, s := range b.Sheets {
		for r := range s.Rows {
			for i, cell := range s.Rows[r].Cells {
				row, col := r+1, i+1
				here := sheet.Range{R1: row, C1: col, R2: row, C2: col}
				if cell.Style.Role.Locked() || covered(s, here) {
					continue
				}
				rules, named := 0, false
				for _, v := range s.Validations {
					if v.Range.Overlaps(here) && v.Prompt != "" {
						rules++
					}
				}
				for id, p := range names {
					named = named || strings.HasPrefix(id, "intake_") && p.Sheet == s.Name && p.Overlaps(here)
				}
				if rules != 1 || !named || !s.Protected {
					t.Errorf("%s: %s!%s: %d rules, named %v, protected %v", name, s.Name, here, rules, named, s.Protected)
				}
			}
		}
	}
}

// covered tells whether a cell is covered by another of its merge.
func covered(s *sheet.Sheet, here sheet.Range) bool {
	for _, m := range s.Merges {
		if m.Overlaps(here) && (m.R1 != here.R1 || m.C1 != here.C1) {
			return true
		}
	}
	return false
}

// Names that are shared or read as another's id carry their id.
func TestChoices(t *testing.T) {
	all := []choice{{"a", "Hall"}, {"b", "hall"}, {"c", "Barn"}, {"Yard", "d"}, {"d", "Mill"}, {"e", ""}}
	list := choose(all, func(c *choice) (string, string) { return c.id, c.text })
	if got, want := strings.Join(list.texts(), "|"), "Hall (a)|hall (b)|Barn|d (Yard)|Mill|e"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	for word, want := range map[string]string{"hall (A)": "a", "Barn": "c", " barn ": "c", "C": "c", "d": "d", "d  (Yard)": "Yard", "Hall": "", "": ""} {
		if got, _ := list.id(word); got != want {
			t.Errorf("%q: got %q, want %q", word, got, want)
		}
	}
}
