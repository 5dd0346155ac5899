package xlsx

import (
	"cmp"
	"strings"

	"github.com/xuri/excelize/v2"

	"tentwright/workbook/sheet"
)

// The three accents and the pale fills that go with them. Dark on pale or
// white on dark keeps at least 7:1 contrast, also on a grey printer.
const (
	green = "1E4D3B" // office
	blue  = "1F3F66" // crew
	brown = "6B3F14" // yard
	pale  = "E4EDE8"
	cream = "FFF8DC"
	sand  = "F4EBDD"
	rose  = "FBE4E1"
	red   = "8F0D0D"
	leaf  = "E3F1E0"
	moss  = "1D5A22"
	grey  = "4A4A4A"
	mist  = "E6E6E6"
	line  = "A6A6A6"
	ink   = "000000"
	white = "FFFFFF"
)

// tabColours give alpha first.
var tabColours = map[sheet.Tab]string{
	sheet.TabOffice: "FF" + green, sheet.TabYard: "FF" + brown, sheet.TabCrew: "FF" + blue,
}

// look is how a role appears. Border codes are sides with a line style each:
// 1 thin, 2 medium, 6 double.
type look struct {
	size   float64
	bold   bool
	ink    string
	fill   string
	box    int // line style of all four sides
	top    int // line style of the upper side alone
	bottom int
	wrap   bool
	centre bool
	middle bool // centred in height instead of standing at the top
}

// lookOf is the one table of looks for all sheets.
var lookOf = map[sheet.Role]look{
	sheet.Plain:     {size: 10},
	sheet.Title:     {size: 16, bold: true, ink: green, middle: true},
	sheet.Subtitle:  {size: 11, ink: grey},
	sheet.Heading:   {size: 10, bold: true, ink: white, fill: green, box: 1, wrap: true, middle: true},
	sheet.Section:   {size: 11, bold: true, ink: green, fill: pale, top: 1, bottom: 1, middle: true},
	sheet.Label:     {size: 10},
	sheet.Body:      {size: 10, box: 1},
	sheet.Input:     {size: 10, ink: blue, fill: cream, box: 1},
	sheet.InputText: {size: 10, ink: blue, fill: cream, box: 1, wrap: true},
	sheet.Calc:      {size: 10, box: 1},
	sheet.Total:     {size: 10, bold: true, top: 2},
	sheet.Grand:     {size: 13, bold: true, top: 6, middle: true},
	sheet.Warn:      {size: 10, bold: true, ink: red, fill: rose},
	sheet.Good:      {size: 10, ink: moss, fill: leaf},
	sheet.Faint:     {size: 8, ink: grey},
	sheet.Notice:    {size: 10, bold: true, ink: brown, fill: sand, box: 2, wrap: true, middle: true},
	sheet.Tick:      {size: 14, box: 1, centre: true, middle: true},
	sheet.Bar:       {size: 9, bold: true, ink: white, fill: blue, box: 1, centre: true, middle: true},
	sheet.Chain:     {size: 9, bold: true, ink: white, fill: brown, box: 2, centre: true, middle: true},
	sheet.Rest:      {size: 8, ink: grey, fill: mist},
	sheet.Key:       {size: 8, ink: grey, box: 1},
}

// numbers are the codes of the formats; Money comes from the book.
var numbers = map[sheet.Format]string{
	sheet.Text: "@", sheet.Whole: "#,##0", sheet.Num1: "#,##0.0", sheet.Num2: "#,##0.00",
	sheet.Hours: "0.00", sheet.Percent: "0.0%", sheet.PercentWhole: "0%", sheet.PercentPoint: `0.0#"%"`,
	sheet.DateLong: "ddd d mmm yyyy", sheet.DateISO: "yyyy-mm-dd", sheet.Clock: "[hh]:mm",
	sheet.Weight: "#,##0.0", sheet.Feet: `#,##0.0" ft"`, sheet.Metres: `#,##0.00" m"`, sheet.Factor: "0.000",
}

// dress is what decides a cell's look: its style, and whether it is a link.
type dress struct {
	style  sheet.Style
	linked bool
}

