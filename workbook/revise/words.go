package revise

import (
	"tentwright/workbook/sheet"
)

// words say what a cell of the workbook as written holds: the words of its row
// and the heading of its column. A row with a label holds one thing only.
func (d *differ) words(was sheet.Place) string {
	row := d.rowWords(was)
	first := d.b.laidCell(place(was.Sheet, was.R1, 1))
	if first != nil && first.Style.Role == sheet.Label {
		return row
	}
	switch head := d.heading(was); {
	case head == "":
		return row
	case row == "":
		return head
	default:
		return row + ": " + head
	}
}

// rowWords are the words for a row: those of its table's own column, or the
// first text in it.
func (d *differ) rowWords(was sheet.Place) string {
	s := d.b.was.f.Sheet(was.Sheet)
	for _, t := range keyedTables() {
		block, ok := d.b.was.over[t.table]
		if !ok || t.label == "" || block.Sheet != was.Sheet || was.R1 < block.R1 || was.R1 > block.R2 {
			continue
		}
		if p, ok := d.b.was.f.Names[t.table+"_"+t.label]; ok {
			return shown(s.At(was.R1, p.C1))
		}
	}
	for col := 1; col < was.C1; col++ {
		if c := s.At(was.R1, col); c.Kind == sheet.FoundText && shown(c) != "" {
			return shown(c)
		}
	}
	return ""
}

// heading is the nearest head of a column above a cell, within its band.
func (d *differ) heading(p sheet.Place) string {
	for row := p.R1 - 1; row > 0; row-- {
		p.R1, p.R2 = row, row
		c := d.b.laidCell(p)
		if c == nil {
			continue
		}
		switch c.Style.Role {
		case sheet.Heading:
			return shown(d.b.was.cell(p))
		case sheet.Section:
			return ""
		}
	}
	return ""
}
