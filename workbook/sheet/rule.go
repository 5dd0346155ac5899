package sheet

import (
	"strconv"

	"tentwright/catalog/unit"
)

// Validation limits what may be typed into a range and says so: Prompt shows
// while a cell is selected, Error when the typed value is refused.
type Validation struct {
	Range      Range
	Kind       Kind
	Source     string // List: a defined name or "a,b,c"; Custom: a formula
	Min, Max   string // numbers or formulas of defined names; empty is no limit
	Title      string // at most 32 characters
	Prompt     string // at most 255 characters
	Error      string // at most 255 characters; empty repeats the prompt
	AllowBlank bool
}

// FirstDay and LastDay bound the days that people type; beyond them a date is a
// slip of the keyboard, or a number in the wrong cell.
func FirstDay() unit.Date { return unit.Date{Year: 2000, Month: 1, Day: 1} }

// LastDay is the last of them.
func LastDay() unit.Date { return unit.Date{Year: 2099, Month: 12, Day: 31} }

// AnyDay limits a cell to these days.
func AnyDay() Validation {
	return Validation{Kind: Date, Min: strconv.Itoa(FirstDay().Serial()), Max: strconv.Itoa(LastDay().Serial())}
}

// Kind is what a validation accepts.
type Kind int

// The kinds of validation. Min and Max bound the number, the day or the count
// of characters.
const (
	List Kind = iota
	WholeNumber
	Decimal
	Date
	TextLen
	Custom
	kindCount
)

// Highlight shows a range in the look of a role (Warn, Good or Faint) where
// the formula is true. The formula is written for the first cell of the range,
// without '='.
type Highlight struct {
	Range   Range
	Formula string
	Role    Role
}
