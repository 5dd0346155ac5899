package cli

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"tentwright/catalog/diag"
)

// How the program speaks: results go to the standard output; everything else
// goes to the standard error, behind "tentwright: ", in lower case, without a
// final stop, the problem first and advice on a line of its own. No other file
// writes to the standard error, but progress.go to a terminal.

// speaker holds the two outputs.
type speaker struct {
	out  *result
	errs io.Writer
}

// result is the standard output; it keeps the first error of writing, so that
// a full disk or a closed pipe is not taken for a finished quote.
type result struct {
	to  io.Writer
	err error
}

func (r *result) Write(data []byte) (int, error) {
	if r.err != nil {
		return 0, r.err
	}
	n, err := r.to.Write(data)
	r.err = err
	return n, err
}

// printf writes a part of the result.
func (s speaker) printf(format string, args ...any) { fmt.Fprintf(s.out, format, args...) }

// note says something beside the result, with at most one line of advice.
func (s speaker) note(problem, advice string) {
	fmt.Fprintf(s.errs, "tentwright: %s\n", problem)
	if advice != "" {
		fmt.Fprintf(s.errs, "  %s\n", advice)
	}
}

// pass says what was said aside by a copy of the speaker. What cannot be said has
// nobody to be told to.
func (s speaker) pass(said []byte) { _, _ = s.errs.Write(said) }

// failure ends a command with an exit code.
type failure struct {
	code    int
	problem string
	advice  string
	list    diag.List // of the faults, for code Faults
	src     func(file string) []byte
	told    bool // everything was said already
}

func (f *failure) Error() string { return f.problem }

// misuse is a command line that was not understood.
func misuse(advice, format string, args ...any) *failure {
	return &failure{code: WrongUse, problem: fmt.Sprintf(format, args...), advice: advice}
}

// fileError is a file that could not be read or written.
func fileError(advice, format string, args ...any) *failure {
	return &failure{code: FileError, problem: fmt.Sprintf(format, args...), advice: advice}
}

// faults is an input with faults; src gives the bytes of the files named.
func faults(what string, list diag.List, src func(string) []byte) *failure {
	n := len(list.Faults())
	many := fmt.Sprintf("%d faults", n)
	if n == 1 {
		many = "1 fault"
	}
	return &failure{code: Faults, problem: what + " has " + many + "; nothing was written", list: list, src: src}
}

// fail says why a command failed and returns its exit code. An error that is
// not a failure is one of the command line.
func (s speaker) fail(err error) int {
	var f *failure
	if !errors.As(err, &f) {
		f = misuse(helpAdvice, "%s", strings.TrimSpace(err.Error()))
	}
	if f.told {
		return f.code
	}
	s.problems(f.list, f.src)
	s.note(f.problem, f.advice)
	return f.code
}

// mostProblems is how many problems are printed; nobody mends more at a time.
const mostProblems = 200

// problems prints problems with the lines they stand on, and how many more
// there are.
func (s speaker) problems(list diag.List, src func(string) []byte) {
	most := mostProblems
	for _, p := range list {
		if p.Code == diag.TooMany {
			most++ // it is the last word on a file, not a problem more
		}
	}
	diag.Write(s.errs, list[:min(len(list), most)], src)
	if more := len(list) - most; more > 0 {
		fmt.Fprintf(s.errs, "and %d more\n", more)
	}
}

// helpAdvice is for whoever cannot know what was expected.
const helpAdvice = `see "tentwright help" for the commands and their flags`

// ownFault says that the program is at fault, with what its makers need.
func (s speaker) ownFault(fault any, stack []byte) int {
	s.note(fmt.Sprintf("this is a fault of tentwright, not of your files: %v", fault),
		"please report it with the command, the job file and these lines:")
	fmt.Fprintf(s.errs, "%s", stack)
	return OwnFault
}
