package source

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"tentwright/catalog/diag"

	"gopkg.in/yaml.v3"
)

// spot is a node of the tree with what is needed to write in its place.
type spot struct {
	node   *yaml.Node
	key    *yaml.Node // of the field whose value the node is, if it is one
	owner  *yaml.Node // the mapping or list that holds it; nil for the top
	indent int        // column, from 0, of the nearest block around it
	inFlow bool       // it stands between brackets
}

// below is the spot of a value of the spot's node.
func (s spot) below(key, value *yaml.Node) spot {
	next := spot{node: value, key: key, owner: s.node, indent: s.indent, inFlow: s.inFlow}
	if s.node.Style&yaml.FlowStyle != 0 {
		next.inFlow = true
	} else {
		next.indent = s.node.Column - 1
	}
	return next
}

// fill is the fields to add at a spot: a mapping, or nothing.
type fill struct {
	spot
	fields []*added
}

// added is a field that is not there yet: a value, or fields of its own.
type added struct {
	name   string
	value  string
	asText bool
	edit   int // number of the edit; -1 for a mapping on the way
	fields []*added
}

// plan finds the place of every edit, changes the values that are there and
// gathers the fields to add and to remove.
func (e *editor) plan(edits []Edit) {
	e.conflicts(edits)
	for i, edit := range edits {
		steps, ok := e.steps(edit.Path)
		switch {
		case !ok:
		case edit.Drop:
			e.planDrop(edit.Path, steps, i)
		case !utf8.ValidString(edit.Value):
			e.fail(e.root, edit.Path, diag.BadValue, "", "%q is not UTF-8 text", clipped(edit.Value))
		default:
			e.planSet(edit, steps, i)
		}
	}
}

// conflicts reports edits of one value, and of a value within another.
func (e *editor) conflicts(edits []Edit) {
	seen := make(map[string]bool, len(edits))
	for _, edit := range edits {
		if seen[edit.Path] {
			e.fail(e.root, edit.Path, diag.RepeatedField, "", "is changed twice in one go")
		}
		seen[edit.Path] = true
	}
	for _, edit := range edits {
		for at, c := range edit.Path {
			if (c == '.' || c == '[') && seen[edit.Path[:at]] {
				e.fail(e.root, edit.Path, diag.RepeatedField, "", "is changed, and so is %q, which holds it", clipped(edit.Path[:at]))
			}
		}
	}
}

// fail reports a fault of an edit at a node.
func (e *editor) fail(n *yaml.Node, path, code, advice, format string, args ...any) {
	e.d.report(diag.Problem{Pos: e.d.pos(n), Path: path, Code: code, Message: fmt.Sprintf(format, args...), Advice: advice})
}

// steps splits a path; a fault when it is not one.
func (e *editor) steps(path string) ([]string, bool) {
	var steps []string
	back := ""
	for rest := path; rest != ""; {
		var step string
		step, rest = nextStep(rest)
		if strings.HasPrefix(step, "[") {
			if i, err := strconv.Atoi(strings.Trim(step, "[]")); err != nil || i < 0 || step != "["+strconv.Itoa(i)+"]" {
				break
			}
		} else if back != "" {
			back += "."
		}
		if step == "" {
			break
		}
		back += step
		steps = append(steps, step)
	}
	if path == "" || back != path {
		e.fail(e.root, "", diag.BadValue, "", "%q is not the way to a value; expected one such as \"zones[1].flat\"", clipped(path))
		return nil, false
	}
	return steps, true
}

