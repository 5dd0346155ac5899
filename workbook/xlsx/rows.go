package xlsx

import (
	"strconv"

	"tentwright/workbook/sheet"
)

// grid is a sheet with all that its rows need, gathered before the parts are
// packed: packing takes several sheets at once and only reads.
type grid struct {
	sheet  *sheet.Sheet
	rows   []sheet.Row // dressed
	wide   int         // cells of the widest row
	merged spans
	styles []int32 // numbers of the styles, of all cells that are not blank
}

// grid gathers a sheet's rows and makes their styles, in the order in which the
// cells stand, so that the numbers of the styles are the same each time.
func (x *writer) grid(s *sheet.Sheet) (*grid, error) {
	g := &grid{sheet: s, rows: dressed(s), merged: newSpans(s)}
	linked := map[[2]int]bool{}
	for _, l := range s.Links {
		linked[[2]int{l.Row, l.Col}] = true
	}
	count := 0
	for _, r := range g.rows {
		g.wide = max(g.wide, len(r.Cells))
		count += len(r.Cells)
	}
	g.styles = make([]int32, 0, count)
	for i, r := range g.rows {
		for k := range r.Cells {
			c := &r.Cells[k]
			if c.Blank() {
				continue
			}
			id, err := x.looks.id(dress{c.Style, len(linked) > 0 && linked[[2]int{i + 1, k + 1}]})
			if err != nil {
				return nil, err
			}
			g.styles = append(g.styles, int32(id))
		}
	}
	return g, nil
}

// appendRows appends the rows; cells with neither value nor style are left out.
func (g *grid) appendRows(b []byte) []byte {
	names := make([]string, g.wide)
	for i := range names {
		names[i] = sheet.ColName(i + 1)
	}
	b = append(b, "<sheetData>"...)
	styles := g.styles
	var digits [8]byte
	for i, r := range g.rows {
		number := strconv.AppendInt(digits[:0], int64(i+1), 10)
		b = append(append(append(b, `<row r="`...), number...), '"')
		if h := height(g.sheet, g.merged, i+1, r); h > 0 {
			b = append(b, ` ht="`...)
			b = strconv.AppendFloat(b, h, 'f', -1, 64)
			b = append(b, `" customHeight="1"`...)
		}
		b = append(b, '>')
		for k := range r.Cells {
			c := &r.Cells[k]
			if c.Blank() {
				continue
			}
			b = append(append(append(b, `<c r="`...), names[k]...), number...)
			b = append(b, `" s="`...)
			b = strconv.AppendInt(b, int64(styles[0]), 10)
			styles = styles[1:]
			b = appendContent(append(b, '"'), c)
		}
		b = append(b, "</row>"...)
	}
	return append(b, "</sheetData>"...)
}

// appendContent appends the rest of a cell's element: the type, the formula and
// the value. A formula keeps a computed text even when it is empty, for a
// reader that does not calculate would take none for unknown.
func appendContent(b []byte, c *sheet.Cell) []byte {
	text, isText := c.Value.(string)
	_, isBool := c.Value.(bool)
	switch {
	case c.Value == nil:
		return append(b, "/>"...)
	case isText && c.Formula == "":
		b = append(b, ` t="inlineStr"><is><t>`...)
		b = appendText(b, text)
		return append(b, "</t></is></c>"...)
	case isText:
		b = append(b, ` t="str"`...)
	case isBool:
		b = append(b, ` t="b"`...)
	}
	b = append(b, '>')
	if c.Formula != "" {
		b = append(b, "<f>"...)
		b = appendFormula(b, c.Formula)
		b = append(b, "</f>"...)
	}
	b = append(b, "<v>"...)
	b = appendValue(b, c.Value)
	return append(b, "</v></c>"...)
}

// appendValue appends a value as the format stores it: numbers with as many
// digits as it takes to read the same number back.
func appendValue(b []byte, v any) []byte {
	switch v := v.(type) {
	case string:
		return appendText(b, v)
	case bool:
		if v {
			return append(b, '1')
		}
		return append(b, '0')
	case int:
		return strconv.AppendInt(b, int64(v), 10)
	case float64:
		return strconv.AppendFloat(b, v, 'f', -1, 64)
	case sheet.Amount:
		return strconv.AppendFloat(b, v.InexactFloat64(), 'f', -1, 64)
	case sheet.Serial:
		return strconv.AppendInt(b, int64(v.Serial()), 10)
	}
	return b
}
