package workbook

import (
	"cmp"
	"slices"
	"strings"

	"tentwright/catalog"
	"tentwright/quote/load"
	"tentwright/workbook/sheet"
)

// portion is what one row takes of a part: all of it when the part has one
// row, a fixed share, or on the part's last row what the others leave.
type portion struct {
	part     *catalog.Part
	share    *load.Share
	trip     *load.Trip // nil: nothing is carried at all
	key      string     // part@trip, or part@trip#n for a tagged piece
	rank     int        // among the rows of the part, from 1
	of       int        // rows of the part
	quantity int
	rides    heap // by the counts of the yard
	order    int  // place in loading the trip, on the manifest
}

// portions cuts shares into rows, in their order. With pieces, each tagged
// piece has a row of its own.
func portions(m *load.Manifest, pieces bool) []portion {
	var list []portion
	rows := map[string]int{}
	for i := range m.Shares {
		h := &m.Shares[i]
		many, each := 1, h.Quantity
		if pieces && h.Part.Tracked {
			many, each = max(1, h.Quantity), min(1, h.Quantity)
		}
		for range many {
			rows[h.Part.ID]++
			p := portion{part: h.Part, share: h, rank: rows[h.Part.ID], quantity: each, key: h.Part.ID + "@"}
			if h.Trip >= 0 {
				p.trip = &m.Trips[h.Trip]
				p.key += p.trip.Key
			}
			if pieces && h.Part.Tracked {
				p.key += "#" + itoa(p.rank)
			}
			list = append(list, p)
		}
	}
	for i := range list {
		list[i].of = rows[list[i].part.ID]
	}
	return list
}

// byBin sorts rows in the walking order of the yard.
func byBin(list []portion) {
	slices.SortStableFunc(list, func(a, b portion) int {
		return cmp.Or(natural(a.part.Bin, b.part.Bin), cmp.Compare(a.part.Name, b.part.Name), natural(a.tripKey(), b.tripKey()), cmp.Compare(a.rank, b.rank))
	})
}

// tripKey is the key of the row's trip; none where nothing is carried.
func (p *portion) tripKey() string {
	if p.trip == nil {
		return ""
	}
	return p.trip.Key
}

// name is the part as a row calls it; pieces of several are numbered.
func (p *portion) name(pieces bool) string {
	if pieces && p.part.Tracked && p.of > 1 {
		return p.part.Name + ", piece " + itoa(p.rank)
	}
	return p.part.Name
}

// shareCell is the fixed share of a row; none where a row takes all or what
// is left.
func (p *portion) shareCell() sheet.Cell {
	if p.rank == p.of {
		return value(nil)
	}
	return value(p.quantity)
}

// takes is the formula of a row's quantity from the part's total and, in the
// named columns of its table, the shares of the part's other rows.
func (p *portion) takes(t *table, row int, total string) string {
	if p.of == 1 {
		return total
	}
	taken := "SUMIFS(" + t.name + "_share," + t.name + "_part," + t.at("part", row)
	if p.rank == p.of {
		return "MAX(0," + total + "-" + taken + "))"
	}
	before := taken + "," + t.name + "_rank," + quoted("<") + "&" + t.at("rank", row) + ")"
	return "MAX(0,MIN(" + t.at("share", row) + "," + total + "-" + before + "))"
}

// took is takes of a number: what a row takes of a total when the rows before it
// have so many for their shares.
func (p *portion) took(total, before int) int {
	left := max(0, total-before)
	if p.rank == p.of {
		return left
	}
	return min(p.quantity, left)
}

// vehicleName is a trip's vehicle in words, told apart from others alike.
func vehicleName(t *load.Trip) string {
	name := t.Vehicle.Name
	if t.Vehicle.Count > 1 {
		name += ", no. " + itoa(t.Number)
	}
	if t.Turn > 1 {
		name += ", run " + itoa(t.Turn)
	}
	return name
}

// shortVehicle is a trip's key and the first words of its vehicle's name.
func shortVehicle(t *load.Trip) string {
	name, _, _ := strings.Cut(t.Vehicle.Name, ",")
	return t.Key + " " + name
}

// field is one cell of a row that stands outside tables, merged from one
// column to another. With words on what goes in it, it is a blank to fill in,
// and its name is the one by which it is found again.
type field struct {
	from, to      int
	cell          sheet.Cell
	name, explain string
}

// label is the words before a field.
func label(s string) sheet.Cell { return in(text(s), sheet.Style{Role: sheet.Label, Bold: true}) }

// span is a field that is only read.
func span(from, to int, cell sheet.Cell) field { return field{from: from, to: to, cell: cell} }

// blank is a place to write by hand or by typing.
func blank(from, to int, name, explain string) field {
	return field{from, to, in(text(""), sheet.Style{Role: sheet.InputText}), name, explain}
}

// fieldHeight leaves room to write by hand.
const fieldHeight = 18

// fields writes one row of fields and gives its number. A text that may take
// several lines makes the row as high as it needs.
func (l *layout) fields(s *sheet.Sheet, list ...field) int {
	row := sheet.Row{Height: fieldHeight}
	n := len(s.Rows) + 1
	for _, f := range list {
		for len(row.Cells) < f.to {
			row.Cells = append(row.Cells, sheet.Cell{})
		}
		for col := f.from; col <= f.to; col++ {
			row.Cells[col-1].Style = f.cell.Style
		}
		row.Cells[f.from-1] = f.cell
		if f.cell.Style.Wrap {
			row.Height = 0
		}
		if f.to > f.from {
			s.Merges = append(s.Merges, sheet.Range{R1: n, C1: f.from, R2: n, C2: f.to})
		}
		if f.name != "" {
			l.name(f.name, s, sheet.Range{R1: n, C1: f.from, R2: n, C2: f.from}, "")
			l.allow(s, n, f.from, words(200), f.explain)
		}
	}
	s.Rows = append(s.Rows, row)
	return n
}

// words is a limit on free text.
func words(most int) sheet.Validation {
	return sheet.Validation{Kind: sheet.TextLen, Min: "0", Max: itoa(most), AllowBlank: true}
}

// ticks is what may be typed into a box to tick.
func ticks() sheet.Validation { return sheet.Validation{Kind: sheet.List, Source: emptyBox + ",☑"} }

const emptyBox = "☐"

// tick is the style of a column of boxes.
func tick() sheet.Style { return sheet.Style{Role: sheet.Tick} }

// ends says up to which column a table prints; what stands right of it is for
// formulas and filters.
func (t *table) ends(last string) {
	t.s.PrintArea = &sheet.Range{R1: 1, C1: 1, R2: len(t.s.Rows), C2: t.col(last)}
}

// keepHeads keeps the headings in sight and gives them filter arrows.
func (t *table) keepHeads(frozen int) {
	head := t.first - 1
	t.s.FreezeRows, t.s.FreezeCols, t.s.TitleRows = head, frozen, [2]int{head, head}
	rows := t.rows()
	rows.R1--
	t.s.Filter = &rows
}
