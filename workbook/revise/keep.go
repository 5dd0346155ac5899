package revise

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"tentwright/workbook"
	"tentwright/workbook/sheet"
)

// Keep carries over into the next revision's workbook what the office wrote
// beside the quote: ticks, tags, counts and notes, words in free cells, remarks
// on cells, widths of columns, and the names of the sheets that it added. What
// finds no place any more is given back, to be told.
func (b *Book) Keep(next *sheet.Book) (lost []workbook.Change, added []string) {
	k := &keeper{b: b, next: next, then: newView(next.Found())}
	k.sheets()
	k.open()
	k.free()
	k.widths()
	for _, s := range b.found.f.Sheets {
		if k.ours[s.Name] == "" {
			added = append(added, s.Name)
		}
	}
	return k.lost, added
}

// keeper carries things from one workbook to another.
type keeper struct {
	b    *Book
	next *sheet.Book
	then *view             // of next
	ours map[string]string // name of a sheet that came back to the name that it was written with
	lost []workbook.Change
}

// sheets finds which sheet is which, since people rename them: the defined names
// tell.
func (k *keeper) sheets() {
	k.ours = map[string]string{}
	for name, was := range k.b.was.f.Names {
		if now, ok := k.b.found.f.Names[name]; ok {
			k.ours[now.Sheet] = was.Sheet
		}
	}
	for _, s := range k.b.was.f.Sheets {
		if k.b.found.f.Sheet(s.Name) != nil && k.ours[s.Name] == "" {
			k.ours[s.Name] = s.Name
		}
	}
	if place, ok := k.b.found.f.Names[workbook.RecordName]; ok {
		k.ours[place.Sheet] = workbook.SheetRecord
	}
	k.ours[workbook.SheetRecord] = workbook.SheetRecord
	// Changes tell of one step only; the next has its own.
	k.ours[workbook.SheetChanges] = workbook.SheetChanges
}

// open carries over what stands in cells for typing that mean nothing to the
// computation.
func (k *keeper) open() {
	taken := map[address]bool{}
	for _, in := range inputs(k.b.Quote) {
		taken[in.at] = true
	}
	for _, t := range keyedTables() {
		block, ok := k.b.was.over[t.table]
		if !ok || t.table == "build" {
			continue
		}
		for name, p := range k.b.was.f.Names {
			column, ok := strings.CutPrefix(name, t.table+"_")
			if !ok || p.Sheet != block.Sheet || p.R1 != block.R1 || p.R2 != block.R2 {
				continue
			}
			for key := range k.b.was.rows[t.table] {
				if a := (address{table: t.table, column: column, key: key}); !taken[a] {
					k.carry(a)
				}
			}
		}
	}
	for name, p := range k.b.was.f.Names {
		if a := named(name); p.One() && !taken[a] && !strings.HasPrefix(name, "qty_") {
			k.carry(a)
		}
	}
	slices.SortFunc(k.lost, func(a, b workbook.Change) int { return strings.Compare(a.Place+a.New, b.Place+b.New) })
}

// carry copies one open cell, if something else stands in it than was written.
func (k *keeper) carry(a address) {
	was, ok := k.b.was.find(a)
	laid := k.b.laidCell(was)
	if ok != here || laid == nil || laid.Formula != "" || laid.Style.Role.Locked() {
		return
	}
	now, ok := k.b.found.find(a)
	if ok != here {
		return
	}
	cell := k.b.found.cell(now)
	if same(k.b.was.cell(was), cell) {
		return
	}
	then, ok := k.then.find(a)
	if ok != here {
		k.lose(now, cell)
		return
	}
	k.put(then, cell)
}

// put writes what stood in a cell into one of the next workbook.
func (k *keeper) put(p sheet.Place, c sheet.FoundCell) {
	for _, s := range k.next.Sheets {
		if s.Name != p.Sheet {
			continue
		}
		for len(s.Rows) < p.R1 {
			s.Rows = append(s.Rows, sheet.Row{})
		}
		row := &s.Rows[p.R1-1]
		for len(row.Cells) < p.C1 {
			row.Cells = append(row.Cells, sheet.Cell{})
		}
		cell := &row.Cells[p.C1-1]
		cell.Value, cell.Formula = cellValue(c), ""
	}
}

// cellValue is what a cell shows, as a value of its own.
func cellValue(c sheet.FoundCell) any {
	switch c.Kind {
	case sheet.FoundNumber:
		return c.Number
	case sheet.FoundBool:
		return c.Number != 0
	case sheet.FoundEmpty:
		return nil
	}
	return c.Text
}

// lose tells of words that find no place in the next workbook.
func (k *keeper) lose(p sheet.Place, c sheet.FoundCell) {
	if text := shown(c); text != "" {
		k.lost = append(k.lost, workbook.Change{Place: p.Sheet + "!" + sheet.Ref(p.R1, p.C1), What: "Words beside what is no longer on the job", New: text,
			Note: "kept here, since its row is gone"})
	}
}

