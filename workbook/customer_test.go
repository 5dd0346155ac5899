package workbook

import (
	"context"
	"math"
	"path/filepath"
	"testing"

	"tentwright/catalog/money"
	"tentwright/quote"
	"tentwright/quote/price"
	office "tentwright/workbook/internal/calc"
	"tentwright/workbook/sheet"

	"pgregory.net/rapid"
)

// Only the choices and the cells to sign in may be typed into.
func TestCustomerInputs(t *testing.T) {
	q := makeQuote(t, gardenJob)
	b := Customer(q)
	if len(b.Names) > 0 || b.Subject != "" || len(b.Sheets) != 1 {
		t.Errorf("names %v, subject %q, %d sheets; want none, none, 1", b.Names, b.Subject, len(b.Sheets))
	}
	s := b.Sheets[0]
	sign := rowOf(s, 1, acceptWords)
	choices := 0
	for row := range s.Rows {
		for col := range s.Rows[row].Cells {
			if s.Rows[row].Cells[col].Style.Role.Locked() {
				continue
			}
			if words := cellText(s, row+1, col+1); words == "Yes" || words == "No" {
				choices++
			} else if row+1 < sign {
				t.Errorf("%s can be typed into", sheet.Ref(row+1, col+1))
			}
		}
	}
	if choices != 4 {
		t.Errorf("%d choices; want 4", choices)
	}
}

// The customer's own formulas give what a new quote of the same choice gives,
// where no hours and no trips hang on it: labour is within the prices here.
func TestCustomerChoice(t *testing.T) {
	office.Need(t)
	dir := t.TempDir()
	type flip struct {
		page *sheet.Sheet
		want *quote.Quote
	}
	flips := map[string]flip{}
	var files []string
	for _, show := range []string{"line", "section", "total"} {
		for item, answer := range map[string]string{"permit": "Yes", "lectern": "Yes", "propane-20": "No"} {
			mode := []string{"number:", "labour: {charge: included}\nshow_prices: " + show + "\nnumber:"}
			q := makeQuote(t, gardenJob, mode...)
			chosen := []string{"{item: " + item + ", quantity: 1, optional: true", "{item: " + item + ", quantity: 1, optional: true, chosen: true"}
			if answer == "No" {
				chosen = []string{"optional: true, chosen: true", "optional: true"}
			}
			b := Customer(q)
			name := show + "-" + item + ".xlsx"
			files = append(files, answerExtra(t, dir, name, b, q.Catalog.Item(item).Name, answer))
			flips[name] = flip{b.Sheets[0], makeQuote(t, gardenJob, append(mode, chosen...)...)}
		}
	}
	out := filepath.Join(dir, "out")
	if err := office.Recalculate(context.Background(), files, out); err != nil {
		t.Fatal(err)
	}
	for name, f := range flips {
		compareTotals(t, name, readAmounts(t, filepath.Join(out, name), f.page), f.want)
	}
}

// answerExtra saves the book and answers one extra in the file.
func answerExtra(t *testing.T, dir, name string, b *sheet.Book, item, answer string) string {
	t.Helper()
	plain := save(t, dir, "plain-"+name, b)
	edited := filepath.Join(dir, name)
	row := rowOf(b.Sheets[0], quoteName, item)
	edit := office.Edit{Sheet: SheetQuote, Ref: sheet.Ref(row, quoteChoice), Value: answer}
	if err := office.EditCells(plain, edited, []office.Edit{edit}); err != nil {
		t.Fatal(err)
	}
	return edited
}

// readAmounts reads the amounts of a file by the words of their rows.
func readAmounts(t *testing.T, file string, page *sheet.Sheet) map[string]float64 {
	t.Helper()
	cells, err := office.ReadCells(file)
	if err != nil {
		t.Fatal(err)
	}
	got := map[string]float64{}
	for row := 1; row <= len(page.Rows); row++ {
		amount := cells[SheetQuote][sheet.Ref(row, quoteAmount)]
		if large := cells[SheetQuote][sheet.Ref(row, quoteMark)]; large.Kind == office.Number {
			amount = large // the grand total takes two columns
		}
		if words := cellText(page, row, quoteCount); words != "" && amount.HasValue {
			got[words] = amount.Number
		}
	}
	return got
}

func compareTotals(t *testing.T, name string, got map[string]float64, want *quote.Quote) {
	t.Helper()
	r := want.Price
	p := &quotePage{l: newLayout(want)}
	figures := map[string]money.Number{"Subtotal": r.Subtotal, "Total": r.Total, p.depositLabel(): r.Deposit,
		p.balanceLabel(): r.Balance, receivedWords: r.Received, openWords: r.Due}
	if off := p.l.takenOff(func(*price.Line) bool { return true }); !off.IsZero() {
		figures[discountWords] = off
	}
	for i := range r.Taxes {
		figures[p.taxLabel(&r.Taxes[i])] = r.Taxes[i].Amount
	}
	for words, v := range figures {
		have, ok := got[words]
		if !ok || math.Abs(have-float(v)) > 1e-6 {
			t.Errorf("%s: %s is %v (found %v); a new quote has %s", name, words, have, ok, v)
		}
	}
}

