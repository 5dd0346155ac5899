// Package diagtest compares the problems found in a file with the remarks in
// it that say which are wanted, for the tests of every reader and check. No
// program imports it.
//
// A remark "# want: " stands at the end of the faulty line and says what the
// problem must contain; several may stand on one line.
package diagtest

import (
	"io/fs"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"tentwright/catalog/diag"
)

const mark = "# want: "

// Each runs a test for every YAML file of a folder, named like the file
// without its ending. It is an error when there is none.
func Each(t *testing.T, dir fs.FS, test func(t *testing.T, name string, data []byte)) {
	t.Helper()
	names, err := fs.Glob(dir, "*.yaml")
	if err != nil || len(names) == 0 {
		t.Fatalf("no fixtures found: %v", err)
	}
	for _, name := range names {
		t.Run(strings.TrimSuffix(name, ".yaml"), func(t *testing.T) {
			data, err := fs.ReadFile(dir, name)
			if err != nil {
				t.Fatal(err)
			}
			test(t, strings.TrimSuffix(name, ".yaml"), data)
		})
	}
}

// Replaces is the file of a shop in whose place a fixture stands, as its first
// line "# replaces: " says.
func Replaces(data []byte) string {
	first, _, _ := strings.Cut(string(data), "\n")
	return strings.TrimPrefix(first, "# replaces: ")
}

// With is the files of a folder in memory, one of them replaced; none where
// name is empty.
func With(t testing.TB, dir fs.FS, name string, data []byte) fstest.MapFS {
	t.Helper()
	entries, err := fs.ReadDir(dir, ".")
	if err != nil {
		t.Fatal(err)
	}
	files := fstest.MapFS{}
	for _, e := range entries {
		content, err := fs.ReadFile(dir, e.Name())
		if err != nil {
			t.Fatal(err)
		}
		files[e.Name()] = &fstest.MapFile{Data: content}
	}
	if name != "" {
		files[name] = &fstest.MapFile{Data: data}
	}
	return files
}

// Compare pairs the problems of a file with its remarks, one to one: what is
// not wanted is an error, and so is a problem of another file or without a
// column.
func Compare(t testing.TB, file string, data []byte, list diag.List) {
	t.Helper()
	wants := wanted(string(data))
	for _, p := range list {
		at := slices.IndexFunc(wants[p.Pos.Line], func(want string) bool { return strings.Contains(p.String(), want) })
		if at < 0 || p.Pos.File != file {
			t.Errorf("not wanted: %s", p)
			continue
		}
		if p.Pos.Column < 1 {
			t.Errorf("no column: %s", p)
		}
		wants[p.Pos.Line] = slices.Delete(wants[p.Pos.Line], at, at+1)
	}
	for line, left := range wants {
		for _, want := range left {
			t.Errorf("line %d: nothing says %q", line, want)
		}
	}
}

// wanted is the remarks of each line, by its number from 1.
func wanted(text string) map[int][]string {
	wants := map[int][]string{}
	for n, line := range strings.Split(text, "\n") {
		for _, want := range strings.Split(line, mark)[1:] {
			wants[n+1] = append(wants[n+1], strings.TrimSpace(want))
		}
	}
	return wants
}

// OfCode reports each problem that has another code than the fixture's.
func OfCode(t testing.TB, list diag.List, code string) {
	t.Helper()
	for _, p := range list {
		if p.Code != code {
			t.Errorf("%s: code %s was expected", p, code)
		}
	}
}
