package sheet

import (
	"slices"
	"strconv"
	"strings"
)

// Found is the book as it would be found in its file: cells by what they hold,
// formulas with their computed values, names by the places they point to. The
// book must have passed Check.
func (b *Book) Found() *Found {
	f := &Found{Names: map[string]Place{}}
	for _, s := range b.Sheets {
		f.Sheets = append(f.Sheets, s.found())
	}
	for _, n := range b.Names {
		if p, ok := placeOf(n.Refers); ok {
			f.Names[strings.ToLower(n.Name)] = p
		} else {
			f.Lost = append(f.Lost, n.Name)
		}
	}
	slices.Sort(f.Lost)
	return f
}

func (s *Sheet) found() *FoundSheet {
	out := &FoundSheet{Name: s.Name, Hidden: s.Hidden || s.VeryHidden, Merges: slices.Clone(s.Merges), Notes: slices.Clone(s.Notes), Widths: map[int]float64{}}
	for i, c := range s.Columns {
		if c.Width > 0 {
			out.Widths[i+1] = c.Width
		}
	}
	for i := range s.Rows {
		cells := make([]FoundCell, len(s.Rows[i].Cells))
		for n := range cells {
			cells[n] = s.Rows[i].Cells[n].found()
		}
		out.Rows = append(out.Rows, cells)
	}
	return out
}

// found is what the cell holds. An empty text is a text, as it is in a file.
func (c Cell) found() FoundCell {
	number := func(x float64) FoundCell {
		return FoundCell{Kind: FoundNumber, Number: x, Text: strconv.FormatFloat(x, 'g', -1, 64), Formula: c.Formula,
			Day:     c.Style.Format == DateLong || c.Style.Format == DateISO,
			Percent: c.Style.Format == Percent || c.Style.Format == PercentWhole}
	}
	switch v := c.Value.(type) {
	case string:
		return FoundCell{Kind: FoundText, Text: Clean(v), Formula: c.Formula}
	case int:
		return number(float64(v))
	case float64:
		return number(v)
	case Serial:
		return number(float64(v.Serial()))
	case Amount:
		return number(v.InexactFloat64())
	case bool:
		if v {
			return FoundCell{Kind: FoundBool, Number: 1, Text: "TRUE", Formula: c.Formula}
		}
		return FoundCell{Kind: FoundBool, Text: "FALSE", Formula: c.Formula}
	}
	return FoundCell{Formula: c.Formula}
}

// placeOf reads a place as Range.Abs writes it.
func placeOf(refers string) (Place, bool) {
	at := strings.LastIndex(refers, "!")
	if at < 0 {
		return Place{}, false
	}
	name := refers[:at]
	if strings.HasPrefix(name, "'") {
		name = strings.ReplaceAll(strings.Trim(name, "'"), "''", "'")
	}
	from, to, several := strings.Cut(strings.ReplaceAll(refers[at+1:], "$", ""), ":")
	if !several {
		to = from
	}
	r1, c1, ok1 := cellOf(from)
	r2, c2, ok2 := cellOf(to)
	return Place{name, Range{r1, c1, r2, c2}}, ok1 && ok2
}

// cellOf reads a cell as Ref writes it.
func cellOf(ref string) (row, col int, ok bool) {
	digits := strings.TrimLeft(ref, "ABCDEFGHIJKLMNOPQRSTUVWXYZ")
	for _, letter := range ref[:len(ref)-len(digits)] {
		col = col*26 + int(letter-'A') + 1
	}
	row, err := strconv.Atoi(digits)
	return row, col, err == nil && col > 0 && row > 0
}
