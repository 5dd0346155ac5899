package workbook

import (
	"slices"
	"strings"

	"tentwright/catalog/money"
	"tentwright/quote"
	"tentwright/quote/price"
	"tentwright/workbook/sheet"
)

// lines writes each section under a band with its sum.
func (p *quotePage) lines() {
	for _, section := range p.l.sections() {
		list := p.printed(p.l.linesOf(section, false))
		if len(list) == 0 {
			continue
		}
		first := p.next()
		if p.headRow == 0 {
			amount := "Amount"
			if p.customer && p.show == "total" {
				amount = ""
			}
			p.headRow = p.headings("Description", "", amount)
		}
		// The band is filled in once it is known where its lines end.
		p.put(18)
		at := len(p.s.Rows)
		for k, line := range list {
			p.line(line)
			if k == 0 {
				p.group(first) // a band is never the last on a page
			}
		}
		p.lastLine = len(p.s.Rows)
		p.s.Rows[at-1].Cells = fill(text(section), sheet.Style{Role: sheet.Section}, quoteCols)
		p.s.Rows[at-1].Cells[quoteAmount-1] = in(p.sectionSum(list, at+1, p.lastLine), sheet.Style{Role: sheet.Section, Format: sheet.Money})
		p.sums = append(p.sums, sheet.Ref(at, quoteAmount))
	}
}

// printed leaves out, for the customer, what was set to nothing; the office keeps
// it, since its quantity may be raised again.
func (p *quotePage) printed(list []*price.Line) []*price.Line {
	if !p.customer {
		return list
	}
	return slices.DeleteFunc(list, func(line *price.Line) bool { return line.Quantity.IsZero() })
}

// headings writes the heads of the columns and gives their row.
func (p *quotePage) headings(what, choice, amount string) int {
	heads := [quoteCols]string{"No.", what, "Quantity", "Unit", choice, p.marks.heading(), amount}
	aligns := [quoteCols]sheet.Align{sheet.Centre, sheet.Left, sheet.Right, sheet.Left, sheet.Centre, sheet.Centre, sheet.Right}
	cells := make([]sheet.Cell, quoteCols)
	for i, h := range heads {
		cells[i] = in(text(h), sheet.Style{Role: sheet.Heading, Align: aligns[i]})
		if i == quoteUnit-1 {
			cells[i].Style.Indent = 1
		}
	}
	row := p.put(18, cells...)
	if choice == "" {
		cells[quoteChoice-1].Value = nil
		p.merge(quoteUnit, quoteChoice)
	}
	return row
}

// line writes what is ordered.
func (p *quotePage) line(line *price.Line) {
	amount := sheet.Cell{}
	if !p.customer {
		amount = unless(`job_show<>"line"`, p.find(line, "amount"), line.Amount, p.show == "line")
	} else if p.show == "line" {
		amount = value(line.Amount)
	}
	p.order(line, sheet.Cell{}, amount)
}

// find looks a figure of the next row's line up by its number.
func (p *quotePage) find(line *price.Line, column string) string {
	table := tableOf(line.Order)
	return find(table+"_"+column, table+"_no", "$"+sheet.Ref(p.next(), quoteNo))
}

// order writes the row of an order line.
func (p *quotePage) order(line *price.Line, choice, amount sheet.Cell) int {
	count := value(line.Quantity)
	if !p.customer {
		count.Formula = p.find(line, "quantity")
	}
	return p.put(0,
		in(value(p.l.keys[line.Key]), sheet.Style{Role: sheet.Plain, Format: sheet.Whole, Align: sheet.Centre}),
		in(p.describe(line), sheet.Style{Role: sheet.Plain, Wrap: true}),
		in(count, sheet.Style{Role: sheet.Plain, Format: countFormat(line.Unit)}),
		in(text(line.Unit), sheet.Style{Role: sheet.Plain, Indent: 1}),
		choice,
		in(text(p.marks.of(line.Tax, line.Kind)), sheet.Style{Role: sheet.Plain, Align: sheet.Centre}),
		in(amount, sheet.Style{Role: sheet.Plain, Format: sheet.Money}))
}

// describe is the name of a line with what is taken off this line alone: for its
// quantity, and by hand. Where the customer sees only totals, the lines without
// a price of their own say nothing of it.
func (p *quotePage) describe(line *price.Line) sheet.Cell {
	silent := p.show == "total" && !line.Order.Optional
	words := line.Name
	for i, off := range []money.Number{line.Break, line.Hand} {
		if off.IsPositive() && !silent {
			words += lessWords + off.String() + lessEnds[i]
		}
	}
	if p.customer {
		return text(words)
	}
	f := p.find(line, "name")
	for i, column := range []string{"break", "hand"} {
		off := p.find(line, column)
		shown := off + ">0"
		if !line.Order.Optional {
			shown = `AND(job_show<>"total",` + shown + ")"
		}
		f += "&IF(" + shown + "," + quoted(lessWords) + "&" + off + "&" + quoted(lessEnds[i]) + `,"")`
	}
	return formula(f, words)
}

// lessWords stand between a line's name and the percentage taken off it.
const lessWords = ", less "

// lessEnds stand behind the percentages that are taken off for the quantity and
// by hand.
var lessEnds = [2]string{" % for the quantity", " %"}

// countFormat shows what is counted in wholes and what is measured as it is.
func countFormat(unit string) sheet.Format {
	if slices.Contains([]string{"each", "pair", "set", "day"}, unit) {
		return sheet.Whole
	}
	return sheet.General
}

