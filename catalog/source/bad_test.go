package source

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"tentwright/catalog/diag"
	"tentwright/catalog/diag/diagtest"
)

// Each file below testdata/bad holds faults, and remarks that say which.
func TestBadFiles(t *testing.T) {
	seen := map[string]bool{}
	diagtest.Each(t, os.DirFS("testdata/bad"), func(t *testing.T, _ string, data []byte) {
		var y yard
		list := Decode("bad.yaml", data, &y)
		for _, p := range list {
			seen[p.Code] = true
		}
		diagtest.Compare(t, "bad.yaml", data, list)
	})
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
		{"name: x\nrates: {a: 1 b: 2}\n", "yard.yaml:2:8: a bracket is not closed, or a comma is missing"},
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
