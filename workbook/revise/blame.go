package revise

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"tentwright/catalog/diag"
	"tentwright/catalog/source"
	"tentwright/quote/job"
)

// blameJob gives problems of the job, in the text that it was read from, the
// places of the cells that they come from.
func (b *Book) blameJob(list diag.List, text []byte) diag.List {
	var j job.Job
	source.Decode("", text, &j) // its faults are in the list
	lines := map[*Edit]int{}
	for i := range b.Edits {
		e := &b.Edits[i]
		if way := wayIn(&j, b.places.moved(e.path)); e.job != nil && way != "" {
			lines[e] = j.Where.Of(way).Line
		}
	}
	starts, parts := entries(text)
	return b.blame(list, func(p diag.Problem, e *Edit) int {
		line, ok := lines[e]
		switch {
		case !ok || p.Pos.File != "" || p.Pos.Line == 0 || parts[line] != parts[p.Pos.Line]:
			return far
		case starts[line] != starts[p.Pos.Line]:
			// Another tent may be at fault for what is said of this one.
			return other + gap(line, p.Pos.Line)
		}
		return gap(line, p.Pos.Line)
	})
}

// blameShop does the same for problems of the shop's files; at are the places
// of the edits' values in these.
func (b *Book) blameShop(list diag.List, at map[*Edit]diag.Pos) diag.List {
	return b.blame(list, func(p diag.Problem, e *Edit) int {
		pos, ok := at[e]
		if !ok || pos.File != p.Pos.File {
			return far
		}
		return gap(pos.Line, p.Pos.Line)
	})
}

// far is the distance of an edit that a problem cannot come from, other what is
// added for one in another entry of the same list.
const (
	far   = 1 << 30
	other = 1 << 29
)

// gap is how far a value stands from a problem. What stands on the line
// is nearest; then what stands above it, which the problem may be within.
func gap(line, problem int) int {
	if line > problem {
		return 1000 * (line - problem)
	}
	return problem - line
}

// blame gives each problem the place of the nearest edit, or of the workbook.
func (b *Book) blame(list diag.List, apart func(diag.Problem, *Edit) int) diag.List {
	var out diag.List
	for _, p := range list {
		best, least := (*Edit)(nil), far
		for i := range b.Edits {
			if n := apart(p, &b.Edits[i]); n < least {
				best, least = &b.Edits[i], n
			}
		}
		if best != nil {
			p.Pos, p.Path = best.Pos, best.What
		} else {
			p.Pos = diag.Pos{File: b.File}
		}
		p.Related = nil // places in a text that nobody has
		out.Add(p)
	}
	return out
}

// entries gives each line of a job file, from 1, the line on which its entry of
// a list begins, and that on which its part of the job does.
func entries(text []byte) (starts, parts map[int]int) {
	starts, parts = map[int]int{}, map[int]int{}
	start, part := 0, 0
	for i, line := range bytes.Split(text, []byte("\n")) {
		top := len(line) > 0 && line[0] != ' '
		if top {
			part = i + 1
		}
		if top || bytes.HasPrefix(line, []byte("  - ")) {
			start = i + 1
		}
		starts[i+1], parts[i+1] = start, part
	}
	return starts, parts
}

// wayIn is the way to a value in a job, of a way that names an entry by its key
// in braces: the side of a tent, a window of work or a factor of the site.
func wayIn(j *job.Job, way string) string {
	before, rest, keyed := strings.Cut(way, "{")
	key, after, closed := strings.Cut(rest, "}")
	if !keyed || !closed {
		return way
	}
	at := -1
	switch {
	case before == "labour.windows":
		at = slices.IndexFunc(j.Labour.Windows, func(w job.WindowCrew) bool { return w.Window == key })
	case before == "site":
		at = slices.IndexFunc(j.Site, func(s job.SiteChoice) bool { return s.Factor == key })
	default:
		if n := wayIndex("tents", before); n >= 0 && n < len(j.Tents) {
			at = slices.IndexFunc(j.Tents[n].Sides, func(s job.TentSide) bool { return s.Side == key })
		}
	}
	if at < 0 {
		return before
	}
	return fmt.Sprintf("%s[%d]%s", before, at, after)
}