// key is the dress as one number: it is looked up for every cell of the book,
// and a number is found in half the time.
func (d dress) key() uint64 {
	s := d.style
	k := uint64(s.Role)<<40 | uint64(s.Format)<<24 | uint64(s.Align)<<16 | uint64(s.Indent)<<8
	for i, on := range []bool{s.Wrap, s.Bold, d.linked} {
		if on {
			k |= 1 << i
		}
	}
	return k
}

// looks makes each style once and remembers its number in the file.
type looks struct {
	file  *excelize.File
	money string
	ids   map[uint64]int // by dress.key
	conds map[sheet.Role]int
}

// newLooks starts an empty table of styles for a file.
func newLooks(f *excelize.File, c sheet.Currency) *looks {
	return &looks{file: f, money: moneyCode(c), ids: map[uint64]int{}, conds: map[sheet.Role]int{}}
}

// moneyCode is the format of amounts: the sign, a blank after a sign of
// letters, and a minus before it all.
func moneyCode(c sheet.Currency) string {
	number := "#,##0"
	if c.Minor > 0 {
		number += "." + strings.Repeat("0", c.Minor)
	}
	symbol := strings.ReplaceAll(sheet.Clean(c.Symbol), `"`, "")
	if symbol == "" {
		return number
	}
	// "kr 500" needs the blank that "$500" does not.
	if last := symbol[len(symbol)-1]; last >= 'A' && last <= 'z' || last == '.' {
		symbol += " "
	}
	code := `"` + symbol + `"` + number
	return code + ";-" + code
}

// id is the file's number of a style, underlined when the cell is a link.
func (l *looks) id(d dress) (int, error) {
	key := d.key()
	if id, ok := l.ids[key]; ok {
		return id, nil
	}
	st := l.style(d.style)
	if d.linked {
		st.Font.Underline = "single"
	}
	id, err := l.file.NewStyle(st)
	l.ids[key] = id
	return id, err
}

// style puts a role's look, a format and the cell's own wishes together.
func (l *looks) style(s sheet.Style) *excelize.Style {
	k := lookOf[s.Role]
	align := &excelize.Alignment{Vertical: "top", WrapText: k.wrap || s.Wrap, Indent: s.Indent}
	if k.middle {
		align.Vertical = "center"
	}
	switch {
	case s.Align == sheet.Left || s.Align == sheet.Auto && s.Indent > 0:
		align.Horizontal = "left"
	case s.Align == sheet.Right:
		align.Horizontal = "right"
	case s.Align == sheet.Centre || k.centre:
		align.Horizontal = "center"
	}
	st := &excelize.Style{
		Font:      fontOf(k, s.Bold),
		Alignment: align,
		Border:    borders(k),
	}
	if k.fill != "" {
		st.Fill = excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{k.fill}}
	}
	if !s.Role.Locked() {
		st.Protection = &excelize.Protection{Locked: false}
	}
	if code := l.code(s.Format); code != "" {
		st.CustomNumFmt = &code
	}
	return st
}

// fontOf names family and size each time: a font without them is drawn in
// whatever the program likes.
func fontOf(k look, bold bool) *excelize.Font {
	return &excelize.Font{Family: font, Size: k.size, Bold: k.bold || bold, Color: cmp.Or(k.ink, ink)}
}

// code is a format's code in the file; General has none.
func (l *looks) code(f sheet.Format) string {
	if f == sheet.Money {
		return l.money
	}
	return numbers[f]
}

// borders are the lines of a look, the stronger of box and side winning.
func borders(k look) []excelize.Border {
	var out []excelize.Border
	for _, side := range []struct {
		name  string
		style int
	}{{"left", k.box}, {"right", k.box}, {"top", max(k.box, k.top)}, {"bottom", max(k.box, k.bottom)}} {
		if side.style > 0 {
			out = append(out, excelize.Border{Type: side.name, Color: line, Style: side.style})
		}
	}
	return out
}

// conditional is the number of a role's look as a conditional format. It
// changes ink, weight and fill only: a change of size would move the rows.
func (l *looks) conditional(r sheet.Role) (int, error) {
	if id, ok := l.conds[r]; ok {
		return id, nil
	}
	k := lookOf[r]
	st := &excelize.Style{Font: &excelize.Font{Bold: k.bold, Color: k.ink}}
	if k.fill != "" {
		st.Fill = excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{k.fill}}
	}
	id, err := l.file.NewConditionalStyle(st)
	l.conds[r] = id
	return id, err
}
