package revise

import (
	"cmp"
	"slices"
	"strings"

	"tentwright/workbook"
	"tentwright/workbook/sheet"
)

// Keep carries over into the next revision's workbook what the office wrote
// beside the quote: ticks, tags, counts and notes, words in free cells, remarks
// on cells, widths of columns, and the names of sheets. It wants Revise first.
// What finds no place any more is given back, to be told on the sheet of
// changes; so are the names of the sheets that the office added.
func (b *Book) Keep(next *sheet.Book) (lost []workbook.Change, added []string) {
	k := &keeper{b: b, next: map[string]*sheet.Sheet{}, then: newView(next.Found())}
	for _, s := range next.Sheets {
		k.next[s.Name] = s
	}
	k.again()
	for _, a := range b.keptCells() {
		k.carry(a)
	}
	for _, s := range b.found.f.Sheets {
		was, ours := b.sheets[s.Name]
		switch {
		case !ours && k.next[s.Name] != nil:
			k.lost = append(k.lost, workbook.Change{Place: s.Name, What: "An added sheet with the name of one of this workbook's", Note: "left out; give it another name and requote again"})
		case !ours:
			added = append(added, s.Name)
		case k.next[was] != nil && b.was.f.Sheet(was) != nil:
			k.sheet(s, was)
		}
	}
	slices.SortFunc(k.lost, func(x, y workbook.Change) int {
		return cmp.Or(strings.Compare(x.Place, y.Place), strings.Compare(x.New, y.New))
	})
	b.rename(next, k.next)
	return k.lost, added
}

// keeper carries things from one workbook to another.
type keeper struct {
	b    *Book
	next map[string]*sheet.Sheet
	then *view // of next
	lost []workbook.Change
}

// lostNote stands beside words that found no place.
const lostNote = "kept here, since its row is gone"

// again takes along the words that found no place before.
func (k *keeper) again() {
	notes, ok := k.b.found.f.Names["change_note"]
	if !ok {
		return
	}
	cell := func(column string, row int) string {
		p := k.b.found.f.Names["change_"+column]
		p.R1, p.R2 = row, row
		return shown(k.b.found.cell(p))
	}
	for row := notes.R1; row <= notes.R2; row++ {
		if cell("note", row) == lostNote {
			k.lost = append(k.lost, workbook.Change{Place: cell("place", row), What: cell("what", row), New: cell("new", row), Note: lostNote})
		}
	}
}

// carry copies one open cell, if something else stands in it than was written.
func (k *keeper) carry(a address) {
	was, _ := k.b.was.find(a)
	now, ok := k.b.found.find(a)
	if ok != here {
		return // told when the workbook was opened
	}
	cell := k.b.found.cell(now)
	if same(k.b.was.cell(was), cell) {
		return
	}
	then, ok := k.then.find(a)
	if s := k.next[then.Sheet]; ok != here || s == nil || then.R1 > len(s.Rows) || then.C1 > len(s.Rows[then.R1-1].Cells) || s.Rows[then.R1-1].Cells[then.C1-1].Style.Role.Locked() {
		k.lose(now, cell)
		return
	}
	k.put(then, cell)
}

// put writes what stood in a cell into one of the next workbook.
func (k *keeper) put(p sheet.Place, c sheet.FoundCell) {
	s := k.next[p.Sheet]
	for len(s.Rows) < p.R1 {
		s.Rows = append(s.Rows, sheet.Row{})
	}
	row := &s.Rows[p.R1-1]
	for len(row.Cells) < p.C1 {
		row.Cells = append(row.Cells, sheet.Cell{})
	}
	cell := &row.Cells[p.C1-1]
	cell.Value, cell.Formula = cellValue(c), ""
	if c.Day && cell.Style == (sheet.Style{}) {
		cell.Style.Format = sheet.DateISO
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
		if c.Day {
			text = serialDay(int(c.Number)).String()
		}
		k.lost = append(k.lost, workbook.Change{Place: p.Sheet + "!" + sheet.Ref(p.R1, p.C1), What: "Words beside what is no longer there", New: text, Note: lostNote})
	}
}

// rename gives the sheets of the next workbook the names that the office gave
// them, so that formulas of its own sheets still find them.
func (b *Book) rename(next *sheet.Book, sheets map[string]*sheet.Sheet) {
	for _, s := range b.found.f.Sheets {
		was, ours := b.sheets[s.Name]
		if !ours || s.Name == was || sheets[was] == nil || sheets[s.Name] != nil {
			continue
		}
		sheets[was].Name = s.Name
		old, now := sheet.Quote(was)+"!", sheet.Quote(s.Name)+"!"
		for i := range next.Names {
			if rest, ok := strings.CutPrefix(next.Names[i].Refers, old); ok {
				next.Names[i].Refers = now + rest
			}
		}
		for _, other := range next.Sheets {
			for i := range other.Links {
				if rest, ok := strings.CutPrefix(other.Links[i].Target, old); ok {
					other.Links[i].Target = now + rest
				}
			}
		}
	}
}
