package workbook

import (
	"tentwright/catalog"
	"tentwright/catalog/money"
	"tentwright/quote"
	"tentwright/quote/price"
	"tentwright/workbook/sheet"
)

// Names of the sheets of a job's close-out.
const (
	SheetFinal   = "Final Charges"
	SheetMending = "Mending List"
	SheetHours   = "Hours"
)

// Closing is what is left to settle once a job is over.
type Closing struct {
	Lines []ClosingLine // of the check-in, in the walking order of the yard
	Tasks []ClosingTask // by rule and window of work
}

// ClosingLine is a line of the check-in as it was counted.
type ClosingLine struct {
	Key     string
	Part    *catalog.Part
	Name    string
	Tag     string
	Out     int
	Counted bool // somebody counted; nothing is said of what came back otherwise
	Back    int  // damaged ones included
	Damaged int
	Wet     bool
	Note    string
	Each    money.Number // charge for one
}

// Missing is how many did not come back; none before somebody counted.
func (x *ClosingLine) Missing() int {
	if !x.Counted {
		return 0
	}
	return max(0, x.Out-x.Back)
}

// Drying is how many came back wet.
func (x *ClosingLine) Drying() int {
	if !x.Wet {
		return 0
	}
	return x.Back
}

// Open is how many went out of a line that nobody counted.
func (x *ClosingLine) Open() int {
	if x.Counted {
		return 0
	}
	return x.Out
}

// Charge is what so many pieces of a line cost, rounded once.
func (x *ClosingLine) Charge(pieces int, c money.Currency) money.Number {
	return c.Round(x.Each.Mul(money.Int(pieces)))
}

// ClosingTask is a labour rule in a window of work: its hours as planned, and
// for the tasks of which they are known, as they were.
type ClosingTask struct {
	Rule, Name       string
	WindowID, Window string
	SkillID, Skill   string
	Tasks, Noted     int          // on how many tents and counts; of these, with actual hours
	Planned          money.Number // person-hours of all
	PlannedNoted     money.Number // of those with actual hours
	Actual           money.Number
}

// Beyond is how much longer the noted tasks took than planned; below zero where
// they were shorter.
func (x *ClosingTask) Beyond() money.Number { return x.Actual.Sub(x.PlannedNoted) }

// SkillBeyond is the hours of one skill beyond the quote, at its plain rate.
type SkillBeyond struct {
	ID, Name              string
	Planned, Actual, Each money.Number
}

// Hours beyond those planned.
func (x *SkillBeyond) Hours() money.Number { return x.Actual.Sub(x.Planned) }

// Beyond adds the noted tasks up by skill, in the order of the shop's rates, and
// gives hours and price of all; the price is none where less was worked.
func (c *Closing) Beyond(q *quote.Quote) (skills []SkillBeyond, hours, amount money.Number) {
	for i := range q.Catalog.Rates.Skills {
		k := &q.Catalog.Rates.Skills[i]
		x := SkillBeyond{ID: k.ID, Name: k.Name, Each: k.Bill}
		for n := range c.Tasks {
			if t := &c.Tasks[n]; t.SkillID == k.ID {
				x.Planned, x.Actual = x.Planned.Add(t.PlannedNoted), x.Actual.Add(t.Actual)
			}
		}
		skills = append(skills, x)
		hours = hours.Add(x.Hours())
		amount = amount.Add(q.Price.Currency.Round(x.Hours().Mul(x.Each)))
	}
	if amount.IsNegative() {
		amount = money.Zero
	}
	return skills, hours, amount
}

// Replacements is the charge for all that is missing or damaged, nothing waived.
func (c *Closing) Replacements(cur money.Currency) money.Number {
	sum := money.Zero
	for i := range c.Lines {
		x := &c.Lines[i]
		sum = money.Sum(sum, x.Charge(x.Missing(), cur), x.Charge(x.Damaged, cur))
	}
	return sum
}

