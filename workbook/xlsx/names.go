package xlsx

import (
	"bytes"
	"errors"
	"fmt"

	"github.com/xuri/excelize/v2"

	"tentwright/workbook/sheet"
)

// printing sets what to print and which rows head each page: names too, each
// counting for its sheet alone.
func (x *writer) printing(s *sheet.Sheet) error {
	if s.PrintArea != nil {
		if err := x.file.SetDefinedName(&excelize.DefinedName{
			Name: "_xlnm.Print_Area", RefersTo: s.PrintArea.Abs(s.Name), Scope: s.Name,
		}); err != nil {
			return fmt.Errorf("print area: %w", err)
		}
	}
	if s.TitleRows[0] > 0 {
		refers := fmt.Sprintf("%s!$%d:$%d", sheet.Quote(s.Name), s.TitleRows[0], s.TitleRows[1])
		if err := x.file.SetDefinedName(&excelize.DefinedName{
			Name: "_xlnm.Print_Titles", RefersTo: refers, Scope: s.Name,
		}); err != nil {
			return fmt.Errorf("heading rows: %w", err)
		}
	}
	return nil
}

// insertNames puts the defined names of the book before those of its sheets.
// The library would look through all names for each one it is given, and a
// large quote has a thousand.
func (x *writer) insertNames(room, data []byte) ([]byte, error) {
	const sheets, open, end = "</sheets>", "<definedNames>", "</definedNames>"
	at := bytes.Index(data, []byte(sheets))
	if at < 0 {
		return nil, errors.New("no place for the defined names")
	}
	at += len(sheets)
	rest, scoped := bytes.CutPrefix(data[at:], []byte(open))
	if len(x.book.Names) == 0 {
		return append(room, data...), nil
	}
	room = append(append(room, data[:at]...), open...)
	for _, n := range x.book.Names {
		room = appendAttribute(append(room, "<definedName"...), "comment", n.Comment)
		room = append(room, ` name="`+n.Name+`">`...)
		room = appendMarkup(room, n.Refers)
		room = append(room, "</definedName>"...)
	}
	if !scoped {
		room = append(room, end...)
	}
	return append(room, rest...), nil
}
