package workbook

import (
	"slices"

	"tentwright/workbook/sheet"
)

// acceptWords stand over the cells to sign in.
const acceptWords = "Accepted as listed, with the extras marked Yes, on these terms"

// termsTogether is how many paragraphs of the terms stay with their band.
const termsTogether = 4

// foot writes what follows the totals: the texts that had no room there, the
// terms, and the cells to sign in.
func (p *quotePage) foot() {
	c := p.l.q.Catalog
	for _, b := range p.below {
		first := p.next() + 1
		p.block(b, sheet.Style{Role: sheet.Plain, Wrap: true})
		p.group(first)
	}
	if first := p.next() + 1; sheet.Clean(c.Terms) != "" {
		p.block(block{"Terms", c.Terms, ""}, sheet.Style{Role: sheet.Faint, Wrap: true})
		p.groups = append(p.groups, sheet.Range{R1: first, C1: 1, R2: min(first+termsTogether, len(p.s.Rows)), C2: quoteCols})
	}
	first := p.next() + 1
	p.band(acceptWords)
	p.signature(p.l.q.Job.Customer.Name, "customer")
	p.signature(c.Company.Name, "yard")
	p.group(first)
}

// band opens a block of the foot.
func (p *quotePage) band(title string) {
	p.gap()
	p.put(18, fill(text(title), sheet.Style{Role: sheet.Section}, quoteCols)...)
}

// block writes a text under a band.
func (p *quotePage) block(b block, style sheet.Style) {
	p.band(b.title)
	p.paragraphs(b.words, style)
}

// signature writes cells for name, signature and day, the words below each. They
// have names in the office's book only.
func (p *quotePage) signature(who, whose string) {
	spans := [][2]int{{quoteNo, quoteName}, {quoteCount, quoteChoice}, {quoteMark, quoteAmount}}
	cells := make([]sheet.Cell, quoteCols)
	for i := range cells {
		cells[i].Style = sheet.Style{Role: sheet.InputText}
	}
	for i := quoteMark - 1; i < quoteCols; i++ {
		cells[i].Style = sheet.Style{Role: sheet.Input, Format: sheet.DateLong, Align: sheet.Left}
	}
	row := p.put(24, cells...)
	captions := make([]sheet.Cell, quoteCols)
	for i, words := range []string{"Name, for " + who, "Signature", "Date"} {
		p.merge(spans[i][0], spans[i][1])
		captions[spans[i][0]-1] = in(text(words), sheet.Style{Role: sheet.Faint})
	}
	p.put(14, captions...)
	anyText := sheet.Validation{Kind: sheet.TextLen, Max: "200", AllowBlank: true}
	day := sheet.AnyDay()
	day.AllowBlank = true
	p.sign(row, quoteNo, whose, "name", anyText, "name of who signs, of the "+whose)
	p.sign(row, quoteCount, whose, "signature", anyText, "signature of the "+whose+", by hand on paper")
	p.sign(row, quoteMark, whose, "date", day, "day of signing, such as 2026-07-04")
}

// sign lets one cell be filled in, such as sign_customer_name.
func (p *quotePage) sign(row, col int, whose, what string, v sheet.Validation, explain string) {
	p.l.allow(p.s, row, col, v, explain)
	if !p.customer {
		p.l.name("sign_"+whose+"_"+what, p.s, sheet.Range{R1: row, C1: col, R2: row, C2: col}, "")
	}
}

// Measures of a printed page in points.
const (
	letterHeight = 792
	a4Height     = 842
	edges        = 2 * 54 // upper and lower margin
	usualRow     = 15.0
	// slack is what rows may come out higher than reckoned here.
	slack = 0.98
)

// leastScale is the smallest print in percent; 10 points are then 7.8.
const leastScale = 78

// textSizes are the sizes of print of the roles that are not 10 points.
var textSizes = map[sheet.Role]float64{sheet.Title: 16, sheet.Subtitle: 11, sheet.Section: 11, sheet.Grand: 13, sheet.Faint: 8}

// boldRoles are the roles on the Quote sheet that are always bold.
var boldRoles = []sheet.Role{sheet.Title, sheet.Heading, sheet.Section, sheet.Total, sheet.Grand, sheet.Notice}