// Uncounted is how many lines went out and were not counted yet.
func (c *Closing) Uncounted() int {
	n := 0
	for i := range c.Lines {
		if !c.Lines[i].Counted {
			n++
		}
	}
	return n
}

// CheckInLine is a line of the check-in as it is laid out.
type CheckInLine struct {
	Key  string
	Part *catalog.Part
	Name string
}

// CheckIn lists the lines of a quote's check-in, in the walking order of the
// yard.
func CheckIn(q *quote.Quote) []CheckInLine {
	var list []CheckInLine
	for _, p := range returned(q) {
		list = append(list, CheckInLine{Key: p.key, Part: p.part, Name: p.name(true)})
	}
	return list
}

// LayoutClosing lays a job's close-out out; q is the quote as it now stands.
// Neither cost nor margin is in it.
func LayoutClosing(q *quote.Quote, c *Closing) *sheet.Book {
	l := newLayout(q)
	l.book.Title += ", final charges"
	l.hoursSheet(c)
	l.finalSheet(c)
	l.mendingSheet(c)
	l.order(SheetFinal, SheetMending, SheetHours)
	return l.book
}

// Columns of the final charges. What stands right of the charge is for the
// office and does not print.
const (
	finalCharged = 7
	finalWords   = 9
	finalChoice  = 10
	finalPage    = 44 // rows on a printed page
)

// finalSheet is what the customer still pays, with nothing of the yard's own.
func (l *layout) finalSheet(c *Closing) {
	s := l.sheet(SheetFinal, "What is left to pay once the job is over.", sheet.TabOffice, false)
	l.finalHead(s, c)
	band(s, "Missing and damaged", finalCharged)
	t := l.startTable(s, "final", []column{
		{"item", "Item", 36, wrap()},
		{"what", "Was", 10, body(sheet.Text)},
		{"pieces", "Pieces", 8, sheet.Style{Role: sheet.Body, Format: sheet.Whole, Align: sheet.Centre}},
		{"each", "For one", 12, right(input(sheet.Money))},
		{"amount", "Amount", 13, right(calc(sheet.Money))},
		{"waived", "Waived", 9, sheet.Style{Role: sheet.Input, Format: sheet.Text, Align: sheet.Centre}},
		{"charged", "To pay", 14, right(sheet.Style{Role: sheet.Calc, Format: sheet.Money, Bold: true})},
		{"", "", 2, sheet.Style{}},
		{"note", "For the office, not printed: note of who counted", 76, wrap()},
		{"key", "Key", 26, sheet.Style{Role: sheet.Key}},
	})
	for i := range c.Lines {
		x := &c.Lines[i]
		l.finalRow(t, x, x.Missing(), "missing")
		l.finalRow(t, x, x.Damaged, "damaged")
	}
	none := t.next() == t.first
	if none {
		t.add(text("nothing is missing or damaged"), text(""), value(nil), body0(), body0(), body0(), value(nil))
	}
	t.end()
	t.widths()
	if !none {
		l.allowColumn(t, "each", amounts(), "what one costs the customer if it is lost or beyond mending")
		l.allowColumn(t, "waived", yesNo(), "Yes if it is waived under the damage waiver; it is then not charged")
		waived := t.at("waived", t.first)
		s.Highlights = append(s.Highlights, sheet.Highlight{Range: t.column("charged"), Formula: waived + `="Yes"`, Role: sheet.Good})
	}
	sums := len(s.Rows) + 2
	l.finalSums(s, c)
	if (sums-1)/finalPage != (len(s.Rows)-1)/finalPage {
		s.Breaks = append(s.Breaks, sums)
	}
	s.FreezeRows = 2
	s.PrintArea = &sheet.Range{R1: 1, C1: 1, R2: len(s.Rows), C2: finalCharged}
}

// body0 is an empty cell of a table that nobody types into.
func body0() sheet.Cell { return sheet.Cell{Style: sheet.Style{Role: sheet.Body}} }

