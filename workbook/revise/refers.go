package revise

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"tentwright/workbook"
	"tentwright/workbook/sheet"
)

// reference is a cell, or a block of cells, of another sheet in a formula.
var reference = regexp.MustCompile(`(?:'((?:[^']|'')+)'|([\p{L}_][\p{L}\p{N}_.]*))!\$?([A-Z]{1,3})\$?([0-9]{1,7})(?::\$?([A-Z]{1,3})\$?([0-9]{1,7}))?`)

// mostReferences is how many references of one sheet are told one by one.
const mostReferences = 12

// references tells of formulas on the office's own sheets that name cells of
// ours which stand elsewhere in the next revision, or may: those formulas come
// along as they are and would show another figure without a word.
func (k *keeper) references(added []string) {
	for _, tab := range added {
		told, more := map[string]bool{}, 0
		s := k.b.found.f.Sheet(tab)
		for i, row := range s.Rows {
			for j, c := range row {
				for _, m := range reference.FindAllStringSubmatch(c.Formula, -1) {
					change, moved := k.moved(m)
					switch {
					case !moved || told[change.What]:
						continue
					case len(told) >= mostReferences:
						more++
						continue
					}
					told[change.What] = true
					change.Place = k.placeText(place(tab, i+1, j+1))
					k.lost = append(k.lost, change)
				}
			}
		}
		if more > 0 {
			k.lost = append(k.lost, workbook.Change{Place: tab, What: fmt.Sprintf("%d more references to cells that may stand elsewhere now", more), Note: "look at the formulas of this sheet"})
		}
	}
}

// moved tells whether what a formula refers to may be another figure now.
func (k *keeper) moved(m []string) (workbook.Change, bool) {
	tab := strings.ReplaceAll(m[1], "''", "'") + m[2]
	for _, s := range k.b.found.f.Sheets {
		if strings.EqualFold(s.Name, tab) {
			tab = s.Name
		}
	}
	was, ours := k.b.sheets[tab]
	if !ours {
		return workbook.Change{}, false
	}
	row, _ := strconv.Atoi(m[4])
	last := row
	if m[6] != "" {
		last, _ = strconv.Atoi(m[6])
	}
	ref := m[3] + m[4]
	if m[6] != "" {
		ref += ":" + m[5] + m[6]
	}
	rows := k.rowsThen(tab, was)
	stays := true
	for n := row; n <= min(last, k.b.found.last(tab)) && stays; n++ {
		stays = rows[n] == n
	}
	if stays && row <= k.b.found.last(tab) {
		return workbook.Change{}, false
	}
	c := workbook.Change{What: "Refers to " + tab + "!" + ref, Note: "which may be another figure now"}
	if to := rows[row]; to > 0 && last == row {
		c.Note = fmt.Sprintf("the figure now stands in %s%d", m[3], to)
	}
	if name := k.nameAt(tab, ref); name != "" {
		c.Note += "; use the name " + name
	}
	return c, true
}

// rowsThen are the rows of the next workbook for those of a sheet that came
// back, as far as they are known.
func (k *keeper) rowsThen(tab, was string) map[int]int {
	if rows, ok := k.rows[tab]; ok {
		return rows
	}
	own, rows := k.b.rows[tab], map[int]int{}
	if k.tab(was) != nil && own != nil {
		next := k.rowsNext(was, own)
		for now, old := range own {
			rows[now] = next[old]
		}
	}
	k.rows[tab] = rows
	return rows
}

// rowsNext are the rows of the next workbook for those of a sheet as it was
// written; rows are those that came back.
func (k *keeper) rowsNext(was string, rows map[int]int) map[int]int {
	last := k.b.was.last(was)
	for _, row := range rows {
		last = max(last, row)
	}
	return align(k.b.was, k.then, was, was, last, k.b.places.lineKey)
}

// nameAt is the name of a single cell of ours; "" where it has none.
func (k *keeper) nameAt(tab, ref string) string {
	for _, name := range slices.Sorted(maps.Keys(k.b.found.f.Names)) {
		p := k.b.found.f.Names[name]
		if _, ours := k.b.was.f.Names[name]; ours && p.One() && p.Sheet == tab && sheet.Ref(p.R1, p.C1) == ref {
			return name
		}
	}
	return ""
}

// formulas tells, in one line for each sheet, of the office's formulas in free
// cells: what they gave comes along as figures, since the cells that they name
// may stand elsewhere.
func (k *keeper) formulas() {
	for _, tab := range slices.Sorted(maps.Keys(k.frozen)) {
		cells := k.frozen[tab]
		var refs []string
		for _, p := range cells[:min(len(cells), mostReferences)] {
			refs = append(refs, sheet.Ref(p.R1, p.C1))
		}
		words := strings.Join(refs, ", ")
		if more := len(cells) - len(refs); more > 0 {
			words += fmt.Sprintf(" and %d more", more)
		}
		k.lost = append(k.lost, workbook.Change{Place: k.placeText(cells[0]), What: "Own formulas in free cells, in " + words,
			Note: "only their figures are kept; put formulas on a sheet of their own"})
	}
}
