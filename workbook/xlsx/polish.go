package xlsx

import (
	"bytes"
	"fmt"
	"slices"

	"tentwright/workbook/sheet"
)

// contentTypes is the part that a reader of the package wants first.
const contentTypes = "[Content_Types].xml"

// polish gives a finished part its last touch before it is packed: what the
// library writes in changing order, or not as spreadsheet programs do.
func (x *writer) polish(name string, data []byte) []byte {
	if name == contentTypes {
		return sortDefaults(data)
	}
	noted := 0
	for i, s := range x.book.Sheets {
		if s.Filter != nil && name == fmt.Sprintf("xl/worksheets/sheet%d.xml", i+1) {
			return plainFilter(s, data)
		}
		if len(s.Notes) == 0 {
			continue
		}
		// The drawings of notes count the sheets that have notes.
		noted++
		if name == fmt.Sprintf("xl/drawings/vmlDrawing%d.vml", noted) {
			return placeNotes(s, data)
		}
	}
	return data
}

// plainFilter writes the range of the filter arrows without fixed ends, and
// takes back that rows were already filtered out.
func plainFilter(s *sheet.Sheet, data []byte) []byte {
	data = bytes.Replace(data, []byte(`<sheetPr filterMode="true">`), []byte("<sheetPr>"), 1)
	r := *s.Filter
	fixed := sheet.AbsRef(r.R1, r.C1) + ":" + sheet.AbsRef(r.R2, r.C2)
	return bytes.Replace(data, []byte(`<autoFilter ref="`+fixed+`"`), []byte(`<autoFilter ref="`+r.String()+`"`), 1)
}

// sortDefaults puts the <Default> elements of the content types in order of
// their text; they come in the order of a map.
func sortDefaults(data []byte) []byte {
	const open, end = "<Default ", "</Default>"
	first := bytes.Index(data, []byte(open))
	last := bytes.LastIndex(data, []byte(end))
	if first < 0 || last < first {
		return data
	}
	last += len(end)
	elements := bytes.SplitAfter(data[first:last], []byte(end))
	slices.SortFunc(elements, bytes.Compare)
	return slices.Concat(data[:first], bytes.Join(elements, nil), data[last:])
}
