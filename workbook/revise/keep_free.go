package revise

import (
	"slices"
	"strings"

	"tentwright/workbook/sheet"
)

// sheet carries over what the office wrote on a sheet where the workbook had
// nothing, and how wide it made the columns.
func (k *keeper) sheet(s *sheet.FoundSheet, was string) {
	rows := k.b.rows[s.Name]
	next := k.rowsNext(was, rows)
	for i, row := range s.Rows {
		for j, c := range row {
			if shown(c) == "" {
				continue
			}
			p := place(s.Name, i+1, j+1)
			switch old := rows[i+1]; {
			case old == 0:
				k.newRow(p, c)
			case k.wasFree(place(was, old, j+1)):
				k.free(p, c, was, k.nextRow(p, was, old, next))
			}
		}
	}
	for _, n := range s.Notes {
		p := place(s.Name, n.Row, n.Col)
		old := rows[n.Row]
		if k.ownRemark(was, old, n) {
			continue
		}
		if row := k.nextRow(p, was, old, next); row > 0 {
			k.remark(was, row, n.Col, n.Text)
		} else {
			k.lose(p, sheet.FoundCell{Kind: sheet.FoundText, Text: n.Text})
		}
	}
	k.widths(s, was)
}

// nextRow is the row of the next workbook for one of this: for an added line,
// that of the order line which it became.
func (k *keeper) nextRow(p sheet.Place, was string, old int, next map[int]int) int {
	if way, ok := k.b.added[rowAt{p.Sheet, p.R1}]; ok {
		return k.lineRow(k.b.places.moved(way))
	}
	if old == 0 {
		return 0
	}
	return next[old]
}

// lineRow is the row of an item's order line; 0 where there is none.
func (k *keeper) lineRow(way string) int {
	key := ""
	if n := wayIndex("items", way); n >= 0 {
		key = lineKey(n)
	}
	if p, ok := k.then.find(address{table: "build", column: "id", key: key}); ok == here {
		return p.R1
	}
	return 0
}

// wasFree tells whether the workbook as written had nothing in a cell, nor a
// place for typing.
func (k *keeper) wasFree(p sheet.Place) bool {
	c := k.b.laidCell(p)
	return c == nil || (c.Value == nil || c.Value == "") && c.Formula == "" && c.Style.Role.Locked()
}

// newRow looks at a cell in a row that the office inserted. What belongs to an
// order line that it added was taken as that; formulas are copies of others.
func (k *keeper) newRow(p sheet.Place, c sheet.FoundCell) {
	if c.Formula != "" || k.ofLine(p) {
		return
	}
	if _, line := k.b.added[rowAt{p.Sheet, p.R1}]; line {
		if row := k.nextRow(p, "", 0, nil); row > 0 {
			k.free(p, c, k.b.sheets[p.Sheet], row)
			return
		}
	}
	k.lose(p, c)
}

// ofLine tells whether a cell is in a column of an order line that was added.
func (k *keeper) ofLine(p sheet.Place) bool {
	if _, ok := k.b.added[rowAt{p.Sheet, p.R1}]; !ok {
		return false
	}
	for name, block := range k.b.found.f.Names {
		if (strings.HasPrefix(name, "build_") || strings.HasPrefix(name, "tents_")) && block.Sheet == p.Sheet && block.C1 == p.C1 && block.R1 <= p.R1 && p.R1 <= block.R2 {
			return true
		}
	}
	return false
}

// free puts words beside the same row of the next workbook, in the first free
// cell from the column on where they stood.
func (k *keeper) free(p sheet.Place, c sheet.FoundCell, tab string, row int) {
	s := k.tab(tab)
	if row == 0 || s == nil {
		k.lose(p, c)
		return
	}
	col := p.C1
	for !isFree(s, row, col) {
		col++
	}
	k.put(place(tab, row, col), c)
	if c.Formula != "" {
		k.frozen[p.Sheet] = append(k.frozen[p.Sheet], p)
	}
}

// isFree tells whether a cell of the next workbook holds nothing, is not for
// typing and not hidden below a merged one.
func isFree(s *sheet.Sheet, row, col int) bool {
	at := sheet.Range{R1: row, C1: col, R2: row, C2: col}
	if slices.ContainsFunc(s.Merges, func(m sheet.Range) bool { return m.Overlaps(at) && (m.R1 < row || m.C1 < col) }) {
		return false
	}
	if row > len(s.Rows) || col > len(s.Rows[row-1].Cells) {
		return true
	}
	c := &s.Rows[row-1].Cells[col-1]
	return (c.Value == nil || c.Value == "") && c.Formula == "" && c.Style.Role.Locked()
}

// ownRemark tells whether the program wrote a remark itself.
func (k *keeper) ownRemark(was string, row int, n sheet.Note) bool {
	for _, own := range k.b.was.f.Sheet(was).Notes {
		if own.Row == row && own.Col == n.Col && strings.TrimSpace(own.Text) == strings.TrimSpace(n.Text) {
			return true
		}
	}
	return false
}

// remark puts a remark on a cell of the next workbook, before its own.
func (k *keeper) remark(tab string, row, col int, words string) {
	s := k.tab(tab)
	for i := range s.Notes {
		if n := &s.Notes[i]; n.Row == row && n.Col == col {
			if !strings.Contains(n.Text, words) {
				n.Text = words + "\n" + n.Text
			}
			return
		}
	}
	s.Notes = append(s.Notes, sheet.Note{Row: row, Col: col, Text: words})
}

// rewritten is how much another program may change a column's width by only
// saving the file, in characters.
const rewritten = 0.75

// usual is the widest that programs make a column by themselves, in characters.
const usual = 13

// widths carries over the widths of columns that the office changed; of those
// beyond the workbook's own, where it wrote something.
func (k *keeper) widths(s *sheet.FoundSheet, was string) {
	old, next := k.b.was.f.Sheet(was), k.tab(was)
	used := 0
	for _, row := range s.Rows {
		used = max(used, len(row))
	}
	for col, width := range s.Widths {
		before, set := old.Widths[col]
		if set && abs(width-before) <= rewritten || !set && width <= usual || col > max(used, len(next.Columns)) {
			continue
		}
		for len(next.Columns) < col {
			next.Columns = append(next.Columns, sheet.Column{})
		}
		next.Columns[col-1].Width = width
	}
}
