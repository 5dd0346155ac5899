package diagtest

import (
	"fmt"
	"slices"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"tentwright/catalog/diag"
)

// notes takes down what a test would be told.
type notes struct {
	testing.TB
	said []string
}

func (n *notes) Helper() {}
func (n *notes) Errorf(format string, args ...any) {
	n.said = append(n.said, fmt.Sprintf(format, args...))
}

// problem is one of code odd in the file f.
func problem(line, column int, message string) diag.Problem {
	return diag.Problem{Pos: diag.Pos{File: "f", Line: line, Column: column}, Code: "odd", Message: message}
}

func TestCompare(t *testing.T) {
	const file = "a: 1\nb: 2  # want: too small # want: not even\nc: 3 # want: odd\n"
	for _, tt := range []struct {
		name string
		list diag.List
		want []string
	}{
		{"all found", diag.List{problem(2, 4, "not even"), problem(2, 4, "too small"), problem(3, 1, "c")}, nil},
		{"one missing", diag.List{problem(2, 4, "not even"), problem(3, 1, "c")}, []string{`line 2: nothing says "too small"`}},
		{"one twice", diag.List{problem(2, 4, "not even"), problem(2, 4, "too small"), problem(3, 1, "c"), problem(3, 1, "d")}, []string{"not wanted: f:3:1: d [odd]"}},
		{"no column", diag.List{problem(2, 4, "not even"), problem(2, 0, "too small"), problem(3, 1, "c")}, []string{"no column: f:2: too small [odd]"}},
		{"another line", diag.List{problem(2, 4, "not even"), problem(1, 4, "too small"), problem(3, 1, "c")},
			[]string{`line 2: nothing says "too small"`, "not wanted: f:1:4: too small [odd]"}},
	} {
		n := &notes{}
		Compare(n, "f", []byte(file), tt.list)
		slices.Sort(n.said)
		if diff := cmp.Diff(tt.want, n.said); diff != "" {
			t.Errorf("%s: %s", tt.name, diff)
		}
	}
	n := &notes{}
	Compare(n, "g", []byte("a # want: odd\n"), diag.List{problem(1, 1, "a")})
	if len(n.said) != 2 {
		t.Errorf("a problem of another file: %q", n.said)
	}
}

func TestOfCode(t *testing.T) {
	n := &notes{}
	OfCode(n, diag.List{problem(1, 1, "a"), {Pos: diag.Pos{File: "f", Line: 2, Column: 1}, Code: "even", Message: "b"}}, "odd")
	if diff := cmp.Diff([]string{"f:2:1: b [even]: code odd was expected"}, n.said); diff != "" {
		t.Error(diff)
	}
}

func TestFolders(t *testing.T) {
	dir := fstest.MapFS{"a.yaml": {Data: []byte("# replaces: b.yaml\nx: 1\n")}, "b.yaml": {Data: []byte("y: 2\n")}, "c.txt": {}}
	var names []string
	Each(t, dir, func(t *testing.T, name string, _ []byte) { names = append(names, name) })
	if diff := cmp.Diff([]string{"a", "b"}, names); diff != "" {
		t.Error(diff)
	}
	data := dir["a.yaml"].Data
	files := With(t, dir, Replaces(data), data)
	if len(files) != 3 || string(files["b.yaml"].Data) != string(data) || string(dir["b.yaml"].Data) != "y: 2\n" {
		t.Errorf("got %v", files)
	}
	if same := With(t, dir, "", nil); len(same) != 3 || string(same["b.yaml"].Data) != "y: 2\n" {
		t.Errorf("got %v", same)
	}
}
