package xlsx

import (
	"net/url"
	"slices"
	"strconv"
	"strings"

	"tentwright/workbook/sheet"
)

// addName notes a name of the whole book. Names of one sheet, and those that
// stand for programs, are passed over.
func (b *book) addName(m *markup) {
	name := unescape(m.attr("name"))
	scoped := m.attr("localSheetId") != "" || strings.HasPrefix(name, "_xlnm")
	program := m.on("function") || m.on("vbProcedure") || m.on("xlm")
	if name == "" || scoped || program {
		return
	}
	b.names = append(b.names, definedName{name, m.content()})
}

// places finds the block of cells that each name stands for, by the name in
// lower case. Lost are the names of cells that are gone, in other files or in
// several blocks. A name for a number or a formula is neither.
func (b *book) places(tabs []tab) (names map[string]sheet.Place, lost []string) {
	byName := make(map[string]string, len(tabs))
	for _, t := range tabs {
		byName[strings.ToLower(t.name)] = t.name
	}
	names = make(map[string]sheet.Place, len(b.names))
	for _, n := range b.names {
		refers := strings.TrimPrefix(strings.TrimSpace(n.refers), "=")
		on, area, whole := parsePlace(refers)
		own, known := byName[strings.ToLower(on)]
		switch {
		case whole && known:
			names[strings.ToLower(n.name)] = sheet.Place{Sheet: own, Range: area}
		case whole, strings.Contains(refers, "#REF!"), severalPlaces(refers):
			lost = append(lost, n.name)
		}
	}
	slices.Sort(lost)
	return names, slices.Compact(lost)
}

// severalPlaces tells a list of blocks of cells, and a block across several
// sheets, from a formula.
func severalPlaces(refers string) bool {
	refers = strings.TrimSuffix(strings.TrimPrefix(refers, "("), ")")
	for refers != "" {
		_, rest, ok := cutSheet(refers)
		if !ok {
			return false
		}
		end := strings.IndexAny(rest, ", ")
		if end < 0 {
			end = len(rest)
		}
		if _, ok := parseArea(rest[:end]); !ok {
			return false
		}
		refers = strings.TrimLeft(rest[end:], ", ")
	}
	return true
}

// parsePlace reads "'Pick list'!$A$1:$C$9".
func parsePlace(s string) (on string, r sheet.Range, ok bool) {
	on, rest, ok := cutSheet(s)
	if !ok {
		return "", r, false
	}
	r, ok = parseArea(rest)
	return on, r, ok
}

// cutSheet takes the sheet off a reference.
func cutSheet(s string) (on, rest string, ok bool) {
	if !strings.HasPrefix(s, "'") {
		on, rest, ok = strings.Cut(s, "!")
		return on, rest, ok && on != "" && !strings.ContainsAny(on, `"'(,+-*/&=<> `)
	}
	end := quotedEnd(s)
	if end >= len(s) || s[end] != '!' {
		return "", "", false
	}
	return strings.ReplaceAll(s[1:end-1], "''", "'"), s[end+1:], true
}

// parseArea reads a cell, a block, whole columns "$A:$C" or whole rows "$1:$3".
// The corners may stand in any order.
func parseArea(s string) (sheet.Range, bool) {
	from, to, two := strings.Cut(s, ":")
	if !two {
		to = from
	}
	r1, c1, ok1 := parseCorner(from)
	r2, c2, ok2 := parseCorner(to)
	if !ok1 || !ok2 || (r1 == 0) != (r2 == 0) || (c1 == 0) != (c2 == 0) || !two && (r1 == 0 || c1 == 0) {
		return sheet.Range{}, false
	}
	r := sheet.Range{R1: min(r1, r2), C1: min(c1, c2), R2: max(r1, r2), C2: max(c1, c2)}
	if r1 == 0 {
		r.R1, r.R2 = 1, sheet.MaxRows
	}
	if c1 == 0 {
		r.C1, r.C2 = 1, sheet.MaxCols
	}
	return r, r.Valid()
}

// parseCorner reads "$B$7", "$B" or "$7"; what is missing is 0.
func parseCorner(s string) (row, col int, ok bool) {
	rest := strings.TrimPrefix(s, "$")
	i := 0
	for i < len(rest) && letter(rest[i]) && i < 4 {
		col = col*26 + int(rest[i]|0x20-'a') + 1
		i++
	}
	digits := rest[i:]
	if i > 0 {
		digits = strings.TrimPrefix(digits, "$")
		if digits == "" {
			return 0, col, col <= sheet.MaxCols && len(rest) == i
		}
	}
	for _, d := range []byte(digits) {
		if d < '0' || d > '9' {
			return 0, 0, false
		}
	}
	row, err := strconv.Atoi(digits)
	return row, col, err == nil && row >= 1 && row <= sheet.MaxRows && col <= sheet.MaxCols
}

func letter(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' }

// fileName is the target of a link as people write it.
func fileName(target string) string {
	if plain, err := url.PathUnescape(target); err == nil {
		target = plain
	}
	return strings.TrimPrefix(target, "file:///")
}
