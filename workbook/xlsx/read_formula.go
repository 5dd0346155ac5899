package xlsx

import (
	"strconv"
	"strings"

	"tentwright/workbook/sheet"
)

// formulaAt is a formula and the cell that it is written for.
type formulaAt struct {
	row, col int
	formula  string
}

// sharer is a cell that has the formula of another, moved along.
type sharer struct {
	row, col int
	key      string
}

// arrayFormula is one formula that gives the values of a block of cells.
type arrayFormula struct {
	area    sheet.Range
	formula string
}

// unknownFormula stands for a formula that the file does not tell: one that
// leans on a cell that is gone.
const unknownFormula = "#REF!"

// copyCost is how many bytes of the allowance a byte of a copied formula uses
// up: moving a formula takes longer than unpacking it.
const copyCost = 4

// readFormula reads the formula of a cell.
func (s *sheetReader) readFormula() {
	kind, key, ref := s.m.attr("t"), s.m.attr("si"), s.m.attr("ref")
	f := strings.TrimPrefix(strings.TrimSpace(s.m.content()), "=")
	at := formulaAt{s.row, s.col, f}
	if kind != "" {
		s.m.stop(s.pack.left.list(1))
	}
	switch kind {
	case "shared":
		if f == "" {
			s.sharing = append(s.sharing, sharer{s.row, s.col, key})
			f = unknownFormula
		} else if _, known := s.shared[key]; !known {
			s.shared[key] = at
		}
	case "array":
		if area, ok := parseArea(ref); ok && f != "" && !area.One() {
			s.arrays = append(s.arrays, arrayFormula{area, f})
		}
	case "dataTable":
		if f == "" {
			f = "TABLE(" + s.m.attr("r1") + "," + s.m.attr("r2") + ")"
		}
	}
	s.cell.formula = f
}

// giveShared gives each cell that shares a formula its own.
func (s *sheetReader) giveShared() error {
	for _, c := range s.sharing {
		from, ok := s.shared[c.key]
		if !ok {
			continue
		}
		if err := s.pack.left.take(copyCost * len(from.formula)); err != nil {
			return err
		}
		if at := s.at(c.row, c.col); at != nil {
			at.Formula = moved(from.formula, c.row-from.row, c.col-from.col)
		}
	}
	return nil
}

// giveArrays gives the cells of a block that one formula fills that formula:
// their values were not typed.
func (s *sheetReader) giveArrays() error {
	for _, a := range s.arrays {
		for row := a.area.R1; row <= min(a.area.R2, len(s.out.Rows)); row++ {
			last := min(a.area.C2, len(s.out.Rows[row-1]))
			if err := s.pack.left.fill(max(last-a.area.C1+1, 0) + 1); err != nil {
				return err
			}
			for col := a.area.C1; col <= last; col++ {
				if c := s.at(row, col); c.Formula == "" && c.Kind != sheet.FoundEmpty {
					c.Formula = a.formula
				}
			}
		}
	}
	return nil
}

// at is a cell that has been read; nil if there is none.
func (s *sheetReader) at(row, col int) *sheet.FoundCell {
	if row > len(s.out.Rows) || col > len(s.out.Rows[row-1]) {
		return nil
	}
	return &s.out.Rows[row-1][col-1]
}

// moved is a formula as it reads in a cell further down and to the right: all
// places in it move along, but for those held with "$".
func moved(f string, rows, cols int) string {
	b := make([]byte, 0, len(f)+16)
	for i := 0; i < len(f); {
		end := i + 1
		switch c := f[i]; {
		case c == '"':
			end = min(skipTo(f, i, '"')+1, len(f))
		case c == '\'':
			end = i + quotedEnd(f[i:])
		case c == '[':
			end = i + bracketEnd(f[i:])
		case wordChar(c):
			end = wordEnd(f, i)
			if last := pairEnd(f, end); last > end && wholeLines(f[i:end], f[end+1:last]) {
				b = append(appendMoved(b, f[i:end], rows, cols), ':')
				b = appendMoved(b, f[end+1:last], rows, cols)
				i = last
				continue
			}
			if row, col, ok := parseCorner(f[i:end]); ok && row > 0 && col > 0 && !names(f, end) {
				b = appendMoved(b, f[i:end], rows, cols)
				i = end
				continue
			}
		}
		b = append(b, f[i:end]...)
		i = end
	}
	return string(b)
}

// names tells whether what ends here is the name of a function, a sheet or a
// table.
func names(f string, end int) bool {
	return end < len(f) && (f[end] == '(' || f[end] == '!' || f[end] == '[')
}

// wordChar tells the characters of names, places and numbers.
func wordChar(c byte) bool {
	return letter(c) || c >= '0' && c <= '9' || c >= 0x80 || strings.IndexByte(`$_.\?`, c) >= 0
}

func wordEnd(f string, i int) int {
	for i < len(f) && wordChar(f[i]) {
		i++
	}
	return i
}

// pairEnd is where the word behind a colon ends; end itself if none follows.
func pairEnd(f string, end int) int {
	if end+1 >= len(f) || f[end] != ':' || !wordChar(f[end+1]) {
		return end
	}
	if last := wordEnd(f, end+1); !names(f, last) {
		return last
	}
	return end
}

// wholeLines tells whether two words are the ends of whole columns, "$A:C", or
// of whole rows, "1:3".
func wholeLines(from, to string) bool {
	r1, c1, ok1 := parseCorner(from)
	r2, c2, ok2 := parseCorner(to)
	return ok1 && ok2 && (r1 == 0 && r2 == 0 || c1 == 0 && c2 == 0)
}

// appendMoved appends a place such as "B$7", "B" or "$7", moved.
func appendMoved(b []byte, word string, rows, cols int) []byte {
	row, col, _ := parseCorner(word)
	heldRow := row > 0 && strings.LastIndexByte(word, '$') > 0 || col == 0 && word[0] == '$'
	heldCol := col > 0 && word[0] == '$'
	hasRow, hasCol := row > 0, col > 0
	if hasRow && !heldRow {
		row += rows
	}
	if hasCol && !heldCol {
		col += cols
	}
	if hasRow && row < 1 || hasCol && col < 1 || row > sheet.MaxRows || col > sheet.MaxCols {
		return append(b, unknownFormula...)
	}
	if heldCol {
		b = append(b, '$')
	}
	b = append(b, sheet.ColName(col)...)
	if heldRow {
		b = append(b, '$')
	}
	if hasRow {
		b = strconv.AppendInt(b, int64(row), 10)
	}
	return b
}

// quotedEnd is the length of the name in single marks that s starts with; all
// of s if it has no end.
func quotedEnd(s string) int {
	for i := 1; i < len(s); i++ {
		if s[i] != '\'' {
			continue
		}
		if i+1 == len(s) || s[i+1] != '\'' {
			return i + 1
		}
		i++
	}
	return len(s)
}

// bracketEnd is the length of the part in brackets that s starts with.
func bracketEnd(s string) int {
	depth := 0
	for i := range len(s) {
		switch s[i] {
		case '[':
			depth++
		case ']':
			if depth--; depth == 0 {
				return i + 1
			}
		}
	}
	return len(s)
}
