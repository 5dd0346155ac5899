package sheet

import (
	"slices"
	"strings"
)

// sheet checks all that belongs to one sheet.
func (c *checker) sheet(s *Sheet) {
	if s == nil {
		return
	}
	if len(s.Rows) > MaxRows {
		c.add("%s: %d rows; expected at most %d", s.Name, len(s.Rows), MaxRows)
		return
	}
	for i := range s.Rows {
		c.row(s.Name, i+1, &s.Rows[i])
	}
	for i, col := range s.Columns {
		if col.Width < 0 || col.Width > maxColWidth {
			c.add("%s: column %s is %g wide; expected 0 to %d", s.Name, ColName(i+1), col.Width, maxColWidth)
		}
	}
	c.merges(s)
	for _, v := range s.Validations {
		c.validation(s.Name, v)
	}
	for _, h := range s.Highlights {
		where := spot{s.Name, h.Range, "highlight"}
		c.place(where)
		c.formula(where, h.Formula)
		if h.Role != Warn && h.Role != Good && h.Role != Faint {
			c.add("%s: role %d; expected Warn, Good or Faint", where, h.Role)
		}
	}
	c.attachments(s)
	c.printing(s)
}

// row checks the cells of one row.
func (c *checker) row(sheet string, n int, r *Row) {
	if r.Height < 0 || r.Height > maxRowHeight {
		c.add("%s: row %d is %g points high; expected 0 to %d", sheet, n, r.Height, maxRowHeight)
	}
	if len(r.Cells) > MaxCols {
		c.add("%s: row %d has %d cells; expected at most %d", sheet, n, len(r.Cells), MaxCols)
		return
	}
	for i := range r.Cells {
		cell := &r.Cells[i]
		if cell.Formula == "" && cell.Value == nil {
			continue
		}
		c.cell(spot{sheet: sheet, at: one(n, i+1)}, cell)
	}
}

// cell checks one value and its formula.
func (c *checker) cell(where spot, cell *Cell) {
	switch v := cell.Value.(type) {
	case string:
		if n := units(Clean(v)); n > MaxText {
			c.add("%s: text of %d characters; expected at most %d", where, n, MaxText)
		}
	case float64:
		// True of infinities and of what is not a number.
		if v-v != 0 {
			c.add("%s: value %g; expected a finite number", where, v)
		}
	case nil:
		c.add("%s: formula without its computed value", where)
	case int, bool, Amount, Serial:
	default:
		c.add("%s: value of type %T; expected string, int, float64, bool, an amount or a date", where, v)
	}
	if st := cell.Style; st.Role < 0 || st.Role >= roleCount || st.Format < 0 || st.Format >= formatCount ||
		st.Align < 0 || st.Align >= alignCount || st.Indent < 0 || st.Indent > 15 {
		c.add("%s: style %+v; expected a known role, format and alignment, and an indent of 0 to 15", where, st)
	}
	if cell.Formula != "" {
		c.formula(where, cell.Formula)
	}
}

// merges checks that merged ranges hold several cells and stay apart. They are
// looked at from the top down, each beside those that reach down to its first
// row: a load order has a merge on each line, and all pairs would be too many.
func (c *checker) merges(s *Sheet) {
	var open []Range
	for _, m := range slices.SortedStableFunc(slices.Values(s.Merges), func(a, b Range) int { return a.R1 - b.R1 }) {
		where := spot{s.Name, m, "merge"}
		c.place(where)
		if m.One() {
			c.add("%s: one cell; expected several", where)
		}
		open = slices.DeleteFunc(open, func(o Range) bool { return o.R2 < m.R1 })
		for _, other := range open {
			if m.Overlaps(other) {
				c.add("%s: overlaps %s", where, other)
			}
		}
		open = append(open, m)
		c.covered(s, m)
	}
}

// covered checks that a merge hides no content: programs drop it.
func (c *checker) covered(s *Sheet, m Range) {
	for r := max(m.R1, 1); r <= min(m.R2, len(s.Rows)); r++ {
		cells := s.Rows[r-1].Cells
		for col := max(m.C1, 1); col <= min(m.C2, len(cells)); col++ {
			cell := &cells[col-1]
			if (r > m.R1 || col > m.C1) && (cell.Value != nil || cell.Formula != "") {
				c.add("%s: covers the content of %s", spot{s.Name, m, "merge"}, Ref(r, col))
			}
		}
	}
}

