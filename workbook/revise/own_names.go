package revise

import (
	"maps"
	"slices"
	"strings"

	"tentwright/workbook"
	"tentwright/workbook/sheet"
)

// OwnNames lists the names that the office defined for cells of the sheets that
// it added. One for a cell of ours is left out: that cell may stand elsewhere
// in the next revision. It wants Keep first, which tells of those left out since
// the next workbook has the name itself.
func (b *Book) OwnNames(added []string) []sheet.Name {
	var names []sheet.Name
	for _, name := range slices.Sorted(maps.Keys(b.found.f.Names)) {
		p := b.found.f.Names[name]
		if _, ours := b.was.f.Names[name]; !ours && !b.clash[name] && slices.Contains(added, p.Sheet) {
			names = append(names, sheet.Name{Name: name, Refers: p.Abs(p.Sheet)})
		}
	}
	return names
}

// names finds the office's names that the next workbook defines itself: of two
// alike, a file is damaged.
func (k *keeper) names(next *sheet.Book, added []string) {
	own := map[string]bool{}
	for _, n := range next.Names {
		own[strings.ToLower(n.Name)] = true
	}
	k.b.clash = own
	for name, p := range k.b.found.f.Names {
		if _, ours := k.b.was.f.Names[name]; !ours && own[name] && slices.Contains(added, p.Sheet) {
			k.lost = append(k.lost, workbook.Change{Place: k.placeText(p), What: "The name " + name + ", which this workbook now has itself", Note: "left out; give the cell another name"})
		}
	}
}
