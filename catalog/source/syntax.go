package source

import (
	"bytes"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"tentwright/catalog/diag"

	"gopkg.in/yaml.v3"
)

// slip is what a person most likely did when the YAML reader says text.
type slip struct{ text, message, advice string }

// slips are the errors of the YAML reader that people meet, in its words and
// in ours. The others are passed on as they are.
var slips = []slip{
	{badKey, "the indentation does not fit the lines above", "fields of one thing begin in the same column"},
	{badEntry, "the indentation does not fit the lines above", `entries of one list have their "-" in the same column`},
	{badStart, "the indentation does not fit the lines above",
		"this line begins further left than the first one, or text follows a closing bracket"},
	{openBracket, "a bracket is not closed, or a comma is missing", ""},
	{"mapping values are not allowed", `a ": " cannot stand here`, `put a text that holds ": " in quotes, or mend the indentation`},
	{badStartOfToken, "a value cannot begin with this character", "put the text in quotes; indent with spaces, not tabs"},
	{"tab character", "a tab cannot indent", "indent with spaces"},
	{"could not find expected ':'", "a name has no colon behind it", `a field is a name, ": " and a value`},
	{openQuote, "a quote is not closed", ""},
}

// Errors of the YAML reader whose line needs mending: the first three have
// that of the block they stand in, not of the fault.
const (
	badKey   = "did not find expected key"
	badEntry = "did not find expected '-' indicator"
	badStart = "did not find expected <document start>"

	openQuote = "found unexpected end of stream"
)

// syntax reports an error of the YAML reader, which has a line inside its
// text and no column.
func (d *decoder) syntax(data []byte, err error) {
	line, text := errorLine(err)
	pos := diag.Pos{File: d.file, Line: line}
	switch {
	case text == badKey || text == badEntry || text == badStart:
		pos.Line = firstBad(data, text, line)
	case strings.HasPrefix(text, openBracket) || strings.HasSuffix(text, "node content"):
		// Here the reader counts lines from 0.
		pos.Line = min(line+1, lastLine(data))
	case text == openQuote && line > lastLine(data):
		// Only a quote that opens on the first line is placed at the end.
		pos.Line = 1
	case strings.HasPrefix(text, "unknown anchor '"):
		d.undefinedAlias(data, text)
		return
	case strings.HasPrefix(text, "exceeded max depth"):
		// The reader's own limit is far above ours but says no place.
		d.report(diag.Problem{Pos: pos, Code: diag.TooDeep, Message: tooDeep})
		return
	}
	if strings.HasPrefix(text, openBracket) {
		at := openedAt(data, pos.Line, text)
		pos.Line, pos.Column = at.Line, at.Column
	} else {
		pos.Column = column(data, pos.Line, text)
	}
	p := diag.Problem{Pos: pos, Code: diag.Syntax, Message: "not YAML: " + text}
	for _, s := range slips {
		if strings.Contains(text, s.text) {
			p.Message, p.Advice = s.message, s.advice
			break
		}
	}
	d.report(p)
}

// errorLine splits "yaml: line 3: text". Without a line it is the first, or
// for errors that count from 0 the one before it.
func errorLine(err error) (line int, text string) {
	text = strings.TrimPrefix(err.Error(), "yaml: ")
	if after, ok := strings.CutPrefix(text, "line "); ok {
		number, rest, _ := strings.Cut(after, ": ")
		if n, err := strconv.Atoi(number); err == nil {
			return n, rest
		}
	}
	if strings.HasPrefix(text, "did not find expected") {
		return 0, text
	}
	return 1, text
}

// firstBad is the line that a block goes wrong on: the end of the shortest
// run of lines from the top that gives the same error. A block may end after
// any line, so shorter runs do not give it.
func firstBad(data []byte, text string, guess int) int {
	const most = 1 << 19 // larger files would take seconds
	if len(data) > most {
		return max(guess, 1)
	}
	ends := lineEnds(data)
	bad, _ := slices.BinarySearchFunc(ends, 0, func(end, _ int) int {
		if gives(data[:end], text) {
			return 1
		}
		return -1
	})
	return bad + 1
}

