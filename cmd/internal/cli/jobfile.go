package cli

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"tentwright/catalog"
	"tentwright/catalog/diag"
	"tentwright/quote"
	"tentwright/quote/job"
)

// maxJobBytes bounds what is read of a job file, should someone name a film.
const maxJobBytes = 16 << 20

// jobFile is a job as read from a file, or made from flags when path is empty.
type jobFile struct {
	path string
	data []byte
	job  *job.Job
}

// jobEndings are the endings of files that can be a job.
func jobEndings() []string { return []string{".yaml", ".yml"} }

// readJob reads the bytes of a job file.
func readJob(path string) (*jobFile, error) {
	switch info, err := os.Stat(path); {
	case err == nil && info.IsDir():
		return nil, fileError("", "%q is a folder; a job file such as dinner.yaml was expected", path)
	case err == nil && !info.Mode().IsRegular():
		// A pipe would be waited for without end.
		return nil, fileError("", "%q is no ordinary file; a job file such as dinner.yaml was expected", path)
	}
	if !endsIn(path, jobEndings()...) {
		return nil, misuse("a job is a text file ending in .yaml", "%q does not end like a job file", path)
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, fileError(nearFile(path, err), "job file %q cannot be read: %s", path, cause(err))
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, maxJobBytes))
	if err != nil {
		return nil, fileError("", "job file %q cannot be read: %s", path, cause(err))
	}
	return &jobFile{path: path, data: data}, nil
}

// nearFile is advice for a file that is not there: one of nearly that name.
func nearFile(path string, err error) string {
	if !errors.Is(err, fs.ErrNotExist) {
		return ""
	}
	entries, err := os.ReadDir(filepath.Dir(path))
	if err != nil {
		return ""
	}
	var names []string
	for _, e := range entries {
		if endsIn(e.Name(), jobEndings()...) {
			names = append(names, e.Name())
		}
	}
	near, ok := diag.Nearest(filepath.Base(path), names)
	if !ok {
		return ""
	}
	return `did you mean "` + filepath.Join(filepath.Dir(path), near) + `"?`
}

// name is how messages call the job.
func (f *jobFile) name() string {
	if f.path == "" {
		return "the quote by phone"
	}
	return "job " + f.path
}

// source is the job's own bytes.
func (f *jobFile) source(file string) []byte {
	if f.path == "" || file != f.path {
		return nil
	}
	return f.data
}

// read decodes the job and checks it against the shop's catalog; without one,
// only its form.
func (f *jobFile) read(c *catalog.Catalog) (*job.Job, diag.List) {
	if c == nil {
		return job.Read(f.path, f.data)
	}
	return job.ReadFor(c, f.path, f.data)
}

// build computes the quote of the job in the shop, or fails with all faults.
func (f *jobFile) build(s *shop) (*quote.Quote, error) {
	var list diag.List
	if f.job == nil {
		f.job, list = f.read(s.catalog)
	}
	var q *quote.Quote
	if f.job != nil {
		var more diag.List
		q, more = quote.Build(s.catalog, f.job)
		list.Join(more)
	}
	if q == nil {
		return nil, faults(f.name(), f.spoken(list), joined(f.source, s.source))
	}
	return q, nil
}

// spoken leaves out places in a file that nobody sees: that of a job by phone.
func (f *jobFile) spoken(list diag.List) diag.List {
	if f.path != "" {
		return list
	}
	var out diag.List
	for _, p := range list {
		if p.Pos.File == "" {
			p.Pos, p.Path = diag.Pos{}, ""
		}
		out.Add(p)
	}
	return out
}

// open finds the shop for a job file, or for a filled intake form, and computes
// its quote.
func (a *app) open(path string) (*quote.Quote, *jobFile, *shop, error) {
	if endsIn(path, bookEndings()...) {
		return a.openIntake(path)
	}
	f, err := readJob(path)
	if err != nil {
		return nil, nil, nil, err
	}
	if err := f.noJob(); err != nil {
		return nil, nil, nil, err
	}
	s, err := a.useShop(filepath.Dir(path), ".")
	if err != nil {
		return nil, nil, nil, err
	}
	q, err := f.build(s)
	return q, f, s, err
}
