package workbook

import (
	"fmt"
	"strings"

	"tentwright/workbook/sheet"
)

// Columns of the sheet: two halves, alike, then two of ids that do not print.
// Each half begins with a column for a box to tick.
const (
	crewSheetHalf = 7
	crewSheetCols = 2 * crewSheetHalf
	crewSheetKeys = crewSheetCols + 1
)

var crewSheetWidths = [crewSheetHalf]float64{4, 9, 14, 8, 8, 8, 8}

// Rows of the sheet in points. A row for typing leaves room for a pen.
const (
	crewRow  = 15
	crewPen  = 20
	crewBand = 17
	crewGap  = 3
)

// crewSheet is the sheet while it is laid out.
type crewSheet struct {
	*layout
	s     *sheet.Sheet
	shown shownLines
}

// shownLines is how many lines of each list are shown; the rest are counted. Words
// are cut to their most characters by cut.
type shownLines struct{ tents, days, trips, cut int }

// crewSheet lays out the one page that the crew lead takes along. Somebody of the
// customer may hold it: no price, no margin and no note of the office is on it.
// Where all does not fit, lists are cut and say how much more there is.
func (l *layout) crewSheet() {
	if l.q.Catalog.Crew == nil {
		return
	}
	shown := shownLines{tents: 8, days: 7, trips: 6, cut: 1}
	for {
		names, sheets := len(l.book.Names), len(l.book.Sheets)
		c := &crewSheet{layout: l, shown: shown}
		c.lay()
		if c.high() <= c.room() || !shown.fewer() {
			return
		}
		l.book.Names, l.book.Sheets = l.book.Names[:names], l.book.Sheets[:sheets]
	}
}

// fewer takes a line off; false when no list can be shorter.
func (s *shownLines) fewer() bool {
	switch {
	case s.tents > 5:
		s.tents--
	case s.days > 5:
		s.days--
	case s.trips > 3:
		s.trips--
	case s.tents > 2:
		s.tents--
	case s.days > 2:
		s.days--
	case s.cut < 4:
		s.cut++
	case s.tents > 1:
		s.tents--
	default:
		return false
	}
	return true
}

// lay writes the sheet.
func (c *crewSheet) lay() {
	c.s = c.sheet(SheetCrewSheet, "For the crew lead: take it along, tick and sign.", sheet.TabCrew, false)
	c.s.Page.FitTall = 1
	for range 2 {
		for _, width := range crewSheetWidths {
			c.s.Columns = append(c.s.Columns, sheet.Column{Width: width})
		}
	}
	c.s.Columns = append(c.s.Columns, sheet.Column{Width: 14}, sheet.Column{Width: 14})
	c.where()
	c.hours()
	c.people()
	c.tents()
	c.points()
	c.notes()
	c.signatures()
	c.s.TitleRows = [2]int{1, 1}
	c.s.PrintArea = &sheet.Range{R1: 1, C1: 1, R2: len(c.s.Rows), C2: crewSheetCols}
}

// high is the points of all rows, as they are printed in full size.
func (c *crewSheet) high() float64 {
	rows, sum := quotePage{s: c.s}, 0.0
	for row := range c.s.Rows {
		sum += rows.height(row + 1)
	}
	return sum
}

// room is how high the rows may be together, so that the smallest print is that
// of a quote that is squeezed.
func (c *crewSheet) room() float64 {
	page := float64(letterHeight)
	if c.s.Page.Paper == "a4" {
		page = a4Height
	}
	return (page - narrowEdges) * 100 / leastScale * wideSlack
}

// line writes a row of a height; 0 fits it to its text.
func (c *crewSheet) line(height float64, list ...field) int {
	n := c.fields(c.s, list...)
	c.s.Rows[n-1].Height = height
	return n
}

