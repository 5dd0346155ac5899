package xlsx

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"github.com/xuri/excelize/v2"

	"tentwright/workbook/sheet"
)

// Foreign is sheets of another file that go into a book as they are: those
// that the office added to a workbook of ours.
type Foreign struct {
	Data   []byte // of the file
	Sheets []string
	Names  []sheet.Name // that the office defined on these sheets
}

// foreign copies the sheets: values, formulas, looks, widths, heights, merges,
// remarks, pictures and what is hidden. Charts and rules of highlighting stay
// behind. A sheet with the name of one that is there already, in whatever
// capitals, is an error.
func (x *writer) foreign(from Foreign) error {
	if len(from.Sheets) == 0 {
		return nil
	}
	src, err := excelize.OpenReader(bytes.NewReader(from.Data))
	if err != nil {
		return err
	}
	defer src.Close()
	c := &copier{src: src, dst: x.file, styles: map[int]int{}}
	for _, name := range from.Sheets {
		if slices.ContainsFunc(x.file.GetSheetList(), func(have string) bool { return strings.EqualFold(have, name) }) {
			return fmt.Errorf("added sheet %q: the workbook has a sheet of that name; another was expected", name)
		}
		if err := c.sheet(name); err != nil {
			return fmt.Errorf("added sheet %q: %w", name, err)
		}
	}
	for _, n := range from.Names {
		if err := x.file.SetDefinedName(&excelize.DefinedName{Name: n.Name, RefersTo: n.Refers}); err != nil {
			return fmt.Errorf("name %q: %w", n.Name, err)
		}
	}
	return nil
}

// copier copies sheets from one file into another.
type copier struct {
	src, dst *excelize.File
	styles   map[int]int // number of a style there to its number here
}

func (c *copier) sheet(name string) error {
	if _, err := c.dst.NewSheet(name); err != nil {
		return err
	}
	rows, err := c.src.Rows(name)
	if err != nil {
		return err
	}
	defer rows.Close()
	wide := 0
	for n := 1; rows.Next(); n++ {
		cells, err := rows.Columns(excelize.Options{RawCellValue: true})
		if err != nil {
			return err
		}
		wide = max(wide, len(cells))
		if err := c.row(name, n, len(cells)); err != nil {
			return err
		}
		if err := c.rowLook(name, n, rows.GetRowOpts()); err != nil {
			return err
		}
	}
	for _, step := range []func(string, int) error{c.widths, c.merges, c.remarks, c.pictures, c.hidden} {
		if err := step(name, wide); err != nil {
			return err
		}
	}
	return nil
}

// rowLook copies how high a row is and whether it is hidden.
func (c *copier) rowLook(name string, n int, look excelize.RowOpts) error {
	if look.Height > 0 {
		if err := c.dst.SetRowHeight(name, n, look.Height); err != nil {
			return err
		}
	}
	if !look.Hidden {
		return nil
	}
	return c.dst.SetRowVisible(name, n, false)
}

// row copies the cells of a row.
func (c *copier) row(name string, n, wide int) error {
	for col := 1; col <= wide; col++ {
		ref, err := excelize.CoordinatesToCellName(col, n)
		if err != nil {
			return err
		}
		if err := c.cell(name, ref); err != nil {
			return fmt.Errorf("%s: %w", ref, err)
		}
	}
	return nil
}

// cell copies what a cell holds and how it looks.
func (c *copier) cell(name, ref string) error {
	value, err := c.src.GetCellValue(name, ref, excelize.Options{RawCellValue: true})
	if err != nil {
		return err
	}
	kind, err := c.src.GetCellType(name, ref)
	if err != nil {
		return err
	}
	formula, err := c.src.GetCellFormula(name, ref)
	if err != nil {
		return err
	}
	switch {
	case formula != "":
		err = c.dst.SetCellFormula(name, ref, formula)
	case value == "":
	case kind == excelize.CellTypeNumber || kind == excelize.CellTypeUnset || kind == excelize.CellTypeDate:
		err = c.dst.SetCellDefault(name, ref, value)
	case kind == excelize.CellTypeBool:
		err = c.dst.SetCellBool(name, ref, value == "1" || strings.EqualFold(value, "true"))
	default:
		err = c.dst.SetCellStr(name, ref, value)
	}
	if err != nil {
		return err
	}
	return c.style(name, ref)
}

// style copies the look of a cell.
func (c *copier) style(name, ref string) error {
	there, err := c.src.GetCellStyle(name, ref)
	if err != nil || there == 0 {
		return err
	}
	own, known := c.styles[there]
	if !known {
		look, err := c.src.GetStyle(there)
		if err != nil {
			return err
		}
		if own, err = c.dst.NewStyle(look); err != nil {
			own = 0 // a look that cannot be made again is not worth losing the words for
		}
		c.styles[there] = own
	}
	return c.dst.SetCellStyle(name, ref, ref, own)
}

// widest is up to which column widths are copied beyond the last filled one.
const widest = 60

func (c *copier) widths(name string, wide int) error {
	for col := 1; col <= max(wide, widest); col++ {
		letter, err := excelize.ColumnNumberToName(col)
		if err != nil {
			return err
		}
		width, err := c.src.GetColWidth(name, letter)
		if err != nil {
			return err
		}
		if err := c.dst.SetColWidth(name, letter, letter, width); err != nil {
			return err
		}
		visible, err := c.src.GetColVisible(name, letter)
		if err != nil {
			return err
		}
		if visible {
			continue
		}
		if err := c.dst.SetColVisible(name, letter, false); err != nil {
			return err
		}
	}
	return nil
}

// hidden hides the sheet as it was hidden there; the library tells only whether
// it was, not how well.
func (c *copier) hidden(name string, _ int) error {
	for _, s := range c.src.WorkBook.Sheets.Sheet {
		if strings.EqualFold(s.Name, name) && (s.State == "hidden" || s.State == "veryHidden") {
			return c.dst.SetSheetVisible(name, false, s.State == "veryHidden")
		}
	}
	return nil
}

func (c *copier) merges(name string, _ int) error {
	merges, err := c.src.GetMergeCells(name)
	if err != nil {
		return err
	}
	for _, m := range merges {
		if err := c.dst.MergeCell(name, m.GetStartAxis(), m.GetEndAxis()); err != nil {
			return err
		}
	}
	return nil
}

func (c *copier) remarks(name string, _ int) error {
	remarks, err := c.src.GetComments(name)
	if err != nil {
		return err
	}
	for _, r := range remarks {
		if err := c.dst.AddComment(name, excelize.Comment{Cell: r.Cell, Author: r.Author, Text: r.Text, Paragraph: r.Paragraph}); err != nil {
			return err
		}
	}
	return nil
}

func (c *copier) pictures(name string, _ int) error {
	cells, err := c.src.GetPictureCells(name)
	if err != nil {
		return err
	}
	for _, ref := range cells {
		all, err := c.src.GetPictures(name, ref)
		if err != nil {
			return err
		}
		for i := range all {
			if err := c.dst.AddPictureFromBytes(name, ref, &all[i]); err != nil {
				return err
			}
		}
	}
	return nil
}
