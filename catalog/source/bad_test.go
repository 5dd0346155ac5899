package source

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"tentwright/catalog/diag"
)

const wantMark = "# want: "

// Each file below testdata/bad holds faults; a comment on the faulty line says
// what the problem must contain. Nothing else may be reported.
func TestBadFiles(t *testing.T) {
	files, err := filepath.Glob("testdata/bad/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatalf("no files: %v", err)
	}
	seen := map[string]bool{}
	for _, file := range files {
		t.Run(filepath.Base(file), func(t *testing.T) {
			data, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			for _, code := range compareWants(t, data) {
				seen[code] = true
			}
		})
	}
	// Codes whose inputs are made in other tests of this package.
	elsewhere := []string{diag.TooLarge, diag.TooDeep, diag.TooMany, diag.EmptyFile, diag.BadTarget}
	for _, code := range []string{
		diag.Syntax, diag.Feature, diag.EmptyFile, diag.TooLarge, diag.TooDeep, diag.TooMany, diag.UnknownField, diag.RepeatedField,
		diag.MissingField, diag.EmptyValue, diag.WrongKind, diag.BadValue, diag.OutOfRange, diag.NotOneOf, diag.BadTarget,
	} {
		if !seen[code] && !slices.Contains(elsewhere, code) {
			t.Errorf("no file gives %s", code)
		}
	}
}

// compareWants decodes data, pairs the problems with the wants line by line,
// and returns the codes found.
func compareWants(t *testing.T, data []byte) (codes []string) {
	wants := map[int][]string{}
	for i, line := range strings.Split(string(data), "\n") {
		if _, after, ok := strings.Cut(line, wantMark); ok {
			wants[i+1] = strings.Split(after, " "+wantMark)
		}
	}
	var y yard
	for _, p := range Decode("bad.yaml", data, &y) {
		codes = append(codes, p.Code)
		text := p.String()
		if p.Pos.Column < 1 && !strings.Contains(text, "a bracket is not closed") {
			t.Errorf("no column: %s", text)
		}
		i := slices.IndexFunc(wants[p.Pos.Line], func(want string) bool { return strings.Contains(text, want) })
		if i < 0 {
			t.Errorf("not wanted: %s", text)
			continue
		}
		wants[p.Pos.Line] = slices.Delete(wants[p.Pos.Line], i, i+1)
	}
	for line, left := range wants {
		for _, want := range left {
			t.Errorf("line %d: nothing says %q", line, want)
		}
	}
	return codes
}

// Faults that a comment cannot stand beside.
func TestBadTexts(t *testing.T) {
	tests := []struct{ text, want string }{
		{"name: 'x\n", "1:7: a quote is not closed"},
		{"name: x\nparts: 'y\n\n\n", "2:8: a quote is not closed"},
		{"name: caf\xe9\n", "1:10: this is not UTF-8 text"},
		{"name: \"a\x00b\"\n", "1:9: the control character U+0000"},
		{"name: x\runits: metric\n", "1:8: the line break U+000D"},
		{"name: x\nbin: a\u2028b\n", "2:7: the line break U+2028"},
		{"name: x\n---\nname: y\n", "3:1: a second document begins here"},
		{"name: x\n---\n", "a second document begins here"},
		{"- name: x\n", `1:1: expected fields, each with ": " and a value, found a list`},
		{"Fernhollow\n", `1:1: expected fields, each with ": " and a value, found "Fernhollow"`},
		{"name: |\n", "1:7: name: is empty; expected a text"},
		{"name: *base\n", `1:7: the alias "*base" cannot be used`},
		{"name: x\nparts: [a] y\n", "2:12: the indentation does not fit the lines above"},
		{"name: x\nrates: {id: 'a', bin: 'b}\n", "2:23: a quote is not closed"},
		{"\ufeffname: @x\n", "1:7: a value cannot begin with this character"},
		{"name: x\nrates: {a: 1 b: 2}\n", "yard.yaml:2: a bracket is not closed, or a comma is missing"},
		{"name: \"a\\x1bb\"\n", "1:7: name: holds the character U+001B"},
		{"name: a\u202eb\n", "1:7: name: holds the character U+202E"},
		{"name: x\nparts: [a, é *b*c]\n", `2:9: parts[0]: expected fields`},
	}
	for _, tt := range tests {
		var y yard
		list := Decode("yard.yaml", []byte(tt.text), &y)
		if len(list) == 0 || !strings.Contains(list[0].String(), tt.want) {
			t.Errorf("%q: got %v, want %q", tt.text, list, tt.want)
		}
	}
}

// A fault of indentation is found on its own line, however far the block that
// it breaks began above.
func TestIndentationFaultIsOnItsLine(t *testing.T) {
	for _, n := range []int{1, 2, 10, 300} {
		text := "name: x\nparts:\n" + strings.Repeat("  - id: a\n    bin: b\n", n)
		faulty := strings.Count(text, "\n") + 1
		text += "   owned: 3\n" + strings.Repeat("  - id: c\n", n)
		if got, want := only(t, text), fmt.Sprintf("yard.yaml:%d:4: the indentation does not fit", faulty); !strings.HasPrefix(got, want) {
			t.Errorf("%d parts: got %q, want %q", n, got, want)
		}
	}
}
