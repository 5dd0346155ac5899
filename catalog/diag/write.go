package diag

import (
	"bufio"
	"bytes"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"
)

const (
	excerptIndent = "    "
	excerptWidth  = 100 // most characters of a user's line that are shown
)

// Write prints each problem of l in its order. With src non-nil it shows the
// user's own line below, a ^ under the column; src returns a file's bytes, or
// nil when it has none. Related places and advice follow, one a line.
// Errors of w are not reported: there is nowhere better to say so.
func Write(w io.Writer, l List, src func(file string) []byte) {
	out := bufio.NewWriter(w)
	defer out.Flush()
	for _, p := range l {
		out.WriteString(p.line() + "\n")
		if src != nil {
			out.WriteString(excerpt(src(p.Pos.File), p.Pos))
		}
		for _, at := range p.Related {
			out.WriteString("  see " + at.String() + "\n")
		}
		if p.Advice != "" {
			out.WriteString("  " + p.Advice + "\n")
		}
	}
}

// excerpt is the line at pos and a second line with the mark; "" when data has
// no such line. A line that is only blanks is not worth showing.
func excerpt(data []byte, pos Pos) string {
	line, ok := lineOf(data, pos.Line)
	if !ok || strings.TrimSpace(line) == "" {
		return ""
	}
	text, column := clip([]rune(line), pos.Column)
	shown := excerptIndent + string(text) + "\n"
	if column < 1 || column > len(text)+1 {
		return shown
	}
	// Blanks keep the width of what they stand under only if tabs stay tabs.
	under := make([]rune, 0, column)
	for _, r := range text[:column-1] {
		if r != '\t' {
			r = ' '
		}
		under = append(under, r)
	}
	return shown + excerptIndent + string(under) + "^\n"
}

// lineOf is line n of data, counted from 1, without its line end. Characters
// that could steer a terminal are shown as a replacement mark.
func lineOf(data []byte, n int) (string, bool) {
	if n < 1 {
		return "", false
	}
	for ; n > 1; n-- {
		_, rest, found := bytes.Cut(data, []byte("\n"))
		if !found {
			return "", false
		}
		data = rest
	}
	line, _, _ := bytes.Cut(data, []byte("\n"))
	line = bytes.TrimPrefix(bytes.TrimSuffix(line, []byte("\r")), []byte("\ufeff"))
	return strings.Map(func(r rune) rune {
		if r != '\t' && !unicode.IsPrint(r) {
			return utf8.RuneError
		}
		return r
	}, string(line)), true
}

// clip shortens a long line to a piece that holds the column, and returns the
// column in that piece.
func clip(line []rune, column int) ([]rune, int) {
	if len(line) <= excerptWidth {
		return line, column
	}
	// A third of the piece stands before the mark, the rest after it.
	from := min(max(0, column-excerptWidth/3), len(line)-excerptWidth)
	return line[from : from+excerptWidth], column - from
}
