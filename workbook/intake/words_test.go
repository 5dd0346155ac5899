package intake

import (
	"strings"
	"testing"

	"tentwright/catalog/diag"
	"tentwright/workbook/sheet"
)

// saying is what one problem of a list must say, at a cell as find has it.
type saying struct{ at, says string }

// TestWords checks that problems are told in the words of the form, each at its
// cell, and all of a row together.
func TestWords(t *testing.T) {
	c := demo(t)
	for _, tt := range []struct {
		name   string
		values map[string]any
		want   []saying
	}{
		{"dates out of order", map[string]any{"from": "2026-06-01"}, []saying{{"from", "Event from: 2026-06-01 is before Delivery 2026-06-1"}}},
		{"below the least", map[string]any{"item_quantity:2": -3}, []saying{{"item_quantity:2", "quantity: -3 is too small; at least 0 was expected"}}},
		{"above the most", map[string]any{"discount": 120}, []saying{{"discount", "Discount on the hire, %: 120 is too large; at most 100 was expected"}}},
		{"a tent that nobody is", map[string]any{"tent_joins:1": "barn", "tent_at:1": "Front"}, []saying{{"tent_joins:1", `tent 1, joins: tent "barn" is not known`}}},
		{"joins without a side", map[string]any{"tent_family:2": "Hip-frame tent", "tent_size:2": "10x10", "tent_joins:2": "tent-9"}, []saying{{"tent_joins:2", "tent 2, joins: "}}},
		{"an extra by a truth", map[string]any{"item_optional:2": true, "item_quantity:2": 1}, nil},
		{"no extra by a truth", map[string]any{"item_optional:2": false}, nil},
		{"an item's row", map[string]any{"item_quantity:2": "many", "item_optional:2": "perhaps", "item_off:2": "some"},
			[]saying{{"item_quantity:2", `"many" is no number`}, {"item_optional:2", "Yes, No or Chosen"}, {"item_off:2", `"some" is no number`}}},
		{"kind and choice of a tent", map[string]any{"tent_family:1": "Yurt", "tent_size:1": "10x10", "tent_count:1": "two", "tent_ground:1": "moon", "tent_at:1": "top"},
			[]saying{{"tent_family:1", "a family of tents"}, {"tent_count:1", `"two"`}, {"tent_ground:1", "a kind of ground"}, {"tent_at:1", "Front, Right"}}},
		{"a side's row", map[string]any{"side_wall:1": "sollid", "side_door:1": "gate", "side_doors:1": "two", "side_stakes:1": "perhaps"},
			[]saying{{"side_wall:1", "a wall"}, {"side_door:1", "a door"}, {"side_doors:1", `"two"`}, {"side_stakes:1", "Yes or No"}}},
		{"number out of range and unknown", map[string]any{"item_quantity:2": -3, "item_optional:2": "perhaps", "tent_joins:1": "barn", "tent_at:1": "Front", "tent_count:1": 1000},
			[]saying{{"item_quantity:2", "too small"}, {"item_optional:2", "in the list"}, {"tent_joins:1", "not known"}, {"tent_count:1", "too large"}}},
	} {
		b, _ := filled(t, c)
		typed(b, tt.values)
		_, _, list := Read("garden.xlsx", b.Found(), c)
		if len(list) != len(tt.want) {
			t.Errorf("%s: %d problems, want %d:\n%v", tt.name, len(list), len(tt.want), list)
		}
		for _, want := range tt.want {
			if !told(list, b, want) {
				t.Errorf("%s: none at %s says %q:\n%v", tt.name, want.at, want.says, list)
			}
		}
	}
}

// told tells whether a problem of the list says it.
func told(list diag.List, b *sheet.Book, want saying) bool {
	p := find(b, want.at)
	for _, have := range list {
		if have.Pos.Cell == sheet.Ref(p.R1, p.C1) && strings.Contains(have.Message, want.says) {
			return true
		}
	}
	return false
}

// An address without an @ is read, with a word of doubt.
func TestEmail(t *testing.T) {
	data, list := change(t, "customer_email", sheet.FoundCell{Kind: sheet.FoundText, Text: "office at larkmere"})
	if list.Err() != nil || len(list) != 1 || !strings.Contains(list[0].Message, `Email: "office at larkmere" has no @`) || !strings.Contains(data, `email: "office at larkmere"`) {
		t.Errorf("%v\n%s", list, data)
	}
}

