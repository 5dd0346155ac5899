package intake

import (
	"fmt"
	"strings"

	"tentwright/catalog"
	"tentwright/workbook/sheet"
)

// tents writes a row for each tent. What the drop-downs of size, eave, walls
// and doors offer follows from the family that was chosen in the row.
func (f *form) tents() {
	f.newPage()
	f.band("Tents", "One row for tents alike. Choose the family first, then the size. Eave and ground may stay empty: the family's usual height, the site's ground. Count empty: one.")
	f.row(cell(colLabel, "Joins: the short name of the tent at whose side this one stands, sharing a gutter; then the side of THIS tent that touches.", faint()))
	f.heads(colNo, "No.", "Name, as the customer calls it", "Family", "Size", "Count", "Eave, "+f.c.Company.Units.LengthUnit(), "Short name", "Ground", "Joins", "At side", "% off")
	f.list("families", families(f.c).texts())
	sizeRows, legRows := f.table("sizes", f.each(func(m *catalog.Family) []string { return sizes(m).texts() })), f.table("legs", f.each(func(m *catalog.Family) []string { return legs(f.c, m) }))
	wallRows, doorRows := f.table("walls", f.each(func(m *catalog.Family) []string { return walls(m).texts() })), f.table("doors", f.each(func(m *catalog.Family) []string { return doors(m).texts() }))
	first := len(f.s.Rows) + 1
	for n := 1; n <= Tents; n++ {
		f.tentRow(n)
		f.dependent("sizes", n, sizeRows)
		f.dependent("legs", n, legRows)
		f.dependent("walls", n, wallRows)
		f.dependent("doors", n, doorRows)
	}
	f.tentIDs()
	f.s.Highlights = append(f.s.Highlights, sheet.Highlight{Range: sheet.Range{R1: first, C1: colD, R2: len(f.s.Rows), C2: colD},
		Formula: fmt.Sprintf("AND(LEN($C%d)>0,LEN($D%d)=0)", first, first), Role: sheet.Warn})
	f.nameColumns("tent", first, map[string]int{"no": colNo, "name": colLabel, "family": colValue, "size": colD, "count": colE,
		"eave": colF, "id": colG, "ground": colH, "joins": colI, "at": colJ, "off": colK})
}

// each gives one list for every family of the shop.
func (f *form) each(of func(*catalog.Family) []string) [][]string {
	all := make([][]string, len(f.c.Families))
	for i := range f.c.Families {
		all[i] = of(&f.c.Families[i])
	}
	return all
}

// tentRow is the inputs of one tent.
func (f *form) tentRow(n int) {
	f.row(cell(colNo, n, counted()), input(colLabel, sheet.Text), pick(colValue), pick(colD), input(colE, sheet.General), pick(colF),
		input(colG, sheet.Text), pick(colH), pick(colI), pick(colJ), input(colK, sheet.General))
	named := map[string]int{"name": colLabel, "family": colValue, "size": colD, "id": colG}
	for _, id := range sorted(named) {
		f.nameCell(fmt.Sprintf("intake_tent_%d_%s", n, id), named[id])
	}
	own := func(id string) sheet.Validation {
		return sheet.Validation{Kind: sheet.List, Source: fmt.Sprintf("intake_%s_%d", id, n)}
	}
	f.allow(colLabel, words(120), "What the customer calls it, e.g. Dinner tent; may stay empty.")
	f.allow(colValue, sheet.Validation{Kind: sheet.List, Source: "intake_list_families"}, "The family of tent; the size is chosen from it.")
	f.allow(colD, own("sizes"), "A size of the family in this row; choose the family first.")
	f.allow(colE, wholes(1, 500), "How many alike; empty: one.")
	f.allow(colF, own("legs"), "Eave height, one that the family has; empty: the usual one. A bare number is in "+f.c.Company.Units.LengthUnit()+".")
	f.allow(colG, words(60), fmt.Sprintf("A short name for lists, e.g. dinner; empty: tent-%d.", n))
	f.allowFrom(colH, "grounds", grounds(f.c), "The ground under this tent, if not that of the site.")
	f.allow(colI, sheet.Validation{Kind: sheet.List, Source: "intake_list_tents"}, "The short name of the tent at whose side this one stands; empty: none.")
	f.allow(colJ, sheet.Validation{Kind: sheet.List, Source: strings.Join(sides().texts(), ",")}, "The side of this tent that touches the other.")
	f.allow(colK, decimals(100), "Percent off by hand; type 10 for ten percent.")
}

// sides writes a row for each side of each tent.
func (f *form) sides() {
	f.newPage()
	f.band("Sides of the tents", "Only the sides that are closed, have doors, cannot be staked, or stand on another ground; all others are open. How many empty: one. Front and back run along the length.")
	f.row(cell(colLabel, "No stakes: Yes where a buried line or paving forbids them along the side; it takes ballast. Have buried utilities marked before anything is driven; local rules decide.", faint()))
	p := &pages{f: f, heads: f.sideHeads, left: pageLines - 4}
	p.heads()
	first := len(f.s.Rows) + 1
	for n := 1; n <= Tents; n++ {
		p.room(len(sides()))
		for _, side := range sides() {
			f.sideRow(n, side)
		}
	}
	f.nameColumns("side", first, map[string]int{"tent": colNo, "side": colKey, "wall": colValue, "door": colD, "doors": colE,
		"other": colF, "others": colG, "ground": colH, "stakes": colI})
}

func (f *form) sideHeads() {
	f.heads(colNo, "No.", "Tent and side", "Wall", "Door", "How many", "Other door", "How many", "Ground at this side", "No stakes")
}

// sideRow is the inputs of one side.
func (f *form) sideRow(n int, side choice) {
	title := fmt.Sprintf(`"%s"&%s`, side.text, tentTitle(n, `", "&`))
	f.row(cell(colNo, n, counted()), placed{colLabel, sheet.Cell{Value: side.text, Formula: title, Style: wrapped()}}, pick(colValue), pick(colD), input(colE, sheet.General),
		pick(colF), input(colG, sheet.General), pick(colH), pick(colI), cell(colKey, side.id, key()))
	own := func(id string) sheet.Validation {
		return sheet.Validation{Kind: sheet.List, Source: fmt.Sprintf("intake_%s_%d", id, n)}
	}
	f.allow(colValue, own("walls"), "The kind of wall, as the family has them; empty: open.")
	f.allow(colD, own("doors"), "A kind of door in this side.")
	f.allow(colE, wholes(1, 50), "How many of that door; empty: one.")
	f.allow(colF, own("doors"), "Another kind of door in this side.")
	f.allow(colG, wholes(1, 50), "How many of the other door; empty: one.")
	f.allowFrom(colH, "grounds", grounds(f.c), "The ground under the legs of this side, if not that of the tent.")
	f.allow(colI, yesOrNo(), "Yes where nothing may be driven along this side.")
}

// tentTitle is the formula of what a tent is called in other tables: its name,
// else its family and size, each behind some more of the formula; "" for an
// empty row.
func tentTitle(n int, before string) string {
	name := fmt.Sprintf("intake_tent_%d_", n)
	return fmt.Sprintf(`IF(LEN(%sname)=0,IF(LEN(%ssize)=0,"",%s%sfamily&" "&%ssize),%s%sname)`, name, name, before, name, name, before, name)
}
