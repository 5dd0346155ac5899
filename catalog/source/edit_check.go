package source

import (
	"tentwright/catalog/diag"

	"gopkg.in/yaml.v3"
)

// check reads the changed text and reports a fault unless it holds the tree
// that is wanted, node by node. It takes down the new places on the way.
func (e *editor) check(changed []byte) {
	again := &decoder{file: e.d.file}
	root := again.parse(changed)
	e.places = make(map[*yaml.Node]diag.Pos, len(e.asked))
	if root == nil {
		e.refuse(e.root, "the change would not be read back")
		return
	}
	if bad := e.differs(e.root, root); bad != nil {
		e.refuse(bad, "the change would be read back as something else")
	}
}

// differs is the first node of the wanted tree that is not the same in the
// tree that was read, or nil.
func (e *editor) differs(want, have *yaml.Node) *yaml.Node {
	if want.Kind != have.Kind || want.Tag != have.Tag || want.Value != have.Value || want.Style != have.Style ||
		have.Anchor != "" || len(want.Content) != len(have.Content) {
		return want
	}
	if _, ok := e.asked[want]; ok {
		e.places[want] = e.d.pos(have)
	}
	for i, n := range want.Content {
		if bad := e.differs(n, have.Content[i]); bad != nil {
			return bad
		}
	}
	return nil
}