// What is typed where nothing reads it is told of, and nothing else is: not a
// name or price of the shop that was another when the form was made.
func TestStrays(t *testing.T) {
	c := demo(t)
	b, want := filled(t, c)
	f := b.Found()
	s := f.Sheet(SheetIntake)
	put := func(key string, right int, text string) string {
		p := find(b, key)
		for len(s.Rows[p.R1-1]) < p.C1+right {
			s.Rows[p.R1-1] = append(s.Rows[p.R1-1], sheet.FoundCell{})
		}
		s.Rows[p.R1-1][p.C1-1+right] = sheet.FoundCell{Kind: sheet.FoundText, Text: text}
		return sheet.Ref(p.R1, p.C1+right)
	}
	cells := []string{put("from", 3, "rain date the 27th"), put("window_crew:1", 5, "with Ash")}
	put("item_name:2", 1, "a word of last year")
	put("item_name:2", 3, "dozen")
	put("site_degree:1", 3, "Usual: another")
	data, _, list := Read("garden.xlsx", f, c)
	if string(data) != want || len(list) != 2 {
		t.Fatalf("%d problems, want 2: %v\n%s", len(list), list, data)
	}
	for i, p := range list {
		if !p.Warning || p.Code != NotRead || p.Pos.Cell != cells[i] {
			t.Errorf("%s, want a warning at %s", p, cells[i])
		}
	}
}

// A row below "More lines" says when its item is missing.
func TestMoreLines(t *testing.T) {
	c := demo(t)
	for _, tt := range []struct {
		column string
		right  int
		text   string
		says   string
	}{
		{"item_name", 1, "gold chairs", `item: no item is chosen although "gold chairs" stands beside it`},
		{"item_name", 0, "gold chairs", `item: "gold chairs" is not in the list`},
		{"item_note", 0, "gold chairs", "item: no item is named although the row is filled in"},
	} {
		b, _ := filled(t, c)
		names := b.Found().Names
		p := names["intake_"+tt.column]
		row := p.R2 - 1
		at(b, sheet.Place{Sheet: p.Sheet, Range: sheet.Range{R1: row, C1: p.C1 + tt.right}}).Value = tt.text
		_, _, list := Read("garden.xlsx", b.Found(), c)
		item := names["intake_item_name"]
		var about []string
		for _, p := range list {
			if p.Pos.Cell == sheet.Ref(row, item.C1) {
				about = append(about, p.Message)
			}
		}
		if len(about) != 1 || !strings.Contains(about[0], tt.says) || !strings.HasPrefix(about[0], "More lines, row ") {
			t.Errorf("%s: %q in\n%v", tt.text, about, list)
		}
	}
}

// The column What has the label of the cell, whatever else the message says.
func TestWhat(t *testing.T) {
	pos := diag.Pos{File: "x.xlsx", Sheet: SheetIntake, Cell: "C23"}
	list := diag.List{
		{Pos: pos, Message: labelled("Chair: white, quantity", "it is 3: wrong; 4 was expected")},
		{Pos: diag.Pos{File: "rates.yaml", Line: 3}, Message: "a shop's own: wrong"},
		{Pos: pos, Message: labelled("Email", "no @"), Warning: true},
	}
	f := (&sheet.Book{Sheets: []*sheet.Sheet{Corrections(list)}}).Found().Sheets[0]
	for i, want := range []string{"Chair, white, quantity|it is 3: wrong|4", "|a shop's own: wrong|", "Email|no @ (a warning only)|"} {
		if got := f.At(4+i, 2).Text + "|" + f.At(4+i, 3).Text + "|" + f.At(4+i, 4).Text; got != want {
			t.Errorf("line %d: %s, want %s", i, got, want)
		}
	}
}

// Every page of sides and items begins with the heads of the columns, and no
// extra line is parted from the others.
func TestPagesHaveHeads(t *testing.T) {
	b := Form(demo(t), made)
	s, names := b.Sheets[0], b.Found().Names
	for table, head := range map[string]string{"side_side": "Tent and side", "item_id": "Item"} {
		p, breaks := names["intake_"+table], 0
		for _, row := range s.Breaks {
			if row < p.R1 || row > p.R2 {
				continue
			}
			breaks++
			cells := s.Rows[row-1].Cells
			if cells[colLabel-1].Value != head || cells[colKey-1].Value != headsMark {
				t.Errorf("%s: row %d begins a page with %v", table, row, cells)
			}
		}
		if last := s.Breaks[len(s.Breaks)-1]; table == "item_id" && last <= p.R2 && last >= p.R2-extraLines {
			t.Errorf("row %d parts the extra lines", last)
		}
		if breaks == 0 {
			t.Errorf("%s: no page ends in it", table)
		}
	}
}
