package cli

import (
	"errors"
	"io"
	"os"
	"path/filepath"

	"tentwright/catalog/diag"
	"tentwright/workbook/revise"
	"tentwright/workbook/sheet"
	"tentwright/workbook/xlsx"
)

// maxBookBytes bounds what is read of a workbook; a quote has a third of a
// megabyte.
const maxBookBytes = 64 << 20

// bookFile is a workbook as read from a file.
type bookFile struct {
	path  string
	data  []byte
	found *sheet.Found
}

// readBook reads a workbook that no other program has open.
func (a *app) readBook(path string) (*bookFile, error) {
	switch info, err := os.Stat(path); {
	case err != nil:
		return nil, fileError(nearBook(path), "workbook %q cannot be read: %s", path, cause(err))
	case !info.Mode().IsRegular():
		return nil, fileError("", "%q is no ordinary file; a workbook such as dinner.xlsx was expected", path)
	case info.Size() > maxBookBytes:
		return nil, fileError("", "%q has %d MB; a workbook of at most %d MB was expected", path, info.Size()>>20, maxBookBytes>>20)
	}
	if lock := lockBeside(path); lock != "" {
		return nil, fileError("close it there first; if it is closed, delete "+lock, "%q is open in another program", path)
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, fileError("if another program has it open, close it first", "workbook %q cannot be read: %s", path, cause(err))
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, maxBookBytes))
	if err != nil {
		return nil, fileError("if another program has it open, close it first", "workbook %q cannot be read: %s", path, cause(err))
	}
	found, err := xlsx.Read(path, data)
	if err != nil {
		return nil, badBook(path, err)
	}
	a.warnBook(path, found)
	return &bookFile{path, data, found}, nil
}

// lockBeside is the file that spreadsheet programs put beside a workbook while
// they have it open; "" if there is none.
func lockBeside(path string) string {
	dir, name := filepath.Split(path)
	for _, lock := range []string{".~lock." + name + "#", "~$" + name} {
		if _, err := os.Lstat(dir + lock); err == nil {
			return dir + lock
		}
	}
	return ""
}

// badBook is a file that is no workbook, or one that cannot be read.
func badBook(path string, err error) error {
	var fault *xlsx.Fault
	if errors.As(err, &fault) {
		return &failure{code: Faults, problem: path + ": " + fault.What, advice: fault.Advice}
	}
	return &failure{code: Faults, problem: path + ": " + err.Error()}
}

// warnBook tells of what a workbook holds that is not read.
func (a *app) warnBook(path string, f *sheet.Found) {
	if f.Macros {
		a.note(path+" holds macros", "they are not run and not taken over")
	}
	for _, link := range f.Links {
		a.note(path+" refers to another file, "+link, "the values that were stored with it are read")
	}
}

// nearBook is advice for a workbook that is not there.
func nearBook(path string) string {
	entries, err := os.ReadDir(filepath.Dir(path))
	if err != nil {
		return ""
	}
	var names []string
	for _, e := range entries {
		if endsIn(e.Name(), ".xlsx") {
			names = append(names, e.Name())
		}
	}
	near, ok := diag.Nearest(filepath.Base(path), names)
	if !ok {
		return ""
	}
	return `did you mean "` + filepath.Join(filepath.Dir(path), near) + `"?`
}

// openBook reads a quote workbook and what was edited in it; warnings are
// printed.
func (a *app) openBook(path string) (*revise.Book, *bookFile, error) {
	f, err := a.readBook(path)
	if err != nil {
		return nil, nil, err
	}
	b, list := revise.Open(path, f.found)
	if b == nil {
		wrong := faults("workbook "+path, list, nil)
		if what, advice := madeOf(f.found); what != "" {
			wrong.advice = "it is " + what + ": " + advice
		}
		return nil, nil, wrong
	}
	a.problems(list, nil)
	return b, f, nil
}
