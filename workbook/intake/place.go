package intake

import (
	"strings"

	"tentwright/catalog/diag"
	"tentwright/catalog/source"
	"tentwright/quote/job"
)

// places in the job file that was made from the form, with the paths that stand
// there.
type positions map[diag.Pos]string

// positions finds where each path of the form stands in the job file, since
// faults of a job against its shop say only that.
func (r *reader) positions(file string, data []byte) positions {
	var j job.Job
	source.Decode(file, data, &j) // faults of form come with their paths
	at := positions{}
	for path := range r.cells {
		pos := j.Where.Of(path)
		// A path that the file leaves out has the position of what is above it.
		if old, ok := at[pos]; !ok || len(path) < len(old) || len(path) == len(old) && path < old {
			at[pos] = path
		}
	}
	return at
}

// placeAll takes over the faults of the job file, each at the cell that its
// value came from. What follows from a fault of the same cell is left out.
func (r *reader) placeAll(list diag.List, at positions) {
	own := len(r.bad) > 0
	for _, p := range list {
		if p.Warning {
			continue // it comes again when the job is quoted
		}
		if p.Pos.File != r.file {
			r.list.Add(p) // of the shop's own files
			continue
		}
		path := r.pathOf(p, at)
		if p.Code == job.NothingToDo && own || r.faulty(path) {
			continue
		}
		p.Path, p.Pos = path, r.cellOf(path)
		r.list.Add(p)
	}
}

// pathOf is where in the job a problem lies: as it says, or by where it stands
// in the file. A field that is missing has the path of what it is missing in.
func (r *reader) pathOf(p diag.Problem, at positions) string {
	path := p.Path
	if path == "" && p.Code != diag.MissingField {
		return at[p.Pos]
	}
	if p.Code == diag.MissingField {
		if _, rest, ok := strings.Cut(p.Message, `"`); ok {
			field, _, _ := strings.Cut(rest, `"`)
			path = strings.TrimPrefix(path+"."+field, ".")
		}
	}
	return path
}

// faulty tells whether a value, something in it or what it lies in has a fault
// already.
func (r *reader) faulty(path string) bool {
	for bad := range r.bad {
		if bad == path || bad != "" && under(path, bad) || path != "" && under(bad, path) && !strings.HasSuffix(path, "]") {
			return true
		}
	}
	return false
}

// under tells whether a path lies below another.
func under(path, above string) bool {
	rest, ok := strings.CutPrefix(path, above)
	return ok && rest != "" && (rest[0] == '.' || rest[0] == '[')
}

// cellOf is the cell that a path came from, or that of the nearest path above.
func (r *reader) cellOf(path string) diag.Pos {
	for ; path != ""; path = path[:max(strings.LastIndexAny(path, ".["), 0)] {
		if pos, ok := r.cells[path]; ok {
			return pos
		}
	}
	if pos, ok := r.cells[""]; ok {
		return pos
	}
	return diag.Pos{File: r.file}
}