// finalHead says whose job it was.
func (l *layout) finalHead(s *sheet.Sheet, c *Closing) {
	j := l.q.Job
	plain := sheet.Style{Wrap: true}
	if l.q.Catalog.Demo {
		l.fields(s, span(1, finalCharged, in(text(DemoNotice), sheet.Style{Role: sheet.Notice, Align: sheet.Centre})))
	}
	l.fields(s, span(1, 1, in(text(j.Customer.Name), sheet.Style{Bold: true, Wrap: true})), span(2, 3, label("Event")), span(4, finalCharged, in(text(j.Event.Name), plain)))
	l.fields(s, span(1, 1, in(text(joined(", ", j.Customer.Address...)), plain)), span(2, 3, label("Place")), span(4, finalCharged, in(text(l.address()), plain)))
	l.fields(s, span(1, 1, in(text(joined(" · ", j.Customer.Phone, j.Customer.Email)), plain)), span(2, 3, label("Collected")), span(4, finalCharged, in(value(j.Dates.Collect), dated())))
	if n := c.Uncounted(); n > 0 {
		words := itoa(n) + either(n == 1, " line is", " lines are") + " not counted yet; charges for these may follow."
		l.fields(s, span(1, finalCharged, in(text(words), sheet.Style{Role: sheet.Notice, Wrap: true})))
	}
}

// finalRow charges pieces of one line.
func (l *layout) finalRow(t *table, x *ClosingLine, pieces int, what string) {
	if pieces == 0 {
		return
	}
	n := t.line()
	name := x.Name
	if x.Tag != "" {
		name += ", tag " + x.Tag
	}
	amount := x.Charge(pieces, l.q.Price.Currency)
	n.set("item", text(name))
	n.set("what", text(what))
	n.set("pieces", value(pieces))
	n.set("each", value(x.Each))
	n.set("amount", formula(l.rounded(n.at("pieces")+"*"+n.at("each")), amount))
	charged := n.at("amount")
	n.set("waived", body0())
	if what == "damaged" {
		n.set("waived", text("No"))
		charged = "IF(" + n.at("waived") + `="Yes",0,` + charged + ")"
	}
	n.set("charged", formula(charged, amount))
	n.set("note", text(x.Note))
	n.set("key", text(x.Key+":"+what))
	n.add()
}

// finalSum writes a row of the sums, with a choice of the office beside it.
func (l *layout) finalSum(s *sheet.Sheet, name string, role sheet.Role, words, amount sheet.Cell, office ...sheet.Cell) {
	style := sheet.Style{Role: role, Align: sheet.Right, Wrap: role != sheet.Grand}
	cells := fill(words, style, finalCharged)
	style.Format, style.Wrap = sheet.Money, false
	cells[finalCharged-1] = in(amount, style)
	if len(office) > 0 {
		cells = append(cells, sheet.Cell{}, in(office[0], sheet.Style{Role: sheet.Label, Wrap: true}), office[1])
	}
	s.Rows = append(s.Rows, sheet.Row{Cells: cells})
	n := len(s.Rows)
	s.Merges = append(s.Merges, sheet.Range{R1: n, C1: 1, R2: n, C2: finalCharged - 1})
	l.cellName("closing_"+name, s, finalCharged)
}

// noneBeyond stands where there are no hours to charge.
const noneBeyond = "No hours to charge beyond the quote"

