package source

import (
	"bytes"
	"slices"

	"tentwright/catalog/diag"

	"gopkg.in/yaml.v3"
)

// drop is the fields to remove from a mapping.
type drop struct {
	spot
	keys []*yaml.Node
}

// planDrop finds a field to remove.
func (e *editor) planDrop(path string, steps []string, number int) {
	last := len(steps) - 1
	if steps[last][0] == '[' {
		e.fail(e.root, path, diag.WrongKind, "", "only a field can be removed, not an entry of a list")
		return
	}
	at, left, ok := e.walk(path, steps[:last])
	if !ok {
		return
	}
	k := -1
	if len(left) == 0 && at.node.Kind == yaml.MappingNode {
		k = fieldOf(at.node, steps[last])
	}
	if k < 0 {
		e.fail(at.shown(), path, diag.MissingField, diag.DidYouMean(steps[last], namesOf(at.node)), "there is no field %q to remove", clipped(steps[last]))
		return
	}
	i := slices.IndexFunc(e.drops, func(d *drop) bool { return d.node == at.node })
	if i < 0 {
		i = len(e.drops)
		e.drops = append(e.drops, &drop{spot: at})
	}
	e.drops[i].keys = append(e.drops[i].keys, at.node.Content[k])
	e.asked[at.node] = append(e.asked[at.node], number)
}

// namesOf is the names of a mapping's fields.
func namesOf(n *yaml.Node) []string {
	var names []string
	for i := 0; n.Kind == yaml.MappingNode && i+1 < len(n.Content); i += 2 {
		names = append(names, n.Content[i].Value)
	}
	return names
}

// dropped is how many fields of a mapping are to be removed.
func (e *editor) dropped(n *yaml.Node) int {
	for _, d := range e.drops {
		if d.node == n {
			return len(d.keys)
		}
	}
	return 0
}

// drop removes the fields of a mapping from the text.
func (e *editor) drop(d *drop) {
	n := d.node
	flow := n.Style&yaml.FlowStyle != 0
	all := len(n.Content) == 2*len(d.keys)
	switch {
	case flow && !e.text.is(e.text.start(n), "{"):
		e.refuse(n, "the only field of an entry cannot be removed")
	case flow:
		e.dropFlow(d)
	case all && !slices.ContainsFunc(e.fills, func(f *fill) bool { return f.node == n }):
		e.refuse(n, "nothing would be left here; remove what holds these fields")
	default:
		e.dropBlock(d)
	}
	e.later = append(e.later, func() {
		var kept []*yaml.Node
		for i := 0; i+1 < len(n.Content); i += 2 {
			if !slices.Contains(d.keys, n.Content[i]) {
				kept = append(kept, n.Content[i], n.Content[i+1])
			}
		}
		n.Content = kept
	})
}

// dropBlock removes whole lines. The first field of an entry shares its line
// with the dash, so there the next field that stays moves up.
func (e *editor) dropBlock(d *drop) {
	n, t := d.node, e.text
	before := 0 // end of what was removed last
	for i := 0; i+1 < len(n.Content); i += 2 {
		if !slices.Contains(d.keys, n.Content[i]) {
			continue
		}
		from := t.start(n.Content[i])
		end := t.lineEnd(t.pairEnd(n.Content[i], n.Content[i+1], n.Column-1))
		to := t.nextLine(end)
		switch next := t.startOf(n, i+2); {
		case t.opensLine(from) && end == len(t.data):
			from = t.lineBefore(from) // the file has no last line break, before and after
		case t.opensLine(from):
			from = t.lineStart(from)
		case next > to && !slices.Contains(d.keys, n.Content[i+2]) && isSpace(t.data[to:next]):
			to = next
		default:
			// A comment or another removed field follows: the dash stands alone.
			from, to = t.blanksBefore(from), end
		}
		t.put(max(from, before), to, "")
		before = to
	}
}

// dropFlow removes fields with their commas and the comments behind them.
func (e *editor) dropFlow(d *drop) {
	n, t := d.node, e.text
	gone := func(i int) bool { return slices.Contains(d.keys, n.Content[i]) }
	tail := len(n.Content) // the first field behind which none stays
	for tail > 0 && gone(tail-2) {
		tail -= 2
	}
	before := 0 // end of what was removed last
	for i := 0; i < tail; i += 2 {
		if gone(i) {
			s := t.piece(t.start(n.Content[i]), t.pairEnd(n.Content[i], n.Content[i+1], d.indent), t.start(n.Content[i+2]), i == 0)
			t.put(max(s.from, before), s.to, "")
			before = s.to
		}
	}
	if tail < len(n.Content) {
		e.dropTail(d, tail)
	}
}

// piece is what to remove with a field that another one follows at next: its
// comma, and the comment or the white space behind it.
func (t *text) piece(from, end, next int, first bool) splice {
	to := t.filler(end, "")
	if !t.is(to, ",") {
		t.lost = true
	}
	to++
	if first && isSpace(t.data[to:max(to, next)]) {
		return splice{from: from, to: next}
	}
	to = t.blanks(to)
	if t.is(to, "#") {
		to = t.lineEnd(to)
	}
	switch {
	case !t.is(to, "\r\n"):
	case t.opensLine(from):
		from, to = t.lineStart(from), t.nextLine(to)
	default:
		from = t.blanksBefore(from)
	}
	return splice{from: from, to: to}
}

// dropTail removes the last fields between braces, from number tail on, and
// the comma before them.
func (e *editor) dropTail(d *drop, tail int) {
	n, t := d.node, e.text
	from := t.start(n.Content[tail])
	last := t.lastEnd(n, from, d.indent)
	if tail > 0 {
		kept := t.pairEnd(n.Content[tail-2], n.Content[tail-1], d.indent)
		comma := t.filler(kept, "")
		switch {
		case !t.is(comma, ","):
			t.lost = true
		case isSpace(t.data[kept:comma]) && isSpace(t.data[comma+1:from]):
			from = kept
		default: // a comment stands between
			t.put(comma, comma+1, "")
			if t.opensLine(from) {
				from = t.lineBefore(from)
			}
		}
	}
	// Apart from what follows, since new fields are put right here.
	t.put(from, last, "")
	to := last
	if comma := t.filler(last, ""); t.is(comma, ",") {
		to = comma + 1
	}
	if comment := t.blanks(to); t.is(comment, "#") {
		to = t.lineEnd(comment)
	}
	t.put(last, to, "")
}

// startOf is the offset of a node of a collection, or -1 when there is none.
func (t *text) startOf(n *yaml.Node, i int) int {
	if i >= len(n.Content) {
		return -1
	}
	return t.start(n.Content[i])
}

// blanksBefore is the offset of the spaces and tabs before an offset.
func (t *text) blanksBefore(at int) int {
	for t.is(at-1, " \t") {
		at--
	}
	return at
}

// lineBefore is the offset of the line break before the line of an offset.
func (t *text) lineBefore(at int) int {
	start := t.lineStart(at)
	if t.is(start-1, "\n") {
		start--
	}
	if t.is(start-1, "\r") {
		start--
	}
	return start
}

// isSpace tells whether there is nothing but white space.
func isSpace(data []byte) bool { return len(bytes.TrimSpace(data)) == 0 }
