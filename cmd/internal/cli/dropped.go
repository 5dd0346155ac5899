package cli

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"tentwright/quote"
	"tentwright/workbook/intake"
	"tentwright/workbook/revise"
	"tentwright/workbook/xlsx"
)

// bookEndings are the endings of workbooks.
func bookEndings() []string { return []string{".xlsx", ".xlsm"} }

// droppable tells whether an argument is a file that the program takes without
// a command, as when somebody drops it on the program's icon.
func droppable(path string) bool { return endsIn(path, append(bookEndings(), jobEndings()...)...) }

// errorsEnd is how the file with the words of a failed run ends.
const errorsEnd = " - what to mend.txt"

// dropped does with a file what its kind asks for: a job or a filled form is
// quoted, a quote workbook is requoted. Whoever drops a file sees no terminal, so
// that what went wrong is written beside the file too.
func (a *app) dropped(path string) error {
	var said bytes.Buffer
	errs := a.errs
	a.errs = tee{errs, &said}
	err := a.drop(path)
	if err != nil {
		code := a.fail(err)
		err = &failure{code: code, told: true}
	}
	a.errs = errs
	report := strings.TrimSuffix(path, filepath.Ext(path)) + errorsEnd
	if err == nil {
		os.Remove(report) // of a run before, if there was one
		return nil
	}
	if wrote := moveAll([]output{{report, said.Bytes()}}); wrote == nil {
		a.note("these words stand in "+report, "")
	}
	return err
}

// tee writes to both.
type tee struct {
	a, b interface{ Write([]byte) (int, error) }
}

func (t tee) Write(data []byte) (int, error) {
	t.b.Write(data)
	return t.a.Write(data)
}

// drop quotes or requotes, under names that are free.
func (a *app) drop(path string) error {
	if endsIn(path, jobEndings()...) {
		return a.quoteFile(path, &quoteFlags{book: freeName(strings.TrimSuffix(path, filepath.Ext(path)) + ".xlsx")})
	}
	f, err := a.readBook(path)
	switch {
	case err != nil:
		return err
	case intake.Is(f.found):
		return a.quoteFile(path, &quoteFlags{book: freeName(quoteName(path))})
	case revise.Is(f.found):
		return a.requote(path, &requoteFlags{free: true})
	}
	return notOurs(path)
}

// notOurs is a workbook of something else.
func notOurs(path string) error {
	return &failure{code: Faults, problem: path + " is neither a filled intake form nor a quote workbook",
		advice: `make a form with "tentwright intake"; a list of prices or stock goes through "tentwright import"`}
}

// freeName is a name that no file has yet: the one given, or with (2), (3) ...
func freeName(path string) string {
	end := filepath.Ext(path)
	for n, name := 2, path; ; n++ {
		if _, err := os.Lstat(name); err != nil {
			return name
		}
		name = fmt.Sprintf("%s (%d)%s", strings.TrimSuffix(path, end), n, end)
	}
}

// quoteName is the name of the quote made from a form: the form stays.
func quoteName(form string) string {
	return strings.TrimSuffix(form, filepath.Ext(form)) + "-quote.xlsx"
}

// openIntake finds the shop for a filled form and computes its quote. Where
// cells must be mended, a copy of the form that lists them is written beside it.
func (a *app) openIntake(path string) (*quote.Quote, *jobFile, *shop, error) {
	f, err := a.readBook(path)
	if err != nil {
		return nil, nil, nil, err
	}
	if !intake.Is(f.found) {
		if revise.Is(f.found) {
			return nil, nil, nil, misuse(`use "tentwright requote `+path+`"`, "%q is a quote already", path)
		}
		return nil, nil, nil, notOurs(path)
	}
	s, err := a.findShop(filepath.Dir(path), ".")
	if err != nil {
		return nil, nil, nil, err
	}
	if err := s.load(); err != nil {
		return nil, nil, nil, err
	}
	a.warn(s)
	file, list := a.jobFromIntake(path, f.data, f.found, s)
	for i := range list {
		if list[i].Pos.Cell != "" {
			list[i].Path = "" // the way in a job file means nothing to who fills in cells
		}
	}
	if file == nil {
		wrong := faults("intake form "+path, list, nil)
		wrong.problem = strings.TrimSuffix(wrong.problem, "; nothing was written") + "; no quote was made"
		copyName := strings.TrimSuffix(path, filepath.Ext(path)) + " - corrections.xlsx"
		data, err := xlsx.AddFirst(f.data, intake.Corrections(list))
		if err = errors.Join(err, moveAll([]output{{copyName, data}})); err == nil {
			wrong.advice = "a copy with the list of these cells is " + copyName
		}
		return nil, nil, nil, wrong
	}
	a.problems(list, nil)
	q, err := file.build(s)
	return q, file, s, err
}
