package xlsx

import (
	"slices"
	"strconv"

	"tentwright/workbook/sheet"
)

// maxSpan is how many columns one entry can set the width of: programs set the
// width of all columns up to the last with one entry.
const maxSpan = 200

// sheetReader is one sheet being read.
type sheetReader struct {
	*reader
	m     *markup
	out   *sheet.FoundSheet
	where string // how faults call the sheet

	row, col int
	given    bool              // the row has a number of its own
	line     []sheet.FoundCell // of the row so far
	room     []sheet.FoundCell // for rows to come
	cell     rawCell
	content  func() // of a cell, kept for all of them

	shared  map[string]formulaAt // formulas that several cells share, by key
	sharing []sharer
	arrays  []arrayFormula
}

// sheet reads one sheet with its notes.
func (x *reader) sheet(t tab) (*sheet.FoundSheet, error) {
	s := &sheetReader{
		reader: x, where: "the sheet " + quoted(t.name), shared: map[string]formulaAt{},
		out: &sheet.FoundSheet{Name: t.name, Hidden: t.hidden},
	}
	s.content = s.readContent
	err := x.pack.each(t.part, s.where, "worksheet", func(m *markup) {
		s.m = m
		switch m.name {
		case "cols":
			m.children(s.width)
		case "sheetData":
			m.children(s.readRow)
		case "mergeCells":
			m.children(s.merge)
		}
	})
	if err == nil {
		err = s.giveShared()
	}
	if err == nil {
		err = s.giveArrays()
	}
	if err == nil {
		err = s.notes(t.part)
	}
	return s.out, err
}

// width notes the width of columns. Most programs say apart whether it is one
// that somebody set.
func (s *sheetReader) width() {
	w, err := strconv.ParseFloat(s.m.attr("width"), 64)
	set := s.m.attr("customWidth")
	if err != nil || !(w >= 0 && w <= 1000) || set != "" && !truth(set) {
		return
	}
	from, err1 := strconv.Atoi(s.m.attr("min"))
	to, err2 := strconv.Atoi(s.m.attr("max"))
	to = min(to, from+maxSpan-1, sheet.MaxCols)
	if err1 != nil || err2 != nil || from < 1 || from > to {
		return
	}
	s.m.stop(s.pack.left.list(to - from + 1))
	if s.out.Widths == nil {
		s.out.Widths = map[int]float64{}
	}
	for col := from; col <= to; col++ {
		s.out.Widths[col] = w
	}
}

// merge notes cells made one.
func (s *sheetReader) merge() {
	if r, ok := parseArea(s.m.attr("ref")); ok {
		s.m.stop(s.pack.left.list(1))
		s.out.Merges = append(s.out.Merges, r)
	}
}

// readRow reads a row. Not every program gives rows and cells their numbers;
// without one they follow each other.
func (s *sheetReader) readRow() {
	if s.m.name != "row" {
		return
	}
	s.row, s.col, s.line, s.given = s.row+1, 0, s.line[:0], false
	if r := s.m.attr("r"); r != "" {
		n, err := strconv.Atoi(r)
		if err != nil || n < 1 {
			s.m.stop(damaged(s.where))
			return
		}
		s.row, s.given = n, true
	}
	s.m.children(s.readCell)
	if s.row > sheet.MaxRows {
		s.m.stop(damaged(s.where))
	}
	if s.m.err == nil {
		s.endRow()
	}
}

// endRow keeps what the row holds.
func (s *sheetReader) endRow() {
	if len(s.line) == 0 {
		return
	}
	// An empty row takes half the memory of a cell.
	growth := max(s.row-len(s.out.Rows), 0)
	if err := s.pack.left.fill(len(s.line) + growth/2); err != nil {
		s.m.stop(err)
		return
	}
	s.out.Rows = slices.Grow(s.out.Rows, growth)[:len(s.out.Rows)+growth]
	if old := s.out.Rows[s.row-1]; old != nil {
		// The row came before; what it had stays where nothing is new.
		for i, c := range old {
			if i >= len(s.line) {
				s.line = append(s.line, c)
			} else if s.line[i] == (sheet.FoundCell{}) {
				s.line[i] = c
			}
		}
	}
	n := len(s.line)
	if cap(s.room)-len(s.room) < n {
		s.room = make([]sheet.FoundCell, 0, max(n, 1024))
	}
	from := len(s.room)
	s.room = append(s.room, s.line...)
	s.out.Rows[s.row-1] = s.room[from : from+n : from+n]
}

// put sets the cell in a column of the row.
func (s *sheetReader) put(col int, c sheet.FoundCell) {
	for len(s.line) < col {
		s.line = append(s.line, sheet.FoundCell{})
	}
	s.line[col-1] = c
}

// notes reads the remarks on cells, in the order of rows.
func (s *sheetReader) notes(part string) error {
	links, err := s.pack.links(part, s.where)
	if err != nil {
		return err
	}
	for _, from := range ofKind(links, "comments") {
		if !s.pack.has(from) {
			continue
		}
		err := s.pack.each(from, "the list of notes of "+s.where, "comments", func(m *markup) {
			s.m = m
			if m.name == "commentList" {
				m.children(s.note)
			}
		})
		if err != nil {
			return err
		}
	}
	slices.SortStableFunc(s.out.Notes, func(a, b sheet.Note) int {
		if a.Row != b.Row {
			return a.Row - b.Row
		}
		return a.Col - b.Col
	})
	return nil
}

// note reads one remark.
func (s *sheetReader) note() {
	row, col, ok := parseCorner(s.m.attr("ref"))
	if !ok || row == 0 || col == 0 {
		return
	}
	s.m.children(func() {
		if s.m.name != "text" {
			return
		}
		if text := s.m.richText(); text != "" {
			s.m.stop(s.pack.left.list(1))
			s.out.Notes = append(s.out.Notes, sheet.Note{Row: row, Col: col, Text: text})
		}
	})
}
