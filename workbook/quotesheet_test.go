package workbook

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/quote"
	"tentwright/quote/job"
	office "tentwright/workbook/internal/calc"
	"tentwright/workbook/sheet"
	"tentwright/workbook/xlsx"
)

// gardenJob has lines in several sections, extras of several tax classes, a
// loading, a discount, a payment and words that must stay in the office.
const gardenJob = `
number: F-0217
revision: 2
customer: {name: Alderbrook Players, contact: Robin Vale, address: [3 Weir Street, Larkmere], phone: 555-0101, email: players@alderbrook.example, class: repeat}
event: {name: Midsummer gala, guests: 180, address: ["Old Orchard, Weir Lane", Larkmere], tax_place: county-larkmere, site_contact: "Sam Alder, 555-0102"}
dates: {quoted: 2027-03-01, deliver: 2027-06-17, event_from: 2027-06-19, event_to: 2027-06-20, strike: 2027-06-21, collect: 2027-06-21}
tents:
  - {id: dinner, family: hip, size: 40x80, name: Dinner tent, sides: [{side: back, wall: solid}, {side: left, wall: window, doors: [double]}]}
items:
  - {item: chair-padded, quantity: 180}
  - {item: table-round-60, quantity: 23, discount: 4}
  - {item: dance-kit-16, quantity: 1}
  - {item: string-light, quantity: 12}
  - {item: exit-sign, quantity: 2}
  - {item: extinguisher, quantity: 2}
  - {item: up-light, quantity: 8, optional: true}
  - {item: propane-20, quantity: 2, optional: true, chosen: true}
  - {item: lectern, quantity: 1, optional: true, note: desk-only-remark}
  - {item: permit, quantity: 1, optional: true}
delivery: {distance: 14 mi, loadings: [saturday]}
discount: {percent: 3, reason: keeps-the-gala-here}
payments: [{date: 2027-03-03, amount: 500, note: counter-slip-77}]
notes: Please keep the orchard gate open on the day of delivery.
office_notes: margin is thin, do not lower it
`

// makeQuote quotes a job of the demonstration shop, its text changed first by
// pairs of old and new words.
func makeQuote(t testing.TB, text string, changes ...string) *quote.Quote {
	t.Helper()
	c, list := catalog.Load("demo", catalog.Demo())
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	changed := strings.NewReplacer(changes...).Replace(text)
	if len(changes) > 0 && changed == text {
		t.Fatalf("nothing to change of %q", changes)
	}
	j, list := job.Read("job.yaml", []byte(changed))
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	q, list := quote.Build(c, j)
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	return q
}

// save writes a book to a file of the test's own folder.
func save(t testing.TB, dir, name string, b *sheet.Book) string {
	t.Helper()
	var data bytes.Buffer
	if err := xlsx.Write(&data, b); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(dir, name)
	if err := os.WriteFile(file, data.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	return file
}

// same recalculates the files and fails where a stored figure is not the
// computed one.
func same(t *testing.T, files ...string) {
	t.Helper()
	office.Need(t)
	out := t.TempDir()
	if err := office.Recalculate(context.Background(), files, out); err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		list, count, err := office.Compare(file, filepath.Join(out, filepath.Base(file)))
		if err != nil {
			t.Fatal(err)
		}
		if count == 0 {
			t.Errorf("%s: no formulas", filepath.Base(file))
		}
		for _, d := range list {
			t.Errorf("%s: %s", filepath.Base(file), d)
		}
	}
}

// cellText is the text of a cell on the Quote sheet, or empty.
func cellText(s *sheet.Sheet, row, col int) string {
	if row > len(s.Rows) || col > len(s.Rows[row-1].Cells) {
		return ""
	}
	words, _ := s.Rows[row-1].Cells[col-1].Value.(string)
	return words
}

// rowOf is the row with some words in a column, from 1; 0 if there is none.
func rowOf(s *sheet.Sheet, col int, words string) int {
	for row := 1; row <= len(s.Rows); row++ {
		if cellText(s, row, col) == words {
			return row
		}
	}
	return 0
}

func sheetOf(t testing.TB, b *sheet.Book, name string) *sheet.Sheet {
	t.Helper()
	for _, s := range b.Sheets {
		if s.Name == name {
			return s
		}
	}
	t.Fatalf("no sheet %q", name)
	return nil
}

