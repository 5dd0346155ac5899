// Package xlsx turns a sheet.Book into the bytes of a spreadsheet file
// (ISO/IEC 29500). It is the only package that knows the file format.
//
// A library makes the structure of the file: sheets, styles, rules, page set-up,
// notes and pictures. The rows, and with them columns, merges and defined names,
// are written here and put into the library's parts while these are packed. The
// reason is time: someone waits for a quote on the phone, and a workbook has
// 20,000 cells, for each of which the library makes several small objects. It
// also cannot store a formula whose computed text is empty.
//
// Three things follow, and the code keeps to them:
//
//   - what people typed is cleaned and escaped here, and refused by
//     sheet.Book.Check before when the format has no place for it;
//   - styles get their numbers before the parts are packed, in the order of the
//     cells, for several parts are packed at once;
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
	grids []*grid // of the sheets, in their order
}

// Write writes the book as an .xlsx file. The same book gives the same bytes.
// A book that fails sheet.Book.Check is refused and nothing is written.
func Write(w io.Writer, b *sheet.Book) error { return WriteWith(w, b, Foreign{}) }

// WriteWith writes the book with sheets of another file behind its own.
func WriteWith(w io.Writer, b *sheet.Book, from Foreign) error {
	if err := b.Check(); err != nil {
		return err
	}
	f := excelize.NewFile()
	defer f.Close()
	x := &writer{file: f, book: b, looks: newLooks(f, b.Currency)}
	f.SetZipWriter(func(out io.Writer) excelize.ZipWriter { return &packer{out: out, finishers: x.finishers()} })
	if err := x.properties(); err != nil {
		return err
	}
	if err := x.tabs(); err != nil {
		return err
	}
	for _, s := range b.Sheets {
		if err := x.sheet(s); err != nil {
			return fmt.Errorf("sheet %q: %w", s.Name, err)
		}
	}
	if err := x.foreign(from); err != nil {
		return err
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

// sheet sets all that belongs to a sheet as a whole and gathers its rows, which
// are written when the file is packed.
func (x *writer) sheet(s *sheet.Sheet) error {
	for _, step := range []func(*sheet.Sheet) error{
		x.printing, x.filter, x.view, x.page, x.protect, x.breaks, x.validations, x.highlights, x.links, x.notes, x.picture,
	} {
		if err := step(s); err != nil {
			return err
		}
	}
	g, err := x.grid(s)
	if err != nil {
		return err
	}
	x.grids = append(x.grids, g)
	used := sheet.Range{R1: 1, C1: 1, R2: max(len(g.rows), 1), C2: max(g.wide, 1)}
	return x.file.SetSheetDimension(s.Name, used.String())
}
