// Package cli is the command tentwright: flags, files, exit codes and wording.
// It computes nothing itself.
//
//	root.go, help.go      the tree of commands and their help
//	new.go ... list.go    one command each
//	phone.go              a job from flags instead of a file
//	shop.go, jobfile.go   finding and reading the inputs
//	dropped*.go           files without a command
//	whole.go              writing files whole or not at all
//	speak.go              how the program speaks
package cli

import (
	"io"
	"runtime/debug"
	"time"

	"github.com/spf13/cobra"
)

// Exit codes of the program.
const (
	Done      = 0 // the work is done
	Faults    = 1 // the input has faults; all are listed
	WrongUse  = 2 // the command was not understood
	FileError = 3 // a file could not be read or written
	OwnFault  = 4 // a fault of the program itself
)

const garbagePercent = 400

// app is what every command needs of the world around it.
type app struct {
	speaker
	in   io.Reader
	now  func() time.Time
	shop string // folder given by --shop; empty: look for one

	remark bool // something is to be told although all went well
}

// Main runs the program with the arguments behind its name and returns its
// exit code. It is the only caller of the clock.
func Main(args []string, in io.Reader, out, errs io.Writer) int {
	// A run is over in an instant: letting garbage grow to a few times the live
	// memory saves a sixth of the wait and stays far below any machine's limit.
	debug.SetGCPercent(garbagePercent)
	a := &app{speaker: speaker{out: &result{to: out}, errs: errs}, in: in, now: time.Now}
	return a.run(newRoot(a), args)
}

// run executes one command line. A panic becomes a message and an exit code.
func (a *app) run(root *cobra.Command, args []string) (code int) {
	defer func() {
		if fault := recover(); fault != nil {
			code = a.ownFault(fault, debug.Stack())
		}
	}()
	root.SetArgs(args)
	root.SetIn(a.in)
	root.SetOut(a.out)
	root.SetErr(a.errs)
	err := root.Execute()
	if a.out.err != nil {
		err = fileError("", "the result cannot be printed: %s", cause(a.out.err))
	}
	if err != nil {
		return a.fail(err)
	}
	return Done
}
