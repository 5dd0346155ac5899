package revise

import (
	"maps"
	"slices"

	"tentwright/workbook/sheet"
)

// OwnNames lists the names that the office defined for cells of the sheets that
// it added. One for a cell of ours is left out: that cell may stand elsewhere
// in the next revision.
func (b *Book) OwnNames(added []string) []sheet.Name {
	var names []sheet.Name
	for _, name := range slices.Sorted(maps.Keys(b.found.f.Names)) {
		p := b.found.f.Names[name]
		if _, ours := b.was.f.Names[name]; !ours && slices.Contains(added, p.Sheet) {
			names = append(names, sheet.Name{Name: name, Refers: p.Abs(p.Sheet)})
		}
	}
	return names
}
