package workbook

import (
	"slices"
	"strconv"
	"strings"

	"tentwright/workbook/sheet"
)

// OpenPrecedents lists the cells of a book that people may type into and that
// formulas name, by the sheets and from top to bottom.
func OpenPrecedents(b *sheet.Book) []sheet.Place {
	named := map[string][]sheet.Range{}
	seen := map[string]bool{}
	for _, list := range newDependencies(b).needs {
		for _, at := range list {
			if !seen[at] {
				seen[at] = true
				name, refs, _ := strings.Cut(at, "!")
				named[name] = append(named[name], blockOf(refs))
			}
		}
	}
	var open []sheet.Place
	for _, s := range b.Sheets {
		for r, row := range s.Rows {
			for c := range row.Cells {
				at := sheet.Range{R1: r + 1, C1: c + 1, R2: r + 1, C2: c + 1}
				if !row.Cells[c].Style.Role.Locked() && row.Cells[c].Formula == "" && !covered(s, at) && slices.ContainsFunc(named[s.Name], at.Overlaps) {
					open = append(open, sheet.Place{Sheet: s.Name, Range: at})
				}
			}
		}
	}
	return open
}

// covered tells whether a cell lies behind the first of a merged block.
func covered(s *sheet.Sheet, at sheet.Range) bool {
	return slices.ContainsFunc(s.Merges, func(m sheet.Range) bool { return m.Overlaps(at) && (m.R1 != at.R1 || m.C1 != at.C1) })
}

// blockOf reads "B2" or "B2:C9".
func blockOf(refs string) sheet.Range {
	from, to, several := strings.Cut(refs, ":")
	if !several {
		to = from
	}
	r := sheet.Range{}
	r.R1, r.C1 = cellOf(from)
	r.R2, r.C2 = cellOf(to)
	return r
}

func cellOf(ref string) (row, col int) {
	letters := strings.TrimRight(ref, "0123456789")
	row, _ = strconv.Atoi(ref[len(letters):])
	return row, column1(letters)
}
