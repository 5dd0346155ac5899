package source

import (
	"bytes"
	"strings"
	"unicode/utf8"

	"tentwright/catalog/diag"
)

const (
	// An open bracket: the reader says the line where it stands, and which one
	// would close it.
	openBracket = "did not find expected ',' or"
	// What the reader says of a character behind which it has read everything.
	badStartOfToken = "cannot start any token"
)

// openedAt is the place of the bracket that the reader was within when it gave
// the error text. The line is the reader's, which has none for a bracket of
// the first line. Column is 0 where the place cannot be told.
func openedAt(data []byte, line int, text string) (pos diag.Pos) {
	kind := byte('[')
	if strings.HasSuffix(text, "'}'") {
		kind = '{'
	}
	for _, first := range []int{line, 1} {
		if at := openFrom(data, first, kind, text); at >= 0 {
			before := data[:at]
			start := bytes.LastIndexByte(before, '\n') + 1
			shown := bytes.TrimPrefix(before[start:], []byte("\ufeff"))
			return diag.Pos{Line: first, Column: utf8.RuneCount(shown) + 1}
		}
	}
	return diag.Pos{Line: line}
}

// openFrom is the offset of the innermost bracket of the kind that opens on a
// line and is open where the reader fails; -1 where there is none.
func openFrom(data []byte, line int, kind byte, text string) int {
	ends := lineEnds(data)
	if line < 1 || line > len(ends) {
		return -1
	}
	from := 0
	if line > 1 {
		from = ends[line-2]
	}
	open := openBrackets(data, from, text)
	for i := len(open) - 1; i >= 0; i-- {
		if open[i] < ends[line-1] && data[open[i]] == kind {
			return open[i]
		}
	}
	return -1
}

// openBrackets walks over the brackets from an offset on until the reader
// fails, and lists those that are open then; none where that would take long.
func openBrackets(data []byte, from int, text string) (open []int) {
	const most = 8 << 20 // bytes to read again and again; more would take a second
	cost := 0
	for at := from; at < len(data); at++ {
		if bytes.IndexByte([]byte("[]{}"), data[at]) < 0 {
			continue
		}
		if cost += at; cost > most {
			return nil
		}
		isToken, failed := bracketAt(data[:at+1], text)
		last := len(open) - 1
		switch {
		case failed:
			return open
		case !isToken:
		case data[at] == '[' || data[at] == '{':
			open = append(open, at)
		case last < 0:
		case data[open[last]] == '[' != (data[at] == ']'):
			return open // the wrong one closes here
		default:
			open = open[:last]
		}
	}
	return open
}

// bracketAt tells whether the bracket at the end of data is one and not part
// of a text or a remark, and whether the reader has failed before it. Behind a
// bracket it stumbles over a sign that begins nothing; within a remark it does
// so on the next line only.
func bracketAt(data []byte, text string) (isToken, failed bool) {
	stumbles := func(probe string) bool {
		_, _, err := read(append(bytes.Clone(data), probe...))
		return err != nil && strings.Contains(err.Error(), badStartOfToken)
	}
	switch {
	case stumbles("@"):
		return true, false
	case !gives(append(bytes.Clone(data), '@'), text):
		return false, false
	}
	return false, !stumbles("\n@")
}
