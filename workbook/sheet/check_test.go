package sheet

import (
	"math"
	"strings"
	"testing"
)

// sound is a small book without faults.
func sound() *Book {
	return &Book{
		Created: "2026-05-01T00:00:00Z", Currency: Currency{"$", 2},
		Sheets: []*Sheet{
			{Name: "Price Build-up", Rows: []Row{{Cells: []Cell{
				{Value: 2}, {Value: "text"}, {Value: 4.0, Formula: "ROUND(A1*tax_rate+SUM($A:$A)+1E-06,2)"},
				{Value: "", Formula: `IF(LEN(Lists!A1)=0,"say ""hi""; it's",'Price Build-up'!$B$1)`}, {}, {}}}}},
			{Name: "Lists", Hidden: true},
		},
		Names: []Name{{Name: "tax_rate", Refers: "'Price Build-up'!$A$1"}, {Name: "list_bins", Refers: "Lists!$A$1:$A$9"}},
	}
}

func TestSoundBookPasses(t *testing.T) {
	b := sound()
	s := b.Sheets[0]
	s.Merges = []Range{{1, 5, 1, 6}}
	s.Validations = []Validation{
		{Range: Range{1, 1, 1, 1}, Kind: List, Source: "list_bins", Prompt: "one of the list"},
		{Range: Range{1, 2, 1, 2}, Kind: List, Source: "Yes,No", Prompt: "Yes or No"},
		{Range: Range{1, 3, 1, 3}, Kind: Decimal, Min: "0", Max: "tax_rate*2", Prompt: "a number"},
		{Range: Range{1, 4, 1, 4}, Kind: Custom, Source: "LEN(B1)<9", Prompt: "short"},
	}
	s.Highlights = []Highlight{{Range{1, 1, 1, 1}, "$A1<0", Warn}}
	s.Links = []Link{{1, 1, "'Lists'!A1", ""}, {1, 2, "tax_rate", "tax"}}
	s.Notes = []Note{{1, 1, "text"}}
	if err := b.Check(); err != nil {
		t.Error(err)
	}
}

