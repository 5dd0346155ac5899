package revise

import (
	"tentwright/catalog/diag"
	"tentwright/catalog/money"
	"tentwright/workbook"
	"tentwright/workbook/sheet"
)

// Kept is what yard and office typed that changes no quote but figures of the
// workbook: counts, tags, riders and hours. What cannot be read as such is left
// out; Keep carries it over as the words that it is. Keys are those of the next
// revision, where Revise came before.
func (b *Book) Kept() workbook.Kept {
	k := workbook.Kept{Loaded: map[string]int{}, Tag: map[string]any{}, Counted: map[string]int{}, Damaged: map[string]int{}, Wet: map[string]string{},
		Each: map[string]money.Number{}, Riders: map[string]int{}, Actual: map[string]money.Number{}, Done: map[string]bool{}, Names: map[string]any{}}
	moves := b.moves()
	for _, a := range b.keptCells() {
		if cell, ok := b.retyped(a); ok {
			b.keep(&k, moves.of(a), cell)
		}
	}
	// A charge with a price in the shop is an edit of that price.
	for _, line := range workbook.CheckIn(b.Quote) {
		a := address{table: "return", column: "each", key: line.Key}
		cell, ok := b.retyped(a)
		if ok && line.Part.Replacement == nil {
			readInto(k.Each, moves.of(a).key, cell)
		}
	}
	return k
}

// retyped is what stands in a cell; false where that is what was written.
func (b *Book) retyped(a address) (sheet.FoundCell, bool) {
	was, ok := b.was.find(a)
	now, ok2 := b.found.find(a)
	if ok != here || ok2 != here {
		return sheet.FoundCell{}, false
	}
	cell := b.found.cell(now)
	return cell, !same(b.was.cell(was), cell)
}

// keep takes one cell in, by the column that it stands in.
func (b *Book) keep(k *workbook.Kept, a address, cell sheet.FoundCell) {
	switch a.table + "_" + a.column {
	case "pick_loaded":
		b.countInto(k.Loaded, a.key, cell)
	case "pick_tag":
		k.Tag[a.key] = cellValue(cell)
	case "return_counted":
		b.countInto(k.Counted, a.key, cell)
	case "return_damaged":
		b.countInto(k.Damaged, a.key, cell)
	case "return_wet":
		k.Wet[a.key] = wetWord(cell)
	case "trip_riders", "back_riders":
		b.countInto(k.Riders, a.key, cell)
		if shown(cell) == "" {
			k.Riders[a.key] = 0 // a cell that was emptied
		}
	case "date_done":
		k.Done[a.key] = shown(cell) == workbook.TickedBox
	case "people_name":
		k.Names[a.key] = cellValue(cell)
	case "task_actual":
		readInto(k.Actual, a.key, cell)
	}
}

// wetWord is Yes or No of a cell that says so in any way, and else its words.
func wetWord(c sheet.FoundCell) string {
	if v, err := read(c, truth, ""); err == nil {
		return v.text
	}
	return c.Text
}

// countInto takes a whole number in.
func (b *Book) countInto(counts map[string]int, key string, cell sheet.FoundCell) {
	if n, ok := b.count(cell, diag.Pos{}, "", &diag.List{}); ok {
		counts[key] = n
	}
}

// readInto takes a number in.
func readInto(numbers map[string]money.Number, key string, cell sheet.FoundCell) {
	if v, err := read(cell, number, ""); err == nil {
		numbers[key] = v.number
	}
}
