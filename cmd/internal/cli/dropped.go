package cli

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"tentwright/catalog/diag"
	"tentwright/quote"
	"tentwright/workbook/intake"
	"tentwright/workbook/revise"
	"tentwright/workbook/xlsx"
)

// bookEndings are the endings of workbooks.
func bookEndings() []string { return []string{".xlsx", ".xlsm"} }

// droppable tells whether an argument is a file that the program takes without
// a command, as when somebody drops it on the program's icon: any that is there,
// for each gets an answer, and any that ends like one of ours.
func droppable(path string) bool {
	if endsIn(path, append(bookEndings(), jobEndings()...)...) {
		return true
	}
	_, err := os.Stat(path)
	return err == nil
}

// onlyFiles wants that arguments without a command are files.
func onlyFiles(cmd *cobra.Command, args []string) error {
	for i, arg := range args {
		switch {
		case droppable(arg):
		case i == 0:
			return misuse(advised(arg, commandNames(cmd)), "unknown command %q", arg)
		default:
			return misuse("a command stands first; without one, files alone are taken", "%q is no file", arg)
		}
	}
	return nil
}

// dropAll does with each file what its kind asks for; a fault of one does not
// keep the others back. The first failure is given back.
func (a *app) dropAll(paths []string) error {
	var first error
	for _, path := range paths {
		if err := a.dropped(path); first == nil {
			first = err
		}
	}
	return first
}

// dropped does with a file what its kind asks for: a job or a filled form is
// quoted, a quote workbook is requoted. Whoever drops a file sees no terminal, so
// that what went wrong, or wants a look, is written beside the file too.
func (a *app) dropped(path string) error {
	own := *a
	var said, warned bytes.Buffer
	own.out, own.errs = &result{to: io.MultiWriter(&said, a.out)}, io.MultiWriter(&said, &warned, a.errs)
	err := own.drop(path)
	if err != nil {
		err = &failure{code: own.fail(err), told: true}
	}
	tidy(path)
	switch {
	case err != nil:
		a.leave(path, mendEnd, said.Bytes())
	case own.remark || warned.Len() > 0:
		a.leave(path, resultEnd, said.Bytes())
	}
	return err
}

// drop quotes or requotes, under names that are free.
func (a *app) drop(path string) error {
	info, err := os.Stat(path)
	switch {
	case err == nil && info.IsDir():
		return droppedFolder(path)
	case endsIn(path, jobEndings()...):
		return a.quoteFile(path, &quoteFlags{book: freeName(strings.TrimSuffix(path, filepath.Ext(path)) + ".xlsx")})
	case !endsIn(path, bookEndings()...):
		return otherKind(path)
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
	return notOurs(path, f.found)
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
		return nil, nil, nil, notOurs(path, f.found)
	}
	s, err := a.useShop(filepath.Dir(path), ".")
	if err != nil {
		return nil, nil, nil, err
	}
	file, list := a.jobFromIntake(path, f.data, f.found, s)
	for i := range list {
		if list[i].Pos.Cell != "" {
			list[i].Path = "" // the way in a job file means nothing to who fills in cells
		}
	}
	if file == nil {
		wrong := faults("intake form "+path, list, nil)
		wrong.problem = strings.TrimSuffix(wrong.problem, "; nothing was written") + "; no quote was made"
		if name, err := correctionsCopy(path, f.data, list); err != nil {
			wrong.advice = "no copy with the list of these cells was made: " + err.Error()
		} else {
			wrong.advice = "a copy with the list of these cells is " + name
		}
		return nil, nil, nil, wrong
	}
	a.problems(list, nil)
	q, err := file.build(s)
	return q, file, s, err
}

// correctionsCopy writes a copy of a form with a sheet that lists what to mend,
// and gives its name. A copy of before may have been worked in, and stays.
func correctionsCopy(path string, form []byte, list diag.List) (string, error) {
	data, err := xlsx.AddFirst(form, intake.Corrections(list))
	if err != nil {
		return "", err
	}
	end := filepath.Ext(path)
	name := freeName(strings.TrimSuffix(path, end) + " - corrections" + end)
	return name, moveAll([]output{{name, data}})
}
