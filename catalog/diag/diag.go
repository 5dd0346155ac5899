// Package diag says what is wrong with an input, where, and what to do about
// it. A [Problem] is a value with a position, a stable code, a message and one
// line of advice; a [List] gathers all problems of a run, so that nobody has
// to mend a file one fault at a time. Text is made only at the edge, by
// [Problem.String], [Write] and the error of [List.Err].
package diag

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// Pos is a place in an input: a line and column of a text file, or a cell of
// a sheet. Lines and columns count from 1, columns in characters; zero and
// empty parts are unknown.
type Pos struct {
	File         string
	Line, Column int
	Sheet, Cell  string
}

// String is "file:line:column", or "file: sheet!cell" for a place in a
// workbook. Unknown parts are left out; the zero Pos is "".
func (p Pos) String() string {
	if p.Sheet != "" || p.Cell != "" {
		return p.cellText()
	}
	parts := make([]string, 0, 3)
	if p.File != "" {
		parts = append(parts, p.File)
	}
	if p.Line > 0 {
		parts = append(parts, strconv.Itoa(p.Line))
		if p.Column > 0 {
			parts = append(parts, strconv.Itoa(p.Column))
		}
	}
	return strings.Join(parts, ":")
}

// cellText is the form for a place in a workbook.
func (p Pos) cellText() string {
	at := p.Sheet + p.Cell
	if p.Sheet != "" && p.Cell != "" {
		at = p.Sheet + "!" + p.Cell
	}
	if p.File == "" {
		return at
	}
	return p.File + ": " + at
}

// Problem is one fault or warning.
type Problem struct {
	Pos     Pos
	Path    string // in the data, e.g. "parts[3].weight"; may be empty
	Code    string // stable short id, e.g. "unknown-id"
	Message string // what is wrong and what was expected
	Advice  string // one line, e.g. `did you mean "chair_white"?`; may be empty
	Related []Pos  // other places that contribute
	Warning bool   // true: the work goes on
}

// String is "place: path: message [code]", and the advice, if any, on a second
// line indented by two spaces. A warning says so before its path.
func (p Problem) String() string {
	if p.Advice == "" {
		return p.line()
	}
	return p.line() + "\n  " + p.Advice
}

// line is the problem's first line; parts that are empty are left out.
func (p Problem) line() string {
	parts := make([]string, 0, 4)
	for _, part := range []string{p.Pos.String(), p.level(), p.Path, p.Message} {
		if part != "" {
			parts = append(parts, part)
		}
	}
	text := strings.Join(parts, ": ")
	if p.Code != "" {
		text += " [" + p.Code + "]"
	}
	return text
}

// level marks a warning; faults are the rule and carry no mark.
func (p Problem) level() string {
	if p.Warning {
		return "warning"
	}
	return ""
}

// List is the problems of a run in the order they were found. The zero List
// is ready to use.
type List []Problem

// Add appends a problem.
func (l *List) Add(p Problem) { *l = append(*l, p) }

// Addf appends a fault with a message made from format and args.
func (l *List) Addf(pos Pos, code, format string, args ...any) {
	l.Add(Problem{Pos: pos, Code: code, Message: fmt.Sprintf(format, args...)})
}

// Join appends all problems of o.
func (l *List) Join(o List) { *l = append(*l, o...) }

// Sorted is a copy in the order of file, line, column and code, with exact
// repeats dropped.
func (l List) Sorted() List {
	sorted := slices.Clone(l)
	slices.SortStableFunc(sorted, compare)
	return slices.CompactFunc(sorted, func(a, b Problem) bool {
		return compare(a, b) == 0 && a.Advice == b.Advice && a.Warning == b.Warning &&
			slices.Equal(a.Related, b.Related)
	})
}

// compare orders by place first, so that a list reads like the file it is
// about.
func compare(a, b Problem) int {
	return cmp.Or(
		cmp.Compare(a.Pos.File, b.Pos.File),
		cmp.Compare(a.Pos.Line, b.Pos.Line),
		cmp.Compare(a.Pos.Column, b.Pos.Column),
		cmp.Compare(a.Code, b.Code),
		cmp.Compare(a.Pos.Sheet, b.Pos.Sheet),
		cmp.Compare(a.Pos.Cell, b.Pos.Cell),
		cmp.Compare(a.Path, b.Path),
		cmp.Compare(a.Message, b.Message),
	)
}

// Faults is the problems that stop the work, in their order.
func (l List) Faults() List {
	var kept List
	for _, p := range l {
		if !p.Warning {
			kept = append(kept, p)
		}
	}
	return kept
}

// Err is nil when there are no faults. Otherwise its text is every fault, one
// a line, without advice; warnings are not part of it.
func (l List) Err() error {
	if faults := l.Faults(); len(faults) > 0 {
		return failure(faults)
	}
	return nil
}

// failure is a list that has at least one fault, as an error.
type failure List

func (f failure) Error() string {
	lines := make([]string, len(f))
	for i, p := range f {
		lines[i] = p.line()
	}
	return strings.Join(lines, "\n")
}
