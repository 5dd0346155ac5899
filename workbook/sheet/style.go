package sheet

// Style says what a cell is, not how it looks: the look of each role is one
// table in package xlsx. Styles compare with ==.
type Style struct {
	Role   Role
	Format Format
	Align  Align
	Wrap   bool // break long text into lines; Heading, Notice and InputText always do
	Indent int  // steps from the left, 0 to 15
	Bold   bool
}

// Role is the part a cell plays on its sheet.
type Role int

// The roles. Only Input, InputText and Tick may be typed into on a protected
// sheet.
const (
	Plain     Role = iota
	Title          // name of the sheet
	Subtitle       // line below the title
	Heading        // head of a column
	Section        // band that opens a group of rows
	Label          // words beside a figure
	Body           // cell of a table
	Input          // figure people may change
	InputText      // words people may write
	Calc           // computed figure
	Total          // sum of a group
	Grand          // sum of the sheet
	Warn           // something is wrong
	Good           // something was checked and is right
	Faint          // small print
	Notice         // boxed statement such as "demonstration data"
	Tick           // box to tick by hand or by typing
	Bar            // part of a bar that is built from cells
	Chain          // of one that matters most
	Rest           // time that stands still in such a chart
	Key            // identifier of a row
	roleCount
)

// Locked reports whether a protected sheet refuses typing in such a cell.
func (r Role) Locked() bool { return r != Input && r != InputText && r != Tick }

// Format is how a number is shown.
type Format int

// The formats. Units are shown only where the format's name has one; the
// others leave the unit to the column heading.
const (
	General      Format = iota
	Text                // kept as typed
	Whole               // 1,234
	Num1                // 1,234.5
	Num2                // 1,234.50
	Money               // $1,234.50, by the book's currency
	Hours               // 7.50
	Percent             // 12.5%, of a fraction
	PercentWhole        // 12%, of a fraction
	PercentPoint        // 12.5%, of a number that already counts percent
	DateLong            // Fri 1 May 2026
	DateISO             // 2026-05-01
	Clock               // 07:30, of a fraction of a day
	Weight              // 1,234.5
	Feet                // 19.5 ft
	Metres              // 5.95 m
	Factor              // 1.250
	formatCount
)

// Align is the horizontal place of a cell's content; Auto is text left and
// numbers right.
type Align int

// The alignments.
const (
	Auto Align = iota
	Left
	Centre
	Right
	alignCount
)