// column is where on its line an error begins: the first character from which
// on every longer run of the line gives it. 0 where that cannot be told.
func column(data []byte, line int, text string) int {
	const most = 8 << 20 // bytes to read again and again; more would take a second
	ends := lineEnds(data)
	if line < 1 || line > len(ends) {
		return 0
	}
	from := 0
	if line > 1 {
		from = ends[line-2]
	}
	at := from + len(bytes.TrimRight(data[from:ends[line-1]], "\r\n"))
	shown := bytes.TrimPrefix(data[from:at], []byte("\ufeff"))
	if gives(data[:from], text) {
		return 0
	}
	// Backwards, because a quote that is closed later on is open for a while.
	found, cost := 0, 0
	for n := utf8.RuneCount(shown); n > 0 && gives(data[:at], text); n-- {
		if cost += at; cost > most {
			return 0
		}
		found = n
		_, size := utf8.DecodeLastRune(data[:at])
		at -= size
	}
	return found
}

// gives tells whether the YAML reader has this error to say of data.
func gives(data []byte, text string) bool {
	_, _, err := read(data)
	if err == nil {
		return false
	}
	_, have := errorLine(err)
	return have == text
}

// lineEnds is the offset behind each line of data.
func lineEnds(data []byte) []int {
	var ends []int
	for i, b := range data {
		if b == '\n' || i == len(data)-1 {
			ends = append(ends, i+1)
		}
	}
	return ends
}

// lastLine is the number of the last line that is not blank.
func lastLine(data []byte) int {
	return bytes.Count(bytes.TrimSpace(data), []byte("\n")) + 1
}

// undefinedAlias reports an alias without an anchor, which the YAML reader
// refuses before there are nodes.
func (d *decoder) undefinedAlias(data []byte, text string) {
	name, _, _ := strings.Cut(strings.TrimPrefix(text, "unknown anchor '"), "'")
	before, _, _ := bytes.Cut(data, []byte("*"+name))
	line := before[bytes.LastIndexByte(before, '\n')+1:]
	at := yaml.Node{Line: bytes.Count(before, []byte("\n")) + 1, Column: utf8.RuneCount(line) + 1}
	d.fault(&at, ref{}, diag.Feature, aliasAdvice, aliasMessage, "*"+clipped(name))
}

// Words that are needed where the reader refuses and where its nodes are seen.
const (
	tooDeep      = "nested more than 64 levels deep"
	aliasMessage = "the alias %q cannot be used"
	aliasAdvice  = `write the value out; put a text that begins with "*" in quotes`
)

// allowed reports the parts of YAML that files do not use, anywhere below n,
// and tells whether the nesting is within its limit.
func (d *decoder) allowed(n *yaml.Node, depth int) bool {
	if depth > maxDepth {
		d.fault(n, ref{}, diag.TooDeep, "", tooDeep)
		return false
	}
	switch {
	case n.Kind == yaml.AliasNode:
		d.fault(n, ref{}, diag.Feature, aliasAdvice, aliasMessage, "*"+clipped(n.Value))
		return true
	case n.Anchor != "":
		d.fault(n, ref{}, diag.Feature, "write the value out where it is needed", "the anchor %q cannot be used", "&"+clipped(n.Anchor))
	}
	if n.Style&yaml.TaggedStyle != 0 {
		d.fault(n, ref{}, diag.Feature, "leave it out", "the tag %q cannot be used", clipped(n.Tag))
	}
	for i, c := range n.Content {
		if n.Kind == yaml.MappingNode && i%2 == 0 && c.Tag == "!!merge" {
			d.fault(c, ref{}, diag.Feature, "write the fields out", `the merge key "<<" cannot be used`)
		}
		if !d.allowed(c, depth+1) {
			return false
		}
	}
	return true
}

// unusable tells whether allowed has already reported n, so that its value
// means nothing.
func unusable(n *yaml.Node) bool {
	return n.Kind == yaml.AliasNode || n.Style&yaml.TaggedStyle != 0
}

// isNull tells whether n is no value: nothing behind a colon, null or ~.
func isNull(n *yaml.Node) bool { return n.Kind == yaml.ScalarNode && n.Tag == "!!null" }

// clipped keeps a message to one line when a file holds something odd.
func clipped(text string) string {
	const most = 60
	if r := []rune(text); len(r) > most {
		return string(r[:most]) + "..."
	}
	return text
}
