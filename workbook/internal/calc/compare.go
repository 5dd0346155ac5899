package calc

import (
	"fmt"
	"maps"
	"math"
	"slices"
)

// tolerance is how far two numbers may lie apart, relative to the larger or
// absolute for numbers near zero.
const tolerance = 1e-9

// Difference is a formula whose stored result is not what the other program
// computes.
type Difference struct {
	Sheet, Ref string
	Formula    string
	Wrote      Cell
	Computed   Cell
	Why        string // "differs", "error value", "no stored value"
}

// String is the difference on one line.
func (d Difference) String() string {
	return fmt.Sprintf("%s!%s =%s: %s: wrote %s, computed %s", d.Sheet, d.Ref, d.Formula, d.Why, d.Wrote.show(), d.Computed.show())
}

// show is the value for a message; texts are quoted, so that blanks show.
func (c Cell) show() string {
	if !c.HasValue {
		return "nothing"
	}
	if c.Kind == Text {
		return fmt.Sprintf("%q", c.Text)
	}
	return c.Text
}

// Compare holds the stored result of every formula in the file wrote against
// the recalculated copy: numbers to 1e-9, texts exactly. It returns the
// differences by sheet and cell, and the number of formulas.
func Compare(wrote, recalculated string) ([]Difference, int, error) {
	was, err := ReadCells(wrote)
	if err != nil {
		return nil, 0, err
	}
	now, err := ReadCells(recalculated)
	if err != nil {
		return nil, 0, err
	}
	var out []Difference
	count := 0
	for _, sheet := range slices.Sorted(maps.Keys(was)) {
		for _, ref := range slices.Sorted(maps.Keys(was[sheet])) {
			a := was[sheet][ref]
			if a.Formula == "" {
				continue
			}
			count++
			b := now[sheet][ref]
			if why := differ(a, b); why != "" {
				out = append(out, Difference{sheet, ref, a.Formula, a, b, why})
			}
		}
	}
	return out, count, nil
}

// differ says why a stored result is not the computed one, or nothing.
func differ(a, b Cell) string {
	empty := b.Kind == Text && b.Text == "" || !b.HasValue
	switch {
	case a.Kind == Fault, b.Kind == Fault:
		return "error value"
	case !a.HasValue && empty:
		// An empty text is stored without a value.
		return ""
	case !a.HasValue:
		return "no stored value"
	case a.Kind == Text && a.Text == "" && empty:
		return ""
	case numeric(a) && numeric(b) && near(a.Number, b.Number):
		return ""
	case a.Kind == Text && b.Kind == Text && a.Text == b.Text:
		return ""
	}
	return "differs"
}

// numeric takes truth values too: the two programs do not agree on whether a
// computed truth is a number.
func numeric(c Cell) bool { return c.Kind == Number || c.Kind == Bool }

// near reports whether two numbers are equal for our purpose: programs write
// 15 to 17 digits.
func near(a, b float64) bool {
	return math.Abs(a-b) <= tolerance*max(1, math.Abs(a), math.Abs(b))
}
