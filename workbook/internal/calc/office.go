// Package calc lets tests recalculate a workbook with another program,
// headless LibreOffice, and read the figures back. It reads files with
// encoding/xml only, so that a fault of the writer cannot hide in the reader.
package calc

import (
	"context"
	"errors"
	"fmt"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// program is the office program as it is called on the command line.
const program = "soffice"

// requireVariable set to "1" makes a missing office program a failure.
const requireVariable = "TENTWRIGHT_REQUIRE_OFFICE"

// limit is the longest a recalculation may take; the program waits for ever
// when a file is missing.
const limit = 10 * time.Minute

// profile makes the program compute every formula afresh on loading; by
// itself it trusts the numbers it finds.
const profile = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>
`

// Available reports whether the office program is installed, and if not, why
// and what to do.
func Available() (ok bool, why string) {
	if _, err := exec.LookPath(program); err != nil {
		return false, fmt.Sprintf("%s is not on PATH; install LibreOffice Calc (Debian: libreoffice-calc-nogui) to run this test", program)
	}
	return true, ""
}

// Required reports whether TENTWRIGHT_REQUIRE_OFFICE=1 is set: then a missing
// office program fails the test instead of skipping it.
func Required() bool { return os.Getenv(requireVariable) == "1" }

// Need skips the test when the office program is missing, saying how to get
// it, or fails it when the program is required.
func Need(t testing.TB) {
	t.Helper()
	ok, why := Available()
	switch {
	case ok:
	case Required():
		t.Fatalf("%s=1, but %s", requireVariable, why)
	default:
		t.Skip(why)
	}
}

// Recalculate opens all files in one run of the office program with every
// formula computed afresh, and saves them in outDir under their own names.
// The base names must differ; a file that cannot be read is an error.
func Recalculate(ctx context.Context, files []string, outDir string) error {
	paths, err := distinct(files)
	if err != nil || len(paths) == 0 {
		return err
	}
	// A profile of its own: the program refuses a second start with the same
	// one, and the user's settings must not decide the outcome.
	home, err := os.MkdirTemp("", "recalculate-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(home)
	if err := os.MkdirAll(filepath.Join(home, "user"), 0o755); err != nil {
		return err
	}
	if err := os.WriteFile(filepath.Join(home, "user", "registrymodifications.xcu"), []byte(profile), 0o644); err != nil {
		return err
	}
	if err := os.MkdirAll(outDir, 0o755); err != nil {
		return err
	}
	ctx, cancel := context.WithTimeout(ctx, limit)
	defer cancel()
	own := (&url.URL{Scheme: "file", Path: filepath.ToSlash(home)}).String()
	args := append([]string{
		"-env:UserInstallation=" + own, "--headless", "--norestore",
		"--convert-to", "xlsx:Calc MS Excel 2007 XML", "--outdir", outDir,
	}, paths...)
	cmd := exec.CommandContext(ctx, program, args...)
	// The program starts another that may outlive it and hold its output open.
	cmd.WaitDelay = 5 * time.Second
	said, err := cmd.CombinedOutput()
	if err != nil {
		return fmt.Errorf("%s: %w: %s", program, errors.Join(err, ctx.Err()), strings.TrimSpace(string(said)))
	}
	return allThere(paths, outDir, string(said))
}

// distinct makes the paths absolute and refuses missing files and two files
// that would be saved under one name.
func distinct(files []string) ([]string, error) {
	seen := map[string]string{}
	var paths []string
	for _, f := range files {
		abs, err := filepath.Abs(f)
		if err != nil {
			return nil, err
		}
		if _, err := os.Stat(abs); err != nil {
			return nil, err
		}
		base := filepath.Base(abs)
		if other, ok := seen[base]; ok {
			return nil, fmt.Errorf("%q and %q have the same base name; expected different ones", other, f)
		}
		seen[base] = f
		paths = append(paths, abs)
	}
	return paths, nil
}

// allThere reports the files the program passed over; it does so without an
// exit code.
func allThere(paths []string, outDir, said string) error {
	var missing []string
	for _, p := range paths {
		if _, err := os.Stat(filepath.Join(outDir, filepath.Base(p))); err != nil {
			missing = append(missing, filepath.Base(p))
		}
	}
	if len(missing) > 0 {
		return fmt.Errorf("%s saved no %s: %s", program, strings.Join(missing, ", "), strings.TrimSpace(said))
	}
	return nil
}