// sectionSum adds a section's lines up, whether or not their amounts show.
func (p *quotePage) sectionSum(list []*price.Line, first, last int) sheet.Cell {
	sum := amountOf(list)
	switch {
	case !p.customer:
		return unless(`job_show="total"`, p.sumOf([]string{tableOf(list[0].Order)}, sheet.Ref(first, quoteNo), sheet.Ref(last, quoteNo)), sum, p.show != "total")
	case p.show == "total":
		return sheet.Cell{}
	case p.show == "section":
		return value(sum)
	}
	return formula("SUM("+sheet.Ref(first, quoteAmount)+":"+sheet.Ref(last, quoteAmount)+")", sum)
}

// sumOf adds up what is charged on the lines between two numbers of the quote.
// Extras and lines added by hand are outside such numbers: extras come last,
// added lines have none.
func (p *quotePage) sumOf(tables []string, from, to string) string {
	return p.l.rounded(sumOver(tables, `SUMIFS(@_amount,@_no,">="&`+from+`,@_no,"<="&`+to+")"))
}

// extraLines lists the optional extras in the order of their numbers.
func (l *layout) extraLines() []*price.Line {
	var list []*price.Line
	for _, section := range l.sections() {
		list = append(list, l.linesOf(section, true)...)
	}
	return list
}

// optional writes the extras, each with a cell that says whether it is wanted.
func (p *quotePage) optional() {
	list := p.printed(p.l.extraLines())
	if len(list) == 0 {
		return
	}
	p.gap()
	start := p.next()
	p.headings("Optional extras", "Yes/No", "Price")
	first := p.next()
	last := first
	for i, line := range list {
		last = p.extra(line)
		if i == 0 && len(list) > extrasTogether {
			p.group(start)
		}
	}
	p.put(4) // spare, so that a row added at the end is still found
	p.extras = sheet.Range{R1: first, C1: 1, R2: len(p.s.Rows), C2: quoteCols}
	if !p.customer {
		p.nameExtras("extra_no", quoteNo)
		p.nameExtras("extra_choice", quoteChoice)
	}
	p.wide("Choose Yes or No; the totals below follow. Labour and delivery for added extras are confirmed in a revised quote.",
		sheet.Style{Role: sheet.Faint, Wrap: true})
	if len(list) <= extrasTogether {
		last = start
	}
	p.group(last) // the remark is not alone on a page
}

// extrasTogether is how many extras stay on one page, under their heads.
const extrasTogether = 10

// extra writes one extra with its price and choice, and gives its row.
func (p *quotePage) extra(line *price.Line) int {
	amount := value(line.Offer)
	if !p.customer {
		amount.Formula = p.find(line, "offer")
	}
	row := p.order(line, in(text(yes(line.Order.Chosen)), sheet.Style{Role: sheet.Input, Align: sheet.Centre}), amount)
	p.l.allow(p.s, row, quoteChoice, yesNo(), "Yes if this extra is wanted, else No. The totals below follow.")
	return row
}

// nameExtras names a column of the extras.
func (p *quotePage) nameExtras(name string, col int) {
	p.l.name(name, p.s, sheet.Range{R1: p.extras.R1, C1: col, R2: p.extras.R2, C2: col}, "")
}

// marks are the letters that say what is charged on a line: one letter for
// each set of taxes, a dash for none, and W where the damage waiver counts.
type marks struct {
	q    *quote.Quote
	sets []string // the taxes of A, B ... as their names with commas between
}

// newMarks gives out the letters in the order in which their taxes first stand
// on the quote.
func newMarks(q *quote.Quote) *marks {
	m := &marks{q: q}
	for i := range q.Price.Lines {
		set := m.taxes(q.Price.Lines[i].Tax)
		if set != "" && !slices.Contains(m.sets, set) {
			m.sets = append(m.sets, set)
		}
	}
	return m
}

// taxes names what is due on a class of goods or work.
func (m *marks) taxes(class string) string {
	var names []string
	for _, t := range m.q.Price.Taxes {
		if slices.Contains(t.Tax.Classes, class) {
			names = append(names, t.Tax.Name)
		}
	}
	return strings.Join(names, ", ")
}

// waived tells whether the damage waiver counts on a kind of line.
func (m *marks) waived(kind string) bool {
	return kind == price.Hire && m.q.Catalog.Rates.Waiver.IsPositive()
}

// of is the mark of a line.
func (m *marks) of(class, kind string) string {
	mark := ""
	if len(m.sets) > 0 {
		mark = "-"
		if i := slices.Index(m.sets, m.taxes(class)); i >= 0 {
			mark = letter(i)
		}
	}
	if m.waived(kind) {
		mark = strings.TrimSpace(mark + " W")
	}
	return mark
}

// letter is A for 0. W means the waiver and is passed over.
func letter(i int) string {
	if i >= 'W'-'A' {
		i++
	}
	return sheet.ColName(i + 1)
}

// heading is the head of the marks' column; none where nothing is taxed.
func (m *marks) heading() string {
	if len(m.sets) > 0 {
		return "Tax"
	}
	return ""
}

// legend says what the letters mean.
func (m *marks) legend() string {
	var list []string
	for i, set := range m.sets {
		list = append(list, letter(i)+": "+set)
	}
	if len(m.sets) > 0 {
		list = append(list, "-: no tax")
	}
	if m.waived(price.Hire) {
		list = append(list, "W: damage waiver")
	}
	return strings.Join(list, ".  ")
}