// Each case spoils the sound book in one way.
func TestFaultsAreFound(t *testing.T) {
	first := func(f func(s *Sheet)) func(*Book) { return func(b *Book) { f(b.Sheets[0]) } }
	cellOf := func(c Cell) func(*Book) {
		return first(func(s *Sheet) { s.Rows[0].Cells[0] = c })
	}
	formula := func(f string) func(*Book) { return cellOf(Cell{Value: 1, Formula: f}) }
	named := func(name string) func(*Book) { return func(b *Book) { b.Names[0].Name = name } }
	called := func(name string) func(*Book) { return func(b *Book) { b.Sheets[1].Name = name } }
	rule := func(v Validation) func(*Book) {
		return first(func(s *Sheet) {
			if v.Range == (Range{}) {
				v.Range = Range{1, 1, 1, 1}
			}
			s.Validations = []Validation{v}
		})
	}
	for _, c := range []struct {
		name  string
		spoil func(*Book)
		want  string
	}{
		{"no date", func(b *Book) { b.Created = "yesterday" }, `created "yesterday"; expected a time`},
		{"coins", func(b *Book) { b.Currency.Minor = 9 }, "9 decimals"},
		{"no sheet", func(b *Book) { b.Sheets = nil }, "no sheet to show"},
		{"all hidden", first(func(s *Sheet) { s.Hidden = true }), "no sheet to show"},
		{"nil sheet", func(b *Book) { b.Sheets = append(b.Sheets, nil) }, "sheet 3 is missing"},
		{"long sheet name", called(strings.Repeat("x", 32)), "32 characters"},
		{"sheet name with a slash", called("In/Out"), `"In/Out"; expected none of`},
		{"reserved sheet name", called("History"), "kept by the program"},
		{"same sheet name", called("PRICE BUILD-UP"), "stands twice"},
		{"name in capitals", named("Tax_Rate"), "lower-case"},
		{"name with a blank", named("tax rate"), "lower-case"},
		{"name like a cell", named("tax2026"), "reads as a cell"},
		{"name is a cell", named("ab12"), "reads as a cell"},
		{"name is a row and column", named("r1c1"), "reads as a cell"},
		{"name is r", named("r"), "reads as a cell"},
		{"name is true", named("true"), "a value of its own"},
		{"same name", named("list_bins"), "stands twice"},
		{"name to nowhere", func(b *Book) { b.Names[0].Refers = "A1" }, `refers to "A1"; expected a place`},
		{"name to a missing sheet", func(b *Book) { b.Names[0].Refers = "'Gone'!$A$1" }, `refers to sheet "Gone"`},
		{"formula with =", formula("=A1"), "starts with '='"},
		{"open bracket", formula("SUM(A1"), "do not close"},
		{"open quote", formula(`"a`), "quote that does not close"},
		{"long text in a formula", formula(`"` + strings.Repeat("x", 256) + `"`), "text of 256 characters"},
		{"semicolon", formula("SUM(A1;B1)"), "has ';'"},
		{"lost place", formula("#REF!+1"), "error value"},
		{"unknown sheet", formula("'Pick list'!A1"), `refers to sheet "Pick list"`},
		{"unknown name", formula("A1*tax_rat"), `uses the name "tax_rat", which the book does not have; nearest is tax_rate`},
		{"short unknown name", formula("A1*tax"), `uses the name "tax"`},
		{"formula without value", cellOf(Cell{Formula: "A1"}), "Price Build-up!A1: formula without its computed value"},
		{"strange value", cellOf(Cell{Value: []int{1}}), "value of type []int"},
		{"not a number", cellOf(Cell{Value: math.NaN()}), "finite number"},
		{"infinite", cellOf(Cell{Value: math.Inf(1)}), "finite number"},
		{"long text", cellOf(Cell{Value: strings.Repeat("x", 40000)}), "40000 characters; expected at most 32767"},
		{"strange role", cellOf(Cell{Value: 1, Style: Style{Role: 99}}), "known role"},
		{"merge of one", first(func(s *Sheet) { s.Merges = []Range{{1, 5, 1, 5}} }), "one cell"},
		{"merges overlap", first(func(s *Sheet) { s.Merges = []Range{{2, 1, 3, 2}, {3, 2, 4, 4}} }), "B3:D4 merge: overlaps A2:B3"},
		{"merge hides", first(func(s *Sheet) { s.Merges = []Range{{1, 1, 1, 2}} }), "covers the content of B1"},
		{"merge off the sheet", first(func(s *Sheet) { s.Merges = []Range{{3, 1, 2, 2}} }), "expected a block on the sheet"},
		{"row too high", first(func(s *Sheet) { s.Rows[0].Height = 500 }), "500 points high"},
		{"column too wide", first(func(s *Sheet) { s.Columns = []Column{{Width: 300}} }), "column A is 300 wide"},
		{"long prompt", rule(Validation{Kind: Decimal, Min: "0", Prompt: strings.Repeat("p", 256)}), "prompt of 256 characters"},
		{"long title", rule(Validation{Kind: Decimal, Min: "0", Prompt: "p", Title: strings.Repeat("t", 33)}), "title of 33 characters"},
		{"long list", rule(Validation{Kind: List, Source: strings.Repeat("word,", 60), Prompt: "p"}), "list of 300 characters"},
		{"list of one unknown", rule(Validation{Kind: List, Source: "list_bin", Prompt: "p"}), "nearest is list_bins"},
		{"no prompt", rule(Validation{Kind: Decimal, Min: "0"}), "no prompt"},
		{"no limit", rule(Validation{Kind: Date, Prompt: "p"}), "no limit"},
		{"strange kind", rule(Validation{Kind: 17, Prompt: "p"}), "kind 17"},
		{"rule off the sheet", rule(Validation{Range: Range{0, 1, 0, 1}, Kind: Decimal, Min: "0", Prompt: "p"}), "block on the sheet"},
		{"highlight role", first(func(s *Sheet) { s.Highlights = []Highlight{{Range{1, 1, 1, 1}, "A1>0", Title}} }), "expected Warn, Good or Faint"},
		{"empty note", first(func(s *Sheet) { s.Notes = []Note{{1, 1, " "}} }), "no text"},
		{"two notes", first(func(s *Sheet) { s.Notes = []Note{{1, 1, "a"}, {1, 1, "b"}} }), "has one already"},
		{"link to nowhere", first(func(s *Sheet) { s.Links = []Link{{1, 1, "Gone!A1", ""}} }), `sheet "Gone"`},
		{"picture without words", first(func(s *Sheet) { s.Picture = &Picture{Row: 1, Col: 1, Ext: ".png"} }), "no words on what it shows"},
		{"picture kind", first(func(s *Sheet) { s.Picture = &Picture{Row: 1, Col: 1, Ext: ".svg", Alt: "a"} }), `kind ".svg"`},
		{"paper", first(func(s *Sheet) { s.Page.Paper = "foolscap" }), `paper "foolscap"`},
		{"heading rows", first(func(s *Sheet) { s.TitleRows = [2]int{5, 4} }), "heading rows 5 to 4"},
		{"break", first(func(s *Sheet) { s.Breaks = []int{1} }), "page break before row 1"},
		{"freeze", first(func(s *Sheet) { s.FreezeRows = -1 }), "kept in sight"},
	} {
		b := sound()
		c.spoil(b)
		err := b.Check()
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: got %v, want %q", c.name, err, c.want)
		}
	}
}

func TestAllFaultsInOneRun(t *testing.T) {
	b := sound()
	b.Created = ""
	b.Sheets[0].Rows[0].Cells[0] = Cell{Value: 1, Formula: "=A1"}
	if lines := strings.Count(b.Check().Error(), "\n") + 1; lines != 2 {
		t.Errorf("%d faults, want 2: %v", lines, b.Check())
	}
}

// Check never fails on any formula text, and says nothing of names inside
// quotes.
func FuzzFormula(f *testing.F) {
	for _, s := range []string{"A1", `"nobody"`, "'Lists'!A1", "{1,2;3,4}", "SUM(", "''!", "$", "1E", "ü*2"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		b := sound()
		b.Sheets[0].Rows[0].Cells[0] = Cell{Value: 1, Formula: s}
		_ = b.Check()
		b.Sheets[0].Rows[0].Cells[0] = Cell{Value: 1, Formula: `"` + strings.ReplaceAll(s, `"`, `""`) + `"`}
		if len(s) <= maxQuoted {
			if err := b.Check(); err != nil {
				t.Fatalf("quoted %q: %v", s, err)
			}
		}
	})
}
