package source

import (
	"bytes"
	"cmp"
	"slices"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

// text is the bytes of a file and the changes to make in them.
type text struct {
	data    []byte
	starts  []int // offset of each line
	splices []splice
	lost    bool // a node was not found where the reader says it is
}

// splice puts new in place of the bytes from one offset to another.
type splice struct {
	from, to int
	new      string
}

func newText(data []byte) *text {
	return &text{data: data, starts: append([]int{0}, lineEnds(data)...)}
}

// put gathers a change.
func (t *text) put(from, to int, new string) {
	t.splices = append(t.splices, splice{from, to, new})
}

// changed is the bytes with all changes made; false when two of them meet or
// a place was not found.
func (t *text) changed() ([]byte, bool) {
	slices.SortStableFunc(t.splices, func(a, b splice) int {
		return cmp.Or(cmp.Compare(a.from, b.from), cmp.Compare(a.to, b.to))
	})
	out := make([]byte, 0, len(t.data)+1024)
	at := 0
	for _, s := range t.splices {
		if t.lost || s.from < at || s.to < s.from {
			return nil, false
		}
		out = append(append(out, t.data[at:s.from]...), s.new...)
		at = s.to
	}
	return append(out, t.data[at:]...), !t.lost
}

// start is the offset of a node's first byte. The reader counts columns in
// characters and leaves out a byte order mark at the top.
func (t *text) start(n *yaml.Node) int {
	if n.Line < 1 || n.Line > len(t.starts) {
		t.lost = true
		return 0
	}
	at := t.starts[n.Line-1]
	if at == 0 && bytes.HasPrefix(t.data, []byte("\ufeff")) {
		at = len("\ufeff")
	}
	for range n.Column - 1 {
		_, size := utf8.DecodeRune(t.data[at:])
		at += size
	}
	return at
}

// end is the offset behind a node that is not nothing. indent is the column,
// from 0, of the nearest block around it.
func (t *text) end(n *yaml.Node, indent int) int {
	at := t.start(n)
	switch {
	case n.Kind == yaml.ScalarNode:
		return t.scalarEnd(n, at, indent)
	case n.Style&yaml.FlowStyle == 0:
		return t.lastEnd(n, at, n.Column-1)
	case t.is(at, "[{"):
		// The last value, then perhaps a comma, and the bracket.
		at = t.filler(t.lastEnd(n, at+1, indent), ",")
		if !t.is(at, "]}") {
			t.lost = true
		}
		return at + 1
	}
	return t.lastEnd(n, at, indent) // one pair of a list, without braces
}

// lastEnd is the end of the last value of a collection; at when it is empty.
func (t *text) lastEnd(n *yaml.Node, at, indent int) int {
	switch count := len(n.Content); {
	case count == 0:
		return at
	case n.Kind == yaml.MappingNode:
		return t.pairEnd(n.Content[count-2], n.Content[count-1], indent)
	default:
		last := n.Content[count-1]
		if isNothing(last) {
			t.lost = true // where an entry of nothing stands is not known
		}
		return t.end(last, indent)
	}
}

// pairEnd is the end of a field: of its value, or of its colon when there is
// nothing behind it, or of its key when there is no colon either.
func (t *text) pairEnd(key, value *yaml.Node, indent int) int {
	if !isNothing(value) {
		return t.end(value, indent)
	}
	end := t.end(key, indent)
	if colon := t.blanks(end); t.is(colon, ":") {
		return colon + 1
	}
	return end
}

// scalarEnd is the end of a single value that begins at an offset.
func (t *text) scalarEnd(n *yaml.Node, at, indent int) int {
	switch {
	case n.Style&yaml.DoubleQuotedStyle != 0:
		for at++; at < len(t.data) && t.data[at] != '"'; at++ {
			if t.data[at] == '\\' {
				at++
			}
		}
		return at + 1
	case n.Style&yaml.SingleQuotedStyle != 0:
		for at++; at < len(t.data); at++ {
			if t.data[at] != '\'' {
				continue
			}
			if !t.is(at+1, "'") {
				break
			}
			at++
		}
		return at + 1
	case n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0:
		_, end := t.block(at, indent)
		return end
	}
	return t.plainEnd(at, n.Value)
}

// plainEnd finds a value without quotes by its own characters: nothing in it
// is written otherwise than it reads, but lines are folded.
func (t *text) plainEnd(at int, value string) int {
	end := at
	for i := range len(value) {
		if strings.IndexByte(" \t\r\n", value[i]) >= 0 {
			continue
		}
		for t.is(at, " \t\r\n") {
			at++
		}
		if at >= len(t.data) || t.data[at] != value[i] {
			t.lost = true
			return end
		}
		at++
		end = at
	}
	return end
}

// block is the end of the "|" or ">" at an offset with what belongs to it, and
// the end of the lines of text below it.
func (t *text) block(at, indent int) (header, end int) {
	header = at + 1
	keep, column := false, 0 // column 0: that of the first line with text
	for ; t.is(header, "+-123456789"); header++ {
		switch c := t.data[header]; {
		case c == '+':
			keep = true
		case c != '-':
			column = indent + int(c-'0')
		}
	}
	end = t.lineEnd(header)
	widest := indent + 1
	for from := t.nextLine(end); from < len(t.data); {
		to := t.lineEnd(from)
		line := t.data[from:to]
		spaces := len(line) - len(bytes.TrimLeft(line, " "))
		blank := spaces == len(line) && (column == 0 || spaces <= column)
		widest = max(widest, spaces)
		if !blank && column == 0 {
			column = widest
		}
		if !blank && spaces < column {
			break
		}
		if !blank || keep {
			end = to
		}
		from = t.nextLine(to)
	}
	return header, end
}

// is tells whether one of the bytes stands at an offset.
func (t *text) is(at int, one string) bool {
	return at >= 0 && at < len(t.data) && strings.IndexByte(one, t.data[at]) >= 0
}

// blanks is the offset behind the spaces and tabs at an offset.
func (t *text) blanks(at int) int {
	for t.is(at, " \t") {
		at++
	}
	return at
}

// filler is the offset behind white space, comments and, if also given, other
// bytes that mean nothing here.
func (t *text) filler(at int, also string) int {
	for {
		switch {
		case t.is(at, "#"):
			at = t.lineEnd(at)
		case t.is(at, " \t\r\n"+also):
			at++
		default:
			return at
		}
	}
}

// lineEnd is the offset of the line break of the line at an offset, or of the
// end of the file.
func (t *text) lineEnd(at int) int {
	i := bytes.IndexByte(t.data[min(at, len(t.data)):], '\n')
	switch {
	case i < 0:
		return len(t.data)
	case i > 0 && t.data[at+i-1] == '\r':
		return at + i - 1
	}
	return at + i
}

// nextLine is the offset behind the line break at an offset.
func (t *text) nextLine(at int) int {
	return min(len(t.data), at+len(t.lineBreak(at)))
}

// lineBreak is the line break at an offset, or at the end of the file the one
// that the file uses.
func (t *text) lineBreak(at int) string {
	if at >= len(t.data) {
		at = t.lineEnd(0)
	}
	if t.is(at, "\r") {
		return "\r\n"
	}
	return "\n"
}

// lineStart is the offset of the line that holds an offset.
func (t *text) lineStart(at int) int { return bytes.LastIndexByte(t.data[:at], '\n') + 1 }

// opensLine tells whether nothing but spaces stands before an offset on its
// line.
func (t *text) opensLine(at int) bool {
	return len(bytes.Trim(t.data[t.lineStart(at):at], " \t")) == 0
}

// insertLine puts a line below the one that an offset is on.
func (t *text) insertLine(at int, line string) {
	end := t.lineEnd(at)
	brk := t.lineBreak(end)
	if end == len(t.data) {
		t.put(end, end, brk+line)
		return
	}
	next := t.nextLine(end)
	t.put(next, next, line+brk)
}

// isNothing tells whether there is no value at all behind a colon or dash.
func isNothing(n *yaml.Node) bool { return isNull(n) && n.Value == "" && n.Style == 0 }
