package revise

import (
	"fmt"
	"maps"
	"slices"

	"tentwright/workbook/sheet"
)

// rowAt is a row of a sheet.
type rowAt struct {
	tab string
	row int
}

// align finds, for the rows of a sheet, the same rows of another workbook's:
// lines by their keys and single cells by their names, wherever they moved;
// rows between two that were found by their place between them, if none was
// added there, and else by their first text. rekey gives a line's key there.
// Rows below all that is written are found down to the last.
func align(from, to *view, tab, there string, last int, rekey func(string) string) map[int]int {
	a := &aligner{from: identities(from, tab), to: map[string]int{}, rows: map[int]int{}, taken: map[int]bool{}}
	for row, id := range identities(to, there) {
		a.to[id.text()] = row
	}
	for row, id := range a.from {
		if id.kind == "build" || id.kind == "need" {
			id.key = rekey(id.key)
		}
		if to, ok := a.to[id.text()]; ok && id.kind != byText && (id.key != "") {
			a.rows[row], a.taken[to] = to, true
		}
	}
	a.between(fences(from, to, tab, there), last)
	return a.rows
}

// aligner is an alignment while it is made.
type aligner struct {
	from  map[int]identity
	to    map[string]int
	rows  map[int]int
	taken map[int]bool
}

// fence is a row that stands in both sheets and that rows do not move across.
type fence struct{ from, to int }

// fences are the edges of named blocks and the cells with names of their own,
// from top to bottom. One that would cross another is left out.
func fences(from, to *view, tab, there string) []fence {
	list := []fence{{0, 0}}
	for _, name := range slices.Sorted(maps.Keys(from.f.Names)) {
		p, q := from.f.Names[name], to.f.Names[name]
		if p.Sheet != tab || q.Sheet != there {
			continue
		}
		list = append(list, fence{p.R2, q.R2})
		if !p.One() {
			list = append(list, fence{p.R1, q.R1})
		}
	}
	slices.SortFunc(list, func(a, b fence) int { return a.from - b.from })
	kept := list[:1]
	for _, f := range list[1:] {
		if last := kept[len(kept)-1]; f.from > last.from && f.to > last.to {
			kept = append(kept, f)
		}
	}
	return kept
}

// between places the rows that have neither key nor name.
func (a *aligner) between(list []fence, last int) {
	for i, f := range list {
		end, same := last+1, true // below the last fence all rows keep their distance
		if i+1 < len(list) {
			next := list[i+1]
			end, same = next.from, next.from-f.from == next.to-f.to
		}
		for row := max(1, f.from); row < end; row++ {
			if _, found := a.rows[row]; found {
				continue
			}
			to := f.to + row - f.from
			if id := a.from[row]; !same {
				if to = a.to[id.text()]; id.kind != byText {
					to = 0
				}
			}
			if to > 0 && !a.taken[to] {
				a.rows[row], a.taken[to] = to, true
			}
		}
	}
}

// identity is what a row is known by in another workbook.
type identity struct{ kind, key string }

// byText is the kind of a row that is known by its first text; the other kinds
// are tables, and byName.
const (
	byText = "text"
	byName = "name"
)

func (id identity) text() string { return id.kind + ":" + id.key }

// identities gives the rows of a sheet what each is known by: the key of a
// table, the name of a cell in it, or its first text.
func identities(v *view, tab string) map[int]identity {
	ids := map[int]identity{}
	for _, t := range keyedTables() {
		if block, ok := v.over[t.table]; ok && block.Sheet == tab {
			for key, rows := range v.rows[t.table] {
				ids[rows[0]] = identity{t.table, key}
			}
		}
	}
	for _, n := range slices.Sorted(maps.Keys(v.f.Names)) {
		if p := v.f.Names[n]; p.Sheet == tab && p.One() && ids[p.R1].kind == "" {
			ids[p.R1] = identity{byName, n}
		}
	}
	s := v.f.Sheet(tab)
	if s == nil {
		return ids
	}
	times := map[string]int{}
	for i := range s.Rows {
		if words := firstText(s.Rows[i]); ids[i+1].kind == "" && words != "" {
			times[words]++
			ids[i+1] = identity{byText, fmt.Sprintf("%s#%d", words, times[words])}
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
