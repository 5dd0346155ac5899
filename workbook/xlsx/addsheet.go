package xlsx

import (
	"bytes"
	"fmt"
	"strings"

	"github.com/xuri/excelize/v2"

	"tentwright/workbook/sheet"
)

// AddFirst gives a file with one more sheet before its own, which stay as they
// are but for one of the same name, in whatever capitals: it is replaced. The
// sheet is a plain one: cells, looks, widths and links.
func AddFirst(data []byte, s *sheet.Sheet) ([]byte, error) {
	f, err := excelize.OpenReader(bytes.NewReader(data))
	if err != nil {
		return nil, err
	}
	defer f.Close()
	for _, name := range f.GetSheetList() {
		if strings.EqualFold(name, s.Name) {
			if err := f.DeleteSheet(name); err != nil {
				return nil, err
			}
		}
	}
	first := f.GetSheetName(0)
	if _, err := f.NewSheet(s.Name); err != nil {
		return nil, err
	}
	x := &writer{file: f, looks: newLooks(f, sheet.Currency{Symbol: "$", Minor: 2})}
	if err := x.plainSheet(s); err != nil {
		return nil, fmt.Errorf("sheet %q: %w", s.Name, err)
	}
	if err := f.MoveSheet(s.Name, first); err != nil {
		return nil, err
	}
	f.SetActiveSheet(0)
	out, err := f.WriteToBuffer()
	if err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

// plainSheet writes the cells of a sheet through the library, one by one.
func (x *writer) plainSheet(s *sheet.Sheet) error {
	for i, c := range s.Columns {
		if c.Width <= 0 {
			continue
		}
		letter := sheet.ColName(i + 1)
		if err := x.file.SetColWidth(s.Name, letter, letter, c.Width); err != nil {
			return err
		}
	}
	linked := map[[2]int]bool{}
	for _, l := range s.Links {
		linked[[2]int{l.Row, l.Col}] = true
	}
	for i := range s.Rows {
		for j := range s.Rows[i].Cells {
			if err := x.plainCell(s.Name, i+1, j+1, &s.Rows[i].Cells[j], linked[[2]int{i + 1, j + 1}]); err != nil {
				return err
			}
		}
		if h := height(s, spans{}, i+1, s.Rows[i]); h > 0 {
			if err := x.file.SetRowHeight(s.Name, i+1, h); err != nil {
				return err
			}
		}
	}
	for _, step := range []func(*sheet.Sheet) error{x.links, x.view, x.page} {
		if err := step(s); err != nil {
			return err
		}
	}
	return nil
}

// plainCell writes a value with its look; the sheets written so have no formulas.
func (x *writer) plainCell(name string, row, col int, c *sheet.Cell, linked bool) error {
	if c.Blank() {
		return nil
	}
	id, err := x.looks.id(dress{c.Style, linked})
	if err != nil {
		return err
	}
	ref := sheet.Ref(row, col)
	value := c.Value
	if text, ok := value.(string); ok {
		value = sheet.Clean(text)
	}
	if err := x.file.SetCellValue(name, ref, value); err != nil {
		return err
	}
	return x.file.SetCellStyle(name, ref, ref, id)
}