// band opens a block, with words over each half or one over both.
func (c *crewSheet) band(left, right string) {
	c.s.Rows = append(c.s.Rows, sheet.Row{Height: crewGap})
	style := sheet.Style{Role: sheet.Section}
	if right == "" {
		c.line(crewBand, span(1, crewSheetCols, in(text(left), style)))
		return
	}
	c.line(crewBand, span(1, crewSheetHalf, in(text(left), style)), span(crewSheetHalf+1, crewSheetCols, in(text(right), style)))
}

// half moves fields of the left half to the right one.
func half(list []field) []field {
	moved := make([]field, len(list))
	for i, f := range list {
		f.from, f.to = f.from+crewSheetHalf, f.to+crewSheetHalf
		moved[i] = f
	}
	return moved
}

// wrapped is the style of words that may take several lines, without a frame.
func wrapped() sheet.Style { return sheet.Style{Wrap: true} }

// told is the words of a field of the sheet Job on one line, cut where they are
// too long, with the formula that gives them.
func (c *crewSheet) told(words, name string, most int) sheet.Cell {
	most /= c.shown.cut
	plain := "SUBSTITUTE(" + name + `,CHAR(10)," ")`
	words = strings.ReplaceAll(sheet.Clean(words), "\n", " ")
	return formula(fmt.Sprintf(`IF(LEN(%s)>%d,LEFT(%s,%d)&"…",%s)`, name, most, plain, most-1, plain), sheet.Short(words, most))
}

// Most characters of words that take up to two or three lines of a half, or of
// the whole width.
const (
	twoLines   = 100
	threeLines = 150
	wideLines  = 240
)

// where is the place, whom to ask and how to get in.
func (c *crewSheet) where() {
	j := c.q.Job
	c.band("Where", "Whom to ask")
	pair := func(words string, cell sheet.Cell) []field {
		return []field{span(1, 2, label(words)), span(3, crewSheetHalf, in(cell, wrapped()))}
	}
	row := func(left, right []field) { c.line(0, append(left, half(right)...)...) }
	row(pair("Event", c.told(j.Event.Name, "job_event_name", twoLines)), pair("Customer", c.told(j.Customer.Name, "job_customer_name", twoLines)))
	row(pair("Place", c.told(strings.Join(j.Event.Address, ", "), "job_event_address", threeLines)), pair("Contact", c.contact()))
	row(pair("Access", c.told(j.Event.Access, "job_event_access", threeLines)), pair("On site", c.told(j.Event.Contact, "job_event_contact", threeLines)))
	row(pair("Parking", c.told(j.Event.Parking, "job_event_parking", threeLines)), pair("Site", c.site()))
}

// contact is whom to ask of the customer, with the phone.
func (c *crewSheet) contact() sheet.Cell {
	who := &c.q.Job.Customer
	name, phone := c.told(who.Contact, "job_customer_contact", twoLines), c.told(who.Phone, "job_customer_phone", twoLines)
	words := joined(", ", name.Value.(string), phone.Value.(string))
	return formula(name.Formula+`&IF(AND(LEN(job_customer_contact)>0,LEN(job_customer_phone)>0),", ","")&`+phone.Formula, words)
}

// site is what was told of the ground and what else slows the work: the first
// kind always, the others where they are not as usual.
func (c *crewSheet) site() sheet.Cell {
	var words, terms []string
	for i := range c.q.Labour.Sites {
		site := &c.q.Labour.Sites[i]
		if site.Tent != "" || site.Option == nil {
			continue
		}
		degree, usual := "site_"+ident(site.Key)+"_degree", site.Factor.Options[0].ID
		name := find("degree_name", "degree_key", quoted(site.Factor.ID+":")+"&"+degree)
		if len(terms) == 0 {
			words, terms = append(words, site.Option.Name), append(terms, name)
			continue
		}
		kind := strings.ToLower(site.Factor.Name) + ": "
		terms = append(terms, "IF("+degree+"="+quoted(usual)+`,"",`+quoted("; "+kind)+"&"+name+")")
		if site.Option.ID != usual {
			words = append(words, kind+site.Option.Name)
		}
	}
	if len(terms) == 0 {
		return text("")
	}
	return formula(strings.Join(terms, "&"), strings.Join(words, "; "))
}
