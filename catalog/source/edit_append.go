package source

import (
	"strings"
	"unicode/utf8"

	"tentwright/catalog/diag"

	"gopkg.in/yaml.v3"
)

// widest is the columns of a line that a new entry fills before it goes on in
// the next one.
const widest = 120

// planEntry finds the list and writes the new entry.
func (e *editor) planEntry(list string, entry []Field) {
	steps, ok := e.steps(list)
	if !ok {
		return
	}
	fields := e.entry(list, entry)
	at, left, ok := e.walk(list, steps)
	if !ok || !e.sound() {
		return
	}
	switch {
	case len(left) > 0 && (len(left) > 1 || strings.HasPrefix(left[0], "[") || at.node.Kind != yaml.MappingNode):
		e.fail(at.shown(), list, diag.MissingField, "", "there is no %s to hold the list", clipped(left[0]))
	case len(left) > 0:
		e.newList(at, left[0], fields)
	case isNull(at.node):
		out, n := e.between(fields)
		e.replace(at, "["+out+"]", listOf(n))
	case at.node.Kind != yaml.SequenceNode:
		e.fail(at.node, list, diag.WrongKind, "", "expected a list, found %s", found(at.node))
	case at.node.Style&yaml.FlowStyle != 0:
		e.appendFlow(at, fields)
	default:
		e.appendBlock(at, fields)
	}
}

// entry is the fields of an entry as fields to add.
func (e *editor) entry(list string, entry []Field) []*added {
	var fields []*added
	edits := make([]Edit, len(entry))
	for i, f := range entry {
		edits[i].Path = f.Name
		steps, ok := e.steps(f.Name)
		switch {
		case !ok:
		case strings.Contains(f.Name, "["):
			e.fail(e.root, list, diag.BadValue, "", "%q is not the name of a field", clipped(f.Name))
		case !utf8.ValidString(f.Value):
			e.fail(e.root, list, diag.BadValue, "", "%q is not UTF-8 text", clipped(f.Value))
		default:
			hang(&fields, steps, added{value: f.Value, asText: f.Text, edit: i})
		}
	}
	if len(entry) == 0 {
		e.fail(e.root, list, diag.BadValue, "", "an entry has at least one field")
	}
	e.conflicts(edits)
	return fields
}

// listOf is a list of one entry between brackets.
func listOf(n *yaml.Node) *yaml.Node {
	return &yaml.Node{Kind: yaml.SequenceNode, Tag: "!!seq", Style: yaml.FlowStyle, Content: []*yaml.Node{n}}
}

// newList adds a field with a list of one entry.
func (e *editor) newList(at spot, name string, fields []*added) {
	n := at.node
	if n.Style&yaml.FlowStyle != 0 {
		start := e.text.start(n)
		if !e.text.is(start, "{") {
			e.refuse(n, "a single field of a list has no braces to add another within")
			return
		}
		out, entry := e.between(fields)
		key, keyNode := written(name, false, true)
		end, before := e.text.lastEnd(n, start+1, at.indent), ""
		if len(n.Content) > 0 {
			before = ", "
		}
		e.text.put(end, end, before+key+": ["+out+"]")
		e.grow(n, keyNode, listOf(entry))
		return
	}
	indent := n.Column - 1
	end := e.text.end(n, at.indent)
	key, keyNode := written(name, false, false)
	lines, entry := e.wrapped(fields, indent+2, e.text.lineBreak(e.text.lineEnd(end)))
	head := strings.Repeat(" ", indent) + key + ":" + e.text.lineBreak(e.text.lineEnd(end))
	e.text.insertLine(end, head+lines)
	e.grow(n, keyNode, &yaml.Node{Kind: yaml.SequenceNode, Tag: "!!seq", Content: []*yaml.Node{entry}})
}

// appendFlow adds an entry between brackets.
func (e *editor) appendFlow(at spot, fields []*added) {
	out, n := e.between(fields)
	end, before := e.text.lastEnd(at.node, e.text.start(at.node)+1, at.indent), ""
	if len(at.node.Content) > 0 {
		before = ", "
	}
	e.text.put(end, end, before+out)
	e.grow(at.node, n)
}

// appendBlock adds an entry behind a dash: with fields on lines of their own
// when the last entry has them so, else between braces.
func (e *editor) appendBlock(at spot, fields []*added) {
	indent := at.node.Column - 1
	end := e.text.end(at.node, at.indent)
	brk := e.text.lineBreak(e.text.lineEnd(end))
	last := at.node.Content[len(at.node.Content)-1]
	if last.Kind != yaml.MappingNode || last.Style&yaml.FlowStyle != 0 {
		lines, entry := e.wrapped(fields, indent, brk)
		e.text.insertLine(end, lines)
		e.grow(at.node, entry)
		return
	}
	entry := &yaml.Node{Kind: yaml.MappingNode, Tag: "!!map"}
	column := max(last.Column-1, indent+2)
	lines := make([]string, len(fields))
	for i, a := range fields {
		line, key, value := e.line(a, false)
		lines[i] = strings.Repeat(" ", column) + line
		entry.Content = append(entry.Content, key, value)
	}
	lines[0] = strings.Repeat(" ", indent) + "-" + lines[0][indent+1:]
	e.text.insertLine(end, strings.Join(lines, brk))
	e.grow(at.node, entry)
}

// wrapped is an entry between braces behind a dash, on as many lines as it
// needs.
func (e *editor) wrapped(fields []*added, indent int, brk string) (string, *yaml.Node) {
	n := &yaml.Node{Kind: yaml.MappingNode, Tag: "!!map", Style: yaml.FlowStyle}
	var b strings.Builder
	b.WriteString(strings.Repeat(" ", indent) + "- {")
	width := indent + 3
	for i, a := range fields {
		line, key, value := e.line(a, true)
		n.Content = append(n.Content, key, value)
		size := utf8.RuneCountInString(line) + 1 // with its comma or brace
		switch {
		case i == 0:
		case width+1+size > widest:
			b.WriteString("," + brk + strings.Repeat(" ", indent+3))
			width = indent + 3
		default:
			b.WriteString(", ")
			width++
		}
		b.WriteString(line)
		width += size
	}
	b.WriteString("}")
	return b.String(), n
}
