package xlsx

import (
	"bytes"
	"fmt"
	"slices"
	"strconv"

	"tentwright/workbook/sheet"
)

// contentTypes is the part that a reader of the package wants first.
const contentTypes = "[Content_Types].xml"

// finisher gives a part of the library its last touch before it is packed: it
// appends the finished part to room. Several run at once, so they only read.
type finisher func(room, data []byte) ([]byte, error)

// finishers are the parts that need one, by their names in the file.
func (x *writer) finishers() map[string]finisher {
	out := map[string]finisher{contentTypes: sortDefaults, "xl/workbook.xml": x.insertNames}
	noted := 0
	for i, g := range x.grids {
		out[fmt.Sprintf("xl/worksheets/sheet%d.xml", i+1)] = g.insertRows
		if len(g.sheet.Notes) == 0 {
			continue
		}
		// The drawings of notes count the sheets that have notes.
		noted++
		out[fmt.Sprintf("xl/drawings/vmlDrawing%d.vml", noted)] = g.placeNotes
	}
	return out
}

// insertRows puts columns, rows and merges where the library left them out.
func (g *grid) insertRows(room, data []byte) ([]byte, error) {
	head, tail, ok := bytes.Cut(data, []byte("<sheetData></sheetData>"))
	if !ok {
		return nil, fmt.Errorf("sheet %q: no place for its rows", g.sheet.Name)
	}
	if g.sheet.Filter != nil {
		head, tail = plainFilter(*g.sheet.Filter, head, tail)
	}
	room = appendColumns(append(room, head...), g.sheet.Columns)
	room = g.appendRows(room)
	// Merges stand after the protection and the filter, before all else.
	at := 0
	for _, end := range []string{"</sheetProtection>", "</autoFilter>"} {
		if i := bytes.Index(tail, []byte(end)); i >= 0 {
			at = i + len(end)
		}
	}
	room = appendMerges(append(room, tail[:at]...), g.sheet.Merges)
	return append(room, tail[at:]...), nil
}

// plainFilter writes the range of the filter arrows without fixed ends, and
// takes back that rows were already filtered out.
func plainFilter(r sheet.Range, head, tail []byte) (newHead, newTail []byte) {
	fixed := sheet.AbsRef(r.R1, r.C1) + ":" + sheet.AbsRef(r.R2, r.C2)
	return bytes.Replace(head, []byte(`<sheetPr filterMode="true">`), []byte("<sheetPr>"), 1),
		bytes.Replace(tail, []byte(`<autoFilter ref="`+fixed+`"`), []byte(`<autoFilter ref="`+r.String()+`"`), 1)
}

// appendColumns appends widths and hides columns; a width of 0 stays as the
// program has it.
func appendColumns(b []byte, columns []sheet.Column) []byte {
	before := len(b)
	for i, c := range columns {
		if c.Width <= 0 && !c.Hidden {
			continue
		}
		n := strconv.Itoa(i + 1)
		b = append(b, `<col min="`+n+`" max="`+n+`"`...)
		if c.Width > 0 {
			b = append(b, ` width="`...)
			b = strconv.AppendFloat(b, c.Width, 'f', -1, 64)
			b = append(b, `" customWidth="1"`...)
		}
		if c.Hidden {
			b = append(b, ` hidden="1"`...)
		}
		b = append(b, "/>"...)
	}
	if len(b) == before {
		return b
	}
	b = slices.Insert(b, before, []byte("<cols>")...)
	return append(b, "</cols>"...)
}

// appendMerges appends the merged ranges, or nothing when there are none.
func appendMerges(b []byte, merges []sheet.Range) []byte {
	if len(merges) == 0 {
		return b
	}
	b = append(b, `<mergeCells count="`...)
	b = strconv.AppendInt(b, int64(len(merges)), 10)
	b = append(b, `">`...)
	for _, m := range merges {
		b = append(b, `<mergeCell ref="`+m.String()+`"/>`...)
	}
	return append(b, "</mergeCells>"...)
}

// sortDefaults puts the <Default> elements of the content types in order of
// their text; they come in the order of a map.
func sortDefaults(room, data []byte) ([]byte, error) {
	const open, end = "<Default ", "</Default>"
	first := bytes.Index(data, []byte(open))
	last := bytes.LastIndex(data, []byte(end))
	if first < 0 || last < first {
		return append(room, data...), nil
	}
	last += len(end)
	elements := bytes.SplitAfter(data[first:last], []byte(end))
	slices.SortFunc(elements, bytes.Compare)
	room = append(room, data[:first]...)
	for _, e := range elements {
		room = append(room, e...)
	}
	return append(room, data[last:]...), nil
}