// identities gives each row of a sheet something to know it by in another
// revision: the key of a table, the name of a cell in it, or its first text.
func identities(v *view, name string) map[int]string {
	ids := map[int]string{}
	for _, t := range keyedTables() {
		if block, ok := v.over[t.table]; ok && block.Sheet == name {
			for key, rows := range v.rows[t.table] {
				ids[rows[0]] = t.table + ":" + key
			}
		}
	}
	for _, n := range slices.Sorted(maps.Keys(v.f.Names)) {
		if p := v.f.Names[n]; p.Sheet == name && p.One() && ids[p.R1] == "" {
			ids[p.R1] = "name:" + n
		}
	}
	times := map[string]int{}
	s := v.f.Sheet(name)
	for i := range s.Rows {
		if ids[i+1] != "" {
			continue
		}
		if words := firstText(s.Rows[i]); words != "" {
			times[words]++
			ids[i+1] = fmt.Sprintf("text:%s#%d", words, times[words])
		}
	}
	return ids
}

// firstText is the first text of a row.
func firstText(row []sheet.FoundCell) string {
	for _, c := range row {
		if c.Kind == sheet.FoundText && shown(c) != "" {
			return shown(c)
		}
	}
	return ""
}

// free carries over what the office wrote where the workbook had nothing.
func (k *keeper) free() {
	for _, s := range k.b.found.f.Sheets {
		was := k.ours[s.Name]
		if was == "" || k.b.was.f.Sheet(was) == nil || k.then.f.Sheet(was) == nil {
			continue
		}
		k.freeCells(s, was)
	}
}

// freeCells looks through one sheet.
func (k *keeper) freeCells(s *sheet.FoundSheet, was string) {
	old, next := byIdentity(identities(k.b.was, was)), byIdentity(identities(k.then, was))
	found := identities(k.b.found, s.Name)
	notes := map[sheet.Range]string{}
	for _, n := range s.Notes {
		notes[sheet.Range{R1: n.Row, C1: n.Col, R2: n.Row, C2: n.Col}] = n.Text
	}
	for i, row := range s.Rows {
		id := found[i+1]
		oldRow, known := old[id]
		nextRow := next[id]
		if id == "" {
			// A row that has always been empty is known by its place.
			oldRow, nextRow, known = i+1, 0, true
		}
		for j, c := range row {
			p := sheet.Place{Sheet: s.Name, Range: sheet.Range{R1: i + 1, C1: j + 1, R2: i + 1, C2: j + 1}}
			if shown(c) == "" || known && !k.wasBlank(was, oldRow, j+1) || !known && k.isAddedLine(p) {
				continue
			}
			k.freeCell(p, c, was, nextRow)
		}
	}
	for at, words := range notes {
		if row, ok := next[found[at.R1]]; ok {
			k.remark(was, row, at.C1, words)
		}
	}
}

// byIdentity turns identities of rows around.
func byIdentity(ids map[int]string) map[string]int {
	rows := make(map[string]int, len(ids))
	for row, id := range ids {
		rows[id] = row
	}
	return rows
}

// wasBlank tells whether the workbook as written had nothing in a cell, nor a
// place for typing.
func (k *keeper) wasBlank(name string, row, col int) bool {
	c := k.b.laidCell(sheet.Place{Sheet: name, Range: sheet.Range{R1: row, C1: col, R2: row, C2: col}})
	return c == nil || (c.Value == nil || c.Value == "") && c.Formula == "" && c.Style.Role.Locked()
}

// isAddedLine tells whether a cell belongs to a row of the build-up that was
// taken as an added line.
func (k *keeper) isAddedLine(p sheet.Place) bool {
	block, ok := k.b.found.over["build"]
	return ok && block.Sheet == p.Sheet && block.R1 <= p.R1 && p.R1 <= block.R2
}

// freeCell puts words beside the same row of the next workbook, in the first
// free cell from the column on where they stood.
func (k *keeper) freeCell(p sheet.Place, c sheet.FoundCell, name string, row int) {
	if row == 0 {
		k.lose(p, c)
		return
	}
	for _, s := range k.next.Sheets {
		if s.Name != name {
			continue
		}
		col := p.C1
		for cells := s.Rows[row-1].Cells; col <= len(cells) && !cells[col-1].Blank(); col++ {
		}
		k.put(sheet.Place{Sheet: name, Range: sheet.Range{R1: row, C1: col, R2: row, C2: col}}, c)
	}
}

// remark puts a remark on a cell of the next workbook, unless it has one.
func (k *keeper) remark(name string, row, col int, words string) {
	for _, s := range k.next.Sheets {
		if s.Name != name || slices.ContainsFunc(s.Notes, func(n sheet.Note) bool { return n.Row == row && n.Col == col }) {
			continue
		}
		s.Notes = append(s.Notes, sheet.Note{Row: row, Col: col, Text: words})
	}
}

// rewritten is how much another program may change a column's width by only
// saving the file, in characters.
const rewritten = 0.75

// widths carries over the widths of columns that the office changed.
func (k *keeper) widths() {
	for _, s := range k.b.found.f.Sheets {
		was := k.b.was.f.Sheet(k.ours[s.Name])
		if was == nil {
			continue
		}
		for col, width := range s.Widths {
			old, set := was.Widths[col]
			if set && abs(width-old) > rewritten {
				k.width(was.Name, col, width)
			}
		}
	}
}

func (k *keeper) width(name string, col int, width float64) {
	for _, s := range k.next.Sheets {
		if s.Name == name && col <= len(s.Columns) {
			s.Columns[col-1].Width = width
		}
	}
}