// walk goes along the steps as far as the file does: to the last spot that is
// there, and the steps that are left. ok is false after a fault.
func (e *editor) walk(path string, steps []string) (at spot, left []string, ok bool) {
	at = spot{node: e.root, indent: -1}
	for i, step := range steps {
		n := at.node
		index, isIndex := strings.CutPrefix(step, "[")
		switch {
		case isNull(n):
			return at, steps[i:], true
		case isIndex && n.Kind == yaml.SequenceNode:
			k, _ := strconv.Atoi(strings.TrimSuffix(index, "]"))
			if k >= len(n.Content) {
				e.fail(n, path, diag.OutOfRange, "entries are counted from 0", "the list has %s; there is no [%d]", entries(len(n.Content)), k)
				return at, nil, false
			}
			at = at.below(nil, n.Content[k])
		case !isIndex && n.Kind == yaml.MappingNode:
			k := fieldOf(n, step)
			if k < 0 {
				return at, steps[i:], true
			}
			at = at.below(n.Content[k], n.Content[k+1])
		default:
			want := "fields"
			if isIndex {
				want = "a list"
			}
			e.fail(n, path, diag.WrongKind, "", "expected %s for %s, found %s", want, clipped(step), found(n))
			return at, nil, false
		}
	}
	return at, nil, true
}

// entries is a count of entries in words.
func entries(n int) string {
	if n == 1 {
		return "1 entry"
	}
	return strconv.Itoa(n) + " entries"
}

// fieldOf is the index of a field's key in a mapping; -1 when it is not there.
func fieldOf(n *yaml.Node, name string) int {
	for i := 0; i+1 < len(n.Content); i += 2 {
		if key := n.Content[i]; key.Kind == yaml.ScalarNode && key.Value == name {
			return i
		}
	}
	return -1
}

// planSet changes a value that is there, or gathers the field to add.
func (e *editor) planSet(edit Edit, steps []string, number int) {
	at, left, ok := e.walk(edit.Path, steps)
	switch {
	case !ok:
	case len(left) > 0:
		e.gather(at, edit.Path, left, added{value: edit.Value, asText: edit.Text, edit: number})
	case at.node.Kind != yaml.ScalarNode:
		e.fail(at.node, edit.Path, diag.WrongKind, "", "holds %s, not a single value", found(at.node))
	default:
		e.set(at, edit, number)
	}
}

// set writes over a single value, unless it reads the same already.
func (e *editor) set(at spot, edit Edit, number int) {
	out, n := written(edit.Value, edit.Text, at.inFlow)
	old := at.node
	e.asked[old] = append(e.asked[old], number)
	switch {
	case old.Value == n.Value && old.Tag == n.Tag && (old.Style != 0 || n.Style == 0):
	case isNothing(old) && at.key == nil:
		e.refuse(at.shown(), "an entry is empty and has no place of its own")
	default:
		e.replace(at, out, n)
	}
}

// gather adds a field to those of a spot, with the mappings on the way.
func (e *editor) gather(at spot, path string, left []string, leaf added) {
	if i := slices.IndexFunc(left, func(s string) bool { return strings.HasPrefix(s, "[") }); i >= 0 {
		e.fail(at.shown(), path, diag.OutOfRange, "", "there is no list for %s", clipped(left[i]))
		return
	}
	i := slices.IndexFunc(e.fills, func(f *fill) bool { return f.node == at.node })
	if i < 0 {
		i = len(e.fills)
		e.fills = append(e.fills, &fill{spot: at})
	}
	hang(&e.fills[i].fields, left, leaf)
}

// hang puts a field among others, at the end of the names on the way to it.
func hang(fields *[]*added, names []string, leaf added) {
	for _, name := range names[:len(names)-1] {
		i := slices.IndexFunc(*fields, func(a *added) bool { return a.name == name && a.edit < 0 })
		if i < 0 {
			i = len(*fields)
			*fields = append(*fields, &added{name: name, edit: -1})
		}
		fields = &(*fields)[i].fields
	}
	leaf.name = names[len(names)-1]
	*fields = append(*fields, &leaf)
}

// shown is the node to point at: nothing has no place of its own.
func (s spot) shown() *yaml.Node {
	switch {
	case s.key != nil:
		return shown(s.key, s.node)
	case isNothing(s.node) && s.owner != nil:
		return s.owner
	}
	return s.node
}
