package cli

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os/exec"
	"strconv"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/rogpeppe/go-internal/testscript"
	"github.com/spf13/cobra"
)

// exitCode is the exit code behind an error of running a program.
func exitCode(err error) int {
	var ended *exec.ExitError
	switch {
	case err == nil:
		return 0
	case errors.As(err, &ended):
		return ended.ExitCode()
	}
	return -1
}

// valid-json FILE: the file is one JSON value and nothing else.
func validJSON(ts *testscript.TestScript, neg bool, args []string) {
	if len(args) != 1 {
		ts.Fatalf("usage: valid-json FILE")
	}
	if json.Valid([]byte(ts.ReadFile(args[0]))) == neg {
		ts.Fatalf("%s: valid JSON is %v", args[0], neg)
	}
}

// fits FILE LINES COLUMNS: the text fits a screen of that size.
func fits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 3 {
		ts.Fatalf("usage: fits FILE LINES COLUMNS")
	}
	most, err := strconv.Atoi(args[1])
	ts.Check(err)
	width, err := strconv.Atoi(args[2])
	ts.Check(err)
	lines := strings.Split(strings.TrimSuffix(ts.ReadFile(args[0]), "\n"), "\n")
	if len(lines) > most {
		ts.Fatalf("%d lines, want at most %d", len(lines), most)
	}
	for i, line := range lines {
		if n := utf8.RuneCountInString(line); n > width {
			ts.Fatalf("line %d has %d characters, want at most %d: %s", i+1, n, width, line)
		}
	}
}

// testApp is the program with its outputs in memory.
func testApp() (*app, *bytes.Buffer, *bytes.Buffer) {
	var out, errs bytes.Buffer
	noon := time.Date(2026, 5, 4, 12, 0, 0, 0, time.UTC)
	return &app{speaker: speaker{out: &result{to: &out}, errs: &errs}, in: strings.NewReader(""), now: func() time.Time { return noon }}, &out, &errs
}

// A panic anywhere in a command is said to be our fault, with its own code.
func TestPanicIsOwnFault(t *testing.T) {
	a, out, errs := testApp()
	root := newRoot(a)
	root.AddCommand(&cobra.Command{Use: "boom", Run: func(*cobra.Command, []string) { panic("a beam without ends") }})
	if code := a.run(root, []string{"boom"}); code != OwnFault {
		t.Errorf("exit code %d, want %d", code, OwnFault)
	}
	if want := "tentwright: this is a fault of tentwright, not of your files: a beam without ends\n"; !strings.HasPrefix(errs.String(), want) {
		t.Errorf("said %q, want it to begin with %q", errs.String(), want)
	}
	if out.Len() > 0 {
		t.Errorf("result %q, want none", out.String())
	}
}

// Without --today a price by phone takes the day of the clock.
func TestPhoneTakesTheClock(t *testing.T) {
	a, out, _ := testApp()
	t.Chdir(t.TempDir())
	args := strings.Fields("quote --tent hip:20x20 --guests 30 --date 2026-06-20 --miles 3 --json")
	if code := a.run(newRoot(a), args); code != Done {
		t.Fatalf("exit code %d", code)
	}
	if want := `"quoted": "2026-05-04"`; !strings.Contains(out.String(), want) {
		t.Errorf("no %s in the quote", want)
	}
}

// A result that cannot be printed is a failure, not a finished quote.
func TestResultCannotBePrinted(t *testing.T) {
	for _, args := range []string{"check", "help quote", "quote --tent hip:20x20 --guests 30 --date 2026-06-20 --miles 3 --json"} {
		a, _, errs := testApp()
		a.out.to = fullDisk{}
		t.Chdir(t.TempDir())
		if code := a.run(newRoot(a), strings.Fields(args)); code != FileError {
			t.Errorf("%s: exit code %d, want %d", args, code, FileError)
		}
		if want := "tentwright: the result cannot be printed: disk full\n"; !strings.HasSuffix(errs.String(), want) {
			t.Errorf("%s: said %q, want %q", args, errs, want)
		}
	}
}

// fullDisk refuses everything.
type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, errors.New("disk full") }

// Whatever a message says, it keeps to the rules of how the program speaks.
func TestSpeaking(t *testing.T) {
	for _, args := range []string{
		"qoute", "quote", "quote a.yaml b.yaml", "quote a.txt", "quote nowhere.yaml", "quote --guests", "quote --gusts 3",
		"quote --tent hip", "quote --tent hip:20x20 --date 2026-02-30 --guests 1 --miles 1", "quote --item chair-folding --guests 1",
		"quote a.yaml --guests 4", "quote a.yaml -o a.pdf", "check nowhere", "new", "new a b", "parts", "help nothing", "--shop nowhere check",
	} {
		a, out, errs := testApp()
		t.Chdir(t.TempDir())
		code := a.run(newRoot(a), strings.Fields(args))
		if code != WrongUse && code != FileError {
			t.Errorf("%s: exit code %d", args, code)
		}
		if out.Len() > 0 {
			t.Errorf("%s: result %q, want none", args, out.String())
		}
		if err := spoken(errs); err != nil {
			t.Errorf("%s: %v", args, err)
		}
	}
}

// spoken tells what is wrong with the wording of a message.
func spoken(errs *bytes.Buffer) error {
	data, _ := io.ReadAll(errs)
	lines := strings.Split(strings.TrimSuffix(string(data), "\n"), "\n")
	text, ok := strings.CutPrefix(lines[0], "tentwright: ")
	switch {
	case !ok || len(lines) > 2:
		return fmt.Errorf("%q: want one line behind the prefix and one of advice at most", data)
	case text == "" || text[0] >= 'A' && text[0] <= 'Z':
		return fmt.Errorf("%q begins with a capital", text)
	case len(lines) == 2 && !strings.HasPrefix(lines[1], "  "):
		return fmt.Errorf("advice %q is not indented", lines[1])
	}
	for _, line := range lines {
		if strings.HasSuffix(line, ".") {
			return fmt.Errorf("%q has a final stop", line)
		}
	}
	return nil
}
