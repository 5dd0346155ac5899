package workbook

import (
	"archive/zip"
	"context"
	"io"
	"math"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"tentwright/catalog/money"
	"tentwright/quote"
	office "tentwright/workbook/internal/calc"
	"tentwright/workbook/sheet"
)

// unzip gives the parts of a file by name.
func unzip(t testing.TB, file string) map[string]string {
	t.Helper()
	z, err := zip.OpenReader(file)
	if err != nil {
		t.Fatal(err)
	}
	defer z.Close()
	parts := map[string]string{}
	for _, f := range z.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		data, err := io.ReadAll(r)
		r.Close()
		if err != nil {
			t.Fatal(err)
		}
		parts[f.Name] = string(data)
	}
	return parts
}

// secrets lists what must not be in a customer's file: ids of the shop that
// are no plain words, names of the office's cells and sheets, its remarks.
func secrets(q *quote.Quote) []string {
	list := []string{"rate_", "build_", "job_", "total_", "extra_", "charge_", "tax_", "item_", SheetBuild, SheetRates, SheetCrew,
		SheetManifest, SheetPick, SheetReturn, SheetChecks, SheetPrices, SheetCounts, SheetParts,
		q.Job.Internal, q.Job.Discount.Reason, "desk-only-remark", "counter-slip-77", "margin", ">Margin", "overtime", "discount", "walk-in"}
	c := q.Catalog
	add := func(id string) {
		if strings.ContainsAny(id, "-_:.") {
			list = append(list, id)
		}
	}
	for i := range c.Items {
		add(c.Items[i].ID)
	}
	for i := range c.Parts {
		add(c.Parts[i].ID)
	}
	for i := range c.Rules {
		add(c.Rules[i].ID)
	}
	for i := range c.Labour {
		add(c.Labour[i].ID)
	}
	for i := range q.Price.Lines {
		list = append(list, ">"+q.Price.Lines[i].Key+"<")
	}
	return list
}

// figures lists numbers that only the office knows: costs and hourly rates.
func figures(q *quote.Quote) []money.Number {
	list := []money.Number{q.Price.Cost, q.Price.Margin, q.Price.Percent}
	for i := range q.Price.Lines {
		line := &q.Price.Lines[i]
		list = append(list, line.Cost, line.CostEach)
	}
	for i := range q.Catalog.Rates.Skills {
		list = append(list, q.Catalog.Rates.Skills[i].Bill, q.Catalog.Rates.Skills[i].Cost)
	}
	return list
}

var (
	shownNumber = regexp.MustCompile(`<v>(-?[0-9.E+-]+)</v>`)
	formulaText = regexp.MustCompile(`<f>([^<]*)</f>`)
	sharedCell  = regexp.MustCompile(`<c [^>]*t="s"[^>]*>.*?</c>`)
)

// Nothing of the office is in any part of the customer's file, not even
// hidden.
func TestCustomerFileIsClean(t *testing.T) {
	for _, show := range []string{"line", "section", "total"} {
		q := makeQuote(t, gardenJob, "number:", "show_prices: "+show+"\nnumber:")
		parts := unzip(t, save(t, t.TempDir(), "customer.xlsx", Customer(q)))
		sheets := 0
		for name, data := range parts {
			if strings.HasPrefix(name, "xl/worksheets/sheet") {
				sheets++
			}
			for _, secret := range secrets(q) {
				if secret != "" && strings.Contains(data, secret) && !visible(q, secret) {
					t.Errorf("%s: %s holds %q", show, name, secret)
				}
			}
		}
		if sheets != 1 {
			t.Errorf("%s: %d sheets; want 1", show, sheets)
		}
		page := parts["xl/worksheets/sheet1.xml"]
		for _, m := range formulaText.FindAllStringSubmatch(page, -1) {
			if strings.Contains(m[1], "!") || strings.Contains(m[1], "[") {
				t.Errorf("%s: formula %q leaves the sheet", show, m[1])
			}
		}
		checkFigures(t, q, page, show)
		for _, word := range []string{"definedName ", "hidden=", "veryHidden", "externalLink"} {
			if strings.Contains(parts["xl/workbook.xml"]+page, word) {
				t.Errorf("%s: the file has %q", show, word)
			}
		}
		if !strings.Contains(page, "<sheetProtection") {
			t.Errorf("%s: the sheet is not protected", show)
		}
	}
}

// visible tells whether a word is in what the shop prints on every quote.
func visible(q *quote.Quote, word string) bool {
	return strings.Contains(q.Catalog.Terms+q.Catalog.Payment, word)
}

// checkFigures looks for the office's numbers among the values of the sheet,
// those apart that a customer sees for another reason.
func checkFigures(t *testing.T, q *quote.Quote, page, show string) {
	t.Helper()
	known := map[string]bool{"0": true}
	for i := range q.Price.Lines {
		line := &q.Price.Lines[i]
		for _, v := range []money.Number{line.Offer, line.Amount, line.Quantity} {
			known[v.String()] = true
		}
	}
	values := map[string]bool{}
	for _, m := range shownNumber.FindAllStringSubmatch(sharedCell.ReplaceAllString(page, ""), -1) {
		values[m[1]] = true
	}
	for i := range len(q.Parts.Orders) + 1 {
		known[itoa(i)] = true // numbers of lines
	}
	for _, v := range figures(q) {
		if s := v.String(); values[s] && !known[s] {
			t.Errorf("%s: the sheet holds %s, which is for the office", show, s)
		}
	}
}

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
