// Package sheet describes a workbook as plain values: sheets, cells, styles,
// names and the rules on what people may type. It knows no file format; the
// package xlsx turns a Book into a file.
//
// A cell says what it is by its role (Input, Calc, Total ...) and how its
// number is shown by its format; how roles look is decided in one place.
// A formula always comes with the value that the program computed, so that
// readers that do not calculate see figures too:
//
//	sheet.Cell{
//		Value:   hire,
//		Formula: "ROUND(" + sheet.Ref(7, 3) + "*hire_rate,2)",
//		Style:   sheet.Style{Role: sheet.Calc, Format: sheet.Money},
//	}
//
// Formulas reach inputs of other sheets by defined names, which follow when
// people insert rows; Check finds names and sheets that do not exist.
package sheet

// Book is one workbook. Sheets stand in the order of their tabs.
type Book struct {
	Title    string
	Subject  string
	Company  string
	Created  string // RFC 3339 in UTC, from the quote's own date: "2026-05-01T00:00:00Z"
	Currency Currency
	Sheets   []*Sheet
	Names    []Name
}

// Currency is how the Money format shows an amount: the sign before it and the
// decimals of the smallest coin, 0 to 4.
type Currency struct {
	Symbol string
	Minor  int
}

// Name is a defined name of the whole book, in lower case. Refers is a cell or
// range with its sheet, as Range.Abs writes it.
type Name struct {
	Name    string
	Refers  string
	Comment string
}

// Sheet is one tab. Row i of Rows is spreadsheet row i+1, column i of Columns
// is spreadsheet column i+1.
type Sheet struct {
	Name        string
	Tab         Tab
	Columns     []Column
	Rows        []Row
	Merges      []Range
	FreezeRows  int // rows that stay in sight at the top
	FreezeCols  int // columns that stay in sight at the left
	Validations []Validation
	Highlights  []Highlight
	Notes       []Note
	Links       []Link
	Picture     *Picture
	Page        Page
	Protected   bool // locked cells refuse typing; there is no password
	Filter      *Range
	Hidden      bool
	VeryHidden  bool // cannot be shown from the program's own menus
	HideGrid    bool
	PrintArea   *Range
	TitleRows   [2]int // rows repeated on each printed page, first to last; 0 none
	Breaks      []int  // a new page starts at each of these rows
}

// Tab is the accent of a sheet's tab: whose sheet it is.
type Tab int

// The tabs by their readers. The name of the sheet says the same, so that the
// colour is never the only sign.
const (
	TabNone   Tab = iota
	TabOffice     // prices and papers
	TabYard       // goods and trucks
	TabCrew       // people and hours
)

// Column is a column's width in characters of the default font; 0 leaves it as
// the program has it.
type Column struct {
	Width  float64
	Hidden bool
}

// Row holds the cells of a row from column A. Height is in points; 0 lets the
// program fit the row to its text.
type Row struct {
	Cells  []Cell
	Height float64
}

// Cell is one cell. Value is nil, a string, int, float64, bool, Amount or
// Serial. With a Formula (no leading '=') it is the computed value. Text is
// always stored as text and never becomes a formula.
type Cell struct {
	Value   any
	Formula string
	Style   Style
}

// Blank reports whether the cell has neither content nor style.
func (c Cell) Blank() bool { return c.Value == nil && c.Formula == "" && c.Style == Style{} }

// Amount is an exact decimal number, as package catalog/money has it.
type Amount interface{ InexactFloat64() float64 }

// Serial is a date that knows its day number in a spreadsheet, as catalog/unit
// has it: 1 January 2026 is 46023.
type Serial interface{ Serial() int }

// Note is a remark shown when the pointer rests on a cell. Row and Col count
// from 1.
type Note struct {
	Row, Col int
	Text     string
}

// Link makes a cell jump to another place of the same book: a defined name or
// a place such as "'Pick list'!A1".
type Link struct {
	Row, Col int
	Target   string
	Tip      string
}

// Picture is an image with its top left corner in a cell. It is scaled down to
// fit the limits in pixels, keeping its ratio; a limit of 0 is none.
type Picture struct {
	Row, Col  int
	Data      []byte
	Ext       string // ".png" or ".jpg"
	Alt       string // what it shows, for those who cannot see it
	MaxWidth  int
	MaxHeight int
}

// Page is how a sheet prints. The foot of each page always counts "Page x of y".
type Page struct {
	Paper       string // "letter" (also when empty) or "a4"
	Landscape   bool
	FitWide     bool // all columns on the width of one page
	Scale       int  // percent of full size, without FitWide; 0 is full size
	FitTall     int  // pages in height, with FitWide; 0 as many as it takes
	HeaderLeft  string
	HeaderRight string
	FooterLeft  string
	Margins     Margins
}

// Margins is the white edge of a printed page.
type Margins int

// Normal margins are 18 mm at the sides, Narrow ones 6 mm.
const (
	Normal Margins = iota
	Narrow
)
