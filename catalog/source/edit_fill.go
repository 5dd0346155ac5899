package source

import (
	"strings"

	"gopkg.in/yaml.v3"
)

// fill writes the fields to add at a spot.
func (e *editor) fill(f *fill) {
	n := f.node
	if !isNull(n) {
		if n.Style&yaml.FlowStyle != 0 {
			e.fillFlow(f)
		} else {
			e.fillBlock(f)
		}
		return
	}
	if isNothing(n) && f.key == nil {
		e.refuse(f.shown(), "an entry is empty and has no place of its own")
		return
	}
	out, mapping := e.between(f.fields)
	e.replace(f.spot, out, mapping)
}

// replace writes a value in the place of a single value or of nothing; a field
// of nothing has its place behind the colon.
func (e *editor) replace(at spot, out string, n *yaml.Node) {
	old := at.node
	if isNothing(old) {
		end := e.text.pairEnd(at.key, old, at.indent)
		space := ": "
		if e.text.is(end-1, ":") {
			space = " "
		}
		e.text.put(end, end, space+out)
	} else {
		e.overwrite(at, out)
	}
	e.later = append(e.later, func() { *old = *n })
}

// overwrite puts out in the place of a single value that is not nothing.
func (e *editor) overwrite(at spot, out string) {
	start := e.text.start(at.node)
	if at.node.Style&(yaml.LiteralStyle|yaml.FoldedStyle) == 0 {
		e.text.put(start, e.text.end(at.node, at.indent), out)
		return
	}
	// A comment behind the "|" stays; the lines below go.
	header, end := e.text.block(start, at.indent)
	e.text.put(start, header, out)
	if lines := e.text.lineEnd(header); end > lines {
		e.text.put(lines, end, "")
	}
}

// fillBlock puts each field on a line of its own behind the last one.
func (e *editor) fillBlock(f *fill) {
	indent := f.node.Column - 1
	end := e.text.end(f.node, f.indent)
	for _, a := range f.fields {
		line, key, value := e.line(a, false)
		e.text.insertLine(end, strings.Repeat(" ", indent)+line)
		e.grow(f.node, key, value)
	}
}

// fillFlow puts the fields between the braces, behind the last one.
func (e *editor) fillFlow(f *fill) {
	n, start := f.node, e.text.start(f.node)
	if !e.text.is(start, "{") {
		e.refuse(n, "a single field of a list has no braces to add another within")
		return
	}
	end, before := e.text.lastEnd(n, start+1, f.indent), ""
	if len(n.Content) > 2*e.dropped(n) {
		before = ", "
	}
	for _, a := range f.fields {
		line, key, value := e.line(a, true)
		e.text.put(end, end, before+line)
		e.grow(n, key, value)
		before = ", "
	}
}

// grow adds nodes to a mapping or list, when the time has come.
func (e *editor) grow(n *yaml.Node, more ...*yaml.Node) {
	e.later = append(e.later, func() { n.Content = append(n.Content, more...) })
}

// line is an added field as it is written, and its nodes.
func (e *editor) line(a *added, inFlow bool) (out string, key, value *yaml.Node) {
	name, key := written(a.name, false, inFlow)
	if a.edit < 0 {
		out, value = e.between(a.fields)
	} else {
		out, value = written(a.value, a.asText, inFlow)
		e.asked[value] = append(e.asked[value], a.edit)
	}
	return name + ": " + out, key, value
}

// between is added fields within braces, and their mapping.
func (e *editor) between(fields []*added) (string, *yaml.Node) {
	n := &yaml.Node{Kind: yaml.MappingNode, Tag: "!!map", Style: yaml.FlowStyle}
	lines := make([]string, len(fields))
	for i, a := range fields {
		line, key, value := e.line(a, true)
		lines[i] = line
		n.Content = append(n.Content, key, value)
	}
	return "{" + strings.Join(lines, ", ") + "}", n
}