// paginate begins a new page before each group of rows that would be torn.
// What is longer than a page runs on.
func (p *quotePage) paginate() {
	page := float64(letterHeight-edges) * slack
	if p.s.Page.Paper == "a4" {
		page = float64(a4Height-edges) * slack
	}
	heights := make([]float64, len(p.s.Rows)+1)
	for row := 1; row <= len(p.s.Rows); row++ {
		heights[row] = p.height(row)
	}
	used, next := 0.0, 0
	for row := 1; row <= len(p.s.Rows); row++ {
		need := heights[row]
		if next < len(p.groups) && p.groups[next].R1 == row {
			need = 0
			for r := row; r <= p.groups[next].R2; r++ {
				need += heights[r]
			}
			next++
		}
		if used > 0 && used+need > page && need <= page {
			if row > 1 {
				p.s.Breaks = append(p.s.Breaks, row)
			}
			used = 0
		}
		used += heights[row]
	}
	p.squeeze(heights, page)
	p.repeatHeadings()
}

// squeeze prints what would run a little onto a third page on two, in smaller
// print: a customer signs the second page and should not look for a third.
func (p *quotePage) squeeze(heights []float64, page float64) {
	if len(p.s.Breaks) < 2 {
		return
	}
	cut, higher := p.halves(heights)
	scale := int(100 * page / higher)
	if cut == 0 || scale < leastScale {
		return
	}
	p.s.Breaks, p.s.Page.Scale, p.s.Page.FitWide = []int{cut}, min(scale, 100), false
}

// halves finds the row that begins the second of two pages so that the higher
// of them is lowest, without tearing a group; it gives that height.
func (p *quotePage) halves(heights []float64) (cut int, higher float64) {
	total := 0.0
	for _, h := range heights {
		total += h
	}
	torn := map[int]bool{}
	for _, g := range p.groups {
		for row := g.R1 + 1; row <= g.R2; row++ {
			torn[row] = true
		}
	}
	higher = total
	first := 0.0
	for row := 2; row < len(heights); row++ {
		first += heights[row-1]
		second := total - first
		if row <= p.lastLine {
			second += heights[p.headRow] // printed again
		}
		if h := max(first, second); !torn[row] && h < higher {
			cut, higher = row, h
		}
	}
	return cut, higher
}

// repeatHeadings prints the heads of the columns again where the lines run on
// over a page.
func (p *quotePage) repeatHeadings() {
	if len(p.s.Breaks) == 0 || p.s.Breaks[0] > p.lastLine || p.headRow == 0 {
		return
	}
	p.s.TitleRows = [2]int{p.headRow, p.headRow}
}

// height reckons how high a row prints.
func (p *quotePage) height(row int) float64 {
	r := &p.s.Rows[row-1]
	if r.Height > 0 {
		return r.Height
	}
	most := usualRow
	for i := range r.Cells {
		words, ok := r.Cells[i].Value.(string)
		if !ok || words == "" || p.manyRows(row, i+1) {
			continue
		}
		most = max(most, textHigh(words, r.Cells[i].Style, p.room(row, i+1)))
	}
	return most
}

// textHigh is how high a text of a style stands in a width, in points.
func textHigh(words string, style sheet.Style, width float64) float64 {
	size := textSizes[style.Role]
	if size == 0 {
		size = 10
	}
	bold := style.Bold || slices.Contains(boldRoles, style.Role)
	return sheet.TextHeight(words, size, bold, style.Wrap, style.Indent, width)
}

// manyRows tells whether a cell is merged over several rows, which grow for
// nothing in it.
func (p *quotePage) manyRows(row, col int) bool {
	for _, m := range p.s.Merges {
		if m.R1 == row && m.C1 == col {
			return m.R2 > row
		}
	}
	return false
}

// room is the width of a cell in points, merged cells together.
func (p *quotePage) room(row, col int) float64 {
	to := col
	for _, m := range p.s.Merges {
		if m.R1 == row && m.C1 == col {
			to = m.C2
		}
	}
	sum := 0.0
	for c := col; c <= to; c++ {
		sum += p.s.Columns[c-1].Width * sheet.ColumnPoints
	}
	return sum
}
