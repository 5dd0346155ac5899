package sheet

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
