package intake

import (
	"fmt"
	"strconv"
	"strings"

	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/quote"
	"tentwright/quote/job"
	"tentwright/workbook/sheet"
)

// Read turns a filled form into a job and the job file that says the same. Each
// fault of the cells, of the job against the catalog, and of the tents' frames
// comes with its sheet and cell; job and file are nil when there are faults.
// file is the name that positions give.
func Read(file string, f *sheet.Found, c *catalog.Catalog) (jobYAML []byte, j *job.Job, list diag.List) {
	r := &reader{file: file, found: f, c: c, j: &job.Job{}, cells: map[string]diag.Pos{}, labels: map[string]string{}, bad: map[string]bool{}, told: map[int]bool{}}
	if !r.known() {
		return nil, nil, r.list
	}
	for _, sec := range sections(c.Company.Units) {
		for i := range sec.fields {
			r.field(&sec.fields[i])
		}
		if len(sec.fields) > 0 {
			r.cells[sec.path], r.labels[sec.path] = r.cells[sec.fields[0].path], sec.title
		}
	}
	r.site()
	r.loadings()
	r.windows()
	r.obstacles()
	r.tents()
	r.items()
	r.payments()
	r.together()
	r.strays()
	data := job.Write(r.j)
	j, faults := job.ReadFor(c, file, data)
	at := r.positions(file, data)
	r.placeAll(faults, at)
	if r.list.Err() == nil && j != nil {
		// Frames are tried only for a job that fits the shop.
		if _, faults = quote.Build(c, j); faults.Err() != nil {
			r.placeAll(faults, at)
		}
	}
	if r.list.Err() != nil {
		return nil, nil, r.list
	}
	return data, j, r.list
}

// reader is a form being read.
type reader struct {
	file   string
	found  *sheet.Found
	c      *catalog.Catalog
	j      *job.Job
	cells  map[string]diag.Pos // path in the job to the cell it came from
	labels map[string]string   // and to what people call that cell
	bad    map[string]bool     // paths that have a fault already
	told   map[int]bool        // rows of items whose words beside the inputs are told of
	list   diag.List
}

// known tells whether the form is one of this version.
func (r *reader) known() bool {
	p, ok := r.found.Names[formName]
	if !ok {
		r.list.Addf(diag.Pos{File: r.file}, LostName, "the workbook is no intake form; one made by the program was expected, with a cell named %s", formName)
		return false
	}
	mark := r.found.Sheet(p.Sheet).At(p.R1, p.C1)
	if want := formMark + strconv.Itoa(Version); shown(mark) != want {
		r.list.Addf(r.pos(p.Sheet, p.R1, p.C1), OtherVersion, "the form says that it is %q; %q was expected, a fresh form of this program", shown(mark), want)
		return false
	}
	return true
}

func (r *reader) pos(on string, row, col int) diag.Pos {
	return diag.Pos{File: r.file, Sheet: on, Cell: sheet.Ref(row, col)}
}

// spot is one input: where it stands, how people call it, and where its value
// goes.
type spot struct {
	sheet    *sheet.FoundSheet
	row, col int
	path     string
	label    string
}

// single finds a cell that has a name of its own.
func (r *reader) single(name, path, label string) (spot, bool) {
	p, ok := r.found.Names[name]
	s := r.found.Sheet(p.Sheet)
	if !ok || s == nil {
		r.bad[path] = true
		r.list.Add(diag.Problem{Pos: diag.Pos{File: r.file}, Path: path, Code: LostName,
			Message: fmt.Sprintf("%s: the cell named %s is gone; the form with all its cells was expected", label, name), Advice: freshForm})
		return spot{}, false
	}
	if _, line := r.labels[path]; !line {
		r.labels[path] = label // of an address in several cells the first
	}
	return spot{s, p.R1, p.C1, path, label}, true
}

const freshForm = "copy what was filled in into a fresh form"

// fault reports what a cell holds and what was expected there.
func (r *reader) fault(s spot, code, advice, format string, args ...any) {
	r.bad[s.path] = true
	r.list.Add(diag.Problem{Pos: r.pos(s.sheet.Name, s.row, s.col), Path: s.path, Code: code,
		Message: labelled(s.label, fmt.Sprintf(format, args...)), Advice: advice})
}

// warn says what a cell holds that is read in spite of a doubt, or not at all.
func (r *reader) warn(s spot, code, advice, format string, args ...any) {
	r.list.Add(diag.Problem{Pos: r.pos(s.sheet.Name, s.row, s.col), Path: s.path, Code: code, Warning: true,
		Message: labelled(s.label, fmt.Sprintf(format, args...)), Advice: advice})
}

// together asks for what a group of the job cannot be without, once anything
// made the group.
func (r *reader) together() {
	made := map[string]bool{"heat": r.j.Heat != nil, "power": r.j.Power != nil, "plot": r.j.Plot != nil, "labour.weather": r.j.Labour.Weather != nil}
	for _, sec := range sections(r.c.Company.Units) {
		for i := range sec.fields {
			d := &sec.fields[i]
			group := d.path[:max(0, strings.LastIndex(d.path, "."))]
			if _, there := r.found.Names[d.name]; !d.along || !made[group] || !there {
				continue
			}
			if s, ok := r.single(d.name, d.path, d.label); ok && r.blank(s) {
				r.fault(s, HalfFilled, "fill it in, or clear what needs it", "the cell is empty although others that need it are filled in; %s was expected", wanted(d))
			}
		}
	}
}

// field reads a cell that stands alone into the job.
func (r *reader) field(d *field) {
	if _, there := r.found.Names[d.name]; d.late && !there {
		return
	}
	s, ok := r.single(d.name, d.path, d.label)
	if !ok {
		return
	}
	if d.line > 1 {
		// Of an address in several cells the first stands for all.
		kept := r.cells[d.path]
		defer func() { r.cells[d.path] = kept }()
	}
	if r.blank(s) {
		r.cells[s.path] = r.pos(s.sheet.Name, s.row, s.col)
		if d.need {
			r.fault(s, diag.MissingField, "", "the cell is empty; %s was expected", wanted(d))
		}
		return
	}
	r.value(d, s)
}
