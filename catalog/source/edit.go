package source

import (
	"tentwright/catalog/diag"

	"gopkg.in/yaml.v3"
)

// CannotEdit is the code of a change that cannot be made in the text as it is
// written; the file is left as it was.
const CannotEdit = "cannot-edit"

// Edit sets one value of a file, or removes one field.
type Edit struct {
	Path  string // the way from the top, e.g. "rates.zones[1].flat", as [Where.Path] writes it
	Value string // the new value; in double quotes where it would not be read back as it is
	Text  bool   // the value is a text and must not be read as a number, yes or no, a date or nothing
	Drop  bool   // remove the field; Value and Text mean nothing
}

// Field is a field of a new entry; a name such as "pack.size" stands for a
// field of a field. Value and Text are as in [Edit].
type Field struct {
	Name, Value string
	Text        bool
}

// Apply is data, the contents of file, with all edits made, and the place of
// each edit's value in it; a dropped field has that of the fields it stood
// among. Everything else stays as it was, byte for byte. After any fault data
// comes back unchanged, with all faults.
//
// A field that is not there is added behind the last one of its mapping, and
// so are mappings on the way. Entries of lists must be there: see [Append].
func Apply(file string, data []byte, edits []Edit) ([]byte, []diag.Pos, diag.List) {
	e := newEditor(file, data)
	if e.sound() {
		e.plan(edits)
	}
	changed := e.result()
	if !e.sound() {
		return data, nil, e.d.finish()
	}
	at := make([]diag.Pos, len(edits))
	for n, numbers := range e.asked {
		for _, i := range numbers {
			at[i] = e.places[n]
		}
	}
	return changed, at, nil
}

// Append is data, the contents of file, with an entry of these fields added at
// the end of a list, e.g. "items", written as its last entry is. A list that is
// not there is made. After any fault data comes back unchanged.
func Append(file string, data []byte, list string, entry []Field) ([]byte, diag.List) {
	e := newEditor(file, data)
	if e.sound() {
		e.planEntry(list, entry)
	}
	changed := e.result()
	if !e.sound() {
		return data, e.d.finish()
	}
	return changed, nil
}

// editor is the state of one run over one file. The tree becomes the one that
// is wanted while the changes of the text are gathered; in the end the text is
// read again and must give that tree.
type editor struct {
	d      *decoder
	text   *text
	root   *yaml.Node
	fills  []*fill                 // where fields are added
	drops  []*drop                 // where fields are removed
	later  []func()                // changes of the tree, made when no place is asked for any more
	asked  map[*yaml.Node][]int    // the edits whose value a node is
	places map[*yaml.Node]diag.Pos // of the nodes in asked, after the edits
}

// newEditor reads the file; it is not sound after a fault.
func newEditor(file string, data []byte) *editor {
	e := &editor{d: &decoder{file: file}, text: newText(data), asked: map[*yaml.Node][]int{}}
	if e.root = e.d.parse(data); e.root != nil {
		e.d.allowed(e.root, 0)
	}
	return e
}

// sound tells whether no fault was found so far.
func (e *editor) sound() bool { return e.root != nil && len(e.d.list) == 0 }

// result is the changed text once it was read again and found as wanted; nil
// after a fault.
func (e *editor) result() []byte {
	if !e.sound() {
		return nil
	}
	for _, f := range e.fills {
		e.fill(f)
	}
	for _, d := range e.drops {
		e.drop(d)
	}
	if !e.sound() {
		return nil
	}
	for _, change := range e.later {
		change()
	}
	changed, ok := e.text.changed()
	if !ok {
		e.refuse(e.root, "the change does not fit the way the file is written")
		return nil
	}
	e.check(changed)
	return changed
}

// refuse reports a change that cannot be made at a node.
func (e *editor) refuse(n *yaml.Node, message string) {
	e.d.fault(n, ref{}, CannotEdit, "make this change by hand", "%s", message)
}