// finalSums writes what it comes to, down to the balance. Hours beyond the quote
// and tax on them and on replacements are for the office to decide: they print
// only once they are charged.
func (l *layout) finalSums(s *sheet.Sheet, c *Closing) {
	cur, r := l.q.Price.Currency, l.q.Price
	replaced := c.Replacements(cur)
	_, hours, beyond := c.Beyond(l.q)
	asked := noneBeyond
	if beyond.IsPositive() {
		asked = "Charge the " + hours.StringFixed(2) + " hours beyond the quote?"
	}
	band(s, "Sums", finalCharged)
	quoteWords := l.reference() + ", with the extras chosen and tax"
	l.finalSum(s, "quote", sheet.Label, text(quoteWords), value(r.Total))
	l.finalSum(s, "replacements", sheet.Label, text("Missing and damaged, less what is waived"), formula(l.rounded("SUM(final_charged)"), replaced))
	l.finalSum(s, "hours", sheet.Label, formula(`IF(closing_charge_hours="Yes","Hours beyond the quote, "&TEXT(closing_beyond_hours,"0.00"),"")`, ""),
		formula(`IF(closing_charge_hours="Yes",closing_beyond_amount,"")`, ""),
		formula(`IF(closing_beyond_amount>0,"Charge the "&TEXT(closing_beyond_hours,"0.00")&" hours beyond the quote?",`+quoted(noneBeyond)+")", asked),
		in(text("No"), sheet.Style{Role: sheet.Input, Align: sheet.Centre}))
	l.officeCell(s, "closing_charge_hours", yesNo(), "Yes to charge the hours beyond the quote, at the plain rates of the sheet Hours")
	l.finalSum(s, "tax", sheet.Label, formula(`IF(closing_typed_tax=0,"","Tax on the charges above")`, ""), formula(`IF(closing_typed_tax=0,"",`+l.rounded("closing_typed_tax")+")", ""),
		text("Tax on replacements and added hours, as your accountant says: type the amount"),
		in(value(nil), input(sheet.Money)))
	l.officeCell(s, "closing_typed_tax", amounts(), "the amount of tax on replacements and added hours, as your accountant says")
	total := r.Total.Add(replaced)
	l.finalSum(s, "total", sheet.Total, text("All charges"), formula(l.rounded("closing_quote+closing_replacements+SUM(closing_hours)+SUM(closing_tax)"), total))
	l.finalPaid(s)
	due := total.Sub(r.Received)
	l.finalSum(s, "balance", sheet.Grand, formula(`IF(closing_balance<0,"To be paid back","Balance due")`, either(due.IsNegative(), "To be paid back", "Balance due")),
		formula(l.rounded("closing_total-closing_received"), due))
	if taken := l.q.Price.Sum(price.Waiver); taken.IsPositive() {
		words := "A damage waiver of " + l.q.Price.Currency.Text(taken) + " was taken with this quote. What it covers is waived line by line; missing goods are not covered unless its terms say so."
		l.fields(s, span(1, finalCharged, in(text(words), sheet.Style{Role: sheet.Faint, Wrap: true})))
	} else {
		l.fields(s, span(1, finalCharged, in(text("No damage waiver was taken with this quote."), sheet.Style{Role: sheet.Faint})))
	}
}

// officeCell names and limits the choice in the last row.
func (l *layout) officeCell(s *sheet.Sheet, name string, v sheet.Validation, explain string) {
	l.cellName(name, s, finalChoice)
	v.AllowBlank = true
	l.allow(s, len(s.Rows), finalChoice, v, explain)
}

// finalPaid lists what was received.
func (l *layout) finalPaid(s *sheet.Sheet) {
	first := len(s.Rows) + 1
	for _, p := range l.q.Job.Payments {
		style := sheet.Style{Role: sheet.Faint, Align: sheet.Right, Wrap: true}
		cells := fill(text(joined(", ", "received "+dateText(p.Date), p.Note)), style, finalCharged)
		cells[finalCharged-1] = in(value(p.Amount), sheet.Style{Role: sheet.Faint, Format: sheet.Money, Align: sheet.Right})
		s.Rows = append(s.Rows, sheet.Row{Cells: cells})
		n := len(s.Rows)
		s.Merges = append(s.Merges, sheet.Range{R1: n, C1: 1, R2: n, C2: finalCharged - 1})
	}
	f := "0"
	if n := len(s.Rows); n >= first {
		f = "SUM(" + sheet.AbsRef(first, finalCharged) + ":" + sheet.AbsRef(n, finalCharged) + ")"
	}
	l.finalSum(s, "received", sheet.Label, text(receivedWords), formula(l.rounded(f), l.q.Price.Received))
}
