package cli

import (
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

// scripts is where the command scripts are; each holds commands, their files
// and what they must print.
const scripts = "../../../testdata/script"

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"tentwright": func() { os.Exit(Main(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) },
	})
}

// The program does what the scripts say. With TENTWRIGHT_UPDATE=1 the wanted
// outputs are rewritten.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 scripts,
		UpdateScripts:       os.Getenv("TENTWRIGHT_UPDATE") != "",
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		Setup: func(env *testscript.Env) error {
			return os.CopyFS(filepath.Join(env.WorkDir, "jobs"), os.DirFS("../../../testdata/jobs"))
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"exit": exit, "valid-json": validJSON, "fits": fits, "type-actual": typeActual,
		},
	})
}

// exit CODE COMMAND...: the command must end with that exit code.
func exit(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exit CODE COMMAND [ARGUMENT]...")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	err = ts.Exec(args[1], args[2:]...)
	if got := exitCode(err); got != want {
		ts.Fatalf("exit code %d, want %d", got, want)
	}
}
