package cli

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Where the second of several files cannot take its place, the message names the
// first, which was written, and no temporary file is left.
func TestMoveAllTellsWhatWasWritten(t *testing.T) {
	dir := t.TempDir()
	first, second := filepath.Join(dir, "first.xlsx"), filepath.Join(dir, "second.xlsx")
	if err := os.MkdirAll(filepath.Join(second, "full"), 0o755); err != nil {
		t.Fatal(err)
	}
	var f *failure
	if err := moveAll([]output{{first, []byte("1")}, {second, []byte("2")}}); !errors.As(err, &f) {
		t.Fatalf("the error is %v", err)
	}
	if !strings.Contains(f.problem, "second.xlsx") || !strings.HasPrefix(f.advice, "written before that: "+first) {
		t.Errorf("it says %q, %q", f.problem, f.advice)
	}
	if entries, _ := os.ReadDir(dir); len(entries) != 2 {
		t.Errorf("%d entries are left, 2 were expected: %v", len(entries), entries)
	}
}

// A link to a file that is not there yet stays a link when the file is written.
func TestMoveAllWritesBehindLinks(t *testing.T) {
	dir := t.TempDir()
	link, real := filepath.Join(dir, "link.xlsx"), filepath.Join(dir, "real.xlsx")
	if err := os.Symlink("real.xlsx", link); err != nil {
		t.Skip("no links here: ", err)
	}
	for _, words := range []string{"one", "two"} {
		if err := moveAll([]output{{link, []byte(words)}}); err != nil {
			t.Fatal(err)
		}
		data, err := os.ReadFile(real)
		if err != nil || string(data) != words {
			t.Errorf("the file behind the link holds %q, %v; %q was expected", data, err, words)
		}
		if info, err := os.Lstat(link); err != nil || info.Mode()&os.ModeSymlink == 0 {
			t.Errorf("the link is gone")
		}
	}
}
