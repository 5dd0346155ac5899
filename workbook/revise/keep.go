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
	k := &keeper{b: b, next: map[string]*sheet.Sheet{}, then: newView(next.Found()), moves: b.moves(), rows: map[string]map[int]int{}, frozen: map[string][]sheet.Place{}}
	for _, s := range next.Sheets {
		k.next[strings.ToLower(s.Name)] = s
	}
	for _, table := range []string{"out", "home"} {
		k.moves[table] = oneToOne(b.was.keysInOrder(table), k.then.keysInOrder(table))
	}
	k.again()
	var strays []stray
	for _, a := range b.keptCells() {
		if x, gone := k.carry(a); gone {
			strays = append(strays, x)
		}
	}
	k.strays(strays)
	for _, s := range b.found.f.Sheets {
		was, ours := b.sheets[s.Name]
		switch {
		case !ours && k.tab(s.Name) != nil:
			k.lost = append(k.lost, workbook.Change{Place: s.Name, What: "An added sheet with the name of one of this workbook's", Note: "left out; give it another name and requote again"})
		case !ours:
			added = append(added, s.Name)
		case k.tab(was) != nil && b.was.f.Sheet(was) != nil:
			k.sheet(s, was)
		}
	}
	k.references(added)
	k.formulas()
	k.names(next, added)
	slices.SortFunc(k.lost, func(x, y workbook.Change) int {
		return cmp.Or(strings.Compare(x.Place, y.Place), strings.Compare(x.What, y.What), strings.Compare(x.New, y.New))
	})
	b.rename(next, k.next)
	return k.lost, added
}

// keeper carries things from one workbook to another.
type keeper struct {
	b    *Book
	next map[string]*sheet.Sheet // by their names in lower case, as files tell sheets apart
	then *view                   // of next
	lost []workbook.Change

	moves moves                  // of rows of parts
	rows  map[string]map[int]int // of sheets that came back: the rows of next

	frozen map[string][]sheet.Place // formulas in free cells, by sheet
}

// tab is a sheet of the next workbook; nil where there is none.
func (k *keeper) tab(name string) *sheet.Sheet { return k.next[strings.ToLower(name)] }

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
// One of a part's row that is gone is given back.
func (k *keeper) carry(a address) (stray, bool) {
	was, _ := k.b.was.find(a)
	now, ok := k.b.found.find(a)
	if ok != here {
		return stray{}, false // told when the workbook was opened
	}
	cell := k.b.found.cell(now)
	if same(k.b.was.cell(was), cell) {
		return stray{}, false
	}
	if a.table+"_"+a.column == "return_wet" && shown(cell) != "" {
		cell = sheet.FoundCell{Kind: sheet.FoundText, Text: wetWord(cell)}
	}
	then, ok := k.then.find(k.moves.of(a))
	if ok == noRow && ofParts(a.table) {
		return stray{a, was, now, cell}, true
	}
	if s := k.tab(then.Sheet); ok != here || s == nil || then.R1 > len(s.Rows) || then.C1 > len(s.Rows[then.R1-1].Cells) || s.Rows[then.R1-1].Cells[then.C1-1].Style.Role.Locked() {
		k.lose(now, cell)
		return stray{}, false
	}
	k.put(then, cell)
	return stray{}, false
}

// put writes what stood in a cell into one of the next workbook.
func (k *keeper) put(p sheet.Place, c sheet.FoundCell) {
	s := k.tab(p.Sheet)
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
		k.lost = append(k.lost, workbook.Change{Place: k.placeText(p), What: k.words(p), New: text, Note: lostNote})
	}
}

// words say what a cell that came back stood beside.
func (k *keeper) words(p sheet.Place) string {
	words := ""
	if row := k.b.rows[p.Sheet][p.R1]; row > 0 {
		d := differ{b: k.b}
		words = d.words(place(k.b.sheets[p.Sheet], row, p.C1))
	} else if s := k.b.found.f.Sheet(p.Sheet); s != nil && p.R1 <= len(s.Rows) {
		words = firstText(s.Rows[p.R1-1][:min(p.C1-1, len(s.Rows[p.R1-1]))])
	}
	if words == "" {
		return "Words beside what is no longer there"
	}
	return words
}

// rename gives the sheets of the next workbook the names that the office gave
// them, so that formulas of its own sheets still find them.
func (b *Book) rename(next *sheet.Book, sheets map[string]*sheet.Sheet) {
	for _, s := range b.found.f.Sheets {
		was, ours := b.sheets[s.Name]
		own, other := sheets[strings.ToLower(was)], sheets[strings.ToLower(s.Name)]
		if !ours || s.Name == was || own == nil || other != nil && other != own {
			continue
		}
		own.Name = s.Name
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
