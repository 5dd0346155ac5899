package workbook

import (
	"archive/zip"
	"io"
	"regexp"
	"slices"
	"strings"
	"testing"

	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/quote"
	"tentwright/quote/jobtest"
	"tentwright/quote/price"
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
	plainNumber = regexp.MustCompile(`[0-9]+(?:\.[0-9]+)?`)
	definedName = regexp.MustCompile(`<definedName [^>]*name="([^"]*)"`)
	property    = regexp.MustCompile(`<(?:[a-z]+:)?([A-Za-z]+)(?: [^>]*)?>([^<]+)<`)
	sharedCell  = regexp.MustCompile(`<c [^>]*t="s"[^>]*>.*?</c>`)
)

// Nothing of the office is in any part of the customer's file, not even hidden:
// for the demonstration jobs and random ones, in every way of showing prices.
func TestCustomerFileIsClean(t *testing.T) {
	quotes := demoQuotes(t)
	quotes["gala"] = makeQuote(t, gardenJob)
	for seed := range uint64(10) {
		quotes["seed-"+itoa(int(seed))] = randomQuote(t, seed)
	}
	for name, q := range quotes {
		for _, show := range []string{"line", "section", "total"} {
			q.Job.Show = show
			checkClean(t, name+", "+show, q, unzip(t, save(t, t.TempDir(), "customer.xlsx", Customer(q))))
		}
	}
}

// randomQuote has remarks that stand nowhere else in it.
func randomQuote(t testing.TB, seed uint64) *quote.Quote {
	t.Helper()
	c, list := catalog.Load("demo", catalog.Demo())
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	q, list := quote.Build(c, jobtest.Random(c, seed))
	if err := list.Err(); err != nil {
		t.Fatal(err)
	}
	q.Job.Internal, q.Job.Discount.Reason = "said-at-the-desk", "reason-kept-inside"
	return q
}

// checkClean looks through the parts of one customer's file.
func checkClean(t *testing.T, name string, q *quote.Quote, parts map[string]string) {
	t.Helper()
	sheets := 0
	for part, data := range parts {
		if strings.HasPrefix(part, "xl/worksheets/sheet") {
			sheets++
		}
		for _, secret := range secrets(q) {
			if secret != "" && strings.Contains(data, secret) && !visible(q, secret) {
				t.Errorf("%s: %s holds %q", name, part, secret)
			}
		}
		if strings.Contains(part, "comments") || strings.Contains(part, "customXml") || strings.Contains(part, "externalLink") {
			t.Errorf("%s: the file has the part %s", name, part)
		}
	}
	if sheets != 1 {
		t.Errorf("%s: %d sheets; want 1", name, sheets)
	}
	page, book := parts["xl/worksheets/sheet1.xml"], parts["xl/workbook.xml"]
	checkFormulas(t, name, q, page)
	checkFigures(t, q, page, name)
	for _, m := range definedName.FindAllStringSubmatch(book, -1) {
		if m[1] != "_xlnm.Print_Titles" { // the heads repeated on each printed page
			t.Errorf("%s: the file has the name %q", name, m[1])
		}
	}
	for _, word := range []string{"hidden=", "veryHidden", "externalLink"} {
		if strings.Contains(book+page, word) {
			t.Errorf("%s: the file has %q", name, word)
		}
	}
	for _, m := range property.FindAllStringSubmatch(parts["docProps/core.xml"]+parts["docProps/app.xml"], -1) {
		if known := []string{"title", "creator", "lastModifiedBy", "created", "modified", "Company", "Application"}; !slices.Contains(known, m[1]) {
			t.Errorf("%s: the file says of itself %s: %q", name, m[1], m[2])
		}
	}
	if !strings.Contains(page, "<sheetProtection") {
		t.Errorf("%s: the sheet is not protected", name)
	}
}

// checkFormulas looks into the formulas: none leaves the sheet, and where only
// totals are shown none holds a figure that is not printed.
func checkFormulas(t *testing.T, name string, q *quote.Quote, page string) {
	t.Helper()
	hidden := map[string]string{}
	if q.Job.Show == "total" {
		hidden = hiddenSums(q)
	}
	for _, m := range formulaText.FindAllStringSubmatch(page, -1) {
		if strings.ContainsAny(m[1], "![") {
			t.Errorf("%s: formula %q leaves the sheet", name, m[1])
		}
		for _, number := range plainNumber.FindAllString(m[1], -1) {
			if what := hidden[number]; what != "" {
				t.Errorf("%s: formula %q holds %s", name, m[1], what)
			}
		}
	}
}

// hiddenSums are the sums of a quote, by their figures, that nobody sees where
// only totals are shown. Small ones may be there by chance.
func hiddenSums(q *quote.Quote) map[string]string {
	sums := map[string]money.Number{"the hire": q.Price.Hire, "the labour": q.Price.Sum(price.Labour), "the delivery": q.Price.Sum(price.Delivery),
		"the waiver": q.Price.Sum(price.Waiver)}
	hire := q.Price.Hire
	for i := range q.Price.Lines {
		line := &q.Price.Lines[i]
		if line.Order == nil || !line.Order.Optional {
			sums[line.Key] = line.Amount
		} else if line.Kind == price.Hire {
			hire = hire.Sub(line.Amount)
		}
	}
	sums["the hire without extras"] = hire
	for i := range q.Price.Taxes {
		sums["what "+q.Price.Taxes[i].Tax.Name+" falls on"] = q.Price.Taxes[i].Taxable
	}
	hidden := map[string]string{}
	for what, sum := range sums {
		if sum.GreaterThan(money.Hundred) {
			hidden[sum.String()] = what
		}
	}
	return hidden
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