// The stored figures of the customer's file are what its formulas give, for
// every way of showing prices and for an order below the minimum.
func TestCustomerFigures(t *testing.T) {
	dir := t.TempDir()
	var files []string
	for _, show := range []string{"line", "section", "total"} {
		q := makeQuote(t, gardenJob, "number:", "show_prices: "+show+"\nnumber:")
		files = append(files, save(t, dir, show+".xlsx", Customer(q)))
	}
	exempt := makeQuote(t, gardenJob, "class: repeat", "class: civic, tax_exempt: true")
	small := makeQuote(t, smallJob)
	if small.Price.Find("M:minimum").Amount.IsZero() {
		t.Error("the small job is not below the minimum order")
	}
	files = append(files, save(t, dir, "exempt.xlsx", Customer(exempt)), save(t, dir, "small.xlsx", Customer(small)))
	same(t, files...)
}

// What a percentage falls on can be cut in a part of whole coins and a small rest
// without any change of the rounded sum, whatever is added to it.
func TestShareRoundsAlike(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		minor := rapid.IntRange(0, 3).Draw(t, "minor")
		coins := func(what string) money.Number {
			return money.Int(rapid.IntRange(0, 10_000_000).Draw(t, what)).Shift(int32(-minor))
		}
		currency := money.Currency{Minor: minor}
		p := &quotePage{l: &layout{q: &quote.Quote{Price: &price.Result{Currency: currency}}}}
		percent := money.Int(rapid.IntRange(0, 300_000).Draw(t, "percent")).Shift(int32(-rapid.IntRange(0, 4).Draw(t, "places")))
		base, extra := coins("base"), coins("extra")

		c := p.share(charge{base, []string{"E"}}, percent)
		rest := base.Mod(wholeStep(percent, minor))
		if want := "ROUND((" + (charge{rest, []string{"E"}}).formula() + ")*" + percent.String() + "/100," + itoa(minor) + ")"; c.moving[0] != want {
			t.Fatalf("formula %q; want %q", c.moving[0], want)
		}
		got := c.fixed.Add(currency.Round(rest.Add(extra).Mul(money.Percent(percent))))
		if want := currency.Round(base.Add(extra).Mul(money.Percent(percent))); !got.Equal(want) {
			t.Errorf("%s %% of %s and %s is %s in parts; want %s", percent, base, extra, got, want)
		}
		if !c.fixed.Equal(currency.Round(c.fixed)) {
			t.Errorf("the fixed part %s is not in whole coins", c.fixed)
		}
	})
}

func TestWholeStep(t *testing.T) {
	// 5.5 % of 2.00 is 0.11; 9 % of 1.00 is 0.09; 25 % of 0.04 is 0.01.
	for percent, want := range map[string]string{"5.5": "2", "9": "1", "25": "0.04", "100": "0.01", "0": "0.01", "8.3333": "10000"} {
		n, err := money.Parse(percent)
		if err != nil {
			t.Fatal(err)
		}
		if got := wholeStep(n, 2); got.String() != want {
			t.Errorf("%s %%: %s; want %s", percent, got, want)
		}
	}
}

// What is taken off a line stands behind its name; what is taken off the whole,
// in one sum. Where only totals show, the lines are silent.
func TestCustomerSeesDiscounts(t *testing.T) {
	const off = ", less 5 % for the quantity, less 4 %" // for 23 tables, and by hand
	for show, want := range map[string]string{"line": off, "section": off, "total": ""} {
		q := makeQuote(t, gardenJob, "number:", "show_prices: "+show+"\nnumber:")
		name := q.Catalog.Item("table-round-60").Name
		for _, s := range []*sheet.Sheet{Customer(q).Sheets[0], sheetOf(t, Layout(q), SheetQuote)} {
			if rowOf(s, quoteName, name+want) == 0 {
				t.Errorf("%s: no line %q", show, name+want)
			}
			if rowOf(s, quoteCount, discountWords) == 0 {
				t.Errorf("%s: no row %q", show, discountWords)
			}
		}
	}
	plain := makeQuote(t, smallJob)
	for _, s := range []*sheet.Sheet{Customer(plain).Sheets[0], sheetOf(t, Layout(plain), SheetQuote)} {
		if rowOf(s, quoteCount, discountWords) > 0 {
			t.Errorf("row %q without any discount", discountWords)
		}
	}
}

// smallJob is collected by the customer and worth less than the minimum order.
const smallJob = `
number: F-0218
customer: {name: Weir Street School}
event: {name: Prize day, tax_place: county-larkmere}
dates: {quoted: 2027-06-10, deliver: 2027-06-12, event_from: 2027-06-12, event_to: 2027-06-12, strike: 2027-06-13, collect: 2027-06-13}
items:
  - {item: lectern, quantity: 1}
  - {item: up-light, quantity: 1, optional: true}
delivery: {distance: 2 mi, free: true}
labour: {charge: included}
`
