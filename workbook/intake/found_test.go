package intake

import (
	"bytes"
	"maps"
	"slices"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/quote/job"
	"tentwright/workbook/sheet"
	"tentwright/workbook/xlsx"
)

// filled is the garden party in a form, and its job file.
func filled(t testing.TB, c *catalog.Catalog) (*sheet.Book, string) {
	t.Helper()
	j, ok := canon(c, jobOf(t, c, "garden.yaml"))
	if !ok {
		t.Fatal("the form has no room for it")
	}
	return fill(c, j), string(job.Write(j))
}

// insert puts an empty row before a row of a sheet, as programs do: names below
// move down, names across it grow.
func insert(f *sheet.Found, on string, row int) {
	s := f.Sheet(on)
	s.Rows = slices.Insert(s.Rows, row-1, []sheet.FoundCell(nil))
	moved := func(n int) int {
		if n >= row {
			return n + 1
		}
		return n
	}
	for i := range s.Merges {
		s.Merges[i].R1, s.Merges[i].R2 = moved(s.Merges[i].R1), moved(s.Merges[i].R2)
	}
	for name, p := range f.Names {
		if p.Sheet == on {
			p.R1, p.R2 = moved(p.R1), moved(p.R2)
			f.Names[name] = p
		}
	}
}

// A form is read the same after it went through a file.
func TestThroughAFile(t *testing.T) {
	c := demo(t)
	b, want := filled(t, c)
	var out bytes.Buffer
	if err := xlsx.Write(&out, b); err != nil {
		t.Fatal(err)
	}
	f, err := xlsx.Read("garden.xlsx", out.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	data, _, list := Read("garden.xlsx", f, c)
	if list.Err() != nil || string(data) != want {
		t.Errorf("%v\n%s\nwant\n%s", list.Err(), data, want)
	}
	// What a book says of itself is what its file holds.
	own := b.Found()
	if !maps.Equal(own.Names, f.Names) {
		t.Error("the names differ")
	}
	for i, s := range own.Sheets {
		for r := range s.Rows {
			for n := range s.Rows[r] {
				have, want := f.Sheets[i].At(r+1, n+1), s.Rows[r][n]
				if have.Kind != want.Kind || have.Number != want.Number || have.Day != want.Day || shown(have) != shown(want) {
					t.Errorf("%s!%s: the file has %+v, the book %+v", s.Name, sheet.Ref(r+1, n+1), have, want)
				}
			}
		}
	}
}

// Rows may be inserted anywhere, and sheets renamed and sorted.
func TestMovedAndRenamed(t *testing.T) {
	c := demo(t)
	b, want := filled(t, c)
	last := len(b.Sheets[0].Rows)
	for row := 1; row <= last; row += 7 {
		f := b.Found()
		insert(f, SheetIntake, row)
		insert(f, SheetIntake, last)
		for name, p := range f.Names {
			if p.Sheet == SheetIntake {
				p.Sheet = "What they want"
				f.Names[name] = p
			}
		}
		f.Sheet(SheetIntake).Name = "What they want"
		slices.Reverse(f.Sheets)
		if data, _, list := Read("garden.xlsx", f, c); list.Err() != nil || string(data) != want {
			t.Fatalf("row %d: %v\n%s", row, list.Err(), data)
		}
	}
}

// change puts a value into a cell of a found form and reads it.
func change(t *testing.T, key string, to sheet.FoundCell) (string, diag.List) {
	t.Helper()
	c := demo(t)
	b, _ := filled(t, c)
	f, p := b.Found(), find(b, key)
	f.Sheet(p.Sheet).Rows[p.R1-1][p.C1-1] = to
	data, _, list := Read("garden.xlsx", f, c)
	return string(data), list
}

// What people type in another form is read where it can mean only one thing.
func TestTyped(t *testing.T) {
	text := func(s string) sheet.FoundCell { return sheet.FoundCell{Kind: sheet.FoundText, Text: s} }
	number := func(x float64) sheet.FoundCell { return sheet.FoundCell{Kind: sheet.FoundNumber, Number: x, Text: "x"} }
	for _, tt := range []struct {
		key  string
		cell sheet.FoundCell
		want string
	}{
		{"customer_phone", number(5550177), "phone: \"5550177\""},
		{"number", number(2026044), "number: \"2026044\""},
		{"event_guests", text(" 120 "), "guests: 120\n"},
		{"distance", number(12), "distance: 12 mi\n"},
		{"distance", text("12"), "distance: 12 mi\n"},
		{"distance", text("12 mi"), "distance: 12 mi\n"},
		{"distance", text("20 km"), "distance: 20 km\n"},
		{"deliver", text("2026-06-18"), "deliver: 2026-06-18\n"},
		{"deliver", number(46191), "deliver: 2026-06-18\n"}, // from memory: 46023 is 1 January 2026
		{"tent_eave:1", text("7 ft"), "leg: 7 ft\n"},
		{"tent_eave:1", number(7), "leg: 7 ft\n"},
		{"tent_family:1", text("hip-frame TENT"), "family: hip\n"},
		{"tent_family:1", text("hip"), "family: hip\n"},
		{"customer_exempt", sheet.FoundCell{Kind: sheet.FoundBool, Number: 1, Text: "TRUE"}, "tax_exempt: yes\n"},
		{"customer_exempt", sheet.FoundCell{Kind: sheet.FoundBool, Number: 0}, "customer:"},
		{"event_guests", number(119.99999999999999), "guests: 120\n"},
		{"discount", number(3.3000000000000003), "percent: 3.3\n"},
		{"customer_exempt", text("y"), ""},
		{"discount", number(12.5), "percent: 12.5\n"},
		{"item_quantity:2", sheet.FoundCell{Kind: sheet.FoundNumber, Number: 3, Text: "3", Formula: "1+2"}, "item: door-zip\n    quantity: 3\n"},
	} {
		data, list := change(t, tt.key, tt.cell)
		if (tt.want == "") != (list.Err() != nil) || !strings.Contains(data, tt.want) {
			t.Errorf("%s %q: %v\nwant %q in\n%s", tt.key, tt.cell.Text, list.Err(), tt.want, data)
		}
	}
}

// A percentage below one is read as it stands, with a word of doubt.
func TestPartOfAPercent(t *testing.T) {
	data, list := change(t, "discount", sheet.FoundCell{Kind: sheet.FoundNumber, Number: 0.2, Text: "0.2"})
	if list.Err() != nil || len(list) != 1 || !list[0].Warning || !strings.Contains(data, "percent: 0.2\n") {
		t.Errorf("%v\n%s", list, data)
	}
}

// With its sign, 20% means twenty, though the sheet keeps 0.2.
func TestPercentWithItsSign(t *testing.T) {
	data, list := change(t, "discount", sheet.FoundCell{Kind: sheet.FoundNumber, Number: 0.2, Text: "0.2", Percent: true})
	if len(list) > 0 || !strings.Contains(data, "percent: 20\n") {
		t.Errorf("%v\n%s", list, data)
	}
}

// Damage to the form itself is named too, all of it at once.
func TestDamage(t *testing.T) {
	c := demo(t)
	for _, tt := range []struct {
		name   string
		damage func(*sheet.Found, *sheet.Book)
		code   string
		says   string
	}{
		{"no form", func(f *sheet.Found, _ *sheet.Book) { delete(f.Names, formName) }, LostName, "is no intake form"},
		{"other version", func(f *sheet.Found, b *sheet.Book) {
			p := find(b, "form")
			f.Sheet(p.Sheet).Rows[p.R1-1][p.C1-1].Text = "intake form 9"
		}, OtherVersion, `it is "intake form 9"; "intake form 1" was expected`},
		{"cell gone", func(f *sheet.Found, _ *sheet.Book) { delete(f.Names, "intake_from") }, LostName, "the cell named intake_from is gone"},
		{"column gone", func(f *sheet.Found, _ *sheet.Book) { delete(f.Names, "intake_item_note") }, LostName, "intake_item_note is gone"},
		{"sheet gone", func(f *sheet.Found, _ *sheet.Book) {
			for name := range maps.Clone(f.Names) {
				if name != formName {
					f.Names[name] = sheet.Place{Sheet: "Gone", Range: f.Names[name].Range}
				}
			}
		}, LostName, "is gone"},
		{"merged", func(f *sheet.Found, b *sheet.Book) {
			p := find(b, "tent_size:1")
			f.Sheet(p.Sheet).Merges = append(f.Sheet(p.Sheet).Merges, sheet.Range{R1: p.R1, C1: p.C1 - 1, R2: p.R1, C2: p.C1})
		}, MergedCell, "tent 1, size: the cell is merged"},
		{"merged over a needed cell", func(f *sheet.Found, b *sheet.Book) {
			p := find(b, "from")
			s := f.Sheet(p.Sheet)
			s.Rows[p.R1-1][p.C1-1] = sheet.FoundCell{}
			s.Merges = append(s.Merges, sheet.Range{R1: p.R1 - 1, C1: p.C1, R2: p.R1, C2: p.C1})
		}, MergedCell, "Event from: the cell is merged"},
		{"error value", func(f *sheet.Found, b *sheet.Book) {
			p := find(b, "event_guests")
			f.Sheet(p.Sheet).Rows[p.R1-1][p.C1-1] = sheet.FoundCell{Kind: sheet.FoundError, Text: "#REF!"}
		}, ErrorCell, "Guests: the cell shows the error #REF!"},
		{"row without a number", func(f *sheet.Found, b *sheet.Book) {
			p := find(b, "tent_no:1")
			f.Sheet(p.Sheet).Rows[p.R1-1][p.C1-1] = sheet.FoundCell{}
		}, NoRow, "not which tent it is for"},
		{"row twice", func(f *sheet.Found, b *sheet.Book) {
			p := find(b, "tent_no:1")
			s := f.Sheet(p.Sheet)
			s.Rows[p.R1] = slices.Clone(s.Rows[p.R1-1])
		}, catalog.RepeatedID, `tent "1" has a row filled in already`},
	} {
		b, _ := filled(t, c)
		f := b.Found()
		tt.damage(f, b)
		_, j, list := Read("garden.xlsx", f, c)
		hit := slices.ContainsFunc(list, func(p diag.Problem) bool { return p.Code == tt.code && strings.Contains(p.Message, tt.says) })
		if j != nil || !hit {
			t.Errorf("%s: want [%s] with %q, got\n%v", tt.name, tt.code, tt.says, list.Err())
		}
	}
}

// All faults come at once, and the sheet of corrections has a line and a link
// for each.
func TestCorrections(t *testing.T) {
	c := demo(t)
	b, _ := filled(t, c)
	typed(b, map[string]any{"event_guests": "about 120", "from": "20.6.2026", "item_optional:2": "Yes", "tent_size:1": "60x90"})
	_, _, list := Read("garden.xlsx", b.Found(), c)
	if len(list) != 4 {
		t.Fatalf("%d faults, want 4: %v", len(list), list.Err())
	}
	s := Corrections(list)
	b.Sheets = append([]*sheet.Sheet{s}, b.Sheets...)
	if err := b.Check(); err != nil {
		t.Fatal(err)
	}
	if len(s.Links) != 4 {
		t.Errorf("%d links, want 4", len(s.Links))
	}
	found := b.Found().Sheets[0]
	if got := found.At(4, 1).Text + "|" + found.At(4, 2).Text + "|" + found.At(4, 3).Text + "|" + found.At(4, 4).Text; got != `Intake!C23|Guests|"about 120" is no number|a number such as 120` {
		t.Errorf("first line: %s", got)
	}
}

// No workbook makes the reader fail, whatever stands in its cells.
func FuzzRead(f *testing.F) {
	c := demo(f)
	b, _ := filled(f, c)
	names := sorted(b.Found().Names)
	f.Add(uint16(3), "x", 1.0, uint8(1))
	f.Add(uint16(40), "#REF!", -1e300, uint8(4))
	f.Fuzz(func(t *testing.T, n uint16, text string, number float64, kind uint8) {
		found := b.Found()
		p := found.Names[names[int(n)%len(names)]]
		s := found.Sheet(p.Sheet)
		for row := p.R1; row <= min(p.R2, len(s.Rows)); row++ {
			if p.C1 <= len(s.Rows[row-1]) {
				s.Rows[row-1][p.C1-1] = sheet.FoundCell{Kind: sheet.FoundKind(kind % 5), Text: text, Number: number}
			}
		}
		data, j, list := Read("x.xlsx", found, c)
		if (list.Err() == nil) != (j != nil && data != nil) {
			t.Fatalf("%v, job %v", list.Err(), j)
		}
	})
}
