package revise_test

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"tentwright/catalog/diag"
	"tentwright/catalog/money"
	"tentwright/quote"
	"tentwright/workbook"
	"tentwright/workbook/internal/calc"
	"tentwright/workbook/revise"
	"tentwright/workbook/sheet"
	"tentwright/workbook/xlsx"
)

// file writes a book into a folder of the test.
func file(t testing.TB, name string, b *sheet.Book) string {
	t.Helper()
	var out bytes.Buffer
	if err := xlsx.Write(&out, b); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, out.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// reopen reads a quote workbook from its file.
func reopen(t testing.TB, path string) *revise.Book {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	found, err := xlsx.Read(path, data)
	if err != nil {
		t.Fatal(err)
	}
	b, list := revise.Open(path, found)
	if b == nil {
		t.Fatal(list)
	}
	return b
}

// typing is what people type into a written file, by the table's key.
type typing struct {
	t     testing.TB
	found *sheet.Found
	edits []calc.Edit
}

// in types into the column of a table in the row of a key.
func (x *typing) in(table, keys, key, column string, v any) {
	x.t.Helper()
	at, ok := x.found.Names[table+"_"+keys]
	to, ok2 := x.found.Names[table+"_"+column]
	if !ok || !ok2 {
		x.t.Fatalf("no names %s_%s, %s_%s", table, keys, table, column)
	}
	for row := at.R1; row <= at.R2; row++ {
		if x.found.Sheet(at.Sheet).At(row, at.C1).Text == key {
			x.edits = append(x.edits, calc.Edit{Sheet: to.Sheet, Ref: sheet.Ref(row, to.C1), Value: v})
			return
		}
	}
	x.t.Fatalf("no row %q in %s", key, table)
}

// cell types into a cell of a name, counted down from its first.
func (x *typing) cell(name string, index int, v any) {
	x.t.Helper()
	p, ok := x.found.Names[name]
	if !ok {
		x.t.Fatalf("no name %s", name)
	}
	x.edits = append(x.edits, calc.Edit{Sheet: p.Sheet, Ref: sheet.Ref(p.R1+index, p.C1), Value: v})
}

// into writes the edited copy of a file.
func (x *typing) into(path string) string {
	x.t.Helper()
	out := strings.TrimSuffix(path, ".xlsx") + "-typed.xlsx"
	if err := calc.EditCells(path, out, x.edits); err != nil {
		x.t.Fatal(err)
	}
	return out
}

// lot is a line of the check-in that the tests choose: one of which several go
// out and a piece has a price.
func lots(q *quote.Quote, many int) []workbook.CheckInLine {
	var list []workbook.CheckInLine
	for _, line := range workbook.CheckIn(q) {
		if p := line.Part; !p.Tracked && p.Replacement != nil && q.Parts.Find(p.ID).Total() >= 6 {
			list = append(list, line)
		}
	}
	return list[:many]
}

// figureAt is the figure of a named cell in a recalculated file.
func figureAt(t testing.TB, cells map[string]map[string]calc.Cell, b *sheet.Book, name string) string {
	t.Helper()
	p, ok := b.Found().Names[name]
	if !ok {
		t.Fatalf("no name %s", name)
	}
	c := cells[p.Sheet][sheet.Ref(p.R1, p.C1)]
	return money.Round(money.Float(c.Number), 2).StringFixed(2)
}

// recalculated is the file as another program computes it.
func recalculated(t testing.TB, path string) map[string]map[string]calc.Cell {
	t.Helper()
	out := t.TempDir()
	if err := calc.Recalculate(t.Context(), []string{path}, out); err != nil {
		t.Fatal(err)
	}
	again := filepath.Join(out, filepath.Base(path))
	cells, err := calc.ReadCells(again)
	if err != nil {
		t.Fatal(err)
	}
	return cells
}

// allTrue holds every formula of a file against another program.
func allTrue(t testing.TB, path string) {
	t.Helper()
	out := t.TempDir()
	if err := calc.Recalculate(t.Context(), []string{path}, out); err != nil {
		t.Fatal(err)
	}
	diffs, count, err := calc.Compare(path, filepath.Join(out, filepath.Base(path)))
	if err != nil || count == 0 {
		t.Fatal(count, err)
	}
	for _, d := range diffs {
		t.Error(d)
	}
}

// checkedIn is the check-in of four lots: three pieces missing; two damaged; all
// back, but wet; four loaded by count, three back, one of them broken, at a price
// of its own. A payment came in.
func checkedIn(t testing.TB, q *quote.Quote, book *sheet.Book, lots []workbook.CheckInLine) *typing {
	total := func(n int) int { return q.Parts.Find(lots[n].Part.ID).Total() }
	x := &typing{t: t, found: book.Found()}
	back := func(n, counted int) { x.in("return", "key", lots[n].Key, "counted", counted) }
	back(0, total(0)-3)
	back(1, total(1))
	x.in("return", "key", lots[1].Key, "damaged", 2)
	x.in("return", "key", lots[1].Key, "note", "=1+1")
	back(2, total(2))
	x.in("return", "key", lots[2].Key, "wet", "Yes")
	x.in("pick", "part", lots[3].Part.ID, "loaded", 4)
	back(3, 3)
	x.in("return", "key", lots[3].Key, "damaged", 1)
	x.in("return", "key", lots[3].Key, "each", 12.35)
	x.cell("payments_amount", 3, 250.5)
	x.cell("payments_date", 3, "2026-10-14")
	return x
}

// A check-in that was filled in gives the charges that a hand calculation gives,
// in the program and in the workbook as another program computes it.
func TestCloseoutCharges(t *testing.T) {
	q := demoQuote(t, "dinner")
	book := workbook.Layout(q)
	path := file(t, "dinner.xlsx", book)
	lots := lots(q, 5)
	x := checkedIn(t, q, book, lots)
	task := q.Labour.Tasks[0]
	hours := task.Hours.Add(money.Float(2.5))
	x.in("task", "key", task.Key, "actual", hours.InexactFloat64())

	b := reopen(t, x.into(path))
	c, list := b.Closeout()
	if c == nil {
		t.Fatal(list)
	}
	// Reckoned in cents by hand, whole pieces times the price of the shop.
	cents := func(n int) int64 { return lots[n].Part.Replacement.Shift(2).IntPart() }
	charge := 3*cents(0) + 2*cents(1) + 1235 + 1235
	want := q.Price.Total.Shift(2).IntPart() + charge - q.Price.Received.Shift(2).IntPart() - 25050
	layout := workbook.LayoutClosing(c.Quote, &c.Closing)
	if got := c.Replacements(q.Price.Currency).Shift(2).IntPart(); got != charge {
		t.Errorf("replacements of %d cents, want %d", got, charge)
	}
	if n := len(lots) - 1; c.Uncounted() != countOut(q)-n {
		t.Errorf("%d lines not counted, want %d", c.Uncounted(), countOut(q)-n)
	}
	calc.Need(t)
	out := file(t, "closeout.xlsx", layout)
	cells := recalculated(t, out)
	allTrue(t, out)
	cash := func(cents int64) string {
		return money.DivRound(money.Int(int(cents)), money.Hundred, 2).StringFixed(2)
	}
	for name, v := range map[string]int64{"closing_replacements": charge, "closing_balance": want, "closing_received": q.Price.Received.Shift(2).IntPart() + 25050} {
		if got := figureAt(t, cells, layout, name); got != cash(v) {
			t.Errorf("%s is %s, want %s", name, got, cash(v))
		}
	}
	if got := figureAt(t, cells, layout, "closing_beyond_hours"); got != "2.50" {
		t.Errorf("%s hours beyond the quote, want 2.50", got)
	}

	// What the office decides: the first damaged line waived, the hours charged,
	// a tax typed.
	y := typing{t: t, found: layout.Found()}
	y.in("final", "key", lots[1].Key+":damaged", "waived", "Yes")
	y.cell("closing_charge_hours", 0, "Yes")
	y.cell("closing_typed_tax", 0, 10.01)
	bill := int64(0)
	for _, k := range q.Catalog.Rates.Skills {
		if k.ID == task.Rule.Skill {
			bill = k.Bill.Shift(2).IntPart()
		}
	}
	want += bill*25/10 + 1001 - 2*cents(1)
	if got := figureAt(t, recalculated(t, y.into(out)), layout, "closing_balance"); got != cash(want) {
		t.Errorf("after the choices the balance is %s, want %s", got, cash(want))
	}
}

// countOut is how many lines of the check-in have something out.
func countOut(q *quote.Quote) int {
	n := 0
	for _, line := range workbook.CheckIn(q) {
		if line.Part.Tracked || q.Parts.Find(line.Part.ID).Total() > 0 {
			n++
		}
	}
	return n
}

// Counts that cannot be are told with their cells, and nothing is guessed.
func TestCloseoutFaults(t *testing.T) {
	q := demoQuote(t, "garden")
	lot := lots(q, 1)[0]
	total := q.Parts.Find(lot.Part.ID).Total()
	for _, x := range []struct {
		name    string
		typed   map[string]any
		code    string
		column  string
		warning bool
	}{
		{"text", map[string]any{"counted": "all"}, revise.Unreadable, "counted", false},
		{"negative", map[string]any{"counted": -1}, revise.Unreadable, "counted", false},
		{"half a piece", map[string]any{"counted": 1.5}, revise.Unreadable, "counted", false},
		{"more damaged than back", map[string]any{"counted": 1, "damaged": 2}, revise.DamagedBeyond, "damaged", false},
		{"damaged of none counted", map[string]any{"damaged": 1}, revise.NotCounted, "damaged", false},
		{"more back than out", map[string]any{"counted": total + 1}, revise.TooManyBack, "counted", true},
		{"wet perhaps", map[string]any{"counted": 1, "wet": "perhaps"}, revise.Unreadable, "wet", false},
	} {
		t.Run(x.name, func(t *testing.T) {
			f := workbook.Layout(q).Found()
			place := func(column string) sheet.Place {
				key, p := f.Names["return_key"], f.Names["return_"+column]
				for p.R1 = key.R1; f.Sheet(key.Sheet).At(p.R1, key.C1).Text != lot.Key; p.R1++ {
				}
				return p
			}
			for column, v := range x.typed {
				p, cell := place(column), sheet.FoundCell{}
				switch v := v.(type) {
				case string:
					cell = txt(v)
				case int:
					cell = num(float64(v))
				case float64:
					cell = num(v)
				}
				f.Sheet(p.Sheet).Rows[p.R1-1][p.C1-1] = cell
			}
			b, list := revise.Open("garden.xlsx", f)
			if b == nil {
				t.Fatal(list)
			}
			c, list := b.Closeout()
			p := place(x.column)
			i := slices.IndexFunc(list, func(d diag.Problem) bool { return d.Code == x.code })
			if i < 0 || list[i].Warning != x.warning || list[i].Pos.Cell != sheet.Ref(p.R1, p.C1) || list[i].Pos.Sheet != p.Sheet {
				t.Errorf("%v; %s at %s!%s was expected", list, x.code, p.Sheet, sheet.Ref(p.R1, p.C1))
			}
			if x.warning != (c != nil) {
				t.Errorf("closed: %t", c != nil)
			}
		})
	}
}