func TestNumberLines(t *testing.T) {
	l := newLayout(makeQuote(t, gardenJob))
	last, extras := 0, false
	for _, pass := range []bool{false, true} {
		for _, section := range l.sections() {
			for _, line := range l.linesOf(section, pass) {
				if got := l.keys[line.Key]; got != last+1 {
					t.Errorf("%s has number %d; want %d", line.Key, got, last+1)
				}
				last, extras = last+1, pass
			}
		}
	}
	if last != len(l.q.Parts.Orders) || !extras {
		t.Errorf("%d lines numbered; want all %d orders, the extras last", last, len(l.q.Parts.Orders))
	}
	if first := l.sections()[0]; first != "Tents" {
		t.Errorf("first section is %q; want Tents", first)
	}
}

// Terms and payment texts come with lines broken by hand.
func TestParagraphs(t *testing.T) {
	p := &quotePage{s: &sheet.Sheet{}}
	p.paragraphs("1. One\n   goes on\n\n2. Two\n", sheet.Style{Role: sheet.Faint})
	var got []string
	for i := range p.s.Rows {
		got = append(got, cellText(p.s, i+1, 1))
	}
	if want := "1. One goes on|2. Two"; strings.Join(got, "|") != want {
		t.Errorf("got %q; want %q", got, want)
	}
}

// The office's sheet shows what the customer's does, in every way of showing
// prices, and its stored figures are what its formulas give.
func TestQuoteSheetFigures(t *testing.T) {
	dir := t.TempDir()
	var files []string
	for _, show := range []string{"line", "section", "total"} {
		q := makeQuote(t, gardenJob, "number:", "show_prices: "+show+"\nnumber:")
		own, inner := Customer(q).Sheets[0], sheetOf(t, Layout(q), SheetQuote)
		for _, words := range []string{"Subtotal", "Total", openWords} {
			a, b := rowOf(own, quoteCount, words), rowOf(inner, quoteCount, words)
			if a == 0 || b == 0 {
				t.Errorf("%s: %q in rows %d and %d; want it in both", show, words, a, b)
			}
		}
		files = append(files, save(t, dir, show+".xlsx", Layout(q)))
	}
	same(t, files...)
}

// A block of totals is never torn, however many lines stand before it.
func TestTotalsStayTogether(t *testing.T) {
	for lines := range 40 {
		more := "items:\n" + strings.Repeat("  - {item: cord, quantity: 1}\n", lines+1)
		s := Customer(makeQuote(t, gardenJob, "items:\n", more)).Sheets[0]
		from := rowOf(s, quoteCount, listedWords)
		to := rowOf(s, quoteCount, openWords)
		if from == 0 || to < from {
			t.Fatalf("%d lines: totals in rows %d to %d", lines, from, to)
		}
		for _, b := range s.Breaks {
			if b > from && b <= to {
				t.Errorf("%d lines: page break before row %d, between rows %d and %d of the totals", lines, b, from, to)
			}
		}
	}
}

// The extras' columns end one row below the last one, so that a row added
// there is still found.
func TestExtraNames(t *testing.T) {
	l := newLayout(makeQuote(t, gardenJob))
	l.quoteSheet()
	names := map[string]string{}
	for _, n := range l.book.Names {
		names[n.Name] = n.Refers
	}
	first, last := 0, 0
	for row := range l.book.Sheets[0].Rows {
		if words := cellText(l.book.Sheets[0], row+1, quoteChoice); words == "Yes" || words == "No" {
			if first == 0 {
				first = row + 1
			}
			last = row + 1
		}
	}
	for name, col := range map[string]int{"extra_no": quoteNo, "extra_choice": quoteChoice} {
		if want := (sheet.Range{R1: first, C1: col, R2: last + 1, C2: col}).Abs(SheetQuote); names[name] != want {
			t.Errorf("%s refers to %q; want %q", name, names[name], want)
		}
	}
	if none := newLayout(makeQuote(t, gardenJob, "optional: true, chosen: true", "discount: 0", "optional: true, ", "", "optional: true", "discount: 0")); len(none.extraLines()) > 0 {
		t.Fatal("job still has extras")
	} else {
		none.quoteSheet()
		for _, n := range none.book.Names {
			if strings.HasPrefix(n.Name, "extra_") {
				t.Errorf("name %q without extras; want none", n.Name)
			}
		}
	}
}
