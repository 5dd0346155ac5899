package xlsx

import (
	"strconv"
	"strings"
	"time"

	"tentwright/workbook/sheet"
)

// rawCell is a cell as the file writes it.
type rawCell struct {
	kind, style string
	value       string
	valued      bool
	inline      bool // the value stood in the cell as a text with looks
	formula     string
}

// readCell reads a cell and puts it in its row. A cell that has only looks is
// passed over.
func (s *sheetReader) readCell() {
	if s.m.name != "c" {
		return
	}
	s.col++
	s.cell = rawCell{}
	for _, a := range s.m.attrs {
		switch a.name {
		case "r":
			row, col, ok := parseCorner(a.value)
			if !ok || row == 0 || col == 0 {
				s.m.stop(damaged(s.where))
				return
			}
			if s.col = col; !s.given {
				s.row = row
			}
		case "t":
			s.cell.kind = a.value
		case "s":
			s.cell.style = a.value
		}
	}
	if s.m.bare {
		return
	}
	if s.col > sheet.MaxCols {
		s.m.stop(damaged(s.where))
		return
	}
	s.m.children(s.content)
	if s.m.err == nil {
		s.keepCell()
	}
}

// readContent reads what is inside a cell.
func (s *sheetReader) readContent() {
	switch s.m.name {
	case "v":
		if !s.cell.inline {
			s.cell.value, s.cell.valued = s.m.content(), true
		}
	case "is":
		s.cell.value, s.cell.valued, s.cell.inline = s.m.richText(), true, true
	case "f":
		s.readFormula()
	}
}

// keepCell turns the cell into what it shows.
func (s *sheetReader) keepCell() {
	c, ok := s.found()
	if !ok {
		s.m.stop(damaged("the cell " + sheet.Ref(s.row, s.col) + " of " + s.where))
		return
	}
	if len(c.Text) > maxCellText || len(c.Formula) > maxCellText {
		s.m.stop(fault("the cell "+sheet.Ref(s.row, s.col)+" of "+s.where+" holds more than 1 MB", adviceSmaller))
		return
	}
	if c.Kind != sheet.FoundEmpty || c.Formula != "" {
		s.put(s.col, c)
	}
}

// found is the cell's value by the type that the file gives it; false when it
// refers to a text that is not there.
func (s *sheetReader) found() (sheet.FoundCell, bool) {
	raw := &s.cell
	out := sheet.FoundCell{Formula: raw.formula}
	switch {
	case raw.inline:
		out.Kind, out.Text = sheet.FoundText, raw.value
		return out, true
	case raw.kind == "str", raw.kind == "inlineStr":
		if raw.valued {
			out.Kind, out.Text = sheet.FoundText, unescape(raw.value)
		}
		return out, true
	}
	value := strings.TrimSpace(raw.value)
	if value == "" {
		return out, true
	}
	switch raw.kind {
	case "s":
		i, err := strconv.Atoi(value)
		if err != nil || i < 0 || i >= len(s.texts) {
			return out, false
		}
		out.Kind, out.Text = sheet.FoundText, s.texts[i]
	case "e":
		out.Kind, out.Text = sheet.FoundError, value
	case "b":
		out.Kind = sheet.FoundBool
		if truth(strings.ToLower(value)) {
			out.Number = 1
		}
	case "d":
		s.isoDay(&out, value)
	default:
		s.number(&out, value)
	}
	return out, true
}

// daysTo1904 is how many days later the count starts in files that count days
// from 1904, ISO/IEC 29500-1, 18.17.4.1.
const daysTo1904 = 1462

// number reads a number. What is none, though the file says so, is kept as a
// text, for it can be judged better where the cell's purpose is known.
func (s *sheetReader) number(out *sheet.FoundCell, value string) {
	n, err := strconv.ParseFloat(value, 64)
	if err != nil || strings.Trim(value, "0123456789+-.eE") != "" {
		out.Kind, out.Text = sheet.FoundText, value
		return
	}
	out.Kind, out.Number, out.Text = sheet.FoundNumber, n, value
	if i, err := strconv.Atoi(s.cell.style); err == nil && i >= 0 && i < len(s.shows) {
		out.Day, out.Percent = s.shows[i].day, s.shows[i].percent
	}
	if out.Day && s.old {
		out.Number += daysTo1904
		out.Text = strconv.FormatFloat(out.Number, 'f', -1, 64)
	}
}

// isoDay reads a date as strict files write it, "2026-06-06T14:30:00".
func (s *sheetReader) isoDay(out *sheet.FoundCell, value string) {
	zero := time.Date(1899, 12, 30, 0, 0, 0, 0, time.UTC)
	for _, layout := range []string{"2006-01-02", "2006-01-02T15:04:05", "2006-01-02T15:04", time.RFC3339} {
		t, err := time.Parse(layout, value)
		if err != nil {
			continue
		}
		// The clock on the wall counts, wherever it hangs.
		wall := time.Date(t.Year(), t.Month(), t.Day(), t.Hour(), t.Minute(), t.Second(), t.Nanosecond(), time.UTC)
		out.Kind, out.Day = sheet.FoundNumber, true
		out.Number = float64(wall.Unix()-zero.Unix())/(24*60*60) + float64(wall.Nanosecond())/(24*60*60*1e9)
		out.Text = strconv.FormatFloat(out.Number, 'f', -1, 64)
		return
	}
	out.Kind, out.Text = sheet.FoundText, value
}
