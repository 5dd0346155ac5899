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
		p.Message, p.Advice = labelled(r.labelOf(path), r.inWords(p.Code, p.Message)), r.inWords(p.Code, p.Advice)
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

// labelOf is what people call the cell that a path came from, or the nearest
// one above.
func (r *reader) labelOf(path string) string {
	for ; path != ""; path = path[:max(strings.LastIndexAny(path, ".["), 0)] {
		if label, ok := r.labels[path]; ok {
			return label
		}
	}
	return "The job"
}

// labelled is a message behind the label of its cell, which it does not say
// twice. A label has no ": " of its own, so that it can be told from the rest.
func labelled(label, message string) string {
	label = strings.ReplaceAll(label, ": ", ", ")
	return label + ": " + strings.TrimPrefix(message, label+" ")
}

// columnWords are fields of a job file that stand in columns of the form, by
// the headings of these.
var columnWords = map[string]string{"join_side": "At side", "no_stakes": "No stakes", "charged_days": "Charged days"}

// hourWords are those of the hours of a crew, which are plain words elsewhere.
var hourWords = map[string]string{"from": "On site from", "until": "Off it by", "ready": "Ready by", "inspect": "Inspection", "stay": "Sleeps there"}

// inWords puts the form's own words for the fields of a job file.
func (r *reader) inWords(code, text string) string {
	if value, least, ok := strings.Cut(text, " is below the least value, "); ok {
		text = value + " is too small; at least " + least + " was expected"
	} else if value, most, ok := strings.Cut(text, " is above the largest value, "); ok {
		text = value + " is too large; at most " + most + " was expected"
	}
	if _, expected, ok := strings.Cut(text, " is missing; expected "); ok && code == diag.MissingField {
		text = "the cell is empty; " + expected + " was expected"
	}
	words := strings.Split(text, " ")
	for i, word := range words {
		bare := strings.TrimRight(word, ",;:.")
		label, ok := columnWords[bare]
		if code == job.BadHours && hourWords[bare] != "" {
			label, ok = hourWords[bare], true
		}
		// Of the dates some are called as things are: "collect" means the date
		// only where dates are told of.
		if dated, of := r.labels["dates."+bare]; of && (code == job.DateOrder || strings.Contains(bare, "_")) {
			label, ok = dated, true
		}
		if ok {
			words[i] = label + word[len(bare):]
		}
	}
	return strings.Join(words, " ")
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