// validation checks one rule and the lengths of its words. Each rule must say
// what it wants: people see the prompt before they type.
func (c *checker) validation(sheet string, v Validation) {
	where := spot{sheet, v.Range, "validation"}
	c.place(where)
	c.length(where, "title", v.Title, maxTitle)
	c.length(where, "prompt", v.Prompt, maxPrompt)
	c.length(where, "error", v.Error, maxPrompt)
	if Clean(v.Prompt) == "" {
		c.add("%s: no prompt; expected words on what may be typed", where)
	}
	switch v.Kind {
	case List:
		switch {
		case !strings.Contains(v.Source, ","):
			if !c.names[v.Source] {
				c.add("%s: list %q; expected a defined name or words with commas between%s", where, v.Source, c.nearest(v.Source))
			}
		case units(v.Source) > maxListText:
			c.add("%s: list of %d characters; expected at most %d, or a defined name", where, units(v.Source), maxListText)
		}
	case Custom:
		c.formula(where, v.Source)
	case WholeNumber, Decimal, Date, TextLen:
		if v.Min == "" && v.Max == "" {
			c.add("%s: no limit; expected a smallest or largest value", where)
		}
		for _, f := range []string{v.Min, v.Max} {
			if f != "" {
				c.formula(where, f)
			}
		}
	default:
		c.add("%s: kind %d; expected a known one", where, v.Kind)
	}
}

// attachments checks notes, links and the picture. A link's target is checked
// as a formula: a place or a defined name.
func (c *checker) attachments(s *Sheet) {
	taken := map[[2]int]bool{}
	for _, n := range s.Notes {
		where := spot{s.Name, one(n.Row, n.Col), "note"}
		c.place(where)
		if Clean(n.Text) == "" {
			c.add("%s: no text", where)
		}
		if taken[[2]int{n.Row, n.Col}] {
			c.add("%s: the cell has one already", where)
		}
		taken[[2]int{n.Row, n.Col}] = true
	}
	for _, l := range s.Links {
		where := spot{s.Name, one(l.Row, l.Col), "link"}
		c.place(where)
		c.length(where, "tip", l.Tip, maxPrompt)
		c.formula(where, l.Target)
	}
	if p := s.Picture; p != nil {
		where := spot{s.Name, one(p.Row, p.Col), "picture"}
		c.place(where)
		if Clean(p.Alt) == "" {
			c.add("%s: no words on what it shows", where)
		}
		if !slices.Contains([]string{".png", ".jpg", ".jpeg"}, p.Ext) {
			c.add("%s: kind %q; expected .png or .jpg", where, p.Ext)
		}
	}
}

// printing checks page set-up, filter and what stays in sight.
func (c *checker) printing(s *Sheet) {
	if p := strings.ToLower(s.Page.Paper); p != "" && p != "letter" && p != "a4" {
		c.add("%s: paper %q; expected letter or a4", s.Name, s.Page.Paper)
	}
	// The codes for font and page number take up to 40 of the 255 characters.
	c.length(spot{sheet: s.Name}, "header", s.Page.HeaderLeft+s.Page.HeaderRight, 200)
	c.length(spot{sheet: s.Name}, "footer", s.Page.FooterLeft, 200)
	if s.Filter != nil {
		c.place(spot{s.Name, *s.Filter, "filter"})
	}
	if s.PrintArea != nil {
		c.place(spot{s.Name, *s.PrintArea, "print area"})
	}
	if t := s.TitleRows; t != [2]int{} && (t[0] < 1 || t[1] < t[0] || t[1] > MaxRows) {
		c.add("%s: heading rows %d to %d; expected first to last", s.Name, t[0], t[1])
	}
	if s.FreezeRows < 0 || s.FreezeCols < 0 || s.FreezeRows >= MaxRows || s.FreezeCols >= MaxCols {
		c.add("%s: %d rows and %d columns kept in sight; expected counts from 0", s.Name, s.FreezeRows, s.FreezeCols)
	}
	for _, b := range s.Breaks {
		if b < 2 || b > MaxRows {
			c.add("%s: page break before row %d; expected 2 to %d", s.Name, b, MaxRows)
		}
	}
}

// place checks that the range of a spot is on the sheet.
func (c *checker) place(where spot) {
	if r := where.at; !r.Valid() {
		c.add("%s: %s: rows %d to %d, columns %d to %d; expected a block on the sheet", where.sheet, where.what, r.R1, r.R2, r.C1, r.C2)
	}
}

// length checks a text that the format cuts off beyond a limit.
func (c *checker) length(where spot, what, text string, most int) {
	if n := units(Clean(text)); n > most {
		c.add("%s: %s of %d characters; expected at most %d", where, what, n, most)
	}
}
