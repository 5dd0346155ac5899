// Package xlsx turns a sheet.Book into the bytes of a spreadsheet file
// (ISO/IEC 29500). It is the only package that knows the file format.
//
// Rows go through the library's stream: it alone stores a formula together
// with its computed value in the value's own type. Three things follow, and
// the code keeps to them:
//
//   - all that belongs to a sheet as a whole is set before its stream opens,
//     for later settings are lost without an error;
//   - amounts are turned into floats, for other types would become text;
//   - the parts of the file are put in order and dated alike while they are
//     packed, for the library writes them in the order of a map.
package xlsx

import (
	"fmt"
	"io"

	"github.com/xuri/excelize/v2"

	"tentwright/workbook/sheet"
)

// font is used everywhere: it is on every desktop or has a stand-in of equal
// widths, so that column widths hold.
const font = "Arial"

// writer is one file being made.
type writer struct {
	file  *excelize.File
	book  *sheet.Book
	looks *looks

	values []any           // scratch of row
	cells  []excelize.Cell // what values point to
}

// Write writes the book as an .xlsx file. The same book gives the same bytes.
// A book that fails sheet.Book.Check is refused and nothing is written.
func Write(w io.Writer, b *sheet.Book) error {
	if err := b.Check(); err != nil {
		return err
	}
	f := excelize.NewFile()
	defer f.Close()
	x := &writer{file: f, book: b, looks: newLooks(f, b.Currency)}
	f.SetZipWriter(func(out io.Writer) excelize.ZipWriter { return &packer{out: out, polish: x.polish} })
	if err := x.properties(); err != nil {
		return err
	}
	if err := x.tabs(); err != nil {
		return err
	}
	if err := x.names(); err != nil {
		return err
	}
	for _, s := range b.Sheets {
		if err := x.sheet(s); err != nil {
			return fmt.Errorf("sheet %q: %w", s.Name, err)
		}
	}
	// All in memory first, so that a fault leaves no half-written file.
	data, err := f.WriteToBuffer()
	if err != nil {
		return err
	}
	_, err = w.Write(data.Bytes())
	return err
}

// properties sets what the file says about itself, and that formulas are
// computed afresh when it opens.
func (x *writer) properties() error {
	f, b := x.file, x.book
	if err := f.SetDefaultFont(font); err != nil {
		return err
	}
	if err := f.SetDocProps(&excelize.DocProperties{
		Title: sheet.Clean(b.Title), Subject: sheet.Clean(b.Subject), Creator: author, LastModifiedBy: author,
		Created: b.Created, Modified: b.Created,
	}); err != nil {
		return err
	}
	if err := f.SetAppProps(&excelize.AppProperties{Application: author, Company: sheet.Clean(b.Company)}); err != nil {
		return err
	}
	on := true
	return f.SetCalcProps(&excelize.CalcPropsOptions{FullCalcOnLoad: &on})
}

// tabs makes the sheets in their order and opens the file at the first that
// can be seen.
func (x *writer) tabs() error {
	// A new file has one sheet already; it becomes the first of ours.
	first := x.file.GetSheetName(0)
	active := -1
	for i, s := range x.book.Sheets {
		if i == 0 {
			if err := x.file.SetSheetName(first, s.Name); err != nil {
				return err
			}
		} else if _, err := x.file.NewSheet(s.Name); err != nil {
			return err
		}
		if active < 0 && !s.Hidden && !s.VeryHidden {
			active = i
		}
	}
	x.file.SetActiveSheet(active)
	for _, s := range x.book.Sheets {
		if !s.Hidden && !s.VeryHidden {
			continue
		}
		if err := x.file.SetSheetVisible(s.Name, false, s.VeryHidden); err != nil {
			return err
		}
	}
	return nil
}

// names sets the defined names of the book, then the printing names of its
// sheets.
func (x *writer) names() error {
	for _, n := range x.book.Names {
		if err := x.file.SetDefinedName(&excelize.DefinedName{
			Name: n.Name, RefersTo: n.Refers, Comment: sheet.Clean(n.Comment),
		}); err != nil {
			return fmt.Errorf("name %q: %w", n.Name, err)
		}
	}
	for _, s := range x.book.Sheets {
		// What to print is a name too, one that counts for its sheet alone.
		if s.PrintArea != nil {
			if err := x.file.SetDefinedName(&excelize.DefinedName{
				Name: "_xlnm.Print_Area", RefersTo: s.PrintArea.Abs(s.Name), Scope: s.Name,
			}); err != nil {
				return fmt.Errorf("print area of %q: %w", s.Name, err)
			}
		}
		if s.TitleRows[0] > 0 {
			refers := fmt.Sprintf("%s!$%d:$%d", sheet.Quote(s.Name), s.TitleRows[0], s.TitleRows[1])
			if err := x.file.SetDefinedName(&excelize.DefinedName{
				Name: "_xlnm.Print_Titles", RefersTo: refers, Scope: s.Name,
			}); err != nil {
				return fmt.Errorf("heading rows of %q: %w", s.Name, err)
			}
		}
	}
	return nil
}

// sheet writes one sheet. All that belongs to the sheet as a whole is set
// first: once the stream of rows is open, it would be lost without an error.
func (x *writer) sheet(s *sheet.Sheet) error {
	for _, step := range []func(*sheet.Sheet) error{
		x.filter, x.view, x.page, x.protect, x.breaks, x.validations, x.highlights, x.links, x.columns, x.notes, x.picture,
	} {
		if err := step(s); err != nil {
			return err
		}
	}
	stream, err := x.file.NewStreamWriter(s.Name)
	if err != nil {
		return err
	}
	linked, merged := map[[2]int]bool{}, newSpans(s)
	for _, l := range s.Links {
		linked[[2]int{l.Row, l.Col}] = true
	}
	for i, r := range dressed(s) {
		r.Height = height(s, merged, i+1, r)
		if err := x.row(stream, i+1, r, linked); err != nil {
			return fmt.Errorf("row %d: %w", i+1, err)
		}
	}
	for _, m := range s.Merges {
		if err := stream.MergeCell(sheet.Ref(m.R1, m.C1), sheet.Ref(m.R2, m.C2)); err != nil {
			return fmt.Errorf("merge %s: %w", m, err)
		}
	}
	return stream.Flush()
}

// row writes one row; cells with neither value nor style are left out.
func (x *writer) row(stream *excelize.StreamWriter, n int, r sheet.Row, linked map[[2]int]bool) error {
	values, cells := x.scratch(len(r.Cells))
	for i := range r.Cells {
		c := &r.Cells[i]
		if c.Blank() {
			continue
		}
		id, err := x.looks.id(c.Style, linked[[2]int{n, i + 1}])
		if err != nil {
			return err
		}
		cells[i] = excelize.Cell{StyleID: id, Formula: c.Formula, Value: value(c.Value)}
		values[i] = &cells[i]
	}
	return stream.SetRow(sheet.Ref(n, 1), values, excelize.RowOpts{Height: r.Height})
}

// scratch is room for a row, used again for every row: the stream takes a row
// in before it returns.
func (x *writer) scratch(n int) ([]any, []excelize.Cell) {
	if n > len(x.cells) {
		x.values, x.cells = make([]any, n), make([]excelize.Cell, n)
	}
	clear(x.values[:n])
	return x.values[:n], x.cells[:n]
}

// value turns a cell's value into one of the types the format stores.
func value(v any) any {
	switch v := v.(type) {
	case string:
		return sheet.Clean(v)
	case sheet.Amount:
		return v.InexactFloat64()
	case sheet.Serial:
		return v.Serial()
	}
	return v
}
