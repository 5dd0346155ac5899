package source

import (
	"strconv"
	"strings"

	"tentwright/catalog/diag"

	"gopkg.in/yaml.v3"
)

// Where tells later checks where a struct and each of its fields stood in the
// file. Put one in a struct as a field of this type. It is one pointer; the
// zero Where is nowhere.
type Where struct{ at *place }

// place is a mapping or list of the file and the way to it.
type place struct {
	ref
	file string
	node *yaml.Node
}

// ref is a way from a place to one of its values: a field by name, or an
// entry by index when the name is empty.
type ref struct {
	up    *place
	name  string
	index int
}

// path is the way from the top of the file, e.g. "parts[3].weight".
func (r ref) path() string {
	if r.up == nil {
		return ""
	}
	above := r.up.path()
	switch {
	case r.name == "":
		return above + "[" + strconv.Itoa(r.index) + "]"
	case above == "":
		return r.name
	}
	return above + "." + r.name
}

// newPlace hands out places from blocks: a file has hundreds of them.
func (d *decoder) newPlace(n *yaml.Node, at ref) *place {
	const block = 64
	if len(d.places) == 0 {
		d.places = make([]place, block)
	}
	p := &d.places[0]
	d.places = d.places[1:]
	*p = place{ref: at, file: d.file, node: n}
	return p
}

// pos is the place's first character.
func (p *place) pos(n *yaml.Node) diag.Pos {
	return diag.Pos{File: p.file, Line: n.Line, Column: n.Column}
}

// Pos is the position of the struct itself; the zero Pos for the zero Where.
func (w Where) Pos() diag.Pos {
	if w.at == nil {
		return diag.Pos{}
	}
	return w.at.pos(w.at.node)
}

// Path is the struct's way from the top of the file, e.g. "parts[3]"; "" for
// the top itself.
func (w Where) Path() string {
	if w.at == nil {
		return ""
	}
	return w.at.path()
}

// Of is the position of a value below the struct: "weight", "needs[2]",
// "pack.size". When the file does not give it, the nearest value above it
// that is given answers, at last [Where.Pos].
func (w Where) Of(field string) diag.Pos {
	if w.at == nil {
		return diag.Pos{}
	}
	// Found when asked for: of the thousands of values of a file, few are ever
	// pointed at.
	n := w.at.node
	for rest := field; rest != ""; {
		var step string
		step, rest = nextStep(rest)
		next := child(n, step)
		if next == nil {
			break
		}
		n = next
	}
	return w.at.pos(n)
}

// nextStep splits "needs[2].x" into "needs" and "[2].x", "[2].x" into "[2]"
// and "x".
func nextStep(path string) (step, rest string) {
	if strings.HasPrefix(path, "[") {
		end := strings.IndexByte(path+"]", ']') + 1
		return path[:min(end, len(path))], strings.TrimPrefix(path[min(end, len(path)):], ".")
	}
	end := strings.IndexAny(path+".", ".[")
	return path[:end], strings.TrimPrefix(path[end:], ".")
}

// child is the value one step below n, or nil.
func child(n *yaml.Node, step string) *yaml.Node {
	switch {
	case n.Kind == yaml.MappingNode:
		for i := 0; i+1 < len(n.Content); i += 2 {
			if n.Content[i].Value == step {
				return shown(n.Content[i], n.Content[i+1])
			}
		}
	case n.Kind == yaml.SequenceNode && strings.HasPrefix(step, "["):
		i, err := strconv.Atoi(strings.Trim(step, "[]"))
		if err == nil && 0 <= i && i < len(n.Content) {
			return n.Content[i]
		}
	}
	return nil
}

// shown is the node to point at for a value: its key when there is nothing
// behind the colon.
func shown(key, value *yaml.Node) *yaml.Node {
	if isNull(value) && value.Value == "" {
		return key
	}
	return value
}
